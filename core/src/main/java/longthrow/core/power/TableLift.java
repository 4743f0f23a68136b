package longthrow.core.power;

import longthrow.core.cycle.ValveLift;

/**
 * How one valve is lifted as its lift table has it, and where that stands on the crank: by the events, which are figures with their doubt. The table gives the shape; moved events stretch it, a moved full lift raises it.
 * @param shape of the table, its angles with a zero of its own
 */
record TableLift(longthrow.core.measure.ValveLift shape) {
    /**
     * Where the shape passes a lift on the way up and down [rad of its own].
     * @throws IllegalArgumentException where it does not come down to it on both sides
     */
    private double[] crossings(double lift) {
        double peak = shape.peakAngle();
        if (shape.places().size() < 2
                || !(shape.at(peak) > lift)
                || !(shape.at(shape.first()) <= lift)
                || !(shape.at(shape.last()) <= lift)) {
            throw new IllegalArgumentException("the table does not come down to the checking lift on both sides");
        }
        return new double[] {crossing(shape.first(), peak, lift), crossing(shape.last(), peak, lift)};
    }

    private double crossing(double below, double above, double lift) {
        double low = below;
        double high = above;
        for (int n = 0; n < 60; n++) {
            double middle = 0.5 * (low + high);
            if (shape.at(middle) > lift) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /**
     * Over two turns, its events where they are said to be.
     * @param full     lift of the valve [m]
     * @param checking lift at which the events are told [m]
     * @param duration between them [rad]
     * @param centre   angle from firing top dead centre half-way between them [rad]
     * @throws IllegalArgumentException where the table does not come down to the checking lift on both sides, or does not shut the valve
     */
    ValveLift at(double full, double checking, double duration, double centre) {
        double higher = full / shape.full().value();
        double[] cross = crossings(checking / higher);
        double longer = duration / (cross[1] - cross[0]);
        double middle = 0.5 * (cross[0] + cross[1]);
        return ValveLift.read(
                x -> higher * shape.at(middle + x / longer),
                x -> higher / longer * shape.slope(middle + x / longer),
                longer * (shape.first() - middle),
                longer * (shape.last() - middle),
                -centre);
    }
}
