package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.fit.Fit;
import longthrow.workshop.store.CatalogueEntry;

/** Searches for parts that go together, those of late remembered: the pages that show one ask for it once. */
public final class Searches {
    private static final int MOST_REMEMBERED = 16;

    private final Workbench bench;
    private final Catalogues catalogues;
    private final Lately<Asked, Answer> answers = new Lately<>(MOST_REMEMBERED, this::search);

    /**
     * Over a store.
     * @param bench whose rail says how far each search came
     */
    public Searches(Workbench bench, Catalogues catalogues) {
        this.bench = bench;
        this.catalogues = catalogues;
    }

    /**
     * All that an answer hangs on.
     * @param shared whether it is asked of what is left when free words are taken out
     */
    private record Asked(String text, List<CatalogueEntry> catalogues, boolean shared) {}

    private Answer search(Asked asked) {
        Build build = BuildFile.read(asked.text()).build().orElseThrow();
        Catalogue catalogue = catalogues.together(asked.catalogues()).catalogue();
        if (asked.shared()) {
            Shared shared = Shared.of(build, catalogue);
            return Fit.of(shared.build(), shared.catalogue());
        }
        Answer answer = Fit.of(build, catalogue);
        bench.remember(
                Rail.Question.FIT,
                asked.text(),
                asked.catalogues(),
                Rail.found(answer, !asked.catalogues().isEmpty()));
        return answer;
    }

    /** Searches, or remembers what came of it. */
    public Answer of(String text, List<CatalogueEntry> active) {
        return answers.of(new Asked(text, active, false));
    }

    /** What is remembered; nothing is begun. */
    public Optional<Answer> ifKnown(String text, List<CatalogueEntry> active) {
        return answers.ifKnown(new Asked(text, active, false));
    }

    /** As {@link #of}, of what is left of build and catalogue when they are handed on. */
    public Answer ofShared(String text, List<CatalogueEntry> active) {
        return answers.of(new Asked(text, active, true));
    }

    /** What is remembered of {@link #ofShared}; nothing is begun. */
    public Optional<Answer> ifKnownShared(String text, List<CatalogueEntry> active) {
        return answers.ifKnown(new Asked(text, active, true));
    }
}
