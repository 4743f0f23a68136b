package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** What a combination changes against the engine as it is, what else it makes necessary, and what it leaves unknown. */
final class Consequences {
    /** A figure that moves by less than this share is the same engine still. */
    private static final double SAME = 1e-4;

    private final Build build;
    private final Appraisal before;
    private final Appraisal after;
    private final Found found;
    private final FigurePrinter printer;

    Consequences(Build build, Appraisal before, Appraisal after, Found found) {
        this.build = build;
        this.before = before;
        this.after = after;
        this.found = found;
        this.printer = new FigurePrinter(build.units());
    }

    private String words(Dimension dimension, double si, double doubt) {
        PrintedFigures printed = printer.print(dimension, si, doubt);
        return printed.first().value() + " " + printed.first().unit()
                + printed.second()
                        .map(f -> " (" + f.value() + " " + f.unit() + ")")
                        .orElse("");
    }

    private String length(double si) {
        return words(Dimension.LENGTH, si, 0.1e-3);
    }

    private static Finding note(String where, String message, String mend) {
        return new Finding(Finding.Kind.NOTE, where, message, mend);
    }

    private static Finding warning(String where, String message, String mend) {
        return new Finding(Finding.Kind.WARNING, where, message, mend);
    }

    private Optional<Double> of(Appraisal appraisal, Term term) {
        return appraisal.figure(term).map(Measured::value);
    }

    // ---- against the donor

    /** Stroke of the engine as it came: said by the owner, or that of the crankshaft in it. */
    private Optional<Double> donorStroke() {
        return of(after, Term.DONOR_STROKE).or(() -> of(before, Term.STROKE));
    }

    List<Finding> changes() {
        List<Finding> changes = new ArrayList<>();
        Optional<Double> old = donorStroke();
        Optional<Double> now = of(after, Term.STROKE);
        if (old.isPresent() && now.isPresent() && Math.abs(now.get() / old.get() - 1) > SAME) {
            stroke(old.get(), now.get(), changes);
        }
        compared(Term.COMPRESSION_RATIO, "ratio", changes);
        compared(Term.EFFECTIVE_RATIO, "effective ratio", changes);
        compared(Term.SQUISH, "squish", changes);
        return changes;
    }

    private void stroke(double old, double now, List<Finding> changes) {
        double share = now / old - 1;
        Optional<Double> bore = of(after, Term.BORE);
        String swept = bore.map(b -> {
                    double area = Math.PI / 4 * b * b;
                    return "swept volume " + words(Dimension.VOLUME, area * old, 0.1e-6) + " to "
                            + words(Dimension.VOLUME, area * now, 0.1e-6) + ", ";
                })
                .orElse("");
        Optional<Double> rod = of(after, Term.ROD_LENGTH);
        Optional<Double> oldRod = of(before, Term.ROD_LENGTH).or(() -> rod);
        String acceleration = rod.isPresent() && oldRod.isPresent()
                ? String.format(
                        Locale.ROOT,
                        ", acceleration at top dead centre by %+.0f %%",
                        100 * (pull(now, rod.get()) / pull(old, oldRod.get()) - 1))
                : "";
        changes.add(note(
                Term.STROKE.path(),
                String.format(
                        Locale.ROOT,
                        "stroke %s to %s: %sthrow longer by %s; at the same speed piston speed changes by %+.0f %%%s",
                        length(old),
                        length(now),
                        swept,
                        length((now - old) / 2),
                        100 * share,
                        acceleration),
                String.format(
                        Locale.ROOT,
                        "leverage at equal pressure %+.0f %%: torque low down may gain as much, if the cylinder fills as well as before. Power at the top need"
                                + " not gain at all: carburettor, valves and cam pass the same air, and loads grow with the throw and with the square"
                                + " of the speed",
                        100 * share)));
    }

    /** r (1 + r / l): acceleration at top dead centre for one speed. */
    private static double pull(double stroke, double rod) {
        return stroke / 2 * (1 + stroke / 2 / rod);
    }

