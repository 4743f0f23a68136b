package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.Rocker;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** What a head that stands higher or lower than it did does to pushrods, rockers, lash, cam timing and ports. */
final class HeadMoves {
    /** A pushrod arm is seldom off the line of the other by no more than a step of this; what one step does is told. */
    private static final double OFF_LINE_STEP = Math.toRadians(10);

    private static final Expression RISE = Expression.input("rise");
    private static final Expression LIFT = Expression.input("lift");
    private static final Rocker ROCKER = new Rocker(
            Expression.input(Term.ROCKER_PUSHROD_ARM.path()), Expression.input(Term.ROCKER_VALVE_ARM.path()));
    private static final Expression FULL = ROCKER.fullLiftSine(LIFT);

    private static final Formula LEAN = Formula.of("lean", ROCKER.lean(RISE));
    private static final Formula PIVOT = Formula.of("pivot", ROCKER.pivotDrop(RISE));
    private static final Formula GAP = Formula.of("gap", ROCKER.gapGain(RISE));
    private static final Formula TOUCH_OPEN = Formula.of(
            "touch at full lift",
            ROCKER.touch(FULL.minus(ROCKER.offSquare(RISE))).minus(ROCKER.touch(FULL)));
    private static final Formula TOUCH_SHUT = Formula.of(
            "touch at the seat", ROCKER.touch(FULL.plus(ROCKER.offSquare(RISE))).minus(ROCKER.touch(FULL)));
    private static final Formula SCREW_ARM = Formula.of(
            "arm with the screw",
            ROCKER.pushrodArmWithScrew(FULL, RISE).minus(ROCKER.pushrodArmWithScrew(FULL, none())));
    private static final Formula SCREW_RATIO = Formula.of(
            "ratio with the screw",
            ROCKER.ratioWithPushrodScrew(FULL, RISE)
                    .dividedBy(ROCKER.ratioWithPushrodScrew(FULL, none()))
                    .minus(1));
    private static final Expression VALVE_SCREW = ROCKER.offSquareWithValveScrew(RISE);
    private static final Formula VALVE_SCREW_LEAN = Formula.of("lean by the valve screw", VALVE_SCREW.arcSine());
    private static final Formula VALVE_SCREW_HALF =
            Formula.of("ratio at half lift with the valve screw", valveScrew(VALVE_SCREW.negated()));
    private static final Formula VALVE_SCREW_FULL =
            Formula.of("ratio at full lift with the valve screw", valveScrew(FULL.minus(VALVE_SCREW)));

    private final Build build;
    private final Appraisal before;
    private final HeadMove move;
    private final boolean isOtherHead;
    private final FigurePrinter printer;
    private final List<Finding> findings = new ArrayList<>();

    private HeadMoves(Build build, Appraisal before, Found found) {
        this.build = build;
        this.before = before;
        this.move = HeadMove.of(before, found);
        this.isOtherHead = !found.head().isOwn();
        this.printer = new FigurePrinter(build.units());
    }

    /** Nothing where the head stands as it stood. */
    static List<Finding> of(Build build, Appraisal before, Found found) {
        return new HeadMoves(build, before, found).findings();
    }

    private static Expression none() {
        return Expression.constant(0);
    }

    private static Expression valveScrew(Expression sine) {
        return ROCKER.ratioWithValveScrew(sine, ROCKER.gapGain(RISE))
                .dividedBy(ROCKER.ratioWithValveScrew(sine, none()))
                .minus(1);
    }

    private List<Finding> findings() {
        if (move.isOpen()) {
            open();
            return findings;
        }
        if (move.stands()) {
            return findings;
        }
        if (build.chose(Choice.VALVE_LAYOUT, "side")) {
            sideValve();
            return findings;
        }
        if (!build.chose(Choice.VALVE_LAYOUT, "overhead")) {
            note(
                    Choice.VALVE_LAYOUT.path(),
                    "where the valves are is not said: what follows holds for overhead valves; of a side-valve only the gap of the open valves to the head"
                            + " changes, by as much",
                    "write " + Choice.VALVE_LAYOUT.path());
        }
        ports();
        if (HeadMove.isOverheadCam(build)) {
            overheadCam();
            return findings;
        }
        pushrods();
        if (isCamInCase()) {
            note(Choice.CAM_DRIVE.path(), "the camshaft stays in the case, and so does the valve timing", "");
        } else {
            driveUnsaid();
        }
        return findings;
    }

