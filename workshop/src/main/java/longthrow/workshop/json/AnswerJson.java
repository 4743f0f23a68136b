package longthrow.workshop.json;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.JetAdvice;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Result;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Sureness;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.Unknown;
import longthrow.core.answer.ValveMovement;
import longthrow.core.answer.Verdict;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The JSON of an answer, and its schema, docs/answer.schema.json. */
public final class AnswerJson {
    /** Raised when a key changes its meaning or goes away; adding keys does not raise it. */
    private static final int FORMAT = 1;

    /** Below it a share is what the computer's rounding left of nothing. */
    private static final double LEAST_SHARE = 1e-6;

    private static final JsonShape<Measured.Share> SHARE = new JsonShape<Measured.Share>()
            .text("owner", "whose doubt", Measured.Share::owner)
            .number("share", "of the variance, 0 to 1", Measured.Share::share);

    private static final JsonShape<Result> VALUE = doubted(
                    new JsonShape<Result>()
                            .text("label", "name for people", r -> r.term().label())
                            .text("symbol", "symbol in formulas", r -> r.term().symbol())
                            .text(
                                    "unit",
                                    "coherent SI unit of every number here",
                                    r -> r.term().dimension().siSymbol()),
                    Result::figure)
            .numberOrNull(
                    "degrees_of_freedom",
                    "effective, after Welch and Satterthwaite; null when without limit or when the doubt is unknown",
                    r -> ifKnown(r, r.figure().degreesOfFreedom()))
            .textOrNull("doubt_unknown_because", "why there is no interval; null when there is one", r -> reason(r))
            .truth(
                    "sampled",
                    "whether the interval comes from samples, because the formula bends",
                    r -> r.figure().isSampled())
            .truth(
                    "contradicted",
                    "whether readings behind it disagree: then it is not to be used",
                    Result::contradicted)
            .texts(
                    "provenance",
                    "where the readings behind it come from",
                    r -> r.provenance().stream().sorted().map(Provenance::label).toList())
            .texts("from", "places in the build file it rests on", Result::from)
            .list(
                    "shares",
                    "who owns the doubt, largest share first; less than a millionth is left out",
                    SHARE,
                    r -> r.figure().shares().stream()
                            .filter(share -> share.share() >= LEAST_SHARE)
                            .toList());

    private static final JsonShape<Verdict> VERDICT = new JsonShape<Verdict>()
            .text("rule", "key of the rule", Verdict::rule)
            .text("label", "what the rule says", Verdict::label)
            .term("term", "the figure held against it", v -> v.term())
            .text(
                    "unit",
                    "coherent SI unit of least and most",
                    v -> v.term().dimension().siSymbol())
            .numberOrNull("least", "inclusive; null for no limit", Verdict::least)
            .numberOrNull("most", "inclusive; null for no limit", Verdict::most)
            .numberOrNull(
                    "probability",
                    "that the true figure keeps the rule; null when unknown, see why",
                    Verdict::probability)
            .word(
                    "state",
                    "the verdict",
                    JsonShape.words(Verdict.State.values(), Verdict.State::label),
                    v -> v.state().label())
            .truth(
                    "chosen",
                    "whether the owner chose this rule or there is no other; the rest is the spread of the trade",
                    Verdict::chosen)
            .text("why", "which limit, by how much", Verdict::why)
            .text("cure", "what would mend it", Verdict::cure)
            .text("source", "where the rule comes from", Verdict::source);

    static final JsonShape<Finding> FINDING = new JsonShape<Finding>()
            .word(
                    "kind",
                    "how much it weighs",
                    JsonShape.words(Finding.Kind.values(), Finding.Kind::label),
                    f -> f.kind().label())
            .text("where", "place in the build file, or the part", Finding::where)
            .text("message", "what was found, against what", Finding::message)
            .text("mend", "what to do about it", Finding::mend);

    static final JsonShape<Stop> STOP = new JsonShape<Stop>()
            .text("what", "must not be done", Stop::what)
            .text("why", "the reason", Stop::why)
            .text("way_round", "the cheapest safe way", Stop::wayRound)
            .truth(
                    "refused",
                    "true: a limit is exceeded or damage was seen; false: data is missing, so it is not approved",
                    Stop::refused);

    static final JsonShape<Unknown> UNKNOWN = new JsonShape<Unknown>()
            .term("term", "the figure", u -> u.term())
            .texts(
                    "missing",
                    "terms that would have to be read",
                    u -> u.missing().stream().map(Term::path).toList())
            .text("why", "in words", Unknown::why);

    static final JsonShape<DefaultUsed> DEFAULT = new JsonShape<DefaultUsed>()
            .text("where", "place in the build file it stands in for", DefaultUsed::where)
            .text("what", "was taken", DefaultUsed::what)
            .text("source", "where it comes from", DefaultUsed::source);

    private static final JsonShape<NextReading> NEXT = new JsonShape<NextReading>()
            .term("read", "what to read", n -> n.read())
            .text("with", "instrument", NextReading::with)
            .text("how", "how to take it", NextReading::how)
            .number("minutes", "it takes", NextReading::minutes)
            .term("target", "the figure whose doubt it cuts", n -> n.target())
            .text(
                    "unit",
                    "coherent SI unit of now and after",
                    n -> n.target().dimension().siSymbol())
            .numberOrNull(
                    "now",
                    "95 % doubt of the target now; null while the target is unknown, or where the reading is to settle"
                            + " a disagreement",
                    NextReading::now)
            .numberOrNull(
                    "after",
                    "95 % doubt expected after it; null where the reading is to settle a disagreement",
                    NextReading::after)
            .text("why", "in words", NextReading::why);

