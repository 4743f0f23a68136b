package longthrow.core.measurement;

/**
 * One independent elementary cause of error. Figures that share a source share its error: it cancels in their difference and adds in
 * their sum. Two sources are the same when their ids are.
 * @param id                  unique in a build, for example {@code piston.pin_diameter#1 scatter}
 * @param kind                what sort of cause
 * @param label               for people: whose doubt this is
 * @param standardUncertainty of the reading it acts on [unit of that reading], &ge; 0
 * @param degreesOfFreedom    &gt; 0, infinite when known
 * @param forWeights          standard uncertainty used to weigh readings against each other, &ge; 0: the pooled one, because a scatter
 *                            seen in three readings is too uncertain to weigh by
 * @param ensemble            empty, or the name shared by sources whose size was judged from the same few readings: they are uncorrelated,
 *                            but their degrees of freedom count once for all of them together (see {@link SimultaneousReadings})
 */
public record Source(
        String id,
        Kind kind,
        String label,
        double standardUncertainty,
        double degreesOfFreedom,
        double forWeights,
        String ensemble) {

    /** Sorts of cause. */
    public enum Kind {
        /** Scatter of repeated readings, or the pooled repeatability standing in for it (Type A). */
        SCATTER(false),
        /** Step of the scale (rectangular, Type B). */
        RESOLUTION(true),
        /** Stated error of the instrument, shared by all its readings (Type B). */
        INSTRUMENT(false),
        /** Temperature or expansion coefficient (Type B). */
        TEMPERATURE(false),
        /** A typed plus-or-minus, 95 % (Type B). */
        TYPED(false),
        /** A maker's tolerance (rectangular, Type B). */
        TOLERANCE(true),
        /** An assumed figure. */
        ASSUMED(false),
        /** Nothing is known: a figure that leans on this is unknown. */
        UNKNOWN(false);

        private final boolean rectangular;

        Kind(boolean rectangular) {
            this.rectangular = rectangular;
        }

        /** Whether the error lies evenly between two ends; the others are normal, or t when the degrees of freedom are few. */
        public boolean isRectangular() {
            return rectangular;
        }
    }

    /** 95 % half-width of a normal error, in standard deviations. */
    public static final double NORMAL_95 = 1.959_963_984_540_054;

    public Source {
        if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty)) {
            throw new IllegalArgumentException("standard uncertainty of " + id + " is " + standardUncertainty
                    + "; it must be finite and not negative");
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException(
                    "degrees of freedom of " + id + " are " + degreesOfFreedom + "; they must be above 0");
        }
    }

    /** A source whose size was judged by itself. */
    public Source(
            String id,
            Kind kind,
            String label,
            double standardUncertainty,
            double degreesOfFreedom,
            double forWeights) {
        this(id, kind, label, standardUncertainty, degreesOfFreedom, forWeights, "");
    }

    /** Known doubt: infinite degrees of freedom. */
    public static Source known(String id, Kind kind, String label, double standardUncertainty) {
        return new Source(id, kind, label, standardUncertainty, Double.POSITIVE_INFINITY, standardUncertainty);
    }

    /** A rectangular error of the given half-width. */
    public static Source rectangular(String id, Kind kind, String label, double halfWidth) {
        return known(id, kind, label, halfWidth / Math.sqrt(3));
    }

    /** An error stated as a 95 % half-width. */
    public static Source at95(String id, Kind kind, String label, double halfWidth) {
        return known(id, kind, label, halfWidth / NORMAL_95);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Source s && s.id.equals(id);
    }

    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
