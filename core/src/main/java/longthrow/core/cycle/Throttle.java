package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/** What narrows the way of the charge: open area by setting. Seen along the bore; what flows through is that times {@link #coefficient}. */
public sealed interface Throttle {
    /** Open area [m2]. */
    double area();

    /** Of the bore [m2]. */
    double boreArea();

    /** Effective area where gas flows through [m2]. */
    default double effectiveArea() {
        return coefficient(area() / boreArea()) * area();
    }

    /**
     * Coefficient of flow by the open share: that of a sharp edge, 0.65, nearly shut and that of a pipe with a rod across it, 0.95, wide open (Heywood 1988, section 7.6 names neither; a straight line between is a
     * judgement), within 0.10.
     */
    static double coefficient(double openShare) {
        return 0.65 + 0.30 * Math.min(1, Math.max(0, openShare));
    }

    /** Half-width of {@link #coefficient}. */
    double COEFFICIENT_REACH = 0.10;

    /**
     * A plate on a shaft (Heywood 1988, eq. 7.18, from memory, held to its limits): two crescents beside the ellipse of the plate, until its edge hides behind the shaft.
     * @param bore   diameter [m]
     * @param shaft  diameter [m]
     * @param shut   angle of the shut plate from square to the bore [rad], 0 to below a right angle
     * @param turned angle of the plate from square to the bore [rad], from shut to a right angle
     */
    record Butterfly(double bore, double shaft, double shut, double turned) implements Throttle {
        public Butterfly {
            Require.positive("bore at the throttle [m]", bore);
            Require.notNegative("diameter of the shaft [m]", shaft);
            Require.within("angle of the shut plate [rad]", shut, 0, 1);
            Require.within("angle of the plate [rad]", turned, shut, 0.5 * Math.PI);
            if (!(shaft < bore)) {
                throw new IllegalArgumentException(
                        "diameter of the shaft is " + shaft + " m; it must be less than the bore, " + bore + " m");
            }
        }

        @Override
        public double boreArea() {
            return 0.25 * Math.PI * bore * bore;
        }

        @Override
        public double area() {
            double a = shaft / bore;
            double tilt = Math.cos(turned) / Math.cos(shut);
            double behind = a * Math.sqrt(1 - a * a) + Math.asin(a);
            if (tilt <= a) {
                return boreArea() * (1 - 2 / Math.PI * behind);
            }
            double share = 1
                    - tilt
                    + 2 / Math.PI * (a * Math.sqrt(1 - a * a / (tilt * tilt)) + tilt * Math.asin(a / tilt) - behind);
            return boreArea() * Math.max(0, share);
        }
    }

    /**
     * A slide with a flat foot across a round bore.
     * @param bore   diameter [m]
     * @param lifted height of the foot over the bore's floor [m], 0 to the bore; more is wide open
     */
    record Slide(double bore, double lifted) implements Throttle {
        public Slide {
            Require.positive("bore at the throttle [m]", bore);
            Require.notNegative("height of the slide [m]", lifted);
        }

        @Override
        public double boreArea() {
            return 0.25 * Math.PI * bore * bore;
        }

        @Override
        public double area() {
            double radius = 0.5 * bore;
            double c = Math.max(-1, 1 - lifted / radius);
            return radius * radius * (Math.acos(c) - c * Math.sqrt(Math.max(0, 1 - c * c)));
        }
    }
}
