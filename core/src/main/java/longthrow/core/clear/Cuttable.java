package longthrow.core.clear;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Clearance.Removal;
import longthrow.core.answer.Finding;
import longthrow.core.build.TracedOutline;
import longthrow.core.life.Known;
import longthrow.core.term.Term;

/** Whether a cut that geometry asks for may be told: not from what is in dispute, for it may be tens of millimetres of nothing, nor of more than there is. */
final class Cuttable {
    private Cuttable() {}

    /**
     * The cut, or why none is told.
     * @param hangsOn places that the gap hangs on
     */
    static Removal of(Known known, Collection<String> hangsOn, Removal cut) {
        Optional<String> dispute = dispute(known, hangsOn);
        if (dispute.isPresent()) {
            return none(dispute.get() + ", so no cut is told: settle that first, and mock it up");
        }
        if (cut.leaves().filter(left -> left <= 0).isPresent()) {
            return none("no cut mends it: " + GapWords.length(cut.surely())
                    + " is wanted, and so much is not there to be taken off. Another part with as much more room");
        }
        return cut;
    }

    private static Removal none(String why) {
        return new Removal(why, Double.NaN, Double.NaN, Optional.empty(), "");
    }

    private static Optional<String> dispute(Known known, Collection<String> hangsOn) {
        List<TracedOutline> outlines = known.build().outlines();
        for (int k = 0; k < outlines.size(); k++) {
            if (hangsOn.contains(TracedOutline.place(k + 1)) && OutlineChecks.isDisputed(known, outlines.get(k))) {
                return Optional.of(
                        "the outline of the " + outlines.get(k).part().label() + " is in dispute");
            }
        }
        List<String> suspects = known.suspects().stream()
                .map(Finding::where)
                .flatMap(Cuttable::terms)
                .toList();
        return hangsOn.stream()
                .filter(suspects::contains)
                .findFirst()
                .map(path -> Term.at(path).map(Term::label).orElse(path) + " is suspect");
    }

    /** Paths of the terms that a place names: {@code piston.mass[2]} is one of {@code piston.mass}. */
    private static Stream<String> terms(String where) {
        return Stream.of(where.split("[\\s,]+")).map(word -> word.replaceAll("\\[.*", ""));
    }
}
