package longthrow.workshop.web;

import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * Sums that wait for their turn: no more run at once than is good for all. Who asks for what another already works at waits for that one, and
 * takes no turn from those who ask for something else.
 */
final class Turns {
    private final int most;
    private final Semaphore free;
    private final AtomicLong begun = new AtomicLong();

    /**
     * Nothing runs yet.
     * @param most that run at once, &gt; 0
     */
    Turns(int most) {
        this.most = most;
        this.free = new Semaphore(most, true);
    }

    /** Whether nothing runs. */
    boolean isIdle() {
        return free.availablePermits() == most;
    }

    /** How many run. */
    int running() {
        return most - free.availablePermits();
    }

    /** Whether one that asks now would not wait. */
    boolean isOneFree() {
        return free.availablePermits() > 0;
    }

    /** How many sums have begun so far. */
    long begun() {
        return begun.get();
    }

    /**
     * What is remembered, or is worked out when the turn has come.
     * @param wanted asked when the turn has come, by who may go away while waiting
     * @return empty where it is not wanted any more and not known either
     */
    <K, T> Optional<T> of(Lately<K, T> lately, K key, BooleanSupplier wanted) {
        if (!lately.isBegun(key)) {
            Optional<T> first = in(() -> {
                if (!wanted.getAsBoolean()) {
                    return lately.ifKnown(key);
                }
                return lately.isBegun(key) ? Optional.empty() : Optional.of(lately.of(key));
            });
            if (first.isPresent() || !lately.isBegun(key)) {
                return first;
            }
        }
        return Optional.of(lately.of(key));
    }

    /** A sum in its turn. */
    <T> T in(Supplier<T> sum) {
        free.acquireUninterruptibly();
        begun.incrementAndGet();
        try {
            return sum.get();
        } finally {
            free.release();
        }
    }
}
