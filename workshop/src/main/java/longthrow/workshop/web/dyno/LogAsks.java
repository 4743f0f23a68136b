package longthrow.workshop.web.dyno;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import longthrow.buildfile.log.LogLayout;
import longthrow.buildfile.log.LogTold;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;
import longthrow.core.recording.LoggedUnits;
import longthrow.workshop.web.dyno.LogViews.Seen;

/**
 * What the owner is asked of a log's columns, once for all logs of its layout.
 * @param fingerprint of the layout; empty where nothing can be asked
 * @param standing    what is said of it by now, in words
 * @param isKept      whether something was confirmed, which can be forgotten
 * @param isWeak      whether other layouts may be taken for it
 * @param asksMark    whether it is asked what marks decimals
 * @param asksRate    whether there is no time in it
 * @param rate        rows a second, as said before
 * @param meanings    that a column can have
 * @param units       that a column can be in
 */
public record LogAsks(
        String fingerprint,
        String standing,
        boolean isKept,
        boolean isWeak,
        boolean asksMark,
        boolean asksRate,
        String rate,
        List<Column> columns,
        List<Meaning> meanings,
        List<String> units) {
    /** Columns that a form can ask for; of more the sheet says it. Layout. */
    private static final int MOST = 40;

    /** Beside the marks that stand for no unit. */
    private static final String BARE = "none";

    public LogAsks {
        columns = List.copyOf(columns);
        meanings = List.copyOf(meanings);
        units = List.copyOf(units);
    }

    /** A meaning by its key. */
    public record Meaning(String key, String label) {}

    /**
     * A column.
     * @param name    as it stands there, or its number
     * @param channel key of what it is taken for
     * @param unit    that it is taken in; empty where none is known
     */
    public record Column(String name, String channel, String unit) {}

    static LogAsks of(Seen seen) {
        Optional<LogLayout> found = seen.layout().filter(l -> l.columns().size() <= MOST);
        if (found.isEmpty()) {
            return new LogAsks("", "", false, false, false, false, "", List.of(), List.of(), List.of());
        }
        LogLayout layout = found.get();
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < layout.columns().size(); i++) {
            LogLayout.Column one = layout.columns().get(i);
            int at = i;
            Optional<LogTold.Column> told = seen.confirmed()
                    .flatMap(c -> Optional.ofNullable(c.told().columns().get(at)));
            Channel channel = told.map(LogTold.Column::channel).orElse(one.channel());
            Optional<Unit> unit = told.isPresent() ? told.get().unit() : one.unit();
            columns.add(new Column(
                    one.header().isEmpty() ? "column " + (i + 1) : one.header(),
                    channel.key(),
                    unit.map(Unit::symbol).orElse("")));
        }
        String standing = seen.isSaid()
                ? "The sheet says what these columns mean, and its word goes first."
                : seen.confirmed()
                        .map(c -> "They are taken " + c.words() + ".")
                        .orElse("Nobody has said what they mean: they are taken as they were recognised.");
        return new LogAsks(
                layout.fingerprint(),
                standing,
                seen.confirmed().isPresent(),
                layout.isFingerprintWeak(),
                asks(layout, LogLayout.About.MARK),
                asks(layout, LogLayout.About.RATE),
                seen.confirmed()
                        .map(c -> c.told().rateHertz())
                        .filter(r -> r > 0)
                        .map(String::valueOf)
                        .orElse(""),
                columns,
                Arrays.stream(Channel.values())
                        .map(c -> new Meaning(c.key(), c.label()))
                        .toList(),
                Arrays.stream(Channel.values())
                        .flatMap(c -> c.units().stream())
                        .map(Unit::symbol)
                        .filter(u -> !u.isEmpty())
                        .distinct()
                        .toList());
    }

    private static boolean asks(LogLayout layout, LogLayout.About about) {
        return layout.questions().stream().anyMatch(q -> q.about() == about);
    }

    /** What a form says, or why it cannot be. */
    record Answered(Optional<LogTold> told, String trouble) {}

    /**
     * Reads a form.
     * @param fields by their names, as the template has them
     */
    static Answered read(LogLayout layout, java.util.function.Function<String, String> fields) {
        TreeMap<Integer, LogTold.Column> columns = new TreeMap<>();
        for (int i = 0; i < layout.columns().size(); i++) {
            LogLayout.Column one = layout.columns().get(i);
            String name = one.header().isEmpty() ? "column " + (i + 1) : one.header();
            Optional<Channel> channel = Channel.ofKey(fields.apply("c" + i));
            if (channel.isEmpty()) {
                return new Answered(Optional.empty(), "Of " + name + " it is not said what it means");
            }
            boolean hasUnit = channel.get() != Channel.UNKNOWN && channel.get() != Channel.MARKER;
            String unit = fields.apply("u" + i);
            Optional<Unit> found = hasUnit
                    ? LoggedUnits.find(channel.get().dimension(), unit.equals(BARE) ? "" : unit)
                            .or(() -> unit.isEmpty() || unit.equals(BARE) ? bare(channel.get()) : Optional.empty())
                    : Optional.empty();
            if (hasUnit && found.isEmpty()) {
                return new Answered(
                        Optional.empty(),
                        "'" + unit + "' is no unit of " + channel.get().label() + ", which " + name
                                + " is said to be; there are "
                                + String.join(", ", channel.get().dimension().fittingUnits()));
            }
            columns.put(i, new LogTold.Column(channel.get(), found));
        }
        String rate = fields.apply("rate");
        String mark = fields.apply("mark");
        try {
            return new Answered(
                    Optional.of(new LogTold(
                            mark.length() == 1 ? mark.charAt(0) : 0,
                            rate.isEmpty() ? 0 : Double.parseDouble(rate.replace(',', '.')),
                            Optional.empty(),
                            columns)),
                    "");
        } catch (NumberFormatException none) {
            return new Answered(Optional.empty(), "'" + rate + "' is no number of rows a second");
        } catch (IllegalArgumentException cannot) {
            return new Answered(Optional.empty(), "This cannot be: " + cannot.getMessage());
        }
    }

    private static Optional<Unit> bare(Channel channel) {
        return channel.units().stream().filter(u -> u.symbol().isEmpty()).findFirst();
    }
}
