package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import longthrow.core.ReferenceRows;
import longthrow.core.flow.Enlargement;
import longthrow.core.flow.Isentropic;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Two pipe ends and a throat between them: one meeting of two states, and waves that run through. */
class JointTest {
    private static final PipeGases TWO = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));
    private static final PipeGases AIR = PipeGases.alone(new PipeGas(287, 717.5, 0));
    private static final double SOUND = Math.sqrt(1.4 * 287 * 300);

    private static PipeFlow uniform(
            PipeGases gases, double diameter, double pressure, double temperature, double velocity, double burned) {
        PipeFlow flow = new PipeFlow(PipeShape.straight(0.3, 3, diameter), gases, new PlainKernel());
        flow.fill(x -> pressure, x -> temperature, x -> velocity, x -> burned);
        flow.predict(flow.longestStep());
        return flow;
    }

    private static PipeFlow pulse(double length, int cells, double diameter, double from, double size) {
        PipeFlow flow = new PipeFlow(PipeShape.straight(length, cells, diameter), AIR, new PlainKernel());
        double middle = 0.5 * length;
        flow.fill(
                x -> 1e5 * Math.pow(1 + 0.2 * bump(x - middle - from, size), 7),
                x -> 300 * Math.pow(1 + 0.2 * bump(x - middle - from, size), 2),
                x -> SOUND * bump(x - middle - from, size),
                x -> 0);
        return flow;
    }

    /** Smooth and of no slope at its foot; of velocity over sound speed. */
    private static double bump(double x, double size) {
        double near = x / 0.1;
        return Math.abs(near) >= 1 ? 0 : size * Math.pow(Math.cos(0.5 * Math.PI * near), 4);
    }

    private static void run(PipeFlow first, PipeFlow second, double throat, double time) {
        Joint joint = new Joint(AIR);
        double now = 0;
        while (now < time) {
            double dt = Math.min(Math.min(first.longestStep(), second.longestStep()), time - now);
            first.predict(dt);
            second.predict(dt);
            first.open(Side.LEFT);
            joint.join(first, Side.RIGHT, second, Side.LEFT, throat, throat);
            second.open(Side.RIGHT);
            first.finish(dt);
            second.finish(dt);
            now += dt;
        }
    }

    private static double furthest(PipeFlow flow) {
        double furthest = 0;
        for (int k = 0; k < flow.shape().cells(); k++) {
            double off = flow.pressure(k) / 1e5 - 1;
            furthest = Math.abs(off) > Math.abs(furthest) ? off : furthest;
        }
        return furthest;
    }

    /** A wave of a tenth of the sound speed from one piece into the next: nothing of it comes back. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 0.02, 0.1})
    void wherePipesGoOnAlikeWavesPass(double size) {
        PipeFlow first = pulse(0.5, 100, 0.03, 0, size);
        PipeFlow second = pulse(0.5, 100, 0.03, 9, size);
        double came = furthest(first);
        run(first, second, 1, 0.5 / SOUND);
        assertThat(furthest(second) / came).isBetween(0.8, 1.0);
        assertThat(Math.abs(furthest(first) / came)).isLessThan(1e-3);
    }

    /** The same from the second into the first. */
    @Test
    void theyPassTheOtherWayToo() {
        PipeFlow first = pulse(0.5, 100, 0.03, 9, 0);
        PipeFlow second = new PipeFlow(PipeShape.straight(0.5, 100, 0.03), AIR, new PlainKernel());
        second.fill(
                x -> 1e5 * Math.pow(1 + 0.2 * bump(x - 0.25, 0.1), 7),
                x -> 300 * Math.pow(1 + 0.2 * bump(x - 0.25, 0.1), 2),
                x -> -SOUND * bump(x - 0.25, 0.1),
                x -> 0);
        double came = furthest(second);
        run(first, second, 1, 0.5 / SOUND);
        assertThat(furthest(first) / came).isBetween(0.8, 1.0);
        assertThat(Math.abs(furthest(second) / came)).isLessThan(1e-3);
    }

    /** GAS-23: a pulse of a hundredth at a step, up and down. */
    @ParameterizedTest
    @CsvSource({"0.25, 1", "0.5, 3", "2, 5", "4, 7"})
    void aStepThrowsBackAndLetsThroughAsSoundDoes(double areas, int row) {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        PipeFlow first = pulse(0.5, 500, 0.03, 0, 0.01 / 1.4);
        PipeFlow second = pulse(0.5, 500, 0.03 * Math.sqrt(areas), 9, 0);
        double came = furthest(first);
        run(first, second, 1, 0.5 / SOUND);
        rows.row("GAS-23." + row).check(furthest(first) / came, 0.01);
        rows.row("GAS-23." + (row + 1)).check(furthest(second) / came, 0.01);
    }

    /** GAS-34 and GAS-33: what the throat makes of one state, told by what it lets through. */
    @Test
    void aSuddenEnlargementLosesWhatBordaAndCarnotSay() {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        double behind = rows.row("GAS-34.2").value();
        double speed = rows.row("GAS-34.1").value() * SOUND * Math.sqrt(temperatureBehind(rows));
        PipeFlow first = uniform(AIR, 0.03, 1e5, 300, 0.4 * SOUND, 0);
        PipeFlow second = uniform(AIR, 0.03 * Math.sqrt(2), 1e5 * behind, 300 * temperatureBehind(rows), speed, 0);
        Joint joint = new Joint(AIR);
        joint.join(first, Side.RIGHT, second, Side.LEFT, 1, 1);
        double mass = 1e5 / (287 * 300) * 0.4 * SOUND * first.endArea(Side.RIGHT);
        assertThat(joint.mass() / mass).isCloseTo(1, within(1e-8)); // the row's digits
        assertThat(joint.throatMach()).isCloseTo(0.4, within(1e-8));
    }

    private static double temperatureBehind(ReferenceRows rows) {
        double m2 = rows.row("GAS-34.1").value();
        return Isentropic.temperature(1.4, m2) / Isentropic.temperature(1.4, 0.4);
    }

    /** GAS-33: step down without contraction, isentropic. */
    @Test
    void aStepDownThatIsFilledLosesNothing() {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        double warm = rows.row("GAS-33.3").value();
        double mach = rows.row("GAS-33.1").value();
        double behind = rows.row("GAS-33.2").value();
        PipeFlow first = uniform(AIR, 0.03, 1e5, 300, 0.3 * SOUND, 0);
        PipeFlow second =
                uniform(AIR, 0.03 * Math.sqrt(0.7), 1e5 * behind, 300 * warm, mach * SOUND * Math.sqrt(warm), 0);
        Joint joint = new Joint(AIR);
        joint.join(first, Side.RIGHT, second, Side.LEFT, 1, 1);
        double mass = 1e5 / (287 * 300) * 0.3 * SOUND * first.endArea(Side.RIGHT);
        assertThat(joint.mass() / mass).isCloseTo(1, within(1e-9));
        assertThat(joint.throatMach()).isCloseTo(mach, within(1e-9));
    }

    /** A plate in a pipe: slow flow loses ((pipe over stream) - 1) squared of the dynamic pressure, as Borda and Carnot have it. */
    @Test
    void aPlateLosesAsSlowFlowDoes() {
        double open = 0.5;
        double stream = open * Contraction.sharp(open);
        double speed = 0.01 * SOUND;
        double density = 1e5 / (287 * 300);
        double drop = Math.pow(1 / stream - 1, 2) * 0.5 * density * speed * speed;
        PipeFlow first = uniform(AIR, 0.03, 1e5, 300, speed, 0);
        PipeFlow second = uniform(AIR, 0.03, 1e5 - drop, 300, speed, 0);
        Joint joint = new Joint(AIR);
        joint.join(first, Side.RIGHT, second, Side.LEFT, stream * first.endArea(Side.RIGHT), 0);
        double mass = density * speed * first.endArea(Side.RIGHT);
        assertThat(joint.mass() / mass).isCloseTo(1, within(1e-3)); // compression: the square of Mach in the throat
    }

    /** 26,000 seeded pairs of states, widths and throats, both ways. */
    @Test
    void noPairIsEverWithoutAnAnswerAndNoneTurnsAgainstThePressure() {
        SplittableRandom random = new SplittableRandom(20_261_128);
        Joint joint = new Joint(TWO);
        for (int n = 0; n < 2000; n++) {
            double pressure = 1e5 * Math.pow(10, random.nextDouble(-1, 1.3));
            double temperature = random.nextDouble(230, 2400);
            double burned = random.nextDouble();
            double mach = random.nextDouble(-0.9, 0.9);
            double wide = 0.03 * Math.sqrt(random.nextInt(4) == 0 ? 1 : Math.pow(10, random.nextDouble(-1, 1)));
            double share = random.nextInt(4) == 0 ? 1 : Math.pow(10, random.nextDouble(-5, 0));
            PipeFlow first = uniform(
                    TWO, wide, pressure, temperature, mach * TWO.at(burned).soundSpeed(temperature), burned);
            double other = random.nextDouble(230, 2400);
            double share2 = random.nextDouble();
            double speed2 = random.nextDouble(-0.9, 0.9) * TWO.at(share2).soundSpeed(other);
            double before = Double.POSITIVE_INFINITY;
            String said = n + ": p " + pressure + " T " + temperature + " M " + mach + " wide " + wide + " throat "
                    + share + " to T " + other + " u " + speed2;
            double most = pressure / Math.sqrt(287 * temperature) * first.endArea(Side.RIGHT);
            for (int k = 0; k <= 12; k++) {
                PipeFlow second = uniform(TWO, 0.03, pressure * Math.pow(1.45, k - 8), other, speed2, share2);
                double area = share * Math.min(first.endArea(Side.RIGHT), second.endArea(Side.LEFT));
                joint.join(first, Side.RIGHT, second, Side.LEFT, area, area);
                double mass = joint.mass();
                boolean good = Double.isFinite(mass + joint.energy() + joint.burned() + joint.throatMach())
                        && joint.energy() * mass >= 0
                        && Math.abs(joint.throatMach()) <= 1 + 1e-9;
                if (!good || !(mass <= before + 1e-9 * Math.max(most, Math.abs(mass)))) {
                    fail(said + " step " + k + ": " + mass + " after " + before + ", Mach " + joint.throatMach());
                }
                before = mass;
            }
        }
    }

    @Test
    void whatNoThroatCanBeIsRefused() {
        PipeFlow flow = uniform(AIR, 0.03, 1e5, 300, 0, 0);
        assertThatThrownBy(() -> new Joint(AIR).join(flow, Side.LEFT, flow, Side.RIGHT, -1, 0))
                .hasMessageContaining("0 or above");
    }

    /** What a joint may leave out: behind a throat at the speed of sound the loss never leaves more of the stagnation pressure than this. */
    @ParameterizedTest
    @ValueSource(doubles = {1.05, 1.1, 1.2, 1.3, 1.4, 1.67})
    void noThroatChokesAboveTheShareThatIsLookedAt(double gamma) {
        double most = 0;
        double total = gamma / (gamma - 1) * 287 * 300;
        double pressure = Isentropic.criticalPressure(gamma);
        double speed = Math.sqrt(2 * (gamma - 1) / (gamma + 1) * total);
        double flow = Isentropic.massFlow(gamma, 1) / Math.sqrt(287 * 300.0);
        for (double width = 0.001; width < 1; width += 0.001) {
            double thrust = pressure + width * flow * speed;
            double behind = thrust - width * flow * Enlargement.speed(gamma, width * flow, thrust, total);
            most = Math.max(most, behind);
        }
        assertThat(most).isBetween(0.7, Joint.NEVER_CHOKES - 0.02);
    }

    /** The formula against the row. */
    @Test
    void theEnlargementIsThatOfTheRow() {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        double enthalpy = 1.4 / 0.4 * 287 * 300 / Isentropic.temperature(1.4, 0.4);
        double u1 = 0.4 * SOUND;
        double rho = 1e5 / (287 * 300);
        double stream = 0.5 * rho * u1;
        double thrust = 1e5 + stream * u1;
        double speed = Enlargement.speed(1.4, stream, thrust, enthalpy);
        double sound = Math.sqrt(0.4 * (enthalpy - 0.5 * speed * speed));
        double pressure = thrust - stream * speed;
        rows.row("GAS-34.1").check(speed / sound);
        rows.row("GAS-34.2").check(pressure / 1e5);
        rows.row("GAS-34.3")
                .check(pressure / 1e5 * Isentropic.pressure(1.4, 0.4) / Isentropic.pressure(1.4, speed / sound));
    }
}
