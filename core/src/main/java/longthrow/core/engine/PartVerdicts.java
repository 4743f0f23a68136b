package longthrow.core.engine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.Timing;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What becomes of each part of the donor: keep, machine, replace, walk away, or not yet known, and why. */
public final class PartVerdicts {
    /** Mean piston speed under which a worn bore with fresh rings gives good service in mild use [m/s]. Common practice, no source. */
    private static final double SLOW_PISTON = 4;

    private final Build build;
    private final List<Verdict> verdicts;
    private final Function<Term, Optional<Measured>> figures;

    private PartVerdicts(Build build, List<Verdict> verdicts, Function<Term, Optional<Measured>> figures) {
        this.build = build;
        this.verdicts = verdicts;
        this.figures = figures;
    }

    /** A part of the donor, with the figures without which it is not kept. */
    private enum Item {
        CYLINDER(Set.of(Part.CYLINDER), Term.BORE_TAPER, Term.OUT_OF_ROUND),
        CRANKSHAFT(Set.of(Part.CRANKSHAFT), Term.CRANK_RUN_OUT),
        ROD(Set.of(Part.ROD), Term.BIG_END_CLEARANCE, Term.PIN_CLEARANCE),
        PISTON(Set.of(Part.PISTON), Term.PISTON_TO_WALL, Term.TOP_RING_SIDE_CLEARANCE),
        RINGS(Set.of(Part.RINGS), Term.TOP_RING_GAP),
        FLYWHEEL(Set.of(Part.FLYWHEEL)),
        HEAD(Set.of(Part.HEAD), Term.HEAD_FLATNESS),
        VALVES(
                Set.of(Part.INTAKE_VALVE, Part.EXHAUST_VALVE, Part.SPRING),
                Term.INTAKE_SEAT_WIDTH,
                Term.EXHAUST_SEAT_WIDTH,
                Term.COIL_BIND_MARGIN);

        @SuppressWarnings("ImmutableEnumChecker") // Set.of is immutable, which its type does not say
        private final Set<Part> parts;

        @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
        private final List<Term> needs;

        Item(Set<Part> parts, Term... needs) {
            this.parts = parts;
            this.needs = List.of(needs);
        }

        private String label() {
            return this == VALVES
                    ? "valves and springs"
                    : parts.iterator().next().label();
        }

        private String key() {
            return this == VALVES ? "valves" : parts.iterator().next().key();
        }
    }

    /** What speaks for one outcome. */
    private record Ground(Outcome outcome, String reason, String mend) {}

    /**
     * One finding of kind {@code PART} for every part, in the order in which a builder decides.
     * @param verdicts of {@link Judge#verdicts} on the same figures
     */
    public static List<Finding> of(Build build, List<Verdict> verdicts, Function<Term, Optional<Measured>> figures) {
        PartVerdicts decided = new PartVerdicts(build, verdicts, figures);
        List<Finding> findings = new ArrayList<>();
        for (Item item : Item.values()) {
            findings.add(decided.finding(item));
        }
        return List.copyOf(findings);
    }

    private Finding finding(Item item) {
        List<Ground> grounds = new ArrayList<>();
        build.damageSeen().stream()
                .filter(d -> item.parts.contains(d.part()))
                .forEach(d -> grounds.add(byDamage(item, d)));
        grounds.addAll(byRules(item));
        if (item == Item.FLYWHEEL) {
            grounds.add(bySpeed());
        }
        missing(item).ifPresent(grounds::add);
        Outcome outcome = grounds.stream().map(Ground::outcome).reduce(Outcome.KEEP, Outcome::orGraver);
        Set<String> reasons = new LinkedHashSet<>();
        Set<String> mends = new LinkedHashSet<>();
        for (Ground ground : grounds) {
            boolean speaks = ground.outcome() == outcome
                    || ground.outcome() != Outcome.KEEP
                    || !ground.mend().isEmpty();
            if (speaks) {
                reasons.add(ground.reason());
                mends.add(ground.mend());
            }
        }
        reasons.remove("");
        mends.remove("");
        String why = reasons.isEmpty() ? "every figure read meets its rule" : String.join("; ", reasons);
        return new Finding(
                Finding.Kind.PART,
                item.key(),
                item.label() + ": " + outcome.label() + ": " + why,
                String.join("; ", mends) + waysForAWornBore(item, outcome));
    }

    // ---- damage

