package longthrow.workshop;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Result;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.answer.ValveMovement;
import longthrow.core.answer.Verdict;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** An answer with something of everything, put together by hand: the engine is invented, and so are its figures. */
public final class SampleAnswer {
    private static final double MM = 1e-3;
    private static final double CC = 1e-6;

    private SampleAnswer() {}

    /** No stop, nothing in dispute. */
    public static Answer quiet(UnitSystem units) {
        return answer(units, List.of(), List.of(), false);
    }

    /** Two stops, a suspect, a figure in dispute. */
    public static Answer loud(UnitSystem units) {
        return answer(
                units,
                List.of(
                        new Stop(
                                "turning this engine to 6500 rpm",
                                "no rating of the flywheel is known, and none of the connecting rod",
                                "enter the makers' ratings under use, or stay at the governed speed",
                                false),
                        new Stop(
                                "running it with this flywheel",
                                "a line that stays after wiping was seen at a spoke root",
                                "dye-check the wheel first; if the line stays, destroy it so that nobody uses it again",
                                true)),
                List.of(new Finding(
                        Finding.Kind.SUSPECT,
                        Term.COMPRESSION_HEIGHT.path(),
                        "8.50 mm from what the rest of the stack asks for, which is half the pin: the top of the pin was read"
                                + " instead of its centre (93 %)",
                        "read pin top to crown again and add half the pin")),
                true);
    }

    /** Nothing but one valve that moves. */
    public static Answer moving() {
        Source doubt = Source.at95("lift_tables[1] scatter up", Source.Kind.SCATTER, "intake lift table", 0.01);
        ValveMovement.Figure velocity = new ValveMovement.Figure(
                "peak_velocity",
                "peak velocity",
                Dimension.LENGTH,
                ValveMovement.Per.ANGLE,
                Measured.of(3.7e-3, List.of()));
        ValveMovement.Figure duration = new ValveMovement.Figure(
                "duration", "duration", Dimension.ANGLE, ValveMovement.Per.NOTHING, Measured.of(4, List.of(doubt)));
        return new Answer(
                        "measure",
                        "Dovrin 171",
                        true,
                        UnitSystem.METRIC_FIRST,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of())
                .withMovements(List.of(new ValveMovement(
                        Part.INTAKE_VALVE,
                        "lift_tables[1]",
                        "",
                        List.of(velocity),
                        List.of(new ValveMovement.AtLift(1e-3, "1 mm", List.of(duration), "")),
                        "")));
    }

