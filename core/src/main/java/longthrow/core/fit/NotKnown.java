package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Unknown;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** Figures that a candidate has not, with why: a size behind them is not said, or is said without its ±. */
final class NotKnown {
    private final Appraisal after;
    private final Appraisal bySizes;
    private final FigurePrinter printer;
    private final Build build;

    /**
     * Of one candidate.
     * @param after   the engine with its parts
     * @param bySizes the same by the sizes alone
     */
    NotKnown(Build build, Appraisal after, Appraisal bySizes) {
        this.build = build;
        this.after = after;
        this.bySizes = bySizes;
        this.printer = new FigurePrinter(build.units());
    }

    /** Those that are shown or aimed at, in the order of the terms. */
    List<Unknown> figures() {
        List<Unknown> all = new ArrayList<>();
        for (Term term : Term.values()) {
            boolean wanted = build.aims().containsKey(term)
                    || (Fit.SHOWN.contains(term) && bySizes.figure(term).isPresent());
            if (wanted && after.figure(term).isEmpty()) {
                all.add(figure(term));
            }
        }
        return all;
    }

    private Unknown figure(Term term) {
        Optional<Measured> size = bySizes.figure(term);
        List<Term> behind = after.readingsBehind(term).stream()
                .filter(t -> size.isPresent() ? isWithoutDoubt(t) : isNotSaid(t))
                .sorted()
                .toList();
        String names = behind.stream().map(Term::label).collect(Collectors.joining(", "));
        String why = size.isPresent()
                ? "by the sizes alone " + bySize(term, size.get()) + "; its doubt is not known: no ± is said for "
                        + (names.isEmpty()
                                ? "a size behind it"
                                : names
                                        + behind.stream()
                                                .map(this::mend)
                                                .distinct()
                                                .collect(Collectors.joining()))
                : names.isEmpty() ? "it does not follow from what is said" : "not said: " + names;
        return new Unknown(term, behind, why);
    }

    /** Where the ± of a size is written, for one who has the seller's list, the maker's sheet or the shop before him. */
    private String mend(Term term) {
        if (after.build().of(term).stream().anyMatch(NotKnown::isMachined)) {
            return ", since the shop says no tolerance for the job: ask it, and write it with the work in the catalogue";
        }
        boolean catalogue = after.build().of(term).stream()
                .anyMatch(g -> g instanceof Given.Specified sheet && sheet.tolerance() == null && sheet.catalogue());
        return catalogue
                ? "; write it in the catalogue behind the size, or in a column '" + term.key() + " ±'"
                : "; write it with the size, as tolerance";
    }

    private static boolean isMachined(Given given) {
        return given instanceof Given.Specified sheet
                && sheet.tolerance() == null
                && sheet.by().startsWith(Fitted.AFTER_MACHINING);
    }

    private String bySize(Term term, Measured size) {
        Figure figure =
                printer.printDoubtUnknown(term.dimension(), size.value()).first();
        return new Figure(figure.value(), "", figure.unit()).text();
    }

    private boolean isWithoutDoubt(Term term) {
        return after.build().of(term).stream()
                .anyMatch(g -> g instanceof Given.Specified sheet && sheet.tolerance() == null);
    }

    private boolean isNotSaid(Term term) {
        return after.figure(term).isEmpty()
                && after.build().of(term).stream().allMatch(Given.NotKnown.class::isInstance);
    }
}
