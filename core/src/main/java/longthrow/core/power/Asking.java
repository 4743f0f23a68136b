package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.build.Build;
import longthrow.core.build.LiftTable;
import longthrow.core.cycle.Spark;
import longthrow.core.engine.Stops;
import longthrow.core.gas.Fuel;
import longthrow.core.life.Known;
import longthrow.core.measure.LiftTables;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.power.Kind.Basis;
import longthrow.core.power.Kind.Cooling;
import longthrow.core.power.Kind.Layout;
import longthrow.core.power.Kind.Use;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * What the prediction is told of an engine by its owner: figures where they were read, words where they were chosen, the usual for the rest, said aloud. Without bore, stroke,
 * compression ratio and what sort of engine it is there are no figures, and what is missing is asked for.
 */
final class Asking {
    /** Head on the bench, six lifts of one port, twice; common practice, no source. */
    private static final double FLOW_BENCH_MINUTES = 60;

    private static final String PRACTICE = "common practice, no source";

    /** Where each figure is read, for those that are read as they stand. */
    static final Map<Needed, Term> READ = read();

    /** Where those are read that come of a reading by a formula, see {@link Openings}. */
    private static final Map<Needed, Term> WORKED = worked();

    private static final List<Needed> EVENTS =
            List.of(Needed.INTAKE_OPENS, Needed.INTAKE_CLOSES, Needed.EXHAUST_OPENS, Needed.EXHAUST_CLOSES);

    /** What is read with a word beside it, without which it is doubted far. */
    private static final Map<Needed, Choice> EDGES = Map.of(
            Needed.INTAKE_RESTRICTOR, Choice.INTAKE_RESTRICTOR_EDGE,
            Needed.EXHAUST_RESTRICTOR, Choice.EXHAUST_RESTRICTOR_EDGE);

    /** Valve timing is told by all of these or by none. */
    private static final List<Needed> TIMING =
            Stream.concat(EVENTS.stream(), Stream.of(Needed.CHECKING_LIFT)).toList();

    private final Known known;
    private final FigurePrinter printer;
    private final List<DefaultUsed> taken = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private final Map<String, Rung.Missing> missing = new LinkedHashMap<>();
    private final Map<Needed, Measured> readings = new EnumMap<>(Needed.class);
    private List<Needed> lacking = List.of();
    private final Optional<Figures> figures;
    private Optional<Measured> octane = Optional.empty();

    Asking(Known known) {
        this.known = known;
        this.printer = new FigurePrinter(known.build().units());
        Optional<Kind> kind = kind();
        size();
        figures = kind.isPresent() && missing.isEmpty() ? Optional.of(filled(kind.get())) : Optional.empty();
        figures.ifPresent(f -> octane = octane(f.fuel()));
    }

    private static Map<Needed, Term> worked() {
        Map<Needed, Term> worked = new EnumMap<>(Needed.class);
        worked.put(Needed.FILTER, Term.FILTER_DROP);
        worked.put(Needed.THROTTLE, Term.THROTTLE_BORE);
        worked.put(Needed.SILENCER_HOLE, Term.SILENCER_HOLE);
        worked.put(Needed.CASE_VOLUME, Term.CASE_VOLUME);
        worked.put(Needed.BREATHER_VALVE, Term.BREATHER_HOLE);
        worked.put(Needed.BREATHER_OPEN, Term.BREATHER_HOLE);
        return worked;
    }

