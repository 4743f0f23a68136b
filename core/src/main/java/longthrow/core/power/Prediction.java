package longthrow.core.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking.Figure;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Bound;
import longthrow.core.answer.TorqueCurve.Place;
import longthrow.core.answer.TorqueCurve.Reading;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Share;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.build.Build;
import longthrow.core.cycle.CylinderSpace;
import longthrow.core.cycle.OperatingPoint;
import longthrow.core.cycle.Traces;
import longthrow.core.cycle.Traces.Trace;
import longthrow.core.cycle.ValveLift;
import longthrow.core.gas.Fuel;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * The question {@code power}: what torque over what speeds, how sure, and what bounds it. From a build and the answer to {@code life} to an answer; the sums in between are handed to a {@link Runner}
 * and come out the same whatever it does with them.
 */
public final class Prediction {
    private static final Set<Term> SHOWN = EnumSet.of(
            Term.BORE,
            Term.STROKE,
            Term.SWEPT_VOLUME,
            Term.COMPRESSION_RATIO,
            Term.ROD_LENGTH,
            Term.INTAKE_DURATION,
            Term.EXHAUST_DURATION,
            Term.OVERLAP,
            Term.TIMING_WITH_KEY);

    /** Where no idle speed is known; common practice, no source. */
    private static final double USUAL_IDLE_RPM = 1500;

    private static final String OCTANE_SPARE = "octane_spare";

    private static final String MARK = ", a speed that is not approved";

    private static final int MOST_BOUNDS = 3;
    private static final int MOST_SHARES = 8;
    private static final int MOST_READINGS = 5;

    /** Readings that own less of the variance than this are not worth the time; our own choice. */
    private static final double LEAST_SHARE = 0.05;

    /** A ± that becomes less by under half a point of a hundred is not seen where it is printed; layout. */
    private static final double LEAST_CUT = 0.005;

    /** Places of the cycle that are told, every so many degrees. */
    private static final int EVERY = 2;

    private final Known known;
    private final Asking asking;
    private final SpeedStanding standing;
    private final FigurePrinter printer;
    private final Optional<JetMixture> jets;
    private final List<DefaultUsed> taken = new ArrayList<>();

    private Prediction(Known known, Answer life) {
        this.known = known;
        this.asking = new Asking(known);
        this.standing = new SpeedStanding(life);
        this.printer = new FigurePrinter(known.build().units());
        this.jets = asking.figures().map(figures -> new JetMixture(known, figures));
    }

    /**
     * Torque and power over speed.
     * @param life   what {@code life} answers of the same build: what it refuses is not told
     * @param speeds at which
     * @param runner of the sums
     * @return empty where the runner was ended from outside
     * @throws IllegalArgumentException when a reading names an instrument that the build does not have and that is not built in, or the answer is not that of {@code life}
     */
    public static Optional<Answer> of(Build build, Answer life, Speeds speeds, Runner runner) {
        Appraisal appraisal;
        try {
            appraisal = Appraisal.sound(build);
        } catch (NotConvergedException e) {
            return Optional.of(Appraisal.untangled("power", build, life.stops())
                    .withTorque(TorqueCurve.unknown(List.of(
                            new Rung.Missing("", "the whole sheet", Appraisal.NO_ENGINE + ": see measure", 0)))));
        }
        Prediction prediction = new Prediction(new Known(appraisal), life);
        return prediction.told(speeds, runner).map(bare -> {
            TorqueCurve curve = bare.with(Jetting.of(prediction.known));
            List<Finding> findings = new ArrayList<>(appraisal.suspects());
            findings.addAll(AsPlanned.findings(build));
            findings.addAll(prediction.asking.findings());
            findings.addAll(prediction.knocking(curve));
            findings.addAll(prediction.jetted(curve));
            Set<DefaultUsed> defaults = new LinkedHashSet<>(prediction.asking.taken());
            defaults.addAll(prediction.taken);
            defaults.addAll(appraisal.defaults());
            return appraisal
                    .answer("power", SHOWN, findings, life.stops(), List.copyOf(defaults))
                    .withTorque(curve);
        });
    }

