package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the compression release: the weight on the camshaft that holds the exhaust valve a little open while the engine is pulled over. */
final class ReleaseCards {
    private ReleaseCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.RELEASE_REACH,
                        "camshaft axis",
                        ReleaseCards::reach,
                        "Weight at rest instead of swung out, as it is when the engine runs.",
                        "Swing the weight out against its stop and hold it there.",
                        "From the far side of the camshaft core to the outermost point of the weight.",
                        "Take away half the core. No weight on this camshaft: enter 0."),
                card(
                        Term.RELEASE_ANGLE,
                        "nose of the exhaust lobe",
                        ReleaseCards::angle,
                        "Sign turned round, crank degrees taken for camshaft degrees, or the intake nose taken.",
                        "Stand the camshaft on paper, weight swung out; mark axis, exhaust nose and both edges of the weight.",
                        "Draw lines from the axis to the nose and halfway between the edges.",
                        "Protractor between them; positive the way the camshaft turns."),
                card(
                        Term.RELEASE_SPAN,
                        "leading edge of the weight",
                        ReleaseCards::span,
                        "Weight at rest instead of swung out; rivet or spring left out.",
                        "Stand the camshaft on paper, weight swung out; mark the axis and both edges of the weight.",
                        "Draw lines from the axis to both edges, protractor between them."),
                card(
                        Term.RELEASE_PLACE,
                        "middle of the crankpin",
                        CamshaftCards::places,
                        CamshaftCards.PLACE_SLIP,
                        CamshaftCards.PLACE_STEP + "weight.",
                        "Add half the crankpin width to the first, half the weight to the second.",
                        "Their difference is the place; positive when the weight is nearer to the flywheel."),
                card(
                        Term.RELEASE_THICKNESS,
                        "opposite face of the weight",
                        ReleaseCards::thickness,
                        "The plate alone measured, without the rivet head or the bent edge that stands out.",
                        "Clean the weight.",
                        "Jaws over all that moves with it, along the camshaft."),
                card(
                        Term.RELEASE_LIFT,
                        "valve shut, dial at zero",
                        ValveCards::lift,
                        "Lash wider than it will run, which swallows the bump; or turned so fast that the weight swings out.",
                        "Lash set; dial in line with the exhaust valve on its retainer, zeroed with the valve shut.",
                        "Turn slowly by hand through the compression stroke; the largest figure of that small bump is the lift."));
    }

    /** The camshaft seen on its end: gear behind, exhaust lobe nose up, the weight swung out to the right. */
    private static void onItsEnd(CardSketch s, double x, double y) {
        s.partRound(x, y, 96);
        CamshaftCards.lobe(s, x, y);
        s.part(CardSketch.sector(x, y, 52, 84, -26, 38));
        s.partRound(x, y, 22);
        s.datumAxis(x - 12, y, x + 12, y);
        s.datumAxis(x, y - 12, x, y + 12);
    }

    private static void reach(CardSketch s) {
        onItsEnd(s, 170, 152);
        s.datumAxis(120, 152, 270, 152);
        s.caliper(false, 148, 254, 156, 262, false);
        s.levelOff(170, 254, 42, 140);
        s.symbol(262, 48, START);
        s.datum(300, 100, START, 262, 152);
        s.tool(340, 240, START, 300, 266);
        s.note("weight, swung out", 300, 170, START);
        s.quiet("M", 298, 168, "L", 240, 176);
        s.note("exhaust lobe", 12, 80, START);
        s.quiet("M", 60, 84, "L", 150, 110);
        s.note("far side of the core: take away half the core", 12, 266, START);
    }

    private static void angle(CardSketch s) {
        onItsEnd(s, 170, 170);
        s.protractor(170, 170, 49, -90);
        s.datumAxis(170, 44, 170, 170);
        s.lit("M", 170, 170, "L", 170 + 112 * Math.cos(Math.toRadians(6)), 170 + 112 * Math.sin(Math.toRadians(6)));
        s.angle(170, 170, 106, -90, 6);
        s.symbol(262, 96, START);
        s.datum(220, 56, START, 170, 60);
        s.tool(300, 250, START, 196, 206);
        s.note("middle of the weight, swung out", 300, 178, START);
        s.note("exhaust lobe", 12, 80, START);
        s.quiet("M", 60, 84, "L", 148, 126);
        s.note("turns", 20, 244, START);
        s.quiet("M", 66, 208, "A", 110, 110, "0 0 1", 62, 146);
        s.head(63, 140, 0.2, -1);
    }

    private static void span(CardSketch s) {
        onItsEnd(s, 170, 170);
        s.protractor(170, 170, 49, -90);
        s.angle(170, 170, 106, -26, 38);
        s.lit("M", 170, 170, "L", 170 + 114 * Math.cos(Math.toRadians(38)), 170 + 114 * Math.sin(Math.toRadians(38)));
        double x = 170 + 114 * Math.cos(Math.toRadians(-26));
        double y = 170 + 114 * Math.sin(Math.toRadians(-26));
        s.datumAxis(170, 170, x, y);
        s.symbol(286, 184, START);
        s.datum(290, 80, START, x - 6, y + 3);
        s.tool(300, 270, START, 196, 206);
        s.note("weight, swung out", 320, 180, START);
        s.note("exhaust lobe", 12, 80, START);
        s.quiet("M", 60, 84, "L", 148, 126);
        s.note("gear", 78, 252, END);
    }

    private static void thickness(CardSketch s) {
        s.partBox(40, 146, 290, 28);
        s.partBox(90, 70, 28, 180);
        s.partBox(130, 92, 20, 112);
        s.partBox(200, 112, 40, 76);
        s.axis(30, 160, 344, 160);
        s.caliper(false, 130, 150, 194, 252, false);
        s.datumFace(130, 202, 130, 94);
        s.levelOff(130, 150, 74, 92);
        s.symbol(178, 80, START);
        s.datum(270, 90, START, 132, 106);
        s.tool(260, 236, START, 200, 256);
        s.note("gear", 84, 90, END);
        s.note("weight", 84, 270, END);
        s.quiet("M", 70, 258, "L", 136, 198);
        s.note("lobe", 220, 208, MIDDLE);
    }
}
