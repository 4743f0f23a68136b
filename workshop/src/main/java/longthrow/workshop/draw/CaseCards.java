package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the crankcase: where the camshaft lies in it, and how near its walls come to the big end. */
final class CaseCards {
    private CaseCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.CAM_AXIS_UP,
                        "crankshaft axis",
                        CaseCards::camshaftAbove,
                        "Half of one bore forgotten; or the case standing on a face that is not square to the cylinder.",
                        "Stand the clean case on the plate, cylinder upright.",
                        "Read the height of the top of the camshaft bore and of the main bore; take half of each bore away.",
                        "Camshaft axis less crankshaft axis: below the crankshaft is negative."),
                card(
                        Term.CAM_AXIS_ACROSS,
                        "crankshaft axis",
                        CaseCards::camshaftBeside,
                        "Sign turned round: positive is towards the anti-thrust side, where the crankpin stands a quarter turn after top dead centre.",
                        "Lay the case on its thrust side on the plate, cylinder level.",
                        "Read the height of the top of the camshaft bore and of the main bore; take half of each bore away.",
                        "Camshaft axis less crankshaft axis, with its sign."),
                wall(
                        Term.CASE_BELOW,
                        "Not at the lowest place the big end passes; a rib or a web of the casting overlooked.",
                        "Crankshaft out, rods of the case and ribs felt over: the nearest metal counts."),
                wall(
                        Term.CASE_THRUST,
                        "The sides mixed up: the thrust side is where the piston is pressed while the charge burns.",
                        "Crankshaft out; find the nearest metal on the thrust side where the big end passes."),
                wall(
                        Term.CASE_ANTITHRUST,
                        "The sides mixed up, or the camshaft taken for the wall: it is read by itself.",
                        "Crankshaft out; find the nearest metal on the anti-thrust side where the big end passes."));
    }

    private static ReadingCard wall(Term term, String mistake, String first) {
        return card(
                term,
                "crankshaft axis",
                CaseCards::walls,
                mistake,
                first,
                "Inside jaws from the near side of the main journal, or of a bar in the main bores, to that metal.",
                "Add half the journal or bar.");
    }

    /** A height gauge on the plate, the tip of its arm at (tipX, tipY). */
    private static void heightGauge(CardSketch s, double tipX, double tipY) {
        s.toolBox(420, 60, 14, 206);
        s.toolBox(394, 262, 70, 12);
        s.toolBox(410, tipY - 22, 34, 26);
        s.tool("M", 410, tipY - 10, "H", tipX + 18, "L", tipX, tipY, "L", tipX + 18, tipY + 1, "H", 410, "Z");
        s.tool(470, 44, END, 427, 60);
    }

    private static void camshaftAbove(CardSketch s) {
        s.plate(30, 450, 274);
        s.part(
                "M", 24, 274, "V", 190, "C", 24, 164, 60, 160, 70, 150, "V", 66, "H", 162, "V", 150, "H", 250, "V", 274,
                "Z");
        s.hole("M", 92, 66, "V", 154, "H", 140, "V", 66);
        s.holeRound(116, 222, 24);
        s.holeRound(206, 182, 14);
        s.datumAxis(60, 222, 330, 222);
        s.datumAxis(116, 190, 116, 254);
        s.axis(182, 182, 330, 182);
        s.upright(310, 182, 222);
        s.symbol(320, 208, START);
        heightGauge(s, 206, 168);
        s.datum(262, 256, START, 296, 222);
        s.note("camshaft bore", 172, 128, START);
        s.quiet("M", 214, 134, "L", 206, 166);
        s.note("main bore", 34, 254, START);
        s.note("cylinder upright", 180, 84, START);
        s.note("surface plate", 30, 297, START);
    }

    private static void camshaftBeside(CardSketch s) {
        s.plate(30, 450, 274);
        s.part(
                "M", 60, 274, "V", 96, "H", 172, "C", 180, 130, 180, 146, 196, 150, "H", 300, "V", 244, "H", 196, "V",
                274, "Z");
        s.holeRound(112, 206, 26);
        s.hole("M", 300, 166, "H", 190, "V", 228, "H", 300);
        s.holeRound(138, 132, 14);
        s.datumAxis(76, 206, 356, 206);
        s.datumAxis(112, 172, 112, 240);
        s.axis(112, 132, 356, 132);
        s.upright(344, 132, 206);
        s.symbol(354, 176, START);
        heightGauge(s, 138, 118);
        s.datum(210, 292, START, 236, 206);
        s.note("camshaft bore", 186, 100, START);
        s.quiet("M", 184, 102, "L", 146, 120);
        s.note("main bore", 64, 258, START);
        s.note("cylinder, lying", 250, 262, START);
        s.note("up: anti-thrust side", 210, 60, START);
    }

    /** The case cut across the crankshaft where the big end passes. */
    private static void walls(CardSketch s) {
        s.part(
                "M", 60, 66, "H", 110, "V", 150, "A", 90, 90, "0 0 0", 290, 150, "V", 66, "H", 340, "V", 280, "H", 60,
                "Z");
        s.unknown(Sketch.round(200, 150, 78));
        s.partRound(200, 150, 20);
        boolean below = s.is(Term.CASE_BELOW);
        if (below) {
            s.datumAxis(120, 150, 282, 150);
            s.caliper(true, 170, 240, 204, 262, true);
            s.upright(160, 150, 240);
            s.quiet("M", 200, 240, "H", 154);
            s.symbol(152, 200, END);
            s.tool(372, 262, START, 276, 250);
            s.datum(352, 90, START, 280, 150);
        } else {
            boolean thrust = s.is(Term.CASE_THRUST);
            double wall = thrust ? 110 : 290;
            double side = thrust ? 180 : 220;
            s.datumAxis(200, 76, 200, 250);
            s.caliper(false, Math.min(wall, side), Math.max(wall, side), 150, 206, true);
            s.level(Math.min(wall, 200), Math.max(wall, 200), 112);
            s.quiet("M", wall, 150, "V", 106);
            s.symbol(thrust ? 150 : 250, 104, MIDDLE);
            s.tool(352, 236, START, thrust ? 222 : 330, 214);
            s.datum(352, 90, START, 200, 80);
        }
        s.note("thrust side", 66, 60, START);
        s.note("anti-thrust side", 340, 60, END);
        s.note("way of the big end", 352, 160, START);
        s.quiet("M", 348, 158, "L", 270, 182);
        s.note("journal or bar, add half of it", 352, 184, START);
        s.quiet("M", 348, 184, "L", 216, 162);
    }
}
