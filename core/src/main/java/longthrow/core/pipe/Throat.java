package longthrow.core.pipe;

import longthrow.core.flow.Isentropic;
import longthrow.core.pipe.PipeFlow.Side;

/**
 * A throat between the end of a pipe and gas that stands still: a poppet valve (the cylinder stands still), an open end, an orifice plate or throttle to a volume. Quasi-steady: what is between face and
 * still gas holds nothing. One object serves many ends in turn and makes nothing new; of one thread.
 *
 * <p>Outflow: face to throat without loss, energy and entropy kept, the throat at the pressure of the still gas or at the speed of sound; what leaves it is lost in the still gas (Benson,
 * The Thermodynamics and Gas Dynamics of Internal Combustion Engines, vol. 1, the nozzle; rows GAS-39 to GAS-41). Inflow: the still gas's enthalpy kept, the throat at the pressure of the
 * pipe's face, nothing won back behind it (Gault et al. 2004 found none behind the rim of a valve head at any lift), or at the speed of sound. A jet that would pass the speed of sound at the face has just that there
 * and goes on inside the pipe. At both directions a throat as wide as the pipe is the open end without loss, and one of no width a wall, exactly.
 *
 * <p>Where gas leaves faster than sound, it leaves as it comes unless throat or still gas throw a shock back into the pipe; of two flows that could be, one swallowed and one thrown back, it is
 * the swallowed one as soon as what stands behind the shock passes the throat. Each gas has gamma as it is where it is told: at the pipe's end for outflow, in the still gas for inflow.
 */
public final class Throat {
    /** Above this share of the higher pressure no throat chokes: the critical ratio is 0.6065 where gamma is 1, and less above. */
    private static final double NEVER_CHOKES = 0.61;

    /** A step of Newton's so small, of the pressure, is the last, if it is small against the speed too: what it still misses is the square of it. */
    private static final double NEAR = 1e-8;

    /** As little speed as needs no digits, of the sound's: what is rounded off. */
    private static final double LEAST = 1e-6;

    /** The same of a halving. */
    private static final double LAST = 1e-15;

    /** As often is tried; halving alone would need fewer. */
    private static final int TRIES = 100;

    private final Face face;
    private final Gas still;

    private double mass;
    private double energy;
    private double burned;
    private double facePressure;
    private double faceMach;
    private double throatMach;

    /** Whether what is in the throat is slower than sound and has not been asked about yet. */
    private Asked asked = Asked.KNOWN;

    private enum Asked {
        KNOWN,
        OUT,
        IN
    }

    // What the equation that is solved knows, and what it says at a pressure of the face.
    private Law law = Law.OUT;
    private double share;
    private double stillPressure;
    private double stillCooling;
    private double wanted;
    private double misfit;
    private double misfitSlope;

    private enum Law {
        OUT,
        IN,
        IN_CHOKED
    }

    public Throat(PipeGases gases) {
        face = new Face(gases);
        still = new Gas(gases);
    }

