package longthrow.workshop.web.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import longthrow.buildfile.BuildFile;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * What somebody looks for on Measure: a quantity holds every word of it in its label, its key, its part or what it means, or goes by that word in the
 * trade.
 */
final class Wanted {
    /** A longer search is something else pasted in. */
    private static final int LONGEST = 80;

    private final List<String> words;
    private final List<String> places;

    private Wanted(List<String> words, List<String> places) {
        this.words = words;
        this.places = places;
    }

    /** In the words of whoever asks; none of them for everything. */
    static Wanted of(String find) {
        String plain = plain(find.length() > LONGEST ? find.substring(0, LONGEST) : find);
        return new Wanted(
                Arrays.stream(plain.split(" ", -1)).filter(w -> !w.isEmpty()).toList(),
                BuildFile.tradeWord(plain.replace(' ', '_')));
    }

    boolean isAll() {
        return words.isEmpty();
    }

    boolean holds(Term term) {
        return holds(term.path(), term.part(), term.label() + " " + term.symbol() + " " + term.meaning());
    }

    boolean holds(Choice choice) {
        return holds(choice.path(), choice.part(), choice.meaning());
    }

    private boolean holds(String path, Part part, String said) {
        String all = plain(path + " " + part.label() + " " + said);
        return words.stream().allMatch(all::contains)
                || places.stream().anyMatch(p -> path.equals(p) || path.startsWith(p + "."));
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replaceAll("[_.,\\-]+", " ")
                .replaceAll("\\s+", " ")
                .strip();
    }
}
