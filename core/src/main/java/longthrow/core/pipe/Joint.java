package longthrow.core.pipe;

import longthrow.core.flow.Enlargement;
import longthrow.core.flow.Isentropic;
import longthrow.core.pipe.PipeFlow.Side;

/**
 * A throat between the ends of two pipes: a throttle or venturi between two pieces, a restrictor plate, a step up or down. Quasi-steady; one object serves many in turn and makes nothing new; of one thread.
 *
 * <p>From the face of the pipe that gas leaves to the throat nothing is lost; behind it the stream fills the other pipe with the loss of Borda and Carnot, the throat's pressure on the face of the step
 * ({@link Enlargement}). A throat at the speed of sound lets through what it does however low the pressure behind it. Mass, energy and burned mass are the same on both sides to the last digit. Where nothing is
 * narrower than the pipes, and they are alike, waves pass as if nothing were there. Gas that comes faster than sound goes through as it comes unless a shock is thrown back.
 */
public final class Joint {
    /** Behind a throat at the speed of sound the pressure is less than this share of the stagnation pressure before it, whatever widths and gas: found by trying gamma 1.1 to 1.67 is 0.80 at most. */
    static final double NEVER_CHOKES = 0.85;

    private static final int TRIES = 100;
    private static final double NEAR = 1e-13;

    private final Face one;
    private final Face two;

    private double mass;
    private double energy;
    private double burned;
    private double throatMach;

    // What the equation knows.
    private Face up;
    private Face down;
    private double widthUp;
    private double widthDown;
    private double pipes;
    private double gamma;

    // And finds: per area of the upstream face, and of the downstream one.
    private double enthalpy;
    private double stream;
    private double speedBehind;
    private double pressureBehind;
    private double facePressure;
    private double thin;
    private double misfit;

    public Joint(PipeGases gases) {
        one = new Face(gases);
        two = new Face(gases);
        up = one;
        down = two;
    }

    /**
     * Tells both pipes what goes through. After {@link PipeFlow#predict} of both.
     * @param area     effective area where gas goes from the first to the second [m2], 0 to that of the narrower pipe; more counts as that
     * @param areaBack the same from the second to the first
     */
    public void join(PipeFlow first, Side ofFirst, PipeFlow second, Side ofSecond, double area, double areaBack) {
        if (!(area >= 0 && areaBack >= 0)) {
            throw new IllegalArgumentException(
                    "a throat between pipes of " + area + " m2, and " + areaBack + " m2 back; both must be 0 or above");
        }
        one.read(first, ofFirst);
        two.read(second, ofSecond);
        double wallOne = one.wallPressure();
        double wallTwo = two.wallPressure();
        double areaOne = first.endArea(ofFirst);
        double areaTwo = second.endArea(ofSecond);
        boolean back = wallOne < wallTwo;
        double throat = Math.min(back ? areaBack : area, Math.min(areaOne, areaTwo));
        if (throat == 0 || wallOne == wallTwo) {
            mass = 0;
            energy = 0;
            burned = 0;
            throatMach = 0;
            first.through(ofFirst, 0, wallOne, 0, 0);
            second.through(ofSecond, 0, wallTwo, 0, 0);
        } else if (back) {
            pass(two, one, throat, areaTwo, areaOne, wallTwo, wallOne);
            tell(second, ofSecond, first, ofFirst, areaTwo, areaOne);
            mass = -mass;
            energy = -energy;
            burned = -burned;
            throatMach = -throatMach;
        } else {
            pass(one, two, throat, areaOne, areaTwo, wallOne, wallTwo);
            tell(first, ofFirst, second, ofSecond, areaOne, areaTwo);
        }
    }

    private void tell(PipeFlow from, Side ofFrom, PipeFlow to, Side ofTo, double areaFrom, double areaTo) {
        double face = facePressure;
        double density = gamma * face / up.soundSquare;
        double perArea = density * up.speed;
        double total = up.gas.enthalpy(face / (density * up.gas.gasConstant)) + 0.5 * up.speed * up.speed;
        mass = perArea * areaFrom;
        energy = mass * total;
        burned = mass * up.burned;
        from.through(ofFrom, perArea, face + perArea * up.speed, perArea * total, perArea * up.burned);
        double into = mass / areaTo;
        to.through(ofTo, -into, pressureBehind + into * speedBehind, -into * total, -into * up.burned);
    }

    private void pass(
            Face from, Face to, double throat, double areaFrom, double areaTo, double wallFrom, double wallTo) {
        up = from;
        down = to;
        widthUp = throat / areaFrom;
        widthDown = throat / areaTo;
        pipes = areaFrom / areaTo;
        gamma = from.gas.gamma;
        double low = from.standingShock();
        if (low > 0 || wallTo < NEVER_CHOKES * wallFrom) {
            double mach = Isentropic.machBefore(gamma, widthUp);
            if (low > 0 && from.machAt(low) <= mach) {
                evaluate(low);
                if (misfit <= 0) { // the pipe behind takes more than stands behind the shock: nothing holds it
                    swallowed();
                    return;
                }
            } else {
                low = from.pressureOf(mach, low, wallFrom);
                throughThroat(low, true);
                if (misfit <= 0) {
                    choked(low);
                    return;
                }
            }
        }
        solve(low, wallFrom, wallTo);
    }

    private void swallowed() {
        facePressure = up.pressure;
        up.asItComes();
        throatMach = up.speed / up.sound;
        stream = up.density * up.speed * pipes;
        speedBehind = up.speed;
        pressureBehind = up.pressure;
    }

