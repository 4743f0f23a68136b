package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Stream;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;

/** The section {@code taken:} of a build file. */
final class DecidedReader {
    /** Longer nobody waits for a part; more digits are a slip. */
    private static final String DAYS = "[0-9]{1,4}";

    private static final List<String> ALL_KEYS = Stream.concat(
                    Layout.TAKEN_PART_KEYS.stream(), Layout.TAKEN_WORK_KEYS.stream())
            .distinct()
            .toList();

    private final Fields fields;

    private DecidedReader(Fields fields) {
        this.fields = fields;
    }

    static List<Decided> read(Fields top, Faults faults) {
        Optional<Node> node = top.node(Layout.TAKEN);
        if (node.isEmpty()) {
            return List.of();
        }
        if (!(node.get() instanceof Sequence list)) {
            Fields.wrongShape(node.get(), Layout.TAKEN, "a list", faults);
            return List.of();
        }
        List<Decided> all = new ArrayList<>();
        List<Node> items = list.items();
        for (int i = 0; i < items.size(); i++) {
            one(items.get(i), Layout.TAKEN + "[" + (i + 1) + "]", faults).ifPresent(all::add);
        }
        return all;
    }

    private static Optional<Decided> one(Node item, String path, Faults faults) {
        Optional<Fields> any = Fields.ofAnyKeys(item, path, faults);
        if (any.isEmpty()) {
            return Optional.empty();
        }
        boolean part = any.get().has("part");
        boolean work = any.get().has("work");
        if (part == work) {
            Fields.of(item, path, ALL_KEYS, faults);
            faults.add(
                    item.place(),
                    path,
                    "",
                    part
                            ? "'part' and 'work' stand together; each is an item of its own"
                            : "nothing here says what was taken",
                    "part, work",
                    part ? "write two items" : "start with 'part:' and its kind, or 'work:' and its kind");
            return Optional.empty();
        }
        return Fields.of(item, path, part ? Layout.TAKEN_PART_KEYS : Layout.TAKEN_WORK_KEYS, faults)
                .map(DecidedReader::new)
                .flatMap(reader -> part ? reader.part() : reader.work());
    }

    private Optional<Decided> part() {
        Optional<PartKind> kind = fields.word(
                        "part",
                        Arrays.stream(PartKind.values()).map(PartKind::key).toList())
                .flatMap(PartKind::at);
        Optional<String> code = code();
        String name = fields.textOrEmpty(Layout.NAME);
        Offer offer = offer();
        return kind.isEmpty() || code.isEmpty()
                ? Optional.empty()
                : Optional.of(new Decided.Bought(kind.get(), code.get(), name, offer));
    }

    private Optional<Decided> work() {
        Optional<Operation.Kind> kind = fields.word(
                        "work",
                        Arrays.stream(Operation.Kind.values())
                                .map(Operation.Kind::key)
                                .toList())
                .flatMap(Operation.Kind::at);
        Optional<String> code = code();
        String name = fields.textOrEmpty(Layout.NAME);
        Offer offer = offer();
        fields.required("amount", "0.10 mm");
        Optional<Quantity> amount = fields.has("amount") ? fields.width("amount", Dimension.LENGTH) : Optional.empty();
        Optional<Quantity> tolerance = fields.width("tolerance", Dimension.LENGTH);
        String note = fields.textOrEmpty(Layout.NOTE);
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        Dimension dimension = kind.get().changes().dimension();
        Optional<Quantity> from = fields.quantity("from", dimension);
        Optional<Quantity> to = fields.quantity("to", dimension);
        return code.isEmpty() || amount.isEmpty()
                ? Optional.empty()
                : Optional.of(new Decided.Work(
                        kind.get(),
                        code.get(),
                        name,
                        offer,
                        amount.get(),
                        from.orElse(null),
                        to.orElse(null),
                        tolerance.orElse(null),
                        note));
    }

    private Optional<String> code() {
        Optional<String> code = fields.required("code", "by which it is ordered");
        if (code.isPresent() && code.get().isBlank()) {
            fields.refuse(
                    "code", code.get(), "is empty", "the code by which it is ordered", "write it as the seller does");
            return Optional.empty();
        }
        return code;
    }

    private Offer offer() {
        Optional<MoneyColumn.Money> price = money("price");
        Optional<MoneyColumn.Money> shipping = money("shipping");
        if (price.isPresent()
                && shipping.isPresent()
                && !price.get().currency().equals(shipping.get().currency())) {
            fields.refuse(
                    "shipping",
                    fields.textOrEmpty("shipping"),
                    "is in another currency than the price",
                    price.get().currency(),
                    "write both in one currency");
        }
        return new Offer(
                hundredths(price),
                hundredths(shipping),
                price.or(() -> shipping).map(MoneyColumn.Money::currency).orElse(""),
                fields.textOrEmpty("vendor"),
                days());
    }

    private static OptionalLong hundredths(Optional<MoneyColumn.Money> money) {
        return money.isPresent() ? OptionalLong.of(money.get().hundredths()) : OptionalLong.empty();
    }

    private Optional<MoneyColumn.Money> money(String key) {
        Optional<String> text = fields.text(key).filter(t -> !t.strip().equals(Layout.UNKNOWN));
        Optional<MoneyColumn.Money> money = text.flatMap(MoneyColumn::read);
        if (text.isPresent() && money.isEmpty()) {
            fields.refuse(key, text.get(), "is no amount of money", MoneyColumn.ALLOWED, MoneyColumn.mend(text.get()));
        }
        return money;
    }

    private OptionalInt days() {
        Optional<String> text = fields.text("lead_days").filter(t -> !t.strip().equals(Layout.UNKNOWN));
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (!text.get().strip().matches(DAYS)) {
            fields.refuse("lead_days", text.get(), "is no number of days", "0 to 9999", "write how many days it takes");
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(text.get().strip()));
    }
}
