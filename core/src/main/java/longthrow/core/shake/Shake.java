package longthrow.core.shake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.Shaking.Figure;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.Stops;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.measurement.Source;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.SliderCrank;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Require;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** The question {@code shake}: where the shake goes, what can be moved where, and what stays. A pure function from a build to its answer. */
public final class Shake {
    /** Balance factors the trade uses for singles; common practice, no source; certainty D: by mount and speed. */
    static final double LEAST_FACTOR = 0.50;

    public static final double MOST_FACTOR = 0.65;

    /** Key of the figure that says what share of the reciprocating mass is balanced. */
    public static final String BALANCE_FACTOR = "balance_factor";

    /** The middle of those. */
    private static final double AIM = (LEAST_FACTOR + MOST_FACTOR) / 2;

    /** Share of critical damping of rubber mounts, and the half-width of what is taken for it; Den Hartog; from memory. */
    private static final double DAMPING = 0.05;

    private static final double DAMPING_SPREAD = 0.03;

    /** Drills tried, the smallest first [m]. */
    private static final List<Double> DRILLS = List.of(6e-3, 8e-3, 10e-3, 12e-3, 14e-3);

    private static final int HOLES = 2;

    /** Metal to leave behind a hole at least [m]; common practice, no source. */
    private static final double LEAST_WALL = 3e-3;

    /** A depth is told to what a depth stop is set to [m]; our own choice. */
    private static final double DRILLED_TO = 0.1e-3;

    private static final int POINTS = 72;

    private static final Set<Term> SHOWN =
            EnumSet.of(Term.STROKE, Term.ROD_LENGTH, Term.RECIPROCATING_MASS, Term.ROTATING_MASS, Term.BOB_WEIGHT);

    private final Known known;
    private final FigurePrinter printer;
    private final List<Figure> figures = new ArrayList<>();
    private final Map<String, Rung.Missing> missing = new LinkedHashMap<>();
    private final Set<DefaultUsed> taken = new LinkedHashSet<>();
    private final List<String> sentences = new ArrayList<>();

    /** Why no holes are told though metal should come off; empty where they are, or none should. */
    private String noHoles = "";

    private Shake(Known known) {
        this.known = known;
        this.printer = new FigurePrinter(known.build().units());
    }

    /** Without a catalogue: no other piston is looked at. */
    public static Answer of(Build build) {
        return of(build, Catalogue.EMPTY);
    }

    /**
     * At the speed wanted, or where none is, at the maker's governed or rated one.
     * @param catalogue pistons whose effect on the factor is told
     * @throws IllegalArgumentException when a reading names an instrument that the build does not have and that is not built in
     */
    public static Answer of(Build build, Catalogue catalogue) {
        return of(build, catalogue, OptionalDouble.empty());
    }

    /**
     * Masses, forces, factor, drilling, movement.
     * @param catalogue pistons whose effect on the factor is told
     * @param chosen    speed of the crank it is told at [rad/s], &gt; 0; empty for the build's own
     * @throws IllegalArgumentException for a speed of 0 or less, and when a reading names an instrument that the build does not have and that is not
     *     built in
     */
    public static Answer of(Build build, Catalogue catalogue, OptionalDouble chosen) {
        chosen.ifPresent(speed -> Require.positive("speed [rad/s]", speed));
        Appraisal appraisal;
        try {
            appraisal = Appraisal.sound(build);
        } catch (NotConvergedException e) {
            return Appraisal.untangled("shake", build, List.of());
        }
        Shake shake = new Shake(new Known(appraisal));
        Shaking shaking = shake.told(catalogue, chosen);
        List<Finding> findings = new ArrayList<>(appraisal.suspects());
        findings.addAll(AsPlanned.findings(build));
        findings.addAll(Stops.cautions(build));
        Set<DefaultUsed> defaults = new LinkedHashSet<>(shake.taken);
        defaults.addAll(appraisal.defaults());
        return appraisal
                .answer("shake", SHOWN, findings, appraisal.stops(), List.copyOf(defaults))
                .withShaking(shaking);
    }

    private Asked ask() {
        return new Asked(known);
    }

    private static Expression reciprocating(Asked of) {
        return of.sum(Term.PISTON_MASS, Term.PIN_MASS, Term.RING_MASS, Term.ROD_SMALL_END_MASS);
    }

    private static Expression factor(Asked of) {
        return BalanceFactor.ofBobWeight(
                of.figure(Term.BOB_WEIGHT), of.figure(Term.ROD_BIG_END_MASS), reciprocating(of));
    }

