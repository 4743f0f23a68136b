package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.FewEntries;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.catalogue.Voucher;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** A row while its cells come in; used again for the next one. */
final class CatalogueRow {
    private static final FigurePrinter PRINTER = new FigurePrinter(UnitSystem.METRIC_FIRST);

    private final Shelf shelf;
    private final String file;
    private final boolean invented;
    private final List<Term> terms;
    private final double[] least;
    private final double[] most;
    private final @Nullable Quantity[] values;
    private final @Nullable Quantity[] tolerances;
    private final @Nullable String[] headers;
    /** Whether the half-width is a limit that no piece exceeds; else a doubt of 95 in 100. */
    private final boolean[] limits;

    private final Map<CatalogueLabel, String> labels = new EnumMap<>(CatalogueLabel.class);
    private final Map<CatalogueLabel, Quantity> range = new EnumMap<>(CatalogueLabel.class);
    private final Map<Choice, String> words = new EnumMap<>(Choice.class);
    private final List<Fault> troubles = new ArrayList<>();
    private final List<Note> remarks = new ArrayList<>();
    private final List<Term> stated = new ArrayList<>();
    private final List<CataloguePart.Figure> figures = new ArrayList<>();
    private List<Term> lastStated = List.of();
    private FewEntries<Choice, String> lastWords = FewEntries.none();
    private Voucher lastVoucher = Voucher.CLAIMED;
    private OptionalLong lastShipping = OptionalLong.empty();
    private int line;
    private int column;
    private String path = "";
    private boolean blank = true;
    private long price;
    private long shipping;
    private String currency = "";
    private int days;
    private Voucher.Basis basis = Voucher.CLAIMED.basis();
    private Operation.@Nullable Kind operation;

    CatalogueRow(Shelf shelf, String file, boolean invented) {
        this.shelf = shelf;
        this.file = file;
        this.invented = invented;
        this.terms = terms(shelf);
        this.least = terms.stream().mapToDouble(t -> t.believable().least()).toArray();
        this.most = terms.stream().mapToDouble(t -> t.believable().most()).toArray();
        this.values = new Quantity[terms.size()];
        this.tolerances = new Quantity[terms.size()];
        this.headers = new String[terms.size()];
        this.limits = new boolean[terms.size()];
    }

    /** Terms that a row of this shelf may state, in the order of the registry. */
    static List<Term> terms(Shelf shelf) {
        PartKind kind = shelf.kind();
        return kind == null
                ? List.of()
                : Term.read().stream().filter(kind::mayState).toList();
    }

    void begin(int atLine) {
        line = atLine;
        column = 0;
        path = "";
        blank = true;
        Arrays.fill(values, null);
        Arrays.fill(tolerances, null);
        labels.clear();
        range.clear();
        words.clear();
        troubles.clear();
        remarks.clear();
        price = -1;
        shipping = -1;
        currency = "";
        days = -1;
        basis = Voucher.CLAIMED.basis();
        operation = null;
    }

    /** Where the next cell stands, if it can be told better than by the line of the row. */
    void at(int atLine, int atColumn, String ofRow) {
        line = atLine;
        column = atColumn;
        path = ofRow;
    }

    int line() {
        return line;
    }

    void isNotBlank() {
        blank = false;
    }

    boolean isBlank() {
        return blank && troubles.isEmpty();
    }

    void refuse(String header, String found, String why, String allowed, String mend) {
        troubles.add(new Fault(line, column, TreeReader.within(path, header), Faults.shown(found), why, allowed, mend));
    }

    void remark(String header, String text) {
        remarks.add(new Note(line, TreeReader.within(path, header), text));
    }

    void figure(int slot, Quantity value, @Nullable Quantity tolerance, String header) {
        Term term = terms.get(slot);
        double si = value.si();
        if (!(si >= least[slot] && si <= most[slot])) {
            if (si < 0 && term.sign().isEmpty() && term.dimension() != Dimension.ANGLE) {
                refuse(header, value.written(), "is below nothing", "nothing or more", "check the sign");
                return;
            }
            remark(
                    header,
                    value.written() + " is hard to believe; " + range(slot) + " is usual. Look at the unit again");
        }
        values[slot] = value;
        headers[slot] = header;
        if (tolerance != null) {
            halfWidth(slot, tolerance, false, header);
        }
    }