    private static final JsonShape<ValveMovement.Figure> MOTION_FIGURE = new JsonShape<ValveMovement.Figure>()
            .text("key", "what it is", ValveMovement.Figure::key)
            .text("label", "name for people", ValveMovement.Figure::label)
            .text("unit", "coherent SI unit of every number here", ValveMovement.Figure::unit)
            .number("value", "best value", f -> f.figure().value())
            .number("low", "lower end of the 95 % interval", f -> f.figure().low())
            .number("high", "upper end of the 95 % interval", f -> f.figure().high())
            .number(
                    "standard_uncertainty",
                    "combined standard uncertainty",
                    f -> f.figure().standardUncertainty());

    private static final JsonShape<ValveMovement.AtLift> AT_LIFT = new JsonShape<ValveMovement.AtLift>()
            .number("lift", "of the valve, in m", ValveMovement.AtLift::lift)
            .text("written", "as it was asked for", ValveMovement.AtLift::written)
            .list("figures", "what is known there", MOTION_FIGURE, ValveMovement.AtLift::figures)
            .text("why", "what is not known there and why; empty when all is said", ValveMovement.AtLift::why);

    private static final JsonShape<ValveMovement> MOVEMENT = new JsonShape<ValveMovement>()
            .word(
                    "valve",
                    "which",
                    List.of("intake_valve", "exhaust_valve"),
                    m -> m.valve().key())
            .text(
                    "from",
                    "place of the lift table in the build file, or: " + ValveMovement.LOBE_FIGURES,
                    ValveMovement::from)
            .text("assumed", "what is taken for granted of the curve; empty when it was read", ValveMovement::assumed)
            .list("figures", "of the whole motion", MOTION_FIGURE, ValveMovement::figures)
            .list("lifts", "events at the lifts asked for", AT_LIFT, ValveMovement::lifts)
            .text("why", "what cannot be said and why; empty when all is said", ValveMovement::why);

    static final JsonShape<Rung.Missing> MISSING = new JsonShape<Rung.Missing>()
            .text("where", "place in the build file; empty when it is no entry of one", Rung.Missing::where)
            .text("what", "it is", Rung.Missing::what)
            .text("how", "to read it, or whom to ask", Rung.Missing::how)
            .number("minutes", "it takes; 0 for a word or a question", Rung.Missing::minutes);

    private static final JsonShape<Rung> RUNG = new JsonShape<Rung>()
            .text("key", "stable", Rung::key)
            .text("label", "what gives up", Rung::label)
            .text("part", "that gives up", r -> r.part().key())
            .word(
                    "kind",
                    "in what way",
                    JsonShape.words(Rung.Kind.values(), Rung.Kind::key),
                    r -> r.kind().key())
            .word(
                    "weight",
                    "what passing it means: the speed is refused, it is held back, or it is only told",
                    JsonShape.words(Rung.Weight.values(), Rung.Weight::key),
                    r -> r.weight().key())
            .word(
                    "state",
                    "how it stands at the speed asked for",
                    JsonShape.words(Rung.State.values(), Rung.State::key),
                    r -> r.state().key())
            .numberOrNull(
                    "speed",
                    "of the crank at which it gives up, in rad/s; null when not known or when no speed decides",
                    r -> r.speed().map(Measured::value).orElse(Double.NaN))
            .numberOrNull(
                    "low",
                    "lower end of the 95 % interval of it",
                    r -> r.speed().map(Measured::low).orElse(Double.NaN))
            .numberOrNull(
                    "high",
                    "upper end of the 95 % interval of it",
                    r -> r.speed().map(Measured::high).orElse(Double.NaN))
            .numberOrNull("probability", "that it holds at the speed asked for; null when unknown", Rung::probability)
            .texts("hangs_on", "places in the build file it was asked of", Rung::hangsOn)
            .texts("from", "entries that the figures behind it rest on", Rung::from)
            .text("source", "material, grade, rule or formula with where it comes from", Rung::source)
            .list("missing", "what would have to be read or asked", MISSING, Rung::missing)
            .text("why", "how it stands, in words", Rung::why)
            .text("unlock", "what would mend it; empty when it holds", Rung::unlock)
            .list(
                    "shares",
                    "who owns the doubt of the speed, largest share first; less than a millionth is left out",
                    SHARE,
                    r -> r.speed().map(Measured::shares).orElse(List.of()).stream()
                            .filter(share -> share.share() >= LEAST_SHARE)
                            .toList());

    static final JsonShape<Approval.Unlock> UNLOCK = new JsonShape<Approval.Unlock>()
            .text("what", "to do, buy, read or ask", Approval.Unlock::what)
            .text("why", "which limits it is for", Approval.Unlock::why)
            .text("price", "for people; empty where nothing is bought", Approval.Unlock::price)
            .text("code", "of the catalogue's part; empty for none", Approval.Unlock::code);

