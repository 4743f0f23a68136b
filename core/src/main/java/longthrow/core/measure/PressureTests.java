package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.term.Term;

/** What cranking pressure proves, and what it does not. */
final class PressureTests {
    private PressureTests() {}

    static List<Finding> findings(Build build) {
        List<Finding> findings = new ArrayList<>();
        if (build.has(Term.CRANKING_PRESSURE)) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    Term.CRANKING_PRESSURE.path(),
                    "cranking pressure proves little: a compression release opens the exhaust valve while you pull, and the figure moves with pulling speed,"
                            + " oil on the rings and the gauge's own volume (common practice, no source)",
                    "take a leak-down with the crank locked before you judge rings or valves by it"));
        }
        return findings;
    }
}
