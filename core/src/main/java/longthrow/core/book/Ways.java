package longthrow.core.book;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.book.Book.Cost;
import longthrow.core.book.Book.CostLine;
import longthrow.core.book.Book.Way;
import longthrow.core.build.Build;
import longthrow.core.fit.Forgotten;

/** Parts that go together, and what they cost. */
final class Ways {
    /** So many stand in full; common sense of a page. */
    private static final int MOST = 4;

    private Ways() {}

    static List<Way> of(Answer fit, Words words) {
        return fit.candidates().stream().limit(MOST).map(c -> way(c, words)).toList();
    }

    private static Way way(Candidate c, Words words) {
        List<String> pieces = Stream.concat(
                        c.pieces().stream().map(Ways::piece),
                        c.values().stream()
                                .filter(v -> Recipe.isOnTheWall(v.term()))
                                .map(v -> v.term().label() + " " + words.line(v)))
                .toList();
        return new Way(
                c.title(),
                c.sureness().label(),
                total(c.total()),
                pieces,
                Stream.concat(
                                c.aims().stream()
                                        .filter(a -> a.isOneFigure() && a.state() == Aimed.State.MISSES)
                                        .map(a -> "misses your aim: " + a.term().label() + " " + a.said()),
                                c.verdicts().stream()
                                        .filter(v -> v.chosen()
                                                && (v.state() == Verdict.State.FAILS
                                                        || v.state() == Verdict.State.NEAR))
                                        .map(v -> v.state().label() + ": " + v.label() + ": " + v.why()))
                        .toList(),
                findings(c.forces()),
                findings(c.unknowns()));
    }

    private static List<String> findings(List<Finding> findings) {
        return findings.stream()
                .map(f -> f.where() + ": " + f.message() + (f.mend().isEmpty() ? "" : ". " + f.mend()))
                .toList();
    }

    private static String piece(Candidate.Piece p) {
        return Stream.of(
                        p.code() + ": " + p.name(),
                        p.note(),
                        p.vendor(),
                        Words.price(p.price(), p.currency()),
                        p.leadDays().isPresent() ? p.leadDays().getAsInt() + " days" : "")
                .filter(w -> !w.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String total(Candidate.Total total) {
        String known = total.currency().isEmpty() ? "" : Words.money(total.known(), total.currency());
        String open = String.join(", ", total.notPriced());
        return open.isEmpty() ? known : (known.isEmpty() ? "" : known + " and ") + "what " + open + " costs";
    }

    /** Of the best way; without one, what has to be asked for all the same. */
    static Cost cost(Build build, Optional<Answer> fit) {
        Optional<Candidate> best = fit.flatMap(f -> f.candidates().stream().findFirst());
        List<CostLine> lines = new ArrayList<>();
        Set<String> unpriced = new LinkedHashSet<>();
        best.ifPresent(c -> {
            c.pieces()
                    .forEach(p ->
                            lines.add(new CostLine(p.code() + ": " + p.name(), Words.price(p.price(), p.currency()))));
            unpriced.addAll(c.total().forgotten());
        });
        unpriced.addAll(Forgotten.always());
        return new Cost(
                lines,
                best.map(Candidate::total).map(Ways::total).orElse(""),
                build.fit().budget().isPresent()
                        ? Words.money(
                                build.fit().budget().getAsLong(), build.fit().currency())
                        : "",
                List.copyOf(unpriced));
    }
}