    private static SliderCrank crank(Asked of) {
        return SliderCrank.inLine(of.figure(Term.STROKE).half(), of.figure(Term.ROD_LENGTH));
    }

    /** Tells a figure, or keeps what is missing for it. */
    private Optional<Measured> tell(String key, String label, Dimension dimension, Asked of, Expression expression) {
        Optional<Measured> figure = of.told(key, expression);
        figure.ifPresent(f -> figures.add(new Figure(key, label, dimension, f)));
        note(of);
        return figure;
    }

    private void note(Asked of) {
        of.missing().forEach(m -> missing.putIfAbsent(m.where(), m));
        if (of.isWhole()) {
            taken.addAll(of.taken());
        }
    }

    private Shaking told(Catalogue catalogue, OptionalDouble chosen) {
        Optional<Measured> speed = chosen.isPresent()
                ? Optional.of(Measured.exact(chosen.getAsDouble()))
                : known.figure(Term.WANTED_SPEED).or(() -> known.figure(Term.GOVERNED_SPEED));
        if (speed.isEmpty()) {
            known.missing(Term.WANTED_SPEED).forEach(m -> missing.putIfAbsent(m.where(), m));
        }
        Asked masses = ask();
        tell("reciprocating_mass", "reciprocating mass", Dimension.MASS, masses, reciprocating(masses));
        Asked rotating = ask();
        tell(
                "rotating_mass",
                "rotating mass of the rod",
                Dimension.MASS,
                rotating,
                rotating.figure(Term.ROD_BIG_END_MASS));
        Asked asked = ask();
        Optional<Measured> factor = tell(BALANCE_FACTOR, "balance factor", Dimension.RATIO, asked, factor(asked));
        Asked shaft = ask();
        tell(
                "shaft_weight",
                "weight of a shaft turning against the crank, at its radius",
                Dimension.MASS,
                shaft,
                shaftWeight(shaft));
        speed.ifPresent(this::forces);
        List<Shaking.Trade> trade = speed.map(s -> trade(s, factor)).orElse(List.of());
        List<Shaking.Point> path = speed.flatMap(s -> path(s, factor)).orElse(List.of());
        speed.ifPresent(this::mount);
        List<Shaking.Holes> drilling = factor.map(this::drilling).orElse(List.of());
        say(speed, factor, drilling);
        return new Shaking(
                speed.map(Measured::value).orElse(Double.NaN),
                figures,
                trade,
                path,
                drilling,
                factor.isPresent() ? pistons(catalogue) : List.of(),
                List.copyOf(missing.values()),
                sentences);
    }

    private static Expression speed(Asked of, Measured speed) {
        return of.given("speed", speed);
    }

    private void forces(Measured speed) {
        Asked of = ask();
        ShakingForce force =
                new ShakingForce(crank(of), reciprocating(of), Expression.constant(0), Expression.constant(0));
        tell("primary_force", "primary force, no counterweight", Dimension.FORCE, of, force.primary(speed(of, speed)));
        tell(
                "secondary_force",
                "secondary force, which no counterweight touches",
                Dimension.FORCE,
                of,
                force.secondaryRefined(speed(of, speed)));
        Asked first = ask();
        FirstOrder order = order(first, speed, factor(first));
        tell("along", "once a turn, along the cylinder", Dimension.FORCE, first, order.along());
        tell("across", "once a turn, across the cylinder", Dimension.FORCE, first, order.across());
        Asked against = ask();
        FirstOrder any = order(against, speed, Expression.constant(AIM));
        tell(
                "against_crank",
                "turning against the crank, which no counterweight on the crank can cancel",
                Dimension.FORCE,
                against,
                any.againstCrank());
    }

    /** Of a balance shaft; no speed changes it. */
    private static Expression shaftWeight(Asked of) {
        Expression still = Expression.constant(0);
        return order(of, still, still)
                .shaftMoment()
                .dividedBy(of.figure(Term.STROKE).half());
    }

    private static FirstOrder order(Asked of, Measured speed, Expression factor) {
        return order(of, speed(of, speed), factor);
    }

    private static FirstOrder order(Asked of, Expression speed, Expression factor) {
        return new FirstOrder(reciprocating(of), of.figure(Term.STROKE).half(), speed, factor);
    }

