package longthrow.core.pipe;

/**
 * In plain Java: many short loops over arrays that stay in the nearest cache, each of a form that the compiler turns into vector instructions by itself. Long loops it leaves as they are.
 */
public final class PlainKernel implements FlowKernel {
    @Override
    public String name() {
        return "plain";
    }

    // ---- what follows from the state

    @Override
    public void derive(Cells c) {
        int end = c.end();
        double[] temperature = c.scratch(0);
        perMass(end, c.mass, c.momentum, c.burned, c.volume, c.velocity, c.share);
        heat(end, c, temperature);
        push(end, c.mass, c.share, temperature, c.heatCapacity, c.gasFresh, c.gasMore, c.pressure, c.stiffness);
        for (int i = Cells.FIRST;
                i < end;
                i++) { // two roots, so that neither a negative pressure nor a negative mass passes for a number
            c.speed[i] = Math.abs(c.velocity[i]) + Math.sqrt(c.stiffness[i]) * Math.sqrt(c.volume[i]);
        }
    }

    private static void perMass(
            int end,
            double[] mass,
            double[] momentum,
            double[] burned,
            double[] volume,
            double[] velocity,
            double[] share) {
        for (int i = Cells.FIRST; i < end; i++) {
            double v = 1 / mass[i];
            volume[i] = v;
            velocity[i] = momentum[i] * v;
            share[i] = burned[i] * v;
        }
    }

    /** Heat capacity by energy: the root of a2 + 2 b e; and the temperature. */
    private static void heat(int end, Cells c, double[] temperature) {
        double[] energy = c.energy;
        double[] volume = c.volume;
        double[] velocity = c.velocity;
        double[] share = c.share;
        double[] heatCapacity = c.heatCapacity;
        double a0 = c.aFresh;
        double a1 = c.aMore;
        double b0 = 2 * c.bFresh;
        double b1 = 2 * c.bMore;
        for (int i = Cells.FIRST; i < end; i++) {
            double e = energy[i] * volume[i] - 0.5 * velocity[i] * velocity[i];
            double a = a0 + a1 * share[i];
            double cv = Math.sqrt(a * a + (b0 + b1 * share[i]) * e);
            heatCapacity[i] = cv;
            temperature[i] = (e + e) / (a + cv);
        }
    }

    private static void push(
            int end,
            double[] mass,
            double[] share,
            double[] temperature,
            double[] heatCapacity,
            double r0,
            double r1,
            double[] pressure,
            double[] stiffness) {
        for (int i = Cells.FIRST; i < end; i++) {
            double r = r0 + r1 * share[i];
            double p = mass[i] * r * temperature[i];
            pressure[i] = p;
            stiffness[i] = p + p * (r / heatCapacity[i]);
        }
    }

    @Override
    public double fastest(Cells c) {
        double[] speed = c.speed;
        int end = c.end();
        double one = 0;
        double two = 0;
        double three = 0;
        double four = 0;
        int i = Cells.FIRST;
        for (; i + 3 < end; i += 4) {
            one = Math.max(one, speed[i]);
            two = Math.max(two, speed[i + 1]);
            three = Math.max(three, speed[i + 2]);
            four = Math.max(four, speed[i + 3]);
        }
        for (; i < end; i++) {
            one = Math.max(one, speed[i]);
        }
        return Math.max(Math.max(one, two), Math.max(three, four));
    }

    // ---- at the faces, half a step on

