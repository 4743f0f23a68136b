package longthrow.core.clear;

import java.util.List;
import longthrow.core.life.Asked;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * How far a journal moves in a ball or roller bearing that is not mounted: its radial internal clearance, from one side to the other. Of the groups in which such bearings
 * are sold, normal and C3, the whole range of both is taken, for which one is in the engine stands on its ring and is not read. Mounted it is less.
 */
final class RollingPlay {
    private static final String SOURCE =
            "radial internal clearance by ISO 5753-1, groups normal to C3, bearings with a cylindrical bore; values from memory";

    /**
     * One row of the standard's tables [m].
     * @param upTo diameter of the bore
     */
    private record Row(double upTo, double ballLeast, double ballMost, double rollerLeast, double rollerMost) {}

    /** From the least of group normal to the most of C3, ball (deep groove) and cylindrical roller. */
    private static final List<Row> ROWS = List.of(
            new Row(10e-3, 2e-6, 23e-6, 20e-6, 60e-6),
            new Row(18e-3, 3e-6, 25e-6, 20e-6, 60e-6),
            new Row(24e-3, 5e-6, 28e-6, 20e-6, 60e-6),
            new Row(30e-3, 5e-6, 28e-6, 20e-6, 60e-6),
            new Row(40e-3, 6e-6, 33e-6, 25e-6, 70e-6),
            new Row(50e-3, 6e-6, 36e-6, 30e-6, 80e-6),
            new Row(65e-3, 8e-6, 43e-6, 40e-6, 90e-6),
            new Row(80e-3, 10e-6, 51e-6, 40e-6, 100e-6));

    private RollingPlay() {}

    /** Asks for what it hangs on, and gives it under a name; once all is known. */
    static void asks(Asked of, String name, String bearing) {
        of.figure(Term.MAIN_JOURNAL);
        of.value(Term.MAIN_JOURNAL).ifPresent(journal -> {
            Row row = row(journal.high());
            boolean isBall = bearing.equals("ball");
            double least = isBall ? row.ballLeast() : row.rollerLeast();
            double most = isBall ? row.ballMost() : row.rollerMost();
            // a limit both ways: what is worked out at the worst takes the most of C3
            of.given(
                    name,
                    Measured.of(
                            (least + most) / 2,
                            List.of(Source.rectangular(name, Source.Kind.TOLERANCE, name, (most - least) / 2))));
            of.takes(
                    Choice.MAIN_BEARING.path(),
                    "play of the main " + bearing + " bearings: " + micrometres(least) + " to " + micrometres(most)
                            + " µm across, groups normal to C3 for such a journal, not mounted",
                    SOURCE);
        });
    }

    private static Row row(double journal) {
        return ROWS.stream().filter(row -> journal <= row.upTo()).findFirst().orElse(ROWS.get(ROWS.size() - 1));
    }

    private static long micrometres(double metres) {
        return Math.round(1e6 * metres);
    }
}
