package longthrow.core.measure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.engine.Material;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Provenance;
import longthrow.core.measurement.Reconciliation;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * What was entered, turned into observations: each with its scatter, the step of its scale, the error its instrument shares with other readings,
 * and its temperature. Every default taken on the way is listed.
 */
final class Readings {
    /** A temperature typed at the bench is good to this, 95 % half-width [K]; common practice, no source. */
    static final double TEMPERATURE_DOUBT = 1.0;
    /** Ring-land crevice of a small engine, one to three per cent of the clearance volume [m3], Heywood (1988) section 8.6; from memory. */
    private static final double USUAL_CREVICE = 0.4e-6;
    /** Figures that are a wish, or a plate's: they are stated, not read, and stand as they are written. */
    static final Set<Term> STATED = Set.of(
            Term.WANTED_SPEED,
            Term.GOVERNED_SPEED,
            Term.FLYWHEEL_RATED_SPEED,
            Term.ROD_RATED_SPEED,
            Term.LIMITER_SPEED,
            Term.LIFE_WANTED);
    /** Share of itself that a stated figure is held to: far below what anything here can tell, and above what doubles round. */
    static final double STATED_TO = 1e-7;
    /** A vanishing pull is this many times as wide as the believable range. */
    private static final double PULL_WIDTH = 10;

    /**
     * One observation and where it came from.
     * @param observation what enters the reconciliation
     * @param term        what was read
     * @param place       in the build file
     * @param set         the readings behind it; null for sheets and assumptions
     * @param written     the figures as they were written; empty when worked out
     */
    record Entry(
            Observation observation,
            Term term,
            String place,
            Provenance provenance,
            @Nullable ReadingSet set,
            List<Quantity> written) {
        Entry {
            written = List.copyOf(written);
        }

        /** The same entry of an engine of which another model holds. */
        Entry by(EngineModel model) {
            Formula formula = model.formula(term).orElseThrow();
            Observation o = observation;
            return formula.equals(o.formula())
                    ? this
                    : new Entry(
                            new Observation(o.id(), formula, o.value(), o.errors()),
                            term,
                            place,
                            provenance,
                            set,
                            written);
        }
    }

    private final Build build;
    private final EngineModel model;
    private final List<Entry> entries = new ArrayList<>();
    private final List<DefaultUsed> defaults = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private final Set<Term> withoutTolerance = new LinkedHashSet<>();
    private final Map<Term, ReadingSet> trials = new EnumMap<>(Term.class);
    private final List<TableReading> tables = new ArrayList<>();
    /** Of which some are set aside here; itself where none is. */
    private final Readings whole;

    /** Of all that was read. */
    private final Set<Aside> aside;

    Readings(Build build, EngineModel model) {
        this.build = build;
        this.model = model;
        this.whole = this;
        this.aside = Set.of();
        Set<Term> paired = pairTrials();
        build.given().forEach((term, list) -> {
            if (!paired.contains(term)) {
                add(term, list);
            }
        });
        TableCurve.of(build).forEach(curve -> tell(new TableReading(curve, this::readDirectly)));
        assume();
        if (entries.stream().anyMatch(e -> e.set() != null && e.term().dimension() == Dimension.LENGTH)
                && build.given().values().stream()
                        .flatMap(List::stream)
                        .noneMatch(g -> g instanceof Given.Taken t && t.partTemperature() != null)) {
            defaults.add(new DefaultUsed(
                    "temperature",
                    "no temperature was written down: lengths are taken as read at 20 °C; a 65 mm aluminium bore reads 0.015 mm"
                            + " (0.0006 in) big for each 10 °C it is warmer",
                    "ISO 1:2022"));
        }
    }

    EngineModel model() {
        return model;
    }

    /** The same readings with some of them set aside. */
    Readings without(Set<Aside> aside) {
        return new Readings(this, aside);
    }

    /** What is set aside of all that was read. */
    Set<Aside> aside() {
        return aside;
    }