    private static final JsonShape<Approval> APPROVAL = new JsonShape<Approval>()
            .word(
                    "verdict",
                    "refused: a limit is passed or damage was seen; not_approved: data is missing or too uncertain",
                    JsonShape.words(Approval.State.values(), Approval.State::key),
                    a -> a.verdict().key())
            .numberOrNull(
                    "asked",
                    "speed it was held against, in rad/s; null when none is wanted",
                    a -> a.asked().orElse(Double.NaN))
            .numberOrNull(
                    "up_to",
                    "highest speed that is approved, in rad/s; null unless approved",
                    a -> a.upTo().orElse(Double.NaN))
            .numberOrNull(
                    "can_have",
                    "highest speed that could be had as it is, once every stop on damage is settled, in rad/s; null"
                            + " when no maker's speed is known",
                    a -> a.canHave().orElse(Double.NaN))
            .text("said", "in one sentence", Approval::said)
            .texts("reasons", "why, gravest first", Approval::reasons)
            .list("unlocks", "what would lift it, in the order in which to do or buy it", UNLOCK, Approval::unlocks)
            .text("instead", "what can be had instead; empty when approved", Approval::instead);

    private static final JsonShape<Shaking.Figure> PLAIN_FIGURE = new JsonShape<Shaking.Figure>()
            .text("key", "stable", Shaking.Figure::key)
            .text("label", "name for people", Shaking.Figure::label)
            .text(
                    "unit",
                    "coherent SI unit of every number here",
                    f -> f.dimension().siSymbol())
            .number("value", "best value", f -> f.figure().value())
            .number("low", "lower end of the 95 % interval", f -> f.figure().low())
            .number("high", "upper end of the 95 % interval", f -> f.figure().high())
            .number(
                    "standard_uncertainty",
                    "combined standard uncertainty",
                    f -> f.figure().standardUncertainty());

    private static final JsonShape<LimitLadder.Start> START = new JsonShape<LimitLadder.Start>()
            .list("figures", "pull, and speeds of kick-back", PLAIN_FIGURE, LimitLadder.Start::figures)
            .list("missing", "what would have to be read for the rest", MISSING, LimitLadder.Start::missing)
            .texts("sentences", "what it comes to, in plain words", LimitLadder.Start::sentences);

    private static final JsonShape<Shaking.Trade> TRADE = new JsonShape<Shaking.Trade>()
            .number("factor", "balance factor", Shaking.Trade::factor)
            .number(
                    "along",
                    "amplitude along the cylinder, in N",
                    t -> t.along().value())
            .number(
                    "along_low",
                    "lower end of its 95 % interval",
                    t -> t.along().low())
            .number(
                    "along_high",
                    "upper end of its 95 % interval",
                    t -> t.along().high())
            .number(
                    "across",
                    "amplitude across the cylinder, in N",
                    t -> t.across().value())
            .number(
                    "across_low",
                    "lower end of its 95 % interval",
                    t -> t.across().low())
            .number(
                    "across_high",
                    "upper end of its 95 % interval",
                    t -> t.across().high());

    private static final JsonShape<Shaking.Point> POINT = new JsonShape<Shaking.Point>()
            .number("angle", "after top dead centre, in rad", Shaking.Point::angle)
            .number("along", "force along the cylinder, towards the head positive, in N", Shaking.Point::along)
            .number(
                    "across",
                    "force across it, towards the crank pin at +90 degrees positive, in N",
                    Shaking.Point::across);

    private static final JsonShape<Shaking.Holes> HOLES = new JsonShape<Shaking.Holes>()
            .word(
                    "aim",
                    "what they are drilled for: the least that is surely inside what the trade uses, or its middle",
                    java.util.Arrays.stream(Shaking.Aim.values())
                            .map(Shaking.Aim::key)
                            .toList(),
                    h -> h.aim().key())
            .number("count", "of holes", h -> h.count())
            .number("diameter", "of the drill, in m", Shaking.Holes::diameter)
            .number("radius", "of their centres about the crankshaft, in m", Shaking.Holes::radius)
            .number("depth", "to the full diameter, in m", h -> h.depth().value())
            .number("depth_doubt", "95 % half-width of it", h -> h.depth().expanded())
            .number("wall", "left beyond the tip, in m", h -> h.wall().value())
            .number("wall_doubt", "95 % half-width of it", h -> h.wall().expanded())
            .number("result", "balance factor after it", h -> h.result().value())
            .number("result_doubt", "95 % half-width of it", h -> h.result().expanded());

    private static final JsonShape<Shaking.OtherPiston> OTHER_PISTON = new JsonShape<Shaking.OtherPiston>()
            .text("code", "of the catalogue", Shaking.OtherPiston::code)
            .text("name", "for people", Shaking.OtherPiston::name)
            .number("factor", "balance factor with it", p -> p.factor().value())
            .number("factor_doubt", "95 % half-width of it", p -> p.factor().expanded());

    private static final JsonShape<Shaking> SHAKING = new JsonShape<Shaking>()
            .numberOrNull("speed", "of the crank it is told at, in rad/s; null when none is known", Shaking::speed)
            .list("figures", "masses, factor, forces, movement", PLAIN_FIGURE, Shaking::figures)
            .list(
                    "trade",
                    "what a counterweight makes of the once-a-turn force, factor by factor",
                    TRADE,
                    Shaking::trade)
            .list("path", "of the tip of the force over one turn", POINT, Shaking::path)
            .list("drilling", "holes that would bring the factor to what the trade uses", HOLES, Shaking::drilling)
            .list("pistons", "what other pistons on offer would make of the factor", OTHER_PISTON, Shaking::pistons)
            .list("missing", "what would have to be read for the rest", MISSING, Shaking::missing)
            .texts("sentences", "what it comes to, in plain words", Shaking::sentences);

    private static final JsonShape<TorqueCurve.Bound> BOUND = new JsonShape<TorqueCurve.Bound>()
            .text("key", "stable", TorqueCurve.Bound::key)
            .text("said", "what it is and what more of it would give", TorqueCurve.Bound::said)
            .number("gain", "share of the torque that it would give", TorqueCurve.Bound::gain);