    private Optional<TorqueCurve> told(Speeds speeds, Runner runner) {
        if (asking.figures().isEmpty()) {
            return Optional.of(TorqueCurve.unknown(asking.missing()));
        }
        Figures figures = asking.figures().get();
        List<At> places = new ArrayList<>();
        for (double speed : speeds.between(lowest(), highest(figures))) {
            places.add(at(speed));
        }
        List<At> wanted = places.stream().filter(p -> p.standing.isTold()).toList();
        Optional<List<Run.Outcome>> outcomes = runner.all(
                wanted.stream().map(p -> new Run(figures, p.speed, Curve.MESH)).toList());
        if (outcomes.isEmpty()) {
            return Optional.empty();
        }
        for (int i = 0; i < wanted.size(); i++) {
            wanted.get(i).outcome = Optional.of(outcomes.get().get(i));
        }
        List<At> ran = wanted.stream().filter(p -> p.point().isPresent()).toList();
        return advised(figures, speeds, ran, runner).map(advised -> curve(figures, places, advised, speeds));
    }

    /** One speed on its way to a row. */
    private static final class At {
        final double speed;
        final Standing standing;
        final String why;
        Optional<Run.Outcome> outcome = Optional.empty();

        At(double speed, Standing standing, String why) {
            this.speed = speed;
            this.standing = standing;
            this.why = why;
        }

        Optional<Curve.Point> point() {
            return outcome.flatMap(Run.Outcome::point);
        }
    }

    // ---- at which speeds

    private double lowest() {
        return known.figure(Term.IDLE_SPEED).map(Measured::value).orElseGet(() -> {
            double idle = Units.RPM.toSi(USUAL_IDLE_RPM);
            taken.add(new DefaultUsed(
                    Term.IDLE_SPEED.path(), "told from " + speed(idle) + " on", "common practice, no source"));
            return idle;
        });
    }

    private double highest(Figures figures) {
        return known.figure(Term.WANTED_SPEED)
                .or(() -> known.figure(Term.GOVERNED_SPEED))
                .map(Measured::value)
                .orElseGet(() -> {
                    double nominal = Usual.nominalSpeed(figures.kind(), figures.number(Needed.STROKE));
                    taken.add(new DefaultUsed(
                            Term.WANTED_SPEED.path(),
                            "told up to " + speed(nominal) + ", where such engines have their most power",
                            "ranges of published engines, see Usual"));
                    return nominal;
                });
    }

    private At at(double speed) {
        Optional<Double> governed = known.build().chose(Choice.GOVERNOR, "whole")
                ? known.figure(Term.GOVERNED_SPEED).map(Measured::high)
                : Optional.empty();
        SpeedStanding.At found = standing.at(speed);
        if (found.standing() != Standing.REFUSED && governed.isPresent() && speed > governed.get() * (1 + 1e-9)) {
            return new At(
                    speed,
                    Standing.GOVERNED,
                    "the governor shuts the throttle above "
                            + speed(known.figure(Term.GOVERNED_SPEED)
                                    .orElseThrow()
                                    .value()));
        }
        return new At(speed, found.standing(), found.why());
    }

    // ---- how sure

    /** What was found at the speeds that are leaned on. */
    private record Advised(List<Leaning> leanings, List<SparkSweep> sparks) {}

