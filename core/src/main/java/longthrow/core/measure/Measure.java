package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;
import longthrow.core.build.Donor;

/** The question {@code measure}: a pure function from a build to its answer. */
public final class Measure {
    private Measure() {}

    /**
     * What the engine really is.
     * @param donors versions of engines to tell this one from; may be empty
     * @throws IllegalArgumentException when a reading names an instrument the build does not have
     */
    public static Answer of(Build build, List<Donor> donors) {
        Figures figures = Figures.of(build);
        List<Result> values = figures.results();
        List<Finding> findings = new ArrayList<>(figures.readings().findings());
        return new Answer(
                "measure",
                build.name(),
                build.invented(),
                build.units(),
                values,
                List.of(),
                findings,
                List.of(),
                figures.unknowns(),
                figures.readings().defaults(),
                List.of());
    }
}
