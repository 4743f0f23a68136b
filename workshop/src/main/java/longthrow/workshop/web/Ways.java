package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.term.Term;

/** What stands in the way of an engine: stops, doubts, unknowns, each with the field that mends it. */
public final class Ways {
    /** A term as stops and findings name it: its path in brackets, or alone. */
    private static final Pattern PATH = Pattern.compile("\\b([a-z_]+\\.[a-z_0-9]+)\\b");

    private final String base;
    private final List<Frame.Way> ways = new ArrayList<>();

    private Ways(String base) {
        this.base = base;
    }

    /** Hard stops first, then what is not approved, suspects, unknowns. */
    public static List<Frame.Way> of(Answer answer, String base) {
        Ways ways = new Ways(base);
        answer.stops().stream().filter(Stop::refused).forEach(ways::stop);
        answer.stops().stream().filter(s -> !s.refused()).forEach(ways::stop);
        answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .forEach(f -> ways.add("doubt", f.where() + ": " + f.message(), f.mend(), f.where(), false));
        answer.unknowns().forEach(ways::unknown);
        return ways.ways;
    }

    private void stop(Stop stop) {
        add(
                stop.refused() ? "refused" : "not approved",
                stop.what() + " – " + stop.why(),
                stop.wayRound(),
                stop.why(),
                stop.refused());
    }

    private void unknown(Unknown unknown) {
        String first = unknown.missing().isEmpty()
                ? unknown.term().path()
                : unknown.missing().get(0).path();
        add("unknown", unknown.term().label() + " – " + unknown.why(), "", first, false);
    }

    private void add(String kind, String text, String mend, String names, boolean refused) {
        ways.add(new Frame.Way(kind, text, mend, address(names), refused));
    }

    private String address(String names) {
        Matcher paths = PATH.matcher(names);
        while (paths.find()) {
            Optional<Term> term = Term.at(paths.group(1));
            if (term.isPresent() && term.get().isRead()) {
                return base + "/measure/" + term.get().path();
            }
        }
        return "";
    }
}
