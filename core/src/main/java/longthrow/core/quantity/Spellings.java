package longthrow.core.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** All spellings of all units, found without regard to how separators, powers and capitals are written. */
final class Spellings {
    /** A unit under one of its spellings. {@code saidBack}: understood, but the writer is told how. */
    record Entry(Unit unit, boolean saidBack) {}

    /** Why a word cannot be taken as a unit, and what to write instead. */
    record Asked(String why, String mend) {}

    private static final Asked GALLON =
            new Asked("is 3.785 L in the US and 4.546 L imperial", "write US gal or imp gal");
    private static final Asked FLUID_OUNCE =
            new Asked("is 29.57 ml in the US and 28.41 ml imperial", "write US fl oz or imp fl oz");
    private static final Asked PINT = new Asked("is 473 ml in the US and 568 ml imperial", "write it in ml");

    private static Asked gaugeOrAbsolute(String which, String unit) {
        return new Asked("says that the pressure is " + which + ", which goes by where it is entered", "write " + unit);
    }

    /** Words that name more than one unit, or more than a unit. */
    private static final Map<String, Asked> ASKED = Map.ofEntries(
            Map.entry("fl·oz", FLUID_OUNCE),
            Map.entry("fluid·ounce", FLUID_OUNCE),
            Map.entry("fluid·ounces", FLUID_OUNCE),
            Map.entry("gal", GALLON),
            Map.entry("gallon", GALLON),
            Map.entry("gallons", GALLON),
            Map.entry("qt", new Asked("is 0.946 L in the US and 1.137 L imperial", "write US qt, or it in L")),
            Map.entry("pt", PINT),
            Map.entry("pint", PINT),
            Map.entry("pints", PINT),
            Map.entry("psig", gaugeOrAbsolute("gauge", "psi")),
            Map.entry("psia", gaugeOrAbsolute("absolute", "psi")),
            Map.entry("barg", gaugeOrAbsolute("gauge", "bar")),
            Map.entry("bara", gaugeOrAbsolute("absolute", "bar")),
            Map.entry("hz", new Asked("can mean turns or radians a second", "write r/s or rpm")),
            Map.entry("mpa", new Asked("can mean millipascal or megapascal", "write MPa or Pa")),
            Map.entry(
                    "nm",
                    new Asked(
                            "can mean newton metre, nanometre or nautical mile",
                            "write N·m for torque, nm for nanometres")));

    /** Spellings where a capital changes the meaning, so that they are taken only as they stand in the table. */
    private static final Set<String> CAPITALS_MATTER = Set.of("nm", "mpa");

    private static final Pattern BRACKETED_DIVISOR = Pattern.compile("/ *\\(([^()]*)\\)");
    private static final Pattern SEPARATORS = Pattern.compile("[ *.·\\-\\u2009]+");
    private static final Pattern DEGREE_WORD = Pattern.compile("\\b(?:degrees?|degs?)(?:·(?=[CFcf])|(?=[CF]?$))");

    private static final Map<String, List<Entry>> EXACT = new HashMap<>();
    private static final Map<String, List<Entry>> ANY_CAPITALS = new HashMap<>();

    static {
        for (Unit unit : Units.all()) {
            enter(unit, unit.symbol());
            unit.spellings().forEach(spelling -> enter(unit, spelling));
        }
    }

    private Spellings() {}

    private static void enter(Unit unit, String spelling) {
        boolean saidBack = spelling.startsWith("~");
        String key = key(saidBack ? spelling.substring(1) : spelling);
        Entry entry = new Entry(unit, saidBack);
        addOnce(EXACT.computeIfAbsent(key, k -> new ArrayList<>()), entry);
        String folded = key.toLowerCase(Locale.ROOT);
        if (key.length() > 1 && !CAPITALS_MATTER.contains(folded)) {
            addOnce(ANY_CAPITALS.computeIfAbsent(folded, k -> new ArrayList<>()), entry);
        }
    }

