package longthrow.core.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.build.Build;
import longthrow.core.term.Choice;

/** For which engines a rule is meant, by words the owner may choose in the build. Every clause must hold. */
public final class Condition {
    /** For every engine. */
    public static final Condition ALWAYS = new Condition(List.of());

    static final Condition ALUMINIUM_ROD = when(Choice.ROD_METAL, "cast_aluminium", "billet_aluminium");
    static final Condition STEEL_ROD = when(Choice.ROD_METAL, "steel");
    static final Condition PLAIN_BIG_END = when(Choice.BIG_END_BEARING, "bare", "insert", "babbitt");
    static final Condition HARD_BIG_END = when(Choice.BIG_END_BEARING, "bare", "insert");
    static final Condition SIDE_VALVE = when(Choice.VALVE_LAYOUT, "side");
    static final Condition FORGED_PISTON = when(Choice.PISTON_ALLOY, "high_silicon_forging", "low_silicon_forging");
    static final Condition PETROL = when(Choice.FUEL, "petrol");
    static final Condition MILD = when(Choice.DUTY, "mild");
    static final Condition RACING = when(Choice.DUTY, "oval_or_drag", "boosted");

    private final List<Clause> clauses;

    private Condition(List<Clause> clauses) {
        this.clauses = List.copyOf(clauses);
    }

    /** Whether a condition holds for a build. */
    public enum Holds {
        YES,
        NO,
        /** The owner has not said the word it hangs on. */
        NOT_SAID
    }

    /**
     * One word that must be among these.
     * @param choice  what is chosen
     * @param options keys that satisfy it
     */
    public record Clause(Choice choice, List<String> options) {
        public Clause {
            options = List.copyOf(options);
            for (String option : options) {
                if (choice.option(option).isEmpty()) {
                    throw new IllegalArgumentException(choice.path() + " has no option " + option);
                }
            }
        }

        private String text() {
            return options.stream()
                    .flatMap(key -> choice.option(key).stream())
                    .map(Choice.Option::label)
                    .collect(Collectors.joining(" or ", choice.path() + " is ", ""));
        }
    }

    static Condition when(Choice choice, String... options) {
        return ALWAYS.and(choice, options);
    }

    Condition and(Choice choice, String... options) {
        List<Clause> more = new ArrayList<>(clauses);
        more.add(new Clause(choice, List.of(options)));
        return new Condition(more);
    }

    public List<Clause> clauses() {
        return clauses;
    }

    /** A single clause that the build contradicts is enough for no; else one not said leaves it open. */
    public Holds in(Build build) {
        Holds holds = Holds.YES;
        for (Clause clause : clauses) {
            if (build.choice(clause.choice()).isEmpty()) {
                holds = Holds.NOT_SAID;
            } else if (!build.choice(clause.choice())
                    .filter(clause.options()::contains)
                    .isPresent()) {
                return Holds.NO;
            }
        }
        return holds;
    }

    /** In words: "connecting_rod.metal is cast aluminium or billet aluminium". */
    public String text() {
        return clauses.isEmpty()
                ? "every engine"
                : clauses.stream().map(Clause::text).collect(Collectors.joining(" and "));
    }

    @Override
    public String toString() {
        return text();
    }
}
