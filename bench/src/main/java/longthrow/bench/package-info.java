/**
 * Measurements of speed, outside the normal build. Each has a main class or JMH benchmarks of its own; figures worth
 * quoting stand in docs/measurements.md with their command.
 */
@NullMarked
package longthrow.bench;

import org.jspecify.annotations.NullMarked;
