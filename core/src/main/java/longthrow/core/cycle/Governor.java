package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * How a governor closes the throttle with rising speed: wide open up to one speed, shut at another, in proportion between. Speeds of the crank [rad/s].
 * @param fullLoad fastest with the throttle wide open
 * @param noLoad   that it runs up to without load, above the former
 */
public record Governor(double fullLoad, double noLoad) {
    /** No-load over full-load speed less 1 of small mechanical governors, 5 to 10 %: common practice, no source. */
    public static final double USUAL_DROOP = 0.075;

    /** Half of that range. */
    public static final double DROOP_REACH = 0.025;

    public Governor {
        Require.positive("fastest speed at full load [rad/s]", fullLoad);
        Require.finite("speed without load [rad/s]", noLoad);
        if (!(noLoad > fullLoad)) {
            throw new IllegalArgumentException("speed without load is " + noLoad
                    + " rad/s; a governor that holds speed runs faster without load than with it, above " + fullLoad
                    + " rad/s; with less it hunts");
        }
    }

    /** By the speed it was set to running free. */
    public static Governor ofNoLoad(double noLoad, double droop) {
        Require.positive("droop", droop);
        return new Governor(noLoad / (1 + droop), noLoad);
    }

    /** By the speed at which its maker rates the full load. */
    public static Governor ofFullLoad(double fullLoad, double droop) {
        Require.positive("droop", droop);
        return new Governor(fullLoad, fullLoad * (1 + droop));
    }

    /**
     * Weights that fly out against a spring, each balance of forces by virtual work: weights' n m r w2 dr against the spring's F dx.
     * @param count   of weights
     * @param mass    of each [kg]
     * @param inner   radius of its centre of mass with the throttle wide open [m]
     * @param outer   with the throttle shut [m], above the former
     * @param travel  of the sleeve over that of a weight's radius
     * @param slack   force of the spring at the sleeve with the throttle wide open [N]
     * @param taut    with the throttle shut [N]
     * @param gearing speed of the weights over that of the crank
     */
    public record Flyweights(
            int count,
            double mass,
            double inner,
            double outer,
            double travel,
            double slack,
            double taut,
            double gearing) {
        public Flyweights {
            if (count < 1) {
                throw new IllegalArgumentException("number of weights is " + count + "; it must be 1 or more");
            }
            Require.positive("mass of a weight [kg]", mass);
            Require.positive("inner radius [m]", inner);
            Require.positive("outer radius [m]", outer);
            Require.positive("travel of the sleeve over the radius", travel);
            Require.positive("force of the spring, throttle open [N]", slack);
            Require.positive("force of the spring, throttle shut [N]", taut);
            Require.positive("speed of the weights over the crank's", gearing);
            if (!(outer > inner)) {
                throw new IllegalArgumentException(
                        "outer radius is " + outer + " m; it must be above the inner, " + inner + " m");
            }
        }

        private double speed(double radius, double force) {
            return Math.sqrt(force * travel / (count * mass * radius)) / gearing;
        }

        /**
         * What they hold.
         * @throws IllegalArgumentException for a spring too soft to hold any speed
         */
        public Governor governor() {
            return new Governor(speed(inner, slack), speed(outer, taut));
        }
    }

    /** No-load over full-load speed, less 1. */
    public double droop() {
        return noLoad / fullLoad - 1;
    }

    /** How far it lets the throttle open at a speed, 0 to 1. */
    public double opening(double speed) {
        return Math.min(1, Math.max(0, (noLoad - speed) / (noLoad - fullLoad)));
    }

    /** Whether full throttle is to be had: where it is not, full-throttle power must not be printed. */
    public boolean letsFullThrottle(double speed) {
        return speed <= fullLoad;
    }
}