    private static final JsonShape<TorqueCurve.Reckoning> RECKONING = new JsonShape<TorqueCurve.Reckoning>()
            .number("cycles", "run until they repeat", r -> r.cycles())
            .number("steps", "of the last cycle", r -> r.steps())
            .number("cells", "of all pipes", r -> r.cells())
            .number("cell", "longest cell of a pipe, in m", TorqueCurve.Reckoning::cell)
            .number("change", "of the last cycle from the one before, as a share", TorqueCurve.Reckoning::change)
            .number("mass", "missing over what came in", TorqueCurve.Reckoning::mass)
            .number("energy", "missing over what came in", TorqueCurve.Reckoning::energy);

    private static final JsonShape<Shaking.Figure> DOUBTED_FIGURE = doubted(
            new JsonShape<Shaking.Figure>()
                    .text("key", "stable", Shaking.Figure::key)
                    .text("label", "name for people", Shaking.Figure::label)
                    .text(
                            "unit",
                            "coherent SI unit of every number here",
                            f -> f.dimension().siSymbol()),
            Shaking.Figure::figure);

    private static final JsonShape<TorqueCurve.Row> TORQUE_ROW = new JsonShape<TorqueCurve.Row>()
            .number("speed", "of the crank, in rad/s", TorqueCurve.Row::speed)
            .word(
                    "standing",
                    "whether it may be run; figures are told where it is approved or not approved for lack of data",
                    JsonShape.words(TorqueCurve.Standing.values(), TorqueCurve.Standing::key),
                    r -> r.standing().key())
            .text("why", "it stands so; empty where it is approved", TorqueCurve.Row::why)
            .list(
                    "figures",
                    "what the engine does there; empty where none is told",
                    DOUBTED_FIGURE,
                    TorqueCurve.Row::figures)
            .list("bounds", "what keeps torque down there, the most first", BOUND, TorqueCurve.Row::bounds)
            .list(
                    "reckoning",
                    "how sure the sums came out, one; empty where none were done",
                    RECKONING,
                    r -> r.reckoning().stream().toList());

    private static final JsonShape<TorqueCurve.Place> CYCLE_PLACE = new JsonShape<TorqueCurve.Place>()
            .number("angle", "of the crank from firing top dead centre, in rad", TorqueCurve.Place::angle)
            .number("volume", "over the piston, in m3", TorqueCurve.Place::volume)
            .number("pressure", "in the cylinder, in Pa", TorqueCurve.Place::pressure)
            .number("temperature", "there, mean over the mass, in K", TorqueCurve.Place::temperature)
            .number("intake_lift", "of the valve, in m", TorqueCurve.Place::intakeLift)
            .number("exhaust_lift", "of the valve, in m", TorqueCurve.Place::exhaustLift)
            .number("intake_pressure", "before the intake valve, in Pa", TorqueCurve.Place::intakePressure)
            .number("exhaust_pressure", "behind the exhaust valve, in Pa", TorqueCurve.Place::exhaustPressure);

    private static final JsonShape<TorqueCurve.Share> TORQUE_SHARE = new JsonShape<TorqueCurve.Share>()
            .text("what", "figure that is not sure, or model", TorqueCurve.Share::what)
            .number("share", "of the variance, 0 to 1", TorqueCurve.Share::share);

    private static final JsonShape<TorqueCurve.Reading> TORQUE_READING = new JsonShape<TorqueCurve.Reading>()
            .list("read", "what to read, one", MISSING, r -> List.of(r.read()))
            .number("share", "of the variance that it owns now, 0 to 1", TorqueCurve.Reading::share)
            .number("now", "95 % doubt of the most torque, as a share of it", TorqueCurve.Reading::now)
            .number("after", "the same with this one read well", TorqueCurve.Reading::after);

    static final JsonShape<Measured> DOUBTED = doubted(new JsonShape<Measured>(), Function.identity());

    private static final JsonShape<SparkSweep.Point> SPARK_POINT = new JsonShape<SparkSweep.Point>()
            .number("advance", "of the spark before top dead centre, in rad", SparkSweep.Point::advance)
            .number("torque", "as if it did not knock, in N m", SparkSweep.Point::torque)
            .numberOrNull(
                    "octane_wanted",
                    "octane number wanted; null for fuels unlike petrol",
                    SparkSweep.Point::octaneWanted)
            .number("half_burned", "after top dead centre, in rad", SparkSweep.Point::halfBurned)
            .number("peak_pressure", "in Pa", SparkSweep.Point::peakPressure)
            .number("exhaust_temperature", "as it leaves the cylinder, in K", SparkSweep.Point::exhaustTemperature);

    private static final JsonShape<SparkSweep.Spot> SPARK_SPOT = new JsonShape<SparkSweep.Spot>()
            .word(
                    "side",
                    "where it lies to what was run; beyond it the angle is that end",
                    JsonShape.words(SparkSweep.Side.values(), SparkSweep.Side::key),
                    s -> s.side().key())
            .list(
                    "angle",
                    "of the crank, in rad, one; empty where unknown",
                    DOUBTED,
                    s -> s.angle().stream().toList());

