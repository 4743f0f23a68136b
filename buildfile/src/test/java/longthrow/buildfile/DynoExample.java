package longthrow.buildfile;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import longthrow.core.gain.AirReading;
import longthrow.core.gain.AirStandard;
import longthrow.core.quantity.Units;

/**
 * The example of runs with logs, examples/dyno/muffler.yaml, made from a truth that is known: an invented engine on an invented drum, stock, with another muffler, stock again. {@link #main} writes the files.
 *
 * <p>The crank speeds up itself and the drum: {@code (T - I k w') k e = J w' + L(w)} with torque T, inertia of the engine I and of the drum J, turns of the crank for one of the drum k, share that the drive
 * hands on e, speed of the drum w and what its bearings and the air take L.
 */
final class DynoExample {
    /** What the other muffler truly adds, at every speed. */
    static final double GAIN = 0.025;
    /** What the engine loses from the first pull to the last, on a line. */
    private static final double DRIFT = -0.008;
    /** What one pull differs from the next, standard deviation. */
    private static final double SCATTER = 0.002;

    private static final double COLD = -0.03;

    static final double DRUM = 2.10; // kg m2
    static final double ENGINE = 0.012; // kg m2
    static final double TURNS = 3;
    static final double HANDED_ON = 0.96;

    private static final int ROWS = 50; // a second
    private static final double LOW = 2200; // rpm
    private static final double HIGH = 5300; // rpm
    private static final int PULLS = 12;
    private static final String HEADER = "Time [s],Engine speed [rpm],Drum speed [rpm],Exhaust temperature [°C]\n";

    private static final AirReading[] AIR = {
        AirReading.exact(99.80, 18.0, 0.50), AirReading.exact(99.70, 21.0, 0.45), AirReading.exact(99.60, 23.5, 0.40)
    };

    private static final String SHEET = """
            longthrow_dyno: 1
            name: Tarn 206, another muffler
            invented: yes
            notes:
              - Engine, drum and logs are made up by a generator that knows the truth; it stands among the tests.
            standard: iso_1585
            bench:
              kind: inertia_drum
              name: own drum
              drum_inertia: 2.10 kg·m² ± 0.02 kg·m²
              engine_inertia: 0.012 kg·m² ± 0.002 kg·m²
              engine_turns: 3.0
              drive_efficiency: 0.96 ± 0.02
              coast_down: coast-down.csv
            baseline: stock
            speeds: {from: 2600 rpm, to: 5000 rpm}
            sessions:
              - name: A1
                setup: stock
                date: 2026-05-02
                who: R. Example
                air: {pressure: 99.80 kPa, temperature: 18.0 °C, humidity: 50 %}
                runs: [{log: a1-1.csv}, {log: a1-2.csv}, {log: a1-3.csv}, {log: a1-4.csv}]
              - name: B
                setup: muffler
                date: 2026-05-02
                who: R. Example
                air: {pressure: 99.70 kPa, temperature: 21.0 °C, humidity: 45 %}
                runs: [{log: b-1.csv}, {log: b-2.csv}, {log: b-3.csv}, {log: b-4.csv}]
              - name: A2
                setup: stock
                date: 2026-05-02
                who: R. Example
                air: {pressure: 99.60 kPa, temperature: 23.5 °C, humidity: 40 %}
                runs: [{log: a2-1.csv}, {log: a2-2.csv}, {log: a2-3.csv}]
            """;

    private final Random random = new Random(20260502);
    private final Map<String, String> files = new LinkedHashMap<>();

    private DynoExample() {}

    /** Every file by its name. */
    static Map<String, String> files() {
        DynoExample example = new DynoExample();
        example.write();
        return example.files;
    }

    /** Torque of the crank in the standard's air, warm, stock, at the first pull [N m], by its speed [rpm]. */
    static double truth(double rpm) {
        double u = (rpm - 3500) / 2000;
        return 13.2 - 1.9 * u * u - 0.5 * u;
    }

    /** Lost by bearings and air [N m], by the drum's speed [rad/s]. */
    private static double lost(double speed) {
        return 2 + 0.012 * speed + 4e-5 * speed * speed;
    }

