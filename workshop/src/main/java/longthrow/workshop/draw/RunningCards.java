package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the engine at work: speeds and temperatures. */
final class RunningCards {
    private static final String HOT =
            "Engine runs and is hot: clothes, hair and leads clear of wheel and shaft, exhaust led outside, no bare hand on the barrel.";

    private RunningCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                ShaftCards.speed(
                        Term.IDLE_SPEED, "Warm, at its stop and without load: read the lowest speed it is let run at."),
                ShaftCards.speed(
                        Term.MOUNT_SPEED,
                        "Engine on its own mount: raise the speed slowly; read where mount and tank shake most."),
                heat(
                        Term.OIL_TEMPERATURE,
                        "oil in the case",
                        RunningCards::oil,
                        "Read after it has stood: the case goes on taking heat from the oil.",
                        "A quarter of an hour at the work it will do; stop.",
                        "Probe through the filler into the oil, clear of the walls; wait until it rises no more."),
                heat(
                                Term.PISTON_TEMPERATURE,
                                "underside of the crown, inside the skirt",
                                RunningCards::piston,
                                "The crown taken for the skirt, or read minutes later: it lies between barrel and crown and is gone in a minute.",
                                "At work heat stop, spark off; probe up to the inside of the skirt, by an opening of the case, at once.",
                                "No way in: assume it, from the barrel upwards, with a wide doubt.")
                        .cautioned("Spark lead earthed and fuel off before anything is opened; hot oil scalds."),
                heat(
                                Term.ROD_TEMPERATURE,
                                "beam of the rod, midway between its bores",
                                RunningCards::rod,
                                "The oil taken for the rod: the beam lies between oil and piston, and aluminium loses strength from 100 °C on.",
                                "Temperature paint or a strip that changes for good, two or three steps, on the clean beam; a quarter of an hour at work.",
                                "No paint at hand: assume it, from the oil upwards, with a wide doubt.")
                        .cautioned("Spark lead earthed and fuel off before anything is opened; hot oil scalds."),
                heat(
                        Term.CYLINDER_TEMPERATURE,
                        "wall of the barrel",
                        RunningCards::barrel,
                        "At the tip of a fin or under the plug: the mean of the barrel is meant.",
                        "Engine at the work it will do for a quarter of an hour, shroud on.",
                        "Probe between the fins on the barrel: top, middle, bottom, cooled side and the other; the mean."));
    }

    private static ReadingCard heat(Term term, String datum, ReadingCard.Scene scene, String mistake, String... steps) {
        return card(term, datum, scene, mistake, steps).cautioned(HOT);
    }

    /** The engine cut through: fins, piston, oil in the case. */
    private static void engine(CardSketch s) {
        for (int fin = 0; fin < 5; fin++) {
            s.partBox(92, 66 + fin * 20, 136, 6);
        }
        s.partBox(108, 50, 22, 118);
        s.partBox(190, 50, 22, 118);
        s.hole(Sketch.box(130, 58, 60, 112));
        s.partBox(92, 40, 136, 18);
        s.part(
                "M", 70, 168, "H", 130, "V", 184, "H", 90, "V", 268, "H", 230, "V", 184, "H", 190, "V", 168, "H", 250,
                "V", 284, "H", 70, "Z");
        s.part("M", 132, 92, "H", 188, "V", 150, "H", 180, "V", 106, "H", 140, "V", 150, "H", 132, "Z");
        s.quiet("M", 90, 240, "H", 230);
        s.quiet("M", 98, 246, "H", 140, "M", 160, 250, "H", 222, "M", 104, 258, "H", 190);
    }

    private static void spot(CardSketch s, double x, double y) {
        s.svg()
                .add(
                        "path",
                        "class",
                        "datum",
                        "d",
                        Svg.path(Sketch.round(x, y, 8)),
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "2.4",
                        "fill",
                        "none");
    }

    private static void oil(CardSketch s) {
        engine(s);
        s.thermometer(206, 254, 340, 120);
        spot(s, 206, 254);
        s.tool(350, 100, START, 380, 121);
        s.datum(270, 262, START, 214, 256);
        s.note("filler", 262, 176, START);
        s.note("oil", 12, 262, START);
        s.quiet("M", 34, 258, "L", 96, 252);
    }

    private static void piston(CardSketch s) {
        engine(s);
        s.thermometer(176, 138, 340, 216);
        spot(s, 176, 138);
        s.tool(350, 204, START, 380, 217);
        s.datum(270, 60, START, 183, 132);
        s.note("by an opening of the case", 270, 290, START);
        s.note("piston", 60, 130, END);
        s.quiet("M", 62, 126, "L", 134, 130);
    }

    private static void rod(CardSketch s) {
        engine(s);
        s.part("M", 154, 138, "H", 166, "L", 170, 206, "H", 150, "Z");
        s.part("M", 144, 206, "H", 176, "V", 228, "H", 144, "Z");
        s.thermometer(166, 176, 340, 216);
        spot(s, 162, 176);
        s.tool(350, 204, START, 380, 217);
        s.datum(270, 60, START, 168, 170);
        s.note("paint on the beam", 270, 290, START);
        s.note("rod", 60, 130, END);
        s.quiet("M", 62, 126, "L", 154, 160);
    }

    private static void barrel(CardSketch s) {
        engine(s);
        s.thermometer(212, 120, 340, 120);
        spot(s, 212, 120);
        spot(s, 212, 79);
        spot(s, 212, 158);
        s.tool(350, 196, START, 380, 161);
        s.datum(270, 60, START, 218, 74);
        s.note("top, middle, bottom, both sides: the mean", 300, 240, START);
        s.quiet("M", 300, 226, "L", 220, 164);
        s.note("fins", 60, 80, END);
        s.quiet("M", 62, 76, "L", 92, 70);
    }
}
