package longthrow.core.motion;

/**
 * Unit rise between two dwells: lift 0 to 1 while u runs from 0 to 1, and its derivatives by u. Norton, Cam Design and Manufacturing Handbook,
 * double-dwell functions (numbers of sections from memory).
 */
public enum RiseFunction {
    /** Half a cosine; acceleration jumps at both ends, so a lobe made of it is not smooth. */
    SIMPLE_HARMONIC {
        @Override
        public double at(double u, int order) {
            double w = Math.PI;
            return switch (order) {
                case 0 -> (1 - Math.cos(w * u)) / 2;
                case 1 -> w * Math.sin(w * u) / 2;
                case 2 -> w * w * Math.cos(w * u) / 2;
                case 3 -> -w * w * w * Math.sin(w * u) / 2;
                default -> throw unknown(order);
            };
        }
    },
    /** One sine of acceleration. */
    CYCLOIDAL {
        @Override
        public double at(double u, int order) {
            double w = 2 * Math.PI;
            return switch (order) {
                case 0 -> u - Math.sin(w * u) / w;
                case 1 -> 1 - Math.cos(w * u);
                case 2 -> w * Math.sin(w * u);
                case 3 -> w * w * Math.cos(w * u);
                default -> throw unknown(order);
            };
        }
    },
    /** 3-4-5 polynomial: velocity and acceleration start and end at nothing. */
    POLYNOMIAL_345 {
        @Override
        public double at(double u, int order) {
            return switch (order) {
                case 0 -> u * u * u * (10 + u * (-15 + u * 6));
                case 1 -> u * u * (30 + u * (-60 + u * 30));
                case 2 -> u * (60 + u * (-180 + u * 120));
                case 3 -> 60 + u * (-360 + u * 360);
                default -> throw unknown(order);
            };
        }
    },
    /** Trapezoid of acceleration with its corners rounded by quarter sines, an eighth of the rise each. */
    MODIFIED_TRAPEZOID {
        @Override
        public double at(double u, int order) {
            return ModifiedRise.TRAPEZOID.at(u, order);
        }
    },
    /** Sine of acceleration, four times quicker over the first and the last eighth. */
    MODIFIED_SINE {
        @Override
        public double at(double u, int order) {
            return ModifiedRise.SINE.at(u, order);
        }
    };

    /**
     * The rise or a derivative of it.
     * @param u     0 to 1
     * @param order 0 lift, 1 velocity, 2 acceleration, 3 jerk
     */
    public abstract double at(double u, int order);

    private static IllegalArgumentException unknown(int order) {
        return new IllegalArgumentException("order is " + order + "; it must be 0 to 3");
    }
}
