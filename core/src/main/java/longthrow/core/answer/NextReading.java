package longthrow.core.answer;

import longthrow.core.term.Term;

/**
 * A reading worth taking.
 * @param read       what to read
 * @param with       key of the instrument
 * @param how        how to take it
 * @param target     the figure whose doubt it cuts
 * @param now        95 % doubt of the target now [SI]; infinite when unknown, NaN when the reading is to settle a disagreement
 * @param after      expected 95 % doubt after it [SI]; NaN as above
 * @param minutes    it takes
 * @param why        in words
 */
public record NextReading(
        Term read, String with, String how, Term target, double now, double after, double minutes, String why) {
    /** Doubt cut per minute [SI/min]; infinite when it makes an unknown known. */
    public double cutPerMinute() {
        return (now - after) / minutes;
    }
}