    private void write() {
        files.put("muffler.yaml", SHEET);
        files.put("coast-down.csv", coastDown());
        for (int pull = 0; pull < PULLS; pull++) {
            int session = pull / 4;
            String name = new String[] {"a1", "b", "a2"}[session] + "-" + (pull % 4 + 1) + ".csv";
            if (pull == PULLS - 1) { // the last two in one file
                files.merge("a2-3.csv", pull(pull, 14).substring(HEADER.length()), String::concat);
            } else {
                files.put(name, pull(pull, 0));
            }
        }
        files.compute("a1-3.csv", (name, text) -> text.replace(',', ';').replace('.', ','));
        files.compute("a1-2.csv", (name, text) -> with(text, 150, "9999.0"));
        files.compute("b-2.csv", (name, text) -> with(with(text, 180, "0.0"), 181, "0.0"));
    }

    /** Another drum speed in one row. */
    private static String with(String text, int row, String drum) {
        String[] lines = text.split("\n", -1);
        String[] cells = lines[row].split(",", -1);
        cells[2] = drum;
        lines[row] = String.join(",", cells);
        return String.join("\n", lines);
    }

    private String coastDown() {
        StringBuilder text = new StringBuilder("Time [s],Drum speed [rpm]\n");
        double speed = Units.RPM.toSi(HIGH / TURNS);
        for (int row = 0; row < 650; row++) {
            text.append(String.format(
                    Locale.ROOT, "%.1f,%.1f\n", row / 10.0, Units.RPM.fromSi(speed) + 0.3 * random.nextGaussian()));
            for (int i = 0; i < 10; i++) {
                speed -= lost(speed) / DRUM * 0.01;
            }
        }
        return text.toString();
    }

    /** The rows of one pull: half a second held, the pull, half a second with the throttle shut. */
    private String pull(int pull, double from) {
        int session = pull / 4;
        double factor = AirStandard.ISO_1585.correct(AIR[session]).factor().value();
        double share = (1 + DRIFT * pull / (PULLS - 1.0))
                * (session == 1 ? 1 + GAIN : 1)
                * (pull % 4 == 0 ? 1 + COLD : 1)
                * (1 + SCATTER * random.nextGaussian())
                / factor;
        boolean slips = pull == 6;
        StringBuilder text = new StringBuilder(HEADER);
        double drum = Units.RPM.toSi(LOW / TURNS);
        double hot = pull % 4 == 0 ? 390 : 470;
        int shut = -1;
        for (int row = 0; shut < 0 || row < shut + ROWS / 2; row++) {
            double rpm = TURNS * Units.RPM.fromSi(drum);
            double engine = shut >= 0 ? rpm - 40 * (row - shut) : slips && rpm > 3700 && rpm < 4300 ? 1.06 * rpm : rpm;
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%.1f,%.0f\n",
                    from + row / (double) ROWS,
                    engine + 5 * random.nextGaussian(),
                    rpm / TURNS + 0.3 * random.nextGaussian(),
                    hot + 0.03 * (rpm - LOW) + random.nextGaussian()));
            if (row >= ROWS / 2 && shut < 0) {
                for (int i = 0; i < 20; i++) {
                    double torque = share * truth(TURNS * Units.RPM.fromSi(drum));
                    drum += (torque * TURNS * HANDED_ON - lost(drum))
                            / (DRUM + ENGINE * TURNS * TURNS * HANDED_ON)
                            / ROWS
                            / 20;
                }
                shut = TURNS * Units.RPM.fromSi(drum) >= HIGH ? row + 1 : -1;
            } else if (shut >= 0) {
                drum -= lost(drum) / DRUM / ROWS;
            }
        }
        return text.toString();
    }

    /** Writes the example. */
    public static void main(String[] none) throws IOException {
        for (Map.Entry<String, String> file : files().entrySet()) {
            Files.write(
                    Repository.at("examples/dyno").resolve(file.getKey()),
                    file.getValue().getBytes(StandardCharsets.UTF_8));
        }
    }
}
