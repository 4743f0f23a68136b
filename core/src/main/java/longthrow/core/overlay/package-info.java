/**
 * What runs on a dynamometer were measured to make, over what {@code power} predicts: both brought to one air, the difference with both doubts, and what may be said of it (docs/decisions/0035). Start at
 * {@link Overlays}. Nothing predicted is moved by what was measured, and no speed is let through by it.
 */
@NullMarked
package longthrow.core.overlay;

import org.jspecify.annotations.NullMarked;
