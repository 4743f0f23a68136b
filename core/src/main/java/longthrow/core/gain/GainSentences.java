package longthrow.core.gain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.SignedShare;

/** The one home of what is said about gains, dynos, days and trends. Numbers come with their doubt; the verdict comes first. */
public final class GainSentences {
    /** Chance below which something is worth a word. The usual one in twenty. */
    private static final double ODD = 0.05;

    private GainSentences() {}

    static String noBaseline(String baseline) {
        return "no session has the baseline '" + baseline
                + "'; name the setup that the change is held against as its sessions do";
    }

    static String nothingToCompare(String baseline) {
        return "every session has the baseline '" + baseline + "'; there is no change to hold against it";
    }

    static String mixedStandards() {
        return "sessions are corrected by different standards, or some not at all; their figures cannot be compared. Correct all of them by one";
    }

    static String nothingKept(Session session) {
        int pulls = session.runs().size();
        return "session " + session.name() + " has no pull left: "
                + (pulls == 1
                        ? "its only one is warm-up"
                        : "of " + pulls + " the first is warm-up and the others do not count")
                + ". Take more, or leave the session out";
    }

    static String tooFewRuns(int kept, int sessions) {
        return kept + " pulls kept in " + sessions + " sessions leave " + Math.max(0, kept - sessions)
                + " to tell the scatter by; " + Comparison.LEAST_FREEDOM
                + " are the least. Take three pulls a session or more: the first is warm-up and does not count";
    }

    static String noCommonSpeed() {
        return "no speed of the grid is in every kept pull; set aside the short one, or use fewer speeds";
    }

    static String noScatter() {
        return "the kept pulls of each session are alike to the last digit, which no engine does: copied rows, or a display too coarse. Without scatter nothing can be told";
    }

    static String why(Campaign.Rule rule, Run run) {
        return switch (rule) {
            case WARM_UP -> "first pull of its session: warm-up";
            case OWNER -> "set aside: " + run.reason().orElse("");
            case ODD -> run.oddity().orElse("");
            case SLIPPED -> "the clutch slipped: engine and drum did not keep their ratio";
        };
    }

