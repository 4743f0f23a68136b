package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Sureness;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.GapStops;

/** The ten questions of an engine, each with how far it is answered. */
public final class Rail {
    private Rail() {}

    /** How far a question is answered. */
    public enum State {
        ANSWERED("answered", "✓"),
        NEAR("near", "~"),
        /** Something must not be done: a limit is exceeded, or damage was seen. */
        REFUSED("refused", "■"),
        /** Something must not be done until it is known better. */
        NOT_APPROVED("not approved", "■"),
        STOPPED("stopped", "■"),
        UNKNOWN("unknown", "?"),
        /** It is being worked out beside the page. */
        COMING("being worked out", "…"),
        /** Nothing is read yet: here the job begins. */
        BEGIN("begin here", "▸"),
        NOT_BUILT("not built yet", "–");

        private final String label;
        private final String sign;

        State(String label, String sign) {
            this.label = label;
            this.sign = sign;
        }

        public String label() {
            return label;
        }

        /** Beside the word, so that colour is never the only sign. */
        public String sign() {
            return sign;
        }

        /** For the style sheet. */
        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** The ten, in the order of the job. */
    public enum Question {
        MEASURE("Measure", "measure"),
        FIT("Fit", "fit"),
        CLEAR("Clear", "clear"),
        POWER("Power", "power"),
        LIFE("Life", "life"),
        SHAKE("Shake", "shake"),
        DYNO("Dyno", "dyno"),
        DRIVE("Drive", ""),
        SPEND("Spend", ""),
        BOOK("Book", "book");

        private final String label;
        private final String page;

        Question(String label, String page) {
            this.label = label;
            this.page = page;
        }

        public String label() {
            return label;
        }

        /** Last part of its address; empty while there is no page. */
        public String page() {
            return page;
        }
    }

    /**
     * One of the ten.
     * @param here whether this page is shown
     * @param address empty while there is no page
     */
    public record Entry(Question question, State state, String address, boolean here) {}

    /**
     * The rail of one build.
     * @param measure answer to measure; empty where the build cannot be read
     * @param others  how far other questions are, where that is known; being worked out, where it is
     * @param base    address of the build
     */
    public static List<Entry> of(
            Optional<Answer> measure, Map<Question, State> others, String base, Optional<Question> here) {
        boolean gapsAreComing = others.get(Question.CLEAR) == State.COMING;
        Optional<State> own = measure.map(m -> gapsAreComing && waitsForGapsAlone(m) ? State.COMING : state(m));
        List<Entry> entries = new ArrayList<>();
        for (Question question : Question.values()) {
            State state = switch (question) {
                case MEASURE ->
                    own.map(s -> measure.orElseThrow().values().isEmpty() && s == State.UNKNOWN ? State.BEGIN : s)
                            .orElse(State.UNKNOWN);
                case FIT, CLEAR, POWER, LIFE, SHAKE, DYNO -> others.getOrDefault(question, State.UNKNOWN);
                // a sheet of what all say: no further along than measure, and no milder than what may be run
                case BOOK -> book(own.orElse(State.UNKNOWN), others);
                case DRIVE, SPEND -> State.NOT_BUILT;
            };
            String address = question.page().isEmpty() ? "" : base + "/" + question.page();
            entries.add(new Entry(question, state, address, here.equals(Optional.of(question))));
        }
        return entries;
    }

    /**
     * How far a search for parts came: a stop is said in its own words; one way that is proven and breaks no rule answers it; none at all stops it.
     * @param searched whether there was anything to search
     */
    static State found(Answer fit, boolean searched) {
        Optional<State> stopped = stopped(fit);
        if (stopped.isPresent()) {
            return stopped.get();
        }
        if (fit.candidates().isEmpty()) {
            return searched && !fit.rejections().isEmpty() ? State.STOPPED : State.UNKNOWN;
        }
        boolean proven = fit.candidates().stream()
                .anyMatch(c -> (c.sureness() == Sureness.SURE || c.sureness() == Sureness.PROBABLE)
                        && c.verdicts().stream().noneMatch(v -> v.chosen() && v.state() == Verdict.State.FAILS));
        return proven ? State.ANSWERED : State.NEAR;
    }

