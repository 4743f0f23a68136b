package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReconciliationTest {
    private static final int FIGURES = 14;

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    /** Readings of single figures, sums and products, some checked by others, some not, some figures read by nobody; three shared instruments. */
    private static List<Observation> bench(SplittableRandom random) {
        List<Observation> bench = new ArrayList<>();
        int readings = 6 + random.nextInt(16);
        for (int i = 0; i < readings; i++) {
            int a = random.nextInt(FIGURES);
            int b = random.nextInt(FIGURES);
            Expression x = Expression.input("f" + a);
            Expression y = Expression.input("f" + b);
            Expression read = switch (random.nextInt(3)) {
                case 0 -> x;
                case 1 -> x.plus(y.half());
                default -> x.times(y);
            };
            if (a == b) {
                read = x;
            }
            Map<Source, Double> errors = new LinkedHashMap<>();
            double u = 0.01 + 0.05 * random.nextDouble();
            errors.put(new Source("scatter " + i, Source.Kind.SCATTER, "s", u, 2, u * 1.3), 1.0);
            Source shared = Source.known("tool " + random.nextInt(3), Source.Kind.INSTRUMENT, "t", 0.03);
            errors.put(shared, random.nextBoolean() ? 1.0 : -0.5);
            Formula formula = Formula.of("r" + i, read);
            double value = formula.at(name -> 4 + Integer.parseInt(name.substring(1))) + 0.05 * random.nextGaussian();
            bench.add(new Observation("r" + i, formula, value, errors));
        }
        return bench;
    }

    /** The plain twin solves all readings at once. */
    @ParameterizedTest
    @MethodSource("seeds")
    void takingUncheckedReadingsOffChangesNothing(int seed) {
        List<Observation> bench = bench(new SplittableRandom(seed));
        List<Reconciliation.Sought> sought = IntStream.range(0, FIGURES)
                .mapToObj(j -> new Reconciliation.Sought("f" + j, "f" + j, 5 + j, 1000))
                .toList();
        Reconciliation fast = Reconciliation.of(bench, sought);
        LeastSquares plain = new LeastSquares(bench, sought, null);
        double squares = 0;
        for (double r : plain.whitenedResidual) {
            squares += r * r;
        }
        double explained = 0;
        for (int j = 0; j < FIGURES; j++) {
            Measured figure = fast.figure("f" + j);
            double u = spread(plain, bench, j);
            explained += 1 - plain.gainOfPulls[j][j];
            assertThat(figure.isUnknown()).as("f" + j).isEqualTo(u > 1);
            if (!figure.isUnknown()) {
                assertThat(figure.value())
                        .as("f" + j)
                        .isCloseTo(plain.figure[j], within(1e-5 * u)); // pulls move it by some 1e-6 u
                assertThat(figure.standardUncertainty()).as("u f" + j).isCloseTo(u, within(1e-6 * u));
            }
        }
        assertThat(fast.redundancy()).isEqualTo((int) Math.round(bench.size() - explained));
        assertThat(fast.chiSquared()).isCloseTo(squares, within(1e-4 * (1 + squares)));
        for (int i = 0; i < bench.size(); i++) {
            double sum = 0;
            for (double x : plain.residualPerUnit[i]) {
                sum += x * x;
            }
            assertThat(fast.sensitivityTo(i))
                    .as("check on r" + i)
                    .isCloseTo(Math.sqrt(sum), within(0.01)); // a pull sees 1 / width; a check is 10 and more
        }
    }

    private static double spread(LeastSquares plain, List<Observation> bench, int figure) {
        Map<Source, Double> sum = new LinkedHashMap<>();
        for (int i = 0; i < bench.size(); i++) {
            double gain = plain.gainOfReadings[figure][i];
            bench.get(i)
                    .errors()
                    .forEach((source, factor) ->
                            sum.merge(source, gain * factor * source.standardUncertainty(), Double::sum));
        }
        double variance = 0;
        for (double c : sum.values()) {
            variance += c * c;
        }
        for (int k = 0; k < FIGURES; k++) {
            variance += Math.pow(1000 * plain.gainOfPulls[figure][k], 2);
        }
        return Math.sqrt(variance);
    }
}
