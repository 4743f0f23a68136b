package longthrow.core.gas;

/**
 * Where tables of burned gas have their nodes, and the smooth function through them. Temperature every 50 K, the logarithm of the pressure in 12 steps; in each
 * cell cubic in both by Hermite, from values, first derivatives (exact) and the mixed one (from differences of the first along the temperature, of second
 * order). First derivatives are continuous across the cells. The temperatures where the composition stops and where fits meet are nodes.
 */
final class BurnedGrid {
    static final double TEMPERATURE_STEP = 50;
    static final int TEMPERATURES =
            1 + (int) Math.round((Equilibrium.HOTTEST - Equilibrium.COLDEST) / TEMPERATURE_STEP);
    static final int PRESSURES = 13;
    static final double LOWEST_LOG = Math.log(Equilibrium.LOWEST_PRESSURE);
    static final double LOG_STEP = (Math.log(Equilibrium.HIGHEST_PRESSURE) - LOWEST_LOG) / (PRESSURES - 1);

    /** A node: u, its derivatives over one step of temperature, of logarithm, of both; the same of the gas constant. */
    private static final int FIELDS = 8;

    private static final int ROW = PRESSURES * FIELDS;

    private BurnedGrid() {}

    /** The nodes of one equivalence ratio, pressure fastest. Each Newton starts from its neighbour. */
    static double[] nodes(Equilibrium gas) {
        double[] nodes = new double[TEMPERATURES * ROW];
        ElementPotentials potentials = gas.potentials();
        BurnedState state = new BurnedState();
        double base = LOWEST_LOG - Math.log(NasaPolynomial.STANDARD_PRESSURE);
        double composedAt = Double.NaN;
        boolean up = true;
        for (int i = TEMPERATURES - 1; i >= 0; i--) {
            double temperature = Equilibrium.COLDEST + i * TEMPERATURE_STEP;
            double composition = Equilibrium.composition(temperature);
            double slope = Equilibrium.compositionSlope(temperature);
            potentials.composedAt(composition);
            potentials.heatAt(temperature);
            for (int k = 0; k < PRESSURES; k++) {
                int j = up ? k : PRESSURES - 1 - k; // to and fro, so that the last node is always next to this one
                double logPressure = base + j * LOG_STEP;
                if (Double.isNaN(composedAt)) {
                    potentials.solve(logPressure);
                } else if (k == 0) {
                    potentials.solveFrom(Math.log(composition / composedAt), 0, logPressure);
                } else {
                    potentials.solveFrom(0, up ? LOG_STEP : -LOG_STEP, logPressure);
                }
                composedAt = composition;
                potentials.properties(slope, state);
                int at = i * ROW + j * FIELDS;
                nodes[at] = state.internalEnergy;
                nodes[at + 1] = state.energyByTemperature * TEMPERATURE_STEP;
                nodes[at + 2] = state.energyByLogPressure * LOG_STEP;
                nodes[at + 4] = state.gasConstant;
                nodes[at + 5] = state.gasConstantByTemperature * TEMPERATURE_STEP;
                nodes[at + 6] = state.gasConstantByLogPressure * LOG_STEP;
            }
            up = !up;
        }
        mixed(nodes);
        return nodes;
    }

    private static void mixed(double[] nodes) {
        int last = (TEMPERATURES - 1) * ROW;
        for (int at = 0; at < nodes.length; at += 4) {
            int here = at + 2;
            double difference;
            if (here < ROW) {
                difference = -1.5 * nodes[here] + 2 * nodes[here + ROW] - 0.5 * nodes[here + 2 * ROW];
            } else if (here > last) {
                difference = 1.5 * nodes[here] - 2 * nodes[here - ROW] + 0.5 * nodes[here - 2 * ROW];
            } else {
                difference = 0.5 * (nodes[here + ROW] - nodes[here - ROW]);
            }
            nodes[at + 3] = difference;
        }
    }

