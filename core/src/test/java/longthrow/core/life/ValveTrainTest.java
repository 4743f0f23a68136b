package longthrow.core.life;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.engine.CoilSpring;
import longthrow.core.engine.LineContact;
import longthrow.core.engine.SpringWire;
import longthrow.core.motion.AcceptanceLift;
import longthrow.core.motion.RiseFunction;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/** Springs and floats of acceptance case S3 (an invented engine), surge against the wave itself, stress against the handbook. */
class ValveTrainTest {
    /** S3: 34 g valve, 11 retainer and locks, 24 spring, 12 rocker, 54 pushrod and tappet at 1.20: 102.5 g. */
    private static double massOfS3() {
        return value(ValveTrain.equivalentMass(
                number(0.034), number(0.011), number(0.024), number(0.012), number(0.054), number(1.20)));
    }

    private static List<ValveTrain.Place> placesOfS3() {
        AcceptanceLift curve = new AcceptanceLift();
        List<ValveTrain.Place> places = new ArrayList<>();
        for (int degrees = -140; degrees <= 140; degrees++) {
            double angle = Math.toRadians(degrees);
            places.add(new ValveTrain.Place(angle, curve.at(angle), curve.bend(angle)));
        }
        return places;
    }

    private static void floats(double seat, double rate, double rpm) {
        ValveTrain train = new ValveTrain(massOfS3(), seat, rate * 1e3);
        ValveTrain.FirstFloat first = train.firstFloat(placesOfS3()).orElseThrow();
        assertThat(Units.RPM.fromSi(first.speed())).as("seat load %s", seat).isCloseTo(rpm, within(0.03 * rpm));
        assertThat(train.contactForce(first.place(), first.speed())).isCloseTo(0, within(1e-9));
        assertThat(train.margin(placesOfS3(), first.speed())).isCloseTo(0, within(1e-12));
    }

    /** Figures of S3 as stated there: floats within 3 %, forces within 5 %, and the verdicts that hang on them. */
    @Test
    void springsOfS3FloatWhereTheyShould() {
        assertThat(massOfS3()).isCloseTo(0.1025, within(1e-12));
        floats(60, 9.5, 3840);
        floats(115, 21, 5540);
        floats(140, 32, 6560);
        floats(165, 36, 7020);
        ValveTrain.Place nose = placesOfS3().get(140);
        assertThat(nose.lift()).isCloseTo(8.20e-3, within(1e-9));
        double speed = Units.RPM.toSi(6000);
        double needed = massOfS3() * -nose.bend() * speed * speed;
        assertThat(needed).isCloseTo(336, within(0.05 * 336));
        ValveTrain c = new ValveTrain(massOfS3(), 140, 32e3);
        assertThat(c.springLoad(8.20e-3)).isCloseTo(402, within(1.0));
        assertThat(c.margin(placesOfS3(), speed)).isCloseTo(0.196, within(0.01));
        ValveTrain d = new ValveTrain(massOfS3(), 165, 36e3);
        assertThat(d.margin(placesOfS3(), speed)).isGreaterThan(0.20);
        ValveTrain stock = new ValveTrain(massOfS3(), 60, 9.5e3);
        assertThat(stock.margin(placesOfS3(), Units.RPM.toSi(3600))).isCloseTo(0.14, within(0.01));
    }

    /** A spring too soft off the nose floats on the flank first: all the negative flank is looked at, not the nose alone. */
    @Test
    void floatMayBeginOffTheNose() {
        List<ValveTrain.Place> places =
                List.of(new ValveTrain.Place(-0.3, 2e-3, -9e-3), new ValveTrain.Place(0, 8e-3, -10e-3));
        ValveTrain train = new ValveTrain(0.1, 60, 20e3);
        ValveTrain.FirstFloat first = train.firstFloat(places).orElseThrow();
        assertThat(first.place().angle()).isEqualTo(-0.3);
        assertThat(first.speed()).isCloseTo(Math.sqrt(100 / (0.1 * 9e-3)), within(1e-9));
        assertThat(train.firstFloat(List.of(new ValveTrain.Place(0, 0, 1)))).isEmpty();
        assertThat(train.margin(List.of(), 1)).isInfinite();
        assertThat(train.largestContactForce(places, 0)).isCloseTo(220, within(1e-9));
        assertThat(ValveTrain.belowRocker(220, 1.2)).isCloseTo(264, within(1e-9));
    }

    /** Nose and flank by hand: CAM-13's 900 N on 6 mm radius and 10 mm face is 607 MPa; the same through the lift curve. */
    @Test
    void lobePressureTakesForceAndCurvatureOfEachPlace() {
        double modulus = value(LineContact.effectiveModulus(number(110e9), 0.26, number(205e9), 0.29));
        LobeContact lobe = new LobeContact(14e-3, 10e-3, 1.25, modulus);
        ValveTrain.Place nose =
                new ValveTrain.Place(0, 7.5e-3, -4.375e-3); // tappet 6 mm up, 14 + 6 - 14 = 6 mm of radius
        ValveTrain.Place flank = new ValveTrain.Place(-1, 1e-3, 5e-3);
        assertThat(lobe.radius(nose)).isCloseTo(6e-3, within(1e-12));
        ValveTrain train = new ValveTrain(0.1, 720 - 7.5 * 40, 40e3); // 720 N at the nose, 900 N below the rocker
        assertThat(lobe.pressure(train, nose, 0) / 1e6).isCloseTo(607.3424, within(1e-3));
        List<ValveTrain.Place> places = List.of(flank, nose);
        assertThat(lobe.largest(train, places, 0)).isEqualTo(lobe.pressure(train, nose, 0));
        assertThat(lobe.largest(train, places, 1200)).isEqualTo(lobe.pressure(train, flank, 1200));
        assertThat(lobe.pressure(train, nose, 3000)).isZero(); // afloat
        assertThat(lobe.pressure(train, new ValveTrain.Place(0, 7.5e-3, -7e-3), 0))
                .isInfinite();
    }