    private Optional<Advised> advised(Figures figures, Speeds speeds, List<At> ran, Runner runner) {
        List<At> leaned = speeds.leanedOf(ran);
        List<Leaning.Plan> plans = leaned.stream()
                .map(p -> new Leaning.Plan(figures, p.speed, p.point().map(Curve.Point::end)))
                .toList();
        List<SparkPlan> sweeps = leaned.stream()
                .filter(p -> !Double.isNaN(Told.SPARK.of(p.point().orElseThrow())))
                .map(p -> new SparkPlan(
                        figures,
                        p.speed,
                        Told.SPARK.of(p.point().orElseThrow()),
                        p.point().map(Curve.Point::end)))
                .toList();
        List<Run> runs = Stream.concat(
                        plans.stream().flatMap(p -> p.runs().stream()),
                        sweeps.stream().flatMap(p -> p.runs().stream()))
                .toList();
        return runner.all(runs).map(outcomes -> {
            List<Leaning> leanings = new ArrayList<>();
            int from = 0;
            for (Leaning.Plan plan : plans) {
                int to = from + plan.runs().size();
                plan.of(outcomes.subList(from, to)).ifPresent(leanings::add);
                from = to;
            }
            List<SparkSweep> sparks = new ArrayList<>();
            for (SparkPlan plan : sweeps) {
                int to = from + plan.runs().size();
                SparkSearch.Setting setting = setting(figures, plan, leanings, standing(leaned, plan.speed()));
                new SparkSearch(setting, plan.points(outcomes.subList(from, to)), printer)
                        .sweep()
                        .ifPresent(sparks::add);
                from = to;
            }
            return new Advised(leanings, sparks);
        });
    }

    private static Standing standing(List<At> places, double speed) {
        return places.stream().filter(p -> p.speed == speed).findFirst().orElseThrow().standing;
    }

    private SparkSearch.Setting setting(Figures figures, SparkPlan plan, List<Leaning> leanings, Standing standing) {
        return new SparkSearch.Setting(
                plan.speed(),
                standing == Standing.NOT_APPROVED ? MARK : "",
                figures.usual(Needed.SPARK).isPresent() ? Optional.empty() : figures.value(Needed.SPARK),
                known.figure(Term.BASE_TIMING).map(Measured::value).orElse(Double.NaN),
                asking.octane(),
                plan.octane(leanings),
                plan.burning(leanings),
                asking.missingForKnock());
    }

    // ---- what is told

    private TorqueCurve curve(Figures figures, List<At> places, Advised advised, Speeds speeds) {
        List<Leaning> leanings = advised.leanings;
        List<Row> rows =
                places.stream().map(p -> row(p, leanings, figures.fuel())).toList();
        TorqueCurve bare = new TorqueCurve(
                takenFor(figures.kind()),
                rows,
                List.of(),
                Double.NaN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                advised.sparks,
                Optional.empty(),
                Optional.of(day(figures)),
                List.of());
        Optional<Row> best = bare.most(Told.TORQUE.key());
        if (best.isEmpty()) {
            return new TorqueCurve(
                    bare.takenFor(),
                    rows,
                    List.of(),
                    Double.NaN,
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of("No torque is told at any of these speeds."),
                    List.of(),
                    Optional.empty(),
                    bare.air(),
                    List.of());
        }
        double at = best.get().speed();
        Measured torque = best.get().figure(Told.TORQUE.key()).orElseThrow().figure();
        Curve.Point point = places.stream()
                .filter(p -> p.speed == at)
                .findFirst()
                .flatMap(At::point)
                .orElseThrow();
        List<Share> shares = torque.isUnknown()
                ? List.of()
                : torque.shares().stream()
                        .limit(MOST_SHARES)
                        .map(s -> new Share(s.owner(), s.share()))
                        .toList();
        return new TorqueCurve(
                bare.takenFor(),
                rows,
                cycle(new Model(figures), point.point()),
                at,
                shares,
                readings(figures, leanings, at, torque),
                List.of(),
                sentences(bare, best.get(), torque, figures, speeds),
                advised.sparks,
                Optional.empty(),
                bare.air(),
                List.of());
    }

    private static TorqueCurve.Air day(Figures figures) {
        return new TorqueCurve.Air(
                figures.value(Needed.AIR_PRESSURE).orElseThrow(),
                figures.value(Needed.AIR_TEMPERATURE).orElseThrow(),
                figures.value(Needed.HUMIDITY).orElseThrow());
    }

