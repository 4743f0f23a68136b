package longthrow.workshop.print;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.ValveMovement;
import longthrow.core.quantity.FigurePrinter;

/** How the valves move: for each a line of the whole motion, then one for each lift that was asked for. */
final class ValveMotionList {
    private static final int INDENT = 2;

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    ValveMotionList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        if (answer.movements().isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "VALVE MOTION", "crank angle");
        answer.movements().forEach(this::print);
    }

    private void print(ValveMovement movement) {
        boolean asked = all || !movement.lifts().isEmpty();
        String figures = movement.figures().stream()
                .filter(f -> asked || isShort(movement, f))
                .map(f -> f.label() + " " + words(f))
                .collect(Collectors.joining("; "));
        String said = Stream.of(
                        figures,
                        asked || figures.isEmpty() ? movement.why() : "",
                        movement.assumed().isEmpty() ? "" : "ASSUMED: " + movement.assumed())
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining("; "));
        page.hanging(
                INDENT,
                Ink.STRONG,
                movement.valve().label() + (figures.isEmpty() ? "" : ", by " + movement.from()) + ":",
                Ink.PLAIN,
                said);
        movement.lifts().forEach(this::print);
    }

    /** Unasked, what a line holds: how fast, how hard, how far open at overlap; at the wanted speed where that is known. */
    private static boolean isShort(ValveMovement movement, ValveMovement.Figure figure) {
        boolean atSpeed = movement.figures().stream().anyMatch(f -> f.key().startsWith(figure.key() + "_at_"));
        return !figure.key().equals("full_lift") && !atSpeed;
    }

    private void print(ValveMovement.AtLift at) {
        List<String> said = Stream.concat(
                        at.figures().stream().map(f -> f.label() + " " + words(f)), Stream.of(at.why()))
                .filter(s -> !s.isEmpty())
                .toList();
        page.hanging(2 * INDENT, Ink.STRONG, "at " + at.written() + ":", Ink.PLAIN, String.join("; ", said));
    }

    private String words(ValveMovement.Figure figure) {
        double scale = figure.per().toDegrees();
        return printer.print(
                                figure.dimension(),
                                scale * figure.figure().value(),
                                scale * figure.figure().expanded())
                        .line()
                + figure.per().words();
    }
}
