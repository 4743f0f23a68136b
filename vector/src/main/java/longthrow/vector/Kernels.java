package longthrow.vector;

import java.util.function.Supplier;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.PlainKernel;

/** Which kernel this Java can run. The digits are the same with either. */
public final class Kernels {
    private static final String MODULE = "jdk.incubator.vector";

    private Kernels() {}

    /** Whether Java was started with the module that {@link VectorKernel} is written on. */
    public static boolean vectors() {
        return ModuleLayer.boot().findModule(MODULE).isPresent();
    }

    /** One kernel after another of the faster kind. Worth it where the optimising compiler works and there is a second of work: until a kernel is compiled, that on vectors is by far the slower. */
    public static Supplier<FlowKernel> best() {
        return vectors() ? VectorKernel::new : PlainKernel::new;
    }
}