    private List<Shaking.Trade> trade(Measured speed, Optional<Measured> own) {
        List<Double> factors = new ArrayList<>(List.of(0.0, LEAST_FACTOR, AIM, MOST_FACTOR, 1.0));
        own.ifPresent(f -> factors.add(f.value()));
        List<Shaking.Trade> trade = new ArrayList<>();
        for (double factor : factors.stream().sorted().distinct().toList()) {
            Asked of = ask();
            boolean isOwn = own.filter(f -> f.value() == factor).isPresent();
            FirstOrder order = order(of, speed, isOwn ? factor(of) : Expression.constant(factor));
            Optional<Measured> along = of.told("along", order.along());
            Optional<Measured> across = of.told("across", order.across());
            if (along.isPresent() && across.isPresent()) {
                trade.add(new Shaking.Trade(factor, along.get(), across.get()));
            }
        }
        return trade;
    }

    private Optional<List<Shaking.Point>> path(Measured speed, Optional<Measured> factor) {
        Optional<Measured> stroke = known.figure(Term.STROKE);
        Optional<Measured> rod = known.figure(Term.ROD_LENGTH);
        Asked of = ask();
        Optional<Measured> mass = of.told("mass", reciprocating(of));
        if (stroke.isEmpty() || rod.isEmpty() || mass.isEmpty() || factor.isEmpty()) {
            return Optional.empty();
        }
        CrankMotion crank = new CrankMotion(stroke.get().value() / 2, rod.get().value(), 0);
        Hodograph.Masses masses =
                Hodograph.Masses.ofFactor(mass.get().value(), factor.get().value());
        return Optional.of(Hodograph.of(crank, masses, speed.value(), POINTS).points().stream()
                .map(p -> new Shaking.Point(p.angle(), p.along(), p.across()))
                .toList());
    }

    private void mount(Measured speed) {
        Asked of = ask();
        FirstOrder order = order(of, speed, factor(of));
        Expression natural = of.figure(Term.MOUNT_SPEED);
        Expression mass = of.figure(Term.ENGINE_MASS);
        Expression damping = of.given(
                "damping of the mount",
                Measured.of(
                        DAMPING,
                        List.of(Source.at95(
                                "damping of the mount", Source.Kind.ASSUMED, "damping of the mount", DAMPING_SPREAD))));
        of.takes(
                Term.MOUNT_SPEED.path(),
                "the mount is one spring in one direction, with 0.05 ± 0.03 of critical damping",
                "Den Hartog, Mechanical Vibrations, chapter 2; rubber has a few hundredths; from memory");
        Mount mount = new Mount(mass, mass.times(natural.squared()), damping);
        tell(
                "mount_along",
                "movement on the mount along the cylinder, half of peak to peak",
                Dimension.LENGTH,
                of,
                mount.amplitude(order.along(), speed(of, speed)));
        tell(
                "mount_across",
                "movement on the mount across the cylinder, half of peak to peak",
                Dimension.LENGTH,
                of,
                mount.amplitude(order.across(), speed(of, speed)));
    }

    /**
     * Where the factor is above what the trade uses: the least that brings it surely inside, then the middle; below it metal goes on, or off beside the crankpin, which is a
     * machinist's to plan.
     */
    private List<Shaking.Holes> drilling(Measured factor) {
        if (factor.value() <= MOST_FACTOR) {
            return List.of();
        }
        List<Shaking.Holes> plans = new ArrayList<>();
        for (Shaking.Aim aim : Shaking.Aim.values()) {
            for (double drill : DRILLS) {
                Asked of = ask();
                Pair holes = pair(of, drill);
                note(of);
                if (!of.isWhole()) {
                    noHoles = "which holes would lighten it cannot be said before these are read: "
                            + of.missing().stream().map(Rung.Missing::what).collect(Collectors.joining(", "));
                    return List.of();
                }
                (aim == Shaking.Aim.MIDDLE ? toMiddle(of, holes) : inside(of, holes)).ifPresent(plans::add);
            }
        }
        noHoles = plans.isEmpty()
                ? String.format(
                        Locale.ROOT,
                        "no pair of holes from %.0f to %.0f mm brings it surely inside and leaves %.0f mm of web behind it at this radius: "
                                + "a machinist takes it off the rim, or spreads it over more holes",
                        1e3 * DRILLS.get(0),
                        1e3 * DRILLS.get(DRILLS.size() - 1),
                        1e3 * LEAST_WALL)
                : "";
        return plans;
    }

    /** Holes of one drill, one in each web. */
    private record Pair(double drill, Drilling holes, Expression factor, Expression reciprocating, Expression radius) {
        Expression depthTo(double wanted) {
            return holes.depthParallel(
                    BalanceFactor.momentToRemove(factor, Expression.constant(wanted), reciprocating, radius));
        }

        Expression factorAfter(double depth) {
            return BalanceFactor.afterRemoval(
                    factor, holes.momentParallel(Expression.constant(depth)), reciprocating, radius);
        }
    }

