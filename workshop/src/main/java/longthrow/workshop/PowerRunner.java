package longthrow.workshop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.power.Run;
import longthrow.core.power.Runner;
import longthrow.vector.Kernels;

/** Does the sums of a prediction on several threads. Each is a pure function and what comes out stands in the order that was asked, so the digits are the same for any number of threads. */
public final class PowerRunner implements Runner {
    private final int threads;
    private final Supplier<FlowKernel> kernels;
    private final BooleanSupplier goesOn;

    private PowerRunner(int threads, Supplier<FlowKernel> kernels, BooleanSupplier goesOn) {
        if (threads < 1) {
            throw new IllegalArgumentException(threads + " threads; it takes 1 at least");
        }
        this.threads = threads;
        this.kernels = kernels;
        this.goesOn = goesOn;
    }

    /**
     * On this many threads.
     * @param threads 1 or more
     * @param goesOn  asked from any of them, often; once false, the sums end without an outcome
     * @throws IllegalArgumentException for no thread
     */
    public static PowerRunner on(int threads, BooleanSupplier goesOn) {
        return new PowerRunner(threads, Kernels.best(), goesOn);
    }

    /** On all processors. */
    public static PowerRunner onAll(BooleanSupplier goesOn) {
        return on(Runtime.getRuntime().availableProcessors(), goesOn);
    }

    @Override
    public Optional<List<Run.Outcome>> all(List<Run> runs) {
        AtomicBoolean isEnded = new AtomicBoolean();
        BooleanSupplier still = () -> !isEnded.get() && goesOn.getAsBoolean();
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, Math.min(threads, runs.size())), work -> {
            Thread thread = new Thread(work, "power");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Optional<Run.Outcome>>> waited = new ArrayList<>();
            for (Run run : runs) {
                waited.add(pool.submit(() -> run.at(kernels, still)));
            }
            List<Run.Outcome> outcomes = new ArrayList<>();
            for (Future<Optional<Run.Outcome>> one : waited) {
                Optional<Run.Outcome> outcome = one.get();
                if (outcome.isEmpty()) {
                    return Optional.empty();
                }
                outcomes.add(outcome.get());
            }
            return Optional.of(outcomes);
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException failed) {
            throw new IllegalStateException("a sum of the prediction failed", failed.getCause());
        } finally {
            isEnded.set(true);
            pool.shutdownNow();
        }
    }
}