    private static Map<Needed, Term> read() {
        Map<Needed, Term> read = new EnumMap<>(Needed.class);
        read.put(Needed.BORE, Term.BORE);
        read.put(Needed.STROKE, Term.STROKE);
        read.put(Needed.ROD, Term.ROD_LENGTH);
        read.put(Needed.COMPRESSION_RATIO, Term.COMPRESSION_RATIO);
        read.put(Needed.INTAKE_HEAD, Term.INTAKE_HEAD);
        read.put(Needed.EXHAUST_HEAD, Term.EXHAUST_HEAD);
        read.put(Needed.INTAKE_THROAT, Term.INTAKE_THROAT);
        read.put(Needed.EXHAUST_THROAT, Term.EXHAUST_THROAT);
        read.put(Needed.INTAKE_LIFT, Term.INTAKE_LIFT);
        read.put(Needed.EXHAUST_LIFT, Term.EXHAUST_LIFT);
        read.put(Needed.CHECKING_LIFT, Term.CHECKING_LIFT);
        read.put(Needed.INTAKE_OPENS, Term.INTAKE_OPENS);
        read.put(Needed.INTAKE_CLOSES, Term.INTAKE_CLOSES);
        read.put(Needed.EXHAUST_OPENS, Term.EXHAUST_OPENS);
        read.put(Needed.EXHAUST_CLOSES, Term.EXHAUST_CLOSES);
        read.put(Needed.INTAKE_PORT_LENGTH, Term.INTAKE_PORT_LENGTH);
        read.put(Needed.INTAKE_RUNNER_LENGTH, Term.RUNNER_LENGTH);
        read.put(Needed.INTAKE_BORE, Term.RUNNER_BORE);
        read.put(Needed.VENTURI, Term.VENTURI);
        read.put(Needed.CARBURETTOR_LENGTH, Term.CARBURETTOR_LENGTH);
        read.put(Needed.AIRBOX, Term.AIRBOX_VOLUME);
        read.put(Needed.EXHAUST_PORT_LENGTH, Term.EXHAUST_PORT_LENGTH);
        read.put(Needed.PRIMARY_LENGTH, Term.PRIMARY_LENGTH);
        read.put(Needed.PRIMARY_BORE, Term.PRIMARY_DIAMETER);
        read.put(Needed.SILENCER, Term.SILENCER_VOLUME);
        read.put(Needed.FLAME_TRAVEL, Term.PLUG_TO_WALL);
        read.put(Needed.SPARK, Term.TIMING_WITH_KEY);
        read.put(Needed.INERTIA, Term.FLYWHEEL_INERTIA);
        read.put(Needed.OIL_TEMPERATURE, Term.OIL_TEMPERATURE);
        read.put(Needed.AIR_PRESSURE, Term.AIR_PRESSURE);
        read.put(Needed.AIR_TEMPERATURE, Term.AIR_TEMPERATURE);
        read.put(Needed.HUMIDITY, Term.HUMIDITY);
        return read;
    }

    /** Empty where something is missing that nothing usual stands for. */
    Optional<Figures> figures() {
        return figures;
    }

    /** The number by which the fuel acts; empty where the pump's number or its scale is not told, and for fuels unlike petrol. */
    Optional<Measured> octane() {
        return octane;
    }

    /** What has to be told for how far the spark is from knocking, as far as telling it helps. */
    List<Rung.Missing> missingForKnock() {
        List<Rung.Missing> lacks = new ArrayList<>();
        if (!readings.containsKey(Needed.SPARK)) {
            lacks.addAll(known.missing(Term.BASE_TIMING));
        }
        if (octane.isEmpty() && figures.filter(f -> isPetrol(f.fuel())).isPresent()) {
            if (known.figure(Term.OCTANE_NUMBER).isEmpty()) {
                lacks.addAll(known.missing(Term.OCTANE_NUMBER));
            }
            if (known.build().choice(Choice.OCTANE_SCALE).isEmpty()) {
                lacks.add(Known.missing(Choice.OCTANE_SCALE));
            }
        }
        return lacks;
    }

    /** What has to be read or said before anything can be told. */
    List<Rung.Missing> missing() {
        return List.copyOf(missing.values());
    }

