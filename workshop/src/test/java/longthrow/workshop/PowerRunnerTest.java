package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.life.Life;
import longthrow.core.power.Prediction;
import longthrow.core.power.Speeds;
import longthrow.core.quantity.Units;
import longthrow.workshop.json.AnswerJson;
import org.junit.jupiter.api.Test;

/** An invented engine, on one thread and on several. */
class PowerRunnerTest {
    private static final String ENGINE = """
            longthrow: 1
            engine: {name: breathing, invented: yes, valves: overhead, made_for: utility, cooling: fan}
            intake: {air_filter: none}
            exhaust: {silencer: none}
            head: {chamber_volume: 25.0 cc}
            gasket: {thickness: 1.2 mm, bore: 71 mm}
            camshaft: {drive: in_case}
            cylinder: {bore: 70 mm, deck_clearance: 0.3 mm}
            piston: {crown_volume: 0 cc}
            crankshaft: {stroke: 52 mm}
            use: {fuel: petrol, wanted_speed: 3600 rpm}
            """;

    private static final Speeds SPEEDS = new Speeds(List.of(Units.RPM.toSi(3000), Units.RPM.toSi(3600)), 2, 1);

    private static Build build() {
        return BuildFile.read(ENGINE.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
    }

    private static Answer on(int threads) {
        Build build = build();
        return Prediction.of(
                        build, Life.of(build, Catalogue.EMPTY, List.of()), SPEEDS, PowerRunner.on(threads, () -> true))
                .orElseThrow();
    }

    @Test
    void theSameDigitsForAnyNumberOfThreads() {
        String one = AnswerJson.of(on(1));
        assertThat(one).contains("\"torque\"", "\"standing\"");
        assertThat(AnswerJson.of(on(3))).isEqualTo(one);
    }

    @Test
    void endsSoonAndWithoutAnAnswerWhenItIsEndedFromOutside() {
        Build build = build();
        AtomicInteger asked = new AtomicInteger();
        assertThat(Prediction.of(
                        build,
                        Life.of(build, Catalogue.EMPTY, List.of()),
                        SPEEDS,
                        PowerRunner.on(2, () -> asked.incrementAndGet() < 4)))
                .isEmpty();
        assertThat(asked.get()).isLessThan(20);
    }

    @Test
    void noThreadIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PowerRunner.on(0, () -> true))
                .withMessageContaining("1 at least");
    }
}