    private static final JsonShape<SparkSweep.Step> SPARK_STEP = new JsonShape<SparkSweep.Step>()
            .number("shift", "from the straight key, earlier positive, in rad", SparkSweep.Step::shift)
            .number("advance", "with it, before top dead centre, in rad", SparkSweep.Step::advance)
            .number("gain", "torque with it over torque now, less 1", SparkSweep.Step::gain)
            .list(
                    "spare",
                    "octane number of the fuel less that wanted, one; empty where not known",
                    DOUBTED,
                    s -> s.spare().stream().toList())
            .text(
                    "against",
                    "what speaks against it at this speed; empty where nothing does",
                    SparkSweep.Step::against);

    private static final JsonShape<SparkSweep> SPARK = new JsonShape<SparkSweep>()
            .number("speed", "of the crank, in rad/s", SparkSweep::speed)
            .list(
                    "set",
                    "spark as it was read, before top dead centre, in rad, one; empty where it was not",
                    DOUBTED,
                    s -> s.set().stream().toList())
            .list("points", "that were run, by rising advance", SPARK_POINT, SparkSweep::points)
            .list("best", "advance of most torque, one", SPARK_SPOT, s -> List.of(s.best()))
            .list("limited", "advance at which it begins to knock, one", SPARK_SPOT, s -> List.of(s.limited()))
            .list("margin", "limited less set, one", SPARK_SPOT, s -> List.of(s.margin()))
            .numberOrNull(
                    "octane_doubt",
                    "what the doubt of the knocking formula is worth at the limit, in rad; null where none was found",
                    SparkSweep::octaneDoubt)
            .list("steps", "of offset keys as they are sold", SPARK_STEP, SparkSweep::steps)
            .list("missing", "what would have to be told for the margin", MISSING, SparkSweep::missing)
            .text("said", "what it comes to, in plain words", SparkSweep::said);

    private static final JsonShape<JetAdvice.Numbered> JET_NUMBER = new JsonShape<JetAdvice.Numbered>()
            .number("physics", "where to start", JetAdvice.Numbered::physics)
            .number(
                    "leanest",
                    "that physics with its doubt and the rule of the trade come to",
                    JetAdvice.Numbered::leanest)
            .number("richest", "that they come to", JetAdvice.Numbered::richest);

    private static final JsonShape<JetAdvice.Change> JET_CHANGE = new JsonShape<JetAdvice.Change>()
            .list("area", "of the jet's hole, after over before, one", DOUBTED, c -> List.of(c.area()))
            .list("diameter", "of it, one", DOUBTED, c -> List.of(c.diameter()))
            .number("air", "density of the dry air, after over before", JetAdvice.Change::air)
            .number(
                    "heat",
                    "that a kilogram of air sets free with just enough fuel, after over before",
                    JetAdvice.Change::heat)
            .number("volume", "of fuel for the same air, after over before", JetAdvice.Change::volume)
            .list("as_flow", "its number where that counts flow, one", JET_NUMBER, c -> List.of(c.asFlow()))
            .list(
                    "as_diameter",
                    "its number where that counts diameter, one",
                    JET_NUMBER,
                    c -> List.of(c.asDiameter()));

    private static final JsonShape<JetAdvice.Buy> JET_BUY = new JsonShape<JetAdvice.Buy>()
            .text("what", "that is counted, of a jet's number or of a drill", JetAdvice.Buy::what)
            .number("present", "in that", JetAdvice.Buy::present)
            .number("next", "in that", JetAdvice.Buy::next)
            .number("fuel_share", "fuel that it passes over what is wanted", JetAdvice.Buy::fuelShare);

    private static final JsonShape<JetAdvice> JET = new JsonShape<JetAdvice>()
            .list(
                    "change",
                    "from where the present main jet was right, one; empty where something is missing",
                    JET_CHANGE,
                    j -> j.change().stream().toList())
            .list(
                    "buy",
                    "the next jet or drill to be had, to the rich side; empty where the present one is not known",
                    JET_BUY,
                    JetAdvice::buy)
            .list("missing", "what would have to be written", MISSING, JetAdvice::missing)
            .texts("read", "what tells on the engine whether it is right", JetAdvice::read)
            .texts("cautions", "that stand beside it", JetAdvice::cautions)
            .text("said", "what it comes to, in plain words", JetAdvice::said);

    private static final JsonShape<TorqueCurve> TORQUE = new JsonShape<TorqueCurve>()
            .text(
                    "taken_for",
                    "what sort of engine it is reckoned as; empty where that is not known",
                    TorqueCurve::takenFor)
            .list("rows", "speed by speed, rising", TORQUE_ROW, TorqueCurve::rows)
            .numberOrNull(
                    "cycle_speed",
                    "of the crank at which the cycle is told, in rad/s; null where none was reckoned",
                    TorqueCurve::cycleSpeed)
            .list("cycle", "what stands where over two turns", CYCLE_PLACE, TorqueCurve::cycle)
            .list("shares", "who owns the doubt of the most torque, largest first", TORQUE_SHARE, TorqueCurve::shares)
            .list("next", "readings that would cut it most, best first", TORQUE_READING, TorqueCurve::next)
            .list("missing", "what it cannot do without; empty where torque is told", MISSING, TorqueCurve::missing)
            .texts("sentences", "what it comes to, in plain words", TorqueCurve::sentences)
            .list(
                    "sparks",
                    "what the spark does, by rising speed; empty where none was reckoned",
                    SPARK,
                    TorqueCurve::sparks)
            .list(
                    "jet",
                    "what the main jet becomes, one; empty where there is no engine to tell",
                    JET,
                    c -> c.jet().stream().toList())
            .list(
                    "air",
                    "in which it stands, one; empty where nothing was reckoned",
                    OverlayJson.AIR,
                    c -> c.air().stream().toList())
            .list(
                    "overlays",
                    "what runs on a dynamometer were measured to make, over what is predicted; one for each sheet",
                    OverlayJson.OVERLAY,
                    TorqueCurve::overlays);

