package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of head and gasket. */
final class HeadCards {
    private HeadCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                                Term.CHAMBER_VOLUME,
                                "head face",
                                HeadCards::volume,
                                "A bubble under the plate, a leak past a valve, or the plug left out.",
                                "Plug in, valves in and sealed with a smear of grease; head level, face up.",
                                "Clear plate with a small hole, greased round the chamber, on the face.",
                                "Fill from the burette until the last bubble is out of the hole; three times, dried between.")
                        .cautioned("Thin coloured spirit burns: no flame, no hot lamp near it."),
                card(
                        Term.CHAMBER_AREA,
                        "edge of the chamber",
                        HeadCards::area,
                        "The area of the bore or of the gasket hole taken instead of the opening in the head face.",
                        "Ink the face, press squared paper on it, or scan it beside a rule.",
                        "Count whole squares, and those cut by the edge as halves.",
                        "Trace it twice."),
                card(
                        Term.VALVE_SPACING,
                        "centre of one valve",
                        HeadCards::plan,
                        "Rim to rim taken for centre to centre.",
                        "Measure over the far rims of the two heads, and between the near ones.",
                        "Half the sum is the spacing of the centres."),
                card(
                        Term.INTAKE_FROM_AXIS,
                        "bore axis",
                        HeadCards::plan,
                        "Measured along a slanted valve instead of in the plane of the face.",
                        "Scribe the bore on the head face through the gasket or the dowels.",
                        "Inside jaws from the scribed bore to the nearest rim of the valve head: the smallest gap.",
                        "Half the bore, less that gap, less half the valve head: centre from bore axis."),
                card(
                        Term.EXHAUST_FROM_AXIS,
                        "bore axis",
                        HeadCards::plan,
                        "Measured along a slanted valve instead of in the plane of the face.",
                        "Scribe the bore on the head face through the gasket or the dowels.",
                        "Inside jaws from the scribed bore to the nearest rim of the valve head: the smallest gap.",
                        "Half the bore, less that gap, less half the valve head: centre from bore axis."),
                card(
                        Term.HEAD_FLATNESS,
                        "edge of the straightedge",
                        CylinderCards::flatness,
                        "Carbon or gasket left on the face holds the straightedge up.",
                        "Scrape the face clean.",
                        "Lay the straightedge along, across and over both diagonals.",
                        "The thickest leaf that passes anywhere counts."),
                card(
                        Term.GASKET_THICKNESS,
                        "other side of the gasket",
                        HeadCards::gasket,
                        "A new gasket measured: it is thicker than it will be crushed.",
                        "Take a used one of the same make, crushed at the torque you will use.",
                        "Measure beside the bore at three places, not on the fire ring alone and not on the outer edge."),
                card(
                        Term.GASKET_BORE,
                        "far side of the hole",
                        HeadCards::gasketBore,
                        "The bore of the cylinder written down instead: the hole is usually larger.",
                        "Lay the crushed gasket flat.",
                        "Inside jaws across the hole, four directions."));
    }

    private static void volume(CardSketch s) {
        s.part("M", 50, 140, "H", 110, "C", 120, 210, 230, 210, 250, 140, "H", 310, "V", 250, "H", 50, "Z");
        s.lit("M", 110, 140, "C", 120, 210, 230, 210, 250, 140, "Z");
        s.quiet(Sketch.box(90, 126, 86, 14));
        s.quiet(Sketch.box(184, 126, 90, 14));
        s.datumFace(314, 141, 254, 141);
        s.datumFace(106, 141, 46, 141);
        s.burette(180, 38, 126);
        s.symbol(180, 176, MIDDLE);
        s.part("M", 170, 192, "H", 190, "V", 262, "H", 170, "Z");
        s.tool(220, 70, START, 188, 72);
        s.datum(336, 180, START, 310, 144);
        s.note("plug in", 196, 278, START);
        s.note("clear plate with a hole, greased", 20, 84, START);
        s.quiet("M", 90, 106, "L", 104, 128);
        s.note("head, face up", 60, 236, START);
    }

    private static void area(CardSketch s) {
        for (int line = 0; line <= 12; line++) {
            s.quiet("M", 60 + line * 20, 60, "V", 260);
            if (line <= 10) {
                s.quiet("M", 60, 60 + line * 20, "H", 300);
            }
        }
        s.toolLine(
                3, "M", 100, 160, "C", 100, 80, 200, 84, 240, 110, "C", 280, 140, 270, 220, 210, 230, "C", 150, 236,
                100, 220, 100, 160, "Z");
        s.symbol(180, 168, MIDDLE);
        s.tool(330, 110, START, 258, 128);
        s.datum(330, 200, START, 254, 208);
        s.note("squared paper, pressed on the head face", 60, 278, START);
    }

    private static void plan(CardSketch s) {
        s.quietRound(190, 170, 106);
        s.partRound(138, 150, 42);
        s.partRound(240, 158, 36);
        s.axis(138, 96, 138, 204);
        s.axis(240, 110, 240, 206);
        if (s.is(Term.VALVE_SPACING)) {
            s.datumAxis(138, 96, 138, 220);
            s.caliper(false, 96, 276, 156, 250, false);
            s.dimension(138, 118, 240, 118);
            s.symbol(190, 110, MIDDLE);
            s.tool(372, 240, START, 318, 256);
            s.datum(20, 80, START, 136, 100);
            s.note("far rims and near rims: half their sum", 330, 120, START);
        } else {
            boolean intake = s.is(Term.INTAKE_FROM_AXIS);
            double x = intake ? 138 : 240;
            double y = intake ? 150 : 158;
            s.datumAxis(190, 70, 190, 270);
            s.datumAxis(96, 170, 284, 170);
            s.dimension(190, 170, x, y);
            s.symbol(intake ? 176 : 202, 194, intake ? END : START);
            double rim = intake ? 96 : 276;
            double wall = intake ? 85 : 295;
            s.caliper(false, Math.min(rim, wall), Math.max(rim, wall), 170, 246, true);
            s.tool(372, 250, START, (intake ? 96 : 295) + 34, 262);
            s.datum(330, 90, START, 192, 80);
        }
        s.words("quiet", "intake", 135, 178, END, Sketch.SMALL, false);
        s.words("quiet", "exhaust", 226, 216, START, Sketch.SMALL, false);
        s.note("bore", 262, 70, START);
    }

    private static void gasket(CardSketch s) {
        s.part("M", 60, 150, "H", 180, "V", 168, "H", 60, "Z");
        s.part("M", 290, 150, "H", 330, "V", 168, "H", 290, "Z");
        s.micrometer(true, 150, 168, 160, 240);
        s.datumFace(76, 150, 150, 150);
        s.dimension(110, 150, 110, 168);
        s.symbol(92, 200, END);
        s.datum(20, 100, START, 90, 147);
        s.tool(260, 240, START, 168, 226);
        s.note("bore", 266, 200, MIDDLE);
        s.note("gasket, crushed, cut through", 280, 120, START);
    }

    private static void gasketBore(CardSketch s) {
        s.part("M", 60, 70, "H", 300, "V", 270, "H", 60, "Z");
        s.partRound(180, 170, 80);
        for (int corner = 0; corner < 4; corner++) {
            s.quietRound(82 + (corner % 2) * 196, 92 + (corner / 2) * 156, 9);
        }
        s.caliper(false, 100, 260, 166, 54, true);
        s.level(100, 260, 190);
        s.symbol(180, 212, MIDDLE);
        s.datumFace(99, 192, 99, 148);
        s.datum(330, 230, START, 99, 186);
        s.tool(340, 80, START, 296, 52);
        s.note("gasket, lying flat", 180, 289, MIDDLE);
    }
}
