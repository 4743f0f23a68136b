package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the flywheel's rim, of how it sits on its taper, and of its nut. */
final class FlywheelCards {
    private FlywheelCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.RIM_INSIDE,
                        "opposite side of the rim",
                        FlywheelCards::rim,
                        "Measured over a boss or a magnet that stands inside the rim.",
                        "Tape across the inside of the rim, past the hub, through the middle of the shaft.",
                        "Swing one end for the largest figure; two directions."),
                card(
                                Term.TAPER_LENGTH,
                                "small end of the blued band",
                                FlywheelCards::taper,
                                "The whole taper measured: where no blue has gone over, nothing touches; patches are no band.",
                                "Both tapers clean and dry; marking blue thinly on the shaft, wheel pressed on without its key, off again.",
                                "Caliper along the shaft over the band that has rubbed; leave out gaps.")
                        .cautioned("A fit that touches only in patches or at one end slips: lap it or leave it."),
                card(
                                Term.FLYWHEEL_NUT_TORQUE,
                                "click of the wrench",
                                FlywheelCards::nut,
                                "Wheel held by a fin or a blade, oil on the taper, or an impact wrench.",
                                "Taper dry and clean; thread and face of the nut as you write down.",
                                "Hold the wheel by its hub, never by a fin; pull slowly, once.",
                                "Write down what the wrench was set to.")
                        .cautioned("Lead off the plug. A wheel that comes loose shears its key at speed."),
                card(
                        Term.FLYWHEEL_NUT_THREAD,
                        "opposite side of the thread",
                        FlywheelCards::thread,
                        "Read on the first crests, which are chamfered or bruised.",
                        "Clean the thread.",
                        "Jaws over the crests, where the nut sits."));
    }

    private static void rim(CardSketch s) {
        s.partRound(170, 166, 112);
        s.holeRound(170, 166, 86);
        for (int spoke = 0; spoke < 3; spoke++) {
            double a = Math.PI / 6 + spoke * 2 * Math.PI / 3;
            double ux = Math.cos(a);
            double uy = Math.sin(a);
            s.part(
                    "M",
                    170 + 20 * ux - 7 * uy,
                    166 + 20 * uy + 7 * ux,
                    "L",
                    170 + 88 * ux - 7 * uy,
                    166 + 88 * uy + 7 * ux,
                    "L",
                    170 + 88 * ux + 7 * uy,
                    166 + 88 * uy - 7 * ux,
                    "L",
                    170 + 20 * ux + 7 * uy,
                    166 + 20 * uy - 7 * ux,
                    "Z");
        }
        s.partRound(170, 166, 26);
        s.holeRound(170, 166, 11);
        s.tool("M", 84, 160, "H", 256, "V", 172, "H", 84, "Z");
        for (double x = 92; x < 252; x += 8) {
            s.toolLine(1, "M", x, 160, "v", 6);
        }
        s.datumArc(170, 166, 86, 150, 210, false);
        s.levelOff(84, 256, 118, 160);
        s.symbol(170, 112, MIDDLE);
        s.datum(320, 90, START, 94, 126);
        s.tool(320, 200, START, 246, 166);
        s.note("rim", 300, 268, START);
        s.quiet("M", 296, 264, "L", 242, 236);
    }

    private static void taper(CardSketch s) {
        s.part(
                "M", 40, 96, "H", 100, "V", 118, "L", 286, 142, "H", 350, "V", 190, "H", 286, "L", 100, 214, "V", 236,
                "H", 40, "Z");
        s.hole(Sketch.box(170, 159, 80, 14));
        s.axis(30, 166, 164, 166);
        s.axis(256, 166, 364, 166);
        // the band that has rubbed
        s.doubt(130, 141, 134, 16);
        s.doubt(130, 175, 134, 16);
        s.caliper(false, 130, 264, 190, 258, false);
        s.datumAxis(264, 112, 264, 222);
        s.axis(130, 108, 130, 222);
        s.level(130, 264, 96);
        s.symbol(197, 88, MIDDLE);
        s.datum(300, 96, START, 264, 116);
        s.tool(350, 250, START, 306, 268);
        s.note("blue rubbed off on the wheel", 344, 214, START);
        s.quiet("M", 324, 208, "L", 252, 186);
        s.note("key", 210, 171, MIDDLE);
    }

    private static void nut(CardSketch s) {
        s.partRound(150, 160, 100);
        s.quietRound(150, 160, 84);
        s.partRound(150, 160, 44);
        s.part("M", 150, 132, "L", 174, 146, "V", 174, "L", 150, 188, "L", 126, 174, "V", 146, "Z");
        s.torqueWrench(150, 160, 290);
        s.datumPointer(346, 148);
        s.lit("M", 446, 176, "C", 452, 196, 450, 212, 440, 230);
        s.head(436, 237, -0.5, 0.9);
        s.symbol(400, 226, START);
        s.datum(290, 84, START, 346, 142);
        s.tool(270, 214, START, 290, 166);
        s.note("nut under the socket", 12, 284, START);
        s.quiet("M", 90, 272, "L", 142, 182);
        s.note("hold the wheel by its hub, not by a fin", 300, 272, START);
    }

    private static void thread(CardSketch s) {
        s.part("M", 40, 90, "H", 90, "V", 112, "L", 210, 130, "V", 190, "L", 90, 208, "V", 230, "H", 40, "Z");
        s.part("M", 210, 138, "H", 316, "L", 322, 144, "V", 176, "L", 316, 182, "H", 210, "Z");
        for (double x = 214; x < 314; x += 10) {
            s.quiet("M", x, 182, "L", x + 6, 138);
        }
        s.axis(30, 160, 340, 160);
        s.caliper(true, 138, 182, 270, 372, false);
        s.datumFace(212, 138, 312, 138);
        s.upright(238, 138, 182);
        s.symbol(262, 222, START);
        s.quiet("M", 240, 178, "L", 262, 210);
        s.datum(150, 76, START, 240, 138);
        s.tool(400, 262, START, 384, 226);
        s.note("flywheel end of the crankshaft: taper, then thread", 40, 266, START);
    }
}