    private void compared(Term term, String name, List<Finding> changes) {
        Optional<Measured> old = before.figure(term);
        Optional<Measured> now = after.figure(term);
        if (old.isPresent()
                && now.isPresent()
                && Math.abs(old.get().value() - now.get().value())
                        > SAME * old.get().value()) {
            changes.add(note(
                    term.path(), name + " " + withDoubt(term, old.get()) + " to " + withDoubt(term, now.get()), ""));
        }
    }

    private String withDoubt(Term term, Measured figure) {
        return printer.print(term.dimension(), figure.value(), figure.expanded())
                .line();
    }

    // ---- what else it needs

    List<Finding> forces() {
        List<Finding> forces = new ArrayList<>();
        forces.addAll(HeadMoves.of(build, before, found));
        forces.addAll(ValveRoom.of(build, before, found));
        for (Row.Cut cut : found.honed()) {
            forces.add(note(
                    cut.operation().code(),
                    cut.text() + ", measured from: " + cut.operation().kind().datum(),
                    ""));
        }
        found.rows().flatMap(r -> r.cuts().stream()).forEach(cut -> forces.add(machined(cut)));
        if (found.deckCut() != null) {
            forces.add(machined(found.deckCut()));
        }
        return forces;
    }

    /** A stop of the engine that would come of it. */
    static Finding needed(Stop stop) {
        return warning(stop.refused() ? "refused" : "not approved", stop.what() + ": " + stop.why(), stop.wayRound());
    }

    private static Finding machined(Row.Cut cut) {
        String more = switch (cut.operation().kind()) {
            case CROWN_CUT ->
                "a dish loses volume and a dome height: measure the crown volume again; never thin the crown under what its maker allows";
            case SKIRT_CUT -> "weigh what comes off; keep both sides alike";
            case COUNTERWEIGHT_TURN -> "the balance changes: see the balance factor again";
            case CRANKPIN_OFFSET_GRIND ->
                "the crankpin gets smaller: rod or insert to suit; the hardened skin must stay, ask the grinder; have it crack-tested";
            case DECK_CUT -> "square to the crank axis; the head comes down by as much";
            case HEAD_CUT -> "the head comes down by as much; on a side-valve the open valves come nearer to it";
            default -> "";
        };
        return note(
                cut.operation().code(),
                cut.text() + ", measured from: " + cut.operation().kind().datum(),
                more);
    }

    // ---- what stays unknown

    List<Finding> unknowns() {
        List<Finding> unknowns = new ArrayList<>();
        boolean moved = donorStroke()
                        .flatMap(old -> of(after, Term.STROKE).map(now -> now - old))
                        .orElse(0.0)
                > SAME * 1e-3;
        if (moved || !found.rod().isOwn()) {
            unknowns.add(warning(
                    camInTheHead()
                            ? "dipper to case, big end to case"
                            : "rod bolts to camshaft, dipper to case, big end to case",
                    moved ? "the throw grew; no sheet tells these gaps" : "another rod; no sheet tells these gaps",
                    "mock it up with clay or wire through two turns by hand before it is assembled for good"));
        }
        nominal(unknowns);
        shapes(unknowns);
        if (!found.gasket().isOwn() || !found.head().isOwn()) {
            unknowns.add(warning(
                    "outline of gasket and head",
                    "sizes tell nothing of bolt holes, pushrod holes and oil ways",
                    "lay it on the deck before you buy, or ask the vendor for the engine it is made for"));
        }
        found.rows().forEach(row -> vague(row, unknowns));
        notSaid(unknowns);
        if (!found.crank().isOwn()) {
            unknowns.add(
                    warning(
                            "case of the new crankshaft",
                            "bearings, seals and case are judged only as far as the old shaft or its bearings were read",
                            "compare main journals, seal diameters and the span of the bearings with the old one before you buy"));
        }
        return unknowns;
    }

