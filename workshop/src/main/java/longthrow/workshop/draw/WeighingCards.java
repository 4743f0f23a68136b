package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Parts weighed for what they move: valves, springs, rocker, pushrod, lifter, and the whole engine. */
final class WeighingCards {
    private WeighingCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                                Term.ENGINE_MASS,
                                "empty scale at zero",
                                WeighingCards::onScale,
                                "Weighed without oil, tank, exhaust or what else hangs on it when it runs.",
                                "All on it that hangs on it at work: oil, exhaust, carburettor, shroud.",
                                "Scale set to zero empty; set the engine on it; too heavy for one scale: two, and the sum.")
                        .cautioned("Lift with two people or a hoist; block it, it tips."),
                part(
                        Term.LIFTER_MASS,
                        "A lifter from another engine taken because this one is still in its bore.",
                        "One lifter, clean and dry, with its pin and roller if it has one."),
                part(
                        Term.INTAKE_MASS,
                        "Retainer and locks weighed with it: they stand under the spring.",
                        "Bare valve, carbon off, oil seal off."),
                part(
                        Term.EXHAUST_MASS,
                        "Retainer, locks or rotator weighed with it: they stand under the spring.",
                        "Bare valve, carbon off."),
                part(
                        Term.SPRING_MASS,
                        "The inner spring or the damper forgotten, or one of two weighed.",
                        "All springs of one valve, clean and dry."),
                part(
                        Term.RETAINER_MASS,
                        "One lock forgotten, or the lash cap.",
                        "Retainer, both locks and lash cap of one valve."),
                card(
                        Term.ROCKER_MASS,
                        "empty scale at zero",
                        WeighingCards::onScale,
                        "The whole rocker entered: what is near the pivot hardly moves.",
                        "Weigh the whole rocker with its adjuster.",
                        "An even bar with like arms: one third of it. A heavy tip or adjuster makes it more: state a wide doubt.",
                        "Surer: its inertia by swinging, divided by the square of the valve arm."),
                part(Term.PUSHROD_MASS, "Weighed with oil in its tube.", "One pushrod with both ends, drained."));
    }

    private static ReadingCard part(Term term, String mistake, String what) {
        return card(
                term,
                "empty scale at zero",
                WeighingCards::onScale,
                mistake,
                what,
                "Scale level and out of the draught, set to zero empty.",
                "Weigh, take off, check zero; light parts: weigh several alike and divide.");
    }

    private static void onScale(CardSketch s) {
        switch (s.term()) {
            case ENGINE_MASS -> {
                for (int fin = 0; fin < 4; fin++) {
                    s.partBox(150, 84 + fin * 14, 76, 7);
                }
                s.partBox(160, 70, 56, 70);
                s.part("M", 130, 190, "V", 150, "Q", 130, 138, 142, 138, "H", 250, "V", 190, "Z");
                s.partBox(226, 92, 34, 20);
                s.partRound(190, 164, 12);
            }
            case LIFTER_MASS ->
                s.part("M", 160, 190, "V", 178, "H", 182, "V", 112, "H", 198, "V", 178, "H", 220, "V", 190, "Z");
            case INTAKE_MASS, EXHAUST_MASS ->
                s.part(
                        "M", 150, 190, "V", 184, "L", 162, 176, "C", 184, 172, 186, 160, 186, 148, "V", 76, "H", 194,
                        "V", 148, "C", 194, 160, 196, 172, 218, 176, "L", 230, 184, "V", 190, "Z");
            case SPRING_MASS -> {
                for (int turn = 0; turn < 5; turn++) {
                    double y = 90 + turn * 20;
                    s.part("M", 150, y + 10, "L", 230, y, "V", y + 10, "L", 150, y + 20, "Z");
                }
            }
            case RETAINER_MASS -> {
                s.part(
                        "M", 140, 190, "V", 178, "H", 162, "L", 170, 164, "H", 210, "L", 218, 178, "H", 240, "V", 190,
                        "Z");
                s.part("M", 262, 190, "L", 258, 166, "Q", 268, 160, 272, 166, "V", 190, "Z");
                s.part("M", 292, 190, "L", 296, 166, "Q", 286, 160, 282, 166, "V", 190, "Z");
            }
            case ROCKER_MASS -> {
                s.part(
                        "M", 92, 160, "C", 130, 132, 160, 124, 190, 126, "C", 230, 128, 270, 150, 292, 178, "L", 276,
                        190, "C", 250, 168, 226, 162, 190, 164, "C", 160, 164, 130, 168, 100, 184, "Z");
                s.holeRound(190, 146, 11);
                s.partBox(180, 166, 20, 24);
            }
            default -> {
                s.partBox(100, 174, 180, 12);
                s.partRound(100, 180, 10);
                s.partRound(280, 180, 10);
            }
        }
        s.scale(190, 190, 110);
        s.datumZero(128, 236);
        s.symbol(190, 227, MIDDLE);
        s.tool(330, 222, START, 276, 222);
        s.datum(20, 272, START, 128, 230);
        String what = switch (s.term()) {
            case ENGINE_MASS -> "whole engine, oil in";
            case LIFTER_MASS -> "one lifter";
            case INTAKE_MASS -> "bare intake valve";
            case EXHAUST_MASS -> "bare exhaust valve";
            case SPRING_MASS -> "springs of one valve";
            case RETAINER_MASS -> "retainer and both locks";
            case ROCKER_MASS -> "rocker: a third of it, about";
            default -> "one pushrod with its ends";
        };
        s.note(what, 330, 120, START);
    }
}