    /** The delay of knocking was fitted to fuels like petrol; of others no octane number is told. */
    private Row row(At place, List<Leaning> leanings, Fuel fuel) {
        if (place.outcome.isEmpty()) {
            return new Row(place.speed, place.standing, place.why, List.of(), List.of(), Optional.empty());
        }
        Run.Outcome outcome = place.outcome.get();
        if (outcome.point().isEmpty()) {
            return new Row(place.speed, Standing.NOT_RECKONED, outcome.why(), List.of(), List.of(), Optional.empty());
        }
        Curve.Point point = outcome.point().get();
        List<Figure> figures = new ArrayList<>();
        for (Told told : Told.values()) {
            double value = told.of(point);
            boolean isOfItsFuel = told != Told.OCTANE_WANTED || Asking.isPetrol(fuel);
            if (isOfItsFuel && !Double.isNaN(value)) {
                Measured doubted = Leaning.doubted(leanings, told, place.speed, value);
                figures.add(new Figure(told.key(), told.label(), told.dimension(), doubted));
                if (told == Told.OCTANE_WANTED) {
                    spare(doubted).ifPresent(figures::add);
                }
            }
        }
        jets.flatMap(j -> j.at(point)).ifPresent(figures::add);
        OperatingPoint.Effort effort = point.point().effort();
        OperatingPoint.Balance balance = point.point().balance();
        return new Row(
                place.speed,
                place.standing,
                place.why,
                figures,
                bounds(point, Leaning.gains(leanings, place.speed)),
                Optional.of(new TorqueCurve.Reckoning(
                        effort.cycles(),
                        effort.steps(),
                        effort.cells(),
                        Curve.MESH.cell(),
                        effort.change(),
                        balance.mass(),
                        balance.energy())));
    }

    private Optional<Figure> spare(Measured wanted) {
        return asking.octane()
                .map(acting -> new Figure(
                        OCTANE_SPARE,
                        "octane number of the fuel less that wanted",
                        Dimension.RATIO,
                        PumpOctane.margin(acting, wanted)));
    }

    /** No fuel is told, and what is wanted is surely more than any pump's. */
    private List<Finding> beyondPumps(TorqueCurve curve) {
        double most = Term.OCTANE_NUMBER.believable().most();
        return curve.rows().stream()
                .filter(row -> row.figure(Told.OCTANE_WANTED.key())
                        .filter(f -> !f.figure().isUnknown() && f.figure().low() > most)
                        .isPresent())
                .max(Comparator.comparingDouble(row -> row.figure(Told.OCTANE_WANTED.key())
                        .orElseThrow()
                        .figure()
                        .value()))
                .map(row -> new Finding(
                        Finding.Kind.WARNING,
                        Term.COMPRESSION_RATIO.path(),
                        "at " + speed(row.speed()) + " and full throttle it wants an octane number of "
                                + said(
                                        Dimension.RATIO,
                                        row.figure(Told.OCTANE_WANTED.key())
                                                .orElseThrow()
                                                .figure())
                                + ", more than any petrol has: it knocks, and the torque told is that without knock",
                        "less compression; knock of this size breaks piston and rod within seconds"))
                .stream()
                .toList();
    }

    /** Where it knocks, the speed at which it does so most: its torque is told as if it did not. */
    private List<Finding> knocking(TorqueCurve curve) {
        Optional<Row> worst = curve.rows().stream()
                .filter(row -> row.figure(OCTANE_SPARE).isPresent())
                .min(Comparator.comparingDouble(Prediction::spared));
        if (worst.isEmpty()) {
            return beyondPumps(curve);
        }
        if (spared(worst.get()) >= 0) {
            return List.of();
        }
        Row row = worst.get();
        Measured spare = row.figure(OCTANE_SPARE).orElseThrow().figure();
        String how = !spare.isUnknown() && spare.high() < 0 ? "it knocks" : "it may knock, more likely than not";
        Measured wanted = row.figure(Told.OCTANE_WANTED.key()).orElseThrow().figure();
        return List.of(new Finding(
                Finding.Kind.WARNING,
                Term.OCTANE_NUMBER.path(),
                "at " + speed(row.speed()) + " and full throttle " + how + ": it wants an octane number of "
                        + said(Dimension.RATIO, wanted) + " and the fuel acts as one of "
                        + said(Dimension.RATIO, asking.octane().orElseThrow())
                        + ", between its motor and its research number; the torque told is that without knock",
                "a fuel of a higher number, a later spark or less compression"));
    }

