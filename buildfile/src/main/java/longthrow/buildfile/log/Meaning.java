package longthrow.buildfile.log;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.buildfile.log.LogLayout.About;
import longthrow.buildfile.log.LogLayout.Question;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.LoggedUnits;
import longthrow.core.recording.Sureness;

/** What a column means: by its header, the unit written there or beneath, and whether its figures can be that. */
final class Meaning {
    private static final Pattern BRACKETED = Pattern.compile("(.*?)[\\s_]*[\\[({<]([^\\])}>]{0,24})[\\])}>]\\s*");
    private static final Pattern PARTED =
            Pattern.compile("(.+?)(?:\\s+/\\s+|\\s*,\\s*|\\s+in\\s+|\\s+-\\s+)(\\S.{0,15})");
    private static final Pattern LAST_WORD = Pattern.compile("(.+?)[\\s_]+([^\\s_]{1,8})");

    /** Names that may hold no / have a blank or a line in its place. */
    private static final Pattern UNIT_IN_TWO = Pattern.compile("(.+?)[\\s_]+([^\\s_]{1,4})[\\s_]([^\\s_]{1,4})");

    /** Rows a second of the loggers of benches: common practice, no source. */
    private static final double SLOWEST = 1;

    private static final double FASTEST = 5000;

    private final int at;
    private final String header;
    private final String unitBelow;
    private final Form form;
    private final List<Double> figures;
    private final List<Question> questions;

    /**
     * One column.
     * @param at        its place from 0
     * @param header    empty where there is none
     * @param unitBelow from the line of units; empty where there is none
     * @param form      of its cells
     * @param figures   some of them, as written, in order
     * @param questions where what is asked is added
     */
    Meaning(int at, String header, String unitBelow, Form form, List<Double> figures, List<Question> questions) {
        this.at = at;
        this.header = header;
        this.unitBelow = unitBelow.replaceAll("^[\\[({<]\\s*|\\s*[\\])}>]$", "").strip();
        this.form = form;
        this.figures = figures;
        this.questions = questions;
    }

    LogLayout.Column column() {
        if (form != Form.NUMBER && form != Form.TEXT) {
            return column(Channel.TIME, Optional.of(Units.SECOND), Sureness.SURE, "its cells are times");
        }
        Named named = named();
        if (named.channels().isEmpty()) {
            String why = header.isEmpty() ? "it has no header" : "its header is no word that is known";
            if (form == Form.NUMBER) {
                ask(About.CHANNEL, called() + ": " + why + ". What does it hold?", fitting(named.unit()));
            }
            return column(Channel.UNKNOWN, Optional.empty(), Sureness.OPEN, why);
        }
        Channel channel = named.channels().get(0);
        if (form == Form.TEXT) {
            boolean marker = channel == Channel.MARKER;
            return column(
                    marker ? channel : Channel.UNKNOWN,
                    Optional.empty(),
                    marker ? Sureness.SURE : Sureness.OPEN,
                    marker ? "its header says so, and its cells are words" : "its cells are words, not figures");
        }
        if (named.channels().size() > 1) {
            ask(
                    About.CHANNEL,
                    called() + " can be " + labels(named.channels()) + ". Which is it?",
                    named.channels().stream().map(Channel::key).toList());
            return column(channel, named.found(), Sureness.OPEN, named.why());
        }
        return named.found().isPresent() ? withUnit(named, channel) : withoutUnit(named, channel);
    }

    /** Channels that the header may mean, the unit as written, and what that is. */
    private record Named(List<Channel> channels, String unit, Optional<Unit> found, boolean isWhole, String why) {}

