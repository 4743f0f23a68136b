package longthrow.workshop.web.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.BuildFile;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
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
        return holds(term.path(), term.part(), term.label() + " " + term.symbol() + " " + term.meaning())
                || (words.size() == 1 && isUnit(words.get(0), term));
    }

    boolean holds(Choice choice) {
        String options = choice.options().stream().map(o -> " " + o.label()).collect(Collectors.joining());
        return isAll()
                || holds(choice.path(), choice.part(), choice.meaning() + options)
                || sourcesFor(choice).anyMatch(a -> holds(named(a)));
    }

    /** Whether a rule of the trade, or what one of its sources is meant for, goes by these words. */
    boolean holds(Rule rule) {
        return holds(rule.label() + " "
                + rule.alternatives().stream().map(Wanted::named).collect(Collectors.joining(" ")));
    }

    private boolean holds(String said) {
        return !isAll() && words.stream().allMatch(plain(said)::contains);
    }

    private static String named(Alternative source) {
        return source.key() + " " + source.label();
    }

    /** Whether any of these is the word, or begins with it as far as it is typed. */
    boolean isOf(String... said) {
        return !isAll() && words.stream().allMatch(w -> Arrays.stream(said).anyMatch(s -> s.startsWith(w)));
    }

    /** What sources say for some words of the choice alone. */
    private static Stream<Alternative> sourcesFor(Choice choice) {
        return Arrays.stream(Rule.values())
                .flatMap(r -> r.alternatives().stream())
                .filter(a -> a.condition().clauses().stream().anyMatch(c -> c.choice() == choice));
    }

    /** A short unit is part of many words, so that it counts as a whole word alone. */
    private static boolean isUnit(String word, Term term) {
        return term.dimension().fittingUnits().stream().anyMatch(u -> u.equalsIgnoreCase(word));
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
