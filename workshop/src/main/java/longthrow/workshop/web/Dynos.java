package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.store.StoredFile;

/**
 * Sheets of runs and loggers' files that are attached to builds, and what they come to: each worked out once for a sheet and the files that it names, of late. The
 * newest of a name counts.
 */
public final class Dynos {
    /** Of files that are sheets. */
    public static final String SHEET = "application/yaml";

    /** Answers hold curves, not rows; our own choice. */
    private static final int MOST_REMEMBERED = 32;

    private final Workbench bench;
    private final Lately<StoredFile, ReadDynoSheet> sheets = new Lately<>(MOST_REMEMBERED, this::read);
    private final Lately<Asked, Answer> answers = new Lately<>(MOST_REMEMBERED, this::answer);
    private final Turns turns = new Turns(1);

    /** All that an answer hangs on. */
    private record Asked(StoredFile sheet, List<StoredFile> logs) {}

    /** None worked out yet; from now on the rail says how far runs are answered. */
    public Dynos(Workbench bench) {
        this.bench = bench;
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

    /** What a sheet was read as. */
    public ReadDynoSheet sheet(StoredFile file) {
        return sheets.of(file);
    }

    /** What the runs of a sheet come to; empty where it has faults. */
    public Optional<Answer> of(StoredFile sheet, Attached attached) {
        return asked(sheet, attached)
                .map(asked -> turns.of(answers, asked, () -> true).orElseThrow());
    }

    private Optional<Asked> asked(StoredFile file, Attached attached) {
        return sheet(file).sheet().map(sheet -> new Asked(file, logs(sheet, attached)));
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
        Attached there = new Attached(List.of(), asked.logs());
        LogsOfASheet logs = new LogsOfASheet(
                sheet,
                name -> there.log(name).map(file -> LogSource.of(bench.store().content(file))),
                Runtime.getRuntime().availableProcessors());
        return Dyno.of(sheet, logs);
    }

    /** Of the sheets of a build the one that is answered least. Logs are not read for a rail: until its page was opened, a sheet of them is near. */
    private Rail.State state(BuildId build) {
        try {
            Attached attached = of(build);
            if (attached.sheets().isEmpty()) {
                return Rail.State.UNKNOWN;
            }
            boolean isDecided = attached.sheets().stream().allMatch(sheet -> isDecided(sheet, attached));
            return isDecided ? Rail.State.ANSWERED : Rail.State.NEAR;
        } catch (StoreFault damaged) {
            return Rail.State.UNKNOWN; // what is broken stands on top of every page
        }
    }

    private boolean isDecided(StoredFile sheet, Attached attached) {
        return asked(sheet, attached)
                .flatMap(
                        asked -> asked.logs().isEmpty() ? turns.of(answers, asked, () -> true) : answers.ifKnown(asked))
                .flatMap(Answer::runs)
                .filter(runs -> Rail.decided(runs) == Rail.State.ANSWERED)
                .isPresent();
    }
}