    private static void addOnce(List<Entry> entries, Entry entry) {
        if (entries.stream().noneMatch(known -> known.unit() == entry.unit())) {
            entries.add(entry);
        }
    }

    /** One way to write a unit: "lb ft", "lb.ft" and "lb-ft" are "lb·ft"; "mm²" and "mm^2" are "mm2". */
    static String key(String written) {
        if (EXACT.containsKey(written)) {
            return written; // the usual case, and each key is its own key
        }
        String key = WrittenText.plainPowers(written).strip();
        key = BRACKETED_DIVISOR.matcher(key).replaceAll("/$1");
        if (key.endsWith(".") && key.length() > 1) {
            key = key.substring(0, key.length() - 1); // "in.", "cu. in."
        }
        key = SEPARATORS.matcher(key).replaceAll("·");
        key = key.replace("·per·", "/")
                .replace("·/", "/")
                .replace("/·", "/")
                .replace("·:·", ":")
                .replace(":·", ":");
        key = DEGREE_WORD.matcher(key).replaceAll("°").replace("°·", "°");
        return key;
    }

    /** All units spelled so, in the order of the table; exact capitals before others. */
    static List<Entry> all(String written) {
        String key = key(written);
        List<Entry> exact = EXACT.getOrDefault(key, List.of());
        return exact.isEmpty() ? ANY_CAPITALS.getOrDefault(key.toLowerCase(Locale.ROOT), List.of()) : exact;
    }

    /** The unit of this dimension spelled so. */
    static Optional<Entry> find(String written, Dimension dimension) {
        String key = key(written);
        return first(EXACT.getOrDefault(key, List.of()), dimension)
                .or(() -> first(ANY_CAPITALS.getOrDefault(key.toLowerCase(Locale.ROOT), List.of()), dimension)
                        .map(entry -> saidIfMega(key, entry)));
    }

    private static Optional<Entry> first(List<Entry> entries, Dimension dimension) {
        return entries.stream()
                .filter(entry -> entry.unit().dimension() == dimension)
                .findFirst();
    }

    /** A capital M before a small rest is mega where it is written with care; nobody reads that far, so milli is meant, and it is said. */
    private static Entry saidIfMega(String key, Entry entry) {
        String symbol = entry.unit().symbol();
        boolean mega = key.startsWith("M")
                && symbol.startsWith("m")
                && key.length() > 1
                && key.substring(1).equals(symbol.substring(1));
        return mega ? new Entry(entry.unit(), true) : entry;
    }

    /** Why this word has to be asked about; none for other words. */
    static Optional<Asked> askedAbout(String written) {
        return Optional.ofNullable(ASKED.get(key(written).toLowerCase(Locale.ROOT)));
    }

    /** Symbols of units that differ from the word in one letter or in capitals only, at most three. */
    static List<String> near(String written, Dimension dimension) {
        String key = key(written).toLowerCase(Locale.ROOT);
        Set<String> near = new LinkedHashSet<>();
        EXACT.forEach((known, entries) -> {
            String folded = known.toLowerCase(Locale.ROOT);
            if (folded.equals(key) || (key.length() > 2 && folded.length() > 1 && oneLetterApart(folded, key))) {
                first(entries, dimension)
                        .ifPresent(entry -> near.add(entry.unit().symbol()));
            }
        });
        near.remove("");
        return near.stream().sorted().limit(3).toList();
    }

    /** Whether one letter added, dropped or changed turns one word into the other. */
    static boolean oneLetterApart(String first, String second) {
        if (first.length() > second.length()) {
            return oneLetterApart(second, first);
        }
        if (second.length() - first.length() > 1) {
            return false;
        }
        int same = 0;
        while (same < first.length() && first.charAt(same) == second.charAt(same)) {
            same++;
        }
        String restOfSecond = second.substring(Math.min(same + 1, second.length()));
        int skip = first.length() == second.length() ? 1 : 0;
        return first.substring(Math.min(same + skip, first.length())).equals(restOfSecond);
    }
}