    private static final JsonShape<Clearance.Gap> GAP = new JsonShape<Clearance.Gap>()
            .number("value", "least gap in m; below 0 minus the depth of penetration", Clearance.Gap::value)
            .number("low", "lower end of the 95 % interval", Clearance.Gap::low)
            .number("high", "upper end of the 95 % interval", Clearance.Gap::high)
            .number("worst", "with every figure behind it at its worst", Clearance.Gap::worst)
            .numberOrNull(
                    "angle",
                    "of the crank in rad, 0 firing top dead centre, up to two turns; null where none decides",
                    Clearance.Gap::angle)
            .number("contact", "probability that they touch, 0 to 1", Clearance.Gap::contact)
            .word(
                    "way",
                    "which way they stay apart",
                    JsonShape.words(Clearance.Way.values(), Clearance.Way::key),
                    g -> g.way().key())
            .numberOrNull(
                    "across_one",
                    "nearest point of the first part, from the crank axis towards the anti-thrust side, in m",
                    g -> g.place().map(Clearance.Place::acrossOne).orElse(Double.NaN))
            .numberOrNull(
                    "up_one",
                    "the same along the cylinder",
                    g -> g.place().map(Clearance.Place::upOne).orElse(Double.NaN))
            .numberOrNull(
                    "across_other",
                    "nearest point of the other part",
                    g -> g.place().map(Clearance.Place::acrossOther).orElse(Double.NaN))
            .numberOrNull(
                    "up_other",
                    "the same along the cylinder",
                    g -> g.place().map(Clearance.Place::upOther).orElse(Double.NaN))
            .list(
                    "shares",
                    "who owns the doubt, largest share first",
                    SHARE,
                    g -> g.shares().stream()
                            .filter(share -> share.share() >= LEAST_SHARE)
                            .toList());

    private static final JsonShape<Clearance.Limit> WANTED_GAP = new JsonShape<Clearance.Limit>()
            .text("key", "of the rule or mock-up gap, and its alternative", Clearance.Limit::key)
            .text("label", "for people", Clearance.Limit::label)
            .number("least", "wanted, in m", Clearance.Limit::least)
            .number("keeps", "probability that the cold gap is not less", Clearance.Limit::keeps)
            .word(
                    "state",
                    "the verdict by it",
                    JsonShape.words(Verdict.State.values(), Verdict.State::label),
                    l -> l.state().label())
            .truth("decides", "whether it counts: the owner chose it, or chose none", Clearance.Limit::decides)
            .text("source", "where it comes from", Clearance.Limit::source);

    private static final JsonShape<Clearance.Removal> REMOVAL = new JsonShape<Clearance.Removal>()
            .text("what", "is to be cut, or changed instead", Clearance.Removal::what)
            .numberOrNull("at", "at the best estimates, in m; null where no cut is told", Clearance.Removal::at)
            .numberOrNull(
                    "surely",
                    "so that it is kept with 95 in 100, in m; null where no cut is told",
                    Clearance.Removal::surely)
            .text("shaped", "part that is cut to an outline; empty where none is", Clearance.Removal::shaped)
            .numberOrNull(
                    "leaves",
                    "left of the part behind the cut, in m; null when not known",
                    r -> r.leaves().orElse(Double.NaN));

    private static final JsonShape<Clearance.AtPhase> AT_PHASE = new JsonShape<Clearance.AtPhase>()
            .number("later", "crank angle by which the camshaft is later than read, in rad", Clearance.AtPhase::later)
            .number("gap", "least cold gap, in m", Clearance.AtPhase::gap)
            .number(
                    "teeth",
                    "by which its wheel is out, later positive; 0 where the angle is none of a whole tooth",
                    Clearance.AtPhase::teeth);

    private static final JsonShape<Clearance.AtAngle> AT_ANGLE = new JsonShape<Clearance.AtAngle>()
            .number("angle", "of the crank, in rad", Clearance.AtAngle::angle)
            .number("gap", "in m", Clearance.AtAngle::gap);

    private static final JsonShape<Clearance.Mocked> MOCKED = new JsonShape<Clearance.Mocked>()
            .text("place", "entry of the build file", Clearance.Mocked::place)
            .text("way", "it was read, for people", Clearance.Mocked::way)
            .text("read", "as it was written", Clearance.Mocked::read)
            .truth("counts", "whether the cold gap is this one", Clearance.Mocked::counts)
            .text("said", "how it stands against the drawing, or why it tells no more", Clearance.Mocked::said);

