package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Stops;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
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
        List<Rung> rungs = new ArrayList<>(List.of(
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
                        "a rod that its maker rates for the speed with this stroke and piston, with new bolts")));
        limiter().ifPresent(rungs::add);
        idle().ifPresent(rungs::add);
        return rungs;
    }

    private static final String HELD_SOURCE =
            "past the maker's speed wheel and rod are rated and a limiter fitted, for the governor is out; common practice, no source; certainty B, several sheets agree";

    /**
     * A limiter that cuts above what is vouched for guards nothing; past the governed speed there must be one, for nothing else holds the speed. At the governed speed
     * there must be one where the governor was taken out; where nobody says so it is taken to hold, as its maker meant it to.
     */
    private Optional<Rung> limiter() {
        boolean isOut = known.build().chose(Choice.GOVERNOR, "removed");
        boolean isSpeedWanted = known.figure(Term.WANTED_SPEED).isPresent();
        boolean isGoverned = isSpeedWanted
                ? Stops.covers(known.build(), known::figure, Term.GOVERNED_SPEED)
                : isOut && vouched(Term.GOVERNED_SPEED).isPresent();
        Optional<Measured> cuts = known.figure(Term.LIMITER_SPEED);
        Optional<Double> most = isGoverned ? vouched(Term.GOVERNED_SPEED) : lowestRating();
        boolean isAsked = isGoverned ? isOut || cuts.isPresent() : isSpeedWanted;
        if (!isAsked) {
            return Optional.empty();
        }
        Head head = new Head(
                "limiter",
                "limiter",
                Part.LIMITER,
                Kind.HELD,
                Weight.HOLDS_BACK,
                HELD_SOURCE,
                "set or buy a limiter that cuts no higher than what the makers vouch for");
        Rung rung = over(
                Term.LIMITER_SPEED,
                head,
                most,
                isGoverned && !isOut
                        ? "cuts above it, so nothing but the governor holds the engine there"
                        : "cuts above it, so nothing holds the engine there");
        return Optional.of(
                isGoverned && isOut && rung.state() == State.UNKNOWN
                        ? rung.seenAs(
                                State.UNKNOWN,
                                head.weight(),
                                "the governor was taken out (" + Choice.GOVERNOR.path()
                                        + ") and no limiter is known: nothing holds the engine at its maker's speed",
                                head.mend())
                        : rung);
    }

    /** An engine does not idle faster than its maker lets it run: one of the two is wrong, or the governor is out. */
    private Optional<Rung> idle() {
        Optional<Double> most = vouched(Term.GOVERNED_SPEED).or(this::lowestRating);
        return known.figure(Term.IDLE_SPEED).isEmpty() || most.isEmpty()
                ? Optional.empty()
                : Optional.of(over(
                        Term.IDLE_SPEED,
                        new Head(
                                "idle",
                                "idle",
                                Part.USE,
                                Kind.HELD,
                                Weight.HOLDS_BACK,
                                "an engine turns faster at work than at idle: one of the two speeds is wrong, or nothing governs it",
                                "read the idle speed and the plate again; set the idle down before it is loaded"),
                        most,
                        "is over it"));
    }

    private Rung over(Term term, Head head, Optional<Double> most, String said) {
        Asked of = new Asked(known);
        asked.add(of);
        Expression speed = of.figure(term);
        double least = most.or(() -> known.figure(Term.WANTED_SPEED).map(Measured::value))
                .orElseThrow();
        if (!of.isWhole()) {
            return maker.unknown(head, of);
        }
        Measured room = Measured.through(
                Formula.of(head.key(), Expression.constant(least * (1 + 1e-9)).minus(speed)), of.inputs());
        Rung rung = maker.still(head, of, room, "");
        String figures = maker.printed(of.value(term).orElseThrow())
                + (most.isPresent() ? "; makers vouch for speeds up to " : "; the speed wanted is ")
                + maker.speed(least);
        return switch (rung.state()) {
            case EXCEEDED -> rung.seenAs(rung.state(), rung.weight(), figures + ", and it " + said, rung.unlock());
            case NEAR -> rung.seenAs(rung.state(), Weight.TELLS, "about the same: " + figures, rung.unlock());
            case HOLDS, UNKNOWN, COVERED, NOT_ASKED -> rung.seenAs(rung.state(), rung.weight(), figures, rung.unlock());
        };
    }

    private Optional<Double> vouched(Term rating) {
        return known.figure(rating)
                .filter(r -> Stops.isVouched(known.build(), rating))
                .map(Measured::value);
    }

    private Optional<Double> lowestRating() {
        return Stream.of(Term.FLYWHEEL_RATED_SPEED, Term.ROD_RATED_SPEED)
                .flatMap(t -> vouched(t).stream())
                .min(Comparator.naturalOrder());
    }

    private Rung rating(Term term, String key, String label, Part part, Weight weight, String mend) {
        Asked of = new Asked(known);
        asked.add(of);
        Rung rung = maker.bySpeed(
                new Head(key, label, part, Kind.RATING, weight, "the maker's word: " + term.meaning(), mend),
                of,
                of.figure(term));
        return rung.state() == State.HOLDS && !Stops.isVouched(known.build(), term)
                ? nobodys(rung, "it " + Stops.whoseWord(known.build(), term))
                : rung;
    }

    /** A guess, or a figure that is nobody's, may stop an engine; it never lets one run. */
    private static Rung nobodys(Rung rung, String whose) {
        return rung.seenAs(
                State.NEAR, rung.weight(), whose + ", and approves nothing: " + rung.why(), Stops.WHOSE_WORD);
    }
}
