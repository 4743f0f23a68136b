package longthrow.core.build;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * Everything an owner has written down about one engine. Immutable; the collections keep the order of the file.
 * @param name        of the engine
 * @param invented    whether it says that it is made up
 * @param units       which units come first in print
 * @param notes       in the owner's words
 * @param instruments by key; the built-in kinds are always there
 * @param given       by term, in the order of the file
 * @param choices     option key (or free words) by choice
 * @param rulesChosen key of the alternative chosen by key of the disputed rule
 * @param ownRules    class rules and limits of the owner
 * @param aims        figures aimed at, by term
 * @param damage      seen, and parts looked over of which none was seen
 * @param shims       thicknesses in the pack on each side of the big-end cap, thickest first as written
 * @param lifts       lift tables
 * @param outlines    traced, each part once, in the order of the file
 * @param bench       overrides of the pooled repeatability and of the minutes a reading takes
 * @param fit         what is wanted of a search for parts
 * @param taken       parts and work decided on, in the order of the file
 * @param mockedUp    gaps between moving parts, read at the mock-up, in the order of the file
 * @param gas         pressure in the cylinder as it was measured, one trace a speed
 * @param hoursAt     the duty: shares of the running time at speeds; empty where none is stated
 * @param flows       flow of the ports by lift of their valves, in the order of the file
 */
