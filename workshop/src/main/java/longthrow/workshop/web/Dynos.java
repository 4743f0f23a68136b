package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.book.Answers;
import longthrow.core.book.SharedRuns;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logs;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.store.StoredFile;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sheets of runs and loggers' files that are attached to builds, and what they come to: each worked out once for a sheet and the files that it names, of late. The
 * newest of a name counts.
 */
public final class Dynos {
    /** Of files that are sheets. */
    public static final String SHEET = "application/yaml";

    /** Answers hold curves, not rows; our own choice. */
    private static final int MOST_REMEMBERED = 32;

    /** Sheets of which the rail's mark is remembered; our own choice. */
    private static final int MOST_STATES = 4096;

    private static final Logger LOG = LoggerFactory.getLogger(Dynos.class);

    private final Workbench bench;
    private final Layouts layouts;
    private final Map<Asked, Rail.State> states = new ConcurrentHashMap<>(); // outlives the answers, which are large
    private final Lately<StoredFile, ReadDynoSheet> sheets = new Lately<>(MOST_REMEMBERED, this::read);
    private final Lately<Asked, Answer> answers = new Lately<>(MOST_REMEMBERED, this::answer);
    private final Lately<Asked, Answer> handedOn = new Lately<>(MOST_REMEMBERED, this::answerShared);
    private final Turns turns = new Turns(1);

    /** All that an answer hangs on. */
    private record Asked(StoredFile sheet, List<StoredFile> logs, Map<String, Layouts.Layout> layouts) {
        private Asked {
            logs = List.copyOf(logs);
            layouts = logs.isEmpty() ? Map.of() : Map.copyOf(layouts); // without logs nothing hangs on them
        }
    }

    /** None worked out yet; from now on the rail says how far runs are answered. */
    public Dynos(Workbench bench) {
        this.bench = bench;
        this.layouts = new Layouts(bench);
        bench.whenAskedOfRuns(this::state);
    }

    /**
     * What is attached to a build.
     * @param sheets the one that came last is first
     * @param others files that are no sheets, likewise
     */
    public record Attached(List<StoredFile> sheets, List<StoredFile> others) {
        public Attached {
            sheets = List.copyOf(sheets);
            others = List.copyOf(others);
        }

        /** A file that a sheet names, with or without folders before its name. */
        public Optional<StoredFile> log(String named) {
            String last = named.substring(named.lastIndexOf('/') + 1);
            return others.stream()
                    .filter(f -> f.name().equals(named))
                    .findFirst()
                    .or(() -> others.stream().filter(f -> f.name().equals(last)).findFirst());
        }
    }

    /** Whether a file is a sheet, by the name or type under which it is kept. */
    private static boolean isSheet(StoredFile file) {
        return file.mediaType().equals(SHEET) || isSheet(file.name());
    }

    /** Whether a name is one of a sheet. */
    public static boolean isSheet(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return lower.endsWith(".yaml") || lower.endsWith(".yml");
    }

    /** What is attached, of each name the newest. */
    public Attached of(BuildId build) {
        Map<String, StoredFile> newest = new LinkedHashMap<>();
        for (StoredFile file : bench.store().files(build)) {
            newest.remove(file.name());
            newest.put(file.name(), file);
        }
        List<StoredFile> sheetFiles = new ArrayList<>();
        List<StoredFile> others = new ArrayList<>();
        for (StoredFile file : newest.values()) {
            (isSheet(file) ? sheetFiles : others).add(0, file);
        }
        return new Attached(sheetFiles, others);
    }

    /** What was kept under a name, the newest first; each content once. */
    public List<StoredFile> versions(BuildId build, String name) {
        List<StoredFile> versions = new ArrayList<>();
        for (StoredFile file : bench.store().files(build)) {
            if (file.name().equals(name)) {
                versions.removeIf(one -> one.sha256().equals(file.sha256()));
                versions.add(0, file);
            }
        }
        return versions;
    }

    /** Files that are no sheets and that no sheet names; a sheet that cannot be read names nothing, and then nothing is said. */
    public List<StoredFile> unnamed(Attached attached) {
        List<DynoSheet> readable = attached.sheets().stream()
                .flatMap(file -> sheet(file).sheet().stream())
                .toList();
        if (readable.size() < attached.sheets().size() || readable.isEmpty()) {
            return List.of();
        }
        Set<StoredFile> named = readable.stream()
                .flatMap(sheet -> logs(sheet, attached).stream())
                .collect(Collectors.toSet());
        return attached.others().stream().filter(file -> !named.contains(file)).toList();
    }

    /** What the owner said of layouts of logs. */
    public Layouts layouts() {
        return layouts;
    }

    /**
     * A sheet's logs, none of them read yet.
     * @param sheet empty for a log that no sheet names
     * @param known layouts that were confirmed
     */
    public LogsOfASheet logsOf(Optional<DynoSheet> sheet, Attached attached, Map<String, Layouts.Layout> known) {
        return new LogsOfASheet(
                sheet,
                name -> attached.log(name)
                        .map(file -> LogSource.of(bench.store().content(file))),
                Runtime.getRuntime().availableProcessors(),
                fingerprint -> Layouts.told(known, fingerprint));
    }