    /** What of the jet does not count, and where it surely gives too little or too much for the torque that is told. */
    private List<Finding> jetted(TorqueCurve curve) {
        if (jets.isEmpty()) {
            return List.of();
        }
        List<Finding> found = new ArrayList<>(jets.get().findings());
        lean(curve).ifPresent(found::add);
        rich(curve).ifPresent(found::add);
        return found;
    }

    private static Optional<Measured> jetted(Row row) {
        return row.figure(JetMixture.KEY).map(Figure::figure);
    }

    /** From the leanest speed that is told, and which others are as lean. */
    private Optional<Finding> lean(TorqueCurve curve) {
        List<Row> rows = curve.rows().stream()
                .filter(row -> jetted(row).filter(JetMixture::isLean).isPresent())
                .toList();
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        Measured leanest = rows.stream()
                .flatMap(row -> jetted(row).stream())
                .min(Comparator.comparingDouble(Measured::value))
                .orElseThrow();
        boolean isSure = rows.stream()
                .anyMatch(row -> jetted(row).filter(JetMixture::isSurelyLean).isPresent());
        return Optional.of(new Finding(
                Finding.Kind.WARNING,
                jets.orElseThrow().where(),
                "at " + range(rows) + " main jet and venturi give down to " + said(Dimension.RATIO, leanest)
                        + " times the fuel that the air can burn: "
                        + (isSure ? "too lean" : "probably too lean")
                        + " to give the torque that is told, and hot enough to burn a piston, if it runs at all"
                        + (isSure ? "" : "; the ± is wide, so the plug and not this sum decides")
                        + " (surely below " + JetMixture.LEANEST + ", or about below " + JetMixture.PROBABLY_LEAN
                        + ", is told; judgement, no source)",
                "a larger main jet, or read jet and venturi again; another fuel than the jet was right for wants"
                        + " another jet: carburettor.jetted_fuel and what goes with it say which"));
    }

    private Optional<Finding> rich(TorqueCurve curve) {
        List<Row> rows = curve.rows().stream()
                .filter(row -> jetted(row)
                        .filter(f -> !f.isUnknown() && f.low() > JetMixture.RICHEST)
                        .isPresent())
                .toList();
        return rows.stream()
                .flatMap(row -> jetted(row).stream())
                .max(Comparator.comparingDouble(Measured::value))
                .map(richest -> new Finding(
                        Finding.Kind.WARNING,
                        jets.orElseThrow().where(),
                        "at " + range(rows) + " main jet and venturi give up to " + said(Dimension.RATIO, richest)
                                + " times the fuel that the air can burn: too rich to give the torque that is told,"
                                + " and fuel washes the oil off the bore (surely above " + JetMixture.RICHEST
                                + " is told; judgement, no source)",
                        "a smaller main jet, or read jet and venturi again"));
    }

    /** Beside what the torque is reckoned with. */
    private Optional<String> mixture(Row best, Figures figures, boolean isLean) {
        return best.figure(JetMixture.KEY)
                .map(jet -> "By main jet and venturi it gets " + said(Dimension.RATIO, jet.figure())
                        + " times the fuel that its air can burn at " + speed(best.speed())
                        + "; torque is reckoned with "
                        + said(Dimension.RATIO, figures.value(Needed.MIXTURE).orElseThrow())
                        + ", a carburettor in order."
                        + (isLean ? " Whether it gives it with this jet is doubtful: see the warning." : ""));
    }

    private static double spared(Row row) {
        return row.figure(OCTANE_SPARE).orElseThrow().figure().value();
    }

