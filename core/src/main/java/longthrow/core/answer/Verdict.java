package longthrow.core.answer;

import longthrow.core.term.Term;

/**
 * A figure held against a rule.
 * @param rule        key of the rule
 * @param label       what the rule says, for people
 * @param term        the figure
 * @param least       inclusive [SI]; negative infinity for none
 * @param most        inclusive [SI]; positive infinity for none
 * @param probability that the true figure keeps the rule; NaN when unknown
 * @param state       the verdict
 * @param chosen      whether the owner chose this rule, or there is no other; the rest is the spread of the trade
 * @param why         which limit, by how much
 * @param cure        what would mend it; empty when it meets
 * @param source      where the rule comes from
 */
public record Verdict(
        String rule,
        String label,
        Term term,
        double least,
        double most,
        double probability,
        State state,
        boolean chosen,
        String why,
        String cure,
        String source) {

    /** Probability at or above which a rule is met, and one minus which or below it is failed (JCGM 106:2012 8.3; the figure is the owner's promise). */
    public static final double SURE = 0.95;

    /** As the reason of a verdict ends whose rule is meant only where something holds that the build does not say. */
    public static final String PERHAPS_NOT_MEANT = ", which is not said";

    /** Whether the build does not say if this rule is meant for it at all. */
    public boolean isPerhapsNotMeant() {
        return why.contains(PERHAPS_NOT_MEANT);
    }

    /** The same with another cure. */
    public Verdict withCure(String other) {
        return new Verdict(rule, label, term, least, most, probability, state, chosen, why, other, source);
    }

    /** The same with another reason. */
    public Verdict withWhy(String other) {
        return new Verdict(rule, label, term, least, most, probability, state, chosen, other, cure, source);
    }

    /** The four verdicts. */
    public enum State {
        MEETS,
        NEAR,
        FAILS,
        UNKNOWN;

        /** The verdict at this probability that the rule is kept; NaN when unknown. */
        public static State of(double probability) {
            if (Double.isNaN(probability)) {
                return UNKNOWN;
            }
            return probability >= SURE ? MEETS : probability <= 1 - SURE ? FAILS : NEAR;
        }

        public String label() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }
}
