package longthrow.buildfile;

import java.util.Arrays;
import java.util.List;
import longthrow.core.quantity.Dimension;
import org.jspecify.annotations.Nullable;

/** What a row of a catalogue says beside its figures. Other names: common in sellers' lists, no source. */
enum CatalogueLabel {
    CODE("code", "by which it is ordered; must be there", "part_number", "part_no", "number", "sku", "item"),
    NAME("name", "for people", "description", "title"),
    OPERATION("operation", "machine operations only: what is done", "kind"),
    LEAST(
            Dimension.LENGTH,
            "least",
            "machine operations only: smallest amount taken off, or smallest size made",
            "from"),
    MOST(Dimension.LENGTH, "most", "machine operations only: largest", "to"),
    STEP(Dimension.LENGTH, "step", "machine operations only: the amount comes in steps of this from the least"),
    HELD(Dimension.LENGTH, "tolerance", "machine operations only: half-width to which it is held"),
    PRICE("price", "without shipping; the currency behind it, in the header or in its own column", "cost"),
    SHIPPING("shipping", "to the owner's door", "postage", "freight"),
    CURRENCY("currency", "three letters as in ISO 4217, or the owner's own word"),
    VENDOR("vendor", "who sells it", "seller", "supplier", "shop"),
    LEAD_DAYS(
            "lead_days", "days until it is there; weeks where the cell or the header says so", "lead_time", "delivery"),
    BASIS("basis", "claimed by the seller, or measured on a real piece; claimed when not said"),
    BY("by", "who claims or measured it", "measured_by", "claimed_by"),
    WHEN("when", "a date, as written", "date", "measured_on"),
    BATCH("batch", "of the piece", "lot"),
    NOTE("note", "in the vendor's or the owner's words", "notes", "remark", "remarks", "comment");

    /** Of machine operations only. */
    static final List<CatalogueLabel> RANGE = List.of(OPERATION, LEAST, MOST, STEP, HELD);
    /** Of parts only. */
    static final List<CatalogueLabel> VOUCHED = List.of(BASIS, BY, WHEN, BATCH);

    private final String key;
    private final String meaning;
    private final @Nullable Dimension dimension;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<String> others;

    CatalogueLabel(String key, String meaning, String... others) {
        this.key = key;
        this.meaning = meaning;
        this.dimension = null;
        this.others = List.of(others);
    }

    CatalogueLabel(Dimension dimension, String key, String meaning, String... others) {
        this.key = key;
        this.meaning = meaning;
        this.dimension = dimension;
        this.others = List.of(others);
    }

    /** Those that a row of this shelf may have. */
    static List<CatalogueLabel> of(Shelf shelf) {
        return Arrays.stream(values())
                .filter(l -> !(shelf.kind() == null ? VOUCHED : RANGE).contains(l))
                .toList();
    }

    String key() {
        return key;
    }

    String meaning() {
        return meaning;
    }

    /** Of a figure; null for words, money and days. */
    @Nullable
    Dimension dimension() {
        return dimension;
    }

    /** Other headers that are taken for it. */
    List<String> others() {
        return others;
    }
}
