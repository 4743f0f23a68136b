package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.Stops;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measure.EntryCautions;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The question {@code life}: what lets go first, at what speed, and whether the speed wanted may be run. A pure function from a build to its answer. */
public final class Life {
    /** Figures an owner looks for beside the ladder. */
    private static final Set<Term> SHOWN = EnumSet.of(
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_RATIO,
            Term.RECIPROCATING_MASS,
            Term.ROTATING_MASS,
            Term.MEAN_PISTON_SPEED,
            Term.TDC_ACCELERATION,
            Term.RING_BEARS,
            Term.RIM_SPEED,
            Term.SPRING_RATE,
            Term.COIL_BIND_MARGIN,
            Term.TIMING_WITH_KEY);

    /** What lets go through case and bystanders: a maker's word, a rating and every sum are of these parts undamaged. */
    public static final List<Part> LOOKED_OVER = List.of(Part.FLYWHEEL, Part.ROD, Part.CRANKSHAFT, Part.PISTON);

    private Life() {}

    /**
     * The limit ladder and the verdict of the whole.
     * @param catalogue what can be bought, for the price of what would lift a refusal
     * @param pairs     of parts as {@code clear} tells of the same build: no limit of speed approves an engine whose parts may meet
     * @throws IllegalArgumentException when a reading names an instrument that the build does not have and that is not built in
     */
    public static Answer of(Build build, Catalogue catalogue, List<Clearance> pairs) {
        Appraisal appraisal;
        try {
            appraisal = Appraisal.sound(build);
        } catch (NotConvergedException e) {
            return untangled(build);
        }
        Known known = new Known(appraisal);
        Optional<Measured> asked = known.figure(Term.WANTED_SPEED)
                .or(() -> known.figure(Term.GOVERNED_SPEED).filter(g -> Stops.isVouched(build, Term.GOVERNED_SPEED)));
        MeasuredGas.Told gas = MeasuredGas.of(known, asked);
        RungMaker maker = new RungMaker(new FigurePrinter(build.units()), asked, gas.gas(), MeasuredGas.slowest(known));
        List<Asked> questions = new ArrayList<>();
        List<Rung> rungs = rungs(known, maker, questions);
        List<Stop> stops = GapStops.together(appraisal.stops(), pairs);
        Approving approving = new Approving(known, stops, pairs, appraisal.suspects(), catalogue, maker);
        List<Rung> covered = inOrder(approving.covered(rungs));
        Approval approval = approving.verdict(rungs, covered);
        StartSums starting = new StartSums(known);
        LimitLadder.Start start = starting.told();
        questions.addAll(starting.asked());
        List<Finding> findings = new ArrayList<>(appraisal.suspects());
        findings.addAll(AsPlanned.findings(build));
        findings.addAll(gas.findings());
        findings.addAll(notCounted(build));
        findings.addAll(EntryCautions.nobodysWords(build));
        findings.addAll(bought(build));
        findings.addAll(cautions(build));
        return appraisal
                .answer("life", SHOWN, findings, withVerdict(stops, covered), defaults(appraisal, questions))
                .withLadder(new LimitLadder(approval, covered, start));
    }

    private static List<Rung> rungs(Known known, RungMaker maker, List<Asked> questions) {
        RatingRungs ratings = new RatingRungs(known, maker);
        RodRungs rod = new RodRungs(known, maker);
        BoltRungs bolts = new BoltRungs(known, maker);
        PinRungs pin = new PinRungs(known, maker);
        ValveRungs valves = new ValveRungs(known, maker);
        SpringRungs springs = new SpringRungs(known, maker);
        CrankRungs crank = new CrankRungs(known, maker);
        WheelRungs wheel = new WheelRungs(known, maker);
        PistonRungs piston = new PistonRungs(known, maker);
        WearRungs wear = new WearRungs(known, maker);
        List<Rung> rungs = new ArrayList<>(ratings.all());
        rungs.addAll(wheel.all());
        rungs.addAll(rod.all());
        rungs.addAll(bolts.all());
        rungs.addAll(pin.all());
        rungs.addAll(crank.all());
        rungs.addAll(valves.all());
        rungs.addAll(springs.all());
        rungs.addAll(piston.all());
        rungs.addAll(wear.all());
        for (List<Asked> asked : List.of(
                ratings.asked(),
                wheel.asked(),
                rod.asked(),
                bolts.asked(),
                pin.asked(),
                crank.asked(),
                valves.asked(),
                springs.asked(),
                piston.asked(),
                wear.asked())) {
            questions.addAll(asked);
        }
        return rungs;
    }

