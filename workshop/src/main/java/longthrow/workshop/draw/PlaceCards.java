package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the air the engine is to run in. */
final class PlaceCards {
    private PlaceCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.AIR_PRESSURE,
                        "no air at all",
                        PlaceCards::barometer,
                        "The weather report's figure: it is reduced to sea level and too high by some 1.2 kPa for"
                                + " every 100 m.",
                        "Barometer at the place, beside the engine; its correction for height off, or set to nought.",
                        "Tap it or wait until it stands still, then read."),
                card(
                        Term.AIR_TEMPERATURE,
                        "air before the intake",
                        PlaceCards::thermometer,
                        "In the sun, or behind the warm cylinder.",
                        "Probe in the shade, a hand's breadth before the intake, engine cold.",
                        "Wait until it moves no more."),
                card(
                        Term.HUMIDITY,
                        "air before the intake",
                        PlaceCards::hygrometer,
                        "Read at once after it was carried from a warm room or a car: it takes minutes.",
                        "In the shade, beside the thermometer: both speak of the same air.",
                        "Left for five minutes with air moving past it."),
                card(
                        Term.JETTED_PRESSURE,
                        "no air at all",
                        PlaceCards::barometer,
                        "The weather report's figure: it is reduced to sea level and too high by some 1.2 kPa for"
                                + " every 100 m.",
                        "Barometer where the engine ran well with this jet, on that day.",
                        "Written down there; it cannot be read afterwards."),
                card(
                        Term.JETTED_TEMPERATURE,
                        "air before the intake",
                        PlaceCards::thermometer,
                        "In the sun, or behind the warm cylinder.",
                        "Probe in the shade, where the engine ran well with this jet.",
                        "On the same day as the pressure."),
                card(
                        Term.JETTED_HUMIDITY,
                        "air before the intake",
                        PlaceCards::hygrometer,
                        "Read at once after it was carried from a warm room or a car: it takes minutes.",
                        "In the shade, where the engine ran well with this jet.",
                        "On the same day as the pressure."));
    }

    /** Engine on its bench, its intake to the left. */
    private static void engine(CardSketch s) {
        s.partBox(60, 262, 240, 12);
        s.partBox(120, 180, 100, 82);
        s.partBox(136, 110, 68, 70);
        for (int fin = 0; fin < 4; fin++) {
            s.partBox(126, 118 + fin * 16, 88, 6);
        }
        s.partBox(96, 120, 40, 22);
        s.partBox(82, 112, 14, 38);
    }

    private static void barometer(CardSketch s) {
        engine(s);
        s.toolRound(370, 190, 44);
        s.holeRound(370, 190, 36);
        for (int tick = 0; tick < 9; tick++) {
            double a = Math.toRadians(150 + tick * 30);
            double c = Math.cos(a);
            double i = Math.sin(a);
            s.toolLine(1.2, "M", 370 + 28 * c, 190 + 28 * i, "L", 370 + 35 * c, 190 + 35 * i);
        }
        s.datumPointer(370 + 35 * Math.cos(Math.toRadians(150)), 190 + 35 * Math.sin(Math.toRadians(150)));
        s.lit("M", 370, 190, "L", 388, 168);
        s.symbol(370, 216, MIDDLE);
        s.tool(330, 280, START, 372, 233);
        s.datum(250, 90, START, 338, 200);
        s.note("at the place, beside the engine", 20, 80, START);
    }

    private static void thermometer(CardSketch s) {
        engine(s);
        s.thermometer(44, 110, 260, 44);
        s.spot(44, 110, 6);
        s.datumAxis(24, 96, 24, 140);
        s.tool(370, 120, START, 340, 83);
        s.datum(40, 64, START, 26, 100);
        s.note("in the shade", 20, 200, START);
    }

    private static void hygrometer(CardSketch s) {
        engine(s);
        s.toolBox(12, 170, 62, 76);
        s.hole(Sketch.box(20, 180, 46, 26));
        s.symbol(43, 198, MIDDLE);
        s.lit("M", 20, 226, "H", 52);
        s.head(60, 226, 1, 0);
        s.datumAxis(52, 118, 52, 150);
        s.tool(250, 160, START, 73, 190);
        s.datum(130, 66, START, 54, 124);
        s.note("air moving past it", 310, 250, START);
    }
}
