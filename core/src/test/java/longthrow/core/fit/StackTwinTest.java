package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.Sureness;
import longthrow.core.measurement.Normal;
import org.junit.jupiter.api.Test;

/**
 * The search against a twin that knows nothing of it: 300 seeded catalogues, every combination tried, every dimension worked out in millimetres at every
 * corner of the box of tolerances, its probability from slopes by finite differences. The same combinations, the same verdicts, prices, unknowns and
 * counts of what does not fit.
 */
class StackTwinTest {
    private static final int CATALOGUES = 300;
    private static final long MM = 1_000_000_000L;

    /** Numbers of one catalogue in millimetres, cc: value, half-width, standard uncertainty of each. */
    private static final class Catalogue {
        final SplittableRandom random;
        final double[][] stroke;
        final double[][] weight;
        final double[][] bore;
        final double[][] height;
        final double[][] skirt;
        final double[][] land;
        final double[][] ring;
        final double[][] crown;
        final double[][] length;
        final double[][] thick;
        final double[][] hole;
        final double[] deckHeight;
        final double[] sleeve;
        final double[] chamber;
        final StackColumns columns;
        final StackLimits limits;

        Catalogue(long seed) {
            random = new SplittableRandom(seed);
            boolean exact = seed % 5 == 0;
            int cranks = 1 + random.nextInt(4);
            int pistons = 1 + random.nextInt(6);
            int rods = 1 + random.nextInt(8);
            int gaskets = 1 + random.nextInt(4);
            stroke = draw(cranks, 50, 60, exact ? 0 : 0.05, 0);
            weight = draw(cranks, 36, 40, exact ? 0 : 0.3, 0.2);
            bore = draw(pistons, 65, 67, exact ? 0 : 0.02, 0);
            height = draw(pistons, 24, 27, exact ? 0 : 0.04, 0);
            skirt = draw(pistons, 16, 19, exact ? 0 : 0.1, 0.2);
            land = draw(pistons, 3, 6, exact ? 0 : 0.1, 0.2);
            ring = draw(pistons, 1, 2.5, exact ? 0 : 0.02, 0.2);
            crown = draw(pistons, -2, 3, exact ? 0 : 0.2, 0.1);
            length = draw(rods, 84, 88, exact ? 0 : 0.05, 0);
            thick = draw(gaskets, 0.8, 2, exact ? 0 : 0.05, 0);
            hole = draw(gaskets, 65.5, 69, exact ? 0 : 0.2, 0.1);
            deckHeight = one(139, 141, exact ? 0 : 0.06);
            sleeve = one(84, 90, exact ? 0 : 0.1);
            chamber = one(14, 20, exact ? 0 : 0.3);
            int crankGroups = 1 + random.nextInt(2);
            int rodGroups = 1 + random.nextInt(2);
            int pistonGroups = 1 + random.nextInt(2);
            columns = new StackColumns(
                    new StackColumns.Cranks(sizes(stroke), sizes(weight), each(cranks, crankGroups)),
                    new StackColumns.Pistons(
                            sizes(bore),
                            sizes(height),
                            sizes(skirt),
                            sizes(land),
                            sizes(ring),
                            new Volumes(column(crown, 0, 1e-6), column(crown, 1, 1e-6), column(crown, 2, 1e-6)),
                            each(pistons, pistonGroups)),
                    new StackColumns.Rods(sizes(length), each(rods, rodGroups)),
                    new StackColumns.Gaskets(sizes(thick), sizes(hole), each(gaskets, 1)),
                    pairings(crankGroups, rodGroups),
                    pairings(rodGroups, pistonGroups));
            limits = new StackLimits(
                    sizes(new double[][] {deckHeight}),
                    sizes(new double[][] {sleeve}),
                    chamber[0] * 1e-6,
                    chamber[1] * 1e-6,
                    chamber[2] * 1e-6,
                    window(-0.8, 1.4),
                    window(0.7, 2.3),
                    9.03,
                    12.47,
                    random.nextBoolean() ? 1_480_000 : 0,
                    window(0.3, 3.1),
                    random.nextBoolean() ? window(1.1, 1000) : Window.ANY,
                    random.nextBoolean() ? window(3.2, 1000) : Window.ANY,
                    random.nextBoolean() ? window(-1000, 10.5) : Window.ANY,
                    random.nextBoolean() ? 175.3e-6 : 0,
                    random.nextBoolean() ? 205.7e-6 : Double.POSITIVE_INFINITY,
                    random.nextBoolean() ? 17.9e-6 : 0,
                    random.nextBoolean() ? 800 : Double.NaN,
                    38.7,
                    MM);
        }

