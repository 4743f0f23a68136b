package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.term.Term;

/** Readings of camshaft, valves, springs, rockers and pushrods. */
final class ValveCards {
    private static final String EVENT_SLIP =
            "Top dead centre taken by eye, the wheel turned back and forth over the event, or another checking lift than the one entered.";
    private static final String SPRING_CAUTION = "A pressed spring flies: guard and glasses on.";

    private ValveCards() {}

    static List<ReadingCard> cards() {
        List<ReadingCard> cards = new ArrayList<>();
        for (Term event : List.of(Term.INTAKE_OPENS, Term.INTAKE_CLOSES, Term.EXHAUST_OPENS, Term.EXHAUST_CLOSES)) {
            boolean top = event == Term.INTAKE_OPENS || event == Term.EXHAUST_CLOSES;
            cards.add(card(
                    event,
                    top ? "true top dead centre" : "true bottom dead centre",
                    ValveCards::event,
                    EVENT_SLIP,
                    "Zero the wheel by a positive stop, both ways; bottom dead centre is half a turn on.",
                    "Dial in line with the lifter or the valve, zeroed on the base circle.",
                    "Turn in the running direction only until the dial shows the checking lift; read the wheel.",
                    "Past it? Go back well before it and come again."));
        }
        cards.add(card(
                Term.CHECKING_LIFT,
                "valve shut, dial at zero",
                ValveCards::lift,
                "Lift at the lifter taken for lift at the valve, or lash left in.",
                "Dial in line with the motion, zeroed with the valve shut.",
                "Write down the lift at which you read the events, and where the dial stood."));
        cards.add(card(
                Term.CAM_END_PLAY,
                "crankcase",
                CrankCards::endFloat,
                "Side cover without its gasket, or the dial not in line with the shaft.",
                "Cover on with its gasket.",
                "Dial in line with the camshaft on its end; push in, zero, pull out, read."));
        cards.add(card(
                Term.CAM_SPROCKET,
                "axis of the camshaft",
                ValveCards::pitchCircle,
                "The outside over the teeth taken for the pitch circle.",
                "Count the teeth.",
                "Pitch over ten links of the chain, divided by ten.",
                "Teeth times pitch over π."));
        for (boolean intake : new boolean[] {true, false}) {
            addValve(cards, intake);
        }
        cards.add(spring(
                Term.SPRING_INSTALLED_HEIGHT,
                "spring seat",
                ValveCards::installed,
                "A shim or the cup forgotten that the spring stands on.",
                "Valve shut with its retainer and locks.",
                "Between the face the spring stands on and the underside of the retainer."));
        cards.add(spring(
                Term.SPRING_FREE_HEIGHT,
                "plate",
                ValveCards::loose,
                "Spring leaning: the jaws then read askew.",
                "Stand the loose spring on the plate.",
                "Over its ends, four places round."));
        cards.add(spring(
                        Term.SPRING_SOLID_HEIGHT,
                        "lower jaw of the vice",
                        ValveCards::solid,
                        "Stopped before every coil touches.",
                        "Press the spring between flat jaws until every coil touches, no farther.",
                        "Measure between the jaws.")
                .cautioned(SPRING_CAUTION));
        cards.add(spring(
                        Term.SPRING_SEAT_LOAD,
                        "installed height",
                        ValveCards::load,
                        "Pressed to another height than the installed one: the height makes the load.",
                        "Set the tester to zero; guard on.",
                        "Press to the installed height, read the force; three times.")
                .cautioned(SPRING_CAUTION));
        cards.add(spring(
                        Term.SPRING_OPEN_LOAD,
                        "installed height less full lift",
                        ValveCards::load,
                        "Lift at the cam used instead of lift at the valve.",
                        "Set the tester to zero; guard on.",
                        "Press to installed height less full lift, read the force; three times.")
                .cautioned(SPRING_CAUTION));
        cards.add(card(
                Term.ROCKER_PUSHROD_ARM,
                "pivot centre",
                ValveCards::rocker,
                "Measured along the curve of the rocker instead of straight.",
                "Rocker off the engine; mark the centres of pivot and pushrod cup on squared paper under it.",
                "Measure straight between the marks."));
        cards.add(card(
                Term.ROCKER_VALVE_ARM,
                "pivot centre",
                ValveCards::rocker,
                "Taken to the end of the tip instead of to where it touches the valve.",
                "Look for the bright mark where the tip touches the stem.",
                "Mark pivot centre and touch on squared paper under the rocker; measure straight between the marks."));
        cards.add(card(
                Term.PUSHROD_LENGTH,
                "opposite end of the pushrod",
                ValveCards::pushrod,
                "Over the balls at one time and to the bottom of a cup at another.",
                "Roll it on a flat plate: a bent one has no length.",
                "Jaws over the two ends."));
        return cards;
    }

