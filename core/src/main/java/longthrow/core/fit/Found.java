package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Sureness;
import org.jspecify.annotations.Nullable;

/**
 * A combination with its rows, its head and what is cut off the deck.
 * @param deckCut null for none
 * @param honed   operations that make pairs fit
 */
record Found(
        Row crank,
        Row piston,
        Row rod,
        Row gasket,
        Row head,
        Row.@Nullable Cut deckCut,
        List<Row.Cut> honed,
        Combination combination) {
    Found {
        honed = List.copyOf(honed);
    }

    Stream<Row> rows() {
        return Stream.of(crank, piston, rod, gasket, head);
    }

    /** Where a size that decides is not said, what is known says only so much. */
    Sureness sureness() {
        return isPartlyUnknown() ? Sureness.worse(combination.sureness(), Sureness.AS_KNOWN) : combination.sureness();
    }

    /** Whether a size that a limit or a neighbour asks for is not said: then it fits as far as is known. */
    boolean isPartlyUnknown() {
        return combination.unsaid() > 0;
    }

    /** Whether a part is cut, beyond what a pair of parts needs to go into each other. */
    boolean isMachined() {
        return deckCut != null || cutsOfParts() > 0;
    }

    private int cutsOfParts() {
        return crank.cuts().size()
                + piston.cuts().size()
                + rod.cuts().size()
                + gasket.cuts().size()
                + head.cuts().size();
    }

    /** Whether a size of a bought part, or what is machined, has no tolerance. */
    boolean isVague() {
        return crank.sums().isVague()
                || piston.sums().isVague()
                || rod.sums().isVague()
                || gasket.sums().isVague()
                || head.sums().isVague()
                || Stream.concat(Stream.ofNullable(deckCut), honed.stream())
                        .anyMatch(c -> c.operation().tolerance() == null);
    }

    /** Parts by their codes, without machining. */
    String base() {
        return rows().map(Row::base).collect(Collectors.joining("|"));
    }

    /** Parts that are bought, and what is machined. */
    String title() {
        List<String> words = new ArrayList<>();
        rows().filter(r -> !r.isOwn() || !r.cuts().isEmpty()).map(Row::title).forEach(words::add);
        if (deckCut != null) {
            words.add(deckCut.text());
        }
        return words.isEmpty() ? "as it is" : String.join(" + ", words);
    }

    int cuts() {
        return combination.cuts() + cutsOfParts() + (deckCut == null ? 0 : 1);
    }

    /** What is taken off in all [m]; parts made to order take nothing off. */
    double metal() {
        return (deckCut == null ? 0 : deckCut.amount())
                + rows().flatMap(r -> r.cuts().stream())
                        .filter(c -> !c.operation().kind().makesAPart())
                        .mapToDouble(Row.Cut::amount)
                        .sum();
    }

    long price() {
        long deck = deckCut == null
                ? 0
                : deckCut.operation().offer().price().orElse(0)
                        + deckCut.operation().offer().shipping().orElse(0);
        return combination.price() + head.knownPrice() + deck;
    }

    int unknowns() {
        boolean deckUnpriced =
                deckCut != null && deckCut.operation().offer().price().isEmpty();
        int noTolerance = crank.sums().vague()
                + piston.sums().vague()
                + rod.sums().vague()
                + gasket.sums().vague()
                + head.sums().vague();
        return combination.unknowns() + noTolerance + (head.isPriced() ? 0 : 1) + (deckUnpriced ? 1 : 0);
    }

    int leadDays() {
        return Math.max(
                Math.max(Math.max(crank.leadDays(), piston.leadDays()), Math.max(rod.leadDays(), gasket.leadDays())),
                head.leadDays());
    }

    List<Candidate.Piece> pieces() {
        List<Candidate.Piece> pieces = new ArrayList<>();
        rows().forEach(r -> pieces.addAll(r.pieces()));
        Stream.concat(Stream.ofNullable(deckCut), honed.stream()).forEach(c -> pieces.add(Row.work(c, c.text())));
        return pieces;
    }
}
