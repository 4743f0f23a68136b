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
                        "opposite side of the shaft",
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
                        "opposite wall of the keyway",
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
                        "opposite side of the taper",
                        ShaftCards::taper,
                        TAPER_SLIP,
                        "Mark the middle of the key's length on the taper.",
                        "Jaws square across the shaft at the mark, clear of the keyway."),
                card(
                        Term.FLYWHEEL_DIAMETER,
                        "opposite side of the rim",
                        ShaftCards::wheel,
                        "Measured beside the middle, or over blades that stand out beyond the rim.",
                        "Tape across the rim through the middle of the shaft.",
                        "Swing one end for the largest figure; two directions."),
                card(
                        Term.FLYWHEEL_TAPER_BORE,
                        "opposite side of the bore",
                        ShaftCards::hub,
                        TAPER_SLIP,
                        "Mark the middle of the keyway's length.",
                        "Inside jaws square across the bore there, clear of the keyway."),
                card(
                                Term.FLYWHEEL_KEYWAY,
                                "opposite wall of the keyway",
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
                        "opposite side of the throat",
                        ShaftCards::plug,
                        "Gauge held askew, or stopped by a nozzle that stands in the throat.",
                        "Clean the throat; choke and throttle open.",
                        "Largest plug gauge that enters by its own weight."),
                card(
                        Term.THROTTLE_BORE,
                        "opposite side of the bore",
                        ShaftCards::plug,
                        "Read at the worn place beside the spindle.",
                        "Throttle plate out or wide open.",
                        "Largest plug gauge that enters by its own weight, at the throttle."),
                card(
                        Term.PRIMARY_DIAMETER,
                        "opposite side of the pipe",
                        ShaftCards::pipe,
                        "The outside of the pipe measured: its inside counts.",
                        "First pipe of the exhaust, taken off; clear its end of weld and carbon.",
                        "Short inside jaws of the caliper across the pipe, two directions."),
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
                        "opposite side of the bore",
                        ShaftCards::hub,
                        "Read over the keyway, or on the chamfer.",
                        "Clean the bore.",
                        "Inside jaws square, two directions, clear of the keyway."),
                card(
                        Term.CLUTCH_KEYWAY,
                        "opposite wall of the keyway",
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

    static ReadingCard speed(Term term, String how) {
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
        s.partBox(140, 150, 180, 52);
        s.partBox(100, 130, 40, 92);
        s.axis(30, 176, 350, 176);
        if (s.is(Term.OUTPUT_SHAFT_DIAMETER)) {
            s.caliper(true, 150, 202, 240, 350, false);
            s.datumFace(200, 150, 310, 150);
            s.upright(190, 150, 202);
            s.symbol(180, 194, END);
            s.datum(160, 90, START, 214, 150);
            s.tool(396, 180, START, 365, 190);
        } else {
            s.caliperOnStep(140, 320, 198, 240);
            s.datumFace(140, 132, 140, 220);
            s.level(140, 320, 128);
            s.symbol(230, 120, MIDDLE);
            s.quiet("M", 320, 122, "V", 150);
            s.datum(150, 70, START, 138, 140);
            s.tool(396, 284, START, 358, 258);
        }
        s.note("case", 70, 286, MIDDLE);
    }

    static void keyway(CardSketch s) {
        s.part("M", 222, 86, "A", 96, 96, "0 1 0", 278, 86, "V", 124, "H", 222, "Z");
        s.axis(250, 250, 250, 292);
        s.caliper(false, 222, 278, 112, 56, true);
        s.datumFace(222, 90, 222, 122);
        s.level(222, 278, 146);
        s.symbol(250, 170, MIDDLE);
        s.tool(376, 100, START, 322, 60);
        s.datum(12, 70, START, 221, 104);
        s.note("shaft, seen on its end", 240, 236, MIDDLE);
    }

    static void taper(CardSketch s) {
        s.part(
                "M", 60, 100, "H", 120, "V", 124, "L", 300, 146, "H", 360, "V", 194, "H", 300, "L", 120, 216, "V", 240,
                "H", 60, "Z");
        s.hole(Sketch.box(160, 163, 100, 14));
        s.axis(210, 108, 210, 250);
        s.caliper(true, 135, 205, 204, 400, false);
        s.datumFace(150, 127.7, 240, 138.7);
        s.upright(276, 135, 205);
        s.quiet("M", 210, 135, "H", 282, "M", 210, 205, "H", 282);
        s.symbol(286, 160, START);
        s.datum(120, 64, START, 170, 130);
        s.tool(300, 284, END, 398, 250);
        s.note("middle of the key", 204, 264, MIDDLE);
        s.note("key", 152, 174, END);
    }

    private static void keyOffset(CardSketch s) {
        s.part("M", 80, 250, "V", 180, "A", 80, 80, "0 0 1", 240, 180, "V", 250, "Z");
        s.part("M", 130, 210, "V", 160, "H", 150, "V", 96, "H", 200, "V", 160, "H", 180, "V", 210, "Z");
        s.caliper(false, 130, 200, 128, 70, false);
        s.datumFace(130, 208, 130, 162);
        s.quiet("M", 130, 160, "V", 140);
        s.dimension(130, 146, 150, 146);
        s.symbol(92, 136, END);
        s.tool(340, 110, START, 244, 72);
        s.datum(270, 220, START, 131, 190);
        s.note("key, its part in the shaft", 300, 170, START);
        s.quiet("M", 296, 172, "L", 170, 190);
        s.note("shaft", 220, 240, END);
        s.note("part in the wheel", 270, 146, START);
        s.quiet("M", 266, 142, "L", 186, 128);
    }

    /** The hub cut through, so that the jaws are seen to enter from its face; beside it the hub seen on that face. */
    private static void hub(CardSketch s) {
        boolean key = s.is(Term.FLYWHEEL_KEYWAY, Term.CLUTCH_KEYWAY);
        boolean clutch = s.is(Term.CLUTCH_BORE, Term.CLUTCH_KEYWAY);
        double middle = 170;
        double half = key ? 22 : 44;
        double inner = key || clutch ? half : half - 10;
        s.partBox(150, 84, 110, 172);
        s.hole("M", 150, middle - half, "L", 260, middle - inner, "V", middle + inner, "L", 150, middle + half, "Z");
        double read = key || clutch ? half : half - 5;
        double tip = key || clutch ? 230 : 205;
        s.caliper(true, middle - read, middle + read, tip, 96, true);
        if (key || clutch) {
            s.datumFace(258, middle - half, 152, middle - half);
        } else {
            s.datumFace(258, middle - half + 9.8, 152, middle - half + 0.2);
        }
        double dim = key || clutch ? 244 : 230;
        s.upright(dim, middle - read, middle + read);
        s.symbol(278, 176, START);
        s.quiet("M", dim + 3, 170, "H", 274);
        s.tool(14, 60, START, 88, 160);
        s.datum(150, 56, START, 240, middle - half + (key || clutch ? 0 : 8));
        String what = clutch ? "clutch hub" : "flywheel hub";
        s.note(key ? what + ", cut through its keyway" : what + ", cut through", 150, 276, START);
        // the face
        s.partRound(398, 180, 62);
        s.hole("M", 386, 155, "V", 140, "H", 410, "V", 155, "A", 27, 27, "0 1 1", 386, 155, "Z");
        if (key) {
            s.level(386, 410, 148);
        } else {
            s.level(371, 425, 180);
        }
        s.note(clutch ? "seen on its face" : "seen from the side of the taper", 398, 262, MIDDLE);
        if (!key && !clutch) {
            s.axis(205, 96, 205, 250);
            s.note("middle of the key", 268, 104, START);
            s.quiet("M", 266, 100, "H", 206);
        }
    }

    private static void hubLength(CardSketch s) {
        s.part("M", 120, 120, "H", 220, "V", 90, "H", 250, "V", 250, "H", 220, "V", 230, "H", 120, "Z");
        s.hole("M", 120, 154, "H", 250, "V", 196, "H", 120, "Z");
        s.axis(90, 175, 300, 175);
        s.caliper(false, 120, 250, 200, 266, false);
        s.datumFace(120, 229, 120, 200);
        s.levelOff(120, 250, 66, 90);
        s.symbol(185, 58, MIDDLE);
        s.datum(300, 110, START, 121, 206);
        s.tool(350, 240, START, 288, 268);
        s.note("hub", 170, 144, MIDDLE);
    }

    private static void coil(CardSketch s) {
        s.part("M", 30, 280, "A", 150, 150, "0 0 1", 330, 280, "Z");
        s.part(
                "M", 80, 60, "H", 280, "V", 155.1, "A", 160, 160, "0 0 0", 230, 128, "V", 100, "H", 130, "V", 128, "A",
                160, 160, "0 0 0", 80, 155.1, "Z");
        s.part("M", 150, 84, "H", 210, "V", 116, "H", 150, "Z");
        s.toolLine(6, "M", 228, 132.6, "A", 155, 155, "0 0 1", 300, 181.9);
        s.toolLine(16, "M", 300, 181.9, "L", 324, 211);
        s.datumArc(180, 280, 150, 283, 305, true);
        s.dimension(100, 141.4, 105, 150.1);
        s.symbol(66, 136, END);
        s.tool(370, 160, START, 314, 200);
        s.datum(350, 262, START, 262, 154);
        s.note("coil", 180, 104, MIDDLE);
        s.note("flywheel, magnets under the coil", 170, 240, MIDDLE);
    }

    private static void timing(CardSketch s) {
        s.degreeWheel(170, 170, 104);
        s.datumAxis(170, 170, 170, 46);
        s.toolLine(4, "M", 98, 78, "L", 122, 110);
        s.lit("M", 170, 170, "L", 108, 87);
        s.lit("M", 134, 120, "A", 62, 62, "0 0 1", 170, 108);
        s.symbol(120, 140, END);
        s.quiet("M", 328, 200, "L", 112, 90, "M", 330, 208, "L", 106, 100);
        s.tool("M", 330, 190, "L", 410, 160, "L", 418, 184, "L", 338, 212, "Z");
        s.tool(300, 60, START, 244, 96);
        s.datum(300, 110, START, 170, 56);
        s.quiet(
                "M", 54, 180, "A", 116, 116, "0 0 0", 88,
                252); // before top dead centre: the zero still comes to the pointer
        s.head(88, 252, 0.707, 0.707);
        s.note("turns", 56, 244, END);
        s.note("timing light", 350, 236, START);
        s.note("pointer", 92, 74, END);
    }

    private static void wheel(CardSketch s) {
        s.partRound(180, 180, 100);
        s.quietRound(180, 180, 84);
        s.holeRound(180, 180, 18);
        s.toolBox(72, 174, 230, 12);
        for (int tick = 0; tick < 20; tick++) {
            s.toolLine(1, "M", 80 + tick * 10.5, 174, "v", 6);
        }
        s.toolBox(296, 160, 40, 40);
        s.datumArc(180, 180, 100, 186, 206, true);
        s.level(80, 280, 146);
        s.quiet("M", 80, 174, "V", 140, "M", 280, 174, "V", 140);
        s.symbol(180, 134, MIDDLE);
        s.tool(350, 130, START, 330, 160);
        s.datum(20, 60, START, 84, 150);
        s.note("rim", 300, 246, START);
        s.quiet("M", 298, 242, "L", 262, 228);
    }

    private static void swing(CardSketch s) {
        s.part("M", 80, 190, "A", 110, 26, "0 1 0", 300, 190, "A", 110, 26, "0 1 0", 80, 190, "Z");
        s.hole("M", 170, 190, "A", 20, 6, "0 1 0", 210, 190, "A", 20, 6, "0 1 0", 170, 190, "Z");
        s.toolBox(100, 44, 180, 7);
        s.toolLine(1.6, "M", 120, 51, "L", 110, 190, "M", 260, 51, "L", 270, 190);
        s.spot(110, 190, 4);
        s.spot(270, 190, 4);
        s.datumAxis(190, 60, 190, 240);
        s.lit("M", 120, 236, "C", 150, 262, 230, 262, 260, 236);
        s.head(260, 236, 0.75, -0.65);
        s.head(120, 236, -0.75, -0.65);
        s.symbol(190, 284, MIDDLE);
        s.tool(310, 84, START, 263, 96);
        s.datum(310, 150, START, 190, 130);
        s.face(390, 240, 26);
        s.note("twenty swings timed", 390, 288, MIDDLE);
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
        double x = venturi ? 176 : 290;
        double half = venturi ? 36 : 66;
        if (!venturi) {
            s.toolLine(3, "M", 220, 170, "H", 260);
        }
        s.toolBox(x, 170 - half, venturi ? 174 : 80, 2 * half);
        s.toolBox(venturi ? 350 : 370, 160, 60, 20);
        if (venturi) {
            s.datumFace(184, 206, 198, 206);
        } else {
            s.datumFace(304, 236, 319, 236);
        }
        s.uprightOff(x - 18, 170 - half, 170 + half, x);
        s.symbol(x - 28, venturi ? 164 : 140, END);
        s.tool(350, 64, START, 352, 170 - half + 3);
        s.datum(60, 288, START, venturi ? 191 : 310, 172 + half);
        s.note(venturi ? "throat" : "throttle, wide open", venturi ? 190 : 180, 72, MIDDLE);
        s.quiet("M", venturi ? 190 : 220, 76, "L", venturi ? 190 : 230, venturi ? 130 : 168);
    }

    private static void pipe(CardSketch s) {
        if (s.is(Term.PRIMARY_LENGTH)) {
            s.partBox(30, 60, 60, 120);
            s.part(
                    "M", 90, 90, "H", 230, "C", 300, 90, 330, 130, 330, 190, "V", 250, "H", 280, "V", 190, "C", 280,
                    160, 260, 144, 230, 144, "H", 90, "Z");
            s.part("M", 256, 250, "H", 354, "V", 280, "H", 256, "Z");
            s.toolLine(7, "M", 90, 117, "H", 230, "C", 280, 117, 305, 145, 305, 190, "V", 250);
            s.datumFace(90, 64, 90, 178);
            s.lit("M", 96, 117, "H", 230, "C", 280, 117, 305, 145, 305, 190, "V", 244);
            s.head(90, 117, -1, 0);
            s.head(305, 250, 0, 1);
            s.symbol(190, 176, MIDDLE);
            s.tool(300, 70, START, 272, 132);
            s.datum(110, 236, START, 88, 172);
            s.note("first change of section", 366, 240, START);
            s.quiet("M", 364, 240, "L", 340, 252);
        } else {
            s.partBox(120, 96, 220, 90);
            s.holeBox(120, 108, 220, 66);
            s.caliper(true, 108, 174, 142, 84, true); // the short jaws of the caliper, those for inside
            s.datumFace(336, 108, 124, 108);
            s.upright(220, 108, 174);
            s.symbol(230, 148, START);
            s.tool(100, 272, START, 66, 222);
            s.datum(200, 70, START, 240, 107);
            s.note("exhaust pipe at its end, cut through", 210, 214, START);
        }
    }

    private static void tachometer(CardSketch s) {
        s.part("M", 50, 268, "V", 226, "H", 180, "V", 268, "Z");
        s.part("M", 106, 226, "V", 190, "H", 100, "V", 170, "H", 130, "V", 190, "H", 124, "V", 226, "Z");
        s.part("M", 104, 170, "V", 136, "H", 126, "V", 170, "Z");
        // the plug lead, thick, and the wire of the instrument wound round it
        s.part("M", 110, 136, "V", 76, "H", 250, "V", 66, "H", 100, "V", 136, "Z");
        s.toolLine(
                3, "M", 160, 60, "L", 166, 82, "M", 170, 60, "L", 176, 82, "M", 180, 60, "L", 186, 82, "M", 190, 60,
                "L", 196, 82);
        s.toolLine(3, "M", 200, 60, "L", 206, 82, "C", 214, 110, 240, 140, 290, 150);
        s.toolBox(290, 110, 130, 80);
        s.hole(Sketch.box(304, 128, 102, 36));
        s.symbol(355, 153, MIDDLE);
        s.datumZero(322, 184);
        s.tool(350, 70, START, 380, 111);
        s.datum(270, 236, START, 322, 182);
        s.note("lead wound round the plug lead", 216, 44, START);
        s.quiet("M", 212, 46, "L", 196, 60);
        s.note("plug lead", 90, 70, END);
        s.note("plug", 92, 186, END);
        s.note("engine", 116, 252, MIDDLE);
    }

    /** A toothed wheel with one tooth marked. */
    static void sprocket(CardSketch s) {
        for (int tooth = 0; tooth < 16; tooth++) {
            double a = tooth * Math.PI / 8;
            double x = 180 + 74 * Math.sin(a);
            double y = 170 - 74 * Math.cos(a);
            double u = Math.sin(a) * 20;
            double v = -Math.cos(a) * 20;
            s.part("M", x - v * 0.5, y + u * 0.5, "L", x + u, y + v, "L", x + v * 0.5, y - u * 0.5, "Z");
        }
        s.partRound(180, 170, 76);
        s.holeRound(180, 170, 20);
        s.spot(180, 84, 6);
        s.lit("M", 222, 62, "A", 116, 116, "0 0 1", 294, 150);
        s.head(295, 156, 0.1, 1);
        s.symbol(290, 90, START);
        s.tool(340, 180, START, 294, 146);
        s.datum(12, 60, START, 178, 80);
    }

    /** A plate from one roller to the next, round at both ends. */
    private static void link(CardSketch s, int from, int half) {
        s.part(
                "M",
                from,
                170 - half,
                "H",
                from + 40,
                "A",
                half,
                half,
                "0 0 1",
                from + 40,
                170 + half,
                "H",
                from,
                "A",
                half,
                half,
                "0 0 1",
                from,
                170 - half,
                "Z");
    }

    private static void chain(CardSketch s) {
        for (int inner = 110; inner < 350; inner += 80) {
            link(s, inner, 12);
        }
        for (int outer = 70; outer < 350; outer += 80) {
            link(s, outer, 18);
        }
        for (int roller = 70; roller <= 350; roller += 40) {
            s.partRound(roller, 170, 12);
        }
        s.caliperOnStep(138, 178, 174, 244);
        s.datumAxis(150, 120, 150, 200);
        s.axis(190, 120, 190, 200);
        s.level(150, 190, 112);
        s.symbol(170, 102, MIDDLE);
        s.tool(280, 284, START, 216, 260);
        s.datum(14, 66, START, 150, 124);
        s.note("same edge of one roller to that of the next", 260, 100, START);
    }
}