    /** A sum over logs, which take much room: one at a time. */
    public <T> T inTurn(Supplier<T> sum) {
        return turns.in(sum);
    }

    /** What a sheet was read as. */
    public ReadDynoSheet sheet(StoredFile file) {
        return sheets.of(file);
    }

    /** What the runs of a sheet come to; empty where it has faults. */
    public Optional<Answer> of(StoredFile sheet, Attached attached) {
        return asked(sheet, attached).map(asked -> worked(answers, asked));
    }

    /** A sheet without logs is quick, and waits for none that has them. */
    private Answer worked(Lately<Asked, Answer> known, Asked asked) {
        return asked.logs().isEmpty()
                ? known.of(asked)
                : turns.of(known, asked, () -> true).orElseThrow();
    }

    /** What an owner has to know of a sheet's logs: which other sheets name the same, and which were sent anew after the sheet. */
    public List<String> ofItsLogs(BuildId build, StoredFile file, Attached attached) {
        List<StoredFile> own =
                sheet(file).sheet().map(sheet -> logs(sheet, attached)).orElse(List.of());
        List<String> said = new ArrayList<>();
        for (StoredFile other : attached.sheets()) {
            String both = other.equals(file)
                    ? ""
                    : sheet(other).sheet().map(sheet -> logs(sheet, attached)).orElse(List.of()).stream()
                            .filter(own::contains)
                            .map(StoredFile::name)
                            .collect(Collectors.joining(", "));
            if (!both.isEmpty()) {
                said.add(
                        "logs: " + other.name() + " names " + both
                                + " too, and both sheets are worked out with the same files. Do this: where other runs are meant, give their logs other names");
            }
        }
        String anew = own.stream()
                .filter(log -> log.attached().isAfter(file.attached())
                        && versions(build, log.name()).size() > 1)
                .map(StoredFile::name)
                .collect(Collectors.joining(", "));
        if (!anew.isEmpty()) {
            said.add(
                    "logs: " + anew
                            + " came anew under the same name after this sheet, with other rows; the newest counts. Do this: if that was not meant, send the runs that were meant under names of their own");
        }
        return said;
    }

    private Optional<Asked> asked(StoredFile file, Attached attached) {
        return sheet(file).sheet().map(sheet -> new Asked(file, logs(sheet, attached), layouts.all()));
    }

    private static List<StoredFile> logs(DynoSheet sheet, Attached attached) {
        return named(sheet).stream()
                .flatMap(name -> attached.log(name).stream())
                .distinct()
                .toList();
    }

    /** Files that a sheet names and that are not kept. */
    public List<String> lacking(StoredFile file, Attached attached) {
        return sheet(file)
                .sheet()
                .map(sheet -> named(sheet).stream()
                        .filter(name -> attached.log(name).isEmpty())
                        .toList())
                .orElse(List.of());
    }

    private static List<String> named(DynoSheet sheet) {
        Stream<String> ofRuns = sheet.sessions().stream()
                .flatMap(session -> session.pulls().stream())
                .filter(pull -> pull.evidence() instanceof DynoSheet.Log)
                .map(pull -> ((DynoSheet.Log) pull.evidence()).file());
        return Stream.concat(
                        ofRuns,
                        Stream.concat(
                                sheet.bench().coastDown().stream(),
                                sheet.bench().added().map(DynoSheet.Added::coastDown).stream()))
                .distinct()
                .toList();
    }

    private ReadDynoSheet read(StoredFile file) {
        return DynoSheetFile.read(bench.store().content(file));
    }

    private Answer answer(Asked asked) {
        DynoSheet sheet = sheet(asked.sheet()).sheet().orElseThrow();
        Answer answer = Dyno.of(sheet, logs(sheet, asked));
        if (states.size() >= MOST_STATES) {
            states.clear();
        }
        states.put(asked, answer.runs().map(Rail::decided).orElse(Rail.State.NEAR));
        return answer;
    }

    /** The question asked of what is left without free words. */
    private Answer answerShared(Asked asked) {
        DynoSheet sheet = sheet(asked.sheet()).sheet().orElseThrow();
        SharedRuns shared = SharedRuns.of(sheet);
        return Dyno.of(shared.sheet(), shared.logs(logs(sheet, asked)));
    }

    private Logs logs(DynoSheet sheet, Asked asked) {
        Attached there = new Attached(List.of(), asked.logs());
        return logsOf(Optional.of(sheet), there, asked.layouts());
    }

    // ---- for the Book

    /** Sheets of a build without free words, as far as they can be read; what they came to is {@link #ran}. */
    public List<SharedRuns> shared(BuildId build) {
        return of(build).sheets().stream()
                .flatMap(file -> sheet(file).sheet().stream())
                .map(SharedRuns::of)
                .toList();
    }

