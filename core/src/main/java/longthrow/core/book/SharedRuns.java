package longthrow.core.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logged;
import longthrow.core.dyno.Logs;

/**
 * A sheet of runs as it may be handed on: without any free words. Sessions, setups and dynamometers are numbered; figures, the standard, the order of runs
 * and days written as a date stay, so the question is asked of what is left, and no answer can say what was taken out.
 * @param sheet   without words
 * @param leftOut what was taken out, by its place; never its content
 * @param files   names of loggers' files by what stands for them in the sheet
 */
public record SharedRuns(DynoSheet sheet, List<String> leftOut, Map<String, String> files) {
    /** Stands for a title. */
    private static final String NO_NAME = "Runs, name left out";

    /** Stands for why a run was set aside. */
    private static final String NO_REASON = "why is left out";

    private static final String BASELINE = " (the baseline)";

    /** What stays and tells something of a place, where the air was read. */
    private static final String TELLS_THE_WEATHER =
            "highest torque and power of runs, corrected, and what is said of air beyond a standard's limits, can tell how high the place lies";

    public SharedRuns {
        leftOut = List.copyOf(leftOut);
        files = Map.copyOf(files);
    }

    /** Takes out every free word. */
    public static SharedRuns of(DynoSheet sheet) {
        return new Taking(sheet).shared();
    }

    /** What stays though it may tell of a place, to be looked at before it is sent. */
    public List<String> lookAgain() {
        return sheet.sessions().stream().anyMatch(s -> s.air().isKnown()) ? List.of(TELLS_THE_WEATHER) : List.of();
    }

    /**
     * The same files under the names that stand in this sheet.
     * @param own under the names in the owner's sheet
     */
    public Logs logs(Logs own) {
        return log -> {
            Logged logged = own.of(new DynoSheet.Log(
                    files.getOrDefault(log.file(), log.file()), log.columns(), log.rate(), log.keep()));
            // what a logger calls its columns, and what stands where it cannot be read, may be anybody's words
            return logged.recording()
                    .map(recording -> new Logged(
                            Optional.of(recording),
                            new longthrow.core.answer.DynoRuns.Log(
                                    log.file(),
                                    logged.told().rows(),
                                    logged.told().kept(),
                                    List.of(),
                                    List.of()),
                            ""))
                    .orElseGet(() -> Logged.refused(log.file(), "its log cannot be read"));
        };
    }

    /** What is taken out, counted by place. */
    private static final class Taking {
        private final DynoSheet from;
        private final Map<String, Integer> taken = new TreeMap<>();
        private final Map<String, String> setups = new LinkedHashMap<>();
        private final Map<String, String> dynos = new LinkedHashMap<>();
        private final Map<String, String> files = new LinkedHashMap<>();

        Taking(DynoSheet from) {
            this.from = from;
            dynos.put(from.bench().name(), "");
            dynos.putIfAbsent("", "");
            String baseline = from.baseline()
                    .or(() -> from.sessions().stream()
                            .filter(s -> !s.check())
                            .map(DynoSheet.Session::setup)
                            .findFirst())
                    .orElse("");
            for (DynoSheet.Session session : from.sessions()) {
                setups.computeIfAbsent(
                        session.setup(),
                        own -> "setup " + (setups.size() + 1) + (own.equals(baseline) ? BASELINE : ""));
                dynos.computeIfAbsent(
                        session.dyno(),
                        own -> "dynamometer "
                                + (1 + dynos.values().stream().distinct().count()));
            }
            setups.computeIfAbsent(baseline, own -> "setup " + (setups.size() + 1) + BASELINE);
        }

        private String out(String where, String words, String instead) {
            if (!words.isEmpty() && !words.equals(instead)) {
                taken.merge("runs: " + where, 1, Integer::sum);
            }
            return words.isEmpty() ? words : instead;
        }

        SharedRuns shared() {
            from.notes().forEach(n -> out("notes", n, ""));
            from.engine().ifPresent(e -> out("engine", e, ""));
            List<DynoSheet.Session> sessions = new ArrayList<>();
            for (DynoSheet.Session session : from.sessions()) {
                sessions.add(session(session, sessions.size() + 1));
            }
            DynoSheet.Bench own = from.bench();
            DynoSheet sheet = new DynoSheet(
                    out("name", from.name(), NO_NAME),
                    from.invented(),
                    from.units(),
                    List.of(),
                    Optional.empty(),
                    from.standard(),
                    new DynoSheet.Bench(
                            own.kind(),
                            out("bench.name", own.name(), ""),
                            own.figures(),
                            own.calibration(),
                            own.coastDown().map(this::file),
                            own.falls(),
                            own.added()
                                    .map(disc -> new DynoSheet.Added(
                                            disc.inertia(),
                                            disc.mass(),
                                            disc.diameter(),
                                            disc.bore(),
                                            file(disc.coastDown())))),
                    from.baseline().map(word -> setups.getOrDefault(word, word)),
                    from.from(),
                    from.to(),
                    sessions);
            List<String> list = new ArrayList<>();
            taken.forEach((where, times) -> list.add(times == 1 ? where : where + ", " + times + " times"));
            return new SharedRuns(sheet, list, files);
        }

        private DynoSheet.Session session(DynoSheet.Session session, int number) {
            boolean isPlainDate = session.date().matches("[0-9]{4}-[0-9]{2}-[0-9]{2}");
            return new DynoSheet.Session(
                    out("names of sessions", session.name(), "S" + number),
                    out("names of setups", session.setup(), setups.getOrDefault(session.setup(), "")),
                    isPlainDate ? session.date() : out("dates in words", session.date(), ""),
                    out("who", session.who(), ""),
                    out("dyno", session.dyno(), dynos.getOrDefault(session.dyno(), "")),
                    session.check(),
                    session.air(),
                    session.pulls().stream().map(this::pull).toList());
        }

        private DynoSheet.Pull pull(DynoSheet.Pull pull) {
            DynoSheet.Evidence evidence = pull.evidence() instanceof DynoSheet.Log log
                    ? new DynoSheet.Log(file(log.file()), log.columns(), log.rate(), log.keep())
                    : pull.evidence();
            return new DynoSheet.Pull(
                    out("names of runs", pull.name(), ""), evidence, out("aside", pull.aside(), NO_REASON), pull.air());
        }

        private String file(String name) {
            String instead = files.entrySet().stream()
                    .filter(e -> e.getValue().equals(name))
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElseGet(() -> "log " + (files.size() + 1));
            files.put(instead, name);
            return out("names of logs", name, instead);
        }
    }
}
