package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.build.HoursAt;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the rod's beam: yield on the overrun, fatigue at one speed and over a stated duty, buckling under the gas. */
final class RodRungs {
    /** Of the rung on the stated duty. */
    static final String HOURS = "rod_beam_hours";

    static final String DUTY = "hours_at";

    /** Share of rods that must be better than what is reckoned: 99.9 %. */
    static final double RELIABILITY = 0.999;

    static final String RELIABILITY_TAKEN =
            "fatigue strengths lowered so that 999 parts of 1000 are better: 0.753 of their mean";

    static final String RELIABILITY_SOURCE = "Shigley, table 6-5; from memory";

    /** End constant for bending sideways, where pin and crankpin hold the rod straight; Shigley's advice where it matters. */
    private static final double HELD_SIDEWAYS = 1.2;

    private static final String MEND = "a rod that its maker rates for the speed, with new bolts, or less speed";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    RodRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Rung> all() {
        List<HoursAt> stated = known.build().hoursAt();
        return stated.isEmpty()
                ? List.of(stretched(), fatigue(), buckling())
                : List.of(stretched(), besideDuty(Duty.of(stated)), hours(stated), buckling());
    }

    /** What was asked, for what was taken for granted. */
    List<Asked> asked() {
        return List.copyOf(asked);
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    private static Section beam(Asked of) {
        return Section.ofBeam(
                of.figure(Term.BEAM_WIDTH),
                of.figure(Term.BEAM_THICKNESS),
                of.figure(Term.BEAM_WEB),
                of.figure(Term.BEAM_FLANGE));
    }

    /** Stress at the flanges as the rod is pulled and whips, both at their largest [Pa]. */
    private static Expression pulled(Asked of, Section beam) {
        Driven driven = new Driven(of);
        of.takes("life", Driven.OVERRUN, "no cylinder can hold less than nothing");
        Expression pull = driven.deadCentre().shankPull(SpeedSought.speed(), Driven.DRAWN);
        Expression mass = of.figure(Term.ROD_SMALL_END_MASS).plus(of.figure(Term.ROD_BIG_END_MASS));
        Expression whip = mass.times(SpeedSought.speed().squared())
                .times(of.figure(Term.STROKE).half())
                .times(of.figure(Term.ROD_LENGTH))
                .dividedBy(9 * Math.sqrt(3));
        return beam.axialStress(pull).plus(beam.bendingStress(whip, of.figure(Term.BEAM_WIDTH)));
    }

    private Rung stretched() {
        Asked of = ask();
        Optional<RodMetal> metal = RodMetal.of(of);
        Expression stress = pulled(of, beam(of));
        Head head = new Head(
                "rod_beam_yield",
                "rod beam, stretched for good",
                Part.ROD,
                Kind.STRENGTH,
                Weight.REFUSES,
                "pull at top dead centre on the overrun and whip together over the yield strength of "
                        + metal.map(m -> m.alloy().label()).orElse("the metal"),
                MEND);
        return metal.map(m -> maker.byShare(head, of, stress.dividedBy(m.yieldStrength())))
                .orElseGet(() -> maker.unknown(head, of));
    }

    private Rung fatigue() {
        Asked of = ask();
        return maker.bounded(share -> fatigue(of, share));
    }

    private Rung fatigue(Asked of, double share) {
        Optional<RodMetal> metal = RodMetal.of(of);
        MeanStress stress = swing(of, share);
        Expression turns = new Driven(of).turns();
        Head head = new Head(
                "rod_beam_fatigue",
                "rod beam, fatigue",
                Part.ROD,
                Kind.FATIGUE,
                Weight.HOLDS_BACK,
                "modified Goodman and the line of swings (Shigley 6-8, 6-12) for "
                        + metal.map(m -> m.alloy().label() + "; " + m.alloy().source())
                                .orElse("the metal"),
                MEND + "; a measured gas trace instead of the bounding one would say more");
        return metal.map(m -> {
                    StressLife life = line(of, m);
                    Expression borne = life.factor()
                            .times(life.exponent().times(turns.logarithm()).exponential());
                    return maker.byShare(
                            head, of, Expression.constant(1).dividedBy(stress.goodman(borne, m.ultimateStrength())));
                })
                .orElseGet(() -> maker.unknown(head, of));
    }

    /** Between the push of the gas and the pull at top dead centre, at {@link SpeedSought#speed()}. */
    private static MeanStress swing(Asked of, double share) {
        Section beam = beam(of);
        Expression most = pulled(of, beam);
        return MeanStress.between(
                beam.axialStress(new Driven(of).largestPush(share)).negated(), most);
    }

    // ---- over the stated duty

    /** Fatigue with all the hours at one speed, which decides nothing where a duty is stated that reaches the speed asked about. */
    private Rung besideDuty(Duty duty) {
        Rung rung = fatigue();
        if (maker.askedAbout().isEmpty() || trouble(duty).isPresent()) {
            return rung;
        }
        return rung.by(List.of(DUTY), rung.speed(), rung.why())
                .seenAs(
                        rung.state(),
                        Weight.TELLS,
                        "told beside the stated duty, whose own limit decides; with all the hours at one speed: "
                                + rung.why(),
                        rung.unlock());
    }

    private Optional<Duty.Trouble> trouble(Duty duty) {
        OptionalDouble limiter = known.figure(Term.LIMITER_SPEED).stream()
                .mapToDouble(Measured::high)
                .findFirst();
        return maker.askedAbout().flatMap(speed -> duty.against(speed, limiter, maker::speed));
    }

    private Rung hours(List<HoursAt> stated) {
        Asked of = ask();
        Duty duty = Duty.of(stated);
        return maker.bounded(duty.slowest().speed(), duty.fastest().speed(), share -> hours(of, stated, share));
    }

    private Rung hours(Asked of, List<HoursAt> stated, double share) {
        Duty duty = Duty.of(stated);
        asStated(of, stated, duty);
        Optional<RodMetal> metal = RodMetal.of(of);
        MeanStress swing = swing(of, share);
        Expression wanted = of.figure(Term.LIFE_WANTED);
        Head head = new Head(
                HOURS,
                "rod beam, hours at the stated duty",
                Part.ROD,
                Kind.FATIGUE,
                Weight.HOLDS_BACK,
                "Palmgren and Miner's sum over the steps of the duty (Shigley 6-15), each by modified Goodman and the line of swings (6-8, 6-12), for "
                        + metal.map(m -> m.alloy().label() + "; " + m.alloy().source())
                                .orElse("the metal"),
                MEND + ", or less of the time at the fastest step");
        if (metal.isEmpty()) {
            return maker.unknown(head, of);
        }
        Expression reversed = swing.reversed(metal.get().ultimateStrength());
        StressLife line = line(of, metal.get());
        Expression time = duty.logarithmOfTime(speed -> line.logarithmOfSwings(
                        reversed.substitute(Map.of(SpeedSought.SPEED, Expression.constant(speed)))))
                .plus(of.logarithmSpread("Miner's sum at breaking", Duty.spreadAtBreak()));
        return maker.hours(head, of, time, wanted, "Miner's sum");
    }

    /** What the duty says, and what is made of it; one that does not go with the speed asked about tells nothing of it. */
    private void asStated(Asked of, List<HoursAt> stated, Duty duty) {
        of.restsOn(DUTY);
        of.takes(
                DUTY,
                "running time as stated: "
                        + String.join("; ", HoursAt.said(stated, Optional.empty()))
                        + (Math.abs(HoursAt.whole(stated) - 1) > 1e-9
                                ? ", which add up to " + HoursAt.wholeInPercent(stated) + " and count as the whole"
                                : "")
                        + "; one swing a turn, the larger of two",
                "the owner's word");
        of.takes(
                DUTY,
                String.format(
                        Locale.ROOT,
                        "damage added up by Palmgren and Miner's sum, broken at 1: tests break between %s and %s of it, counted as a factor of %.1f either way, 95 in 100",
                        Duty.LEAST_AT_BREAK,
                        Duty.MOST_AT_BREAK,
                        Math.exp(Duty.spreadAtBreak())),
                "Shigley, eq. (6-57); the spread is common practice, no source");
        trouble(duty).ifPresent(t -> of.lacks(new Rung.Missing(DUTY, t.what(), t.mend(), 0)));
    }

    /** The metal's line, lowered for surface, load, grain and reliability. */
    private static StressLife line(Asked of, RodMetal metal) {
        boolean isBar = metal.alloy().acrossGrainSpread() > 0;
        EnduranceLimit.Finish finish = isBar ? EnduranceLimit.Finish.MACHINED : EnduranceLimit.Finish.AS_FORGED;
        of.takes(
                "connecting_rod",
                "surface of the beam " + finish.label()
                        + "; stress concentration at its fillets not known and not counted",
                "Shigley, table 6-2; of steel, a guide for aluminium; from memory");
        of.takes("connecting_rod", RELIABILITY_TAKEN, RELIABILITY_SOURCE);
        Expression strength = metal.fatigueStrength()
                .times(finish.of(metal.ultimateStrength()))
                .times(EnduranceLimit.Loading.AXIAL.factor())
                .times(EnduranceLimit.reliability(RELIABILITY));
        if (isBar) {
            Expression across = of.scatter(
                    "grain of " + metal.alloy().label(),
                    metal.alloy().acrossGrainSpread() / metal.alloy().acrossGrain());
            strength = strength.times(across).times(metal.alloy().acrossGrain());
        }
        return new StressLife(
                metal.ultimateStrength(),
                StressLife.USUAL_FRACTION,
                strength,
                metal.alloy().fatigueSwings());
    }

    private Rung buckling() {
        Asked of = ask();
        return maker.bounded(share -> buckling(of, share));
    }

    private Rung buckling(Asked of, double share) {
        Optional<RodMetal> metal = RodMetal.of(of);
        Section beam = beam(of);
        Expression push = new Driven(of).largestPush(share);
        Expression length = of.figure(Term.ROD_LENGTH);
        Head head = new Head(
                "rod_beam_buckling",
                "rod beam, buckling under the gas",
                Part.ROD,
                Kind.STRENGTH,
                Weight.HOLDS_BACK,
                "Euler and Johnson (Shigley 4-12, 4-13) in both planes; no speed decides: inertia relieves the push",
                "a stiffer rod, or a measured gas trace instead of the bounding one");
        if (metal.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        RodMetal m = metal.get();
        Expression modulus = Expression.constant(m.alloy().modulus());
        Measured worst = null;
        for (Column column : List.of(
                new Column(beam.area(), beam.strongRadius(), length, Column.PINNED, modulus, m.yieldStrength()),
                new Column(beam.area(), beam.weakRadius(), length, HELD_SIDEWAYS, modulus, m.yieldStrength()))) {
            Measured room = Measured.through(
                    Formula.of("room before buckling", column.critical().minus(push)), of.inputs());
            worst = worst == null || room.probabilityAtLeast(0) < worst.probabilityAtLeast(0) ? room : worst;
        }
        Measured room = java.util.Objects.requireNonNull(worst);
        return maker.still(
                head,
                of,
                room,
                maker.printed(Dimension.FORCE, room) + " between what it bears and what the gas may push");
    }
}
