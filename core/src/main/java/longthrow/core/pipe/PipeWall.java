package longthrow.core.pipe;

import longthrow.core.quantity.Require;

/**
 * Friction and heat of a pipe's wall from the stream that went by: gathered over some time, a cycle for instance, and then given to every cell by {@link #apply}. Friction by quasi-steady factors of developed flow; flow that pulses rubs
 * more, by how much is not agreed upon, so nothing is added for it. Heat by the larger of that and of what was found in manifolds.
 */
public final class PipeWall {
    /** Laminar below, and no sooner turbulent than above: between them the factor goes over in a straight line (Moody's diagram leaves it open; common practice, no source). */
    private static final double LAMINAR = 2000;

    private static final double TURBULENT = 4000;

    /** Of air, 0.68 to 0.71 from 300 to 1500 K (handbook tables, from memory). */
    static final double PRANDTL = 0.70;

    private static final double BY_PRANDTL = Math.pow(PRANDTL, -2.0 / 3);

    /** Laminar, constant wall temperature: Nusselt's number (Incropera and DeWitt, from memory). */
    private static final double LAMINAR_NUSSELT = 3.66;

    private final double roughness;
    private final double temperature;
    private final double loss;

    private double time;
    private double stream;
    private double warmth;
    private double lastStream;
    private double lastWarmth = Double.NaN;

    /**
     * @param roughness   of its wall [m], 0 for smooth: drawn tube 1.5e-6, commercial steel 4.5e-5, cast iron 2.6e-4 (Moody 1944)
     * @param temperature of its wall [K]
     * @param loss        of bends and the like all along it, of pressure over dynamic pressure, 0 or above: see {@link #bend}
     */
    public PipeWall(double roughness, double temperature, double loss) {
        this.roughness = Require.notNegative("roughness of a pipe's wall [m]", roughness);
        this.temperature = Require.positive("temperature of a pipe's wall [K]", temperature);
        this.loss = Require.notNegative("loss of a pipe's bends", loss);
    }

    /**
     * Fanning's factor: 16/Re, or by Haaland's explicit formula (Journal of Fluids Engineering 105, 1983, 89), within 2 % of Colebrook's; a smooth pipe by the same.
     * @param reynolds  by mean speed and diameter, above 0
     * @param roughness over the diameter, 0 to 0.05
     */
    public static double fanning(double reynolds, double roughness) {
        if (reynolds <= LAMINAR) {
            return 16 / reynolds;
        }
        if (reynolds >= TURBULENT) {
            return haaland(reynolds, roughness);
        }
        double share = (reynolds - LAMINAR) / (TURBULENT - LAMINAR);
        return (1 - share) * 16 / LAMINAR + share * haaland(TURBULENT, roughness);
    }

    private static double haaland(double reynolds, double roughness) {
        double root = -1.8 * Math.log10(6.9 / reynolds + Math.pow(roughness / 3.7, 1.11));
        return 0.25 / (root * root);
    }

    /** Viscosity of air by Sutherland's law, and within some hundredths of burned gas [Pa s] (White, Viscous Fluid Flow: 1.716e-5 at 273.15 K, 110.4 K; from memory). */
    public static double viscosity(double temperature) {
        double over = temperature / 273.15;
        return 1.716e-5 * over * Math.sqrt(over) * (273.15 + 110.4) / (temperature + 110.4);
    }

    /**
     * What a smooth bend of 90 degrees adds to the friction of its own length, of pressure over dynamic pressure (Crane, Technical Paper 410: friction of so many diameters of fully rough pipe, its length's own among them;
     * its length is taken off here).
     * @param radius   of its middle line over the diameter, 1 to 20
     * @param roughness over the diameter, above 0
     */
    public static double bend(double radius, double roughness) {
        Require.within("radius of a bend's middle line over the diameter", radius, 1, 20);
        double diameters = Tabled.at(radius, BENDS, BEND_DIAMETERS) - 0.5 * Math.PI * radius;
        double root = -2 * Math.log10(Require.positive("roughness over the diameter", roughness) / 3.7);
        return Math.max(0, diameters) / (root * root);
    }

    private static final double[] BENDS = {1, 1.5, 2, 3, 4, 6, 8, 10, 12, 14, 16, 20};
    private static final double[] BEND_DIAMETERS = {20, 14, 12, 12, 14, 17, 24, 30, 34, 38, 42, 50};

    // ---- from the stream

    /** One more step's stream. */
    public void gather(PipeFlow flow, double dt) {
        double through = 0;
        double warm = 0;
        int cells = flow.shape().cells();
        for (int k = 0; k < cells; k++) {
            through +=
                    flow.density(k) * Math.abs(flow.velocity(k)) * flow.shape().cellArea(k);
            warm += flow.temperature(k);
        }
        time += dt;
        stream += dt * through / cells;
        warmth += dt * warm / cells;
    }

    /**
     * Sets the wall of every cell by what was gathered since the last time, and begins anew. Nothing gathered, or gas that stood still: friction as at the laminar limit.
     */
    public void apply(PipeFlow flow) {
        apply(flow, time > 0 ? stream / time : 0, time > 0 ? warmth / time : temperature);
        time = 0;
        stream = 0;
        warmth = 0;
    }

    /**
     * Sets the wall of every cell by a stream that is known from elsewhere; what was gathered stays.
     * @param mean mass flow, whichever way [kg/s], 0 or above
     * @param warm mean temperature of the gas [K], above 0
     */
    public void apply(PipeFlow flow, double mean, double warm) {
        lastStream = Require.notNegative("stream along a pipe's wall [kg/s]", mean);
        lastWarmth = Require.positive("temperature of the stream along a pipe's wall [K]", warm);
        double viscosity = viscosity(0.5 * (warm + temperature)); // of the film
        PipeShape shape = flow.shape();
        double step = shape.step();
        for (int k = 0; k < shape.cells(); k++) {
            double diameter = shape.diameter(k);
            double reynolds = Math.max(LAMINAR, mean / shape.cellArea(k) * diameter / viscosity);
            double factor = fanning(reynolds, roughness / diameter);
            double added = 0.5 * loss / (step * shape.cells());
            flow.wall(
                    k,
                    2 * factor / diameter + added,
                    Math.max(
                            2 * factor / diameter * byReynoldsAnalogy(reynolds, factor),
                            inManifolds(reynolds) / diameter),
                    temperature);
        }
    }

    /** Mean stream by which the wall was set last [kg/s]. */
    public double stream() {
        return lastStream;
    }

    /** Mean temperature of the gas by which it was [K]; NaN before that. */
    public double warmth() {
        return lastWarmth;
    }

    /**
     * The same of flow that pulses as in intake and exhaust of an engine, times the diameter: Nu = 0.07 Re^(3/4), which C. Depcik and D. Assanis (SAE 2002-01-0372, abstract read) found to hold for measured ports and manifolds of
     * both kinds; some twice what a steady stream gives.
     */
    static double inManifolds(double reynolds) {
        return 4 * 0.07 * Math.pow(reynolds, -0.25) / PRANDTL;
    }

    /** Heat over friction: Colburn's analogy, Stanton's number by Prandtl's to 2/3 is half the factor; at the laminar limit no less than Nusselt's number says. */
    private static double byReynoldsAnalogy(double reynolds, double factor) {
        double laminar = LAMINAR_NUSSELT / (reynolds * PRANDTL);
        return Math.max(BY_PRANDTL, 2 * laminar / factor);
    }
}
