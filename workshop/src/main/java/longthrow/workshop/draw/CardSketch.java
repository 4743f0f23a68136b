package longthrow.workshop.draw;

import longthrow.core.term.Term;

/** The picture of one reading: a sketch that knows its term, its datum and its instrument, and draws the instruments of the bench. */
final class CardSketch extends Sketch {
    static final int WIDTH = 480;
    static final int HEIGHT = 300;

    private final Term term;
    private final String datum;
    private final String instrument;

    CardSketch(Svg svg, Term term, String datum, String instrument) {
        super(svg, WIDTH, HEIGHT);
        this.term = term;
        this.datum = datum;
        this.instrument = instrument;
    }

    Term term() {
        return term;
    }

    boolean is(Term... any) {
        for (Term one : any) {
            if (term == one) {
                return true;
            }
        }
        return false;
    }

    /** Symbol and name, top left. */
    void caption() {
        symbol(term.symbol(), 12, 22, Anchor.START);
        words("quiet", term.label(), 56, 22, Anchor.START, TEXT, false);
    }

    /** The symbol of the term. */
    void symbol(double x, double y, Anchor anchor) {
        symbol(term.symbol(), x, y, anchor);
    }

    /** Says what is measured from. */
    void datum(double x, double y, Anchor anchor, double toX, double toY) {
        label("datum", "from: " + datum, x, y, anchor, toX, toY);
    }

    /** Says what is measured with. */
    void tool(double x, double y, Anchor anchor, double toX, double toY) {
        label("tool", instrument, x, y, anchor, toX, toY);
    }

    // ---- instruments

    /** A point by its place along the measured length and across it. */
    private static double[] at(boolean upright, double along, double across) {
        return upright ? new double[] {across, along} : new double[] {along, across};
    }

    private void block(boolean upright, double along1, double along2, double across1, double across2) {
        double[] p = at(upright, Math.min(along1, along2), Math.min(across1, across2));
        double[] size = at(upright, Math.abs(along2 - along1), Math.abs(across2 - across1));
        toolBox(p[0], p[1], size[0], size[1]);
    }

    /**
     * A caliper over a length from along1 to along2.
     * @param upright whether the length runs up and down
     * @param tip     where the jaws end, across the length
     * @param beam    where the beam is, across the length
     * @param inside  whether the jaws reach into a hole
     */
    void caliper(boolean upright, double along1, double along2, double tip, double beam, boolean inside) {
        double jaw = 8;
        double side = Math.signum(beam - tip);
        block(upright, inside ? along1 : along1 - jaw, inside ? along1 + jaw : along1, tip, beam);
        block(upright, inside ? along2 - jaw : along2, inside ? along2 : along2 + jaw, tip, beam);
        block(upright, along1 - jaw - 6, along2 + 46, beam, beam + side * 13);
        block(upright, along2 - 2, along2 + 34, beam - side * 3, beam + side * 18);
    }

    /** A micrometer over a length; its frame goes round on the side of {@code back}. */
    void micrometer(boolean upright, double along1, double along2, double across, double back) {
        block(upright, along1 - 8, along1, across - 4, across + 4);
        block(upright, along2, along2 + 16, across - 4, across + 4);
        block(upright, along2 + 22, along2 + 40, across - 7, across + 7);
        block(upright, along2 + 40, along2 + 72, across - 10, across + 10);
        double[] a = at(upright, along1 - 13, across);
        double[] b = at(upright, along1 - 13, back);
        double[] c = at(upright, along2 + 19, back);
        double[] d = at(upright, along2 + 19, across);
        svg().add(
                        "path",
                        "class",
                        "tool",
                        "d",
                        Svg.path("M", a[0], a[1], "L", b[0], b[1], "L", c[0], c[1], "L", d[0], d[1]),
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "9",
                        "stroke-opacity",
                        "0.55");
    }

    /** A round dial with its needle. */
    void face(double x, double y, double radius) {
        toolRound(x, y, radius);
        toolLine(1.6, "M", x, y, "L", x + radius * 0.5, y - radius * 0.55);
    }