    private static List<Bound> bounds(Curve.Point point, Map<Lever, Double> gains) {
        List<Bound> bounds = new ArrayList<>();
        if (point.point().fire().isEmpty()) {
            bounds.add(new Bound("no_fire", "no flame goes through such a charge, so it does not fire at all", "", 1));
        }
        gains.entrySet().stream()
                .filter(e -> e.getValue() >= Lever.WORTH_A_WORD)
                .sorted(Map.Entry.<Lever, Double>comparingByValue().reversed())
                .limit(MOST_BOUNDS)
                .map(e -> new Bound(
                        e.getKey().key(), e.getKey().what(), e.getKey().change(), e.getValue()))
                .forEach(bounds::add);
        return bounds;
    }

    private static String takenFor(Kind kind) {
        String use = switch (kind.use()) {
            case UTILITY -> "made to drive a machine";
            case ROAD -> "made for the road or a trail";
            case COMPETITION -> "made to win";
        };
        String cooling = switch (kind.cooling()) {
            case FAN -> "cooled by a fan";
            case WIND -> "cooled by the wind";
            case LIQUID -> "cooled by liquid";
        };
        String layout = switch (kind.layout()) {
            case SIDE_VALVE -> "side valves";
            case PUSHROD -> "overhead valves by pushrods";
            case OVERHEAD_CAM -> "overhead camshaft";
        };
        return use + ", " + cooling + ", " + layout + ", " + (kind.intakes() + kind.exhausts()) + " valves";
    }

    private static List<Place> cycle(Model model, OperatingPoint point) {
        CylinderSpace space = model.space();
        ValveLift intake = model.lift(true);
        ValveLift exhaust = model.lift(false);
        Traces traces = point.traces();
        List<Place> places = new ArrayList<>();
        for (int degree = Traces.FIRST; degree < Traces.FIRST + Traces.PLACES; degree += EVERY) {
            double angle = Math.toRadians(degree);
            places.add(new Place(
                    angle,
                    space.volume(angle),
                    traces.at(Trace.PRESSURE, degree),
                    traces.at(Trace.TEMPERATURE, degree),
                    intake.at(angle),
                    exhaust.at(angle),
                    traces.at(Trace.INTAKE_PRESSURE, degree),
                    traces.at(Trace.EXHAUST_PRESSURE, degree)));
        }
        return places;
    }

    /** What was taken for want of a reading, by how much of the doubt of the most torque hangs on it. */
    private List<Reading> readings(Figures figures, List<Leaning> leanings, double at, Measured torque) {
        Optional<Leaning> nearest = leanings.stream().min(Comparator.comparingDouble(l -> Math.abs(l.speed() - at)));
        if (nearest.isEmpty() || !(torque.value() > 0)) {
            return List.of();
        }
        Map<Needed, Double> moves = nearest.get().moves();
        double all = moves.values().stream().mapToDouble(m -> m * m).sum();
        double now = torque.expanded() / torque.value();
        Map<Rung.Missing, Double> shares = new LinkedHashMap<>();
        moves.forEach((needed, move) -> {
            if (figures.usual(needed).isPresent() || asking.isHalfTold(needed)) {
                asking.reading(needed).ifPresent(read -> shares.merge(read, move * move / all, Double::sum));
            }
        });
        return shares.entrySet().stream()
                .filter(e -> e.getValue() >= LEAST_SHARE)
                .sorted(Map.Entry.<Rung.Missing, Double>comparingByValue().reversed())
                .limit(MOST_READINGS)
                .map(e -> new Reading(e.getKey(), e.getValue(), now, now * Math.sqrt(Math.max(0, 1 - e.getValue()))))
                .filter(r -> r.now() - r.after() >= LEAST_CUT)
                .toList();
    }

