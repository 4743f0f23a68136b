package longthrow.buildfile.log;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RowFaults;
import longthrow.core.recording.Stretch;
import longthrow.core.recording.Stretches;

/**
 * How long a large log takes: layout and rows to arrays in SI, then its faults and runs.
 *
 * <p>{@code java ... longthrow.buildfile.log.LogSpeed LOG [rounds] [threads]}; the log has six columns, time in seconds first and engine speed second.
 */
final class LogSpeed {
    private static final com.sun.management.OperatingSystemMXBean SYSTEM =
            (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private LogSpeed() {}

    public static void main(String[] arguments) throws IOException {
        int rounds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 15;
        int threads = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 2;
        try (FileChannel channel = FileChannel.open(Path.of(arguments[0]))) {
            double[] cpu = new double[rounds];
            double[] wall = new double[rounds];
            double[] after = new double[rounds];
            for (int i = 0; i < rounds; i++) {
                long c = SYSTEM.getProcessCpuTime();
                long w = System.nanoTime();
                LogRead read = read(new Mapped(channel), threads);
                cpu[i] = (SYSTEM.getProcessCpuTime() - c) / 1e9;
                wall[i] = (System.nanoTime() - w) / 1e9;
                c = SYSTEM.getProcessCpuTime();
                Recording recording = read.recording();
                List<RowFault> faults = RowFaults.of(recording);
                List<Stretch> stretches = Stretches.of(recording);
                after[i] = (SYSTEM.getProcessCpuTime() - c) / 1e9;
                System.out.printf(
                        Locale.ROOT,
                        "rows %d listed %d faults %d runs %d: to arrays cpu %.3f s wall %.3f s, faults and runs cpu"
                                + " %.3f s%n",
                        recording.rows(),
                        read.listed().size(),
                        faults.size(),
                        stretches.size(),
                        cpu[i],
                        wall[i],
                        after[i]);
            }
            System.out.printf(
                    Locale.ROOT,
                    "median of the last %d: to arrays cpu %.3f s wall %.3f s, faults and runs cpu %.3f s%n",
                    rounds - rounds / 3,
                    median(cpu, rounds / 3),
                    median(wall, rounds / 3),
                    median(after, rounds / 3));
        }
    }

    private static LogRead read(LogSource source, int threads) {
        LogTold told = new LogTold(
                (char) 0,
                0,
                Optional.empty(),
                Map.of(4, new LogTold.Column(Channel.AIR_TEMPERATURE, Optional.of(Units.KELVIN))));
        LogFile file = (LogFile) LogFile.open(source, told);
        return ((LogFile.Done) file.read(threads)).read();
    }

    private static double median(double[] all, int without) {
        double[] sorted = Arrays.copyOfRange(all, without, all.length);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** The bytes of a file, laid into memory by the system. */
    private static final class Mapped implements LogSource {
        private final MappedByteBuffer bytes;

        Mapped(FileChannel channel) throws IOException {
            bytes = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size());
        }

        @Override
        public long size() {
            return bytes.capacity();
        }

        @Override
        public void read(long at, byte[] into, int offset, int count) {
            bytes.get((int) at, into, offset, count);
        }
    }
}
