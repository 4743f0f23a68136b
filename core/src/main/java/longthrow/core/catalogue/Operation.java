package longthrow.core.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
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

    /** What can be done to close a stack, the datum it is measured from, the term it changes and what else follows. */
    public enum Kind {
        DECK_CUT(
                "deck_cut",
                "cut the deck",
                "deck face, square to the crank axis",
                Term.DECK_HEIGHT,
                true,
                "the piston stands higher by the cut: deck clearance, squish and clearance volume shrink; the head comes down, so pushrods are too long by it, ports come down with it and a camshaft in it on chain or belt lags; a side-valve comes nearer the head"),
        HEAD_CUT(
                "head_cut",
                "cut the head",
                "head face",
                Term.CHAMBER_VOLUME,
                true,
                "clearance volume shrinks by the cut times the chamber area; valves come nearer the piston, or on a side-valve the head nearer the valves; pushrods are too long by it, ports come down with it and a camshaft in it on chain or belt lags"),
        CROWN_CUT(
                "crown_cut",
                "cut the crown",
                "crown rim, square to the pin",
                Term.COMPRESSION_HEIGHT,
                true,
                "the crown stands lower by the cut: deck clearance, squish and clearance volume grow; crown and top land are thinner, the piston lighter"),
        BORE_AND_HONE(
                "bore_and_hone",
                "bore and hone",
                "crank axis",
                Term.BORE,
                false,
                "displacement grows; sleeve or cylinder wall is thinner; needs the piston and rings of the new size"),
        SLEEVE(
                "sleeve",
                "fit a sleeve",
                "crank axis",
                Term.BORE,
                false,
                "bore returns to the size ordered; the block is weaker around it and the sleeve may stand proud; deck height must be read again"),
        SMALL_END_HONE(
                "small_end_hone",
                "hone the small end",
                "big-end bore",
                Term.SMALL_END_BORE,
                true,
                "pin clearance grows by the amount; the bush is thinner; a rod length read from edges changes, centre to centre does not"),
        BIG_END_FACE(
                "big_end_face",
                "face the big end narrower",
                "big-end bore",
                Term.BIG_END_WIDTH,
                true,
                "side clearance grows by the amount; the rod is lighter and its shell must still be carried over its width"),
        SKIRT_CUT(
                "skirt_cut",
                "shorten the skirt",
                "pin centre",
                Term.SKIRT_BELOW_PIN,
                true,
                "room to the counterweight grows by the cut; the piston is lighter and less well guided"),
        COUNTERWEIGHT_TURN(
                "counterweight_turn",
                "turn the counterweight down",
                "crank axis",
                Term.COUNTERWEIGHT_RADIUS,
                true,
                "room to the skirt grows by the cut; the crank balances less of the piston, so vibration must be worked out again"),
        CRANKPIN_OFFSET_GRIND(
                "crankpin_offset_grind",
                "grind the crankpin off centre",
                "crank axis",
                Term.STROKE,
                false,
                "stroke changes, and the crankpin comes out smaller, so rod or shell must suit; case and cam clearance must be mocked up"),
        GASKET_TO_ORDER(
                "gasket_to_order",
                "have a gasket made",
                "crushed thickness",
                Term.GASKET_THICKNESS,
                false,
                "squish and clearance volume follow the thickness; nothing else changes"),
        ROD_TO_ORDER(
                "rod_to_order",
                "have a rod made",
                "centre to centre",
                Term.ROD_LENGTH,
                false,
                "deck clearance follows the length; bores and widths are as ordered; its rated speed is its maker's to say");

        private final String key;
        private final String label;
        private final String datum;
        private final Term changes;
        private final boolean takesOff;
        private final String consequences;

        Kind(String key, String label, String datum, Term changes, boolean takesOff, String consequences) {
            this.key = key;
            this.label = label;
            this.datum = datum;
            this.changes = changes;
            this.takesOff = takesOff;
            this.consequences = consequences;
        }

        /** The kind of part that comes of it; empty for what only changes a part. */
        public Optional<PartKind> makes() {
            return this == GASKET_TO_ORDER
                    ? Optional.of(PartKind.GASKET)
                    : this == ROD_TO_ORDER ? Optional.of(PartKind.CONNECTING_ROD) : Optional.empty();
        }

        /** Whether a new part comes of it rather than a changed one. */
        public boolean makesAPart() {
            return makes().isPresent();
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

        /** All terms that are other after the job, the one it is done for first. */
        public List<Term> allChanged() {
            return switch (this) {
                case CROWN_CUT ->
                    List.of(Term.COMPRESSION_HEIGHT, Term.TOP_LAND_HEIGHT, Term.OIL_GROOVE_TO_CROWN, Term.CROWN_VOLUME);
                case CRANKPIN_OFFSET_GRIND -> List.of(Term.STROKE, Term.CRANKPIN_DIAMETER);
                default -> List.of(changes);
            };
        }

        /** The readings that say what became of the job: any of them will do. */
        public List<Term> readAfter() {
            return switch (this) {
                case CROWN_CUT -> List.of(Term.COMPRESSION_HEIGHT, Term.PIN_TOP_TO_CROWN, Term.PIN_BOTTOM_TO_CROWN);
                case BORE_AND_HONE, SLEEVE ->
                    List.of(
                            Term.BORE,
                            Term.BORE_TOP_THRUST,
                            Term.BORE_MIDDLE_THRUST,
                            Term.BORE_BOTTOM_THRUST,
                            Term.BORE_TOP_AXIS,
                            Term.BORE_MIDDLE_AXIS,
                            Term.BORE_BOTTOM_AXIS);
                case CRANKPIN_OFFSET_GRIND -> List.of(Term.STROKE, Term.THROW);
                default -> List.of(changes);
            };
        }

        /** Whether it is said by the size that is made rather than by how far it moves. */
        public boolean isToSize() {
            return !takesOff && this != CRANKPIN_OFFSET_GRIND;
        }

        /**
         * The job in words.
         * @param amount taken off, the pin moved out, or the size made [m]
         */
        public String job(double amount) {
            return String.format(
                    Locale.ROOT,
                    "%s %s %.3f mm (%.4f in)",
                    label,
                    isToSize() ? "to" : "by",
                    amount * 1e3,
                    amount / 25.4e-3);
        }

        /** What the dimension is measured from. */
        public String datum() {
            return datum;
        }

        /** The term it changes first. */
        public Term changes() {
            return changes;
        }

        /** What else changes: geometry, and the trade's common practice where it speaks of strength, no source. */
        public String consequences() {
            return consequences;
        }

        /** Whether the range is an amount of metal taken off; else it is the size made. */
        public boolean takesOff() {
            return takesOff;
        }
    }
}