public record Build(
        String name,
        boolean invented,
        UnitSystem units,
        List<String> notes,
        Map<String, Instrument> instruments,
        Map<Term, List<Given>> given,
        Map<Choice, String> choices,
        Map<String, String> rulesChosen,
        List<OwnRule> ownRules,
        Map<Term, Quantity> aims,
        List<Damage> damage,
        List<ExactLength> shims,
        List<LiftTable> lifts,
        List<TracedOutline> outlines,
        Map<ReadingKind, Bench> bench,
        FitWish fit,
        List<Decided> taken,
        List<MockedUp> mockedUp,
        List<GasReading> gas,
        List<HoursAt> hoursAt,
        List<FlowTable> flows) {

    /**
     * The owner's own figures for a kind of reading.
     * @param repeatability standard deviation of one reading [SI]; NaN to keep the usual one
     * @param minutes NaN to keep the usual
     */
    public record Bench(double repeatability, double minutes) {}

    public Build {
        notes = List.copyOf(notes);
        instruments = Collections.unmodifiableMap(new LinkedHashMap<>(instruments));
        Map<Term, List<Given>> copy = new EnumMap<>(Term.class);
        given.forEach((term, entries) -> {
            if (!term.isRead()) {
                throw new IllegalArgumentException(term.path() + " is worked out; it cannot be entered");
            }
            copy.put(term, List.copyOf(entries));
        });
        given = Collections.unmodifiableMap(copy);
        choices = Collections.unmodifiableMap(new LinkedHashMap<>(choices));
        rulesChosen = Collections.unmodifiableMap(new LinkedHashMap<>(rulesChosen));
        ownRules = List.copyOf(ownRules);
        aims = Collections.unmodifiableMap(new LinkedHashMap<>(aims));
        damage = List.copyOf(damage);
        shims = List.copyOf(shims);
        lifts = List.copyOf(lifts);
        outlines = List.copyOf(outlines);
        if (outlines.stream().map(TracedOutline::part).distinct().count() < outlines.size()) {
            throw new IllegalArgumentException("two outlines are of one part; keep one of each part");
        }
        bench = Collections.unmodifiableMap(new LinkedHashMap<>(bench));
        taken = List.copyOf(taken);
        mockedUp = List.copyOf(mockedUp);
        gas = List.copyOf(gas);
        hoursAt = List.copyOf(hoursAt);
        flows = List.copyOf(flows);
        HoursAt.trouble(hoursAt).ifPresent(t -> {
            throw new IllegalArgumentException(
                    "hours at speeds: " + t.found() + " " + t.why() + "; allowed: " + t.allowed());
        });
    }

    /** An engine of which nothing was mocked up, neither gas nor flow was measured and no duty is stated. */
    public Build(
            String name,
            boolean invented,
            UnitSystem units,
            List<String> notes,
            Map<String, Instrument> instruments,
            Map<Term, List<Given>> given,
            Map<Choice, String> choices,
            Map<String, String> rulesChosen,
            List<OwnRule> ownRules,
            Map<Term, Quantity> aims,
            List<Damage> damage,
            List<ExactLength> shims,
            List<LiftTable> lifts,
            List<TracedOutline> outlines,
            Map<ReadingKind, Bench> bench,
            FitWish fit,
            List<Decided> taken) {
        this(
                name,
                invented,
                units,
                notes,
                instruments,
                given,
                choices,
                rulesChosen,
                ownRules,
                aims,
                damage,
                shims,
                lifts,
                outlines,
                bench,
                fit,
                taken,
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** An engine nothing is known of yet. */
    public static Build empty(String name) {
        return new Build(
                name,
                false,
                UnitSystem.METRIC_FIRST,
                List.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
    }

    /** A copy in which some things are others. */
    private Build copy(
            UnitSystem first,
            Map<Term, List<Given>> entries,
            Map<Choice, String> words,
            Map<String, String> chosen,
            List<OwnRule> own,
            List<TracedOutline> traced,
            FitWish wish,
            List<Decided> decided,
            List<MockedUp> gaps,
            List<GasReading> traces,
            List<HoursAt> duty,
            List<FlowTable> benched) {
        return new Build(
                name,
                invented,
                first,
                notes,
                instruments,
                entries,
                words,
                chosen,
                own,
                aims,
                damage,
                shims,
                lifts,
                traced,
                bench,
                wish,
                decided,
                gaps,
                traces,
                duty,
                benched);
    }

    /** A copy that prints other units first. */
    public Build withUnits(UnitSystem other) {
        return copy(other, given, choices, rulesChosen, ownRules, outlines, fit, taken, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with other entries for the terms. */
    public Build withGiven(Map<Term, List<Given>> other) {
        return copy(units, other, choices, rulesChosen, ownRules, outlines, fit, taken, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with other words for the choices. */
    public Build withChoices(Map<Choice, String> other) {
        return copy(units, given, other, rulesChosen, ownRules, outlines, fit, taken, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with other rules. */
    public Build withRules(Map<String, String> chosen, List<OwnRule> own) {
        return copy(units, given, choices, chosen, own, outlines, fit, taken, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with another wish for parts. */
    public Build withFit(FitWish other) {
        return copy(
                units, given, choices, rulesChosen, ownRules, outlines, other, taken, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with other parts and work decided on. */
    public Build withTaken(List<Decided> other) {
        return copy(units, given, choices, rulesChosen, ownRules, outlines, fit, other, mockedUp, gas, hoursAt, flows);
    }

    /** A copy with other gaps mocked up. */
    public Build withMockedUp(List<MockedUp> other) {
        return copy(units, given, choices, rulesChosen, ownRules, outlines, fit, taken, other, gas, hoursAt, flows);
    }

    /** A copy with other gas traces. */
    public Build withGas(List<GasReading> other) {
        return copy(
                units, given, choices, rulesChosen, ownRules, outlines, fit, taken, mockedUp, other, hoursAt, flows);
    }

    /** A copy with another duty. */
    public Build withHoursAt(List<HoursAt> other) {
        return copy(units, given, choices, rulesChosen, ownRules, outlines, fit, taken, mockedUp, gas, other, flows);
    }

    /** A copy with other flow tables. */
    public Build withFlows(List<FlowTable> other) {
        return copy(units, given, choices, rulesChosen, ownRules, outlines, fit, taken, mockedUp, gas, hoursAt, other);
    }

    /** A copy with other outlines. */
    public Build withOutlines(List<TracedOutline> other) {
        return copy(units, given, choices, rulesChosen, ownRules, other, fit, taken, mockedUp, gas, hoursAt, flows);
    }

    /** The traced outline of a part. */
    public Optional<TracedOutline> outline(OutlinedPart part) {
        return outlines.stream().filter(o -> o.part() == part).findFirst();
    }

    /** Work that was decided on and of which no size was read since: it is a plan. */
    public List<Decided.Work> pending() {
        return taken.stream()
                .flatMap(d -> d instanceof Decided.Work work ? Stream.of(work) : Stream.of())
                .filter(work -> work.kind().readAfter().stream().noneMatch(this::isRead))
                .toList();
    }

    /** The work that is still to give this figure; empty where none is, or where the figure was read since. */
    public Optional<Decided.Work> pendingOn(Term term) {
        return isRead(term)
                ? Optional.empty()
                : pending().stream()
                        .filter(work -> work.kind().allChanged().contains(term))
                        .findFirst();
    }

    /** Read on the bench, or typed with its ±. */
    public boolean isRead(Term term) {
        return of(term).stream().anyMatch(g -> g instanceof Given.Taken || g instanceof Given.Typed);
    }

    /** Damage that was seen, without what was looked over and found sound. */
    public List<Damage> damageSeen() {
        return damage.stream().filter(d -> !d.isNone()).toList();
    }

    /** What was said of a part that was looked over and found sound; empty where nobody said so, or where damage was seen on it all the same. */
    public Optional<Damage> foundSound(Part part) {
        return damageSeen().stream().anyMatch(d -> d.part() == part)
                ? Optional.empty()
                : damage.stream().filter(d -> d.part() == part).findFirst();
    }

    /** How a part was looked over and found sound, in a way that shows what breaks it; empty where nobody says so. */
    public Optional<Damage> lookedOver(Part part) {
        return foundSound(part).isEmpty()
                ? Optional.empty()
                : damage.stream().filter(d -> d.part() == part && isCounted(d)).findFirst();
    }

    /** Whether what was found sound was looked over so that it tells. */
    public boolean isCounted(Damage none) {
        boolean isMagnetic = switch (none.part()) {
            case CRANKSHAFT -> true; // of iron or steel, all of them
            case FLYWHEEL -> chose(Choice.FLYWHEEL_KIND, "spoked_iron", "solid_iron", "steel");
            case ROD -> chose(Choice.ROD_METAL, "steel");
            default -> false;
        };
        return none.how().filter(h -> h.tells(none.part(), isMagnetic)).isPresent();
    }

    public List<Given> of(Term term) {
        return given.getOrDefault(term, List.of());
    }

    /** Whether anything that holds a figure was entered. */
    public boolean has(Term term) {
        return of(term).stream().anyMatch(g -> g.figure().isPresent());
    }

    public Optional<String> choice(Choice choice) {
        return Optional.ofNullable(choices.get(choice));
    }

    public boolean chose(Choice choice, String... options) {
        return choice(choice).filter(c -> List.of(options).contains(c)).isPresent();
    }

    /** Standard deviation of one reading of this kind [SI]. */
    public double repeatability(ReadingKind kind) {
        Bench own = bench.get(kind);
        return own == null || Double.isNaN(own.repeatability()) ? kind.repeatability() : own.repeatability();
    }

    /** Minutes for one reading of this kind. */
    public double minutes(ReadingKind kind) {
        Bench own = bench.get(kind);
        return own == null || Double.isNaN(own.minutes()) ? kind.minutes() : own.minutes();
    }
}