    private static final JsonShape<Clearance> CLEARANCE = new JsonShape<Clearance>()
            .text("key", "stable", Clearance::key)
            .text("one", "part", Clearance::one)
            .text("other", "what it passes", Clearance::other)
            .word(
                    "state",
                    "how they stand to each other",
                    JsonShape.words(Clearance.State.values(), Clearance.State::key),
                    c -> c.state().key())
            .list(
                    "cold",
                    "least gap at 20 °C, one; empty when it cannot be said",
                    GAP,
                    c -> c.cold().stream().toList())
            .list(
                    "running",
                    "least gap warm, at the wanted speed, bearings taken up the worst way, one; empty when it cannot"
                            + " be said",
                    GAP,
                    c -> c.running().stream().toList())
            .list("limits", "what the trade wants there, all of it", WANTED_GAP, Clearance::limits)
            .list(
                    "removal",
                    "what would have to come off, one; empty where nothing",
                    REMOVAL,
                    c -> c.removal().stream().toList())
            .list("phases", "least cold gap with the camshaft early or late", AT_PHASE, Clearance::phases)
            .list("curve", "cold gap against the crank angle", AT_ANGLE, Clearance::curve)
            .list("running_curve", "the same running, at the best estimates", AT_ANGLE, Clearance::warmCurve)
            .texts("hangs_on", "places in the build file it was asked of", Clearance::hangsOn)
            .texts("from", "entries that the figures behind it rest on", Clearance::from)
            .list("missing", "what would have to be read for the cold gap", MISSING, Clearance::missing)
            .list("not_warm", "what would have to be read for the running gap", MISSING, Clearance::notWarm)
            .list("mocked_up", "what the mock-up told, in the order of the file", MOCKED, Clearance::mocked)
            .text("how", "it is read when mocked up", Clearance::how)
            .text("why", "how it stands, in words", Clearance::why)
            .text("mend", "what would mend it; empty when it clears", Clearance::mend)
            .word(
                    "holds_back",
                    "which runs the pair holds back as it is known",
                    JsonShape.words(Clearance.Hold.values(), Clearance.Hold::key),
                    c -> c.hold().key());

    private static final JsonShape<Candidate.Piece> PIECE = new JsonShape<Candidate.Piece>()
            .text("kind", "kind of part, or machine_operation", Candidate.Piece::kind)
            .text("code", "by which it is ordered", Candidate.Piece::code)
            .text("name", "for people", Candidate.Piece::name)
            .text("vendor", "empty when not said", Candidate.Piece::vendor)
            .numberOrNull(
                    "price",
                    "with shipping, in the currency; null when not said",
                    p -> p.price().isPresent() ? p.price().getAsLong() / 100.0 : Double.NaN)
            .text("currency", "empty when there is no price", Candidate.Piece::currency)
            .numberOrNull(
                    "lead_days",
                    "days until it is there; null when not said",
                    p -> p.leadDays().isPresent() ? p.leadDays().getAsInt() : Double.NaN)
            .text("note", "what is to be done, or what the row warns of", Candidate.Piece::note)
            .numberOrNull(
                    "amount",
                    "of an operation: what is taken off, or the size made, in m; null for a part",
                    p -> p.amount().orElse(Double.NaN));

    private static final JsonShape<Aimed> AIMED = new JsonShape<Aimed>()
            .term("term", "the figure", a -> a.term())
            .text(
                    "unit",
                    "coherent SI unit of every number here",
                    a -> a.term().dimension().siSymbol())
            .text("wish", "the aim as it was written, or what the owner calls his limit", Aimed::wish)
            .truth("one_figure", "true: one figure is aimed at; false: a limit of the owner's own", Aimed::isOneFigure)
            .numberOrNull("least", "inclusive; null for none; the aim itself where it is one figure", Aimed::least)
            .numberOrNull("most", "inclusive; null for none; the aim itself where it is one figure", Aimed::most)
            .numberOrNull(
                    "off",
                    "how far the figure stands outside: positive above, negative below, 0 inside; null when not known",
                    Aimed::off)
            .numberOrNull("doubt", "95 % half-width of the figure; null when not known", Aimed::doubt)
            .word(
                    "state",
                    "one figure: within_doubt, misses or unknown; a limit: meets, near, misses or unknown",
                    JsonShape.words(Aimed.State.values(), Aimed.State::key),
                    a -> a.state().key())
            .text("said", "in words", Aimed::said);

    private static final JsonShape<Candidate.Split> SPLIT = new JsonShape<Candidate.Split>()
            .text("rule", "key of the rule", Candidate.Split::rule)
            .term("term", "the figure", s -> s.term())
            .text("label", "what the rule is about", Candidate.Split::label)
            .number("sources", "that may be meant for this engine and can be judged", s -> s.sources())
            .texts("refuse", "what those say that would not pass it", Candidate.Split::refuse)
            .text("said", "in words", Candidate.Split::said);

    private static final JsonShape<Candidate> CANDIDATE = new JsonShape<Candidate>()
            .text("title", "parts by their codes", Candidate::title)
            .word(
                    "sureness",
                    "how surely the parts go together",
                    JsonShape.words(Sureness.values(), Sureness::key),
                    c -> c.sureness().key())
            .truth(
                    "partly_unknown",
                    "true: a size that a limit or a neighbour asks for is not said, so it fits as far as is known",
                    Candidate::isPartlyUnknown)
            .list("pieces", "what is bought or machined", PIECE, Candidate::pieces)
            .number("total", "sum of what is priced", c -> c.total().known() / 100.0)
            .text("currency", "of the total", c -> c.total().currency())
            .texts(
                    "not_priced",
                    "codes without a price: the true total is more",
                    c -> c.total().notPriced())
            .texts(
                    "forgotten",
                    "usually needed too, not in the total",
                    c -> c.total().forgotten())
            .byTerm("values", "figures with these parts, by term", VALUE, Result::term, Candidate::values)
            .text(
                    "to_spend",
                    "the budget in words, and as which currency it is taken where none was named; empty for none",
                    c -> c.total().toSpend())
            .list("verdicts", "those figures held against rules", VERDICT, Candidate::verdicts)
            .list("aims", "those figures held against what is aimed at, and against own limits", AIMED, Candidate::aims)
            .list(
                    "splits",
                    "rules on which sources differ here while none is chosen: the mildest lets it pass",
                    SPLIT,
                    Candidate::splits)
            .list("not_known", "figures that it has not, and why", UNKNOWN, Candidate::notKnown)
            .list("changes", "against the engine as it is", FINDING, Candidate::changes)
            .list("forces", "what else it makes necessary", FINDING, Candidate::forces)
            .list("unknowns", "what stays unknown until mocked up or asked for", FINDING, Candidate::unknowns);

