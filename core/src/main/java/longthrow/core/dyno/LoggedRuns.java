package longthrow.core.dyno;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Quantity;
import longthrow.core.recording.Channel;
import longthrow.core.recording.FaultKind;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RowFaults;
import longthrow.core.recording.Stretch;
import longthrow.core.recording.Stretches;
import longthrow.core.reduce.Reduced;
import longthrow.core.reduce.Remark;
import longthrow.core.reduce.RunCurve;

/** Runs that a logger wrote: rows with faults set aside out loud, pulls found in what is left, each brought to a curve. */
final class LoggedRuns {
    /** Faults of one kind in one file that are told one by one; the rest is counted. Layout. */
    private static final int MOST_TOLD = 5;

    /** Below this share of a pull's range of speeds a clutch may still be taking hold; judgement, no source. */
    private static final double TAKING_HOLD = 1.0 / 3;

    private final DynoSheet sheet;
    private final Logs logs;
    private final Optional<Measured> handedOn;
    private final Set<DefaultUsed> defaults;
    private final Map<DynoSheet.Log, DynoRuns.Log> told = new LinkedHashMap<>();
    private Optional<Clean> last = Optional.empty();
    private final Map<String, List<String>> said = new LinkedHashMap<>();
    private final Map<String, Remark.Weight> weights = new LinkedHashMap<>();
    private Optional<Benches> benches = Optional.empty();
    private Optional<RunCurve.Taken> taken = Optional.empty();

    /** Pulls of one log that are worked out: each comes to some 100 kB of figures and doubts; a day on a dynamometer has some dozens. Judgement. */
    private static final int MOST_PULLS = 500;

    /** A file with its faults. Rows are let go when the next is read. */
    private record Clean(
            DynoSheet.Log log, Logged logged, Optional<Recording> rows, List<RowFault> faults, Set<FaultKind> keeps) {}

    LoggedRuns(DynoSheet sheet, Logs logs, Optional<Measured> handedOn, Set<DefaultUsed> defaults) {
        this.sheet = sheet;
        this.logs = logs;
        this.handedOn = handedOn;
        this.defaults = defaults;
    }

    List<Reading.Ran> of(DynoSheet.Session session, DynoSheet.Pull pull, DynoSheet.Log log, String name) {
        try {
            return read(session, pull, log, name);
        } catch (
                RuntimeException
                        fault) { // one run must not take the others with it; what is known to go wrong is refused
            // before
            return List.of(untold(
                    session,
                    pull,
                    name,
                    log.file() + " could not be worked out by a fault of this program (" + fault
                            + "), not of the log: the other runs stand; please report it with the log"));
        }
    }

    private List<Reading.Ran> read(DynoSheet.Session session, DynoSheet.Pull pull, DynoSheet.Log log, String name) {
        Clean file = clean(log);
        if (file.rows.isEmpty()) {
            return List.of(untold(session, pull, name, file.logged.trouble()));
        }
        Recording rows = file.rows.get();
        if (isTable(rows)) {
            return List.of(table(session, pull, name, rows, log.file()));
        }
        if (rows.values(Channel.TIME).isEmpty()) {
            return List.of(untold(
                    session,
                    pull,
                    name,
                    "no pull is found in " + log.file()
                            + ": no column is known to be time; name it, or write at this run how many rows"
                            + " were written in a second, such as rate: 50 Hz"));
        }
        rateAgainstTime(log, file.logged.recording().orElse(rows), "run " + name + " of " + session.name());
        List<Stretch> stretches = Stretches.of(rows);
        List<Stretch> pulls =
                stretches.stream().filter(s -> s.kind() == Stretch.Kind.PULL).toList();
        List<Stretch> held =
                stretches.stream().filter(s -> s.kind() == Stretch.Kind.STEADY).toList();
        boolean onBrake =
                sheet.bench().kind() == BenchKind.BRAKE || sheet.bench().kind() == BenchKind.TABLE;
        if (onBrake && held.size() > pulls.size()) {
            return List.of(ran(session, pull, name, bench().steady(rows, held), false));
        }
        if (pulls.isEmpty()) {
            return List.of(untold(
                    session,
                    pull,
                    name,
                    "no pull is found in " + log.file()
                            + ": no stretch of a second or more in which speed rises by a fifth of its range;"
                            + " look whether time and speed are taken for what they are"));
        }
        if (pulls.size() > MOST_PULLS) {
            return List.of(untold(
                    session,
                    pull,
                    name,
                    log.file() + " holds " + pulls.size() + " pulls, and at most " + MOST_PULLS
                            + " of one log are worked out: none of them is. Cut it into one log for each session"));
        }
        List<Reading.Ran> ran = new ArrayList<>();
        for (int k = 0; k < pulls.size(); k++) {
            Stretch one = pulls.get(k);
            ran.add(ran(
                    session,
                    pull,
                    pulls.size() == 1 ? name : name + " #" + (k + 1),
                    bench().reduce(rows, one),
                    hasSlipped(file, rows, one)));
        }
        return ran;
    }