    @Override
    public void reconstruct(Cells c, double dt) {
        double[] density = c.scratch(0);
        double[] velocity = c.scratch(1);
        double[] pressure = c.scratch(2);
        double[] share = c.scratch(3);
        double[] rise = c.scratch(4);
        int end = c.end();
        slopes(end, c.mass, rise, density);
        slopes(end, c.velocity, rise, velocity);
        slopes(end, c.pressure, rise, pressure);
        slopes(end, c.share, rise, share);
        double half = 0.5 * dt / c.step;
        double[] densityStep = c.scratch(5);
        double[] velocityStep = c.scratch(6);
        double[] pressureStep = c.scratch(7);
        double[] shareStep = c.scratch(8);
        double[] spread = rise;
        for (int i = Cells.FIRST; i < end; i++) {
            spread[i] = velocity[i] + c.widening[i] * c.velocity[i];
        }
        densityStep(end, half, c.velocity, density, c.mass, spread, densityStep);
        velocityStep(end, half, c.velocity, velocity, pressure, c.volume, velocityStep);
        densityStep(end, half, c.velocity, pressure, c.stiffness, spread, pressureStep);
        for (int i = Cells.FIRST; i < end; i++) {
            shareStep[i] = half * (c.velocity[i] * share[i]);
        }
        faces(end, c.mass, densityStep, density, c.midDensity, c.rightDensity, c.leftDensity);
        faces(end, c.velocity, velocityStep, velocity, c.midVelocity, c.rightVelocity, c.leftVelocity);
        faces(end, c.pressure, pressureStep, pressure, c.midPressure, c.rightPressure, c.leftPressure);
        faces(end, c.share, shareStep, share, c.midShare, c.rightShare, c.leftShare);
    }

    /**
     * The monotonised central limiter: the middle difference, but no more than twice the smaller side, and none at a peak (Toro 14.3). Written by absolute values, which cost a processor less than
     * comparisons: with the sum s and the difference d of both sides, |s| - |d| is twice the smaller one, and below nothing at a peak.
     */
    private static void slopes(int end, double[] of, double[] rise, double[] slope) {
        for (int i = Cells.FIRST; i <= end; i++) {
            rise[i] = of[i] - of[i - 1];
        }
        for (int i = Cells.FIRST; i < end; i++) {
            double s = rise[i] + rise[i + 1];
            double size = Math.abs(s);
            double half = 0.5 * size;
            double over = (size - Math.abs(rise[i] - rise[i + 1])) - half;
            double least = half + 0.5 * (over - Math.abs(over));
            slope[i] = s * (0.5 * (least + Math.abs(least)) / (size + TINY));
        }
    }

    /** Keeps a slope of nothing from being divided by nothing. */
    static final double TINY = 1e-300;

    private static void densityStep(
            int end, double half, double[] velocity, double[] slope, double[] of, double[] spread, double[] step) {
        for (int i = Cells.FIRST; i < end; i++) {
            step[i] = half * (velocity[i] * slope[i] + of[i] * spread[i]);
        }
    }

    private static void velocityStep(
            int end,
            double half,
            double[] velocity,
            double[] slope,
            double[] pressureSlope,
            double[] volume,
            double[] step) {
        for (int i = Cells.FIRST; i < end; i++) {
            step[i] = half * (velocity[i] * slope[i] + pressureSlope[i] * volume[i]);
        }
    }

    private static void faces(
            int end, double[] of, double[] step, double[] slope, double[] mid, double[] right, double[] left) {
        for (int i = Cells.FIRST; i < end; i++) {
            double v = of[i] - step[i];
            mid[i] = v;
            left[i] = v + 0.5 * slope[i];
        }
        for (int i = Cells.FIRST; i < end; i++) {
            right[i - 1] = mid[i] - 0.5 * slope[i];
        }
    }

    @Override
    public void flatten(Cells c) {
        flat(c, c.mass, c.midDensity, c.rightDensity, c.leftDensity);
        flat(c, c.velocity, c.midVelocity, c.rightVelocity, c.leftVelocity);
        flat(c, c.pressure, c.midPressure, c.rightPressure, c.leftPressure);
        flat(c, c.share, c.midShare, c.rightShare, c.leftShare);
    }

    private static void flat(Cells c, double[] of, double[] mid, double[] right, double[] left) {
        System.arraycopy(of, Cells.FIRST, mid, Cells.FIRST, c.count);
        System.arraycopy(of, Cells.FIRST, left, Cells.FIRST, c.count);
        System.arraycopy(of, Cells.FIRST, right, Cells.FIRST - 1, c.count);
    }

    // ---- through the faces: HLLC as waves (Toro 10.4), one side at a time where sides are alike

