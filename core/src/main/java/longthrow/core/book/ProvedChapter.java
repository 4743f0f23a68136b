package longthrow.core.book;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.DynoRuns;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.SignedShare;
import longthrow.core.quantity.Units;

/**
 * What was proved on the dynamometer, by one sheet of runs.
 * @param title     what was tried
 * @param invented  whether the sheet says that it is made up
 * @param standard  that figures are corrected to, or that they are as read
 * @param place     where torque and power are told
 * @param bench     by what they were read
 * @param standing  what the sheet is to the engine of this Book
 * @param said      what it comes to, as far as no change says it
 * @param changes   one for each, in the order in which they came
 * @param sessions  in order of time
 * @param counting  how many runs count
 * @param highest   torque and power of each setup, the baseline first
 * @param aside     runs that do not count, by their reason
 * @param cautions  before an engine is run on such a bench
 */
public record ProvedChapter(
        String title,
        boolean invented,
        String standard,
        String place,
        String bench,
        String standing,
        List<String> said,
        List<Change> changes,
        List<Session> sessions,
        String counting,
        List<Highest> highest,
        List<Aside> aside,
        List<String> cautions) {
    /** Changes, sessions, setups and reasons that are laid out; the sheet has the others. Layout. */
    public static final int MOST_TOLD = 8;

    /** Runs that are named behind one reason; layout. */
    private static final int MOST_NAMED = 6;

    public ProvedChapter {
        said = List.copyOf(said);
        changes = List.copyOf(changes);
        sessions = List.copyOf(sessions);
        highest = List.copyOf(highest);
        aside = List.copyOf(aside);
        cautions = List.copyOf(cautions);
    }

    /**
     * What one change did.
     * @param setup    the change
     * @param baseline against what
     * @param verdict  in a few words
     * @param isShown  whether a gain or a loss is real
     * @param of       what the gain is of
     * @param gain     with the ± that decides, or that it has none
     * @param straight with the ± if the drift was a straight line
     * @param said     the verdict as a sentence
     * @param grounds  what stands behind it, and what so few sessions cannot show
     */
    public record Change(
            String setup,
            String baseline,
            String verdict,
            boolean isShown,
            String of,
            String gain,
            String straight,
            String said,
            List<String> grounds) {
        public Change {
            grounds = List.copyOf(grounds);
        }
    }

    /**
     * Runs one after the other.
     * @param name   of the session
     * @param setup  that was on
     * @param runs   how many of them count
     * @param remark when, who, on what; empty where nothing is said
     * @param air    what the weather made of its figures; empty where that is not told
     */
    public record Session(String name, String setup, String runs, String remark, String air) {}

    /**
     * The highest of a setup.
     * @param setup   which
     * @param figures of its runs that count, lowest and highest, and of their mean
     */
    public record Highest(String setup, List<Book.Figure> figures) {
        public Highest {
            figures = List.copyOf(figures);
        }
    }

    /**
     * Runs that do not count.
     * @param why  for a reason that they share
     * @param runs by session and name, or how many
     */
    public record Aside(String why, String runs) {}

    /** So many as are laid out. */
    public static <T> List<T> few(List<T> all) {
        return all.subList(0, Math.min(MOST_TOLD, all.size()));
    }

    /** Whether the air of any session is told. */
    public boolean isAirTold() {
        return sessions.stream().anyMatch(s -> !s.air().isEmpty());
    }

    /** Whether it is told of any session when, by whom or on what. */
    public boolean isMoreTold() {
        return sessions.stream().anyMatch(s -> !s.remark().isEmpty());
    }

    /** Of an answer; empty where it tells of no sheet. */
    static Optional<ProvedChapter> of(Answers.Ran ran, Words words) {
        return ran.answer().runs().map(runs -> of(ran, runs, words));
    }

    private static ProvedChapter of(Answers.Ran ran, DynoRuns runs, Words words) {
        long counting = runs.runs().stream().filter(DynoRuns.Run::counts).count();
        Set<String> said = new LinkedHashSet<>(runs.sentences());
        runs.gains().forEach(gain -> said.removeAll(gain.sentences()));
        return new ProvedChapter(
                ran.answer().engine(),
                ran.answer().invented(),
                runs.standard().isEmpty()
                        ? "as read, not corrected for the weather"
                        : "corrected to " + runs.standard(),
                runs.place(),
                runs.bench(),
                standing(ran, runs),
                said.stream().map(s -> s.endsWith(".") ? s : s + ".").toList(),
                runs.gains().stream().map(ProvedChapter::change).toList(),
                sessions(ran, runs, words),
                counting + " of " + runs.runs().size() + " runs count",
                highest(runs, words),
                aside(runs),
                runs.cautions());
    }

    private static String standing(Answers.Ran ran, DynoRuns runs) {
        return (ran.isShared()
                        ? ""
                        : runs.engine().isEmpty()
                                ? "The sheet names no build; it stands here because it was handed in with this one. "
                                : "The sheet is of the build in " + runs.engine() + ", as it says. ")
                + "Which setup the engine has on as this Book lists it, the sheet does not say. What was proved lifts no stop and approves no speed.";
    }

    private static Change change(DynoRuns.Gain gain) {
        boolean isShown = gain.verdict() == DynoRuns.Verdict.REAL_GAIN || gain.verdict() == DynoRuns.Verdict.REAL_LOSS;
        List<String> sentences = gain.sentences();
        return new Change(
                gain.setup(),
                gain.baseline(),
                gain.verdict().label(),
                isShown,
                gain.of(),
                SignedShare.text(gain.gain(), gain.anyDrift()),
                SignedShare.text(gain.gain(), gain.half()),
                sentences.isEmpty() ? "" : sentences.get(0),
                sentences.subList(Math.min(1, sentences.size()), sentences.size()));
    }

    /** What the air made of figures tells how high a place lies: it is not handed on. */
    private static List<Session> sessions(Answers.Ran ran, DynoRuns runs, Words words) {
        Map<String, List<DynoRuns.Run>> by = by(runs.runs(), DynoRuns.Run::session);
        return runs.sessions().stream()
                .map(s -> new Session(
                        s.name(),
                        (s.check() ? "reference engine " : "") + s.setup(),
                        counting(by.getOrDefault(s.name(), List.of())),
                        Stream.of(
                                        s.date(),
                                        s.who().isEmpty() ? "" : "by " + s.who(),
                                        s.dyno().isEmpty() ? "" : "on " + s.dyno())
                                .filter(said -> !said.isEmpty())
                                .collect(Collectors.joining(", ")),
                        ran.isShared()
                                ? ""
                                : s.factor()
                                        .map(f -> "times " + words.line(Dimension.RATIO, f))
                                        .orElse("")))
                .toList();
    }

    private static String counting(List<DynoRuns.Run> runs) {
        return runs.stream().filter(DynoRuns.Run::counts).count() + " of " + runs.size();
    }

    private static <K> Map<K, List<DynoRuns.Run>> by(List<DynoRuns.Run> runs, Function<DynoRuns.Run, K> key) {
        return runs.stream().collect(Collectors.groupingBy(key, LinkedHashMap::new, Collectors.toList()));
    }

    // ---- the highest

    private static List<Highest> highest(DynoRuns runs, Words words) {
        List<DynoRuns.Run> counting =
                runs.runs().stream().filter(DynoRuns.Run::counts).toList();
        return by(counting, DynoRuns.Run::setup).entrySet().stream()
                .map(e -> highest(e.getKey(), e.getValue(), runs, words))
                .filter(h -> !h.figures().isEmpty())
                .toList();
    }

    private static Highest highest(String setup, List<DynoRuns.Run> counting, DynoRuns runs, Words words) {
        List<Book.Figure> figures = new ArrayList<>();
        for (Dimension dimension : List.of(Dimension.TORQUE, Dimension.POWER)) {
            List<DynoRuns.Peak> peaks = counting.stream()
                    .flatMap(r -> (dimension == Dimension.TORQUE ? r.torque() : r.power()).stream())
                    .sorted(Comparator.comparingDouble(
                            (DynoRuns.Peak p) -> p.figure().value()))
                    .toList();
            String name = "highest " + dimension.plainName();
            if (!peaks.isEmpty()) {
                DynoRuns.Peak most = peaks.get(peaks.size() - 1);
                figures.add(new Book.Figure(
                        name
                                + (peaks.size() == 1
                                        ? ", the one run"
                                        : " of " + peaks.size() + " runs, the least and the most"),
                        (peaks.size() == 1 ? "" : "from " + words(dimension, peaks.get(0), words) + " to ")
                                + words(dimension, most, words)
                                + (most.shown().isEmpty() ? "" : "; " + most.shown())));
            }
            runs.setups().stream()
                    .filter(s -> s.name().equals(setup) && s.runs() > 1)
                    .findFirst()
                    .flatMap(s -> ofMean(dimension, s.torque(), words))
                    .ifPresent(mean -> figures.add(new Book.Figure(name + " of their mean, ± by their scatter", mean)));
        }
        return new Highest(setup, figures);
    }

    private static String words(Dimension dimension, DynoRuns.Peak peak, Words words) {
        return words.told(dimension, peak.figure()) + at(peak.speed(), words);
    }

    private static String at(double speed, Words words) {
        return Double.isNaN(speed)
                ? ""
                : " at " + words.exact(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed))));
    }

    private static Optional<String> ofMean(Dimension dimension, List<DynoRuns.Point> curve, Words words) {
        if (curve.isEmpty()) {
            return Optional.empty();
        }
        int best = 0;
        for (int i = 1; i < curve.size(); i++) {
            best = figure(dimension, curve.get(i)) > figure(dimension, curve.get(best)) ? i : best;
        }
        DynoRuns.Point most = curve.get(best);
        double by = dimension == Dimension.POWER ? most.speed() : 1;
        boolean isEnd = best == 0 || best == curve.size() - 1;
        return Optional.of(words.told(dimension, by * most.value(), by * most.half())
                + at(most.speed(), words)
                + (isEnd ? ", an end of the speeds that are used: it may be higher beyond" : ""));
    }

    private static double figure(Dimension dimension, DynoRuns.Point point) {
        return dimension == Dimension.POWER ? point.value() * point.speed() : point.value();
    }

    // ---- what does not count

    private static List<Aside> aside(DynoRuns runs) {
        List<DynoRuns.Run> out = runs.runs().stream().filter(r -> !r.counts()).toList();
        return by(out, DynoRuns.Run::why).entrySet().stream()
                .map(e -> new Aside(e.getKey(), named(e.getValue())))
                .toList();
    }

    private static String named(List<DynoRuns.Run> runs) {
        String names = runs.stream()
                .limit(MOST_NAMED)
                .map(r -> r.session() + " run " + r.name())
                .collect(Collectors.joining(", "));
        return runs.size() > MOST_NAMED ? names + " and " + (runs.size() - MOST_NAMED) + " more" : names;
    }
}
