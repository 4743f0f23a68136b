package longthrow.workshop.web.dyno;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.SignedShare;
import longthrow.core.quantity.Units;
import longthrow.workshop.draw.PeaksChart;
import longthrow.workshop.draw.RunsChart;
import longthrow.workshop.web.BothUnits;

/**
 * What the runs of one sheet come to, laid out.
 * @param file      name of the sheet's file
 * @param sha256    of its text, so that a change is made on what was seen
 * @param download  where it is fetched
 * @param name      of what was tried; empty where the sheet cannot be read
 * @param faults    of the sheet, each with its line and how to mend it
 * @param notes     how anything unusual in it was understood
 * @param standard  in words that stand on every figure
 * @param place     where torque and power are told
 * @param cautions  before an engine is run
 * @param lacking   files of loggers that it names and that are not kept
 * @param warnings  to act on
 * @param sentences what it comes to
 * @param pictures  of each change, or of all
 * @param zoom      which speeds they show
 * @param bench     by what they were read, and the build they belong to where one is named
 * @param sessions  in their order
 * @param runs      in their order
 * @param logs      of loggers
 * @param taken     for granted and not read
 * @param remarks   to know
 * @param levels    days, dynamometers and dates
 */
public record DynoAnswer(
        String file,
        String sha256,
        String download,
        String name,
        boolean invented,
        List<String> faults,
        List<String> notes,
        String standard,
        String place,
        List<String> cautions,
        List<String> lacking,
        List<String> warnings,
        List<String> sentences,
        List<Picture> pictures,
        Zoom zoom,
        String bench,
        List<Sat> sessions,
        List<Line> runs,
        List<Log> logs,
        List<String> taken,
        List<String> remarks,
        DynoLevels levels) {
    /** Lines of a log's list that are told; the rest is counted. Layout. */
    static final int MOST_LISTED = 20;

    public DynoAnswer {
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
        lacking = List.copyOf(lacking);
        warnings = List.copyOf(warnings);
        sentences = List.copyOf(sentences);
        pictures = List.copyOf(pictures);
        sessions = List.copyOf(sessions);
        runs = List.copyOf(runs);
        logs = List.copyOf(logs);
        taken = List.copyOf(taken);
        remarks = List.copyOf(remarks);
    }

    /**
     * One session.
     * @param name  each once
     * @param words what is known of it
     * @param air   factor of its air; empty where it corrects nothing
     */
    public record Sat(String name, String words, Optional<BothUnits> air) {}

    /**
     * One change.
     * @param heading   what is held against what
     * @param verdict   in a few words; empty where nothing is held against anything
     * @param chart     as SVG
     * @param sentences what stands behind the verdict
     * @param ways      the same by other ways of reckoning
     */
    public record Picture(String heading, String verdict, String chart, List<String> sentences, List<Way> ways) {
        public Picture {
            sentences = List.copyOf(sentences);
            ways = List.copyOf(ways);
        }
    }

    /**
     * Which speeds the pictures show, and the ways to others.
     * @param address without the speeds
     * @param low     in rpm; empty where no picture has speeds
     * @param high    in rpm
     * @param ways    to others
     */
    public record Zoom(String address, String low, String high, List<LogSight.Way> ways) {
        static final Zoom NONE = new Zoom("", "", "", List.of());

        public Zoom {
            ways = List.copyOf(ways);
        }

        static Zoom of(DynoRuns runs, RunsChart.Speeds wanted, String address) {
            Optional<RunsChart.Speeds> whole = RunsChart.reach(runs);
            if (whole.isEmpty()) {
                return NONE;
            }
            RunsChart.Speeds all = whole.get();
            RunsChart.Speeds shown = wanted.within(all);
            double middle = (shown.low() + shown.high()) / 2;
            double width = shown.high() - shown.low();
            List<LogSight.Way> ways = new ArrayList<>();
            add(ways, "closer", "Nearer", address, all, middle - width / 4, middle + width / 4);
            if (shown.low() > all.low() || shown.high() < all.high()) {
                add(ways, "wider", "Farther", address, all, middle - width, middle + width);
                if (shown.low() > all.low()) {
                    double low = Math.max(all.low(), shown.low() - width / 2);
                    add(ways, "slower", "Lower speeds", address, all, low, low + width);
                }
                if (shown.high() < all.high()) {
                    double high = Math.min(all.high(), shown.high() + width / 2);
                    add(ways, "faster", "Higher speeds", address, all, high - width, high);
                }
                ways.add(new LogSight.Way("all-speeds", "All speeds", address + "#pictures", ""));
            }
            return new Zoom(address, rpm(shown.low()), rpm(shown.high()), ways);
        }

        private static void add(
                List<LogSight.Way> ways,
                String id,
                String label,
                String address,
                RunsChart.Speeds all,
                double low,
                double high) {
            ways.add(new LogSight.Way(
                    id,
                    label,
                    address + "&low=" + rpm(Math.max(all.low(), low)) + "&high=" + rpm(Math.min(all.high(), high))
                            + "#pictures",
                    ""));
        }

        private static String rpm(double speed) {
            return String.format(Locale.ROOT, "%.0f", Units.RPM.fromSi(speed));
        }
    }

    /** A way of reckoning with what it gives. */
    public record Way(String how, String gives) {}

    /**
     * One run.
     * @param counts whether it is in means and gains
     * @param why    it does not
     * @param asRead whether its figures stand as read though others are corrected
     * @param figures told of it, with their labels
     * @param form   by which it is set aside or counted again; empty where another line has it
     */
    public record Line(
            String session,
            String setup,
            String name,
            boolean counts,
            String why,
            boolean asRead,
            List<Told> figures,
            Optional<Form> form) {
        public Line {
            figures = List.copyOf(figures);
        }
    }

    /** A figure with its label. */
    public record Told(String label, BothUnits words, String more) {}

    /**
     * Where a run stands in the sheet.
     * @param session counted from 0
     * @param run     counted from 0
     * @param aside   whether its owner set it aside
     * @param reason  why
     * @param runs    further runs in the same file that go with it
     */
    public record Form(int session, int run, boolean aside, String reason, int runs) {}

    /**
     * A logger's file.
     * @param rows   how many were understood
     * @param look   address of its rows over time; empty where it is not here
     * @param listed the first of what is not kept or was found
     * @param more   how many others there are
     */
    public record Log(
            String file, String rows, String look, List<DynoRuns.Column> columns, List<String> listed, int more) {
        public Log {
            columns = List.copyOf(columns);
            listed = List.copyOf(listed);
        }
    }

    /**
     * Where a sheet comes from.
     * @param page of it
     * @param rows address of the rows of a log that it names; empty where that is not here
     */
    record Source(String file, String sha256, String download, String page, Function<String, String> rows) {}

    /**
     * Of a sheet that cannot be read or worked out.
     * @param beside what is said besides its own faults
     */
    static DynoAnswer faulty(String file, String sha256, String download, ReadDynoSheet read, List<String> beside) {
        return new DynoAnswer(
                file,
                sha256,
                download,
                "",
                false,
                Stream.concat(read.faults().stream().map(Fault::message), beside.stream())
                        .toList(),
                read.notes().stream().map(n -> n.message()).toList(),
                "",
                "",
                Dyno.cautions(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Zoom.NONE,
                "",
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                DynoLevels.none());
    }

    /** Laid out. */
    static DynoAnswer of(
            Source source,
            ReadDynoSheet read,
            List<String> lacking,
            List<String> ofItsLogs,
            Answer answer,
            RunsChart.Speeds speeds) {
        DynoSheet sheet = read.sheet().orElseThrow();
        DynoRuns runs = answer.runs().orElseThrow();
        String standard = runs.standard().isEmpty() ? "as read, not corrected" : "corrected to " + runs.standard();
        return new DynoAnswer(
                source.file(),
                source.sha256(),
                source.download(),
                sheet.name(),
                sheet.invented(),
                List.of(),
                read.notes().stream().map(n -> n.message()).toList(),
                standard,
                runs.place(),
                runs.cautions(),
                lacking,
                Stream.concat(said(answer, Finding.Kind.WARNING).stream(), ofItsLogs.stream())
                        .toList(),
                runs.sentences(),
                pictures(runs, sheet, answer, speeds),
                Zoom.of(runs, speeds, source.page()),
                runs.bench() + (runs.engine().isEmpty() ? "" : "; of the build in " + runs.engine()),
                sat(runs, new FigurePrinter(answer.units())),
                lines(runs, sheet, new FigurePrinter(answer.units())),
                runs.logs().stream()
                        .map(log -> log(log, source.rows().apply(log.file())))
                        .toList(),
                taken(answer.defaults()),
                said(answer, Finding.Kind.NOTE),
                DynoLevels.of(runs, standard, answer.units()));
    }

    private static List<String> said(Answer answer, Finding.Kind kind) {
        return answer.findings().stream()
                .filter(f -> f.kind() == kind)
                .map(f -> f.where() + ": " + f.message() + (f.mend().isEmpty() ? "" : ". Do this: " + f.mend()))
                .toList();
    }

    private static List<String> taken(List<DefaultUsed> defaults) {
        Map<String, Set<String>> alike = new LinkedHashMap<>();
        for (DefaultUsed one : defaults) {
            alike.computeIfAbsent(one.what() + " (" + one.source() + ")", k -> new java.util.LinkedHashSet<>())
                    .add(one.where());
        }
        return alike.entrySet().stream()
                .map(e -> e.getValue().stream().filter(w -> !w.isEmpty()).collect(Collectors.joining(", ")) + ": "
                        + e.getKey())
                .toList();
    }

    // ---- pictures

    private static List<Picture> pictures(DynoRuns runs, DynoSheet sheet, Answer answer, RunsChart.Speeds speeds) {
        List<Picture> pictures = new ArrayList<>();
        for (DynoRuns.Gain gain : runs.gains()) {
            pictures.add(new Picture(
                    gain.setup() + " against " + gain.baseline(),
                    gain.verdict().label(),
                    RunsChart.of(runs, Optional.of(gain), speeds, answer.units(), "runs-" + pictures.size())
                            .orElse(""),
                    gain.sentences(),
                    ways(gain)));
        }
        if (pictures.stream().noneMatch(p -> !p.chart().isEmpty())) {
            Optional<String> all = RunsChart.of(runs, Optional.empty(), speeds, answer.units(), "runs-all");
            Optional<String> peaks = all.isPresent()
                    ? Optional.empty()
                    : PeaksChart.of(runs, baseline(runs, sheet), answer.units(), "runs-peaks");
            all.ifPresent(chart -> pictures.add(0, new Picture("Each run", "", chart, List.of(), List.of())));
            peaks.ifPresent(
                    chart -> pictures.add(0, new Picture("Runs in their order", "", chart, List.of(), List.of())));
        }
        return pictures;
    }

    private static String baseline(DynoRuns runs, DynoSheet sheet) {
        return runs.gains().stream()
                .map(DynoRuns.Gain::baseline)
                .findFirst()
                .or(sheet::baseline)
                .or(() -> runs.runs().stream().map(DynoRuns.Run::setup).findFirst())
                .orElse("");
    }

    private static List<Way> ways(DynoRuns.Gain gain) {
        return gain.others().stream()
                .map(way -> new Way(way.how(), SignedShare.text(way.gain(), way.half())))
                .toList();
    }

    // ---- runs

    private static List<Sat> sat(DynoRuns runs, FigurePrinter printer) {
        return runs.sessions().stream()
                .map(s -> new Sat(s.name(), s.words(), s.factor().map(f -> BothUnits.of(printer, Dimension.RATIO, f))))
                .toList();
    }

    private static List<Line> lines(DynoRuns runs, DynoSheet sheet, FigurePrinter printer) {
        List<Line> lines = new ArrayList<>();
        List<DynoRuns.Run> all = runs.runs();
        boolean isCorrected = !runs.standard().isEmpty();
        int next = 0;
        for (int s = 0; s < sheet.sessions().size(); s++) {
            DynoSheet.Session session = sheet.sessions().get(s);
            for (int p = 0; p < session.pulls().size(); p++) {
                DynoSheet.Pull pull = session.pulls().get(p);
                String name = pull.name().isEmpty() ? String.valueOf(p + 1) : pull.name();
                int first = next;
                while (next < all.size() && isOf(all.get(next), session.name(), name, next == first)) {
                    next++;
                }
                for (int i = first; i < next; i++) {
                    Optional<Form> form = i == first
                            ? Optional.of(new Form(s, p, !pull.aside().isEmpty(), pull.aside(), next - first - 1))
                            : Optional.empty();
                    lines.add(line(all.get(i), isCorrected, form, printer));
                }
            }
        }
        for (; next < all.size(); next++) {
            lines.add(line(all.get(next), isCorrected, Optional.empty(), printer));
        }
        return lines;
    }

    /** Several pulls in one file are one run of the sheet. */
    private static boolean isOf(DynoRuns.Run run, String session, String name, boolean isFirst) {
        return run.session().equals(session)
                && ((run.name().equals(name) && isFirst) || run.name().startsWith(name + " #"));
    }

    private static Line line(DynoRuns.Run run, boolean isCorrected, Optional<Form> form, FigurePrinter printer) {
        List<Told> figures = new ArrayList<>();
        run.torque().ifPresent(p -> figures.add(told("torque", Dimension.TORQUE, p, printer)));
        run.power().ifPresent(p -> figures.add(told("power", Dimension.POWER, p, printer)));
        run.factor().ifPresent(f -> figures.add(new Told("air factor", words(printer, Dimension.RATIO, f), "")));
        run.power()
                .filter(p -> Double.isFinite(p.speed()))
                .ifPresent(p -> run.beside()
                        .forEach(beside -> beside.nearest(p.speed())
                                .ifPresent(point -> figures.add(beside(beside, point, printer)))));
        boolean asRead = isCorrected && run.factor().isEmpty() && !figures.isEmpty();
        return new Line(run.session(), run.setup(), run.name(), run.counts(), run.why(), asRead, figures, form);
    }

    private static Told beside(DynoRuns.Beside beside, DynoRuns.Point point, FigurePrinter printer) {
        PrintedFigures printed = Double.isFinite(point.half())
                ? printer.print(beside.dimension(), point.value(), point.half())
                : printer.printDoubtUnknown(beside.dimension(), point.value());
        return new Told(
                beside.name(),
                new BothUnits(
                        printed.first().text(),
                        printed.second().map(Figure::text).orElse("")),
                "at " + speed(point.speed(), printer));
    }

    private static Told told(String label, Dimension dimension, DynoRuns.Peak peak, FigurePrinter printer) {
        Measured figure = peak.figure();
        List<String> more = new ArrayList<>();
        if (Double.isFinite(peak.speed())) {
            more.add("at " + speed(peak.speed(), printer)
                    + (Double.isFinite(peak.low()) && Double.isFinite(peak.high())
                            ? " (" + speed(peak.low(), printer) + " to " + speed(peak.high(), printer) + ")"
                            : ""));
        }
        if (!peak.shown().isEmpty()) {
            more.add(peak.shown());
        }
        return new Told(label, words(printer, dimension, figure), String.join("; ", more));
    }

    /** A figure of which no doubt was said is not exact: its doubt is unknown. */
    private static BothUnits words(FigurePrinter printer, Dimension dimension, Measured figure) {
        if (figure.isUnknown() || figure.expanded() > 0) {
            return BothUnits.of(printer, dimension, figure);
        }
        PrintedFigures printed = printer.printDoubtUnknown(dimension, figure.value());
        return new BothUnits(
                printed.first().text(), printed.second().map(Figure::text).orElse(""));
    }

    private static String speed(double speed, FigurePrinter printer) {
        double whole = Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed)));
        return printer.print(Dimension.ROTATIONAL_SPEED, whole, 0).first().text();
    }

    private static Log log(DynoRuns.Log log, String look) {
        int more = Math.max(0, log.listed().size() - MOST_LISTED);
        return new Log(
                log.file(),
                String.format(Locale.ROOT, "%,d of %,d lines are rows", log.kept(), log.rows()),
                look,
                log.columns(),
                log.listed().subList(0, log.listed().size() - more),
                more);
    }
}