    private static Ground byDamage(Item item, Damage damage) {
        String seen =
                damage.kind().label() + (damage.where().isEmpty() ? "" : " (" + damage.where() + ")") + " was seen";
        return switch (damage.kind()) {
            case CRACK, BROKEN ->
                item == Item.CYLINDER
                        ? new Ground(
                                Outcome.WALK_AWAY, seen, "another engine costs less than a cracked or broken cylinder")
                        : new Ground(
                                Outcome.REPLACE,
                                seen,
                                item == Item.FLYWHEEL
                                        ? "penetrant dye decides; if it is a crack, destroy the wheel so that nobody reuses it"
                                        : "scrap it so that nobody reuses it");
            case BENT -> new Ground(Outcome.REPLACE, seen, "a straightened part stays suspect");
            case LIGHTENED ->
                new Ground(
                        Outcome.REPLACE,
                        seen,
                        item == Item.FLYWHEEL
                                ? "destroy it so that nobody reuses it"
                                : "unless its maker rates it as it is now");
            case WORN_KEYWAY ->
                new Ground(
                        item == Item.FLYWHEEL ? Outcome.REPLACE : Outcome.MACHINE,
                        seen,
                        "the taper holds the wheel, the key only locates it: lap, check with marking blue, replace what will not seat");
            case SCORED ->
                item == Item.ROD || item == Item.PISTON || item == Item.RINGS
                        ? new Ground(Outcome.REPLACE, seen, "find what starved or overheated it first")
                        : new Ground(Outcome.MACHINE, seen, "measure under the scores before paying for machine work");
            case CORRODED ->
                new Ground(
                        item == Item.ROD || item == Item.VALVES || item == Item.RINGS
                                ? Outcome.REPLACE
                                : Outcome.MACHINE,
                        seen,
                        "pits start cracks and leaks: clean it up and measure what is left");
            case NONE -> new Ground(Outcome.KEEP, "", "");
            case SEIZED ->
                new Ground(
                        Outcome.NOT_YET_KNOWN,
                        seen,
                        "free it without force and measure; stuck may be rust or a broken part");
        };
    }

    // ---- rules

    private List<Ground> byRules(Item item) {
        Map<String, List<Verdict>> byRule = new LinkedHashMap<>();
        for (Verdict verdict : verdicts) {
            if (item.parts.contains(part(verdict)) && kind(verdict) != Rule.Kind.GUIDE) {
                byRule.computeIfAbsent(
                                Rule.of(verdict).map(Rule::key).orElse(verdict.rule()) + " "
                                        + verdict.term().path(),
                                k -> new ArrayList<>())
                        .add(verdict);
            }
        }
        List<Ground> grounds = new ArrayList<>();
        byRule.values().forEach(spread -> grounds.add(byRule(spread)));
        return grounds;
    }

    private static Part part(Verdict verdict) {
        return Rule.of(verdict).map(Rule::part).orElse(verdict.term().part());
    }

    private static Rule.Kind kind(Verdict verdict) {
        return Rule.of(verdict).map(Rule::kind).orElse(Rule.Kind.LIMIT);
    }

    /** One rule on one figure: the verdict in force; where none is, the verdict all sources share, or that they differ. */
    private Ground byRule(List<Verdict> spread) {
        List<Verdict> inForce = spread.stream().filter(Verdict::chosen).toList();
        if (inForce.isEmpty() && spread.stream().anyMatch(v -> Judge.isOverruled(build, v))) {
            return new Ground(Outcome.KEEP, "", "");
        }
        List<Verdict> heard = inForce.isEmpty() ? spread : inForce;
        Verdict first = heard.get(0);
        if (heard.stream().map(Verdict::state).distinct().count() > 1) {
            return new Ground(
                    Outcome.NOT_YET_KNOWN,
                    first.term().label() + ": sources disagree",
                    "choose which to follow with rules: choose: "
                            + Rule.of(first).orElseThrow().key());
        }
        return switch (first.state()) {
            case MEETS -> new Ground(Outcome.KEEP, first.why(), "");
            case NEAR -> new Ground(Outcome.NOT_YET_KNOWN, first.why(), first.cure());
            case UNKNOWN -> new Ground(Outcome.NOT_YET_KNOWN, first.why(), first.cure());
            case FAILS -> failed(first);
        };
    }

