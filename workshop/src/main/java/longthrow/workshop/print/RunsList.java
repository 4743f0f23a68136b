package longthrow.workshop.print;

import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.SignedShare;
import longthrow.core.quantity.Units;

/** What runs on a dynamometer came to: the verdict, the gain over speed, every run, what became of each log. */
final class RunsList {
    private static final int INDENT = 2;

    /** To what share a mean is told; layout. */
    private static final double THOUSANDTH = 0.001;

    /** Speeds before the rest is left to {@code --all}; layout. */
    private static final int FEW_SPEEDS = 10;

    /** Lines on a log before the rest is left to {@code --all}; layout. */
    private static final int FEW_LINES = 6;

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    RunsList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    /** What it comes to; cautions before it where nothing ran yet. */
    void printVerdict() {
        answer.runs().ifPresent(runs -> {
            if (!isRun(runs)) {
                cautions(runs, "BEFORE THE FIRST RUN");
            }
            page.heading(Ink.STRONG, "WAS IT REAL", by(runs));
            runs.sentences().forEach(s -> page.paragraph(INDENT, s.endsWith(".") ? s : s + "."));
        });
    }

    private static boolean isRun(DynoRuns runs) {
        return runs.runs().stream()
                .anyMatch(r -> r.torque().isPresent() || r.power().isPresent());
    }

    /** What stands behind it, each run and log. */
    void print() {
        answer.runs().ifPresent(this::print);
    }

    private void print(DynoRuns runs) {
        boolean isRun = isRun(runs);
        runs.gains().forEach(this::gain);
        sessions(runs);
        page.heading(Ink.STRONG, "RUNS", by(runs) + "; " + runs.place());
        runs.runs().forEach(this::run);
        runs.setups().forEach(s -> setup(s, runs));
        days(runs);
        runs.levels().forEach(this::level);
        trends(runs);
        List<DynoRuns.Column> before = List.of();
        for (DynoRuns.Log log : runs.logs()) {
            log(log, before);
            before = log.columns();
        }
        if (isRun) {
            cautions(runs, "BEFORE THE NEXT RUN");
        }
    }

    private void cautions(DynoRuns runs, String heading) {
        page.heading(Ink.BAD, heading, "");
        runs.cautions().forEach(c -> page.hanging(INDENT, Ink.QUIET, "-", Ink.PLAIN, c));
    }

    private static String by(DynoRuns runs) {
        return runs.standard().isEmpty() ? "as read, not corrected for weather" : "corrected to " + runs.standard();
    }

    private void sessions(DynoRuns runs) {
        page.heading(
                Ink.STRONG,
                "SESSIONS",
                runs.bench() + (runs.engine().isEmpty() ? "" : "; of the build in " + runs.engine()));
        for (DynoRuns.Session session : runs.sessions()) {
            StringBuilder said = new StringBuilder(session.words());
            session.factor()
                    .ifPresent(f -> said.append(", its air: times ")
                            .append(printer.print(Dimension.RATIO, f.value(), f.expanded())
                                    .first()
                                    .text()));
            page.hanging(INDENT, Ink.STRONG, session.name() + ":", Ink.PLAIN, said.toString());
        }
    }

    private void gain(DynoRuns.Gain gain) {
        String both = gain.setup() + " against " + gain.baseline();
        page.heading(Ink.STRONG, "WHY", both);
        gain.sentences().stream().skip(1).forEach(s -> page.paragraph(INDENT, s));
        if (all) {
            page.heading(Ink.STRONG, both, gain.of() + ", by each way of reckoning");
            for (DynoRuns.Way way : gain.others()) {
                page.hanging(INDENT, Ink.STRONG, SignedShare.text(way.gain(), way.half()) + ":", Ink.PLAIN, way.how());
            }
        }
        if (!gain.points().isEmpty()) {
            page.heading(
                    Ink.STRONG,
                    both,
                    "± 95 % at each speed alone; in brackets the band that holds at every speed at once");
            for (DynoRuns.GainPoint point : some(gain.points())) {
                page.hanging(
                        2 * INDENT,
                        Ink.STRONG,
                        speed(point.speed()) + ":",
                        Ink.PLAIN,
                        SignedShare.text(point.gain(), point.pointwise()) + " ("
                                + SignedShare.beside(point.pointwise(), point.everySpeed()) + ")");
            }
        }
    }

    /** All of them, or as many as are read without tiring, evenly. */
    private <T> List<T> some(List<T> points) {
        if (all || points.size() <= FEW_SPEEDS) {
            return points;
        }
        int every = (points.size() + FEW_SPEEDS - 1) / FEW_SPEEDS;
        return java.util.stream.IntStream.range(0, points.size())
                .filter(i -> i % every == 0 || i == points.size() - 1)
                .mapToObj(points::get)
                .toList();
    }