    private static void windings(CardSketch s, double top, double bottom, int turns) {
        double step = (bottom - top) / turns;
        for (int turn = 0; turn < turns; turn++) {
            double y = top + turn * step;
            s.part(
                    "M",
                    150,
                    y + step * 0.02,
                    "L",
                    230,
                    y + step * 0.5,
                    "L",
                    230,
                    y + step * 0.98,
                    "L",
                    150,
                    y + step * 0.5,
                    "Z");
        }
    }

    private static ReadingCard spring(
            Term term, String datum, ReadingCard.Scene scene, String mistake, String... steps) {
        return card(term, datum, scene, mistake, steps);
    }

    private static void addValve(List<ReadingCard> cards, boolean intake) {
        cards.add(card(
                intake ? Term.INTAKE_LIFT : Term.EXHAUST_LIFT,
                "valve shut, dial at zero",
                ValveCards::lift,
                "Dial askew to the stem, which reads too little; or lash not set as it will run.",
                "Lash set; dial in line with the stem on the retainer, zeroed with the valve shut.",
                "Turn slowly; the largest figure is the lift.",
                "Turn on until shut: the dial must come back to zero."));
        cards.add(card(
                intake ? Term.INTAKE_LASH : Term.EXHAUST_LASH,
                "end of the valve stem",
                ValveCards::lash,
                intake
                        ? "Lifter not on its base circle, or engine warm."
                        : "Set while the lifter stands on the bump of the compression release: too much lash then.",
                intake
                        ? "Engine cold, top dead centre of the compression stroke."
                        : "Engine cold, past top dead centre of the compression stroke until the release lets go.",
                "Thickest leaf with a light drag between stem and rocker or lifter."));
        cards.add(card(
                intake ? Term.INTAKE_HEAD : Term.EXHAUST_HEAD,
                "opposite side of the valve head",
                ValveCards::valve,
                "Carbon on the rim.",
                "Clean the rim.",
                "Jaws across the head, two directions."));
        cards.add(card(
                intake ? Term.INTAKE_STEM : Term.EXHAUST_STEM,
                "opposite side of the stem",
                ValveCards::valve,
                "Read above or below where the stem runs in its guide.",
                "Clean the stem.",
                "Top, middle and bottom of what runs in the guide, two directions."));
        cards.add(card(
                intake ? Term.INTAKE_SEAT_WIDTH : Term.EXHAUST_SEAT_WIDTH,
                "inner edge of the seat",
                ValveCards::seat,
                "The whole chamfer measured instead of the ring that seals.",
                "Blue the seat thinly and press the valve on: the bright ring is what seals.",
                "Caliper over the ring, along the slope, four places."));
    }

    private static void event(CardSketch s) {
        boolean top = s.is(Term.INTAKE_OPENS, Term.EXHAUST_CLOSES);
        boolean before = s.is(Term.INTAKE_OPENS, Term.EXHAUST_OPENS);
        double x = 150;
        double y = 164;
        s.degreeWheel(x, y, 80);
        double side = before
                ? -1
                : 1; // turning right, what comes before top stands left of it; at the bottom the other way round
        double deadY = top ? y - 96 : y + 92;
        s.datumAxis(x, y, x, deadY);
        double angle = top ? 0.6 * side : Math.PI + 0.7 * side;
        double sine = Math.sin(angle);
        double cosine = Math.cos(angle);
        s.lit("M", x, y, "L", x + 80 * sine, y - 80 * cosine);
        s.lit("M", x + 56 * sine, y - 56 * cosine, "A", 56, 56, before ? "0 0 1" : "0 0 0", x, top ? y - 56 : y + 56);
        s.symbol(x + 102 * sine, y + 6 - 98 * cosine, MIDDLE);
        // lifter with its dial
        s.part("M", 330, 240, "A", 30, 30, "0 1 0", 384, 240, "L", 366, 206, "A", 10, 10, "0 0 0", 348, 206, "Z");
        s.part("M", 330, 196, "H", 384, "V", 186, "H", 366, "V", 140, "H", 348, "V", 186, "H", 330, "Z");
        s.partBox(396, 160, 70, 20);
        s.stand(357, 84, 440, 160);
        s.indicator(357, 140, 0, -1);
        s.label("tool", "dial shows the checking lift", 384, 38, START, 368, 68);
        if (top) {
            s.tool(214, 284, START, 196, 230);
            s.datum(170, 48, START, x, deadY + 6);
        } else {
            s.tool(172, 58, START, 192, 96);
            s.datum(12, 280, START, x, deadY - 4);
        }
        s.note("cam", 402, 252, START);
        s.note("lifter", 322, 170, END);
        s.note("turns", 10, 110, START);
        s.quiet("M", 56, 200, "A", 98, 98, "0 0 1", 56, 130);
        s.head(60, 124, 0.4, -0.9);
    }