    private void note(String where, String message, String mend) {
        findings.add(new Finding(Finding.Kind.NOTE, where, message, mend));
    }

    private void warning(String where, String message, String mend) {
        findings.add(new Finding(Finding.Kind.WARNING, where, message, mend));
    }

    // ---- figures in words

    private boolean isUp() {
        return move.up().value() > 0;
    }

    private String stands() {
        return "the head stands " + (isUp() ? "higher" : "lower") + " by " + size(Dimension.LENGTH, move.up());
    }

    private String line(Dimension dimension, Measured figure) {
        return shown(
                move.isVague()
                        ? printer.printDoubtUnknown(dimension, figure.value())
                        : printer.print(dimension, figure.value(), figure.expanded()));
    }

    private String asRead(Term term, Measured figure) {
        return shown(printer.print(term.dimension(), figure.value(), figure.expanded()));
    }

    private static String shown(PrintedFigures figures) {
        return figures.line();
    }

    /** Without its sign, where the words tell it. */
    private String size(Dimension dimension, Measured figure) {
        return line(dimension, figure.value() < 0 ? HeadMove.sum(figure, -1, Measured.exact(0), 0) : figure);
    }

    private String percent(Measured share) {
        BenchUnits units = BenchUnits.alone(Units.PERCENT);
        PrintedFigures printed = move.isVague()
                ? printer.printDoubtUnknown(units, share.value())
                : printer.print(units, share.value(), share.expanded());
        return (share.value() > 0 ? "+" : "") + printed.line();
    }

    // ---- the cases

    private void open() {
        warning(
                Term.GASKET_THICKNESS.path(),
                "how far the head moves is not known: another gasket goes in, and how thick the old one was is not said. Pushrods, rockers, lash, a camshaft in the"
                        + " head on chain or belt, the gap of the valves and the ports hang on it",
                "read the old crushed gasket and write it down");
    }

    private void sideValve() {
        Optional<Measured> gap = before.figure(Term.VALVE_TO_HEAD);
        String figure = gap.map(g -> ": " + asRead(Term.VALVE_TO_HEAD, g) + " to "
                        + line(Dimension.LENGTH, HeadMove.sum(g, 1, move.up(), 1)))
                .orElse("");
        warning(
                Term.VALVE_TO_HEAD.path(),
                stands() + ": the gap of the open valves to it " + (isUp() ? "grows" : "shrinks") + " by as much"
                        + figure
                        + "; camshaft, valves and ports stay in the block, and so do valve timing, lash and port height",
                "take valve to head by clay again");
        if (build.chose(Choice.CAM_DRIVE, "overhead_chain", "overhead_belt")) {
            warning(
                    Choice.CAM_DRIVE.path(),
                    "it says overhead, " + Choice.VALVE_LAYOUT.path() + " says side: one of them is wrong",
                    "put right whichever it is");
        }
    }

    private void ports() {
        note(
                "ports",
                stands()
                        + ": ports, carburettor and exhaust flange go with it. Valves open these ports, not the piston, so their timing hangs on the cam alone",
                "see that carburettor, air cleaner, exhaust and cowling still meet without strain; slot their brackets rather than pull them in");
        if (isOtherHead) {
            warning(
                    "head",
                    "another head: how high its rocker pivots, valve stems and ports stand above its face is not said, so the figures here hold as if they stood"
                            + " as in the old one",
                    "compare both heads, or set pushrods and rockers by mocking it up");
        }
    }

    // ---- pushrods and rockers

    /** Said, or shown by pushrods and their rockers having been read. */
    private boolean isCamInCase() {
        return build.chose(Choice.CAM_DRIVE, "in_case")
                || build.has(Term.PUSHROD_LENGTH)
                || build.has(Term.ROCKER_PUSHROD_ARM)
                || build.chose(Choice.ROCKER_ADJUSTER, "pivot_nut", "pushrod_screw");
    }

