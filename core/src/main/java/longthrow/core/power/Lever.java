package longthrow.core.power;

import java.util.Locale;

/** What can keep torque down and what an owner could do something about, each with a step that is small enough for a straight line. */
enum Lever {
    INTAKE_FLOW(Needed.INTAKE_FLOW, Step.AREA, "intake valve and port", "a tenth more flow"),
    EXHAUST_FLOW(Needed.EXHAUST_FLOW, Step.AREA, "exhaust valve and port", "a tenth more flow"),
    VENTURI(Needed.VENTURI, Step.DIAMETER, "venturi", "a tenth more area"),
    THROTTLE(Needed.THROTTLE, Step.DIAMETER, "open throttle", "a tenth more area past plate and shaft"),
    FILTER(Needed.FILTER, Step.DIAMETER, "air filter", "a tenth more area"),
    INTAKE_RESTRICTOR(
            Needed.INTAKE_RESTRICTOR, Step.DIAMETER, "restrictor plate under the carburettor", "a tenth more area"),
    INTAKE_BORE(Needed.INTAKE_BORE, Step.DIAMETER, "way between carburettor and port", "a tenth more area"),
    EXHAUST_RESTRICTOR(
            Needed.EXHAUST_RESTRICTOR, Step.DIAMETER, "restrictor plate at the exhaust port", "a tenth more area"),
    PRIMARY_BORE(Needed.PRIMARY_BORE, Step.DIAMETER, "exhaust pipe", "a tenth more area"),
    SILENCER(Needed.SILENCER_HOLE, Step.DIAMETER, "silencer", "a tenth more area of its way out"),
    FRICTION(Needed.FRICTION, Step.LESS, "friction", "a tenth less"),
    EARLIER(Needed.SPARK, Step.EARLIER, "earlier spark", "by 3°"),
    LATER(Needed.SPARK, Step.LATER, "later spark", "by 3°");

    private enum Step {
        AREA,
        DIAMETER,
        LESS,
        EARLIER,
        LATER
    }

    /** Below it nothing is worth a word: half of it is within what cycles may differ to be alike. */
    static final double WORTH_A_WORD = 0.01;

    private static final double TENTH = 0.1;
    private static final double SPARK_STEP = Math.toRadians(3);

    private final Needed needed;
    private final Step step;
    private final String what;
    private final String change;

    Lever(Needed needed, Step step, String what, String change) {
        this.needed = needed;
        this.step = step;
        this.what = what;
        this.change = change;
    }

    Needed needed() {
        return needed;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What keeps torque down. */
    String what() {
        return what;
    }

    /** The step, in words. */
    String change() {
        return change;
    }

    /** What the figure becomes. */
    double moved(double value) {
        return switch (step) {
            case AREA -> value * (1 + TENTH);
            case DIAMETER -> value * Math.sqrt(1 + TENTH);
            case LESS -> value * (1 - TENTH);
            case EARLIER -> value + SPARK_STEP;
            case LATER -> value - SPARK_STEP;
        };
    }
}