        /** Two decimals, tolerances to three; now and then a figure that is not said, as often as asked for. */
        private double[][] draw(int rows, double least, double most, double widest, double notSaid) {
            double[][] drawn = new double[rows][];
            for (int n = 0; n < rows; n++) {
                drawn[n] = random.nextDouble() < notSaid ? new double[] {Double.NaN, 0, 0} : one(least, most, widest);
            }
            return drawn;
        }

        private double[] one(double least, double most, double widest) {
            double value = Math.round(100 * random.nextDouble(least, most)) / 100.0;
            double half = widest == 0 ? 0 : Math.round(1000 * random.nextDouble(0, widest)) / 1000.0;
            return new double[] {value, half, half / (random.nextBoolean() ? Math.sqrt(3) : 1.96)};
        }

        private StackColumns.Each each(int rows, int groups) {
            long[] price = new long[rows];
            int[] group = new int[rows];
            int[] unknowns = new int[rows];
            for (int n = 0; n < rows; n++) {
                price[n] = random.nextInt(1, 30_000);
                group[n] = random.nextInt(groups);
                unknowns[n] = random.nextInt(6) == 0 ? 1 : 0;
            }
            group[0] = groups - 1; // every class has a row
            return new StackColumns.Each(price, group, unknowns);
        }

        private Pairing[][] pairings(int a, int b) {
            Pairing[][] table = new Pairing[a][b];
            for (Pairing[] row : table) {
                for (int n = 0; n < b; n++) {
                    row[n] = switch (random.nextInt(5)) {
                        case 0 -> Pairing.never(Obstacle.PIN_IN_ROD);
                        case 1 -> new Pairing(Sureness.PROBABLE, 1, 0, 0, null);
                        case 2 -> new Pairing(Sureness.SURE, 0, 1, 1500, null);
                        default -> Pairing.FREE;
                    };
                }
            }
            return table;
        }

        private static Window window(double least, double most) {
            return new Window(Math.round(least * MM), Math.round(most * MM));
        }

        private static Sizes sizes(double[][] of) {
            long[] value = new long[of.length];
            long[] half = new long[of.length];
            double[] u = new double[of.length];
            for (int n = 0; n < value.length; n++) {
                value[n] = Double.isNaN(of[n][0]) ? Sizes.NOT_SAID : Math.round(of[n][0] * MM);
                half[n] = Math.round(of[n][1] * MM);
                u[n] = of[n][2] * MM;
            }
            return new Sizes(value, half, u);
        }

        private static double[] column(double[][] of, int k, double unit) {
            return Arrays.stream(of).mapToDouble(r -> r[k] * unit).toArray();
        }
    }

    /** One combination by brute force. */
    private static final class Twin {
        private static final double A = Math.PI / 4 / 1000; // mm2 times mm to cc

        private final StackLimits limits;
        /** Stroke, weight, bore, height, skirt, land, ring, crown, length, thickness, hole, deck height, sleeve, chamber. */
        private final double[][] inputs;

        Sureness sureness = Sureness.SURE;
        boolean bySizes = true;
        int unknowns;

        Twin(Catalogue c, int i, int j, int k, int g) {
            this(c, c.limits, i, j, k, g);
        }

        Twin(Catalogue c, StackLimits limits, int i, int j, int k, int g) {
            this.limits = limits;
            inputs = new double[][] {
                c.stroke[i],
                c.weight[i],
                c.bore[j],
                c.height[j],
                c.skirt[j],
                c.land[j],
                c.ring[j],
                c.crown[j],
                c.length[k],
                c.thick[g],
                c.hole[g],
                c.deckHeight,
                c.sleeve,
                c.chamber
            };
        }

        private Twin(StackLimits limits, double[][] inputs) {
            this.limits = limits;
            this.inputs = inputs;
        }

        /** These very sizes, without tolerances. */
        Twin at(double[] x) {
            return new Twin(
                    limits,
                    Arrays.stream(x).mapToObj(v -> new double[] {v, 0, 0}).toArray(double[][]::new));
        }

        boolean isInBoxes(double[] x) {
            for (int n = 0; n < x.length; n++) {
                if (Math.abs(x[n] - inputs[n][0]) > inputs[n][1] + 1e-6) {
                    return false; // what is not known is NaN and passes
                }
            }
            return true;
        }

