package longthrow.core.fit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * The question of 144 million combinations: 60 crankshafts, 300 pistons, 200 rods, 40 gaskets, drawn at random to two decimals (invented; the four tables lie
 * beside this class). Deck height 220 mm, chamber 52 cc; deck clearance -0.1025 to 0.4025 mm, gasket hole up to 2.005 mm over the bore, rod ratio at
 * least 1.49999, compression ratio 9.5 to 11. Limits lie off the grid of two decimals, so that no rounding decides.
 */
public final class JoinQuestion {
    static final long MILLIMETRE = 1_000_000_000L;

    final long[][] crank;
    final long[][] piston;
    final long[][] rod;
    final long[][] gasket;
    /** Classes of crankpin and of pin; all 0 unless asked for. */
    private final int journals;

    private final int pins;

    private JoinQuestion(long[][] crank, long[][] piston, long[][] rod, long[][] gasket, int journals, int pins) {
        this.crank = crank;
        this.piston = piston;
        this.rod = rod;
        this.gasket = gasket;
        this.journals = journals;
        this.pins = pins;
    }

    /** The four tables; columns in hundredths. */
    public static JoinQuestion tables() {
        return new JoinQuestion(read("crank.csv"), read("piston.csv"), read("rod.csv"), read("gasket.csv"), 1, 1);
    }

    /** The same with crankpins of three sizes and pins of four, dealt out in turn. */
    public JoinQuestion withSizes() {
        return new JoinQuestion(crank, piston, rod, gasket, 3, 4);
    }

    /** Lists so many times as long, drawn from the same ranges. */
    public static JoinQuestion larger(int times) {
        SplittableRandom random = new SplittableRandom(7);
        return new JoinQuestion(
                draw(random, 60 * times, new double[] {70, 102}, new double[] {150, 1500}),
                draw(
                        random,
                        300 * times,
                        new double[] {81, 88},
                        new double[] {26, 42},
                        new double[] {-14, 8},
                        new double[] {60, 900}),
                draw(random, 200 * times, new double[] {125, 160}, new double[] {80, 1200}),
                draw(random, 40 * times, new double[] {81, 90}, new double[] {0.3, 2.2}, new double[] {15, 250}),
                1,
                1);
    }

    private static long[][] draw(SplittableRandom random, int rows, double[]... ranges) {
        long[][] columns = new long[ranges.length][rows];
        for (int n = 0; n < rows; n++) {
            for (int k = 0; k < ranges.length; k++) {
                columns[k][n] = Math.round(100 * random.nextDouble(ranges[k][0], ranges[k][1]));
            }
        }
        return columns;
    }

    private static long[][] read(String name) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(JoinQuestion.class.getResourceAsStream(name), name), StandardCharsets.UTF_8))) {
            List<String> lines = reader.lines().skip(1).toList();
            int columns = lines.get(0).split(",", -1).length - 1;
            long[][] table = new long[columns][lines.size()];
            for (int n = 0; n < lines.size(); n++) {
                String[] cells = lines.get(n).split(",", -1);
                for (int k = 0; k < columns; k++) {
                    table[k][n] = Math.round(100 * Double.parseDouble(cells[k + 1]));
                }
            }
            return table;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Sizes lengths(long[] hundredths) {
        long[] lengths = new long[hundredths.length];
        for (int n = 0; n < lengths.length; n++) {
            lengths[n] = hundredths[n] * (MILLIMETRE / 100);
        }
        return Sizes.exact(lengths);
    }

    private static int[] dealt(int count, int groups) {
        int[] group = new int[count];
        for (int n = 0; n < count; n++) {
            group[n] = n % groups;
        }
        return group;
    }

    private StackColumns.Each each(long[] price, int groups) {
        int[] group = dealt(price.length, groups);
        return new StackColumns.Each(price, group, new int[price.length]);
    }

    public StackColumns columns() {
        double[] crown = new double[piston[2].length];
        for (int n = 0; n < crown.length; n++) {
            crown[n] = -piston[2][n] * 1e-8;
        }
        int sizes = journals * pins;
        int[] of = dealt(rod[0].length, sizes);
        Pairing[][] crankRod = new Pairing[journals][sizes];
        Pairing[][] rodPiston = new Pairing[sizes][pins];
        for (int q = 0; q < sizes; q++) {
            for (int a = 0; a < journals; a++) {
                crankRod[a][q] = q / pins == a ? Pairing.FREE : Pairing.never(Obstacle.ROD_ON_CRANKPIN);
            }
            for (int b = 0; b < pins; b++) {
                rodPiston[q][b] = q % pins == b ? Pairing.FREE : Pairing.never(Obstacle.PIN_IN_ROD);
            }
        }
        return new StackColumns(
                new StackColumns.Cranks(lengths(crank[0]), Sizes.unknown(crank[0].length), each(crank[1], journals)),
                new StackColumns.Pistons(
                        lengths(piston[0]),
                        lengths(piston[1]),
                        Sizes.unknown(crown.length),
                        Sizes.unknown(crown.length),
                        Sizes.unknown(crown.length),
                        Volumes.exact(crown),
                        each(piston[3], pins)),
                new StackColumns.Rods(lengths(rod[0]), new StackColumns.Each(rod[1], of, new int[of.length])),
                new StackColumns.Gaskets(lengths(gasket[1]), lengths(gasket[0]), StackColumns.Each.priced(gasket[2])),
                crankRod,
                rodPiston);
    }

    public StackLimits limits() {
        return new StackLimits(
                Sizes.exact(220 * MILLIMETRE),
                Sizes.unknown(1),
                52e-6,
                0,
                0,
                new Window(-102_500_000, 402_500_000),
                Window.ANY,
                9.5,
                11,
                1_499_990,
                new Window(0, 2_005_000_000L),
                Window.ANY,
                Window.ANY,
                Window.ANY,
                0,
                Double.POSITIVE_INFINITY,
                0,
                Double.NaN,
                0,
                MILLIMETRE);
    }

    /** Whether a crankshaft, a piston and a rod are of one size each. */
    boolean matches(int i, int j, int k) {
        int q = k % (journals * pins);
        return q / pins == i % journals && q % pins == j % pins;
    }
}
