package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of plates that hold an engine down. */
final class RestrictorCards {
    private RestrictorCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                of(Term.INTAKE_RESTRICTOR, "Carburettor off, plate clean; look whether its edge is square or rounded."),
                of(
                        Term.EXHAUST_RESTRICTOR,
                        "Pipe off, plate free of carbon; look whether its edge is square or rounded."));
    }

    private static ReadingCard of(Term term, String first) {
        return card(
                term,
                "opposite side of the hole",
                RestrictorCards::plate,
                "The countersink read instead of the hole behind it, or a hole that was filed out of round.",
                first,
                "Largest plug gauge, or shank of a new drill, that enters by its own weight.",
                "Say the edge beside it: a square one lets a third less through than a round one.");
    }

    /** Two flanges with the plate between them, and the gauge in its hole. */
    private static void plate(CardSketch s) {
        boolean intake = s.is(Term.INTAKE_RESTRICTOR);
        s.part("M", 40, 96, "H", 150, "V", 60, "H", 170, "V", 116, "H", 40, "Z");
        s.part("M", 40, 244, "H", 150, "V", 280, "H", 170, "V", 224, "H", 40, "Z");
        s.part("M", 176, 60, "H", 188, "V", 140, "H", 176, "Z");
        s.part("M", 176, 200, "H", 188, "V", 280, "H", 176, "Z");
        s.axis(30, 170, 450, 170);
        s.toolBox(160, 140, 190, 60);
        s.toolBox(350, 156, 70, 28);
        s.datumFace(176, 200, 188, 200);
        s.uprightOff(130, 140, 200, 160);
        s.symbol(118, 164, END);
        s.tool(330, 108, START, 316, 141);
        s.datum(210, 292, START, 184, 203);
        s.note(intake ? "runner" : "port of the head", 40, 84, START);
        s.note("plate, the other side's flange off", 200, 76, START);
    }
}
