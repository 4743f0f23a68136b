package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Stops;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What makers approve: of the engine as it left the works, of the rod, of the wheel. Asked for before any sum, and standing over it. */
final class RatingRungs {
    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    RatingRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    List<Rung> all() {
        return List.of(
                rating(
                        Term.GOVERNED_SPEED,
                        "governed_speed",
                        "engine by its maker's governed speed",
                        Part.WHOLE,
                        Weight.TELLS,
                        "past it: flywheel and rod rated by their makers, and a limiter"),
                rating(
                        Term.FLYWHEEL_RATED_SPEED,
                        "flywheel_rating",
                        "flywheel by its maker's rating",
                        Part.FLYWHEEL,
                        Weight.REFUSES,
                        "a wheel that its maker rates for the speed"),
                rating(
                        Term.ROD_RATED_SPEED,
                        "rod_rating",
                        "rod by its maker's rating",
                        Part.ROD,
                        Weight.REFUSES,
                        "a rod that its maker rates for the speed with this stroke and piston, with new bolts"));
    }

    private Rung rating(Term term, String key, String label, Part part, Weight weight, String mend) {
        Asked of = new Asked(known);
        asked.add(of);
        Rung rung = maker.bySpeed(
                new Head(key, label, part, Kind.RATING, weight, "the maker's word: " + term.meaning(), mend),
                of,
                of.figure(term));
        return rung.state() == State.HOLDS && !Stops.isVouched(known.build(), term) ? nobodys(rung) : rung;
    }

    /** A guess, or a figure that is nobody's, may stop an engine; it never lets one run. */
    private static Rung nobodys(Rung rung) {
        return rung.seenAs(
                State.NEAR,
                rung.weight(),
                "nobody's word as it stands, and approves nothing: " + rung.why(),
                Stops.WHOSE_WORD);
    }
}
