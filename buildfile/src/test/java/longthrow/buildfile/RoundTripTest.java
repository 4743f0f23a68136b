package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.LongStream;
import longthrow.core.build.Build;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Nothing that was written is lost. */
class RoundTripTest {
    static LongStream seeds() {
        return LongStream.range(20240601, 20240601 + 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whatIsWrittenIsReadBackEqual(long seed) {
        Build build = RandomBuilds.build(seed);
        String text = BuildFile.write(build);
        ReadBuild read = BuildFile.read(text);
        assertThat(read.faults()).as(text).extracting(Fault::message).isEmpty();
        Build again = read.build().orElseThrow();
        assertThat(again).isEqualTo(build);
        assertThat(RandomBuilds.written(again)).isEqualTo(RandomBuilds.written(build));
        assertThat(BuildFile.write(again)).isEqualTo(text);
    }

    @Test
    void examplesReadBackEqual() {
        for (String example : Repository.EXAMPLES) {
            Build build = BuildFile.read(Repository.text(example)).build().orElseThrow();
            assertThat(BuildFile.read(BuildFile.write(build)).build()).contains(build);
        }
    }

    @Test
    void whatCannotStandInAFileIsNotWritten() {
        for (String name : List.of("bell\u0007", "tab\t", "\ud800", "a".repeat(5000))) {
            assertThatThrownBy(() -> BuildFile.write(Build.empty(name))).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
