package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.cycle.AirFilter;
import longthrow.core.cycle.Crankcase;
import longthrow.core.cycle.SharpHole;
import longthrow.core.cycle.Throttle;
import longthrow.core.gas.MoistAir;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.power.Kind.Use;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** Readings that become a figure by a formula: what narrows the way of the gas, as the plain hole that costs as much, and by what the crankcase breathes. */
final class Openings {
    private static final String PRACTICE = "common practice, no source";

    /** Volumetric efficiency where the drop over a filter was read, from the least to the most; judgement, no source. */
    private static final double LEAST_FILLING = 0.65;

    private static final double MOST_FILLING = 0.95;

    /** Of what pulses add to a drop: the engine draws by no half sine, and how far a clean element is linear nobody asked. Judgement, no source. */
    private static final double LEAST_PULSING = 0.5;

    private static final double MOST_PULSING = 1.5;

    /** Shaft of a throttle plate over its bore, either way of {@link Usual#SHAFT_OF_THROTTLE}. */
    private static final double SHAFT_EITHER = 0.05;

    /** A breather's hole where nobody read it [m]; common practice, no source. */
    private static final double NARROWEST_BREATHER = 0.005;

    private static final double WIDEST_BREATHER = 0.011;

    private final Known known;
    private final Figures first;
    private final Map<Needed, Measured> read = new EnumMap<>(Needed.class);
    private final List<Finding> findings = new ArrayList<>();

    /**
     * What the readings come to.
     * @param first all figures without them
     */
    Openings(Known known, Figures first) {
        this.known = known;
        this.first = first;
        filter();
        throttle();
        silencer();
    }