    List<DefaultUsed> taken() {
        return List.copyOf(taken);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    /** The entry in which a figure that was taken could be read instead; empty where there is none. Events that were read and are not used want those that were not. */
    Optional<Rung.Missing> reading(Needed needed) {
        if (needed == Needed.CRANKCASE) {
            return Optional.of(Known.missing(Choice.BREATHER));
        }
        Optional<Term> read = lacking.isEmpty() || !TIMING.contains(needed)
                ? Optional.ofNullable(READ.getOrDefault(needed, WORKED.get(needed)))
                : Optional.of(term(lacking.get(0)));
        if (EDGES.containsKey(needed)) {
            return Optional.of(Known.missing(edge(needed)));
        }
        return needed == Needed.INTAKE_FLOW || needed == Needed.EXHAUST_FLOW
                ? Optional.of(flow(needed == Needed.INTAKE_FLOW ? "intake" : "exhaust"))
                : read.flatMap(term -> known.missing(term).stream().findFirst());
    }

    private static Choice edge(Needed needed) {
        return Optional.ofNullable(EDGES.get(needed)).orElseThrow();
    }

    /** Whether a figure was read and lacks the word beside it. */
    boolean isHalfTold(Needed needed) {
        return EDGES.containsKey(needed)
                && readings.containsKey(needed)
                && known.build().choice(edge(needed)).isEmpty();
    }

    private static Rung.Missing flow(String valve) {
        return new Rung.Missing(
                "flow_tables",
                "flow of the " + valve + " port by lift",
                "have it read on a flow bench at one depression, lift by lift up to full lift, with the port's own radius or pipe on it",
                FLOW_BENCH_MINUTES);
    }

    private void lacks(Rung.Missing what) {
        missing.putIfAbsent(what.where(), what);
    }

    private void takes(Choice choice, String what, String source) {
        taken.add(new DefaultUsed(choice.path(), what, source));
    }

    // ---- what sort of engine

    private Optional<Kind> kind() {
        Build build = known.build();
        Optional<Use> use = use();
        Optional<Layout> layout = layout(use);
        if (use.isEmpty() || layout.isEmpty()) {
            return Optional.empty();
        }
        boolean utility = use.get() == Use.UTILITY;
        Cooling cooling = build.choice(Choice.COOLING)
                .map(word -> switch (word) {
                    case "fan" -> Cooling.FAN;
                    case "wind" -> Cooling.WIND;
                    case "liquid" -> Cooling.LIQUID;
                    default -> throw new IllegalStateException("no cooling is called " + word);
                })
                .orElseGet(() -> {
                    takes(
                            Choice.COOLING,
                            utility ? "cooled by a fan, as utility engines are" : "cooled by the wind of driving",
                            PRACTICE);
                    return utility ? Cooling.FAN : Cooling.WIND;
                });
        int valves = known.figure(Term.VALVES)
                .map(v -> (int) Math.round(v.value()))
                .orElseGet(() -> {
                    taken.add(new DefaultUsed(Term.VALVES.path(), "two valves, as nearly all of these have", PRACTICE));
                    return 2;
                });
        int exhausts = valves / 2;
        return Optional.of(new Kind(use.get(), cooling, layout.get(), valves - exhausts, exhausts, Basis.NET));
    }

    private Optional<Use> use() {
        Optional<Use> said = known.build().choice(Choice.MADE_FOR).map(word -> switch (word) {
            case "utility" -> Use.UTILITY;
            case "road" -> Use.ROAD;
            case "competition" -> Use.COMPETITION;
            default -> throw new IllegalStateException("no engine is made for " + word);
        });
        if (said.isPresent()) {
            return said;
        }
        if (known.build().choice(Choice.GOVERNOR).isPresent()
                || known.figure(Term.GOVERNED_SPEED)
                        .filter(g -> Stops.isVouched(known.build(), Term.GOVERNED_SPEED))
                        .isPresent()) {
            takes(
                    Choice.MADE_FOR,
                    "made to drive a machine, for its maker told a governed speed or gave it a governor",
                    PRACTICE);
            return Optional.of(Use.UTILITY);
        }
        lacks(Known.missing(Choice.MADE_FOR));
        return Optional.empty();
    }

    private Optional<Layout> layout(Optional<Use> use) {
        Build build = known.build();
        Optional<String> valves = build.choice(Choice.VALVE_LAYOUT);
        if (valves.isEmpty()) {
            lacks(Known.missing(Choice.VALVE_LAYOUT));
            return Optional.empty();
        }
        if (valves.get().equals("side")) {
            return Optional.of(Layout.SIDE_VALVE);
        }
        Optional<String> drive = build.choice(Choice.CAM_DRIVE);
        if (drive.isPresent()) {
            return Optional.of(drive.get().equals("in_case") ? Layout.PUSHROD : Layout.OVERHEAD_CAM);
        }
        if (known.figure(Term.PUSHROD_LENGTH).isPresent()) {
            return Optional.of(Layout.PUSHROD);
        }
        if (use.equals(Optional.of(Use.UTILITY))) {
            takes(Choice.CAM_DRIVE, "camshaft in the case, as in most utility engines", PRACTICE);
            return Optional.of(Layout.PUSHROD);
        }
        lacks(Known.missing(Choice.CAM_DRIVE));
        return Optional.empty();
    }

    // ---- figures

    private void size() {
        for (Term term : List.of(Term.BORE, Term.STROKE, Term.COMPRESSION_RATIO)) {
            if (known.figure(term).isEmpty()) {
                if (term == Term.COMPRESSION_RATIO) {
                    shortcut();
                }
                known.missing(term).forEach(this::lacks);
            }
        }
    }

    /** So many more readings are no longer way than another; layout. */
    private static final int FEW_READINGS = 2;

    /** One filling of the engine as it stands tells its ratio without taking it apart; told first, for the others take long. */
    private void shortcut() {
        if (!known.build().has(Term.VOLUME_IN_ASSEMBLY)
                && known.missing(Term.COMPRESSION_RATIO).size() > FEW_READINGS) {
            known.missing(Term.VOLUME_IN_ASSEMBLY).stream()
                    .findFirst()
                    .ifPresent(m -> lacks(new Rung.Missing(
                            m.where(),
                            m.what()
                                    + " (the shortest way: instead of all readings of chamber, crown, gasket and deck)",
                            m.how() + "; or " + Term.DECK_CLEARANCE.path()
                                    + " instead of deck height, compression height and rod length",
                            m.minutes())));
        }
    }

    private Figures filled(Kind kind) {
        READ.forEach((needed, term) -> known.figure(term).ifPresent(figure -> readings.put(needed, figure)));
        if (!readings.containsKey(Needed.SPARK)) {
            known.figure(Term.BASE_TIMING).ifPresent(timing -> readings.put(Needed.SPARK, timing));
        }
        sparked();
        offset();
        events();
        heads(kind);
        notBoth(Needed.INTAKE_THROAT, Needed.INTAKE_HEAD);
        notBoth(Needed.EXHAUST_THROAT, Needed.EXHAUST_HEAD);
        stemmed(Needed.INTAKE_THROAT, Term.INTAKE_STEM);
        stemmed(Needed.EXHAUST_THROAT, Term.EXHAUST_STEM);
        lifted(Needed.INTAKE_LIFT, Needed.INTAKE_HEAD);
        lifted(Needed.EXHAUST_LIFT, Needed.EXHAUST_HEAD);
        ValveTables tables = tables(kind);
        Set<Needed> without = EnumSet.noneOf(Needed.class);
        notFitted(Choice.AIR_FILTER, without, Needed.FILTER, Needed.AIRBOX);
        notFitted(Choice.SILENCER, without, Needed.SILENCER, Needed.SILENCER_HOLE);
        without.forEach(readings::remove);
        nearPlug();
        Fuel fuel = fuel();
        Figures first = Figures.of(kind, fuel, readings, without, tables);
        Restrictors plates = new Restrictors(known, first);
        readings.putAll(plates.read());
        findings.addAll(plates.findings());
        taken.addAll(plates.taken());
        Openings openings = new Openings(known, first);
        readings.putAll(openings.read());
        Figures all = openings.breathing(Figures.of(kind, fuel, readings, without, tables));
        findings.addAll(openings.findings());
        narrowed(all);
        for (Needed needed : Needed.values()) {
            all.usual(needed).ifPresent(source -> taken.add(usual(all, needed, source)));
        }
        taken.addAll(Model.assumptions(all));
        if (!all.has(Needed.SPARK)) {
            taken.add(new DefaultUsed(
                    Term.BASE_TIMING.path(),
                    "spark wherever half has burned at "
                            + printer.print(Dimension.ANGLE, Spark.HalfBurnedAt.BEST, 0)
                                    .line()
                            + " after top dead centre, as with the timing of most torque",
                    "Heywood (1988), 9.2, from memory"));
        }
        return all;
    }

    /** The sums bear a spark from 10 degrees after to 60 before top dead centre; past that a reading or a key is wrong. */
    private void sparked() {
        Measured spark = readings.get(Needed.SPARK);
        if (spark != null && !(spark.value() >= Spark.LATEST && spark.value() <= Spark.EARLIEST)) {
            unread(
                    Needed.SPARK,
                    "no such engine runs with it, timing and key together; from "
                            + printer.print(Dimension.ANGLE, Spark.LATEST, 0).line() + " to "
                            + printer.print(Dimension.ANGLE, Spark.EARLIEST, 0).line()
                            + " before top dead centre is borne",
                    "read " + Term.BASE_TIMING.path() + " and the key's offset again");
        }
    }

    /** Along the piston's way: of the bore and of the pin together. */
    private void offset() {
        List<Measured> offsets = Stream.of(Term.BORE_OFFSET, Term.PIN_OFFSET)
                .flatMap(term -> known.figure(term).stream())
                .toList();
        if (offsets.isEmpty()) {
            return;
        }
        double value = 0;
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (Measured offset : offsets) {
            value += offset.value();
            offset.contributions().forEach((source, c) -> contributions.merge(source, c, Double::sum));
        }
        readings.put(Needed.OFFSET, Measured.withContributions(value, contributions));
    }

    /** Events tell nothing without the lift at which they were read, nor that without them: all five, or the usual for all. */
    private void events() {
        lacking = TIMING.stream().filter(n -> !readings.containsKey(n)).toList();
        if (lacking.isEmpty()) {
            return;
        }
        boolean isSome = EVENTS.stream().anyMatch(readings::containsKey);
        TIMING.forEach(readings::remove);
        if (isSome) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.INTAKE_OPENS.part().key(),
                    "the events that were read are not used: "
                            + lacking.stream().map(Needed::label).collect(Collectors.joining(", "))
                            + (lacking.size() == 1 ? " is" : " are")
                            + " not known; some events without the others, or without the lift at which they were"
                            + " read, are no valve timing",
                    "read the rest: "
                            + lacking.stream().map(n -> term(n).path()).collect(Collectors.joining(", "))));
        }
    }

    /** A throat surely wider than the head that shuts it was read wrongly: what is usual behind such a head stands for it. */
    private void notBoth(Needed throat, Needed head) {
        Measured inside = readings.get(throat);
        Measured outside = readings.get(head);
        if (inside != null && outside != null && inside.low() > outside.high()) {
            readings.remove(throat);
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    term(throat).path(),
                    throat.label() + ", " + printed(throat, inside)
                            + ", is not used: it is wider than the valve's head, " + printed(head, outside)
                            + ", and no such valve would shut",
                    "read both again, the throat just inside the seat"));
        }
    }

    /** Over the bore there is room for heads that lie side by side within it, somewhat more where they lean; those of side valves lie beside it. */
    private void heads(Kind kind) {
        if (kind.layout() == Layout.SIDE_VALVE) {
            return;
        }
        Measured bore = readings.get(Needed.BORE);
        for (Needed head : List.of(Needed.INTAKE_HEAD, Needed.EXHAUST_HEAD)) {
            Measured read = readings.get(head);
            if (read != null && bore != null && read.low() > ONE_HEAD_OVER_BORE * bore.high()) {
                unread(
                        head,
                        "a head so wide leaves no room over the bore for the other valve",
                        "read it and the bore again");
            }
        }
        Measured in = readings.get(Needed.INTAKE_HEAD);
        Measured out = readings.get(Needed.EXHAUST_HEAD);
        if (in != null && out != null && bore != null && in.low() + out.low() > HEADS_OVER_BORE * bore.high()) {
            unread(
                    Needed.INTAKE_HEAD,
                    "both heads together are wider than the bore leaves room for",
                    "read both and the bore again");
            unread(
                    Needed.EXHAUST_HEAD,
                    "both heads together are wider than the bore leaves room for",
                    "read both and the bore again");
        }
    }

    /** Of the bore: what published heads have is at most 0.55 for one and 1.0 for both side by side; leaning valves a little more. Judgement, no source. */
    private static final double ONE_HEAD_OVER_BORE = 0.75;

    private static final double HEADS_OVER_BORE = 1.15;

    /** A valve lifted by half its head's diameter passes all that its throat does; more than this of it is no valve's. Judgement, no source. */
    private static final double LIFT_OVER_HEAD = 0.7;

    private void unread(Needed needed, String why, String mend) {
        Measured figure = readings.remove(needed);
        if (figure != null) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    term(needed).path(),
                    needed.label() + ", " + printed(needed, figure) + ", is not used: " + why
                            + "; what is usual stands for it",
                    mend));
        }
    }

    private void stemmed(Needed throat, Term stem) {
        Measured inside = readings.get(throat);
        Optional<Measured> through = known.figure(stem);
        if (inside != null && through.isPresent() && through.get().low() > HEADS_STEM * inside.high()) {
            unread(
                    throat,
                    "its stem, "
                            + printer.print(
                                            Dimension.LENGTH,
                                            through.get().value(),
                                            through.get().expanded())
                                    .line() + ", would fill it",
                    "read " + term(throat).path() + " and " + stem.path() + " again");
        }
    }

    /** Stem over throat, above which hardly anything passes; judgement, no source. */
    private static final double HEADS_STEM = 0.7;

    private void lifted(Needed lift, Needed head) {
        Measured up = readings.get(lift);
        Measured wide = readings.get(head);
        if (up != null && wide != null && up.low() > LIFT_OVER_HEAD * wide.high()) {
            unread(lift, "no valve with a head of " + printed(head, wide) + " is lifted so far", "read both again");
        }
    }

    /** Some wall is half a bore from any plug within the bore. */
    private void nearPlug() {
        Measured travel = readings.get(Needed.FLAME_TRAVEL);
        Measured bore = readings.get(Needed.BORE);
        if (travel != null && bore != null && travel.high() < 0.5 * bore.low()) {
            readings.remove(Needed.FLAME_TRAVEL);
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.PLUG_TO_WALL.path(),
                    Term.PLUG_TO_WALL.label() + ", " + printed(Needed.FLAME_TRAVEL, travel)
                            + ", is not used: a plug in the very middle is half a bore from the wall, and this is less",
                    "read it again, to the edge of the chamber that is farthest from the gap"));
        }
    }

    /** The sums know no venturi wider than the way behind it. */
    private void narrowed(Figures all) {
        Measured venturi = readings.get(Needed.VENTURI);
        double behind = all.number(Needed.INTAKE_BORE);
        if (venturi != null && venturi.value() > behind) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.VENTURI.path(),
                    "the venturi, " + printed(Needed.VENTURI, venturi)
                            + ", is wider than the way between it and the port, "
                            + printed(
                                    Needed.INTAKE_BORE,
                                    all.value(Needed.INTAKE_BORE).orElseThrow())
                            + ": reckoned as wide as that way, so the carburettor seems to cost nothing",
                    "read " + Term.VENTURI.path() + " and " + Term.RUNNER_BORE.path() + " again"));
        }
    }

    private String printed(Needed needed, Measured figure) {
        return printer.print(needed.dimension(), figure.value(), figure.expanded())
                .line();
    }

    /** Tables of flow and lift, as far as they count; why the others do not is said. */
    private ValveTables tables(Kind kind) {
        FlowTableReading in = new FlowTableReading(known, true, kind.intakes());
        FlowTableReading out = new FlowTableReading(known, false, kind.exhausts());
        LiftTableReading up = new LiftTableReading(known, true, lacking.isEmpty() ? readings : Map.of());
        LiftTableReading off = new LiftTableReading(known, false, lacking.isEmpty() ? readings : Map.of());
        findings.addAll(in.findings());
        findings.addAll(out.findings());
        Stream.of(up, off).flatMap(read -> read.finding().stream()).forEach(findings::add);
        unusedLifts(Stream.of(up, off)
                .flatMap(read -> read.finding().stream())
                .map(Finding::where)
                .collect(Collectors.toSet()));
        Stream.of(in.taken(), out.taken(), up.taken(), off.taken()).forEach(taken::addAll);
        in.factor(up.lift().isPresent()).ifPresent(f -> readings.put(Needed.INTAKE_FLOW, f));
        out.factor(off.lift().isPresent()).ifPresent(f -> readings.put(Needed.EXHAUST_FLOW, f));
        return new ValveTables(in.flow(), out.flow(), up.lift(), off.lift());
    }

    /** A lift table of which nothing was said so far stands for nothing here: that is told, and what is known of why. */
    private void unusedLifts(Set<String> said) {
        List<Finding> wrong = LiftTables.findings(known.build());
        List<LiftTable> tables = known.build().lifts();
        for (int k = 0; k < tables.size(); k++) {
            LiftTable table = tables.get(k);
            String place = "lift_tables[" + (k + 1) + "]";
            boolean isSaid = said.contains(place);
            Needed full = table.valve().equals("intake") ? Needed.INTAKE_LIFT : Needed.EXHAUST_LIFT;
            double highest =
                    table.rows().stream().mapToDouble(r -> r.lift().si()).max().orElse(0);
            Optional<Measured> read = Optional.ofNullable(readings.get(full));
            String unlike = read.filter(r -> table.at().equals("valve") && (highest < r.low() || highest > r.high()))
                    .map(r -> "it lifts at most "
                            + printer.print(Dimension.LENGTH, highest, 0).line() + ", and "
                            + term(full).path() + " was read as " + printed(full, r))
                    .orElse("");
            List<Finding> own = wrong.stream()
                    .filter(f -> f.where().equals(place) || f.where().startsWith(place + " "))
                    .toList();
            if (isSaid && unlike.isEmpty()) {
                continue;
            }
            String why = Stream.concat(own.stream().map(Finding::message), Stream.of(unlike))
                    .filter(words -> !words.isEmpty())
                    .collect(Collectors.joining("; "));
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    (isSaid
                                    ? "this lift table does not agree: "
                                    : "this lift table does not count for torque, and a lobe with assumed flanks stands for it: ")
                            + (why.isEmpty()
                                    ? "another table of this valve stands, or events and full lift do not say where on the crank it stands"
                                    : why),
                    own.stream()
                            .map(Finding::mend)
                            .findFirst()
                            .orElse("read it from shut to shut, and the valve's full lift with it")));
        }
    }

    private static Term term(Needed needed) {
        Term term = READ.get(needed);
        if (term == null) {
            throw new IllegalStateException(needed + " is read nowhere");
        }
        return term;
    }

    private void notFitted(Choice choice, Set<Needed> without, Needed first, Needed second) {
        Optional<String> word = known.build().choice(choice);
        if (word.isEmpty()) {
            takes(choice, "fitted, as it was sold", PRACTICE);
        } else if (word.get().equals("none")) {
            without.add(first);
            without.add(second);
            for (Needed needed : List.of(first, second)) {
                if (readings.containsKey(needed)) {
                    findings.add(new Finding(
                            Finding.Kind.NOTE,
                            term(needed).path(),
                            needed.label() + " was read and is not used: " + choice.path() + " says none is fitted",
                            ""));
                }
            }
        }
    }

    private Fuel fuel() {
        Optional<Fuel> fuel = known.build().choice(Choice.FUEL).flatMap(Fuel::named);
        if (fuel.isEmpty()) {
            takes(Choice.FUEL, "petrol", PRACTICE);
        }
        return fuel.orElseGet(Fuel::petrol);
    }

    private Optional<Measured> octane(Fuel fuel) {
        Optional<Measured> printed = known.figure(Term.OCTANE_NUMBER);
        if (printed.isEmpty()) {
            return Optional.empty();
        }
        if (!isPetrol(fuel)) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    Term.OCTANE_NUMBER.path(),
                    "the octane number is not used: what is known of knocking was fitted to petrol, and this engine"
                            + " burns "
                            + fuel.label(),
                    ""));
            return Optional.empty();
        }
        Optional<PumpOctane.Scale> scale = known.build()
                .choice(Choice.OCTANE_SCALE)
                .map(word -> switch (word) {
                    case "research" -> PumpOctane.Scale.RESEARCH;
                    case "mean" -> PumpOctane.Scale.MEAN;
                    default -> throw new IllegalStateException("no octane scale is called " + word);
                });
        if (scale.isEmpty()) {
            Rung.Missing say = Known.missing(Choice.OCTANE_SCALE);
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.OCTANE_NUMBER.path(),
                    "the octane number is not used: by which scale the pump prints it is not said, and the two lie 4"
                            + " to 5 apart",
                    say.how() + " (" + say.where() + ")"));
        }
        return scale.map(s -> PumpOctane.acting(printed.get(), s));
    }

    /** Petrol, with a tenth of ethanol or none. */
    static boolean isPetrol(Fuel fuel) {
        return fuel.label().equals(Fuel.petrol().label())
                || fuel.label().equals(Fuel.e10().label());
    }

    private DefaultUsed usual(Figures all, Needed needed, String source) {
        Measured figure = all.value(needed).orElseThrow();
        Term term = READ.getOrDefault(needed, WORKED.get(needed));
        return new DefaultUsed(
                term == null ? needed.key() : term.path(), needed.label() + " " + printed(needed, figure), source);
    }
}
