package longthrow.core.answer;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Term;

/**
 * One figure.
 * @param term         what it is
 * @param figure       value and doubt
 * @param provenance   where the readings behind it came from
 * @param from         places in the build file it rests on
 * @param contradicted whether readings behind it disagree: then it is not to be used
 */
public record Result(Term term, Measured figure, Set<Provenance> provenance, List<String> from, boolean contradicted) {
    private static final List<Provenance> WEAKEST_FIRST = List.of(
            Provenance.ASSUMED,
            Provenance.PLANNED,
            Provenance.CATALOGUE,
            Provenance.SPECIFIED,
            Provenance.MEASURED,
            Provenance.STATED);

    public Result {
        provenance = Set.copyOf(provenance);
        from = List.copyOf(from);
    }

    /** Value and doubt for people; with the doubt said to be unknown where it is. */
    public PrintedFigures printed(FigurePrinter printer) {
        return figure.isUnknown()
                ? printer.printDoubtUnknown(term.dimension(), figure.value())
                : printer.print(term.dimension(), figure.value(), figure.expanded());
    }

    /** Whether it could have been read, and follows from other readings alone. */
    public boolean isWorkedOut() {
        return term.isRead() && from.stream().noneMatch(f -> f.matches(Pattern.quote(term.path()) + "(\\W.*)?"));
    }

    /** How it is known, by the weakest reading it leans on; empty when nothing is behind it. */
    public String howKnown() {
        if (provenance.equals(Set.of(Provenance.MEASURED, Provenance.STATED))) {
            return Provenance.MEASURED.label(); // what was stated has no doubt to lend
        }
        for (Provenance weakest : WEAKEST_FIRST) {
            if (provenance.contains(weakest)) {
                return provenance.size() == 1 ? weakest.label() : "partly " + weakest.label();
            }
        }
        return "";
    }
}
