package longthrow.workshop.web.outline;

import java.util.List;
import longthrow.core.term.OutlinedPart;
import longthrow.workshop.web.Frame;

/**
 * The outline of one part, to be entered.
 * @param based  revision it is entered on
 * @param key    of the edit, for once
 * @param unit   of bare numbers
 * @param guide  drawing of datum and directions, as SVG
 * @param instead readings it counts for, in words
 * @param typed  what stands in the boxes
 * @param isKept whether the build has one
 * @param faults of what was sent
 * @param said   of a file that was read; empty for nothing
 * @param seen   the outline redrawn
 */
public record OutlinePage(
        Frame frame,
        OutlinedPart part,
        int based,
        String key,
        String unit,
        String guide,
        String instead,
        Typed typed,
        boolean isKept,
        List<String> faults,
        String said,
        Seen seen) {
    public OutlinePage {
        faults = List.copyOf(faults);
    }

    /** Address it is sent to. */
    public String action() {
        return frame.base() + "/outlines/" + part.key();
    }

    /** Whether it may be told where along the crankshaft it is. */
    public boolean hasDepth() {
        return part.along().isTold();
    }

    /**
     * What was typed, redrawn.
     * @param drawing as SVG
     * @param facts   of it
     * @param faults  why it is not drawn, or what speaks against it where it is
     */
    public record Seen(String drawing, List<String> facts, List<String> faults) {
        public Seen {
            facts = List.copyOf(facts);
            faults = List.copyOf(faults);
        }
    }

    /** All parts that may be traced. */
    public record Listed(Frame frame, List<Row> rows) {
        public Listed {
            rows = List.copyOf(rows);
        }
    }

    /** One of them. */
    public record Row(String key, String label, String state, String instead) {}
}