    private void pushrods() {
        String lengths = before.figure(Term.PUSHROD_LENGTH)
                .map(l -> ": " + asRead(Term.PUSHROD_LENGTH, l) + " to "
                        + line(Dimension.LENGTH, HeadMove.sum(l, 1, move.up(), 1)))
                .orElse("");
        Optional<Measured> pushrodArm = before.figure(Term.ROCKER_PUSHROD_ARM);
        Optional<Measured> valveArm = before.figure(Term.ROCKER_VALVE_ARM);
        boolean known = pushrodArm.isPresent() && valveArm.isPresent();
        warning(
                Term.PUSHROD_LENGTH.path(),
                (isCamInCase() ? "" : "with pushrods: ") + stands() + ", so pushrods " + (isUp() ? "longer" : "shorter")
                        + " by as much leave rockers and lash as they are" + lengths
                        + (known
                                ? ""
                                : "; with the adjuster alone the rockers change their stand, by how much is not known"),
                known
                        ? ""
                        : "read " + Term.ROCKER_PUSHROD_ARM.path() + " and " + Term.ROCKER_VALVE_ARM.path()
                                + ", choose " + Choice.ROCKER_ADJUSTER.path()
                                + "; or look that the rocker stands square to the valve at half lift");
        if (known) {
            rockers(Map.of(
                    "rise",
                    move.up(),
                    Term.ROCKER_PUSHROD_ARM.path(),
                    pushrodArm.get(),
                    Term.ROCKER_VALVE_ARM.path(),
                    valveArm.get()));
        } else {
            lash(Optional.empty());
        }
    }

    private void rockers(Map<String, Measured> arms) {
        lash(Optional.of(through(GAP, arms)));
        boolean isSaid = build.choice(Choice.ROCKER_ADJUSTER).isPresent();
        if (!isSaid || build.chose(Choice.ROCKER_ADJUSTER, "pivot_nut")) {
            pivotNut(arms);
        }
        if (!isSaid || build.chose(Choice.ROCKER_ADJUSTER, "pushrod_screw")) {
            pushrodScrew(arms);
        }
        if (!isSaid || build.chose(Choice.ROCKER_ADJUSTER, "valve_screw")) {
            valveScrew(arms);
        }
    }

    private static Measured through(Formula formula, Map<String, Measured> inputs) {
        return Measured.through(formula, name -> java.util.Objects.requireNonNull(inputs.get(name), name));
    }

    /** A gap that closes holds the valves open. */
    private void lash(Optional<Measured> gain) {
        String by = gain.map(g -> "by " + size(Dimension.LENGTH, g)).orElse("by as much times the rocker's lift ratio");
        String valves = gain.map(g -> List.of(Term.INTAKE_LASH, Term.EXHAUST_LASH).stream()
                        .flatMap(term -> before.figure(term).stream()
                                .map(lash -> "; " + term.label() + " " + asRead(term, lash) + " "
                                        + lashAfter(HeadMove.sum(lash, 1, g, 1))))
                        .collect(Collectors.joining()))
                .orElse("");
        warning(
                "lash",
                "with pushrods and adjuster left alone the gap at the valves " + (isUp() ? "grows " : "shrinks ") + by
                        + valves,
                isUp()
                        ? "set the lash"
                        : "loosen the adjusters before the head is pulled down and set the lash before it is turned: valves held open meet the piston and bend");
    }

    private String lashAfter(Measured lash) {
        return lash.value() > 0
                ? "would be " + line(Dimension.LENGTH, lash)
                : "would be gone, the valve held open by " + size(Dimension.LENGTH, lash);
    }

