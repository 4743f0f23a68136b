package longthrow.core.power;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import longthrow.core.answer.SparkSweep;
import longthrow.core.cycle.Settled;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/** What has to be run at one speed to see what the spark does. With the mesh of {@link Leaning}: only differences count. */
final class SparkPlan {
    /** Before top dead centre: from later than any key to earlier than most engines of this size bear; common practice, no source. */
    private static final double[] DEGREES = {10, 16, 22, 28, 34, 40, 46};

    /** Nearer than this to the one that is set, a place is left out for it. */
    private static final double APART = Math.toRadians(1.5);

    private final Figures figures;
    private final double speed;
    private final List<Double> advances;
    private final Optional<Settled> from;

    /**
     * Around one advance.
     * @param centre set, or found where none is [rad before top dead centre]
     * @param from   what stood in the engine there, to begin with
     */
    SparkPlan(Figures figures, double speed, double centre, Optional<Settled> from) {
        this.from = from;
        this.figures = figures;
        this.speed = speed;
        TreeSet<Double> places = new TreeSet<>();
        places.add(centre);
        for (double degrees : DEGREES) {
            double advance = Math.toRadians(degrees);
            if (Math.abs(advance - centre) >= APART) {
                places.add(advance);
            }
        }
        this.advances = List.copyOf(places);
    }

    double speed() {
        return speed;
    }

    List<Run> runs() {
        return advances.stream()
                .map(advance -> new Run(figures.with(Needed.SPARK, advance), speed, Leaning.MESH, from))
                .toList();
    }

    /**
     * What came of it, by rising advance; what did not run is left out.
     * @param outcomes of {@link #runs}, in their order
     */
    List<SparkSweep.Point> points(List<Run.Outcome> outcomes) {
        if (outcomes.size() != advances.size()) {
            throw new IllegalArgumentException(outcomes.size() + " outcomes of " + advances.size() + " runs");
        }
        List<SparkSweep.Point> points = new ArrayList<>();
        for (int i = 0; i < advances.size(); i++) {
            double advance = advances.get(i);
            outcomes.get(i)
                    .point()
                    .filter(point -> point.point().fire().isPresent())
                    .ifPresent(point -> points.add(new SparkSweep.Point(
                            advance,
                            point.torque(),
                            Asking.isPetrol(figures.fuel()) ? Told.OCTANE_WANTED.of(point) : Double.NaN,
                            Told.BURN_50.of(point),
                            Told.PEAK_PRESSURE.of(point),
                            Told.EXHAUST_TEMPERATURE.of(point))));
        }
        return points;
    }

    /** What makes the octane number wanted doubtful at a given spark. */
    Map<Source, Double> octane(List<Leaning> leanings) {
        return atGivenSpark(leanings, Told.OCTANE_WANTED);
    }

    /** What makes doubtful when half has burned at a given spark; where the spark is sought, what makes that doubtful. */
    Map<Source, Double> burning(List<Leaning> leanings) {
        return atGivenSpark(leanings, figures.has(Needed.SPARK) ? Told.BURN_50 : Told.SPARK);
    }

    private Map<Source, Double> atGivenSpark(List<Leaning> leanings, Told told) {
        Map<Source, Double> sources =
                new LinkedHashMap<>(Leaning.doubted(leanings, told, speed, 0).contributions());
        Optional<Measured> spark = figures.value(Needed.SPARK);
        spark.ifPresent(s -> sources.keySet().removeAll(s.contributions().keySet()));
        return sources;
    }
}