    @Override
    public void flow(Cells c) {
        int end = c.end() - 1;
        double[] soundLeft = c.scratch(0);
        double[] soundRight = c.scratch(1);
        double[] energyLeft = c.scratch(2);
        double[] energyRight = c.scratch(3);
        double[] gas = c.scratch(4);
        double[] temperature = c.scratch(5);
        double[] capacity = c.scratch(6);
        double[] perMass = c.scratch(7);
        side(
                end,
                c,
                c.leftDensity,
                c.leftVelocity,
                c.leftPressure,
                c.leftShare,
                gas,
                temperature,
                capacity,
                perMass,
                soundLeft,
                energyLeft);
        side(
                end,
                c,
                c.rightDensity,
                c.rightVelocity,
                c.rightPressure,
                c.rightShare,
                gas,
                temperature,
                capacity,
                perMass,
                soundRight,
                energyRight);
        double[] first = c.scratch(8);
        double[] last = c.scratch(9);
        double[] middle = c.scratch(10);
        double[] starLeft = c.scratch(11);
        double[] starRight = c.scratch(12);
        double[] inverseLeft = c.scratch(13);
        double[] inverseRight = c.scratch(14);
        double[] starPressure = c.scratch(15);
        waves(end, c, soundLeft, soundRight, first, last);
        middle(end, c, first, last, starLeft, starRight, middle);
        stars(end, c, first, last, middle, starLeft, starRight, inverseLeft, inverseRight, starPressure);
        double[] starEnergyLeft = gas;
        double[] starEnergyRight = temperature;
        starEnergy(
                end,
                first,
                c.leftVelocity,
                c.leftPressure,
                energyLeft,
                starPressure,
                middle,
                inverseLeft,
                starEnergyLeft);
        starEnergy(
                end,
                last,
                c.rightVelocity,
                c.rightPressure,
                energyRight,
                starPressure,
                middle,
                inverseRight,
                starEnergyRight);
        double[] middleIn = capacity;
        backward(end, first, middle, last, middleIn);
        double[] momentumLeft = perMass;
        double[] momentumRight = starPressure;
        for (int f = Cells.FIRST; f < end; f++) {
            momentumLeft[f] = c.leftDensity[f] * c.leftVelocity[f];
            momentumRight[f] = c.rightDensity[f] * c.rightVelocity[f];
        }
        massFlux(
                end,
                momentumLeft,
                c.leftDensity,
                c.rightDensity,
                first,
                middleIn,
                last,
                starLeft,
                starRight,
                c.massFlux);
        momentumFlux(end, c, momentumLeft, momentumRight, first, middleIn, last, middle, starLeft, starRight);
        energyFlux(
                end,
                c.leftVelocity,
                c.leftPressure,
                energyLeft,
                energyRight,
                first,
                middleIn,
                last,
                starEnergyLeft,
                starEnergyRight,
                c.energyFlux);
        for (int f = Cells.FIRST; f < end; f++) {
            double flux = c.massFlux[f];
            double size = Math.abs(flux);
            c.burnedFlux[f] = 0.5 * (flux + size) * c.leftShare[f] + 0.5 * (flux - size) * c.rightShare[f];
        }
    }

    private static void side(
            int end,
            Cells c,
            double[] density,
            double[] velocity,
            double[] pressure,
            double[] share,
            double[] gas,
            double[] temperature,
            double[] capacity,
            double[] perMass,
            double[] sound,
            double[] energy) {
        temperature(end, density, pressure, share, c.gasFresh, c.gasMore, gas, temperature);
        capacity(end, share, temperature, c.aFresh, c.aMore, c.bFresh, c.bMore, capacity, perMass);
        for (int f = Cells.FIRST; f < end; f++) {
            double rt = gas[f] * temperature[f];
            sound[f] = Math.sqrt(rt + rt * (gas[f] / capacity[f]));
        }
        for (int f = Cells.FIRST; f < end; f++) {
            energy[f] = density[f] * (perMass[f] + 0.5 * velocity[f] * velocity[f]);
        }
    }

    private static void temperature(
            int end,
            double[] density,
            double[] pressure,
            double[] share,
            double r0,
            double r1,
            double[] gas,
            double[] temperature) {
        for (int f = Cells.FIRST; f < end; f++) {
            double r = r0 + r1 * share[f];
            gas[f] = r;
            temperature[f] = pressure[f] / (density[f] * r);
        }
    }

