package longthrow.core.measure;

/**
 * One mistake at one place.
 * @param mistake what happened
 * @param entry   index of the entry it happened to
 * @param reading index of the one reading of a set it happened to; -1 for all of them
 * @param move    what must be added to the reading to mend it [SI]
 * @param spread  standard deviation of that, 0 when it is exact [SI]
 * @param share   of this hypothesis among those of the same mistake, so that the many ways to drop a digit do not outweigh one turn of a thimble
 */
record Hypothesis(Mistake mistake, int entry, int reading, double move, double spread, double share) {
    /** Where which mistake may have happened, whichever reading of a set it was and however it is mended. */
    record Place(Mistake mistake, int entry) {}

    Place place() {
        return new Place(mistake, entry);
    }
}
