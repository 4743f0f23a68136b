package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.gain.Aim;
import longthrow.core.gain.AirCorrection;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.Comparison;
import longthrow.core.gain.Estimate;
import longthrow.core.gain.Gain;
import longthrow.core.gain.GainSentences;
import longthrow.core.gain.Run;
import longthrow.core.gain.Session;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Units;

/**
 * The question {@code dyno}: what runs come to in one air, and whether a change did anything. From a sheet of runs to an answer; files of loggers are handed in as they were read ({@link Logged}).
 */
public final class Dyno {
    /** Name of the question. */
    public static final String QUESTION = "dyno";

    private final DynoSheet sheet;
    private final Logs logs;
    private final Weather weather = new Weather();
    private final List<Finding> findings = new ArrayList<>();
    private final Set<DefaultUsed> defaults = new LinkedHashSet<>();
    private final List<String> noAir = new ArrayList<>();
    private final List<String> noFigures = new ArrayList<>();
    private final List<String> elsewhere = new ArrayList<>();

    private Dyno(DynoSheet sheet, Logs logs) {
        this.sheet = sheet;
        this.logs = logs;
    }

    /** What to mind before an engine is run on any bench, for where it is not known yet which. */
    public static List<String> cautions() {
        return Stream.of(BenchKind.INERTIA_DRUM, BenchKind.ROAD)
                .flatMap(kind -> DynoCautions.of(kind).stream())
                .distinct()
                .toList();
    }

    /**
     * What the runs of a sheet come to.
     * @param logs its loggers' files
     */
    public static Answer of(DynoSheet sheet, Logs logs) {
        return new Dyno(sheet, logs).answer();
    }

    private Answer answer() {
        Reading reading = new Reading(sheet, logs, findings, defaults);
        List<Reading.Ran> ran = reading.all();
        Dimension figure = reading.figure();
        List<Reading.Ran> told = reading.alike();
        GridOfRuns grid = new GridOfRuns(sheet, reading, findings);
        List<Session> sessions = sessions(told, grid);
        String baseline = sheet.baseline()
                .orElseGet(() -> sheet.sessions().stream()
                        .filter(s -> !s.check())
                        .map(DynoSheet.Session::setup)
                        .findFirst()
                        .orElse(""));
        List<DynoRuns.Gain> gains = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        List<Campaign.Dropped> dropped = new ArrayList<>();
        List<DynoRuns.Setup> setups = new ArrayList<>();
        Mistakes mistakes = Mistakes.in(sheet, weather);
        findings.addAll(mistakes.found());
        if (!sessions.isEmpty() && (grid.isPeaks() || !grid.rpm().isEmpty())) {
            Campaign campaign = new Campaign(baseline, grid.rpm(), sessions);
            Comparison comparison = Comparison.of(campaign, Aim.USUAL);
            dropped.addAll(comparison.dropped());
            Optional<String> narrow = new SpeedsLeftOut(campaign, comparison).told(findings);
            if (narrow.isEmpty()) {
                Standing standing = new Standing(sheet, sessions, mistakes.doubts());
                comparison.gains().forEach(g -> gains.add(standing.of(gain(g, grid), findings)));
                gains.forEach(g -> sentences.add(g.sentences().get(0)));
                HandPicked picked = new HandPicked(campaign, comparison);
                sentences.addAll(picked.turns() ? 0 : sentences.size(), picked.sentences());
            }
            sentences.addAll(
                    comparison.troubles().isEmpty() || leftOut().isEmpty()
                            ? comparison.troubles()
                            : List.of(leftOut()));
            narrow.ifPresent(sentences::add);
            setups.addAll(MeanCurves.of(campaign));
        }
        Levels levels = new Levels(sheet, main(), baseline, ran, weather, findings);
        gains.replaceAll(g -> g.withBeside(levels.besideGain(g.setup())));
        gains.forEach(g -> levels.besideGain(g.setup()).stream()
                .filter(s -> !sentences.contains(s))
                .forEach(sentences::add));
        if (sentences.isEmpty()) {
            sentences.add(nothingHeld(told, sessions, ran));
        }
        beyond(sessions, ran);
        defaults.addAll(weather.taken());
        DynoRuns runs = new DynoRuns(
                standard(),
                reading.place(),
                reading.where(),
                bench(),
                sheet.engine().orElse(""),
                figure,
                sentences,
                sheet.sessions().stream().map(this::session).toList(),
                ran.stream()
                        .map(r -> run(r, grid, why(r, reading, told, dropped, sessions)))
                        .toList(),
                setups,
                gains,
                reading.logs(),
                DynoCautions.of(sheet.bench().kind()),
                levels.days(),
                levels.levels(),
                levels.trends());
        return new Answer(
                        QUESTION,
                        sheet.name(),
                        sheet.invented(),
                        sheet.units(),
                        List.of(),
                        List.of(),
                        findings,
                        List.of(),
                        List.of(),
                        List.copyOf(defaults),
                        List.of())
                .withRuns(runs);
    }