    private List<String> sentences(TorqueCurve curve, Row best, Measured torque, Figures figures, Speeds speeds) {
        List<String> sentences = new ArrayList<>();
        if (torque.value() <= 0) {
            sentences.add(
                    "It does not pull at any of these speeds: what the gas gives is less than what rubs and pumps.");
        }
        sentences.add("Most torque " + said(Dimension.TORQUE, torque) + " at " + speed(best.speed()) + marked(best)
                + flat(curve, best, torque) + ".");
        if (torque.isUnknown()) {
            sentences.add(
                    "How sure that is could not be reckoned: with a figure moved within its doubt no cycle comes of"
                            + " it, so these figures hardly go together. Do not count on it.");
        }
        curve.most(Told.POWER.key())
                .ifPresent(row -> sentences.add("Most power "
                        + said(
                                Dimension.POWER,
                                row.figure(Told.POWER.key()).orElseThrow().figure())
                        + " at " + speed(row.speed()) + marked(row) + "."));
        long read = figures.read();
        sentences.add(read + " of " + (read + figures.taken())
                + " figures are as read, the others as they are usual in such engines; full throttle, warm,"
                + " sound and tuned.");
        sentences.add(air(figures));
        boolean isLean = curve.rows().stream()
                .anyMatch(row -> jetted(row).filter(JetMixture::isLean).isPresent());
        mixture(best, figures, isLean).ifPresent(sentences::add);
        if (Asking.isPetrol(figures.fuel()) && asking.octane().isEmpty()) {
            sentences.add(
                    "Whether it knocks is not known: the octane number of the fuel, with its scale, is not told.");
        }
        OptionalDouble taper = known.figure(Term.TAPER_DIAMETER).stream()
                .mapToDouble(Measured::value)
                .findFirst();
        sentences.addAll(SparkAdvice.sentences(
                curve.sparks(), taper, printer, speeds.chosen().isEmpty(), isLean));
        for (Standing standing : List.of(Standing.REFUSED, Standing.GOVERNED, Standing.NOT_RECKONED)) {
            List<Row> rows =
                    curve.rows().stream().filter(r -> r.standing() == standing).toList();
            if (!rows.isEmpty()) {
                sentences.add("No power is told at " + range(rows) + " (" + standing.label() + "): "
                        + rows.get(0).why() + "."
                        + (standing == Standing.NOT_RECKONED ? " The most that is told may be passed there." : ""));
            }
        }
        return sentences;
    }

    /** Where the most stands at the lowest speed looked at, or others are as good within the doubt. */
    private String flat(TorqueCurve curve, Row best, Measured torque) {
        boolean isLowest =
                curve.rows().get(0).speed() == best.speed() && curve.rows().size() > 1;
        if (!isLowest || torque.isUnknown()) {
            return "";
        }
        Optional<Row> last = curve.rows().stream()
                .takeWhile(row -> row.figure(Told.TORQUE.key())
                        .filter(f -> f.figure().value() >= torque.low())
                        .isPresent())
                .reduce((first, second) -> second)
                .filter(row -> row.speed() > best.speed());
        return ", the lowest speed that was looked at"
                + last.map(row -> "; within its doubt it is as much up to " + speed(row.speed()))
                        .orElse("");
    }

    /** What it breathes. */
    private String air(Figures figures) {
        List<Needed> day = List.of(Needed.AIR_TEMPERATURE, Needed.AIR_PRESSURE, Needed.HUMIDITY);
        String standard = day.stream()
                .flatMap(needed -> figures.usual(needed).stream())
                .distinct()
                .collect(Collectors.joining("; "));
        List<String> said = day.stream()
                .map(needed -> said(needed.dimension(), figures.value(needed).orElseThrow()))
                .toList();
        return "In air of " + said.get(0) + " and " + said.get(1) + ", relative humidity " + said.get(2)
                + (standard.isEmpty() ? ", as told." : "; what was not told of it is that of " + standard + ".");
    }

    private String range(List<Row> rows) {
        return rows.size() == 1
                ? speed(rows.get(0).speed())
                : speed(rows.get(0).speed()) + " to "
                        + speed(rows.get(rows.size() - 1).speed());
    }

    private static String marked(Row row) {
        return row.standing() == Standing.NOT_APPROVED ? MARK : "";
    }

    private String said(Dimension dimension, Measured figure) {
        return figure.isUnknown()
                ? printer.printDoubtUnknown(dimension, figure.value()).line()
                : printer.print(dimension, figure.value(), figure.expanded()).line();
    }

    private String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, speed, 0).first().text();
    }
}