    private void rateAgainstTime(DynoSheet.Log log, Recording recording, String run) {
        log.rate().map(Quantity::si).ifPresent(told -> {
            double[] time = recording.values(Channel.TIME).orElse(new double[0]);
            double usual = RowFaults.usualStep(time);
            if (usual > 0 && Math.abs(usual * told - 1) > SAME_RATE) {
                say(
                        new Remark(
                                Remark.Weight.WARNING,
                                String.format(
                                        Locale.ROOT,
                                        "the sheet says that %s has %s rows a second, and its own time goes by %s s from"
                                                + " row to row, which is %s a second: its time is used, and rate: is not."
                                                + " Take rate: out, or say by columns: that the column is another",
                                        log.file(),
                                        shown(told),
                                        shown(usual),
                                        shown(1 / usual))),
                        run);
            }
        });
    }

    private static String shown(double figure) {
        return BigDecimal.valueOf(figure)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A rate that was told and that of the time column are the same within this share: loggers count time by whole milliseconds. Judgement. */
    private static final double SAME_RATE = 0.05;

    private boolean isTable(Recording recording) {
        return sheet.bench().kind() == BenchKind.TABLE
                && recording.values(Channel.TIME).isEmpty();
    }

    private Reading.Ran table(
            DynoSheet.Session session, DynoSheet.Pull pull, String name, Recording rows, String file) {
        LoggedTable table = LoggedTable.of(rows, file);
        table.remarks().forEach(r -> say(r, "run " + name + " of " + session.name()));
        return new Reading.Ran(
                session,
                pull,
                name,
                table.table().map(t -> new TableFigures(t, handedOn)),
                pull.aside(),
                false,
                table.trouble());
    }

    private Reading.Ran untold(DynoSheet.Session session, DynoSheet.Pull pull, String name, String why) {
        return new Reading.Ran(session, pull, name, Optional.empty(), pull.aside(), false, why);
    }

    private Reading.Ran ran(
            DynoSheet.Session session, DynoSheet.Pull pull, String name, Reduced reduced, boolean slipped) {
        String run = "run " + name + " of " + session.name();
        String why = "";
        for (Remark remark : reduced.remarks()) {
            if (remark.weight() == Remark.Weight.NO_CURVE) {
                why = remark.text();
            } else {
                say(remark, run);
            }
        }
        reduced.curve().ifPresent(c -> {
            taken = Optional.of(c.taken());
            if (c.fuelFlow().isPresent()) {
                defaults.add(CurveFigures.fuelMeter());
            }
        });
        return new Reading.Ran(session, pull, name, reduced.curve().map(CurveFigures::new), pull.aside(), slipped, why);
    }

    private void say(Remark remark, String where) {
        said.computeIfAbsent(remark.text(), t -> new ArrayList<>()).add(where);
        weights.put(remark.text(), remark.weight());
    }

    /** Where torque is told; empty where no log was brought to a curve. */
    Optional<RunCurve.Taken> taken() {
        return taken;
    }

    /** What is to be said of runs and bench, each once with the runs that it is of. */
    List<Finding> findings() {
        benches.ifPresent(b -> b.remarks().forEach(r -> say(r, "bench")));
        List<Finding> findings = new ArrayList<>();
        said.forEach((text, where) -> findings.add(new Finding(
                weights.get(text) == Remark.Weight.WARNING ? Finding.Kind.WARNING : Finding.Kind.NOTE,
                where.size() == 1 ? where.get(0) : where.get(0) + " and " + (where.size() - 1) + " more",
                text,
                "")));
        return findings;
    }

    /** Each file as it was recognised, with the rows that were set aside. */
    List<DynoRuns.Log> told() {
        return List.copyOf(told.values());
    }

    private static DynoRuns.Log told(Clean file) {
        DynoRuns.Log log = file.logged.told();
        List<String> listed = new ArrayList<>(log.listed());
        file.logged.recording().ifPresent(recording -> {
            Map<FaultKind, Integer> counts = new LinkedHashMap<>();
            for (RowFault fault : file.faults) {
                int count = counts.merge(fault.kind(), 1, Integer::sum);
                if (count <= MOST_TOLD) {
                    listed.add(fault.told(recording, file.keeps));
                }
            }
            counts.forEach((kind, count) -> {
                if (count > MOST_TOLD) {
                    listed.add(String.format(Locale.ROOT, "and %d more of %s", count - MOST_TOLD, kind.label()));
                }
            });
        });
        return new DynoRuns.Log(log.file(), log.rows(), log.kept(), log.columns(), listed);
    }

    private Clean clean(DynoSheet.Log log) {
        if (last.isPresent() && last.get().log.equals(log)) {
            return last.get();
        }
        last = Optional.empty(); // before the next is read
        Logged logged = logs.of(log);
        List<RowFault> faults = logged.recording()
                .filter(r -> !isTable(r)) // lines of a table do not follow each other in time
                .map(RowFaults::of)
                .orElse(List.of());
        Set<FaultKind> keeps = log.keep();
        Set<RowFault> kept = new HashSet<>();
        faults.stream().filter(f -> keeps.contains(f.kind())).forEach(kept::add);
        Optional<Recording> rows = logged.recording()
                .map(r -> faults.isEmpty() ? r : r.only(RowFaults.rowsKept(r, faults, kept, Set.of())));
        Clean made = new Clean(log, logged, rows, faults, keeps);
        told.putIfAbsent(log, told(made));
        last = Optional.of(made);
        return made;
    }

    private boolean hasSlipped(Clean file, Recording rows, Stretch pull) {
        double from = pull.startSpeed() + TAKING_HOLD * (pull.endSpeed() - pull.startSpeed());
        Optional<double[]> speed = rows.values(Channel.DRUM_SPEED).or(() -> rows.values(Channel.ENGINE_SPEED));
        if (speed.isEmpty()) {
            return false;
        }
        int row = pull.from();
        while (row < pull.to() && !(speed.get()[row] >= from)) {
            row++;
        }
        int first = rows.lines().lineOf(row);
        int last = rows.lines().lineOf(pull.to());
        Recording whole = file.logged.recording().orElseThrow();
        return file.faults.stream()
                .filter(f -> f.kind() == FaultKind.CLUTCH_SLIP)
                .anyMatch(f ->
                        whole.lines().lineOf(f.to()) >= first && whole.lines().lineOf(f.from()) <= last);
    }

    private Optional<Recording> runDown(String file) {
        return clean(new DynoSheet.Log(file, Map.of(), Optional.empty(), Set.of()))
                .rows();
    }

    private Benches bench() {
        if (benches.isEmpty()) {
            benches = Optional.of(new Benches(
                    sheet.bench(),
                    sheet.bench().coastDown().flatMap(this::runDown),
                    sheet.bench().added().flatMap(a -> runDown(a.coastDown())),
                    defaults));
        }
        return benches.get();
    }
}