    private String standard() {
        return sheet.standard().map(s -> s.label()).orElse("");
    }

    private String bench() {
        DynoSheet.Bench bench = sheet.bench();
        return bench.kind().meaning() + (bench.name().isEmpty() ? "" : ", " + bench.name());
    }

    private DynoRuns.Session session(DynoSheet.Session session) {
        return new DynoRuns.Session(
                session.name(),
                session.setup(),
                session.date(),
                session.who(),
                dyno(session),
                session.check(),
                weather.factor(session.air(), sheet.standard()).map(AirCorrection::factor));
    }

    private String nothingHeld(List<Reading.Ran> told, List<Session> sessions, List<Reading.Ran> ran) {
        String why = told.isEmpty()
                ? untold(ran)
                        + "runs with the old setup, then with the new one, then with the old one again tell a gain"
                : sessions.isEmpty()
                        ? "the air of no session is known whole, and without it nothing can be corrected to "
                                + standard()
                        : "no speed is used";
        return "No run is held against another: " + why + ".";
    }

    private static String untold(List<Reading.Ran> ran) {
        List<String> troubles = ran.stream()
                .map(Reading.Ran::trouble)
                .filter(t -> !t.isEmpty())
                .distinct()
                .toList();
        return troubles.isEmpty()
                ? "no run has figures; "
                : "no run has figures, because " + troubles.get(0)
                        + (troubles.size() > 1 ? " (and for other runs other reasons, told there)" : "") + "; ";
    }

    /** Why nothing is compared where whole sessions are left out; empty where none is. */
    private String leftOut() {
        List<String> why = new ArrayList<>();
        if (!noAir.isEmpty()) {
            why.add("the air of " + named(noAir) + " is not known whole, so that nothing there can be corrected to "
                    + standard() + "; write pressure, temperature and humidity");
        }
        if (!elsewhere.isEmpty()) {
            why.add(named(elsewhere) + " ran on another dynamometer");
        }
        if (!noFigures.isEmpty()) {
            why.add("no run of " + named(noFigures) + " has figures");
        }
        return why.isEmpty()
                ? ""
                : "No run is held against another: " + String.join("; ", why)
                        + ". What is left has nothing to compare.";
    }

    private static String named(List<String> sessions) {
        return (sessions.size() == 1 ? "session " : "sessions ") + String.join(", ", sessions);
    }

    // ---- sessions for the comparison

