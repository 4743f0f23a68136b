package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.GasReading;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.CrankMotion;
import longthrow.core.term.Term;

/**
 * What measured gas traces make of the bounding one, for limits that hang on the gas. It counts up to the fastest speed at which one was taken: of those taken up
 * to the first at or above the speed asked for, the hardest, since an engine runs through the slower speeds too; above it the bounding trace counts again. It is
 * taken at the upper end of its doubt, a mean of cycles with what the quickest add, and against the bound of the lowest ratio that the readings allow, so that it
 * never says less than it may. It never rises above the bound, and has no part in the pull on the overrun.
 */
final class MeasuredGas {
    /** What the quickest cycles add to the mean one: about a fifth; Heywood 1988, section 9.4.2; from memory. */
    static final double QUICKEST = 1.2;

    /** Polytropic exponent of compression that a pegged trace shows: 1.2 to 1.4 of mixture with losses; Heywood 1988, section 9.3; from memory; and the cold air of the bound. */
    private static final double LEAST_EXPONENT = 1.15;

    private static final double MOST_EXPONENT = 1.45;

    /** Stretch of compression that is looked at, before fire and after the valve is shut [rad]. */
    private static final double FROM = Math.toRadians(-100);

    private static final double TO = Math.toRadians(-50);

    /** Angles of half a turn. */
    private static final int ANGLES = 720;

    /** Doubles round [1]. */
    private static final double ROUNDING = 1e-9;

    private final double fastest;
    private final double share;
    private final String said;
    private final List<String> places;

    private MeasuredGas(double fastest, double share, String said, List<String> places) {
        this.fastest = fastest;
        this.share = share;
        this.said = said;
        this.places = List.copyOf(places);
    }

    /** Highest speed up to which it says something [rad/s]. */
    double fastest() {
        return fastest;
    }

    /** Of the bound that is counted: above 0, 1 at most. */
    double share() {
        return share;
    }

    /** Which traces it is. */
    String said() {
        return said;
    }

    /** Where they stand in the build file. */
    List<String> places() {
        return places;
    }

    /**
     * What the traces of an engine come to.
     * @param gas      empty where none says anything at the speed asked for
     * @param findings which traces are not used, and why
     */
    record Told(Optional<MeasuredGas> gas, List<Finding> findings) {
        static final Told NOTHING = new Told(Optional.empty(), List.of());

        Told {
            findings = List.copyOf(findings);
        }
    }

    /** One that can be of this engine. */
    private record Sound(double speed, double share, String place, String written) {}

