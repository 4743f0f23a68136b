package longthrow.buildfile;

import java.util.Map;
import java.util.Optional;
import longthrow.core.term.Term;

/** Figures that nobody reads on the engine; of speeds nobody may: to try whether a wheel holds is how wheels burst. */
final class OffASheet {
    private static final Map<Term, String> WAYS = Map.of(
            Term.FLYWHEEL_RATED_SPEED,
            "off its sheet or stamp, never by running it: {specified: 3600 rpm, by: the maker}",
            Term.ROD_RATED_SPEED,
            "off its sheet, never by running it: {specified: 3600 rpm, by: the maker}",
            Term.GOVERNED_SPEED,
            "off the maker's sheet or the plate of the engine",
            Term.WANTED_SPEED,
            "what you wish for; nothing is read for it",
            Term.MAIN_JET_NUMBER,
            "as it is stamped on the jet",
            Term.OCTANE_NUMBER,
            "as the pump prints it, with its scale beside it");

    private OffASheet() {}

    /** How the figure is come by, where it is not read; empty for all that is. */
    static Optional<String> way(Term term) {
        return Optional.ofNullable(WAYS.get(term));
    }
}