    private List<Session> sessions(List<Reading.Ran> told, GridOfRuns grid) {
        List<Session> sessions = new ArrayList<>();
        for (DynoSheet.Session session : sheet.sessions()) {
            List<Reading.Ran> own = told.stream()
                    .filter(r -> r.session().name().equals(session.name()))
                    .toList();
            if (session.check()) {
                continue;
            }
            if (own.isEmpty()) {
                noFigures.add(session.name());
                continue;
            }
            if (isElsewhere(session)) {
                elsewhere.add(session.name());
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        "session " + session.name(),
                        "it ran on " + Levels.named(dyno(session)) + " and not on " + Levels.named(main())
                                + ": two dynamometers differ by 5 to 15 % (common practice, no source), so no gain has"
                                + " anything of it",
                        "run old and new setup on one dynamometer, the old one before and after"));
                continue;
            }
            Optional<AirCorrection> air = weather.factor(session.air(), sheet.standard());
            if (air.isEmpty() && sheet.standard().isPresent()) {
                noAir.add(session.name());
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        "session " + session.name(),
                        "pressure, temperature and humidity of its air are not all known, so it cannot be corrected to "
                                + standard() + " and nothing is held against it",
                        "write all three of 'air', read at the bench at that time"));
                continue;
            }
            List<Run> runs =
                    new ArrayList<>(own.stream().map(r -> entered(r, grid, air)).toList());
            if (!Reading.isFirst(own.get(0))) {
                // the first pull warms up, whether its figures can be held beside the others or not
                double[] nothing = new double[Math.max(1, grid.rpm().size())];
                java.util.Arrays.fill(nothing, Double.NaN);
                runs.add(0, Run.curve(firstOf(session), nothing));
            }
            sessions.add(new Session(session.name(), session.setup(), air, new Odd(session, findings).without(runs)));
        }
        return sessions;
    }

    private static String firstOf(DynoSheet.Session session) {
        String name = session.pulls().get(0).name();
        return name.isEmpty() ? "1" : name;
    }

    private String dyno(DynoSheet.Session session) {
        return Visits.dyno(sheet, session);
    }

    /** That of the first session that is compared; the bench's where there is none. */
    private String main() {
        return sheet.sessions().stream()
                .filter(s -> !s.check())
                .findFirst()
                .map(this::dyno)
                .orElse(sheet.bench().name());
    }

    private boolean isElsewhere(DynoSheet.Session session) {
        return !dyno(session).equals(main());
    }

    private Run entered(Reading.Ran ran, GridOfRuns grid, Optional<AirCorrection> air) {
        // a run whose air was read again counts with its own factor
        double own = factor(ran)
                .map(f -> f.factor().value() / air.map(s -> s.factor().value()).orElse(1.0))
                .orElse(1.0);
        double[] values = grid.on(ran);
        for (int i = 0; i < values.length; i++) {
            values[i] *= own;
        }
        Run run = Run.curve(ran.name(), values);
        if (ran.slipped()) {
            run = run.slipped();
        }
        return ran.aside().isEmpty() ? run : run.setAside(ran.aside());
    }

    /** The weather's factor of a run, by its own air as far as that was read. */
    private Optional<AirCorrection> factor(Reading.Ran ran) {
        return weather.factor(ran.pull().airIn(ran.session()), sheet.standard());
    }

    private void beyond(List<Session> sessions, List<Reading.Ran> ran) {
        for (Session session : sessions) {
            session.air().ifPresent(a -> beyond("session " + session.name(), a));
        }
        ran.stream()
                .filter(r -> r.pull().air().isPresent())
                .forEach(r -> factor(r)
                        .ifPresent(a ->
                                beyond("run " + r.name() + " of " + r.session().name(), a)));
    }

    private void beyond(String where, AirCorrection air) {
        if (!air.isWithin()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    where,
                    String.join("; ", air.beyond()),
                    "the figures are given all the same; do not print them as " + standard()
                            + ", and run again in milder weather"));
        }
    }

    // ---- laid out

    /** Why a run does not count; empty where it does. */
    private String why(
            Reading.Ran ran,
            Reading reading,
            List<Reading.Ran> told,
            List<Campaign.Dropped> dropped,
            List<Session> sessions) {
        Optional<String> rule = dropped.stream()
                .filter(d -> d.session().equals(ran.session().name()) && d.run().equals(ran.name()))
                .map(Campaign.Dropped::why)
                .findFirst();
        if (rule.isPresent()) {
            return rule.get() + (isSlip(ran, dropped) ? "; if it did not, write 'keep: [clutch_slip]' at the run" : "");
        }
        if (ran.session().check()) {
            return "run of the reference engine";
        }
        if (!ran.aside().isEmpty()) {
            return "set aside: " + ran.aside();
        }
        if (ran.figures().isEmpty()) {
            return ran.trouble();
        }
        if (isElsewhere(ran.session())) {
            return "run on another dynamometer, " + dyno(ran.session());
        }
        if (!told.contains(ran)) {
            return reading.unlike(ran);
        }
        return sessions.stream().anyMatch(s -> s.name().equals(ran.session().name())) ? "" : DynoRuns.UNHELD;
    }

    private static boolean isSlip(Reading.Ran ran, List<Campaign.Dropped> dropped) {
        return dropped.stream()
                .anyMatch(d -> d.session().equals(ran.session().name())
                        && d.run().equals(ran.name())
                        && d.rule() == Campaign.Rule.SLIPPED);
    }

    private DynoRuns.Run run(Reading.Ran ran, GridOfRuns grid, String why) {
        Optional<Measured> factor = factor(ran).map(AirCorrection::factor);
        return new DynoRuns.Run(
                ran.session().name(),
                ran.session().setup(),
                ran.name(),
                why.isEmpty(),
                why,
                factor,
                // what a slipping clutch lets through is no power of the engine's: not told, not even aside
                ran.slipped() ? Optional.empty() : peak(ran, Dimension.TORQUE, factor),
                ran.slipped() ? Optional.empty() : peak(ran, Dimension.POWER, factor),
                ran.slipped() ? List.of() : points(ran, grid, factor),
                ran.slipped()
                        ? List.of()
                        : ran.figures().map(RunFigures::beside).orElse(List.of()));
    }

    private static Optional<DynoRuns.Peak> peak(Reading.Ran ran, Dimension dimension, Optional<Measured> factor) {
        return ran.figures()
                .flatMap(f -> f.peak(dimension))
                .map(p -> factor.map(by -> Times.of(p, by)).orElse(p));
    }

    private static List<DynoRuns.Point> points(Reading.Ran ran, GridOfRuns grid, Optional<Measured> factor) {
        List<DynoRuns.Point> points = new ArrayList<>();
        double by = factor.map(Measured::value).orElse(1.0);
        ran.figures()
                .filter(RunFigures::isCurve)
                .ifPresent(f -> grid.rpm().forEach(rpm -> {
                    double speed = Units.RPM.toSi(rpm);
                    double torque = f.torque(speed);
                    if (!Double.isNaN(torque)) {
                        points.add(new DynoRuns.Point(speed, by * torque, by * f.half(speed)));
                    }
                }));
        return points;
    }

    private static DynoRuns.Gain gain(Gain g, GridOfRuns grid) {
        Estimate e = g.overall();
        List<String> sentences = new ArrayList<>();
        sentences.add(GainSentences.verdict(g));
        sentences.addAll(GainSentences.grounds(g));
        if (!g.atSpeeds().isEmpty()) {
            sentences.add(GainSentences.shape(g));
        }
        Gain.Others o = g.others();
        return new DynoRuns.Gain(
                g.setup(),
                g.baseline(),
                DynoRuns.Verdict.valueOf(g.verdict().outcome().name()),
                grid.isPeaks() ? "the peak" : "the area under the curve over the speeds used",
                e.gain(),
                e.halfWidth(),
                e.halfWidthAnyDrift(),
                sentences,
                g.atSpeeds().stream()
                        .map(p -> new DynoRuns.GainPoint(
                                Units.RPM.toSi(p.speedRpm()),
                                p.baseline(),
                                p.gain(),
                                p.halfWidthAnyDrift(),
                                p.halfWidthEverySpeedAnyDrift()))
                        .toList(),
                List.of(
                        new DynoRuns.Way(
                                "drift a straight line, scatter of all sessions pooled", e.gain(), e.halfWidth()),
                        new DynoRuns.Way(
                                "drift a straight line, each session's own scatter (Welch)",
                                e.gain(),
                                o.welchHalfWidth()),
                        new DynoRuns.Way("drift of any shape", e.gain(), e.halfWidthAnyDrift()),
                        new DynoRuns.Way(
                                "against the first baseline session alone: what drifted is in it",
                                o.againstFirst(),
                                Double.NaN),
                        new DynoRuns.Way(
                                "as read, warm-up pulls too, against the first baseline session",
                                o.rawAgainstFirst(),
                                Double.NaN),
                        new DynoRuns.Way(
                                "corrected, warm-up pulls too, drift a straight line",
                                o.allPullsCorrected(),
                                Double.NaN)),
                g.verdict().pulls());
    }
}
