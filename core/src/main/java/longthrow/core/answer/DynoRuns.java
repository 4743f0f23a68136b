package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;

/**
 * What runs on a dynamometer came to: each run, the mean of each setup with its band, and what each change did.
 * @param standard  name of the standard that every figure is corrected to; empty where figures are as read
 * @param place     where torque and power are told: at the crank, the drum, the brake, the wheel
 * @param where     the same, for what is reckoned with it
 * @param bench     by what they were read, and its name where it has one
 * @param engine    file with the build they belong to, as the sheet names it; empty where it names none
 * @param figure    of a curve or peak: torque or power
 * @param sentences what it comes to, in plain words, the most important first
 * @param sessions  in their order
 * @param runs      in their order
 * @param setups    mean curves, the baseline first; empty where runs are peaks alone
 * @param gains     one for each change, in the order in which they first came
 * @param logs      files of loggers, and what became of their rows
 * @param cautions  before an engine is run on such a bench
 * @param days      of a reference engine, by dynamometer and date
 * @param levels    of other dynamometers beside the one that gains are told on
 * @param trends    of baseline and reference engines over dates
 */
public record DynoRuns(
        String standard,
        String place,
        Where where,
        String bench,
        String engine,
        Dimension figure,
        List<String> sentences,
        List<Session> sessions,
        List<Run> runs,
        List<Setup> setups,
        List<Gain> gains,
        List<Log> logs,
        List<String> cautions,
        List<Day> days,
        List<Level> levels,
        List<Trend> trends) {
    public DynoRuns {
        sentences = List.copyOf(sentences);
        sessions = List.copyOf(sessions);
        runs = List.copyOf(runs);
        setups = List.copyOf(setups);
        gains = List.copyOf(gains);
        logs = List.copyOf(logs);
        cautions = List.copyOf(cautions);
        days = List.copyOf(days);
        levels = List.copyOf(levels);
        trends = List.copyOf(trends);
    }

    /** Where torque is told, as far as it bears on holding it against what an engine makes. */
    public enum Where {
        /** At the crankshaft. */
        CRANK,
        /** Behind chain, belt, gears or tyre, counted at the speed of the crank; what they take is not known. */
        BEHIND_DRIVE,
        /** The same, and the speed of the crank is not known. */
        OWN_SPEED,
        /** The dynamometer told it, and nobody says of what. */
        NOT_SAID
    }

    /** Why a run does not count that has nothing against it but that its air is not known whole. */
    public static final String UNHELD = "nothing to hold it against";

    /**
     * Runs one after the other with nothing changed between them.
     * @param name   each once
     * @param setup  what was on the engine; of a check the reference engine
     * @param date   as its owner wrote it; empty where not said
     * @param who    ran it; empty where not said
     * @param dyno   by its name; empty where it has none
     * @param check  whether it ran a reference engine to see the dynamometer's level
     * @param factor of the weather's correction, by the session's own air; empty where nothing is corrected by it
     */
    public record Session(
            String name, String setup, String date, String who, String dyno, boolean check, Optional<Measured> factor) {
        /** What is known of it besides its name and its air, for people. */
        public String words() {
            return Stream.of(
                            (check ? "reference engine " : "") + setup,
                            date,
                            who.isEmpty() ? "" : "run by " + who,
                            dyno.isEmpty() ? "" : "on " + dyno)
                    .filter(said -> !said.isEmpty())
                    .collect(Collectors.joining(", "));
        }
    }

    /**
     * One run.
     * @param session in which
     * @param setup   that was on
     * @param name    of the run, or its number
     * @param counts  whether it is in means and gains
     * @param why     it does not; empty where it does
     * @param factor  of the weather's correction; empty where nothing was corrected
     * @param torque  highest, corrected; empty where the run does not tell it
     * @param power   highest, corrected; likewise
     * @param curve   by rising speed, as used; empty for a peak alone
     * @param beside  what else was logged and what follows from it, by speed: exhaust temperature, lambda, fuel for the work
     */
    public record Run(
            String session,
            String setup,
            String name,
            boolean counts,
            String why,
            Optional<Measured> factor,
            Optional<Peak> torque,
            Optional<Peak> power,
            List<Point> curve,
            List<Beside> beside) {
        public Run {
            curve = List.copyOf(curve);
            beside = List.copyOf(beside);
        }
    }

    /**
     * What stands beside the torque.
     * @param name      for people
     * @param dimension of its values
     * @param points    by rising speed, with what its scatter makes doubtful [SI]
     */
    public record Beside(String name, Dimension dimension, List<Point> points) {
        public Beside {
            points = List.copyOf(points);
        }

        /** Nearest to a speed; empty where there is none. */
        public Optional<Point> nearest(double speed) {
            return points.stream().min(java.util.Comparator.comparingDouble(p -> Math.abs(p.speed() - speed)));
        }
    }

    /**
     * A highest place.
     * @param figure with its doubt [N m or W]
     * @param speed  where [rad/s]; NaN where it is not known
     * @param low    the highest place lies between this, with 95 % [rad/s]
     * @param high   and this
     * @param shown  whether the curve is shown to fall on both sides; else what it is instead, in words
     */
    public record Peak(Measured figure, double speed, double low, double high, String shown) {}

    /**
     * A figure at a speed.
     * @param speed of the crank [rad/s]
     * @param value [N m or W]
     * @param half  95 % half-width; NaN where it is not known
     */
    public record Point(double speed, double value, double half) {}

    /**
     * The mean of one setup's runs.
     * @param name    of the setup
     * @param runs    that count
     * @param torque  mean, with the 95 % band of the mean by the scatter of runs
     */
    public record Setup(String name, int runs, List<Point> torque) {
        public Setup {
            torque = List.copyOf(torque);
        }
    }

    /** Whether a change did anything, in the order in which it is said. */
    public enum Verdict {
        REAL_GAIN("a real gain"),
        REAL_LOSS("a real loss"),
        NOT_SHOWN("not shown"),
        TAKE_MORE("take more runs"),
        CANNOT_BE_TOLD("cannot be told this way"),
        BASELINE_NOT_REPEATED("the baseline was not run again"),
        NOT_PROVED("not proved: see why");

        private final String label;

        Verdict(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * What one change did.
     * @param setup    the change
     * @param baseline against what
     * @param verdict  on the whole
     * @param of       what the overall figure is of: area under the curve over the speeds used, or peak
     * @param gain     share of the baseline
     * @param half     95 % half-width if drift was a straight line
     * @param anyDrift 95 % half-width whatever shape the drift had: this one decides
     * @param sentences what it comes to, in plain words
     * @param points   at each speed; empty for peaks
     * @param others   the same by weaker ways, beside it
     * @param morePulls further pulls that would tell, each session's first counted; 0 where none are asked for
     */
    public record Gain(
            String setup,
            String baseline,
            Verdict verdict,
            String of,
            double gain,
            double half,
            double anyDrift,
            List<String> sentences,
            List<GainPoint> points,
            List<Way> others,
            int morePulls) {
        public Gain {
            sentences = List.copyOf(sentences);
            points = List.copyOf(points);
            others = List.copyOf(others);
        }

        /**
         * The same, not proved whatever its figures say: what they hang on is in doubt.
         * @param why in words that follow "since"
         */
        public Gain notProved(List<String> why) {
            List<String> said = new java.util.ArrayList<>(sentences);
            said.set(
                    0,
                    "Not proved, since " + String.join(", and ", why) + ". By the figures alone: " + sentences.get(0));
            return new Gain(
                    setup, baseline, Verdict.NOT_PROVED, of, gain, half, anyDrift, said, points, others, morePulls);
        }

        /** The same with something to mind, said right after the verdict. */
        public Gain withBeside(List<String> mind) {
            List<String> said = new java.util.ArrayList<>(sentences);
            said.addAll(1, mind);
            return new Gain(setup, baseline, verdict, of, gain, half, anyDrift, said, points, others, morePulls);
        }
    }

    /**
     * Gain at one speed, as share of the baseline.
     * @param speed     of the crank [rad/s]
     * @param baseline  corrected level of the baseline there [N m]
     * @param gain      share of it
     * @param pointwise 95 % half-width at this speed alone
     * @param everySpeed half-width of the band that holds at every speed at once with 95 %
     */
    public record GainPoint(double speed, double baseline, double gain, double pointwise, double everySpeed) {}

    /**
     * The gain by another way.
     * @param how  in words
     * @param gain share of the baseline; NaN where it cannot be told so
     * @param half 95 % half-width; NaN where that way has none
     */
    public record Way(String how, double gain, double half) {}

    /** How a dynamometer stands on a day beside its earlier days. */
    public enum Standing {
        NOT_KNOWN("not checked"),
        USUAL("at its usual level"),
        OFF("off its usual level");

        private final String label;

        Standing(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * A day by the reference engine.
     * @param dyno      which
     * @param engine    reference
     * @param date      year-month-day
     * @param of        what the figure is of
     * @param dimension of the figures
     * @param figure    mean of the kept runs, corrected [N m or W]
     * @param earlier   days before it
     * @param expected  mean of theirs; NaN where it is not checked
     * @param half      a further day lies within this of it with 95 %; NaN where it is not checked
     * @param standing  of the dynamometer
     * @param sentence  in plain words
     */
    public record Day(
            String dyno,
            String engine,
            String date,
            String of,
            Dimension dimension,
            double figure,
            int earlier,
            double expected,
            double half,
            Standing standing,
            String sentence) {}

    /**
     * What a dynamometer shows beside another.
     * @param from     which
     * @param to       the one that gains are told on
     * @param been     engines that were on both, and how often, in words
     * @param factor   figure on {@code from} times this is the figure on {@code to}; NaN where it cannot be told
     * @param half     95 % half-width; NaN likewise
     * @param freedom  degrees of freedom; NaN likewise
     * @param engines  that it is from; 0 where it cannot be told
     * @param sentence in plain words
     * @param across   sessions held against the baseline through it
     */
    public record Level(
            String from,
            String to,
            List<String> been,
            double factor,
            double half,
            double freedom,
            int engines,
            String sentence,
            List<Across> across) {
        public Level {
            been = List.copyOf(been);
            across = List.copyOf(across);
        }
    }

    /**
     * A session on another dynamometer against the baseline on the main one; no verdict rests on it.
     * @param session  which
     * @param setup    that was on
     * @param baseline against what
     * @param of       what the ratio is of; empty where there is none
     * @param ratio    of the session to the baseline; NaN where it cannot be told
     * @param half     95 % half-width; NaN likewise
     * @param sentence in plain words
     */
    public record Across(
            String session, String setup, String baseline, String of, double ratio, double half, String sentence) {}

    /**
     * An engine over dates on one dynamometer.
     * @param engine    setup or reference engine
     * @param dyno      which
     * @param of        what the figures are of
     * @param dimension of the figures
     * @param dates     by date
     * @param perDay    slope a day as share of the mean; NaN where it cannot be told
     * @param half      95 % half-width of it; NaN likewise
     * @param shown     whether it stands out of its doubt
     * @param sentence  in plain words
     */
    public record Trend(
            String engine,
            String dyno,
            String of,
            Dimension dimension,
            List<Dated> dates,
            double perDay,
            double half,
            boolean shown,
            String sentence) {
        public Trend {
            dates = List.copyOf(dates);
        }
    }

    /**
     * Of one date.
     * @param date   year-month-day
     * @param day    days from the first date
     * @param figure mean of its kept runs, corrected [N m or W]
     */
    public record Dated(String date, double day, double figure) {}

    /**
     * A logger's file.
     * @param file    its name
     * @param rows    in it
     * @param kept    rows that were understood
     * @param columns as recognised, for its owner to confirm
     * @param listed  rows that were not kept, and what was found in those that were; in words
     */
    public record Log(String file, long rows, long kept, List<Column> columns, List<String> listed) {
        public Log {
            columns = List.copyOf(columns);
            listed = List.copyOf(listed);
        }
    }

    /**
     * One column of a log.
     * @param header  as it stands there, or its number
     * @param meaning that it is taken for
     * @param unit    that it is taken in
     * @param sure    how sure, and why
     */
    public record Column(String header, String meaning, String unit, String sure) {}
}
