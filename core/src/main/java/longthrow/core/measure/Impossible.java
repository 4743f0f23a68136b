package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/**
 * Figures that no engine can have, such as a clearance volume below nothing: then something is read, written or chosen wrong, however well the readings
 * agree, and nothing that hangs on it may be used. All are geometry: two bodies cannot fill one place.
 */
final class Impossible {
    /** What cannot be below nothing, and what it would mean. */
    private record Floor(Term term, String means, List<Term> spoils) {}

    private static final List<Floor> FLOORS = List.of(
            new Floor(
                    Term.CLEARANCE_VOLUME,
                    "there would be no room above the piston",
                    List.of(
                            Term.COMPRESSION_RATIO,
                            Term.COMPRESSION_RATIO_WITH_CREVICE,
                            Term.HEAD_CUT,
                            Term.RATIO_AFTER_CUT,
                            Term.VALVE_TO_HEAD_AFTER_CUT)),
            new Floor(Term.SQUISH, "the piston would strike the head", List.of(Term.SQUISH_SMALLER_END)),
            new Floor(Term.SQUISH_SMALLER_END, "the piston would strike the head at one end", List.of()),
            new Floor(Term.SKIRT_TO_COUNTERWEIGHT, "the skirt would strike the counterweight", List.of()),
            new Floor(Term.BOSS_TO_COUNTERWEIGHT, "the pin boss would strike the counterweight", List.of()),
            new Floor(Term.PISTON_TO_WALL, "the piston would not enter the bore", List.of()),
            new Floor(Term.PIN_CLEARANCE, "the pin would not enter the rod", List.of()),
            new Floor(Term.BIG_END_CLEARANCE, "the rod would not go on its crankpin", List.of(Term.BIG_END_STRIP)),
            new Floor(Term.ROD_SIDE_CLEARANCE, "the rod would not go between the cheeks", List.of()),
            new Floor(Term.MAIN_CLEARANCE, "the shaft would not enter its bearing", List.of()),
            new Floor(Term.SLEEVE_WALL, "there would be no sleeve left", List.of()),
            new Floor(Term.COIL_BIND_MARGIN, "the spring would be solid before full lift", List.of()),
            new Floor(Term.SPRING_RATE, "the spring would push less when pressed further", List.of()));

    private final Map<Term, Stop> stops = new LinkedHashMap<>();
    private final Set<Term> terms = new LinkedHashSet<>();
    private final List<String> likeliestFirst;

    Impossible(Figures figures) {
        this(figures, List.of());
    }

    private Impossible(Figures figures, List<String> likeliestFirst) {
        this.likeliestFirst = likeliestFirst;
        for (Floor floor : FLOORS) {
            figures.figure(floor.term()).filter(Impossible::isBelowNothing).ifPresent(figure -> {
                terms.add(floor.term());
                terms.addAll(floor.spoils());
                stops.put(floor.term(), stop(figures, floor.term(), floor.means(), figure));
            });
        }
        rodShorterThanThrow(figures);
        gasketInTheBore(figures);
    }

    /** Places it rests on, the suspects among them first: all of them can be to blame, but not all alike. */
    private String from(Figures figures, Term term, Measured figure) {
        List<String> places = new ArrayList<>(figures.result(term, figure).from());
        places.sort(Comparator.comparingInt(
                place -> likeliestFirst.contains(place) ? likeliestFirst.indexOf(place) : likeliestFirst.size()));
        return String.join(", ", places);
    }

    private static boolean isBelowNothing(Measured figure) {
        return figure.value() < 0 && figure.probabilityAtLeast(0) <= 1 - Verdict.SURE;
    }

    private Stop stop(Figures figures, Term term, String means, Measured figure) {
        return new Stop(
                "do not assemble it as written",
                term.label() + " comes out at "
                        + Measure.words(figures.build(), term, figure.value(), figure.expanded()) + ": " + means,
                "read again, or choose again, what it is worked out from: " + from(figures, term, figure),
                true);
    }

    /** This can be, so its figure stands and its rule judges it; it must not be all the same. */
    private void gasketInTheBore(Figures figures) {
        figures.figure(Term.GASKET_OVER_BORE)
                .filter(Impossible::isBelowNothing)
                .ifPresent(figure -> stops.put(
                        Term.GASKET_OVER_BORE,
                        stop(
                                figures,
                                Term.GASKET_OVER_BORE,
                                "the edge of the gasket would stand in the bore and burn, and a piston proud of the deck strikes it",
                                figure)));
    }

    private void rodShorterThanThrow(Figures figures) {
        figures.figure(Term.ROD_RATIO).filter(r -> r.high() < 0.5).ifPresent(ratio -> {
            terms.add(Term.ROD_RATIO);
            terms.add(Term.SKIRT_TO_COUNTERWEIGHT);
            terms.add(Term.BOSS_TO_COUNTERWEIGHT);
            stops.put(
                    Term.ROD_RATIO,
                    new Stop(
                            "do not assemble it as written",
                            "the rod is shorter than the throw, so the crankshaft cannot turn",
                            "read rod length and stroke again: " + from(figures, Term.ROD_RATIO, ratio),
                            true));
        });
    }

    /**
     * What must not be assembled by each way out of a dispute; by one way when nothing disagrees.
     * @param ways           one or more
     * @param likeliestFirst places of readings that are probably wrong
     */
    static List<Stop> stops(List<Figures> ways, List<String> likeliestFirst) {
        List<Map<Term, Stop>> byWay =
                ways.stream().map(w -> new Impossible(w, likeliestFirst).stops).toList();
        Set<Term> all = new LinkedHashSet<>();
        byWay.forEach(stops -> all.addAll(stops.keySet()));
        return all.stream()
                .map(term -> Stops.overall(byWay.stream()
                        .map(stops -> Optional.ofNullable(stops.get(term)))
                        .toList()))
                .flatMap(Optional::stream)
                .toList();
    }

    /** Whether the figure cannot be, or hangs on one that cannot be. */
    boolean spoils(Term term) {
        return terms.contains(term);
    }
}
