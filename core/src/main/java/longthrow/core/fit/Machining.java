package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Term;

/** A part as machining on offer would make it, one row for each step of the range. */
final class Machining {
    /** Step where a shop names none [m]: what is asked for on a drawing; common practice, no source. */
    static final double USUAL_STEP = 0.05e-3;
    /** At most so many steps of one operation by itself are tried; a wider range is tried in wider steps. */
    static final int MOST_STEPS = 32;
    /** As {@link #MOST_STEPS}, of each of two operations together. */
    static final int MOST_STEPS_OF_TWO = 10;

    /** A skirt that loses more than this share of its length below the pin guides its piston no longer; common practice, no source. */
    static final double MOST_OF_SKIRT = 0.2;

    private Machining() {}

    /** The kind of part an operation is done on; empty for those on the cylinder, and for parts made to order. */
    static Optional<PartKind> on(Operation.Kind kind) {
        return switch (kind) {
            case CROWN_CUT, SKIRT_CUT -> Optional.of(PartKind.PISTON);
            case COUNTERWEIGHT_TURN, CRANKPIN_OFFSET_GRIND -> Optional.of(PartKind.CRANKSHAFT);
            case SMALL_END_HONE, BIG_END_FACE -> Optional.of(PartKind.CONNECTING_ROD);
            case HEAD_CUT -> Optional.of(PartKind.HEAD);
            case DECK_CUT, BORE_AND_HONE, SLEEVE, GASKET_TO_ORDER, ROD_TO_ORDER -> Optional.empty();
        };
    }

    /** Amounts of an operation [m], without nothing. */
    static List<Double> amounts(Operation operation, int mostSteps) {
        double least = operation.least().metres();
        double most = operation.most().metres();
        double wide = step(operation, mostSteps);
        List<Double> amounts = new ArrayList<>();
        for (int n = 0; least + n * wide <= most + 1e-12; n++) {
            double amount = least + n * wide;
            if (amount > 0) {
                amounts.add(amount);
            }
        }
        return amounts;
    }

    /** The step in which it is tried [m]: the shop's, or as many of them as leave at most so many. */
    static double step(Operation operation, int mostSteps) {
        ExactLength stated = operation.step();
        double step = stated == null ? USUAL_STEP : stated.metres();
        double range = operation.most().metres() - operation.least().metres();
        return Math.max(1, Math.ceil(range / step / mostSteps - 1e-9)) * step;
    }

    static Stream<Row> of(Row row, Operation operation, int mostSteps) {
        // honed and faced by the amount that each pair needs: see Gap
        boolean byPair =
                operation.kind() == Operation.Kind.SMALL_END_HONE || operation.kind() == Operation.Kind.BIG_END_FACE;
        boolean blind = operation.kind() == Operation.Kind.HEAD_CUT && area(row) == 0;
        if (byPair || blind || on(operation.kind()).filter(k -> k == row.kind()).isEmpty()) {
            return Stream.empty();
        }
        Term term = operation.kind().changes();
        Optional<Dim> dim = row.dim(term);
        if (dim.isEmpty()) {
            return Stream.empty();
        }
        double most = operation.kind() == Operation.Kind.SKIRT_CUT
                ? MOST_OF_SKIRT * dim.get().value()
                : Double.POSITIVE_INFINITY;
        return amounts(operation, mostSteps).stream()
                .filter(amount -> amount <= most)
                .map(amount -> after(row, operation, dim.get(), amount));
    }

    private static Row after(Row row, Operation operation, Dim dim, double amount) {
        Term term = operation.kind().changes();
        ExactLength held = operation.tolerance();
        Row.Cut cut = new Row.Cut(operation, amount, text(operation, amount));
        return switch (operation.kind()) {
            // pin moved out by the amount: the throw grows by it, and so much must come off all round to make it whole
            // again
            case CRANKPIN_OFFSET_GRIND ->
                row.with(cut, term, dim.machined(amount, 2, held)).moved(Term.CRANKPIN_DIAMETER, amount, -2, held);
            // the ring keeps its place to the pin
            case CROWN_CUT ->
                row.with(cut, term, dim.machined(amount, -1, held))
                        .moved(Term.TOP_LAND_HEIGHT, amount, -1, held)
                        .moved(Term.OIL_GROOVE_TO_CROWN, amount, -1, held)
                        .crownCut(amount);
            case HEAD_CUT -> row.with(cut, term, dim.machined(amount, -area(row), held));
            default -> row.with(cut, term, dim.machined(amount, -1, held));
        };
    }

    private static double area(Row head) {
        return head.dim(Term.CHAMBER_AREA).map(Dim::value).orElse(0.0);
    }

    static String text(Operation operation, double amount) {
        return operation.kind().job(amount);
    }
}
