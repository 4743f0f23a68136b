package longthrow.core.build;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** What was entered for one term, once; a term may have several. */
public sealed interface Given {

    /** Words of the owner about it; empty when there are none. */
    String note();

    /**
     * Read on the bench.
     * @param readings              one or more, each as written
     * @param instrument            key of the instrument used; null when not said, then the usual kind is taken and listed as a default
     * @param partTemperature       of the part while read; null when not said
     * @param instrumentTemperature null when not said, then that of the part
     */
    record Taken(
            List<Quantity> readings,
            @Nullable String instrument,
            @Nullable Quantity partTemperature,
            @Nullable Quantity instrumentTemperature,
            Origin origin,
            String note)
            implements Given {
        public Taken {
            readings = List.copyOf(readings);
            if (readings.isEmpty()) {
                throw new IllegalArgumentException("a reading that was taken needs at least one figure");
            }
        }
    }

    /** A figure typed with its plus-or-minus, the 95 % expanded uncertainty. */
    record Typed(Quantity value, Quantity plusMinus, String note) implements Given {}

    /**
     * From a maker's sheet or a catalogue.
     * @param tolerance half-width; null when the sheet gives none: then its doubt is unknown
     * @param by        whose sheet, in one of the forms of {@link Whose} where it is the maker's
     */
    record Specified(Quantity value, @Nullable Quantity tolerance, String by, boolean catalogue, String note)
            implements Given {}

    /**
     * Assumed, with the reason.
     * @param plusMinus 95 % half-width; a figure assumed without one is refused by the reader of the file
     */
    record Assumed(Quantity value, Quantity plusMinus, String because, String note) implements Given {}

    /** Said to be unknown. */
    record NotKnown(String note) implements Given {}

    /** Who, when, photograph; each empty when not said. */
    record Origin(String who, String when, String photo) {
        public static final Origin NOT_SAID = new Origin("", "", "");
    }

    /**
     * Whether the one who made the part stands behind it.
     * @param term that it was entered for
     */
    default boolean isMakersWord(Term term) {
        return whose(term) == Whose.MAKERS;
    }

    /** Whether whoever specified it says that the part came in the place of the engine's own. */
    default boolean isOfAnotherPart() {
        return this instanceof Specified s && Whose.isOfAnotherPart(s.by());
    }

    /**
     * Whose word it is; nobody's where it was not specified.
     * @param term that it was entered for
     */
    default Whose whose(Term term) {
        return this instanceof Specified s ? Whose.of(s.by(), s.catalogue(), term.part()) : Whose.NOBODYS;
    }

    /** As it was written, without whose word it is. */
    default String written() {
        if (this instanceof Taken t) {
            return t.readings().stream().map(Quantity::written).collect(Collectors.joining(", "));
        }
        if (this instanceof Typed t) {
            return t.value().written() + " ± " + t.plusMinus().written();
        }
        if (this instanceof Assumed a) {
            return a.value().written() + " ± " + a.plusMinus().written();
        }
        if (this instanceof Specified s) {
            Quantity tolerance = s.tolerance();
            return s.value().written() + (tolerance == null ? ", no tolerance said" : " ± " + tolerance.written());
        }
        return "unknown";
    }

    /** The figure itself, the first of several readings. */
    default Optional<Quantity> figure() {
        if (this instanceof Taken t) {
            return Optional.of(t.readings().get(0));
        }
        if (this instanceof Typed t) {
            return Optional.of(t.value());
        }
        if (this instanceof Specified s) {
            return Optional.of(s.value());
        }
        if (this instanceof Assumed a) {
            return Optional.of(a.value());
        }
        return Optional.empty();
    }
}
