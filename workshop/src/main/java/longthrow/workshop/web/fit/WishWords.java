package longthrow.workshop.web.fit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** What an edit of the aims and wishes changed, for the history. */
final class WishWords {
    /** What is said where nothing that is known here changed. */
    static final String ALL = "aims and wishes for parts";

    /** So many are named, the rest counted; a line of the history has no more room. */
    private static final int MOST = 4;

    private WishWords() {}

    /** Each by its name and what it is now. */
    static String of(Build before, Build after) {
        List<String> all = new ArrayList<>();
        Set<Term> terms = new TreeSet<>(before.aims().keySet());
        terms.addAll(after.aims().keySet());
        terms.forEach(term -> changed(
                all,
                term.label() + " aimed at",
                written(before.aims().get(term)),
                written(after.aims().get(term))));
        limits(all, limits(before), limits(after));
        FitWish was = before.fit();
        FitWish is = after.fit();
        changed(all, "budget", money(was), money(is));
        changed(all, "may be bought", kinds(was.choose()), kinds(is.choose()));
        changed(all, "must be among the parts", String.join(", ", was.keep()), String.join(", ", is.keep()));
        changed(all, "what counts first", order(was), order(is));
        changed(
                all,
                "machining",
                was.machining() ? "allowed" : "not allowed",
                is.machining() ? "allowed" : "not allowed");
        if (all.isEmpty()) {
            return ALL;
        }
        int more = all.size() - MOST;
        return String.join("; ", all.subList(0, Math.min(MOST, all.size())))
                + (more > 0 ? "; and " + more + " more" : "");
    }

    private static void limits(List<String> all, Map<String, String> was, Map<String, String> is) {
        Set<String> names = new TreeSet<>(was.keySet());
        names.addAll(is.keySet());
        names.forEach(name -> changed(all, name, was.getOrDefault(name, ""), is.getOrDefault(name, "")));
    }

    private static void changed(List<String> all, String what, String was, String is) {
        if (!Objects.equals(was, is)) {
            all.add(what + ": " + (is.isEmpty() ? "taken out" : is));
        }
    }

    private static String written(@Nullable Quantity quantity) {
        return quantity == null ? "" : quantity.written();
    }

    private static Map<String, String> limits(Build build) {
        Map<String, String> limits = new LinkedHashMap<>();
        for (OwnRule rule : build.ownRules()) {
            limits.put(
                    rule.name(),
                    (rule.lower().map(q -> "at least " + q.written()).orElse("") + " "
                                    + rule.upper()
                                            .map(q -> "at most " + q.written())
                                            .orElse(""))
                            .strip());
        }
        return limits;
    }

    private static String money(FitWish wish) {
        OptionalLong budget = wish.budget();
        return budget.isEmpty()
                ? ""
                : (BigDecimal.valueOf(budget.getAsLong(), 2).toPlainString() + " " + wish.currency()).strip();
    }

    private static String kinds(List<PartKind> kinds) {
        return kinds.stream().map(PartKind::label).collect(Collectors.joining(", "));
    }

    private static String order(FitWish wish) {
        return wish.order().stream().map(FitWish.Preference::key).collect(Collectors.joining(", "));
    }
}
