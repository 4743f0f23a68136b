package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.life.Life;

/** What may be run: limits held together with gaps, as command and pages ask, or limits by themselves. */
final class Running {
    private Running() {}

    static Answer asked(Build build) {
        return Life.of(build, Catalogue.EMPTY, Clear.of(build).clearances());
    }

    /** With every gap taken to be there: for what hangs on no gap. */
    static Answer limitsAlone(Build build) {
        return Life.of(build, Catalogue.EMPTY, List.of());
    }

    /** A build that its reader takes whole. */
    static Build build(String text) {
        ReadBuild read = BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    static String replaced(String text, String what, String by) {
        assertThat(text).contains(what);
        return text.replace(what, by);
    }
}
