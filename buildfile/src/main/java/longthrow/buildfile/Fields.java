package longthrow.buildfile;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;

/** The keys of one mapping, asked for by name; what cannot be understood becomes a fault with its place. */
final class Fields {
    /** Key under which a table has its lines. */
    private static final String ROWS = "rows";

    /** A ± or a tolerance of no width claims a reading without doubt. */
    private static final String NO_WIDTH = "says there is no doubt at all";

    /** More keys than these are only printed where there is nothing better to say. */
    private static final int MOST_BESIDE_A_GUESS = 12;

    private final Mapping map;
    private final String path;
    private final Faults faults;

    private Fields(Mapping map, String path, Faults faults) {
        this.map = map;
        this.path = path;
        this.faults = faults;
    }

    /** The fields, if the node is a mapping with known keys only (unknown ones are reported, the others kept). */
    static Optional<Fields> of(Node node, String path, Collection<String> known, Faults faults) {
        return of(node, path, known, key -> "", faults);
    }

    /**
     * As {@link #of(Node, String, Collection, Faults)}, with a hint.
     * @param elsewhere for an unknown key, where it belongs instead; empty when nobody knows
     */
    static Optional<Fields> of(
            Node node, String path, Collection<String> known, UnaryOperator<String> elsewhere, Faults faults) {
        Optional<Fields> fields = ofAnyKeys(node, path, faults);
        fields.ifPresent(f -> f.refuseUnknown(known, elsewhere));
        return fields;
    }

    static Optional<Fields> ofAnyKeys(Node node, String path, Faults faults) {
        if (node instanceof Mapping map) {
            return Optional.of(new Fields(map, path, faults));
        }
        wrongShape(node, path, "lines of key: value", faults);
        return Optional.empty();
    }

    /**
     * The lines of a table, whatever their keys; where there is no place for them it is a fault.
     * @param example a line and what else there is to know of it, to go on behind "add lines such as"
     * @param row     takes a line and its path
     */
    void eachRow(String example, BiConsumer<Entry, String> row) {
        if (!has(ROWS)) {
            faults.add(place(), path(), "", "'" + ROWS + "' is missing", "", "add lines such as " + example);
        }
        node(ROWS)
                .flatMap(n -> ofAnyKeys(n, at(ROWS), faults))
                .ifPresent(f -> f.entries()
                        .forEach(entry -> row.accept(entry, f.at(entry.key().text()))));
    }

    private void refuseUnknown(Collection<String> known, UnaryOperator<String> elsewhere) {
        for (Entry entry : map.entries()) {
            String key = entry.key().text();
            if (known.contains(key)) {
                continue;
            }
            if (faults.isFull()) {
                faults.add(entry.key().place(), path, key, "", "", ""); // only counted
                continue;
            }
            String hint = elsewhere.apply(key);
            Optional<String> guess = hint.isEmpty() ? TradeWords.didYouMean(key, path, known) : Optional.of(hint);
            String mend = guess.orElse("write one of these, or put # before it if it is a remark");
            faults.add(
                    entry.key().place(),
                    at(key),
                    key,
                    "is not a key that is known here",
                    guess.isPresent() && known.size() > MOST_BESIDE_A_GUESS
                            ? "the " + known.size() + " keys of the glossary"
                            : String.join(", ", known),
                    mend);
        }
    }

    List<Entry> entries() {
        return map.entries();
    }

    Place place() {
        return map.place();
    }

    String path() {
        return path;
    }

    String at(String key) {
        return TreeReader.within(path, key);
    }

    Optional<Node> node(String key) {
        return map.entries().stream()
                .filter(e -> e.key().text().equals(key))
                .map(Entry::value)
                .findFirst();
    }

    boolean has(String key) {
        return node(key).isPresent();
    }

    /** Free words; empty when the key is not there or was refused. */
    Optional<String> text(String key) {
        return node(key).flatMap(n -> text(n, at(key), faults));
    }

    String textOrEmpty(String key) {
        return text(key).orElse("");
    }

    /** Free words that must be there. */
    Optional<String> required(String key, String example) {
        if (!has(key)) {
            faults.add(
                    place(), path, "", "'" + key + "' is missing", "", "add the line '" + key + ": " + example + "'");
        }
        return text(key);
    }

    /** One of a few words. */
    Optional<String> word(String key, Collection<String> allowed) {
        return node(key).flatMap(n -> word(n, at(key), allowed, faults));
    }

