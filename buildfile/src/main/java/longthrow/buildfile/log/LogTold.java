package longthrow.buildfile.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;

/**
 * What the owner said about logs of one layout; it goes before all that is recognised.
 * @param mark       the decimal mark, '.' or ','; 0 where nothing was said
 * @param rateHertz  rows a second where the log has no time [1/s]; 0 where nothing was said
 * @param dates      how dates are written; empty where nothing was said
 * @param columns    what columns mean, by their place from 0
 */
public record LogTold(char mark, double rateHertz, Optional<Form> dates, Map<Integer, Column> columns) {
    /** Nothing was said. */
    public static final LogTold NOTHING = new LogTold((char) 0, 0, Optional.empty(), Map.of());

    /** Rows a second that a logger may write: common practice, no source. */
    private static final double FASTEST = 1e6;

    private static final double SLOWEST = 1e-3;

    public LogTold {
        columns = Map.copyOf(columns);
        if (mark != 0 && mark != '.' && mark != ',') {
            throw new IllegalArgumentException("the decimal mark is '" + mark + "'; it is a point or a comma");
        }
        if (rateHertz != 0 && !(rateHertz >= SLOWEST && rateHertz <= FASTEST)) {
            throw new IllegalArgumentException(
                    "the rate is " + rateHertz + " rows a second; it is from " + SLOWEST + " to " + FASTEST);
        }
    }

    /**
     * What one column means.
     * @param channel what it is
     * @param unit    in which it is given; empty where it has none: words, numbers of runs
     */
    public record Column(Channel channel, Optional<Unit> unit) {
        public Column {
            if (unit.isPresent() && unit.get().dimension() != channel.dimension()) {
                throw new IllegalArgumentException("the unit " + unit.get() + " is no unit of "
                        + channel.label() + "; there are "
                        + String.join(", ", channel.dimension().fittingUnits()));
            }
        }
    }

    /** This, and what another says beside it. */
    LogTold and(LogTold other) {
        Map<Integer, Column> all = new TreeMap<>(other.columns);
        all.putAll(columns);
        return new LogTold(
                mark == 0 ? other.mark : mark,
                rateHertz == 0 ? other.rateHertz : rateHertz,
                dates.or(() -> other.dates),
                all);
    }

    /** As text, one word a line, to be remembered beside the layout's fingerprint. */
    public String toText() {
        List<String> lines = new ArrayList<>();
        if (mark != 0) {
            lines.add("mark " + mark);
        }
        if (rateHertz != 0) {
            lines.add("rate " + rateHertz);
        }
        dates.ifPresent(d -> lines.add("dates " + d.name()));
        new TreeMap<>(columns)
                .forEach(
                        (at, c) -> lines.add(("column " + at + " " + c.channel().key() + " "
                                        + c.unit().map(Unit::symbol).orElse("none"))
                                .strip()));
        return String.join("\n", lines);
    }

    /**
     * Reads what {@link #toText} wrote; empty where it is none.
     * @param text the lines
     */
    public static Optional<LogTold> parse(String text) {
        char mark = 0;
        double rate = 0;
        Optional<Form> dates = Optional.empty();
        Map<Integer, Column> columns = new TreeMap<>();
        try {
            for (String line : text.lines().toList()) {
                String[] words = line.split(" ", 4);
                switch (words[0]) {
                    case "mark" -> mark = words[1].charAt(0);
                    case "rate" -> rate = Double.parseDouble(words[1]);
                    case "dates" -> dates = Optional.of(Form.valueOf(words[1]));
                    case "column" -> columns.put(Integer.parseInt(words[1]), column(words));
                    default -> {
                        return Optional.empty();
                    }
                }
            }
            return Optional.of(new LogTold(mark, rate, dates, columns));
        } catch (IllegalArgumentException | IndexOutOfBoundsException none) {
            return Optional.empty();
        }
    }

    private static Column column(String[] words) {
        Channel channel = Channel.ofKey(words[2]).orElseThrow(() -> new IllegalArgumentException(words[2]));
        String unit = words.length > 3 ? words[3] : "";
        return new Column(
                channel,
                unit.equals("none")
                        ? Optional.empty()
                        : Optional.of(unit.isEmpty() ? bare(channel) : Unit.of(channel.dimension(), unit)));
    }

    private static Unit bare(Channel channel) {
        return channel.units().stream()
                .filter(u -> u.symbol().isEmpty())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(channel.key() + " needs a unit"));
    }
}
