package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.quantity.Require;

/**
 * Waves that run up and down a valve spring when a harmonic of the lift meets its natural frequency. Wave equation of a spring held at the seat and moved at
 * the retainer; Wahl, Mechanical Springs, chapter on surge; Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 10-8; from memory.
 */
public final class Surge {
    /**
     * Natural frequency over turns of the cam a second that handbooks ask for, the lower figure of 15 to 20; Shigley section 10-8; from memory. A guide: what
     * counts is the harmonic that meets it.
     */
    public static final double HANDBOOK_RATIO = 15;

    private Surge() {}

    /**
     * One harmonic of the lift and the speed at which it meets the spring.
     * @param order     times a turn of the cam
     * @param amplitude of that harmonic [m]
     * @param camSpeed  at which order times it is the natural frequency [rad/s]
     */
    public record Meeting(int order, double amplitude, double camSpeed) {
        public double crankSpeed() {
            return 2 * camSpeed;
        }
    }

    /**
     * Amplitude of a harmonic of the lift, by the Fourier sum [m].
     * @param lifts evenly spaced over one turn of the cam, valve shut included
     * @param order 1 and up, below half their number
     */
    public static double harmonic(List<Double> lifts, int order) {
        Require.within("order of a harmonic", order, 1, Math.max(1, (lifts.size() - 1) / 2));
        double cosine = 0;
        double sine = 0;
        for (int k = 0; k < lifts.size(); k++) {
            double angle = 2 * Math.PI * order * k / lifts.size();
            cosine += lifts.get(k) * Math.cos(angle);
            sine += lifts.get(k) * Math.sin(angle);
        }
        return 2 * Math.hypot(cosine, sine) / lifts.size();
    }

    /**
     * Every meeting within a range of orders, the quickest cam first.
     * @param naturalFrequency of the spring with both ends held [Hz], see {@code engine.CoilSpring}
     */
    public static List<Meeting> meetings(List<Double> lifts, double naturalFrequency, int first, int last) {
        Require.positive("natural frequency of the spring [Hz]", naturalFrequency);
        List<Meeting> meetings = new ArrayList<>();
        for (int order = first; order <= last; order++) {
            double camSpeed = 2 * Math.PI * naturalFrequency / order;
            meetings.add(new Meeting(order, harmonic(lifts, order), camSpeed));
        }
        return List.copyOf(meetings);
    }

    /**
     * Load that swings at both ends of the spring at a meeting, on top of the steady one [N]: rate times amplitude over the share of critical damping. By the first
     * mode: its forcing is 2/pi of the amplitude, its strain at the ends pi times its size.
     * @param damping share of critical damping, above 0; valve springs without damper have 0.005 to 0.02 (common practice, no source)
     */
    public static double swingingLoad(double rate, double amplitude, double damping) {
        Require.positive("share of critical damping", damping);
        return rate * amplitude / damping;
    }
}
