package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import longthrow.core.cycle.Crankcase.Around;
import longthrow.core.cycle.Crankcase.Breather;
import longthrow.core.formula.Interval;
import longthrow.core.gas.MoistAir;
import longthrow.core.motion.CrankMotion;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CrankcasePumpingTest {
    private static final double AREA = 0.25 * Math.PI * 0.068 * 0.068;
    private static final CrankMotion CRANK = new CrankMotion(0.027, 0.084, 0);
    private static final double SWEPT = AREA * 0.054;
    private static final double SPEED = 3600 * Math.PI / 30;
    private static final Around QUIET = new Around(100e3, 310, 0, 310);

    private static Crankcase crankcase(double freeOverSwept, double conductance) {
        return new Crankcase(AREA, CRANK, freeOverSwept * SWEPT, 350, conductance);
    }

    /** Volume doubles where the free volume is that swept: an adiabatic spring between 1.5 and 1 of the half-way filling, p V1.4 kept. */
    @Test
    void withoutBreatherItIsASpringAndCostsNothing() {
        Crankcase sealed = crankcase(1, 0);
        CrankcasePumping pumping = CrankcasePumping.of(sealed, Breather.hole(0), QUIET, SPEED);
        double start = sealed.volume(0.5 * Math.PI);
        assertThat(pumping.meanEffective()).isCloseTo(0, within(1e-3));
        assertThat(pumping.highest()).isCloseTo(100e3 * (Math.pow(start / SWEPT, 1.4) - 1), within(1.0));
        assertThat(pumping.lowest()).isCloseTo(100e3 * (Math.pow(start / (2 * SWEPT), 1.4) - 1), within(1.0));
        assertThat(pumping.throughput()).isZero();
        // where walls take heat: their hysteresis is a loss, a small one
        double warm = CrankcasePumping.of(
                        crankcase(1, Crankcase.usualConductance(2 * SWEPT)), Breather.hole(0), QUIET, SPEED)
                .meanEffective();
        assertThat(warm).isBetween(1.0, 1500.0);
    }

    @Test
    void aHugeHoleCostsNothing() {
        double before = Double.POSITIVE_INFINITY;
        for (double area : new double[] {200e-6, 500e-6, 2e-3, 1e-2, 1e-1}) {
            CrankcasePumping pumping = CrankcasePumping.of(crankcase(2, 0.5), Breather.hole(area), QUIET, SPEED);
            assertThat(pumping.meanEffective()).isBetween(0.0, before);
            before = pumping.meanEffective();
        }
        assertThat(before)
                .isLessThan(
                        150); // [Pa], 0.0015 bar: what the softened flow of a hole thirty times the piston's size still
        // holds up
    }

    /** At which a hole costs most, it is of the order of a tenth of a bar; the rule is that nothing costs more than the spring's whole swing. */
    @Test
    void boundsHoldEveryBreather() {
        Interval bounds = CrankcasePumping.bounds(crankcase(2, 0.5), true, QUIET, SPEED);
        assertThat(bounds.lo()).isZero();
        assertThat(bounds.hi()).isBetween(5e3, 50e3);
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < 60; i++) {
            double area = Math.pow(10, -7 + 5 * random.nextDouble());
            Breather breather = random.nextBoolean() ? Breather.hole(area) : new Breather(area, 0.05 * area, 200);
            double lost = CrankcasePumping.of(crankcase(2, 0.5), breather, QUIET, SPEED)
                    .meanEffective();
            assertThat(lost).isBetween(0.0, bounds.hi() * 1.01);
        }
        Interval wider = CrankcasePumping.bounds(crankcase(2, 0.5), false, QUIET, SPEED);
        assertThat(wider.hi()).isGreaterThan(bounds.hi());
    }

    @Test
    void aCheckValveDrawsTheCaseDownAndCostsLess() {
        Around blowBy = new Around(100e3, 310, 5e-5, 400);
        CrankcasePumping hole = CrankcasePumping.of(crankcase(2, 0.5), Breather.hole(50e-6), blowBy, SPEED);
        CrankcasePumping reed = CrankcasePumping.of(crankcase(2, 0.5), Breather.checkValve(50e-6, 100), blowBy, SPEED);
        assertThat(reed.meanPressure()).isLessThan(-5e3).isLessThan(hole.meanPressure());
        assertThat(reed.meanEffective()).isLessThan(hole.meanEffective());
        assertThat(reed.throughput()).isCloseTo(5e-5, within(1e-12)); // what comes in goes out
        assertThat(hole.throughput()).isGreaterThan(1e-3); // it breathes in and out
    }

    @Test
    void aSealedCaseWithBlowByIsRefused() {
        Around blowBy = new Around(100e3, 310, 5e-5, 400);
        assertThatThrownBy(() -> CrankcasePumping.of(crankcase(2, 0.5), Breather.hole(0), blowBy, SPEED))
                .hasMessageContaining("until a seal gives way");
    }

    record Case(Crankcase crankcase, Breather breather, Around around, double speed) {}

    static Stream<Case> randomCases() {
        SplittableRandom random = new SplittableRandom(20261127);
        return Stream.generate(() -> {
                    double bore = 0.05 + 0.04 * random.nextDouble();
                    double radius = bore * (0.3 + 0.3 * random.nextDouble());
                    CrankMotion crank = new CrankMotion(
                            radius, radius * (3 + 1.5 * random.nextDouble()), 1e-3 * random.nextDouble());
                    double area = 0.25 * Math.PI * bore * bore;
                    double volume = area * crank.stroke() * (0.8 + 5 * random.nextDouble());
                    double hole = Math.pow(10, -6 + 3 * random.nextDouble());
                    boolean reed = random.nextBoolean();
                    return new Case(
                            new Crankcase(area, crank, volume, 300 + 100 * random.nextDouble(), random.nextDouble()),
                            reed ? new Breather(hole, 0.02 * hole, 500 * random.nextDouble()) : Breather.hole(hole),
                            new Around(
                                    70e3 + 35e3 * random.nextDouble(),
                                    270 + 60 * random.nextDouble(),
                                    1e-4 * random.nextDouble(),
                                    350 + 200 * random.nextDouble()),
                            (800 + 6000 * random.nextDouble()) * Math.PI / 30);
                })
                .limit(60);
    }

    @ParameterizedTest
    @MethodSource("randomCases")
    void energyIsAccountedForAndNothingIsGained(Case c) {
        CrankcasePumping pumping = CrankcasePumping.of(c.crankcase, c.breather, c.around, c.speed);
        assertThat(pumping.imbalance()).isLessThan(1e-6);
        assertThat(pumping.meanEffective()).isFinite();
        // blow-by that leaves by a small hole holds the case up on both strokes alike; what is lost is never below what
        // little its heat gives back
        assertThat(pumping.meanEffective()).isGreaterThan(-200);
        assertThat(pumping.lowest()).isLessThanOrEqualTo(pumping.meanPressure());
        assertThat(pumping.highest()).isGreaterThanOrEqualTo(pumping.meanPressure());
        assertThat(pumping.throughput()).isGreaterThanOrEqualTo(c.around.blowBy() * (1 - 1e-9));
    }

    /** The same case by eighth-order steps with error control, flow through a plain nozzle, run until it repeats: another way to the same figures. */
    @ParameterizedTest
    @MethodSource("fewCases")
    void anotherIntegratorAgrees(Case c) {
        double[] twin = twin(c);
        CrankcasePumping pumping = CrankcasePumping.of(c.crankcase, c.breather, c.around, c.speed);
        assertThat(pumping.meanEffective()).isCloseTo(twin[0], within(2e-3 * Math.abs(twin[0]) + 2));
        assertThat(pumping.meanPressure()).isCloseTo(twin[1], within(2e-3 * Math.abs(twin[1]) + 2));
    }

    static Stream<Case> fewCases() {
        return randomCases()
                .filter(c -> c.breather.out() > 5e-6 && c.breather.out() < 2e-4)
                .limit(6);
    }

    static double[] twin(Case c) {
        double r = MoistAir.DRY.gasConstant();
        double cv = 2.5 * r;
        double cp = 3.5 * r;
        Around around = c.around;
        OrdinaryDifferentialEquation law = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 4;
            }

            @Override
            public double[] computeDerivatives(double angle, double[] y) {
                double volume = c.crankcase.volume(angle);
                double temperature = y[1];
                double pressure = y[0] * r * temperature / volume;
                double slope = -c.crankcase.pistonArea() * c.crankcase.crank().travelSlope(angle);
                double out = 0;
                double in = 0;
                double back = around.pressure() + c.breather.cracking();
                if (pressure > back) {
                    out = plain(c.breather.out(), pressure, temperature, back, r);
                } else if (pressure < around.pressure()) {
                    in = plain(c.breather.in(), around.pressure(), around.temperature(), pressure, r);
                }
                double mass = (in + around.blowBy() - out) / c.speed;
                // m cv dT = (enthalpy in less out + heat) - cv T dm - p dV
                double heat = (cp
                                        * (in * around.temperature()
                                                + around.blowBy() * around.blowByTemperature()
                                                - out * temperature)
                                + c.crankcase.conductance() * (c.crankcase.wallTemperature() - temperature))
                        / c.speed;
                return new double[] {
                    mass, (heat - cv * temperature * mass - pressure * slope) / (y[0] * cv), pressure * slope, pressure
                };
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.02, 1e-12, 1e-9);
        double turn = 2 * Math.PI;
        double[] y = {around.pressure() * c.crankcase.volume(0) / (r * around.temperature()), around.temperature(), 0, 0
        };
        for (int turns = 0; turns < 4000; turns++) {
            double[] next = integrator
                    .integrate(law, new ODEState(0, new double[] {y[0], y[1], 0, 0}), turn)
                    .getPrimaryState();
            // a check valve chatters in the last digits; the slowest of these cases forgets its start within 50 turns
            boolean same = turns > 150 && Math.abs(next[0] / y[0] - 1) < 1e-6 && Math.abs(next[1] / y[1] - 1) < 1e-6;
            y = next;
            if (same) {
                return new double[] {-2 * y[2] / c.crankcase.displacement(), y[3] / turn - around.pressure()};
            }
        }
        throw new AssertionError("the twin does not settle: " + c);
    }

    /** Saint-Venant and Wantzel, written out anew. */
    private static double plain(double area, double from, double temperature, double to, double r) {
        double ratio = Math.max(to / from, Math.pow(1.2, -3.5));
        double speed = Math.sqrt(2 * 3.5 * r * temperature * (1 - Math.pow(ratio, 1 / 3.5)));
        return area * from / (r * temperature) * Math.pow(ratio, 1 / 1.4) * speed;
    }
}
