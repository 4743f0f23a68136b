package longthrow.core.power;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.pipe.FlowKernel;

/** Does the sums that a prediction asks for, on as many threads as it likes. */
public interface Runner {
    /**
     * All of them.
     * @return what came of each, in their order; empty where it was ended from outside
     */
    Optional<List<Run.Outcome>> all(List<Run> runs);

    /** One after the other. */
    static Runner inTurn(Supplier<FlowKernel> kernels, BooleanSupplier goesOn) {
        return runs -> {
            List<Run.Outcome> outcomes = new ArrayList<>();
            for (Run run : runs) {
                Optional<Run.Outcome> outcome = run.at(kernels, goesOn);
                if (outcome.isEmpty()) {
                    return Optional.empty();
                }
                outcomes.add(outcome.get());
            }
            return Optional.of(outcomes);
        };
    }
}
