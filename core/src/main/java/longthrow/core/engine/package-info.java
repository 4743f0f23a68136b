/**
 * The engine's geometry as formulas, each written once, and the trade's rules and materials with their sources.
 * <p>Start at {@link longthrow.core.engine.Stack} (deck height, squish), {@link longthrow.core.engine.Compression} (displacement,
 * clearance volume, ratio), {@link longthrow.core.engine.Fits} (bores, bearings, rings) and {@link longthrow.core.engine.Rule}.
 * <p>Formulas take and give expressions in coherent SI; see {@code core.formula} for how they are evaluated.
 */
@NullMarked
package longthrow.core.engine;

import org.jspecify.annotations.NullMarked;
