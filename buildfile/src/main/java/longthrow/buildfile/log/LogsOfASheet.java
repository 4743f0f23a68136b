package longthrow.buildfile.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.DynoRuns;
import longthrow.core.dyno.BenchKind;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logged;
import longthrow.core.dyno.Logs;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;

/**
 * The loggers' files of one sheet of runs. What its owner says of the columns of one file counts for all files of that layout in the sheet. Not for several threads.
 */
public final class LogsOfASheet implements Logs {
    /** Lines that are no rows and cells that are no figures, told one by one; the rest is counted. Layout. */
    private static final int MOST_TOLD = 8;

    private final Function<String, Optional<LogSource>> files;
    private final int threads;
    private final boolean isTable;
    private final Function<String, Optional<Confirmed>> confirmed;
    private final Map<String, LogTold> remembered = new HashMap<>();
    private final Map<String, String> asked = new HashMap<>(); // by fingerprint, the file that was asked about

    /**
     * Nothing is read yet but the layout of files of which something is said.
     * @param files   bytes by name; empty where there is no such file
     * @param threads that may read one file
     */
    public LogsOfASheet(DynoSheet sheet, Function<String, Optional<LogSource>> files, int threads) {
        this(Optional.of(sheet), files, threads, fingerprint -> Optional.empty());
    }

    /**
     * The same where something was said of layouts before.
     * @param sheet     empty for logs that no sheet names
     * @param confirmed what was, by the layout's fingerprint; what the sheet itself says goes before it
     */
    public LogsOfASheet(
            Optional<DynoSheet> sheet,
            Function<String, Optional<LogSource>> files,
            int threads,
            Function<String, Optional<Confirmed>> confirmed) {
        this.files = files;
        this.threads = threads;
        this.confirmed = confirmed;
        this.isTable = sheet.filter(s -> s.bench().kind() == BenchKind.TABLE).isPresent();
        for (DynoSheet.Session session : sheet.map(DynoSheet::sessions).orElse(List.of())) {
            for (DynoSheet.Pull pull : session.pulls()) {
                if (pull.evidence() instanceof DynoSheet.Log log
                        && (!log.columns().isEmpty() || log.rate().isPresent())) {
                    remember(log);
                }
            }
        }
    }

    /**
     * What an owner said of a layout when he saw another log of it.
     * @param told  what
     * @param words when and for which log, as they are told beside it
     */
    public record Confirmed(LogTold told, String words) {}

    private void remember(DynoSheet.Log log) {
        files.apply(log.file())
                .map(source -> LogFile.open(source, LogTold.NOTHING))
                .filter(LogFile.class::isInstance)
                .map(LogFile.class::cast)
                .ifPresent(file -> told(log, file.layout())
                        .told
                        .ifPresent(t -> remembered.merge(file.layout().fingerprint(), t, LogTold::and)));
    }

    @Override
    public Logged of(DynoSheet.Log log) {
        Optional<LogSource> source = files.apply(log.file());
        if (source.isEmpty()) {
            return Logged.refused(log.file(), "there is no file " + log.file() + " beside the sheet");
        }
        LogOpened opened = LogFile.open(source.get(), LogTold.NOTHING);
        if (opened instanceof LogRefusal refusal) {
            return refused(log, refusal);
        }
        LogFile file = (LogFile) opened;
        Said said = told(log, file.layout());
        if (!said.trouble.isEmpty()) {
            return Logged.refused(log.file(), said.trouble);
        }
        Optional<LogTold> ofLayout =
                Optional.ofNullable(remembered.get(file.layout().fingerprint()));
        Optional<LogTold> inSheet =
                said.told.map(own -> ofLayout.map(own::and).orElse(own)).or(() -> ofLayout);
        Optional<Confirmed> before = inSheet.isPresent()
                ? Optional.empty()
                : confirmed.apply(file.layout().fingerprint());
        Optional<LogTold> told = inSheet.or(() -> before.map(Confirmed::told));
        String note = before.map(c -> "columns taken " + c.words()).orElse("");
        if (told.isPresent()) {
            LogOpened again = LogFile.open(source.get(), told.get());
            if (again instanceof LogRefusal refusal) {
                return refused(log, refusal);
            }
            return read(log, (LogFile) again, note);
        }
        return read(log, file, note);
    }

    private static Logged refused(DynoSheet.Log log, LogRefusal refusal) {
        return Logged.refused(
                log.file(),
                log.file() + ": " + refusal.found() + "; allowed: " + refusal.allowed() + "; mend: " + refusal.mend());
    }

    private Logged read(DynoSheet.Log log, LogFile file, String note) {
        LogFile.Outcome outcome = file.read(threads);
        if (outcome instanceof LogFile.Refused refused) {
            return refused(log, refused.refusal());
        }
        LogRead read = ((LogFile.Done) outcome).read();
        return new Logged(Optional.of(read.recording()), laidOut(log, read, note), "");
    }

    // ---- what the owner says

    /** What was said of a file, or why it cannot be. */
    private record Said(Optional<LogTold> told, String trouble) {}