    /**
     * The function at a point.
     * @param lower    nodes of the leaner gas
     * @param upper    nodes of the richer one, or the same
     * @param share    of the richer one in the sum
     * @param pressure [Pa]
     */
    static void at(
            double[] lower, double[] upper, double share, double temperature, double pressure, BurnedState into) {
        if (!(temperature >= Equilibrium.COLDEST
                && temperature <= Equilibrium.HOTTEST
                && pressure >= Equilibrium.LOWEST_PRESSURE
                && pressure <= Equilibrium.HIGHEST_PRESSURE)) {
            throw outside(temperature, pressure);
        }
        double across = (temperature - Equilibrium.COLDEST) * (1 / TEMPERATURE_STEP);
        double along = (Math.log(pressure) - LOWEST_LOG) * (1 / LOG_STEP);
        int i = Math.min((int) across, TEMPERATURES - 2);
        int j = Math.min(Math.max((int) along, 0), PRESSURES - 2);
        double s = across - i;
        double r = along - j;
        double h0 = (1 + 2 * s) * (1 - s) * (1 - s);
        double h1 = s * (1 - s) * (1 - s);
        double h2 = s * s * (3 - 2 * s);
        double h3 = s * s * (s - 1);
        double d0 = 6 * s * (s - 1);
        double d1 = (1 - s) * (1 - 3 * s);
        double d3 = s * (3 * s - 2);
        double g0 = (1 + 2 * r) * (1 - r) * (1 - r);
        double g1 = r * (1 - r) * (1 - r);
        double g2 = r * r * (3 - 2 * r);
        double g3 = r * r * (r - 1);
        double e0 = 6 * r * (r - 1);
        double e1 = (1 - r) * (1 - 3 * r);
        double e3 = r * (3 * r - 2);
        int at = i * ROW + j * FIELDS;
        for (int field = 0; field < FIELDS; field += 4, at += 4) {
            // value, by T, by ln p, by both at the four corners: colder and hotter, lower and higher pressure
            double c0 = lower[at];
            double c1 = lower[at + 1];
            double c2 = lower[at + 2];
            double c3 = lower[at + 3];
            double c4 = lower[at + FIELDS];
            double c5 = lower[at + FIELDS + 1];
            double c6 = lower[at + FIELDS + 2];
            double c7 = lower[at + FIELDS + 3];
            int on = at + ROW;
            double k0 = lower[on];
            double k1 = lower[on + 1];
            double k2 = lower[on + 2];
            double k3 = lower[on + 3];
            double k4 = lower[on + FIELDS];
            double k5 = lower[on + FIELDS + 1];
            double k6 = lower[on + FIELDS + 2];
            double k7 = lower[on + FIELDS + 3];
            if (share != 0) {
                c0 += share * (upper[at] - c0);
                c1 += share * (upper[at + 1] - c1);
                c2 += share * (upper[at + 2] - c2);
                c3 += share * (upper[at + 3] - c3);
                c4 += share * (upper[at + FIELDS] - c4);
                c5 += share * (upper[at + FIELDS + 1] - c5);
                c6 += share * (upper[at + FIELDS + 2] - c6);
                c7 += share * (upper[at + FIELDS + 3] - c7);
                k0 += share * (upper[on] - k0);
                k1 += share * (upper[on + 1] - k1);
                k2 += share * (upper[on + 2] - k2);
                k3 += share * (upper[on + 3] - k3);
                k4 += share * (upper[on + FIELDS] - k4);
                k5 += share * (upper[on + FIELDS + 1] - k5);
                k6 += share * (upper[on + FIELDS + 2] - k6);
                k7 += share * (upper[on + FIELDS + 3] - k7);
            }
            // along the pressure first: value and slope by T at the colder and the hotter side, and both by ln p
            double v0 = g0 * c0 + g1 * c2 + g2 * c4 + g3 * c6;
            double t0 = g0 * c1 + g1 * c3 + g2 * c5 + g3 * c7;
            double v1 = g0 * k0 + g1 * k2 + g2 * k4 + g3 * k6;
            double t1 = g0 * k1 + g1 * k3 + g2 * k5 + g3 * k7;
            double vp0 = e0 * (c0 - c4) + e1 * c2 + e3 * c6;
            double tp0 = e0 * (c1 - c5) + e1 * c3 + e3 * c7;
            double vp1 = e0 * (k0 - k4) + e1 * k2 + e3 * k6;
            double tp1 = e0 * (k1 - k5) + e1 * k3 + e3 * k7;
            double value = h0 * v0 + h1 * t0 + h2 * v1 + h3 * t1;
            double byTemperature = (d0 * (v0 - v1) + d1 * t0 + d3 * t1) * (1 / TEMPERATURE_STEP);
            double byLog = (h0 * vp0 + h1 * tp0 + h2 * vp1 + h3 * tp1) * (1 / LOG_STEP);
            if (field == 0) {
                into.internalEnergy = value;
                into.energyByTemperature = byTemperature;
                into.energyByLogPressure = byLog;
            } else {
                into.gasConstant = value;
                into.gasConstantByTemperature = byTemperature;
                into.gasConstantByLogPressure = byLog;
            }
        }
    }

    private static IllegalArgumentException outside(double temperature, double pressure) {
        return new IllegalArgumentException("burned gas is told of from " + Equilibrium.COLDEST + " to "
                + Equilibrium.HOTTEST + " K and " + Equilibrium.LOWEST_PRESSURE + " to " + Equilibrium.HIGHEST_PRESSURE
                + " Pa; asked for " + temperature + " K and " + pressure + " Pa");
    }
}