    /**
     * Tells the pipe what goes through its end, and remembers it for the other side. After {@link PipeFlow#predict}.
     * @param areaOut     effective area of the throat where gas leaves the pipe [m2], 0 to the pipe's own; more counts as that
     * @param areaIn      the same where gas comes in
     * @param pressure    of the still gas in the middle of the step [Pa]
     * @param temperature [K]
     * @param burnedShare of burned gas in it, 0 to 1
     */
    public void join(
            PipeFlow flow,
            Side side,
            double areaOut,
            double areaIn,
            double pressure,
            double temperature,
            double burnedShare) {
        if (!(areaOut >= 0 && areaIn >= 0 && pressure > 0 && temperature > 0)) {
            throw new IllegalArgumentException("a throat of " + areaOut + " m2 out of a pipe and " + areaIn
                    + " m2 into it to gas of " + pressure + " Pa and " + temperature
                    + " K; areas must be 0 or above, pressure and temperature above 0");
        }
        asked = Asked.KNOWN;
        face.read(flow, side);
        double pipe = flow.endArea(side);
        double wall = face.wallPressure();
        double area = Math.min(pressure < wall ? areaOut : areaIn, pipe);
        stillPressure = pressure;
        share = area / pipe;
        if (area == 0 || pressure == wall) {
            shut(flow, side, wall);
        } else if (pressure < wall) {
            outflow(wall);
            double through = Math.max(0, face.speed);
            double density = face.gas.gamma * facePressure / face.soundSquare;
            tell(flow, side, pipe, density, through, face.burned, outEnthalpy(density, through));
        } else {
            still.atTemperature(burnedShare, temperature);
            inflow(wall);
            double into = Math.max(0, -face.speed);
            double enthalpy = still.enthalpy(temperature);
            double faceTemperature = temperature * inTemperature(into);
            double density = facePressure / (still.gasConstant * faceTemperature);
            faceMach = -into / Math.sqrt(still.gamma * still.gasConstant * faceTemperature);
            tell(flow, side, pipe, density, -into, burnedShare, enthalpy);
        }
    }

    /** The same through one area in both directions. */
    public void join(PipeFlow flow, Side side, double area, double pressure, double temperature, double burnedShare) {
        join(flow, side, area, area, pressure, temperature, burnedShare);
    }

    private void shut(PipeFlow flow, Side side, double wall) {
        mass = 0;
        energy = 0;
        burned = 0;
        facePressure = wall;
        faceMach = 0;
        throatMach = 0;
        flow.through(side, 0, wall, 0, 0);
    }

    /** Total enthalpy of what leaves, by the law of the pipe's gas [J/kg]. */
    private double outEnthalpy(double density, double speed) {
        double temperature = facePressure / (density * face.gas.gasConstant);
        faceMach = speed / Math.sqrt(face.soundSquare);
        return face.gas.enthalpy(temperature) + 0.5 * speed * speed;
    }

    private void tell(
            PipeFlow flow, Side side, double pipe, double density, double speed, double ofBurned, double enthalpy) {
        double perArea = density * speed;
        mass = perArea * pipe;
        energy = mass * enthalpy;
        burned = mass * ofBurned;
        flow.through(side, perArea, facePressure + perArea * speed, perArea * enthalpy, perArea * ofBurned);
    }

    // ---- out of the pipe

    private void outflow(double wall) {
        double standing = face.standingShock();
        double low = Math.max(stillPressure, standing);
        if (stillPressure < NEVER_CHOKES * wall) {
            if (choked(wall, standing)) {
                return;
            }
            low = Math.max(low, facePressure);
        }
        law = Law.OUT;
        stillCooling = face.cooling(stillPressure);
        if (standing > stillPressure && passes(standing)) {
            comes();
            return;
        }
        solve(low, wall, Math.max(low, wall - fall(wall)));
        asked = Asked.OUT;
    }

    /** Whether the throat lets through what stands behind a shock of this pressure, which then cannot stay before it. */
    private boolean passes(double shock) {
        evaluate(shock);
        return misfit <= 0;
    }

    private void comes() {
        facePressure = face.pressure;
        face.asItComes();
        throatMach = face.speed / face.sound;
    }

    /** First guess of how far the face is below the wall's pressure: a wave as in sound, a throat without compression. */
    private double fall(double wall) {
        double impedance = face.density * face.sound;
        double drag = 2 * face.density * (1 / (share * share) - 1) * (wall - stillPressure);
        return impedance * 2 * (wall - stillPressure) / (impedance + Math.sqrt(impedance * impedance + drag));
    }

    /** Whether the throat is at the speed of sound; then the face is found too. */
    private boolean choked(double wall, double standing) {
        double gamma = face.gas.gamma;
        double mach = Isentropic.machBefore(gamma, share);
        if (standing > 0 && face.machAt(standing) <= mach) {
            // the throat takes what stands behind a shock: it is swallowed, if nothing else holds it
            facePressure = standing;
            return false;
        }
        facePressure = face.pressureOf(mach, standing, wall);
        throatMach = 1;
        return throatPressure(mach) >= stillPressure;
    }

