package longthrow.core.gas;

/**
 * {@link Equilibrium} of one fuel, air and equivalence ratio as a table over temperature and pressure, for a cylinder that asks a million times. No error from the
 * equivalence ratio, which is met exactly. Continuous with its first derivatives everywhere in range, which is that of the equilibrium. Immutable;
 * a lookup allocates nothing.
 *
 * <p>Worst error over the whole range: energy 0.0018 % of that above 298.15 K (of 0.1 MJ/kg where it is less), gas constant 0.0008 %, heat capacity 0.024 %,
 * energy by ln p 0.06 % of R T, gas constant by T 0.03 % of R/T, by ln p 0.004 % of R; 20,000 seeded states in the tests.
 */
public final class BurnedSlice {
    private final double[] nodes;
    private final double equivalenceRatio;

    private BurnedSlice(double[] nodes, double equivalenceRatio) {
        this.nodes = nodes;
        this.equivalenceRatio = equivalenceRatio;
    }

    /** Works the table out: some 1000 equilibria. */
    public static BurnedSlice of(Equilibrium gas) {
        return new BurnedSlice(BurnedGrid.nodes(gas), gas.equivalenceRatio());
    }

    public double equivalenceRatio() {
        return equivalenceRatio;
    }

    double[] nodes() {
        return nodes;
    }

    /**
     * Writes energy, gas constant and their derivatives.
     * @param temperature [K]
     * @param pressure    [Pa]
     * @throws IllegalArgumentException out of range
     */
    public void at(double temperature, double pressure, BurnedState into) {
        BurnedGrid.at(nodes, nodes, 0, temperature, pressure, into);
    }
}
