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
                        "opposite side of the skirt",
                        PistonCards::diameter,
                        "Taken at the crown or along the pin, where the piston is smaller: skirts are oval and barrel-shaped.",
                        "Set the micrometer on its standard at 20 °C; piston at the same temperature.",
                        "Find the maker's gauge height on the skirt; it stands on the sheet that came with the piston.",
                        "Measure there, at right angles to the pin axis, ratchet to the same feel each time."),
                card(
                        Term.TOP_LAND_DIAMETER,
                        "opposite side of the top land",
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
                        "opposite side of the pin",
                        PistonCards::pin,
                        "One turn of the micrometer missed; check with a caliper.",
                        "Clean the pin, set the micrometer on its standard.",
                        "Measure where the rod runs and where the bosses hold it, two directions each."),
                card(
                        Term.PIN_LENGTH,
                        "opposite end of the pin",
                        PistonCards::pin,
                        "Jaws on the chamfer instead of the end faces.",
                        "Pin out of the piston, ends clean.",
                        "Jaws square over the two end faces."),
                card(
                        Term.PISTON_PIN_BORE,
                        "opposite side of the pin bore",
                        PistonCards::acrossPin,
                        "Read on the edge of the clip groove, or in one boss only.",
                        "Clips out, bore clean, gauge set to its ring.",
                        "Both bosses, two directions, rocked to the smallest figure."),
                card(
                                Term.CLIP_SPAN,
                                "inner face of the opposite clip",
                                PistonCards::acrossPin,
                                "Read groove to groove without the clips, or over their outer faces.",
                                "Fit both clips without the pin.",
                                "Inside jaws from the inner face of one clip to that of the other.")
                        .cautioned("Clips fly: wear glasses, and throw used clips away."),
                card(
                        Term.BOSS_GAP,
                        "inner face of the opposite boss",
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
                        "opposite side of the ring",
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
            s.hole("M", left, top + 16 + groove * 14, "h", 7, "v", 6, "h", -7);
            s.hole("M", left + 150, top + 16 + groove * 14, "h", -7, "v", 6, "h", 7);
        }
        s.holeRound(left + 75, top + 82, 20);
    }

    private static void diameter(CardSketch s) {
        piston(s, 180, 90);
        boolean skirt = s.is(Term.PISTON_DIAMETER);
        double y = skirt ? 200 : 98;
        s.micrometer(false, 180, 330, y, skirt ? 276 : 50);
        if (skirt) {
            s.datumFace(180, 224, 180, 178);
        } else {
            s.datumFace(180, 105, 180, 91);
        }
        s.level(180, 330, y);
        s.symbol(skirt ? 290 : 255, skirt ? y - 8 : y + 24, MIDDLE);
        s.datum(4, skirt ? 138 : 150, START, 181, skirt ? 182 : 100);
        s.tool(390, skirt ? 150 : 60, START, 390, skirt ? 192 : 90);
        if (skirt) {
            s.uprightOff(350, 200, 240, 330);
            s.note("gauge height", 362, 234, START);
        }
        s.note("pin bore, seen end on", 255, skirt ? 118 : 214, MIDDLE);
    }

    private static void heights(CardSketch s) {
        piston(s, 90, 130);
        boolean centre = s.is(Term.COMPRESSION_HEIGHT);
        // the pin pushed out, seen from the side: drawn on the right with the rod of the gauge on it
        s.partBox(300, 192, 60, 40);
        s.axis(60, 212, 380, 212);
        s.quiet("M", 196, 192, "H", 300);
        s.toolBox(190, 119, 150, 11);
        s.depthGauge(318, 130, 192, 0);
        s.datumFace(92, 130, 238, 130);
        s.uprightOff(270, 130, centre ? 212 : 192, 240);
        s.symbol(262, 178, END);
        if (centre) {
            s.note("read to the top of the pin, add half a pin", 330, 262, START);
            s.quiet("M", 360, 192, "H", 384, "M", 380, 212, "H", 384, "M", 382, 192, "V", 212);
            s.note("half a pin", 390, 206, START);
        }
        s.tool(370, 84, START, 335, 82);
        s.datum(20, 76, START, 120, 130);
        s.note(centre ? "pin centre" : "pin, pushed out", centre ? 10 : 366, centre ? 234 : 222, START);
    }

    private static void pinBottom(CardSketch s) {
        s.plate(40, 400, 262);
        s.part("M", 80, 262, "h", 150, "v", -140, "h", -36, "v", 14, "h", -78, "v", -14, "h", -36, "Z");
        s.holeRound(155, 184, 22);
        s.datumFace(42, 262, 300, 262);
        s.uprightOff(262, 162, 262, 155);
        s.symbol(272, 218, START);
        // gauge in a stand, bent foot in the bore
        s.toolLine(3, "M", 155, 163, "V", 178, "H", 330, "V", 120);
        s.toolBox(324, 100, 12, 30);
        s.face(330, 84, 18);
        s.toolLine(5, "M", 336, 114, "H", 362);
        s.toolBox(360, 70, 10, 192);
        s.toolBox(342, 252, 50, 10);
        s.tool(380, 60, START, 347, 78);
        s.datum(20, 70, START, 58, 264);
        s.note("pin bore", 155, 222, MIDDLE);
        s.note("crown down", 90, 254, START);
    }

    private static void pin(CardSketch s) {
        if (s.is(Term.PIN_DIAMETER)) {
            s.partBox(30, 126, 200, 60);
            s.quiet("M", 30, 140, "H", 230, "M", 30, 172, "H", 230);
            s.axis(14, 156, 252, 156);
            s.lookAt(130, 112, 200, true);
            s.note("where the rod runs, and in the bosses", 40, 240, START);
            s.roundInMicrometer(390, 156, 36, 456);
            s.holeRound(390, 156, 18);
            s.uprightOff(332, 120, 192, 390);
            s.symbol(324, 162, END);
            s.datum(230, 60, START, 372, 125);
            s.tool(360, 254, END, 381, 254);
            s.note("pin, on its end", 470, 290, END);
        } else {
            s.partBox(130, 130, 190, 60);
            s.quiet("M", 130, 144, "H", 320, "M", 130, 176, "H", 320);
            s.axis(110, 160, 340, 160);
            s.caliper(false, 130, 320, 176, 232, false);
            s.datumFace(130, 188, 130, 132);
            s.levelOff(130, 320, 112, 130);
            s.symbol(225, 104, MIDDLE);
            s.datum(20, 74, START, 131, 136);
            s.tool(396, 284, START, 372, 250);
        }
    }

    private static void acrossPin(CardSketch s) {
        s.part("M", 110, 80, "H", 330, "V", 260, "H", 300, "V", 110, "H", 140, "V", 260, "H", 110, "Z");
        s.partBox(140, 150, 45, 66);
        s.partBox(255, 150, 45, 66);
        s.hole("M", 110, 164, "H", 185, "V", 202, "H", 110);
        s.hole("M", 330, 164, "H", 255, "V", 202, "H", 330);
        s.axis(90, 183, 350, 183);
        s.note("cut along the pin", 246, 98, MIDDLE);
        if (s.is(Term.PISTON_PIN_BORE)) {
            s.toolBox(158, 178, 182, 10);
            s.toolLine(6, "M", 166, 165, "V", 201);
            s.face(352, 183, 20);
            s.datumFace(112, 202, 183, 202);
            s.uprightOff(78, 164, 202, 110);
            s.symbol(68, 189, END);
            s.tool(376, 140, START, 360, 166);
            s.datum(20, 284, START, 134, 206);
        } else if (s.is(Term.BOSS_GAP)) {
            s.caliper(false, 185, 255, 190, 270, true);
            s.datumFace(185, 203, 185, 216);
            s.datumFace(185, 151, 185, 163);
            s.levelOff(185, 255, 132, 150);
            s.symbol(220, 126, MIDDLE);
            s.datum(12, 54, START, 184, 156);
            s.tool(350, 250, START, 299, 272);
        } else {
            s.part("M", 122, 158, "H", 128, "V", 208, "H", 122, "Z");
            s.part("M", 312, 158, "H", 318, "V", 208, "H", 312, "Z");
            s.caliper(false, 128, 312, 183, 266, true);
            s.datumFace(128, 159, 128, 207);
            s.levelOff(128, 312, 136, 158);
            s.symbol(220, 130, MIDDLE);
            s.datum(12, 54, START, 126, 166);
            s.tool(396, 250, START, 356, 270);
            s.note("clip", 342, 150, START);
            s.quiet("M", 340, 148, "L", 317, 164);
        }
    }

    private static void offset(CardSketch s) {
        s.part("M", 130, 70, "H", 290, "V", 240, "H", 130, "Z");
        s.holeRound(222, 170, 22);
        s.caliper(false, 130, 200, 196, 254, false);
        s.quiet("M", 200, 170, "V", 196); // the jaw stands level with the edge of the bore
        s.datumAxis(210, 56, 210, 250);
        s.axis(222, 104, 222, 228);
        s.dimension(210, 120, 222, 120);
        s.symbol(250, 126, START);
        s.tool(290, 290, START, 244, 266);
        s.datum(310, 76, START, 210, 62);
        s.note("thrust side", 124, 100, END);
        s.note("anti-thrust side", 300, 160, START);
        s.note("pin bore", 252, 196, START);
        s.note("caliper on the other side too: half the difference", 320, 200, START);
    }

    private static void rings(CardSketch s) {
        s.part("M", 60, 80, "H", 230, "V", 270, "H", 60, "Z");
        for (double y : new double[] {110, 148, 186}) {
            s.hole("M", 230, y, "h", -22, "v", y > 160 ? 22 : 16, "h", 22);
        }
        boolean top = s.is(Term.TOP_LAND_HEIGHT);
        double y = top ? 110 : 208;
        s.caliper(true, 80, y, 214, 296, false);
        s.datumFace(62, 80, 228, 80);
        s.upright(186, 80, y);
        s.quiet("M", 180, y, "H", 208);
        s.symbol(178, top ? 102 : 170, END);
        s.datum(60, 56, START, 110, 80);
        s.tool(346, top ? 210 : 110, START, 311, top ? 140 : 120);
        s.note("top ring groove", 66, 132, START);
        s.quiet("M", 162, 126, "L", 214, 118);
        s.note("oil-ring groove", 66, 242, START);
        s.quiet("M", 162, 236, "L", 216, 200);
        s.note("piston, cut through", 66, 262, START);
    }

    private static void crownRise(CardSketch s) {
        s.part("M", 60, 180, "H", 90, "C", 130, 122, 190, 122, 230, 180, "H", 260, "V", 268, "H", 60, "Z");
        s.plate(40, 450, 268);
        s.datumFace(62, 180, 88, 180);
        s.datumFace(232, 180, 258, 180);
        s.quiet("M", 160, 136, "H", 296);
        s.upright(290, 136, 180);
        s.quiet("M", 260, 180, "H", 296);
        s.symbol(300, 164, START);
        s.depthGauge(160, 100, 136, 0);
        s.toolBox(130, 89, 316, 11);
        s.toolBox(430, 100, 14, 168);
        s.tool(204, 62, START, 176, 54);
        s.datum(290, 226, START, 250, 183);
        s.note("crown, domed", 160, 210, MIDDLE);
    }

    private static void below(CardSketch s) {
        piston(s, 120, 60);
        boolean skirt = s.is(Term.SKIRT_BELOW_PIN);
        if (!skirt) {
            s.part("M", 168, 142, "C", 168, 200, 222, 200, 222, 142, "Z");
            s.holeRound(195, 142, 20);
        } else {
            s.partRound(195, 142, 20);
        }
        double bottom = skirt ? 210 : 186;
        s.caliper(true, 162, bottom, skirt ? 256 : 200, 350, false);
        if (skirt) {
            s.quiet("M", 195, 162, "H", 256); // the jaw stands in front of the skirt, level with the edge of the pin
        }
        s.datumAxis(100, 142, 330, 142);
        s.uprightOff(88, 142, bottom, skirt ? 120 : 190);
        s.symbol(78, 182, END);
        s.datum(300, 76, START, 312, 142);
        s.tool(400, 250, START, 370, bottom + 20);
        s.note(
                skirt ? "lower edge of the pin plus half a pin" : "lower edge of the bore plus half a bore",
                20,
                262,
                START);
        s.quiet("M", 110, 248, "L", 188, 164);
    }

    private static void crownVolume(CardSketch s) {
        s.partBox(70, 150, 40, 110);
        s.partBox(250, 150, 40, 110);
        s.part("M", 112, 150, "H", 130, "C", 150, 186, 210, 186, 230, 150, "H", 248, "V", 250, "H", 112, "Z");
        s.lit("M", 130, 150, "C", 150, 186, 210, 186, 230, 150, "Z");
        s.quiet(Sketch.box(60, 136, 116, 14));
        s.quiet(Sketch.box(184, 136, 116, 14));
        s.datumFace(112, 150, 129, 150);
        s.datumFace(231, 150, 248, 150);
        s.burette(180, 40, 136);
        s.symbol(180, 206, MIDDLE);
        s.quiet("M", 180, 188, "L", 180, 168);
        s.tool(220, 72, START, 186, 76);
        s.datum(330, 200, START, 242, 153);
        s.note("clear plate with a hole, greased", 14, 86, START);
        s.quiet("M", 80, 106, "L", 90, 137);
        s.note("deck or ring, flush", 330, 250, START);
        s.quiet("M", 326, 246, "L", 284, 236);
    }

    private static void gap(CardSketch s) {
        s.partRound(180, 170, 112);
        s.holeRound(180, 170, 94);
        s.part("M", 170, 77.5, "A", 93, 93, "0 1 0", 190, 77.5, "L", 188, 96, "A", 75, 75, "0 1 1", 172, 96, "Z");
        s.toolBox(173, 52, 15, 46);
        s.toolBox(166, 36, 29, 18);
        s.dimension(171, 108, 189, 108);
        s.symbol(142, 134, END);
        s.datumArc(180, 170, 94, 0, 40, false);
        s.tool(310, 60, START, 195, 46);
        s.datum(320, 190, START, 272, 188);
        s.note("cylinder, seen from above", 304, 274, START);
        s.note("ring", 180, 236, MIDDLE);
    }

    private static void side(CardSketch s) {
        s.part("M", 60, 70, "H", 250, "V", 120, "H", 140, "V", 190, "H", 250, "V", 260, "H", 60, "Z");
        s.part("M", 152, 136, "H", 262, "V", 190, "H", 152, "Z");
        s.tool("M", 170, 121, "H", 340, "V", 135, "H", 170, "Z");
        s.toolBox(340, 116, 44, 24);
        s.datumFace(248, 120, 142, 120);
        s.dimension(160, 120, 160, 136);
        s.symbol(128, 136, END);
        s.tool(380, 90, START, 366, 117);
        s.datum(270, 60, START, 220, 118);
        s.note("ring, pressed down", 207, 168, MIDDLE);
        s.note("piston", 80, 230, START);
        s.note("groove, much larger than life", 270, 230, START);
    }

    private static void thickness(CardSketch s) {
        s.part("M", 60, 140, "H", 270, "V", 172, "H", 60, "Z");
        s.micrometer(true, 140, 172, 200, 340);
        s.datumFace(110, 140, 260, 140);
        s.uprightOff(44, 140, 172, 60);
        s.symbol(34, 164, END);
        s.tool(250, 262, START, 209, 240);
        s.datum(20, 84, START, 130, 140);
        s.note("ring, edge on", 80, 161, START);
    }
}
