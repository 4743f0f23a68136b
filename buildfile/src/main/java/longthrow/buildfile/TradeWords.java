package longthrow.buildfile;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.engine.Rule;
import longthrow.core.term.Part;

/** What the trade calls a thing that has another name in a build file. Common practice, no source. */
final class TradeWords {
    private static final List<String> ROD = List.of("connecting_rod");
    private static final List<String> CRANK = List.of("crankshaft");
    private static final List<String> DECK = List.of("cylinder.deck_height", "cylinder.deck_clearance");
    private static final List<String> CHAMBER = List.of("head.chamber_volume");
    private static final List<String> CROWN = List.of("piston.compression_height");
    private static final List<String> SQUISH = List.of("engine.squish_flywheel_end", "engine.squish_output_end");

    /** Sections, and terms with their section. */
    private static final Map<String, List<String>> KEYS = Map.ofEntries(
            Map.entry("rod", ROD),
            Map.entry("conrod", ROD),
            Map.entry("con_rod", ROD),
            Map.entry("crank", CRANK),
            Map.entry("cam", List.of("camshaft")),
            Map.entry("carb", List.of("carburettor")),
            Map.entry("carburetor", List.of("carburettor")),
            Map.entry("jug", List.of("cylinder")),
            Map.entry("head_gasket", List.of("gasket")),
            Map.entry("pto", List.of("output_shaft")),
            Map.entry("deck", DECK),
            Map.entry("pin_height", CROWN),
            Map.entry("crown_height", CROWN),
            Map.entry("cc", CHAMBER),
            Map.entry("ccs", CHAMBER),
            Map.entry("chamber", CHAMBER),
            Map.entry("chamber_cc", CHAMBER),
            Map.entry("squish", SQUISH),
            Map.entry("quench", SQUISH),
            Map.entry("rod_length", List.of("connecting_rod.length")),
            Map.entry("centre_to_centre", List.of("connecting_rod.length")),
            Map.entry("center_to_center", List.of("connecting_rod.length")),
            Map.entry("centres", List.of("connecting_rod.length")),
            Map.entry("big_end", List.of("connecting_rod.big_end_bore")),
            Map.entry("small_end", List.of("connecting_rod.small_end_bore")),
            Map.entry("wrist_pin", List.of("piston.pin_diameter")),
            Map.entry("gudgeon_pin", List.of("piston.pin_diameter")),
            Map.entry("dish", List.of("piston.crown_volume")),
            Map.entry("crushed", List.of("gasket.thickness")),
            Map.entry("crushed_thickness", List.of("gasket.thickness")),
            Map.entry("crank_pin", List.of("crankshaft.crankpin_diameter")),
            Map.entry("crankpin", List.of("crankshaft.crankpin_diameter")),
            Map.entry("timing", List.of("ignition.base_timing")));

    private static final Map<String, List<String>> WORDS = Map.of(
            "ohv", List.of("overhead"),
            "flathead", List.of("side"),
            "l_head", List.of("side"),
            "gasoline", List.of("petrol"),
            "gas", List.of("petrol"),
            "alcohol", List.of("methanol"),
            "forged", List.of("high_silicon_forging", "low_silicon_forging"));

    private static final String PETROL = "petrol";

    /** What is bought at the pump: not a fuel of its own but the rule kept for it. */
    private static final Set<String> GRADES = Set.of("premium", "regular");

    /** More than these are no help to choose from. */
    private static final int MOST = 3;

    private static final Set<String> SECTIONS =
            Arrays.stream(Part.values()).map(Part::key).collect(Collectors.toUnmodifiableSet());

    private TradeWords() {}

    /**
     * The question that leads from a key nobody knows to the one that was meant.
     * @param path  of the mapping it stands in
     * @param known keys that may stand there
     */
    static Optional<String> didYouMean(String key, String path, Collection<String> known) {
        boolean ofTheEngine = path.isEmpty() || SECTIONS.contains(path);
        return Optional.ofNullable(ofTheEngine ? KEYS.get(plain(key)) : null)
                .map(meant -> meant.stream()
                        .map(m -> !path.isEmpty() && m.startsWith(path + ".") ? m.substring(path.length() + 1) : m)
                        .toList())
                .or(() -> Nearest.to(key, known).map(List::of))
                .or(() -> holding(key, known))
                .map(TradeWords::question);
    }

    /** As {@link #didYouMean(String, String, Collection)}, for a word among those that may be chosen. */
    static Optional<String> didYouMean(String word, Collection<String> allowed) {
        if (GRADES.contains(plain(word)) && allowed.contains(PETROL)) {
            return Optional.of("write " + PETROL + ", and choose the ratio for its grade under 'rules:': {choose: {"
                    + Rule.STATIC_RATIO.key() + ": " + plain(word) + "}}");
        }
        return Optional.ofNullable(WORDS.get(plain(word)))
                .filter(allowed::containsAll)
                .or(() -> Nearest.to(word, allowed).map(List::of))
                .or(() -> holding(word, allowed))
                .map(TradeWords::question);
    }

    /** What the trade calls a section of the build file, such as rod or crank. */
    static List<String> forSection(String section) {
        return KEYS.entrySet().stream()
                .filter(e -> e.getValue().equals(List.of(section)))
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    /** The terms that a word of the trade stands for; none for a word nobody knows. */
    static List<String> terms(String word) {
        return KEYS.getOrDefault(plain(word), List.of());
    }

    /** What is read instead of a term that is worked out; empty when there is no one reading. */
    static Optional<String> readInstead(String termPath) {
        String key = termPath.substring(termPath.indexOf('.') + 1);
        return Optional.ofNullable(KEYS.get(key))
                .filter(keys -> keys.get(0).contains("."))
                .map(keys -> String.join(" and ", keys));
    }

    /** A few names that hold every word of the one typed: deck_flywheel_end, billet. */
    private static Optional<List<String>> holding(String typed, Collection<String> known) {
        List<String> words = List.of(plain(typed).split("_", -1));
        List<String> holding = known.stream()
                .filter(k -> List.of(k.split("_", -1)).containsAll(words))
                .toList();
        return holding.isEmpty() || holding.size() > MOST ? Optional.empty() : Optional.of(holding);
    }

    private static String question(List<String> meant) {
        return "did you mean " + String.join(" or ", meant) + "?";
    }

    private static String plain(String typed) {
        return typed.toLowerCase(Locale.ROOT).strip().replace('-', '_').replace(' ', '_');
    }
}