    /**
     * What every sheet of a build came to, as a Book has it; one that cannot be read comes last, with that said. Empty while one of them is not worked out.
     * @param isShared whether it is asked without free words
     * @param now      whether it is worked out where it is not known
     */
    public Optional<List<Answers.Ran>> ran(BuildId build, boolean isShared, boolean now) {
        Attached attached = of(build);
        Lately<Asked, Answer> known = isShared ? handedOn : answers;
        List<Answers.Ran> ran = new ArrayList<>();
        List<Answers.Ran> faulty = new ArrayList<>();
        for (StoredFile file : attached.sheets()) {
            Optional<Asked> asked = asked(file, attached);
            if (asked.isEmpty()) {
                faulty.add(new Answers.Ran(unreadable(file, isShared), isShared));
                continue;
            }
            boolean isQuick = asked.get().logs().isEmpty();
            Optional<Answer> answer =
                    now || isQuick ? Optional.of(worked(known, asked.get())) : known.ifKnown(asked.get());
            if (answer.isEmpty()) {
                return Optional.empty();
            }
            ran.add(new Answers.Ran(answer.get(), isShared));
        }
        ran.addAll(faulty);
        return Optional.of(ran);
    }

    private Answer unreadable(StoredFile file, boolean isShared) {
        int faults = sheet(file).faults().size();
        return new Answer(
                Dyno.QUESTION,
                "",
                false,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(new Finding(
                        Finding.Kind.WARNING,
                        isShared ? "its file" : file.name(),
                        faults + (faults == 1 ? " fault keeps" : " faults keep")
                                + " it from being read, so nothing of it stands in this Book",
                        "look at it on the page Dyno, mend it and send it again")),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    // ---- over what is predicted

    /**
     * What the sheets of a build come to.
     * @param files   of those that are worked out
     * @param answers of the same
     * @param waiting names of the sheets that have logs and are not worked out yet
     * @param faulty  names of those that cannot be read
     */
    public record Laid(List<String> files, List<Answer> answers, List<String> waiting, List<String> faulty) {
        public Laid {
            files = List.copyOf(files);
            answers = List.copyOf(answers);
            waiting = List.copyOf(waiting);
            faulty = List.copyOf(faulty);
        }
    }

    /**
     * What the sheets of a build come to, the oldest first.
     * @param now whether logs are read for those that are not worked out
     */
    public Laid laid(BuildId build, boolean now) {
        Attached attached = of(build);
        List<String> files = new ArrayList<>();
        List<Answer> told = new ArrayList<>();
        List<String> waiting = new ArrayList<>();
        List<String> faulty = new ArrayList<>();
        for (StoredFile file : attached.sheets()) {
            Optional<Asked> asked = asked(file, attached);
            if (asked.isEmpty()) {
                faulty.add(0, file.name());
                continue;
            }
            boolean isQuick = asked.get().logs().isEmpty();
            Optional<Answer> answer =
                    now || isQuick ? Optional.of(worked(answers, asked.get())) : answers.ifKnown(asked.get());
            if (answer.isPresent()) {
                files.add(0, file.name());
                told.add(0, answer.get());
            } else {
                waiting.add(0, file.name());
            }
        }
        return new Laid(files, told, waiting, faulty);
    }

    /** Of the sheets of a build the one that is answered least. Logs are not read for a rail: a sheet of them is worked out beside the requests, and is coming until then. */
    private Rail.State state(BuildId build) {
        try {
            Attached attached = of(build);
            if (attached.sheets().isEmpty()) {
                return Rail.State.UNKNOWN;
            }
            if (!waiting(attached).isEmpty()) {
                return Rail.State.COMING;
            }
            boolean isDecided = attached.sheets().stream().allMatch(sheet -> isDecided(sheet, attached));
            return isDecided ? Rail.State.ANSWERED : Rail.State.NEAR;
        } catch (StoreFault damaged) {
            return Rail.State.UNKNOWN; // what is broken stands on top of every page
        }
    }

    /** Sheets with logs that nobody asked for yet. */
    private List<Asked> waiting(Attached attached) {
        return attached.sheets().stream()
                .flatMap(sheet -> asked(sheet, attached).stream())
                .filter(asked -> !asked.logs().isEmpty() && !states.containsKey(asked))
                .toList();
    }

    /**
     * Works out the first sheet of a build that waits, beside the requests.
     * @return whether one did
     */
    boolean workAhead(BuildId build) {
        Optional<Asked> first = waiting(of(build)).stream().findFirst();
        first.ifPresent(asked -> {
            try {
                turns.of(answers, asked, () -> true);
            } catch (RuntimeException fault) { // its page says so when it is asked; the rail waits for it no longer
                states.put(asked, Rail.State.NEAR);
                LOG.warn("runs could not be worked ahead: {}", fault.toString());
            }
        });
        return first.isPresent();
    }

    private boolean isDecided(StoredFile sheet, Attached attached) {
        Optional<Asked> all = asked(sheet, attached);
        all.filter(asked -> asked.logs().isEmpty() && !states.containsKey(asked))
                .ifPresent(asked -> turns.of(answers, asked, () -> true));
        return all.map(states::get).filter(Rail.State.ANSWERED::equals).isPresent();
    }
}