    static void lift(CardSketch s) {
        // head cut through: guide, port and seat on both sides of the stem
        s.part("M", 186, 146, "H", 290, "V", 234, "H", 224, "L", 211, 225.5, "C", 211, 205, 200, 200, 186, 196, "Z");
        s.part("M", 164, 146, "H", 60, "V", 234, "H", 126, "L", 139, 225.5, "C", 139, 205, 150, 200, 164, 196, "Z");
        openValve(s, 248);
        s.partBox(146, 100, 58, 10);
        s.quiet(
                "M", 150, 110, "L", 168, 117, "M", 200, 119, "L", 182, 113, "M", 150, 128, "L", 168, 134, "M", 200,
                136);
        s.quiet("M", 182, 130, "L", 200, 137, "M", 150, 110, "V", 146, "M", 200, 110, "V", 146);
        s.svg()
                .add(
                        "path",
                        "class",
                        "datum",
                        "d",
                        Svg.path("M", 180, 208, "L", 226, 234, "V", 240, "H", 124, "V", 234, "L", 170, 208),
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "2.4",
                        "stroke-dasharray",
                        "6 4",
                        "fill",
                        "none");
        s.stand(194, 44, 280, 146);
        s.indicator(194, 100, 0, -1);
        s.uprightOff(272, 240, 280, 226);
        s.symbol(284, 266, START);
        s.tool(310, 60, START, 212, 50);
        s.datum(320, 190, START, 224, 238);
        s.note("valve open", 20, 276, START);
        s.quiet("M", 92, 272, "L", 130, 276);
        s.note("retainer", 66, 90, START);
        s.quiet("M", 118, 92, "L", 148, 104);
        s.note("head", 70, 190, START);
    }

    private static void lash(CardSketch s) {
        s.part("M", 176, 154, "H", 200, "V", 284, "H", 176, "Z");
        s.partBox(150, 174, 76, 10);
        s.quiet("M", 154, 184, "L", 176, 192, "M", 200, 198, "L", 222, 206, "M", 154, 214, "L", 176, 222);
        s.quiet("M", 200, 230, "L", 222, 238, "M", 154, 246, "L", 176, 254);
        s.part(
                "M", 60, 96, "C", 110, 66, 150, 86, 196, 112, "C", 208, 122, 206, 142, 188, 142, "C", 150, 128, 110,
                130, 60, 138, "Z");
        s.tool("M", 172, 144, "H", 300, "V", 152, "H", 172, "Z");
        s.toolBox(300, 139, 44, 18);
        s.datumFace(176, 154, 200, 154);
        s.quiet("M", 176, 154, "H", 132, "M", 188, 142, "H", 132);
        s.dimension(138, 142, 138, 154);
        s.symbol(116, 172, END);
        s.tool(340, 104, START, 322, 140);
        s.datum(260, 220, START, 198, 158);
        s.note("rocker (side-valve: lifter)", 60, 60, START);
        s.note("valve stem", 170, 280, END);
    }