    private String range(int slot) {
        Dimension dimension = terms.get(slot).dimension();
        return PRINTER.print(dimension, least[slot], 0).first().text() + " to "
                + PRINTER.print(dimension, most[slot], 0).first().text();
    }

    /** From a column of tolerances, which promise a limit; a ± in the cell of the figure is a doubt, as everywhere. */
    void tolerance(int slot, Quantity tolerance, String header) {
        halfWidth(slot, tolerance, true, header);
    }

    private void halfWidth(int slot, Quantity tolerance, boolean isLimit, String header) {
        if (tolerances[slot] != null) {
            refuse(
                    header,
                    tolerance.written(),
                    "is a second tolerance of one figure",
                    "one",
                    "write it behind the ± or in its own column, not in both");
        }
        tolerances[slot] = tolerance;
        limits[slot] = isLimit;
        headers[slot] = header;
    }

    void range(CatalogueLabel label, Quantity value, @Nullable Quantity tolerance) {
        if (tolerance != null && label != CatalogueLabel.HELD) {
            refuse(label.key(), value.written(), "has a ±, which has no meaning here", "one length", "leave it out");
        }
        range.put(label, value);
    }

    void word(Choice choice, String word) {
        words.put(choice, word);
    }

    void label(CatalogueLabel label, String text) {
        labels.put(label, text);
    }

    void basis(Voucher.Basis said) {
        basis = said;
    }

    void operation(Operation.Kind kind) {
        operation = kind;
    }

    void leadDays(int whole) {
        days = whole;
    }

    void money(boolean isShipping, long hundredths, String in, String header) {
        if (isShipping) {
            shipping = hundredths;
        } else {
            price = hundredths;
        }
        if (!in.isEmpty()) {
            currency(in, header);
        }
    }

    private void currency(String in, String header) {
        if (!currency.isEmpty() && !currency.equals(in)) {
            refuse(header, in, "is a second currency in one row; " + currency + " was the first", "one", "convert one");
        }
        currency = in;
    }

    /** Which code the row has, empty for none. */
    String code() {
        return labels.getOrDefault(CatalogueLabel.CODE, "");
    }

    List<Fault> troubles() {
        return List.copyOf(troubles);
    }

    List<Note> remarks() {
        return List.copyOf(remarks);
    }

    /** The part; empty where the row has troubles, which {@link #troubles} then tells. */
    Optional<CataloguePart> part(PartKind kind) {
        Offer offer = offer();
        checkTolerances();
        if (!troubles.isEmpty()) {
            return Optional.empty();
        }
        stated.clear();
        figures.clear();
        for (int slot = 0; slot < values.length; slot++) {
            Quantity value = values[slot];
            if (value != null) {
                stated.add(terms.get(slot));
                figures.add(
                        new CataloguePart.Figure(value, tolerances[slot], limits[slot] || tolerances[slot] == null));
            }
        }
        // Rows of one list are alike: what is equal to the row above is the same object, which halves the memory.
        if (!isSame(stated, lastStated)) {
            lastStated = List.copyOf(stated);
        }
        if (!isSame(words, lastWords)) {
            lastWords = FewEntries.of(List.copyOf(words.keySet()), List.copyOf(words.values()));
        }
        if (!isLastVoucher()) {
            lastVoucher =
                    new Voucher(basis, text(CatalogueLabel.BY), text(CatalogueLabel.WHEN), text(CatalogueLabel.BATCH));
        }
        return Optional.of(new CataloguePart(
                kind,
                code(),
                text(CatalogueLabel.NAME),
                invented,
                FewEntries.of(lastStated, figures),
                lastWords,
                offer,
                lastVoucher,
                text(CatalogueLabel.NOTE),
                file + ":" + line));
    }

    private static boolean isSame(List<Term> one, List<Term> other) {
        boolean same = one.size() == other.size();
        for (int i = 0; same && i < one.size(); i++) {
            same = one.get(i) == other.get(i);
        }
        return same;
    }

    private static boolean isSame(Map<Choice, String> one, FewEntries<Choice, String> other) {
        boolean same = one.size() == other.size();
        for (Choice choice : one.keySet()) {
            same = same && String.valueOf(one.get(choice)).equals(other.get(choice));
        }
        return same;
    }

