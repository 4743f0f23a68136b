package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import longthrow.core.build.Build;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Pair;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The shape that a part is drawn with from its readings alone, in the frame of its outline, to be looked at beside what was traced. */
public final class FewNumbers {
    private FewNumbers() {}

    /** Cold, at the best estimates; none where a reading is missing. */
    public static List<Outline> of(Build build, OutlinedPart part) {
        Known known;
        try {
            known = new Known(Appraisal.sound(build.withOutlines(List.of())));
        } catch (NotConvergedException nothingNear) {
            return List.of();
        }
        return switch (part) {
            case COUNTERWEIGHT -> drawn(known, Crankwork::counterweight);
            case ROD -> rod(known);
            case DIPPER ->
                drawn(known, of -> {
                    Crankwork.asks(of);
                    of.figure(Term.DIPPER_REACH);
                    of.figure(Term.DIPPER_WIDTH);
                    return Crankwork::dipper;
                });
            case PISTON_SKIRT -> drawn(known, of -> onPiston(of, Term.SKIRT_BELOW_PIN));
            case PIN_BOSS -> drawn(known, of -> onPiston(of, Term.BOSS_BELOW_PIN));
            case CASE -> drawn(known, Crankwork::caseWalls);
            case INTAKE_LOBE -> drawn(known, of -> Camwork.lobeNoseUp(of, Part.INTAKE_VALVE));
            case EXHAUST_LOBE -> drawn(known, of -> Camwork.lobeNoseUp(of, Part.EXHAUST_VALVE));
            case RELEASE -> drawn(known, Camwork::releaseNoseUp);
            case ROCKER -> List.of(); // gaps over the retainer are read of it, no shape
            case RETAINER -> drawn(known, Rockerwork::retainer);
        };
    }

    private static Function<Sizes, Body> onPiston(Asked of, Term reach) {
        Crankwork.asks(of);
        of.figure(reach);
        return s -> Crankwork.pistonDownTo("piston", s, reach);
    }

    /** As much of it as is read. */
    private static List<Outline> rod(Known known) {
        List<Outline> all = new ArrayList<>(drawn(known, of -> {
            Crankwork.asks(of);
            of.figure(Term.BIG_END_REACH);
            of.figure(Term.BEAM_WIDTH);
            return Crankwork::rod;
        }));
        if (all.isEmpty()) {
            all.addAll(drawn(known, of -> {
                Crankwork.asks(of);
                of.figure(Term.BIG_END_REACH);
                return Crankwork::bigEnd;
            }));
        }
        all.addAll(drawn(known, of -> {
            Crankwork.asks(of);
            of.figure(Term.BOLT_OUT);
            of.figure(Term.BOLT_UP);
            of.figure(Term.BOLT_DOWN);
            of.figure(Term.BOLT_ACROSS);
            return Crankwork::bolts;
        }));
        return all;
    }

    private static List<Outline> drawn(Known known, Function<Asked, Function<Sizes, Body>> shape) {
        Asked of = new Asked(known);
        Function<Sizes, Body> drawing = shape.apply(of);
        if (!of.isWhole()) {
            return List.of();
        }
        try {
            Function<Sizes, Pair> alone = s -> Pair.of(drawing.apply(s), drawing.apply(s));
            return drawing.apply(new Sourced(of.figures(), alone).best()).outlines();
        } catch (IllegalArgumentException doNotGoTogether) {
            return List.of(); // clear says so of the pair
        }
    }
}
