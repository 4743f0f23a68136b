package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.fit.Fit;
import longthrow.workshop.store.CatalogueEntry;

/** Searches for parts that go together, those of late remembered: the pages that show one ask for it once. */
public final class Searches {
    private static final int MOST_REMEMBERED = 16;

    private final Catalogues catalogues;
    private final Lately<Asked, Answer> answers = new Lately<>(MOST_REMEMBERED, this::search);

    public Searches(Catalogues catalogues) {
        this.catalogues = catalogues;
    }

    /** All that an answer hangs on. */
    private record Asked(String text, List<CatalogueEntry> catalogues) {}

    private Answer search(Asked asked) {
        return Fit.of(
                BuildFile.read(asked.text()).build().orElseThrow(),
                catalogues.together(asked.catalogues()).catalogue());
    }

    /** Searches, or remembers what came of it. */
    public Answer of(String text, List<CatalogueEntry> active) {
        return answers.of(new Asked(text, active));
    }

    /** What is remembered; nothing is begun. */
    public Optional<Answer> ifKnown(String text, List<CatalogueEntry> active) {
        return answers.ifKnown(new Asked(text, active));
    }
}
