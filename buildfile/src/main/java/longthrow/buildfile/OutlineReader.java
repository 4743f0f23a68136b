package longthrow.buildfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.TracedOutline;
import longthrow.core.build.TracedOutline.Form;
import longthrow.core.clear.Tracing;
import longthrow.core.clearance.OutlineText;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.OutlinedPart;

/** Reads the traced outlines: an entry whose text encloses nothing sound is a fault with its place. */
final class OutlineReader {
    private static final Pattern LINE = Pattern.compile("line (\\d+)(?:, column \\d+)?");
    private static final Pattern CHARACTER = Pattern.compile("character (\\d+)");
    private static final String NO_FORM = "give the outline as 'points', one x, y an item, or as 'svg_path'";

    private final Faults faults;
    private final Set<OutlinedPart> seen = EnumSet.noneOf(OutlinedPart.class);

    private OutlineReader(Faults faults) {
        this.faults = faults;
    }

    static List<TracedOutline> read(Fields top, Faults faults) {
        OutlineReader reader = new OutlineReader(faults);
        List<TracedOutline> all = new ArrayList<>();
        top.node(Layout.OUTLINES)
                .ifPresent(n -> BuildReader.eachMapping(n, Layout.OUTLINES, Layout.OUTLINE_KEYS, faults)
                        .forEach(fields -> reader.outline(fields).ifPresent(all::add)));
        return all;
    }

    private Optional<TracedOutline> outline(Fields fields) {
        Optional<String> word = fields.required("part", "counterweight");
        Optional<String> whyNot = word.map(String::strip).flatMap(OutlinedPart::whyNot);
        if (whyNot.isPresent()) {
            fields.refuse(
                    "part",
                    word.get(),
                    "is not traced: " + whyNot.get(),
                    String.join(", ", OutlinedPart.keys()),
                    "leave its outline out, and write down what is read of it");
            return Optional.empty();
        }
        Optional<OutlinedPart> part =
                word.flatMap(t -> fields.word("part", OutlinedPart.keys())).flatMap(OutlinedPart::at);
        if (part.isPresent() && !seen.add(part.get())) {
            fields.refuse(
                    "part",
                    part.get().key(),
                    "has an outline further up already",
                    "one outline of each part",
                    "keep the one that counts; for what lies at several depths trace all of it as one shadow");
            return Optional.empty();
        }
        if (!fields.has("unit")) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    "'unit' is missing; it is never guessed",
                    "",
                    "add the length of one unit of the drawing: 'unit: 1 mm'; of a picture the length of one pixel");
        }
        Optional<Quantity> unit = fields.width("unit", Dimension.LENGTH);
        Optional<Form> form = form(fields);
        List<Piece> pieces = form.map(f -> pieces(fields, f)).orElse(List.of());
        boolean mirrored = fields.yesOrNo("mirrored").orElse(false);
        Optional<Quantity> datumX = fields.quantity("datum_x", Dimension.LENGTH);
        Optional<Quantity> datumY = fields.quantity("datum_y", Dimension.LENGTH);
        Optional<Quantity> from = fields.quantity("from", Dimension.LENGTH);
        Optional<Quantity> to = fields.quantity("to", Dimension.LENGTH);
        Optional<Quantity> doubt = fields.width("doubt", Dimension.LENGTH);
        String note = fields.textOrEmpty(Layout.NOTE);
        if (part.isEmpty() || unit.isEmpty() || form.isEmpty() || pieces.isEmpty()) {
            return Optional.empty();
        }
        TracedOutline traced;
        try {
            traced = new TracedOutline(
                    part.get(),
                    unit.get(),
                    form.get(),
                    pieces.stream().map(Piece::text).toList(),
                    datumX.orElse(null),
                    datumY.orElse(null),
                    mirrored,
                    from.orElse(null),
                    to.orElse(null),
                    doubt.orElse(null),
                    note);
        } catch (IllegalArgumentException refused) {
            faults.add(fields.place(), fields.path(), "", String.valueOf(refused.getMessage()), "", "");
            return Optional.empty();
        }
        if (Tracing.read(traced) instanceof OutlineText.Refused refused) {
            refused.faults().forEach(fault -> add(fault, fields, form.get(), pieces));
            return Optional.empty();
        }
        return Optional.of(traced);
    }

    private Optional<Form> form(Fields fields) {
        boolean points = fields.has(Form.POINTS.key());
        boolean path = fields.has(Form.SVG_PATH.key());
        if (points == path) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    points ? "has both 'points' and 'svg_path'" : "has neither 'points' nor 'svg_path'",
                    "one of them",
                    NO_FORM);
            return Optional.empty();
        }
        return Optional.of(points ? Form.POINTS : Form.SVG_PATH);
    }

    /** A line of the text, with where it stands. */
    private record Piece(String text, Node node) {}

    private List<Piece> pieces(Fields fields, Form form) {
        String key = form.key();
        List<Piece> pieces = new ArrayList<>();
        List<Node> items = Fields.items(fields.node(key).orElseThrow(), fields.at(key), faults);
        int before = faults.count();
        for (int i = 0; i < items.size(); i++) {
            Node item = items.get(i);
            String at = fields.at(key) + "[" + (i + 1) + "]";
            text(item, at).ifPresent(text -> pieces.add(new Piece(text, item)));
        }
        if (items.isEmpty() && faults.count() == before) {
            fields.refuse(key, "", "holds nothing", "", NO_FORM);
        }
        return faults.count() == before ? pieces : List.of();
    }

    /** A point may be a list of two numbers. */
    private Optional<String> text(Node item, String path) {
        if (item instanceof Sequence point && point.items().stream().allMatch(Scalar.class::isInstance)) {
            return Optional.of(
                    point.items().stream().map(n -> ((Scalar) n).text()).collect(Collectors.joining(", ")));
        }
        return Fields.text(item, path, faults);
    }

    /** At the item that the fault is of. */
    private void add(OutlineText.Fault fault, Fields fields, Form form, List<Piece> pieces) {
        Node at = fields.node(form.key()).orElseThrow();
        String path = fields.at(form.key());
        Matcher line = LINE.matcher(fault.place());
        Matcher character = CHARACTER.matcher(fault.place());
        int item = -1;
        if (form == Form.POINTS && line.matches()) {
            item = Integer.parseInt(line.group(1)) - 1;
        } else if (form == Form.SVG_PATH && character.matches()) {
            int rest = Integer.parseInt(character.group(1)) - 1;
            for (item = 0;
                    item < pieces.size() - 1 && rest > pieces.get(item).text().length();
                    item++) {
                rest -= pieces.get(item).text().length() + 1;
            }
        }
        if (item >= 0 && item < pieces.size()) {
            at = pieces.get(item).node();
            path += pieces.size() > 1 ? "[" + (item + 1) + "]" : "";
        }
        boolean isPlaced = line.matches();
        faults.add(
                at.place(),
                path,
                fault.found(),
                (isPlaced || fault.place().equals("the outline") ? "" : fault.place() + ": ") + fault.why(),
                "",
                fault.mend());
    }
}
