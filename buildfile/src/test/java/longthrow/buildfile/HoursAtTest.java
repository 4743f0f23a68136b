package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.build.HoursAt;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The duty in a build file: what is read, written, changed and refused. */
class HoursAtTest {
    private static final String HEAD = "longthrow: 1\nengine: {name: any}\n";
    private static final String TWO = HEAD + Layout.HOURS_AT_EXAMPLE + "\n";

    private static ReadBuild read(String text) {
        return BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Build build(String text) {
        ReadBuild read = read(text);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    @Test
    void aDutyGoesInAndOutAsItWasWritten() {
        Build build = build(TWO);
        assertThat(build.hoursAt()).extracting(s -> s.speed().written()).containsExactly("3000 rpm", "5200 rpm");
        assertThat(build.hoursAt()).extracting(HoursAt::part).containsExactly(0.7, 0.3);
        assertThat(build(BuildFile.write(build)).hoursAt()).isEqualTo(build.hoursAt());
        assertThat(BuildFile.write(build)).contains("hours_at:\n  - speed: 3000 rpm\n    share: 70 %\n");
        assertThat(BuildFile.write(build(HEAD))).doesNotContain(Layout.HOURS_AT);
        assertThat(build(HEAD + "hours_at: []\n").hoursAt()).isEmpty();
        assertThat(build(HEAD + "hours_at: [{speed: 314.16 rad/s, share: 0.335}, {speed: 1200 rpm, share: 0.67}]\n")
                        .hoursAt())
                .as("within 0.5 % of the whole")
                .hasSize(2);
    }

    /** Comments and every other line stay. */
    @Test
    void anEditPutsItInAndTakesItOut() {
        String text = HEAD + "# mine\nuse: {wanted_speed: 5200 rpm}\n";
        String with = BuildFile.edit(
                        text, Layout.HOURS_AT, BuildFile.hoursAt(build(TWO).hoursAt()))
                .text()
                .orElseThrow();
        assertThat(with).startsWith(text.strip());
        assertThat(build(with).hoursAt()).isEqualTo(build(TWO).hoursAt());
        String without = BuildFile.edit(with, Layout.HOURS_AT, BuildFile.hoursAt(List.of()))
                .text()
                .orElseThrow();
        assertThat(build(without)).isEqualTo(build(text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[{speed: 3000 rpm, share: 70 %}, {speed: 5200 rpm, share: 35 %}] | hours_at | 105 %' is what the shares add up to | make a share smaller",
                "[{speed: 3000 rpm, share: 70 %}, {speed: 5200 rpm, share: 29.4 %}] | hours_at | 99.4 %' is what | say at which speed",
                "[{speed: 3000 rpm, share: 70 %}, {speed: 3000.0 rpm, share: 30 %}] | hours_at[2].speed | stands there twice | add its shares together",
                "[{speed: 3000 rpm, share: 0 %}, {speed: 5200 rpm, share: 100 %}] | hours_at[1].share | no share of the running time | such as 30 %",
                "[{speed: 3000 rpm, share: -20 %}, {speed: 5200 rpm, share: 120 %}] | hours_at[1].share | above 0 %, at most 100 % | such as 30 %",
                "[{speed: 3000 rpm, share: 70}, {speed: 5200 rpm, share: 30}] | hours_at[1].share | no share of the running time | such as 30 %",
                "[{speed: 30 rpm, share: 100 %}] | hours_at[1].speed | no speed of such an engine | 100 rpm to 16000 rpm",
                "[{speed: 3000 mm, share: 100 %}] | hours_at[1].speed | mm | rpm",
                "[{speed: 3000 rpm ± 50 rpm, share: 100 %}] | hours_at[1].speed | has a ± | leave out",
                "[{share: 100 %}] | hours_at[1] | speed' is missing | 3000 rpm",
                "[{speed: 3000 rpm}] | hours_at[1] | share' is missing | 70 %",
                "[{speed: 3000 rpm, share: 100 %, note: mine}] | hours_at[1].note | not a key | speed, share",
                "[3000 rpm] | hours_at[1] | lines of key: value | keys below it",
                "3000 rpm | hours_at | a list | dash"
            })
    void whatIsNoDutyIsRefusedOnceWithWhereAndHowToMendIt(String written, String where, String said, String mend) {
        ReadBuild read = read(HEAD + "hours_at: " + written + "\n");
        assertThat(read.build()).isEmpty();
        assertThat(read.faults())
                .singleElement()
                .extracting(Fault::message)
                .asString()
                .contains(where, said, mend);
    }

    @Test
    void aDutyHasNoMoreStepsThanAnybodyCanTellApart() {
        String steps = IntStream.range(0, 25)
                .mapToObj(k -> "{speed: " + (1000 + k) + " rpm, share: 4 %}")
                .collect(Collectors.joining(", ", "hours_at: [", "]\n"));
        assertThat(read(HEAD + steps).faults())
                .singleElement()
                .extracting(Fault::message)
                .asString()
                .contains("25 steps", "at most 24");
    }

    /** Nothing in it is of a person: it is handed on as it is. */
    @Test
    void aDutyIsHandedOn() {
        Build build = build(TWO);
        assertThat(Shared.of(build, Catalogue.EMPTY).build().hoursAt()).isEqualTo(build.hoursAt());
    }

    @Test
    void stepsAreToldInHours() {
        Build build = build(TWO);
        assertThat(HoursAt.said(build.hoursAt(), Optional.of(Quantity.of("60", Units.HOUR))))
                .containsExactly("70 % at 3000 rpm, 42 h of 60 h", "30 % at 5200 rpm, 18 h of 60 h");
        assertThat(HoursAt.said(build.hoursAt(), Optional.empty()))
                .containsExactly("70 % at 3000 rpm", "30 % at 5200 rpm");
    }

    /** What no reader lets in, no build holds. */
    @Test
    void noBuildHoldsWhatIsNoDuty() {
        HoursAt half = new HoursAt(Quantity.of("3000", Units.RPM), Quantity.of("50", Units.PERCENT));
        Build build = build(HEAD);
        assertThatThrownBy(() -> build.withHoursAt(List.of(half)))
                .hasMessageContaining("50 % is what the shares add up to");
        assertThatThrownBy(() -> build.withHoursAt(List.of(half, half))).hasMessageContaining("twice");
        assertThat(build(TWO).withGas(List.of()).withTaken(List.of()).hoursAt()).hasSize(2);
    }
}
