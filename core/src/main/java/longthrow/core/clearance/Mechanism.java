package longthrow.core.clearance;

import java.util.List;
import longthrow.core.measurement.Law;

/**
 * A pair as a function of the figures it is made from: stroke, rod, skirt length, radius of a counterweight, lash, phase. Everything about the pair that is
 * not sure is a parameter, the same one where two places use it.
 * @param parameters in the order the shape is given their values
 * @param shape      makes the pair from one value for each parameter [unit of the parameter]; must be pure
 */
public record Mechanism(List<Parameter> parameters, Shape shape) {
    public Mechanism {
        parameters = List.copyOf(parameters);
        long names = parameters.stream().map(Parameter::name).distinct().count();
        if (names < parameters.size()) {
            throw new IllegalArgumentException("two parameters of a mechanism have one name among "
                    + parameters.stream().map(Parameter::name).toList() + "; name each thing that is measured once");
        }
    }

    /** Makes the pair. */
    public interface Shape {
        /**
         * The pair with these values.
         * @param values one for each parameter, in their order
         */
        Pair of(double[] values);
    }

    /**
     * One figure with its doubt.
     * @param name  as its owner knows it
     * @param value best estimate
     * @param error how far the truth may lie from it: a law about 0
     */
    public record Parameter(String name, double value, Law error) {
        public Parameter {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(
                        "parameter " + name + " is " + value + "; it must be a finite number");
            }
        }

        /** Known for sure. */
        public static Parameter exact(String name, double value) {
            return new Parameter(name, value, new Law.Normal(0, 0));
        }

        /** Normal about the value. */
        public static Parameter normal(String name, double value, double standardUncertainty) {
            return new Parameter(name, value, new Law.Normal(0, standardUncertainty));
        }

        /** Evenly within a tolerance to either side. */
        public static Parameter rectangular(String name, double value, double halfWidth) {
            return new Parameter(name, value, new Law.Rectangular(-halfWidth, halfWidth));
        }

        /** The mean of a few readings. */
        public static Parameter ofFewReadings(
                String name, double value, double standardUncertainty, double degreesOfFreedom) {
            return new Parameter(name, value, new Law.ScaledT(degreesOfFreedom, 0, standardUncertainty));
        }
    }

    double[] values() {
        return parameters.stream().mapToDouble(Parameter::value).toArray();
    }

    /** The pair at its best estimates. */
    public Pair pair() {
        return shape.of(values());
    }
}