    private static void valve(CardSketch s) {
        boolean stem = s.is(Term.INTAKE_STEM, Term.EXHAUST_STEM);
        if (stem) {
            s.part(
                    "M", 20, 150, "H", 180, "C", 210, 148, 222, 130, 236, 104, "H", 246, "V", 222, "H", 236, "C", 222,
                    196, 210, 178, 180, 176, "H", 20, "Z");
            s.axis(10, 163, 262, 163);
            s.lookAt(90, 138, 188, true);
            s.note("top, middle, bottom of what runs in the guide", 20, 240, START);
            s.roundInMicrometer(390, 156, 34, 454);
            s.uprightOff(334, 122, 190, 390);
            s.symbol(326, 162, END);
            s.datum(250, 60, START, 372, 127);
            s.tool(360, 286, END, 381, 252);
            s.note("stem, on its end", 470, 290, END);
            return;
        }
        s.part(
                "M", 60, 160, "H", 230, "C", 270, 158, 280, 130, 300, 100, "H", 314, "V", 246, "H", 300, "C", 280, 216,
                270, 188, 230, 186, "H", 60, "Z");
        s.axis(40, 173, 340, 173);
        s.caliper(true, 100, 246, 303, 390, false);
        s.datumFace(301, 100, 313, 100);
        s.uprightOff(344, 100, 246, 314);
        s.symbol(356, 160, START);
        s.datum(100, 70, START, 303, 101);
        s.tool(250, 284, END, 390, 288);
        s.note("stem", 80, 150, START);
    }

    /** Seat and port cut through on one side of the valve's centre line; the caliper lies along the slope of the seat. */
    private static void seat(CardSketch s) {
        s.part(
                "M", 150, 74, "C", 140, 90, 140, 100, 150, 120, "L", 180, 150, "L", 234, 204, "L", 250, 226, "H", 460,
                "V", 74, "Z");
        s.axis(60, 50, 60, 290);
        s.caliperOnSlant(180, 150, 222, 192, -62);
        s.lit("M", 180, 150, "L", 222, 192);
        s.datumFace(190, 160, 176, 146);
        s.dimension(206, 124, 248, 166);
        s.quiet("M", 180, 150, "L", 211, 119, "M", 222, 192, "L", 253, 161);
        s.symbol(240, 140, START);
        s.tool(280, 284, START, 190, 250);
        s.datum(250, 46, START, 181, 152);
        s.note("valve's centre line", 70, 50, START);
        s.note("port", 96, 116, MIDDLE);
        s.note("seat, the bright ring, in the head cut through", 300, 190, START);
        s.quiet("M", 296, 186, "L", 216, 186);
    }

    private static void coils(CardSketch s, double top, double bottom, int turns) {
        windings(s, top, bottom, turns);
        s.partBox(140, top - 8, 100, 8);
        s.partBox(130, bottom, 120, 12);
    }

    private static void installed(CardSketch s) {
        coils(s, 100, 230, 5);
        s.part("M", 184, 64, "H", 196, "V", 296, "H", 184, "Z");
        s.caliper(true, 100, 230, 234, 330, true);
        s.datumFace(132, 230, 248, 230);
        s.uprightOff(104, 100, 230, 140);
        s.symbol(94, 170, END);
        s.tool(376, 160, START, 345, 170);
        s.datum(20, 284, START, 150, 236);
        s.note("retainer, valve shut", 214, 72, START);
        s.quiet("M", 236, 76, "L", 226, 92);
        s.note("seat", 124, 246, END);
    }

    private static void loose(CardSketch s) {
        windings(s, 72, 232, 6);
        s.plate(110, 270, 232);
        s.caliperOnPlate(72, 232, 216, 350);
        s.datumFace(112, 232, 268, 232);
        s.uprightOff(96, 72, 232, 148);
        s.symbol(86, 160, END);
        s.tool(396, 140, START, 365, 150);
        s.datum(60, 284, START, 124, 236);
        s.note("spring, standing loose", 20, 54, START);
    }

    private static void solid(CardSketch s) {
        for (int coil = 0; coil < 5; coil++) {
            s.partBox(144, 142 + coil * 17.6, 92, 17.6);
        }
        s.partBox(100, 112, 180, 30);
        s.partBox(100, 230, 180, 30);
        s.caliper(true, 142, 230, 250, 350, true);
        s.datumFace(102, 230, 278, 230);
        s.upright(122, 142, 230);
        s.symbol(112, 192, END);
        s.tool(396, 180, START, 365, 190);
        s.datum(60, 284, START, 110, 236);
        s.note("vice jaws, every coil touching", 100, 82, START);
    }

