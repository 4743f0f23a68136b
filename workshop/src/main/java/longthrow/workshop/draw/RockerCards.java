package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the room under a rocker and of that around a pushrod. */
final class RockerCards {
    private static final String TUBE_AXIS = "middle line of the tube";

    private RockerCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.RETAINER_OUTSIDE,
                        "other side of the rim",
                        RockerCards::wide,
                        "Over the spring instead of over the rim of the retainer.",
                        "Retainer off, burrs stoned from its rim.",
                        "Jaws over the rim, two directions; the widest counts."),
                card(
                        Term.RETAINER_BELOW_TIP,
                        "end of the valve's stem",
                        RockerCards::below,
                        "Rod set down on the locks, or inside the rim, instead of on the rim.",
                        "Rocker off, valve shut by its spring, end of the stem clean.",
                        "Base on the end of the stem, rod down to the upper edge of the rim, two opposite places; their mean.",
                        "A rim that stands higher than the end of the stem is negative."),
                card(
                        Term.ROCKER_PUSHROD_LOW,
                        "square to the tube",
                        RockerCards::low,
                        "Laid along the rocker's upper edge instead of through pivot centre and cup.",
                        "Valve shut, lash set; a straight rod or the pushrod itself shows the way of the tube.",
                        "Blade through the centres of pivot and cup, base along the tube: the angle off square.",
                        "Cup lower than the pivot is positive, higher negative; the worse of the two rockers."),
                card(
                        Term.ROCKER_OVER_RETAINER,
                        "retainer or lock",
                        RockerCards::shut,
                        "Read with the lash under the tip: that opens the gap by as much.",
                        "Valve shut; press the rocker down on the stem.",
                        "Thickest leaf or wire that passes between rocker and retainer or locks, all round, both valves.",
                        "The least counts; wider than any leaf: wire, and a micrometer over it."),
                card(
                        Term.ROCKER_OVER_RETAINER_OPEN,
                        "retainer or lock",
                        RockerCards::open,
                        "Read a little before or after full lift, on the pivot's side alone.",
                        "Turn by hand to full lift, dial on the retainer.",
                        "Thickest leaf or wire that passes between rocker and retainer or locks, all round, both valves.",
                        "The least counts; mostly it is beyond the tip, away from the pivot."),
                card(
                        Term.TUBE_INSIDE,
                        "opposite side of the tube",
                        RockerCards::inside,
                        "Read at its mouth alone: a dent, a cast hole's step or a guide plate farther in is narrower.",
                        "Pushrod out; look and feel through the tube or hole for its narrowest place.",
                        "Jaws inside, two directions, both ends; farther in: the thickest drill shank that passes.",
                        "Guide plate in place; a slot that is made to steer the rod does not count."),
                card(
                        Term.TUBE_FROM,
                        "lower end of the pushrod",
                        RockerCards::from,
                        "From the lifter's rim instead of from where the rod stands in it.",
                        "Valve shut; mark the pushrod where it goes into tube or hole.",
                        "Take it out and measure from its lower end to the mark.",
                        "A tube that begins below the rod's lower end is negative."),
                card(
                        Term.TUBE_TO,
                        "lower end of the pushrod",
                        RockerCards::to,
                        "From the rocker's end: the rod rises and falls there.",
                        "Valve shut; mark the pushrod where it comes out of tube or hole.",
                        "Take it out and measure from its lower end to the mark."),
                off(
                        Term.PUSHROD_FOOT_OFF,
                        "Rocker off; a straight dowel that just fits goes through tube or hole to the lifter."),
                beside(
                        Term.PUSHROD_FOOT_BESIDE,
                        "Rocker off; a straight dowel that just fits goes through tube or hole to the lifter."),
                off(
                        Term.PUSHROD_TIP_OFF,
                        "Valve shut, pushrod out, rocker held to nut and stem; a straight dowel that just fits goes through tube or hole to the cup."),
                beside(
                        Term.PUSHROD_TIP_BESIDE,
                        "Valve shut, pushrod out, rocker held to nut and stem; a straight dowel that just fits goes through tube or hole to the cup."));
    }

    private static ReadingCard off(Term term, String dowel) {
        return card(
                term,
                TUBE_AXIS,
                RockerCards::leans,
                "The pushrod's side taken for its middle, or the sign lost: away from the pivot is positive.",
                dowel,
                "Side of the dowel to the middle of the cup, in the plane the rocker swings in; less half the dowel.",
                "Away from the rocker's pivot positive; the worse of the two pushrods.");
    }

    private static ReadingCard beside(Term term, String dowel) {
        return card(
                term,
                TUBE_AXIS,
                RockerCards::leans,
                "Read in the plane the rocker swings in once more: this one is square to it.",
                dowel,
                "Side of the dowel to the middle of the cup, square to the plane the rocker swings in; less half the dowel.",
                "Towards the flywheel positive; the same sign at foot and tip means the same side.");
    }

    // ---- retainer and rocker

    private static void stem(CardSketch s, double top) {
        s.part(
                "M", 140, top + 44, "H", 260, "V", top + 58, "H", 232, "V", top + 78, "H", 168, "V", top + 58, "H", 140,
                "Z");
        s.partBox(191, top, 18, 284 - top);
        s.quiet("M", 150, top + 62, "L", 172, top + 86, "L", 150, top + 110, "L", 172, top + 134);
        s.quiet("M", 250, top + 62, "L", 228, top + 86, "L", 250, top + 110, "L", 228, top + 134);
    }

    private static void wide(CardSketch s) {
        stem(s, 110);
        s.caliper(false, 140, 260, 160, 236, false);
        s.datumFace(140, 168, 140, 154);
        s.levelOff(140, 260, 82, 154);
        s.symbol(225, 76, START);
        s.datum(12, 280, START, 141, 160);
        s.tool(350, 210, START, 310, 240);
        s.note("retainer", 284, 140, START);
        s.quiet("M", 282, 142, "L", 254, 158);
    }

    private static void below(CardSketch s) {
        stem(s, 130);
        s.depthGauge(160, 130, 174, 62);
        s.datumFace(193, 130, 207, 130);
        s.spot(160, 174, 4);
        s.uprightOff(104, 130, 174, 140);
        s.symbol(94, 158, END);
        s.tool(232, 84, START, 178, 84);
        s.datum(280, 126, START, 208, 131);
        s.note("retainer", 284, 184, START);
        s.quiet("M", 282, 180, "L", 258, 182);
    }

    /** A rocker from its pivot on the left to its nose over the stem, turned about the pivot. */
    private static void rockerOver(CardSketch s, double drop) {
        s.part(
                "M",
                60,
                96,
                "C",
                90,
                66,
                150,
                62,
                200,
                70 + drop,
                "C",
                232,
                74 + drop,
                246,
                92 + drop,
                244,
                112 + drop * 1.1,
                "C",
                236,
                122 + drop,
                214,
                116 + drop,
                200,
                122 + drop,
                "C",
                180,
                126 + drop * 0.9,
                150,
                112 + drop * 0.5,
                118,
                122,
                "C",
                90,
                138,
                60,
                132,
                60,
                96,
                "Z");
        s.holeRound(88, 106, 12);
    }

    private static void shut(CardSketch s) {
        stem(s, 122);
        rockerOver(s, 0);
        s.feeler(172, 142, -0.96, 0.28, 110);
        s.datumFace(142, 166, 176, 166);
        s.uprightOff(300, 116, 166, 250);
        s.symbol(310, 146, START);
        s.tool(20, 220, START, 66, 173);
        s.datum(20, 270, START, 144, 168);
        s.note("rocker, valve shut", 270, 80, START);
        s.note("retainer", 296, 204, START);
        s.quiet("M", 294, 198, "L", 256, 176);
    }

    private static void open(CardSketch s) {
        stem(s, 150);
        rockerOver(s, 28);
        s.feeler(236, 172, 0.94, -0.2, 96);
        s.datumFace(222, 194, 258, 194);
        s.uprightOff(300, 146, 194, 252);
        s.symbol(310, 186, START);
        s.tool(360, 110, START, 318, 154);
        s.datum(300, 262, START, 240, 196);
        s.note("rocker, valve at full lift", 260, 76, START);
        s.note("retainer", 60, 236, START);
        s.quiet("M", 112, 232, "L", 146, 204);
    }

    private static void low(CardSketch s) {
        s.part("M", 92, 190, "H", 108, "V", 284, "H", 92, "Z");
        s.part(
                "M", 70, 176, "C", 110, 150, 200, 110, 260, 106, "C", 320, 104, 360, 120, 392, 138, "L", 380, 156, "C",
                340, 146, 300, 142, 260, 146, "C", 200, 150, 150, 180, 116, 198, "Z");
        s.holeRound(260, 126, 14);
        s.partRound(100, 180, 10);
        s.protractor(260, 126, 56, 90);
        s.datumAxis(60, 126, 320, 126);
        s.axis(260, 126, 70, 190);
        s.angle(260, 126, 120, 161.5, 180);
        s.symbol(118, 118, END);
        s.tool(330, 230, START, 262, 180);
        s.datum(60, 60, START, 90, 125);
        s.note("pushrod", 126, 270, START);
        s.note("pivot", 290, 96, START);
    }

    // ---- tube, laid level

    private static void tube(CardSketch s) {
        s.partBox(150, 108, 160, 12);
        s.partBox(150, 180, 160, 12);
    }

    private static void rod(CardSketch s) {
        s.partBox(44, 110, 26, 40);
        s.part("M", 70, 122, "L", 412, 160, "L", 411, 178, "L", 69, 140, "Z");
        s.partRound(70, 131, 12);
        s.partRound(412, 169, 12);
    }

    private static void inside(CardSketch s) {
        tube(s);
        s.caliper(true, 120, 180, 290, 380, true);
        s.datumFace(160, 180, 250, 180);
        s.upright(230, 120, 180);
        s.symbol(220, 156, END);
        s.tool(420, 260, END, 390, 214);
        s.datum(40, 240, START, 170, 186);
        s.note("tube or hole, laid level", 130, 76, START);
    }

    private static void along(CardSketch s, double end, boolean isFar) {
        tube(s);
        rod(s);
        s.caliper(false, 58, end, 202, 236, false);
        s.datumArc(70, 131, 12, 150, 210, true);
        s.levelOff(58, end, 84, isFar ? 108 : 110);
        s.symbol((58 + end) / 2, 76, MIDDLE);
        s.tool(400, 284, START, end + 40, 246);
        s.datum(20, 284, START, 60, 138);
        s.note("pushrod", 350, 130, START);
        s.note("tube or hole, laid level", 330, 72, START);
    }

    private static void from(CardSketch s) {
        along(s, 150, false);
    }

    private static void to(CardSketch s) {
        along(s, 310, true);
    }

    private static void leans(CardSketch s) {
        boolean isFoot = s.is(Term.PUSHROD_FOOT_OFF, Term.PUSHROD_FOOT_BESIDE);
        boolean isBeside = s.is(Term.PUSHROD_FOOT_BESIDE, Term.PUSHROD_TIP_BESIDE);
        tube(s);
        rod(s);
        s.datumAxis(30, 150, 456, 150);
        double x = isFoot ? 70 : 412;
        double y = isFoot ? 131 : 169;
        s.spot(x, y, 4);
        s.caliper(true, Math.min(y, 150), Math.max(y, 150), isFoot ? 66 : 418, isFoot ? 24 : 446, false);
        s.upright(isFoot ? 110 : 380, Math.min(y, 150), Math.max(y, 150));
        s.symbol(isFoot ? 114 : 372, isFoot ? 112 : 190, isFoot ? START : END);
        s.tool(isFoot ? 20 : 460, 276, isFoot ? START : END, isFoot ? 22 : 452, isFoot ? 196 : 214);
        s.datum(180, 236, START, 240, 151);
        s.note(isBeside ? "seen from the pivot's side" : "seen along the rocker's axis", 200, 84, START);
        s.note("pushrod", 330, 128, START);
    }
}
