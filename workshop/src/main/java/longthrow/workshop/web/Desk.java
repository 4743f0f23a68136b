package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.measure.Glimpse;
import longthrow.core.measure.Measure;

/**
 * Build files read and measured, those of late remembered: a page shown again costs nothing. No more sums run at once than
 * there are processors, each in its turn: more would only make all of them late, and the pages that need none with them.
 */
public final class Desk {
    /** Answers are large, some two megabytes of the example; our own choice. */
    private static final int MOST_REMEMBERED = 24;

    /** Some two hundred kilobytes each of the example: for each who types what was there, the newest and what is typed; our own choice. */
    private static final int MOST_READ = 100;

    /** So long nothing is typed any more before it is worked ahead; longer than between two keys, or half of all work is in vain; our own choice. */
    static final int REST_MILLISECONDS = 800;

    /** After so many a glance takes a fiftieth, and a sum a thirtieth, of what the first takes, and little less after more; measured on the example. */
    private static final int REHEARSALS = 150;

    /** So long nobody may have asked for a sum before it is rehearsed on; our own choice. */
    private static final int UNDISTURBED_MILLISECONDS = 2_000;

    /** One as the build was and one as it is typed for each of thirty who type at once; a megabyte each of the example; our own choice. */
    private static final int MOST_GLANCES = 60;

    private final Lately<String, ReadBuild> read = new Lately<>(MOST_READ, BuildFile::read);
    private final Lately<String, Work> worked = new Lately<>(MOST_REMEMBERED, this::fresh);
    private final Lately<String, Glimpse> glanced =
            new Lately<>(MOST_GLANCES, text -> Glimpse.of(read(text).build().orElseThrow()));
    private final Turns turns = new Turns(Runtime.getRuntime().availableProcessors());
    private final ScheduledExecutorService ahead = oneAfterTheOther();
    private final AtomicLong visits = new AtomicLong();
    private volatile boolean isRehearsing;
    private volatile long lastVisit = System.nanoTime();
    private final AtomicLong seen =
            new AtomicLong(); // sums begun and pages asked for when it was last looked whether others ask

    /**
     * A build file and what comes of it.
     * @param build   empty when the text cannot be read
     * @param measure empty when the text cannot be read
     */
    public record Work(String text, Optional<Build> build, List<Fault> faults, Optional<Answer> measure) {}

    /** Reads a build file, or remembers what stands in it. */
    public ReadBuild read(String text) {
        return read.of(text);
    }

    /** The text of an edit, and remembers what was read of it on the way. */
    public Optional<String> text(Edited edited) {
        if (edited.text().isPresent() && edited.read().isPresent()) {
            read.learn(edited.text().get(), edited.read().get());
        }
        return edited.text();
    }

    /** Reads and measures a build file, or remembers what came of it. */
    public Work work(String text) {
        return turns.of(worked, text, () -> true).orElseThrow();
    }

    /**
     * Measures what will likely be asked for next: a reading that was typed, and now rests, is about to be kept.
     * @param wanted asked after a while; what is typed on is not measured, nor anything while somebody's sum runs
     */
    public void workAhead(String text, BooleanSupplier wanted) {
        // A failure comes again, and is said, when the page asks.
        ScheduledFuture<?> unused = ahead.schedule(
                () -> {
                    if (wanted.getAsBoolean() && turns.isIdle()) {
                        work(text);
                    }
                },
                REST_MILLISECONDS,
                TimeUnit.MILLISECONDS);
    }

    /** What came of it, where that is remembered. */
    public Optional<Work> ifKnown(String text) {
        return worked.ifKnown(text);
    }

    /**
     * The sound figures of a build file and its suspects, without next readings and all else that takes longer: for an edit that is
     * still being typed.
     */
    public Glimpse glance(String text) {
        return turns.of(glanced, text, () -> true).orElseThrow();
    }

    /**
     * As the other, for one who may go away while waiting.
     * @param wanted asked when the turn has come
     * @return empty where it is not wanted any more and not known either
     */
    public Optional<Glimpse> glance(String text, BooleanSupplier wanted) {
        return turns.of(glanced, text, wanted);
    }

    /**
     * Glances at build files and measures them, one after the other, so often that the compiler is done with both, and remembers nothing of it. Waits its
     * turn each time, and lets others go first.
     * @throws InterruptedException when it is to end
     */
    public void rehearse(List<String> texts) throws InterruptedException {
        for (int i = 0; i < REHEARSALS; i++) {
            letOthersFirst();
            String text = texts.get(i % texts.size());
            isRehearsing = true;
            try {
                Optional<Answer> unused = turns.in(
                        () -> BuildFile.read(text).build().map(Glimpse::of).map(Measure::of));
            } finally {
                isRehearsing = false;
            }
            seen.incrementAndGet();
        }
    }

    /** Whether somebody's sum runs, a rehearsal not counted. */
    boolean isAtWork() {
        return turns.running() > (isRehearsing ? 1 : 0);
    }

    /** Somebody asks the workshop for something: what can wait lets them go first. */
    void somebodyAsks() {
        visits.incrementAndGet();
        lastVisit = System.nanoTime();
    }

    /** Somebody has what he asked for. */
    void somebodyWasAnswered() {
        lastVisit = System.nanoTime();
    }

    /** When what takes seconds may be begun beside the requests [ms from now]: nobody has asked or typed for a while and a processor is free; 0 for at once. */
    long restsIn() {
        long rested = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - lastVisit);
        return rested < REST_MILLISECONDS ? REST_MILLISECONDS - rested : turns.isOneFree() ? 0 : REST_MILLISECONDS;
    }

    private long asked() {
        return turns.begun() + visits.get();
    }

    /**
     * For what can wait: returns when nobody has asked for a page or a sum for a while.
     * @throws InterruptedException when there is nothing to wait for any more
     */
    public void letOthersFirst() throws InterruptedException {
        if (Thread.interrupted()) {
            throw new InterruptedException();
        }
        for (long now = asked(); now != seen.get(); now = asked()) {
            seen.set(now);
            Thread.sleep(UNDISTURBED_MILLISECONDS);
        }
    }

    private static ScheduledExecutorService oneAfterTheOther() {
        return Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "working ahead");
            thread.setDaemon(true);
            return thread;
        });
    }

    private Work fresh(String text) {
        ReadBuild known = read(text);
        return new Work(text, known.build(), known.faults(), known.build().map(build -> Measure.of(glanced.of(text))));
    }
}
