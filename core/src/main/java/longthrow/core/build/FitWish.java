package longthrow.core.build;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What the owner wants of a search for parts.
 * @param choose      kinds that may be bought; empty for every kind of which this build says nothing yet
 * @param keep        codes that must be among the parts, such as a crankshaft already bought
 * @param budget      most to be spent, whole hundredths; empty for none
 * @param currency    of the budget; empty when there is none
 * @param machining   whether machine operations of the catalogue may be used
 * @param order       what counts first among the combinations that fit; empty for {@link Preference#USUAL}
 * @param airPressure of the place [Pa]; null for not said
 */
public record FitWish(
        List<PartKind> choose,
        List<String> keep,
        OptionalLong budget,
        String currency,
        boolean machining,
        List<Preference> order,
        @Nullable Quantity airPressure) {
    public static final FitWish NONE =
            new FitWish(List.of(), List.of(), OptionalLong.empty(), "", true, List.of(), null);

    public FitWish {
        choose = List.copyOf(choose);
        keep = List.copyOf(keep);
        order = List.copyOf(order);
    }

    /** The owner's order of preference, or the usual one. */
    public List<Preference> preferences() {
        return order.isEmpty() ? Preference.USUAL : order;
    }

    /** What may count when combinations that fit are put in order. */
    public enum Preference {
        CERTAINTY("certainty", "fits for sure before fits by probability before fits only with selection"),
        SOURCES("sources", "fewer sources that would refuse it, on rules of which you chose none"),
        UNKNOWNS(
                "unknowns",
                "fewer figures and limits that cannot be told, fewer things that the catalogue does not say"),
        MACHINING("machining", "less machining"),
        PRICE("price", "lower total"),
        SQUISH("squish", "squish nearer to the aim"),
        RATIO("ratio", "compression ratio nearer to the aim"),
        LEAD_TIME("lead_time", "sooner complete");

        /** A judgement: what is sure, by all sources and known, comes before what is cheap. */
        public static final List<Preference> USUAL = List.of(CERTAINTY, SOURCES, UNKNOWNS, PRICE, SQUISH);

        private final String key;
        private final String meaning;

        Preference(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public static Optional<Preference> at(String key) {
            return Arrays.stream(values()).filter(p -> p.key.equals(key)).findFirst();
        }

        public String key() {
            return key;
        }

        public String meaning() {
            return meaning;
        }
    }
}
