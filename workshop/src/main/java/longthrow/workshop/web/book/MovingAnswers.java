package longthrow.workshop.web.book;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.book.Answers;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Drawn;
import longthrow.core.life.Life;
import longthrow.core.shake.Shake;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Lately;

/**
 * What the questions of the moving engine answered for a text and the catalogues in use: remembered, or worked out. Of another text, an older one say,
 * nothing is ever given.
 */
final class MovingAnswers {
    private static final int MOST_REMEMBERED = 16;

    private final Catalogues catalogues;
    private final Clearances clearances;
    private final Lately<Asked, Loads> loads = new Lately<>(MOST_REMEMBERED, this::work);

    /**
     * None worked out yet.
     * @param clearances remembered with the page Clear
     */
    MovingAnswers(Catalogues catalogues, Clearances clearances) {
        this.catalogues = catalogues;
        this.clearances = clearances;
    }

    /**
     * All that answers hang on.
     * @param text   of a build, as it is or as it is handed on
     * @param shared whether the catalogues are asked without free words
     */
    record Asked(String text, List<CatalogueEntry> active, boolean shared) {
        Asked {
            active = List.copyOf(active);
        }
    }

    /** What an engine bears, and how it shakes. */
    private record Loads(Answer life, Answer shake) {}

    private Loads work(Asked asked) {
        Build build = BuildFile.read(asked.text()).build().orElseThrow();
        Catalogue whole = asked.active().isEmpty()
                ? Catalogue.EMPTY
                : catalogues.together(asked.active()).catalogue();
        Catalogue catalogue = asked.shared() ? Shared.of(build, whole).catalogue() : whole;
        return new Loads(Life.of(build, catalogue), Shake.of(build, catalogue));
    }

    /** With what is remembered; nothing is begun. */
    Answers known(Answers answers, Asked asked) {
        Optional<Loads> bears = loads.ifKnown(asked);
        return answers.with(
                clearances.ifKnown(asked.text()).map(Clearances.Seen::answer),
                bears.map(Loads::life),
                bears.map(Loads::shake));
    }

    /** With all of them, worked out where they are not remembered. */
    Answers all(Answers answers, Asked asked) {
        Loads bears = loads.of(asked);
        return answers.with(
                Optional.of(clearances.of(asked.text()).answer()),
                Optional.of(bears.life()),
                Optional.of(bears.shake()));
    }

    /** Pairs as they are drawn; none where what touches is not known. */
    List<Drawn> drawn(Asked asked) {
        return clearances.ifKnown(asked.text()).map(Clearances.Seen::drawn).orElse(List.of());
    }
}