    private String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed))), 0)
                .first()
                .text();
    }

    private void run(DynoRuns.Run run) {
        StringBuilder said = new StringBuilder(run.setup());
        run.torque().ifPresent(p -> said.append(", ").append(peak(Dimension.TORQUE, p)));
        run.power().ifPresent(p -> said.append(", ").append(peak(Dimension.POWER, p)));
        run.factor().ifPresent(f -> said.append(String.format(Locale.ROOT, ", times %.4f", f.value())));
        if (!run.counts()) {
            said.append("; DOES NOT COUNT: ").append(run.why());
        }
        if (run.power().isPresent() && !run.beside().isEmpty()) {
            said.append("; at ").append(speed(run.power().get().speed())).append(":");
            for (DynoRuns.Beside beside : run.beside()) {
                beside.nearest(run.power().get().speed())
                        .ifPresent(p -> said.append(said.charAt(said.length() - 1) == ':' ? " " : ", ")
                                .append(beside.name())
                                .append(' ')
                                .append(printer.print(beside.dimension(), p.value(), p.half())
                                        .first()
                                        .text()));
            }
        }
        page.hanging(INDENT, Ink.STRONG, run.session() + " " + run.name() + ":", Ink.PLAIN, said.toString());
    }

    private String peak(Dimension dimension, DynoRuns.Peak peak) {
        Measured figure = peak.figure();
        String value = figure.isUnknown() || figure.expanded() == 0
                ? printer.printDoubtUnknown(dimension, figure.value()).line()
                : printer.print(dimension, figure.value(), figure.expanded()).line();
        return value
                + (Double.isNaN(peak.speed()) ? "" : " at " + speed(peak.speed()))
                + (peak.shown().isEmpty() || !all ? "" : " (" + peak.shown() + ")");
    }

    private void setup(DynoRuns.Setup setup, DynoRuns runs) {
        page.heading(
                Ink.STRONG,
                "MEAN OF " + setup.name(),
                setup.runs() + " runs that count, " + by(runs)
                        + "; ± is 95 % of the mean by their scatter alone, the bench's own doubt comes on top");
        for (DynoRuns.Point point : some(setup.torque())) {
            String torque = Double.isNaN(point.half())
                    ? printer.printDoubtUnknown(Dimension.TORQUE, point.value()).line()
                    : printer.print(Dimension.TORQUE, point.value(), point.half())
                            .line();
            String power = Double.isNaN(point.half())
                    ? printer.printDoubtUnknown(Dimension.POWER, point.value() * point.speed())
                            .line()
                    : printer.print(Dimension.POWER, point.value() * point.speed(), point.half() * point.speed())
                            .line();
            page.hanging(INDENT, Ink.STRONG, speed(point.speed()) + ":", Ink.PLAIN, torque + ", " + power);
        }
    }

    // ---- days, dynamometers, dates

    private void days(DynoRuns runs) {
        if (!runs.days().isEmpty()) {
            page.heading(Ink.STRONG, "DAYS", "by the reference engine; " + by(runs));
        }
        runs.days()
                .forEach(d -> page.hanging(
                        INDENT,
                        d.standing() == DynoRuns.Standing.OFF ? Ink.BAD : Ink.QUIET,
                        "-",
                        Ink.PLAIN,
                        d.sentence() + " " + figure(d.dimension(), d.figure()) + ", " + d.of() + "."));
    }

    private void level(DynoRuns.Level level) {
        page.heading(Ink.STRONG, "BESIDE " + level.from(), "what the two show of one engine; in no verdict");
        page.paragraph(INDENT, level.sentence());
        if (level.engines() > 0) {
            level.been().forEach(b -> page.hanging(INDENT, Ink.QUIET, "-", Ink.PLAIN, b));
        }
        level.across().forEach(a -> page.paragraph(INDENT, a.sentence()));
    }

    private void trends(DynoRuns runs) {
        if (!runs.trends().isEmpty()) {
            page.heading(Ink.STRONG, "OVER DATES", by(runs));
        }
        for (DynoRuns.Trend trend : runs.trends()) {
            page.paragraph(INDENT, trend.sentence());
            if (all) {
                trend.dates()
                        .forEach(d -> page.hanging(
                                2 * INDENT,
                                Ink.STRONG,
                                d.date() + ":",
                                Ink.PLAIN,
                                figure(trend.dimension(), d.figure()) + ", " + trend.of()));
            }
        }
    }

    /** A mean of runs, to a thousandth: its scatter stands in what is said of it. */
    private String figure(Dimension dimension, double value) {
        return printer.print(dimension, value, THOUSANDTH * value).first().value() + " "
                + printer.print(dimension, value, THOUSANDTH * value).first().unit();
    }

    /** Columns that are those of the log before are not told again. */
    private void log(DynoRuns.Log log, List<DynoRuns.Column> before) {
        page.heading(
                Ink.STRONG,
                "LOG " + log.file(),
                String.format(Locale.ROOT, "%,d of %,d lines are rows", log.kept(), log.rows()));
        boolean isAlike = !all && log.columns().equals(before) && !before.isEmpty();
        if (isAlike) {
            page.paragraph(INDENT, "columns as in the log before");
        }
        for (DynoRuns.Column column : isAlike ? List.<DynoRuns.Column>of() : log.columns()) {
            page.hanging(
                    INDENT,
                    Ink.STRONG,
                    column.header() + ":",
                    Ink.PLAIN,
                    column.meaning()
                            + (column.unit().isEmpty() ? "" : " in " + column.unit())
                            + (all ? " (" + column.sure() + ")" : ""));
        }
        log.listed().stream()
                .limit(all ? Integer.MAX_VALUE : FEW_LINES)
                .forEach(l -> page.item(INDENT, l, Integer.MAX_VALUE));
        if (!all && log.listed().size() > FEW_LINES) {
            page.paragraph(INDENT, "and " + (log.listed().size() - FEW_LINES) + " more, with --all.");
        }
    }
}