    private static Said told(DynoSheet.Log log, LogLayout layout) {
        if (log.columns().isEmpty() && log.rate().isEmpty()) {
            return new Said(Optional.empty(), "");
        }
        Map<Integer, LogTold.Column> columns = new LinkedHashMap<>();
        for (Map.Entry<String, String> one : log.columns().entrySet()) {
            Optional<Integer> at = at(one.getKey(), layout);
            if (at.isEmpty()) {
                return new Said(
                        Optional.empty(),
                        log.file() + ": 'columns' names '" + one.getKey() + "', which no column is called; there are "
                                + layout.columns().stream()
                                        .map(LogLayout.Column::header)
                                        .collect(Collectors.joining(", "))
                                + ", or numbers from 1 to " + layout.columns().size());
            }
            Optional<LogTold.Column> meant =
                    meant(one.getValue(), layout.columns().get(at.get()));
            if (meant.isEmpty()) {
                return new Said(
                        Optional.empty(),
                        log.file() + ": '" + one.getValue() + "' is no meaning of a column with its unit; write one of "
                                + java.util.Arrays.stream(Channel.values())
                                        .map(Channel::key)
                                        .collect(Collectors.joining(", "))
                                + " and a unit behind it, such as 'engine_speed rpm'");
            }
            columns.put(at.get(), meant.get());
        }
        double rate = log.rate().map(r -> r.si()).orElse(0.0);
        return new Said(Optional.of(new LogTold((char) 0, rate, Optional.empty(), columns)), "");
    }

    private static Optional<Integer> at(String name, LogLayout layout) {
        for (int i = 0; i < layout.columns().size(); i++) {
            if (layout.columns().get(i).header().strip().equalsIgnoreCase(name.strip())) {
                return Optional.of(i);
            }
        }
        boolean isNumber = name.strip().matches("[1-9][0-9]{0,3}");
        return isNumber && Integer.parseInt(name.strip()) <= layout.columns().size()
                ? Optional.of(Integer.parseInt(name.strip()) - 1)
                : Optional.empty();
    }

    private static Optional<LogTold.Column> meant(String words, LogLayout.Column column) {
        int space = words.indexOf(' ');
        String key = space < 0 ? words : words.substring(0, space);
        Optional<Channel> channel = Channel.ofKey(key);
        if (channel.isEmpty()) {
            return Optional.empty();
        }
        if (space < 0) {
            Optional<Unit> unit =
                    column.unit().filter(u -> u.dimension() == channel.get().dimension());
            return Optional.of(new LogTold.Column(channel.get(), unit));
        }
        return longthrow.core.recording.LoggedUnits.find(
                        channel.get().dimension(), words.substring(space + 1).strip())
                .map(unit -> new LogTold.Column(channel.get(), Optional.of(unit)));
    }

    // ---- laid out

    /** What is asked, once for all files of a layout, and how to answer. */
    private List<String> asked(String file, LogLayout layout) {
        List<LogLayout.Question> questions = layout.questions().stream()
                .filter(q -> !(isTable && q.about() == LogLayout.About.RATE)) // lines of a table need no time
                .toList();
        if (questions.isEmpty()) {
            return List.of();
        }
        String first = asked.putIfAbsent(layout.fingerprint(), file);
        if (first != null && !first.equals(file)) {
            return List.of("what is asked of " + first
                    + " is asked of this file too, which is laid out alike: one answer" + " counts for both");
        }
        return questions.stream()
                .map(q -> "asked: " + q.text() + " " + Answering.of(q, layout))
                .toList();
    }

    private DynoRuns.Log laidOut(DynoSheet.Log log, LogRead read, String note) {
        Recording recording = read.recording();
        List<DynoRuns.Column> columns = new ArrayList<>();
        for (int i = 0; i < recording.columns().size(); i++) {
            Recording.Column column = recording.columns().get(i);
            columns.add(new DynoRuns.Column(
                    column.header().isEmpty() ? "column " + (i + 1) : column.header(),
                    column.channel().label(),
                    column.unit().map(Unit::symbol).orElse(""),
                    column.sureness().name().toLowerCase(Locale.ROOT) + ": " + column.why()));
        }
        List<String> listed = new ArrayList<>(read.notes());
        if (!note.isEmpty()) {
            listed.add(0, note);
        }
        listed.addAll(asked(log.file(), read.layout()));
        ListedLines lines = read.listed();
        int told = 0;
        for (int k = 0; k < lines.size() && told < MOST_TOLD; k++) {
            if (lines.why(k).isFault()) {
                listed.add("line " + lines.line(k) + " is no row: it "
                        + lines.why(k).words());
                told++;
            }
        }
        for (Why why : Why.values()) {
            int count = lines.count(why);
            if (count > 0) {
                listed.add(why.words(count));
            }
        }
        read.badCells().stream()
                .limit(MOST_TOLD)
                .forEach(c -> listed.add("line " + c.line() + ", column " + (c.column() + 1)
                        + ": no figure; the row says nothing there"));
        if (read.badCellsInAll() > MOST_TOLD) {
            listed.add("and " + (read.badCellsInAll() - MOST_TOLD) + " more cells that hold no figure");
        }
        for (int i = 0; i < recording.columns().size(); i++) {
            int silent = 0;
            for (double figure : recording.values(i)) {
                silent += Double.isNaN(figure) ? 1 : 0;
            }
            if (silent > 0) {
                listed.add(columns.get(i).header() + ": " + silent + " of " + recording.rows()
                        + (silent == 1 ? " rows says" : " rows say") + " nothing there");
            }
        }
        return new DynoRuns.Log(log.file(), read.lines(), recording.rows(), columns, listed);
    }
}