    private static void capacity(
            int end,
            double[] share,
            double[] temperature,
            double a0,
            double a1,
            double b0,
            double b1,
            double[] capacity,
            double[] perMass) {
        for (int f = Cells.FIRST; f < end; f++) {
            double a = a0 + a1 * share[f];
            double bt = (b0 + b1 * share[f]) * temperature[f];
            capacity[f] = a + bt;
            perMass[f] = temperature[f] * (a + 0.5 * bt);
        }
    }

    private static void waves(
            int end, Cells c, double[] soundLeft, double[] soundRight, double[] first, double[] last) {
        double[] left = c.leftVelocity;
        double[] right = c.rightVelocity;
        for (int f = Cells.FIRST; f < end; f++) {
            double a = left[f] - soundLeft[f];
            double b = right[f] - soundRight[f];
            first[f] = 0.5 * ((a + b) - Math.abs(a - b));
        }
        for (int f = Cells.FIRST; f < end; f++) {
            double a = left[f] + soundLeft[f];
            double b = right[f] + soundRight[f];
            last[f] = 0.5 * ((a + b) + Math.abs(a - b));
        }
    }

    /** Mass that each outer wave sweeps, and the speed of the contact between them. */
    private static void middle(
            int end, Cells c, double[] first, double[] last, double[] sweptLeft, double[] sweptRight, double[] middle) {
        double[] leftDensity = c.leftDensity;
        double[] leftVelocity = c.leftVelocity;
        double[] leftPressure = c.leftPressure;
        double[] rightDensity = c.rightDensity;
        double[] rightVelocity = c.rightVelocity;
        double[] rightPressure = c.rightPressure;
        for (int f = Cells.FIRST; f < end; f++) {
            sweptLeft[f] = leftDensity[f] * (first[f] - leftVelocity[f]);
            sweptRight[f] = rightDensity[f] * (last[f] - rightVelocity[f]);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            middle[f] = ((rightPressure[f] - leftPressure[f])
                            + sweptLeft[f] * leftVelocity[f]
                            - sweptRight[f] * rightVelocity[f])
                    / (sweptLeft[f] - sweptRight[f]);
        }
    }

    /** From swept mass to density between the waves, in place, and the pressure there. */
    private static void stars(
            int end,
            Cells c,
            double[] first,
            double[] last,
            double[] middle,
            double[] sweptLeft,
            double[] sweptRight,
            double[] inverseLeft,
            double[] inverseRight,
            double[] starPressure) {
        double[] leftVelocity = c.leftVelocity;
        double[] leftPressure = c.leftPressure;
        for (int f = Cells.FIRST; f < end; f++) {
            starPressure[f] = leftPressure[f] + sweptLeft[f] * (middle[f] - leftVelocity[f]);
        }
        star(end, first, middle, inverseLeft, sweptLeft);
        star(end, last, middle, inverseRight, sweptRight);
    }

    private static void star(int end, double[] wave, double[] middle, double[] inverse, double[] swept) {
        for (int f = Cells.FIRST; f < end; f++) {
            double one = 1 / (wave[f] - middle[f]);
            inverse[f] = one;
            swept[f] = swept[f] * one;
        }
    }

    private static void starEnergy(
            int end,
            double[] wave,
            double[] velocity,
            double[] pressure,
            double[] energy,
            double[] starPressure,
            double[] middle,
            double[] inverse,
            double[] star) {
        for (int f = Cells.FIRST; f < end; f++) {
            star[f] = ((wave[f] - velocity[f]) * energy[f] - pressure[f] * velocity[f] + starPressure[f] * middle[f])
                    * inverse[f];
        }
    }

    /** Of each wave only as much counts as runs to the left. */
    private static void backward(int end, double[] first, double[] middle, double[] last, double[] middleIn) {
        for (int f = Cells.FIRST; f < end; f++) {
            first[f] = 0.5 * (first[f] - Math.abs(first[f]));
            last[f] = 0.5 * (last[f] - Math.abs(last[f]));
            middleIn[f] = 0.5 * (middle[f] - Math.abs(middle[f]));
        }
    }

