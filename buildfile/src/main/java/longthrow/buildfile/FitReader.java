package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import longthrow.core.build.FitWish;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/** The section {@code fit:} of a build file. */
final class FitReader {
    /**
     * Air at a place where engines are run [Pa]: 500 hPa is 5,500 m up, 1100 hPa more than was ever read at sea level (ICAO standard
     * atmosphere, Doc 7488, from memory).
     */
    private static final double THINNEST = 50_000;

    private static final double DENSEST = 110_000;

    private static final List<String> KINDS =
            Arrays.stream(PartKind.values()).map(PartKind::key).toList();
    private static final List<String> PREFERENCES = Arrays.stream(FitWish.Preference.values())
            .map(FitWish.Preference::key)
            .toList();

    private final Fields fields;
    private final Faults faults;

    private FitReader(Fields fields, Faults faults) {
        this.fields = fields;
        this.faults = faults;
    }

    static FitWish read(Fields top, Faults faults) {
        return top.node(Layout.FIT)
                .flatMap(n -> Fields.of(n, Layout.FIT, Layout.FIT_KEYS, faults))
                .map(f -> new FitReader(f, faults).read())
                .orElse(FitWish.NONE);
    }

    private FitWish read() {
        Optional<MoneyColumn.Money> budget = budget();
        return new FitWish(
                words("choose", KINDS, PartKind::at),
                codes(),
                budget.isPresent() ? OptionalLong.of(budget.get().hundredths()) : OptionalLong.empty(),
                budget.map(MoneyColumn.Money::currency).orElse(""),
                fields.yesOrNo("machining").orElse(FitWish.NONE.machining()),
                words("order", PREFERENCES, FitWish.Preference::at),
                airPressure());
    }

    /** A list of words, each once. */
    private <T> List<T> words(String key, List<String> allowed, Function<String, Optional<T>> at) {
        List<T> all = new ArrayList<>();
        each(
                key,
                (item, path) -> Fields.word(item, path, allowed, faults)
                        .flatMap(at)
                        .filter(word -> isFirst(all.contains(word), item, path))
                        .ifPresent(all::add));
        return all;
    }

    private List<String> codes() {
        List<String> all = new ArrayList<>();
        each(
                "keep",
                (item, path) -> Fields.text(item, path, faults)
                        .filter(code -> isFirst(all.contains(code), item, path))
                        .ifPresent(all::add));
        return all;
    }

    private interface Item {
        void read(Node item, String path);
    }

    private void each(String key, Item item) {
        fields.node(key).ifPresent(node -> {
            List<Node> items = Fields.items(node, fields.at(key), faults);
            for (int i = 0; i < items.size(); i++) {
                item.read(items.get(i), fields.at(key) + "[" + (i + 1) + "]");
            }
        });
    }

    private boolean isFirst(boolean again, Node item, String path) {
        if (again) {
            faults.add(
                    item.place(),
                    path,
                    item instanceof Node.Scalar scalar ? scalar.text() : "",
                    "stands twice",
                    "each once",
                    "keep one of them");
        }
        return !again;
    }

    private Optional<MoneyColumn.Money> budget() {
        Optional<String> text = fields.text("budget").filter(t -> !t.strip().equals(Layout.UNKNOWN));
        Optional<MoneyColumn.Money> money = text.flatMap(MoneyColumn::read);
        if (text.isPresent() && money.isEmpty()) {
            fields.refuse(
                    "budget", text.get(), "is no amount of money", MoneyColumn.ALLOWED, MoneyColumn.mend(text.get()));
        }
        Optional<String> noCurrency =
                money.map(MoneyColumn.Money::currency).filter(c -> !c.isEmpty() && !MoneyColumn.isCurrency(c));
        if (noCurrency.isPresent()) {
            fields.refuse(
                    "budget",
                    text.orElseThrow(),
                    "has '" + noCurrency.get() + "' where its currency stands",
                    "three letters as ISO 4217 has them, such as EUR or USD; or none",
                    "write the amount, then the three letters of its currency, such as 330 EUR");
            return Optional.empty();
        }
        return money;
    }

    private @Nullable Quantity airPressure() {
        Optional<Quantity> pressure = fields.quantity("air_pressure", Dimension.PRESSURE);
        if (pressure.isPresent()
                && !(pressure.get().si() >= THINNEST && pressure.get().si() <= DENSEST)) {
            fields.refuse(
                    "air_pressure",
                    pressure.get().written(),
                    "is no air pressure of a place where engines are run",
                    "500 hPa to 1100 hPa",
                    "write what a barometer at the place shows, absolute, not brought to sea level");
            return null;
        }
        return pressure.orElse(null);
    }
}
