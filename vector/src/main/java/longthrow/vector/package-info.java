/**
 * {@link longthrow.vector.VectorKernel}: the sums of {@link longthrow.core.pipe.FlowKernel} for several cells at once, by a module of the JDK that still incubates and has to be asked for
 * ({@code --add-modules jdk.incubator.vector}). Whoever runs without it uses {@link longthrow.core.pipe.PlainKernel} and gets the same digits.
 */
@NullMarked
package longthrow.vector;

import org.jspecify.annotations.NullMarked;
