package longthrow.core.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.Given;
import longthrow.core.build.Whose;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.Timing;
import longthrow.core.quantity.Percent;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * What must not be done with this engine, and what to mind where it can hurt someone: the one home of each. Refused means that a limit is
 * exceeded or damage was seen; not approved means that data is missing. Speeds are compared as the owner stated them: a wanted speed is a
 * decision, not a reading.
 */
public final class Stops {
    /** A rim speed worked out in passing is printed to a tenth [m/s]. */
    private static final String READ_PLATE =
            "an engine kept as it was made: leave its governor on, read its governed or rated speed off plate or sheet and write it as "
                    + Term.GOVERNED_SPEED.path() + " with whose word it is; ";

    private static final double RIM_DOUBT = 0.5;
    /** A speed with a smaller relative doubt was stated as it is. */
    private static final double STATED = 1e-6;

    private static final String NO_START = "do not start it and do not spin the flywheel";
    private static final String NOT_WITH_THESE = "do not run it with these parts";
    static final String NO_POWER_YET = "do not turn it under power before it has been mocked up";
    private static final String MOCK_UP =
            "mock it up and turn it twice by hand with clay or wire at rod bolts, cam, dipper and case, both ways of the end "
                    + "play; " + MockUp.COMMON_FIGURES;

    /** Speeds that count only as the word of a maker: of the wheel, of the rod, of the engine. */
    public static final List<Term> RATINGS =
            List.of(Term.FLYWHEEL_RATED_SPEED, Term.ROD_RATED_SPEED, Term.GOVERNED_SPEED);

    /** Stands in a stop before the limits that a speed exceeds. */
    public static final String EXCEEDED = "exceeded: ";

    /** How a rating comes to be its maker's word. */
    public static final String WHOSE_WORD =
            "say whose sheet, stamp or plate it is off, such as {specified: 3600 rpm, by: the maker's plate}; behind by: count "
                    + Whose.accepted() + "; all else goes behind note:, and a seller's figure is a claim";

    /** Figures that count for more as the word of a maker: his throw, and the torque that he asks for. */
    public static final List<Term> BETTER_AS_HIS = List.of(Term.DONOR_STROKE, Term.ROD_BOLT_TORQUE);

    private final Build build;
    private final Function<Term, Optional<Measured>> figures;
    private final Wording wording;

    private Stops(Build build, Function<Term, Optional<Measured>> figures) {
        this.build = build;
        this.figures = term -> figures.apply(term).filter(m -> !m.isUnknown());
        this.wording = new Wording(build);
    }

    /** The figures that stops hang on; each stop turns one way as each of them grows. */
    public static final List<Term> DECIDING = List.of(
            Term.WANTED_SPEED,
            Term.GOVERNED_SPEED,
            Term.FLYWHEEL_RATED_SPEED,
            Term.ROD_RATED_SPEED,
            Term.FLYWHEEL_DIAMETER,
            Term.STROKE,
            Term.DONOR_STROKE);

    /**
     * The stops of this engine, gravest first.
     * @param figures of the engine; empty for what is not known
     */
    public static List<Stop> of(Build build, Function<Term, Optional<Measured>> figures) {
        return ofEach(build, List.of(figures));
    }

    /**
     * The stops of an engine whose readings disagree: one that holds by every candidate stands; one that holds by some is not approved until it is
     * known which of them is right. A stop never leaves because a figure is in dispute.
     * @param candidates the figures as each way out of the dispute would have them, one or more
     */
    public static List<Stop> ofEach(Build build, List<Function<Term, Optional<Measured>>> candidates) {
        List<List<Optional<Stop>>> byCandidate = candidates.stream()
                .map(figures -> new Stops(build, figures).inOrder())
                .toList();
        return IntStream.range(0, byCandidate.get(0).size())
                .mapToObj(k ->
                        overall(byCandidate.stream().map(stops -> stops.get(k)).toList()))
                .flatMap(Optional::stream)
                .toList();
    }