    private Readings(Readings all, Set<Aside> aside) {
        build = all.build;
        model = all.model;
        whole = all.whole;
        Set<Aside> together = new LinkedHashSet<>(all.aside);
        together.addAll(aside);
        this.aside = Set.copyOf(together);
        for (Entry entry : all.entries) {
            if (!aside.contains(Aside.all(entry.place()))) {
                entries.add(left(entry, aside));
            }
        }
        defaults.addAll(all.defaults);
        findings.addAll(all.findings);
        withoutTolerance.addAll(all.withoutTolerance);
        trials.putAll(all.trials);
        tables.addAll(all.tables);
    }

    /**
     * The readings with the entries of one term other than they are: the same as reading the other build anew, in a fraction of the time. What is
     * set aside of other terms stays so, nothing of this one. What would be found and assumed on the way is not said.
     * @param other the build with those entries
     * @param model of the other build
     */
    Readings with(Build other, EngineModel model, Term changed) {
        Readings all = new Readings(whole, other, model, changed);
        Set<Aside> others = new LinkedHashSet<>(aside);
        others.removeAll(ofTerm(changed));
        return others.isEmpty() ? all : all.without(others);
    }

    private List<Aside> ofTerm(Term term) {
        int count = build.of(term).size();
        List<String> places =
                IntStream.range(0, count).mapToObj(k -> place(term, k, count)).toList();
        return aside.stream().filter(a -> places.contains(a.place())).toList();
    }

    /** What was read of a term, without what of it is set aside. */
    List<Given> left(Term term) {
        List<Given> all = build.of(term);
        List<Given> left = new ArrayList<>();
        for (int k = 0; k < all.size(); k++) {
            String place = place(term, k, all.size());
            if (!aside.contains(Aside.all(place))) {
                left.add(left(all.get(k), place));
            }
        }
        return left;
    }

    private Given left(Given given, String place) {
        if (!(given instanceof Given.Taken taken)) {
            return given;
        }
        List<Quantity> kept = new ArrayList<>();
        for (int k = 0; k < taken.readings().size(); k++) {
            if (!aside.contains(new Aside(place, k))) {
                kept.add(taken.readings().get(k));
            }
        }
        return kept.size() == taken.readings().size() || kept.isEmpty()
                ? taken
                : new Given.Taken(
                        kept,
                        taken.instrument(),
                        taken.partTemperature(),
                        taken.instrumentTemperature(),
                        taken.origin(),
                        taken.note());
    }

    private Readings(Readings known, Build other, EngineModel model, Term changed) {
        this.build = other;
        this.model = model;
        this.whole = this;
        this.aside = Set.of();
        Map<Term, List<Entry>> same = new EnumMap<>(Term.class);
        for (Entry entry : known.entries) {
            if (entry.term() != changed) {
                same.computeIfAbsent(entry.term(), t -> new ArrayList<>()).add(entry);
            }
        }
        Set<Term> paired = pairTrials();
        build.given().forEach((term, list) -> {
            List<Entry> own = same.getOrDefault(term, List.of()).stream()
                    .filter(e -> e.place().startsWith(term.path()))
                    .toList();
            if (paired.contains(term)) {
                return;
            }
            if (own.isEmpty()) { // the changed one, and one of trials that are no longer in pairs
                add(term, list);
            } else {
                own.forEach(e -> entries.add(e.by(model)));
            }
        });
        known.tables.forEach(t -> tell(t.hangsOn(changed) ? new TableReading(t.table(), this::readDirectly) : t));
        assume();
    }

    /** An entry without those of its readings that are set aside. */
    private static Entry left(Entry entry, Set<Aside> aside) {
        ReadingSet set = entry.set();
        List<Integer> kept = new ArrayList<>();
        for (int k = 0; set != null && k < set.count(); k++) {
            if (!aside.contains(new Aside(entry.place(), k))) {
                kept.add(k);
            }
        }
        if (set == null || kept.size() == set.count() || kept.isEmpty()) {
            return entry;
        }
        ReadingSet fewer = new ReadingSet(
                set.term(),
                set.place(),
                kept.stream().map(set.values()::get).toList(),
                set.instrument(),
                set.pooled(),
                set.pooledFreedom());
        Map<Source, Double> errors = errors(fewer);
        entry.observation().errors().forEach((source, factor) -> {
            if (source.kind() == Source.Kind.TEMPERATURE) {
                errors.put(source, factor);
            }
        });
        Observation o = entry.observation();
        return new Entry(
                new Observation(o.id(), o.formula(), fewer.mean(), errors),
                entry.term(),
                entry.place(),
                entry.provenance(),
                fewer,
                kept.stream().map(entry.written()::get).toList());
    }

