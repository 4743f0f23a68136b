package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.PartKind;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** Parts that hang on the stack without closing it: flywheel, clutch, limiter, pushrod. Of each kind that may be bought, the cheapest that suits. */
final class Followers {
    static final List<PartKind> KINDS = List.of(PartKind.FLYWHEEL, PartKind.CLUTCH, PartKind.LIMITER, PartKind.PUSHROD);
    /** What an adjuster takes up either way [m]; common practice, no source. */
    private static final double ADJUSTER = 0.5e-3;

    private final Assembly assembly;
    private final RuleWindows windows;
    private final Row engine;
    private final Optional<Double> speed;
    private final Found found;
    private final List<Candidate.Piece> pieces = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private Optional<Rejection> missing = Optional.empty();
    private final Set<PartKind> bought = EnumSet.noneOf(PartKind.class);

    Followers(Assembly assembly, Catalogue catalogue, Appraisal after, Found found) {
        this.assembly = assembly;
        this.windows = new RuleWindows(assembly.build());
        this.engine = crankOrEngine(found);
        this.found = found;
        this.speed = after.figure(Term.WANTED_SPEED).map(Measured::value);
        for (PartKind kind : KINDS) {
            if (assembly.kinds().contains(kind) && !isTakenFor(kind)) {
                choose(kind, catalogue.of(kind));
            }
        }
    }

    /** With everything as it was taken, what was taken beside it stands; with another part it is chosen afresh. */
    private boolean isTakenFor(PartKind kind) {
        return found.rows().allMatch(Row::isOwn)
                && assembly.build().taken().stream().anyMatch(d -> d instanceof Decided.Bought b && b.kind() == kind);
    }

    /** Why this way cannot be, where a part that must stay does not suit it. */
    Optional<Rejection> missing() {
        return missing;
    }

    /** Whether a part of this kind is bought with it. */
    boolean buys(PartKind kind) {
        return bought.contains(kind);
    }

    List<Candidate.Piece> pieces() {
        return pieces;
    }

    List<Finding> findings() {
        return findings;
    }

    private Row crankOrEngine(Found found) {
        return found.crank().isOwn() ? assembly.whole() : found.crank();
    }

    private void choose(PartKind kind, List<CataloguePart> offered) {
        List<String> keep = assembly.build().fit().keep();
        List<CataloguePart> kept =
                offered.stream().filter(p -> keep.contains(p.code())).toList();
        Optional<CataloguePart> cheapest = (kept.isEmpty() ? offered : kept)
                .stream()
                        .filter(p -> suits(kind, Assembly.row(p)))
                        .min(Comparator.comparingInt(
                                        (CataloguePart p) -> p.offer().price().isPresent() ? 0 : 1)
                                .thenComparingLong(p -> p.offer().price().orElse(0)));
        if (cheapest.isPresent()) {
            CataloguePart part = cheapest.get();
            bought.add(kind);
            if (kind == PartKind.PUSHROD) {
                Assembly.row(part).dim(Term.PUSHROD_LENGTH).ifPresent(this::withPushrod);
            }
            pieces.add(Row.piece(kind.key(), part.code(), part.name(), part.offer(), part.note()));
            return;
        }
        if (!kept.isEmpty()) {
            missing = Optional.of(new Rejection(
                    "a part that must stay does not suit",
                    1,
                    found.title(),
                    kept.stream().map(CataloguePart::code).collect(Collectors.joining(", "))
                            + " does not suit this crankshaft, speed or head, as far as its row says",
                    wanted(kind)));
        }
        findings.add(new Finding(
                Finding.Kind.WARNING,
                kind.key(),
                kept.isEmpty()
                        ? "no " + kind.label() + " of the catalogue is known to suit (" + offered.size() + " offered)"
                        : kept.stream().map(CataloguePart::code).collect(Collectors.joining(", "))
                                + ", which must stay, is not known to suit",
                wanted(kind) + "; a row that gives no tolerance cannot be known to suit"));
    }

    private String wanted(PartKind kind) {
        return switch (kind) {
            case FLYWHEEL ->
                "wanted: the crankshaft's taper and keyway, and a maker's rating at or above the wanted speed";
            case CLUTCH -> "wanted: the output shaft's diameter and keyway, and a hub no longer than the shaft";
            case LIMITER -> "wanted: one that cuts at the wanted speed or below";
            default -> "wanted: the length that the moved head asks for, within what the adjuster takes up";
        };
    }

    private boolean suits(PartKind kind, Row row) {
        return switch (kind) {
            case FLYWHEEL ->
                goesOn(Gap.FLYWHEEL_ON_TAPER, row, engine)
                        && goesOn(Gap.FLYWHEEL_KEY, row, engine)
                        && sameForm(row)
                        && rated(row);
            case CLUTCH ->
                goesOn(Gap.CLUTCH_ON_SHAFT, row, engine)
                        && goesOn(Gap.CLUTCH_KEY, row, engine)
                        && goesOn(Gap.CLUTCH_LENGTH, engine, row);
            case LIMITER ->
                row.dim(Term.LIMITER_SPEED)
                        .filter(d -> speed.isPresent() && d.value() + d.half() <= speed.get())
                        .isPresent();
            case PUSHROD -> pushrod(row);
            default -> false;
        };
    }

    private boolean goesOn(Gap gap, Row wide, Row inner) {
        Pairing pairing = gap.of(wide, inner, windows, List.of());
        return pairing.fits() && pairing.unknowns() == 0;
    }

    private boolean sameForm(Row wheel) {
        String one = wheel.words().get(longthrow.core.term.Choice.FLYWHEEL_TAPER_FORM);
        String other = engine.words().get(longthrow.core.term.Choice.CRANK_TAPER_FORM);
        return one == null || other == null || one.equals(other);
    }

    /** No wheel is taken on a rating it does not have. */
    private boolean rated(Row wheel) {
        return speed.isPresent()
                && wheel.dim(Term.FLYWHEEL_RATED_SPEED)
                        .filter(d -> d.value() - d.half() >= speed.get())
                        .isPresent();
    }

    /** What is said of lash and rocker with the old pushrods does not hold with others. */
    private void withPushrod(Dim length) {
        HeadMove move = HeadMove.of(assembly.own(), found);
        assembly.own().figure(Term.PUSHROD_LENGTH).filter(old -> !move.isOpen()).ifPresent(old -> {
            double left = move.up().value() - (length.value() - old.value());
            FigurePrinter printer = new FigurePrinter(assembly.build().units());
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    Term.PUSHROD_LENGTH.path(),
                    "with the pushrods that are bought, "
                            + printer.print(Dimension.LENGTH, length.value(), 0.01e-3)
                                    .line()
                            + ", the adjuster has "
                            + printer.print(Dimension.LENGTH, Math.abs(left), 0.01e-3)
                                    .line()
                            + (left > 0 ? " more" : " less")
                            + " to take up than before; what is said of the rocker with the old ones does not hold",
                    "set the lash afresh and look that the rocker stands square to the valve at half lift"));
        });
    }

    /** By how far the head moved; where the old gasket is not known, none is known to suit. */
    private boolean pushrod(Row row) {
        Optional<Measured> now = assembly.own().figure(Term.PUSHROD_LENGTH);
        HeadMove move = HeadMove.of(assembly.own(), found);
        return now.isPresent()
                && !move.isOpen()
                && row.dim(Term.PUSHROD_LENGTH)
                        .filter(d -> Math.abs(d.value()
                                        - now.get().value()
                                        - move.up().value())
                                <= ADJUSTER)
                        .isPresent();
    }
}