    /**
     * Of an engine.
     * @param asked speed that limits are held against [rad/s]; empty for none
     */
    static Told of(Known known, Optional<Measured> asked) {
        Build build = known.build();
        Optional<Measured> stroke = known.figure(Term.STROKE);
        Optional<Measured> rod = known.figure(Term.ROD_LENGTH);
        Optional<Measured> ratio = known.figure(Term.COMPRESSION_RATIO);
        if (build.gas().isEmpty()) {
            return Told.NOTHING;
        }
        if (stroke.isEmpty() || rod.isEmpty() || ratio.isEmpty() || asked.isEmpty()) {
            return new Told(
                    Optional.empty(),
                    List.of(new Finding(
                            Finding.Kind.WARNING,
                            "gas_traces",
                            "the gas traces are not used: stroke, rod length, compression ratio and a speed must be known to hold them against",
                            "read what is missing: see measure")));
        }
        CrankMotion crank = new CrankMotion(stroke.get().value() / 2, rod.get().value(), 0);
        List<Finding> findings = new ArrayList<>();
        List<Sound> sound = new ArrayList<>();
        for (int k = 0; k < build.gas().size(); k++) {
            String place = "gas_traces[" + (k + 1) + "]";
            GasReading reading = build.gas().get(k);
            Optional<GasReading.Trouble> trouble =
                    reading.trouble().or(() -> againstTheEngine(reading, crank, ratio.get()));
            if (trouble.isPresent()) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        place,
                        "this gas trace is not used: " + trouble.get().found() + " "
                                + trouble.get().why(),
                        trouble.get().mend()));
            } else {
                sound.add(new Sound(
                        reading.speed().si(),
                        share(reading, crank, lowest(ratio.get()), 1, true),
                        place,
                        reading.speed().written()));
            }
        }
        sound.sort(Comparator.comparingDouble(Sound::speed));
        double speed = asked.get().standardUncertainty() > 0
                ? asked.get().high()
                : asked.get().value();
        return new Told(chosen(sound, speed, findings), findings);
    }

    private static Optional<MeasuredGas> chosen(List<Sound> sound, double speed, List<Finding> findings) {
        if (sound.isEmpty()) {
            return Optional.empty();
        }
        Sound fastest = sound.get(sound.size() - 1);
        if (speed > fastest.speed() * (1 + ROUNDING)) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    fastest.place(),
                    "no gas trace was taken at the speed asked for or above it, the fastest at " + fastest.written()
                            + ": the bounding one counts",
                    "take one at that speed, if it may be run"));
            return Optional.empty();
        }
        List<Sound> heard = new ArrayList<>();
        for (Sound one : sound) {
            heard.add(one);
            if (one.speed() * (1 + ROUNDING) >= speed) {
                break;
            }
        }
        Sound hardest =
                heard.stream().max(Comparator.comparingDouble(Sound::share)).orElseThrow();
        double top = heard.get(heard.size() - 1).speed();
        return Optional.of(new MeasuredGas(
                top,
                Math.min(1, hardest.share()),
                "the gas trace measured at " + hardest.written() + " (" + hardest.place() + ")",
                heard.stream().map(Sound::place).toList()));
    }

    private static double lowest(Measured ratio) {
        return Math.max(1.5, ratio.value() - ratio.expanded());
    }

    /** Against the sizes of the engine: no trace rises above its bound, and one that is pegged compresses as gas does. */
    private static Optional<GasReading.Trouble> againstTheEngine(
            GasReading reading, CrankMotion crank, Measured ratio) {
        double least = share(reading, crank, ratio.value() + ratio.expanded(), -1, false);
        if (least > 1 + ROUNDING) {
            return Optional.of(new GasReading.Trouble(
                    String.format(java.util.Locale.ROOT, "%.2f", least) + " times what the bounding trace has",
                    "is more than any sound unblown engine of this ratio makes: scale, pegging, angle or ratio is wrong, or it knocks",
                    "check the transducer's scale and the ratio; an engine that knocks is not run"));
        }
        GivenGas gas = gas(reading, 1);
        double exponent = Math.log(absolute(gas, TO) / absolute(gas, FROM))
                / Math.log(volume(crank, ratio.value(), FROM) / volume(crank, ratio.value(), TO));
        return exponent >= LEAST_EXPONENT && exponent <= MOST_EXPONENT
                ? Optional.empty()
                : Optional.of(
                        new GasReading.Trouble(
                                String.format(
                                        java.util.Locale.ROOT, "an exponent of %.2f from -100° to -50°", exponent),
                                "is not how gas is compressed, which is " + LEAST_EXPONENT + " to " + MOST_EXPONENT
                                        + ": pegging, angle or ratio is wrong",
                                "peg it at bottom dead centre before compression, set 0° to top dead centre within a degree, and check the ratio"));
    }

    private static double absolute(GasTrace gas, double angle) {
        return gas.gauge(angle) + GasTrace.STANDARD_ATMOSPHERE;
    }

    /** Over the clearance volume. */
    private static double volume(CrankMotion crank, double ratio, double angle) {
        return 1 + (ratio - 1) * crank.travel(angle) / crank.stroke();
    }

    private static GivenGas gas(GasReading reading, double times) {
        List<GivenGas.Point> points = new ArrayList<>();
        for (GasReading.Row row : reading.rows()) {
            double angle = row.angle().si();
            double turned = angle - GasTrace.CYCLE * Math.floor(angle / GasTrace.CYCLE);
            points.add(new GivenGas.Point(turned >= GasTrace.CYCLE ? 0 : turned, reading.absolute(row) * times));
        }
        points.sort(Comparator.comparingDouble(GivenGas.Point::angle));
        List<GivenGas.Point> once = new ArrayList<>();
        for (GivenGas.Point point : points) {
            boolean isTwice = !once.isEmpty()
                    && point.angle() <= once.get(once.size() - 1).angle();
            if (isTwice) { // both ends of a whole cycle
                GivenGas.Point other = once.remove(once.size() - 1);
                once.add(other.absolute() > point.absolute() ? other : point);
            } else {
                once.add(point);
            }
        }
        return new GivenGas(once);
    }

    /**
     * The larger of its share in the push on the piston and in the torque on the crank.
     * @param end        of its doubt: 1 for the upper one
     * @param isQuickest whether a mean of cycles is raised to the quickest
     */
    private static double share(GasReading reading, CrankMotion crank, double ratio, int end, boolean isQuickest) {
        double cycles = isQuickest && reading.cycles() == GasReading.Cycles.MEAN ? QUICKEST : 1;
        GivenGas gas = gas(reading, cycles * (1 + end * reading.within().si()));
        BoundingGas bound = BoundingGas.of(crank, ratio);
        double push = gas.points().stream()
                        .mapToDouble(GivenGas.Point::absolute)
                        .max()
                        .orElseThrow()
                - GasTrace.STANDARD_ATMOSPHERE;
        return Math.max(
                push / (bound.peak() - GasTrace.STANDARD_ATMOSPHERE), torque(gas, crank) / torque(bound, crank));
    }

    private static double torque(GasTrace gas, CrankMotion crank) {
        double most = 0;
        for (int k = 0; k < ANGLES; k++) {
            double angle = Math.PI * k / ANGLES; // half a turn after firing
            most = Math.max(most, gas.gauge(angle) * crank.travelSlope(angle));
        }
        return most;
    }
}
