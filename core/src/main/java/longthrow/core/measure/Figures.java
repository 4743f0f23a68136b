package longthrow.core.measure;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Result;
import longthrow.core.answer.Unknown;
import longthrow.core.build.Build;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.MonteCarlo;
import longthrow.core.measurement.Provenance;
import longthrow.core.measurement.Reconciliation;
import longthrow.core.measurement.Source;
import longthrow.core.term.Term;

/** Every figure of one engine that its readings determine, with its doubt: readings, model and reconciliation together. */
final class Figures {
    /** Half the last digit of a factor such as 0.0035, as a share. */
    private static final double RULE_DIGITS = 0.014;

    private static final BitSet NO_ENTRY = new BitSet(); // never written to

    private final Build build;
    private final EngineModel model;
    private final Readings readings;
    private final Reconciliation reconciliation;
    private final Map<Term, Measured> found = new EnumMap<>(Term.class);
    private final Map<Source, BitSet> entriesBySource = new HashMap<>(); // filled when first asked

    /**
     * Brings the readings together.
     * @param terms whose figures will be asked for
     * @param few   whether they are so few that it pays to look for nothing else
     */
    private Figures(Build build, EngineModel model, Readings readings, Collection<Term> terms, boolean few) {
        this.build = build;
        this.model = model;
        this.readings = readings;
        List<Formula> wanted =
                terms.stream().flatMap(t -> model.formula(t).stream()).toList();
        List<Reconciliation.Sought> sought = readings.sought(wanted);
        Set<String> names = new LinkedHashSet<>();
        wanted.forEach(f -> names.addAll(f.inputs()));
        this.reconciliation = few
                ? Reconciliation.of(readings.observations(), sought, names)
                : Reconciliation.of(readings.observations(), sought);
    }

    /** The figures that follow when some readings are set aside. */
    Figures without(Set<Aside> aside) {
        return aside.isEmpty() ? this : new Figures(build, model, readings.without(aside), model.terms(), false);
    }

    static Figures of(Build build) {
        return fresh(build, List.of(Term.values()));
    }

    /** As {@link #of}, ready for one figure only. */
    static Figures only(Build build, Term term) {
        return fresh(build, List.of(term));
    }

    private static Figures fresh(Build build, List<Term> terms) {
        EngineModel model = new EngineModel(build);
        return new Figures(build, model, new Readings(build, model), terms, false);
    }

    /**
     * As {@link #of} for the same engine with other entries of one term, what is set aside of others staying so, ready for some figures only.
     * @param model of the other build; this one's own where the term was given before, since all that matters to it is which terms are
     */
    Figures again(Build other, Term changed, EngineModel model, Collection<Term> terms) {
        return new Figures(other, model, readings.with(other, model, changed), terms, true);
    }

    /** The figure of a term; empty when the term has no formula on this engine or the readings do not determine it. */
    Optional<Measured> figure(Term term) {
        Optional<Formula> formula = model.formula(term);
        if (formula.isEmpty()) {
            return Optional.empty();
        }
        if (!canBe(formula.get())) {
            return Optional.empty();
        }
        Measured figure = found.computeIfAbsent(
                term,
                t -> t == Term.TOP_RING_GAP_WANTED
                        ? ruleOfThumb(through(formula.get()))
                        : stated(t, through(formula.get())));
        return figure.isUnknown() ? Optional.empty() : Optional.of(figure);
    }

    /** What was stated without doubt has none. */
    private static Measured stated(Term term, Measured figure) {
        boolean exact = Readings.STATED.contains(term)
                && figure.standardUncertainty() <= Readings.STATED_TO * Math.max(Math.abs(figure.value()), 1);
        return exact ? Measured.exact(figure.value()) : figure;
    }

    /** A figure wanted by a rule of thumb is no better than the two digits its factor is written with. */
    private static Measured ruleOfThumb(Measured figure) {
        Map<Source, Double> contributions = new LinkedHashMap<>(figure.contributions());
        Source digits = Source.rectangular(
                "rule of thumb", Source.Kind.ASSUMED, "the rule's own digits", RULE_DIGITS * Math.abs(figure.value()));
        contributions.put(digits, digits.standardUncertainty());
        return Measured.withContributions(figure.value(), contributions);
    }

    /** Whether parts of these sizes go together at all: a rod shorter than the throw has no motion to reckon with. */
    private boolean canBe(Formula formula) {
        double[] at = formula.inputs().stream()
                .mapToDouble(name -> reconciliation.figures().apply(name).value())
                .toArray();
        return Double.isFinite(formula.at(at));
    }

    private Measured through(Formula formula) {
        return formula.hasKink()
                ? MonteCarlo.through(formula, reconciliation.figures())
                : Measured.through(formula, reconciliation.figures());
    }

    Build build() {
        return build;
    }

    EngineModel model() {
        return model;
    }

    Readings readings() {
        return readings;
    }

    Reconciliation reconciliation() {
        return reconciliation;
    }