    /** The throat at the speed of sound and the pipe behind takes more than the loss would leave it: its pressure falls until it takes just that. */
    private void choked(double face) {
        facePressure = face;
        throatMach = 1;
        double sonic = Math.sqrt(2 * (gamma - 1) / (gamma + 1) * enthalpy);
        double least = pressureAt(sonic);
        double high = pressureBehind;
        down.at(least);
        if (-down.speed >= sonic) {
            pressureBehind = least;
            speedBehind = sonic;
            return;
        }
        double low = least;
        double at = high;
        double push = gamma / (gamma - 1) / stream;
        for (int n = 0; n < TRIES; n++) {
            down.at(at);
            double b = push * at;
            double root = Math.sqrt(b * b + 2 * enthalpy);
            double speed = 2 * enthalpy / (b + root);
            double wrong = speed + down.speed;
            if (wrong > 0) {
                low = at;
            } else {
                high = at;
            }
            double next = at - wrong / (-push * speed / root + down.speedSlope);
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            double step = Math.abs(next - at);
            at = next;
            if (step <= NEAR * at) {
                break;
            }
        }
        pressureBehind = at;
        double b = push * at;
        speedBehind = 2 * enthalpy / (b + Math.sqrt(b * b + 2 * enthalpy));
    }

    /** Behind the throat, by speed, the stream known. */
    private double pressureAt(double speed) {
        return (gamma - 1) / gamma * stream * (enthalpy - 0.5 * speed * speed) / speed;
    }

    /** The stream behind less what the pipe there takes at its pressure; falls as the upstream face's pressure rises. Above nothing where more comes than the throat takes. */
    private void evaluate(double face) {
        up.at(face);
        double square = up.speed * up.speed / up.soundSquare;
        thin = 1;
        misfit = Math.abs(up.speed);
        if (widthUp == 1 ? square <= 1 : expands(square)) {
            throughThroat(face, false);
        }
    }

    /** Density in the throat over that at the face, by energy; whether there is one below the speed of sound. */
    private boolean expands(double square) {
        double throat = square / (widthUp * widthUp);
        double steep = 2 - 2 * throat;
        double wrong = throat - square;
        for (int n = 0; n < TRIES; n++) {
            double step = wrong / steep;
            if (!(steep > 0) || !(step < thin)) {
                return false;
            }
            thin -= step;
            if (Math.abs(step) < 1e-9) {
                return true;
            }
            double warm = Math.pow(thin, gamma - 1);
            double moving = throat / (thin * thin);
            wrong = moving - square - 2 / (gamma - 1) * (1 - warm);
            steep = 2 * (warm - moving) / thin;
        }
        return true;
    }

    /** From what is at the face, by the throat, to what is behind. */
    private void throughThroat(double face, boolean atSound) {
        enthalpy = up.soundSquare / (gamma - 1) + 0.5 * up.speed * up.speed;
        stream = gamma * face / up.soundSquare * up.speed * pipes;
        double speed = up.speed / (widthUp * thin);
        double sound = (gamma - 1) * (enthalpy - 0.5 * speed * speed);
        double pressure = face;
        if (atSound) {
            sound = 2 * (gamma - 1) / (gamma + 1) * enthalpy;
            speed = Math.sqrt(sound);
            pressure = face * Math.pow(sound / up.soundSquare, gamma / (gamma - 1));
        } else if (widthUp < 1) {
            pressure = face * thin * sound / up.soundSquare;
        }
        throatMach = speed / Math.sqrt(sound);
        double thrust = pressure + stream * speed;
        speedBehind = widthUp == 1 && pipes == 1 ? up.speed : Enlargement.speed(gamma, stream, thrust, enthalpy);
        pressureBehind = thrust - stream * speedBehind;
        down.at(pressureBehind);
        misfit = speedBehind + down.speed;
    }

    /** A chord through the two last tries; halving where it would leave what holds the root. */
    private void solve(double least, double wallFrom, double wallTo) {
        double low = least;
        double high = wallFrom;
        double last = wallFrom;
        down.at(wallFrom);
        double lastMisfit = down.speed;
        double at = guess(wallFrom, wallTo);
        if (!(at > low && at < high)) {
            at = 0.5 * (low + high);
        }
        evaluate(at);
        for (int n = 0; n < TRIES && misfit != 0; n++) {
            if (misfit > 0) {
                low = at;
            } else {
                high = at;
            }
            double next = at - misfit * (at - last) / (misfit - lastMisfit);
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            last = at;
            lastMisfit = misfit;
            at = next;
            evaluate(at);
            if (Math.abs(at - last) <= NEAR * at) {
                break;
            }
        }
        facePressure = at;
    }

    private double guess(double wallFrom, double wallTo) {
        double impedance = up.density * up.sound + down.density * down.sound * pipes;
        double most = wallFrom - wallTo;
        double lost = (1 - 2 * widthDown * (1 - widthDown)) / (widthUp * widthUp) - 1;
        double square = Math.max(0.25 * impedance * impedance, impedance * impedance + 2 * up.density * lost * most);
        return wallFrom - up.density * up.sound * 2 * most / (impedance + Math.sqrt(square));
    }

    // ---- what went through, from the first to the second

    /** [kg/s]. */
    public double mass() {
        return mass;
    }

    /** [W]. */
    public double energy() {
        return energy;
    }

    /** Of burned gas [kg/s]. */
    public double burned() {
        return burned;
    }

    /** Of the throat, or of the narrower pipe. */
    public double throatMach() {
        return throatMach;
    }
}
