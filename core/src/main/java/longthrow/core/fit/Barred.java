package longthrow.core.fit;

import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.catalogue.PartKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Parts of combinations that were held against every rule and break one: whatever has the same parts behind the figure of that rule breaks it too, and need
 * not be looked at again.
 */
final class Barred {
    /** Kinds of the stack on which a figure hangs, and whether the deck's height is behind it. */
    private record Behind(Set<PartKind> kinds, boolean deck) {}

    /** By what is behind a figure: parts as they stand in a combination, and how many plain combinations had them. */
    private final Map<Behind, Map<String, Long>> parts = new LinkedHashMap<>();

    /**
     * Bars what this combination has behind a figure.
     * @param readings the figure comes of
     * @return the key to ask {@link #count} for
     */
    String add(Found found, Collection<Term> readings) {
        Behind behind = behind(readings);
        String key = key(behind, found);
        parts.computeIfAbsent(behind, b -> new LinkedHashMap<>()).putIfAbsent(key, 0L);
        return key;
    }

    /** Whether it breaks a rule that is known to be broken by the same parts. */
    boolean bars(Found found, boolean plain) {
        for (var entry : parts.entrySet()) {
            String key = key(entry.getKey(), found);
            Long count = entry.getValue().get(key);
            if (count != null) {
                entry.getValue().put(key, count + (plain ? 1 : 0));
                return true;
            }
        }
        return false;
    }

    /** How many plain combinations it kept out since the last {@link #recount}. */
    long count(String key) {
        return parts.values().stream()
                .mapToLong(counts -> counts.getOrDefault(key, 0L))
                .sum();
    }

    void recount() {
        parts.values().forEach(counts -> counts.replaceAll((key, count) -> 0L));
    }

    /** Whether a figure that comes of these readings changes with a part of the stack. */
    static boolean hangsOnTheStack(Collection<Term> readings) {
        Behind behind = behind(readings);
        return behind.deck() || !behind.kinds().isEmpty();
    }

    private static Behind behind(Collection<Term> readings) {
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        boolean deck = false;
        for (Term term : readings) {
            for (PartKind kind : Assembly.STACK.keySet()) {
                if (kind.mayState(term)) {
                    kinds.add(kind);
                }
            }
            deck |= term == Term.DECK_HEIGHT;
            // made by the pair: bored to the piston, honed to the pin, faced to the crankpin
            if (term.part() == Part.CYLINDER || term == Term.SMALL_END_BORE) {
                kinds.add(PartKind.PISTON);
            }
            // what moves with the head: the gap of open side-valves, the events of an overhead camshaft
            if (term == Term.VALVE_TO_HEAD || term.part() == Part.CAMSHAFT) {
                kinds.add(PartKind.GASKET);
                kinds.add(PartKind.HEAD);
                deck = true;
            }
            if (term == Term.SLEEVE_LENGTH) {
                deck = true;
            }
            if (term == Term.BIG_END_WIDTH) {
                kinds.add(PartKind.CRANKSHAFT);
            }
        }
        return new Behind(kinds, deck);
    }

    /** Rules differ by what parts are made of, so words of all parts count. */
    private static String key(Behind behind, Found found) {
        String words = found.rows().map(r -> r.words().toString()).collect(Collectors.joining());
        String titles = found.rows()
                .filter(r -> behind.kinds().contains(r.kind()))
                .map(Row::title)
                .collect(Collectors.joining("|"));
        Row.Cut cut = found.deckCut();
        return titles + (behind.deck() && cut != null ? cut.text() : "") + words;
    }
}
