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
                "other end of the pushrod",
                ValveCards::pushrod,
                "Over the balls at one time and to the bottom of a cup at another.",
                "Roll it on a flat plate: a bent one has no length.",
                "Jaws over the two ends."));
        return cards;
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
                "far side of the valve head",
                ValveCards::valve,
                "Carbon on the rim.",
                "Clean the rim.",
                "Jaws across the head, two directions."));
        cards.add(card(
                intake ? Term.INTAKE_STEM : Term.EXHAUST_STEM,
                "far side of the stem",
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
        double y = 170;
        s.degreeWheel(x, y, 86);
        double side = before
                ? -1
                : 1; // turning right, what comes before top stands left of it; at the bottom the other way round
        double deadY = top ? y - 102 : y + 102;
        s.datumAxis(x, y, x, deadY);
        double angle = top ? 0.5 * side : Math.PI + 0.7 * side;
        double sine = Math.sin(angle);
        double cosine = Math.cos(angle);
        s.lit("M", x, y, "L", x + 86 * sine, y - 86 * cosine);
        s.lit("M", x + 60 * sine, y - 60 * cosine, "A", 60, 60, before ? "0 0 1" : "0 0 0", x, top ? y - 60 : y + 60);
        s.symbol(x + 108 * sine, y + 6 - 104 * cosine, MIDDLE);
        // lifter with its dial
        s.part("M", 330, 240, "A", 30, 30, "0 1 0", 384, 240, "L", 366, 206, "A", 10, 10, "0 0 0", 348, 206, "Z");
        s.part("M", 330, 196, "H", 384, "V", 186, "H", 366, "V", 140, "H", 348, "V", 186, "H", 330, "Z");
        s.indicator(357, 140, 0, -1);
        s.label("tool", "dial shows the checking lift", 344, 40, START, 366, 68);
        if (top) {
            s.tool(222, 278, START, 206, 236);
            s.datum(166, 44, START, x + 2, deadY + 8);
        } else {
            s.tool(172, 58, START, 196, 98);
            s.datum(12, 276, START, x - 2, deadY - 6);
        }
        s.note("cam", 396, 250, START);
        s.note("turns", 10, 130, START);
        s.quiet("M", 52, 200, "A", 102, 102, "0 0 1", 52, 142);
        s.head(52, 138, 0.3, -0.95);
    }

    private static void lift(CardSketch s) {
        s.part(
                "M", 60, 210, "H", 150, "L", 130, 232, "H", 60, "Z", "M", 290, 210, "H", 200, "L", 220, 232, "H", 290,
                "Z");
        s.part("M", 60, 150, "H", 164, "V", 210, "H", 60, "Z", "M", 186, 150, "H", 290, "V", 210, "H", 186, "Z");
        s.unknown("M", 132, 236, "L", 168, 214, "M", 218, 236, "L", 182, 214);
        s.part("M", 170, 90, "H", 180, "V", 240, "L", 226, 266, "H", 124, "L", 170, 240, "Z");
        s.partBox(146, 100, 58, 10);
        s.quiet("M", 150, 110, "L", 200, 120, "L", 150, 130, "L", 200, 140, "L", 150, 150);
        s.indicator(194, 100, 0, -1);
        s.datumFace(230, 237, 290, 237);
        s.quiet("M", 130, 236, "H", 230);
        s.upright(250, 237, 266);
        s.quiet("M", 226, 266, "H", 262);
        s.symbol(262, 258, START);
        s.tool(236, 50, START, 212, 48);
        s.datum(310, 200, START, 284, 236);
        s.note("valve open", 110, 286, MIDDLE);
        s.note("retainer", 236, 110, START);
        s.quiet("M", 232, 106, "L", 206, 105);
    }

    private static void lash(CardSketch s) {
        s.part("M", 176, 150, "H", 192, "V", 284, "H", 176, "Z");
        s.partBox(150, 170, 68, 10);
        s.quiet("M", 154, 180, "L", 214, 196, "L", 154, 212, "L", 214, 228, "L", 154, 244);
        s.part(
                "M", 60, 100, "C", 110, 70, 150, 90, 190, 116, "C", 200, 124, 200, 140, 184, 140, "C", 150, 128, 110,
                130, 60, 140, "Z");
        s.datumFace(170, 150, 200, 150);
        s.feeler(172, 145, 1, 0, 130);
        s.dimension(158, 138, 158, 150);
        s.symbol(130, 178, END);
        s.tool(350, 110, START, 318, 143);
        s.datum(260, 220, START, 194, 153);
        s.note("rocker (side-valve: lifter)", 60, 66, START);
        s.note("valve stem", 172, 280, END);
    }

    private static void valve(CardSketch s) {
        boolean stem = s.is(Term.INTAKE_STEM, Term.EXHAUST_STEM);
        s.part(
                "M", 60, 160, "H", 230, "C", 270, 158, 280, 130, 300, 100, "V", 246, "C", 280, 216, 270, 188, 230, 186,
                "H", 60, "Z");
        s.part("M", 300, 100, "h", 10, "v", 146, "h", -10, "Z");
        s.axis(40, 173, 340, 173);
        if (stem) {
            s.micrometer(true, 160, 186, 130, 34);
            s.datumFace(150, 160, 220, 160);
            s.upright(190, 160, 186);
            s.symbol(198, 212, START);
            s.datum(120, 80, START, 180, 157);
            s.tool(160, 270, START, 140, 240);
        } else {
            s.caliper(true, 100, 246, 305, 380, false);
            s.datumFace(284, 100, 330, 100);
            s.upright(338, 100, 246);
            s.symbol(332, 160, END);
            s.datum(120, 60, START, 296, 97);
            s.tool(250, 284, END, 376, 284);
        }
        if (!stem) {
            s.note("stem", 80, 150, START);
        }
    }

    private static void seat(CardSketch s) {
        s.part("M", 60, 90, "H", 180, "L", 190, 110, "L", 250, 170, "L", 300, 190, "H", 360, "V", 270, "H", 60, "Z");
        s.lit("M", 200, 120, "L", 240, 160);
        s.datumFace(196, 130, 186, 120);
        s.dimension(214, 106, 254, 146);
        s.quiet("M", 200, 120, "L", 220, 100, "M", 240, 160, "L", 260, 140);
        s.symbol(244, 112, START);
        s.tool(
                "M", 202, 122, "L", 160, 60, "L", 176, 50, "L", 210, 112, "Z", "M", 242, 162, "L", 300, 150, "L", 304,
                166, "L", 246, 168, "Z");
        s.toolLine(12, "M", 168, 54, "L", 312, 52, "M", 302, 158, "L", 312, 52);
        s.tool(350, 90, START, 316, 100);
        s.datum(12, 60, START, 190, 122);
        s.note("seat in the head, cut through", 90, 250, START);
    }

    private static void coils(CardSketch s, double top, double bottom, int turns) {
        double step = (bottom - top) / turns;
        s.partBox(140, top - 8, 100, 8);
        s.partBox(130, bottom, 120, 10);
        for (int turn = 0; turn < turns; turn++) {
            double y = top + turn * step;
            s.part(
                    "M",
                    150,
                    y + step * 0.15,
                    "L",
                    230,
                    y + step * 0.45,
                    "L",
                    230,
                    y + step * 0.75,
                    "L",
                    150,
                    y + step * 0.45,
                    "Z");
            if (turn + 1 < turns) {
                s.quiet("M", 230, y + step * 0.6, "L", 150, y + step * 1.3);
            }
        }
    }

    private static void installed(CardSketch s) {
        coils(s, 100, 230, 5);
        s.part("M", 184, 70, "H", 196, "V", 292, "H", 184, "Z");
        s.datumFace(250, 230, 130, 230);
        s.caliper(true, 100, 230, 236, 320, true);
        s.upright(110, 100, 230);
        s.quiet("M", 140, 100, "H", 100);
        s.symbol(100, 170, END);
        s.tool(350, 160, START, 336, 170);
        s.datum(20, 286, START, 150, 238);
        s.note("retainer, valve shut", 220, 80, START);
    }

    private static void loose(CardSketch s) {
        coils(s, 80, 240, 6);
        s.plate(60, 320, 240);
        s.datumFace(320, 240, 60, 240);
        s.caliper(true, 72, 240, 236, 340, false);
        s.upright(110, 72, 240);
        s.quiet("M", 140, 72, "H", 100);
        s.symbol(100, 160, END);
        s.tool(374, 160, START, 356, 160);
        s.datum(60, 284, START, 120, 248);
    }

    private static void solid(CardSketch s) {
        for (int coil = 0; coil < 5; coil++) {
            s.partBox(144, 142 + coil * 17.6, 92, 17.6);
        }
        s.partBox(100, 112, 180, 30);
        s.partBox(100, 230, 180, 30);
        s.datumFace(284, 230, 96, 230);
        s.caliper(true, 142, 230, 260, 350, true);
        s.upright(118, 142, 230);
        s.symbol(108, 190, END);
        s.tool(380, 180, START, 366, 190);
        s.datum(60, 279, START, 110, 240);
        s.note("vice jaws, every coil touching", 100, 82, START);
    }

    private static void load(CardSketch s) {
        coils(s, 120, 210, 5);
        s.datumFace(250, 210, 130, 210);
        s.toolBox(90, 220, 200, 40);
        s.toolBox(276, 60, 14, 160);
        s.toolBox(130, 96, 150, 16);
        s.toolLine(8, "M", 205, 96, "V", 60);
        s.quiet(Sketch.box(150, 228, 80, 24));
        s.symbol(190, 246, MIDDLE);
        s.quiet("M", 110, 112, "H", 140);
        s.quiet("M", 118, 112, "V", 210);
        s.note("height", 112, 166, END);
        s.lit("M", 205, 40, "V", 58);
        s.head(205, 64, 0, 1);
        s.tool(320, 110, START, 288, 120);
        s.datum(310, 200, START, 240, 213);
    }

    private static void rocker(CardSketch s) {
        s.part(
                "M", 60, 150, "C", 110, 110, 160, 100, 190, 104, "C", 250, 108, 300, 140, 330, 176, "L", 306, 194, "C",
                280, 160, 240, 150, 190, 152, "C", 150, 152, 110, 160, 80, 178, "Z");
        s.partRound(190, 130, 15);
        s.partRound(80, 160, 9);
        s.part("M", 312, 190, "H", 328, "V", 270, "H", 312, "Z");
        s.part("M", 74, 172, "H", 86, "V", 270, "H", 74, "Z");
        s.datumAxis(190, 70, 190, 200);
        boolean pushrod = s.is(Term.ROCKER_PUSHROD_ARM);
        double x = pushrod ? 80 : 320;
        s.axis(x, 80, x, 284);
        s.level(Math.min(x, 190), Math.max(x, 190), 90);
        s.symbol((x + 190) / 2, 82, MIDDLE);
        s.caliper(false, Math.min(x, 190), Math.max(x, 190), 206, 250, true);
        s.tool(370, 270, START, (pushrod ? 190 : 320) + 32, 262);
        s.datum(220, 60, START, 192, 76);
        s.note("pushrod", 68, 200, END);
        s.note("valve", 336, 214, START);
    }

    private static void pushrod(CardSketch s) {
        s.partBox(70, 150, 260, 14);
        s.partRound(70, 157, 11);
        s.partRound(330, 157, 11);
        s.caliper(false, 59, 341, 162, 210, false);
        s.datumFace(59, 180, 59, 134);
        s.level(59, 341, 116);
        s.quiet("M", 59, 110, "V", 134, "M", 341, 110, "V", 146);
        s.symbol(200, 108, MIDDLE);
        s.datum(20, 70, START, 58, 136);
        s.tool(400, 262, START, 370, 226);
    }

    private static void pitchCircle(CardSketch s) {
        s.partRound(170, 170, 84);
        s.quietRound(170, 170, 96);
        for (int tooth = 0; tooth < 20; tooth++) {
            double a = tooth * Math.PI / 10;
            s.partRound(170 + 96 * Math.sin(a), 170 - 96 * Math.cos(a), 9);
        }
        s.datumAxis(56, 170, 300, 170);
        s.datumAxis(170, 140, 170, 200);
        s.dimension(102, 238, 238, 102);
        s.symbol(190, 130, END);
        s.caliper(true, 140, 199, 266, 340, false);
        s.tool(380, 220, START, 358, 220);
        s.datum(300, 70, START, 172, 146);
        s.note("pitch over many links of the chain", 300, 276, START);
    }
}
