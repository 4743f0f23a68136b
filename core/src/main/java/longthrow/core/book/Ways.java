package longthrow.core.book;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
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
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Offer;
import longthrow.core.fit.Fit;
import longthrow.core.fit.Forgotten;

/** Parts that go together, and what they cost. */
final class Ways {
    /** So many stand in full; common sense of a page. */
    private static final int MOST = 4;

    private Ways() {}

    /** What was taken stands alone in full; others in its place are named with what they cost. */
    static List<Way> of(Build build, Answer fit, Words words) {
        Optional<Candidate> taken = asTaken(build, fit);
        return fit.candidates().stream()
                .limit(MOST)
                .map(c -> taken.isEmpty()
                        ? way(c.title(), c, words)
                        : c.pieces().isEmpty() ? way("as taken: " + Fit.takenWords(build), c, words) : beside(c))
                .sorted(Comparator.comparing(w -> w.title().startsWith("as taken: ") ? 0 : 1))
                .toList();
    }

    /** The way that buys nothing more, where something was taken and nothing of it has to go. */
    static Optional<Candidate> asTaken(Build build, Answer fit) {
        return build.taken().isEmpty()
                ? Optional.empty()
                : fit.candidates().stream().filter(c -> c.pieces().isEmpty()).findFirst();
    }

    private static Way beside(Candidate c) {
        return new Way(
                "in its place: " + c.title(),
                c.sureness().label(),
                total(c.total()),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static Way way(String title, Candidate c, Words words) {
        List<String> pieces = Stream.concat(
                        c.pieces().stream().map(Ways::piece),
                        c.values().stream()
                                .filter(v -> Recipe.isOnTheWall(v.term()))
                                .map(v -> v.term().label() + " " + words.line(v)))
                .toList();
        return new Way(
                title,
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
                        named(p.code(), p.name()),
                        p.note(),
                        p.vendor(),
                        Words.price(p.price(), p.currency()),
                        p.leadDays().isPresent() ? p.leadDays().getAsInt() + " days" : "")
                .filter(w -> !w.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String named(String code, String name) {
        return name.isEmpty() ? code : code + ": " + name;
    }

    private static String total(Candidate.Total total) {
        String known = total.currency().isEmpty() ? "" : Words.money(total.known(), total.currency());
        String open = String.join(", ", total.notPriced());
        return open.isEmpty() ? known : (known.isEmpty() ? "" : known + " and ") + "what " + open + " costs";
    }

    /** Of what was taken, then of the best way; without either, what has to be asked for all the same. */
    static Cost cost(Build build, Optional<Answer> fit) {
        Optional<Candidate> best = fit.flatMap(f -> chosen(build, f));
        List<CostLine> lines = new ArrayList<>();
        Set<String> unpriced = new LinkedHashSet<>();
        build.taken()
                .forEach(d -> lines.add(new CostLine(
                        "taken: " + piece(d),
                        Words.price(withShipping(d.offer()), d.offer().currency()))));
        best.ifPresent(c -> {
            c.pieces()
                    .forEach(p ->
                            lines.add(new CostLine(named(p.code(), p.name()), Words.price(p.price(), p.currency()))));
            unpriced.addAll(c.total().forgotten());
        });
        unpriced.addAll(Forgotten.always());
        return new Cost(
                lines,
                together(
                        taken(build.taken()),
                        best.map(Candidate::total).map(Ways::total).orElse("")),
                build.fit().budget().isPresent()
                        ? Words.money(
                                build.fit().budget().getAsLong(), build.fit().currency())
                        : "",
                List.copyOf(unpriced));
    }

    /** The way that the Book goes by: what was taken, else the best. */
    static Optional<Candidate> chosen(Build build, Answer fit) {
        return asTaken(build, fit).or(() -> fit.candidates().stream().findFirst());
    }

    private static String piece(Decided d) {
        return Stream.of(
                        named(d.code(), d.name()),
                        d instanceof Decided.Work work ? work.job() : "",
                        d.offer().vendor(),
                        d.offer().leadDays().isPresent() ? d.offer().leadDays().getAsInt() + " days" : "")
                .filter(w -> !w.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static OptionalLong withShipping(Offer offer) {
        return offer.price().isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(offer.price().getAsLong() + offer.shipping().orElse(0));
    }

    private static String together(String taken, String best) {
        return taken.isEmpty()
                ? best
                : best.isEmpty() ? taken : taken + "; the best way of the search besides: " + best;
    }

    /** By currency, since no rate is known here; empty when nothing was taken. */
    private static String taken(List<Decided> taken) {
        Map<String, Long> sums = new LinkedHashMap<>();
        List<String> open = new ArrayList<>();
        for (Decided d : taken) {
            OptionalLong price = withShipping(d.offer());
            if (price.isPresent()) {
                sums.merge(d.offer().currency(), price.getAsLong(), Long::sum);
            } else {
                open.add(d.code());
            }
        }
        List<String> words = new ArrayList<>();
        sums.forEach((currency, sum) -> words.add(Words.money(sum, currency)));
        if (!open.isEmpty()) {
            words.add("what " + String.join(", ", open) + " costs");
        }
        return words.isEmpty() ? "" : "taken: " + String.join(" and ", words);
    }
}