    /** Nothing known, under this name. */
    public static Answer named(String name) {
        return new Answer(
                "measure",
                name,
                false,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** Nothing but two readings to take in the same way. */
    public static Answer twoReadOneWay() {
        return new Answer(
                "measure",
                "Dovrin 171",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(read(Term.DECK_CLEARANCE_FLYWHEEL_END), read(Term.DECK_CLEARANCE_OUTPUT_END)));
    }

    private static NextReading read(Term term) {
        return new NextReading(
                term, "depth_gauge", "depth gauge on a bridge", Term.SQUISH, 0.07 * MM, 0.04 * MM, 4, "never read");
    }

    /** Nothing but a caution for a leak-down test, and this cure for something else; empty for none. */
    public static Answer cautioned(String cure) {
        return new Answer(
                "measure",
                "Dovrin 171",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(
                        new Finding(
                                Finding.Kind.NOTE,
                                Term.LEAK_DOWN.path(),
                                "compressed air turns a free crankshaft",
                                "lock the crankshaft before the air goes on"),
                        new Finding(Finding.Kind.NOTE, Term.CRANKING_PRESSURE.path(), "proves little", cure)),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** Nothing but a reading that is to settle a disagreement, whose doubt before and after is not a number. */
    public static Answer settling() {
        return new Answer(
                "measure",
                "Dovrin 171",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(new NextReading(
                        Term.COMPRESSION_HEIGHT,
                        "caliper",
                        "from the rim",
                        Term.COMPRESSION_HEIGHT,
                        Double.NaN,
                        Double.NaN,
                        3,
                        "the likeliest to be wrong")));
    }

    private static Answer answer(UnitSystem units, List<Stop> stops, List<Finding> suspects, boolean disputed) {
        List<Finding> findings = new ArrayList<>(suspects);
        findings.add(
                new Finding(Finding.Kind.PART, "cylinder", "cylinder: keep: taper and out-of-round are inside", ""));
        findings.add(new Finding(
                Finding.Kind.PART,
                "connecting_rod",
                "connecting rod: machine: the pin is tight",
                "hone the small end by 0.010 mm"));
        findings.add(new Finding(
                Finding.Kind.WARNING,
                "engine.cranking_pressure",
                "cranking pressure proves little here: the camshaft has a compression release",
                "do the leak-down instead"));
        findings.add(new Finding(
                Finding.Kind.NOTE,
                "engine.compression_ratio",
                "highest static ratio: sources disagree",
                "choose with rules: choose: static_ratio: regular or premium"));
        return new Answer(
                "measure",
                "Dovrin 171",
                true,
                units,
                values(disputed),
                verdicts(),
                findings,
                stops,
                List.of(
                        new Unknown(
                                Term.SLEEVE_WALL,
                                List.of(Term.SLEEVE_OUTSIDE_BOTTOM),
                                "nobody has read the outside of the sleeve"),
                        new Unknown(Term.LOBE_SEPARATION, List.of(Term.EXHAUST_OPENS), "an event is missing")),
                List.of(
                        new DefaultUsed(
                                "cylinder.bore",
                                "no instrument named: taken with a bore gauge",
                                "common practice, no source"),
                        new DefaultUsed(
                                "piston.diameter",
                                "no instrument named: taken with a micrometer",
                                "ISO 3611, from memory"),
                        new DefaultUsed(
                                "piston.pin_diameter",
                                "no instrument named: taken with a micrometer",
                                "ISO 3611, from memory"),
                        new DefaultUsed("temperature", "lengths are taken as read at 20 °C", "ISO 1:2022")),
                List.of(
                        new NextReading(
                                Term.DECK_HEIGHT,
                                "height_gauge",
                                "case on the plate, three places",
                                Term.SQUISH,
                                0.07 * MM,
                                0.04 * MM,
                                12,
                                "squish is the least certain verdict, and the deck height owns most of it"),
                        new NextReading(
                                Term.SLEEVE_OUTSIDE_BOTTOM,
                                "caliper",
                                "at the thinner end",
                                Term.SLEEVE_WALL,
                                Double.POSITIVE_INFINITY,
                                0.03 * MM,
                                1,
                                "makes the sleeve wall known")));
    }

    private static List<Result> values(boolean disputed) {
        Source tolerance =
                Source.rectangular("crankshaft.stroke#1 tolerance", Source.Kind.TOLERANCE, "stroke", 0.02 * MM);
        Source nothing = Source.known("piston.skirt#1", Source.Kind.UNKNOWN, "skirt below pin", 0.1 * MM);
        return List.of(
                result(
                        Term.COMPRESSION_RATIO,
                        9.66,
                        0.065,
                        "chamber volume",
                        disputed,
                        Provenance.MEASURED,
                        Provenance.SPECIFIED),
                result(Term.SQUISH, 1.37 * MM, 0.035 * MM, "deck height", disputed, Provenance.MEASURED),
                result(Term.CHAMBER_VOLUME, 16.2 * CC, 0.1 * CC, "chamber volume", false, Provenance.MEASURED),
                result(
                        Term.SWEPT_VOLUME,
                        193.3 * CC,
                        0.06 * CC,
                        "bore",
                        false,
                        Provenance.MEASURED,
                        Provenance.ASSUMED),
                result(Term.BORE, 66.003 * MM, 0.004 * MM, "instrument bore_gauge", false, Provenance.MEASURED),
                new Result(
                        Term.STROKE,
                        Measured.of(56.5 * MM, List.of(tolerance)),
                        Set.of(Provenance.SPECIFIED),
                        List.of("crankshaft.stroke#1"),
                        false),
                new Result(
                        Term.SKIRT_BELOW_PIN,
                        Measured.of(17.6 * MM, List.of(nothing)),
                        Set.of(Provenance.SPECIFIED),
                        List.of("piston.skirt_below_pin#1"),
                        false));
    }

    private static Result result(
            Term term, double value, double uncertainty, String owner, boolean disputed, Provenance... provenance) {
        Source most = Source.known(term.path() + "#1 scatter", Source.Kind.SCATTER, owner, 0.9 * uncertainty);
        Source rest = Source.known(
                term.path() + "#1 rest", Source.Kind.INSTRUMENT, "gasket thickness", Math.sqrt(0.19) * uncertainty);
        return new Result(
                term,
                Measured.of(value, List.of(most, rest)),
                Set.of(provenance),
                List.of(term.path() + "#1"),
                disputed);
    }

    private static List<Verdict> verdicts() {
        double none = Double.NEGATIVE_INFINITY;
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(new Verdict(
                "squish.aluminium_rod",
                "at least 1.40 mm (0.055 in) with an aluminium rod",
                Term.SQUISH,
                1.40 * MM,
                Double.POSITIVE_INFINITY,
                0.206,
                Verdict.State.NEAR,
                true,
                "0.03 mm under the limit, well inside its doubt",
                "read the deck height again before buying the next gasket",
                "common practice, no source"));
        verdicts.add(new Verdict(
                "squish.small_kart",
                "at least 0.76 mm (0.030 in) in small karts",
                Term.SQUISH,
                0.76 * MM,
                Double.POSITIVE_INFINITY,
                1,
                Verdict.State.MEETS,
                false,
                "0.61 mm above the limit",
                "",
                "common practice, no source"));
        verdicts.add(new Verdict(
                "bore.largest",
                "at most 66.20 mm, the last oversize",
                Term.BORE,
                none,
                66.2 * MM,
                1,
                Verdict.State.MEETS,
                true,
                "0.20 mm left",
                "",
                "the owner"));
        verdicts.add(new Verdict(
                "wall.least",
                "at least 2.5 mm of sleeve",
                Term.SLEEVE_WALL,
                2.5 * MM,
                Double.POSITIVE_INFINITY,
                Double.NaN,
                Verdict.State.UNKNOWN,
                true,
                "the sleeve wall is unknown",
                "read the outside of the sleeve",
                "common practice, no source"));
        verdicts.add(new Verdict(
                "swept.class",
                "at most 190 cc by the class rule",
                Term.SWEPT_VOLUME,
                none,
                190 * CC,
                0.0001,
                Verdict.State.FAILS,
                true,
                "3.3 cc above the limit",
                "a shorter throw",
                "class rule, invented"));
        Term ratio = Term.COMPRESSION_RATIO;
        verdicts.add(
                open("static_ratio.regular", "highest static ratio: regular", ratio, 9, Verdict.State.FAILS, 0.0001));
        verdicts.add(open(
                "static_ratio.premium", "highest static ratio: premium", ratio, 10.5, Verdict.State.MEETS, 0.9999));
        verdicts.add(open("rod_ratio.usual", "rod ratio: usual", Term.ROD_RATIO, 1.65, Verdict.State.MEETS, 1));
        verdicts.add(open("rod_ratio.not_harsh", "rod ratio: not harsh", Term.ROD_RATIO, 1.8, Verdict.State.MEETS, 1));
        return Collections.unmodifiableList(verdicts);
    }

    private static Verdict open(
            String rule, String label, Term term, double most, Verdict.State state, double probability) {
        return new Verdict(
                rule,
                label,
                term,
                Double.NEGATIVE_INFINITY,
                most,
                probability,
                state,
                false,
                "",
                "",
                "common practice, no source");
    }
}
