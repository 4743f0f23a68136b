package longthrow.buildfile.log;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.buildfile.log.LogLayout.Question;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;

/** How a question about a log is answered in the sheet of runs, in words that can be copied. */
final class Answering {
    private static final String FOR_ALL = "; it then counts for every file of that layout in the sheet";

    private Answering() {}

    static String of(Question question, LogLayout layout) {
        return switch (question.about()) {
            case CHANNEL, UNIT -> ofColumn(question, layout);
            case RATE ->
                "Write it at one run of this layout, such as rate: 50 Hz (50 rows a second; 50/s and 50 say the same)"
                        + FOR_ALL + ".";
            case MARK ->
                question.column() >= 0
                        ? "If it begins decimals: " + ofColumn(question, layout)
                                + " If it parts thousands: write the log again from the logger without it."
                        : "No word in the sheet can say that: write the log again from the logger with a point before decimals and"
                                + " nothing between thousands.";
            case DATES ->
                "No word in the sheet can say that: if it is read wrongly, write the log again with seconds as time, or"
                        + " with dates that begin with the year.";
            case DELIMITER -> "No word in the sheet can say that.";
        };
    }

    private static String ofColumn(Question question, LogLayout layout) {
        LogLayout.Column column = layout.columns().get(question.column());
        List<Channel> channels = channels(question, column);
        Channel example =
                channels.stream().filter(c -> c != Channel.UNKNOWN).findFirst().orElse(Channel.ENGINE_SPEED);
        if (channels.size() > 3) { // nothing is known of it: what is asked for most
            example = channels.contains(Channel.ENGINE_SPEED) ? Channel.ENGINE_SPEED : example;
        }
        String unit = units(question, example).stream().findFirst().orElse("");
        return "Write at one run of this layout columns: {" + name(question.column(), layout) + ": "
                + (example.key() + " " + unit).strip() + "}" + FOR_ALL + ". One may choose "
                + channels.stream()
                        .filter(c -> c != Channel.UNKNOWN)
                        .map(c -> shown(c, units(question, c)))
                        .collect(Collectors.joining(", "))
                + ", or unknown to leave the column unused.";
    }

    private static List<Channel> channels(Question question, LogLayout.Column column) {
        List<Channel> named = question.choices().stream()
                .map(Channel::ofKey)
                .flatMap(Optional::stream)
                .toList();
        if (!named.isEmpty()) {
            return named;
        }
        return column.channel() == Channel.UNKNOWN ? Arrays.asList(Channel.values()) : List.of(column.channel());
    }

    /** Those that are asked about, or all of the channel. */
    private static List<String> units(Question question, Channel channel) {
        List<String> all = channel.units().stream().map(Unit::symbol).toList();
        return question.choices().stream().anyMatch(all::contains) ? question.choices() : all;
    }

    private static String shown(Channel channel, List<String> units) {
        List<String> written = units.stream().filter(u -> !u.isEmpty()).toList();
        return channel.key() + (written.isEmpty() ? "" : " (" + String.join(", ", written) + ")");
    }

    /** As a key of the sheet: the header where it is plain and each once, its number where not. */
    private static String name(int column, LogLayout layout) {
        String header = layout.columns().get(column).header().strip();
        boolean isOnce = layout.columns().stream()
                        .filter(c -> c.header().strip().equalsIgnoreCase(header))
                        .count()
                == 1;
        return isOnce && header.matches("[\\p{L}_][\\p{L}\\p{N}_. /-]*") ? header : String.valueOf(column + 1);
    }
}