    private Named named() {
        Named best = new Named(List.of(), unitBelow, Optional.empty(), false, "");
        if (header.isEmpty()) {
            return best;
        }
        List<String[]> ways = new ArrayList<>(); // name and unit
        Matcher bracketed = BRACKETED.matcher(header);
        if (bracketed.matches()) {
            ways.add(new String[] {bracketed.group(1), bracketed.group(2).strip()});
        }
        ways.add(new String[] {header, unitBelow});
        Matcher inTwo = UNIT_IN_TWO.matcher(header);
        if (inTwo.matches()) {
            for (String joint : List.of("/", "·", " ")) { // rad_s, N_m, deg_C
                String unit = inTwo.group(2) + joint + inTwo.group(3);
                if (LoggedUnits.isUnit(unit)) {
                    ways.add(new String[] {inTwo.group(1), unit});
                }
            }
        }
        for (Pattern pattern : List.of(PARTED, LAST_WORD)) {
            Matcher parted = pattern.matcher(header);
            if (parted.matches() && LoggedUnits.isUnit(parted.group(2))) {
                ways.add(new String[] {parted.group(1), parted.group(2)});
            }
        }
        for (boolean whole : new boolean[] {true, false}) {
            for (String[] way : ways) {
                Named named = named(way[0], way[1].isEmpty() ? unitBelow : way[1], whole);
                if (!named.channels().isEmpty()) {
                    return named;
                }
            }
        }
        return bracketed.matches() ? new Named(List.of(), bracketed.group(2), Optional.empty(), false, "") : best;
    }

    private Named named(String name, String unit, boolean whole) {
        List<Channel> channels = whole ? Channel.answeringTo(name).map(List::of).orElse(List.of()) : holding(name);
        if (channels.isEmpty()) {
            return new Named(List.of(), unit, Optional.empty(), whole, "");
        }
        String why = whole ? "its header says so" : "its header holds the word";
        Optional<Unit> found = channels.stream()
                .map(c -> LoggedUnits.find(c.dimension(), unit))
                .flatMap(Optional::stream)
                .findFirst();
        if (found.isEmpty() && !unit.isEmpty()) {
            List<Channel> others = ofUnit(channels.get(0), unit);
            if (!others.isEmpty()) {
                return new Named(
                        others,
                        unit,
                        LoggedUnits.find(others.get(0).dimension(), unit),
                        false,
                        "its header says " + channels.get(0).label() + ", its unit " + unit + " something else");
            }
        }
        if (found.isPresent()) {
            Dimension dimension = found.get().dimension();
            channels = channels.stream().filter(c -> c.dimension() == dimension).toList();
        }
        return new Named(channels, unit, found, whole, why);
    }

    /** The channels whose words stand in the header, those with the longest. */
    private static List<Channel> holding(String name) {
        String plain = " " + Channel.plain(name) + " ";
        List<Channel> best = new ArrayList<>();
        int longest = 2; // shorter words are found in too many headers
        for (Channel channel : Channel.values()) {
            for (String word : channel.words()) {
                if (word.length() >= longest && word.length() > 2 && plain.contains(" " + word + " ")) {
                    if (word.length() > longest) {
                        best.clear();
                        longest = word.length();
                    }
                    if (!best.contains(channel)) {
                        best.add(channel);
                    }
                }
            }
        }
        return best;
    }

    /** What a word can mean as well where the unit is not its own. */
    private static List<Channel> ofUnit(Channel said, String unit) {
        List<Channel> near = switch (said) {
            case ROAD_SPEED, ENGINE_SPEED, DRUM_SPEED ->
                List.of(Channel.ENGINE_SPEED, Channel.DRUM_SPEED, Channel.ROAD_SPEED);
            case FUEL_FLOW, FUEL_VOLUME_FLOW -> List.of(Channel.FUEL_FLOW, Channel.FUEL_VOLUME_FLOW);
            case FORCE, TORQUE, POWER -> List.of(Channel.FORCE, Channel.TORQUE, Channel.POWER);
            case LAMBDA, AIR_FUEL_RATIO -> List.of(Channel.LAMBDA, Channel.AIR_FUEL_RATIO);
            default -> List.of();
        };
        return near.stream()
                .filter(c -> c != said && LoggedUnits.find(c.dimension(), unit).isPresent())
                .toList();
    }

    private LogLayout.Column withUnit(Named named, Channel channel) {
        Unit unit = named.found().orElseThrow();
        if (!canBe(channel, unit)) {
            ask(
                    About.UNIT,
                    called() + " says " + channel.label() + " in " + unit + ", and its figures (" + range()
                            + ") cannot be that. What is it?",
                    fitting(named.unit()));
            return column(channel, named.found(), Sureness.OPEN, "its figures cannot be what its header says");
        }
        return named.isWhole()
                ? column(channel, named.found(), Sureness.SURE, "its header and its unit say so")
                : column(channel, named.found(), Sureness.LIKELY, named.why() + "; its unit fits");
    }

