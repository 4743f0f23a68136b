package longthrow.core.cycle;

/** What stood where over the last cycle, each degree. Changes as it is written. */
final class Trace {
    static final int PLACES = 721;
    private static final double FIRST = -180;

    final double[] pressure = new double[PLACES];
    final double[] temperature = new double[PLACES];
    final double[] intakePressure = new double[PLACES];
    final double[] exhaustPressure = new double[PLACES];
    final double[] intakeFlow = new double[PLACES];
    final double[] exhaustFlow = new double[PLACES];
    private int next;

    void begin() {
        next = 0;
    }

    /** Keeps the first state at or beyond each degree. */
    void add(double angle, Cylinder cylinder, DuctFlow intake, DuctFlow exhaust) {
        int to = Math.min(PLACES - 1, (int) Math.floor(Math.toDegrees(angle) - FIRST + 1e-9));
        while (next <= to) {
            pressure[next] = cylinder.pressure();
            temperature[next] = cylinder.meanTemperature();
            intakePressure[next] = intake.portPressure();
            exhaustPressure[next] = exhaust.portPressure();
            intakeFlow[next] = intake.intoCylinder();
            exhaustFlow[next] = -exhaust.intoCylinder();
            next++;
        }
    }
}
