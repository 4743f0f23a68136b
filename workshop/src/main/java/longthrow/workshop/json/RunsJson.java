package longthrow.workshop.json;

import java.util.Arrays;
import longthrow.core.answer.DynoRuns;

/** What runs on a dynamometer came to, as JSON. */
final class RunsJson {
    private static final JsonShape<DynoRuns.Point> POINT = new JsonShape<DynoRuns.Point>()
            .number("speed", "of the crank, in rad/s", DynoRuns.Point::speed)
            .number("value", "in N m, W, or the unit that stands beside", DynoRuns.Point::value)
            .numberOrNull("half", "95 % half-width; null where it is not known", DynoRuns.Point::half);

    private static final JsonShape<DynoRuns.Session> SESSION = new JsonShape<DynoRuns.Session>()
            .text("name", "each once", DynoRuns.Session::name)
            .text("setup", "what was on the engine; of a check the reference engine", DynoRuns.Session::setup)
            .text("date", "as its owner wrote it; empty where not said", DynoRuns.Session::date)
            .text("who", "ran it; empty where not said", DynoRuns.Session::who)
            .text("dyno", "on which dynamometer; empty where it has no name", DynoRuns.Session::dyno)
            .truth("check", "whether it ran a reference engine to see the dynamometer's level", DynoRuns.Session::check)
            .list(
                    "factor",
                    "of the weather's correction by the session's air, one; empty where it corrects nothing",
                    AnswerJson.DOUBTED,
                    s -> s.factor().stream().toList());

    private static final JsonShape<DynoRuns.Peak> PEAK = AnswerJson.doubted(new JsonShape<>(), DynoRuns.Peak::figure)
            .numberOrNull("speed", "of the crank, in rad/s; null where it is not known", DynoRuns.Peak::speed)
            .numberOrNull(
                    "low", "the highest place lies above this, in rad/s; null where not known", DynoRuns.Peak::low)
            .numberOrNull("high", "and below this, in rad/s; null where not known", DynoRuns.Peak::high)
            .text(
                    "shown",
                    "whether it is a peak, in words; empty where the run is its peak alone",
                    DynoRuns.Peak::shown);

    private static final JsonShape<DynoRuns.Beside> BESIDE = new JsonShape<DynoRuns.Beside>()
            .text("name", "for people", DynoRuns.Beside::name)
            .text("unit", "coherent SI unit of the values", b -> b.dimension().siSymbol())
            .list("points", "by rising speed", POINT, DynoRuns.Beside::points);

    private static final JsonShape<DynoRuns.Run> RUN = new JsonShape<DynoRuns.Run>()
            .text("session", "in which", DynoRuns.Run::session)
            .text("setup", "that was on", DynoRuns.Run::setup)
            .text("name", "of the run, or its number", DynoRuns.Run::name)
            .truth("counts", "whether it is in means and gains", DynoRuns.Run::counts)
            .text("why", "it does not count; empty where it does", DynoRuns.Run::why)
            .list(
                    "factor",
                    "of the weather's correction, one; empty where nothing was corrected",
                    AnswerJson.DOUBTED,
                    r -> r.factor().stream().toList())
            .list(
                    "torque",
                    "highest, corrected, in N m, one; empty where it is not told",
                    PEAK,
                    r -> r.torque().stream().toList())
            .list(
                    "power",
                    "highest, corrected, in W, one; empty where it is not told",
                    PEAK,
                    r -> r.power().stream().toList())
            .list(
                    "curve",
                    "corrected torque by rising speed, in N m; empty for a peak alone",
                    POINT,
                    DynoRuns.Run::curve)
            .list("beside", "what else was logged, and fuel for the work done, as read", BESIDE, DynoRuns.Run::beside);

    private static final JsonShape<DynoRuns.Setup> SETUP = new JsonShape<DynoRuns.Setup>()
            .text("name", "of the setup", DynoRuns.Setup::name)
            .number("runs", "that count", s -> s.runs())
            .list("torque", "mean of its runs, with the band of the mean, in N m", POINT, DynoRuns.Setup::torque);