    private List<Optional<Stop>> inOrder() {
        return List.of(damagedWheel(), damagedRunningGear(), spokedRim(), speed(), unratedCastWheel(), longerThrow());
    }

    /**
     * One stop as each way out of a dispute has it, made one.
     * @param ways the stop by each; empty where it does not hold
     */
    public static Optional<Stop> overall(List<Optional<Stop>> ways) {
        List<Stop> held = ways.stream().flatMap(Optional::stream).distinct().toList();
        if (held.isEmpty()) {
            return Optional.empty();
        }
        Stop mildest = held.stream().filter(s -> !s.refused()).findFirst().orElse(held.get(0));
        if (ways.stream().allMatch(Optional::isPresent)) {
            return Optional.of(
                    held.size() == 1
                            ? mildest
                            : new Stop(
                                    mildest.what(),
                                    mildest.why()
                                            + "; the readings behind it disagree, and it holds by every one of them",
                                    mildest.wayRound(),
                                    mildest.refused()));
        }
        return Optional.of(new Stop(
                mildest.what(),
                "the readings behind it disagree; by some of them " + mildest.why(),
                "settle which reading is right first; else " + mildest.wayRound(),
                false));
    }

    // ---- damage

    private Optional<Stop> damagedWheel() {
        List<Damage> seen = build.damage().stream().filter(Stops::isOfAWheel).toList();
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        boolean onlyALine = seen.stream().allMatch(d -> d.kind() == Damage.Kind.CRACK);
        String destroy = "destroy the wheel so that nobody reuses it, and fit one whose maker rates it";
        return Optional.of(new Stop(
                NO_START,
                "on the flywheel was seen: " + words(seen)
                        + ". A wheel bursts from a crack or a cut without warning, and flaws grow: that it ran before proves nothing",
                onlyALine
                        ? "check the place with penetrant dye first. If the line is a crack, " + destroy
                                + ". If the dye shows none, " + highestByMaker()
                        : destroy,
                true));
    }

    private String highestByMaker() {
        Optional<Measured> governed = figures.apply(Term.GOVERNED_SPEED).filter(g -> isVouched(Term.GOVERNED_SPEED));
        if (governed.isEmpty()) {
            return "run it no faster than its maker's plate says";
        }
        String rated = speed(governed.get().value());
        return overGoverned()
                .map(a -> a.upper().orElseThrow().factor().doubleValue()
                        * governed.get().value())
                .filter(most -> most > governed.get().value())
                .map(most -> "run it at the maker's " + rated + ", at most a tenth over: " + speed(most) + rimAt(most))
                .orElse("run it no faster than the maker's " + rated);
    }

    private String rimAt(double speed) {
        return figures.apply(Term.FLYWHEEL_DIAMETER)
                .map(d -> Timing.rimSpeed(Expression.constant(d.value()), Expression.constant(speed)))
                .map(e -> Formula.of("rim speed", e).at())
                .map(v -> ", rim " + wording.amount(Term.RIM_SPEED, v, RIM_DOUBT))
                .orElse("");
    }

    private Optional<Stop> damagedRunningGear() {
        List<Damage> seen =
                build.damage().stream().filter(Stops::isOfRunningGear).toList();
        return seen.isEmpty()
                ? Optional.empty()
                : Optional.of(new Stop(
                        NOT_WITH_THESE,
                        "was seen: " + words(seen) + ". Rod, piston or crankshaft let go through the case",
                        "replace the part; have the ones beside it checked by a qualified machinist",
                        true));
    }

    private static boolean isOfAWheel(Damage damage) {
        return damage.part() == Part.FLYWHEEL
                && switch (damage.kind()) {
                    case CRACK, BROKEN, LIGHTENED, BENT -> true;
                    case SCORED, SEIZED, WORN_KEYWAY, CORRODED, NONE -> false;
                };
    }

    private static boolean isOfRunningGear(Damage damage) {
        boolean letsGoThroughTheCase = switch (damage.part()) {
            case ROD, CRANKSHAFT, PISTON -> true;
            default -> false;
        };
        return letsGoThroughTheCase
                && switch (damage.kind()) {
                    case CRACK, BROKEN, BENT -> true;
                    case LIGHTENED, SCORED, SEIZED, WORN_KEYWAY, CORRODED, NONE -> false;
                };
    }

