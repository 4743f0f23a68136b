package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of where the valves stand in the head and of their heads. */
final class ValveShapeCards {
    private ValveShapeCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                tilt(Term.INTAKE_TILT),
                tilt(Term.EXHAUST_TILT),
                recess(Term.INTAKE_RECESS),
                recess(Term.EXHAUST_RECESS),
                margin(Term.INTAKE_MARGIN),
                margin(Term.EXHAUST_MARGIN));
    }

    private static ReadingCard tilt(Term term) {
        return card(
                term,
                "square to the head face",
                ValveShapeCards::lean,
                "Protractor not in the plane the valve leans in, or a rod that is loose in the guide.",
                "Head on the bench, face up, valve out; a straight rod that fits the guide stands out of it.",
                "Protractor on the face, turned about until it shows the largest lean.",
                "Positive when the end of the stem is farther from the cylinder axis than the valve head.");
    }

    private static ReadingCard recess(Term term) {
        return card(
                term,
                "head face",
                ValveShapeCards::depth,
                "Tip in the dimple of the valve instead of on its rim; or the sign lost when the rim stands proud of the face.",
                "Valve shut, held by its spring; face and rim clean.",
                "Bridge on the face, rod down to the rim: nearest to the cylinder axis and opposite.",
                "The mean of the two; proud of the face is negative.");
    }

    private static ReadingCard margin(Term term) {
        return card(
                term,
                "flat face of the valve",
                ValveShapeCards::edge,
                "The ground seat counted with it: only the plain edge between flat face and seat is the margin.",
                "Clean the edge.",
                "Jaws over the plain edge, four places; the thinnest counts.");
    }

    private static void lean(CardSketch s) {
        s.part("M", 40, 190, "H", 330, "V", 276, "H", 40, "Z");
        s.hole("M", 110, 190, "C", 124, 236, 246, 236, 260, 190, "Z");
        s.toolBox(60, 180, 250, 10);
        double lean = Math.toRadians(-74);
        double ux = Math.cos(lean);
        double uy = Math.sin(lean);
        s.protractor(185, 180, 84, 180);
        s.tool("M", 181, 268, "L", 181 + 210 * ux - 4, 268 + 210 * uy, "l", 9, 2, "L", 190, 270, "Z");
        s.datumFace(42, 190, 108, 190);
        s.datumFace(262, 190, 328, 190);
        s.datumAxis(206, 46, 206, 180);
        s.angle(206, 180, 118, -90, -74);
        s.symbol(254, 60, START);
        s.datum(290, 90, START, 206, 74);
        s.tool(20, 84, START, 118, 132);
        s.note("rod in the valve guide", 330, 150, START);
        s.quiet("M", 326, 146, "L", 222, 132);
        s.note("head, face up", 50, 262, START);
        s.note("chamber", 240, 262, START);
    }

    private static void depth(CardSketch s) {
        s.part("M", 40, 150, "H", 340, "V", 272, "H", 40, "Z");
        s.hole("M", 96, 150, "L", 110, 208, "H", 270, "L", 284, 150, "Z");
        s.part(
                "M", 130, 190, "H", 250, "V", 196, "L", 236, 208, "C", 206, 214, 198, 224, 196, 240, "V", 286, "H", 184,
                "V", 240, "C", 182, 224, 174, 214, 144, 208, "L", 130, 196, "Z");
        s.toolBox(56, 139, 270, 11);
        s.depthGauge(140, 150, 190, 0);
        s.datumFace(42, 150, 95, 150);
        s.datumFace(285, 150, 338, 150);
        s.spot(140, 190, 4);
        s.spot(240, 190, 4);
        s.upright(200, 150, 190);
        s.symbol(210, 178, START);
        s.tool(180, 92, START, 157, 98);
        s.datum(290, 100, START, 320, 151);
        s.note("head, face up", 50, 262, START);
        s.note("valve, shut", 220, 262, START);
        s.note("both places on the rim: the mean", 350, 196, START);
        s.quiet("M", 346, 196, "L", 246, 191);
    }

    private static void edge(CardSketch s) {
        s.part(
                "M", 20, 176, "H", 110, "C", 160, 174, 176, 152, 202, 118, "L", 226, 94, "H", 256, "V", 278, "H", 226,
                "L", 202, 254, "C", 176, 220, 160, 198, 110, 196, "H", 20, "Z");
        s.axis(10, 186, 280, 186);
        s.caliper(false, 226, 256, 102, 56, false);
        s.datumFace(256, 100, 256, 160);
        s.level(226, 256, 236);
        s.symbol(280, 242, START);
        s.datum(300, 140, START, 256, 140);
        s.tool(340, 92, START, 300, 50);
        s.note("seat", 150, 100, START);
        s.quiet("M", 180, 98, "L", 212, 106);
        s.note("valve, drawn large: head at the right", 20, 262, START);
    }
}
