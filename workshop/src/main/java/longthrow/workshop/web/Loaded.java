package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.life.Life;
import longthrow.core.shake.Shake;
import longthrow.workshop.store.CatalogueEntry;

/** What an engine bears and how it shakes, each worked out once for a text and the catalogues in use, of late, and one after the other. */
public final class Loaded {
    private static final int MOST_REMEMBERED = 16;

    /** Speeds of somebody who looks through them with a slider; apart, so that they push no answer of another's out. */
    private static final int MOST_SPEEDS = 64;

    private final Workbench bench;
    private final Catalogues catalogues;
    private final Clearances clearances;
    private final Lately<Asked, Answer> lives = new Lately<>(MOST_REMEMBERED, this::life);
    private final Lately<Asked, Answer> shakes = new Lately<>(MOST_REMEMBERED, this::shake);
    private final Lately<AtSpeed, Answer> speeds = new Lately<>(MOST_SPEEDS, this::shakeAt);
    private final Turns turns = new Turns(1);

    /**
     * None worked out yet.
     * @param bench      whose rail says how far each came
     * @param clearances whether anything touches, which no limit of speed stands over
     */
    public Loaded(Workbench bench, Catalogues catalogues, Clearances clearances) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.clearances = clearances;
    }

    /** All that an answer hangs on. */
    private record Asked(String text, List<CatalogueEntry> catalogues) {}

    /** The same at a speed of somebody's choice [rad/s]. */
    private record AtSpeed(Asked asked, double speed) {}

    private static Build build(Asked asked) {
        return BuildFile.read(asked.text()).build().orElseThrow();
    }

    private Catalogue catalogue(Asked asked) {
        return catalogues.together(asked.catalogues()).catalogue();
    }

    private Answer life(Asked asked) {
        Answer clear = clearances.of(asked.text()).answer();
        Answer answer = Life.of(build(asked), catalogue(asked), clear.clearances());
        bench.remember(Rail.Question.LIFE, asked.text(), asked.catalogues(), Rail.approved(answer));
        return answer;
    }

    private Answer shake(Asked asked) {
        Answer answer = Shake.of(build(asked), catalogue(asked));
        bench.remember(Rail.Question.SHAKE, asked.text(), asked.catalogues(), Rail.shaken(answer));
        return answer;
    }

    private Answer shakeAt(AtSpeed at) {
        return Shake.of(build(at.asked()), catalogue(at.asked()), OptionalDouble.of(at.speed()));
    }

    private <K> Answer in(Lately<K, Answer> lately, K key) {
        return turns.of(lately, key, () -> true).orElseThrow();
    }

    /** What lets go first; worked out, or remembered. */
    public Answer life(String text, List<CatalogueEntry> active) {
        return in(lives, new Asked(text, active));
    }

    /** What is remembered of {@link #life}; nothing is begun. */
    public Optional<Answer> lifeIfKnown(String text, List<CatalogueEntry> active) {
        return lives.ifKnown(new Asked(text, active));
    }

    /** Where the shake goes, at the speed of the build; worked out, or remembered. */
    public Answer shake(String text, List<CatalogueEntry> active) {
        return in(shakes, new Asked(text, active));
    }

    /** What is remembered of {@link #shake}; nothing is begun. */
    public Optional<Answer> shakeIfKnown(String text, List<CatalogueEntry> active) {
        return shakes.ifKnown(new Asked(text, active));
    }

    /**
     * Where the shake goes at another speed.
     * @param speed of the crank [rad/s], &gt; 0
     */
    public Answer shakeAt(String text, List<CatalogueEntry> active, double speed) {
        return in(speeds, new AtSpeed(new Asked(text, active), speed));
    }
}
