package longthrow.workshop.web.dyno;

import java.lang.ref.SoftReference;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.buildfile.log.LogFile;
import longthrow.buildfile.log.LogLayout;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogTold;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logged;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RowFaults;
import longthrow.core.recording.RowLines;
import longthrow.core.recording.RunningTime;
import longthrow.core.recording.Stretch;
import longthrow.core.recording.Stretches;
import longthrow.workshop.draw.LogChart;
import longthrow.workshop.store.StoredFile;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Layouts.Layout;

/** Logs as their rows are looked at: the last few that were, as long as there is room for them, so that the next look at one is quick. */
final class LogViews {
    /** A log of an hour at 1 kHz takes some 200 MB; our own choice. */
    private static final int MOST = 2;

    private final Dynos dynos;
    private final Map<Asked, SoftReference<Seen>> known = new LinkedHashMap<>(); // guarded by itself

    /** All that a view hangs on. */
    private record Asked(Optional<StoredFile> sheet, StoredFile log, Map<String, Layout> layouts) {}

    /**
     * A log with its rows.
     * @param layout    as it is recognised by itself; empty where it is no log
     * @param logged    what became of it
     * @param log       to be drawn; empty where it could not be read
     * @param isSaid    whether the sheet says what its columns mean, or how many rows it has a second
     * @param confirmed what was confirmed of its layout
     */
    record Seen(
            Optional<LogLayout> layout,
            Logged logged,
            Optional<LogChart.Log> log,
            boolean isSaid,
            Optional<Layout> confirmed) {}

    LogViews(Dynos dynos) {
        this.dynos = dynos;
    }

    /**
     * A log that is kept.
     * @param sheet that is looked at
     * @param log   the file
     * @param bytes of it
     */
    Seen of(
            Optional<StoredFile> sheet,
            StoredFile log,
            Dynos.Attached attached,
            java.util.function.Supplier<byte[]> bytes) {
        Asked asked = new Asked(sheet, log, dynos.layouts().all());
        return remembered(asked)
                .orElseGet(() -> dynos.inTurn(() ->
                        remembered(asked).orElseGet(() -> remember(asked, read(asked, attached, bytes.get())))));
    }

    private Optional<Seen> remembered(Asked asked) {
        synchronized (known) {
            return Optional.ofNullable(known.get(asked)).map(SoftReference::get);
        }
    }

    private Seen remember(Asked asked, Seen seen) {
        synchronized (known) {
            known.remove(asked);
            known.put(asked, new SoftReference<>(seen));
            if (known.size() > MOST) {
                known.remove(known.keySet().iterator().next());
            }
        }
        return seen;
    }

    private Seen read(Asked asked, Dynos.Attached attached, byte[] bytes) {
        Optional<DynoSheet> sheet =
                asked.sheet().flatMap(file -> dynos.sheet(file).sheet());
        DynoSheet.Log named = sheet.flatMap(one -> named(one, asked.log(), attached))
                .orElseGet(() -> new DynoSheet.Log(asked.log().name(), Map.of(), Optional.empty(), Set.of()));
        Optional<LogLayout> layout = LogFile.open(LogSource.of(bytes), LogTold.NOTHING) instanceof LogFile file
                ? Optional.of(file.layout())
                : Optional.empty();
        Dynos.Attached alone = new Dynos.Attached(List.of(), attached.others());
        Logged logged = dynos.logsOf(sheet, alone, asked.layouts()).of(named);
        return new Seen(
                layout,
                logged,
                logged.recording().map(rows -> log(asked.log().name(), rows, named)),
                !named.columns().isEmpty() || named.rate().isPresent(),
                layout.flatMap(l -> Optional.ofNullable(asked.layouts().get(l.fingerprint()))));
    }

    /** As the first run that has it names it. */
    private static Optional<DynoSheet.Log> named(DynoSheet sheet, StoredFile file, Dynos.Attached attached) {
        return sheet.sessions().stream()
                .flatMap(session -> session.pulls().stream())
                .filter(pull -> pull.evidence() instanceof DynoSheet.Log)
                .map(pull -> (DynoSheet.Log) pull.evidence())
                .filter(log -> attached.log(log.file()).filter(file::equals).isPresent())
                .findFirst();
    }

    private static LogChart.Log log(String name, Recording rows, DynoSheet.Log named) {
        List<RowFault> faults = RowFaults.of(rows);
        Set<RowFault> kept = new HashSet<>();
        faults.stream().filter(f -> named.keep().contains(f.kind())).forEach(kept::add);
        Recording left = faults.isEmpty() ? rows : rows.only(RowFaults.rowsKept(rows, faults, kept, Set.of()));
        List<LogChart.Run> runs = new ArrayList<>();
        int pulls = 0;
        for (Stretch one : Stretches.of(left)) {
            String what = switch (one.kind()) {
                case PULL -> "pull " + ++pulls;
                case COAST -> "runs out";
                case STEADY -> "held";
            };
            runs.add(new LogChart.Run(
                    what,
                    rowOf(rows.lines(), left.lines().lineOf(one.from())),
                    rowOf(rows.lines(), left.lines().lineOf(one.to()))));
        }
        return new LogChart.Log(name, rows, RunningTime.of(rows, faults), faults, named.keep(), runs);
    }

    /** The row that stands in a line. */
    private static int rowOf(RowLines lines, int line) {
        int low = 0;
        int high = lines.rows() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (lines.lineOf(middle) < line) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
