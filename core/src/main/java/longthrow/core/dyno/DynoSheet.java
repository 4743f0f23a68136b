package longthrow.core.dyno;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.gain.AirStandard;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.recording.FaultKind;

/**
 * Runs as their owner wrote them down: by which bench, in which air, in which order. Immutable; lists keep the order of the file, which is the order of the runs.
 * @param name       of what was tried
 * @param invented   whether it says that it is made up
 * @param units      which come first in print
 * @param notes      in the owner's words
 * @param engine     name of the file with its build; empty where none is
 * @param standard   to which runs are corrected; empty for as read
 * @param bench      by what they were read
 * @param baseline   setup that others are held against; the first session's where it is not said
 * @param from       lowest speed that is used; empty for all
 * @param to         highest speed that is used; empty for all
 * @param sessions   in order of time
 */
public record DynoSheet(
        String name,
        boolean invented,
        UnitSystem units,
        List<String> notes,
        Optional<String> engine,
        Optional<AirStandard> standard,
        Bench bench,
        Optional<String> baseline,
        Optional<Quantity> from,
        Optional<Quantity> to,
        List<Session> sessions) {
    public DynoSheet {
        notes = List.copyOf(notes);
        sessions = List.copyOf(sessions);
    }

    /** The same with other units first. */
    public DynoSheet withUnits(UnitSystem first) {
        return new DynoSheet(name, invented, first, notes, engine, standard, bench, baseline, from, to, sessions);
    }

    /**
     * What they were read with.
     * @param name        in the owner's words; figures of two dynos are never held beside each other as they are
     * @param figures     of the bench, in the order of {@link BenchFigure}
     * @param calibration loads hung on the cell and what it showed, in the order they were hung; for a brake
     * @param coastDown   file with a run in which drum or vehicle ran out by itself
     * @param falls       masses that fell on a cord and turned the drum, to find its inertia
     * @param added       a disc of known inertia put on the drum, to find the drum's
     */
    public record Bench(
            BenchKind kind,
            String name,
            Map<BenchFigure, Stated> figures,
            List<Hung> calibration,
            Optional<String> coastDown,
            List<Fall> falls,
            Optional<Added> added) {
        public Bench {
            EnumMap<BenchFigure, Stated> copy = new EnumMap<>(BenchFigure.class);
            copy.putAll(figures);
            figures = Collections.unmodifiableMap(copy);
            calibration = List.copyOf(calibration);
            falls = List.copyOf(falls);
        }
    }

    /**
     * A mass that fell from rest on a cord around the drum.
     * @param time  of the fall
     * @param stops from landing until the drum stood; empty where it was not taken
     */
    public record Fall(Stated mass, Stated height, Stated time, Optional<Stated> stops) {}

    /**
     * A disc put on the drum for one more run-down.
     * @param inertia   where it is known; else by mass and diameter
     * @param bore      empty for a solid disc
     * @param coastDown file with the run-down with it on
     */
    public record Added(
            Optional<Stated> inertia,
            Optional<Stated> mass,
            Optional<Stated> diameter,
            Optional<Stated> bore,
            String coastDown) {}

    /**
     * One load on the cell.
     * @param load  hung, as force or mass
     * @param shown by the cell, a bare number or a force
     */
    public record Hung(Quantity load, Quantity shown) {}

    /** Air that the engine drew; each empty where it was not read. Pressure is that of the barometer at the place, not brought to sea level. */
    public record Air(Optional<Stated> pressure, Optional<Stated> temperature, Optional<Stated> humidity) {
        /** Nothing was read. */
        public static Air unknown() {
            return new Air(Optional.empty(), Optional.empty(), Optional.empty());
        }

        public boolean isKnown() {
            return pressure.isPresent() && temperature.isPresent() && humidity.isPresent();
        }

        /** This, and for what was not read of it another. */
        Air or(Air other) {
            return new Air(
                    pressure.or(other::pressure), temperature.or(other::temperature), humidity.or(other::humidity));
        }
    }

    /**
     * Runs one after the other with nothing changed between them.
     * @param name  each once
     * @param setup what was on the engine
     * @param date  as written; empty when not said
     * @param who   ran it; empty when not said
     * @param dyno  where it is another than the bench's; empty for that one
     * @param check whether it ran a reference engine, to see the dyno's level that day
     */
    public record Session(
            String name, String setup, String date, String who, String dyno, boolean check, Air air, List<Pull> pulls) {
        public Session {
            pulls = List.copyOf(pulls);
        }
    }

    /**
     * One run.
     * @param name  empty for its number
     * @param aside why its owner sets it aside; empty where it counts
     * @param air   where it was read again for this run
     */
    public record Pull(String name, Evidence evidence, String aside, Optional<Air> air) {
        /** Air that it drew: what was read again for it, and the session's for the rest. */
        Air airIn(Session session) {
            return air.map(own -> own.or(session.air())).orElse(session.air());
        }
    }

    /** What is known of a run. */
    public sealed interface Evidence {}

    /** Its highest power or torque alone, as read. */
    public record Peak(Stated figure) implements Evidence {}

    /** Torque or power at speeds, as read; speeds rise. */
    public record Table(List<Row> rows) implements Evidence {
        public Table {
            rows = List.copyOf(rows);
        }
    }

    /** One line of a table: torque or power, all rows alike. */
    public record Row(Quantity speed, Stated figure) {}

    /**
     * A logger's file.
     * @param file    its name
     * @param columns meaning by name or number of the column, where the owner says it; the others as recognised
     * @param rate    rows a second, where there is no time in it
     * @param keep    faults whose rows its owner keeps all the same
     */
    public record Log(String file, Map<String, String> columns, Optional<Quantity> rate, Set<FaultKind> keep)
            implements Evidence {
        public Log {
            columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
            keep = Set.copyOf(keep);
        }
    }
}