    /** How far the gaps are known: the gravest of them. */
    static State cleared(Answer clear) {
        Set<Clearance.State> states = EnumSet.noneOf(Clearance.State.class);
        clear.clearances().forEach(pair -> states.add(pair.state()));
        if (states.contains(Clearance.State.TOUCHES)) {
            return State.REFUSED;
        }
        if (clear.clearances().stream().anyMatch(pair -> pair.hold() != Clearance.Hold.NOTHING)) {
            return State.NOT_APPROVED;
        }
        return states.isEmpty()
                ? State.UNKNOWN
                : states.contains(Clearance.State.CLEARS) && states.size() == 1 ? State.ANSWERED : State.NEAR;
    }

    /** How far the limits are known: the verdict of the whole. */
    static State approved(Answer life) {
        return life.ladder()
                .map(ladder -> switch (ladder.approval().verdict()) {
                    case REFUSED -> State.REFUSED;
                    case NOT_APPROVED -> State.NOT_APPROVED;
                    case APPROVED -> State.ANSWERED;
                })
                .orElse(State.UNKNOWN);
    }

    /** How far the shake is known: a suspect among the readings, or something not read, keeps it near. */
    static State shaken(Answer shake) {
        boolean suspect = shake.findings().stream().anyMatch(f -> f.kind() == Finding.Kind.SUSPECT);
        return shake.shaking()
                .filter(s -> !s.figures().isEmpty())
                .map(s -> s.missing().isEmpty() && !suspect ? State.ANSWERED : State.NEAR)
                .orElse(State.UNKNOWN);
    }

    /**
     * How far torque is told: not at all for want of readings; not, for every speed is refused; near for as long as its sums were not done, a usual figure stands for a reading that would tell more, or the
     * speed of the most torque is not approved.
     * @param power empty where it can be told and was not asked
     */
    static State powered(Optional<Answer> power) {
        if (power.isEmpty()) {
            return State.NEAR;
        }
        TorqueCurve curve = power.get().torque().orElse(TorqueCurve.unknown(List.of()));
        Optional<TorqueCurve.Row> most = curve.most("torque");
        if (most.isEmpty()) {
            boolean isRefused = curve.rows().stream().anyMatch(row -> row.standing() == TorqueCurve.Standing.REFUSED);
            return isRefused ? State.REFUSED : State.UNKNOWN;
        }
        boolean isSure = most.get().standing() == TorqueCurve.Standing.APPROVED
                && curve.next().isEmpty();
        return isSure ? State.ANSWERED : State.NEAR;
    }

    /** How far the runs of a sheet tell what was changed: answered where every change has a verdict, whichever it is. */
    static State decided(DynoRuns runs) {
        boolean isDecided = !runs.gains().isEmpty()
                && runs.gains().stream().allMatch(gain -> switch (gain.verdict()) {
                    case REAL_GAIN, REAL_LOSS, NOT_SHOWN -> true;
                    case TAKE_MORE, CANNOT_BE_TOLD, BASELINE_NOT_REPEATED, NOT_PROVED -> false;
                });
        return isDecided ? State.ANSWERED : State.NEAR;
    }

    /** A stop is said in its own words; nothing read is unknown; what is suspect or is missing keeps it near. */
    public static State state(Answer measure) {
        Optional<State> stopped = stopped(measure);
        if (stopped.isPresent()) {
            return stopped.get();
        }
        if (measure.values().isEmpty()) {
            return State.UNKNOWN;
        }
        boolean open = !measure.unknowns().isEmpty()
                || measure.findings().stream().anyMatch(f -> f.kind() == Finding.Kind.SUSPECT);
        return open ? State.NEAR : State.ANSWERED;
    }

    private static State book(State measure, Map<Question, State> others) {
        Set<State> run = EnumSet.of(
                measure, others.getOrDefault(Question.CLEAR, measure), others.getOrDefault(Question.LIFE, measure));
        return run.contains(State.REFUSED)
                ? State.REFUSED
                : run.contains(State.NOT_APPROVED)
                        ? State.NOT_APPROVED
                        : run.contains(State.COMING) ? State.COMING : measure;
    }

    /** Whether nothing stops it but that its gaps were not looked at. */
    private static boolean waitsForGapsAlone(Answer measure) {
        return !measure.stops().isEmpty() && measure.stops().stream().allMatch(GapStops::isOfTheUnknown);
    }

    /** Refused before not approved; empty where there is no stop. */
    private static Optional<State> stopped(Answer answer) {
        return answer.stops().stream().anyMatch(Stop::refused)
                ? Optional.of(State.REFUSED)
                : answer.stops().isEmpty() ? Optional.empty() : Optional.of(State.NOT_APPROVED);
    }
}