    /** "+2.0 ± 0.6 %". */
    static String percent(double share, double halfWidth) {
        return SignedShare.text(share, halfWidth);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    /** The verdict: real, or not shown, or how many more runs would tell; then by what rule. */
    public static String verdict(Gain gain) {
        Estimate e = gain.overall();
        String figure = figure(gain) + " " + percent(e.gain(), e.halfWidthAnyDrift()) + by(gain);
        Verdict v = gain.verdict();
        String aim = percent(v.aim().gain());
        return switch (v.outcome()) {
            case REAL_GAIN -> real(gain) + "'" + gain.setup() + "' gains, " + figure + ".";
            case REAL_LOSS -> real(gain) + "'" + gain.setup() + "' loses, " + figure + ".";
            case NOT_SHOWN ->
                "Not shown: " + figure + " is no more than scatter and drift make. A gain of " + aim
                        + " or more is ruled out.";
            case TAKE_MORE ->
                "Not shown: " + figure + " may be scatter and drift. Take " + v.pulls() + " more runs in "
                        + v.sessions() + " sessions, '" + gain.setup() + "' and '" + gain.baseline()
                        + "' in turns, the first of each not counted: then it is settled "
                        + ofFive(v.aim().power())
                        + " whether there is a gain or none as large as " + aim + ".";
            case CANNOT_BE_TOLD ->
                "Not shown: " + figure + " may be scatter and drift. It cannot be told this way: even "
                        + Aim.MOST_PULLS + " more runs would not settle a gain of " + aim
                        + ". Make runs repeat better (warmth, clutch, fuel, air), or ask for a larger gain.";
            case BASELINE_NOT_REPEATED ->
                "Not shown: " + figure(gain) + " " + String.format(Locale.ROOT, "%+.1f %%", 100 * e.gain()) + by(gain)
                        + ", but '" + gain.baseline() + "' was not run both before and after '" + gain.setup()
                        + "', so the engine's drift is in it. Put it back and run it again.";
        };
    }

    /** How far it is real: weather that is still in it, and refitting that nothing checks, are said in the first words. */
    private static String real(Gain gain) {
        return "Real"
                + (isRefitUnseen(gain) ? " as far as " + gain.scatter().sessions() + " sessions tell" : "")
                + (gain.standard().isEmpty() ? ", the weather left in" : "")
                + ": ";
    }

    private static boolean isRefitUnseen(Gain gain) {
        return gain.scatter().from() == Scatter.From.RUNS && !(gain.overall().refit() > 0);
    }

    private static String ofFive(double power) {
        return String.format(Locale.ROOT, "in %.0f cases of 100", 100 * power);
    }

    private static String by(Gain gain) {
        return gain.standard().map(s -> " by " + s.label()).orElse(" uncorrected");
    }

    private static String figure(Gain gain) {
        return gain.atSpeeds().isEmpty()
                ? "peak"
                : String.format(
                        Locale.ROOT,
                        "area from %.0f to %.0f rpm",
                        gain.atSpeeds().get(0).speedRpm(),
                        gain.atSpeeds().get(gain.atSpeeds().size() - 1).speedRpm());
    }

    /** What stands behind the verdict, one thing a line: both widths and which decides, drift, scatter, what cannot be proved, standard, other ways of reckoning. */
    public static List<String> grounds(Gain gain) {
        Estimate e = gain.overall();
        List<String> said = new ArrayList<>();
        said.add(
                gain.verdict().outcome() == Verdict.Outcome.BASELINE_NOT_REPEATED
                        ? "By the scatter of runs alone it would be " + percent(e.gain(), e.halfWidth())
                                + " (95 %): what the engine drifted meanwhile comes on top and is not known, so this proves nothing."
                        : "± is 95 %. " + percent(e.gain(), e.halfWidth())
                                + " if the engine drifted on a straight line from pull to pull; "
                                + percent(e.gain(), e.halfWidthAnyDrift())
                                + " if between two baselines it may have stood anywhere from the level of the one to that of the other. The second decides.");
        said.add(drift(gain));
        said.add(scatter(gain.scatter(), gain.overall().baseline()));
        if (isRefitUnseen(gain) && isReal(gain)) {
            said.add("To be sure that taking off and putting on again did not do it, run '" + gain.setup() + "' and '"
                    + gain.baseline()
                    + "' once more: where refitting scatters as much as runs do, one such band in five misses"
                    + " (docs/measurements.md).");
        }
        if (gain.scatter().from() == Scatter.From.SESSIONS) {
            said.add(String.format(
                    Locale.ROOT,
                    "By the scatter of runs alone it would be ± %.1f %%, if refitting scattered nothing. More sessions make it surer, not more runs in a session; each one more that goes back to '%s' counts for all changes.",
                    100 * gain.others().runsAloneHalfWidth(),
                    gain.baseline()));
        }
        if (e.refit() > 0) {
            said.add(String.format(
                    Locale.ROOT,
                    "What taking off and putting on again scatters is known from earlier campaigns and is in the ±: it alone makes ± %.1f %%.",
                    100 * Source.NORMAL_95 * e.refit()));
        }
        if (gain.verdict().tries() > 1) {
            said.add(gain.verdict().tries()
                    + " changes were tried on one baseline, and chance with them: a gain counts as real by Holm's rule only"
                    + " (chance " + percent(gain.verdict().chance()) + ").");
        }
        said.add(gain.standard()
                .map(
                        s -> "All figures corrected by " + s.label()
                                + "; barometer, thermometer and hygrometer are taken to be off alike in every session, so most of that goes out of a gain.")
                .orElse("Nothing is corrected for the weather: what it changed between sessions is in the gain."));
        Gain.Others o = gain.others();
        said.add(String.format(
                Locale.ROOT,
                "Reckoned otherwise: ± %.1f %% with each session's own scatter (Welch); %+.1f %% against the first baseline alone; %+.1f %% uncorrected with every pull, against the first baseline; %+.1f %% corrected with every pull.",
                100 * o.welchHalfWidth(),
                100 * o.againstFirst(),
                100 * o.rawAgainstFirst(),
                100 * o.allPullsCorrected()));
        if (gain.atSpeeds().isEmpty()) {
            said.add(
                    "This is the peak alone. Whether the engine pulls better where it is used only the whole curve tells.");
        }
        return said;
    }

    private static boolean isReal(Gain gain) {
        return gain.verdict().outcome() == Verdict.Outcome.REAL_GAIN
                || gain.verdict().outcome() == Verdict.Outcome.REAL_LOSS;
    }

    private static String drift(Gain gain) {
        Gain.Drift d = gain.drift();
        if (!d.known()) {
            return "No setup was run twice: what the engine drifted meanwhile is not known.";
        }
        if (d.halfWidth() == 0) {
            return "The baseline was run in one place only; the drift is told by what else was run twice.";
        }
        String line = "The baseline drifted by " + percent(d.change(), d.halfWidth())
                + " from its first session to its last.";
        return d.agrees() < ODD
                ? line + " Inside sessions the pulls run another way than that (chance "
                        + String.format(Locale.ROOT, "%.1f %%", 100 * d.agrees())
                        + "): the engine was not settled. Warm it longer, or make sessions shorter and more of them."
                : line;
    }

    private static String scatter(Scatter s, double level) {
        return switch (s.from()) {
            case RUNS ->
                String.format(
                        Locale.ROOT,
                        "Runs scatter by %.2f %% of the baseline (pooled inside sessions, %.0f degrees of freedom). No session checks another: what taking off and putting on again scatters cannot be told from so few, nor whether the drift was a line; an engine that wandered off and came back between the baselines is seen by neither.",
                        100 * s.deviation() / level,
                        s.freedom());
            case RUNS_AND_SESSIONS ->
                String.format(
                        Locale.ROOT,
                        "Runs scatter by %.2f %% of the baseline; sessions of one setup differ no more than runs explain (chance %.0f %%), so both are pooled (%.0f degrees of freedom).",
                        100 * s.deviation() / level,
                        100 * s.refitChance(),
                        s.freedom());
            case SESSIONS ->
                String.format(
                        Locale.ROOT,
                        "Sessions of one setup differ by %.2f %% of the baseline more than runs explain (chance %.0f %%): refitting, or a drift that is no line. Their own scatter is used, with %.0f degree%s of freedom.",
                        100 * s.refit() / level,
                        100 * s.refitChance(),
                        s.freedom(),
                        s.freedom() == 1 ? "" : "s");
        };
    }

    /** Where it gains and where it loses, by the band that holds at every speed at once. */
    public static String shape(Gain gain) {
        if (gain.atSpeeds().isEmpty()) {
            return "Peaks alone: no shape to tell.";
        }
        if (gain.shape().isEmpty()) {
            return "At no speed by itself does it stand out of the band that holds at all speeds at once.";
        }
        List<String> parts = gain.shape().stream().map(GainSentences::stretch).toList();
        String all = String.join(", ", parts);
        return Character.toUpperCase(all.charAt(0)) + all.substring(1)
                + "; elsewhere not shown (band that holds at all speeds at once).";
    }

    private static String stretch(Gain.Stretch s) {
        String at = s.fromRpm() == s.toRpm()
                ? String.format(Locale.ROOT, "at %.0f rpm", s.fromRpm())
                : String.format(Locale.ROOT, "from %.0f to %.0f rpm", s.fromRpm(), s.toRpm());
        return (s.gains() ? "gains " : "loses ") + at;
    }

    /** What a dyno shows beside another. */
    public static String level(LevelFactor f) {
        return String.format(
                Locale.ROOT,
                "%s shows %.3f ± %.3f times what %s shows (%d engine%s, %.1f degrees of freedom, by %s).",
                f.to(),
                f.factor(),
                f.halfWidth(),
                f.from(),
                f.engines(),
                f.engines() == 1 ? "" : "s",
                f.freedom(),
                f.standard().label());
    }

    /** How often an engine was on both. */
    public static String been(LevelFactor.Both both, String from, String to) {
        return "'" + both.name() + "' on " + from + " " + times(both.onFrom().size()) + ", on " + to + " "
                + times(both.onTo().size());
    }

    private static String times(int visits) {
        return visits == 1 ? "on 1 day" : "on " + visits + " days";
    }

    /**
     * Why there is no factor.
     * @param been engines that were on both
     */
    public static String noLevelFactor(String from, String to, List<String> been) {
        return "How " + from + " and " + to
                + " differ cannot be told yet: run one engine on two days or more on each of them, or three engines on both. "
                + (been.isEmpty()
                        ? "No engine was on both with figures that count; one is the same that has the same 'setup'."
                        : "So far: " + String.join("; ", been) + ". Sessions without a date count as one day.");
    }

    /** A setup on another dyno held against the baseline through the factor. */
    public static String across(
            String session, String setup, String baseline, LevelFactor factor, LevelFactor.Ratio r, String of) {
        return "'" + setup + "' on " + factor.from() + " (session " + session + ") against '" + baseline + "' on "
                + factor.to() + ", through what the two show of one engine: "
                + percent(r.ratio() - 1, r.halfWidth()) + " of the " + of
                + ". Weaker than baseline, change, baseline on one dynamometer: the doubt of the factor and of the day is in the ±, and what the engine drifted between is not taken out. No verdict rests on it.";
    }

    /** Why it is not. */
    public static String notAcross(String session, String baseline, String main) {
        return "Session " + session + " is not held against '" + baseline + "' on " + main
                + ": that takes runs of both that count, two or more in one session, and all peaks of power, all of torque, or all curves over like speeds.";
    }

    /** Why two figures are not compared. */
    public static String notCompared(LevelFactor.Figure first, LevelFactor.Figure second) {
        return first.standard() != second.standard()
                ? "Not compared: one is by " + first.standard().label() + ", the other by "
                        + second.standard().label() + ". Correct both by one standard."
                : "Not compared: one is from " + first.dyno() + ", the other from " + second.dyno()
                        + ". Dynos differ in level; run one engine on both first.";
    }

    /**
     * Whether the dyno is what it was.
     * @param date      of the day
     * @param dyno      which
     * @param engine    reference
     * @param dimension of the figures [SI]
     */
    public static String day(
            DayCheck c, String date, String dyno, String engine, Dimension dimension, FigurePrinter printer) {
        String said = String.format(
                Locale.ROOT,
                "%s: %s is %s. The reference engine '%s' showed %s, %.1f %% %s the mean of %d earlier days; by them a day lies at %s, 95 in 100 (by %s)",
                date,
                dyno,
                c.isInside() ? "at its usual level" : "OFF its usual level",
                engine,
                plain(printer, dimension, c.today(), c.halfWidth()),
                100 * Math.abs(c.today() / c.expected() - 1),
                c.today() < c.expected() ? "below" : "above",
                c.days(),
                printer.print(dimension, c.expected(), c.halfWidth()).first().text(),
                c.standard().label());
        return said + ".";
    }

    /** As many digits as beside that doubt, without it. */
    private static String plain(FigurePrinter printer, Dimension dimension, double value, double halfWidth) {
        Figure figure = printer.print(dimension, value, halfWidth).first();
        return figure.value() + " " + figure.unit();
    }

    /** What to do where it is off. */
    public static String dayMend() {
        return "look at barometer, load cell and its zero, clutch, tyre or roller, exhaust gas in the air that the engine draws;"
                + " hold no figure of that day against other days until it is found, and then set the day's check runs aside"
                + " ('aside: why'), so that later days are not checked by them";
    }

    /** Why there is no check. */
    public static String noDayCheck(String date, String dyno, int earlier) {
        int least = Comparison.LEAST_FREEDOM + 1;
        String day = date + ": the day of " + dyno + " is not checked: ";
        return earlier < least
                ? day + least + " earlier days with the reference engine are the least, and there "
                        + (earlier == 0 ? "is none" : earlier == 1 ? "is 1" : "are " + earlier) + "."
                : day + "earlier days are alike to the last digit, so what a day may differ by is not known.";
    }

    /** Why a session of the reference engine tells nothing of its day. */
    public static String noFigureOfADay(boolean isOwnBench, boolean isAirKnown) {
        return !isAirKnown
                ? "it ran the reference engine, but its air is not known whole, so its figures are not corrected and check no day"
                : "it ran the reference engine, but no pull is left to tell the day by: the first is warm-up, and there must be another"
                        + (isOwnBench
                                ? ""
                                : "; logs of another dynamometer are not used, for they would be reckoned with this bench's figures");
    }

    /** Days that are not used. */
    public static String leftOut(List<String> dates) {
        return "Left out, for the reference engine says that the dynamometer was off its level: "
                + String.join(", ", dates) + ".";
    }

    /** Beside the verdict of a change with sessions on days on which the dyno was off. */
    public static String gainOnDaysOff(String setup, List<String> dates, boolean isOneDay) {
        return "Mind: the dynamometer was off its usual level on " + String.join(", ", dates)
                + " by the reference engine. "
                + (isOneDay
                        ? "All sessions of '" + setup
                                + "' and its baseline are of that day: what was off alike goes out of the gain, what moved during the day does not."
                        : "Sessions of '" + setup
                                + "' or its baseline ran then and on other days: what was off stands in the gain. Find it, and run again.");
    }

    /**
     * Whether an engine gains or loses over dates.
     * @param isReference whether it is the reference engine
     */
    public static String trend(Trend t, String dyno, AirStandard standard, boolean isReference) {
        String over = String.format(
                Locale.ROOT,
                "over %.0f days and %d dates on %s, which is %s a month of 30 days (by %s).",
                t.span(),
                t.dates(),
                dyno,
                percent(t.perDay() * MONTH, t.halfWidth() * MONTH),
                standard.label());
        double change = t.perDay() * t.span();
        double halfWidth = t.halfWidth() * t.span();
        return t.isShown()
                ? "'" + t.engine() + "' has " + (change > 0 ? "gained " : "lost ")
                        + percent(Math.abs(change), halfWidth).substring(1) + " " + over
                        + (isReference
                                ? " The dynamometer may have moved as well as the engine."
                                : " The dynamometer may have moved as well as the engine: a reference engine beside it tells which.")
                : "'" + t.engine() + "': no trend shown, " + percent(change, halfWidth) + " " + over;
    }

    /** Days by which a slope is told. */
    private static final double MONTH = 30;

    /** Why there is no trend. */
    public static String noTrend(String engine, String dyno, int dates) {
        int least = Comparison.LEAST_FREEDOM + 2;
        return "'" + engine + "' on " + dyno + ": no trend can be told from "
                + (dates < least
                        ? dates + " dates; " + least + " are the least."
                        : dates + " dates that lie on one line to the last digit, which no engine does.");
    }

    /** Pulls that do not count, each with its reason. */
    public static String dropped(List<Campaign.Dropped> dropped) {
        return dropped.stream()
                .map(d -> d.session() + " " + d.run() + ": " + d.why())
                .collect(Collectors.joining("; "));
    }
}