    /** Figures that hang on a size without a tolerance have no doubt that could be told; what the sizes add up to can. */
    private void nominal(List<Finding> unknowns) {
        if (after.figure(Term.SQUISH).isPresent()) {
            return;
        }
        double ratio = found.combination().ratio();
        unknowns.add(warning(
                Term.SQUISH.path(),
                "by the sizes alone squish comes to "
                        + length(found.combination().squishHalf() / 2e12)
                        + (Double.isNaN(ratio) ? "" : String.format(Locale.ROOT, ", ratio to %.2f", ratio))
                        + "; how sure that is cannot be said, since a tolerance is not",
                "measure the pieces, or ask for their tolerances"));
    }

    private static void vague(Row row, List<Finding> unknowns) {
        CataloguePart part = row.part();
        if (part == null) {
            return;
        }
        String noTolerance = row.dims().entrySet().stream()
                .filter(e -> e.getValue().isVague())
                .map(e -> e.getKey().label())
                .collect(Collectors.joining(", "));
        if (!noTolerance.isEmpty()) {
            unknowns.add(warning(
                    part.code(),
                    "no tolerance is said for: " + noTolerance,
                    "ask the vendor, or measure the piece before you count on it"));
        }
        if (part.voucher().basis() == longthrow.core.catalogue.Voucher.Basis.CLAIMED) {
            unknowns.add(note(
                    part.code(), "its figures are the seller's claim, not a measurement", "measure it when it comes"));
        }
    }

    private void notSaid(List<Finding> unknowns) {
        playWithoutARule(Gap.PIN_IN_ROD, found.rod(), found.piston(), unknowns);
        playWithoutARule(Gap.ROD_ON_CRANKPIN, found.rod(), found.crank(), unknowns);
        playWithoutARule(Gap.ROD_BETWEEN_CHEEKS, found.crank(), found.rod(), unknowns);
        askWord(found.rod(), Choice.ROD_METAL, "least squish and clearances by metal", unknowns);
        askWord(found.piston(), Choice.PISTON_ALLOY, "piston to wall by alloy", unknowns);
        ask(found.crank(), Term.COUNTERWEIGHT_RADIUS, "skirt to counterweight", unknowns);
        ask(found.piston(), Term.SKIRT_BELOW_PIN, "skirt to counterweight", unknowns);
        if (after.figure(Term.WANTED_SPEED).isPresent()) {
            ask(found.piston(), Term.TOP_RING_THICKNESS, "ring flutter at the wanted speed", unknowns);
        }
        ask(found.piston(), Term.TOP_LAND_HEIGHT, "top ring in the bore", unknowns);
        ask(found.piston(), Term.CROWN_VOLUME, "compression ratio", unknowns);
        ask(found.piston(), Term.PISTON_DIAMETER, "piston to wall", unknowns);
        ask(found.piston(), Term.PIN_DIAMETER, "pin in the rod", unknowns);
        if (!found.rod().isOwn() || !found.piston().isOwn()) {
            ask(found.piston(), Term.BOSS_GAP, "small end between the bosses", unknowns);
            ask(found.rod(), Term.SMALL_END_WIDTH, "small end between the bosses", unknowns);
        }
        if (!found.piston().isOwn()) {
            ask(found.piston(), Term.CLIP_SPAN, "pin between its clips", unknowns);
            ask(found.piston(), Term.PIN_LENGTH, "pin between its clips", unknowns);
            ask(found.piston(), Term.OIL_GROOVE_TO_CROWN, "oil-ring groove above the pin bore", unknowns);
        }
        ask(found.rod(), Term.SMALL_END_BORE, "pin in the rod", unknowns);
        ask(found.rod(), Term.BIG_END_BORE, "rod on the crankpin", unknowns);
        ask(found.rod(), Term.BIG_END_WIDTH, "rod between the cheeks", unknowns);
        ask(found.gasket(), Term.GASKET_BORE, "gasket hole and compression ratio", unknowns);
        ask(found.head(), Term.CHAMBER_VOLUME, "compression ratio", unknowns);
        ask(found.rod(), Term.ROD_RATED_SPEED, "what the rod is rated for", unknowns);
    }

