package longthrow.workshop.book;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.book.Answers;
import longthrow.core.book.Book;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.clear.ReliefCut;
import longthrow.core.fit.Fit;
import longthrow.core.life.Life;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.shake.Shake;
import longthrow.workshop.draw.BoreMap;
import longthrow.workshop.draw.CrossSection;
import longthrow.workshop.draw.DeckTilt;
import longthrow.workshop.draw.GapChart;
import longthrow.workshop.draw.HodographChart;
import longthrow.workshop.draw.MovingSection;
import longthrow.workshop.draw.ReliefSheet;
import longthrow.workshop.draw.RungBar;
import longthrow.workshop.draw.StackBar;

/**
 * What the templates lay out.
 * @param book      the words
 * @param pictures  drawings of the engine as it was read
 * @param touching  where it touches or comes nearest, and gaps against the crank angle; empty where that was not asked or cannot be drawn
 * @param cuts      what comes off parts so that nothing touches, outlines to size
 * @param limits    the scale of speeds under {@link #SCALE}, and each limit that has a speed, by its key; empty where what lets go was not asked
 * @param path      of the shaking force; empty where it is not known
 * @param lookAgain what is free words and stays in a shared one
 * @param shared    whether it was made to be handed on
 */
public record Sheet(
        Book book,
        List<Picture> pictures,
        List<Picture> touching,
        List<Picture> cuts,
        Map<String, Picture> limits,
        Optional<Picture> path,
        List<String> lookAgain,
        boolean shared) {
    /** Key of the scale of speeds among the limits. */
    public static final String SCALE = "";

    /** Gaps that are drawn against the crank angle, the gravest; the page Clear has each. Layout. */
    private static final int MOST_CHARTS = 4;

    /** Share to which the end of a scale is said; layout. */
    private static final double END_OF_SCALE = 0.01;

    public Sheet {
        pictures = List.copyOf(pictures);
        touching = List.copyOf(touching);
        cuts = List.copyOf(cuts);
        limits = Map.copyOf(limits);
        lookAgain = List.copyOf(lookAgain);
    }

    /**
     * A drawing.
     * @param name for people
     * @param svg  a whole element
     */
    public record Picture(String name, String svg) {}

    /** Asks every question and sets the Book: some seconds where gaps are known. The catalogue is searched where there is one. */
    public static Sheet of(Build build, Catalogue catalogue) {
        return of(build, catalogue, List.of());
    }

    /**
     * Likewise.
     * @param runs what the sheets of runs that are handed in with it came to
     */
    public static Sheet of(Build build, Catalogue catalogue, List<Answers.Ran> runs) {
        Answers answers = asked(build, catalogue).withRuns(Optional.of(runs));
        return of(build, catalogue, answers, Drawn.of(build), cuts(build, answers));
    }

    /**
     * Sets the Book from answers that are there.
     * @param drawn pairs as they are drawn; empty where what touches was not asked
     * @param cuts  what comes off parts; likewise
     */
    public static Sheet of(Build build, Catalogue catalogue, Answers answers, List<Drawn> drawn, List<ReliefCut> cuts) {
        return new Sheet(
                Book.of(build, answers, catalogue, List.of()),
                pictures(answers.measure()),
                touching(answers, drawn),
                reliefs(cuts),
                limits(answers),
                path(answers),
                List.of(),
                false);
    }

    /** The Book of what is left when names, places and photographs are taken out: the questions are asked of that. */
    public static Sheet of(Shared shared) {
        return of(shared, List.of());
    }

    /**
     * Likewise.
     * @param runs what the sheets of runs that are handed in with it came to, asked of what is left of them
     */
    public static Sheet of(Shared shared, List<Answers.Ran> runs) {
        Answers answers = asked(shared.build(), shared.catalogue()).withRuns(Optional.of(runs));
        return of(shared, answers, Drawn.of(shared.build()), cuts(shared.build(), answers));
    }

    /**
     * As the other, with answers that are there.
     * @param answers about what is left, never about the whole
     */
    public static Sheet of(Shared shared, Answers answers, List<Drawn> drawn, List<ReliefCut> cuts) {
        return new Sheet(
                Book.of(shared.build(), answers, shared.catalogue(), shared.leftOut()),
                pictures(answers.measure()),
                touching(answers, drawn),
                reliefs(cuts),
                limits(answers),
                path(answers),
                shared.lookAgain(),
                true);
    }

    /** Chapters that it has, in their order. */
    public List<Chapter> chapters() {
        return Chapter.of(this);
    }

    /** Classes of a chapter for the style sheet: how tall it will be is not known before it is laid out. */
    public String look(Chapter chapter) {
        return "chapter " + chapter.tall(this);
    }

    /** With each drawing made otherwise. */
    Sheet drawn(UnaryOperator<Picture> otherwise) {
        return new Sheet(
                book,
                pictures.stream().map(otherwise).toList(),
                touching.stream().map(otherwise).toList(),
                cuts.stream().map(otherwise).toList(),
                limits.entrySet().stream()
                        .collect(Collectors.toMap(Map.Entry::getKey, e -> otherwise.apply(e.getValue()))),
                path.map(otherwise),
                lookAgain,
                shared);
    }

    private static Answers asked(Build build, Catalogue catalogue) {
        boolean nothingToSearch =
                catalogue.parts().isEmpty() && catalogue.operations().isEmpty();
        Answer clear = Clear.of(build);
        return Answers.of(
                        Measure.of(build, List.of()),
                        nothingToSearch ? Optional.empty() : Optional.of(Fit.of(build, catalogue)))
                .with(
                        Optional.of(clear),
                        Optional.of(Life.of(build, catalogue, clear.clearances())),
                        Optional.of(Shake.of(build, catalogue)));
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

    /** The gravest pair where it stands nearest, and the gaps of the gravest few through two turns. */
    private static List<Picture> touching(Answers answers, List<Drawn> drawn) {
        List<Picture> pictures = new ArrayList<>();
        if (answers.clear().isEmpty()) {
            return pictures;
        }
        Answer clear = answers.clear().get();
        try {
            MovingSection section = MovingSection.of(answers.measure(), clear, drawn);
            section.shown().stream()
                    .filter(pair -> !MovingSection.isInAnotherPlane(pair.key()))
                    .findFirst()
                    .ifPresent(pair -> {
                        int degrees = degrees(pair);
                        pictures.add(new Picture(
                                name(pair) + " at " + degrees + "°, where they come nearest",
                                section.still(degrees, pair, "book-nearest")));
                    });
        } catch (IllegalArgumentException cannotTurn) {
            // said with the pairs
        }
        clear.clearances().stream()
                .filter(pair -> !pair.curve().isEmpty())
                .limit(MOST_CHARTS)
                .forEach(pair -> pictures.add(new Picture(
                        name(pair) + ", gap against crank angle", GapChart.of(pair, "book-gap-" + pair.key()))));
        return pictures;
    }

    private static List<ReliefCut> cuts(Build build, Answers answers) {
        return answers.clear().map(clear -> ReliefCut.gravest(build, clear)).orElse(List.of());
    }

    private static List<Picture> reliefs(List<ReliefCut> cuts) {
        return cuts.stream()
                .map(cut -> new Picture(
                        "what comes off the " + cut.part() + " where the " + cut.passes()
                                + " passes, to the scale of its bar",
                        ReliefSheet.of(cut, "book-cut-" + cut.key())))
                .toList();
    }

    private static Map<String, Picture> limits(Answers answers) {
        Map<String, Picture> pictures = new HashMap<>();
        Optional<LimitLadder> ladder = answers.life().flatMap(Answer::ladder);
        List<Rung> rungs = ladder.map(LimitLadder::rungs).orElse(List.of()).stream()
                .filter(r -> r.speed().isPresent())
                .toList();
        if (!rungs.isEmpty()) {
            FigurePrinter printer = new FigurePrinter(answers.measure().units());
            RungBar bars = RungBar.of(ladder.orElseThrow());
            String scale = bars.scale(speed -> about(printer, speed), "book-limits");
            pictures.put(SCALE, new Picture("scale of the bars", scale));
            rungs.forEach(r -> pictures.put(
                    r.key(),
                    new Picture(
                            r.label() + ": " + r.state().label(),
                            bars.bar(r, r.state().label() + "; " + r.why(), "book-limit-" + r.key()))));
        }
        return pictures;
    }

    private static Optional<Picture> path(Answers answers) {
        FigurePrinter printer = new FigurePrinter(answers.measure().units());
        String name = "path of the shaking force over one turn, with its greatest along the cylinder and across it";
        return answers.shake()
                .flatMap(Answer::shaking)
                .filter(shaking -> !shaking.path().isEmpty())
                .map(shaking -> new Picture(
                        name, HodographChart.of(shaking, HodographChart.words(printer), name, "book-hodograph")));
    }

    /** To a few digits: the end of a scale. */
    private static String about(FigurePrinter printer, double speed) {
        Figure figure = printer.print(Dimension.ROTATIONAL_SPEED, speed, END_OF_SCALE * speed)
                .first();
        return figure.value() + " " + figure.unit();
    }

    private static int degrees(Clearance pair) {
        return (int) Math.round(Math.toDegrees(pair.cold().orElseThrow().angle()));
    }

    private static String name(Clearance pair) {
        return pair.one() + " to " + pair.other();
    }
}
