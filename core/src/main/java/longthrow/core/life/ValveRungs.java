package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Fits;
import longthrow.core.engine.LineContact;
import longthrow.core.engine.Rule;
import longthrow.core.engine.ValveFloat;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measure.ValveLift;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.FlatFollower;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the valve train: float over the whole negative flank, its margin, pushrod, surge, and the travel of spring and retainer. */
final class ValveRungs {
    /** Load over what inertia takes, less 1, that the trade asks at the highest speed: 15 to 25 %. */
    static final double MARGIN = 0.20;

    private static final String MARGIN_SOURCE =
            "load 20 % over inertia at the highest speed, the middle of the trade's 15 to 25 %; engineering handbooks, common practice; certainty C, widely repeated";

    /** Least room between retainer and seal at full lift [m]: the closer end of the trade's 1.3 to 1.5 mm. */
    static final double RETAINER_ROOM = 1.3e-3;

    /** A place counts as slowed by the spring once its bend is surely so: so many standard uncertainties. */
    private static final double SURELY = 2;

    /** Places above this share of the full lift belong to the nose, which is judged as a whole. */
    private static final double NOSE = 0.9;

    /** Pressure between lobe and flat lifter [Pa], the lower end of what hardened iron lobes run at; common practice, no source. */
    static final double LOBE_PRESSURE = 700e6;

    /** Second derivatives by cam angle over those by crank angle. */
    private static final double CAM_TURNS_HALF = 4;

    private static final String SPRING_MEND = "a stiffer spring that does not bind, lighter valve gear, or less speed";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    ValveRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    List<Rung> all() {
        List<Rung> rungs = new ArrayList<>();
        for (Side side : Side.values()) {
            rungs.add(floats(side, "float", "valve floats", Weight.REFUSES, 1, "the spring just follows"));
            rungs.add(floats(
                    side, "float_margin", "valve spring margin of 20 %", Weight.HOLDS_BACK, 1 + MARGIN, MARGIN_SOURCE));
            rungs.add(retainer(side));
            rungs.add(contact(side));
            if (!hasNoPushrod()) {
                rungs.add(pushrod(side));
            }
        }
        rungs.add(bind());
        rungs.add(surge());
        return rungs;
    }

    /** The two valves. */
    private enum Side {
        INTAKE(Part.INTAKE_VALVE, "intake", Term.INTAKE_MASS, Term.INTAKE_LIFT),
        EXHAUST(Part.EXHAUST_VALVE, "exhaust", Term.EXHAUST_MASS, Term.EXHAUST_LIFT);

        private final Part part;
        private final String word;
        private final Term mass;
        private final Term lift;

        Side(Part part, String word, Term mass, Term lift) {
            this.part = part;
            this.word = word;
            this.mass = mass;
            this.lift = lift;
        }
    }

    private boolean isSideValve() {
        return known.build().chose(Choice.VALVE_LAYOUT, "side");
    }

    private boolean isOverheadCam() {
        return known.build().chose(Choice.CAM_DRIVE, "overhead_chain", "overhead_belt");
    }

    /** Side-valves and overhead camshafts have none; where it is not said, pushrods are asked for. */
    private boolean hasNoPushrod() {
        return isSideValve() || isOverheadCam();
    }

    private Expression ratio(Asked of) {
        return isSideValve()
                ? Expression.constant(1)
                : of.figure(Term.ROCKER_VALVE_ARM).dividedBy(of.figure(Term.ROCKER_PUSHROD_ARM));
    }

    private Expression mass(Asked of, Side side) {
        of.word(Choice.VALVE_LAYOUT);
        Expression rocker = isSideValve() ? Expression.constant(0) : of.figure(Term.ROCKER_MASS);
        Expression below = isOverheadCam()
                ? Expression.constant(0)
                : isSideValve()
                        ? of.figure(Term.LIFTER_MASS)
                        : of.figure(Term.PUSHROD_MASS).plus(of.figure(Term.LIFTER_MASS));
        if (isOverheadCam()) {
            of.takes(
                    Choice.CAM_DRIVE.path(),
                    "rocker or follower of the overhead camshaft is all that moves besides valve, retainer and spring",
                    "geometry");
        }
        of.takes(
                Term.SPRING_MASS.path(),
                "a third of the spring moves as its retainer does",
                "Shigley, section 10-8, for slow motion; from memory");
        return ValveTrain.equivalentMass(
                of.figure(side.mass),
                of.figure(Term.RETAINER_MASS),
                of.figure(Term.SPRING_MASS),
                rocker,
                below,
                ratio(of));
    }