        /** Anywhere in the boxes, one in three sizes at an end of its own. */
        double[] somewhere(SplittableRandom random) {
            double[] x = nominal();
            for (int n = 0; n < x.length; n++) {
                double share = random.nextInt(3) == 0 ? 2 * random.nextInt(2) - 1 : 2 * random.nextDouble() - 1;
                x[n] += share * inputs[n][1];
            }
            return x;
        }

        private static double deck(double[] x) {
            return x[11] - x[0] / 2 - x[8] - x[3];
        }

        private static double room(double[] x) {
            return x[13] + x[7] + A * x[10] * x[10] * x[9] + A * x[2] * x[2] * deck(x);
        }

        private static double swept(double[] x) {
            return A * x[2] * x[2] * x[0];
        }

        private static double ratio(double[] x) {
            double room = room(x);
            return room > 0 ? 1 + swept(x) / room : Double.POSITIVE_INFINITY;
        }

        boolean fits() {
            return held(limits.rodRatioMillionths() > 0, x -> x[8] / x[0], limits.rodRatioMillionths() / 1e6, 1e9, 0, 8)
                    && held(
                            true,
                            Twin::deck,
                            mm(limits.deck().least()),
                            mm(limits.deck().most()),
                            0,
                            3,
                            8,
                            11)
                    && held(
                            bounded(limits.sweptLeast(), limits.sweptMost()),
                            Twin::swept,
                            limits.sweptLeast() * 1e6,
                            limits.sweptMost() * 1e6,
                            0,
                            2)
                    && flutter()
                    && held(
                            !limits.ringBelowDeck().isAny(),
                            x -> deck(x) + x[5],
                            mm(limits.ringBelowDeck().least()),
                            1e9,
                            0,
                            3,
                            5,
                            8,
                            11)
                    && held(
                            !limits.skirtGap().isAny(),
                            x -> x[8] - x[0] / 2 - x[4] - x[1],
                            mm(limits.skirtGap().least()),
                            1e9,
                            0,
                            1,
                            4,
                            8)
                    && held(
                            !limits.skirtOut().isAny(),
                            x -> x[0] + deck(x) + x[3] + x[4] - x[12],
                            -1e9,
                            mm(limits.skirtOut().most()),
                            0,
                            4,
                            8,
                            11,
                            12)
                    && held(
                            true,
                            x -> x[10] - x[2],
                            mm(limits.gasketOverBore().least()),
                            mm(limits.gasketOverBore().most()),
                            2,
                            10)
                    && held(
                            true,
                            x -> deck(x) + x[9],
                            mm(limits.squish().least()),
                            mm(limits.squish().most()),
                            0,
                            3,
                            8,
                            9,
                            11)
                    && volumes();
        }

        private static boolean bounded(double least, double most) {
            return least > 0 || most < Double.POSITIVE_INFINITY;
        }

        private boolean volumes() {
            if (Double.isNaN(inputs[7][0]) || Double.isNaN(inputs[10][0])) {
                unknowns++;
                return true;
            }
            int[] all = {0, 2, 3, 7, 8, 9, 10, 11, 13};
            return held(true, Twin::ratio, limits.ratioLeast(), limits.ratioMost(), all)
                    && held(limits.clearanceLeast() > 0, Twin::room, limits.clearanceLeast() * 1e6, 1e9, all);
        }

        /** Acceleration times ring thickness; by what the search says of it, no probability is made. */
        private boolean flutter() {
            if (Double.isNaN(limits.wantedSpeed())) {
                return true;
            }
            if (Double.isNaN(inputs[6][0])) {
                unknowns++;
                return true;
            }
            ToDoubleFunction<double[]> load =
                    x -> x[0] / 2 * (1 + x[0] / 2 / x[8]) * x[6] * 1e-6 * limits.wantedSpeed() * limits.wantedSpeed();
            double[] ends = ends(load, 0, 6, 8);
            if (ends[1] > limits.ringFlutter()) {
                sureness = Sureness.worse(sureness, Sureness.SELECTION);
            }
            return ends[0] <= limits.ringFlutter();
        }

        private static double mm(long picometres) {
            return picometres / (double) MM;
        }

        private double[] nominal() {
            return Arrays.stream(inputs).mapToDouble(r -> r[0]).toArray();
        }

