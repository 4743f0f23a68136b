package longthrow.buildfile.log;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import longthrow.core.quantity.Unit;

/**
 * Lines of figures to arrays: once over the bytes to count the lines, so that every line has its place, once more to read them, in blocks that
 * threads share. Whichever thread reads a block, its figures come to stand in the same places.
 */
final class GridReader {
    /** Bytes that stay in a processor's own cache between counting and reading: 256 kB measured as quick as 1 MB, 64 kB 4 % slower. */
    private static final int WINDOW = 1 << 18;
    /** Longer is no line of a log. */
    static final int LONGEST_LINE = 1 << 20;
    /** Beyond the last byte of a block, so that eight bytes may be read at once from any of them. */
    private static final int SPARE = 16;

    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101010101010101L;
    private static final long HIGHS = 0x8080808080808080L;
    private static final long LOWS = 0x7f7f7f7f7f7f7f7fL;
    private static final long ZEROS = 0x3030303030303030L;
    /** Added to a byte from 0 to 127, carries into its highest bit from 10 on. */
    private static final long PAST_NINE = 0x7676767676767676L;

    private final LogSource source;
    private final Grid grid;
    private final int threads;
    private double[][] values = new double[0][];

    GridReader(LogSource source, Grid grid, int threads) {
        this.source = source;
        this.grid = grid;
        this.threads = threads;
    }

    /** Where blocks of whole lines begin, and how many lines stand before each; one entry more than blocks. */
    static final class Blocks {
        private final long[] starts;
        private final int[] lines;

        Blocks(long[] starts, int[] lines) {
            this.starts = starts;
            this.lines = lines;
        }

        long[] starts() {
            return starts;
        }

        int[] lines() {
            return lines;
        }

        int count() {
            return lines.length - 1;
        }

        int allLines() {
            return lines[lines.length - 1];
        }
    }

    /** Thrown where no line ends for too long, or there are too many lines or cells. */
    static final class TooMuch extends Exception {
        private static final long serialVersionUID = 1L;

        TooMuch(String message) {
            super(message);
        }
    }

    Blocks count(int mostLines) throws TooMuch {
        int windows = Math.toIntExact((source.size() - grid.start() + WINDOW - 1) / WINDOW);
        int[] ends = new int[windows];
        long[] last = new long[windows];
        AtomicInteger next = new AtomicInteger();
        each(() -> {
            byte[] buffer = new byte[room(WINDOW)];
            for (int k = next.getAndIncrement(); k < windows; k = next.getAndIncrement()) {
                long from = grid.start() + (long) k * WINDOW;
                int length = (int) Math.min(WINDOW, source.size() - from);
                source.read(from, buffer, 0, length);
                ends[k] = count(buffer, length, grid.lineEnd());
                int at = length - 1;
                while (at >= 0 && buffer[at] != grid.lineEnd()) {
                    at--;
                }
                last[k] = from + at + 1; // the next line's start; from itself where none ended
            }
            return null;
        });
        return blocks(ends, last, mostLines);
    }

    private int room(int most) {
        return (int) Math.min(most, source.size() - grid.start()) + SPARE;
    }

    private Blocks blocks(int[] ends, long[] last, int mostLines) throws TooMuch {
        long[] starts = new long[ends.length + 2];
        int[] lines = new int[ends.length + 2];
        int blocks = 0;
        starts[0] = grid.start();
        long total = 0;
        for (int k = 0; k < ends.length; k++) {
            if (ends[k] > 0) {
                total += ends[k];
                blocks++;
                starts[blocks] = last[k];
                lines[blocks] = (int) Math.min(total, Integer.MAX_VALUE);
                if (last[k] - starts[blocks - 1] > LONGEST_LINE + 2L * WINDOW) {
                    throw tooLong(starts[blocks - 1]);
                }
            }
        }
        if (starts[blocks] < source.size()) {
            if (source.size() - starts[blocks] > LONGEST_LINE) {
                throw tooLong(starts[blocks]);
            }
            blocks++;
            total++;
            starts[blocks] = source.size();
            lines[blocks] = (int) Math.min(total, Integer.MAX_VALUE);
        }
        if (total > mostLines) {
            throw new TooMuch("has " + total + " lines; at most " + mostLines + " are read");
        }
        return new Blocks(Arrays.copyOf(starts, blocks + 1), Arrays.copyOf(lines, blocks + 1));
    }

