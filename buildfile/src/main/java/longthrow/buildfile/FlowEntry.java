package longthrow.buildfile;

import static java.util.stream.Collectors.joining;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.HoursAt;
import longthrow.core.build.MockedUp;

/** What was entered for a term on one line, as it may stand behind a key and be put there by {@link BuildFile#edit}. */
final class FlowEntry {
    private FlowEntry() {}

    /** One entry by itself, several in brackets, none as unknown. */
    static String of(List<Given> entries) {
        if (entries.isEmpty()) {
            return Layout.UNKNOWN;
        }
        return entries.size() == 1
                ? alone(entries.get(0))
                : entries.stream().map(FlowEntry::braces).collect(joining(", ", "[", "]"));
    }

    private static String alone(Given given) {
        String brief = BuildWriter.brief(given);
        return brief.isEmpty() ? braces(given) : Scalars.write(brief, false);
    }

    /** Always with its keys: a list of bare figures would be read as readings of one instrument. */
    private static String braces(Given given) {
        return braces(BuildWriter.longForm(given));
    }

    /** All that is taken, in brackets; an empty list for nothing. */
    static String ofTaken(List<Decided> taken) {
        return taken.stream().map(BuildWriter::fields).map(FlowEntry::braces).collect(joining(", ", "[", "]"));
    }

    /** All that was mocked up, in brackets; an empty list for nothing. */
    static String ofMockedUp(List<MockedUp> mockedUp) {
        return mockedUp.stream().map(BuildWriter::fields).map(FlowEntry::braces).collect(joining(", ", "[", "]"));
    }

    /** Gas traces, in brackets. */
    static String ofGas(List<GasReading> traces) {
        return traces.stream().map(FlowEntry::gas).collect(joining(", ", "[", "]"));
    }

    private static String gas(GasReading trace) {
        String fields = braces(BuildWriter.gasTrace(trace));
        return fields.substring(0, fields.length() - 1)
                + trace.rows().stream()
                        .map(row -> inBraces(row.angle().written()) + ": "
                                + inBraces(row.pressure().written()))
                        .collect(joining(", ", ", rows: {", "}}"));
    }

    /** Steps of the duty, in brackets; an empty list for none. */
    static String ofHoursAt(List<HoursAt> steps) {
        return steps.stream().map(BuildWriter::hoursAt).map(FlowEntry::braces).collect(joining(", ", "[", "]"));
    }

    /** What was seen, in brackets. */
    static String ofSeen(List<Damage> seen) {
        return seen.stream()
                .map(d -> braces(
                        d.where().isEmpty()
                                ? fields(
                                        "part",
                                        d.part().key(),
                                        "damage",
                                        d.kind().key())
                                : fields(
                                        "part",
                                        d.part().key(),
                                        "damage",
                                        d.kind().key(),
                                        "where",
                                        Scalars.write(d.where(), true))))
                .collect(joining(", ", "[", "]"));
    }

    private static Map<String, String> fields(String... keysAndValues) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (int k = 0; k < keysAndValues.length; k += 2) {
            fields.put(keysAndValues[k], keysAndValues[k + 1]);
        }
        return fields;
    }

    private static String braces(Map<String, String> fields) {
        return fields.entrySet().stream()
                .map(field -> field.getKey() + ": " + inBraces(field.getValue()))
                .collect(joining(", ", "{", "}"));
    }

    /** In braces a comma would end a plain text; what is quoted, a list or in braces already stays. */
    private static String inBraces(String written) {
        boolean done = !written.isEmpty() && "'\"[{".indexOf(written.charAt(0)) >= 0;
        return done ? written : Scalars.write(written, true);
    }
}