        /** Smallest and largest over every corner of the box. */
        private double[] ends(ToDoubleFunction<double[]> f, int... of) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int corner = 0; corner < 1 << of.length; corner++) {
                double[] x = nominal();
                for (int n = 0; n < of.length; n++) {
                    x[of[n]] += ((corner >> n & 1) == 0 ? -1 : 1) * inputs[of[n]][1];
                }
                double y = f.applyAsDouble(x);
                low = Math.min(low, y);
                high = Math.max(high, y);
            }
            return new double[] {low, high};
        }

        private boolean held(boolean asked, ToDoubleFunction<double[]> f, double least, double most, int... of) {
            if (!asked) {
                return true;
            }
            for (int n : of) {
                if (Double.isNaN(inputs[n][0])) {
                    unknowns++;
                    return true;
                }
            }
            double grain = 1e-9; // lengths fall on their limits exactly; doubles only nearly
            double[] ends = ends(f, of);
            if (ends[0] >= least - grain && ends[1] <= most + grain) {
                return true;
            }
            if (ends[1] < least - grain || ends[0] > most + grain) {
                return false;
            }
            double u = 0;
            for (int n : of) {
                double[] up = nominal();
                double[] down = nominal();
                up[n] += 1e-4;
                down[n] -= 1e-4;
                double slope = (f.applyAsDouble(up) - f.applyAsDouble(down)) / 2e-4;
                u += slope * slope * inputs[n][2] * inputs[n][2];
            }
            double y = f.applyAsDouble(nominal());
            bySizes &= y >= least - grain && y <= most + grain;
            double kept = Normal.atMost((y - least) / Math.sqrt(u)) + Normal.atMost((most - y) / Math.sqrt(u)) - 1;
            sureness = Sureness.worse(sureness, kept >= 0.95 ? Sureness.PROBABLE : Sureness.SELECTION);
            return true;
        }
    }

    private static Map<String, String> bruteForce(Catalogue c) {
        Map<String, String> found = new TreeMap<>();
        for (int i = 0; i < c.stroke.length; i++) {
            for (int j = 0; j < c.height.length; j++) {
                for (int k = 0; k < c.length.length; k++) {
                    Pairing one = c.columns
                            .crankRod[c.columns.cranks.each().group()[i]][
                            c.columns.rods.each().group()[k]];
                    Pairing two = c.columns
                            .rodPiston[c.columns.rods.each().group()[k]][
                            c.columns.pistons.each().group()[j]];
                    for (int g = 0; g < c.thick.length && one.fits() && two.fits(); g++) {
                        Twin twin = new Twin(c, i, j, k, g);
                        if (twin.fits()) {
                            Sureness sureness =
                                    Sureness.worse(twin.sureness, Sureness.worse(one.sureness(), two.sureness()));
                            long price = one.price()
                                    + two.price()
                                    + c.columns.cranks.each().price()[i]
                                    + c.columns.pistons.each().price()[j]
                                    + c.columns.rods.each().price()[k]
                                    + c.columns.gaskets.each().price()[g];
                            int unknowns = twin.unknowns
                                    + one.unknowns()
                                    + two.unknowns()
                                    + c.columns.cranks.each().unknowns()[i]
                                    + c.columns.pistons.each().unknowns()[j]
                                    + c.columns.rods.each().unknowns()[k]
                                    + c.columns.gaskets.each().unknowns()[g];
                            found.put(
                                    i + " " + j + " " + k + " " + g,
                                    sureness + " " + twin.bySizes + " price " + price + " unknowns " + unknowns
                                            + " cuts " + (one.cuts() + two.cuts()));
                        }
                    }
                }
            }
        }
        return found;
    }

    @Test
    void theSearchFindsWhatBruteForceFindsOnThreeHundredCatalogues() {
        int all = 0;
        int[] kinds = new int[Sureness.values().length];
        for (long seed = 0; seed < CATALOGUES; seed++) {
            Catalogue c = new Catalogue(seed);
            Map<String, String> expected = bruteForce(c);
            StackSearch search = new StackSearch(c.columns, c.limits);
            Map<String, String> found = new TreeMap<>();
            List<Combination> combinations = new ArrayList<>();
            search.each(f -> {
                combinations.add(f);
                found.put(
                        f.crank() + " " + f.piston() + " " + f.rod() + " " + f.gasket(),
                        f.sureness() + " " + f.bySizes() + " price " + f.price() + " unknowns " + f.unknowns()
                                + " cuts " + f.cuts());
                return true;
            });
            assertThat(found).as("catalogue %d", seed).isEqualTo(expected);
            long[] prices = combinations.stream()
                    .mapToLong(Combination::price)
                    .sorted()
                    .limit(7)
                    .toArray();
            assertThat(search.cheapest(7).stream().mapToLong(Combination::price).toArray())
                    .as("catalogue %d", seed)
                    .isEqualTo(prices);
            long rejected = search.rejections().values().stream()
                    .mapToLong(StackSearch.Rejected::count)
                    .sum();
            assertThat(rejected + found.size()).isEqualTo(c.columns.combinations());
            all += found.size();
            combinations.forEach(f -> kinds[Arrays.asList(Sureness.values()).indexOf(f.sureness())]++);
        }
        // the test is of no worth unless every verdict is met with often
        assertThat(all).isGreaterThan(500);
        assertThat(kinds[0]).isGreaterThan(40);
        assertThat(kinds[1]).isGreaterThan(40);
        assertThat(kinds[2]).isGreaterThan(40);
    }

    /** Narrow windows, wide tolerances: limits that each could be met, and often not all at once. */
    private static StackLimits narrow(StackLimits l, double rounding) {
        return new StackLimits(
                l.deckHeight(),
                l.sleeve(),
                l.chamber(),
                l.chamberHalf(),
                l.chamberUncertainty(),
                Catalogue.window(-0.12 - rounding, 0.21 + rounding),
                Catalogue.window(1.21 - rounding, 1.36 + rounding),
                10.78 - rounding,
                10.91 + rounding,
                0,
                Catalogue.window(0.3 - rounding, 3.1 + rounding),
                l.skirtGap(),
                l.ringBelowDeck(),
                l.skirtOut(),
                0,
                Double.POSITIVE_INFINITY,
                0,
                Double.NaN,
                38.7,
                MM);
    }

    /** Sizes in the order of {@link Twin#inputs}; what the pieces leave open stays at the middle of its box. */
    private static double[] point(Twin twin, Map<Together.Size, Double> pieces) {
        Together.Size[] order = {
            Together.Size.STROKE,
            Together.Size.COUNTERWEIGHT,
            Together.Size.BORE,
            Together.Size.HEIGHT,
            Together.Size.SKIRT,
            Together.Size.LAND,
            null,
            Together.Size.CROWN,
            Together.Size.ROD,
            Together.Size.GASKET,
            Together.Size.HOLE,
            Together.Size.DECK_HEIGHT,
            Together.Size.SLEEVE,
            Together.Size.CHAMBER
        };
        double[] x = twin.nominal();
        for (int n = 0; n < x.length; n++) {
            if (order[n] != null && pieces.containsKey(order[n])) {
                x[n] = pieces.get(order[n]);
            }
        }
        return x;
    }

    @Test
    void onlyWithSelectionMeansThatOneSetOfPiecesKeepsEveryLimitAtOnce() {
        int possible = 0;
        int impossible = 0;
        SplittableRandom random = new SplittableRandom(7);
        for (long seed = 0; seed < 5 * CATALOGUES; seed++) {
            Catalogue c = new Catalogue(seed);
            StackLimits limits = narrow(c.limits, 0);
            Together together = new Together(c.columns, limits);
            List<Combination> withSelection = new ArrayList<>();
            new StackSearch(c.columns, limits).each(f -> {
                if (f.sureness() == Sureness.SELECTION) {
                    withSelection.add(f);
                }
                return true;
            });
            for (Combination f : withSelection) {
                var pieces = together.pieces(f, Window.ANY);
                // a rounding of the solver's: 1e-5 mm, far below any size that is made
                Twin twin = new Twin(c, narrow(c.limits, 1e-5), f.crank(), f.piston(), f.rod(), f.gasket());
                if (pieces.isPresent()) {
                    possible++;
                    double[] x = point(twin, pieces.get());
                    assertThat(twin.isInBoxes(x)).as("%s", pieces.get()).isTrue();
                    assertThat(twin.at(x).fits()).as("%s", pieces.get()).isTrue();
                } else {
                    impossible++;
                    Twin strict = new Twin(c, limits, f.crank(), f.piston(), f.rod(), f.gasket());
                    for (int trial = 0; trial < 2000; trial++) {
                        assertThat(strict.at(strict.somewhere(random)).fits())
                                .as("seed %d %s", seed, f)
                                .isFalse();
                    }
                }
            }
        }
        assertThat(possible).isGreaterThan(100);
        assertThat(impossible).isGreaterThan(20);
    }
}
