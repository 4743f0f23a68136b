package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Condition;
import longthrow.core.engine.Rule;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the flywheel: its rating, the maker's speed for cast wheels, the rim, the grip on its taper. */
final class WheelRungs {
    /** Strength over stress that handbooks ask of cast rims, whose flaws nobody sees: 10; Machinery's Handbook, flywheels; from memory. */
    static final double CAST_RIM_FACTOR = 10;

    private static final String MEND = "a wheel of steel or billet whose maker rates it for the speed, behind a shield";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    WheelRungs(Known known, RungMaker maker) {
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
        overGoverned().ifPresent(rungs::add);
        if (known.build().chose(Choice.FLYWHEEL_KIND, "spoked_iron")) {
            rungs.add(spokedRim());
        }
        if (known.build().chose(Choice.FLYWHEEL_KIND, "spoked_iron", "solid_iron")) {
            rungs.add(ironRim());
        }
        if (known.build().choice(Choice.FLYWHEEL_KIND).isEmpty()) {
            Asked of = ask();
            of.word(Choice.FLYWHEEL_KIND);
            rungs.add(maker.unknown(
                    new Head(
                            "flywheel_kind",
                            "flywheel rim",
                            Part.FLYWHEEL,
                            Kind.RIM,
                            Weight.REFUSES,
                            "what limits a rim hangs on what it is made of",
                            MEND),
                    of));
        }
        rungs.add(taper());
        return rungs;
    }

    /** What the trade allows a cast wheel over its maker's speed. */
    private Optional<Rung> overGoverned() {
        Optional<Alternative> row = Rule.SPEED_OVER_GOVERNED.alternatives().stream()
                .filter(a -> a.condition().in(known.build()) == Condition.Holds.YES)
                .findFirst();
        return row.map(a -> {
            Asked of = ask();
            of.word(Choice.FLYWHEEL_KIND);
            Expression most = of.figure(Term.GOVERNED_SPEED)
                    .times(a.upper().orElseThrow().factor().doubleValue());
            return maker.bySpeed(
                    new Head(
                            "cast_wheel_speed",
                            "cast flywheel by its maker's speed",
                            Part.FLYWHEEL,
                            Kind.RIM,
                            Weight.REFUSES,
                            a.label() + "; " + a.source(),
                            MEND),
                    of,
                    most);
        });
    }

    private Rung spokedRim() {
        Asked of = ask();
        of.word(Choice.FLYWHEEL_KIND);
        Alternative old = Rule.RIM_SPEED.alternative("old").orElseThrow();
        return maker.bySpeed(
                new Head(
                        "spoked_rim",
                        "spoked iron rim by the handbook",
                        Part.FLYWHEEL,
                        Kind.RIM,
                        Weight.REFUSES,
                        Rule.RIM_SPEED.label() + ", " + old.label() + ": " + old.limits() + "; " + old.source(),
                        MEND),
                of,
                Guide.metresPerSecond(of, Rule.RIM_SPEED.key(), old)
                        .times(2)
                        .dividedBy(of.figure(Term.FLYWHEEL_DIAMETER)));
    }

    private Rung ironRim() {
        Asked of = ask();
        of.word(Choice.FLYWHEEL_KIND);
        Alloy iron = Alloy.GREY_IRON_20;
        of.takes(
                Choice.FLYWHEEL_KIND.path(),
                "the iron is reckoned as " + iron.label()
                        + ", and must be ten times as strong as the stress of a flawless rim",
                iron.source() + "; factor: Machinery's Handbook, flywheels; from memory");
        Expression strength =
                of.scatter("strength of the iron rim", iron.spread()).times(iron.ultimate() / CAST_RIM_FACTOR);
        Expression rimSpeed = RotatingDisk.rimSpeedOfStress(Expression.constant(iron.density()), strength);
        return maker.bySpeed(
                new Head(
                        "iron_rim_stress",
                        "iron rim, stress",
                        Part.FLYWHEEL,
                        Kind.RIM,
                        Weight.HOLDS_BACK,
                        "density times rim speed squared against a tenth of the tensile strength of " + iron.label()
                                + "; never a rating: keyway, magnets, holes and flaws are not in it",
                        MEND),
                of,
                rimSpeed.times(2).dividedBy(of.figure(Term.FLYWHEEL_DIAMETER)));
    }

    private Rung taper() {
        Asked of = ask();
        return maker.bounded(share -> taper(of, share));
    }

    private Rung taper(Asked of, double share) {
        Optional<Double> tangent = of.word(Choice.FLYWHEEL_TAPER_FORM).flatMap(WheelRungs::halfTangent);
        if (tangent.isEmpty() && of.isWhole()) {
            of.lacks(new Rung.Missing(
                    Choice.FLYWHEEL_TAPER_FORM.path(), "taper as 1:8 or the like", "write it as 1: and a number", 0));
        }
        Optional<Tightening> drawnUp = of.word(Choice.FLYWHEEL_NUT_LUBRICANT).map(BoltRungs::tightening);
        Expression torque = of.figure(Term.FLYWHEEL_NUT_TORQUE);
        Expression thread = of.figure(Term.FLYWHEEL_NUT_THREAD);
        Expression diameter = of.figure(Term.TAPER_DIAMETER);
        Driven driven = new Driven(of);
        driven.asksForJerk();
        Head head = new Head(
                "flywheel_taper",
                "flywheel turns on its taper",
                Part.FLYWHEEL,
                Kind.SLIP,
                Weight.TELLS,
                "grip of a clean dry taper drawn on by its nut (Decker, cone joints; from memory) over the whole jerk of the bounding gas trace; the key only locates the wheel; the jerk of the gas is the same at the maker's own speed, so this decides nothing",
                "blue the taper for contact, clean and dry it, and draw the nut up to its maker's torque");
        if (tangent.isEmpty() || drawnUp.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        of.takes("flywheel", "friction of a clean dry taper 0.15 ± 0.05", "handbooks, 0.10 to 0.20; from memory");
        of.takes(
                "crankshaft",
                "all of the jerk goes through the taper, none is taken up by the crankshaft itself",
                "on the safe side");
        Expression friction = of.given(
                "friction of the taper",
                Measured.of(
                        FlywheelFit.DRY,
                        List.of(Source.at95(
                                "friction of the taper",
                                Source.Kind.ASSUMED,
                                "friction of the taper",
                                FlywheelFit.DRY_SPREAD))));
        Expression clamp = drawnUp.get()
                .preload(torque, thread)
                .times(of.spread("clamp of the flywheel nut", drawnUp.get().scatter(1)));
        Expression grip =
                new FlywheelFit(diameter, Expression.constant(Math.atan(tangent.get()))).slipTorque(clamp, friction);
        Measured jerk = driven.jerk();
        Measured room = Measured.through(
                Formula.of(head.key(), grip.minus(of.given("jerk", jerk).times(share))), of.inputs());
        return maker.still(
                head,
                of,
                room,
                maker.printed(Dimension.TORQUE, room) + " between the grip of the taper and the largest jerk");
    }

    /** Half the taper's change of diameter per length, from "1:8". */
    static Optional<Double> halfTangent(String written) {
        String bare = written.replace(" ", "");
        if (!bare.matches("1:[0-9]{1,3}(\\.[0-9]{1,3})?")) {
            return Optional.empty();
        }
        double length = Double.parseDouble(bare.substring(2));
        return length > 0 ? Optional.of(0.5 / length) : Optional.empty();
    }
}