    /** A depth gauge: its base on a face, its rod down to a point. */
    void depthGauge(double x, double faceY, double tipY, double halfBase) {
        toolBox(x - halfBase, faceY - 11, 2 * halfBase, 11);
        toolBox(x - 5, faceY - 34, 10, 23);
        face(x, faceY - 50, 17);
        toolLine(3, "M", x, faceY, "L", x, tipY);
    }

    /** A dial indicator, its tip at (x, y), its body away along (ux, uy). */
    void indicator(double x, double y, double ux, double uy) {
        toolLine(3, "M", x, y, "L", x + 26 * ux, y + 26 * uy);
        toolLine(8, "M", x + 22 * ux, y + 22 * uy, "L", x + 38 * ux, y + 38 * uy);
        face(x + 56 * ux, y + 56 * uy, 19);
    }

    /** A bore gauge let down into a bore. */
    void boreGauge(double x, double y, double radius, double topY) {
        toolLine(2.6, "M", x - radius, y, "L", x + radius, y);
        toolBox(x - radius + 8, y - 5, 2 * radius - 16, 10);
        toolBox(x - 4, topY + 16, 8, y - 5 - topY - 16);
        face(x, topY, 16);
    }

    /** A bore gauge seen end on, across a hole. */
    void boreGaugeEndOn(double x, double y, double radius, double ux, double uy) {
        toolLine(2.6, "M", x - radius * ux, y - radius * uy, "L", x + radius * ux, y + radius * uy);
        toolLine(
                9,
                "M",
                x - radius * 0.7 * ux,
                y - radius * 0.7 * uy,
                "L",
                x + radius * 0.7 * ux,
                y + radius * 0.7 * uy);
        toolRound(x, y, 8);
    }

    /** A feeler leaf, its tip at (x, y), its holder away along (ux, uy). */
    void feeler(double x, double y, double ux, double uy, double length) {
        toolLine(3.4, "M", x, y, "L", x + length * ux, y + length * uy);
        toolLine(15, "M", x + length * ux, y + length * uy, "L", x + (length + 34) * ux, y + (length + 34) * uy);
    }

    /** A burette, its nozzle at (x, tipY). */
    void burette(double x, double topY, double tipY) {
        double levelY = topY + (tipY - topY) * 0.3;
        quiet(box(x - 6, topY, 12, tipY - topY - 24));
        toolBox(x - 6, levelY, 12, tipY - 24 - levelY);
        toolLine(3, "M", x - 12, tipY - 18, "L", x + 12, tipY - 18);
        toolLine(2.4, "M", x, tipY - 24, "L", x, tipY);
        for (double y = topY + 8; y < tipY - 30; y += 8) {
            quiet("M", x - 6, y, "h", 5);
        }
    }

    /** A degree wheel on its shaft, with the pointer that stands still. */
    void degreeWheel(double x, double y, double radius) {
        toolRound(x, y, radius);
        for (int tick = 0; tick < 36; tick++) {
            double s = Math.sin(tick * Math.PI / 18);
            double c = Math.cos(tick * Math.PI / 18);
            double inner = radius - (tick % 9 == 0 ? 14 : 7);
            toolLine(1.2, "M", x + inner * s, y - inner * c, "L", x + radius * s, y - radius * c);
        }
        toolRound(x, y, 5);
    }

    /** A weighing scale; its pan at y. */
    void scale(double x, double y, double halfWidth) {
        toolBox(x - halfWidth, y, 2 * halfWidth, 7);
        toolBox(x - 6, y + 7, 12, 10);
        toolBox(x - halfWidth * 0.8, y + 17, 1.6 * halfWidth, 30);
        quiet(box(x - halfWidth * 0.4, y + 24, halfWidth * 0.8, 16));
    }

    /** A surface plate or bench from x1 to x2. */
    void plate(double x1, double x2, double y) {
        part(box(x1, y, x2 - x1, 12));
    }
}
