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
        double[] stiff = c.scratch(1);
        perMass(end, c.mass, c.momentum, c.burned, c.volume, c.velocity, c.share);
        heat(end, c, c.scratch(2), c.scratch(3), temperature, stiff);
        push(end, c.mass, c.share, temperature, stiff, c.gasFresh, c.gasMore, c.pressure, c.stiffness);
        speed(end, c.velocity, c.stiffness, c.volume, c.speed);
    }

    /**
     * No number where a cell holds what no gas can: the root's square is below nothing where either pressure or mass is, and where both are what is taken from it sees to that. Of gas just nothing
     * is taken.
     */
    private static void speed(int end, double[] velocity, double[] stiffness, double[] volume, double[] speed) {
        for (int i = Cells.FIRST; i < end; i++) {
            double push = stiffness[i];
            double refused = (push - Math.abs(push)) * REFUSED;
            speed[i] = Math.abs(velocity[i]) + Math.sqrt(push * volume[i] + refused);
        }
    }

    /** More than any volume per mass. */
    public static final double REFUSED = 1e300;

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

    /** Heat capacity by energy, the root of a2 + 2 b e; the temperature; and one over the heat capacity. A division is dear, so one serves for both. */
    private static void heat(int end, Cells c, double[] warm, double[] sum, double[] temperature, double[] inverse) {
        double[] energy = c.energy;
        double[] volume = c.volume;
        double[] velocity = c.velocity;
        double[] share = c.share;
        double[] capacity = c.heatCapacity;
        double a0 = c.aFresh;
        double a1 = c.aMore;
        double b0 = 2 * c.bFresh;
        double b1 = 2 * c.bMore;
        for (int i = Cells.FIRST; i < end; i++) {
            warm[i] = energy[i] * volume[i] - 0.5 * velocity[i] * velocity[i];
        }
        for (int i = Cells.FIRST; i < end; i++) {
            double a = a0 + a1 * share[i];
            double cv = Math.sqrt(a * a + (b0 + b1 * share[i]) * warm[i]);
            capacity[i] = cv;
            sum[i] = a + cv;
        }
        for (int i = Cells.FIRST; i < end; i++) {
            double one = 1 / (sum[i] * capacity[i]);
            temperature[i] = (warm[i] + warm[i]) * (capacity[i] * one);
            inverse[i] = sum[i] * one;
        }
    }

    private static void push(
            int end,
            double[] mass,
            double[] share,
            double[] temperature,
            double[] inverse,
            double r0,
            double r1,
            double[] pressure,
            double[] stiffness) {
        for (int i = Cells.FIRST; i < end; i++) {
            double r = r0 + r1 * share[i];
            double p = mass[i] * r * temperature[i];
            pressure[i] = p;
            stiffness[i] = p + p * (r * inverse[i]);
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
        double[] back = c.scratch(4);
        double[] fore = c.scratch(5);
        int end = c.end();
        slopes(end, c.mass, back, fore, density);
        slopes(end, c.velocity, back, fore, velocity);
        slopes(end, c.pressure, back, fore, pressure);
        slopes(end, c.share, back, fore, share);
        double half = 0.5 * dt / c.step;
        double[] densityStep = c.scratch(5);
        double[] velocityStep = c.scratch(6);
        double[] pressureStep = c.scratch(7);
        double[] shareStep = c.scratch(8);
        double[] spread = back;
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
     * comparisons and much less than a division: with the sum s and the difference d of both sides, |s| - |d| is twice the smaller one, and below nothing at a peak; and half of |h + l| - |h - l| is
     * h held between -l and l.
     */
    private static void slopes(int end, double[] of, double[] back, double[] fore, double[] slope) {
        for (int i = Cells.FIRST; i <= end; i++) {
            back[i] = of[i] - of[i - 1];
        }
        shifted(back, 1, fore, end); // a loop that reads one array at two places the compiler leaves as it is
        for (int i = Cells.FIRST; i < end; i++) {
            double s = back[i] + fore[i];
            double over = Math.abs(s) - Math.abs(back[i] - fore[i]);
            double most = 0.5 * (over + Math.abs(over));
            double half = 0.5 * s;
            slope[i] = 0.5 * (Math.abs(half + most) - Math.abs(half - most));
        }
    }

    private static void shifted(double[] from, int by, double[] to, int end) {
        System.arraycopy(from, Cells.FIRST + by, to, Cells.FIRST, end - Cells.FIRST);
    }

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
        double[] gasLeft = c.scratch(4);
        double[] gasRight = c.scratch(5);
        double[] warmLeft = c.scratch(6);
        double[] warmRight = c.scratch(7);
        double[] capacityLeft = c.scratch(8);
        double[] capacityRight = c.scratch(9);
        gas(end, c, c.leftShare, gasLeft);
        gas(end, c, c.rightShare, gasRight);
        warmth(end, c, gasLeft, gasRight, soundLeft, soundRight, energyLeft, warmLeft, warmRight);
        energy(end, c, c.leftDensity, c.leftVelocity, c.leftShare, warmLeft, capacityLeft, energyLeft);
        energy(end, c, c.rightDensity, c.rightVelocity, c.rightShare, warmRight, capacityRight, energyRight);
        double[] one = c.scratch(10);
        for (int f = Cells.FIRST; f < end; f++) {
            one[f] = 1 / (capacityLeft[f] * capacityRight[f]);
        }
        sound(end, gasLeft, warmLeft, capacityRight, one, soundLeft);
        sound(end, gasRight, warmRight, capacityLeft, one, soundRight);
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
        double[] starEnergyLeft = gasLeft;
        double[] starEnergyRight = gasRight;
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
        double[] middleIn = warmLeft;
        backward(end, first, middle, last, middleIn);
        double[] momentumLeft = warmRight;
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

    private static void gas(int end, Cells c, double[] share, double[] gas) {
        double r0 = c.gasFresh;
        double r1 = c.gasMore;
        for (int f = Cells.FIRST; f < end; f++) {
            gas[f] = r0 + r1 * share[f];
        }
    }

    /** Temperatures of both sides by one division. */
    private static void warmth(
            int end,
            Cells c,
            double[] gasLeft,
            double[] gasRight,
            double[] left,
            double[] right,
            double[] one,
            double[] warmLeft,
            double[] warmRight) {
        double[] leftDensity = c.leftDensity;
        double[] rightDensity = c.rightDensity;
        double[] leftPressure = c.leftPressure;
        double[] rightPressure = c.rightPressure;
        for (int f = Cells.FIRST; f < end; f++) {
            double l = leftDensity[f] * gasLeft[f];
            double r = rightDensity[f] * gasRight[f];
            left[f] = l;
            right[f] = r;
            one[f] = 1 / (l * r);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            warmLeft[f] = leftPressure[f] * (right[f] * one[f]);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            warmRight[f] = rightPressure[f] * (left[f] * one[f]);
        }
    }

    /** Heat capacity, and what is in a volume, warm and moving. */
    private static void energy(
            int end,
            Cells c,
            double[] density,
            double[] velocity,
            double[] share,
            double[] temperature,
            double[] capacity,
            double[] energy) {
        double a0 = c.aFresh;
        double a1 = c.aMore;
        double b0 = c.bFresh;
        double b1 = c.bMore;
        for (int f = Cells.FIRST; f < end; f++) {
            double a = a0 + a1 * share[f];
            double bt = (b0 + b1 * share[f]) * temperature[f];
            capacity[f] = a + bt;
            energy[f] = density[f] * (temperature[f] * (a + 0.5 * bt) + 0.5 * velocity[f] * velocity[f]);
        }
    }

    /** One over both heat capacities and the other one are one over this side's. */
    private static void sound(
            int end, double[] gas, double[] temperature, double[] other, double[] one, double[] sound) {
        for (int f = Cells.FIRST; f < end; f++) {
            double rt = gas[f] * temperature[f];
            sound[f] = Math.sqrt(rt + rt * (gas[f] * (other[f] * one[f])));
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
        for (int f = Cells.FIRST; f < end; f++) {
            double left = first[f] - middle[f];
            double right = last[f] - middle[f];
            double one = 1 / (left * right);
            double l = right * one;
            double r = left * one;
            inverseLeft[f] = l;
            inverseRight[f] = r;
            sweptLeft[f] = sweptLeft[f] * l;
            sweptRight[f] = sweptRight[f] * r;
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
            flux[f] = momentumLeft[f] + first[f] * (starLeft[f] - densityLeft[f]);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = flux[f] + middle[f] * (starRight[f] - starLeft[f]) + last[f] * (densityRight[f] - starRight[f]);
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
            flux[f] = velocity[f] * (energyLeft[f] + pressure[f]) + first[f] * (starLeft[f] - energyLeft[f]);
        }
        for (int f = Cells.FIRST; f < end; f++) {
            flux[f] = flux[f] + middle[f] * (starRight[f] - starLeft[f]) + last[f] * (energyRight[f] - starRight[f]);
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
        double[] left = c.scratch(3);
        double[] right = c.scratch(4);
        carry(end, share, c.massFlux, c.faceArea, left, right, c.mass, c.nextMass);
        carry(end, share, c.burnedFlux, c.faceArea, left, right, c.burned, c.nextBurned);
        momentum(end, share, c, left, right, braking);
        carry(end, share, c.energyFlux, c.faceArea, left, right, c.energy, c.nextEnergy);
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

    private static void carry(
            int end,
            double[] share,
            double[] flux,
            double[] area,
            double[] left,
            double[] right,
            double[] now,
            double[] next) {
        stream(end, flux, area, left, right);
        for (int i = Cells.FIRST; i < end; i++) {
            next[i] = now[i] - share[i] * (right[i] - left[i]);
        }
    }

    /** Through the face on the left of each cell and the one on its right. */
    private static void stream(int end, double[] flux, double[] area, double[] left, double[] right) {
        for (int i = Cells.FIRST - 1; i < end; i++) {
            right[i] = flux[i] * area[i];
        }
        shifted(right, -1, left, end);
    }

    private static void momentum(int end, double[] share, Cells c, double[] left, double[] right, double[] braking) {
        double[] push = c.scratch(5);
        double[] before = c.scratch(6);
        double[] area = c.faceArea;
        double[] pressure = c.midPressure;
        double[] now = c.momentum;
        double[] next = c.nextMomentum;
        stream(end, c.momentumFlux, area, left, right);
        shifted(area, -1, before, end);
        for (int i = Cells.FIRST; i < end; i++) {
            push[i] = right[i] - left[i] - pressure[i] * (area[i] - before[i]);
        }
        for (int i = Cells.FIRST; i < end; i++) {
            next[i] = now[i] - share[i] * push[i] - braking[i];
        }
    }
}
