package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;

/** What the owner aims at against what the engine has, and aims that hardly any engine of this kind has. */
final class Aims {
    /** Ranges of figures that are worked out, of spark-ignited singles of 80 to 500 cc with a margin; common practice, no source. [SI] */
    private static final Map<Term, Believable> WORKED_OUT = Map.of(
            Term.COMPRESSION_RATIO, new Believable(4, 16),
            Term.SWEPT_VOLUME, StrangeTogether.DISPLACEMENT,
            Term.ROD_RATIO, new Believable(1.2, 2.6),
            Term.MEAN_PISTON_SPEED, new Believable(1, 30));

    private Aims() {}

    private static Optional<Believable> usual(Term term) {
        if (term.isRead()) {
            return Optional.of(term.believable());
        }
        return Optional.ofNullable(term == Term.SQUISH ? Term.SQUISH_FLYWHEEL_END.believable() : WORKED_OUT.get(term));
    }

    /** Whether engines of this kind have what is aimed at; nothing is worked out for an aim they do not have. */
    static boolean isUsual(Term term, Quantity aim) {
        return usual(term).filter(range -> !range.holds(aim.si())).isEmpty();
    }

    static List<Finding> findings(Build build, Function<Term, Optional<Measured>> figures) {
        List<Finding> findings = new ArrayList<>();
        build.aims().forEach((term, aim) -> {
            usual(term)
                    .filter(range -> !range.holds(aim.si()))
                    .ifPresent(r -> findings.add(strange(build, term, aim, r)));
            figures.apply(term)
                    .filter(f -> isUsual(term, aim))
                    .ifPresent(figure -> findings.add(compared(build, term, aim, figure)));
        });
        return findings;
    }

    private static Finding strange(Build build, Term term, Quantity aim, Believable range) {
        return new Finding(
                Finding.Kind.WARNING,
                "aims." + term.path(),
                "an aim of " + aim.written() + " is outside what engines of this kind have, "
                        + Measure.words(build, term, range.least(), 0) + " to "
                        + Measure.words(build, term, range.most(), 0)
                        + " (common practice, no source): nothing is worked out to reach it",
                "check the figure and its unit");
    }

    private static Finding compared(Build build, Term term, Quantity aim, Measured figure) {
        double off = figure.value() - aim.si();
        double doubt = figure.expanded();
        boolean there = Aimed.isWithin(off, doubt);
        String by = Measure.words(build, term, Math.abs(off), doubt);
        return new Finding(
                Finding.Kind.NOTE,
                "aims." + term.path(),
                "aimed at " + aim.written() + "; it is " + Measure.words(build, term, figure.value(), doubt) + ": "
                        + (there
                                ? "the aim lies within the doubt"
                                : by + (off > 0 ? " above the aim" : " below the aim")),
                there ? "" : "'fit' works out which parts or cuts close the difference");
    }
}
