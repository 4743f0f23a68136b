package longthrow.core.fit;

import java.util.Optional;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** What can keep a combination from going together, in the order in which it is looked at: the first one met counts it out. */
public enum Obstacle {
    NOT_SAID("a size of the stack is not said, or only with a ± too wide to fit by", null),
    WORDS("meant for another kind of engine", null),
    CRANK_IN_CASE("the crankshaft does not go into this case", Term.MAIN_JOURNAL),
    FLYWHEEL("the flywheel does not go on the crankshaft", Term.FLYWHEEL_ON_TAPER),
    CLUTCH("the clutch does not go on the output shaft", Term.CLUTCH_ON_SHAFT),
    PISTON_IN_BORE("piston and bore do not suit each other", Term.PISTON_TO_WALL),
    OIL_GROOVE("the pin bore cuts the oil-ring groove open", Term.OIL_GROOVE_TO_PIN),
    PIN_IN_CLIPS("pin and clips do not suit each other", Term.PIN_FLOAT),
    PIN_IN_PISTON("pin and pin bore of the piston do not suit each other", Term.PIN_BOSS_CLEARANCE),
    PIN_PAST_BORE("the pin is as long as the bore is wide", Term.PIN_LENGTH),
    PIN_IN_ROD("pin and small end do not suit each other", Term.PIN_CLEARANCE),
    ROD_IN_PISTON("small end and pin bosses do not suit each other", Term.BOSS_CLEARANCE),
    ROD_ON_CRANKPIN("big end and crankpin do not suit each other", Term.BIG_END_CLEARANCE),
    ROD_BETWEEN_CHEEKS("the widths of big end and crankpin do not suit each other", Term.ROD_SIDE_CLEARANCE),
    ROD_RATIO("the rod is too short for the throw", Term.ROD_RATIO),
    RATED("its maker rates the rod below the wanted speed", Term.WANTED_SPEED),
    SWEPT("the swept volume is outside a rule", Term.SWEPT_VOLUME),
    SPEED("the top ring would flutter at the wanted speed", Term.TDC_ACCELERATION),
    DECK_PROUD("the piston stands out of the hole", Term.DECK_CLEARANCE),
    DECK_LOW("the piston stands too far down the hole", Term.DECK_CLEARANCE),
    RING_OUT("the top ring leaves the bore", Term.TOP_RING_TO_DECK),
    SKIRT_HITS("the skirt meets the counterweight", Term.SKIRT_TO_COUNTERWEIGHT),
    SKIRT_OUT("too much skirt leaves the sleeve", Term.SKIRT_OUT_OF_SLEEVE),
    GASKET_HOLE("the hole of the gasket does not suit the bore", Term.GASKET_OVER_BORE),
    SQUISH_TIGHT("the squish is too tight", Term.SQUISH),
    SQUISH_WIDE("the squish is too wide", Term.SQUISH),
    RATIO_LOW("the compression ratio is too low", Term.COMPRESSION_RATIO),
    RATIO_HIGH("the compression ratio is too high", Term.COMPRESSION_RATIO),
    ROOM_SMALL("the clearance volume is under a rule", Term.CLEARANCE_VOLUME),
    SELECTION("each limit can be met, but no one set of pieces was found that meets them all", null),
    RULE("a rule is not kept", null),
    BUDGET("it costs more than the budget", null);

    private final String label;
    private final @Nullable Term term;

    Obstacle(String label, @Nullable Term term) {
        this.label = label;
        this.term = term;
    }

    public String label() {
        return label;
    }

    /** The figure it is about; empty when it is about none. */
    public Optional<Term> term() {
        return Optional.ofNullable(term);
    }
}
