package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.term.Term;

/** What cranking pressure and leak-down prove, and what they do not. */
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
        if (build.has(Term.LEAK_DOWN)) {
            findings.add(
                    new Finding(
                            Finding.Kind.WARNING,
                            Term.LEAK_DOWN.path(),
                            "air at test pressure turns a free crank with force",
                            "lock the crank, keep hands and tools clear of flywheel and shaft, and let the pressure in slowly"));
        }
        return findings;
    }
}
