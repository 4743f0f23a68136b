package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the connecting rod's outline: beam, big end, bolts and dipper, for what passes near it and for what it bears. */
final class RodShapeCards {
    private static final String HALF_BORE = "Take away half the big-end bore.";
    private static final String AXIS_SLIP = "Half the big-end bore forgotten, or not at the outermost point.";

    private RodShapeCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                beam(
                        Term.BEAM_WIDTH,
                        "opposite edge of the beam",
                        "Read where the beam is wider, near the big end: the narrowest place bears least."),
                beam(
                        Term.BEAM_THICKNESS,
                        "opposite face of the beam",
                        "The web measured instead of over the flanges, or the other way round."),
                beam(
                        Term.BEAM_WEB,
                        "opposite side of the web",
                        "Forging draft: the web is thinnest at its middle, not beside the flanges."),
                beam(
                        Term.BEAM_FLANGE,
                        "outer face of the flange",
                        "Read at the root of the flange, where the fillet makes it thicker."),
                outline(
                        Term.BIG_END_REACH,
                        "From the far side of the big-end bore to the outermost point of the big end, across the rod."),
                outline(
                        Term.CAP_BELOW,
                        "From the upper side of the big-end bore to the lowest point of the cap, dipper left out."),
                card(
                        Term.BOLT_OUT,
                        "rod centre line",
                        RodShapeCards::bigEnd,
                        "Only one bolt measured on a rod whose bolts do not stand alike: the farther one counts.",
                        "Cap on, bolts torqued as they will run, locks bent up.",
                        "Jaws over the outer edges of both bolt heads or nuts.",
                        "Half of it; not alike: each from the bore, and the larger."),
                outline(
                        Term.BOLT_UP,
                        "From the lower side of the big-end bore to the upper end of bolt or nut, along the rod."),
                outline(
                        Term.BOLT_DOWN,
                        "From the upper side of the big-end bore to the lower end of bolt or nut, along the rod."),
                card(
                        Term.BOLT_ACROSS,
                        "opposite side of the bolt head",
                        RodShapeCards::edgeOn,
                        "Across the flats read where the corners stand farther out: the widest counts.",
                        "Cap on, bolts torqued as they will run.",
                        "Jaws over head or nut along the crankshaft, the widest way it can stand."),
                outline(
                        Term.DIPPER_REACH,
                        "From the upper side of the big-end bore to the tip of the dipper.",
                        "Take away half the big-end bore. No dipper on this rod: enter 0."),
                card(
                        Term.DIPPER_THICKNESS,
                        "opposite face of the dipper",
                        RodShapeCards::edgeOn,
                        "A bent dipper measured as plate: what it takes up along the crankshaft counts.",
                        "Clean the dipper.",
                        "Jaws over it along the crankshaft, with any bend."),
                card(
                        Term.DIPPER_WIDTH,
                        "opposite edge of the dipper",
                        RodShapeCards::bigEnd,
                        "Read at its tip when it is wider at its root.",
                        "Clean the dipper.",
                        "Jaws over it in the plane the rod swings in, at its widest."),
                card(
                                Term.ROD_SWING,
                                "knife edge, at rest",
                                RodShapeCards::swing,
                                "Swings counted from one instead of from nought, a wide swing, or an edge that rolls.",
                                "Hang the whole rod, with cap, bolts and dipper, by its small-end bore on a fixed edge.",
                                "Let it swing by a few degrees; start the watch at the lowest point, counting nought.",
                                "Stop it after twenty swings to and fro; divide by twenty; three times.")
                        .cautioned("It falls off the edge: lay something soft under it."));
    }

    private static ReadingCard beam(Term term, String datum, String mistake) {
        return card(
                term,
                datum,
                RodShapeCards::section,
                mistake,
                "Find the narrowest place of the beam; clean it of flash.",
                switch (term) {
                    case BEAM_WIDTH -> "Jaws over both edges, in the plane the rod swings in.";
                    case BEAM_THICKNESS -> "Jaws over the flanges, along the crankshaft.";
                    case BEAM_WEB ->
                        "Legs that reach over the flanges, on the middle of the web; a plain beam: enter its thickness.";
                    default ->
                        "One jaw in the hollow, the other on the edge; both flanges; a plain beam: enter half its width.";
                });
    }

    private static ReadingCard outline(Term term, String how) {
        return outline(term, how, HALF_BORE);
    }

    private static ReadingCard outline(Term term, String how, String then) {
        return card(
                term,
                "crankpin axis",
                RodShapeCards::bigEnd,
                AXIS_SLIP,
                "Cap on, bolts torqued as they will run, locks bent up.",
                how,
                then);
    }

    /** The beam cut across; beside it the rod and the place of the cut. */
    private static void section(CardSketch s) {
        s.part(
                "M", 120, 120, "H", 158, "V", 146, "H", 232, "V", 120, "H", 270, "V", 204, "H", 232, "V", 178, "H", 158,
                "V", 204, "H", 120, "Z");
        switch (s.term()) {
            case BEAM_WIDTH -> {
                s.caliper(false, 120, 270, 166, 236, false);
                s.datumFace(120, 202, 120, 122);
                s.levelOff(120, 270, 92, 120);
                s.symbol(195, 84, MIDDLE);
                s.datum(12, 60, START, 121, 128);
                s.tool(120, 286, END, 150, 248);
            }
            case BEAM_THICKNESS -> {
                s.caliper(true, 120, 204, 250, 316, false);
                s.datumFace(122, 120, 157, 120);
                s.datumFace(233, 120, 249, 120);
                s.uprightOff(96, 120, 204, 120);
                s.symbol(88, 190, END);
                s.datum(60, 70, START, 140, 120);
                s.tool(200, 270, START, 316, 250);
            }
            case BEAM_WEB -> {
                s.caliperReachingOver(146, 178, 195, 316, 40);
                s.datumFace(160, 146, 194, 146);
                s.upright(186, 146, 178);
                s.symbol(176, 168, END);
                s.datum(60, 70, START, 166, 146);
                s.tool(150, 276, START, 316, 262);
            }
            default -> {
                s.caliper(false, 232, 270, 138, 66, false);
                s.datumFace(270, 122, 270, 202);
                s.levelOff(232, 270, 228, 204);
                s.symbol(290, 234, START);
                s.datum(150, 276, START, 269, 190);
                s.tool(120, 60, START, 218, 58);
            }
        }
        s.part("M", 405, 96, "L", 402, 190, "H", 438, "L", 435, 96, "Z");
        s.partRound(420, 84, 24);
        s.holeRound(420, 84, 13);
        s.partRound(420, 220, 40);
        s.holeRound(420, 220, 24);
        s.axis(386, 128, 454, 128);
        s.note("cut at its narrowest", 420, 284, MIDDLE);
        s.note("web", 162, s.is(Term.BEAM_WEB) ? 196 : 167, START);
        s.note("flange", 139, 222, MIDDLE);
    }

    /** The big end seen along the crankshaft, small end up, bolts at both sides. */
    private static void bigEnd(CardSketch s) {
        double x = 190;
        double y = 130;
        boolean dipper = s.is(Term.DIPPER_REACH, Term.DIPPER_WIDTH);
        s.part("M", 172, 88, "L", 176, 36, "H", 204, "L", 208, 88, "Z");
        s.partRound(x, y, 54);
        for (double bolt : new double[] {128, 252}) {
            s.partBox(bolt - 16, 98, 32, 64);
            s.partBox(bolt - 14, 82, 28, 16);
            s.partBox(bolt - 14, 162, 28, 16);
        }
        s.quiet("M", 112, y, "H", 156, "M", 224, y, "H", 268);
        if (dipper) {
            s.part("M", 182, 182, "H", 198, "V", 232, "L", 190, 238, "L", 182, 232, "Z");
        }
        s.holeRound(x, y, 34);
        switch (s.term()) {
            case BIG_END_REACH -> {
                s.caliperOnStep(156, 268, 124, 226);
                cross(s, x, y);
                s.levelOff(190, 268, 64, 96);
                s.symbol(290, 70, START);
                s.tool(340, 200, START, 312, 230);
                s.datum(330, 110, START, 202, 130);
                s.note("caliper from the far side of the bore: take away half the bore", 12, 220, START);
            }
            case BOLT_OUT -> {
                s.caliper(false, 114, 266, 170, 226, false);
                s.datumAxis(x, 34, x, 204);
                s.levelOff(190, 266, 64, 82);
                s.symbol(286, 70, START);
                s.tool(340, 200, START, 312, 230);
                s.datum(310, 112, START, 190, 58);
                s.note("caliper over both bolts: half of what it shows", 12, 262, START);
            }
            case DIPPER_WIDTH -> {
                s.caliper(false, 182, 198, 212, 262, false);
                s.datumFace(198, 186, 198, 230);
                s.levelOff(182, 198, 199, 200);
                s.symbol(154, 205, END);
                s.tool(290, 240, START, 246, 266);
                s.datum(280, 150, START, 198, 191);
                s.note("dipper", 214, 228, START);
            }
            default -> upright(s, x, y);
        }
        s.note("small end: up", 220, 46, START);
    }

    private static void upright(CardSketch s, double x, double y) {
        boolean up = s.is(Term.BOLT_UP);
        double to = switch (s.term()) {
            case CAP_BELOW -> 184;
            case BOLT_UP -> 82;
            case BOLT_DOWN -> 178;
            default -> 238;
        };
        double tip = up || s.is(Term.BOLT_DOWN) ? 208 : 184;
        if (up) {
            s.caliperOnPlate(82, 164, tip, 300);
        } else {
            s.caliperOnStepUpright(96, to, tip, 300);
        }
        cross(s, x, y);
        s.datumAxis(76, y, 300, y);
        double end = s.is(Term.CAP_BELOW, Term.DIPPER_REACH) ? 182 : 112;
        s.quiet("M", end, to, "H", 82);
        s.upright(88, y, to);
        s.symbol(78, (y + to) / 2 + 6, END);
        s.tool(370, 200, START, 318, 190);
        s.datum(340, 100, START, 292, y);
        s.note(
                up
                        ? "caliper from the lower side of the bore: take away half the bore"
                        : "caliper from the upper side of the bore: take away half the bore",
                12,
                262,
                START);
    }

    private static void cross(CardSketch s, double x, double y) {
        s.datumAxis(x - 26, y, x + 26, y);
        s.datumAxis(x, y - 26, x, y + 26);
    }

    /** The big end seen edge on, crankshaft across, small end up. */
    private static void edgeOn(CardSketch s) {
        boolean bolt = s.is(Term.BOLT_ACROSS);
        double x = 240;
        s.partBox(x - 18, 40, 36, 50);
        s.partBox(x - 44, 88, 88, 88);
        s.quiet("M", x - 44, 132, "H", x + 44);
        if (bolt) {
            s.partBox(x - 28, 176, 56, 18);
            s.quiet("M", x - 14, 176, "V", 194, "M", x + 14, 176, "V", 194);
            s.caliper(false, x - 28, x + 28, 182, 240, false);
            s.datumFace(x - 28, 193, x - 28, 177);
            s.datum(8, 150, START, x - 27, 186);
            s.levelOff(x - 28, x + 28, 212, 196);
            s.symbol(x, 232, MIDDLE);
        } else {
            s.part("M", x - 6, 176, "H", x + 6, "V", 224, "L", x + 14, 236, "H", x + 2, "L", x - 6, 224, "Z");
            s.caliper(false, x - 6, x + 14, 218, 258, false);
            s.datumFace(x - 6, 222, x - 6, 180);
            s.datum(8, 170, START, x - 5, 200);
            s.levelOff(x - 6, x + 14, 204, 216);
            s.symbol(x + 42, 210, START);
        }
        s.tool(350, bolt ? 216 : 228, START, bolt ? 308 : 294, bolt ? 248 : 264);
        s.note("rod, seen edge on: the crankshaft lies across", 310, 90, START);
        s.note("big end", x, 120, MIDDLE);
        s.note(bolt ? "bolt head" : "dipper", 310, bolt ? 180 : 186, START);
    }

    private static void swing(CardSketch s) {
        s.unknown("M", 122, 110, "L", 66, 214, "M", 150, 122, "L", 116, 226);
        s.part("M", 148, 90, "L", 138, 206, "H", 182, "L", 172, 90, "Z");
        s.partRound(160, 92, 28);
        s.holeRound(160, 92, 16);
        s.partRound(160, 232, 44);
        s.holeRound(160, 232, 26);
        s.tool("M", 152, 96, "L", 160, 76, "L", 168, 96, "Z");
        s.datumAxis(160, 46, 160, 290);
        s.lit("M", 84, 256, "A", 196, 196, "0 0 0", 110, 270);
        s.lit("M", 210, 270, "A", 196, 196, "0 0 0", 236, 256);
        s.head(78, 253, -0.9, -0.4);
        s.head(242, 253, 0.9, -0.4);
        s.symbol(262, 270, START);
        s.stopwatch(350, 150, 44);
        s.tool(400, 80, START, 376, 116);
        s.datum(200, 60, START, 160, 52);
        s.note("knife edge in the small-end bore", 12, 60, START);
        s.quiet("M", 106, 78, "L", 152, 90);
        s.note("twenty swings to and fro", 300, 222, START);
    }
}
