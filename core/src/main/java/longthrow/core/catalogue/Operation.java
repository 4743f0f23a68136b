package longthrow.core.catalogue;

import java.util.Arrays;
import java.util.Optional;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * What a machine shop offers.
 * @param kind  what is done
 * @param code  by which it is ordered
 * @param name  for people
 * @param invented whether the catalogue says that it is made up
 * @param least smallest amount taken off, or smallest size made
 * @param most  largest
 * @param step  the amount comes in steps of this from {@code least}; null for any amount
 * @param tolerance half-width to which it is held; null when not said
 * @param offer what it costs
 * @param note  in the shop's words
 * @param place file and line; empty when it was not read
 */
public record Operation(
        Kind kind,
        String code,
        String name,
        boolean invented,
        ExactLength least,
        ExactLength most,
        @Nullable ExactLength step,
        @Nullable ExactLength tolerance,
        Offer offer,
        String note,
        String place) {
    public Operation {
        if (least.picometres() > most.picometres()) {
            throw new IllegalArgumentException("the range of " + code + " ends before it begins");
        }
        if (step != null && step.picometres() <= 0) {
            throw new IllegalArgumentException("the step of " + code + " must be more than nothing");
        }
    }

    /** What can be done to close a stack, the datum it is measured from, and the term it changes. */
    public enum Kind {
        DECK_CUT("deck_cut", "cut the deck", "deck face, square to the crank axis", Term.DECK_HEIGHT, true),
        HEAD_CUT("head_cut", "cut the head", "head face", Term.CHAMBER_VOLUME, true),
        CROWN_CUT("crown_cut", "cut the crown", "crown rim, square to the pin", Term.COMPRESSION_HEIGHT, true),
        BORE_AND_HONE("bore_and_hone", "bore and hone", "crank axis", Term.BORE, false),
        SLEEVE("sleeve", "fit a sleeve", "crank axis", Term.BORE, false),
        SMALL_END_HONE("small_end_hone", "hone the small end", "big-end bore", Term.SMALL_END_BORE, true),
        BIG_END_FACE("big_end_face", "face the big end narrower", "big-end bore", Term.BIG_END_WIDTH, true),
        SKIRT_CUT("skirt_cut", "shorten the skirt", "pin centre", Term.SKIRT_BELOW_PIN, true),
        COUNTERWEIGHT_TURN(
                "counterweight_turn", "turn the counterweight down", "crank axis", Term.COUNTERWEIGHT_RADIUS, true),
        CRANKPIN_OFFSET_GRIND(
                "crankpin_offset_grind", "grind the crankpin off centre", "crank axis", Term.STROKE, false),
        GASKET_TO_ORDER("gasket_to_order", "have a gasket made", "crushed thickness", Term.GASKET_THICKNESS, false),
        ROD_TO_ORDER("rod_to_order", "have a rod made", "centre to centre", Term.ROD_LENGTH, false);

        private final String key;
        private final String label;
        private final String datum;
        private final Term changes;
        private final boolean takesOff;

        Kind(String key, String label, String datum, Term changes, boolean takesOff) {
            this.key = key;
            this.label = label;
            this.datum = datum;
            this.changes = changes;
            this.takesOff = takesOff;
        }

        public static Optional<Kind> at(String key) {
            return Arrays.stream(values()).filter(k -> k.key.equals(key)).findFirst();
        }

        public String key() {
            return key;
        }

        public String label() {
            return label;
        }

        /** What the dimension is measured from. */
        public String datum() {
            return datum;
        }

        /** The term it changes first. */
        public Term changes() {
            return changes;
        }

        /** Whether the range is an amount of metal taken off; else it is the size made. */
        public boolean takesOff() {
            return takesOff;
        }
    }
}