    /** As the record's own equality, which a hundred thousand rows pay for dearly. */
    private boolean isLastVoucher() {
        return basis == lastVoucher.basis()
                && text(CatalogueLabel.BY).equals(lastVoucher.by())
                && text(CatalogueLabel.WHEN).equals(lastVoucher.when())
                && text(CatalogueLabel.BATCH).equals(lastVoucher.batch());
    }

    /** The machine operation; empty where the row has troubles. */
    Optional<Operation> machining() {
        Offer offer = offer();
        Operation.Kind kind = operation;
        if (kind == null && troubles.isEmpty()) {
            missing(CatalogueLabel.OPERATION, Operation.Kind.DECK_CUT.key());
        }
        ExactLength from = length(CatalogueLabel.LEAST, "0.05 mm");
        ExactLength to = length(CatalogueLabel.MOST, "0.40 mm");
        ExactLength step = range.containsKey(CatalogueLabel.STEP) ? length(CatalogueLabel.STEP, "") : null;
        ExactLength held = range.containsKey(CatalogueLabel.HELD) ? length(CatalogueLabel.HELD, "") : null;
        if (from != null && to != null && from.picometres() > to.picometres()) {
            refuse(CatalogueLabel.LEAST.key(), from.toString(), "is more than the most, " + to, "", "swap them");
        }
        if (from != null && from.picometres() < 0) {
            refuse(CatalogueLabel.LEAST.key(), from.toString(), "is below nothing", "0 or more", "check the sign");
        }
        if (step != null && step.picometres() <= 0) {
            refuse(
                    CatalogueLabel.STEP.key(),
                    step.toString(),
                    "is no step",
                    "above 0",
                    "leave it empty for any amount");
        }
        return !troubles.isEmpty() || kind == null || from == null || to == null
                ? Optional.empty()
                : Optional.of(new Operation(
                        kind,
                        code(),
                        text(CatalogueLabel.NAME),
                        invented,
                        from,
                        to,
                        step,
                        held,
                        offer,
                        text(CatalogueLabel.NOTE),
                        file + ":" + line));
    }

    private @Nullable ExactLength length(CatalogueLabel label, String example) {
        Quantity length = range.get(label);
        if (length == null && troubles.isEmpty()) {
            missing(label, example);
        }
        return length == null ? null : length.exactLength().orElse(null);
    }

    private void missing(CatalogueLabel label, String example) {
        refuse(label.key(), "", "is missing", "", "write it, such as " + example);
    }

    private String text(CatalogueLabel label) {
        return labels.getOrDefault(label, "");
    }

    private Offer offer() {
        if (code().isEmpty() && troubles.isEmpty()) {
            missing(CatalogueLabel.CODE, shelf.key().substring(0, 1).toUpperCase(java.util.Locale.ROOT) + "-101");
        }
        String column = labels.get(CatalogueLabel.CURRENCY);
        boolean money = price >= 0 || shipping >= 0;
        if (column != null && currency.isEmpty()) {
            currency = column;
        } else if (column != null) {
            currency(column, CatalogueLabel.CURRENCY.key());
        }
        if (money && currency.isEmpty()) {
            refuse(
                    CatalogueLabel.PRICE.key(),
                    price >= 0 ? String.valueOf(price / 100) : "",
                    "has no currency",
                    "three letters, such as EUR",
                    "write it behind the price, into the header as 'price [EUR]', or into a column 'currency'");
        }
        String vendor = text(CatalogueLabel.VENDOR);
        boolean sameShipping = shipping >= 0 && lastShipping.isPresent() && lastShipping.getAsLong() == shipping;
        lastShipping = sameShipping ? lastShipping : shipping < 0 ? OptionalLong.empty() : OptionalLong.of(shipping);
        return !money && vendor.isEmpty() && days < 0
                ? Offer.NONE
                : new Offer(
                        price < 0 ? OptionalLong.empty() : OptionalLong.of(price),
                        lastShipping,
                        money ? currency : "",
                        vendor,
                        days < 0 ? OptionalInt.empty() : OptionalInt.of(days));
    }

    private void checkTolerances() {
        for (int slot = 0; slot < values.length; slot++) {
            Quantity tolerance = tolerances[slot];
            if (tolerance != null && values[slot] == null && troubles.isEmpty()) {
                String header = headers[slot];
                refuse(
                        header == null ? terms.get(slot).path() : header,
                        tolerance.written(),
                        "is the tolerance of a figure that is not there",
                        "",
                        "write the figure, or take the tolerance out");
            }
        }
    }
}
