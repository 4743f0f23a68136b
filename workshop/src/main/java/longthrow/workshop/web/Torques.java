package longthrow.workshop.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.FutureTask;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.power.Prediction;
import longthrow.core.power.Runner;
import longthrow.core.power.Speeds;
import longthrow.workshop.store.CatalogueEntry;

/**
 * What torque an engine makes, worked out once for a text and the catalogues in use, of late. It takes seconds of every processor: one is worked out at a time, on a thread of its own, lets every other
 * sum go first, and is ended when no page asks for it any more or its build was changed.
 */
public final class Torques implements AutoCloseable {
    private static final int MOST_REMEMBERED = 16;

    /** Speeds that somebody chose; apart, so that they push no curve of another's out. */
    private static final int MOST_SPEEDS = 32;

    /** A page that is still there asks again long before; our own choice. */
    private static final long WANTED_MILLISECONDS = 12_000;

    /** So often it is looked whether the build was changed; our own choice. */
    private static final long LOOK_MILLISECONDS = 250;

    /** One rest while another's sum runs; our own choice. */
    private static final long REST_MILLISECONDS = 5;

    private final Workbench bench;
    private final Loaded loaded;
    private final Function<BooleanSupplier, Runner> runners;
    private final Lately<Asked, Answer> curves = new Lately<>(MOST_REMEMBERED, Torques::notHere);
    private final Lately<Asked, Answer> points = new Lately<>(MOST_SPEEDS, Torques::notHere);
    private final Map<Asked, Job> jobs = new LinkedHashMap<>();
    private final ExecutorService worker =
            new ThreadPoolExecutor(1, 1, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), Torques::beside);

    /**
     * None worked out yet.
     * @param bench   whose rail says how far each came
     * @param loaded  what an engine bears, which says what speeds are told
     * @param runners of the sums, each asking whether to go on
     */
    public Torques(Workbench bench, Loaded loaded, Function<BooleanSupplier, Runner> runners) {
        this.bench = bench;
        this.loaded = loaded;
        this.runners = runners;
    }

    private static Thread beside(Runnable task) {
        Thread thread = new Thread(task, "torque");
        thread.setDaemon(true);
        return thread;
    }

    /** All that an answer hangs on; at one speed [rad/s], or over those of the build. */
    private record Asked(String text, List<CatalogueEntry> catalogues, OptionalDouble speed) {}

    private static Answer notHere(Asked asked) {
        throw new IllegalStateException("torque is worked out on a thread of its own");
    }

    private Lately<Asked, Answer> answers(Asked asked) {
        return asked.speed().isPresent() ? points : curves;
    }

    /** One that waits or is at work. */
    private final class Job {
        private final Asked asked;
        private final FutureTask<Optional<Answer>> task = new FutureTask<>(this::work);
        private volatile BooleanSupplier isNewest;
        private volatile long wantedUntil;
        private volatile long lookAt = System.nanoTime();
        private volatile boolean isOver;

        private Job(Asked asked, BooleanSupplier isNewest) {
            this.asked = asked;
            this.isNewest = isNewest;
            this.wantedUntil = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(WANTED_MILLISECONDS);
        }

        private void want(BooleanSupplier isNewestNow) {
            isNewest = isNewestNow;
            wantedUntil = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(WANTED_MILLISECONDS);
        }

        private Optional<Answer> work() {
            try {
                Optional<Answer> answer = goesOn() ? predicted(asked, runners.apply(this::goesOn)) : Optional.empty();
                answer.ifPresent(known -> {
                    answers(asked).learn(asked, known);
                    if (asked.speed().isEmpty()) {
                        bench.remember(
                                Rail.Question.POWER,
                                asked.text(),
                                asked.catalogues(),
                                Rail.powered(Optional.of(known)));
                    }
                });
                return answer;
            } finally {
                synchronized (jobs) {
                    jobs.remove(asked, this);
                }
            }
        }

        /** Asked by any of the threads that do the sums, after every cycle. */
        private boolean goesOn() {
            while (!isOver) {
                long now = System.nanoTime();
                if (now - wantedUntil > 0
                        || worker.isShutdown()
                        || Thread.currentThread().isInterrupted()) {
                    isOver = true;
                } else if (now - lookAt > 0) {
                    lookAt = now + TimeUnit.MILLISECONDS.toNanos(LOOK_MILLISECONDS);
                    isOver = !isNewest.getAsBoolean();
                } else if (bench.desk().isAtWork()) {
                    rest();
                } else {
                    return true;
                }
            }
            return false;
        }

        private void rest() {
            try {
                Thread.sleep(REST_MILLISECONDS);
            } catch (InterruptedException told) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private Optional<Answer> predicted(Asked asked, Runner runner) {
        Answer life = loaded.life(asked.text(), asked.catalogues());
        Speeds speeds =
                asked.speed().isPresent() ? Speeds.of(List.of(asked.speed().getAsDouble())) : Speeds.usual();
        return Prediction.of(BuildFile.read(asked.text()).build().orElseThrow(), life, speeds, runner);
    }

    /** What is remembered over the speeds of the build; nothing is begun. */
    public Optional<Answer> ifKnown(String text, List<CatalogueEntry> active) {
        return curves.ifKnown(new Asked(text, active, OptionalDouble.empty()));
    }

    /** What is remembered at a speed of somebody's choice; nothing is begun. */
    public Optional<Answer> ifKnownAt(String text, List<CatalogueEntry> active, double speed) {
        return points.ifKnown(new Asked(text, active, OptionalDouble.of(speed)));
    }

    /**
     * Over the speeds of the build, or at one speed: remembered, or waited for.
     * @param speed    of the crank [rad/s]; empty for those of the build
     * @param patience [ms]; what is not there by then is worked out on, and is to be asked for again
     * @param isNewest whether the build still stands as it is asked of here
     * @return empty where it is not there yet, or was ended
     */
    public Optional<Answer> within(
            long patience, String text, List<CatalogueEntry> active, OptionalDouble speed, BooleanSupplier isNewest) {
        Asked asked = new Asked(text, active, speed);
        Optional<Answer> known = answers(asked).ifKnown(asked);
        return known.isPresent() ? known : awaited(job(asked, isNewest), patience);
    }

    /** As {@link #within}, however long it takes, for whoever waits for the whole page. */
    public Optional<Answer> of(
            String text, List<CatalogueEntry> active, OptionalDouble speed, BooleanSupplier isNewest) {
        Optional<Answer> answer = within(WANTED_MILLISECONDS / 2, text, active, speed, isNewest);
        while (answer.isEmpty() && isNewest.getAsBoolean() && !worker.isShutdown()) {
            answer = within(WANTED_MILLISECONDS / 2, text, active, speed, isNewest);
        }
        return answer;
    }

    private Job job(Asked asked, BooleanSupplier isNewest) {
        synchronized (jobs) {
            Job known = jobs.get(asked);
            if (known != null && !known.isOver) {
                known.want(isNewest);
                return known;
            }
            Job job = new Job(asked, isNewest);
            jobs.put(asked, job);
            worker.execute(job.task);
            return job;
        }
    }

    private static Optional<Answer> awaited(Job job, long patience) {
        try {
            return job.task.get(patience, TimeUnit.MILLISECONDS);
        } catch (TimeoutException notYet) {
            return Optional.empty();
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while waiting", told);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            if (failed.getCause() instanceof Error fault) {
                throw fault;
            }
            throw new IllegalStateException(failed.getCause());
        }
    }

    /**
     * How far it is answered without the sums, which are for whoever opens the page: what is missing, and whether every speed is refused, shows before them.
     */
    Rail.State glance(String text, List<CatalogueEntry> active) {
        Asked asked = new Asked(text, active, OptionalDouble.empty());
        Runner none = runs -> runs.isEmpty() ? Optional.of(List.of()) : Optional.empty();
        return Rail.powered(curves.ifKnown(asked).or(() -> predicted(asked, none)));
    }

    @Override
    public void close() {
        worker.shutdownNow();
        try { // what is under way still reads the store, which is shut after this
            if (!worker.awaitTermination(2, TimeUnit.SECONDS)) {
                throw new IllegalStateException("a torque curve does not end");
            }
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
    }
}
