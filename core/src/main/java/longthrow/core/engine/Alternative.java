package longthrow.core.engine;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One form in which the trade states a rule.
 * @param key       by which an owner chooses it
 * @param label     for people
 * @param condition for which engines it is meant
 * @param least     null for none
 * @param most      null for none
 * @param certainty how sure the trade is of it
 * @param evidence  in what sorts of text it was found
 * @param detail    more about the source; empty when there is no more
 */
public record Alternative(
        String key,
        String label,
        Condition condition,
        @Nullable Bound least,
        @Nullable Bound most,
        Certainty certainty,
        List<Evidence> evidence,
        String detail) {
    public Alternative {
        evidence = List.copyOf(evidence);
    }

    /** To be completed by its limits and {@link #from}; without a source it is of no certainty and no evidence. */
    static Alternative row(String key, String label) {
        return new Alternative(key, label, Condition.ALWAYS, null, null, Certainty.D, List.of(), "");
    }

    Alternative when(Condition meantFor) {
        return new Alternative(key, label, meantFor, least, most, certainty, evidence, detail);
    }

    Alternative least(Bound limit) {
        return new Alternative(key, label, condition, limit, most, certainty, evidence, detail);
    }

    Alternative most(Bound limit) {
        return new Alternative(key, label, condition, least, limit, certainty, evidence, detail);
    }

    Alternative between(Bound lower, Bound upper) {
        return least(lower).most(upper);
    }

    Alternative from(Certainty how, String more, Evidence... texts) {
        return new Alternative(key, label, condition, least, most, how, List.of(texts), more);
    }

    public Optional<Bound> lower() {
        return Optional.ofNullable(least);
    }

    public Optional<Bound> upper() {
        return Optional.ofNullable(most);
    }

    /** Whether it leaves a window, closed on both sides. */
    public boolean isWindow() {
        return least != null && most != null;
    }

    /** In words: "part-maker sheet, common practice, no source; certainty D, contested". */
    public String source() {
        return evidence.stream().map(Evidence::label).collect(Collectors.joining("; "))
                + (detail.isEmpty() ? "" : " (" + detail + ")") + "; certainty " + certainty + ", "
                + certainty.meaning();
    }

    /** The limits in words: "least 1.27 mm", "0.30 mm to 0.90 mm". */
    public String limits() {
        if (least != null && most != null) {
            return least.text() + " to " + most.text();
        }
        return least != null ? "least " + least.text() : most != null ? "most " + most.text() : "";
    }
}
