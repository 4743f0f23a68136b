package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.MockUp;
import longthrow.core.engine.Rule;
import longthrow.core.life.Known;

/**
 * The gaps that the trade wants of a pair, in every form in which it states them for such an engine.
 * @param rows empty where the trade states nothing
 */
record Wanted(List<Row> rows) {
    static final Wanted NOTHING = new Wanted(List.of());

    Wanted {
        rows = List.copyOf(rows);
    }

    /**
     * One of them.
     * @param least   [m]
     * @param decides whether it is the one the owner chose, or none is chosen
     */
    record Row(String key, String label, double least, String source, boolean decides) {
        /** @param keeps probability that the gap is not less */
        Clearance.Limit at(double keeps) {
            return new Clearance.Limit(key, label, least, keeps, Verdict.State.of(keeps), decides, source);
        }
    }

    static Wanted of(Rule rule, Known known) {
        Build build = known.build();
        Optional<Alternative> inForce = rule.inForce(build);
        List<Row> rows = new ArrayList<>();
        for (Alternative a : rule.applicable(build)) {
            a.lower()
                    .flatMap(bound -> bound.value(known::figure))
                    .ifPresent(least -> rows.add(new Row(
                            rule.key(a),
                            rule.label() + ": " + a.label(),
                            least,
                            a.source(),
                            inForce.map(a::equals).orElse(true))));
        }
        return new Wanted(rows);
    }

    static Wanted of(MockUp gap, Known known) {
        Build build = known.build();
        double more = gap.more(build);
        List<Row> rows = new ArrayList<>();
        for (Alternative a : gap.applicable(build)) {
            a.lower()
                    .flatMap(bound -> bound.value(known::figure))
                    .ifPresent(least -> rows.add(new Row(
                            gap.key(a),
                            gap.label() + ": " + a.label()
                                    + (more > 0
                                            ? String.format(Locale.ROOT, "; %.1f mm counted on top", 1e3 * more)
                                            : ""),
                            least + more,
                            a.source(),
                            true)));
        }
        return new Wanted(rows);
    }

    List<Double> leasts() {
        return rows.stream().map(Row::least).toList();
    }

    /** The most that one of those that decide wants [m]; 0 where none does. */
    double most() {
        return rows.stream().filter(Row::decides).mapToDouble(Row::least).max().orElse(0);
    }
}
