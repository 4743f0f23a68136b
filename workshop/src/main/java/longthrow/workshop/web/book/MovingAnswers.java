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
import longthrow.core.clear.ReliefCut;
import longthrow.core.life.Life;
import longthrow.core.shake.Shake;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Lately;
import longthrow.workshop.web.Loaded;

/**
 * What the questions of the moving engine answered for a text and the catalogues in use: remembered, or worked out. Of another text, an older one say,
 * nothing is ever given.
 */
final class MovingAnswers {
    private static final int MOST_REMEMBERED = 16;

    private final Catalogues catalogues;
    private final Clearances clearances;
    private final Loaded loaded;
    private final Lately<Asked, Loads> handedOn = new Lately<>(MOST_REMEMBERED, this::work);

    /**
     * None worked out yet.
     * @param clearances remembered with the page Clear
     * @param loaded     remembered with the pages Life and Shake
     */
    MovingAnswers(Catalogues catalogues, Clearances clearances, Loaded loaded) {
        this.catalogues = catalogues;
        this.clearances = clearances;
        this.loaded = loaded;
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

    /** What an engine bears, and how it shakes, asked without free words. */
    private record Loads(Answer life, Answer shake) {}

    private Loads work(Asked asked) {
        Build build = BuildFile.read(asked.text()).build().orElseThrow();
        Catalogue whole = asked.active().isEmpty()
                ? Catalogue.EMPTY
                : catalogues.together(asked.active()).catalogue();
        Catalogue catalogue = Shared.of(build, whole).catalogue();
        Answer clear = clearances.of(asked.text()).answer();
        return new Loads(Life.of(build, catalogue, clear.clearances()), Shake.of(build, catalogue));
    }

    /** With what is remembered; nothing is begun. */
    Answers known(Answers answers, Asked asked) {
        Optional<Answer> touches = clearances.ifKnown(asked.text()).map(Clearances.Seen::answer);
        if (asked.shared()) {
            Optional<Loads> bears = handedOn.ifKnown(asked);
            return answers.with(touches, bears.map(Loads::life), bears.map(Loads::shake));
        }
        return answers.with(
                touches,
                loaded.lifeIfKnown(asked.text(), asked.active()),
                loaded.shakeIfKnown(asked.text(), asked.active()));
    }

    /** With all of them, worked out where they are not remembered. */
    Answers all(Answers answers, Asked asked) {
        Loads bears = asked.shared()
                ? handedOn.of(asked)
                : new Loads(loaded.life(asked.text(), asked.active()), loaded.shake(asked.text(), asked.active()));
        return answers.with(
                Optional.of(clearances.of(asked.text()).answer()),
                Optional.of(bears.life()),
                Optional.of(bears.shake()));
    }

    /** What comes off parts; none where what touches is not known. */
    List<ReliefCut> cuts(Asked asked) {
        return clearances.ifKnown(asked.text()).map(Clearances.Seen::cuts).orElse(List.of());
    }

    /** Pairs as they are drawn; none where what touches is not known. */
    List<Drawn> drawn(Asked asked) {
        return clearances.ifKnown(asked.text()).map(Clearances.Seen::drawn).orElse(List.of());
    }
}
