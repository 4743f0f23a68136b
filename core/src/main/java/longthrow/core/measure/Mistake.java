package longthrow.core.measure;

/**
 * The trade's usual mistakes, each known by the size of the error it leaves. The weights say how often one meets each, against the others;
 * a judgement, common practice, no source.
 */
enum Mistake {
    RADIUS_LEFT_OUT(
            "radius_left_out",
            1,
            "the radius of the bore or pin was left out: an edge was taken for a centre",
            "measure to the centre, or write the edge reading under its own name"),
    RADIUS_TWICE(
            "radius_twice",
            1,
            "the radius of the bore or pin was added twice",
            "write down the bare reading and let the sum be done here"),
    STROKE_FOR_THROW(
            "stroke_for_throw", 1, "stroke and half stroke were mixed up", "measure the full travel of the piston"),
    RADIUS_FOR_DIAMETER("radius_for_diameter", 1, "radius and diameter were mixed up", "measure straight across"),
    DEPTH_SIGN(
            "depth_sign",
            1,
            "the sign is turned round: below the deck and dish are positive, proud and dome negative",
            "look which way it stands"),
    INCH_FOR_MILLIMETRE(
            "inch_for_millimetre", 1, "inches and millimetres were mixed up", "read the unit on the instrument"),
    DROPPED_DIGIT("dropped_digit", 1, "a digit is missing", "read it again, aloud, and write every digit"),
    DECIMAL_POINT(
            "decimal_point",
            1,
            "the decimal point is in the wrong place",
            "read it again and look at the decimal point"),
    DIGITS_SWAPPED("digits_swapped", 1, "two digits changed places", "read it again, aloud, one digit after the other"),
    MISREAD_DIGIT("misread_digit", 3, "one digit is wrong", "read it again, aloud, one digit after the other"),
    GASKET_FORGOTTEN(
            "gasket_forgotten",
            1,
            "the gasket was forgotten, or counted where it should not be",
            "read it again with the used gasket in place"),
    GASKET_UNCRUSHED(
            "gasket_uncrushed",
            1,
            "the gasket was measured new, before it was crushed",
            "measure a used one of the same make in three places"),
    THIMBLE_TURN(
            "thimble_turn",
            1,
            "one turn of the micrometer thimble was miscounted",
            "check the size with a caliper first"),
    ONE_SIDE_OF_DECK(
            "one_side_of_deck",
            1,
            "it was measured at one side of a deck that is not square",
            "measure both sides of the pin axis"),
    DISH_FLOOR(
            "dish_floor",
            1,
            "the crown was measured at the floor of its dish instead of at the rim",
            "set the gauge on the rim of the crown"),
    OTHER(
            "other",
            0.5,
            "something else is wrong with it",
            "read it again from the start, with another instrument if there is one");

    private final String key;
    private final double weight;
    private final String label;
    private final String mend;

    Mistake(String key, double weight, String label, String mend) {
        this.key = key;
        this.weight = weight;
        this.label = label;
        this.mend = mend;
    }

    String key() {
        return key;
    }

    /** Relative to the others, &gt; 0. */
    double weight() {
        return weight;
    }

    /** What happened, in words. */
    String label() {
        return label;
    }

    /** What to do first. */
    String mend() {
        return mend;
    }
}
