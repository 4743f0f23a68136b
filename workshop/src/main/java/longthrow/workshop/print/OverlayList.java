package longthrow.workshop.print;

import java.util.List;
import java.util.stream.IntStream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.SignedShare;
import longthrow.core.quantity.Units;

/** What runs on a dynamometer were measured to make, over what is predicted. */
final class OverlayList {
    private static final int INDENT = 2;

    /** Speeds before the rest is left to {@code --all}; layout. */
    private static final int FEW_SPEEDS = 8;

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    OverlayList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        answer.torque().map(TorqueCurve::overlays).orElse(List.of()).forEach(this::print);
    }

    private void print(Overlay overlay) {
        page.heading(
                Ink.STRONG,
                "MEASURED OVER PREDICTED",
                overlay.sheet() + "; "
                        + (overlay.standard().isEmpty() ? "as read" : "corrected to " + overlay.standard()) + "; "
                        + overlay.place());
        if (overlay.invented()) {
            page.hanging(INDENT, Ink.DOUBTFUL, "INVENTED:", Ink.PLAIN, "no such run exists; the sheet says so.");
        }
        overlay.held().forEach(h -> page.paragraph(INDENT, h.sentences().get(0)));
        overlay.sentences().forEach(s -> page.paragraph(INDENT, s));
        overlay.held().forEach(this::held);
    }

    private void held(Overlay.Held held) {
        page.heading(Ink.STRONG, held.name(), held.of());
        held.sentences().stream().skip(1).forEach(s -> page.paragraph(INDENT, s));
        for (Overlay.At at : some(
                held.points().stream().filter(p -> !Double.isNaN(p.speed())).toList())) {
            page.hanging(2 * INDENT, Ink.STRONG, speed(at.speed()) + ":", Ink.PLAIN, line(held.figure(), at));
        }
    }

    private String line(Dimension figure, Overlay.At at) {
        String measured = "measured " + words(figure, at.measured(), at.measuredHalf());
        if (figure == Dimension.TORQUE && all) {
            measured += " (" + words(Dimension.POWER, at.measured() * at.speed(), at.measuredHalf() * at.speed()) + ")";
        }
        if (!at.isCompared()) {
            return measured + "; none is predicted: " + at.why();
        }
        return measured + "; predicted " + words(figure, at.predicted(), at.predictedHalf()) + ", which is "
                + SignedShare.text(at.difference(), at.half())
                + (at.isWithin() ? "" : ", beyond the doubt that is known");
    }

    private String words(Dimension dimension, double value, double half) {
        return (Double.isNaN(half)
                        ? printer.printDoubtUnknown(dimension, value)
                        : printer.print(dimension, value, half))
                .first()
                .text();
    }

    private String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed))), 0)
                .first()
                .text();
    }

    /** All of them, or as many as are read without tiring, evenly. */
    private List<Overlay.At> some(List<Overlay.At> points) {
        if (all || points.size() <= FEW_SPEEDS) {
            return points;
        }
        int every = (points.size() + FEW_SPEEDS - 1) / FEW_SPEEDS;
        return IntStream.range(0, points.size())
                .filter(i -> i % every == 0 || i == points.size() - 1)
                .mapToObj(points::get)
                .toList();
    }
}
