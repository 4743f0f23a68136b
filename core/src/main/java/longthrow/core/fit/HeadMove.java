package longthrow.core.fit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Operation;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.Timing;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * How far the head of a combination stands from where it stood: a thicker gasket lifts it from the crank axis, cuts of deck and head bring it down.
 * @param up      away from the crank axis [m], with the doubt of both gaskets and the tolerance of every cut; without what a vague one leaves unsaid
 * @param isVague whether a tolerance is not said, so that no doubt can be told
 * @param isOpen  whether the gasket is another and the thickness of the old one is not known: then {@code up} holds the cuts alone
 */
record HeadMove(Measured up, boolean isVague, boolean isOpen) {
    /** A head that moves by less stands where it stood [m]: half a hundredth, the least a caliper shows; common practice, no source. */
    static final double STANDS = 0.005e-3;

    private static final Formula SHIFT =
            Formula.of("cam shift", Timing.headShift(Expression.input("rise"), Expression.input("pitch")));
    /** Events that come at a greater figure when the cam runs ahead: they count backward from their dead centre. */
    private static final List<Term> OPENINGS = List.of(Term.INTAKE_OPENS, Term.EXHAUST_OPENS);

    static final List<Term> EVENTS =
            List.of(Term.INTAKE_OPENS, Term.INTAKE_CLOSES, Term.EXHAUST_OPENS, Term.EXHAUST_CLOSES);

    static HeadMove of(Appraisal before, Found found) {
        Measured up = Measured.exact(0);
        boolean isVague = false;
        boolean isOpen = false;
        Optional<Dim> gasket = found.gasket().dim(Term.GASKET_THICKNESS);
        if (!found.gasket().isOwn() && gasket.isPresent()) {
            Optional<Measured> old = before.figure(Term.GASKET_THICKNESS);
            isVague = gasket.get().isVague();
            isOpen = old.isEmpty();
            if (old.isPresent()) {
                up = sum(sheet(found.gasket().title(), gasket.get()), 1, old.get(), -1);
            }
        }
        for (Row.Cut cut : cuts(found).toList()) {
            isVague |= cut.operation().tolerance() == null;
            up = sum(up, 1, amount(cut), -1);
        }
        return new HeadMove(up, isVague, isOpen);
    }

    /** Cuts that bring the head down. */
    static Stream<Row.Cut> cuts(Found found) {
        return Stream.concat(
                Stream.ofNullable(found.deckCut()),
                found.head().cuts().stream().filter(c -> c.operation().kind() == Operation.Kind.HEAD_CUT));
    }

    private static Measured amount(Row.Cut cut) {
        ExactLength held = cut.operation().tolerance();
        return held == null
                ? Measured.exact(cut.amount())
                : Measured.of(
                        cut.amount(),
                        List.of(Source.rectangular(
                                cut.operation().code() + " tolerance",
                                Source.Kind.TOLERANCE,
                                cut.operation().name(),
                                held.metres())));
    }

    /** A figure of a sheet. */
    static Measured sheet(String owner, Dim dim) {
        return dim.isVague()
                ? Measured.exact(dim.value())
                : Measured.of(
                        dim.value(),
                        List.of(Source.known(owner + " sheet", Source.Kind.TYPED, owner, dim.uncertainty())));
    }

    static Measured sum(Measured one, double share, Measured other, double otherShare) {
        Map<Source, Double> doubt = new LinkedHashMap<>();
        one.contributions().forEach((source, c) -> doubt.merge(source, share * c, Double::sum));
        other.contributions().forEach((source, c) -> doubt.merge(source, otherShare * c, Double::sum));
        return Measured.withContributions(share * one.value() + otherShare * other.value(), doubt);
    }

    boolean stands() {
        return Math.abs(up.value()) < STANDS;
    }

    // ---- an overhead camshaft on chain or belt

    static boolean isOverheadCam(Build build) {
        return build.chose(Choice.CAM_DRIVE, "overhead_chain", "overhead_belt")
                && !build.chose(Choice.VALVE_LAYOUT, "side");
    }

    /** Crank angle by which the camshaft runs ahead of where it ran; empty where the sprocket or the old gasket is not known. */
    Optional<Measured> advance(Appraisal before) {
        return isOpen
                ? Optional.empty()
                : before.figure(Term.CAM_SPROCKET)
                        .map(pitch -> Measured.through(SHIFT, name -> name.equals("rise") ? up : pitch));
    }

    /** An event of the cam with the camshaft run ahead: openings stand further before their dead centre, closings less far behind it. */
    static Measured event(Term event, Measured before, Measured advance) {
        return sum(before, 1, advance, OPENINGS.contains(event) ? 1 : -1);
    }
}