    /** Where the throat is at the speed of sound and the face at this Mach number. */
    private double throatPressure(double mach) {
        double gamma = face.gas.gamma;
        return facePressure * Math.pow((2 + (gamma - 1) * mach * mach) / (gamma + 1), gamma / (gamma - 1));
    }

    private double outThroatMach() {
        double gamma = face.gas.gamma;
        double ratio = Math.pow(stillPressure / facePressure, (gamma - 1) / gamma);
        double square = face.speed * face.speed / face.soundSquare;
        return Math.sqrt(Math.max(0, (square + 2 / (gamma - 1) * (1 - ratio)) / ratio));
    }

    // ---- into the pipe

    private void inflow(double wall) {
        double gamma = still.gamma;
        double sound = Math.sqrt(gamma * still.gasConstant * still.temperature);
        double critical = 0;
        if (wall < NEVER_CHOKES * stillPressure) {
            critical = stillPressure * Isentropic.criticalPressure(gamma);
            double throat = sound * Math.sqrt(2 / (gamma + 1));
            if (wall < critical && chokedIn(wall, critical, throat)) {
                return;
            }
        }
        law = Law.IN;
        double low = Math.max(critical, wall);
        double drag = 2 * still.gamma * stillPressure / (sound * sound) * (stillPressure - wall) / (share * share);
        double impedance = face.density * face.sound;
        double rise = impedance * 2 * (stillPressure - wall) / (impedance + Math.sqrt(impedance * impedance + drag));
        solve(low, stillPressure, Math.max(low, Math.min(stillPressure, wall + rise)));
        asked = Asked.IN;
    }

    private boolean chokedIn(double wall, double critical, double throat) {
        double jet = share * critical;
        law = Law.IN_CHOKED;
        wanted = jet * throat * 0.5 * (still.gamma + 1);
        if (jet >= wall) {
            face.at(jet);
            if (-face.speed >= throat) {
                facePressure = jet;
                face.speed = -throat;
                throatMach = -1;
                return true;
            }
        }
        evaluate(critical);
        if (misfit > 0) {
            return false;
        }
        solve(Math.max(jet, wall), critical, critical);
        throatMach = -1;
        return true;
    }

    /** Temperature at the face over that of the still gas. */
    private double inTemperature(double into) {
        double gamma = still.gamma;
        return 1 - 0.5 * (gamma - 1) * into * into / (gamma * still.gasConstant * still.temperature);
    }

    private double inThroatMach() {
        double gamma = still.gamma;
        double ratio = Math.pow(facePressure / stillPressure, (gamma - 1) / gamma);
        return -Math.sqrt(Math.max(0, 2 / (gamma - 1) * (1 / ratio - 1)));
    }

    // ---- the equation, and its root

    /** Each law is above nothing at the low end and below at the high one, and smooth where nothing flows. */
    private void evaluate(double at) {
        switch (law) {
            case OUT -> out(at);
            case IN -> in(at);
            case IN_CHOKED -> inChoked(at);
        }
    }

    /** Energy from face to throat, times the square of the throat's mass share: falls as the face's pressure rises. */
    private void out(double at) {
        double gamma = face.gas.gamma;
        double perPressure = 1 / (gamma * at);
        double cooled;
        if (at > face.pressure) {
            face.at(at);
            cooled = Math.pow(stillPressure / at, (gamma - 1) / gamma);
        } else {
            double z = face.cooling(at);
            face.expansion(at, z);
            cooled = stillCooling / z * (stillCooling / z);
        }
        double u2 = face.speed * face.speed;
        double c2 = face.soundSquare;
        if (u2 + 2 / (gamma - 1) * c2 * (1 - cooled) > c2 * cooled * (1 + 1e-9) && face.speed > 0 && u2 < c2) {
            misfit = -c2; // the throat would be past the speed of sound: it takes less than that, but more than comes
            misfitSlope = 0;
            return;
        }
        double thin = stillPressure / at / cooled;
        double m = share * share * thin * thin;
        double n = 2 / (gamma - 1);
        misfit = u2 * (1 - m) - n * c2 * m * (1 - cooled);
        misfitSlope = 2 * face.speed * face.speedSlope * (1 - m)
                + 2 * u2 * m * perPressure
                - n
                        * m
                        * ((face.soundSquareSlope - 2 * c2 * perPressure) * (1 - cooled)
                                + c2 * cooled * (gamma - 1) * perPressure);
    }

