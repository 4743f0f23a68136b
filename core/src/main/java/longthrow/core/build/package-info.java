/**
 * The engine as its owner wrote it down: readings, sheets, assumptions, choices, rules, damage seen, and the donors known.
 * <p>Start at {@link longthrow.core.build.Build}. Text is turned into a build, and back, by the {@code buildfile} module.
 * <p>Not here: any arithmetic; see {@code core.engine} and {@code core.measure}.
 */
@NullMarked
package longthrow.core.build;

import org.jspecify.annotations.NullMarked;
