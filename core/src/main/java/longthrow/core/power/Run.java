package longthrow.core.power;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.cycle.DoesNotRunException;
import longthrow.core.cycle.Mesh;
import longthrow.core.cycle.Settled;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.pipe.FlowKernel;

/**
 * One sum that a prediction asks for: one engine at one speed. A pure function, so that it may be done in any order on any number of threads.
 * @param figures of the engine
 * @param speed   of the crankshaft [rad/s]
 * @param mesh    how finely it is cut up
 * @param from    what stood in a like engine, to begin with; empty for air at rest
 */
public record Run(Figures figures, double speed, Mesh mesh, Optional<Settled> from) {
    /** From air at rest. */
    public Run(Figures figures, double speed, Mesh mesh) {
        this(figures, speed, mesh, Optional.empty());
    }

    /**
     * Does it.
     * @param kernels for the pipes
     * @param goesOn  asked after every cycle; if false the run ends
     * @return empty where it was ended from outside
     */
    public Optional<Outcome> at(Supplier<FlowKernel> kernels, BooleanSupplier goesOn) {
        Optional<Curve.Point> point;
        try {
            point = Curve.at(figures, speed, mesh, kernels, goesOn, from);
        } catch (DoesNotRunException e) {
            return Optional.of(new Outcome(Optional.empty(), String.valueOf(e.getMessage())));
        } catch (NotConvergedException e) {
            return Optional.of(
                    new Outcome(Optional.empty(), "what its crankcase takes is not found: " + e.getMessage()));
        } catch (IllegalArgumentException e) { // a figure that the formulas do not bear: this engine is not reckoned
            return Optional.of(
                    new Outcome(Optional.empty(), "the sums do not bear these figures together: " + e.getMessage()));
        }
        return point.map(
                p -> p.point().effort().settled()
                        ? new Outcome(Optional.of(p), "")
                        : new Outcome(
                                Optional.empty(),
                                "the sums do not settle: after "
                                        + p.point().effort().cycles()
                                        + " cycles one still differs from the next. That is no word on whether the engine runs; ask for a speed a"
                                        + " little beside it, and where many do not settle look over valve timing, plates and pipe lengths"));
    }

    /**
     * What came of it.
     * @param point empty where no cycle came of it
     * @param why   none came; empty where one did
     */
    public record Outcome(Optional<Curve.Point> point, String why) {}
}