    /** The lifts known, intake first; with each the rest of the inputs. */
    private String atFullLift(Map<String, Measured> arms, BiFunction<String, Map<String, Measured>, String> said) {
        String valves = List.of(Term.INTAKE_LIFT, Term.EXHAUST_LIFT).stream()
                .flatMap(term -> before.figure(term).stream().map(lift -> {
                    Map<String, Measured> all = new java.util.HashMap<>(arms);
                    all.put("lift", lift);
                    return said.apply(term == Term.INTAKE_LIFT ? "intake" : "exhaust", all);
                }))
                .collect(Collectors.joining("; "));
        return valves.isEmpty()
                ? "; what it does at full lift is not known: read " + Term.INTAKE_LIFT.path() + " and "
                        + Term.EXHAUST_LIFT.path()
                : "; " + valves;
    }

    /** Where a figure of the rocker's swing holds. */
    private static final String SQUARE_BEFORE = " (taken: square to the valve at half lift before)";

    private void pivotNut(Map<String, Measured> arms) {
        Measured lean = through(LEAN, arms);
        warning(
                Term.ROCKER_VALVE_ARM.path(),
                "pushrods kept, lash set at the nut of the pivot: the rocker leans by " + size(Dimension.ANGLE, lean)
                        + ", its pushrod end " + (isUp() ? "lower" : "higher") + ", and the pivot goes "
                        + (isUp() ? "down" : "up") + " its stud by " + size(Dimension.LENGTH, through(PIVOT, arms))
                        + SQUARE_BEFORE
                        + "; the lift ratio stays, at half and at full lift, where both arms lie in one line and pushrod and valve are parallel; with the pushrod arm"
                        + " 10° off that line it changes by "
                        + percentOffLine(arms)
                        + " at half lift"
                        + atFullLift(
                                arms,
                                (valve, all) -> valve + ": off that line by 10° the ratio at full lift changes by "
                                        + percentOffLineAtFullLift(all) + "; the tip touches the valve "
                                        + across(through(TOUCH_OPEN, all)) + " at full lift and "
                                        + across(through(TOUCH_SHUT, all)) + " as it leaves its seat"),
                "see that the nut holds on its full thread, that the rocker clears its stud and that the tip's mark on the stem does not come near its edge");
    }

    private String across(Measured shift) {
        return size(Dimension.LENGTH, shift) + (shift.value() > 0 ? " further from the pivot" : " nearer the pivot");
    }

    private static Formula offLine(Expression sineBefore, Expression sineAfter) {
        Expression off = Expression.constant(OFF_LINE_STEP);
        return Formula.of(
                "ratio off the line",
                ROCKER.ratio(sineAfter.arcSine(), off)
                        .dividedBy(ROCKER.ratio(sineBefore.arcSine(), off))
                        .minus(1));
    }

    private static final Formula OFF_LINE_HALF =
            offLine(none(), ROCKER.offSquare(RISE).negated());
    private static final Formula OFF_LINE_FULL = offLine(FULL, FULL.minus(ROCKER.offSquare(RISE)));

    private String percentOffLine(Map<String, Measured> arms) {
        return unsigned(through(OFF_LINE_HALF, arms));
    }

    private String percentOffLineAtFullLift(Map<String, Measured> arms) {
        return unsigned(through(OFF_LINE_FULL, arms));
    }

    /** Which way it goes hangs on the side to which the arm is off. */
    private String unsigned(Measured share) {
        return percent(share).replaceFirst("^[+-]", "");
    }

    private void pushrodScrew(Map<String, Measured> arms) {
        warning(
                Term.ROCKER_PUSHROD_ARM.path(),
                "pushrods kept, lash set at the screw of the pushrod end: the rocker's angle stays, the screw goes "
                        + (isUp() ? "out" : "in")
                        + " by " + size(Dimension.LENGTH, move.up()) + " of thread" + SQUARE_BEFORE
                        + "; the lift ratio at half lift stays"
                        + atFullLift(
                                arms,
                                (valve, all) -> valve + " at full lift: pushrod arm "
                                        + (through(SCREW_ARM, all).value() > 0 ? "longer" : "shorter") + " by "
                                        + size(Dimension.LENGTH, through(SCREW_ARM, all)) + ", lift ratio "
                                        + percent(through(SCREW_RATIO, all))
                                        + ", near the seat about as much the other way; the tip touches the valve where it did"),
                isUp()
                        ? "see that the lock nut still holds on its full thread"
                        : "see that the screw has so much thread left and its head or ball stays clear of the rocker");
    }

