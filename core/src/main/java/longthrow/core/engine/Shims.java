package longthrow.core.engine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.build.Build;
import longthrow.core.quantity.ExactLength;

/** What taking shims out of a big-end cap leaves, the same from each side: the bearing closes by the thickness taken out of one. */
public final class Shims {
    private Shims() {}

    /**
     * One way.
     * @param taken   shims taken out on each side
     * @param removed their thickness together
     * @param left    clearance left [m]; negative when the cap would pinch the pin
     */
    public record Option(List<ExactLength> taken, ExactLength removed, double left) {
        public Option {
            taken = List.copyOf(taken);
        }

        /** As "0.05 + 0.025 mm". */
        public String text() {
            return taken.stream()
                    .map(t -> t.toMillimetresExact().toPlainString())
                    .collect(Collectors.joining(" + ", "", " mm"));
        }
    }

    /** Every different thickness that can be taken out, thinnest first; the pack left whole is not among them. */
    public static List<Option> options(Build build, double clearance) {
        List<List<ExactLength>> picks = new ArrayList<>(List.of(List.of()));
        for (ExactLength shim : build.shims()) {
            for (List<ExactLength> pick : List.copyOf(picks)) {
                List<ExactLength> more = new ArrayList<>(pick);
                more.add(shim);
                if (picks.stream().noneMatch(p -> thickness(p).equals(thickness(more)))) {
                    picks.add(more);
                }
            }
        }
        return picks.stream()
                .filter(p -> !p.isEmpty())
                .map(p -> new Option(p, thickness(p), clearance - thickness(p).metres()))
                .sorted(Comparator.comparing(Option::removed))
                .toList();
    }

    private static ExactLength thickness(List<ExactLength> shims) {
        return shims.stream().reduce(ExactLength.ZERO, ExactLength::plus);
    }
}
