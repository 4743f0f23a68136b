package longthrow.core.power;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Shaking.Figure;
import longthrow.core.cycle.AirFilter;
import longthrow.core.cycle.Carburettor;
import longthrow.core.cycle.Carburettor.Incoming;
import longthrow.core.cycle.JetSize;
import longthrow.core.cycle.JetSize.Numbering;
import longthrow.core.cycle.Traces;
import longthrow.core.cycle.Traces.Trace;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * How much fuel the main jet gives at a speed, over what the air can burn: by {@link Carburettor} from the jet, the venturi and the air that the engine draws. It stands beside the mixture that torque is reckoned with and does not
 * take its place: the model of the carburettor alone is less sure than what carburettors in order are set to (docs/decisions/0028).
 */
final class JetMixture {
    static final String KEY = "jet_mixture";

    /** Within these an engine that is to give its torque runs; judgement, no source. */
    static final double LEANEST = 0.8;

    static final double RICHEST = 1.5;

    /** Leaner by the best estimate than this, or surely leaner than what the air can burn, it is said that it is probably too lean; judgement, no source. */
    static final double PROBABLY_LEAN = 0.9;

    /** Whether a figure of this is surely, or probably, leaner than an engine under full throttle bears. */
    static boolean isLean(Measured mixture) {
        return isSurelyLean(mixture) || mixture.value() < PROBABLY_LEAN || (!mixture.isUnknown() && mixture.high() < 1);
    }

    static boolean isSurelyLean(Measured mixture) {
        return !mixture.isUnknown() && mixture.high() < LEANEST;
    }

    private static final String LABEL = "fuel over what the air can burn, by main jet and venturi";

    /** Nozzle's lip over the float's level [m]; judgement, no source. */
    private static final double HIGHEST_LIP = 0.008;

    /** Bore of a numbered jet, either way; judgement, no source [m]. */
    private static final double STAMPED_EITHER = 0.01e-3;

    /** Flow of a jet by another liquid than its fuel, either way: thicker or thinner; judgement, no source. */
    private static final double OTHER_LIQUID = 0.05;

    private static final double GRAVITY = 9.80665;

    /** Bores of main jets, which no number may leave [m]; as those that can be read. */
    private static final double NARROWEST = 0.2e-3;

    private static final double WIDEST = 5e-3;

    /** A jet as it was told: figures, and what they come to. */
    private record Told(Term term, List<Measured> from, Function<double[], JetSize> size) {}

    private final Figures figures;
    private final Known known;
    private final List<Finding> findings = new ArrayList<>();
    private final Optional<Told> jet;

    JetMixture(Known known, Figures figures) {
        this.known = known;
        this.figures = figures;
        List<Told> told = new ArrayList<>();
        flowed().ifPresent(told::add);
        bored().ifPresent(told::add);
        numbered().ifPresent(told::add);
        this.jet = told.stream().findFirst();
        told.stream().skip(1).forEach(this::other);
    }

    /** Of what was told of the jet: what of it does not count, and where it cannot all be. */
    List<Finding> findings() {
        return List.copyOf(findings);
    }

    // ---- how large it is

    private Optional<Told> flowed() {
        Optional<Measured> flow = known.figure(Term.MAIN_JET_FLOW);
        Optional<Measured> head = known.figure(Term.MAIN_JET_HEAD);
        if (flow.isEmpty() || head.isEmpty()) {
            flow.ifPresent(f -> note(
                    Term.MAIN_JET_FLOW,
                    "the height of the liquid over it is not known",
                    "say " + Term.MAIN_JET_HEAD.path()));
            head.ifPresent(h ->
                    note(Term.MAIN_JET_HEAD, "what flowed under it is not known", "say " + Term.MAIN_JET_FLOW.path()));
            return Optional.empty();
        }
        Optional<String> liquid = known.build().choice(Choice.MAIN_JET_LIQUID);
        boolean isItsFuel = liquid.flatMap(Fuel::named)
                .filter(l -> l.label().equals(figures.fuel().label()))
                .isPresent();
        double either = isItsFuel ? 0 : OTHER_LIQUID;
        Measured thickness = Worked.within(
                "liquid of the jet's flow", "main jet flowed by another liquid than its fuel", 1 - either, 1 + either);
        // the liquid's density drops out, for its own height drives it: any will do
        double any = 1000;
        return Optional.of(new Told(
                Term.MAIN_JET_FLOW,
                List.of(flow.get(), head.get(), thickness),
                at -> new JetSize.Flowed(at[0] * at[2], any * GRAVITY * at[1], any)));
    }