    private static Pair pair(Asked of, double drill) {
        Optional<Double> density = of.word(Choice.CRANKSHAFT_METAL)
                .map(m -> m.equals("steel") ? Alloy.FORGED_CARBON_STEEL.density() : Alloy.NODULAR_IRON.density());
        Drilling holes = new Drilling(
                Expression.constant(HOLES),
                Expression.constant(drill),
                Expression.constant(0),
                of.figure(Term.DRILL_RADIUS),
                Expression.constant(density.orElse(1.0)));
        of.figure(Term.COUNTERWEIGHT_THICKNESS);
        of.takes(
                Term.DRILL_RADIUS.path(),
                "holes stand on the middle line of the counterweight, one in each web, and do not weaken it",
                "geometry; a qualified machinist judges the web");
        return new Pair(
                drill,
                holes,
                factor(of),
                reciprocating(of),
                of.figure(Term.STROKE).half());
    }

    private Optional<Shaking.Holes> toMiddle(Asked of, Pair pair) {
        Expression depth = pair.depthTo(AIM);
        Measured deep = Measured.through(Formula.of("depth", depth), of.inputs());
        return deep.value() > 0 ? plan(of, pair, Shaking.Aim.MIDDLE, deep, depth) : Optional.empty();
    }

    /** No deeper than is surely enough: with its doubt the factor is inside at both ends. None where the point alone takes too much, or the doubt is wider than the range. */
    private Optional<Shaking.Holes> inside(Asked of, Pair pair) {
        double depth = Math.max(
                0,
                drillable(Measured.through(Formula.of("depth", pair.depthTo(MOST_FACTOR)), of.inputs())
                        .value()));
        Measured after = after(of, pair, depth);
        while (after.high() > MOST_FACTOR && after.low() >= LEAST_FACTOR) {
            depth = drillable(depth + DRILLED_TO);
            after = after(of, pair, depth);
        }
        return after.high() <= MOST_FACTOR && after.low() >= LEAST_FACTOR
                ? plan(of, pair, Shaking.Aim.INSIDE, Measured.exact(depth), Expression.constant(depth))
                : Optional.empty();
    }

    /** Not less, to what a depth stop is set to. */
    private static double drillable(double depth) {
        return Math.ceil(depth / DRILLED_TO - 1e-6) * DRILLED_TO;
    }

    private static Measured after(Asked of, Pair pair, double depth) {
        return Measured.through(Formula.of("factor after", pair.factorAfter(depth)), of.inputs());
    }

    /** Where enough of the web is left. */
    private Optional<Shaking.Holes> plan(Asked of, Pair pair, Shaking.Aim aim, Measured deep, Expression depth) {
        Expression wall = pair.holes().wallLeft(depth, of.figure(Term.COUNTERWEIGHT_THICKNESS));
        Measured left = Measured.through(Formula.of("wall", wall), of.inputs());
        return left.low() < LEAST_WALL
                ? Optional.empty()
                : Optional.of(new Shaking.Holes(
                        aim,
                        HOLES,
                        pair.drill(),
                        marked(known.figure(Term.DRILL_RADIUS).orElseThrow()),
                        deep,
                        left,
                        after(of, pair, deep.value())));
    }

    /** What would have to come off at the drill's radius for a factor, in words; empty where it cannot be said. */
    private Optional<String> comesOff(double wanted) {
        Asked of = ask();
        Expression mass = BalanceFactor.momentToRemove(
                        factor(of),
                        Expression.constant(wanted),
                        reciprocating(of),
                        of.figure(Term.STROKE).half())
                .dividedBy(of.figure(Term.DRILL_RADIUS));
        return of.told("comes off", mass).map(m -> printed(Dimension.MASS, m));
    }

    /** As it is marked out on the web: to a tenth of a millimetre. */
    private static double marked(Measured radius) {
        return Math.round(radius.value() * 1e4) / 1e4;
    }

    private List<Shaking.OtherPiston> pistons(Catalogue catalogue) {
        List<Shaking.OtherPiston> others = new ArrayList<>();
        for (CataloguePart part : catalogue.of(PartKind.PISTON)) {
            Optional<Double> piston = stated(part, Term.PISTON_MASS);
            Optional<Double> pin = stated(part, Term.PIN_MASS);
            if (piston.isPresent() && pin.isPresent()) {
                Asked of = ask();
                Expression rings = stated(part, Term.RING_MASS)
                        .map(Expression::constant)
                        .orElseGet(() -> of.figure(Term.RING_MASS));
                Expression after = Expression.constant(piston.get() + pin.get())
                        .plus(rings)
                        .plus(of.figure(Term.ROD_SMALL_END_MASS));
                Expression bigEnd = of.figure(Term.ROD_BIG_END_MASS);
                Expression changed = BalanceFactor.ofBobWeight(of.figure(Term.BOB_WEIGHT), bigEnd, after);
                of.told("factor", changed)
                        .ifPresent(f -> others.add(new Shaking.OtherPiston(part.code(), part.name(), f)));
            }
        }
        return others;
    }