    /** Figures that were read by way of a formula. */
    Map<Needed, Measured> read() {
        return Map.copyOf(read);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    private void note(Term term, String why, String mend) {
        findings.add(new Finding(
                Finding.Kind.NOTE,
                term.path(),
                term.label() + " was read and does not count in torque and power: " + why,
                mend));
    }

    // ---- intake

    private void filter() {
        Optional<Measured> drop = known.figure(Term.FILTER_DROP);
        Optional<Measured> speed = known.figure(Term.FILTER_DROP_SPEED);
        if (drop.isEmpty() && speed.isEmpty()) {
            return;
        }
        if (drop.isEmpty()) {
            note(Term.FILTER_DROP_SPEED, "the drop at that speed is not known", "read " + Term.FILTER_DROP.path());
        } else if (speed.isEmpty()) {
            note(
                    Term.FILTER_DROP,
                    "the speed at which it was read is not known",
                    "say " + Term.FILTER_DROP_SPEED.path());
        } else if (!first.has(Needed.FILTER)) {
            note(Term.FILTER_DROP, Choice.AIR_FILTER.path() + " says none is fitted", "");
        } else if (!(drop.get().low() > 0)) {
            note(
                    Term.FILTER_DROP,
                    "it is not surely more than nothing, so it tells no hole",
                    "read it at full throttle and at a high speed, by a finer tube");
        } else {
            read.put(Needed.FILTER, filter(drop.get(), speed.get()));
        }
    }

    private Measured filter(Measured drop, Measured speed) {
        Measured filling = Worked.within(
                "volumetric efficiency at the filter's drop",
                "volumetric efficiency where the drop over the filter was read",
                LEAST_FILLING,
                MOST_FILLING);
        Measured pulsing = Worked.within(
                "pulses through the filter",
                "what pulses add to the drop over the filter",
                LEAST_PULSING,
                MOST_PULSING);
        List<Measured> from = new ArrayList<>(List.of(drop, speed, filling, pulsing));
        for (Needed needed :
                List.of(Needed.BORE, Needed.STROKE, Needed.AIRBOX, Needed.AIR_PRESSURE, Needed.AIR_TEMPERATURE)) {
            from.add(first.value(needed).orElseThrow());
        }
        return Worked.of(from, Openings::filterHole);
    }

    /** By drop, speed, volumetric efficiency, share of the pulses, bore, stroke, room behind the filter, pressure and temperature of the air [m]. */
    static double filterHole(double... at) {
        double swept = 0.25 * Math.PI * at[4] * at[4] * at[5];
        double flow = at[2] * swept * at[1] / (4 * Math.PI);
        double density = MoistAir.DRY.density(at[8], at[7]);
        double even = AirFilter.read(flow, at[0], density).area().orElseThrow();
        double pulsed = AirFilter.read(new AirFilter.Breathing(flow, at[6], at[1], at[7], density), at[0])
                .area()
                .orElseThrow();
        return Math.sqrt(4 / Math.PI * (even + at[3] * (pulsed - even)));
    }

    private void throttle() {
        Optional<Measured> bore = known.figure(Term.THROTTLE_BORE);
        if (bore.isEmpty()) {
            return;
        }
        if (first.kind().use() != Use.UTILITY) {
            note(Term.THROTTLE_BORE, "a throttle of such an engine is taken to leave the whole way free", "");
            return;
        }
        Measured shaft = Worked.within(
                "shaft of the throttle",
                "shaft of the throttle over its bore",
                Usual.SHAFT_OF_THROTTLE - SHAFT_EITHER,
                Usual.SHAFT_OF_THROTTLE + SHAFT_EITHER);
        double open = Throttle.coefficient(1);
        Measured factor = Worked.within(
                "coefficient of the open throttle",
                "coefficient of the open throttle",
                1 - Throttle.COEFFICIENT_REACH / open,
                1 + Throttle.COEFFICIENT_REACH / open);
        read.put(
                Needed.THROTTLE,
                Worked.of(List.of(bore.get(), shaft, factor), at -> Usual.openThrottle(at[0], at[1], at[2])));
    }

    // ---- exhaust

    private void silencer() {
        Optional<Measured> hole = known.figure(Term.SILENCER_HOLE);
        if (hole.isEmpty()) {
            return;
        }
        if (first.has(Needed.SILENCER_HOLE)) {
            read.put(Needed.SILENCER_HOLE, plain(hole.get(), "silencer's hole", false));
        } else {
            note(Term.SILENCER_HOLE, Choice.SILENCER.path() + " says none is fitted", "");
        }
    }

    private static Measured plain(Measured hole, String what, boolean valved) {
        Measured coefficient = Worked.within(
                "coefficient of the " + what,
                "coefficient of the " + what,
                valved ? SharpHole.VALVED : SharpHole.COEFFICIENT);
        return Worked.of(List.of(hole, coefficient), at -> SharpHole.plain(at[0], at[1]));
    }

    // ---- crankcase

    /** The same figures with the crankcase as it was told, where it was; what is not told of it as it is met. */
    Figures breathing(Figures all) {
        Optional<String> kind = known.build().choice(Choice.BREATHER);
        Optional<Measured> hole = known.figure(Term.BREATHER_HOLE);
        Optional<Measured> volume = known.figure(Term.CASE_VOLUME);
        if (kind.isEmpty()) {
            String mend = "say " + Choice.BREATHER.path();
            hole.ifPresent(h -> note(Term.BREATHER_HOLE, "what lets the crankcase breathe is not told", mend));
            volume.ifPresent(v -> note(Term.CASE_VOLUME, "what lets the crankcase breathe is not told", mend));
            return all;
        }
        boolean valved = kind.get().equals("check_valve");
        Needed breather = valved ? Needed.BREATHER_VALVE : Needed.BREATHER_OPEN;
        Measured unread = Worked.within("usual breather", "hole of the breather", NARROWEST_BREATHER, WIDEST_BREATHER);
        Measured plain = plain(hole.orElse(unread), "breather", valved);
        Figures told = all.without(Needed.CRANKCASE);
        told = hole.isPresent() ? told.read(breather, plain) : told.assumed(breather, plain, PRACTICE);
        double swept = 0.25 * Math.PI * Math.pow(all.number(Needed.BORE), 2) * all.number(Needed.STROKE);
        Measured unfilled = Worked.within(
                "usual crankcase",
                Needed.CASE_VOLUME.label(),
                Crankcase.LEAST_FREE * swept,
                Crankcase.MOST_FREE * swept);
        return volume.isPresent()
                ? told.read(Needed.CASE_VOLUME, volume.get())
                : told.assumed(Needed.CASE_VOLUME, unfilled, "1 to 6 of the volume swept; judgement, no source");
    }
}
