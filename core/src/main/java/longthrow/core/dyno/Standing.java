package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.gain.Session;

/** Whether a verdict may stand: where what its figures hang on is in doubt, nothing is proved by them (docs/decisions/0034). */
final class Standing {
    /** A share that parts do not make by themselves; judgement, no source. */
    private static final double BEYOND_PARTS = 0.2;

    private final DynoSheet sheet;
    private final List<String> doubts;

    /**
     * Of a sheet.
     * @param sessions that are compared
     * @param mistakes why nothing is proved, as far as the sheet by itself shows it
     */
    Standing(DynoSheet sheet, List<Session> sessions, List<String> mistakes) {
        this.sheet = sheet;
        this.doubts = new ArrayList<>(mistakes);
        if (sheet.standard().isEmpty()
                && sheet.sessions().stream()
                        .anyMatch(s -> !s.check() && !s.air().isKnown())) {
            doubts.add("nothing is corrected for the weather, which makes per cents from session to session"
                    + " (a sheet cannot say yet that its dynamometer did so by itself)");
        }
        String beyond = sessions.stream()
                .filter(s -> s.air().filter(a -> !a.isWithin()).isPresent())
                .map(Session::name)
                .collect(Collectors.joining(", "));
        if (!beyond.isEmpty()) {
            doubts.add("the air of " + beyond + " lies outside what the standard is for");
        }
    }

    /**
     * The gain as it may stand.
     * @param findings takes a gain that is more than a part makes
     */
    DynoRuns.Gain of(DynoRuns.Gain gain, List<Finding> findings) {
        if (Math.abs(gain.gain()) > BEYOND_PARTS) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "setup " + gain.setup(),
                    String.format(
                            Locale.ROOT,
                            "%+.0f %% is more than a part makes by itself: a unit, gear, column or dynamometer that is not the same, or a restrictor",
                            100 * gain.gain()),
                    "look at the runs of both setups"));
        }
        boolean isSettled = switch (gain.verdict()) {
            case REAL_GAIN, REAL_LOSS, NOT_SHOWN -> true;
            case TAKE_MORE, CANNOT_BE_TOLD, BASELINE_NOT_REPEATED, NOT_PROVED -> false;
        };
        List<String> why = new ArrayList<>(doubts);
        Set<String> days = dates(gain.baseline());
        Set<String> own = dates(gain.setup());
        if (!days.isEmpty() && !own.isEmpty() && own.stream().noneMatch(days::contains)) {
            why.add("'" + gain.setup() + "' ran on no day on which '" + gain.baseline()
                    + "' ran, so what differs from day to day is in it");
        }
        return isSettled && !why.isEmpty() ? gain.notProved(why) : gain;
    }

    private Set<String> dates(String setup) {
        return sheet.sessions().stream()
                .filter(s -> !s.check() && s.setup().equals(setup) && !s.date().isEmpty())
                .map(DynoSheet.Session::date)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }
}
