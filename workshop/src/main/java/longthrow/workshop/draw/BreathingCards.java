package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of what the engine breathes through: ports, runner, air filter and airbox, silencer, crankcase; and how far the flame has to go. */
final class BreathingCards {
    private static final String SPIRIT = "Paraffin burns and its vapour too: no flame, no hot lamp near it.";

    private BreathingCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                throat(Term.INTAKE_THROAT),
                throat(Term.EXHAUST_THROAT),
                portLength(Term.INTAKE_PORT_LENGTH),
                portLength(Term.EXHAUST_PORT_LENGTH),
                card(
                        Term.PLUG_TO_WALL,
                        "gap of the plug",
                        BreathingCards::chamber,
                        "To the wall beside the plug: the one farthest from it counts, over the valves of a side-valve as well.",
                        "Head off, plug in, face up.",
                        "Inside jaws or a rule from the gap of the plug along the face to the farthest edge of the chamber."),
                card(
                        Term.RUNNER_LENGTH,
                        "port flange",
                        BreathingCards::runner,
                        "Gasket and spacer left out: all between the port and the carburettor counts.",
                        "Spacers and gaskets on as they will run.",
                        "Along the middle of the bend, flange of the port to flange of the carburettor; nothing between: 0."),
                card(
                        Term.RUNNER_BORE,
                        "opposite side of the runner",
                        BreathingCards::runner,
                        "Read at a mouth that is wider than the rest.",
                        "Runner off, both ends clean.",
                        "Inside jaws across it, two directions, both ends: the mean."),
                card(
                        Term.FILTER_DROP,
                        "water level, engine at rest",
                        BreathingCards::manometer,
                        "Throttle not wide open, or the tap facing the stream: it must lie flush in the wall.",
                        "A small tap in the wall between filter and carburettor, hose to a tube of water; other end open.",
                        "Throttle wide open at a steady speed under load; read both levels and the speed.",
                        "Write the speed beside it: the drop alone says nothing."),
                ShaftCards.speed(
                        Term.FILTER_DROP_SPEED,
                        "Throttle wide open under load, steady, while the drop over the filter is read: write both."),
                volume(
                        Term.AIRBOX_VOLUME,
                        "all openings closed",
                        "The filter's own room on its outer side counted: only what lies behind the element counts.",
                        "Element out, openings to the carburettor taped; level.",
                        "Fill with water from the measuring jug; dry it well."),
                volume(
                        Term.SILENCER_VOLUME,
                        "all openings closed",
                        "Packing soaked instead of the room filled, or soot: a packed silencer holds less than it takes up.",
                        "Cold and off the engine; pipe and tail plugged, tail up.",
                        "Fill with water from the measuring jug, rock out the bubbles; drain and dry it at once."),
                volume(
                                Term.CASE_VOLUME,
                                "oil at its mark",
                                "Piston not at the bottom, or air caught under it: then the room comes out wrong by as much.",
                                "Piston at bottom dead centre, crank held, oil at its mark, breather off.",
                                "Fill paraffin from the measuring jug until it stands in the breather hole; rock out the bubbles.",
                                "Drain all of it, flush with oil, new oil in.")
                        .cautioned(SPIRIT),
                hole(
                        Term.BREATHER_HOLE,
                        "The hose measured instead of the narrowest place on the way out, often a restrictor in the cover.",
                        "Breather off, hole clean."),
                hole(
                        Term.SILENCER_HOLE,
                        "The tail read where a plate or an inner pipe inside it is narrower.",
                        "Look through with a lamp: the narrowest hole that all the gas passes counts; spark arrester out if it stays out."));
    }

    private static ReadingCard throat(Term term) {
        return card(
                term,
                "opposite wall of the throat",
                BreathingCards::port,
                "Read over the seat: it is wider than the port behind it.",
                "Valve out, port clean of carbon.",
                "Inside jaws just below the seat, two directions clear of the guide; the mean.");
    }

    private static ReadingCard portLength(Term term) {
        return card(
                term,
                "face of the flange",
                BreathingCards::port,
                "A straight line taken for a bend: the middle of the port counts.",
                "Valve out; soft wire or a thin tape through the port, along its middle.",
                "From the face of the flange to the valve seat; pull it out and read it straight.");
    }

    private static ReadingCard volume(Term term, String datum, String mistake, String... steps) {
        return card(term, datum, BreathingCards::vessel, mistake, steps);
    }

    private static ReadingCard hole(Term term, String mistake, String first) {
        return card(
                term,
                "opposite side of the hole",
                BreathingCards::narrowest,
                mistake,
                first,
                "Largest plug gauge, or shank of a new drill, that enters by its own weight.");
    }

    /** The head cut through along a port: seat below, flange to the left. */
    private static void port(CardSketch s) {
        boolean length = s.is(Term.INTAKE_PORT_LENGTH, Term.EXHAUST_PORT_LENGTH);
        s.part("M", 80, 80, "H", 330, "V", 250, "H", 80, "Z");
        s.hole(
                "M", 80, 106, "H", 190, "C", 240, 106, 262, 140, 262, 236, "L", 272, 250, "H", 188, "L", 198, 236, "C",
                198, 190, 196, 170, 170, 170, "H", 80, "Z");
        if (length) {
            s.toolLine(5, "M", 80, 138, "H", 180, "C", 216, 138, 230, 170, 230, 244);
            s.lit("M", 84, 138, "H", 180, "C", 216, 138, 230, 170, 230, 240);
            s.head(80, 138, -1, 0);
            s.head(230, 244, 0, 1);
            s.symbol(150, 128, MIDDLE);
            s.datumFace(80, 104, 80, 82);
            s.datumFace(80, 248, 80, 172);
            s.datum(12, 66, START, 82, 92);
            s.tool(350, 110, START, 222, 164);
            s.note("valve seat", 346, 284, START);
            s.quiet("M", 344, 278, "L", 268, 246);
        } else {
            s.caliper(false, 198, 262, 216, 268, true);
            s.levelOff(198, 262, 196, 214);
            s.symbol(230, 186, MIDDLE);
            s.datumFace(198, 226, 198, 206);
            s.tool(350, 214, START, 300, 272);
            s.datum(12, 66, START, 197, 210);
            s.note("valve seat", 90, 290, END);
            s.quiet("M", 92, 284, "L", 192, 246);
        }
        s.note("flange", 20, 140, START);
        s.note("head", 300, 104, START);
    }

    /** The head seen from below. */
    private static void chamber(CardSketch s) {
        s.part("M", 60, 60, "H", 320, "V", 270, "H", 60, "Z");
        s.hole("M", 100, 160, "C", 100, 80, 280, 80, 280, 160, "C", 280, 250, 100, 250, 100, 160, "Z");
        s.quietRound(165, 150, 30);
        s.quietRound(230, 160, 24);
        s.partRound(122, 196, 10);
        s.datumArc(122, 196, 10, 190, 340, true);
        s.caliperOnSlant(122, 196, 277, 140, -92);
        s.dimension(122, 196, 277, 140);
        s.symbol(200, 192, MIDDLE);
        s.datum(12, 44, START, 117, 188);
        s.tool(350, 232, START, 290, 238);
        s.note("farthest edge of the chamber", 345, 90, START);
        s.quiet("M", 343, 94, "L", 282, 138);
    }

    private static void runner(CardSketch s) {
        s.part(
                "M", 60, 84, "H", 72, "V", 110, "H", 318, "V", 84, "H", 330, "V", 216, "H", 318, "V", 190, "H", 72, "V",
                216, "H", 60, "Z");
        s.hole("M", 60, 120, "H", 330, "V", 180, "H", 60, "Z");
        s.axis(30, 150, 380, 150);
        if (s.is(Term.RUNNER_LENGTH)) {
            s.toolBox(60, 226, 330, 16);
            for (int mark = 0; mark < 27; mark++) {
                s.toolLine(1, "M", 60 + mark * 10, 226, "v", 7);
            }
            s.datumFace(60, 214, 60, 184);
            s.levelOff(60, 330, 66, 84);
            s.symbol(195, 58, MIDDLE);
            s.tool(400, 200, START, 376, 228);
            s.datum(12, 284, START, 62, 200);
        } else {
            s.caliper(true, 120, 180, 316, 360, true);
            s.datumFace(316, 120, 240, 120);
            s.upright(150, 120, 180);
            s.symbol(164, 144, START);
            s.tool(390, 110, START, 366, 130);
            s.datum(200, 66, START, 270, 118);
        }
        s.note("port", 14, 130, START);
        s.note("carburettor", 380, 172, START);
    }

    /** A pipe with a filter at its end and a tube of water on a tap. */
    private static void manometer(CardSketch s) {
        s.part("M", 96, 84, "H", 300, "V", 92, "H", 96, "Z");
        s.part("M", 96, 140, "H", 196, "V", 148, "H", 96, "Z");
        s.part("M", 204, 140, "H", 300, "V", 148, "H", 204, "Z");
        s.quiet(
                "M", 40, 72, "H", 92, "V", 160, "H", 40, "Z", "M", 50, 72, "V", 160, "M", 60, 72, "V", 160, "M", 70, 72,
                "V", 160, "M", 80, 72, "V", 160);
        s.toolLine(5, "M", 200, 141, "V", 196, "C", 200, 210, 210, 214, 220, 214, "H", 284, "V", 170);
        s.tool("M", 276, 170, "H", 292, "V", 258, "H", 326, "V", 150, "H", 342, "V", 274, "H", 276, "Z");
        s.hole("M", 281, 170, "H", 287, "V", 190, "H", 281, "Z");
        s.hole("M", 331, 150, "H", 337, "V", 238, "H", 331, "Z");
        s.datumAxis(262, 214, 356, 214);
        s.uprightOff(384, 190, 238, 340);
        s.symbol(396, 220, START);
        s.tool(370, 128, START, 341, 156);
        s.datum(20, 250, START, 266, 215);
        s.note("air filter", 30, 64, START);
        s.note("to the carburettor", 316, 100, START);
    }

    /** A closed room with one opening on top. */
    private static void vessel(CardSketch s) {
        if (s.is(Term.CASE_VOLUME)) {
            s.part("M", 70, 160, "H", 130, "V", 96, "H", 230, "V", 160, "H", 290, "V", 280, "H", 70, "Z");
            s.hole(
                    "M", 86, 176, "H", 146, "V", 96, "H", 214, "V", 176, "H", 238, "V", 160, "H", 256, "V", 176, "H",
                    274, "V", 266, "H", 86, "Z");
            s.part("M", 146, 130, "H", 214, "V", 170, "H", 206, "V", 144, "H", 154, "V", 170, "H", 146, "Z");
            s.partRound(180, 226, 22);
            s.datumAxis(88, 250, 272, 250);
            s.quiet("M", 96, 256, "H", 140, "M", 160, 260, "H", 220, "M", 230, 256, "H", 262);
            s.note("piston at the bottom", 20, 90, START);
            s.quiet("M", 80, 96, "L", 150, 136);
        } else if (s.is(Term.AIRBOX_VOLUME)) {
            s.part("M", 70, 130, "H", 234, "V", 118, "H", 260, "V", 130, "H", 290, "V", 270, "H", 70, "Z");
            s.hole("M", 84, 144, "H", 238, "V", 118, "H", 256, "V", 144, "H", 276, "V", 256, "H", 84, "Z");
            s.quiet("M", 70, 180, "H", 40, "V", 230, "H", 70);
            s.datumFace(70, 236, 70, 174);
            s.note("taped", 14, 168, START);
        } else {
            s.part(
                    "M", 60, 190, "H", 80, "V", 150, "H", 234, "V", 110, "H", 260, "V", 150, "H", 290, "V", 274, "H",
                    80, "V", 220, "H", 60, "Z");
            s.hole(
                    "M", 60, 198, "H", 92, "V", 162, "H", 240, "V", 110, "H", 254, "V", 162, "H", 278, "V", 262, "H",
                    92, "V", 212, "H", 60, "Z");
            s.partBox(60, 198, 22, 14);
            s.datumFace(60, 220, 60, 190);
            s.note("plugged", 14, 246, START);
        }
        s.symbol(140, 222, MIDDLE);
        s.tool("M", 322, 60, "H", 402, "V", 150, "H", 322, "Z");
        s.hole("M", 328, 60, "H", 396, "V", 86, "H", 328, "Z");
        for (int mark = 0; mark < 6; mark++) {
            s.toolLine(1.2, "M", 330, 92 + mark * 9, "h", 12);
        }
        s.quiet("M", 322, 66, "C", 280, 60, 249, 70, 247, 128);
        s.head(247, 132, 0, 1);
        s.tool(340, 190, START, 362, 151);
        if (s.is(Term.CASE_VOLUME)) {
            s.datum(320, 240, START, 266, 250);
        } else {
            s.datum(60, 56, START, s.is(Term.AIRBOX_VOLUME) ? 70 : 60, s.is(Term.AIRBOX_VOLUME) ? 190 : 192);
        }
    }

    /** A wall with the narrowest hole in it and the gauge that enters. */
    private static void narrowest(CardSketch s) {
        boolean silencer = s.is(Term.SILENCER_HOLE);
        s.part("M", 120, 70, "H", 150, "V", 140, "H", 120, "Z");
        s.part("M", 120, 200, "H", 150, "V", 270, "H", 120, "Z");
        if (silencer) {
            s.part("M", 40, 70, "H", 120, "V", 82, "H", 40, "Z");
            s.part("M", 40, 258, "H", 120, "V", 270, "H", 40, "Z");
            s.part("M", 150, 132, "H", 220, "V", 140, "H", 150, "Z");
            s.part("M", 150, 200, "H", 220, "V", 208, "H", 150, "Z");
        } else {
            s.part("M", 150, 110, "H", 190, "V", 122, "H", 150, "Z");
            s.part("M", 150, 218, "H", 190, "V", 230, "H", 150, "Z");
        }
        double from = 128;
        s.toolBox(from, 140, 220, 60);
        s.toolBox(from + 220, 156, 80, 28);
        s.datumFace(122, 200, 148, 200);
        s.uprightOff(100, 140, 200, 128);
        s.symbol(86, 176, END);
        s.tool(330, 110, START, 316, 141);
        s.datum(200, 280, START, 136, 203);
        s.note(silencer ? "silencer, its inner pipe" : "case cover", 200, 90, START);
    }
}
