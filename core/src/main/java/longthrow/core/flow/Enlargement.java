package longthrow.core.flow;

/**
 * What comes to an even stream in a wider pipe: the loss of Borda and Carnot with compression. Mass, energy, and thrust with the pressure on the step's face are kept (Shapiro, vol. 1, 1953; row GAS-34).
 */
public final class Enlargement {
    private Enlargement() {}

    /**
     * Speed in the wider pipe [m/s], below that of sound; that of sound where no slower stream has so little thrust.
     * @param massFlow per area of the wider pipe [kg/(m2 s)], 0 or above
     * @param thrust   per area of it: pressure on step and stream, and the stream's momentum [Pa]
     * @param enthalpy of the gas at rest: gamma / (gamma - 1) R T0 [J/kg]
     */
    public static double speed(double gamma, double massFlow, double thrust, double enthalpy) {
        double push = gamma / (gamma - 1) * thrust;
        double energy = enthalpy * massFlow;
        double root = Math.max(0, push * push - 2 * (gamma + 1) / (gamma - 1) * massFlow * energy);
        return 2 * energy / (push + Math.sqrt(root));
    }
}