    private static Expression rate(Asked of) {
        return Fits.springRate(
                of.figure(Term.SPRING_SEAT_LOAD), of.figure(Term.SPRING_OPEN_LOAD), of.figure(Term.INTAKE_LIFT));
    }

    /** What tells how the valve moves; asked for where nothing does. */
    private Optional<ValveLift> lift(Asked of, Side side) {
        Optional<ValveLift> lift = known.lift(side.part);
        if (lift.isEmpty()) {
            of.lacks(new Rung.Missing(
                    "lift_tables",
                    side.word + " lift table",
                    "degree wheel and dial on the valve, every 5° from shut to shut; or events at the checking lift, that lift and the full lift, for a guess",
                    40));
        } else {
            of.restsOn(lift.get().from());
            of.takes(lift.get().defaults());
        }
        return lift;
    }

    /**
     * Speed at which the spring is this many times what it takes.
     * @param times 1 for float itself
     */
    private Rung floats(Side side, String key, String label, Weight weight, double times, String more) {
        Asked of = ask();
        Expression mass = mass(of, side);
        Expression rate = rate(of);
        Expression seat = of.figure(Term.SPRING_SEAT_LOAD);
        Optional<ValveLift> lift = lift(of, side);
        boolean isGuess = lift.filter(l -> isAssumed(l)).isPresent();
        Head head = new Head(
                side.word + "_" + key,
                side.word + " " + label,
                side.part,
                Kind.FLOAT,
                weight,
                "spring load over mass and deceleration where that is least (Newton's law), by "
                        + lift.map(ValveLift::from).orElse("a lift table") + "; " + more,
                isGuess ? "read a lift table of this valve: its flanks are guessed" : SPRING_MEND);
        if (lift.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        Optional<Measured> worst = worstSpeed(of, lift.get(), mass, rate, seat, times);
        if (worst.isEmpty()) {
            return maker.unknown(head, of);
        }
        Rung rung = maker.at(head, of, worst.get());
        return isGuess && rung.state() == Rung.State.HOLDS ? onlyGuessed(rung) : rung;
    }

    private static boolean isAssumed(ValveLift lift) {
        return lift.from().equals(longthrow.core.answer.ValveMovement.LOBE_FIGURES);
    }

    /** A guess may stop an engine; it never lets one run. */
    private static Rung onlyGuessed(Rung rung) {
        return rung.seenAs(
                Rung.State.NEAR,
                rung.weight(),
                "not proven, its flanks are guessed: " + rung.why(),
                "read a lift table of this valve");
    }

    /** Least over the nose as a whole and every place of the flanks where the spring is surely at work. */
    private static Optional<Measured> worstSpeed(
            Asked of, ValveLift lift, Expression mass, Expression rate, Expression seat, double times) {
        List<Measured> speeds = new ArrayList<>();
        if (lift.nose().value() < 0) {
            speeds.add(followed(of, mass, rate, seat, lift.full(), lift.nose(), times));
        }
        double full = lift.full().value();
        for (ValveLift.Place place : lift.places()) {
            Measured bend = place.bend();
            if (place.lift() < NOSE * full && bend.value() < -SURELY * bend.standardUncertainty()) {
                speeds.add(followed(of, mass, rate, seat, Measured.exact(place.lift()), bend, times));
            }
        }
        return speeds.stream().min(Comparator.comparingDouble(Measured::value));
    }

    private static Measured followed(
            Asked of, Expression mass, Expression rate, Expression seat, Measured lift, Measured bend, double times) {
        Expression load = ValveFloat.springLoad(seat, rate, of.given("lift there", lift));
        Expression speed = ValveFloat.limitingSpeed(
                load, mass, of.given("bend there", bend).negated().times(times));
        return Measured.through(Formula.of("float", speed), of.inputs());
    }

    private Rung retainer(Side side) {
        Asked of = ask();
        Expression room =
                of.figure(Term.RETAINER_TO_SEAL).minus(of.figure(side.lift)).minus(RETAINER_ROOM);
        Head head = new Head(
                side.word + "_retainer",
                side.word + " retainer to seal",
                side.part,
                Kind.TRAVEL,
                Weight.REFUSES,
                "least 1.3 mm at full lift, the closer end of 1.3 to 1.5 mm; common practice, no source; certainty B, several sheets agree",
                "shorten guide or seal, or a retainer that stands higher");
        if (!of.isWhole()) {
            return maker.unknown(head, of);
        }
        Measured left = Measured.through(Formula.of(head.key(), room), of.inputs());
        return maker.still(
                head,
                of,
                left,
                maker.printed(Dimension.LENGTH, left) + " more than the 1.3 mm it must keep at full lift");
    }

    private Rung bind() {
        Asked of = ask();
        Rule rule = Rule.COIL_BIND_MARGIN;
        Optional<Alternative> picked = rule.picked(known.build());
        Alternative row = picked.orElseGet(() -> rule.alternatives().get(0));
        double least = row.lower().orElseThrow().value(t -> Optional.empty()).orElseThrow();
        Expression room = of.figure(Term.SPRING_INSTALLED_HEIGHT)
                .minus(of.figure(Term.SPRING_SOLID_HEIGHT))
                .minus(of.figure(Term.INTAKE_LIFT))
                .minus(least);
        if (picked.isEmpty()) {
            of.takes(
                    "rules." + rule.key(), "coil bind held against " + row.label() + ", " + row.limits(), row.source());
        }
        Head head = new Head(
                "coil_bind",
                "coils of the valve spring touch",
                Part.SPRING,
                Kind.TRAVEL,
                Weight.REFUSES,
                rule.label() + ": " + row.limits() + "; " + row.source(),
                "a spring with more travel, or the seat machined deeper and the seat load checked");
        if (!of.isWhole()) {
            return maker.unknown(head, of);
        }
        Measured left = Measured.through(Formula.of(head.key(), room), of.inputs());
        return maker.still(
                head,
                of,
                left,
                maker.printed(Dimension.LENGTH, left) + " more than the "
                        + row.limits().replace("least ", "") + " it must keep at full lift");
    }

    private Rung surge() {
        Asked of = ask();
        Expression frequency =
                rate(of).dividedBy(of.figure(Term.SPRING_MASS)).squareRoot().half();
        Expression speed = frequency.times(2 * 2 * Math.PI / Surge.HANDBOOK_RATIO);
        of.takes(
                Term.SPRING_MASS.path(),
                "all of the spring is counted as coils that move, the dead end coils too: the slowest its waves can be",
                "on the safe side");
        return maker.bySpeed(
                new Head(
                        "spring_surge",
                        "valve spring surges",
                        Part.SPRING,
                        Kind.SURGE,
                        Weight.TELLS,
                        "natural frequency 15 times the turns of the camshaft at least (Shigley, section 10-8, 15 to 20; from memory); a guide: what counts is which harmonic of the lobe meets it",
                        "a stiffer or lighter spring, a damper inside it, or a smoother lobe"),
                of,
                speed);
    }

    private Rung pushrod(Side side) {
        Asked of = ask();
        Expression mass = mass(of, side);
        Expression rate = rate(of);
        Expression seat = of.figure(Term.SPRING_SEAT_LOAD);
        Expression outside = of.figure(Term.PUSHROD_OUTSIDE);
        Section tube = Section.ofTube(
                outside, outside.minus(of.figure(Term.PUSHROD_WALL).times(2)));
        Alloy steel = Alloy.FORGED_CARBON_STEEL;
        of.takes("pushrod", "the pushrod is reckoned as a tube of " + steel.label(), steel.source());
        Column column = new Column(
                tube.area(),
                tube.weakRadius(),
                of.figure(Term.PUSHROD_LENGTH),
                Column.PINNED,
                Expression.constant(steel.modulus()),
                of.scatter("strength of the pushrod", steel.spread()).times(steel.yieldStrength()));
        Optional<ValveLift> lift = lift(of, side);
        Head head = new Head(
                side.word + "_pushrod",
                side.word + " pushrod buckles",
                Part.PUSHROD,
                Kind.STRENGTH,
                Weight.HOLDS_BACK,
                "spring and inertia on the opening flank, at the rocker ratio, over Euler's and Johnson's load (Shigley 4-12, 4-13); gas on the exhaust valve and shocks left out",
                "a stiffer pushrod");
        if (lift.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        ValveLift.Place hardest = hardest(lift.get());
        Expression push = ValveFloat.springLoad(seat, rate, Expression.constant(hardest.lift()))
                .plus(ValveFloat.inertiaLoad(mass, of.given("bend there", hardest.bend()), SpeedSought.speed()))
                .times(ratio(of));
        return maker.byShare(head, of, push.dividedBy(column.critical()));
    }

    /** Pressure of lobe on flat lifter: spring alone over the nose as it turns slowly, spring and inertia on the flank at speed. */
    private Rung contact(Side side) {
        Asked of = ask();
        Expression mass = mass(of, side);
        Expression rate = rate(of);
        Expression seat = of.figure(Term.SPRING_SEAT_LOAD);
        Expression ratio = ratio(of);
        Expression base = of.figure(Term.CAM_BASE_CIRCLE).half();
        Expression face = of.figure(Term.LOBE_WIDTH);
        Optional<String> lifter = of.word(Choice.LIFTER);
        if (lifter.filter(l -> !l.equals("flat")).isPresent()) {
            of.lacks(new Rung.Missing(
                    "", "contact of a roller", "reckoned for flat lifters only: ask the camshaft's maker", 0));
        }
        Optional<ValveLift> lift = lift(of, side);
        Optional<Double> speed = maker.askedAbout();
        if (speed.isEmpty()) {
            known.missing(Term.WANTED_SPEED).forEach(of::lacks);
        }
        Head head = new Head(
                side.word + "_lobe_contact",
                side.word + " lobe and lifter press too hard",
                Part.CAMSHAFT,
                Kind.STRENGTH,
                Weight.TELLS,
                "largest pressure of line contact (Johnson, Contact Mechanics, 4.2) against 700 MPa, the lower end of what hardened iron lobes run at; common practice, no source",
                "a softer spring that still follows, a wider lobe, or a larger base circle");
        if (lift.isEmpty() || speed.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        Alloy steel = Alloy.FORGED_CARBON_STEEL;
        of.takes(
                Choice.LIFTER.path(),
                "lobe and lifter are as stiff as steel; iron gives more and presses less",
                "on the safe side; " + steel.source());
        Expression modulus = LineContact.effectiveModulus(
                Expression.constant(steel.modulus()),
                steel.poisson(),
                Expression.constant(steel.modulus()),
                steel.poisson());
        Expression full = of.given("full lift", lift.get().full());
        Expression bend = of.given("bend at the nose", lift.get().nose());
        Expression nose = pressure(ValveFloat.springLoad(seat, rate, full), full, bend, base, face, ratio, modulus);
        ValveLift.Place hardest = hardest(lift.get());
        Expression there = Expression.constant(hardest.lift());
        Expression bendThere = of.given("bend there", hardest.bend());
        Expression load = ValveFloat.springLoad(seat, rate, there)
                .plus(ValveFloat.inertiaLoad(mass, bendThere, Expression.constant(speed.get())));
        Expression flank = pressure(load, there, bendThere, base, face, ratio, modulus);
        Expression tip = radius(full, bend, base, ratio);
        if (!(Measured.through(Formula.of("radius of the nose", tip), of.inputs())
                        .low()
                > 0)) {
            of.lacks(new Rung.Missing(
                    Term.CAM_BASE_CIRCLE.path(),
                    "a lobe that a flat lifter can follow",
                    "by these readings its nose is a point or hollow: read base circle, rocker arms and lift table again",
                    0));
            return maker.unknown(head, of);
        }
        Measured most = Measured.through(Formula.of(head.key(), Expression.max(nose, flank)), of.inputs());
        Measured room = Measured.through(
                Formula.of("room", Expression.constant(LOBE_PRESSURE).minus(of.given("pressure", most))), of.inputs());
        return maker.there(
                head,
                of,
                room,
                maker.printed(Dimension.PRESSURE, most) + ", the spring alone on the nose or the flank at "
                        + maker.speed(speed.get()));
    }

    private static Expression pressure(
            Expression load,
            Expression lift,
            Expression bend,
            Expression base,
            Expression face,
            Expression ratio,
            Expression modulus) {
        return LineContact.largestPressure(load.times(ratio), radius(lift, bend, base, ratio), face, modulus);
    }

    /** Of the lobe where it touches; lift and bend at the valve, by crank angle. */
    private static Expression radius(Expression lift, Expression bend, Expression base, Expression ratio) {
        return FlatFollower.curvatureRadius(
                base, lift.dividedBy(ratio), bend.times(CAM_TURNS_HALF).dividedBy(ratio));
    }

    /** Where the valve is thrown open or set down hardest. */
    private static ValveLift.Place hardest(ValveLift lift) {
        return lift.places().stream()
                .max(Comparator.comparingDouble(p -> p.bend().value()))
                .orElseThrow();
    }
}
