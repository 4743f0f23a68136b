package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A run brought to a curve.
 * @param curve   empty where a remark says why there is none
 * @param remarks what else to know
 */
public record Reduced(Optional<RunCurve> curve, List<Remark> remarks) {
    public Reduced {
        remarks = List.copyOf(remarks);
        if (curve.isEmpty() && remarks.stream().noneMatch(r -> r.weight() == Remark.Weight.NO_CURVE)) {
            throw new IllegalArgumentException("no curve, and nothing says why");
        }
    }

    static Reduced refused(List<Remark> remarks, String why) {
        List<Remark> all = new ArrayList<>(remarks);
        all.add(new Remark(Remark.Weight.NO_CURVE, why));
        return new Reduced(Optional.empty(), all);
    }
}