    /** A cosine of the eleventh order on a lift: found, and no other; it meets a spring of 500 Hz at a cam speed of 500/11 turns a second. */
    @Test
    void harmonicsOfTheLiftMeetTheSpring() {
        List<Double> lifts = new ArrayList<>();
        for (int k = 0; k < 720; k++) {
            lifts.add(3e-3 + 2e-5 * Math.cos(11 * 2 * Math.PI * k / 720 + 0.4));
        }
        List<Surge.Meeting> meetings = Surge.meetings(lifts, 500, 8, 15);
        assertThat(meetings).hasSize(8);
        for (Surge.Meeting meeting : meetings) {
            assertThat(meeting.amplitude()).isCloseTo(meeting.order() == 11 ? 2e-5 : 0, within(1e-15));
        }
        assertThat(Units.RPM.fromSi(meetings.get(3).crankSpeed())).isCloseTo(2 * 500 / 11.0 * 60, within(1e-9));
        assertThatThrownBy(() -> Surge.harmonic(lifts, 0)).hasMessageContaining("order of a harmonic");
    }

    /** A smoother lobe has weaker high harmonics: cycloidal against simple harmonic rise, 140 degrees of cam in all. */
    @Test
    void smoothLobesShakeSpringsLess() {
        assertThat(high(RiseFunction.CYCLOIDAL)).isLessThan(0.5 * high(RiseFunction.SIMPLE_HARMONIC));
    }

    /** Orders 20 to 40 together: any one of them may happen to vanish. */
    private static double high(RiseFunction rise) {
        return Surge.meetings(lobe(rise), 500, 20, 40).stream()
                .mapToDouble(Surge.Meeting::amplitude)
                .sum();
    }

    private static List<Double> lobe(RiseFunction rise) {
        List<Double> lifts = new ArrayList<>();
        for (int k = 0; k < 1440; k++) {
            double away = Math.abs(k * 0.25 - 180) / 70;
            lifts.add(away < 1 ? 8e-3 * rise.at(1 - away, 0) : 0);
        }
        return lifts;
    }

    /** The spring as a chain of 200 masses, its end moved at the natural frequency until it swings steadily: load at the seat. */
    @Test
    void waveInTheSpringIsAsTallAsItsDampingLetsIt() {
        int links = 100;
        double rate = 20e3;
        double mass = 0.012;
        double natural = Math.PI * Math.sqrt(rate / mass); // rad/s, both ends held
        double damping = 0.02;
        double link = rate * links;
        double bead = mass / links;
        double drag = 2 * damping * natural;
        double amplitude = 1e-5;
        double dt = 0.2 / Math.sqrt(link / bead);
        double[] x = new double[links + 1];
        double[] v = new double[links + 1];
        double most = 0;
        double end = 60 / (damping * natural) / 5;
        for (double t = 0; t < end; t += dt) {
            x[links] = amplitude * Math.cos(natural * t);
            for (int k = 1; k < links; k++) {
                double force = link * (x[k + 1] - 2 * x[k] + x[k - 1]);
                v[k] += dt * (force / bead - drag * v[k]);
            }
            for (int k = 1; k < links; k++) {
                x[k] += dt * v[k];
            }
            most = t > 0.8 * end ? Math.max(most, Math.abs(link * x[1])) : 0;
        }
        double load = Surge.swingingLoad(rate, amplitude, damping);
        assertThat(load).isCloseTo(most, within(0.05 * most));
    }

    /**
     * Shigley's wire: music wire of 0.037 in has a tensile strength of 323 to 324 kpsi (9th ed., example 10-1 by 201/d^0.145; from memory); and the spring's own
     * factors by hand.
     */
    @Test
    void springStressesStandAgainstTheWire() {
        double ultimate = value(SpringWire.MUSIC.ultimate(number(0.037 * 25.4e-3)));
        assertThat(ultimate / 6.894757e6).isCloseTo(324, within(3.0));
        CoilSpring coil = new CoilSpring(number(3e-3), number(21e-3), number(5), number(7));
        SpringStress stress = new SpringStress(coil, SpringWire.CHROME_SILICON);
        double sut = 1974e6 / Math.pow(3, 0.108);
        double plain = 8 * 300 * 21e-3 / (Math.PI * 27e-9);
        double wahl = 27.0 / 24 + 0.615 / 7;
        assertThat(value(stress.setFactor(number(300)))).isCloseTo(0.5 * sut / (plain * wahl), within(1e-9));
        assertThat(value(stress.setFactorPressed(number(300))))
                .isCloseTo(0.7 * sut / (plain * (1 + 0.5 / 7)), within(1e-9));
        double ssu = 0.67 * sut;
        double sse = 398e6 / (1 - 534e6 / ssu);
        double swing = plain * wahl / 3; // 100 N to 300 N
        double mean = plain * wahl * 2 / 3;
        assertThat(value(stress.fatigueFactor(number(100), number(300), true)))
                .isCloseTo(1 / (swing / sse + mean / ssu), within(1e-9));
        assertThat(value(stress.fatigueFactor(number(100), number(300), false)))
                .isLessThan(value(stress.fatigueFactor(number(100), number(300), true)));
        assertThat(value(stress.bindMargin(number(32e-3), number(9e-3)))).isCloseTo(2e-3, within(1e-12));
    }
}
