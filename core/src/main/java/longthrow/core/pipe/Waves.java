package longthrow.core.pipe;

/** One wave through a gas of constant gamma, however strong: the shock by Rankine and Hugoniot, the expansion by its invariant (Toro 3.1, 4.2, 6.3.3). */
final class Waves {
    private Waves() {}

    /**
     * Pressure on a wall that stops what comes [Pa]; 0 where it pulls away faster than the gas can follow.
     * @param velocity towards the wall [m/s]
     */
    static double atWall(double gamma, double density, double velocity, double pressure) {
        double sound = Math.sqrt(gamma * pressure / density);
        if (velocity <= 0) {
            double base = 1 + 0.5 * (gamma - 1) * velocity / sound;
            return base <= 0 ? 0 : pressure * Math.pow(base, 2 * gamma / (gamma - 1));
        }
        double a = 2 / ((gamma + 1) * density);
        double b = (gamma - 1) / (gamma + 1) * pressure;
        double push = velocity / (2 * a) * (velocity + Math.sqrt(velocity * velocity + 4 * a * (b + pressure)));
        return pressure + push;
    }
}