    /** Mass through face and throat at one pressure, squared; through the throat less through the face. */
    private void in(double at) {
        double gamma = still.gamma;
        face.at(at);
        double into = -face.speed;
        double intoSlope = -face.speedSlope;
        double ratio = Math.pow(at / stillPressure, (gamma - 1) / gamma);
        double ratioSlope = ratio * (gamma - 1) / (gamma * at);
        double square = gamma * still.gasConstant * still.temperature;
        double warm = Math.max(0, 1 - 0.5 * (gamma - 1) * into * into / square);
        double warmSlope = -(gamma - 1) * into * intoSlope / square;
        double n = share * share * 2 / (gamma - 1) * square;
        double size = Math.abs(into) * into;
        misfit = n * warm * warm * (1 - ratio) - size * ratio * ratio;
        misfitSlope = n * (2 * warm * warmSlope * (1 - ratio) - warm * warm * ratioSlope)
                - 2 * Math.abs(into) * intoSlope * ratio * ratio
                - 2 * size * ratio * ratioSlope;
    }

    private void inChoked(double at) {
        face.at(at);
        double into = -face.speed;
        double square = still.gamma * still.gasConstant * still.temperature;
        double warm = 1 - 0.5 * (still.gamma - 1) * into * into / square;
        double warmSlope = (still.gamma - 1) * into * face.speedSlope / square;
        misfit = wanted * warm - at * into;
        misfitSlope = wanted * warmSlope - into + at * face.speedSlope;
    }

    /** Newton's steps, and halving where they would leave what is known to hold the root. The law is above nothing at low and below at high. */
    private void solve(double low, double high, double first) {
        double below = low;
        double above = high;
        double at = first;
        for (int n = 0; n < TRIES; n++) {
            evaluate(at);
            if (misfit > 0) {
                below = at;
            } else if (misfit < 0) {
                above = at;
            } else {
                break;
            }
            double next = at - misfit / misfitSlope;
            double step = next - at;
            if (!(next >= below && next <= above)) {
                next = 0.5 * (below + above);
                step = next - at;
                if (Math.abs(step) <= LAST * next) {
                    break;
                }
            } else if (Math.abs(step) <= NEAR * next
                    && Math.abs(face.speedSlope * step) <= NEAR * (100 * Math.abs(face.speed) + LEAST * face.sound)) {
                face.speed += face.speedSlope * step;
                face.soundSquare += face.soundSquareSlope * step;
                at = next;
                break;
            }
            at = next;
        }
        facePressure = at;
    }

    // ---- what went through, out of the pipe

    /** [kg/s]. */
    public double mass() {
        return mass;
    }

    /** Enthalpy with speed, over 0 K of the gas law [W]. */
    public double energy() {
        return energy;
    }

    /** Of burned gas [kg/s]. */
    public double burned() {
        return burned;
    }

    /** Of the face [Pa]. */
    public double facePressure() {
        return facePressure;
    }

    /** Out of the pipe. */
    public double faceMach() {
        return faceMach;
    }

    /** Out of the pipe; where gas leaves faster than sound, that of the face. */
    public double throatMach() {
        return switch (asked) {
            case KNOWN -> throatMach;
            case OUT -> outThroatMach();
            case IN -> inThroatMach();
        };
    }
}
