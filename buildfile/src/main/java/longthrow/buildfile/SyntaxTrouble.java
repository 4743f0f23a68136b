package longthrow.buildfile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.buildfile.Node.Place;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** What the scanner of the YAML library complains about, said so that an owner can mend it. */
final class SyntaxTrouble {
    /**
     * What to say.
     * @param says part of what the library says
     * @param opened whether to point to where the thing was opened
     */
    private record Row(String says, boolean opened, String why, String mend) {}

    /** First match counts. */
    private static final List<Row> ROWS = List.of(
            new Row(
                    "quoted scalar",
                    true,
                    "a quotation mark is opened here and never closed",
                    "close it, or write an inch mark as in 2.165 in"),
            new Row(
                    "flow mapping",
                    true,
                    "a brace { is opened here and not closed",
                    "part the keys by commas and close with }"),
            new Row(
                    "flow sequence",
                    true,
                    "a bracket [ is opened here and not closed",
                    "part the values by commas and close with ]"),
            new Row(
                    "mapping values are not allowed",
                    false,
                    "a colon stands where no key can be",
                    "check the indentation; put words that hold a colon in quotation marks"),
            new Row(
                    "block mapping",
                    false,
                    "this line does not fit in with the lines above it",
                    "give all keys of a section the same number of spaces in front, and one section name no space"),
            new Row(
                    "block collection",
                    false,
                    "this line does not fit in with the list above it",
                    "give all items of a list the same number of spaces in front"),
            new Row(
                    "simple key",
                    true,
                    "a line without its colon starts here, or a key is far too long",
                    "write key: value, with a space behind the colon"),
            new Row(
                    "cannot start any token",
                    false,
                    "the value starts with a character that cannot stand there",
                    "put the value in quotation marks"),
            new Row(
                    "block scalar",
                    false,
                    "the text block behind | or > is not well formed",
                    "put the words in quotation marks"),
            new Row(
                    "escape",
                    false,
                    "a backslash stands in double quotation marks",
                    "write two backslashes, or use single quotation marks"),
            new Row("anchor", false, "an & is followed by no name", "put the value in quotation marks"),
            new Row("alias", false, "a * is followed by no name", "put the value in quotation marks"),
            new Row(
                    "tag",
                    false,
                    "a ! starts a type tag, which a build file does not have",
                    "put the value in quotation marks"),
            new Row("directive", false, "a % starts a directive, which a build file does not have", "delete the line"));

    private static final Row OTHER = new Row(
            "",
            false,
            "the text cannot be read on from here",
            "compare the line and the one above it with the example");

    private SyntaxTrouble() {}

    static void report(MarkedYamlEngineException broken, Faults faults) {
        String says = (orEmpty(broken.getContext()) + " " + orEmpty(broken.getProblem())).toLowerCase(Locale.ROOT);
        Row row = ROWS.stream().filter(r -> says.contains(r.says())).findFirst().orElse(OTHER);
        Optional<Mark> mark = row.opened() && broken.getContextMark().isPresent()
                ? broken.getContextMark()
                : broken.getProblemMark().or(broken::getContextMark);
        Place place =
                mark.map(m -> new Place(m.getLine() + 1, m.getColumn() + 1)).orElse(Place.NOWHERE);
        faults.add(
                place,
                "",
                mark.map(SyntaxTrouble::restOfLine).orElse(""),
                "is not well formed: " + row.why(),
                "",
                row.mend());
    }

    /** The library's strings may be null where its signature does not say so. */
    @SuppressWarnings("ConstantValue")
    private static String orEmpty(String text) {
        return String.valueOf(text);
    }

    private static String restOfLine(Mark mark) {
        StringBuilder rest = new StringBuilder();
        int[] buffer = mark.getBuffer();
        for (int at = mark.getPointer(); at < buffer.length && rest.length() < 30; at++) {
            if (buffer[at] == 0 || buffer[at] == '\n' || buffer[at] == '\r') {
                break;
            }
            rest.appendCodePoint(buffer[at]);
        }
        return rest.toString().strip();
    }
}
