package longthrow.core.gas;

import java.util.List;
import java.util.SplittableRandom;

/** Seeded states of burned gas all over the range, and the fuels and airs they are of. */
final class RandomGas {
    static final List<Fuel> FUELS = List.of(
            Fuel.petrol(95),
            Fuel.e10(95),
            Fuel.e85(),
            Fuel.methanol(),
            Fuel.isooctane(),
            Fuel.ethanol(),
            Fuel.methane());

    static final List<MoistAir> AIRS = List.of(MoistAir.DRY, MoistAir.of(0.9, 308, 98e3), MoistAir.PLAIN);

    private RandomGas() {}

    /** One state, printed as what it is. */
    record Point(Fuel fuel, MoistAir air, double ratio, double temperature, double pressure) {
        Equilibrium gas() {
            return Equilibrium.of(fuel, air, ratio);
        }

        Equilibrium.State state() {
            return gas().at(temperature, pressure);
        }
    }

    static Point next(SplittableRandom random, double coldest) {
        double lowest = Math.log(Equilibrium.LOWEST_PRESSURE);
        double highest = Math.log(Equilibrium.HIGHEST_PRESSURE);
        double near = random.nextDouble() < 0.25 ? 1 + 0.02 * (random.nextDouble() - 0.5) : Double.NaN;
        return new Point(
                FUELS.get(random.nextInt(FUELS.size())),
                AIRS.get(random.nextInt(AIRS.size())),
                Double.isNaN(near) ? random.nextDouble(Equilibrium.LEANEST, Equilibrium.RICHEST) : near,
                random.nextDouble(coldest, Equilibrium.HOTTEST),
                Math.exp(lowest + random.nextDouble() * (highest - lowest)));
    }
}
