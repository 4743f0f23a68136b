package longthrow.core.build;

import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Quantity;

/**
 * Flow through one port against lift of its valve, as a flow bench read it with all valves of the port lifted. What its owner did not write down is empty, and asked for where it counts.
 * @param valve       {@code intake} or {@code exhaust}
 * @param direction   which way the air went
 * @param coefficient area that the rows are coefficients of; empty where they are flows
 * @param depression  between room and port or cylinder at which flows were read
 * @param joined      how the port was joined to the room
 * @param temperature of the air before the port
 * @param air         pressure there
 * @param within      95 % half-width of a flow, as a share of it
 * @param note        empty for nothing
 * @param rows        in order of lift
 */
public record FlowTable(
        String valve,
        Optional<Direction> direction,
        Optional<Area> coefficient,
        Optional<Quantity> depression,
        Optional<Joined> joined,
        Optional<Quantity> temperature,
        Optional<Quantity> air,
        Optional<Quantity> within,
        String note,
        List<Row> rows) {
    public FlowTable {
        rows = List.copyOf(rows);
    }

    /**
     * One lift.
     * @param lift of the valve
     * @param flow volume flow, or a coefficient without unit; all rows alike
     */
    public record Row(Quantity lift, Quantity flow) {}

    /** Which way the air went. */
    public enum Direction {
        INTO("into_cylinder", "from the port into the cylinder"),
        OUT("out_of_cylinder", "from the cylinder out of the port");

        private final String key;
        private final String meaning;

        Direction(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public String key() {
            return key;
        }

        /** For people. */
        public String meaning() {
            return meaning;
        }
    }

    /** What a coefficient is of. */
    public enum Area {
        CURTAIN("curtain_area", "circumference of the head times lift"),
        HEAD("head_area", "circle of the valve head"),
        THROAT("throat_area", "circle of the throat, stem taken out");

        private final String key;
        private final String meaning;

        Area(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public String key() {
            return key;
        }

        /** For people. */
        public String meaning() {
            return meaning;
        }
    }

    /** How the port was joined to the room. */
    public enum Joined {
        RADIUSED("radiused", "a bell-mouth, port plate or clay radius, or the pipe that will be there"),
        BARE("bare", "the bare face of the head");

        private final String key;
        private final String meaning;

        Joined(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public String key() {
            return key;
        }

        /** For people. */
        public String meaning() {
            return meaning;
        }
    }

    /** The same with another remark. */
    public FlowTable withNote(String other) {
        return new FlowTable(valve, direction, coefficient, depression, joined, temperature, air, within, other, rows);
    }
}