    List<Entry> entries() {
        return entries;
    }

    List<DefaultUsed> defaults() {
        return defaults;
    }

    List<Finding> findings() {
        return findings;
    }

    /** Terms entered from a sheet that gives no tolerance: their doubt is unknown. */
    Set<Term> withoutTolerance() {
        return withoutTolerance;
    }

    List<Observation> observations() {
        return entries.stream().map(Entry::observation).toList();
    }

    /** Everything the observations and the wanted formulas depend on. */
    List<Reconciliation.Sought> sought(List<Formula> wanted) {
        Set<String> names = new LinkedHashSet<>();
        entries.forEach(e -> names.addAll(e.observation().formula().inputs()));
        wanted.forEach(f -> names.addAll(f.inputs()));
        Map<String, Term> terms = EngineModel.sought();
        List<Reconciliation.Sought> sought = new ArrayList<>();
        for (String name : names) {
            Term term = terms.get(name);
            if (term == null) {
                throw new IllegalStateException("a formula depends on " + name + ", which is no term");
            }
            double[] range = range(term);
            sought.add(new Reconciliation.Sought(
                    name, term.label(), 0.5 * (range[0] + range[1]), PULL_WIDTH * (range[1] - range[0])));
        }
        return sought;
    }

    /** Where a figure may be looked for [SI]. */
    static double[] range(Term term) {
        if (term.isRead()) {
            return new double[] {term.believable().least(), term.believable().most()};
        }
        return switch (term) {
            case DECK_TILT_SIDES, DECK_TILT_ENDS -> new double[] {-1e-3, 1e-3};
            case CREVICE_VOLUME -> new double[] {0, 3e-6};
            case INTAKE_LOBE_CENTRE, EXHAUST_LOBE_CENTRE -> new double[] {Math.toRadians(70), Math.toRadians(150)};
            case INTAKE_DURATION, EXHAUST_DURATION -> new double[] {Math.toRadians(120), Math.toRadians(380)};
            default -> throw new IllegalStateException(term.path() + " is worked out and cannot be looked for");
        };
    }

    /** What a lift table tells at the checking lift joins the readings. */
    private void tell(TableReading table) {
        tables.add(table);
        findings.addAll(table.findings());
        for (TableReading.Told told : table.told()) {
            Observation o = told.observation();
            entries.add(new Entry(o, told.term(), o.id(), Provenance.MEASURED, null, List.of()));
        }
    }

    /** A figure by the entries of its own alone. */
    private Optional<Measured> readDirectly(Term term) {
        List<Observation> own = entries.stream()
                .filter(e -> e.term() == term && e.place().startsWith(term.path()))
                .map(Entry::observation)
                .toList();
        if (own.isEmpty()) {
            return Optional.empty();
        }
        List<Reconciliation.Sought> itself = sought(List.of()).stream()
                .filter(s -> s.name().equals(term.path()))
                .toList();
        return Optional.of(Reconciliation.of(own, itself).figure(term.path()));
    }

    /** What the lift tables with rows enough say, in the order of the file. */
    List<TableReading> tables() {
        return tables;
    }

    /** The entries of a term, each at its place in the build file. */
    private void add(Term term, List<Given> list) {
        for (int k = 0; k < list.size(); k++) {
            add(term, place(term, k, list.size()), list.get(k));
        }
    }

    /** Where the entry of a term, so many in all, stands in the build file. */
    static String place(Term term, int index, int count) {
        return count == 1 ? term.path() : term.path() + "[" + (index + 1) + "]";
    }

