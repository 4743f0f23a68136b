package longthrow.buildfile.log;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import longthrow.core.recording.RowLines;

/**
 * Logs made by seed and broken by seed: none may be thrown over, none may take long or much, and of each every line is kept or listed.
 *
 * <p>{@code java ... longthrow.buildfile.log.LogMutations 100000}
 */
final class LogMutations {
    private static final long SEED = 20261127;
    private static final long MOST_NANOS = 1_000_000_000;

    private LogMutations() {}

    /** What a round of them came to. */
    static final class Tally {
        int read;
        int refused;
        int rows;
        long lines;
        long listed;
        long slowest;
        long mostMemory;

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d read, %d refused; %d lines, %d rows kept, %d lines listed; slowest %.0f ms, most memory"
                            + " allocated %.0f MB",
                    read,
                    refused,
                    lines,
                    rows,
                    listed,
                    slowest / 1e6,
                    mostMemory / 1e6);
        }
    }

    public static void main(String[] arguments) {
        int count = arguments.length == 0 ? 100_000 : Integer.parseInt(arguments[0]);
        System.out.println(run(count));
    }

    static Tally run(int count) {
        Tally tally = new Tally();
        for (int i = 0; i < count; i++) {
            SplittableRandom random = new SplittableRandom(SEED + i);
            byte[] log = broken(random);
            try {
                one(log, tally, random.nextInt(8) == 0 ? 2 : 1);
            } catch (RuntimeException | Error thrown) {
                throw new AssertionError("log " + i + ": " + head(log), thrown);
            }
        }
        return tally;
    }

    private static String head(byte[] log) {
        return new String(log, 0, Math.min(300, log.length), StandardCharsets.ISO_8859_1);
    }

    private static void one(byte[] log, Tally tally, int threads) {
        byte[] before = log.clone();
        long memory = allocated();
        long start = System.nanoTime();
        LogOpened opened = LogFile.open(LogSource.of(log), LogTold.NOTHING);
        LogFile.Outcome outcome = opened instanceof LogFile file ? file.read(threads) : null;
        long took = System.nanoTime() - start;
        tally.slowest = Math.max(tally.slowest, took);
        tally.mostMemory = Math.max(tally.mostMemory, allocated() - memory);
        if (took > MOST_NANOS) {
            throw new AssertionError("took " + took / 1e9 + " s");
        }
        if (!Arrays.equals(before, log)) {
            throw new AssertionError("the log was written to");
        }
        if (outcome instanceof LogFile.Done done) {
            check(log, done.read());
            tally.read++;
            tally.lines += done.read().lines();
            tally.rows += done.read().recording().rows();
            tally.listed += done.read().listed().size();
        } else {
            tally.refused++;
        }
    }

    private static long allocated() {
        return ((com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean())
                .getCurrentThreadAllocatedBytes();
    }

    /** Every line of the file is a row or is listed, once. */
    static void check(byte[] log, LogRead read) {
        LogLayout layout = read.layout();
        boolean plain = !layout.isPacked() && !layout.encoding().startsWith("UTF-16");
        if (plain && read.lines() != lines(log, layout)) {
            throw new AssertionError("has " + lines(log, layout) + " lines, " + read.lines() + " were counted");
        }
        int[] times = new int[read.lines() + 1];
        RowLines rows = read.recording().lines();
        for (int row = 0; row < rows.rows(); row++) {
            times[rows.lineOf(row)]++;
        }
        for (int i = 0; i < read.listed().size(); i++) {
            times[read.listed().line(i)]++;
        }
        for (int line = 1; line < times.length; line++) {
            if (times[line] != 1) {
                throw new AssertionError("line " + line + " is kept or listed " + times[line] + " times");
            }
        }
    }

    private static int lines(byte[] log, LogLayout layout) {
        byte end = (byte) (layout.lineEnd().equals("CR") ? '\r' : '\n');
        int lines = 0;
        for (byte b : log) {
            lines += b == end ? 1 : 0;
        }
        boolean marked = log.length >= 3 && (log[0] & 0xff) == 0xef && (log[1] & 0xff) == 0xbb;
        boolean tail = log.length > (marked ? 3 : 0) && log[log.length - 1] != end;
        return lines + (tail ? 1 : 0);
    }

    private static byte[] broken(SplittableRandom random) {
        Logger logger = new Logger(random);
        String text = logger.text();
        Charset charset = random.nextInt(10) == 0
                ? random.nextBoolean() ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE
                : random.nextInt(5) == 0 ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8;
        boolean marked = random.nextInt(4) == 0 && !charset.equals(StandardCharsets.ISO_8859_1);
        byte[] bytes = ((marked ? "\uFEFF" : "") + text).getBytes(charset);
        int mutations = random.nextInt(6);
        for (int i = 0; i < mutations; i++) {
            bytes = mutated(bytes, random);
        }
        if (random.nextInt(10) == 0) {
            bytes = packed(bytes);
            if (random.nextBoolean()) {
                bytes = mutated(bytes, random);
            }
        }
        return bytes;
    }

    private static byte[] packed(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return out.toByteArray();
    }

    private static final byte[] NASTY = {
        0, '"', ',', ';', '\t', '\n', '\r', '.', '-', '+', 'e', '#', ' ', (byte) 0xff, (byte) 0xc3, '1', '|', ':', '/'
    };

    private static byte[] mutated(byte[] bytes, SplittableRandom random) {
        if (bytes.length == 0) {
            return bytes;
        }
        int at = random.nextInt(bytes.length);
        int to = Math.min(bytes.length, at + 1 + random.nextInt(random.nextInt(8) == 0 ? bytes.length : 20));
        byte[] changed = bytes.clone();
        switch (random.nextInt(7)) {
            case 0 -> changed[at] = (byte) random.nextInt(256);
            case 1 -> changed[at] = NASTY[random.nextInt(NASTY.length)];
            case 2 -> Arrays.fill(changed, at, to, NASTY[random.nextInt(NASTY.length)]);
            case 3 -> changed = spliced(bytes, at, to, new byte[0]); // cut out
            case 4 -> changed = spliced(bytes, at, at, Arrays.copyOfRange(bytes, at, to)); // doubled
            case 5 -> changed = Arrays.copyOf(bytes, at); // cut off
            default -> {
                byte[] nasty = new byte[1 + random.nextInt(5)];
                for (int i = 0; i < nasty.length; i++) {
                    nasty[i] = NASTY[random.nextInt(NASTY.length)];
                }
                changed = spliced(bytes, at, at, nasty);
            }
        }
        return changed;
    }

    private static byte[] spliced(byte[] bytes, int from, int to, byte[] between) {
        byte[] all = Arrays.copyOf(bytes, bytes.length - (to - from) + between.length);
        System.arraycopy(between, 0, all, from, between.length);
        System.arraycopy(bytes, to, all, from + between.length, bytes.length - to);
        return all;
    }

    /** A logger of some make: its marks, header, units and columns by chance. All invented. */
    private static final class Logger {
        private static final String[] NAMES = {
            "Time",
            "Drehzahl",
            "rpm",
            "Couple",
            "Force",
            "Lambda",
            "EGT",
            "Öltemperatur",
            "T\u00b0",
            "TPS",
            "Marker",
            "x1",
            "Luftdruck",
            ""
        };
        private static final String[] UNITS = {
            "s", "1/min", "rpm", "Nm", "N", "-", "°C", "°C", "K", "%", "", "V", "hPa", "?"
        };
        private static final String[] DELIMITERS = {",", ";", "\t", "|", " ", "  ", ", "};
        private static final String[] ENDS = {"\n", "\r\n", "\r"};

        private final SplittableRandom random;

        Logger(SplittableRandom random) {
            this.random = random;
        }

        String text() {
            String delimiter = DELIMITERS[random.nextInt(DELIMITERS.length)];
            String end = ENDS[random.nextInt(ENDS.length)];
            boolean comma = random.nextInt(3) == 0;
            int columns = 1 + random.nextInt(9);
            int rows = random.nextInt(random.nextInt(20) == 0 ? 1000 : 60);
            int header = random.nextInt(5);
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(4); i > 0; i--) {
                text.append(random.nextBoolean() ? "# " : "")
                        .append("Session 7, Date: 2031-02-03")
                        .append(end);
            }
            if (header > 0) {
                line(text, delimiter, end, columns, i -> {
                    int which = i % NAMES.length;
                    return NAMES[which]
                            + (header == 2 ? " [" + UNITS[which] + "]" : header == 3 ? " (" + UNITS[which] + ")" : "");
                });
                if (header == 4) {
                    line(text, delimiter, end, columns, i -> UNITS[i % UNITS.length]);
                }
            }
            int clock = random.nextInt(6);
            for (int row = 0; row < rows; row++) {
                int at = row;
                line(text, delimiter, end, columns, i -> cell(i, at, clock, comma));
            }
            return text.toString();
        }

        private String cell(int column, int row, int clock, boolean comma) {
            if (random.nextInt(60) == 0) {
                return random.nextBoolean() ? "" : random.nextBoolean() ? "NaN" : "1,234";
            }
            if (column == 0 && clock < 2) {
                return String.format(
                        Locale.ROOT,
                        clock == 0 ? "%02d:%02d:%02d.%03d" : "2031-02-03 %02d:%02d:%02d.%03d",
                        row / 3600,
                        row / 60 % 60,
                        row % 60,
                        row % 1000);
            }
            double figure = column == 0 ? row * 0.01 : 1000 * random.nextDouble() - 100;
            String text = random.nextInt(30) == 0
                    ? String.format(Locale.ROOT, "%e", figure)
                    : String.format(Locale.ROOT, "%." + column % 5 + "f", figure);
            return comma ? text.replace('.', ',') : text;
        }

        private void line(
                StringBuilder text,
                String delimiter,
                String end,
                int columns,
                java.util.function.IntFunction<String> cells) {
            for (int i = 0; i < columns; i++) {
                String cell = cells.apply(i);
                boolean quoted = random.nextInt(100) == 0;
                text.append(i == 0 ? "" : delimiter).append(quoted ? "\"" + cell + "\"" : cell);
            }
            text.append(end);
        }
    }
}
