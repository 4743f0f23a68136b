package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * The bore at three depths, across the pin axis and along it, its walls cut open. Differences of diameter are drawn too large by a factor that is
 * written, from the smallest of the readings on; the ± of each stands as a bar.
 */
public final class BoreMap {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 340;
    private static final double BORE_WIDE = 150;
    private static final double WALL = 18;
    private static final double ROOM = 26;
    private static final double[] DEPTH_Y = {92, 168, 244};
    private static final List<String> DEPTHS = List.of("top", "middle", "bottom");

    /** One direction: its name, the x of its middle, its readings from the top down. */
    private record Panel(String name, double x, List<Term> terms) {}

    private static final List<Panel> PANELS = List.of(
            new Panel(
                    "across the pin axis (thrust)",
                    150,
                    List.of(Term.BORE_TOP_THRUST, Term.BORE_MIDDLE_THRUST, Term.BORE_BOTTOM_THRUST)),
            new Panel(
                    "along the pin axis",
                    490,
                    List.of(Term.BORE_TOP_AXIS, Term.BORE_MIDDLE_AXIS, Term.BORE_BOTTOM_AXIS)));

    private final AnswerFigures figures;
    private final double least;
    private final double scale;
    private final int factor;

    private BoreMap(AnswerFigures figures) {
        this.figures = figures;
        List<Double> known = PANELS.stream()
                .flatMap(p -> p.terms().stream())
                .map(figures::value)
                .flatMap(Optional::stream)
                .toList();
        this.least = known.stream().min(Double::compare).orElse(0.0);
        double most = known.stream().max(Double::compare).orElse(0.0);
        double doubt = PANELS.stream()
                .flatMap(p -> p.terms().stream())
                .mapToDouble(figures::doubt)
                .max()
                .orElse(0);
        this.scale = least > 0 ? BORE_WIDE / least : 0;
        this.factor = Exaggeration.factor((most - least + doubt) / 2 * scale, ROOM);
    }

    /** The bore map of an answer; none where no reading of it is known. */
    public static Optional<BoreMap> of(Answer answer) {
        return of(answer, answer.units());
    }

    /** The bore map of an answer, with these units written; none where no reading of it is known. */
    public static Optional<BoreMap> of(Answer answer, UnitSystem units) {
        AnswerFigures figures = new AnswerFigures(answer, units);
        boolean any = PANELS.stream()
                .flatMap(p -> p.terms().stream())
                .anyMatch(t -> figures.value(t).isPresent());
        return any ? Optional.of(new BoreMap(figures)) : Optional.empty();
    }

    /** How many times too large differences of diameter are drawn. */
    public int factor() {
        return factor;
    }

    /**
     * The drawing, a whole SVG element.
     * @param idPrefix begins its ids
     */
    public String svg(String idPrefix) {
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                HEIGHT,
                figures.titled("Bore map"),
                "Diameters at three depths in two directions; " + figures.said(Term.BORE_TAPER)
                        + ", " + figures.said(Term.OUT_OF_ROUND) + ". Differences drawn " + factor
                        + " times too large.");
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        PANELS.forEach(panel -> draw(s, panel));
        for (int depth = 0; depth < DEPTH_Y.length; depth++) {
            s.words("quiet", DEPTHS.get(depth), 320, DEPTH_Y[depth] + 5, MIDDLE, Sketch.SMALL, false);
        }
        s.words(
                "quiet",
                "Differences drawn " + factor + " times too large.",
                16,
                HEIGHT - 14,
                START,
                Sketch.SMALL,
                false);
        s.words("lit", figures.said(Term.BORE_TAPER), 16, HEIGHT - 36, START, Sketch.TEXT, true);
        s.words("lit", figures.said(Term.OUT_OF_ROUND), WIDTH - 16, HEIGHT - 36, END, Sketch.TEXT, true);
        return svg.finished();
    }

    private void draw(Sketch s, Panel panel) {
        s.words("quiet", panel.name(), panel.x(), 30, MIDDLE, Sketch.SMALL, false);
        s.axis(panel.x(), 42, panel.x(), 66);
        s.axis(panel.x(), 256, panel.x(), 286);
        for (int side : new int[] {-1, 1}) {
            double outer = panel.x() + side * (BORE_WIDE / 2 + ROOM + WALL);
            s.datumFace(Math.min(outer, outer - side * (WALL + 8)), 64, Math.max(outer, outer - side * (WALL + 8)), 64);
            wall(s, panel, side, outer);
        }
        for (int depth = 0; depth < DEPTH_Y.length; depth++) {
            Term term = panel.terms().get(depth);
            double y = DEPTH_Y[depth];
            boolean known = figures.value(term).isPresent();
            s.words(known ? "lit" : "unknown", known ? figures.text(term) : "?", panel.x(), y - 6, MIDDLE, 14, true);
            if (known) {
                double half = figures.doubt(term) / 2 * scale * factor;
                double right = panel.x() + half(term);
                double left = panel.x() - half(term);
                s.level(left, right, y);
                if (half >= 0.5) {
                    s.doubt(right - half, y - 5, 2 * half, 10);
                    s.doubt(left - half, y - 5, 2 * half, 10);
                }
            }
        }
    }

    /** Half the bore as drawn: the smallest true, the rest of it too large. */
    private double half(Term term) {
        return BORE_WIDE / 2 + (figures.value(term).orElse(least) - least) / 2 * scale * factor;
    }

    /** The wall through the known readings; open where one is missing. */
    private void wall(Sketch s, Panel panel, int side, double outer) {
        List<double[]> points = Stream.of(0, 1, 2)
                .filter(depth -> figures.value(panel.terms().get(depth)).isPresent())
                .map(depth ->
                        new double[] {panel.x() + side * half(panel.terms().get(depth)), DEPTH_Y[depth]})
                .toList();
        if (points.size() < DEPTH_Y.length) {
            s.unknown("M", outer, 64, "V", 272);
            points.forEach(p -> s.spot(p[0], p[1], 3));
            return;
        }
        s.part(
                "M",
                outer,
                64,
                "L",
                points.get(0)[0],
                64,
                "L",
                points.get(0)[0],
                points.get(0)[1],
                "L",
                points.get(1)[0],
                points.get(1)[1],
                "L",
                points.get(2)[0],
                points.get(2)[1],
                "L",
                points.get(2)[0],
                272,
                "L",
                outer,
                272,
                "Z");
    }
}
