package longthrow.workshop.draw;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/** An answer by hand for drawings: the engine is invented, and so are its figures. Lengths in millimetres, ± at 95 %. */
final class DrawnAnswer {
    private static final double MM = 1e-3;

    private final Map<Term, Result> values = new EnumMap<>(Term.class);

    /** Half stroke 28.25, rod 86.40, compression height 24.90, deck clearance 0.07: deck height 139.62. */
    static DrawnAnswer stack() {
        return new DrawnAnswer()
                .with(Term.STROKE, 56.50, 0.02)
                .with(Term.ROD_LENGTH, 86.40, 0.03)
                .with(Term.COMPRESSION_HEIGHT, 24.90, 0.02)
                .with(Term.DECK_HEIGHT, 139.62, 0.05)
                .with(Term.DECK_CLEARANCE, 0.07, 0.06)
                .with(Term.GASKET_THICKNESS, 1.30, 0.03)
                .with(Term.SQUISH, 1.37, 0.07);
    }

    /** The stack with all that a cross-section shows. */
    static DrawnAnswer whole() {
        return stack().with(Term.BORE, 66, 0.01)
                .with(Term.SLEEVE_LENGTH, 88, 0.05)
                .with(Term.SKIRT_BELOW_PIN, 17.6, 0.03)
                .with(Term.PIN_DIAMETER, 17, 0.004)
                .with(Term.CRANKPIN_DIAMETER, 26.98, 0.004)
                .with(Term.MAIN_JOURNAL, 25, 0.004)
                .with(Term.COUNTERWEIGHT_RADIUS, 38.9, 0.05)
                .with(Term.SKIRT_TO_COUNTERWEIGHT, 1.65, 0.07);
    }

    DrawnAnswer with(Term term, double millimetres, double doubt) {
        return with(term, millimetres, doubt, false);
    }

    DrawnAnswer disputed(Term term, double millimetres, double doubt) {
        return with(term, millimetres, doubt, true);
    }

    private DrawnAnswer with(Term term, double millimetres, double doubt, boolean contradicted) {
        List<Source> sources = doubt == 0
                ? List.of()
                : List.of(Source.at95(term.path(), Source.Kind.SCATTER, term.label(), doubt * MM));
        values.put(
                term,
                new Result(
                        term,
                        Measured.of(millimetres * MM, sources),
                        Set.of(Provenance.MEASURED),
                        List.of(term.path()),
                        contradicted));
        return this;
    }

    DrawnAnswer without(Term... terms) {
        for (Term term : terms) {
            values.remove(term);
        }
        return this;
    }

    Answer answer() {
        return new Answer(
                "measure",
                "Dovrin 171",
                true,
                UnitSystem.METRIC_FIRST,
                new ArrayList<>(values.values()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }
}
