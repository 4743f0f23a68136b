package longthrow.core.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Operation;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.SliderCrank;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * What a combination changes of the room between overhead valves and piston: the head's move less the rise of the crown rim. Stroke, rod, compression height
 * and a cut crown raise or lower the rim; gasket and cuts of deck and head move the valves. What stays the same cancels, with its doubt.
 */
final class ValveRoom {
    /** Valves and piston are nearest some way off top dead centre; common practice, no source. */
    private static final double BESIDE = Math.toRadians(10);

    private static final List<Term> STACK =
            List.of(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT, Term.PIN_OFFSET, Term.BORE_OFFSET);

    private static final Set<Operation.Kind> MOVES_THE_CROWN =
            Set.of(Operation.Kind.CROWN_CUT, Operation.Kind.CRANKPIN_OFFSET_GRIND);

    private static final Formula AT_TOP = change(0);
    private static final Formula BESIDE_TOP = change(BESIDE);

    private final Appraisal before;
    private final Found found;
    private final FigurePrinter printer;
    private boolean isVague;

    private ValveRoom(Build build, Appraisal before, Found found) {
        this.before = before;
        this.found = found;
        this.printer = new FigurePrinter(build.units());
    }

    /** Nothing for a side-valve, whose valves stand beside the piston. */
    static List<Finding> of(Build build, Appraisal before, Found found) {
        return build.chose(Choice.VALVE_LAYOUT, "side") ? List.of() : new ValveRoom(build, before, found).findings();
    }

    private static Expression rim(String when, double angle) {
        SliderCrank crank = SliderCrank.ofStroke(
                Expression.input(when + Term.STROKE.path()),
                Expression.input(when + Term.ROD_LENGTH.path()),
                Expression.input(when + Term.PIN_OFFSET.path()).plus(Expression.input(when + Term.BORE_OFFSET.path())));
        Expression pin = angle == 0
                ? crank.highestPin()
                : crank.pinHeight(crank.topDeadCentre().plus(angle));
        return pin.plus(Expression.input(when + Term.COMPRESSION_HEIGHT.path()));
    }

    private static Formula change(double angle) {
        return Formula.of(
                "room at the valves",
                Expression.input("rise").minus(rim("after ", angle)).plus(rim("before ", angle)));
    }

