package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.measure.Appraisal;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What there is to put together: for each kind the rows that may be taken, the engine's own among them. */
final class Assembly {
    /** Kinds that make the stack, and the figure without which a row of them cannot stand in it. */
    static final Map<PartKind, Term> STACK = new LinkedHashMap<>();

    static {
        STACK.put(PartKind.CRANKSHAFT, Term.STROKE);
        STACK.put(PartKind.PISTON, Term.COMPRESSION_HEIGHT);
        STACK.put(PartKind.CONNECTING_ROD, Term.ROD_LENGTH);
        STACK.put(PartKind.GASKET, Term.GASKET_THICKNESS);
        STACK.put(PartKind.HEAD, Term.CHAMBER_VOLUME);
    }

    private final Build build;
    private final Appraisal own;
    private final Catalogue catalogue;
    private final Map<PartKind, List<Row>> rows = new EnumMap<>(PartKind.class);
    private final List<PartKind> chosen;

    Assembly(Build build, Appraisal own, Catalogue catalogue) {
        this.build = build;
        this.own = own;
        this.catalogue = catalogue;
        this.chosen = chosen();
        for (PartKind kind : STACK.keySet()) {
            rows.put(kind, rowsOf(kind));
        }
    }

    private static Term stands(PartKind kind) {
        return java.util.Objects.requireNonNull(STACK.get(kind));
    }

    Build build() {
        return build;
    }

    /** What may be spent, where it is in the currency of the prices. */
    OptionalLong budget() {
        return Money.budget(build, catalogue);
    }

    Appraisal own() {
        return own;
    }

    /** Rows on offer of a kind that is chosen after the stack. */
    List<Row> offered(PartKind kind) {
        List<CataloguePart> all = catalogue.of(kind);
        List<CataloguePart> kept =
                all.stream().filter(p -> build.fit().keep().contains(p.code())).toList();
        return (kept.isEmpty() ? all : kept).stream().map(Assembly::row).toList();
    }

    List<Operation> operations() {
        return build.fit().machining() ? catalogue.operations() : List.of();
    }

    List<Row> rows(PartKind kind) {
        return rows.getOrDefault(kind, List.of());
    }

    /** Whether a shop on offer may make the part: the kind may be bought, and no row of it must stay. */
    boolean mayBeMade(Operation.Kind kind) {
        return kind.makes().filter(k -> chosen.contains(k) && !mustBeBought(k)).isPresent();
    }

    /** Whether a part of this kind may come from a shop that makes it. */
    boolean mayBeMade(PartKind part) {
        return operations().stream()
                .anyMatch(o -> o.kind().makes().filter(k -> k == part).isPresent() && mayBeMade(o.kind()));
    }

    /** Kinds of the stack and others that may be bought. */
    List<PartKind> kinds() {
        return chosen;
    }

    private List<PartKind> chosen() {
        if (!build.fit().choose().isEmpty()) {
            List<PartKind> choose = new ArrayList<>(build.fit().choose());
            catalogue.parts().stream()
                    .filter(p -> build.fit().keep().contains(p.code()) && !choose.contains(p.kind()))
                    .forEach(p -> choose.add(p.kind()));
            return List.copyOf(new LinkedHashSet<>(choose));
        }
        List<PartKind> offered = STACK.keySet().stream()
                .filter(k -> !catalogue.of(k).isEmpty()
                        || operations().stream()
                                .anyMatch(o ->
                                        o.kind().makes().filter(m -> m == k).isPresent()))
                .toList();
        List<PartKind> missing =
                offered.stream().filter(k -> own.figure(stands(k)).isEmpty()).toList();
        return missing.isEmpty() ? offered : missing;
    }

    private List<Row> rowsOf(PartKind kind) {
        List<Row> found = new ArrayList<>();
        if (!mustBeBought(kind)) {
            ownRow(kind).ifPresent(found::add);
        }
        if (chosen.contains(kind)) {
            List<CataloguePart> offered = catalogue.of(kind);
            List<String> keep = build.fit().keep();
            List<CataloguePart> kept =
                    offered.stream().filter(p -> keep.contains(p.code())).toList();
            (kept.isEmpty() ? offered : kept)
                    .stream().filter(p -> !standsAsTaken(p)).forEach(p -> found.add(row(p)));
        }
        return found;
    }

