package longthrow.buildfile;

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
}