    private Ground failed(Verdict verdict) {
        boolean low = figures.apply(verdict.term())
                .filter(m -> m.value() < verdict.least())
                .isPresent();
        Outcome outcome = Rule.of(verdict)
                .map(r -> low ? r.whenLow().outcome() : r.whenHigh().outcome())
                .orElse(Outcome.MACHINE);
        boolean wornWithinItsLimit = !low
                && kind(verdict) == Rule.Kind.AIM
                && verdicts.stream()
                        .anyMatch(v -> v.term() == verdict.term()
                                && kind(v) == Rule.Kind.LIMIT
                                && v.chosen()
                                && v.state() == Verdict.State.MEETS);
        return wornWithinItsLimit
                ? new Ground(Outcome.KEEP, verdict.why() + ", but within its wear limit", verdict.cure())
                : new Ground(outcome, verdict.why(), verdict.cure());
    }

    private Optional<Ground> missing(Item item) {
        List<String> unread = item.needs.stream()
                .filter(t -> verdicts.stream().noneMatch(v -> v.term() == t))
                .filter(t -> figures.apply(t).isEmpty())
                .filter(t -> needed(t))
                .map(Term::label)
                .toList();
        return unread.isEmpty()
                ? Optional.empty()
                : Optional.of(new Ground(
                        Outcome.NOT_YET_KNOWN,
                        String.join(", ", unread) + " not known",
                        "read or work out the " + String.join(", the ", unread) + " first"));
    }

    /** A rolling big end has no clearance to read with a strip. */
    private boolean needed(Term term) {
        return term != Term.BIG_END_CLEARANCE || !build.chose(Choice.BIG_END_BEARING, "rolling");
    }

    // ---- flywheel

    /** No figure read on the bench makes a wheel safe: its maker's speed does, if the wheel is undamaged. */
    private Ground bySpeed() {
        Optional<Measured> wanted = figures.apply(Term.WANTED_SPEED);
        if (wanted.isEmpty()) {
            return new Ground(
                    Outcome.NOT_YET_KNOWN,
                    Term.WANTED_SPEED.label() + " not known",
                    "say how fast you mean to run it (" + Term.WANTED_SPEED.path() + ")");
        }
        boolean covered = List.of(Term.GOVERNED_SPEED, Term.FLYWHEEL_RATED_SPEED).stream()
                .anyMatch(t -> Stops.covers(build, figures, t));
        if (covered) {
            return new Ground(Outcome.KEEP, "the maker's speed covers the wanted speed", "");
        }
        boolean anySpeed = Stream.of(Term.GOVERNED_SPEED, Term.FLYWHEEL_RATED_SPEED)
                .anyMatch(t -> figures.apply(t).isPresent());
        boolean refused = Stops.of(build, figures).stream().anyMatch(s -> s.refused());
        return new Ground(
                refused ? Outcome.REPLACE : Outcome.NOT_YET_KNOWN,
                anySpeed
                        ? "the maker's speed does not cover the wanted speed"
                        : "no maker's speed is known to cover the wanted speed",
                (anySpeed ? "hold the maker's speed, or fit" : "find the maker's speed, or fit")
                        + " a wheel whose maker rates it for the wanted speed");
    }

    // ---- the two ways for a worn bore

    private String waysForAWornBore(Item item, Outcome outcome) {
        boolean worn = verdicts.stream()
                .anyMatch(v -> (v.term() == Term.BORE_TAPER || v.term() == Term.OUT_OF_ROUND)
                        && v.state() == Verdict.State.FAILS);
        if (item != Item.CYLINDER || !worn || outcome == Outcome.WALK_AWAY) {
            return "";
        }
        return ". Two ways: new rings and a light hone, which will smoke and use oil but runs; or a rebore or sleeve, which "
                + "cures it at several times the cost" + moneyWellSpent();
    }

    private String moneyWellSpent() {
        Optional<Measured> governed = figures.apply(Term.GOVERNED_SPEED);
        Optional<Measured> stroke = figures.apply(Term.STROKE);
        if (!build.chose(Choice.DUTY, "mild") || governed.isEmpty() || stroke.isEmpty()) {
            return "";
        }
        double pistonSpeed = Formula.of(
                        "mean piston speed",
                        Timing.meanPistonSpeed(
                                Expression.constant(stroke.get().value()),
                                Expression.constant(governed.get().value())))
                .at();
        return pistonSpeed > SLOW_PISTON
                ? ""
                : ". For "
                        + new Wording(build)
                                .amount(Term.GOVERNED_SPEED, governed.get().value(), 0)
                        + " in mild use rings are money well spent";
    }
}
