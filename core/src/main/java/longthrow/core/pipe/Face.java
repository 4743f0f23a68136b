package longthrow.core.pipe;

import longthrow.core.pipe.PipeFlow.Side;

/**
 * The end of a pipe as it answers: which state stands at its face if the pressure there is this. One wave runs from the face into the pipe, a shock where the pressure rises and an expansion
 * where it falls (Toro 4.2), with gamma as it is there. Velocities are out of the pipe.
 */
final class Face {
    /** In the middle of the step, before the wave. */
    double density;

    double velocity;
    double pressure;
    double burned;
    double sound;
    final Gas gas;

    /** At the pressure asked about: speed, how it changes with the pressure, square of the sound speed, how that changes. */
    double speed;

    double speedSlope;
    double soundSquare;
    double soundSquareSlope;

    private double k;
    private double q;
    private double inverse;
    private double slope;

    Face(PipeGases gases) {
        gas = new Gas(gases);
    }

    void read(PipeFlow flow, Side side) {
        read(flow.endDensity(side), flow.endVelocity(side), flow.endPressure(side), flow.endBurned(side));
    }

    void read(double ofDensity, double ofVelocity, double ofPressure, double ofBurned) {
        density = ofDensity;
        velocity = ofVelocity;
        pressure = ofPressure;
        burned = ofBurned;
        gas.atDensity(burned, density, pressure);
        double gamma = gas.gamma;
        k = (gamma - 1) / (2 * gamma);
        q = (gamma - 1) / (gamma + 1);
        inverse = 2 / ((gamma + 1) * density);
        slope = 2 / (gamma - 1);
        sound = Math.sqrt(gamma * pressure / density);
    }

    /** Sound speed behind an expansion to this pressure over that before it. */
    double cooling(double at) {
        return Math.pow(at / pressure, k);
    }

    double wallPressure() {
        return Waves.atWall(gas.gamma, density, velocity, pressure);
    }

    /** Behind a wave to this pressure. */
    void at(double face) {
        if (face > pressure) {
            shock(face);
        } else {
            expansion(face, cooling(face));
        }
    }

    /** The same, where {@link #cooling} is known. */
    void expansion(double face, double cooled) {
        speed = velocity + slope * sound * (1 - cooled);
        soundSquare = sound * sound * cooled * cooled;
        double perPressure = 1 / (gas.gamma * face);
        speedSlope = -sound * cooled * perPressure;
        soundSquareSlope = soundSquare * (gas.gamma - 1) * perPressure;
    }

    private void shock(double face) {
        double below = face + q * pressure;
        double root = Math.sqrt(inverse / below);
        speed = velocity - (face - pressure) * root;
        speedSlope = -root * (1 - 0.5 * (face - pressure) / below);
        double ratio = face / pressure;
        double upper = q * ratio + 1;
        double lower = ratio + q;
        double before = sound * sound;
        soundSquare = before * ratio * upper / lower;
        soundSquareSlope = before / pressure * ((upper + q * ratio) / lower - ratio * upper / (lower * lower));
    }

    /** Of gas that leaves faster than sound nothing comes back until a shock stands at the face: at this pressure; 0 where it is slower. */
    double standingShock() {
        double mach = velocity / sound;
        return mach > 1 ? pressure * (1 + 2 * gas.gamma / (gas.gamma + 1) * (mach * mach - 1)) : 0;
    }

    double machAt(double face) {
        at(face);
        return speed / Math.sqrt(soundSquare);
    }

    /**
     * Where the Mach number is this, 0 to 1; stands there then.
     * @param least   a shock that stands at the face, where gas comes faster than sound; the number behind it is above the one asked for
     * @param wall    pressure that stops all
     */
    double pressureOf(double mach, double least, double wall) {
        double cooled = (velocity / sound + slope) / (mach + slope);
        if (cooled <= 1) {
            double face = pressure * Math.pow(cooled, 1 / k);
            expansion(face, cooled);
            return face;
        }
        double low = Math.max(pressure, least);
        double high = wall;
        double face = 0.5 * (low + high);
        for (int n = 0; n < TRIES; n++) {
            at(face);
            double root = Math.sqrt(soundSquare);
            double misfit = speed - mach * root;
            if (misfit > 0) {
                low = face;
            } else {
                high = face;
            }
            double next = face - misfit / (speedSlope - mach * 0.5 * soundSquareSlope / root);
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            double step = Math.abs(next - face);
            face = next;
            if (step <= NEAR * face) {
                break;
            }
        }
        at(face);
        return face;
    }

    private static final int TRIES = 60;

    /** As near must two tries be, of the pressure. */
    private static final double NEAR = 1e-14;

    /** What comes, as it comes. */
    void asItComes() {
        speed = velocity;
        soundSquare = sound * sound;
    }
}
