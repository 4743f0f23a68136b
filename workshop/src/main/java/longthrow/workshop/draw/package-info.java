/**
 * Drawings as SVG, the same on a page and in print.
 *
 * <p>Start at {@link longthrow.workshop.draw.ReadingCard}, how one reading is taken, in a picture and a few steps; {@link
 * longthrow.workshop.draw.StackBar}, {@link longthrow.workshop.draw.BoreMap}, {@link longthrow.workshop.draw.DeckTilt} and {@link
 * longthrow.workshop.draw.CrossSection} draw an answer. {@link longthrow.workshop.draw.Svg} writes the marks.
 *
 * <p>Every drawing has whole width and height in double quotes and a viewBox, presentation attributes, no script, no style sheet and nothing from
 * outside. Everything is drawn in {@code currentColor}, so it stands on light and dark paper alike; the classes {@code part}, {@code datum}, {@code
 * tool}, {@code lit}, {@code doubt}, {@code unknown} and {@code quiet} may be given colours and need none. Ids begin with the caller's prefix.
 *
 * <p>Not here: any sum of the trade, and no rounding of a figure or of its doubt.
 */
@NullMarked
package longthrow.workshop.draw;

import org.jspecify.annotations.NullMarked;
