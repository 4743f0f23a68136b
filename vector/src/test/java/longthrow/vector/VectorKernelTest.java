package longthrow.vector;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow;
import longthrow.core.pipe.PipeFlow.Side;
import longthrow.core.pipe.PipeGases;
import longthrow.core.pipe.PipeShape;
import longthrow.core.pipe.PlainKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The two kernels give the same digits, whatever is in the pipe and however many cells it has. */
class VectorKernelTest {
    private static final PipeGases GASES = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));
    private static final int STEPS = 300;

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 5, 7, 8, 9, 15, 16, 17, 18, 33, 40, 100, 101})
    void digitsAreThoseOfThePlainKernel(int cells) {
        SplittableRandom random = new SplittableRandom(20261127 + cells);
        double narrow = 0.01 + 0.04 * random.nextDouble();
        double grows = 0.06 * (random.nextDouble() - 0.3);
        PipeShape shape =
                PipeShape.of(0.5, cells, x -> narrow + Math.max(-0.5 * narrow, grows * x) + 0.002 * Math.sin(15 * x));
        PipeFlow plain = new PipeFlow(shape, GASES, new PlainKernel());
        PipeFlow vector = new PipeFlow(shape, GASES, new VectorKernel());
        DoubleUnaryOperator pressure = steps(random, 3e4, 8e5);
        DoubleUnaryOperator temperature = steps(random, 250, 2200);
        DoubleUnaryOperator velocity = steps(random, -250, 250);
        DoubleUnaryOperator burned = steps(random, 0, 1);
        for (PipeFlow flow : new PipeFlow[] {plain, vector}) {
            flow.fill(pressure, temperature, velocity, burned);
            for (int k = 0; k < cells; k++) {
                flow.wall(k, 0.5 + 0.01 * k, 0.6, 400 + k);
            }
        }
        for (int step = 0; step < STEPS; step++) {
            double dt = plain.longestStep();
            same(vector.longestStep(), dt);
            for (PipeFlow flow : new PipeFlow[] {plain, vector}) {
                flow.predict(dt);
                flow.closed(Side.LEFT);
                flow.open(Side.RIGHT);
                flow.finish(dt);
            }
            for (int k = 0; k < cells; k++) {
                same(vector.density(k), plain.density(k));
                same(vector.velocity(k), plain.velocity(k));
                same(vector.pressure(k), plain.pressure(k));
                same(vector.temperature(k), plain.temperature(k));
                same(vector.burned(k), plain.burned(k));
            }
        }
        assertThat(plain.repaired()).isEqualTo(vector.repaired());
    }

    /** Five pieces of one value each, by chance. */
    private static DoubleUnaryOperator steps(SplittableRandom random, double least, double most) {
        double[] values = random.doubles(5, least, most).toArray();
        return x -> values[Math.min(4, (int) (10 * x))];
    }

    private static void same(double got, double wanted) {
        assertThat(Double.doubleToRawLongBits(got)).isEqualTo(Double.doubleToRawLongBits(wanted));
    }

    /** A step that takes more than there is, done again in halves: the same way too. */
    @Test
    void repairsAreTheSame() {
        PipeFlow plain = new PipeFlow(PipeShape.straight(1, 40, 0.03), GASES, new PlainKernel());
        PipeFlow vector = new PipeFlow(PipeShape.straight(1, 40, 0.03), GASES, new VectorKernel());
        for (PipeFlow flow : new PipeFlow[] {plain, vector}) {
            flow.fill(x -> 1e5, x -> 300, x -> x < 0.5 ? -900 : 900, x -> x < 0.5 ? 0 : 1);
        }
        for (int step = 0; step < 60; step++) {
            double dt = (step > 5 ? 2.5 : 1) * plain.longestStep();
            for (PipeFlow flow : new PipeFlow[] {plain, vector}) {
                flow.predict(dt);
                flow.open(Side.LEFT);
                flow.open(Side.RIGHT);
                flow.finish(dt);
            }
            for (int k = 0; k < 40; k++) {
                same(vector.density(k), plain.density(k));
                same(vector.pressure(k), plain.pressure(k));
            }
        }
        assertThat(plain.repaired()).isPositive().isEqualTo(vector.repaired());
    }

    @Test
    void theTestsRunWithTheModuleAndTheBestIsThatOnVectors() {
        assertThat(Kernels.vectors()).isTrue();
        assertThat(Kernels.best().get()).isInstanceOf(VectorKernel.class);
    }
}