    private void add(Term term, String place, Given given) {
        EntryCautions.wideDoubt(build, term, given, place).ifPresent(findings::add);
        if (STATED.contains(term) && isStated(given)) {
            Quantity value = given.figure().orElseThrow();
            boolean sheet = given instanceof Given.Specified;
            Source source = Source.at95(
                    place + " stated", Source.Kind.TYPED, term.label(), STATED_TO * Math.max(Math.abs(value.si()), 1));
            entry(
                    term,
                    place,
                    sheet ? Provenance.SPECIFIED : Provenance.STATED,
                    null,
                    List.of(value),
                    value.si(),
                    single(source));
        } else if (given instanceof Given.Taken taken) {
            List<Double> values = taken.readings().stream().map(Quantity::si).toList();
            Instrument instrument = instrument(term, taken.instrument(), place);
            Thermal thermal = thermal(term, place, taken);
            List<Double> corrected =
                    values.stream().map(v -> v * thermal.factor()).toList();
            ReadingSet set = new ReadingSet(
                    term,
                    place,
                    corrected,
                    instrument,
                    build.repeatability(term.reading()),
                    ReadingKind.POOLED_DEGREES_OF_FREEDOM);
            if (set.count() < ReadingSet.OWN_SCATTER_FROM) {
                defaults.add(new DefaultUsed(
                        place,
                        (set.count() == 1 ? "one reading" : "two readings")
                                + ": the usual scatter of this kind of reading stands in",
                        build.bench().containsKey(term.reading())
                                ? "the owner's bench table"
                                : "table of pooled repeatability; JCGM 100:2008 4.2.4"));
            }
            Map<Source, Double> errors = errors(set);
            errors.putAll(thermal.errors());
            entry(term, place, Provenance.MEASURED, set, taken.readings(), set.mean(), errors);
        } else if (given instanceof Given.Typed typed) {
            Source source = Source.at95(
                    place + " ±",
                    Source.Kind.TYPED,
                    term.label(),
                    positive(typed.plusMinus().si(), term));
            entry(
                    term,
                    place,
                    Provenance.MEASURED,
                    null,
                    List.of(typed.value()),
                    typed.value().si(),
                    single(source));
        } else if (given instanceof Given.Specified sheet) {
            Quantity tolerance = sheet.tolerance();
            if (tolerance == null) {
                believable(term, place, sheet.value().si());
                withoutTolerance.add(term);
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        place,
                        term.label() + " stands at " + sheet.value().written()
                                + " on the sheet with no tolerance, so its doubt is" + " unknown and it is not used",
                        "write its tolerance beside it, or measure it"));
                return;
            }
            Source source = Source.rectangular(
                    place + " tolerance", Source.Kind.TOLERANCE, term.label(), positive(tolerance.si(), term));
            entry(
                    term,
                    place,
                    !sheet.catalogue() && build.pendingOn(term).isPresent()
                            ? Provenance.PLANNED
                            : sheet.catalogue() ? Provenance.CATALOGUE : Provenance.SPECIFIED,
                    null,
                    List.of(sheet.value()),
                    sheet.value().si(),
                    single(source));
        } else if (given instanceof Given.Assumed assumed) {
            Source source = Source.at95(
                    place + " assumed",
                    Source.Kind.ASSUMED,
                    term.label(),
                    positive(assumed.plusMinus().si(), term));
            entry(
                    term,
                    place,
                    Provenance.ASSUMED,
                    null,
                    List.of(assumed.value()),
                    assumed.value().si(),
                    single(source));
            defaults.add(new DefaultUsed(
                    place,
                    term.label() + " assumed " + assumed.value().written() + " ± "
                            + assumed.plusMinus().written(),
                    "the owner: " + assumed.because()));
        }
    }

    /** A doubt of exactly nothing cannot be weighed; the finest step that is ever told apart stands in. */
    private static double positive(double halfWidth, Term term) {
        double least = switch (term.dimension()) {
            case LENGTH -> 1e-9;
            case VOLUME -> 1e-12;
            case ANGLE -> 1e-7;
            default -> 1e-9 * Math.max(Math.abs(term.believable().most()), 1e-9);
        };
        return Math.max(halfWidth, least);
    }

    private static Map<Source, Double> single(Source source) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        errors.put(source, 1.0);
        return errors;
    }

    private void entry(
            Term term,
            String place,
            Provenance provenance,
            @Nullable ReadingSet set,
            List<Quantity> written,
            double value,
            Map<Source, Double> errors) {
        Formula formula =
                model.formula(term).orElseThrow(() -> new IllegalStateException(term.path() + " has no formula"));
        entries.add(new Entry(new Observation(place, formula, value, errors), term, place, provenance, set, written));
    }

    /** Scatter, step of the scale and instrument of a set of readings; each as the error of their mean. */
    static Map<Source, Double> errors(ReadingSet set) {
        return errors(set, directionOf(set.term()));
    }

    /**
     * Which way an error of the instrument moves a reading. That of a degree wheel is one of its zero: all it shows then lies that much later, so what
     * is counted before a dead centre reads small and what is counted after it reads big. It cancels in a duration and an overlap, not in a lobe centre.
     */
    static double directionOf(Term term) {
        return switch (term) {
            case INTAKE_OPENS, EXHAUST_OPENS, BASE_TIMING -> -1;
            default -> 1;
        };
    }

    private static Map<Source, Double> errors(ReadingSet set, double direction) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        String label = set.term().label();
        double n = Math.sqrt(set.count());
        errors.put(
                new Source(
                        set.place() + " scatter",
                        Source.Kind.SCATTER,
                        label,
                        set.scatter() / n,
                        set.freedom(),
                        set.bestScatter() / n,
                        set.usesTable()
                                ? "repeatability of " + set.term().reading().key()
                                : ""),
                1.0);
        Instrument tool = set.instrument();
        if (!set.showsItsStep()) {
            errors.put(
                    Source.rectangular(set.place() + " resolution", Source.Kind.RESOLUTION, label, set.stepHalfWidth()),
                    1.0);
        }
        for (Instrument at = tool; at != null; at = at.setWith()) {
            addInstrument(at, set.mean(), direction, errors);
        }
        return errors;
    }

    /** The stated error of an instrument, one and the same for all readings taken with it or with what was set by it. */
    private static void addInstrument(Instrument tool, double reading, double direction, Map<Source, Double> errors) {
        if (tool.statedError() > 0 && direction != 0) {
            errors.put(statedError(tool), direction);
        }
        if (tool.relativeError() > 0) {
            errors.put(gain(tool), reading);
        }
    }

    /** What all readings of an instrument are out by alike. */
    static Source statedError(Instrument tool) {
        return Source.at95("instrument " + tool.key(), Source.Kind.INSTRUMENT, owner(tool), tool.statedError());
    }

    /** What they are out by as a share of themselves. */
    static Source gain(Instrument tool) {
        return Source.at95(
                "instrument " + tool.key() + " gain", Source.Kind.INSTRUMENT, owner(tool), tool.relativeError());
    }

    private static String owner(Instrument tool) {
        return tool.key().replace('_', ' ');
    }

    private Instrument instrument(Term term, @Nullable String key, String place) {
        ReadingKind kind = term.reading();
        if (key == null) {
            InstrumentKind usual = kind.usualInstrument();
            defaults.add(new DefaultUsed(place, "no instrument named: taken with a " + usual.label(), usual.source()));
            return Optional.ofNullable(build.instruments().get(usual.key())).orElseGet(() -> Instrument.builtIn(usual));
        }
        Instrument own = build.instruments().get(key);
        if (own != null) {
            return own;
        }
        for (InstrumentKind builtIn : InstrumentKind.values()) {
            if (builtIn.key().equals(key)) {
                defaults.add(new DefaultUsed(
                        "instruments." + key, "built-in figures of a " + builtIn.label(), builtIn.source()));
                return Instrument.builtIn(builtIn);
            }
        }
        throw new IllegalArgumentException(
                place + " was taken with " + key + ", which is no instrument of this build and no built-in kind");
    }

    /**
     *
     * @param factor to bring a reading to 20 °C
     * @param errors of it, as errors of the corrected reading
     */
    private record Thermal(double factor, Map<Source, Double> errors) {
        static final Thermal NONE = new Thermal(1, Map.of());
    }

    /** ISO 1: the part and the scale are both brought to 20 °C. */
    private Thermal thermal(Term term, String place, Given.Taken taken) {
        Quantity partAt = taken.partTemperature();
        if (partAt == null || term.dimension() != Dimension.LENGTH) {
            return Thermal.NONE;
        }
        Optional<Material> metal = Material.of(build, term.part());
        if (metal.isEmpty()) {
            String mend = metalMend(term.part());
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    "read at " + partAt.written() + ", but what the "
                            + term.part().label() + " is made of is not said:" + " the reading is not brought to 20 °C",
                    mend));
            return Thermal.NONE;
        }
        Material part = metal.get();
        Quantity toolAt = taken.instrumentTemperature();
        double partRise = partAt.si() - Material.REFERENCE_TEMPERATURE;
        double toolRise = toolAt == null ? partRise : toolAt.si() - Material.REFERENCE_TEMPERATURE;
        Material steel = Material.STEEL;
        double reading = taken.readings().get(0).si();
        Map<Source, Double> errors = new LinkedHashMap<>();
        String owner = "temperature of the " + term.part().label();
        if (toolAt == null) {
            errors.put(
                    Source.at95(place + " temperature", Source.Kind.TEMPERATURE, owner, TEMPERATURE_DOUBT),
                    reading * (steel.expansion() - part.expansion()));
            defaults.add(new DefaultUsed(
                    place, "the instrument is taken to be as warm as the part", "common practice, no source"));
        } else {
            errors.put(
                    Source.at95(place + " temperature", Source.Kind.TEMPERATURE, owner, TEMPERATURE_DOUBT),
                    -reading * part.expansion());
            errors.put(
                    Source.at95(place + " instrument temperature", Source.Kind.TEMPERATURE, owner, TEMPERATURE_DOUBT),
                    reading * steel.expansion());
        }
        errors.put(
                Source.at95(
                        "expansion of " + part.key(),
                        Source.Kind.TEMPERATURE,
                        "expansion of " + part.key(),
                        part.spread()),
                -reading * partRise);
        if (part != steel) {
            errors.put(
                    Source.at95("expansion of steel", Source.Kind.TEMPERATURE, "expansion of steel", steel.spread()),
                    reading * toolRise);
        }
        defaults.add(new DefaultUsed(
                place,
                "brought to 20 °C with the expansion of " + part.key() + " and a steel instrument",
                part.source()));
        return new Thermal((1 + steel.expansion() * toolRise) / (1 + part.expansion() * partRise), errors);
    }

    private static String metalMend(Part part) {
        return switch (part) {
            case CYLINDER, HEAD, ROD, CRANKSHAFT -> "write " + part.key() + ": metal: ...";
            case PISTON -> "write piston: alloy: ...";
            case WHOLE,
                    OUTPUT_SHAFT,
                    IGNITION,
                    FLYWHEEL,
                    GASKET,
                    CAMSHAFT,
                    INTAKE_VALVE,
                    EXHAUST_VALVE,
                    SPRING,
                    ROCKER,
                    PUSHROD,
                    RINGS,
                    CRANKCASE,
                    INTAKE,
                    CARBURETTOR,
                    EXHAUST,
                    LIMITER,
                    CLUTCH,
                    SPROCKET,
                    USE,
                    PLACE -> "let it cool to 20 °C and read it again";
        };
    }

    /** A figure that is used is held against its range where contradictions are looked for; one that is not used, here. */
    private void believable(Term term, String place, double value) {
        if (!term.believable().holds(value)) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    term.label() + " is outside what an 80 to 500 cc single shows",
                    checkIt(term)));
        }
    }

    /** What to look at first when a figure cannot be believed. */
    static String checkIt(Term term) {
        return "check the unit, the decimal point and the sign"
                + (term.sign().isEmpty() ? "" : " (" + term.sign() + ")") + ", and read it again";
    }

    /** A figure that was decided or that stands on a plate: one figure, with no doubt and no instrument beside it. */
    private static boolean isStated(Given given) {
        return (given instanceof Given.Taken t && t.readings().size() == 1 && t.instrument() == null)
                || (given instanceof Given.Specified s && s.tolerance() == null);
    }

    /** Trials of both valves; the terms that are read by that. */
    private Set<Term> pairTrials() {
        Set<Term> paired = new LinkedHashSet<>();
        pairTrials(Term.INTAKE_OPENS, Term.INTAKE_CLOSES, Term.INTAKE_LOBE_CENTRE, Term.INTAKE_DURATION, true, paired);
        pairTrials(
                Term.EXHAUST_OPENS,
                Term.EXHAUST_CLOSES,
                Term.EXHAUST_LOBE_CENTRE,
                Term.EXHAUST_DURATION,
                false,
                paired);
        return paired;
    }

    /**
     * Opening and closing read as often as each other are trials, each with its own zero: lobe centre and duration are formed trial by trial,
     * so that an error of the zero does not count twice (JCGM 100:2008 H.2, simultaneous readings).
     */
    private void pairTrials(Term opens, Term closes, Term centre, Term duration, boolean intake, Set<Term> paired) {
        List<Given> first = build.of(opens);
        List<Given> second = build.of(closes);
        if (first.size() != 1
                || second.size() != 1
                || !(first.get(0) instanceof Given.Taken a)
                || !(second.get(0) instanceof Given.Taken b)
                || a.readings().size() != b.readings().size()
                || a.readings().size() < 2) {
            return;
        }
        List<Double> centres = new ArrayList<>();
        List<Double> durations = new ArrayList<>();
        for (int k = 0; k < a.readings().size(); k++) {
            double open = a.readings().get(k).si();
            double close = b.readings().get(k).si();
            centres.add((Math.PI + (intake ? close - open : open - close)) / 2);
            durations.add(Math.PI + open + close);
        }
        String place = opens.path() + " and " + closes.key();
        Instrument wheel = instrument(opens, a.instrument(), place);
        double pooled = build.repeatability(opens.reading());
        trial(
                centre,
                intake ? 1 : -1,
                place + ", centre",
                new ReadingSet(
                        opens,
                        place + ", centre",
                        centres,
                        wheel,
                        pooled / Math.sqrt(2),
                        ReadingKind.POOLED_DEGREES_OF_FREEDOM));
        trial(
                duration,
                0,
                place + ", duration",
                new ReadingSet(
                        opens,
                        place + ", duration",
                        durations,
                        wheel,
                        pooled * Math.sqrt(2),
                        ReadingKind.POOLED_DEGREES_OF_FREEDOM));
        paired.add(opens);
        paired.add(closes);
        findings.add(new Finding(
                Finding.Kind.NOTE,
                place,
                centres.size() + " openings and as many closings: read as trials, the first with the first, and so on",
                "if they were not taken in pairs, write one more of one of them"));
    }

    private void trial(Term term, double direction, String place, ReadingSet set) {
        trials.put(term, set);
        entry(term, place, Provenance.MEASURED, set, List.of(), set.mean(), errors(set, direction));
    }

    /** The trials behind a lobe centre or a duration; empty when the events were not read in pairs. */
    Optional<ReadingSet> trials(Term term) {
        return Optional.ofNullable(trials.get(term));
    }

    /** What is assumed of a figure nothing was read for, so that others can be compared; empty for most. */
    static Optional<Double> usual(String name) {
        if (name.equals(EngineModel.TILT_SIDES) || name.equals(EngineModel.TILT_ENDS)) {
            return Optional.of(0.0);
        }
        return name.equals(Term.CREVICE_VOLUME.path()) ? Optional.of(USUAL_CREVICE) : Optional.empty();
    }

    /** The pin stands in for the bore of its bosses, whose clearance is some hundredths of a millimetre at the most. */
    private void pinForItsBore() {
        if (build.has(Term.PIN_BOTTOM_TO_CROWN) && !build.has(Term.PISTON_PIN_BORE)) {
            defaults.add(new DefaultUsed(
                    Term.PISTON_PIN_BORE.path(),
                    "pin bore not read: the pin diameter stands in for it in " + Term.PIN_BOTTOM_TO_CROWN.label(),
                    "a pin fits its bosses within some hundredths of a millimetre; common practice, no source"));
        }
    }

    /** What was not read of the offsets is taken as nothing wherever the crank's exact motion matters. */
    private void assumeInLine() {
        boolean pin = build.has(Term.PIN_OFFSET);
        boolean bore = build.has(Term.BORE_OFFSET);
        boolean closes = build.has(Term.INTAKE_CLOSES) || TableCurve.mayTell(build, Valve.INTAKE);
        boolean effective = closes && build.has(Term.ROD_LENGTH) && build.has(Term.STROKE);
        if ((pin && bore) || !(pin || bore || effective)) {
            return;
        }
        Term missing = pin ? Term.BORE_OFFSET : Term.PIN_OFFSET;
        defaults.add(
                new DefaultUsed(
                        missing.path(),
                        pin || bore
                                ? missing.label() + " not read: taken as nothing beside the other"
                                : "neither pin offset nor bore offset read: the pin's path is taken through the crank axis",
                        "common practice, no source; a millimetre moves the effective ratio by less than one part in a hundred"));
    }

    /** What is taken for granted of what was not read. */
    private void assume() {
        assumeInLine();
        assumeCrevice();
        pinForItsBore();
        assumeLevelDeck(
                EngineModel.TILT_SIDES,
                Term.DECK_CLEARANCE_THRUST,
                Term.DECK_CLEARANCE_ANTITHRUST,
                0.1e-3,
                "piston rock off the pin axis, 0.1 to 0.3 mm if not cancelled; common practice, no source");
        assumeLevelDeck(
                EngineModel.TILT_ENDS,
                Term.DECK_CLEARANCE_FLYWHEEL_END,
                Term.DECK_CLEARANCE_OUTPUT_END,
                0.05e-3,
                "deck square to the crankshaft within 0.05 mm over the bore; common practice, no source");
    }

    private void assumeCrevice() {
        boolean needed = build.has(Term.VOLUME_IN_ASSEMBLY)
                && build.has(Term.CHAMBER_VOLUME)
                && !(build.has(Term.TOP_LAND_DIAMETER) && build.has(Term.TOP_LAND_HEIGHT));
        if (!needed) {
            return;
        }
        double volume = USUAL_CREVICE;
        double halfWidth = USUAL_CREVICE;
        String place = Term.CREVICE_VOLUME.path();
        Source source = Source.at95(place + " assumed", Source.Kind.ASSUMED, Term.CREVICE_VOLUME.label(), halfWidth);
        entry(Term.CREVICE_VOLUME, place, Provenance.ASSUMED, null, List.of(), volume, single(source));
        defaults.add(new DefaultUsed(
                place,
                String.format(
                        Locale.ROOT,
                        "ring-land crevice assumed %.1f ± %.1f cc to compare the fill in assembly with the sum of"
                                + " its parts",
                        volume * 1e6,
                        halfWidth * 1e6),
                "one to three per cent of the clearance volume, Heywood (1988) section 8.6; from memory"));
    }

    /** A pair of sides of which only one was read tells nothing of the tilt between them: it is assumed level, with doubt. */
    private void assumeLevelDeck(String tilt, Term one, Term other, double halfWidth, String source) {
        if (build.has(one) == build.has(other)) {
            return;
        }
        Term term = tilt.equals(EngineModel.TILT_SIDES) ? Term.DECK_TILT_SIDES : Term.DECK_TILT_ENDS;
        entry(
                term,
                tilt,
                Provenance.ASSUMED,
                null,
                List.of(),
                0,
                single(Source.at95(tilt + " assumed", Source.Kind.ASSUMED, term.label(), 2 * halfWidth)));
        Term missing = build.has(one) ? other : one;
        defaults.add(new DefaultUsed(
                tilt,
                "only one side was read: the other is assumed level with it; read " + missing.label() + " too",
                source));
    }
}