    private static final JsonShape<DynoRuns.GainPoint> GAIN_POINT = new JsonShape<DynoRuns.GainPoint>()
            .number("speed", "of the crank, in rad/s", DynoRuns.GainPoint::speed)
            .number("baseline", "corrected level there, in N m", DynoRuns.GainPoint::baseline)
            .number("gain", "share of it", DynoRuns.GainPoint::gain)
            .number("pointwise", "95 % half-width at this speed alone", DynoRuns.GainPoint::pointwise)
            .number(
                    "every_speed",
                    "half-width of the band that holds at every speed at once with 95 %",
                    DynoRuns.GainPoint::everySpeed);

    private static final JsonShape<DynoRuns.Way> WAY = new JsonShape<DynoRuns.Way>()
            .text("how", "it was reckoned", DynoRuns.Way::how)
            .numberOrNull("gain", "share of the baseline; null where it cannot be told so", DynoRuns.Way::gain)
            .numberOrNull("half", "95 % half-width; null where that way has none", DynoRuns.Way::half);

    private static final JsonShape<DynoRuns.Gain> GAIN = new JsonShape<DynoRuns.Gain>()
            .text("setup", "the change", DynoRuns.Gain::setup)
            .text("baseline", "against what", DynoRuns.Gain::baseline)
            .word(
                    "verdict",
                    "whether it did anything",
                    JsonShape.words(DynoRuns.Verdict.values(), DynoRuns.Verdict::key),
                    g -> g.verdict().key())
            .text("of", "what the figure is of: area under the curve, or peak", DynoRuns.Gain::of)
            .number("gain", "share of the baseline", DynoRuns.Gain::gain)
            .number("half", "95 % half-width if drift was a straight line", DynoRuns.Gain::half)
            .number(
                    "any_drift",
                    "95 % half-width whatever shape the drift had; this one decides",
                    DynoRuns.Gain::anyDrift)
            .texts("sentences", "what it comes to, in plain words", DynoRuns.Gain::sentences)
            .list("points", "gain at each speed; empty for peaks", GAIN_POINT, DynoRuns.Gain::points)
            .list("others", "the same by weaker ways, beside it", WAY, DynoRuns.Gain::others)
            .number("more_pulls", "further pulls that would tell; 0 where none are asked for", g -> g.morePulls());

    private static final JsonShape<DynoRuns.Column> COLUMN = new JsonShape<DynoRuns.Column>()
            .text("header", "as it stands in the file, or its number", DynoRuns.Column::header)
            .text("meaning", "that it is taken for", DynoRuns.Column::meaning)
            .text("unit", "that it is taken in", DynoRuns.Column::unit)
            .text("sure", "how sure, and why", DynoRuns.Column::sure);

    private static final JsonShape<DynoRuns.Log> LOG = new JsonShape<DynoRuns.Log>()
            .text("file", "its name", DynoRuns.Log::file)
            .number("rows", "in it", l -> l.rows())
            .number("kept", "that were understood; the others are listed", l -> l.kept())
            .list("columns", "as recognised, for its owner to confirm", COLUMN, DynoRuns.Log::columns)
            .texts("listed", "rows that were not kept, and what was found in the others", DynoRuns.Log::listed);

    private static final JsonShape<DynoRuns.Day> DAY = new JsonShape<DynoRuns.Day>()
            .text("dyno", "which", DynoRuns.Day::dyno)
            .text("engine", "reference", DynoRuns.Day::engine)
            .text("date", "year-month-day", DynoRuns.Day::date)
            .text("of", "what the figure is of", DynoRuns.Day::of)
            .text("unit", "coherent SI unit of the figures", d -> d.dimension().siSymbol())
            .number("figure", "mean of the kept runs, corrected", DynoRuns.Day::figure)
            .number("earlier", "days before it", d -> d.earlier())
            .numberOrNull("expected", "mean of theirs; null where the day is not checked", DynoRuns.Day::expected)
            .numberOrNull(
                    "half",
                    "a further day lies within this of it with 95 %; null where the day is not checked",
                    DynoRuns.Day::half)
            .word(
                    "standing",
                    "of the dynamometer on that day",
                    JsonShape.words(DynoRuns.Standing.values(), DynoRuns.Standing::key),
                    d -> d.standing().key())
            .text("sentence", "in plain words", DynoRuns.Day::sentence);