    private List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        HeadMove move = HeadMove.of(before, found);
        boolean isStackNew = Stream.of(found.crank(), found.rod(), found.piston())
                .anyMatch(r -> !r.isOwn() || !r.cuts().isEmpty());
        if (isStackNew || move.isOpen() || !move.stands()) {
            Optional<Map<String, Measured>> inputs = move.isOpen() ? Optional.empty() : inputs(move);
            inputs.ifPresentOrElse(i -> told(i, findings), () -> findings.add(unknown()));
        }
        double rise = found.piston().dim(Term.CROWN_RISE).map(Dim::value).orElse(0.0);
        if (rise > 0) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    Term.CROWN_RISE.path(),
                    "the crown rises "
                            + printer.print(Dimension.LENGTH, rise, 0.1e-3)
                                    .first()
                                    .value()
                            + " mm above its rim",
                    "mock it up with clay: crown to chamber and crown to valves are not known"));
        }
        return findings;
    }

    private Finding unknown() {
        return new Finding(
                Finding.Kind.WARNING,
                "valve to piston",
                "by how much valves and piston come nearer or apart is not known: stroke, rod, compression height or gasket of the engine as it was is not known",
                "take the gap by clay or with soft springs before it is turned by the starter");
    }

    private void told(Map<String, Measured> inputs, List<Finding> findings) {
        Measured top = through(AT_TOP, inputs);
        Measured beside = through(BESIDE_TOP, inputs);
        boolean isMoved = Math.abs(top.value()) >= HeadMove.STANDS || Math.abs(beside.value()) >= HeadMove.STANDS;
        if (!isMoved) {
            return;
        }
        boolean isStroke = Math.abs(top.value() - beside.value()) >= HeadMove.STANDS;
        boolean isNearer = top.value() < 0 || beside.value() < 0;
        String pockets = found.piston().isOwn()
                ? found.piston().cuts().stream().anyMatch(c -> c.operation().kind() == Operation.Kind.CROWN_CUT)
                        ? "; pockets for the valves keep their floor where the crown is cut: over them nothing is gained by that cut"
                        : ""
                : "; another piston: by its rim, what its pockets leave is not in it";
        findings.add(new Finding(
                Finding.Kind.WARNING,
                "valve to piston",
                "valves and piston come " + words(top) + " at top dead centre"
                        + (isStroke ? ", " + words(beside) + " at 10° of crank to either side" : "")
                        + ", around the overlap"
                        + pockets,
                isNearer ? "read the gap by clay or soft springs before it is turned by the starter" : ""));
    }

    private String words(Measured change) {
        double size = Math.abs(change.value());
        String figure = (isVague
                        ? printer.printDoubtUnknown(Dimension.LENGTH, size)
                        : printer.print(Dimension.LENGTH, size, change.expanded()))
                .line();
        return (change.value() > 0 ? "apart by " : "nearer by ") + figure;
    }

    private static Measured through(Formula formula, Map<String, Measured> inputs) {
        return Measured.through(formula, name -> Objects.requireNonNull(inputs.get(name), name));
    }

    /** Empty when a part of the stack is not known before or after. */
    private Optional<Map<String, Measured>> inputs(HeadMove move) {
        isVague = move.isVague()
                || Stream.of(found.crank(), found.piston())
                        .flatMap(r -> r.cuts().stream())
                        .anyMatch(c -> MOVES_THE_CROWN.contains(c.operation().kind())
                                && c.operation().tolerance() == null);
        Map<String, Measured> inputs = new HashMap<>();
        inputs.put("rise", move.up());
        for (Term term : STACK) {
            boolean isOffset = term == Term.PIN_OFFSET || term == Term.BORE_OFFSET;
            Optional<Measured> old = before.figure(term);
            Optional<Measured> now = now(term, old);
            if (!isOffset && (old.isEmpty() || now.isEmpty())) {
                return Optional.empty();
            }
            // an offset that was not read is taken as nothing, as it is for the dead centres: less than a hundredth of
            // a millimetre
            inputs.put("before " + term.path(), old.orElse(Measured.exact(0)));
            inputs.put("after " + term.path(), now.or(() -> old).orElse(Measured.exact(0)));
        }
        return Optional.of(inputs);
    }

    private Optional<Measured> now(Term term, Optional<Measured> old) {
        Row row = term == Term.STROKE ? found.crank() : term == Term.ROD_LENGTH ? found.rod() : found.piston();
        boolean isItsOwn = row.isOwn() || term == Term.BORE_OFFSET;
        if (isItsOwn && (row.cuts().isEmpty() || old.isEmpty() || term == Term.BORE_OFFSET)) {
            return old;
        }
        Optional<Dim> dim = row.dim(term);
        if (!row.isOwn()) {
            isVague |= dim.filter(Dim::isVague).isPresent();
            return dim.map(d -> HeadMove.sheet(row.base() + " " + term.path(), d));
        }
        return dim.map(d -> {
            Measured was = old.orElseThrow();
            double tolerance = d.half() - was.expanded();
            Measured shifted = HeadMove.sum(was, 1, Measured.exact(d.value() - was.value()), 1);
            return tolerance <= 0
                    ? shifted
                    : HeadMove.sum(
                            shifted,
                            1,
                            Measured.of(
                                    0,
                                    List.of(Source.rectangular(
                                            row.title() + " tolerance",
                                            Source.Kind.TOLERANCE,
                                            row.title(),
                                            tolerance))),
                            1);
        });
    }
}
