package longthrow.workshop.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.book.Book;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.fit.Fit;
import longthrow.core.measure.Measure;
import longthrow.workshop.draw.BoreMap;
import longthrow.workshop.draw.CrossSection;
import longthrow.workshop.draw.DeckTilt;
import longthrow.workshop.draw.StackBar;

/**
 * What the templates lay out.
 * @param book      the words
 * @param pictures  drawings of the engine as it was read
 * @param lookAgain what is free words and stays in a shared one
 * @param shared    whether it was made to be handed on
 */
public record Sheet(Book book, List<Picture> pictures, List<String> lookAgain, boolean shared) {
    public Sheet {
        pictures = List.copyOf(pictures);
        lookAgain = List.copyOf(lookAgain);
    }

    /**
     * A drawing.
     * @param name for people
     * @param svg  a whole element
     */
    public record Picture(String name, String svg) {}

    /** Answers the questions and sets the Book. The catalogue is searched where there is one. */
    public static Sheet of(Build build, Catalogue catalogue) {
        return of(build, Measure.of(build, List.of()), fit(build, catalogue), catalogue);
    }

    /** Sets the Book from answers that are there. */
    public static Sheet of(Build build, Answer measure, Optional<Answer> fit, Catalogue catalogue) {
        return new Sheet(Book.of(build, measure, fit, catalogue, List.of()), pictures(measure), List.of(), false);
    }

    /** The Book of what is left when names, places and photographs are taken out: the questions are asked of that. */
    public static Sheet of(Shared shared) {
        return of(shared, fit(shared.build(), shared.catalogue()));
    }

    /**
     * As the other, with a search that is done.
     * @param fit of what is left, never of the whole
     */
    public static Sheet of(Shared shared, Optional<Answer> fit) {
        Answer measure = Measure.of(shared.build(), List.of());
        return new Sheet(
                Book.of(shared.build(), measure, fit, shared.catalogue(), shared.leftOut()),
                pictures(measure),
                shared.lookAgain(),
                true);
    }

    private static Optional<Answer> fit(Build build, Catalogue catalogue) {
        boolean nothingToSearch =
                catalogue.parts().isEmpty() && catalogue.operations().isEmpty();
        return nothingToSearch ? Optional.empty() : Optional.of(Fit.of(build, catalogue));
    }

    /** Those that can be drawn of what is known. */
    private static List<Picture> pictures(Answer measure) {
        List<Picture> pictures = new ArrayList<>();
        if (measure.values().isEmpty()) {
            return pictures;
        }
        pictures.add(new Picture("stack", StackBar.of(measure).svg("book-stack")));
        try {
            pictures.add(new Picture(
                    "cross-section at top dead centre", CrossSection.of(measure).atTopDeadCentre("book-section")));
        } catch (IllegalArgumentException cannotTurn) {
            // what keeps it from turning stands among the stops
        }
        BoreMap.of(measure).ifPresent(map -> pictures.add(new Picture("bore map", map.svg("book-bore"))));
        DeckTilt.of(measure).ifPresent(tilt -> pictures.add(new Picture("deck tilt", tilt.svg("book-deck"))));
        return pictures;
    }
}
