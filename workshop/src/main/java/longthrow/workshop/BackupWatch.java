package longthrow.workshop;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import longthrow.workshop.store.StoreFault;

/**
 * Looks now and then whether a backup is due, until it is interrupted or the store can only be read. What stands in the way of one is said once each
 * time it changes; the list of builds says it as long as it lasts.
 * @param readOnly whether the store can only be read
 * @param backUp   makes a backup where one is due; may throw a {@link StoreFault}
 * @param every    how long it waits in between, above 0
 * @param say      where trouble is said
 */
record BackupWatch(BooleanSupplier readOnly, Runnable backUp, Duration every, Consumer<String> say)
        implements Runnable {
    BackupWatch {
        if (every.isNegative() || every.isZero()) {
            throw new IllegalArgumentException("looked every " + every + "; it must be above 0");
        }
    }

    @Override
    public void run() {
        String said = "";
        try {
            while (!readOnly.getAsBoolean()) {
                Thread.sleep(every.toMillis());
                said = look(said);
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    /** What now stands in the way; empty for nothing. */
    private String look(String said) {
        try {
            backUp.run();
            return "";
        } catch (StoreFault fault) {
            String trouble = String.valueOf(fault.getMessage());
            if (!trouble.equals(said)) {
                say.accept(trouble);
            }
            return trouble;
        }
    }
}