    private static final JsonShape<DynoRuns.Across> ACROSS = new JsonShape<DynoRuns.Across>()
            .text("session", "on the other dynamometer", DynoRuns.Across::session)
            .text("setup", "that was on", DynoRuns.Across::setup)
            .text("baseline", "against what", DynoRuns.Across::baseline)
            .text("of", "what the ratio is of; empty where there is none", DynoRuns.Across::of)
            .numberOrNull(
                    "ratio", "of the session to the baseline; null where it cannot be told", DynoRuns.Across::ratio)
            .numberOrNull("half", "95 % half-width; null likewise", DynoRuns.Across::half)
            .text("sentence", "in plain words", DynoRuns.Across::sentence);

    private static final JsonShape<DynoRuns.Level> LEVEL = new JsonShape<DynoRuns.Level>()
            .text("from", "another dynamometer", DynoRuns.Level::from)
            .text("to", "the one that gains are told on", DynoRuns.Level::to)
            .texts("been", "engines that were on both, and how often", DynoRuns.Level::been)
            .numberOrNull(
                    "factor",
                    "figure on the other times this is the figure here; null where it cannot be told",
                    DynoRuns.Level::factor)
            .numberOrNull("half", "95 % half-width; null likewise", DynoRuns.Level::half)
            .numberOrNull("freedom", "degrees of freedom; null likewise", DynoRuns.Level::freedom)
            .number("engines", "that it is from; 0 where it cannot be told", l -> l.engines())
            .text("sentence", "in plain words", DynoRuns.Level::sentence)
            .list(
                    "across",
                    "sessions held against the baseline through it; no verdict rests on them",
                    ACROSS,
                    DynoRuns.Level::across);

    private static final JsonShape<DynoRuns.Dated> DATED = new JsonShape<DynoRuns.Dated>()
            .text("date", "year-month-day", DynoRuns.Dated::date)
            .number("day", "days from the first date", DynoRuns.Dated::day)
            .number("figure", "mean of the kept runs, corrected", DynoRuns.Dated::figure);

    private static final JsonShape<DynoRuns.Trend> TREND = new JsonShape<DynoRuns.Trend>()
            .text("engine", "setup or reference engine", DynoRuns.Trend::engine)
            .text("dyno", "which", DynoRuns.Trend::dyno)
            .text("of", "what the figures are of", DynoRuns.Trend::of)
            .text("unit", "coherent SI unit of the figures", t -> t.dimension().siSymbol())
            .list("dates", "in their order", DATED, DynoRuns.Trend::dates)
            .numberOrNull(
                    "per_day",
                    "slope a day, as share of the mean; null where it cannot be told",
                    DynoRuns.Trend::perDay)
            .numberOrNull("half", "95 % half-width of it; null likewise", DynoRuns.Trend::half)
            .truth("shown", "whether it stands out of its doubt", DynoRuns.Trend::shown)
            .text("sentence", "in plain words", DynoRuns.Trend::sentence);

    static final JsonShape<DynoRuns> RUNS = new JsonShape<DynoRuns>()
            .text("standard", "that every figure is corrected to; empty where figures are as read", DynoRuns::standard)
            .text("place", "where torque and power are told", DynoRuns::place)
            .text("bench", "by what they were read, and its name where it has one", DynoRuns::bench)
            .text("engine", "file with the build they belong to; empty where none is named", DynoRuns::engine)
            .word(
                    "figure",
                    "what runs tell",
                    Arrays.asList("torque", "power"),
                    r -> r.figure().plainName())
            .texts("sentences", "what it comes to, the most important first", DynoRuns::sentences)
            .list("sessions", "in their order", SESSION, DynoRuns::sessions)
            .list("runs", "in their order", RUN, DynoRuns::runs)
            .list(
                    "setups",
                    "mean curves, the baseline first; empty where runs are peaks alone",
                    SETUP,
                    DynoRuns::setups)
            .list("gains", "one for each change", GAIN, DynoRuns::gains)
            .list("logs", "files of loggers, and what became of their rows", LOG, DynoRuns::logs)
            .texts("cautions", "before an engine is run on such a bench", DynoRuns::cautions)
            .list("days", "of a reference engine, by dynamometer and date", DAY, DynoRuns::days)
            .list("levels", "of other dynamometers; in no verdict", LEVEL, DynoRuns::levels)
            .list("trends", "of baseline and reference engines over dates", TREND, DynoRuns::trends);

    private RunsJson() {}
}