    /** Whether the owner named a row of this kind that must be in it, and has not taken it yet. */
    boolean mustBeBought(PartKind kind) {
        List<CataloguePart> kept = catalogue.of(kind).stream()
                .filter(p -> build.fit().keep().contains(p.code()))
                .toList();
        return !kept.isEmpty() && kept.stream().noneMatch(this::standsAsTaken);
    }

    /** Whether it was taken and its figures stand in the build: then it is the engine's own and not offered a second time. */
    private boolean standsAsTaken(CataloguePart part) {
        return build.taken().stream()
                        .anyMatch(d -> d instanceof Decided.Bought b
                                && b.kind() == part.kind()
                                && b.code().equals(part.code())
                                && b.name().equals(part.name()))
                && ownRow(part.kind()).isPresent();
    }

    /** What the engine has already, or an empty place that a row would have to say more about; none where the figure of the stack is not known. */
    private Optional<Row> ownRow(PartKind kind) {
        Map<Term, Dim> dims = new EnumMap<>(Term.class);
        for (var value : own.values()) {
            if (speaksOf(kind, value.term().part())) {
                dims.put(value.term(), Dim.of(value.figure()));
            }
        }
        dims.entrySet().removeIf(e -> isUseless(e.getKey(), e.getValue()));
        Map<Choice, String> words = new EnumMap<>(Choice.class);
        build.choices().forEach((choice, word) -> {
            if (speaksOf(kind, choice.part())) {
                words.put(choice, word);
            }
        });
        boolean stands = kind == PartKind.HEAD || dims.containsKey(stands(kind));
        return stands ? Optional.of(new Row(kind, null, List.of(), dims, words)) : Optional.empty();
    }

    /** All that is known of the engine as it is, as one row. */
    Row whole() {
        Map<Term, Dim> dims = new EnumMap<>(Term.class);
        own.values().forEach(v -> dims.put(v.term(), Dim.of(v.figure())));
        return new Row(PartKind.DONOR_ENGINE, null, List.of(), dims, build.choices());
    }

    private static boolean speaksOf(PartKind kind, Part part) {
        return kind.sections().contains(part);
    }

    static Row row(CataloguePart part) {
        Map<Term, Dim> dims = new EnumMap<>(Term.class);
        part.figures()
                .forEach((term, figure) -> dims.put(
                        term,
                        term.dimension() == Dimension.ROTATIONAL_SPEED
                                ? new Dim(figure.value().si(), 0, 0, false) // a rating has no tolerance
                                : Dim.of(figure)));
        derive(dims);
        dims.entrySet().removeIf(e -> isUseless(e.getKey(), e.getValue()));
        return new Row(part.kind(), part, List.of(), dims, part.words());
    }

    /** A size known no better than this share of itself cannot be fitted by: it counts as not said; common practice, no source. */
    private static final double USELESS = 0.02;

    private static final Set<Term> SIZES = Set.of(
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.PIN_DIAMETER,
            Term.SMALL_END_BORE,
            Term.BIG_END_BORE,
            Term.CRANKPIN_DIAMETER,
            Term.BORE,
            Term.GASKET_BORE,
            Term.PISTON_DIAMETER,
            Term.DECK_HEIGHT);

    static boolean isUseless(Term term, Dim dim) {
        return SIZES.contains(term) && !(dim.value() > 0 && dim.half() <= USELESS * dim.value());
    }

    /** Figures that a row states in another way: pin top for pin centre, throw for stroke. */
    private static void derive(Map<Term, Dim> dims) {
        Dim top = dims.get(Term.PIN_TOP_TO_CROWN);
        Dim pin = dims.get(Term.PIN_DIAMETER);
        if (!dims.containsKey(Term.COMPRESSION_HEIGHT) && top != null && pin != null) {
            dims.put(Term.COMPRESSION_HEIGHT, top.plus(0.5, pin));
        }
        Dim offCentre = dims.get(Term.THROW);
        if (!dims.containsKey(Term.STROKE) && offCentre != null) {
            dims.put(Term.STROKE, new Dim(0, 0, 0, false).plus(2, offCentre));
        }
    }
}
