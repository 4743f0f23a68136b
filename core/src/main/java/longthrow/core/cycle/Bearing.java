package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/** What the shaft turns in. */
public sealed interface Bearing permits Bearing.Plain, Bearing.Rolling {
    /**
     * Plain bearings of one kind.
     * @param diameter of the journal [m]
     * @param length   along it [m]
     * @param count    how many
     */
    record Plain(double diameter, double length, int count) implements Bearing {
        public Plain {
            Require.positive("journal diameter [m]", diameter);
            Require.positive("bearing length [m]", length);
            Require.positive("number of bearings", count);
        }
    }

    /**
     * Rolling bearings of one kind.
     * @param shaft    diameter of their bore [m]
     * @param middle   mean of bore and outer diameter [m]
     * @param count    how many
     * @param meanLoad of all of them together, the mean of its size over two turns [N]: from the loads on the crank
     */
    record Rolling(Kind kind, double shaft, double middle, int count, double meanLoad) implements Bearing {
        public Rolling {
            Require.positive("bore of the bearing [m]", shaft);
            if (!(middle > shaft && Double.isFinite(middle))) {
                throw new IllegalArgumentException("mean diameter of the bearing is " + middle
                        + " m; it must be above the bore, " + shaft + " m. Give half of bore and outer diameter");
            }
            Require.positive("number of bearings", count);
            Require.notNegative("mean load on the bearings [N]", meanLoad);
        }
    }

    /**
     * Rolling friction: M = mu P d / 2 by load, the middle of the range in a bearing maker's catalogue (read; plain bearings there: 0.01 to 0.02), and M = 1e-7 f0 (nu n)^(2/3) dm^3 N mm by
     * the oil (A. Palmgren, Ball and Roller Bearing Engineering; f0 for oil bath or mist, from memory).
     */
    enum Kind {
        BALL(0.0010, 0.0015, 1.5),
        ROLLER(0.0008, 0.0012, 2),
        NEEDLE(0.0020, 0.0030, 8);

        private final double least;
        private final double most;
        private final double oilFactor;

        Kind(double least, double most, double oilFactor) {
            this.least = least;
            this.most = most;
            this.oilFactor = oilFactor;
        }

        /** mu, the middle. */
        double friction() {
            return 0.5 * (least + most);
        }

        /** f0 of Palmgren. */
        double oilFactor() {
            return oilFactor;
        }
    }
}