    /** Whether one of the stops is there for this damage. */
    public static boolean isStopFor(Damage damage) {
        return isOfAWheel(damage) || isOfRunningGear(damage);
    }

    /** Whether a stop is there for damage that was seen: it holds at any speed. */
    public static boolean isOfDamage(Stop stop) {
        return stop.what().equals(NO_START) || stop.what().equals(NOT_WITH_THESE);
    }

    private static String words(List<Damage> seen) {
        return seen.stream()
                .map(d -> d.part().label() + ": " + d.kind().label()
                        + (d.where().isEmpty() ? "" : " (" + d.where() + ")"))
                .collect(Collectors.joining("; "));
    }

    // ---- speed

    private Optional<Stop> spokedRim() {
        Optional<Measured> rim = figures.apply(Term.RIM_SPEED);
        if (!build.chose(Choice.FLYWHEEL_KIND, "spoked_iron") || rim.isEmpty() || covers(Term.FLYWHEEL_RATED_SPEED)) {
            return Optional.empty();
        }
        Bound old = rimLimit("old");
        Bound sound = rimLimit("sound");
        if (!passes(old, rim.get())) {
            return Optional.empty();
        }
        String at = wording.amount(
                Term.RIM_SPEED, rim.get().value(), Math.max(rim.get().expanded(), RIM_DOUBT));
        String range = old.text() + " to " + sound.text();
        return Optional.of(new Stop(
                "do not run the spoked iron wheel at " + wanted(),
                "its rim would do " + at + ", "
                        + (passes(sound, rim.get()) ? "past the handbook's " : "inside the handbook's ") + range
                        + " for sound new spoked iron; an old casting is not that. Rim stress grows with the square of the speed",
                highestByMaker(),
                true));
    }

    private static Bound rimLimit(String alternative) {
        return Rule.RIM_SPEED
                .alternative(alternative)
                .flatMap(Alternative::upper)
                .orElseThrow();
    }

    private boolean passes(Bound most, Measured rim) {
        return rim.value() > most.value(figures).orElseThrow();
    }

    /** Past the maker's governed or rated speed: ratings that are exceeded, then the maker's speed for cast wheels, then data missing. */
    private Optional<Stop> speed() {
        Optional<Measured> wanted = figures.apply(Term.WANTED_SPEED);
        Optional<Measured> governed = figures.apply(Term.GOVERNED_SPEED);
        if (wanted.isEmpty() || covers(Term.GOVERNED_SPEED)) {
            return Optional.empty();
        }
        List<String> exceeded = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        List<String> notSure = new ArrayList<>();
        for (Term rating : List.of(Term.FLYWHEEL_RATED_SPEED, Term.ROD_RATED_SPEED)) {
            Optional<Measured> rated = figures.apply(rating);
            if (rated.isEmpty() && rating == Term.FLYWHEEL_RATED_SPEED && castWheelStands(wanted.get())) {
                continue;
            }
            if (rated.isEmpty()) {
                missing.add(rating.label() + " (" + rating.path() + ")");
            } else if (!holds(rated.get(), wanted.get())) {
                exceeded.add(rating.label() + " " + speed(rated.get().value()));
            } else if (!covers(rating)) {
                notSure.add(notSure(rating, rated.get(), wanted.get()));
            }
        }
        if (!covers(Term.FLYWHEEL_RATED_SPEED)) {
            castWheelLimit(wanted.get()).ifPresent(exceeded::add);
        }
        if (exceeded.isEmpty() && missing.isEmpty() && notSure.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Stop(
                (exceeded.isEmpty() ? wanted() + " is not approved" : "do not run it at " + wanted()),
                governed.map(g -> overGoverned(g, wanted.get()))
                                .orElse("no governed or rated speed of the maker is known")
                        + (exceeded.isEmpty() ? "" : "; " + EXCEEDED + String.join(", ", exceeded))
                        + (missing.isEmpty() ? "" : "; not known: " + String.join(", ", missing))
                        + (notSure.isEmpty() ? "" : "; " + String.join("; ", notSure)),
                governed.filter(g -> isVouched(Term.GOVERNED_SPEED) && !isOfAnotherThrow(build, figures))
                                .map(g -> "hold the maker's " + speed(g.value()) + "; ")
                                .orElse(governed.isPresent() ? "" : READ_PLATE)
                        + "to go past it, flywheel first, then rod with new bolts, both rated by their makers for "
                        + wanted() + ", and a limiter; the governor out completely, not only its arm",
                !exceeded.isEmpty()));
    }

