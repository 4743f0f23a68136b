package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the rod bolts: thread, grip, torque, and how often they were tightened. */
final class RodBoltCards {
    private RodBoltCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.ROD_BOLT_DIAMETER,
                        "opposite side of the thread",
                        RodBoltCards::bolt,
                        "Over the shank, which may be thicker or thinner than the thread; a stretched thread is thinner in one place.",
                        "Clean the thread.",
                        "Jaws over the crests, three places along it: one thinner than the others ends the bolt."),
                card(
                        Term.ROD_BOLT_PITCH,
                        "first crest",
                        RodBoltCards::bolt,
                        "Eleven crests taken for ten pitches; inch threads are given as so many to the inch.",
                        "Count ten pitches along the thread: from one crest to the tenth after it.",
                        "Measure over them, divide by ten; a short thread: as many as there are."),
                card(
                        Term.ROD_BOLT_GRIP,
                        "face under the head",
                        RodBoltCards::bolt,
                        "The whole bolt measured: only what is stretched counts, from the head to the first thread that holds.",
                        "Lay the bolt beside rod and cap as it goes in.",
                        "From the face under its head to the first thread that the nut or the rod holds."),
                card(
                        Term.ROD_BOLT_ENGAGEMENT,
                        "first full thread that holds",
                        RodBoltCards::bolt,
                        "The whole depth of the hole taken: the chamfer, the run-out and threads that the bolt does not reach hold nothing.",
                        "Screw the bolt in as it sits, count its turns from the first bite to the stop.",
                        "Turns times pitch, less one pitch for the chamfer; a nut: its height less both chamfers."),
                card(
                                Term.ROD_BOLT_TORQUE,
                                "click of the wrench",
                                RodBoltCards::torque,
                                "Another lubricant than the torque is meant for: the same torque then makes another tension.",
                                "Thread and head face clean, and with the lubricant you write down.",
                                "Both bolts by turns in two or three steps, the last pull slow and once.",
                                "Write down what the wrench was set to. The maker's figure for his bolt goes before any other.")
                        .cautioned("Locks and bolts meant for one use are not used again."),
                card(
                        Term.ROD_BOLT_USES,
                        "new bolts: none",
                        RodBoltCards::uses,
                        "Trial tightenings for the strip or the bore gauge forgotten: they count too.",
                        "Count every time these bolts were brought to their torque, this time too.",
                        "Not known? Leave it unknown, and think of new ones."));
    }

    /** A bolt lying, head left. */
    private static void bolt(CardSketch s) {
        s.partBox(50, 132, 30, 64);
        s.quiet("M", 50, 150, "H", 80, "M", 50, 178, "H", 80);
        s.partBox(80, 148, 150, 32);
        s.part("M", 230, 146, "H", 344, "L", 350, 152, "V", 176, "L", 344, 182, "H", 230, "Z");
        for (double x = 234; x < 344; x += 9) {
            s.quiet("M", x, 182, "L", x + 5, 146);
        }
        s.axis(36, 164, 366, 164);
        s.note("head", 65, 222, MIDDLE);
        s.note("thread", 286, 222, MIDDLE);
        switch (s.term()) {
            case ROD_BOLT_DIAMETER -> {
                s.caliper(true, 146, 182, 300, 396, false);
                s.datumFace(232, 146, 342, 146);
                s.uprightOff(206, 146, 182, 230);
                s.symbol(196, 140, END);
                s.datum(160, 84, START, 270, 146);
                s.tool(330, 276, START, 402, 236);
            }
            case ROD_BOLT_PITCH -> {
                s.caliper(false, 239, 329, 144, 76, false);
                s.datumAxis(239, 118, 239, 206);
                s.levelOff(248, 257, 244, 184);
                s.symbol(284, 252, START);
                s.datum(60, 110, START, 239, 122);
                s.tool(400, 120, START, 374, 70);
                s.note("over ten, divided by ten", 330, 270, START);
            }
            case ROD_BOLT_ENGAGEMENT -> {
                s.part("M", 254, 110, "H", 332, "V", 146, "H", 254, "Z");
                s.caliper(false, 254, 332, 186, 246, false);
                s.datumFace(254, 144, 254, 112);
                s.levelOff(254, 332, 92, 110);
                s.symbol(293, 84, MIDDLE);
                s.datum(60, 66, START, 252, 124);
                s.tool(400, 290, END, 300, 260);
                s.note("rod or nut", 293, 132, MIDDLE);
            }
            default -> {
                s.part("M", 80, 110, "H", 150, "V", 146, "H", 80, "Z");
                s.part("M", 150, 110, "H", 248, "V", 146, "H", 150, "Z");
                s.caliper(false, 80, 248, 186, 246, false);
                s.datumFace(80, 134, 80, 194);
                s.levelOff(80, 248, 92, 110);
                s.symbol(164, 84, MIDDLE);
                s.datum(10, 66, START, 80, 140);
                s.tool(360, 276, START, 296, 260);
                s.note("cap", 115, 132, MIDDLE);
                s.note("rod", 196, 132, MIDDLE);
                s.note("first thread that holds", 300, 100, START);
                s.quiet("M", 296, 104, "L", 250, 144);
            }
        }
    }

    private static void torque(CardSketch s) {
        s.part("M", 122, 76, "L", 126, 40, "H", 154, "L", 158, 76, "Z");
        s.partRound(140, 124, 56);
        s.partBox(66, 92, 30, 66);
        s.partBox(184, 92, 30, 66);
        s.holeRound(140, 124, 34);
        s.quiet("M", 66, 124, "H", 106, "M", 174, 124, "H", 214);
        s.partBox(68, 158, 26, 16);
        s.partBox(186, 158, 26, 16);
        s.toolBox(188, 168, 22, 44);
        s.torqueWrench(199, 222, 220);
        s.lit("M", 430, 212, "C", 440, 190, 440, 180, 436, 160);
        s.head(433, 153, -0.4, -1);
        s.symbol(450, 192, START);
        s.datum(250, 284, START, 322, 214);
        s.datumPointer(322, 210);
        s.tool(270, 184, START, 270, 220);
        s.note("rod bolt", 232, 104, START);
        s.quiet("M", 240, 110, "L", 206, 164);
        s.note("pulled slowly, once", 300, 140, START);
        s.note("socket", 168, 210, END);
    }

    private static void uses(CardSketch s) {
        s.partBox(60, 110, 26, 60);
        s.partBox(86, 126, 120, 28);
        for (double x = 148; x < 204; x += 9) {
            s.quiet("M", x, 154, "L", x + 5, 126);
        }
        s.quiet(Sketch.box(260, 90, 180, 100));
        for (int stroke = 0; stroke < 3; stroke++) {
            s.toolLine(4, "M", 290 + stroke * 24, 120, "V", 164);
        }
        s.lit("M", 362, 120, "V", 164);
        s.datumZero(276, 168);
        s.datum(180, 250, START, 276, 164);
        s.tool(290, 66, START, 314, 120);
        s.symbol(380, 150, START);
        s.note("this time", 366, 212, MIDDLE);
        s.quiet("M", 362, 200, "V", 170);
        s.note("rod bolt", 130, 196, MIDDLE);
        s.note("a stroke for every time at full torque", 330, 284, START);
    }
}
