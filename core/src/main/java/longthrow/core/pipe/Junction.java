package longthrow.core.pipe;

import java.util.Arrays;
import java.util.List;
import longthrow.core.pipe.PipeFlow.Side;

/**
 * Three or more pipe ends that meet in a point without room: one static pressure at all faces, what comes mixes wholly, what leaves has its enthalpy and its burned share (the constant pressure model: Winterbone and Pearson,
 * Theory of Engine Manifold Design, 1999). Nothing is lost but the mixing, angles do not count: right to a few hundredths for slow flow, and rough where streams meet fast. Mass, energy and
 * burned mass that come and go are equal to the rounding of a sum. Of one thread.
 */
public final class Junction {
    private static final int TRIES = 200;
    private static final double NEAR = 1e-14;

    private final PipeFlow[] flows;
    private final Side[] sides;
    private final Face[] faces;
    private final double[] speed;
    private final double[] density;
    private final double[] mass;
    private final Gas mixed;

    private double pressure;
    private double coming;
    private double going;
    private double enthalpy;
    private double share;

    /** One pipe's end at it. */
    public record End(PipeFlow flow, Side side) {}

    /** @throws IllegalArgumentException if there are less than two ends */
    public Junction(PipeGases gases, List<End> ends) {
        if (ends.size() < 2) {
            throw new IllegalArgumentException("a junction has " + ends.size() + " pipe ends; it needs two at least");
        }
        int count = ends.size();
        flows = ends.stream().map(End::flow).toArray(PipeFlow[]::new);
        sides = ends.stream().map(End::side).toArray(Side[]::new);
        faces = new Face[count];
        Arrays.setAll(faces, n -> new Face(gases));
        speed = new double[count];
        density = new double[count];
        mass = new double[count];
        mixed = new Gas(gases);
    }

    /** Tells all its pipes what goes through their ends. After {@link PipeFlow#predict} of each. */
    public void join() {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (int n = 0; n < faces.length; n++) {
            faces[n].read(flows[n], sides[n]);
            double wall = faces[n].wallPressure();
            low = Math.min(low, wall);
            high = Math.max(high, wall);
        }
        solve(low, high);
        tell();
    }

    /** More comes than goes at the lowest pressure that stops one of them, less at the highest. */
    private void solve(double lowest, double highest) {
        double low = lowest;
        double high = highest;
        double last = low;
        double lastOver = Double.NaN;
        pressure = 0.5 * (low + high);
        balance(pressure);
        for (int n = 0; n < TRIES && coming != going; n++) {
            double over = coming - going;
            if (over > 0) {
                low = pressure;
            } else {
                high = pressure;
            }
            double next = pressure - over * (pressure - last) / (over - lastOver);
            if (!(next >= low && next <= high) || n % 8 == 7) {
                next = 0.5 * (low + high);
            }
            last = pressure;
            lastOver = over;
            pressure = next;
            balance(next);
            if (Math.abs(next - last) <= NEAR * next) {
                return;
            }
        }
    }

    private void balance(double at) {
        coming = 0;
        going = 0;
        enthalpy = 0;
        share = 0;
        for (int n = 0; n < faces.length; n++) {
            Face face = faces[n];
            if (at < face.standingShock()) {
                face.asItComes();
            } else {
                face.at(at);
            }
            speed[n] = face.speed;
            if (face.speed > 0) {
                double facePressure = at < face.standingShock() ? face.pressure : at;
                density[n] = face.gas.gamma * facePressure / face.soundSquare;
                mass[n] = density[n] * face.speed * flows[n].endArea(sides[n]);
                coming += mass[n];
                share += mass[n] * face.burned;
                enthalpy += mass[n] * total(n, facePressure);
            }
        }
        if (coming > 0) {
            share /= coming;
            enthalpy /= coming;
        }
        for (int n = 0; n < faces.length; n++) {
            if (!(speed[n] > 0)) {
                leave(n, at);
            }
        }
    }

    private double total(int n, double facePressure) {
        Gas gas = faces[n].gas;
        return gas.enthalpy(facePressure / (density[n] * gas.gasConstant)) + 0.5 * speed[n] * speed[n];
    }

    /** Into a pipe: no faster than sound there. */
    private void leave(int n, double at) {
        if (!(coming > 0)) {
            density[n] = faces[n].density;
            mass[n] = density[n] * speed[n] * flows[n].endArea(sides[n]);
            going -= mass[n];
            return;
        }
        mixed.atEnthalpy(share, enthalpy);
        double fastest = Math.sqrt(2 * mixed.gamma / (mixed.gamma + 1) * mixed.gasConstant * mixed.temperature);
        speed[n] = Math.max(speed[n], -fastest);
        mixed.atEnthalpy(share, enthalpy - 0.5 * speed[n] * speed[n]);
        density[n] = at / (mixed.gasConstant * mixed.temperature);
        mass[n] = density[n] * speed[n] * flows[n].endArea(sides[n]);
        going -= mass[n];
    }

    private void tell() {
        double fair = coming > 0 && going > 0
                ? coming / going
                : 0; // what the root still misses is shared out, so that nothing is lost
        for (int n = 0; n < faces.length; n++) {
            Face face = faces[n];
            double area = flows[n].endArea(sides[n]);
            if (speed[n] > 0 && going > 0) {
                double facePressure = pressure < face.standingShock() ? face.pressure : pressure;
                double perArea = density[n] * speed[n];
                flows[n].through(
                        sides[n],
                        perArea,
                        facePressure + perArea * speed[n],
                        perArea * total(n, facePressure),
                        perArea * face.burned);
            } else {
                mass[n] = speed[n] > 0 ? 0 : mass[n] * fair;
                double perArea = mass[n] / area;
                flows[n].through(sides[n], perArea, pressure + perArea * speed[n], perArea * enthalpy, perArea * share);
            }
        }
    }

    /** Out of a pipe [kg/s]. */
    public double mass(int end) {
        return mass[end];
    }

    /** At all faces [Pa]. */
    public double pressure() {
        return pressure;
    }
}
