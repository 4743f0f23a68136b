package longthrow.workshop.web.dyno;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RowFaults;
import longthrow.core.recording.RowLines;
import longthrow.core.recording.RunningTime;
import longthrow.core.recording.Sureness;
import longthrow.workshop.draw.LogChart;

/** How long a look at an invented log of an hour takes once it is in memory, and how large its picture is. */
final class LogSightSpeed {
    private static final int LOOKS = 15;
    private static final double NANOSECONDS_A_MILLISECOND = 1e6;

    private LogSightSpeed() {}

    /** Six columns at 1 kHz, every one with scatter that fills its strip; one figure of torque leaps. */
    static LogChart.Log log(int rows) {
        Unit[] units = {Units.SECOND, Units.RPM, Units.RPM, Units.NEWTON_METRE, Units.CELSIUS, Units.BARE_RATIO};
        Channel[] channels = {
            Channel.TIME,
            Channel.ENGINE_SPEED,
            Channel.DRUM_SPEED,
            Channel.TORQUE,
            Channel.HEAD_TEMPERATURE,
            Channel.LAMBDA
        };
        SplittableRandom random = new SplittableRandom(20261127);
        double[][] values = new double[channels.length][rows];
        List<Recording.Column> columns = new ArrayList<>();
        for (int c = 0; c < channels.length; c++) {
            columns.add(new Recording.Column(
                    channels[c].label(), channels[c], Optional.of(units[c]), Sureness.TOLD, "", List.of()));
            for (int row = 0; row < rows; row++) {
                values[c][row] = c == 0 ? row / 1000.0 : 100 * c + 50 * random.nextDouble();
            }
        }
        values[3][rows / 3] = 30_000;
        Recording recording = new Recording(columns, values, RowLines.from(2, rows));
        List<RowFault> faults = RowFaults.of(recording);
        return new LogChart.Log("hour.csv", recording, RunningTime.of(recording, faults), faults, Set.of(), List.of());
    }

    /** A look at a stretch of it. */
    static LogSight look(LogChart.Log log, String from, String to) {
        return LogSight.of(log, new LogSight.Wish(from, to, List.of(), false), "/b/x/dyno/log?log=hour.csv");
    }

    /** Prints the median of looks at all of it and at a hundredth, and the size of both pictures. */
    public static void main(String[] arguments) {
        LogChart.Log log = log(3_600_000);
        for (String to : new String[] {"", "36", "0.5"}) {
            double[] times = new double[LOOKS];
            int bytes = 0;
            for (int i = 0; i < LOOKS; i++) {
                long begun = System.nanoTime();
                bytes = look(log, "", to).chart().getBytes(StandardCharsets.UTF_8).length;
                times[i] = (System.nanoTime() - begun) / NANOSECONDS_A_MILLISECOND;
            }
            Arrays.sort(times);
            System.out.printf("to '%s': %.0f ms, %,d bytes%n", to, times[LOOKS / 2], bytes);
        }
    }
}
