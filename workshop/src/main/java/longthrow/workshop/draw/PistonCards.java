package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of piston, pin and rings. */
final class PistonCards {
    private PistonCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.PISTON_DIAMETER,
                        "far side of the skirt",
                        PistonCards::diameter,
                        "Taken at the crown or along the pin, where the piston is smaller: skirts are oval and barrel-shaped.",
                        "Set the micrometer on its standard at 20 °C; piston at the same temperature.",
                        "Find the maker's gauge height on the skirt; it stands on the sheet that came with the piston.",
                        "Measure there, at right angles to the pin axis, ratchet to the same feel each time."),
                card(
                        Term.TOP_LAND_DIAMETER,
                        "far side of the top land",
                        PistonCards::diameter,
                        "Carbon on the land, or the anvil on the edge of the ring groove.",
                        "Clean the land without scraping metal.",
                        "Measure above the top ring groove, two directions."),
                card(
                        Term.COMPRESSION_HEIGHT,
                        "crown rim",
                        PistonCards::heights,
                        "The top of the pin taken for its centre: half a pin too little.",
                        "Not read straight: read pin top to crown and the pin diameter.",
                        "Pin top to crown plus half a pin is the compression height; better enter the two bare readings.",
                        "From the rim, never from the floor of a dish or the top of a dome."),
                card(
                        Term.PIN_TOP_TO_CROWN,
                        "crown rim",
                        PistonCards::heights,
                        "Written down as the compression height, which is half a pin more.",
                        "Push the clean pin out so that it stands clear of the skirt.",
                        "Base of the gauge flat on the crown rim (or piston crown down on the plate), rod down to the top of the pin.",
                        "Read on both ends of the pin and enter both."),
                card(
                        Term.PIN_BOTTOM_TO_CROWN,
                        "crown rim, on the plate",
                        PistonCards::pinBottom,
                        "Foot not at the farthest point of the bore, or the piston standing on a dome instead of its rim.",
                        "Stand the piston crown down on the plate, on its rim; shim it up level if it is domed.",
                        "Zero the gauge on the plate.",
                        "Foot into the pin bore against its far side, moved sideways to the largest figure; both ends."),
                card(
                        Term.PIN_DIAMETER,
                        "far side of the pin",
                        PistonCards::pin,
                        "One turn of the micrometer missed; check with a caliper.",
                        "Clean the pin, set the micrometer on its standard.",
                        "Measure where the rod runs and where the bosses hold it, two directions each."),
                card(
                        Term.PIN_LENGTH,
                        "other end of the pin",
                        PistonCards::pin,
                        "Jaws on the chamfer instead of the end faces.",
                        "Pin out of the piston, ends clean.",
                        "Jaws square over the two end faces."),
                card(
                        Term.PISTON_PIN_BORE,
                        "far side of the pin bore",
                        PistonCards::acrossPin,
                        "Read on the edge of the clip groove, or in one boss only.",
                        "Clips out, bore clean, gauge set to its ring.",
                        "Both bosses, two directions, rocked to the smallest figure."),
                card(
                                Term.CLIP_SPAN,
                                "inner face of the other clip",
                                PistonCards::acrossPin,
                                "Read groove to groove without the clips, or over their outer faces.",
                                "Fit both clips without the pin.",
                                "Inside jaws from the inner face of one clip to that of the other.")
                        .cautioned("Clips fly: wear glasses, and throw used clips away."),
                card(
                        Term.BOSS_GAP,
                        "inner face of the other boss",
                        PistonCards::acrossPin,
                        "Jaws on the cast slope beside the boss face.",
                        "Clean the inner faces of the bosses.",
                        "Inside jaws square between them, where the small end of the rod sits."),
                card(
                        Term.PIN_OFFSET,
                        "centre line of the piston",
                        PistonCards::offset,
                        "Sign turned round: positive is towards the anti-thrust side; and the piston turned round on the bench.",
                        "Mark the thrust side of the piston first.",
                        "Measure from the skirt to the pin bore on the thrust side and on the other.",
                        "Half the difference is the offset, positive when the pin is nearer to the anti-thrust side."),
                card(
                        Term.TOP_LAND_HEIGHT,
                        "crown rim",
                        PistonCards::rings,
                        "Read to the middle of the groove instead of its upper edge.",
                        "Clean the groove.",
                        "Jaw on the crown rim, the other on the upper edge of the top ring groove; four places."),
                card(
                        Term.OIL_GROOVE_TO_CROWN,
                        "crown rim",
                        PistonCards::rings,
                        "Read to the upper edge of the groove; the lower one counts.",
                        "Clean the groove.",
                        "From the crown rim to the lower edge of the oil-ring groove, where it passes the pin bore."),
                card(
                        Term.CROWN_RISE,
                        "crown rim",
                        PistonCards::crownRise,
                        "Zeroed on a valve pocket or on carbon instead of the bare rim.",
                        "Stand the piston upright on the plate and clean the crown.",
                        "Zero on the rim, then go over the dome to its highest point; the difference counts.",
                        "Flat or dished crown: enter 0."),
                card(
                        Term.SKIRT_BELOW_PIN,
                        "pin centre",
                        PistonCards::below,
                        "Taken from the edge of the pin and the half pin forgotten; or the short sides measured and the long ones meant.",
                        "Caliper from the lower edge of the pin to the lowest edge of the skirt.",
                        "Add half the pin diameter.",
                        "Measure the longest part of the skirt that passes the counterweight."),
                card(
                        Term.BOSS_BELOW_PIN,
                        "pin centre",
                        PistonCards::below,
                        "Half a pin forgotten, or a rib under the boss overlooked.",
                        "Caliper from the lower edge of the pin bore to the lowest point of the boss.",
                        "Add half the pin bore."),
                card(
                                Term.CROWN_VOLUME,
                                "crown rim",
                                PistonCards::crownVolume,
                                "An air bubble under the plate, or the piston not level with the deck all round; sign: a dish is positive, a dome negative.",
                                "Rim flush with the deck or in a ring, gap sealed with grease, plate with a small hole greased on top.",
                                "Fill from the burette through the hole until no bubble is left; three times.",
                                "Domed: set the rim a known depth down, fill, and take the space of that depth away.")
                        .cautioned("Thin coloured spirit burns: no flame, no hot lamp near it."),
                mass(Term.PISTON_MASS, "Pin, rings or clips left in."),
                mass(Term.PIN_MASS, "Clips forgotten: they go with the pin."),
                mass(Term.RING_MASS, "Oil ring rails or expander forgotten: all rings together."),
                card(
                        Term.TOP_RING_GAP,
                        "ring square in the bore",
                        PistonCards::gap,
                        "Ring not square, or gauged in the worn top of the bore.",
                        "Push the ring down to an unworn depth with the piston upside down, so that it lies square.",
                        "Thickest leaf that slides through the gap with a light drag."),
                card(
                        Term.SECOND_RING_GAP,
                        "ring square in the bore",
                        PistonCards::gap,
                        "Ring not square, or the rings mixed up.",
                        "Push the ring down to an unworn depth with the piston upside down, so that it lies square.",
                        "Thickest leaf that slides through the gap with a light drag."),
                card(
                        Term.TOP_RING_SIDE_CLEARANCE,
                        "wall of the ring groove",
                        PistonCards::side,
                        "Carbon in the groove, or a leaf pushed in at one place only: grooves wear unevenly.",
                        "Clean the groove down to metal.",
                        "Ring in its groove, pressed to one side; leaf between ring and groove.",
                        "Go all round; the largest counts."),
                card(
                        Term.TOP_RING_THICKNESS,
                        "other side of the ring",
                        PistonCards::thickness,
                        "A burr at the ring ends, or the radial width taken for the thickness.",
                        "Clean the ring.",
                        "Micrometer over the two flat sides, away from the ends, four places."));
    }

    private static ReadingCard mass(Term term, String mistake) {
        return card(
                term,
                "empty scale at zero",
                WholeCards::mass,
                mistake,
                "Clean and dry the part.",
                "Scale level and out of the draught, set to zero empty.",
                "Weigh, take off, check zero, weigh again.");
    }

    /** A piston, crown up, seen along the pin; its crown at y = top. */
    private static void piston(CardSketch s, double left, double top) {
        s.part("M", left, top, "h", 150, "v", 150, "h", -36, "v", -14, "h", -78, "v", 14, "h", -36, "Z");
        for (int groove = 0; groove < 3; groove++) {
            s.quiet("M", left, top + 16 + groove * 14, "h", 7, "v", 6, "h", -7);
            s.quiet("M", left + 150, top + 16 + groove * 14, "h", -7, "v", 6, "h", 7);
        }
        s.partRound(left + 75, top + 82, 20);
    }

    private static void diameter(CardSketch s) {
        piston(s, 190, 90);
        boolean skirt = s.is(Term.PISTON_DIAMETER);
        double y = skirt ? 200 : 98;
        s.micrometer(false, 190, 340, y, skirt ? 272 : 46);
        s.datumFace(190, skirt ? 220 : 106, 190, skirt ? 180 : 84);
        s.level(190, 340, y);
        s.symbol(skirt ? 300 : 270, skirt ? y - 6 : y + 24, START);
        s.datum(12, 140, START, 186, skirt ? 186 : 102);
        s.tool(390, skirt ? 250 : 60, START, 396, skirt ? 210 : 90);
        if (skirt) {
            s.quiet("M", 310, 200, "V", 240, "M", 305, 240, "H", 315);
            s.note("gauge height", 306, 219, END);
        }
        s.note("pin seen end on", 265, skirt ? 148 : 210, MIDDLE);
    }

    private static void heights(CardSketch s) {
        piston(s, 90, 130);
        boolean centre = s.is(Term.COMPRESSION_HEIGHT);
        s.datumFace(92, 130, 238, 130);
        // the pin pushed out, seen from the side: drawn on the right with the gauge's rod on it
        s.partBox(300, 192, 60, 40);
        s.axis(60, 212, 380, 212);
        s.quiet("M", 240, 192, "H", 300, "M", 240, 130, "H", 300);
        s.toolBox(200, 119, 140, 11);
        s.depthGauge(318, 130, 192, 0);
        s.upright(276, 130, centre ? 212 : 192);
        s.symbol(270, 178, END);
        if (centre) {
            s.note("read to the top of the pin, add half a pin", 350, 250, START);
            s.quiet("M", 372, 192, "H", 384, "M", 372, 212, "H", 384);
            s.note("half a pin", 388, 206, START);
        }
        s.tool(370, 84, START, 336, 82);
        s.datum(20, 76, START, 120, 128);
        s.note(centre ? "pin centre" : "pin, pushed out", centre ? 12 : 366, centre ? 234 : 228, START);
    }

    private static void pinBottom(CardSketch s) {
        s.plate(40, 300, 262);
        s.part("M", 80, 262, "h", 150, "v", -140, "h", -36, "v", 14, "h", -78, "v", -14, "h", -36, "Z");
        s.quietRound(155, 184, 22);
        s.datumFace(36, 262, 304, 262);
        s.quiet("M", 155, 162, "H", 270);
        s.upright(258, 162, 262);
        s.symbol(266, 222, START);
        // gauge in a stand, bent foot in the bore
        s.toolLine(3, "M", 155, 165, "V", 178, "H", 330, "V", 120);
        s.toolBox(324, 100, 12, 30);
        s.face(330, 84, 18);
        s.toolBox(360, 70, 10, 192);
        s.toolBox(336, 254, 60, 8);
        s.toolLine(5, "M", 336, 114, "H", 362);
        s.tool(380, 60, START, 348, 80);
        s.datum(330, 280, START, 306, 264);
        s.note("pin bore", 155, 222, MIDDLE);
        s.note("crown down", 90, 256, START);
    }

    private static void pin(CardSketch s) {
        s.partBox(130, 130, 190, 60);
        s.quiet("M", 130, 144, "H", 320, "M", 130, 176, "H", 320);
        s.axis(110, 160, 340, 160);
        if (s.is(Term.PIN_DIAMETER)) {
            s.micrometer(true, 130, 190, 225, 380);
            s.datumFace(170, 130, 280, 130);
            s.upright(170, 130, 190);
            s.symbol(162, 172, END);
            s.datum(40, 80, START, 180, 128);
            s.tool(260, 250, START, 236, 240);
        } else {
            s.caliper(false, 130, 320, 180, 226, false);
            s.datumFace(130, 204, 130, 116);
            s.level(130, 320, 112);
            s.symbol(225, 104, MIDDLE);
            s.quiet("M", 130, 104, "V", 126, "M", 320, 104, "V", 126);
            s.datum(20, 84, START, 126, 128);
            s.tool(376, 276, START, 350, 242);
        }
    }

    private static void acrossPin(CardSketch s) {
        s.part("M", 110, 80, "H", 330, "V", 260, "H", 300, "V", 110, "H", 140, "V", 260, "H", 110, "Z");
        s.part("M", 140, 150, "H", 185, "V", 216, "H", 140, "M", 300, 150, "H", 255, "V", 216, "H", 300);
        s.quiet("M", 110, 164, "H", 185, "M", 110, 202, "H", 185, "M", 255, 164, "H", 330, "M", 255, 202, "H", 330);
        s.axis(90, 183, 350, 183);
        if (s.is(Term.PISTON_PIN_BORE)) {
            s.toolBox(158, 178, 152, 10);
            s.toolLine(6, "M", 172, 164, "V", 202);
            s.face(320, 183, 20);
            s.datumFace(180, 202, 116, 202);
            s.upright(130, 164, 202);
            s.symbol(102, 180, END);
            s.tool(376, 160, START, 340, 176);
            s.datum(20, 276, START, 134, 206);
        } else if (s.is(Term.BOSS_GAP)) {
            s.caliper(false, 185, 255, 200, 250, true);
            s.datumFace(185, 230, 185, 146);
            s.level(185, 255, 140);
            s.symbol(220, 134, MIDDLE);
            s.datum(20, 46, START, 183, 150);
            s.tool(350, 284, START, 310, 262);
        } else {
            s.lit("M", 126, 158, "V", 208, "M", 314, 158, "V", 208);
            s.caliper(false, 128, 312, 192, 270, true);
            s.datumFace(128, 210, 128, 156);
            s.level(128, 312, 140);
            s.symbol(220, 134, MIDDLE);
            s.datum(20, 46, START, 126, 158);
            s.tool(376, 262, START, 352, 274);
            s.note("clip", 340, 156, START);
        }
    }

    private static void offset(CardSketch s) {
        s.part("M", 130, 70, "H", 290, "V", 240, "H", 130, "Z");
        s.quietRound(222, 170, 22);
        s.datumAxis(210, 56, 210, 262);
        s.axis(222, 110, 222, 230);
        s.dimension(210, 120, 222, 120);
        s.symbol(250, 112, START);
        s.caliper(false, 130, 200, 180, 250, false);
        s.tool(260, 284, START, 240, 268);
        s.datum(310, 70, START, 212, 62);
        s.note("thrust side", 124, 90, END);
        s.note("anti-thrust side", 300, 150, START);
        s.note("pin bore", 250, 184, START);
    }

    private static void rings(CardSketch s) {
        s.part(
                "M", 60, 80, "H", 230, "V", 110, "h", -22, "v", 16, "h", 22, "v", 22, "h", -22, "v", 16, "h", 22, "v",
                22, "h", -22, "v", 22, "h", 22, "V", 270, "H", 60, "Z");
        s.datumFace(58, 80, 232, 80);
        boolean top = s.is(Term.TOP_LAND_HEIGHT);
        double y = top ? 110 : 208;
        s.caliper(true, 80, y, 214, 290, false);
        s.upright(180, 80, y);
        s.symbol(172, top ? 106 : 186, END);
        s.quiet("M", 172, y, "H", 230);
        s.datum(60, 56, START, 110, 80);
        s.tool(330, top ? 210 : 110, START, 308, top ? 140 : 120);
        s.note("top ring groove", 100, 136, START);
        s.note("oil-ring groove", 100, 242, START);
    }

    private static void crownRise(CardSketch s) {
        s.part("M", 80, 180, "C", 130, 120, 190, 120, 240, 180, "V", 268, "H", 80, "Z");
        s.plate(40, 440, 268);
        s.datumFace(40, 180, 84, 180);
        s.datumFace(236, 180, 284, 180);
        s.quiet("M", 160, 135, "H", 300);
        s.upright(270, 135, 180);
        s.symbol(280, 164, START);
        s.depthGauge(160, 100, 134, 0);
        s.toolBox(130, 89, 330, 11);
        s.toolBox(440, 100, 14, 168);
        s.tool(200, 62, START, 178, 54);
        s.datum(290, 226, START, 276, 183);
        s.note("crown, domed", 160, 200, MIDDLE);
    }

    private static void below(CardSketch s) {
        piston(s, 120, 60);
        boolean skirt = s.is(Term.SKIRT_BELOW_PIN);
        if (!skirt) {
            s.part("M", 168, 142, "C", 168, 200, 222, 200, 222, 142);
        }
        s.datumAxis(100, 142, 320, 142);
        double bottom = skirt ? 210 : 186;
        s.caliper(true, 162, bottom, skirt ? 256 : 206, 330, false);
        s.quiet("M", skirt ? 270 : 200, bottom, "H", 290);
        s.upright(288, 142, bottom);
        s.symbol(280, skirt ? 182 : 174, END);
        s.datum(350, 90, START, 316, 140);
        s.tool(360, 250, START, 342, 230);
        s.note("lower edge of the pin plus half a pin", 20, 250, START);
        s.quiet("M", 90, 234, "L", 182, 164);
    }

    private static void crownVolume(CardSketch s) {
        s.partBox(70, 150, 40, 110);
        s.partBox(250, 150, 40, 110);
        s.part("M", 112, 152, "H", 130, "C", 150, 186, 210, 186, 230, 152, "H", 248, "V", 250, "H", 112, "Z");
        s.lit("M", 130, 152, "C", 150, 186, 210, 186, 230, 152, "Z");
        s.quiet(Sketch.box(60, 136, 116, 14));
        s.quiet(Sketch.box(184, 136, 116, 14));
        s.datumFace(296, 151, 232, 151);
        s.datumFace(128, 151, 64, 151);
        s.burette(180, 40, 136);
        s.symbol(180, 202, MIDDLE);
        s.quiet("M", 180, 186, "L", 180, 172);
        s.tool(220, 72, START, 188, 76);
        s.datum(320, 180, START, 290, 154);
        s.note("clear plate with a hole, greased", 20, 90, START);
        s.quiet("M", 80, 112, "L", 90, 138);
    }

    private static void gap(CardSketch s) {
        s.partRound(180, 170, 105);
        s.quietRound(180, 170, 92);
        s.part("M", 173, 80, "A", 90, 90, "0 1 0", 187, 80, "L", 186, 96, "A", 75, 75, "0 1 1", 174, 96, "Z");
        s.feeler(180, 100, 0.55, -0.6, 90);
        s.dimension(173, 88, 187, 88);
        s.symbol(140, 118, END);
        s.tool(330, 100, START, 242, 34);
        s.datum(310, 200, START, 262, 190);
        s.note("cylinder, seen from above", 300, 268, START);
        s.note("ring", 180, 236, MIDDLE);
    }

    private static void side(CardSketch s) {
        s.part("M", 60, 70, "H", 250, "V", 120, "H", 140, "V", 190, "H", 250, "V", 260, "H", 60, "Z");
        s.part("M", 150, 134, "H", 262, "V", 190, "H", 150, "Z");
        s.datumFace(140, 120, 254, 120);
        s.feeler(170, 127, 1, 0, 170);
        s.dimension(158, 120, 158, 134);
        s.symbol(128, 112, END);
        s.tool(340, 100, START, 330, 126);
        s.datum(266, 56, START, 200, 117);
        s.note("ring", 200, 166, MIDDLE);
        s.note("piston", 80, 230, START);
        s.note("groove, much larger than life", 270, 230, START);
    }

    private static void thickness(CardSketch s) {
        s.part("M", 60, 140, "H", 270, "V", 172, "H", 60, "Z");
        s.micrometer(true, 140, 172, 160, 320);
        s.datumFace(100, 140, 220, 140);
        s.upright(90, 140, 172);
        s.symbol(80, 162, END);
        s.tool(200, 260, START, 170, 230);
        s.datum(40, 80, START, 120, 137);
        s.note("ring, edge on", 172, 161, START);
    }
}
