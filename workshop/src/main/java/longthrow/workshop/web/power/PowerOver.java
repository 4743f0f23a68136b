package longthrow.workshop.web.power;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.SignedShare;
import longthrow.core.quantity.Units;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Frame;

/**
 * What was measured over what is predicted, laid out.
 * @param sheets  each with what it comes to
 * @param waiting sheets of which it is not worked out yet
 * @param faulty  sheets that cannot be read, to be looked at on the page Dyno
 */
public record PowerOver(List<Sheet> sheets, List<String> waiting, List<Frame.Place> faulty) {
    public PowerOver {
        sheets = List.copyOf(sheets);
        waiting = List.copyOf(waiting);
        faulty = List.copyOf(faulty);
    }

    /** Nothing to tell of. */
    public boolean isEmpty() {
        return sheets.isEmpty() && waiting.isEmpty() && faulty.isEmpty();
    }

    /**
     * One sheet.
     * @param at        where it is told whole
     * @param sentences which air each stands in, and what else may stand between
     */
    public record Sheet(Frame.Place at, boolean invented, String place, List<String> sentences, List<Setup> setups) {
        public Sheet {
            sentences = List.copyOf(sentences);
            setups = List.copyOf(setups);
        }
    }

    /**
     * One setup.
     * @param of     what of it is held against the prediction
     * @param lead   what it comes to
     * @param more   behind it
     * @param points of the table; empty for a peak
     */
    public record Setup(String name, String of, String lead, List<String> more, List<Point> points) {
        public Setup {
            more = List.copyOf(more);
            points = List.copyOf(points);
        }
    }

    /** One speed. */
    public record Point(String speed, String measured, String predicted, String difference, boolean within) {}

    /**
     * Of an answer with what was measured laid over it.
     * @param laid by which, in the same order
     * @param base address of the build
     */
    static PowerOver of(Answer answer, Dynos.Laid laid, String base) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        List<Overlay> overlays = answer.torque().map(TorqueCurve::overlays).orElse(List.of());
        List<Sheet> sheets = new ArrayList<>();
        for (int i = 0; i < overlays.size(); i++) {
            sheets.add(sheet(overlays.get(i), dyno(base, laid.files().get(i)), printer));
        }
        return new PowerOver(
                sheets,
                laid.waiting(),
                laid.faulty().stream().map(name -> dyno(base, name)).toList());
    }

    private static Frame.Place dyno(String base, String file) {
        return new Frame.Place(file, base + "/dyno?sheet=" + URLEncoder.encode(file, StandardCharsets.UTF_8));
    }

    private static Sheet sheet(Overlay overlay, Frame.Place at, FigurePrinter printer) {
        return new Sheet(
                new Frame.Place(overlay.sheet(), at.address()),
                overlay.invented(),
                overlay.place(),
                overlay.sentences(),
                overlay.held().stream().map(h -> setup(h, printer)).toList());
    }

    private static Setup setup(Overlay.Held held, FigurePrinter printer) {
        return new Setup(
                held.name(),
                held.of(),
                held.sentences().get(0),
                held.sentences().subList(1, held.sentences().size()),
                held.points().stream()
                        .filter(p -> !Double.isNaN(p.speed()))
                        .map(p -> point(p, held.figure(), printer))
                        .toList());
    }

    private static Point point(Overlay.At at, Dimension figure, FigurePrinter printer) {
        String speed = printer.print(
                        Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(at.speed()))), 0)
                .first()
                .text();
        return new Point(
                speed,
                words(printer, figure, at.measured(), at.measuredHalf()) + power(printer, figure, at),
                at.isCompared() ? words(printer, figure, at.predicted(), at.predictedHalf()) : "none: " + at.why(),
                at.isCompared() ? SignedShare.text(at.difference(), at.half()) : "–",
                !at.isCompared() || at.isWithin());
    }

    private static String power(FigurePrinter printer, Dimension figure, Overlay.At at) {
        return figure == Dimension.POWER
                ? ""
                : ", " + words(printer, Dimension.POWER, at.measured() * at.speed(), at.measuredHalf() * at.speed());
    }

    private static String words(FigurePrinter printer, Dimension dimension, double value, double half) {
        return (Double.isNaN(half)
                        ? printer.printDoubtUnknown(dimension, value)
                        : printer.print(dimension, value, half))
                .first()
                .text();
    }

    /** Whether something is still to come. */
    public Optional<String> comes() {
        return waiting.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", waiting));
    }
}
