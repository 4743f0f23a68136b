package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import longthrow.core.catalogue.PartKind;
import org.jspecify.annotations.Nullable;

/**
 * What the rows of one catalogue file, or of one list in it, are.
 * @param kind null for machine operations
 */
record Shelf(@Nullable PartKind kind) {
    static final Shelf OPERATIONS = new Shelf(null);

    /** Every shelf there is, parts first. */
    static List<Shelf> all() {
        List<Shelf> all = new ArrayList<>();
        Arrays.stream(PartKind.values()).map(Shelf::new).forEach(all::add);
        all.add(OPERATIONS);
        return all;
    }

    static List<String> keys() {
        return all().stream().map(Shelf::key).toList();
    }

    static Optional<Shelf> at(String key) {
        return all().stream().filter(s -> s.key().equals(key)).findFirst();
    }

    String key() {
        return kind == null ? "machine_operation" : kind.key();
    }

    /** Name of the list in a file that holds several kinds. */
    String plural() {
        String key = key();
        return key.endsWith("ch") ? key + "es" : key + "s";
    }

    String label() {
        return kind == null ? "machine operation" : kind.label();
    }

    /** The one shelf whose name stands in the name of a file, by the longest name: head_gasket is a gasket and no head. */
    static Optional<Shelf> ofFileName(String fileName) {
        String base = fileName.substring(Math.max(fileName.lastIndexOf('/'), fileName.lastIndexOf('\\')) + 1)
                .replaceFirst("\\.[^.]*$", "");
        String words = "_" + base.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_") + "_";
        Set<Shelf> found = new LinkedHashSet<>();
        int longest = 0;
        for (Shelf shelf : all()) {
            for (String name : shelf.names()) {
                if (name.length() >= longest && words.contains("_" + name + "_")) {
                    if (name.length() > longest) {
                        found.clear();
                    }
                    longest = name.length();
                    found.add(shelf);
                }
            }
        }
        return found.size() == 1 ? found.stream().findFirst() : Optional.empty();
    }

    private List<String> names() {
        List<String> names = new ArrayList<>(List.of(key(), plural()));
        if (kind == null) {
            names.addAll(List.of("machining", "operations", "machine_shop"));
            return names;
        }
        String label = kind.label().replaceAll("[^a-z0-9]+", "_");
        names.addAll(List.of(label, label + "s"));
        for (String word : TradeWords.forSection(kind.part().key())) {
            names.addAll(List.of(word, word + "s"));
        }
        return names;
    }
}