    Optional<Boolean> yesOrNo(String key) {
        return word(key, List.of("yes", "no")).map("yes"::equals);
    }

    /** A quantity without ±. */
    Optional<Quantity> quantity(String key, Dimension dimension) {
        return node(key).flatMap(n -> quantity(n, at(key), dimension, faults));
    }

    /** A fault of what stands behind a key that is there. */
    void refuse(String key, String found, String why, String allowed, String mend) {
        faults.add(node(key).orElseThrow().place(), at(key), found, why, allowed, mend);
    }

    /** A quantity above zero without ±, for a tolerance. */
    Optional<Quantity> width(String key, Dimension dimension) {
        return quantity(key, dimension)
                .filter(q -> isWidth(q, node(key).orElseThrow().place(), at(key), faults));
    }

    static boolean isWidth(Quantity width, Place place, String path, Faults faults) {
        if (width.si() > 0) {
            return true;
        }
        faults.add(
                place,
                path,
                width.written(),
                width.si() < 0 ? "is negative" : NO_WIDTH,
                "above 0",
                "write half the width of the range in which you are sure of it, 95 times out of 100");
        return false;
    }

    static Optional<String> text(Node node, String path, Faults faults) {
        if (!(node instanceof Scalar scalar)) {
            wrongShape(node, path, "a single value", faults);
            return Optional.empty();
        }
        if (scalar.isEmpty()) {
            faults.add(
                    node.place(), path, "", "nothing stands behind the key", "", "write a value, or delete the line");
            return Optional.empty();
        }
        return Optional.of(scalar.text());
    }

    static Optional<String> word(Node node, String path, Collection<String> allowed, Faults faults) {
        Optional<String> text = text(node, path, faults).map(String::strip);
        if (text.isPresent() && !allowed.contains(text.get())) {
            faults.add(
                    node.place(),
                    path,
                    text.get(),
                    "is not one of the words that fit here",
                    String.join(", ", allowed),
                    TradeWords.didYouMean(text.get(), allowed).orElse("write one of them"));
            return Optional.empty();
        }
        return text;
    }

    static Optional<Quantity> quantity(Node node, String path, Dimension dimension, Faults faults) {
        Optional<Stated> stated = stated(node, path, dimension, faults);
        if (stated.isPresent() && stated.get().expandedDoubt().isPresent()) {
            faults.add(
                    node.place(),
                    path,
                    stated.get().written(),
                    "has a ±, which has no meaning here",
                    "one quantity",
                    "leave out the ± and what follows it");
            return Optional.empty();
        }
        return stated.map(Stated::value);
    }

    /** A quantity with or without ±. */
    static Optional<Stated> stated(Node node, String path, Dimension dimension, Faults faults) {
        return text(node, path, faults).flatMap(t -> stated(t, node.place(), path, dimension, faults));
    }

    static Optional<Stated> stated(String text, Place place, String path, Dimension dimension, Faults faults) {
        Parsed parsed = QuantityParser.parse(text, dimension);
        if (parsed instanceof Parsed.Refused refused) {
            faults.add(place, path, refused);
            return Optional.empty();
        }
        Stated stated = ((Parsed.Understood) parsed).stated();
        stated.notes().forEach(note -> faults.note(place, path, note));
        return Optional.of(stated);
    }

    static void wrongShape(Node node, String path, String wanted, Faults faults) {
        String mend = node instanceof Sequence
                ? "take away the brackets or the dashes"
                : node instanceof Mapping
                        ? "write one value behind the key"
                        : wanted.equals("a list")
                                ? "put a dash and a space before each item, or brackets around them"
                                : "write the keys below it, each on its own line with two more spaces in front";
        faults.add(
                node.place(),
                path,
                node instanceof Scalar scalar ? scalar.text() : "",
                (node instanceof Scalar scalar && !scalar.isEmpty() ? "is " : "") + node.plainName() + "; " + wanted
                        + (wanted.startsWith("lines") ? " are" : " is") + " wanted here",
                wanted,
                mend);
    }

    /** The items of a list; a single value counts as a list of one. */
    static List<Node> items(Node node, String path, Faults faults) {
        if (node instanceof Sequence list) {
            return list.items();
        }
        if (node instanceof Scalar scalar && !scalar.isEmpty()) {
            return List.of(node);
        }
        wrongShape(node, path, "a list", faults);
        return List.of();
    }
}