    private static TooMuch tooLong(long at) {
        return new TooMuch("has no line end for more than " + LONGEST_LINE + " bytes from byte " + at
                + " on: these are no lines of a log");
    }

    private static int count(byte[] buffer, int length, byte wanted) {
        long pattern = wanted * ONES;
        int count = 0;
        int at = 0;
        for (; at + 8 <= length; at += 8) {
            count += Long.bitCount(equal((long) LONGS.get(buffer, at), pattern));
        }
        for (; at < length; at++) {
            count += buffer[at] == wanted ? 1 : 0;
        }
        return count;
    }

    /** The highest bit of each byte that equals the pattern's. */
    private static long equal(long word, long pattern) {
        long x = word ^ pattern;
        return ~(((x & LOWS) + LOWS) | x) & HIGHS;
    }

    /** What was read: one array a column, a place a line; and the lines and cells that hold no figures. */
    static final class Read {
        private final double[][] values;
        private final int[] droppedLines;
        private final List<Why> why;
        private final Numbers badCells;
        private final long missing;
        private final List<List<String>> labels;

        Read(
                double[][] values,
                int[] droppedLines,
                List<Why> why,
                Numbers badCells,
                long missing,
                List<List<String>> labels) {
            this.values = values;
            this.droppedLines = droppedLines;
            this.why = why;
            this.badCells = badCells;
            this.missing = missing;
            this.labels = labels;
        }

        double[][] values() {
            return values;
        }

        int[] droppedLines() {
            return droppedLines;
        }

        List<Why> why() {
            return why;
        }

        Numbers badCells() {
            return badCells;
        }

        long missing() {
            return missing;
        }

        List<List<String>> labels() {
            return labels;
        }
    }

    Read read(Blocks blocks) {
        int columns = grid.columns().size();
        values = new double[columns][];
        for (int c = 0; c < columns; c++) {
            values[c] = new double[blocks.allLines()];
        }
        BlockReader[] done = new BlockReader[blocks.count()];
        AtomicInteger next = new AtomicInteger();
        LineReader.Labels labels = new LineReader.Labels(columns);
        each(() -> {
            byte[] buffer = new byte[room(WINDOW * 2)];
            for (int k = next.getAndIncrement(); k < done.length; k = next.getAndIncrement()) {
                int length = (int) (blocks.starts()[k + 1] - blocks.starts()[k]);
                if (buffer.length < length + SPARE) {
                    buffer = new byte[length + SPARE];
                }
                source.read(blocks.starts()[k], buffer, 0, length);
                Arrays.fill(buffer, length, length + SPARE, (byte) 0);
                BlockReader block = new BlockReader(buffer, length, new LineReader(grid, values, labels));
                block.read(blocks.lines()[k], blocks.lines()[k + 1]);
                done[k] = block;
            }
            return null;
        });
        return gather(done, labels);
    }

    private Read gather(BlockReader[] done, LineReader.Labels labels) {
        Numbers dropped = new Numbers();
        List<Why> why = new ArrayList<>();
        Numbers bad = new Numbers();
        long missing = 0;
        for (BlockReader block : done) {
            LineReader lines = block.lines;
            for (int i = 0; i < lines.dropped.size(); i++) {
                dropped.add(lines.dropped.get(i));
                why.add(lines.why.get(i));
            }
            for (int i = 0; i < lines.badCells.size(); i++) {
                bad.add(lines.badCells.get(i));
            }
            missing += lines.missing;
        }
        int[] gone = dropped.toArray();
        if (gone.length > 0) {
            for (int c = 0; c < values.length; c++) {
                values[c] = without(values[c], gone);
            }
        }
        return new Read(values, gone, why, bad, missing, labels.all());
    }

    private static double[] without(double[] figures, int[] gone) {
        double[] kept = new double[figures.length - gone.length];
        int from = 0;
        int to = 0;
        for (int g : gone) {
            System.arraycopy(figures, from, kept, to, g - from);
            to += g - from;
            from = g + 1;
        }
        System.arraycopy(figures, from, kept, to, figures.length - from);
        return kept;
    }

