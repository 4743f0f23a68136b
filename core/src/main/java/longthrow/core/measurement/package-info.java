/**
 * What a reading is worth: doubt by its sources, carried through formulas, and several readings brought together.
 * <p>Start at {@link longthrow.core.measurement.Measured}; {@link longthrow.core.measurement.Reconciliation} finds the figures
 * that agree best with everything read and tests whether they agree at all.
 * <p>Rules: JCGM 100:2008 (GUM) sections 4, 5 and annex G; JCGM 101:2008 where a formula bends; JCGM 106:2012 for verdicts.
 * <p>Units: coherent SI. All types are immutable and may be shared between threads.
 */
@NullMarked
package longthrow.core.measurement;

import org.jspecify.annotations.NullMarked;