    private static void load(CardSketch s) {
        s.toolBox(276, 60, 14, 166);
        s.toolBox(90, 222, 200, 42);
        coils(s, 120, 210, 5);
        s.toolBox(130, 96, 150, 16);
        s.toolLine(8, "M", 205, 96, "V", 66);
        s.datumFace(132, 210, 248, 210);
        s.hole(Sketch.box(150, 232, 80, 24));
        s.symbol(190, 249, MIDDLE);
        s.uprightOff(104, 112, 210, 130);
        s.note("height", 96, 166, END);
        s.lit("M", 205, 40, "V", 56);
        s.head(205, 64, 0, 1);
        s.tool(330, 110, START, 288, 120);
        s.datum(310, 190, START, 244, 212);
    }

    private static void rocker(CardSketch s) {
        s.part("M", 312, 190, "H", 328, "V", 216, "H", 312, "Z");
        s.part("M", 74, 172, "H", 86, "V", 216, "H", 74, "Z");
        s.part(
                "M", 60, 150, "C", 110, 110, 160, 100, 190, 104, "C", 250, 108, 300, 140, 330, 176, "L", 306, 194, "C",
                280, 160, 240, 150, 190, 152, "C", 150, 152, 110, 160, 80, 178, "Z");
        s.holeRound(190, 130, 15);
        s.partRound(80, 160, 9);
        boolean pushrod = s.is(Term.ROCKER_PUSHROD_ARM);
        double x = pushrod ? 80 : 320;
        double left = Math.min(x, 190);
        double right = Math.max(x, 190);
        s.datumAxis(190, 68, 190, 232);
        s.axis(x, 76, x, 232);
        s.level(left, right, 88);
        s.symbol((x + 190) / 2, 80, MIDDLE);
        s.spot(190, 232, 4);
        s.spot(x, 232, 4);
        s.caliper(false, left, right, 234, 264, true);
        s.tool(400, pushrod ? 260 : 268, START, right + 48, 272);
        s.datum(220, 60, START, 190, 74);
        s.note("pushrod", 66, 200, END);
        s.note("valve", 304, 214, END);
        s.note("the two marks on the paper", pushrod ? 240 : 350, pushrod ? 236 : 216, START);
        s.quiet("M", pushrod ? 238 : 342, pushrod ? 232 : 222, "L", pushrod ? 196 : 326, 232);
    }

    private static void pushrod(CardSketch s) {
        s.partBox(70, 150, 260, 14);
        s.partRound(70, 157, 11);
        s.partRound(330, 157, 11);
        s.caliper(false, 59, 341, 150, 220, false);
        s.datumArc(70, 157, 11, 100, 260, true);
        s.levelOff(59, 341, 112, 150);
        s.symbol(200, 104, MIDDLE);
        s.datum(20, 64, START, 60, 153);
        s.tool(400, 284, START, 378, 238);
    }

    /** Outline of a sprocket of twenty teeth, each between two rollers. */
    private static List<Object> teeth(double x, double y) {
        List<Object> outline = new ArrayList<>();
        for (int tooth = 0; tooth < 20; tooth++) {
            double gap = tooth * Math.PI / 10;
            for (double[] point :
                    new double[][] {{-0.07, 88}, {0.07, 88}, {Math.PI / 20 - 0.03, 106}, {Math.PI / 20 + 0.03, 106}}) {
                outline.add(outline.isEmpty() ? "M" : "L");
                outline.add(x + point[1] * Math.sin(gap + point[0]));
                outline.add(y - point[1] * Math.cos(gap + point[0]));
            }
        }
        outline.add("Z");
        return outline;
    }

    private static void pitchCircle(CardSketch s) {
        s.part(teeth(170, 170).toArray());
        s.quietRound(170, 170, 96);
        for (int tooth = 0; tooth < 20; tooth++) {
            double a = tooth * Math.PI / 10;
            s.partRound(170 + 96 * Math.sin(a), 170 - 96 * Math.cos(a), 9);
        }
        s.caliper(true, 140, 200, 262, 350, false);
        s.datumAxis(56, 170, 290, 170);
        s.datumAxis(170, 140, 170, 200);
        s.dimension(102, 238, 238, 102);
        s.symbol(196, 216, START);
        s.tool(396, 220, START, 370, 230);
        s.datum(300, 64, START, 170, 146);
        s.note("pitch over many links of the chain", 300, 276, START);
    }

    /** A valve hanging in the middle of its port; y is where its cone begins. */
    private static void openValve(CardSketch s, double y) {
        s.part("M", 170, 90, "H", 180, "V", y, "L", 226, y + 26, "V", y + 32, "H", 124, "V", y + 26, "L", 170, y, "Z");
    }
}
