package longthrow.workshop.store;

import java.util.List;

/**
 * What became of an export of everything.
 *
 * @param leftOut what could not be read and is not in it, each as a sentence; empty where all went out
 */
public record ExportReport(List<String> leftOut) {
    /** Keeps its own copy. */
    public ExportReport {
        leftOut = List.copyOf(leftOut);
    }
}
