package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.GasReading;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/**
 * What measured gas traces make of the bounding one, for limits that hang on the gas. Each speaks for a band of speeds below its own, raised by what torque may gain
 * towards the slow end of that; an engine runs through the slower speeds too, so they count together where their bands reach without a gap from the speed asked for
 * down to where the bounding trace holds by itself, or to idle, and the hardest of them counts. A trace is
 * taken at the upper end of its doubt, a mean of cycles with what the quickest add, and against the bound of the lowest ratio that the readings allow, so that it
 * never says less than it may. It must show that it fired at full throttle. It never rises above the bound, and has no part in the pull on the overrun.
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

    /**
     * Least gross indicated work over the swept volume of an engine that fires at full throttle [Pa]. The weakest side-valve engines of the trade make 6 to 7 bar at
     * the brake where they pull hardest, to which about 1 bar of friction comes; less a sixth for high ground and a sixth for speeds past the strongest pull, 5 bar.
     * Common practice, no source, and the lowest that can be argued: a good engine shows twice as much.
     */
    static final double LEAST_WORK = Units.BAR.toSi(5);

    /** Stretch after top dead centre in which gas that burnt stands above that which was compressed, at one volume [rad]: the fire is well on and no valve opens yet. */
    private static final double BURNT_FROM = Math.toRadians(30);

    private static final double BURNT_TO = Math.toRadians(90);

    /**
     * How far below its own speed a trace speaks, as a share of that. Up to the speed of most power torque falls no faster than speed rises, for power does not fall; so
     * over the band it is raised by the one speed over the other. Farther down, and past most power, nobody can say how much more the cylinder holds; a judgement.
     */
    static final double BAND = 0.2;

    /** No engine of this kind is let idle faster [rad/s]: traces must reach down to its idle, and to this at least; a judgement. */
    static final double FASTEST_IDLE = Units.RPM.toSi(2000);

    private final List<Sound> sound;

    /** @param sound by rising speed, one at least */
    private MeasuredGas(List<Sound> sound) {
        this.sound = List.copyOf(sound);
    }

    /**
     * Traces that together speak for a range of speeds.
     * @param fastest speed up to which they do [rad/s]
     * @param share   of the bound that is counted: above 0, 1 at most
     * @param said    which traces it is
     * @param places  where they stand in the build file
     */
    record Heard(double fastest, double share, String said, List<String> places) {
        Heard {
            places = List.copyOf(places);
        }
    }

    /**
     * What counts from one speed to another; empty where no trace speaks for some speed between.
     * @param low  slowest that counts [rad/s]
     * @param high fastest that counts [rad/s], not below it
     */
    Optional<Heard> between(double low, double high) {
        int top = firstFrom(high);
        if (top == sound.size() || gap(low, high).isPresent()) {
            return Optional.empty();
        }
        List<Sound> heard = new ArrayList<>(sound.subList(top, sound.size()).stream()
                .filter(s -> s.slowest() <= high * (1 + ROUNDING)) // harder ones from a little faster count too
                .toList());
        for (int k = top; k >= 0; k--) {
            double end = Math.max(low, k == 0 ? 0 : sound.get(k - 1).speed());
            heard.add(sound.get(k).downTo(Math.min(end, sound.get(k).speed())));
            if (end <= low) {
                break;
            }
        }
        Sound hardest =
                heard.stream().max(Comparator.comparingDouble(Sound::share)).orElseThrow();
        return Optional.of(new Heard(
                sound.get(top).speed(),
                Math.min(1, hardest.share()),
                "the gas trace measured at " + hardest.written() + " (" + hardest.place() + ")",
                heard.stream().map(Sound::place).distinct().toList()));
    }

    /** First trace that was taken at a speed or above it; past the last where there is none. */
    private int firstFrom(double speed) {
        int k = 0;
        while (k < sound.size() && sound.get(k).speed() * (1 + ROUNDING) < speed) {
            k++;
        }
        return k;
    }

    /** Fastest speed between two, the lower one counted in, for which no trace speaks; empty where each is spoken for. */
    private Optional<Double> gap(double low, double high) {
        int top = firstFrom(high);
        double from = high; // all that is above it is spoken for
        for (int k = top; k >= 0 && from > low * (1 + ROUNDING); k--) {
            boolean speaks = k < sound.size()
                    && sound.get(k).slowest() <= from * (1 + ROUNDING)
                    && sound.get(k).speed() * (1 + ROUNDING) >= from;
            if (!speaks) {
                return Optional.of(from);
            }
            double next = k == 0 ? 0 : sound.get(k - 1).speed();
            from = Math.min(from, Math.max(sound.get(k).slowest(), next));
        }
        return from > low * (1 + ROUNDING) || top == sound.size() ? Optional.of(from) : Optional.empty();
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
    private record Sound(double speed, double share, String place, String written) {
        /** Slowest speed for which it speaks. */
        double slowest() {
            return speed * (1 - BAND);
        }

        /** With what torque may gain towards a slower speed. */
        Sound downTo(double slower) {
            return new Sound(speed, share * speed / Math.max(slower, slowest()), place, written);
        }
    }

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
        if (sound.isEmpty()) {
            return new Told(Optional.empty(), findings);
        }
        double speed = asked.get().standardUncertainty() > 0
                ? asked.get().high()
                : asked.get().value();
        MeasuredGas gas = new MeasuredGas(sound);
        findings.addAll(gas.silent(known, speed));
        return new Told(Optional.of(gas), findings);
    }

    /** Slowest speed at which an engine pulls at full throttle [rad/s]: where it idles; empty where nobody says. */
    static Optional<Double> slowest(Known known) {
        return known.figure(Term.IDLE_SPEED).map(i -> Math.min(FASTEST_IDLE, i.low()));
    }

    /** Where between idle and the speed asked for no trace speaks, and which traces speak of nothing between. */
    private List<Finding> silent(Known known, double asked) {
        FigurePrinter printer = new FigurePrinter(known.build().units());
        DoubleFunction<String> printed =
                s -> printer.print(Dimension.ROTATIONAL_SPEED, s, 0).first().text();
        List<Finding> findings = new ArrayList<>();
        for (Sound one : sound) {
            if (one.slowest() > asked * (1 + ROUNDING)) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        one.place(),
                        "this gas trace is not used: it was taken at " + one.written()
                                + " and speaks for speeds from that down to "
                                + printed.apply(one.slowest()) + ", and " + printed.apply(asked)
                                + " is asked for: torque falls away above its peak, so at slower speeds there may be more gas",
                        "take one at " + printed.apply(asked) + ", or at most a quarter faster"));
            }
        }
        if (findings.size() == sound.size()) {
            return findings;
        }
        int top = firstFrom(asked);
        Sound fastest = sound.get(sound.size() - 1);
        if (top == sound.size()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    fastest.place(),
                    "no gas trace was taken at the speed asked for or above it, the fastest at " + fastest.written()
                            + ": the bounding one counts",
                    "take one at that speed, if it may be run"));
            return findings;
        }
        Optional<Double> idle = slowest(known);
        gap(idle.orElse(0.0), asked)
                .ifPresent(from -> findings.add(new Finding(
                        Finding.Kind.WARNING,
                        sound.get(firstFrom(from)).place(),
                        from < asked * (1 - ROUNDING)
                                ? "the gas traces say nothing of running below " + printed.apply(from)
                                        + ", where there may be more gas: a limit that the bounding trace does not hold up to there stays as it is"
                                : "no gas trace speaks for " + printed.apply(asked) + ": the bounding one counts",
                        (idle.isEmpty() ? "read the idle speed (" + Term.IDLE_SPEED.path() + "), and " : "")
                                + "take traces from there down to idle, each at no less than "
                                + Math.round(100 * (1 - BAND)) + " % of the speed of the next")));
        return findings;
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
        return compression(gas, crank, ratio).or(() -> firing(reading, gas, crank));
    }

    private static Optional<GasReading.Trouble> compression(GivenGas gas, CrankMotion crank, Measured ratio) {
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

    /** Whether it shows a fire at full throttle: a motored engine, or one that barely fires, says nothing of one that works. */
    private static Optional<GasReading.Trouble> firing(GasReading reading, GivenGas gas, CrankMotion crank) {
        double work = (1 - reading.within().si()) * work(gas, crank);
        if (!(work >= LEAST_WORK)) {
            return Optional.of(
                    new GasReading.Trouble(
                            String.format(
                                    java.util.Locale.ROOT,
                                    "%.1f bar of indicated work over the turn about firing",
                                    work / 1e5),
                            String.format(
                                    java.util.Locale.ROOT,
                                    "is not that of an engine that fires at full throttle, which is %.0f bar at least (gross, at the lower end of its doubt)",
                                    LEAST_WORK / 1e5),
                            "take it at full throttle under load, warm and firing every time; and check the transducer's scale"));
        }
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k <= ANGLES; k++) {
            double angle = BURNT_FROM + (BURNT_TO - BURNT_FROM) * k / ANGLES;
            least = Math.min(least, absolute(gas, angle) / absolute(gas, -angle));
        }
        return least > 1
                ? Optional.empty()
                : Optional.of(new GasReading.Trouble(
                        String.format(
                                java.util.Locale.ROOT,
                                "%.2f times the pressure of compression, from 30° to 90° after firing",
                                least),
                        "is not how burnt gas expands, which stands above it all the way",
                        "set 0° to firing top dead centre within a degree, and take it at full throttle under load"));
    }

    /** Gross indicated work over the swept volume [Pa]: of the turn about firing, without that of changing the gas. */
    private static double work(GasTrace gas, CrankMotion crank) {
        double step = Math.PI / ANGLES;
        double sum = 0;
        for (int k = -ANGLES; k < ANGLES; k++) { // by the midpoint rule
            double angle = (k + 0.5) * step;
            sum += gas.gauge(angle) * crank.travelSlope(angle) * step;
        }
        return sum / crank.stroke();
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
