package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import org.junit.jupiter.api.Test;

/**
 * The inertia of a drum found by other means than telling it, from sheet and logs to the answer. A drum of 3.6 kg m2 with 1.5 N m of friction at any speed, worked by hand: under 5 kg on 0.2 m it speeds
 * up by (5 * 9.80665 * 0.2 - 1.5) / (3.6 + 5 * 0.04) = 2.1860 rad/s2, falls 1.80 m in root(2 * 1.80 / (0.2 * 2.1860)) = 2.8695 s and then slows by 1.5 / 3.6 = 0.41667, so it stands after
 * 2.1860 * 2.8695 / 0.41667 = 15.055 s. Under 10 kg: 18.1133 / 4.0 = 4.5283 rad/s2 and 1.9937 s.
 */
class DrumInertiaTest {
    private static final String FIVE =
            "{mass: 5 kg ± 0.01 kg, height: 1.80 m ± 1 mm, time: 2.8695 s ± 0.01 s, stops_after: 15.055 s ± 0.1 s}";
    private static final String TWO =
            "{mass: 5 kg ± 0.01 kg, height: 1.80 m ± 1 mm, time: 2.8695 s ± 0.01 s}, {mass: 10 kg ± 0.01 kg, height: 1.80 m ± 1 mm, time: 1.9937 s ± 0.01 s}";

    private static Answer answer(String inertia) {
        String text = """
                longthrow_dyno: 1
                name: drum
                standard: none
                bench: {kind: inertia_drum, engine_turns: 3 ± 0.001, cord_radius: 200 mm ± 0.2 mm, coast_down: bare.csv, %s}
                sessions: [{name: A, setup: stock, runs: [{log: pull.csv}]}]
                """.formatted(inertia);
        ReadDynoSheet read = DynoSheetFile.read(text);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        DynoSheet sheet = read.sheet().orElseThrow();
        Map<String, String> files = new HashMap<>();
        files.put("bare.csv", log(100, -1.5 / 3.6, 100));
        files.put("disc.csv", log(100, -1.5 / 4.5, 100)); // with 0.9 kg m2 more
        files.put("pull.csv", log(60, 20, 5));
        return Dyno.of(
                sheet,
                new LogsOfASheet(
                        sheet,
                        name -> Optional.ofNullable(files.get(name))
                                .map(t -> LogSource.of(t.getBytes(StandardCharsets.UTF_8))),
                        1));
    }

    /** Drum speed from a speed [rad/s] that changes by so much a second, read to 0.01 rpm. */
    private static String log(double from, double change, double seconds) {
        StringBuilder text = new StringBuilder("Time [s],Drum speed [rpm],Engine speed [rpm]\n");
        for (int row = 0; row <= seconds * 20; row++) {
            double rpm = (from + change * row / 20.0) * 30 / Math.PI + 0.02 * Math.sin(7.0 * row);
            text.append(String.format(Locale.ROOT, "%.2f,%.2f,%.2f\n", row / 20.0, rpm, 3 * rpm));
        }
        return text.toString();
    }

    private static String said(Answer answer, Finding.Kind kind) {
        return answer.findings().stream()
                .filter(f -> f.kind() == kind && f.message().contains("drum's inertia"))
                .map(Finding::message)
                .findFirst()
                .orElse("");
    }

    private static double torque(Answer answer) {
        return answer.runs()
                .orElseThrow()
                .runs()
                .get(0)
                .torque()
                .orElseThrow()
                .figure()
                .value();
    }

    /** The pull speeds up by 20 rad/s2: 3.6 * 20 N m and the drag of 1.5, a third of it at the crank, is 24.5. */
    @Test
    void oneFallAndTheFreeRunAfterIt() {
        Answer answer = answer("falling_mass: [" + FIVE + "]");
        assertThat(said(answer, Finding.Kind.NOTE))
                .startsWith("the drum's inertia is 3.6")
                .contains("by the fall of 5 kg");
        assertThat(torque(answer)).isBetween(24.2, 24.8);
        assertThat(said(answer, Finding.Kind.WARNING)).isEmpty();
    }

    @Test
    void twoFalls() {
        Answer answer = answer("falling_mass: [" + TWO + "]");
        assertThat(said(answer, Finding.Kind.NOTE))
                .startsWith("the drum's inertia is 3.6")
                .contains("by the falls of two masses");
        assertThat(torque(answer)).isBetween(24.2, 24.8);
    }

    /** I d1 = (I + 0.9) d2. */
    @Test
    void aDiscPutOn() {
        Answer answer = answer("added_disc: {inertia: 0.9 kg·m² ± 0.005 kg·m², coast_down: disc.csv}");
        assertThat(said(answer, Finding.Kind.NOTE))
                .startsWith("the drum's inertia is 3.6")
                .contains("added disc");
        assertThat(torque(answer)).isBetween(24.2, 24.8);
        // by shape: half of 20 kg times the square of 0.3 m is 0.9
        Answer shape = answer("added_disc: {mass: 20 kg, diameter: 600 mm ± 0.1 mm, coast_down: disc.csv}");
        assertThat(torque(shape)).isBetween(24.2, 24.8);
        assertThat(said(answer("added_disc: {inertia: 0.9 kg·m², coast_down: bare.csv}"), Finding.Kind.WARNING))
                .contains("files are changed over");
        assertThat(said(answer("added_disc: {inertia: 0.9 kg·m², coast_down: lost.csv}"), Finding.Kind.WARNING))
                .contains("one could not be read");
    }

    @Test
    void waysThatDoNotAgreeAreAWarningAndTheToldOneIsUsed() {
        Answer agrees = answer("drum_inertia: 3.60 kg·m² ± 0.02 kg·m², falling_mass: [" + FIVE + "]");
        assertThat(said(agrees, Finding.Kind.WARNING)).isEmpty();
        Answer off = answer("drum_inertia: 4.20 kg·m² ± 0.02 kg·m², falling_mass: [" + FIVE + "]");
        assertThat(said(off, Finding.Kind.WARNING))
                .contains("does not agree", "4.200 ± 0.020 kg·m² as told", "more than their doubt");
        assertThat(torque(off)).isBetween(28.2, 28.9);
    }

    /** What nobody wrote a ± for is taken as workshops have it, and told. */
    @Test
    void scalesTapeAndWatchAreTakenAsWorkshopsHaveThem() {
        Answer answer = answer("falling_mass: [{mass: 5 kg, height: 1.80 m, time: 2.87 s, stops_after: 15.05 s}]");
        assertThat(answer.defaults())
                .extracting(d -> d.where())
                .contains("bench.falling_mass.mass", "bench.falling_mass.height", "bench.falling_mass.time");
        assertThat(said(answer, Finding.Kind.NOTE)).startsWith("the drum's inertia is 3.60 ± 0.49 kg·m²");
    }
}