    /** One block of whole lines. */
    private final class BlockReader {
        private final byte[] bytes;
        private final int length;
        private final LineReader lines;

        BlockReader(byte[] bytes, int length, LineReader lines) {
            this.bytes = bytes;
            this.length = length;
            this.lines = lines;
        }

        void read(int firstLine, int endLine) {
            if (grid.isPlain()) {
                readPlain(firstLine, endLine);
            } else {
                int at = 0;
                for (int line = firstLine; line < endLine; line++) {
                    at = lines.read(bytes, at, length, line);
                }
            }
            for (int c = 0; c < values.length; c++) {
                Unit unit = grid.columns().get(c).unit().orElse(null);
                if (unit != null && !isCoherent(unit)) {
                    toSi(unit, values[c], firstLine, endLine);
                }
            }
        }

        private boolean isCoherent(Unit unit) {
            return unit.toSi(0) == 0 && unit.toSi(1) == 1;
        }

        private void toSi(Unit unit, double[] figures, int from, int to) {
            for (int i = from; i < to; i++) {
                figures[i] = unit.toSi(figures[i]);
            }
        }

        /** Lines of decimal numbers and nothing else, eight bytes at once; any other goes to the reader of lines. */
        private void readPlain(int firstLine, int endLine) {
            byte[] b = bytes;
            double[][] to = values;
            double[] powers = DecimalBytes.POWERS;
            int columns = to.length;
            byte delimiter = grid.delimiter();
            byte end = grid.lineEnd();
            long marks = grid.mark() * ONES;
            int at = 0;
            for (int line = firstLine; line < endLine; line++) {
                int p = at;
                int c = 0;
                for (; c < columns; c++) {
                    long word = (long) LONGS.get(b, p);
                    boolean negative = (byte) word == '-';
                    if (negative) {
                        word = (long) LONGS.get(b, ++p);
                    }
                    long t = word ^ ZEROS;
                    long others = (((t & LOWS) + PAST_NINE) | t) & HIGHS;
                    long points = equal(word, marks);
                    long stops = others & ~points;
                    int width = Long.numberOfTrailingZeros(stops) >>> 3; // 8 where nothing stops it
                    points &= (stops & -stops) - 1; // those of the cell
                    long below = (points >>> 7) - 1; // the bytes before the point, all where there is none
                    int marked = points == 0 ? 0 : 1;
                    int digits = width - marked;
                    byte stop = b[p + width];
                    if ((points & (points - 1)) != 0
                            || digits <= 0
                            || (c + 1 < columns ? stop != delimiter : stop != end && stop != '\r')) {
                        break;
                    }
                    int places = marked * (width - 1 - (Long.numberOfTrailingZeros(points) >>> 3));
                    long d = ((t & below) | ((t >>> 8) & ~below)) << (64 - 8 * digits);
                    d = d * 10 + (d >>> 8);
                    long whole = ((d & 0x000000ff000000ffL) * 0x000f424000000064L
                                    + ((d >>> 16) & 0x000000ff000000ffL) * 0x0000271000000001L)
                            >>> 32;
                    double size = whole / powers[places];
                    to[c][line] = negative ? -size : size;
                    p += width + 1;
                }
                if (c == columns && p <= length) {
                    if (b[p - 1] == end) {
                        at = p;
                        continue;
                    }
                    if (b[p] == end && p < length) { // carriage return before it
                        at = p + 1;
                        continue;
                    }
                }
                at = lines.read(b, at, length, line);
            }
        }
    }

    private void each(Callable<Void> work) {
        if (threads == 1 || grid.hasText()) {
            try {
                work.call();
            } catch (Exception e) {
                throw rethrown(e);
            }
            return;
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Void>> all =
                    IntStream.range(0, threads).mapToObj(i -> pool.submit(work)).toList();
            for (Future<Void> one : all) {
                one.get();
            }
        } catch (ExecutionException e) {
            throw rethrown(Objects.requireNonNullElse(e.getCause(), e));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while a log was read", e);
        } finally {
            pool.shutdownNow();
        }
    }

    private static RuntimeException rethrown(Throwable cause) {
        if (cause instanceof RuntimeException runtime) {
            return runtime;
        }
        if (cause instanceof Error error) {
            throw error;
        }
        return new IllegalStateException(cause);
    }
}
