package longthrow.core.life;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.formula.Expression;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.Timing;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/** Pull, kick-back and release by energy and limits; speeds of acceptance cases S1, S3 and S4 (invented engines). */
class StartingTest {
    private static final CrankMotion CRANK = new CrankMotion(0.027, 0.084, 0);
    private static final Starting START = new Starting(CRANK, 0.068, 9, Math.toRadians(120));

    /** Torque summed over the way up is the closed work. */
    @Test
    void torqueOverCompressionIsItsWork() {
        double sum = 0;
        int parts = 200_000;
        for (int k = 0; k < parts; k++) {
            sum += START.torque(START.closes() * (k + 0.5) / parts) * START.closes() / parts;
        }
        assertThat(START.work()).isCloseTo(sum, within(1e-6 * sum));
        assertThat(START.hardestPull(0.04)).isCloseTo(START.hardestTorque() / 0.04, within(1e-12));
        assertThat(START.gauge(Math.toRadians(150))).isZero();
        Starting later = new Starting(CRANK, 0.068, 9, Math.toRadians(60));
        assertThat(later.hardestTorque()).isLessThan(0.6 * START.hardestTorque()); // what a release is for
    }

    /** What is left of the work after the spark, and the flywheel that pays for it. */
    @Test
    void flywheelCarriesItOverOrItKicksBack() {
        double spark = Math.toRadians(25);
        double unburnt = START.workAfterSpark(spark, false);
        double burnt = START.workAfterSpark(spark, true);
        assertThat(START.workAfterSpark(START.closes(), false)).isCloseTo(START.work(), within(1e-9));
        assertThat(burnt).isGreaterThan(3 * unburnt);
        double speed = START.speedToPass(0.01, spark, true);
        assertThat(0.5 * 0.01 * speed * speed).isCloseTo(burnt, within(1e-9));
        assertThat(START.speedToPass(0.02, spark, true)).isCloseTo(speed / Math.sqrt(2), within(1e-9));
        assertThat(START.speedToPass(0.01, Math.toRadians(10), true)).isLessThan(speed); // later spark, lighter kick
    }

    /** No hole: the closed line. A barn door: no pressure. Faster cranking: more pressure. */
    @Test
    void releaseLetsOutWhatItHasTimeFor() {
        double shut = START.gaugeWithRelease(0, 30);
        assertThat(shut).isCloseTo(START.gauge(0), within(1e-6 * shut));
        double area = Starting.releaseArea(0.024, 0.3e-3, 0.65);
        double slow = START.gaugeWithRelease(area, Units.RPM.toSi(200));
        double fast = START.gaugeWithRelease(area, Units.RPM.toSi(800));
        assertThat(slow).isLessThan(fast);
        assertThat(fast).isLessThan(shut);
        assertThat(START.gaugeWithRelease(1e-2, 30)).isLessThan(2000);
        assertThat(START.hardestTorqueWithRelease(0, 30))
                .isCloseTo(START.hardestTorque(), within(1e-3 * START.hardestTorque()));
        assertThat(START.hardestTorqueWithRelease(area, Units.RPM.toSi(200)))
                .isLessThan(START.hardestTorqueWithRelease(area, Units.RPM.toSi(800)));
        assertThatThrownBy(() -> START.gaugeWithRelease(area, 0)).hasMessageContaining("cranking speed");
        assertThatThrownBy(() -> new Starting(CRANK, 0.068, 9, 4))
                .hasMessageContaining("closing before top dead centre");
    }

    /** The same leak as one differential equation for pressure and mass, in steps a hundred times finer: first law for an open cylinder. */
    @Test
    void releaseIsThatOfTheFirstLaw() {
        double leak = 4e-6;
        double speed = Units.RPM.toSi(400);
        double gamma = 1.4;
        double gas = 287.053;
        double p = 101_325;
        double mass = p * START.volume(START.closes()) / (gas * 300);
        int parts = 120_000;
        double step = START.closes() / parts;
        for (int k = 0; k < parts; k++) {
            double before = START.closes() - k * step;
            double volume = START.volume(before);
            double shrink = (START.volume(before - step) - volume) / step;
            double ratio = Math.max(101_325 / p, Math.pow(2 / (gamma + 1), gamma / (gamma - 1)));
            double temperature = p * volume / (gas * mass);
            double shape =
                    2 * gamma / (gamma - 1) * (Math.pow(ratio, 2 / gamma) - Math.pow(ratio, (gamma + 1) / gamma));
            double flow = leak * p * Math.sqrt(Math.max(0, shape) / (gas * temperature)) / speed; // a radian
            p += step * (-gamma * p * shrink - gamma * gas * temperature * flow) / volume;
            mass -= step * flow;
        }
        assertThat(p - 101_325).isBetween(0.2 * START.gauge(0), 0.9 * START.gauge(0));
        assertThat(START.gaugeWithRelease(leak, speed)).isCloseTo(p - 101_325, within(0.005 * p));
    }

    /** S1: 17,370 m/s2 at 6500 r/min and the ring good to about 7920; half the last digit. */
    @Test
    void ringOfS1IsNotWhatStopsIt() {
        Expression radius = number(28.25e-3);
        Expression rod = number(86.40e-3);
        Expression speed = number(Units.RPM.toSi(6500));
        assertThat(value(Timing.topAcceleration(radius, rod, speed))).isCloseTo(17_370, within(10.0));
        Expression bears = Timing.ringBears(number(1.5e-3));
        assertThat(value(bears)).isCloseTo(25_800, within(50.0));
        assertThat(Units.RPM.fromSi(value(Timing.speedOfTopAcceleration(radius, rod, bears))))
                .isCloseTo(7920, within(10.0));
    }

    /** S3 and S4: rim speeds as stated, and the stress of a thin iron rim, which grows with their square. */
    @Test
    void rimsOfS3AndS4RunAsFastAsStated() {
        assertThat(rim(0.215, 6000)).isCloseTo(67.5, within(0.05));
        assertThat(rim(0.215, 3600)).isCloseTo(40.5, within(0.05));
        assertThat(rim(0.457, 1250)).isCloseTo(29.9, within(0.05));
        assertThat(rim(0.457, 550)).isCloseTo(13.2, within(0.05));
        Expression iron = number(7200);
        double ratio = value(RotatingDisk.thinRim(iron, number(rim(0.215, 6000))))
                / value(RotatingDisk.thinRim(iron, number(rim(0.215, 3600))));
        assertThat(ratio).isCloseTo(2.8, within(0.05));
        assertThat(value(Timing.meanPistonSpeed(number(0.0952), number(Units.RPM.toSi(1250)))))
                .isCloseTo(3.97, within(0.005));
    }

    private static double rim(double diameter, double rpm) {
        return value(Timing.rimSpeed(number(diameter), number(Units.RPM.toSi(rpm))));
    }
}