    private static void ask(Row row, Term term, String decides, List<Finding> unknowns) {
        if (row.dim(term).isEmpty()) {
            CataloguePart part = row.part();
            unknowns.add(note(
                    part == null ? term.path() : part.code(),
                    term.label() + " is not said, so " + decides + " is not known",
                    part == null ? "read it" : "ask the vendor, or measure the piece"));
        }
    }

    /** Two parts whose sizes are known, and no rule says how much play they need. */
    private void playWithoutARule(Gap gap, Row wide, Row inner, List<Finding> unknowns) {
        boolean bought = !wide.isOwn() || !inner.isOwn();
        if (gap == Gap.ROD_ON_CRANKPIN && "rolling".equals(found.rod().words().get(Choice.BIG_END_BEARING))) {
            unknowns.add(warning(
                    Term.BIG_END_CLEARANCE.path(),
                    "needles or rollers run between big end and crankpin, and their thickness is not said",
                    "take the bearing its maker names for this crankpin and this bore"));
            return;
        }
        if (bought
                && wide.dim(gap.wide()).isPresent()
                && inner.dim(gap.inner()).isPresent()
                && !gap.isRuled(wide, inner, new RuleWindows(build))) {
            unknowns.add(note(
                    gap.term().path(),
                    "no rule says how much " + gap.term().label() + " these two need, made of what they are made of",
                    "ask the part maker before it is run"));
        }
    }

    /** Of a part that is bought; that of the engine's own is the build's to say. */
    private static void askWord(Row row, Choice choice, String decides, List<Finding> unknowns) {
        CataloguePart part = row.part();
        if (part != null && !row.words().containsKey(choice)) {
            unknowns.add(note(
                    part.code(),
                    "what it is made of is not said, so " + decides + " meets the widest limits that may be meant",
                    "ask the vendor"));
        }
    }

    private boolean camInTheHead() {
        return build.chose(Choice.CAM_DRIVE, "overhead_chain") || build.chose(Choice.CAM_DRIVE, "overhead_belt");
    }

    /** Whether a crown that is bought rises over its rim: what it does in the chamber no size tells. */
    static boolean rises(Found found) {
        return !found.piston().isOwn()
                && found.piston()
                        .dim(Term.CROWN_RISE)
                        .filter(d -> d.value() - d.half() > 0)
                        .isPresent();
    }

    /** By how much the chamber of an overhead-valve head opens wider than the hole of the gasket [m2]; empty where it does not, or is not known. */
    static Optional<Double> chamberPastGasket(Found found, Appraisal own) {
        Optional<Double> hole = found.gasket().dim(Term.GASKET_BORE).map(Dim::value);
        boolean bought = !found.head().isOwn() || !found.gasket().isOwn();
        return found.head()
                .dim(Term.CHAMBER_AREA)
                .filter(area -> bought && hole.isPresent() && !own.build().chose(Choice.VALVE_LAYOUT, "side"))
                .map(area -> area.value() - Math.PI / 4 * hole.orElseThrow() * hole.orElseThrow())
                .filter(over -> over > 0);
    }

    private void shapes(List<Finding> unknowns) {
        if (rises(found)) {
            unknowns.add(warning(
                    "crown to chamber",
                    "the crown rises over its rim, and no size tells how near it comes to the chamber and the valves",
                    "mock it up with clay before it is turned by the starter"));
        }
        chamberPastGasket(found, before)
                .ifPresent(over -> unknowns.add(warning(
                        "chamber to gasket",
                        "the chamber opens wider than the hole of the gasket by " + words(Dimension.AREA, over, 1e-6)
                                + ": the gasket's edge hangs over it, and squish is not what the bore says",
                        "lay gasket and head together; another gasket or head where the edge is not clamped")));
    }
}
