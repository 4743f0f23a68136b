package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import longthrow.core.cycle.DoesNotRunException;
import longthrow.core.cycle.OperatingPoint;
import longthrow.core.cycle.Traces;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.pipe.PlainKernel;
import org.junit.jupiter.api.Test;

/** A hundred engines that could be: each settles or says why not, and no number that is none leaves. */
class RandomEnginesTest {
    private static final int ENGINES = 100;

    @Test
    void allSettleOrSayWhyNot() {
        SplittableRandom random = new SplittableRandom(20261127);
        List<String> said = new ArrayList<>();
        List<String> unsettled = new ArrayList<>();
        int settled = 0;
        int stalled = 0;
        for (int i = 0; i < ENGINES; i++) {
            Figures figures = figures(random);
            // no piston of such an engine runs faster on the mean than 24 m/s: published ones reach 22
            double speed =
                    Math.min(random.nextDouble(800, 9500) * Math.PI / 30, 24 * Math.PI / figures.number(Needed.STROKE));
            try {
                Curve.Point point = Curve.at(figures, speed, Curve.MESH, PlainKernel::new, () -> true)
                        .orElseThrow();
                check(point);
                OperatingPoint.Effort effort = point.point().effort();
                settled += effort.settled() ? 1 : 0;
                if (!effort.settled()) {
                    unsettled.add(
                            i + ": " + effort + " at " + Math.round(speed * 30 / Math.PI) + " rpm, " + figures.kind());
                }
            } catch (DoesNotRunException e) {
                assertThat(e.getMessage()).isNotBlank();
                stalled += String.valueOf(e.getMessage()).contains("stalls") ? 1 : 0;
                said.add(i + ": " + e.getMessage());
            }
        }
        assertThat(said.size() - stalled)
                .as("did not run for another reason than a light wheel: " + said)
                .isLessThanOrEqualTo(1);
        assertThat(settled + said.size() + unsettled.size()).isEqualTo(ENGINES);
        assertThat(unsettled).as("cycles that do not repeat, and say so").isEmpty();
    }

    private static void check(Curve.Point point) {
        assertThat(point.torque()).isFinite();
        assertThat(point.friction()).isFinite().isPositive();
        OperatingPoint gas = point.point();
        assertThat(gas.charge().volumetric()).isFinite().isPositive();
        assertThat(gas.charge().residual()).isBetween(0.0, 1.0);
        assertThat(gas.balance().mass()).isFinite();
        assertThat(gas.balance().energy()).isFinite();
        gas.fire().ifPresent(fire -> assertThat(fire.octaneWanted()).isFinite().isPositive());
        for (Traces.Trace trace : Traces.Trace.values()) {
            assertThat(gas.traces().all(trace)).doesNotContain(Double.NaN, Double.POSITIVE_INFINITY);
        }
    }

    private static Figures figures(SplittableRandom random) {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        double bore = random.nextDouble(0.045, 0.105);
        known.put(Needed.BORE, Measured.exact(bore));
        known.put(Needed.STROKE, Measured.exact(bore * random.nextDouble(0.6, 1.3)));
        known.put(Needed.COMPRESSION_RATIO, Measured.exact(random.nextDouble(5.5, 12.5)));
        Kind.Use use = pick(random, Kind.Use.values());
        Kind.Layout layout = pick(random, Kind.Layout.values());
        int valves = layout == Kind.Layout.OVERHEAD_CAM ? random.nextInt(1, 3) : 1;
        Kind kind = new Kind(
                use, pick(random, Kind.Cooling.values()), layout, valves, valves, pick(random, Kind.Basis.values()));
        Fuel fuel = switch (random.nextInt(4)) {
            case 0 -> Fuel.methanol();
            case 1 -> Fuel.e85();
            case 2 -> Fuel.e10();
            default -> Fuel.petrol();
        };
        return Figures.of(kind, fuel, known);
    }

    private static <T> T pick(SplittableRandom random, T[] of) {
        return of[random.nextInt(of.length)];
    }
}