    /** What is passed first, then what is not sure, then by rising speed, then what no speed decides; what is unknown before what holds. */
    private static List<Rung> inOrder(List<Rung> rungs) {
        return rungs.stream()
                .sorted(Comparator.comparingInt(Life::rank)
                        .thenComparingDouble(r -> r.speed().map(Measured::value).orElse(Double.POSITIVE_INFINITY)))
                .toList();
    }

    private static int rank(Rung rung) {
        if (rung.isRefused()) {
            return 0;
        }
        if (rung.isInTheWay()) {
            return rung.state() == State.UNKNOWN ? 2 : 1;
        }
        return rung.state() == State.UNKNOWN ? 4 : 3;
    }

    /** A limit that is surely passed is a stop, like any other that the trade would thank for; on ratings and rims {@link Stops} has said it. */
    private static List<Stop> withVerdict(List<Stop> stops, List<Rung> rungs) {
        List<Stop> all = new ArrayList<>(stops);
        rungs.stream()
                .filter(r -> r.isRefused() && r.kind() != Rung.Kind.RATING && r.kind() != Rung.Kind.RIM)
                .map(r -> new Stop("do not run it as it is: " + r.label(), r.why(), r.unlock(), true))
                .forEach(all::add);
        return all;
    }

    private static List<DefaultUsed> defaults(Appraisal appraisal, List<Asked> questions) {
        Set<DefaultUsed> all = new LinkedHashSet<>();
        questions.stream().filter(Asked::isWhole).forEach(q -> all.addAll(q.taken()));
        all.addAll(appraisal.defaults());
        return List.copyOf(all);
    }

    /** Parts that were decided on stand in the build with their makers' figures, ratings among them. */
    private static List<Finding> bought(Build build) {
        return build.taken().stream()
                .flatMap(d -> d instanceof Decided.Bought part ? Stream.of(part) : Stream.of())
                .map(part -> new Finding(
                        Finding.Kind.WARNING,
                        part.kind().part().label(),
                        (part.code() + " " + part.name()).strip()
                                + " was taken: its rating and sizes stand as if it were in the engine",
                        "run nothing by this answer before it is; read its sizes once it is there"))
                .toList();
    }

    /** What is said to be looked over, of which is not said how, or in a way that shows nothing. */
    private static List<Finding> notCounted(Build build) {
        List<Finding> all = new ArrayList<>();
        for (int k = 0; k < build.damage().size(); k++) {
            Damage said = build.damage().get(k);
            if (said.isNone() && LOOKED_OVER.contains(said.part()) && !build.isCounted(said)) {
                all.add(new Finding(
                        Finding.Kind.WARNING,
                        "seen[" + (k + 1) + "].where",
                        said.part().label() + ": "
                                + (said.where().isBlank()
                                        ? "how it was looked over is not said"
                                        : "'" + said.where() + "'")
                                + ", so it is not counted as looked over",
                        "say how it was looked over: " + Damage.How.accepted()));
            }
        }
        return all;
    }

    private static List<Finding> cautions(Build build) {
        List<Finding> cautions = new ArrayList<>(Stops.cautions(build));
        if (build.chose(Choice.MAIN_BEARING, "ball", "roller")) {
            cautions.add(
                    new Finding(
                            Finding.Kind.NOTE,
                            Choice.MAIN_BEARING.path(),
                            "the main journals run in rolling bearings: they have no oil film that is asked for, and how long they last under these loads is not known, for their"
                                    + " load rating is not asked for here",
                            "take the basic dynamic load rating by the number on the ring to their maker's sheet, with the loads and the speed"));
        }
        cautions.add(new Finding(
                Finding.Kind.NOTE,
                "what a ladder cannot see",
                "cracks, dents, pores, a cap put on the wrong way round, a nut not tightened, oil that does not get there: every rung takes sound parts put "
                        + "together as they should be",
                "dye-check rod, crankshaft and wheel, and let a qualified machinist look where you are not sure"));
        return cautions;
    }

    /** When the readings are so far from any engine that no figures can be found that come near them all. */
    private static Answer untangled(Build build) {
        Approval none = new Approval(
                Approval.State.NOT_APPROVED,
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                "not approved: " + Appraisal.NO_ENGINE,
                List.of(Appraisal.NO_ENGINE),
                List.of(new Approval.Unlock("find the wrong reading", "see measure", "", "")),
                "nothing as it stands");
        return Appraisal.untangled(
                        "life",
                        build,
                        List.of(new Stop(
                                "do not run it",
                                Appraisal.NO_ENGINE,
                                "find the wrong reading first: see measure",
                                false)))
                .withLadder(new LimitLadder(none, List.of(), LimitLadder.Start.NOTHING));
    }
}
