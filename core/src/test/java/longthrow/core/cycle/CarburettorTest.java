package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import longthrow.core.cycle.Carburettor.Emulsion;
import longthrow.core.cycle.Carburettor.Incoming;
import longthrow.core.cycle.JetSize.Bore;
import longthrow.core.cycle.JetSize.Flowed;
import longthrow.core.cycle.JetSize.Numbered;
import longthrow.core.cycle.JetSize.Numbering;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.measurement.Measured;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CarburettorTest {
    private static final Incoming AIR = new Incoming(100e3, 293.15, MoistAir.DRY.gasConstant());
    private static final JetSize JET = new Bore(0.80e-3);

    private static Carburettor elementary(JetSize jet) {
        return new Carburettor(0.018, jet, 0, Optional.empty());
    }

    /** Bernoulli by hand: 4 g/s through 0.95 x 254.5 mm2 at 1.188 kg/m3 are 13.93 m/s, 115 Pa. */
    @Test
    void signalIsBernoullisWhereAirHardlyThins() {
        double speed = 0.004 / (AIR.density() * 0.95 * 0.25 * Math.PI * 0.018 * 0.018);
        assertThat(speed).isCloseTo(13.93, within(0.01));
        double signal = elementary(JET).signal(0.004, AIR);
        double bernoulli = 0.5 * AIR.density() * speed * speed;
        // thinning adds 3/(2 gamma) of the drop over the pressure, the next term of the series
        assertThat(signal).isCloseTo(bernoulli * (1 + 1.5 / 1.4 * bernoulli / 100e3), within(1e-5 * signal));
        assertThat(elementary(JET).signal(-0.004, AIR)).isEqualTo(signal);
        assertThat(elementary(JET).signal(0, AIR)).isZero();
    }

    /** GAS-04: 101325 Pa, 300 K, 90000 Pa behind, 0.65 of 400 mm2, R 287: 0.0398265 kg/s. */
    @Test
    void signalIsTheDropThatANozzleNeeds() {
        Carburettor venturi = new Carburettor(2 * Math.sqrt(0.65 * 400e-6 / 0.95 / Math.PI), JET, 0, Optional.empty());
        Incoming air = new Incoming(101_325, 300, 287);
        assertThat(venturi.signal(0.0398264923052674, air)).isCloseTo(11_325, within(1e-6));
        assertThat(venturi.mostAir(air)).isCloseTo(0.0614764334998908, within(1e-12)); // GAS-05.1
        assertThat(venturi.signal(0.07, air)).isCloseTo(101_325 * (1 - 0.528281787717174), within(1e-6)); // GAS-02.1
    }

    /** By hand: 0.75 x 0.50265 mm2 x root(2 x 740 x 2000) = 0.6486 g/s; a lip of 6 mm takes 43.5 Pa of the 2000. */
    @Test
    void fuelIsBernoullis() {
        double air = airFor(2000);
        assertThat(elementary(JET).fuelFlow(air, AIR, 0, 740)).hasValueCloseTo(0.6486e-3, within(1e-7));
        Carburettor lipped = new Carburettor(0.018, JET, 0.006, Optional.empty());
        double ratio = lipped.fuelFlow(air, AIR, 0, 740).orElseThrow()
                / elementary(JET).fuelFlow(air, AIR, 0, 740).orElseThrow();
        assertThat(ratio).isCloseTo(Math.sqrt(1 - 43.54 / 2000), within(1e-5));
        assertThat(lipped.fuelFlow(1e-4, AIR, 0, 740)).hasValue(0);
    }

    /** Air flow that draws this signal, found by halving. */
    private static double airFor(double signal) {
        double low = 0;
        double high = elementary(JET).mostAir(AIR);
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (low + high);
            if (elementary(JET).signal(middle, AIR) < signal) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** By hand: 0.75 / 0.95 x (0.8 / 18)2 x root(740 / 1.1884) x 14.6 = 0.5681, whatever the flow while air hardly thins; that pulses and swings back, see each. */
    @Test
    void pulsesDrawBetweenAsMuchAsTheirAirAndByTheirMeanSquare() {
        double steady = 0.75 / 0.95 * Math.pow(0.8 / 18, 2) * Math.sqrt(740 / AIR.density()) * 14.6;
        assertThat(steady).isCloseTo(0.5681, within(1e-4));
        double[] quarter = new double[720]; // a fourth of the time 2 g/s, else nothing
        double[] swings = new double[720]; // the same, and a tenth of the time 1 g/s back: 0.2 of it again
        for (int i = 0; i < 180; i++) {
            quarter[i] = 0.002;
            swings[i] = 0.002;
        }
        for (int i = 180; i < 252; i++) {
            swings[i] = -0.001;
        }
        assertThat(mixture(quarter, 0, 0)).isCloseTo(steady, within(1e-3 * steady));
        // the mean signal is a fourth, its root a half, and it draws four times as long
        assertThat(mixture(quarter, 0, 1)).isCloseTo(2 * steady, within(1e-3 * steady));
        assertThat(mixture(quarter, 0, 0.5)).isCloseTo(1.5 * steady, within(1e-3 * steady));
        assertThat(mixture(swings, 0, 0)).isCloseTo(steady, within(1e-3 * steady));
        // 1.2 drawn over 0.8 that is in
        assertThat(mixture(swings, 1, 0)).isCloseTo(1.5 * steady, within(1e-3 * steady));
        assertThat(elementary(new Numbered(80, Optional.empty()))
                        .mixture(quarter, new Carburettor.Pulses(0, 0), AIR, 0, 740, 14.6))
                .isEmpty();
    }

    private static double mixture(double[] flows, double back, double even) {
        return elementary(JET)
                .mixture(flows, new Carburettor.Pulses(back, even), AIR, 0, 740, 14.6)
                .orElseThrow();
    }

    @Test
    void theElementaryCarburettorRichensAsAirThins() {
        Fuel petrol = Fuel.petrol();
        double little = elementary(JET)
                .mixture(0.003, AIR, 0, petrol, MoistAir.DRY)
                .orElseThrow()
                .value();
        double much = elementary(JET)
                .mixture(0.03, AIR, 0, petrol, MoistAir.DRY)
                .orElseThrow()
                .value();
        assertThat(much).isGreaterThan(little * 1.01);
        // thin air, same speeds: by the root of the density, the rule behind JetChange
        Incoming high = new Incoming(80e3, 293.15, AIR.gasConstant());
        double thin = elementary(JET)
                .mixture(0.003 * 0.8, high, 0, petrol, MoistAir.DRY)
                .orElseThrow()
                .value();
        assertThat(thin / little).isCloseTo(1 / Math.sqrt(0.8), within(1e-6));
    }

    @Test
    void aBowlVentedBeforeADirtyFilterRichens() {
        double vented = elementary(JET).fuelFlow(0.01, AIR, 0, 740).orElseThrow();
        assertThat(elementary(JET).fuelFlow(0.01, AIR, 500, 740).orElseThrow()).isGreaterThan(vented);
    }

    @Test
    void airIntoTheFuelLeansIt() {
        double plain = elementary(JET).fuelFlow(0.01, AIR, 0, 740).orElseThrow();
        double before = plain;
        for (double airJet : new double[] {0.15e-3, 0.5e-3, 1e-3, 1.5e-3}) {
            Carburettor bled = new Carburettor(0.018, JET, 0, Optional.of(new Emulsion(airJet, 2.6e-3)));
            double fuel = bled.fuelFlow(0.01, AIR, 0, 740).orElseThrow();
            assertThat(fuel).isLessThan(before).isPositive();
            before = fuel;
        }
        Carburettor open = new Carburettor(0.018, JET, 0, Optional.of(new Emulsion(0.1e-3, 20e-3)));
        assertThat(open.fuelFlow(0.01, AIR, 0, 740).orElseThrow()).isCloseTo(plain, within(1e-3 * plain));
    }

    @Test
    void whatANumberMeansIsAskedAndNeverAssumed() {
        assertThat(new Numbered(80, Optional.empty()).hole()).isEmpty();
        assertThat(new Numbered(80, Optional.of(Numbering.FLOW)).hole()).isEmpty();
        assertThat(elementary(new Numbered(80, Optional.empty())).fuelFlow(0.01, AIR, 0, 740))
                .isEmpty();
        assertThat(elementary(new Numbered(80, Optional.empty())).mixture(0.01, AIR, 0, Fuel.petrol(), MoistAir.DRY))
                .isEmpty();
        assertThat(new Numbered(80, Optional.of(Numbering.HUNDREDTHS_OF_A_MILLIMETRE)).hole())
                .isEqualTo(JET.hole());
        assertThat(new Numbered(31.5, Optional.of(Numbering.THOUSANDTHS_OF_AN_INCH))
                        .hole()
                        .orElseThrow()
                        .area())
                .isCloseTo(JET.hole().orElseThrow().area(), within(1e-9));
        // flowed as its coefficient says: 0.75 x 0.50265 mm2 x root(2 x 3600/740) = 1.1760e-6 m3/s
        assertThat(new Flowed(1.17595e-6, 3600, 740).hole().orElseThrow().area())
                .isCloseTo(JET.hole().orElseThrow().area(), within(1e-11));
        assertThat(elementary(JET).mixture(0.01, AIR, 0, Fuel.methane(), MoistAir.DRY))
                .isEmpty();
        assertThatThrownBy(() -> new Bore(0.8)).hasMessageContaining("diameter of a jet [m] is 0.8");
    }

    @Test
    void theMixtureCarriesItsDoubt() {
        Measured mixture = elementary(JET)
                .mixture(0.01, AIR, 0, Fuel.petrol(), MoistAir.DRY)
                .orElseThrow();
        // jet 0.10/0.75/root 3, venturi 0.03/0.95/root 3, model 0.07
        double share = Math.sqrt(Math.pow(0.10 / 0.75, 2) / 3 + Math.pow(0.03 / 0.95, 2) / 3 + 0.07 * 0.07);
        assertThat(mixture.standardUncertainty()).isCloseTo(share * mixture.value(), within(1e-9));
    }

    @Test
    void withoutAJetTheTradesRangeStands() {
        Measured usual = Carburettor.usualMixture(Fuel.petrol(95));
        double stoichiometric = Fuel.petrol().stoichiometricAirFuel(MoistAir.DRY);
        assertThat(usual.value())
                .isCloseTo(stoichiometric / 12.5, within(1e-12))
                .isBetween(1.15, 1.19);
        assertThat(usual.standardUncertainty()).isCloseTo(usual.value() / 12.5 / Math.sqrt(3), within(1e-12));
        assertThat(Carburettor.usualMixture(Fuel.methanol()).standardUncertainty())
                .isCloseTo(2 * usual.standardUncertainty(), within(1e-12));
    }

    record Case(Carburettor carburettor, Incoming air, double fuelDensity, double rise) {}

    static Stream<Case> randomCarburettors() {
        SplittableRandom random = new SplittableRandom(7);
        return Stream.generate(() -> new Case(
                        new Carburettor(
                                0.01 + 0.03 * random.nextDouble(),
                                new Bore(0.3e-3 + 2e-3 * random.nextDouble()),
                                0.01 * random.nextDouble(),
                                random.nextBoolean()
                                        ? Optional.empty()
                                        : Optional.of(new Emulsion(
                                                0.2e-3 + 2e-3 * random.nextDouble(),
                                                1e-3 + 4e-3 * random.nextDouble()))),
                        new Incoming(
                                60e3 + 45e3 * random.nextDouble(),
                                250 + 70 * random.nextDouble(),
                                287 + 8 * random.nextDouble()),
                        680 + 150 * random.nextDouble(),
                        random.nextBoolean() ? 0 : 2000 * random.nextDouble()))
                .limit(300);
    }

    @ParameterizedTest
    @MethodSource("randomCarburettors")
    void moreAirDrawsMoreFuelAndNothingIsLost(Case c) {
        double before = 0;
        double most = c.carburettor.mostAir(c.air);
        for (int i = 0; i <= 300; i++) {
            double air = 1.2 * most * i / 300;
            double signal = c.carburettor.signal(air, c.air);
            double flow = air
                    * Math.sqrt(c.air.gasConstant() * c.air.temperature())
                    / (c.carburettor.airArea() * c.air.pressure());
            double back = AirNozzle.flow(1 - signal / c.air.pressure());
            assertThat(back).isCloseTo(Math.min(flow, AirNozzle.CHOKED), within(1e-9));
            double fuel =
                    c.carburettor.fuelFlow(air, c.air, c.rise, c.fuelDensity).orElseThrow();
            assertThat(fuel).isFinite().isGreaterThanOrEqualTo(before);
            before = fuel;
        }
    }
}