    private LogLayout.Column withoutUnit(Named named, Channel channel) {
        if (!named.unit().isEmpty() && !named.unit().equals("-")) {
            ask(
                    About.UNIT,
                    called() + " is " + channel.label() + " in '" + Shown.of(named.unit())
                            + "', which is no unit of it that is known. In which unit is it?",
                    symbols(channel));
            return column(channel, Optional.empty(), Sureness.OPEN, "its unit is not known");
        }
        Optional<Unit> byWord = LoggedUnits.find(channel.dimension(), header).filter(u -> canBe(channel, u));
        if (byWord.isPresent() && !header.isBlank()) {
            return column(channel, byWord, Sureness.SURE, "its header is the unit");
        }
        List<Unit> possible =
                channel.units().stream().filter(u -> canBe(channel, u)).toList();
        if (channel == Channel.TIME) { // no logger counts in minutes without saying so
            possible = possible.stream()
                    .filter(u -> u == Units.SECOND || u == Units.MILLISECOND)
                    .filter(this::isRateOfLogger)
                    .toList();
        }
        if (possible.size() == 1) {
            String of = channel.units().size() == 1
                    ? "; it has no unit"
                    : "; no unit is written, and of those of " + channel.label() + " only " + shown(possible.get(0))
                            + " fits its figures";
            return column(channel, Optional.of(possible.get(0)), Sureness.LIKELY, named.why() + of);
        }
        ask(
                About.UNIT,
                called() + " is " + channel.label() + "; no unit is written, and its figures (" + range() + ") fit "
                        + (possible.isEmpty() ? "none that is usual" : "several") + ". In which unit is it?",
                possible.isEmpty()
                        ? symbols(channel)
                        : possible.stream().map(Unit::symbol).toList());
        return column(channel, Optional.empty(), Sureness.OPEN, named.why() + "; no unit is written");
    }

    private static String shown(Unit unit) {
        return unit.symbol().isEmpty() ? "a bare number" : unit.symbol();
    }

    /** Nine of ten of its figures, as no logger is without faults. */
    private boolean canBe(Channel channel, Unit unit) {
        long can = figures.stream().filter(f -> channel.canBe(unit.toSi(f))).count();
        return can >= 0.9 * figures.size();
    }

    private boolean isRateOfLogger(Unit unit) {
        double[] steps = new double[Math.max(0, figures.size() - 1)];
        int count = 0;
        for (int i = 1; i < figures.size(); i++) {
            double step = unit.toSi(figures.get(i) - figures.get(i - 1));
            if (step > 0) {
                steps[count++] = step;
            }
        }
        if (count == 0) {
            return true;
        }
        Arrays.sort(steps, 0, count);
        double rate = 1 / steps[count / 2];
        return rate > SLOWEST * 0.999 && rate < FASTEST * 1.001;
    }

    private String range() {
        return figures.isEmpty()
                ? "none"
                : String.format(
                        Locale.ROOT,
                        "%s to %s",
                        figures.stream().min(Double::compare).orElseThrow(),
                        figures.stream().max(Double::compare).orElseThrow());
    }

    private String called() {
        return "column " + (at + 1) + (header.isEmpty() ? "" : " '" + Shown.of(header) + "'");
    }

    private static List<String> symbols(Channel channel) {
        return channel.units().stream().map(Unit::symbol).toList();
    }

    private static String labels(List<Channel> channels) {
        return String.join(" or ", channels.stream().map(Channel::label).toList());
    }

    /** Channels that are given in this unit, all where there is none. */
    private static List<String> fitting(String unit) {
        return Arrays.stream(Channel.values())
                .filter(c ->
                        unit.isEmpty() || LoggedUnits.find(c.dimension(), unit).isPresent())
                .map(Channel::key)
                .toList();
    }

    private void ask(About about, String text, List<String> choices) {
        questions.add(new Question(about, at, text, choices));
    }

    private LogLayout.Column column(Channel channel, Optional<Unit> unit, Sureness sureness, String why) {
        return new LogLayout.Column(header, channel, form, unit, sureness, why);
    }
}