    static final JsonShape<Rejection> REJECTION = new JsonShape<Rejection>()
            .text("reason", "the first thing that keeps them apart", Rejection::reason)
            .number("count", "combinations", r -> r.count())
            .text("example", "one of them by its codes", Rejection::example)
            .text("why", "which limit, by how much", Rejection::why)
            .text("cure", "the least change that would cure it; empty when none is known", Rejection::cure);

    private static final JsonShape<Answer> ANSWER = new JsonShape<Answer>()
            .text("question", "what was asked", Answer::question)
            .text("engine", "name of the build", Answer::engine)
            .truth("invented", "whether the build says that it is made up", Answer::invented)
            .word(
                    "units",
                    "which units the owner wants first in print; numbers here are SI whatever it says",
                    List.of("metric", "inch"),
                    a -> a.units() == UnitSystem.METRIC_FIRST ? "metric" : "inch")
            .list("stops", "what must not be done", STOP, Answer::stops)
            .list("findings", "what was noticed, suspects first", FINDING, Answer::findings)
            .byTerm("values", "figures found, by term", VALUE, Result::term, Answer::values)
            .list("verdicts", "figures held against rules", VERDICT, Answer::verdicts)
            .list("unknowns", "what cannot be said yet", UNKNOWN, Answer::unknowns)
            .list("defaults", "every default and assumption used", DEFAULT, Answer::defaults)
            .list("next", "next best readings, best first", NEXT, Answer::next)
            .list(
                    "candidates",
                    "ways that go together, best first; empty for questions that search nothing",
                    CANDIDATE,
                    Answer::candidates)
            .list("rejections", "why others do not", REJECTION, Answer::rejections)
            .list("movements", "how the valves move; empty where nothing tells", MOVEMENT, Answer::movements)
            .list(
                    "approval",
                    "the verdict of the whole, one; empty for questions that do not ask it",
                    APPROVAL,
                    a -> a.ladder().map(LimitLadder::approval).stream().toList())
            .list(
                    "rungs",
                    "every limit, what is in the way first, then weakest first; empty for questions that do not ask it",
                    RUNG,
                    a -> a.ladder().map(LimitLadder::rungs).orElse(List.of()))
            .list(
                    "start",
                    "whether it will start, one; empty for questions that do not ask it",
                    START,
                    a -> a.ladder().map(LimitLadder::start).stream().toList())
            .list(
                    "shaking",
                    "where the shake goes, one; empty for questions that do not ask it",
                    SHAKING,
                    a -> a.shaking().stream().toList())
            .list(
                    "torque",
                    "what torque over what speeds, one; empty for questions that do not ask it",
                    TORQUE,
                    a -> a.torque().stream().toList())
            .list(
                    "runs",
                    "what runs on a dynamometer came to, one; empty for questions that do not ask it",
                    RunsJson.RUNS,
                    a -> a.runs().stream().toList())
            .list(
                    "clearances",
                    "what may touch, the unknown first, then the gravest; empty for questions that do not ask it",
                    CLEARANCE,
                    Answer::clearances);

    private static final JsonDocument<Answer> DOCUMENT = new JsonDocument<>(
            FORMAT,
            "Longthrow answer",
            "What every question about a build answers with, as printed by --json. Numbers are coherent SI.",
            ANSWER);

    private AnswerJson() {}

    /** The document, ended by a line feed. */
    public static String of(Answer answer) {
        return DOCUMENT.of(answer);
    }

    /** The JSON Schema (draft 2020-12) of every document that {@link #of} writes. */
    public static String schema() {
        return DOCUMENT.schema();
    }

    /** The shape with a figure and its interval, which is null where its doubt is unknown. */
    static <T> JsonShape<T> doubted(JsonShape<T> shape, Function<T, Measured> of) {
        return shape.number("value", "best value", t -> of.apply(t).value())
                .numberOrNull(
                        "low",
                        "lower end of the 95 % interval; null when the doubt is unknown",
                        t -> ifKnown(of.apply(t), of.apply(t).low()))
                .numberOrNull(
                        "high",
                        "upper end of the 95 % interval; null when the doubt is unknown",
                        t -> ifKnown(of.apply(t), of.apply(t).high()))
                .numberOrNull(
                        "standard_uncertainty",
                        "combined standard uncertainty; null when the doubt is unknown",
                        t -> ifKnown(of.apply(t), of.apply(t).standardUncertainty()));
    }

    private static double ifKnown(Result result, double number) {
        return ifKnown(result.figure(), number);
    }

    private static double ifKnown(Measured figure, double number) {
        return figure.isUnknown() ? Double.NaN : number;
    }

    private static @Nullable String reason(Result result) {
        return !result.figure().isUnknown()
                ? null
                : "no doubt is known for: "
                        + result.figure().contributions().keySet().stream()
                                .filter(source -> source.kind() == Source.Kind.UNKNOWN)
                                .map(Source::label)
                                .distinct()
                                .collect(Collectors.joining(", "));
    }
}
