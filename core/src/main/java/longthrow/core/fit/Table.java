package longthrow.core.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Rows turned into the columns of a search, each kind grouped into classes of parts that meet their neighbours alike. */
final class Table {
    private final List<Row> cranks;
    private final List<Row> pistons;
    private final List<Row> rods;
    private final List<Row> gaskets;
    private final Neighbours neighbours;
    private final StackColumns columns;

    Table(Neighbours neighbours, List<Row> cranks, List<Row> pistons, List<Row> rods, List<Row> gaskets) {
        this.neighbours = neighbours;
        this.cranks = cranks;
        this.pistons = pistons;
        this.rods = rods;
        this.gaskets = gaskets;
        Classes byCrank = new Classes(cranks, neighbours::crank, Term.CRANKPIN_DIAMETER, Term.CRANKPIN_WIDTH);
        Classes byPiston = new Classes(pistons, neighbours::piston, Term.PIN_DIAMETER, Term.BOSS_GAP);
        Classes byRod = new Classes(
                rods,
                neighbours::rod,
                Term.BIG_END_BORE,
                Term.BIG_END_WIDTH,
                Term.SMALL_END_BORE,
                Term.SMALL_END_WIDTH);
        Classes byGasket = new Classes(gaskets, r -> Pairing.FREE);
        columns = new StackColumns(
                new StackColumns.Cranks(
                        lengths(cranks, Term.STROKE),
                        lengths(cranks, Term.COUNTERWEIGHT_RADIUS),
                        each(cranks, byCrank)),
                new StackColumns.Pistons(
                        bores(),
                        lengths(pistons, Term.COMPRESSION_HEIGHT),
                        lengths(pistons, Term.SKIRT_BELOW_PIN),
                        lengths(pistons, Term.TOP_LAND_HEIGHT),
                        lengths(pistons, Term.TOP_RING_THICKNESS),
                        volumes(),
                        each(pistons, byPiston)),
                new StackColumns.Rods(lengths(rods, Term.ROD_LENGTH), each(rods, byRod)),
                new StackColumns.Gaskets(
                        lengths(gaskets, Term.GASKET_THICKNESS),
                        lengths(gaskets, Term.GASKET_BORE),
                        each(gaskets, byGasket)),
                pairings(
                        byCrank,
                        byRod,
                        (c, r) -> neighbours.crank(c).and(neighbours.rod(r)).and(neighbours.crankRod(c, r))),
                pairings(byRod, byPiston, (r, p) -> neighbours.piston(p).and(neighbours.rodPiston(r, p))));
    }

    StackColumns columns() {
        return columns;
    }

    List<Row> cranks() {
        return cranks;
    }

    List<Row> pistons() {
        return pistons;
    }

    List<Row> rods() {
        return rods;
    }

    List<Row> gaskets() {
        return gaskets;
    }

    /** A combination with its rows; the machining that its pairs need is worked out for the best only. */
    Found found(Combination one, Row head, Row.@Nullable Cut deckCut) {
        return new Found(
                cranks.get(one.crank()),
                pistons.get(one.piston()),
                rods.get(one.rod()),
                gaskets.get(one.gasket()),
                head,
                deckCut,
                List.of(),
                one);
    }

    /** Rows of one kind by what their neighbours, and the engine, see of them. */
    private static final class Classes {
        private final int[] of;
        private final List<Row> first = new ArrayList<>();

        Classes(List<Row> rows, Function<Row, Pairing> alone, Term... seen) {
            of = new int[rows.size()];
            Map<List<Object>, Integer> numbers = new LinkedHashMap<>();
            for (int n = 0; n < of.length; n++) {
                Row row = rows.get(n);
                List<Object> signature = new ArrayList<>();
                signature.add(alone.apply(row));
                signature.add(row.words());
                for (Term term : seen) {
                    signature.add(row.dim(term));
                }
                Integer number = numbers.get(signature);
                if (number == null) {
                    number = first.size();
                    numbers.put(signature, number);
                    first.add(row);
                }
                of[n] = number;
            }
        }
    }

    private static Pairing[][] pairings(Classes a, Classes b, Pairs pairs) {
        Pairing[][] table = new Pairing[a.first.size()][b.first.size()];
        for (int i = 0; i < table.length; i++) {
            for (int j = 0; j < table[i].length; j++) {
                table[i][j] = pairs.of(a.first.get(i), b.first.get(j));
            }
        }
        return table;
    }

    private interface Pairs {
        Pairing of(Row a, Row b);
    }

    private static StackColumns.Each each(List<Row> rows, Classes classes) {
        long[] price = new long[rows.size()];
        int[] unknowns = new int[rows.size()];
        for (int n = 0; n < price.length; n++) {
            price[n] = rows.get(n).knownPrice();
            unknowns[n] = rows.get(n).isPriced() ? 0 : 1;
        }
        return new StackColumns.Each(price, classes.of, unknowns);
    }

    private static Sizes lengths(List<Row> rows, Term term) {
        return lengths(rows, row -> row.dim(term));
    }

    private Sizes bores() {
        return lengths(pistons, neighbours::boreFor);
    }

    private static Sizes lengths(List<Row> rows, Function<Row, Optional<Dim>> of) {
        long[] value = new long[rows.size()];
        long[] half = new long[rows.size()];
        double[] uncertainty = new double[rows.size()];
        for (int n = 0; n < value.length; n++) {
            Optional<Dim> dim = of.apply(rows.get(n));
            value[n] = dim.map(Dim::picometres).orElse(Sizes.NOT_SAID);
            half[n] = dim.map(d -> d.isVague() ? Sizes.NOT_SAID : d.halfPicometres())
                    .orElse(0L);
            uncertainty[n] = dim.map(Dim::uncertaintyPicometres).orElse(0.0);
        }
        return new Sizes(value, half, uncertainty);
    }

    private Volumes volumes() {
        double[] value = new double[pistons.size()];
        double[] half = new double[pistons.size()];
        double[] uncertainty = new double[pistons.size()];
        for (int n = 0; n < value.length; n++) {
            Optional<Dim> dim = pistons.get(n).dim(Term.CROWN_VOLUME);
            value[n] = dim.map(Dim::value).orElse(Double.NaN);
            half[n] = dim.map(Dim::half).orElse(0.0);
            uncertainty[n] = dim.map(Dim::uncertainty).orElse(0.0);
        }
        return new Volumes(value, half, uncertainty);
    }
}