    private String overGoverned(Measured governed, Measured wanted) {
        if (holds(governed, wanted)) {
            return notSure(Term.GOVERNED_SPEED, governed, wanted);
        }
        return wanted() + " is over the "
                + (isVouched(Term.GOVERNED_SPEED) ? "maker's " : "")
                + "governed or rated " + speed(governed.value())
                + (isVouched(Term.GOVERNED_SPEED) ? "" : ", of which is not said whose word it is")
                + "; " + grown(Math.pow(wanted.value() / governed.value(), 2));
    }

    /**
     * What the maker's parts bear more. All of it grows with the square of the speed, what the piston pulls at rod and bolts with the throw as well (the crank radius in
     * the acceleration of a slider-crank, to the first order); the wheel has no part in that.
     */
    private String grown(double bySpeed) {
        if (longerThrow().isEmpty() && !isThrowShorter()) {
            return "loads on wheel, rod and bolts grow to " + times(bySpeed);
        }
        Optional<Measured> stroke = figures.apply(Term.STROKE);
        Optional<Measured> donor = figures.apply(Term.DONOR_STROKE);
        String speedAlone = "by the speed loads on wheel, rod and bolts grow to " + times(bySpeed);
        if (stroke.isEmpty() || donor.isEmpty()) {
            return speedAlone + "; what the throw adds on rod and bolts is not known before both strokes are";
        }
        double byThrow = stroke.get().value() / donor.get().value();
        return speedAlone + "; the throw is " + times(byThrow) + " the donor's, so on rod and bolts both make it "
                + times(bySpeed * byThrow) + ", with pistons and rods of the same weight";
    }

    private static String times(double factor) {
        return String.format(Locale.ROOT, "%.2f times", factor);
    }

    /** Why a speed that reaches the wanted one does not approve it. */
    private String notSure(Term rating, Measured rated, Measured wanted) {
        String stands = rating.label() + " " + speed(rated.value()) + " ";
        return isVouched(rating)
                ? stands + "covers it with a probability of " + Percent.ofProbability(sureOf(rated, wanted))
                        + ", which is under 95 %"
                : build.of(rating).stream().anyMatch(Given.Assumed.class::isInstance)
                        ? stands + "is assumed, and a guess approves nothing: its maker's sheet or stamp does ("
                                + rating.path() + ")"
                        : stands + whoseWord(build, rating) + ", and approves nothing: " + WHOSE_WORD + " ("
                                + rating.path() + ")";
    }

    /** Of a rating that is not its maker's word: whose it is. */
    public static String whoseWord(Build build, Term rating) {
        Set<Whose> whose = build.of(rating).stream()
                .filter(g -> g.figure().isPresent() && !g.isMakersWord(rating))
                .map(g -> g.whose(rating))
                .collect(Collectors.toSet());
        return whose.contains(Whose.SELLERS)
                ? "is a seller's claim and not its maker's word"
                : whose.contains(Whose.SOMEBODYS)
                        ? "is somebody's word, of whom is not said that he made it"
                        : "is nobody's word as it stands";
    }

    private Optional<String> castWheelLimit(Measured wanted) {
        return castWheelMost()
                .filter(most -> !holds(Measured.exact(most), wanted))
                .flatMap(most -> overGoverned())
                .map(Alternative::label);
    }

