package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;
import longthrow.core.measure.Glimpse;
import longthrow.core.measure.Measure;
import longthrow.core.measurement.NotConvergedException;

/** Build files read and measured, those of late remembered: a page shown again costs nothing. */
public final class Desk {
    private static final int MOST_REMEMBERED = 64;

    private final Lately<String, Work> worked = new Lately<>(MOST_REMEMBERED, Desk::fresh);
    private final Lately<String, Glance> glanced = new Lately<>(MOST_REMEMBERED, Desk::freshGlance);

    /**
     * A build file and what comes of it.
     * @param build   empty when the text cannot be read
     * @param measure empty when the text cannot be read
     */
    public record Work(String text, Optional<Build> build, List<Fault> faults, Optional<Answer> measure) {}

    /** Reads and measures a build file, or remembers what came of it. */
    public Work work(String text) {
        return worked.of(text);
    }

    /** What came of it, where that is remembered. */
    public Optional<Work> ifKnown(String text) {
        return worked.ifKnown(text);
    }

    /**
     * The sound figures of a build file and its suspects, without next readings and all else that takes longer: for an edit that is
     * still being typed.
     */
    public Glance glance(String text) {
        return glanced.of(text);
    }

    /**
     * What a glance sees.
     * @param figures  that hang on no reading in dispute; none where no engine comes near the readings
     * @param suspects readings that do not agree
     */
    public record Glance(List<Result> figures, List<Finding> suspects) {
        private static final Glance NOTHING = new Glance(List.of(), List.of());

        public Glance {
            figures = List.copyOf(figures);
            suspects = List.copyOf(suspects);
        }
    }

    private static Work fresh(String text) {
        ReadBuild read = BuildFile.read(text);
        return new Work(text, read.build(), read.faults(), read.build().map(build -> Measure.of(build, List.of())));
    }

    private static Glance freshGlance(String text) {
        Optional<Build> build = BuildFile.read(text).build();
        try {
            return build.map(Glimpse::of)
                    .map(g -> new Glance(g.values(), g.suspects()))
                    .orElse(Glance.NOTHING);
        } catch (NotConvergedException nothingNear) {
            return Glance.NOTHING;
        }
    }
}