    private static Optional<Double> stated(CataloguePart part, Term term) {
        return part.figure(term).map(f -> f.value().si());
    }

    private void say(Optional<Measured> speed, Optional<Measured> factor, List<Shaking.Holes> drilling) {
        sentences.add(
                "No counterweight can make a single stand still: what it takes from along the cylinder it gives across, one for one; half of the once-a-turn force turns "
                        + "against the crank, and all of the twice-a-turn force stays, whatever is bolted to or drilled from the crankshaft. Only a shaft turning against it cancels the first.");
        figure("against_crank")
                .ifPresent(f -> speed.ifPresent(s -> sentences.add("At " + printed(Dimension.ROTATIONAL_SPEED, s)
                        + " that is "
                        + printed(Dimension.FORCE, f) + " turning against the crank"
                        + figure("secondary_force")
                                .map(t -> ", and " + printed(Dimension.FORCE, t) + " twice a turn along the cylinder")
                                .orElse("")
                        + ".")));
        figure("shaft_weight")
                .ifPresent(
                        f -> sentences.add(
                                "Such a shaft would carry " + printed(Dimension.MASS, f)
                                        + " at the crank's radius, geared one to one, its weight down when the piston is up; with half of the reciprocating mass balanced on the "
                                        + "crank nothing is left of the once-a-turn force. Where it does not stand in line with the crank it rocks the engine instead."));
        factor.ifPresent(f -> sentences.add("The counterweight balances " + share(f)
                + " of the reciprocating mass; singles are given 50 to 65 % by mount and speed (common practice, no source; contested)"
                + (f.value() > MOST_FACTOR
                        ? heavy(drilling)
                        : f.value() < LEAST_FACTOR
                                ? ": it is too light. Drill nothing into the counterweight, which would make it lighter still: heavy metal goes into it, or metal comes off beside the crankpin, and a machinist plans that."
                                : ", and nothing need be drilled.")));
        figure("mount_along")
                .ifPresent(
                        f -> sentences.add(
                                "Real mounts move in six ways at once: the movement tells where the trouble lies, not its last millimetre."));
    }

    /** What is too much, what it takes to come inside and to the middle, and what the holes below aim at. */
    private String heavy(List<Shaking.Holes> drilling) {
        Optional<String> inside = comesOff(MOST_FACTOR);
        String takes = inside.map(off -> String.format(
                        Locale.ROOT,
                        " At the radius that is drilled %s would have to come off to reach %.0f %%, and %s to reach the middle, %.1f %%.",
                        off,
                        100 * MOST_FACTOR,
                        comesOff(AIM).orElseThrow(),
                        100 * AIM))
                .orElse("");
        if (drilling.isEmpty()) {
            return ": it is heavy; " + noHoles + "." + takes;
        }
        boolean isInside = drilling.stream().anyMatch(h -> h.aim() == Shaking.Aim.INSIDE);
        boolean isMiddle = drilling.stream().anyMatch(h -> h.aim() == Shaking.Aim.MIDDLE);
        return ": it is heavy; holes below." + takes
                + (isInside
                        ? " The first aim at the least that is surely inside, doubt and all"
                        : " None is surely inside, doubt and all: weigh again what the doubt comes from")
                + (isMiddle
                        ? "; those for the middle are told apart."
                        : "; no pair of holes takes off enough for the middle and leaves the web.");
    }

    /** In per cent, with its doubt or that none is known. */
    private String share(Measured factor) {
        return factor.expanded() == 0
                ? printer.print(Dimension.RATIO, 100 * factor.value(), 0).line() + " % (no doubt of it is known)"
                : printer.print(Dimension.RATIO, 100 * factor.value(), 100 * factor.expanded())
                                .line() + " %";
    }

    private Optional<Measured> figure(String key) {
        return figures.stream()
                .filter(f -> f.key().equals(key))
                .map(Figure::figure)
                .findFirst();
    }

    private String printed(Dimension dimension, Measured figure) {
        return printer.print(dimension, figure.value(), figure.expanded()).line();
    }
}
