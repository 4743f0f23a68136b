package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of output shaft, flywheel, ignition, clutch, chain, carburettor and exhaust. */
final class ShaftCards {
    static final String TAPER_SLIP =
            "Not at the middle of the key, or over the edge of the keyway: a taper has another diameter everywhere.";
    static final String KEYWAY_SLIP = "Measured where the key has bruised the walls.";

    private ShaftCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.OUTPUT_SHAFT_DIAMETER,
                        "far side of the shaft",
                        ShaftCards::shaft,
                        "Burr of a set screw under the jaws.",
                        "Stone off burrs where the clutch sits.",
                        "Jaws square, two places, two directions."),
                card(
                        Term.OUTPUT_SHAFT_LENGTH,
                        "shoulder",
                        ShaftCards::shaft,
                        "Measured from the case or from another shoulder than the one that stops the clutch.",
                        "Find the shoulder that the hub will stop at.",
                        "From that shoulder to the end of the shaft."),
                card(
                        Term.OUTPUT_SHAFT_KEYWAY,
                        "other wall of the keyway",
                        ShaftCards::keyway,
                        KEYWAY_SLIP,
                        "Clean the keyway; stone off burrs.",
                        "Inside jaws square between its walls, at both ends."),
                card(
                        Term.COIL_GAP,
                        "rim of the flywheel",
                        ShaftCards::coil,
                        "Magnets opposite the other foot pull the coil aside, or rust on the rim counts as gap.",
                        "Turn the magnets under the coil.",
                        "Thickest non-magnetic leaf with a light drag under each foot."),
                card(
                                Term.BASE_TIMING,
                                "true top dead centre",
                                ShaftCards::timing,
                                "Top dead centre taken by eye: the piston dwells there; or an advance curve already at work.",
                                "Zero the wheel by a positive stop, both ways.",
                                "Straight key; timing light on the lead, engine turned at the speed the maker states.",
                                "Read the wheel at the pointer when the light fires.")
                        .cautioned(
                                "Engine runs: clothes, hair and lead clear of wheel and shaft, exhaust led outside."),
                card(
                        Term.KEY_OFFSET,
                        "side of the key in the shaft",
                        ShaftCards::keyOffset,
                        "Sign turned round: positive fires earlier; look which way the shaft turns first.",
                        "Stand the key on its side.",
                        "Measure over shaft part and step together, then the shaft part alone.",
                        "The difference is the offset; give it its sign."),
                card(
                        Term.TAPER_DIAMETER,
                        "far side of the taper",
                        ShaftCards::taper,
                        TAPER_SLIP,
                        "Mark the middle of the key's length on the taper.",
                        "Jaws square across the shaft at the mark, clear of the keyway."),
                card(
                        Term.FLYWHEEL_DIAMETER,
                        "far side of the rim",
                        ShaftCards::wheel,
                        "Measured beside the middle, or over blades that stand out beyond the rim.",
                        "Tape across the rim through the middle of the shaft.",
                        "Swing one end for the largest figure; two directions."),
                card(
                        Term.FLYWHEEL_TAPER_BORE,
                        "far side of the bore",
                        ShaftCards::hub,
                        TAPER_SLIP,
                        "Mark the middle of the keyway's length.",
                        "Inside jaws square across the bore there, clear of the keyway."),
                card(
                                Term.FLYWHEEL_KEYWAY,
                                "other wall of the keyway",
                                ShaftCards::hub,
                                KEYWAY_SLIP,
                                "Clean the keyway; look for cracks at its corners.",
                                "Inside jaws square between its walls.")
                        .cautioned("A crack at the keyway ends the wheel: do not run it."),
                card(
                        Term.FLYWHEEL_MASS,
                        "empty scale at zero",
                        WholeCards::mass,
                        "Starter cup, nut or fan left on.",
                        "Bare wheel, clean.",
                        "Scale set to zero empty; weigh, take off, check zero."),
                card(
                        Term.FLYWHEEL_INERTIA,
                        "axis of the shaft",
                        ShaftCards::swing,
                        "Swings counted from one instead of from nought, or the mass of the mount forgotten.",
                        "Hang the wheel level by long threads, or on an edge inside its rim.",
                        "Let it swing by a small angle, time twenty swings, three times.",
                        "Do the same with a disc of known inertia on the same threads."),
                card(
                        Term.VENTURI,
                        "far side of the throat",
                        ShaftCards::plug,
                        "Gauge held askew, or stopped by a nozzle that stands in the throat.",
                        "Clean the throat; choke and throttle open.",
                        "Largest plug gauge that enters by its own weight."),
                card(
                        Term.THROTTLE_BORE,
                        "far side of the bore",
                        ShaftCards::plug,
                        "Read at the worn place beside the spindle.",
                        "Throttle plate out or wide open.",
                        "Largest plug gauge that enters by its own weight, at the throttle."),
                card(
                        Term.PRIMARY_DIAMETER,
                        "far side of the pipe",
                        ShaftCards::pipe,
                        "The outside of the pipe measured: its inside counts.",
                        "Clear the end of weld and carbon.",
                        "Inside jaws across the pipe, two directions."),
                card(
                        Term.PRIMARY_LENGTH,
                        "port face",
                        ShaftCards::pipe,
                        "Measured along the outside or the inside of the bends.",
                        "Tape along the centre line: a string through the middle of the pipe helps.",
                        "From the port face to the first change of section."),
                speed(
                        Term.LIMITER_SPEED,
                        "Raise the speed slowly until the spark is cut; read the highest steady figure."),
                speed(
                        Term.ENGAGEMENT_SPEED,
                        "Brake on, raise the speed slowly until the clutch begins to drive; read there."),
                card(
                        Term.CLUTCH_BORE,
                        "far side of the bore",
                        ShaftCards::hub,
                        "Read over the keyway, or on the chamfer.",
                        "Clean the bore.",
                        "Inside jaws square, two directions, clear of the keyway."),
                card(
                        Term.CLUTCH_KEYWAY,
                        "other wall of the keyway",
                        ShaftCards::hub,
                        KEYWAY_SLIP,
                        "Clean the keyway.",
                        "Inside jaws square between its walls."),
                card(
                        Term.CLUTCH_HUB_LENGTH,
                        "inner end of the hub",
                        ShaftCards::hubLength,
                        "Washer and spacer forgotten: all that takes up shaft counts.",
                        "Put together what goes on the shaft with the hub.",
                        "Over both ends."),
                card(
                        Term.TEETH,
                        "marked tooth",
                        ShaftCards::sprocket,
                        "The marked tooth counted twice.",
                        "Mark one tooth with chalk.",
                        "Count round to it; do it again the other way."),
                card(
                        Term.CHAIN_PITCH,
                        "one rivet",
                        ShaftCards::chain,
                        "A worn chain read over one link: wear adds up over many links and shows.",
                        "Pull the chain straight.",
                        "Rivet centre to the centre of the next; over ten pitches and divided by ten is surer."));
    }

    private static ReadingCard speed(Term term, String how) {
        return card(
                        term,
                        "zero when stopped",
                        ShaftCards::tachometer,
                        "Tachometer set for another number of sparks in a turn: it then shows half or double.",
                        "Set the tachometer to the sparks of this engine in a turn; lead round the plug lead.",
                        how,
                        "Three times.")
                .cautioned(
                        "Engine runs at speed: stand out of the plane of flywheel and clutch, guards on, exhaust led outside.");
    }

    private static void shaft(CardSketch s) {
        s.partBox(40, 90, 60, 180);
        s.partBox(100, 136, 40, 80);
        s.partBox(140, 150, 180, 52);
        s.axis(30, 176, 360, 176);
        if (s.is(Term.OUTPUT_SHAFT_DIAMETER)) {
            s.caliper(true, 150, 202, 250, 350, false);
            s.datumFace(180, 150, 300, 150);
            s.upright(220, 150, 202);
            s.symbol(212, 194, END);
            s.datum(160, 90, START, 200, 147);
            s.tool(390, 180, START, 368, 200);
        } else {
            s.caliper(false, 140, 320, 194, 236, false);
            s.datumFace(140, 218, 140, 134);
            s.level(140, 320, 130);
            s.symbol(230, 122, MIDDLE);
            s.quiet("M", 320, 124, "V", 150);
            s.datum(150, 84, START, 140, 132);
            s.tool(390, 284, START, 358, 248);
        }
        s.note("case", 70, 286, MIDDLE);
    }

    static void keyway(CardSketch s) {
        s.part("M", 222, 86, "A", 96, 96, "0 1 0", 278, 86, "V", 122, "H", 222, "Z");
        s.axis(250, 40, 250, 292);
        s.datumFace(222, 82, 222, 124);
        s.caliper(false, 222, 278, 108, 56, true);
        s.level(222, 278, 144);
        s.symbol(262, 168, START);
        s.tool(360, 90, START, 316, 58);
        s.datum(12, 76, START, 220, 98);
        s.note("shaft, seen on its end", 250, 236, MIDDLE);
    }

    static void taper(CardSketch s) {
        s.part(
                "M", 60, 100, "H", 120, "V", 124, "L", 300, 146, "H", 360, "V", 194, "H", 300, "L", 120, 216, "V", 240,
                "H", 60, "Z");
        s.quiet(Sketch.box(160, 162, 100, 16));
        s.axis(40, 170, 390, 170);
        s.caliper(true, 135, 205, 216, 400, false);
        s.datumFace(170, 131, 250, 140);
        s.upright(206, 135, 205);
        s.symbol(198, 158, END);
        s.axis(210, 100, 210, 260);
        s.datum(130, 64, START, 190, 130);
        s.tool(250, 260, START, 396, 228);
        s.note("middle of the key", 200, 278, END);
    }

    private static void keyOffset(CardSketch s) {
        s.part("M", 80, 250, "V", 180, "A", 80, 80, "0 0 1", 240, 180, "V", 250, "Z");
        s.part("M", 130, 200, "V", 160, "H", 150, "V", 110, "H", 200, "V", 160, "H", 180, "V", 200, "Z");
        s.datumFace(130, 202, 130, 158);
        s.dimension(130, 134, 150, 134);
        s.quiet("M", 130, 128, "V", 160);
        s.symbol(96, 126, END);
        s.caliper(false, 130, 200, 152, 66, false);
        s.tool(300, 110, START, 236, 72);
        s.datum(280, 210, START, 132, 190);
        s.note("shaft", 220, 236, END);
        s.note("part in the wheel", 252, 150, START);
    }

    private static void hub(CardSketch s) {
        s.partRound(190, 176, 100);
        boolean key = s.is(Term.FLYWHEEL_KEYWAY, Term.CLUTCH_KEYWAY);
        s.part("M", 174, 126, "V", 104, "H", 206, "V", 126, "A", 52, 52, "0 1 1", 174, 126, "Z");
        s.axis(190, 60, 190, 290);
        if (key) {
            s.caliper(false, 174, 206, 116, 50, true);
            s.datumFace(174, 128, 174, 102);
            s.level(174, 206, 146);
            s.symbol(190, 172, MIDDLE);
            s.datum(20, 76, START, 172, 112);
            s.tool(300, 80, START, 244, 54);
        } else {
            s.caliper(false, 138, 242, 176, 50, true);
            s.datumFace(137, 200, 137, 156);
            s.level(138, 242, 196);
            s.symbol(210, 218, START);
            s.datum(310, 200, START, 137, 190);
            s.tool(330, 90, START, 278, 56);
        }
        s.note(
                s.is(Term.CLUTCH_BORE, Term.CLUTCH_KEYWAY) ? "clutch hub" : "flywheel, from the side of the taper",
                310,
                268,
                START);
    }

    private static void hubLength(CardSketch s) {
        s.part("M", 120, 120, "H", 220, "V", 90, "H", 250, "V", 250, "H", 220, "V", 230, "H", 120, "Z");
        s.axis(90, 175, 300, 175);
        s.quiet("M", 120, 154, "H", 250, "M", 120, 196, "H", 250);
        s.caliper(false, 120, 250, 200, 266, false);
        s.datumFace(120, 232, 120, 118);
        s.level(120, 250, 66);
        s.quiet("M", 120, 60, "V", 120, "M", 250, 60, "V", 90);
        s.symbol(185, 58, MIDDLE);
        s.datum(300, 110, START, 120, 126);
        s.tool(330, 240, START, 284, 268);
        s.note("hub", 150, 150, MIDDLE);
    }

    private static void coil(CardSketch s) {
        s.part("M", 30, 280, "A", 150, 150, "0 0 1", 330, 280, "Z");
        s.part("M", 90, 60, "H", 270, "V", 150, "H", 230, "V", 100, "H", 130, "V", 150, "H", 90, "Z");
        s.part("M", 150, 84, "H", 210, "V", 116, "H", 150, "Z");
        s.datumFace(266, 160, 222, 142);
        s.feeler(256, 154, 0.96, 0.28, 90);
        s.upright(102, 150, 159);
        s.symbol(76, 152, END);
        s.tool(340, 130, START, 320, 172);
        s.datum(340, 230, START, 262, 160);
        s.note("coil", 180, 104, MIDDLE);
        s.note("flywheel, magnets under the coil", 180, 250, MIDDLE);
    }

    private static void timing(CardSketch s) {
        s.degreeWheel(170, 170, 104);
        s.datumAxis(170, 170, 170, 46);
        s.toolLine(4, "M", 98, 78, "L", 122, 110);
        s.lit("M", 170, 170, "L", 116, 96);
        s.lit("M", 134, 120, "A", 62, 62, "0 0 1", 170, 108);
        s.symbol(150, 102, END);
        s.tool("M", 330, 190, "L", 410, 160, "L", 418, 184, "L", 338, 212, "Z");
        s.quiet("M", 328, 200, "L", 130, 104, "M", 330, 206, "L", 126, 118);
        s.tool(300, 60, START, 250, 104);
        s.datum(300, 110, START, 172, 60);
        s.note("timing light", 350, 236, START);
        s.note("pointer", 92, 74, END);
    }

    private static void wheel(CardSketch s) {
        s.partRound(180, 180, 100);
        s.quietRound(180, 180, 84);
        s.partRound(180, 180, 18);
        s.toolBox(70, 174, 230, 12);
        for (int tick = 0; tick < 20; tick++) {
            s.toolLine(1, "M", 80 + tick * 10.5, 174, "v", 6);
        }
        s.toolBox(296, 160, 40, 40);
        s.datumFace(80, 206, 80, 156);
        s.level(80, 280, 146);
        s.symbol(180, 138, MIDDLE);
        s.tool(350, 130, START, 330, 160);
        s.datum(20, 60, START, 80, 158);
        s.note("rim", 284, 240, START);
    }

    private static void swing(CardSketch s) {
        s.toolLine(5, "M", 100, 50, "H", 280);
        s.quiet("M", 120, 50, "L", 110, 190, "M", 260, 50, "L", 270, 190);
        s.part("M", 80, 190, "A", 110, 26, "0 1 0", 300, 190, "A", 110, 26, "0 1 0", 80, 190, "Z");
        s.part("M", 170, 190, "A", 20, 6, "0 1 0", 210, 190, "A", 20, 6, "0 1 0", 170, 190, "Z");
        s.datumAxis(190, 60, 190, 290);
        s.lit("M", 120, 236, "C", 150, 262, 230, 262, 260, 236);
        s.head(260, 236, 0.75, -0.65);
        s.head(120, 236, -0.75, -0.65);
        s.symbol(216, 282, START);
        s.tool(310, 90, START, 263, 96);
        s.datum(310, 150, START, 192, 130);
        s.face(380, 240, 26);
        s.note("twenty swings timed", 380, 288, MIDDLE);
    }

    private static void plug(CardSketch s) {
        boolean venturi = s.is(Term.VENTURI);
        s.part(
                "M", 60, 80, "H", 320, "V", 104, "C", 250, 104, 230, 134, 190, 134, "C", 150, 134, 130, 104, 60, 104,
                "Z");
        s.part(
                "M", 60, 260, "H", 320, "V", 236, "C", 250, 236, 230, 206, 190, 206, "C", 150, 206, 130, 236, 60, 236,
                "Z");
        s.axis(40, 170, 450, 170);
        double x = venturi ? 190 : 300;
        double half = venturi ? 36 : 66;
        if (!venturi) {
            s.toolLine(3, "M", 292, 110, "L", 308, 230);
        }
        s.toolBox(x, 170 - half, venturi ? 160 : 70, 2 * half);
        s.toolBox(venturi ? 350 : 370, 160, 60, 20);
        s.datumFace(x + 40, 170 + half, x - 30, 170 + half);
        s.upright(x - 18, 170 - half, 170 + half);
        s.symbol(x - 26, 164, END);
        s.tool(350, 70, START, venturi ? 340 : 352, venturi ? 138 : 106);
        s.datum(100, 279, START, x, 172 + half);
        s.note(venturi ? "throat" : "throttle", venturi ? 100 : 250, 76, MIDDLE);
    }

    private static void pipe(CardSketch s) {
        boolean length = s.is(Term.PRIMARY_LENGTH);
        s.partBox(40, 60, 50, 120);
        s.part(
                "M", 90, 90, "H", 230, "C", 300, 90, 330, 130, 330, 190, "V", 250, "H", 280, "V", 190, "C", 280, 160,
                260, 144, 230, 144, "H", 90, "Z");
        s.part("M", 256, 250, "H", 354, "V", 280, "H", 256, "Z");
        if (length) {
            s.datumFace(90, 184, 90, 58);
            s.toolLine(5, "M", 90, 117, "H", 230, "C", 280, 117, 305, 145, 305, 190, "V", 250);
            s.lit("M", 90, 117, "H", 230, "C", 280, 117, 305, 145, 305, 190, "V", 250);
            s.head(90, 117, -1, 0);
            s.head(305, 250, 0, 1);
            s.symbol(190, 168, MIDDLE);
            s.tool(300, 70, START, 262, 126);
            s.datum(110, 220, START, 92, 170);
            s.note("first change of section", 370, 240, START);
        } else {
            s.datumFace(180, 90, 120, 90);
            s.caliper(true, 90, 144, 110, 30, true);
            s.upright(160, 90, 144);
            s.symbol(168, 124, START);
            s.tool(40, 240, START, 24, 190);
            s.datum(190, 60, START, 170, 87);
            s.note("inside of the pipe, at its end", 60, 278, START);
        }
    }

    private static void tachometer(CardSketch s) {
        s.part("M", 60, 260, "V", 200, "H", 180, "V", 260, "Z");
        s.part("M", 110, 200, "V", 150, "H", 130, "V", 200, "Z");
        s.quiet("M", 120, 150, "C", 120, 90, 180, 80, 220, 90);
        s.toolLine(4, "M", 142, 108, "C", 160, 100, 160, 84, 146, 86, "M", 150, 96, "C", 220, 130, 240, 150, 280, 160);
        s.toolBox(280, 120, 130, 80);
        s.quiet(Sketch.box(294, 134, 102, 36));
        s.datumFace(402, 200, 288, 200);
        s.symbol(345, 159, MIDDLE);
        s.tool(300, 100, START, 330, 120);
        s.datum(240, 250, START, 330, 204);
        s.note("lead wound round the plug lead", 150, 60, START);
        s.note("plug", 100, 180, END);
    }

    private static void sprocket(CardSketch s) {
        s.partRound(180, 170, 76);
        for (int tooth = 0; tooth < 16; tooth++) {
            double a = tooth * Math.PI / 8;
            double x = 180 + 76 * Math.sin(a);
            double y = 170 - 76 * Math.cos(a);
            double u = Math.sin(a) * 16;
            double v = -Math.cos(a) * 16;
            s.part("M", x - v * 0.5, y + u * 0.5, "L", x + u, y + v, "L", x + v * 0.5, y - u * 0.5, "Z");
        }
        s.partRound(180, 170, 20);
        s.datumFace(172, 76, 188, 76);
        s.spot(180, 84, 5);
        s.lit("M", 226, 60, "A", 118, 118, "0 0 1", 296, 150);
        s.head(296, 150, 0.1, 1);
        s.symbol(290, 90, START);
        s.tool(330, 190, START, 272, 180);
        s.datum(12, 60, START, 172, 76);
    }

    private static void chain(CardSketch s) {
        for (int link = 0; link < 4; link++) {
            s.partBox(60 + link * 80, 150, 60, 40);
            s.partRound(70 + link * 80, 170, 12);
            s.partRound(110 + link * 80, 170, 12);
        }
        s.datumAxis(150, 120, 150, 220);
        s.axis(190, 120, 190, 220);
        s.level(150, 190, 112);
        s.symbol(170, 104, MIDDLE);
        s.caliper(false, 138, 178, 184, 250, false);
        s.tool(280, 270, START, 224, 262);
        s.datum(20, 70, START, 148, 124);
        s.note("same edge of one roller to that of the next", 260, 110, START);
    }
}
