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
        super(svg, WIDTH, HEIGHT, true);
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

    /** Places along a measured length and across it, on the page: where the two begin and the way of each. */
    private record Frame(double x, double y, double alongX, double alongY, double acrossX, double acrossY) {
        static Frame of(boolean upright) {
            return upright ? new Frame(0, 0, 0, 1, 1, 0) : new Frame(0, 0, 1, 0, 0, 1);
        }

        double[] at(double along, double across) {
            return new double[] {x + along * alongX + across * acrossX, y + along * alongY + across * acrossY};
        }

        /** A closed outline by pairs of along and across. */
        Object[] outline(double... alongAcross) {
            Object[] data = new Object[alongAcross.length / 2 * 3 + 1];
            for (int i = 0, to = 0; i < alongAcross.length; i += 2) {
                double[] p = at(alongAcross[i], alongAcross[i + 1]);
                data[to++] = i == 0 ? "M" : "L";
                data[to++] = p[0];
                data[to++] = p[1];
            }
            data[data.length - 1] = "Z";
            return data;
        }

        Object[] box(double along1, double along2, double across1, double across2) {
            return outline(along1, across1, along2, across1, along2, across2, along1, across2);
        }
    }

    private void stroke(Frame f, double along1, double across1, double along2, double across2) {
        double[] a = f.at(along1, across1);
        double[] b = f.at(along2, across2);
        toolLine(1, "M", a[0], a[1], "L", b[0], b[1]);
    }

    /**
     * A caliper over a length from along1 to along2: beam with its scale, a jaw that stands and one that slides with the window of its figures.
     * @param upright whether the length runs up and down
     * @param tip     where the jaws end, across the length
     * @param beam    where the beam is, across the length
     * @param inside  whether the jaws reach into a hole
     */
    void caliper(boolean upright, double along1, double along2, double tip, double beam, boolean inside) {
        caliper(Frame.of(upright), along1, along2, tip, beam, inside, inside);
    }

    /** A caliper lying across whose left jaw touches a shoulder from its right, and whose right jaw a face from its right. */
    void caliperOnStep(double along1, double along2, double tip, double beam) {
        caliper(Frame.of(false), along1, along2, tip, beam, true, false);
    }

    /** The same upright: the upper jaw touches the top of a hole from within, the lower one a face from below. */
    void caliperOnStepUpright(double along1, double along2, double tip, double beam) {
        caliper(Frame.of(true), along1, along2, tip, beam, true, false);
    }

    /**
     * The depth end of a caliper: the end of its beam stands on a face, the thin rod reaches on to what is read.
     * @param upright whether it stands, its beam above; otherwise it lies, its beam to the right
     * @param face    where the end of the beam stands, along the caliper
     * @param tip     where the rod ends, along the caliper
     * @param across  its middle, across the caliper
     * @param beam    how much of the beam is seen
     */
    void caliperDepth(boolean upright, double face, double tip, double across, double beam) {
        double way = upright ? -1 : 1;
        Frame f = new Frame(
                upright ? across : face,
                upright ? face : across,
                upright ? 0 : 1,
                upright ? -1 : 0,
                upright ? 1 : 0,
                upright ? 0 : 1);
        tool(f.box((tip - face) * way, 0, -1.6, 1.6));
        tool(f.box(0, beam, -8, 8));
        for (double mark = 8; mark < beam - 2; mark += 6) {
            stroke(f, mark, 8, mark, 3);
        }
        tool(f.box(beam * 0.45, beam * 0.45 + 34, -13, 11));
        hole(f.box(beam * 0.45 + 5, beam * 0.45 + 29, -10, 2));
    }

    /** A caliper over a round part seen on its end, its beam on the right. */
    void roundInCaliper(double x, double y, double radius, double beam) {
        partRound(x, y, radius);
        axis(x - radius - 10, y, x + radius + 10, y);
        caliper(true, y - radius, y + radius, x - 4, beam, false);
        datumArc(x, y, radius, 235, 305, true);
    }

    /** A caliper over an upright length, its two jaws bent outwards over something that stands between them and its beam.
     * @param over how far the jaws step aside
     */
    void caliperReachingOver(double along1, double along2, double tip, double beam, double over) {
        Frame f = Frame.of(true);
        tool(f.box(along1 - over - 24, along2 + over + 44, beam, beam + 15));
        for (double mark = along1 - over - 12; mark < along2 + over; mark += 6) {
            stroke(f, mark, beam + 15, mark, beam + 9);
        }
        crooked(f, along1, tip, beam, -over);
        crooked(f, along2, tip, beam, over);
        tool(f.box(along2 + over - 8, along2 + over + 34, beam - 3, beam + 20));
        hole(f.box(along2 + over + 2, along2 + over + 26, beam + 3, beam + 13));
    }

    private void crooked(Frame f, double along, double tip, double beam, double over) {
        double side = Math.signum(over) * 12;
        tool(f.outline(
                along,
                tip,
                along,
                tip + 9,
                along + over,
                tip + 9,
                along + over,
                beam,
                along + over + side,
                beam,
                along + over + side,
                tip,
                along,
                tip));
    }

    /** A caliper over the length from one point to another on a slant, its beam {@code away} to the left of that way. */
    void caliperOnSlant(double x1, double y1, double x2, double y2, double away) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        caliper(new Frame(x1, y1, ux, uy, uy, -ux), 0, length, 0, away, false, false);
    }

    /** An upright caliper on a plate: its upper jaw on the thing, the lower one stands on the plate beside it. */
    void caliperOnPlate(double along1, double along2, double tip, double beam) {
        caliper(Frame.of(true), along1, along2, tip, beam, false, true);
    }

    private void caliper(
            Frame f, double along1, double along2, double tip, double beam, boolean firstInside, boolean lastInside) {
        double side = Math.signum(beam - tip);
        double far = beam + side * 15;
        double widest = firstInside && lastInside ? Math.max(2, Math.min(13, (along2 - along1) / 2 - 1)) : 13;
        tool(f.box(along1 - 14, along2 + 50, beam, far));
        for (double mark = along1 + 18; mark < along2 - 12; mark += 6) {
            stroke(f, mark, far, mark, far - side * 6);
        }
        jaw(f, along1, firstInside ? widest : -widest, tip, beam);
        jaw(f, along2, lastInside ? -widest : widest, tip, beam);
        tool(f.box(along2 - 8, along2 + 38, beam - side * 3, far + side * 5));
        hole(f.box(along2 + 2, along2 + 28, beam + side * 3, far - side * 2));
    }

    /** A jaw whose measuring face is at along; it grows from its tip to the beam. */
    private void jaw(Frame f, double along, double wide, double tip, double beam) {
        double bend = tip + (beam - tip) * 0.6;
        tool(f.outline(along, tip, along + wide * 0.5, tip, along + wide, bend, along + wide, beam, along, beam));
    }

    /** A micrometer over a length, its frame round on the side of {@code back}: anvil, frame, spindle, sleeve and thimble in one. */
    void micrometer(boolean upright, double along1, double along2, double across, double back) {
        double side = Math.signum(back - across);
        Frame f = Frame.of(upright);
        double near = across - side * 8;
        double bend = back - side * 10;
        double inner = back - side * 13;
        double left = along1 - 8;
        double right = along2 + 18;
        tool(f.outline(
                left,
                near,
                left - 12,
                near,
                left - 12,
                bend,
                left - 2,
                back,
                right + 4,
                back,
                right + 14,
                bend,
                right + 14,
                near,
                right,
                near,
                right,
                inner,
                left,
                inner));
        tool(f.box(left, along1, across - 4, across + 4));
        tool(f.box(along2, right, across - 4, across + 4));
        tool(f.box(right + 14, along2 + 44, across - 6, across + 6));
        tool(f.box(along2 + 44, along2 + 72, across - 10, across + 10));
        for (double mark = across - 6; mark <= across + 6; mark += 4) {
            stroke(f, along2 + 44, mark, along2 + 51, mark);
        }
    }

    /** A round part seen on its end, in a micrometer whose frame goes round it. */
    void roundInMicrometer(double x, double y, double radius, double back) {
        partRound(x, y, radius);
        axis(x - radius - 10, y, x + radius + 10, y);
        micrometer(true, y - radius, y + radius, x, back);
        datumArc(x, y, radius, 235, 305, true);
    }

    /** The line across a part where it is read, with the way one looks at it: right, or left. */
    void lookAt(double x, double y1, double y2, boolean right) {
        double way = right ? 1 : -1;
        lit("M", x, y1, "V", y1 + 9, "M", x, y2, "V", y2 - 9);
        quiet("M", x, y1, "V", y2);
        lit("M", x, y1, "h", way * 12, "M", x, y2, "h", way * 12);
        head(x + way * 18, y1, way, 0);
        head(x + way * 18, y2, way, 0);
    }

    /** Where an instrument shows nought before it is read: a zero is no surface, so it is a pointer with a figure and not hatched. */
    void datumZero(double x, double y) {
        datumPointer(x, y);
        words("datum", "0", x, y - 13, Anchor.MIDDLE, SMALL, true);
    }

    /** What an instrument is set to before it is read, its tip at (x, y). */
    void datumPointer(double x, double y) {
        svg().add(
                        "path",
                        "class",
                        "datum",
                        "d",
                        Svg.path("M", x - 6, y - 9, "L", x + 6, y - 9, "L", x, y, "Z"),
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "2",
                        "fill",
                        "currentColor");
    }

    /** A stand on its magnetic foot, holding a dial. */
    void stand(double dialX, double dialY, double postX, double footY) {
        toolLine(4, "M", dialX, dialY, "H", postX, "V", footY - 12);
        toolBox(postX - 16, footY - 14, 32, 14);
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
        toolBox(x - halfWidth * 0.8, y + 17, 1.6 * halfWidth, 32);
        quiet(box(x - halfWidth * 0.4, y + 20, halfWidth * 0.8, 26)); // as tall as a symbol with its index
    }

    /** A surface plate or bench from x1 to x2. */
    void plate(double x1, double x2, double y) {
        part(box(x1, y, x2 - x1, 12));
    }

    /** A protractor: half a disc about (x, y), from an angle on to half a turn more [deg], clockwise from the right. */
    void protractor(double x, double y, double radius, double from) {
        tool(sector(x, y, radius * 0.55, radius, from, from + 180));
        for (int tick = 0; tick <= 18; tick++) {
            double a = Math.toRadians(from + tick * 10);
            double inner = radius - (tick % 3 == 0 ? 12 : 7);
            toolLine(
                    1.2,
                    "M",
                    x + inner * Math.cos(a),
                    y + inner * Math.sin(a),
                    "L",
                    x + radius * Math.cos(a),
                    y + radius * Math.sin(a));
        }
        double a = Math.toRadians(from);
        toolLine(
                3,
                "M",
                x - radius * Math.cos(a),
                y - radius * Math.sin(a),
                "L",
                x + radius * Math.cos(a),
                y + radius * Math.sin(a));
        toolRound(x, y, 4);
    }

    /**
     * Outline of part of a ring about (x, y), between two angles [deg], clockwise from the right. Each arc goes by its middle: near half a circle the
     * rounding of its ends would dent it.
     */
    static Object[] sector(double x, double y, double inner, double outer, double from, double to) {
        double a = Math.toRadians(from);
        double middle = Math.toRadians((from + to) / 2);
        double b = Math.toRadians(to);
        return new Object[] {
            "M",
            x + outer * Math.cos(a),
            y + outer * Math.sin(a),
            "A",
            outer,
            outer,
            "0 0 1",
            x + outer * Math.cos(middle),
            y + outer * Math.sin(middle),
            "A",
            outer,
            outer,
            "0 0 1",
            x + outer * Math.cos(b),
            y + outer * Math.sin(b),
            "L",
            x + inner * Math.cos(b),
            y + inner * Math.sin(b),
            "A",
            inner,
            inner,
            "0 0 0",
            x + inner * Math.cos(middle),
            y + inner * Math.sin(middle),
            "A",
            inner,
            inner,
            "0 0 0",
            x + inner * Math.cos(a),
            y + inner * Math.sin(a),
            "Z"
        };
    }

    /** The angle read about (x, y): an arc with an arrow at its end and a line to each side of it [deg], clockwise from the right. */
    void angle(double x, double y, double radius, double from, double to) {
        double a = Math.toRadians(from);
        double b = Math.toRadians(to);
        lit(
                "M",
                x + radius * Math.cos(a),
                y + radius * Math.sin(a),
                "A",
                radius,
                radius,
                to - from > 180 ? "0 1 1" : "0 0 1",
                x + radius * Math.cos(b),
                y + radius * Math.sin(b));
        head(x + radius * Math.cos(b), y + radius * Math.sin(b), -Math.sin(b), Math.cos(b));
        head(x + radius * Math.cos(a), y + radius * Math.sin(a), Math.sin(a), -Math.cos(a));
    }

    /** A torque wrench: its socket on (x, y) seen from above, its grip at the right end; the window shows what it is set to. */
    void torqueWrench(double x, double y, double length) {
        toolBox(x, y - 6, length - 60, 12);
        toolBox(x + length - 64, y - 10, 64, 20);
        for (double at = x + length - 56; at < x + length - 4; at += 7) {
            toolLine(1.2, "M", at, y - 10, "v", 20);
        }
        toolBox(x + length - 122, y - 12, 50, 24);
        hole(box(x + length - 116, y - 8, 38, 16));
        toolRound(x, y, 19);
    }

    /** A stopwatch with its button. */
    void stopwatch(double x, double y, double radius) {
        toolBox(x - 6, y - radius - 14, 12, 14);
        toolRound(x, y, radius);
        holeRound(x, y, radius * 0.78);
        for (int tick = 0; tick < 12; tick++) {
            double s = Math.sin(tick * Math.PI / 6) * radius;
            double c = Math.cos(tick * Math.PI / 6) * radius;
            toolLine(1.6, "M", x + s * 0.66, y - c * 0.66, "L", x + s * 0.78, y - c * 0.78);
        }
        toolLine(2.4, "M", x, y, "L", x + radius * 0.42, y - radius * 0.46);
        toolRound(x, y, 3);
    }

    /** A thermometer: the tip of its probe at (x, y), its box at (boxX, boxY) with the figure read. */
    void thermometer(double x, double y, double boxX, double boxY) {
        toolLine(4, "M", x, y, "L", boxX, boxY + 20);
        toolRound(x, y, 4);
        toolBox(boxX, boxY, 92, 40);
        hole(box(boxX + 10, boxY + 8, 72, 24));
        symbol(boxX + 46, boxY + 26, Anchor.MIDDLE);
    }
}
