package longthrow.workshop.print;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stops;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * What an answer says, for people who see pages and neither the build file nor the command: names of fields instead of places in a file, and where on the
 * pages something is done instead of what is written into a file.
 */
public final class PageWords {
    /** A place of the build file: a section and a key. */
    private static final String PLACE = "([a-z_]+\\.[a-z_0-9]+)";

    private static final Pattern PLACE_IN_BRACKETS = Pattern.compile(" \\(" + PLACE + "\\)");

    /** The same behind its name, with a count: "exhaust lobe centre (camshaft.exhaust_lobe_centre, 11 pairs)". */
    private static final Pattern COUNTED_PLACE = Pattern.compile(" \\(" + PLACE + ", (\\d[^()]*)\\)");

    /** The same alone; no part of a longer place, of a name of a file, or of an address. */
    private static final Pattern PLACE_ALONE = Pattern.compile("(?<![\\w./])" + PLACE + "(?![\\w/])");

    /** The same with the number of one of several entries: as the file counts them, or as an answer tells two readings apart. */
    private static final Pattern ENTRY = Pattern.compile("(?<![\\w./])" + PLACE + "(?:\\[(\\d+)]|#(\\d+))");

    /** Tables have no fields of their own: they are told by their number. */
    private static final Pattern FLOW_TABLE = Pattern.compile("\\bflow_tables\\[(\\d+)]");

    private static final Pattern LIFT_TABLE = Pattern.compile("\\blift_tables\\[(\\d+)]");

    private static final Pattern OUTLINE = Pattern.compile("\\boutlines\\[(\\d+)]");
    /** And so are entries of the mock-up. */
    private static final Pattern MOCKED_UP = Pattern.compile("\\bmocked_up\\[(\\d+)]");

    private static final Pattern GAS_TRACE = Pattern.compile("\\bgas_traces\\[(\\d+)]");

    /** The duty where it is named beside its place, and alone. */
    private static final Pattern HOURS_AT_IN_BRACKETS = Pattern.compile(" \\(hours_at\\)");

    private static final Pattern HOURS_AT = Pattern.compile("\\bhours_at\\b");

    private static final Pattern SEEN = Pattern.compile("write what was found, such as seen: \\[\\{[^\\]]*\\}\\]");

    /** A section of the build file by itself, as people do not write it. */
    private static final Pattern SECTION = Pattern.compile("(?<![\\w./'`])[a-z]+(?:_[a-z]+)+(?![\\w./])");

    private static final Pattern ANY_PLACE = Pattern.compile("\\b" + PLACE + "\\b");

    private static final String INSTRUMENTS = "instruments.";

    private static final Pattern TO_BE_BOUGHT = Pattern.compile("add ([a-z_]+) to fit: choose:");

    private static final Pattern OWN_LIMIT = Pattern.compile("rules\\.keep\\[(\\d+)]\\.(\\w+)");

    private static final Pattern OF_A_RULE =
            Pattern.compile("choose( which to follow)? with rules: choose: ([a-z_]+)[^;.]*");

    /** What is written into a file or behind a command, and what is done on the pages instead; longer ones before those they begin with. */
    private static final Map<String, String> INSTEAD = instead();

    private PageWords() {}