    private void valveScrew(Map<String, Measured> arms) {
        warning(
                Term.ROCKER_VALVE_ARM.path(),
                "pushrods kept, lash set at the screw of the valve end: the rocker leans by "
                        + size(Dimension.ANGLE, through(VALVE_SCREW_LEAN, arms)) + ", its pushrod end "
                        + (isUp() ? "lower" : "higher") + ", and the screw goes " + (isUp() ? "out" : "in") + " by "
                        + size(Dimension.LENGTH, through(GAP, arms)) + SQUARE_BEFORE + "; lift ratio at half lift "
                        + percent(through(VALVE_SCREW_HALF, arms))
                        + atFullLift(
                                arms,
                                (valve, all) -> valve + " at full lift " + percent(through(VALVE_SCREW_FULL, all))),
                "see that the screw has so much thread and that its end does not come near the edge of the stem");
    }

    // ---- camshaft in the head

    private void overheadCam() {
        if (build.has(Term.PUSHROD_LENGTH)) {
            warning(
                    Choice.CAM_DRIVE.path(),
                    "it says overhead, yet a pushrod was read: one of them is wrong",
                    "put right whichever it is; what follows holds for a camshaft in the head");
        }
        String lash = " Lash stays: camshaft, rockers and valves move together";
        Optional<Measured> advance = move.advance(before);
        if (advance.isEmpty()) {
            warning(
                    Term.CAM_SPROCKET.path(),
                    stands() + ": with the crank held the pulling run of chain or belt turns the camshaft "
                            + (isUp() ? "forward, every event comes earlier" : "backward, every event comes later")
                            + "; by how much is not known, nor then are the events and the effective ratio." + lash,
                    "write " + Term.CAM_SPROCKET.path()
                            + ": crank degrees are 229 times the move over it, both in the same unit");
            return;
        }
        String by = size(Dimension.ANGLE, advance.get());
        warning(
                Choice.CAM_DRIVE.path(),
                stands() + ": with the crank held the pulling run of chain or belt turns the camshaft "
                        + (isUp() ? "forward: every event comes earlier by " : "backward: every event comes later by ")
                        + by
                        + " of crank" + events(advance.get()) + "; around the overlap the "
                        + (isUp() ? "intake" : "exhaust") + " valve stands further open, nearer the piston." + lash,
                "the tensioner is taken to sit on the slack run, the pulling one to lie along the cylinder (10° off it: 1.5 % less); "
                        + (isUp()
                                ? "see that the tensioner lets out so much"
                                : "see that the tensioner still takes up the slack")
                        + ", then degree the cam, and take up what is too much with a slotted or offset sprocket");
    }

    private String events(Measured advance) {
        String said = HeadMove.EVENTS.stream()
                .flatMap(event -> before.figure(event).stream()
                        .map(old -> event.label() + " " + asRead(event, old) + " to "
                                + line(Dimension.ANGLE, HeadMove.event(event, old, advance)) + ", "
                                + event.sign().replace(" positive", "")))
                .collect(Collectors.joining("; "));
        boolean isClosingRead = before.figure(Term.INTAKE_CLOSES).isPresent();
        return said.isEmpty()
                ? "; no event was read"
                : ": " + said + (isClosingRead ? "; the effective ratio follows the intake's new closing" : "");
    }

    private void driveUnsaid() {
        Optional<Measured> advance = move.advance(before);
        String by = advance.map(a -> " by " + size(Dimension.ANGLE, a) + " of crank")
                .orElse("");
        note(
                Choice.CAM_DRIVE.path(),
                "where the camshaft runs is not said, so what the move does to valve timing is not known: in the case it stays; in the head, on chain or belt, every"
                        + " event comes " + (isUp() ? "earlier" : "later") + by
                        + ". Figures that hang on the events are given as if it stayed",
                "write " + Choice.CAM_DRIVE.path());
    }
}