    /** Whether the rule for cast wheels lets this wheel go past its maker's speed as far as wanted; the rod's rating is asked for all the same. */
    private boolean castWheelStands(Measured wanted) {
        return isVouched(Term.GOVERNED_SPEED)
                && castWheelMost()
                        .filter(most -> holds(Measured.exact(most), wanted))
                        .isPresent();
    }

    private Optional<Double> castWheelMost() {
        return overGoverned().flatMap(Alternative::upper).flatMap(b -> b.value(figures));
    }

    private Optional<Alternative> overGoverned() {
        return Rule.SPEED_OVER_GOVERNED.alternatives().stream()
                .filter(a -> a.condition().in(build) == Condition.Holds.YES)
                .findFirst();
    }

    private Optional<Stop> unratedCastWheel() {
        boolean cast = build.chose(Choice.FLYWHEEL_KIND, "spoked_iron", "solid_iron", "cast_aluminium");
        boolean rated = Stream.of(Term.GOVERNED_SPEED, Term.FLYWHEEL_RATED_SPEED)
                .anyMatch(t -> isVouched(t) && figures.apply(t).isPresent());
        return !cast || rated
                ? Optional.empty()
                : Optional.of(new Stop(
                        "do not run the cast flywheel at any speed yet",
                        "neither the maker's governed speed (" + Term.GOVERNED_SPEED.path()
                                + ") nor a rating of the wheel (" + Term.FLYWHEEL_RATED_SPEED.path()
                                + ") is known as a maker's word",
                        "find the speed on the engine's plate or in its maker's sheet; a cast wheel that no maker's speed can be "
                                + "found for is destroyed, so that nobody reuses it",
                        false));
    }

    private boolean covers(Term rating) {
        return covers(build, figures, rating);
    }

    /** Whether a maker's speed covers the wanted one: somebody vouches for it, and it is as surely high enough as a limit is surely kept. */
    public static boolean covers(Build build, Function<Term, Optional<Measured>> figures, Term rating) {
        Optional<Measured> wanted = figures.apply(Term.WANTED_SPEED);
        return isVouched(build, rating)
                && figures.apply(rating)
                        .filter(r ->
                                wanted.isPresent() && holds(r, wanted.get()) && sureOf(r, wanted.get()) >= Verdict.SURE)
                        .isPresent();
    }

    private boolean isVouched(Term rating) {
        return isVouched(build, rating);
    }

    /** Whether all of it is a maker's word. A guess, or a figure that is nobody's, may stop an engine; it never lets one run. */
    public static boolean isVouched(Build build, Term rating) {
        List<Given> said =
                build.of(rating).stream().filter(g -> g.figure().isPresent()).toList();
        return !said.isEmpty() && said.stream().allMatch(g -> g.isMakersWord(rating));
    }

    /** How sure it is that the rating reaches the wanted speed; a figure stated without doubt counts as it stands. */
    private static double sureOf(Measured rated, Measured wanted) {
        boolean asStated = rated.standardUncertainty() <= STATED * rated.value();
        double at = wanted.standardUncertainty() <= STATED * wanted.value() ? wanted.value() : wanted.high();
        return asStated ? (holds(rated, Measured.exact(at)) ? 1 : 0) : rated.probabilityAtLeast(at);
    }

    private static boolean holds(Measured limit, Measured wanted) {
        return Bound.asStated(wanted.value(), Term.WANTED_SPEED.dimension())
                        .compareTo(Bound.asStated(limit.value(), Term.WANTED_SPEED.dimension()))
                <= 0;
    }

    private String wanted() {
        return figures.apply(Term.WANTED_SPEED).map(m -> speed(m.value())).orElse("the wanted speed");
    }

    private String speed(double value) {
        return wording.amount(Term.WANTED_SPEED, value, 0);
    }

    // ---- throw

