package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.reduce.CoastDown;
import longthrow.core.reduce.FallingMass;
import longthrow.core.reduce.Remark;
import longthrow.core.reduce.TurningPart;

/**
 * The inertia of a drum: as told, else by a falling mass or by a run-down with a known disc, whichever is surer, else by the mass and diameter of a plain drum. All that are there are held against the one
 * that is used.
 */
final class DrumInertia {
    /** 95 %, where nothing is said: of scales as a share, of a tape [m], of a watch stopped by hand [s]; common practice, no source. */
    private static final double SCALES = 0.005;

    private static final double TAPE = 0.005;
    private static final double WATCH = 0.2;

    private static final String PRACTICE = "common practice, no source";

    private static final Formula DIFFERENCE =
            Formula.of("difference of inertias", Expression.input("one").minus(Expression.input("other")));

    private final DynoSheet.Bench bench;
    private final Function<BenchFigure, Optional<Measured>> figures;
    private final Set<DefaultUsed> defaults;
    private final List<Remark> remarks;

    /** A way to the inertia, and what it gave. */
    private record Found(String how, Measured inertia) {}

    /**
     * Of one bench.
     * @param figures  of it, with their doubt
     * @param defaults takes what is taken for granted
     * @param remarks  takes what is to be said, each once
     */
    DrumInertia(
            DynoSheet.Bench bench,
            Function<BenchFigure, Optional<Measured>> figures,
            Set<DefaultUsed> defaults,
            List<Remark> remarks) {
        this.bench = bench;
        this.figures = figures;
        this.defaults = defaults;
        this.remarks = remarks;
    }

    /**
     * The one that is used [kg m2]; empty where nothing tells it.
     * @param bare run-down of the drum
     * @param with the same with the disc on
     */
    Optional<Measured> found(Optional<CoastDown> bare, Optional<CoastDown> with) {
        List<Found> all = new ArrayList<>();
        figures.apply(BenchFigure.DRUM_INERTIA).ifPresent(i -> all.add(new Found("as told", i)));
        List<Found> tried = new ArrayList<>(byFalls());
        byDisc(bare, with).ifPresent(i -> tried.add(new Found("by the run-down with the added disc", i)));
        tried.sort(Comparator.comparingDouble(f -> f.inertia().standardUncertainty()));
        all.addAll(tried);
        plain().ifPresent(i -> all.add(new Found("by mass and diameter of a plain drum", i)));
        if (all.isEmpty()) {
            return Optional.empty();
        }
        Found used = all.get(0);
        if (!tried.isEmpty() || all.size() > 1) {
            say(new Remark(
                    Remark.Weight.NOTE,
                    "the drum's inertia is " + words(used.inertia()) + ", " + used.how()
                            + (all.size() == 1 ? "" : "; " + others(all.subList(1, all.size())))));
        }
        all.stream().skip(1).forEach(other -> hold(used, other));
        return Optional.of(used.inertia());
    }

    private static String others(List<Found> others) {
        return others.stream()
                .map(f -> words(f.inertia()) + " " + f.how())
                .collect(java.util.stream.Collectors.joining("; "));
    }

    private void hold(Found used, Found other) {
        Measured difference =
                Measured.through(DIFFERENCE, name -> name.equals("one") ? other.inertia() : used.inertia());
        if (Math.abs(difference.value()) > difference.expanded()) {
            say(new Remark(
                    Remark.Weight.WARNING,
                    String.format(
                            java.util.Locale.ROOT,
                            "the drum's inertia does not agree: %s %s, but %s %s, which is %+.1f %% and more than their doubt. The first is used; torque and power of"
                                    + " every run are wrong by as much as it is. Look whether shaft, coupling and brake disc are in both, the cord's radius, and who let go of watch and mass",
                            words(used.inertia()),
                            used.how(),
                            words(other.inertia()),
                            other.how(),
                            100 * difference.value() / used.inertia().value())));
        }
    }

    private void say(Remark remark) {
        if (!remarks.contains(remark)) {
            remarks.add(remark);
        }
    }

    private static String words(Measured inertia) {
        FigurePrinter printer = new FigurePrinter(UnitSystem.METRIC_FIRST);
        return (inertia.expanded() > 0
                        ? printer.print(Dimension.INERTIA, inertia.value(), inertia.expanded())
                        : printer.printDoubtUnknown(Dimension.INERTIA, inertia.value()))
                .first()
                .text();
    }

    // ---- a falling mass

    private List<Found> byFalls() {
        List<Found> found = new ArrayList<>();
        Optional<Measured> cord = figures.apply(BenchFigure.CORD_RADIUS);
        if (bench.falls().isEmpty() || cord.isEmpty()) {
            return found;
        }
        Measured radius = cord.get();
        List<Measured> masses = new ArrayList<>();
        List<Measured> accelerations = new ArrayList<>();
        for (int i = 0; i < bench.falls().size(); i++) {
            DynoSheet.Fall fall = bench.falls().get(i);
            String which = bench.falls().size() == 1 ? "" : " " + (i + 1);
            Measured mass = mass(fall.mass(), "mass that fell" + which);
            Measured time = time(fall.time(), "time of the fall" + which);
            Measured acceleration = FallingMass.acceleration(height(fall.height(), which), time, radius);
            masses.add(mass);
            accelerations.add(acceleration);
            fall.stops().ifPresent(stops -> {
                Measured slowing =
                        FallingMass.deceleration(acceleration, time, time(stops, "time from landing to stand" + which));
                add(
                        found,
                        "by the fall of " + fall.mass().written() + " and the free run after it",
                        FallingMass.andCoast(radius, mass, acceleration, slowing));
            });
        }
        if (masses.size() == 2) {
            add(
                    found,
                    "by the falls of two masses",
                    FallingMass.byTwo(
                            radius, masses.get(0), accelerations.get(0), masses.get(1), accelerations.get(1)));
        }
        return found;
    }

