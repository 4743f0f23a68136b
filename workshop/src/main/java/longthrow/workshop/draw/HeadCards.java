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
                        "Ink the face, press squared paper on it (1 mm or 5 mm squares: note which), or scan it beside a rule.",
                        "Count the squares; one cut by the edge counts as one when half of it or more is inside.",
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
                        "opposite side of the gasket",
                        HeadCards::gasket,
                        "A new gasket measured: it is thicker than it will be crushed.",
                        "Take a used one of the same make, crushed at the torque you will use.",
                        "Measure beside the bore at three places, not on the fire ring alone and not on the outer edge."),
                card(
                        Term.GASKET_BORE,
                        "opposite side of the hole",
                        HeadCards::gasketBore,
                        "The bore of the cylinder written down instead: the hole is usually larger.",
                        "Lay the crushed gasket flat.",
                        "Inside jaws across the hole, four directions."));
    }

    private static void volume(CardSketch s) {
        s.part("M", 50, 140, "H", 310, "V", 250, "H", 50, "Z");
        s.hole("M", 110, 140, "C", 120, 210, 230, 210, 250, 140, "Z");
        s.lit("M", 110, 140, "C", 120, 210, 230, 210, 250, 140, "Z");
        s.quiet(Sketch.box(90, 126, 86, 14));
        s.quiet(Sketch.box(184, 126, 90, 14));
        s.datumFace(252, 140, 308, 140);
        s.datumFace(52, 140, 108, 140);
        s.burette(180, 38, 126);
        s.symbol(180, 178, MIDDLE);
        s.part("M", 170, 192, "H", 190, "V", 262, "H", 170, "Z");
        s.tool(220, 70, START, 186, 72);
        s.datum(336, 180, START, 300, 142);
        s.note("plug in", 200, 272, START);
        s.note("clear plate with a hole, greased", 14, 84, START);
        s.quiet("M", 90, 102, "L", 104, 128);
        s.note("head, face up", 60, 236, START);
    }

    private static void area(CardSketch s) {
        for (int line = 0; line <= 12; line++) {
            s.quiet("M", 60 + line * 20, 60, "V", 240);
            if (line <= 9) {
                s.quiet("M", 60, 60 + line * 20, "H", 300);
            }
        }
        s.toolLine(
                3, "M", 100, 150, "C", 100, 74, 200, 78, 240, 104, "C", 280, 134, 270, 208, 210, 216, "C", 150, 222,
                100, 206, 100, 150, "Z");
        s.symbol(330, 136, START);
        s.quiet("M", 324, 132, "H", 200);
        s.tool(330, 90, START, 252, 114);
        s.label("datum", "edge of the chamber", 310, 180, START, 262, 172);
        s.levelOff(80, 100, 48, 60);
        s.note("5 mm", 130, 52, START);
        s.note("count the squares, half and more as one", 320, 226, START);
        s.note("squared paper, pressed on the inked head face", 60, 264, START);
    }

    private static void plan(CardSketch s) {
        s.partBox(40, 56, 272, 226);
        s.quietRound(190, 170, 106);
        s.partRound(146, 154, 34);
        s.partRound(240, 160, 28);
        boolean left = s.is(Term.EXHAUST_FROM_AXIS);
        s.note("scribed bore", left ? 46 : 322, left ? 276 : 288, START);
        s.quiet("M", left ? 92 : 320, left ? 264 : 280, "L", left ? 106 : 264, left ? 236 : 246);
        s.note("intake", 146, 108, MIDDLE);
        s.note("exhaust", 240, 122, MIDDLE);
        if (s.is(Term.VALVE_SPACING)) {
            s.datumAxis(146, 114, 146, 216);
            s.axis(240, 126, 240, 216);
            s.caliper(false, 112, 268, 160, 240, false);
            s.level(146, 240, 204);
            s.symbol(193, 228, MIDDLE);
            s.tool(372, 240, START, 316, 248);
            s.datum(350, 150, START, 146, 118);
            s.note("over the far rims, then between the near ones: half the sum", 352, 70, START);
        } else {
            boolean intake = s.is(Term.INTAKE_FROM_AXIS);
            double x = intake ? 146 : 240;
            double y = intake ? 154 : 160;
            double rim = intake ? 112 : 268;
            double wall = intake ? 85 : 295;
            s.caliper(false, Math.min(rim, wall), Math.max(rim, wall), 160, 250, true);
            s.datumAxis(190, 84, 190, 270);
            s.datumAxis(104, 170, 276, 170);
            s.dimension(190, 170, x, y);
            s.symbol(intake ? 180 : 200, 194, intake ? END : START);
            s.tool(372, 250, START, intake ? 148 : 332, 258);
            s.datum(350, 150, START, 272, 170);
            s.note("caliper: scribed bore to the near rim", 352, 70, START);
        }
    }

    private static void gasket(CardSketch s) {
        s.part("M", 60, 150, "H", 190, "V", 174, "H", 60, "Z");
        s.part("M", 330, 150, "H", 400, "V", 174, "H", 330, "Z");
        s.micrometer(true, 150, 174, 150, 260);
        s.datumFace(80, 150, 188, 150);
        s.uprightOff(44, 150, 174, 60);
        s.symbol(34, 168, END);
        s.datum(20, 96, START, 100, 150);
        s.tool(250, 250, START, 160, 236);
        s.note("bore", 295, 170, MIDDLE);
        s.note("gasket, crushed, cut through; its thickness drawn much too large", 310, 90, START);
    }

    /** The gasket cut through, so that the jaws are seen to enter the hole from above. */
    private static void gasketBore(CardSketch s) {
        s.partBox(40, 196, 60, 18);
        s.partBox(240, 196, 60, 18);
        s.quiet("M", 100, 196, "H", 240, "M", 100, 214, "H", 240);
        s.caliper(false, 100, 240, 210, 110, true);
        s.datumFace(100, 198, 100, 213);
        s.levelOff(100, 240, 244, 214);
        s.symbol(216, 266, MIDDLE);
        s.datum(12, 284, START, 96, 205);
        s.tool(300, 84, START, 290, 112);
        s.note("gasket, lying flat, cut through", 250, 284, START);
        s.partBox(350, 150, 110, 100);
        s.holeRound(405, 200, 38);
        s.level(367, 443, 200);
        s.upright(405, 162, 238);
        s.note("seen from above", 405, 140, MIDDLE);
    }
}
