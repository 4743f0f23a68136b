package longthrow.workshop.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Function;

/**
 * What was worked out of late, each once however many ask at the same time.
 * @param <K> what it is worked out from, all of it
 * @param <V> what comes of it
 */
public final class Lately<K, V> {
    private final Map<K, FutureTask<V>> known;
    private final Function<K, V> work;

    /**
     * Nothing known yet.
     * @param most that is remembered; what was not asked for the longest goes first
     */
    public Lately(int most, Function<K, V> work) {
        this.work = work;
        this.known = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, FutureTask<V>> eldest) {
                return size() > most;
            }
        };
    }

    /** What is remembered; empty while it is not worked out. Nothing is begun. */
    public Optional<V> ifKnown(K key) {
        FutureTask<V> task;
        synchronized (known) {
            task = known.get(key);
        }
        return task != null && task.isDone() ? Optional.of(result(task)) : Optional.empty();
    }

    /** Remembers what was worked out elsewhere, where it is not known yet. */
    void learn(K key, V value) {
        FutureTask<V> done = new FutureTask<>(() -> value);
        done.run();
        synchronized (known) {
            known.putIfAbsent(key, done);
        }
    }

    /** Whether somebody works it out, or did. */
    boolean isBegun(K key) {
        synchronized (known) {
            return known.containsKey(key);
        }
    }

    /** Works it out, waits for another who does, or remembers. A failure is not remembered. */
    public V of(K key) {
        FutureTask<V> task;
        synchronized (known) {
            task = known.computeIfAbsent(key, k -> new FutureTask<>(() -> work.apply(k)));
        }
        task.run(); // at once where it ran already
        try {
            return result(task);
        } catch (RuntimeException | Error failed) {
            synchronized (known) {
                known.remove(key, task);
            }
            throw failed;
        }
    }

    private static <V> V result(FutureTask<V> task) {
        try {
            return task.get();
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while working", told);
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
}
