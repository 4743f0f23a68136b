package longthrow.buildfile;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Keys that are terms, as {@code section.key: …} or nested, section by section. */
final class TermMap {
    /** Takes one value. */
    interface Taker {
        void take(Term term, Node value, String path);
    }

    private static final List<String> PATHS =
            Arrays.stream(Term.values()).map(Term::path).toList();
    private static final List<String> SECTIONS =
            Arrays.stream(Part.values()).map(Part::key).toList();

    private TermMap() {}

    static void read(Node node, String path, Faults faults, Taker taker) {
        Set<Term> seen = new HashSet<>();
        Fields.ofAnyKeys(node, path, faults)
                .ifPresent(f -> f.entries().forEach(entry -> {
                    if (SECTIONS.contains(entry.key().text()) && entry.value() instanceof Mapping section) {
                        section.entries()
                                .forEach(e -> take(
                                        TreeReader.within(
                                                entry.key().text(), e.key().text()),
                                        e,
                                        f.path(),
                                        seen,
                                        faults,
                                        taker));
                    } else {
                        take(entry.key().text(), entry, f.path(), seen, faults, taker);
                    }
                }));
    }

    private static void take(String termPath, Entry entry, String path, Set<Term> seen, Faults faults, Taker taker) {
        String at = TreeReader.within(path, termPath);
        term(termPath, entry.key(), at, faults).ifPresent(term -> {
            if (seen.add(term)) {
                taker.take(term, entry.value(), at);
            } else {
                faults.add(entry.key().place(), at, termPath, "stands twice", "each term once", "keep one of them");
            }
        });
    }

    /** The terms of the section that was named, else the sections. */
    private static String allowed(String text) {
        String section = text.substring(0, Math.max(text.indexOf('.'), 0));
        return SECTIONS.contains(section)
                ? PATHS.stream()
                        .filter(p -> p.startsWith(section + "."))
                        .map(p -> p.substring(section.length() + 1))
                        .collect(Collectors.joining(", ", section + ". and one of ", ""))
                : "a key of " + String.join(", ", SECTIONS);
    }

    /** The term written {@code section.key}. */
    static Optional<Term> term(String text, Node at, String path, Faults faults) {
        Optional<Term> term = Term.at(text);
        if (term.isEmpty()) {
            List<String> sameKey =
                    PATHS.stream().filter(p -> p.endsWith("." + text)).toList();
            faults.add(
                    at.place(),
                    path,
                    text,
                    "is not a term",
                    allowed(text),
                    sameKey.isEmpty()
                            ? TradeWords.didYouMean(text, "", PATHS).orElse("write section.key, such as engine.squish")
                            : "did you mean " + String.join(" or ", sameKey) + "?");
        }
        return term;
    }
}
