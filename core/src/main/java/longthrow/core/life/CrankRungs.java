package longthrow.core.life;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.OilGrade;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the crankpin: bending and torsion between the mains, the oil between it and the rod. */
final class CrankRungs {
    /** Thinnest film that parts ground pin and smooth bearing [m]: about their roughness together; common practice, no source. */
    static final double LEAST_FILM = 1e-6;

    /** What the sum of the film may be off by, half-width as a share: stiff round parts, one viscosity, oil everywhere; a judgement. */
    static final double FILM_SPREAD = 0.3;

    /** Angles of a cycle for the film, every 2 degrees. */
    private static final int ANGLES = 360;

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    CrankRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    List<Rung> all() {
        List<Rung> rungs = new ArrayList<>();
        Asked of = ask();
        rungs.add(maker.bounded(share -> bending(of, share)));
        if (!known.build().chose(Choice.BIG_END_BEARING, "rolling")) {
            rungs.add(film());
        }
        return rungs;
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    /** @param share of the bounding gas */
    private Rung bending(Asked of, double share) {
        Driven driven = new Driven(of);
        CrankPin pin = new CrankPin(
                of.figure(Term.CRANKPIN_DIAMETER),
                Expression.constant(0),
                of.figure(Term.MAIN_SPAN),
                of.figure(Term.BIG_END_WIDTH));
        Optional<Alloy> metal = of.word(Choice.CRANKSHAFT_METAL)
                .map(word -> word.equals("iron") ? Alloy.NODULAR_IRON : Alloy.FORGED_CARBON_STEEL);
        Expression pull = driven.deadCentre().boltPull(SpeedSought.speed(), Driven.DRAWN);
        Expression push = driven.largestPush(share);
        driven.asksForJerk();
        Head head = new Head(
                "crankpin_bending",
                "crankpin, bending and torsion",
                Part.CRANKSHAFT,
                Kind.FATIGUE,
                Weight.HOLDS_BACK,
                "beam between the mains, von Mises' stress of bending and torsion swinging together, modified Goodman for good (Shigley 6-12, 6-14), "
                        + metal.map(m -> m.label() + "; " + m.source()).orElse("its metal"),
                "a crankshaft that its maker rates for stroke and speed");
        if (metal.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        Alloy alloy = metal.get();
        of.takes(
                "crankshaft",
                "crankpin solid and free to turn in its mains, ground; fillets and oil holes, where cracks start, are not counted; all of the gas torque goes through it",
                "beam theory, on the safe side but for the fillets");
        of.takes(Choice.CRANKSHAFT_METAL.path(), "the crankshaft is reckoned as " + alloy.label(), alloy.source());
        of.takes("crankshaft", RodRungs.RELIABILITY_TAKEN, RodRungs.RELIABILITY_SOURCE);
        Expression twist = pin.torsionStress(
                        of.given("largest gas torque", driven.jerk()).times(share))
                .half();
        MeanStress bending = MeanStress.between(pin.bendingStress(pull).negated(), pin.bendingStress(push));
        MeanStress both = share == 0
                ? bending
                : new MeanStress(
                        pin.combined(bending.alternating(), twist),
                        pin.combined(Expression.max(bending.mean(), Expression.constant(0)), twist));
        Expression scatter = of.scatter("strength of " + alloy.label(), alloy.spread());
        Expression ultimate = scatter.times(alloy.ultimate());
        Expression endurance = scatter.times(alloy.fatigue())
                .times(EnduranceLimit.Finish.GROUND.of(ultimate))
                .times(EnduranceLimit.size(pin.diameter()))
                .times(EnduranceLimit.reliability(RodRungs.RELIABILITY));
        return maker.byShare(head, of, Expression.constant(1).dividedBy(both.goodman(endurance, ultimate)));
    }

    private Rung film() {
        Asked of = ask();
        of.word(Choice.BIG_END_BEARING);
        Driven driven = new Driven(of);
        Expression piston = driven.pistonAssembly();
        Expression viscosity = viscosity(of);
        List<Expression> figures = List.of(
                of.figure(Term.STROKE),
                of.figure(Term.ROD_LENGTH),
                of.figure(Term.BORE),
                of.figure(Term.COMPRESSION_RATIO),
                piston,
                of.figure(Term.ROD_SMALL_END_MASS),
                of.figure(Term.ROD_BIG_END_MASS),
                of.figure(Term.CRANKPIN_DIAMETER),
                of.figure(Term.BIG_END_WIDTH),
                of.figure(Term.BIG_END_CLEARANCE),
                viscosity);
        Head head = new Head(
                "crankpin_film",
                "oil film on the crankpin",
                Part.ROD,
                Kind.FILM,
                Weight.TELLS,
                "mobility method with the bounding gas (Booker, 1965 and 1971) against a micrometre, about the roughness of both; ranks engines and speeds, promises no micrometre",
                "the clearance and oil that the rod's maker asks for, a cooler case, or less speed");
        Optional<Double> speed = maker.askedAbout();
        if (speed.isEmpty()) {
            known.missing(Term.WANTED_SPEED).forEach(of::lacks);
        }
        if (speed.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        of.takes("life", Driven.BOUND, Driven.BOUND_SOURCE);
        of.takes(
                "connecting_rod",
                "the film is taken as good to " + RungMaker.percent(FILM_SPREAD)
                        + " with oil everywhere, no groove or hole, and stiff round parts",
                "a judgement; see FilmOrbit");
        List<Measured> inputs = figures.stream()
                .map(f -> Measured.through(Formula.of("film input", f), of.inputs()))
                .toList();
        double at = speed.get();
        Optional<Measured> film = thinnest(inputs, at);
        if (film.isEmpty()) {
            of.lacks(new Rung.Missing(
                    "", "steady path of the crankpin in its oil", "the sum does not settle for these figures", 0));
            return maker.unknown(head, of);
        }
        Measured thinnest = Measured.through(
                Formula.of(
                        head.key(),
                        of.given("thinnest film", film.get()).times(of.spread("sum of the film", FILM_SPREAD))),
                of.inputs());
        Measured room =
                Measured.through(Formula.of("room", of.given("film", thinnest).minus(LEAST_FILM)), of.inputs());
        return maker.there(
                head,
                of,
                room,
                "thinnest " + maker.printed(Dimension.LENGTH, thinnest) + " at " + maker.speed(at)
                        + ", with more gas than any engine makes");
    }

    /** Dynamic, at the oil's temperature [Pa s]. */
    private static Expression viscosity(Asked of) {
        Expression temperature = of.figure(Term.OIL_TEMPERATURE);
        Optional<OilGrade> oil = of.word(Choice.OIL).map(OilGrade::at);
        if (oil.isEmpty()) {
            return temperature; // unknown as a whole: never worked out
        }
        OilGrade grade = oil.get();
        of.takes(
                Choice.OIL.path(),
                "viscosity from the grade printed on the can, within " + RungMaker.percent(grade.spread())
                        + ", at the temperature in the case",
                "SAE J300, ASTM D341; from memory");
        return OilViscosity.ofSheet(Expression.constant(grade.at40()), Expression.constant(grade.at100()))
                .dynamic(temperature, Expression.constant(OilGrade.DENSITY))
                .times(of.spread("oil of its grade", grade.spread()));
    }

    /** By whole standard uncertainties to each side: the settled path is too coarse for smaller steps. Empty where it does not settle. */
    private static Optional<Measured> thinnest(List<Measured> inputs, double speed) {
        double[] x = inputs.stream().mapToDouble(Measured::value).toArray();
        try {
            Map<Source, Double> errors = new LinkedHashMap<>();
            for (int k = 0; k < x.length; k++) {
                double step = inputs.get(k).standardUncertainty();
                if (step > 0) {
                    double slope = (film(moved(x, k, step), speed) - film(moved(x, k, -step), speed)) / (2 * step);
                    inputs.get(k).contributions().forEach((source, c) -> errors.merge(source, slope * c, Double::sum));
                }
            }
            return Optional.of(Measured.withContributions(film(x, speed), errors));
        } catch (IllegalStateException
                | IllegalArgumentException e) { // no steady path, or a clearance that may be none
            return Optional.empty();
        }
    }

    private static double[] moved(double[] x, int which, double by) {
        double[] moved = x.clone();
        moved[which] += by;
        return moved;
    }

    private static double film(double[] x, double speed) {
        CrankMotion crank = new CrankMotion(x[0] / 2, x[1], 0);
        Loads loads =
                new Loads(crank, new MovingParts(x[4], x[5], x[6], 0, 0), x[2], BoundingGas.of(crank, x[3]), speed);
        FilmOrbit orbit = new FilmOrbit(x[7] / 2, x[8], x[9] / 2, x[10]);
        return orbit.settle(FilmOrbit.drives(loads, loads.sweep(ANGLES)), GasTrace.CYCLE / speed)
                .thinnest();
    }
}