    private Optional<Told> bored() {
        return known.figure(Term.MAIN_JET_DRILL)
                .map(bore -> new Told(Term.MAIN_JET_DRILL, List.of(bore), at -> new JetSize.Bore(at[0])));
    }

    private Optional<Told> numbered() {
        Optional<Measured> number = known.figure(Term.MAIN_JET_NUMBER);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        Optional<String> counts = known.build().choice(Choice.MAIN_JET_NUMBERING);
        Optional<Numbering> numbering = counts.flatMap(JetMixture::numbering);
        if (numbering.isEmpty() || numbering.get() == Numbering.FLOW) {
            note(
                    Term.MAIN_JET_NUMBER,
                    counts.isEmpty()
                            ? "what it counts is not told"
                            : "what it counts, " + counts.get() + ", does not say how large the jet is",
                    (counts.isEmpty() ? "say " + Choice.MAIN_JET_NUMBERING.path() + ", or read " : "read ")
                            + Term.MAIN_JET_DRILL.path());
            return Optional.empty();
        }
        double unit = numbering.get() == Numbering.HUNDREDTHS_OF_A_MILLIMETRE ? 1e-5 : 25.4e-6;
        double bore = number.get().value() * unit;
        if (!(bore >= NARROWEST && bore <= WIDEST)) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.MAIN_JET_NUMBER.path(),
                    String.format(
                            Locale.ROOT,
                            "%s is not used: counted as %s says it is a jet of %.3g mm, and there are some from %.1f to %.0f mm",
                            Term.MAIN_JET_NUMBER.label(),
                            Choice.MAIN_JET_NUMBERING.path(),
                            1e3 * bore,
                            1e3 * NARROWEST,
                            1e3 * WIDEST),
                    "say what the number counts, or read " + Term.MAIN_JET_DRILL.path()));
            return Optional.empty();
        }
        double either = STAMPED_EITHER / unit;
        Measured made = Worked.within("bore of the stamped jet", "how a numbered jet is bored", -either, either);
        return Optional.of(new Told(
                Term.MAIN_JET_NUMBER,
                List.of(number.get(), made),
                at -> new JetSize.Numbered(at[0] + at[1], numbering)));
    }

    /** What a number counts, where it counts what is known. */
    static Optional<Numbering> numbering(String word) {
        return switch (word) {
            case "hundredths_mm" -> Optional.of(Numbering.HUNDREDTHS_OF_A_MILLIMETRE);
            case "thousandths_in" -> Optional.of(Numbering.THOUSANDTHS_OF_AN_INCH);
            case "flow" -> Optional.of(Numbering.FLOW);
            default -> Optional.empty();
        };
    }

    private void note(Term term, String why, String mend) {
        findings.add(new Finding(
                Finding.Kind.NOTE,
                term.path(),
                term.label() + " does not count in what the main jet gives: " + why,
                mend));
    }

    private static Measured area(Told told) {
        Measured read = Worked.of(
                told.from, at -> told.size.apply(at).hole().orElseThrow().area());
        double[] at = told.from.stream().mapToDouble(Measured::value).toArray();
        double own = told.size.apply(at).hole().orElseThrow().doubt() * read.value();
        return Worked.of(
                List.of(
                        read,
                        Measured.of(
                                0, List.of(Source.known("jet", Source.Kind.ASSUMED, "coefficient of the jet", own)))),
                both -> both[0] + both[1]);
    }

    /** More than one of flow, bore and number: the first counts, and the others have to be the same jet. */
    private void other(Told second) {
        Told first = jet.orElseThrow();
        double counted = area(first).value();
        double also = area(second).value();
        double apart = Math.hypot(area(first).expanded(), area(second).expanded());
        if (Math.abs(counted - also) > apart) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    second.term.path(),
                    String.format(
                            Locale.ROOT,
                            "%s and %s cannot be of one jet: by the one it passes as much as %.3g mm2, by the other %.3g; %s counts",
                            second.term.label(),
                            first.term.label(),
                            1e6 * also,
                            1e6 * counted,
                            first.term.path()),
                    "read both again"));
        } else {
            note(second.term, first.term.path() + " tells it better, and they agree", "");
        }
    }

    // ---- what it gives

    /** At one speed; empty where the jet's size is not known or the fuel is no liquid. */
    Optional<Figure> at(Curve.Point point) {
        Optional<PublishedValue> liquid = figures.fuel().density();
        if (jet.isEmpty() || liquid.isEmpty() || !(point.point().charge().volumetric() > 0)) {
            return Optional.empty();
        }
        List<Measured> from = new ArrayList<>(List.of(
                figures.value(Needed.VENTURI).orElseThrow(),
                Worked.within("lip of the nozzle", "nozzle over the float's level", 0, HIGHEST_LIP),
                vent(),
                Worked.within("air that swings back", "air that swings back through the venturi", 0, 1),
                Worked.within("evening of the carburettor", "how far a carburettor evens out the pulses", 0, 1),
                Worked.within("density of the fuel", "density of the fuel", liquid.get())));
        int first = from.size();
        from.addAll(jet.get().from);
        Flow flow = flow(point);
        double[] start = from.stream().mapToDouble(Measured::value).toArray();
        if (Double.isNaN(ratio(start, first, flow))) {
            return Optional.empty();
        }
        Measured read = Worked.of(from, at -> ratio(at, first, flow));
        Measured own = carburettor(start, first).doubted(read.value());
        return Optional.of(new Figure(
                KEY, LABEL, Dimension.RATIO, Worked.of(List.of(read, own), both -> both[0] + both[1] - own.value())));
    }

    private Measured vent() {
        Optional<String> vent = known.build().choice(Choice.BOWL_VENT);
        if (vent.isPresent()) {
            return Measured.exact(vent.get().equals("outside") ? 1 : 0);
        }
        return Worked.within("vent of the float bowl", "where the float bowl is vented", 0, 1);
    }

    /** Of the air over a cycle, as it comes to the venturi. */
    private static final class Flow {
        final double[] air;
        final Incoming incoming;
        final double drop;
        final double stoichiometric;

        Flow(double[] air, Incoming incoming, double drop, double stoichiometric) {
            this.air = air;
            this.incoming = incoming;
            this.drop = drop;
            this.stoichiometric = stoichiometric;
        }
    }

    private Flow flow(Curve.Point point) {
        double pressure = figures.number(Needed.AIR_PRESSURE);
        double temperature = figures.number(Needed.AIR_TEMPERATURE);
        MoistAir moist = MoistAir.of(figures.number(Needed.HUMIDITY), temperature, pressure);
        double stoichiometric = figures.fuel().stoichiometricAirFuel(moist);
        double air = 1 / (1 + figures.number(Needed.MIXTURE) / stoichiometric);
        double[] flows = point.point().traces().all(Trace.INTAKE_FLOW);
        double[] cycle = new double[Traces.PLACES - 1]; // the last place is the first
        double mean = 0;
        for (int i = 0; i < cycle.length; i++) {
            cycle[i] = air * flows[i];
            mean += cycle[i] / cycle.length;
        }
        double drop = 0;
        if (figures.has(Needed.FILTER) && figures.has(Needed.AIRBOX) && mean > 0) {
            double density = moist.density(temperature, pressure);
            double hole = figures.number(Needed.FILTER);
            drop = new AirFilter.Breathing(
                            mean / density, figures.number(Needed.AIRBOX), point.speed(), pressure, density)
                    .meanDrop(0.25 * Math.PI * hole * hole);
        }
        return new Flow(cycle, new Incoming(pressure - drop, temperature, moist.gasConstant()), drop, stoichiometric);
    }

    /** By venturi, lip, vent, share that swings back, how even it is, density, and what tells the jet. */
    private double ratio(double[] at, int first, Flow flow) {
        OptionalDouble ratio = carburettor(at, first)
                .mixture(
                        flow.air,
                        new Carburettor.Pulses(at[3], at[4]),
                        flow.incoming,
                        at[2] * flow.drop,
                        at[5],
                        flow.stoichiometric);
        return ratio.orElse(Double.NaN);
    }

    private Carburettor carburettor(double[] at, int first) {
        double[] told = java.util.Arrays.copyOfRange(at, first, at.length);
        return new Carburettor(at[0], jet.orElseThrow().size.apply(told), at[1], Optional.empty());
    }

    /** Where to look when it cannot be. */
    String where() {
        return jet.map(told -> told.term.path()).orElse(Term.MAIN_JET_DRILL.path());
    }
}