    private void add(List<Found> found, String how, Optional<Measured> inertia) {
        inertia.ifPresentOrElse(
                i -> found.add(new Found(how, i)),
                () -> say(
                        new Remark(
                                Remark.Weight.WARNING,
                                "the drum's inertia cannot be told " + how
                                        + ": the drum did not speed up as such masses would make it; look at times, masses and the cord's radius")));
    }

    private Measured mass(Stated stated, String what) {
        if (stated.expandedDoubt().isPresent()) {
            return RunFigures.measured(stated, what);
        }
        take("falling_mass.mass", "the scales are right to ± 0.5 % (95 %), all masses alike");
        return Times.of(
                Measured.of(1, List.of(Source.at95("dyno scales", Source.Kind.INSTRUMENT, "scales", SCALES))),
                stated.value().si());
    }

    private Measured height(Stated stated, String which) {
        if (stated.expandedDoubt().isPresent()) {
            return RunFigures.measured(stated, "height of the fall" + which);
        }
        take("falling_mass.height", "height is read to ± 5 mm (95 %)");
        return Measured.of(
                stated.value().si(),
                List.of(Source.at95("dyno tape", Source.Kind.INSTRUMENT, "height of the fall", TAPE)));
    }

    private Measured time(Stated stated, String what) {
        if (stated.expandedDoubt().isPresent()) {
            return RunFigures.measured(stated, what);
        }
        take("falling_mass.time", "a watch stopped by hand is right to ± 0.2 s (95 %)");
        return Measured.of(
                stated.value().si(), List.of(Source.at95("dyno " + what, Source.Kind.INSTRUMENT, what, WATCH)));
    }

    private void take(String where, String what) {
        defaults.add(new DefaultUsed("bench." + where, what, PRACTICE));
    }

    // ---- an added disc

    private Optional<Measured> byDisc(Optional<CoastDown> bare, Optional<CoastDown> with) {
        if (bench.added().isEmpty()) {
            return Optional.empty();
        }
        if (bare.isEmpty() || with.isEmpty()) {
            say(
                    new Remark(
                            Remark.Weight.WARNING,
                            "the added disc does not tell the drum's inertia: both run-downs are needed, 'coast_down' without it and 'added_disc.coast_down' with it, and one could not be read"));
            return Optional.empty();
        }
        Optional<Measured> found =
                disc(bench.added().get()).flatMap(d -> bare.get().inertiaByAdded(with.get(), d));
        if (found.isEmpty()) {
            say(
                    new Remark(
                            Remark.Weight.WARNING,
                            "the added disc does not tell the drum's inertia: with it the drum slows no less, or the two run-downs share no speeds; look whether the files are changed over"));
        }
        return found;
    }

    private Optional<Measured> disc(DynoSheet.Added added) {
        if (added.inertia().isPresent()) {
            return Optional.of(told(added.inertia().get(), "added_disc.inertia", "inertia of the added disc"));
        }
        return added.mass()
                .flatMap(m -> added.diameter()
                        .map(d -> new TurningPart.Weighed(
                                        mass(m, "mass of the added disc"),
                                        added.bore()
                                                .map(b -> Times.of(
                                                        told(b, "added_disc.bore", "bore of the added disc"), 0.5))
                                                .orElse(Measured.exact(0)),
                                        Times.of(told(d, "added_disc.diameter", "diameter of the added disc"), 0.5))
                                .inertia()));
    }

    private Measured told(Stated stated, String key, String what) {
        if (stated.expandedDoubt().isEmpty()) {
            defaults.add(new DefaultUsed(
                    "bench." + key,
                    "exact, for no ± is written: torque and power are less sure than their ± says",
                    "no source: write it with its ±"));
        }
        return RunFigures.measured(stated, what);
    }

    // ---- a plain drum

    private Optional<Measured> plain() {
        Optional<Measured> mass = figures.apply(BenchFigure.DRUM_MASS);
        Optional<Measured> outside = figures.apply(BenchFigure.DRUM_DIAMETER);
        if (mass.isEmpty() || outside.isEmpty()) {
            return Optional.empty();
        }
        Optional<Measured> inside = figures.apply(BenchFigure.DRUM_BORE);
        if (inside.isEmpty()) {
            defaults.add(new DefaultUsed("bench.drum_bore", "the drum is solid, with no hole", PRACTICE));
        }
        Measured hole = inside.map(i -> Times.of(i, 0.5)).orElse(Measured.exact(0));
        Measured outer = Times.of(outside.get(), 0.5);
        if (!(hole.value() < outer.value())) {
            say(new Remark(Remark.Weight.WARNING, "the drum's bore is not below its diameter; read both again"));
            return Optional.empty();
        }
        return Optional.of(new TurningPart.Weighed(mass.get(), hole, outer).inertia());
    }
}