    /** Terms with a figure, in the order of the registry. */
    List<Result> results() {
        List<Result> results = new ArrayList<>();
        for (Term term : model.terms()) {
            figure(term).ifPresent(figure -> results.add(result(term, figure)));
        }
        return results;
    }

    Result result(Term term, Measured figure) {
        Set<Provenance> provenance = new LinkedHashSet<>();
        List<String> from = new ArrayList<>();
        BitSet shared = new BitSet();
        figure.contributions().forEach((source, contribution) -> {
            if (Math.abs(contribution) > 1e-6 * figure.standardUncertainty()) {
                shared.or(entriesWith(source));
            }
        });
        List<Readings.Entry> entries = readings.entries();
        for (int i = 0; i < entries.size(); i++) {
            Readings.Entry entry = entries.get(i);
            boolean stated = figure.standardUncertainty() == 0 && entry.term() == term;
            if (shared.get(i) || stated) {
                provenance.add(entry.provenance());
                from.add(entry.place());
            }
        }
        return new Result(term, figure, provenance, from, false);
    }

    /** Entries, by index, that have this source of doubt as their own; none for what whole instruments or temperatures share. */
    private BitSet entriesWith(Source source) {
        if (entriesBySource.isEmpty()) {
            List<Readings.Entry> entries = readings.entries();
            for (int i = 0; i < entries.size(); i++) {
                for (Source own : entries.get(i).observation().errors().keySet()) {
                    if (own.kind() != Source.Kind.INSTRUMENT && own.kind() != Source.Kind.TEMPERATURE) {
                        entriesBySource.computeIfAbsent(own, s -> new BitSet()).set(i);
                    }
                }
            }
        }
        return entriesBySource.getOrDefault(source, NO_ENTRY);
    }

    /** Figures an owner would look for here and that cannot be said, with what is missing. */
    List<Unknown> unknowns() {
        List<Unknown> unknowns = new ArrayList<>();
        for (Term term : WANTED) {
            if (figure(term).isPresent() || model.formula(term).isEmpty()) {
                continue;
            }
            Measured vague = found.get(term);
            if (vague == null) {
                unknowns.add(new Unknown(term, List.of(), "parts of the sizes read do not go together"));
                continue;
            }
            List<Term> missing = missing(vague).stream()
                    .distinct()
                    .filter(t -> t != term || !readings.withoutTolerance().contains(t))
                    .toList();
            unknowns.add(new Unknown(term, missing, why(term)));
        }
        return unknowns;
    }

    private String why(Term term) {
        return readings.withoutTolerance().contains(term)
                ? "written without its tolerance (" + term.path() + "): write that beside it, or read it"
                : term.meaning();
    }

    /** What nothing was read for, of the terms a figure leans on. */
    private static List<Term> missing(Measured vague) {
        List<Term> missing = new ArrayList<>();
        for (Map.Entry<Source, Double> c : vague.contributions().entrySet()) {
            if (c.getKey().kind() == Source.Kind.UNKNOWN
                    && Math.abs(c.getValue()) > 1e-3 * vague.standardUncertainty()) {
                Term.at(c.getKey().id().substring(Reconciliation.NOTHING_READ.length()))
                        .ifPresent(t -> missing.addAll(readFor(t)));
            }
        }
        return missing;
    }

    /** What is read on the bench for a figure that is not read itself. */
    private static List<Term> readFor(Term term) {
        return switch (term) {
            case INTAKE_LOBE_CENTRE, INTAKE_DURATION -> List.of(Term.INTAKE_OPENS, Term.INTAKE_CLOSES);
            case EXHAUST_LOBE_CENTRE, EXHAUST_DURATION -> List.of(Term.EXHAUST_OPENS, Term.EXHAUST_CLOSES);
            case DECK_TILT_SIDES -> List.of(Term.DECK_CLEARANCE_THRUST, Term.DECK_CLEARANCE_ANTITHRUST);
            case DECK_TILT_ENDS -> List.of(Term.DECK_CLEARANCE_FLYWHEEL_END, Term.DECK_CLEARANCE_OUTPUT_END);
            case CREVICE_VOLUME -> List.of(Term.TOP_LAND_DIAMETER, Term.TOP_LAND_HEIGHT);
            default -> List.of(term);
        };
    }

    /** Figures every builder wants, in the order in which they are asked for. */
    static final List<Term> WANTED = List.of(
            Term.BORE,
            Term.STROKE,
            Term.SWEPT_VOLUME,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.DECK_HEIGHT,
            Term.DECK_CLEARANCE,
            Term.SQUISH,
            Term.CLEARANCE_VOLUME,
            Term.COMPRESSION_RATIO,
            Term.PISTON_TO_WALL,
            Term.BORE_TAPER,
            Term.OUT_OF_ROUND,
            Term.SLEEVE_WALL,
            Term.TOP_RING_GAP,
            Term.BIG_END_CLEARANCE,
            Term.PIN_CLEARANCE,
            Term.ROD_SIDE_CLEARANCE,
            Term.CRANK_RUN_OUT,
            Term.CRANK_END_PLAY,
            Term.COIL_BIND_MARGIN,
            Term.INTAKE_LOBE_CENTRE);
}