    private static void massFlux(
            int end,
            double[] momentumLeft,
            double[] densityLeft,
            double[] densityRight,
            double[] first,
            double[] middle,
            double[] last,
            double[] starLeft,
            double[] starRight,
            double[] flux) {
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = momentumLeft[f]
                    + first[f] * (starLeft[f] - densityLeft[f])
                    + middle[f] * (starRight[f] - starLeft[f])
                    + last[f] * (densityRight[f] - starRight[f]);
        }
    }

    private static void momentumFlux(
            int end,
            Cells c,
            double[] momentumLeft,
            double[] momentumRight,
            double[] first,
            double[] middleIn,
            double[] last,
            double[] middle,
            double[] starLeft,
            double[] starRight) {
        double[] velocity = c.leftVelocity;
        double[] pressure = c.leftPressure;
        double[] flux = c.momentumFlux;
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = momentumLeft[f] * velocity[f]
                    + pressure[f]
                    + first[f] * (starLeft[f] * middle[f] - momentumLeft[f]);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = flux[f]
                    + middleIn[f] * middle[f] * (starRight[f] - starLeft[f])
                    + last[f] * (momentumRight[f] - starRight[f] * middle[f]);
        }
    }

    private static void energyFlux(
            int end,
            double[] velocity,
            double[] pressure,
            double[] energyLeft,
            double[] energyRight,
            double[] first,
            double[] middle,
            double[] last,
            double[] starLeft,
            double[] starRight,
            double[] flux) {
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = velocity[f] * (energyLeft[f] + pressure[f])
                    + first[f] * (starLeft[f] - energyLeft[f])
                    + middle[f] * (starRight[f] - starLeft[f])
                    + last[f] * (energyRight[f] - starRight[f]);
        }
    }

    // ---- a step forward

    @Override
    public void advance(Cells c, double dt) {
        int end = c.end();
        double[] share = c.scratch(0);
        double[] braking = c.scratch(1);
        double[] heating = c.scratch(2);
        for (int i = Cells.FIRST; i < end; i++) {
            share[i] = dt / c.step * c.inverseArea[i];
        }
        warmth(end, c, heating);
        for (int i = Cells.FIRST; i < end; i++) {
            double stream = dt * c.midDensity[i] * Math.abs(c.midVelocity[i]);
            braking[i] = stream * c.friction[i] * c.midVelocity[i];
            heating[i] = stream * c.heat[i] * heating[i];
        }
        carry(end, share, c.massFlux, c.faceArea, c.mass, c.nextMass);
        carry(end, share, c.burnedFlux, c.faceArea, c.burned, c.nextBurned);
        momentum(end, share, c, braking);
        carry(end, share, c.energyFlux, c.faceArea, c.energy, c.nextEnergy);
        for (int i = Cells.FIRST; i < end; i++) {
            c.nextEnergy[i] = c.nextEnergy[i] + heating[i];
        }
    }

    /** What a mass of gas takes up at constant pressure to come to the wall's temperature. */
    private static void warmth(int end, Cells c, double[] heating) {
        double[] share = c.midShare;
        double[] density = c.midDensity;
        double[] pressure = c.midPressure;
        double[] capacity = c.heatCapacity;
        double[] wall = c.wall;
        double r0 = c.gasFresh;
        double r1 = c.gasMore;
        for (int i = Cells.FIRST; i < end; i++) {
            double r = r0 + r1 * share[i];
            heating[i] = (capacity[i] + r) * (wall[i] - pressure[i] / (density[i] * r));
        }
    }

    private static void carry(int end, double[] share, double[] flux, double[] area, double[] now, double[] next) {
        for (int i = Cells.FIRST; i < end; i++) {
            next[i] = now[i] - share[i] * (flux[i] * area[i] - flux[i - 1] * area[i - 1]);
        }
    }

    private static void momentum(int end, double[] share, Cells c, double[] braking) {
        double[] flux = c.momentumFlux;
        double[] area = c.faceArea;
        double[] pressure = c.midPressure;
        double[] now = c.momentum;
        double[] next = c.nextMomentum;
        for (int i = Cells.FIRST; i < end; i++) {
            next[i] = now[i]
                    - share[i] * (flux[i] * area[i] - flux[i - 1] * area[i - 1] - pressure[i] * (area[i] - area[i - 1]))
                    - braking[i];
        }
    }
}