    /**
     * Whether the throw is surely the one the maker gave it: his word on rod, crankshaft and piston, and on every gap, ends with another. A donor's stroke left out, a
     * guess at it or a seller's word on it is no better than one that says unknown, and a shorter throw is as little his as a longer one.
     */
    public static boolean isThrowAsMade(Build build, Function<Term, Optional<Measured>> figures) {
        return isDonorKnown(build, figures)
                && isReadOrMakers(build, figures, Term.STROKE)
                && isSurelyTheSame(figures.apply(Term.STROKE), figures.apply(Term.DONOR_STROKE))
                && !isOfAnotherThrow(build, figures);
    }

    /** Strokes that are nearer than this, their doubts counted in, are of one crankshaft [m]: two caliper readings of one stroke come within it; common practice, no source. */
    private static final double SURELY_ONE_THROW = 1e-3;

    /** That two strokes are the same has to be shown: of one that is told within millimetres nothing can be said. */
    private static boolean isSurelyTheSame(Optional<Measured> stroke, Optional<Measured> donor) {
        return stroke.isPresent()
                && donor.isPresent()
                && Math.abs(stroke.get().value() - donor.get().value())
                                + Math.hypot(
                                        stroke.get().expanded(), donor.get().expanded())
                        < SURELY_ONE_THROW;
    }

    /**
     * Whether a part is, for all that is written, the one the engine's maker fitted: none was bought in its place, and no rod of billet, which no maker of such engines
     * fits (common practice, no source).
     */
    public static boolean isMakersOwn(Build build, Part part) {
        return VALVE_TRAIN.contains(part)
                ? VALVE_TRAIN.stream().allMatch(p -> isOneOfHis(build, p))
                : isOneOfHis(build, part);
    }

    /** What one of these does to the valves, all of them feel: float, bind and contact are of the whole train. */
    private static final Set<Part> VALVE_TRAIN =
            Set.of(Part.CAMSHAFT, Part.INTAKE_VALVE, Part.EXHAUST_VALVE, Part.SPRING, Part.ROCKER, Part.PUSHROD);

    private static boolean isOneOfHis(Build build, Part part) {
        boolean isBought = build.taken().stream()
                .anyMatch(
                        d -> d instanceof Decided.Bought bought && bought.kind().part() == part);
        boolean isInItsPlace = build.given().entrySet().stream()
                .filter(e -> e.getKey().part() == part)
                .anyMatch(e -> e.getValue().stream().anyMatch(Given::isOfAnotherPart));
        return !isBought && !isInItsPlace && !(part == Part.ROD && build.chose(Choice.ROD_METAL, "billet_aluminium"));
    }

    /** Whether the throw is another than the donor's, or may be: of an engine of which neither is written down nobody says so. */
    public static boolean isOfAnotherThrow(Build build, Function<Term, Optional<Measured>> figures) {
        Stops stops = new Stops(build, figures);
        return stops.longerThrow().isPresent() || stops.isThrowShorter();
    }

    private boolean isThrowShorter() {
        Optional<Measured> stroke = figures.apply(Term.STROKE);
        return figures.apply(Term.DONOR_STROKE)
                .filter(donor ->
                        stroke.isPresent() && donor.value() - stroke.get().value() >= ANOTHER_THROW)
                .isPresent();
    }

    /** Whether it can be told which throw the maker gave it: read, or his word. */
    public static boolean isDonorKnown(Build build, Function<Term, Optional<Measured>> figures) {
        return isReadOrMakers(build, figures, Term.DONOR_STROKE);
    }

    /** Whether a figure was read, or is its maker's word: no guess and no seller's claim. */
    public static boolean isReadOrMakers(Build build, Function<Term, Optional<Measured>> figures, Term term) {
        return figures.apply(term).filter(m -> !m.isUnknown()).isPresent()
                && build.of(term).stream()
                        .filter(g -> g.figure().isPresent())
                        .allMatch(g -> g instanceof Given.Taken || g instanceof Given.Typed || g.isMakersWord(term));
    }

    /** Strokes farther apart than this are of two crankshafts, however they were read [m]; common practice, no source. */
    private static final double ANOTHER_THROW = 0.5e-3;