    private static Map<String, String> instead() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("name catalogue files with --catalogue", "add a catalogue on the page Parts");
        words.put("write aims: engine.squish: ", "enter one under Aim at, such as ");
        words.put("write one under aims:", "enter one under Aim at");
        words.put(
                "look at aims: and at rules: keep: and choose:",
                "look at the aim, at your least and most, and at the rules you chose");
        words.put(
                "look at rules: keep: and rules: choose: on ",
                "look at your least and most, and the rules you chose, on ");
        words.put("write fit: order: to change it", "an order of your own can stand in the build's text");
        words.put("(fit: order: can make it count)", "(an order of your own in the build's text can make it count)");
        words.put("write fit: choose: to change it", "tick what may be bought to change it");
        words.put(
                "fewer kinds under fit: choose:, codes under keep:, tighter aims or rules",
                "fewer kinds that may be bought, codes that must be among the parts, tighter aims or limits");
        words.put("ask about one part: --why CODE", "ask about one part: enter its code under Must be among the parts");
        words.put("narrow the search with fit: keep:", "narrow the search with Must be among the parts");
        words.put("'longthrow catalogue' shows what there is", "the page Parts shows what there is");
        words.put("'longthrow import' takes the build file", "the page Builds takes the build file");
        words.put("'measure'", "Measure");
        words.put("'fit'", "Fit");
        words.put(
                Stops.WHOSE_WORD,
                "say whose sheet, stamp or plate it is off: on its card, under Off a sheet, or a guess");
        words.put("fit.keep", "Must be among the parts");
        words.put("fit.choose", "may be bought");
        words.put("fit.order", "best first");
        words.put("aims on ", "the aim: ");
        words.put("aims.", "the aim: ");
        words.put("rules on ", "limits: ");
        return words;
    }

    /** In the words of the pages. */
    public static String said(String text) {
        String said = withEntries(text);
        for (Map.Entry<String, String> one : INSTEAD.entrySet()) {
            said = said.replace(one.getKey(), one.getValue());
        }
        said = TO_BE_BOUGHT
                .matcher(said)
                .replaceAll(found ->
                        Matcher.quoteReplacement("tick " + found.group(1).replace('_', ' ') + " under May be bought"));
        said = OF_A_RULE
                .matcher(said)
                .replaceAll(found -> Matcher.quoteReplacement("choose one of its sources"
                        + Rule.at(found.group(2))
                                .map(r -> " where " + r.label() + " stands")
                                .orElse("")
                        + " on Measure"));
        said = FLOW_TABLE.matcher(said).replaceAll("flow table $1");
        said = LIFT_TABLE.matcher(said).replaceAll("lift table $1");
        said = OUTLINE.matcher(said).replaceAll("outline $1");
        said = MOCKED_UP.matcher(said).replaceAll("mock-up $1");
        said = SEEN.matcher(said).replaceAll("say so on Life, under Looked over");
        said = GAS_TRACE.matcher(said).replaceAll("gas trace $1");
        said = HOURS_AT_IN_BRACKETS.matcher(said).replaceAll("");
        said = HOURS_AT.matcher(said).replaceAll("stated duty");
        said = SECTION.matcher(said)
                .replaceAll(
                        found -> Matcher.quoteReplacement(part(found.group()).orElse(found.group())));
        said = OWN_LIMIT.matcher(said).replaceAll(found -> "your limit no. " + found.group(1) + ", " + found.group(2));
        said = COUNTED_PLACE
                .matcher(said)
                .replaceAll(found -> Matcher.quoteReplacement(
                        label(found.group(1)).isPresent() ? " (" + found.group(2) + ")" : found.group()));
        said = PLACE_IN_BRACKETS
                .matcher(said)
                .replaceAll(
                        found -> Matcher.quoteReplacement(label(found.group(1)).isPresent() ? "" : found.group()));
        return PLACE_ALONE
                .matcher(said)
                .replaceAll(
                        found -> Matcher.quoteReplacement(label(found.group(1)).orElse(found.group())));
    }

    /** A place of the build file as a page says it: the quantity by its label, and which of its entries; an instrument by its name. */
    public static String place(String where) {
        return where.startsWith(INSTRUMENTS)
                ? "instrument: " + where.substring(INSTRUMENTS.length()).replace('_', ' ')
                : said(where);
    }

    /** The quantity that has the place, where it is one that is read. */
    public static Optional<Term> read(String where) {
        Matcher place = ANY_PLACE.matcher(where);
        while (place.find()) {
            Optional<Term> term = Term.at(place.group(1)).filter(Term::isRead);
            if (term.isPresent()) {
                return term;
            }
        }
        return Optional.empty();
    }

    private static String withEntries(String text) {
        return ENTRY.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(label(found.group(1))
                        .map(label -> label + ", entry " + (found.group(2) == null ? found.group(3) : found.group(2)))
                        .orElse(found.group())));
    }

    private static Optional<String> part(String section) {
        return Arrays.stream(Part.values())
                .filter(p -> p.key().equals(section))
                .map(Part::label)
                .findFirst();
    }

    private static Optional<String> label(String place) {
        return Term.at(place).map(Term::label).or(() -> Choice.at(place).map(PageWords::label));
    }

    private static String label(Choice choice) {
        String key = choice.key().replace('_', ' ');
        return choice.part() == Part.USE || choice.part() == Part.WHOLE
                ? key
                : choice.part().label() + " " + key;
    }

    /** Where on the pages what a text tells to do is done. */
    public enum Where {
        PARTS,
        AIMS,
        MEASURE,
        BUILD_TEXT
    }

    /** The places that a text as the answer has it sends its reader to. */
    public static List<Where> places(String text) {
        if (text.contains("--catalogue") || text.contains("longthrow catalogue")) {
            return List.of(Where.PARTS);
        }
        if (text.contains("fit: order:")) {
            return List.of(Where.BUILD_TEXT);
        }
        if (text.contains("aims:")
                || text.contains("fit: choose:")
                || text.contains("keep:")
                || text.contains("--why")) {
            return List.of(Where.AIMS);
        }
        return text.contains("rules: choose:") || text.contains("'measure'") ? List.of(Where.MEASURE) : List.of();
    }
}
