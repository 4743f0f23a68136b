package longthrow.workshop.web.dyno;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.recording.FaultKind;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RunningTime;
import longthrow.workshop.draw.LogChart;

/**
 * What is seen of a log: a stretch of time, thinned to what a picture can show. This alone is sent when the stretch is changed.
 * @param address without the stretch
 * @param from    where it begins, in figures
 * @param to      where it ends
 * @param unit    of both
 * @param plot    where the strips lie in the picture
 * @param chart   as SVG; empty where there is nothing to be seen
 * @param wide    whether the picture is a large one
 * @param about   how much of the log it is
 * @param trouble with the stretch that was asked for; empty for none
 * @param ways    to other stretches
 * @param runs    found in this stretch, the first of them
 * @param moreRuns how many others there are
 * @param strips  columns to be chosen from
 * @param counts  how many faults of each kind there are in it
 * @param faults  the first of them
 * @param more    how many others there are
 */
public record LogSight(
        String address,
        String from,
        String to,
        String unit,
        String plot,
        String chart,
        boolean wide,
        String about,
        String trouble,
        List<Way> ways,
        List<Way> runs,
        int moreRuns,
        List<Strip> strips,
        String counts,
        List<String> faults,
        int more) {
    /** Faults that are told one by one; layout. */
    private static final int MOST_FAULTS = 12;

    /** Runs that are listed; layout. */
    private static final int MOST_RUNS = 20;

    /** Columns that can be chosen from; layout. */
    private static final int MOST_CHOSEN_FROM = 60;

    /** Least stretch, as a share of the whole log: finer is between two rows of the longest. */
    private static final double LEAST = 1e-8;

    private static final int DIGITS = 7;

    private static final String WIDE = "&wide=yes";

    /** Of a place in an address, so that a stretch does not shift by its rounding. */
    private static final int ALL_DIGITS = 12;

    public LogSight {
        ways = List.copyOf(ways);
        runs = List.copyOf(runs);
        strips = List.copyOf(strips);
        faults = List.copyOf(faults);
    }

    /**
     * To another stretch.
     * @param id   by which the page knows it again
     * @param about of it, beside
     */
    public record Way(String id, String label, String address, String about) {}

    /** A column to be chosen. */
    public record Strip(int at, String name, boolean shown) {}

    /**
     * What was asked for.
     * @param from   as written; empty for the beginning
     * @param to     as written; empty for the end
     * @param strips columns from 0; empty for the usual
     */
    record Wish(String from, String to, List<Integer> strips, boolean wide) {
        Wish {
            strips = List.copyOf(strips);
        }
    }

    /** Of a log that cannot be read. */
    static LogSight none(String address) {
        return new LogSight(
                address, "", "", "", "", "", false, "", "", List.of(), List.of(), 0, List.of(), "", List.of(), 0);
    }

    static LogSight of(LogChart.Log log, Wish wish, String address) {
        return new Looking(log, wish, address).sight();
    }

    /** One look. */
    private static final class Looking {
        private final LogChart.Log log;
        private final RunningTime time;
        private final List<Integer> strips;
        private final boolean wide;
        private final String plain; // as it would be narrow
        private final String address;
        private final double end;
        private final String trouble;
        private double from;
        private double to;

        Looking(LogChart.Log log, Wish wish, String address) {
            this.log = log;
            this.time = log.time();
            this.wide = wish.wide();
            Recording rows = log.recording();
            List<Integer> chosen = wish.strips().stream()
                    .filter(c -> c >= 0 && c < rows.columns().size())
                    .distinct()
                    .limit(LogChart.MOST_STRIPS)
                    .toList();
            this.strips = chosen.isEmpty() ? LogChart.usual(rows) : chosen;
            this.plain = address + chosen.stream().map(c -> "&show=" + c).collect(Collectors.joining());
            this.address = plain + (wide ? WIDE : "");
            this.end = time.end() > 0 ? time.end() : 1;
            Optional<Double> first = wish.from().isEmpty() ? Optional.of(0.0) : number(wish.from());
            Optional<Double> last = wish.to().isEmpty() ? Optional.of(end) : number(wish.to());
            boolean isOne = first.isPresent()
                    && last.isPresent()
                    && last.get() > first.get()
                    && first.get() < end
                    && last.get() > 0;
            this.trouble = isOne
                    ? ""
                    : "From '" + wish.from() + "' to '" + wish.to()
                            + "' is no stretch of this log, which runs from 0 to " + figure(end) + unit()
                            + "; all of it is shown";
            move(isOne ? first.get() : 0, isOne ? last.get() : end);
        }

        private static Optional<Double> number(String written) {
            try {
                double number = Double.parseDouble(written.replace(',', '.'));
                return Double.isFinite(number) ? Optional.of(number) : Optional.empty();
            } catch (NumberFormatException none) {
                return Optional.empty();
            }
        }

        private void move(double first, double last) {
            from = Math.max(0, Math.min(first, end));
            to = last > end * (1 - 1e-11) ? end : last; // written to so many digits
            double least = LEAST * end;
            if (to - from < least) {
                from = Math.max(0, Math.min(from, end - least));
                to = from + least;
            }
        }

        private String unit() {
            return time.isCounted() ? " rows" : " s";
        }

        private static String figure(double number) {
            return figure(number, DIGITS);
        }

        private static String figure(double number, int digits) {
            return BigDecimal.valueOf(number)
                    .round(new MathContext(digits))
                    .stripTrailingZeros()
                    .toPlainString();
        }

        private String at(double first, double last) {
            return at(address, first, last);
        }

        private String at(String where, double first, double last) {
            return where + "&from=" + figure(Math.max(0, first), ALL_DIGITS) + "&to="
                    + figure(Math.min(end, last), ALL_DIGITS);
        }

        LogSight sight() {
            int first = time.firstFrom(from);
            int last = time.firstFrom(Math.nextUp(to));
            List<RowFault> seen = log.faults().stream()
                    .filter(f -> time.at(f.to()) >= from && time.at(f.from()) <= to)
                    .toList();
            Map<FaultKind, Integer> counts = new EnumMap<>(FaultKind.class);
            seen.forEach(f -> counts.merge(f.kind(), 1, Integer::sum));
            return new LogSight(
                    address,
                    figure(from),
                    figure(to),
                    time.isCounted() ? "rows" : "s",
                    LogChart.plot(wide),
                    LogChart.of(log, from, to, strips, wide, "log"),
                    wide,
                    String.format(
                            Locale.ROOT,
                            "%,d of %,d rows, from %s to %s%s%s",
                            last - first,
                            time.rows(),
                            figure(from),
                            figure(to),
                            unit(),
                            time.restarts() == 0
                                    ? ""
                                    : time.restarts() == 1
                                            ? "; time starts anew once and goes on here from where it was"
                                            : "; time starts anew " + time.restarts()
                                                    + " times and goes on here from where it was"),
                    trouble,
                    ways(),
                    runs(),
                    Math.max(0, seenRuns().size() - MOST_RUNS),
                    choices(),
                    counts.entrySet().stream()
                            .map(e -> e.getValue() + " " + e.getKey().label())
                            .collect(Collectors.joining(", ")),
                    seen.stream()
                            .limit(MOST_FAULTS)
                            .map(f -> f.told(log.recording(), log.keeps()))
                            .toList(),
                    Math.max(0, seen.size() - MOST_FAULTS));
        }

        private List<Way> ways() {
            double middle = (from + to) / 2;
            double width = to - from;
            List<Way> ways = new ArrayList<>();
            ways.add(new Way("nearer", "Nearer", at(middle - width / 4, middle + width / 4), ""));
            if (from > 0 || to < end) {
                ways.add(new Way("farther", "Farther", at(middle - width, middle + width), ""));
                if (from > 0) {
                    double start = Math.max(0, from - width / 2);
                    ways.add(new Way("earlier", "Earlier", at(start, start + width), ""));
                }
                if (to < end) {
                    double stop = Math.min(end, to + width / 2);
                    ways.add(new Way("later", "Later", at(stop - width, stop), ""));
                }
                ways.add(new Way("whole", "The whole log", address, ""));
            }
            ways.add(
                    wide
                            ? new Way("size", "Smaller picture", at(plain, from, to), "")
                            : new Way("size", "Larger picture", at(plain + WIDE, from, to), ""));
            return ways;
        }

        private List<LogChart.Run> seenRuns() {
            return log.runs().stream()
                    .filter(run -> time.at(run.to()) >= from && time.at(run.from()) <= to)
                    .toList();
        }

        private List<Way> runs() {
            List<Way> runs = new ArrayList<>();
            for (LogChart.Run run : seenRuns()) {
                double start = time.at(run.from());
                double stop = time.at(run.to());
                double room = 0.05 * (stop - start);
                if (runs.size() < MOST_RUNS) {
                    runs.add(new Way(
                            "run-" + runs.size(),
                            run.name(),
                            at(start - room, stop + room),
                            "from " + figure(start) + " to " + figure(stop) + unit()));
                }
            }
            return runs;
        }

        private List<Strip> choices() {
            List<Strip> choices = new ArrayList<>();
            List<Recording.Column> columns = log.recording().columns();
            for (int c = 0; c < Math.min(MOST_CHOSEN_FROM, columns.size()); c++) {
                String header = columns.get(c).header();
                choices.add(new Strip(c, header.isEmpty() ? "column " + (c + 1) : header, strips.contains(c)));
            }
            return choices;
        }
    }
}
