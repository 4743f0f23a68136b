package longthrow.buildfile;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** An empty reading sheet in the order of stripping: to be printed and written on, then typed in, when it is a build file. */
public final class BlankSheet {
    /** What fits on A4 and US letter in a ten-point type writer face. */
    public static final int WIDTH = 100;

    private static final int WRITE_AT = 46;
    private static final String LINE = "______________________";

    private static final List<String> METRIC_HEAD = List.of(
            "Reading sheet, in the order in which an engine is stripped. Write on the lines; then type what was",
            "read in place of 'unknown'. What was not read stays unknown, and lines may be deleted.",
            "  one reading, with its unit  66.01 mm",
            "  several readings            [66.01 mm, 66.02 mm, 66.01 mm]",
            "  with its doubt, 95 %        66.01 mm ± 0.01 mm",
            "  with the instrument         {readings: [66.01 mm, 66.02 mm], with: bore_gauge, part_at: 24 °C}",
            "  off a sheet                 {specified: 66.00 mm, tolerance: 0.01 mm, by: the maker}",
            "  a guess                     {assumed: 0.4 cc ± 0.3 cc, because: the reason}");
    private static final List<String> INCH_HEAD = METRIC_HEAD.stream()
            .map(line -> line.replace("66.01 mm ± 0.01 mm", "2.5988 in ± 0.0004 in")
                    .replace("66.01 mm", "2.5988 in")
                    .replace("66.02 mm", "2.5992 in")
                    .replace("66.00 mm, tolerance: 0.01 mm", "2.5984 in, tolerance: 0.0004 in")
                    .replace("24 °C", "75 °F"))
            .toList();

    /** Remarks that one line needs beyond the meaning of its key. */
    private static final Map<String, String> BESIDES = Map.of(
            Term.BORE_TOP_THRUST.path(),
            "The bore: the map, or the single 'bore' below it; one of them will do.",
            Term.WANTED_SPEED.path(),
            "Piston speed, rim speed and the speed rules of rod and wheel are worked out for this speed.",
            Choice.FUEL.path(),
            "The rules of ignition timing hang on it, and those of the ratio; the grade of petrol is chosen among the"
                    + " rules, as 'static_ratio: premium'.");

    /** What no engine needs stands as a remark. */
    private static final String REMARKS = "# Take the # away for what you want, and change it.\n"
            + "# Where the trade disagrees, the rule you keep to (the answer names them); and rules of your own:\n"
            + "# " + Layout.RULES + ": {choose: {" + Rule.SQUISH_LEAST.key()
            + ": general},\n#   keep: [{name: my class, term: engine.squish, least: LEAST}]}\n"
            + "# For a search among parts:\n" + "# " + Layout.FIT_EXAMPLE + "\n";

    private final UnitSystem units;
    private final StringBuilder text = new StringBuilder();

    private BlankSheet(UnitSystem units) {
        this.units = units;
    }

    /**
     * The sheet, every term unknown.
     * @param units in which the lines to write on are labelled
     */
    public static String text(UnitSystem units) {
        return new BlankSheet(units).text();
    }

    private String text() {
        boolean metric = units == UnitSystem.METRIC_FIRST;
        text.append("longthrow: ").append(Layout.FORMAT_VERSION).append('\n');
        for (String line : metric ? METRIC_HEAD : INCH_HEAD) {
            text.append("# ").append(line).append('\n');
        }
        for (Part part : Part.values()) {
            section(part);
            if (part == Part.WHOLE) {
                text.append('\n')
                        .append(Layout.UNITS)
                        .append(": ")
                        .append(Layout.word(units))
                        .append('\n');
            }
        }
        return text.append('\n')
                .append(REMARKS.replace("LEAST", metric ? "1.27 mm" : "0.050 in"))
                .toString();
    }

    private void besides(String path) {
        Optional.ofNullable(BESIDES.get(path)).ifPresent(words -> remark(2, words));
    }

    private void section(Part part) {
        text.append('\n');
        remark(0, part.label() + ": " + part.meaning());
        text.append(part.key()).append(":\n");
        if (part == Part.WHOLE) {
            prompt(Layout.NAME, "not named yet", "");
        }
        for (Choice choice : Choice.values()) {
            if (choice.part() == part) {
                choice(choice);
            }
        }
        @Nullable ReadingKind before = null;
        for (Term term : Layout.terms(part)) {
            term(term, term.reading() == before);
            before = OffASheet.way(term).isEmpty() ? term.reading() : null;
        }
        if (part == Part.ROD) {
            remark(
                    2,
                    "Shims on each side of the big-end cap, if there are any: " + Layout.SHIMS
                            + ": [0.05 mm, 0.05 mm]");
        }
    }

    private void choice(Choice choice) {
        String options = choice.options().stream().map(Choice.Option::key).collect(Collectors.joining(", "));
        remark(2, capital(choice.meaning()) + (options.isEmpty() ? "" : ": " + options));
        besides(choice.path());
        prompt(choice.key(), Layout.UNKNOWN, "");
    }

    private void term(Term term, boolean sameWay) {
        besides(term.path());
        ReadingKind kind = term.reading();
        remark(
                2,
                capital(term.label()) + ": " + term.meaning()
                        + (term.sign().isEmpty() ? "" : " (" + term.sign() + ")")
                        + (term.isForPowerAlone() ? "; for power alone" : ""));
        String way = sameWay ? "read as the one above" : kind.how();
        remark(
                4,
                OffASheet.way(term)
                        .orElse(kind.usualInstrument().label() + ", about " + minutes(kind.minutes()) + " min; "
                                + way));
        BenchUnits bench = BenchUnits.of(term.dimension(), term.believable().middle());
        prompt(
                term.key(),
                Layout.UNKNOWN,
                (units == UnitSystem.METRIC_FIRST ? bench.metric() : bench.inchTrade()).symbol());
    }

    private static String minutes(double minutes) {
        return String.format(Locale.ROOT, "%.0f", minutes);
    }

    private void prompt(String key, String value, String unit) {
        String line = "  " + key + ": " + value;
        text.append(line)
                .append(" ".repeat(Math.max(WRITE_AT - line.length(), 2)))
                .append(("# " + LINE + " " + unit).strip())
                .append('\n');
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** A remark wrapped to the width of the paper, further lines two spaces in. */
    private void remark(int indent, String words) {
        String margin = " ".repeat(Math.min(indent, 2)) + "# " + " ".repeat(Math.max(indent - 2, 0));
        StringBuilder line = new StringBuilder(margin);
        for (String word : List.of(words.split(" "))) {
            if (line.length() + word.length() > WIDTH) {
                text.append(line.toString().stripTrailing()).append('\n');
                line = new StringBuilder(margin + "  ");
            }
            line.append(word).append(' ');
        }
        text.append(line.toString().stripTrailing()).append('\n');
    }
}
