package longthrow.core.gas;

/**
 * The gases of air and of burned mixture, and the vapours of single fuels, one mole each.
 *
 * <p>Coefficients: GRI-Mech 3.0 (G. P. Smith and others, 1999), as the general library Cantera distributes them in {@code gri30.yaml}, for the gases of
 * air and flame and for methane; NASA's own (NASA TM-4513, 1993), as in {@code nasa_gas.yaml} of the same library, for isooctane, toluene, methanol
 * and ethanol. Fitted from 200 K (N2 and AR from 300 K: at 200 K the fit of N2 lies 1.1 % below 7/2 R, at 250 K 0.5 %) to 3500 K (N, NO and the
 * fuels to 6000 K, N2 and AR to 5000 K); what happens outside stands at {@link NasaPolynomial}. They agree with the JANAF tables within 0.5 % of the heat
 * capacity, H2O within 2 % above 2000 K.
 */
public enum Species implements Substance {
    N2(
            new Atoms(0, 0, 0, 2, 0),
            5000,
            a(3.298677, 1.4082404e-03, -3.963222e-06, 5.641515e-09, -2.444854e-12, -1020.8999, 3.950372),
            a(2.92664, 1.4879768e-03, -5.68476e-07, 1.0097038e-10, -6.753351e-15, -922.7977, 5.980528)),
    O2(
            new Atoms(0, 0, 2, 0, 0),
            3500,
            a(3.78245636, -2.99673416e-03, 9.84730201e-06, -9.68129509e-09, 3.24372837e-12, -1063.94356, 3.65767573),
            a(3.28253784, 1.48308754e-03, -7.57966669e-07, 2.09470555e-10, -2.16717794e-14, -1088.45772, 5.45323129)),
    CO2(
            new Atoms(1, 0, 2, 0, 0),
            3500,
            a(
                    2.35677352,
                    8.98459677e-03,
                    -7.12356269e-06,
                    2.45919022e-09,
                    -1.43699548e-13,
                    -4.83719697e+04,
                    9.90105222),
            a(
                    3.85746029,
                    4.41437026e-03,
                    -2.21481404e-06,
                    5.23490188e-10,
                    -4.72084164e-14,
                    -4.8759166e+04,
                    2.27163806)),
    H2O(
            new Atoms(0, 2, 1, 0, 0),
            3500,
            a(
                    4.19864056,
                    -2.0364341e-03,
                    6.52040211e-06,
                    -5.48797062e-09,
                    1.77197817e-12,
                    -3.02937267e+04,
                    -0.849032208),
            a(3.03399249, 2.17691804e-03, -1.64072518e-07, -9.7041987e-11, 1.68200992e-14, -3.00042971e+04, 4.9667701)),
    CO(
            new Atoms(1, 0, 1, 0, 0),
            3500,
            a(3.57953347, -6.1035368e-04, 1.01681433e-06, 9.07005884e-10, -9.04424499e-13, -1.4344086e+04, 3.50840928),
            a(
                    2.71518561,
                    2.06252743e-03,
                    -9.98825771e-07,
                    2.30053008e-10,
                    -2.03647716e-14,
                    -1.41518724e+04,
                    7.81868772)),
    H2(
            new Atoms(0, 2, 0, 0, 0),
            3500,
            a(2.34433112, 7.98052075e-03, -1.9478151e-05, 2.01572094e-08, -7.37611761e-12, -917.935173, 0.683010238),
            a(3.3372792, -4.94024731e-05, 4.99456778e-07, -1.79566394e-10, 2.00255376e-14, -950.158922, -3.20502331)),
    H(
            new Atoms(0, 1, 0, 0, 0),
            3500,
            a(2.5, 7.05332819e-13, -1.99591964e-15, 2.30081632e-18, -9.27732332e-22, 2.54736599e+04, -0.446682853),
            a(
                    2.50000001,
                    -2.30842973e-11,
                    1.61561948e-14,
                    -4.73515235e-18,
                    4.98197357e-22,
                    2.54736599e+04,
                    -0.446682914)),
    O(
            new Atoms(0, 0, 1, 0, 0),
            3500,
            a(3.1682671, -3.27931884e-03, 6.64306396e-06, -6.12806624e-09, 2.11265971e-12, 2.91222592e+04, 2.05193346),
            a(
                    2.56942078,
                    -8.59741137e-05,
                    4.19484589e-08,
                    -1.00177799e-11,
                    1.22833691e-15,
                    2.92175791e+04,
                    4.78433864)),
    OH(
            new Atoms(0, 1, 1, 0, 0),
            3500,
            a(3.99201543, -2.40131752e-03, 4.61793841e-06, -3.88113333e-09, 1.3641147e-12, 3615.08056, -0.103925458),
            a(3.09288767, 5.48429716e-04, 1.26505228e-07, -8.79461556e-11, 1.17412376e-14, 3858.657, 4.4766961)),
    NO(
            new Atoms(0, 0, 1, 1, 0),
            6000,
            a(4.2184763, -4.638976e-03, 1.1041022e-05, -9.3361354e-09, 2.803577e-12, 9844.623, 2.2808464),
            a(3.2606056, 1.1911043e-03, -4.2917048e-07, 6.9457669e-11, -4.0336099e-15, 9920.9746, 6.3693027)),
    N(
            new Atoms(0, 0, 0, 1, 0),
            6000,
            a(2.5, 0.0, 0.0, 0.0, 0.0, 5.6104637e+04, 4.1939087),
            a(2.4159429, 1.7489065e-04, -1.1902369e-07, 3.0226245e-11, -2.0360982e-15, 5.6133773e+04, 4.6496096)),
    AR(
            new Atoms(0, 0, 0, 0, 1),
            5000,
            a(2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366),
            a(2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366)),
    /** C8H18, 2,2,4-trimethylpentane. */
    ISOOCTANE(
            Atoms.fuel(8, 18, 0),
            6000,
            a(0.815737338, 0.0732643959, 1.78300688e-05, -6.9358962e-08, 3.21629382e-11, -3.04772862e+04, 24.1509994),
            a(15.9899273, 0.055318479, -1.95267072e-05, 3.11779172e-09, -1.85312577e-13, -3.58757973e+04, -60.1161414)),
    /** C7H8: with isooctane it stands for the vapour of petrol, see {@link Fuel}. */
    TOLUENE(
            Atoms.fuel(7, 8, 0),
            6000,
            a(1.611914, 0.0211188902, 8.53221453e-05, -1.32566876e-07, 5.59406109e-11, 4096.51976, 20.2973614),
            a(12.939475, 0.0266921558, -9.68420108e-06, 1.5739214e-09, -9.46670482e-14, -677.035769, -46.7255302)),
    /** CH4O. */
    METHANOL(
            Atoms.fuel(1, 4, 1),
            6000,
            a(5.71539582, -0.0152309129, 6.52441155e-05, -7.10806889e-08, 2.61352698e-11, -2.56427656e+04, -1.50409823),
            a(3.60134486, 0.0102430954, -3.59985517e-06, 5.72505986e-10, -3.3911764e-14, -2.5997191e+04, 4.70512253)),
    /** C2H6O. */
    ETHANOL(
            Atoms.fuel(2, 6, 1),
            6000,
            a(4.85868178, -3.7400674e-03, 6.95550267e-05, -8.86541147e-08, 3.5168443e-11, -2.99961309e+04, 4.80192294),
            a(6.5628977, 0.0152034264, -5.38922247e-06, 8.62150224e-10, -5.12824683e-14, -3.15257984e+04, -9.47557644)),
    /** CH4. */
    METHANE(
            Atoms.fuel(1, 4, 0),
            3500,
            a(5.14987613, -0.0136709788, 4.91800599e-05, -4.84743026e-08, 1.66693956e-11, -1.02466476e+04, -4.64130376),
            a(0.074851495, 0.0133909467, -5.73285809e-06, 1.22292535e-09, -1.0181523e-13, -9468.34459, 18.437318));

