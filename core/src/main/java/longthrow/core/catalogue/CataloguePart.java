package longthrow.core.catalogue;

import java.util.Map;
import java.util.Optional;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * One row of a catalogue.
 * @param kind     what it is
 * @param code     by which it is ordered; unique within its kind and vendor
 * @param name     for people
 * @param invented whether the catalogue says that it is made up
 * @param figures  by term; a term that is not there is unknown
 * @param words    by choice
 * @param offer    what it costs and where
 * @param voucher  who says so
 * @param note     in the vendor's or the owner's words; empty for none
 * @param place    file and line it was read from; empty when it was not read
 */
public record CataloguePart(
        PartKind kind,
        String code,
        String name,
        boolean invented,
        Map<Term, Figure> figures,
        Map<Choice, String> words,
        Offer offer,
        Voucher voucher,
        String note,
        String place) {
    public CataloguePart {
        FewEntries<Term, Figure> byTerm = FewEntries.copyOf(figures);
        for (Term term : byTerm.keys()) {
            if (!kind.mayState(term)) {
                throw new IllegalArgumentException("a " + kind.label() + " has no " + term.path());
            }
        }
        figures = byTerm;
        words = FewEntries.copyOf(words);
    }

    /**
     * A stated figure.
     * @param value     as written
     * @param tolerance half-width; null when the row gives none: then its doubt is unknown
     * @param isLimit   whether the half-width is a limit that no piece exceeds, taken as a rectangle; else it is a doubt of 95 in 100, as a typed ± is
     */
    public record Figure(Quantity value, @Nullable Quantity tolerance, boolean isLimit) {
        /** With the half-width as a limit. */
        public Figure(Quantity value, @Nullable Quantity tolerance) {
            this(value, tolerance, true);
        }
    }

    public Optional<Figure> figure(Term term) {
        return Optional.ofNullable(figures.get(term));
    }

    public Optional<String> word(Choice choice) {
        return Optional.ofNullable(words.get(choice));
    }
}
