package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the camshaft itself: its core and lobes, and where the lobes stand beside the crankpin. */
final class CamshaftCards {
    static final String PLACE_SLIP = "Sign turned round: positive is towards the flywheel; or half a width forgotten.";
    static final String PLACE_STEP =
            "Side cover off, both shafts pushed home: depth end from its joint face to the near face of the nearer crank cheek, and to the near face of the ";

    private CamshaftCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.CAM_CORE,
                        "opposite side of the core",
                        CamshaftCards::core,
                        "Read beside a lobe where the casting is thicker, or only where the shaft is turned.",
                        "Clean the shaft between the lobes, where the rod passes it.",
                        "Jaws across, all round; the largest figure counts."),
                card(
                        Term.CAM_BASE_CIRCLE,
                        "opposite side of the lobe",
                        CamshaftCards::baseCircle,
                        "Measured along the nose, or on a ramp: turn the lobe a little, the smallest figure is the base circle.",
                        "Clean the lobe; micrometer set on its standard.",
                        "Across the lobe, at right angles to its nose; rock it to the smallest figure.",
                        "Both lobes; feel for wear."),
                card(
                        Term.LOBE_WIDTH,
                        "opposite face of the lobe",
                        CamshaftCards::lobeWidth,
                        "The chamfers at its edges left out or counted twice.",
                        "Clean the faces of the lobe.",
                        "Jaws square over them."),
                card(
                        Term.CAM_GEAR_TEETH,
                        "tooth with the timing mark",
                        CamshaftCards::wheel,
                        "The crankshaft's wheel counted instead: the camshaft's has twice its teeth. The marked tooth counted twice.",
                        "Mark the tooth at the timing mark with chalk.",
                        "Count round to it; it must come to twice the teeth on the crankshaft."),
                place(Term.INTAKE_LOBE_PLACE),
                place(Term.EXHAUST_LOBE_PLACE));
    }

    private static ReadingCard place(Term term) {
        return card(
                term,
                "middle of the crankpin",
                CamshaftCards::places,
                PLACE_SLIP,
                PLACE_STEP + "lobe.",
                "Add half the crankpin width to the first, half the lobe to the second.",
                "Their difference is the place; positive when the lobe is nearer to the flywheel.");
    }

    /** The loose camshaft from the side, its gear left; one nose up, one down. */
    private static void loose(CardSketch s) {
        s.partBox(30, 146, 280, 28);
        s.partBox(48, 96, 24, 128);
        s.partBox(120, 112, 36, 76);
        s.partBox(222, 132, 36, 76);
        s.axis(20, 160, 322, 160);
        s.note("gear", 60, 244, MIDDLE);
    }

    private static void core(CardSketch s) {
        loose(s);
        s.lookAt(188, 132, 188, true);
        s.note("lobe", 138, 104, MIDDLE);
        s.note("lobe", 240, 226, MIDDLE);
        s.roundInCaliper(384, 150, 24, 432);
        s.uprightOff(344, 126, 174, 384);
        s.symbol(336, 156, END);
        s.datum(240, 60, START, 372, 130);
        s.tool(330, 250, START, 440, 210);
        s.note("core, on its end", 326, 282, START);
    }

    /** A lobe seen on its end, nose up, its base circle of radius 44 round (x, y). */
    static void lobe(CardSketch s, double x, double y) {
        s.part(
                "M", x - 42, y - 13, "L", x - 15, y - 62, "A", 17, 17, "0 0 1", x + 15, y - 62, "L", x + 42, y - 13,
                "A", 44, 44, "0 1 1", x - 42, y - 13, "Z");
        s.axis(x, y - 90, x, y + 56);
    }

    private static void wheel(CardSketch s) {
        ShaftCards.sprocket(s);
        s.note("wheel of the camshaft", 180, 296, MIDDLE);
    }

    private static void baseCircle(CardSketch s) {
        lobe(s, 180, 176);
        s.quietRound(180, 176, 44);
        s.micrometer(false, 136, 224, 176, 262);
        s.datumArc(180, 176, 44, 150, 210, true);
        s.level(136, 224, 192);
        s.symbol(236, 214, START);
        s.datum(8, 60, START, 136, 172);
        s.tool(330, 210, START, 280, 182);
        s.note("nose", 250, 112, START);
        s.quiet("M", 246, 108, "L", 196, 108);
        s.note("rock it: smallest figure", 330, 262, START);
    }

    private static void lobeWidth(CardSketch s) {
        loose(s);
        s.caliper(false, 222, 258, 194, 250, false);
        s.datumFace(222, 206, 222, 134);
        s.levelOff(222, 258, 112, 132);
        s.symbol(240, 104, MIDDLE);
        s.datum(300, 90, START, 223, 140);
        s.tool(340, 230, START, 306, 256);
        s.note("lobe", 138, 104, MIDDLE);
    }

    /** Crankshaft and camshaft lying side by side, flywheel end left; the depth end of the caliper stands on the joint face of the case. */
    static void places(CardSketch s) {
        boolean weight = s.is(Term.RELEASE_PLACE);
        boolean intake = s.is(Term.INTAKE_LOBE_PLACE);
        s.partBox(40, 206, 290, 26);
        s.partBox(172, 178, 44, 54);
        s.partBox(150, 166, 22, 96);
        s.partBox(216, 166, 22, 96);
        s.partBox(40, 86, 290, 20);
        s.partBox(48, 62, 20, 76);
        s.partBox(126, 70, 26, 60);
        s.partBox(236, 58, 26, 54);
        if (weight) {
            s.partBox(78, 74, 12, 76);
        }
        s.part("M", 330, 48, "H", 346, "V", 286, "H", 330, "Z");
        s.axis(30, 219, 356, 219);
        s.datumAxis(194, 118, 194, 292);
        double middle = weight ? 84 : intake ? 139 : 249;
        double face = weight ? 90 : intake ? 152 : 262;
        double y = weight ? 144 : intake ? 122 : 70;
        s.caliperDepth(false, 346, face, y, 120);
        double dim = weight ? 158 : intake ? 148 : 136;
        s.level(Math.min(middle, 194), Math.max(middle, 194), dim);
        s.quiet("M", middle, weight ? 150 : intake ? 130 : 112, "V", dim + 6);
        s.symbol(
                weight ? 136 : intake ? 128 : 266, dim + 5 + (weight ? 14 : 0), intake ? END : weight ? MIDDLE : START);
        s.tool(372, weight ? 190 : intake ? 164 : 118, START, 400, y + 10);
        s.datum(12, 281, START, 194, 288);
        s.note("flywheel end", 12, 252, START);
        s.note("joint face of the case", 300, 40, START);
        s.note("gear", 34, 76, END);
    }
}