    @SuppressWarnings("ImmutableEnumChecker") // never written to once made
    private final Atoms atoms;

    @SuppressWarnings("ImmutableEnumChecker") // as above
    private final NasaPolynomial heat;

    private final double upper;

    Species(Atoms atoms, double upper, double[] low, double[] high) {
        this.atoms = atoms;
        this.upper = upper;
        this.heat = NasaPolynomial.of(1000, upper, low, high);
    }

    private static double[] a(double... coefficients) {
        return coefficients;
    }

    @Override
    public NasaPolynomial heat() {
        return heat;
    }

    @Override
    public Atoms atoms() {
        return atoms;
    }

    /** Where the fit ends and the heat capacity stays what it is [K]. */
    public double upper() {
        return upper;
    }

    /** Heat capacity at constant pressure [J/(mol K)]. */
    public double cp(double temperature) {
        return heat.cp(temperature);
    }

    /** Enthalpy above the elements at 298.15 K [J/mol]. */
    public double enthalpy(double temperature) {
        return heat.enthalpy(temperature);
    }

    /** Energy above the elements' enthalpies at 298.15 K [J/mol]. */
    public double internalEnergy(double temperature) {
        return heat.enthalpy(temperature) - NasaPolynomial.MOLAR_GAS_CONSTANT * temperature;
    }

    /** Entropy at the standard pressure [J/(mol K)]. */
    public double entropy(double temperature) {
        return heat.entropy(temperature);
    }

    /** Gibbs energy at the standard pressure [J/mol]. */
    public double gibbs(double temperature) {
        return heat.enthalpy(temperature) - temperature * heat.entropy(temperature);
    }

    /** Specific heats' ratio. */
    public double gamma(double temperature) {
        double cp = heat.cp(temperature);
        return cp / (cp - NasaPolynomial.MOLAR_GAS_CONSTANT);
    }
}