    private Optional<Stop> longerThrow() {
        Optional<Measured> stroke = figures.apply(Term.STROKE);
        Optional<Measured> donor = figures.apply(Term.DONOR_STROKE);
        if (stroke.isEmpty() || donor.isEmpty()) {
            return throwInTheDark(stroke, donor);
        }
        Margin longer = Margin.of(Term.STROKE, stroke.get(), Bound.times("1", Term.DONOR_STROKE), true, figures)
                .orElseThrow();
        boolean surely = longer.distance() > 0 && longer.probability() >= Verdict.SURE;
        if (!surely && longer.distance() < ANOTHER_THROW) {
            return Optional.empty(); // the same stroke, read twice; a wide doubt never lifts the stop of a longer one
        }
        String grown = wording.amount(Term.THROW, longer.distance() / 2, longer.expanded() / 2);
        return Optional.of(new Stop(
                NO_POWER_YET,
                "the throw is " + grown
                        + " longer than the donor's: rod bolts may touch the camshaft, dipper and rod the case",
                MOCK_UP,
                false));
    }

    /** A throw off a catalogue is of a crankshaft that was bought: the engine's own may have another. */
    private boolean isBoughtThrow() {
        return build.of(Term.STROKE).stream().anyMatch(g -> g instanceof Given.Specified s && s.catalogue());
    }

    /** One of the two strokes is written down as unknown, or without its doubt, so whether the throw is longer cannot be said. */
    private Optional<Stop> throwInTheDark(Optional<Measured> stroke, Optional<Measured> donor) {
        boolean asked = stroke.isEmpty() != donor.isEmpty()
                && (stroke.isPresent() || !build.of(Term.STROKE).isEmpty())
                && (!build.of(Term.DONOR_STROKE).isEmpty() || isBoughtThrow());
        if (!asked) {
            return Optional.empty();
        }
        Term unknown = stroke.isEmpty() ? Term.STROKE : Term.DONOR_STROKE;
        return Optional.of(new Stop(
                NO_POWER_YET,
                unknown.label() + " (" + unknown.path()
                        + ") is not known, or its doubt is not: whether the throw is longer than the "
                        + "donor's cannot be said, and with a longer one rod bolt to cam, dipper to case and rod to case are unknown",
                "find the " + unknown.label() + " with its tolerance, or " + MOCK_UP,
                false));
    }

    // ---- cautions

    /** What to mind before it is handled, measured or started: shown with every answer. */
    public static List<Finding> cautions(Build build) {
        List<Finding> cautions = new ArrayList<>();
        if (build.chose(Choice.FUEL, "methanol")) {
            cautions.add(new Finding(
                    Finding.Kind.WARNING,
                    Choice.FUEL.path(),
                    "methanol fire card: its flame is invisible in daylight; it is toxic by skin and by lungs as well as by mouth",
                    "a bucket of water at hand, water puts it out; gloves, goggles and open air; wash skin at once; never refuel "
                            + "hot; empty or pickle tank and carburettor after the day"));
        }
        cautions.add(
                caution(
                        Term.LEAK_DOWN.path(),
                        "leak-down: compressed air at top dead centre turns a free crankshaft with the spanner in it",
                        "lock the crankshaft before the air goes on, keep hands off the flywheel, let the pressure off slowly"));
        cautions.add(
                caution(
                        "before any start",
                        "a first start can run away, throw parts, burn, and gas a closed room within a minute",
                        "kill switch tried and within reach, throttle snaps shut by itself, cooling shroud and all guards on, nobody in "
                                + "the plane of the flywheel, fuel away, extinguisher at hand, exhaust ducted outside with a carbon monoxide alarm"));
        cautions.add(caution(
                "whose word counts",
                "these are the trade's figures, not approval of your parts",
                "the part maker's sheet, class rules and local law stand before every figure here; where a part can burst or let "
                        + "go, ask a qualified machinist"));
        return List.copyOf(cautions);
    }

    private static Finding caution(String where, String message, String mend) {
        return new Finding(Finding.Kind.NOTE, where, message, mend);
    }
}
