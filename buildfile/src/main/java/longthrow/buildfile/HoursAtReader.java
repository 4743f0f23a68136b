package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.HoursAt;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;

/** The section {@code hours_at:} of a build file: shares of the running time at speeds. */
final class HoursAtReader {
    private HoursAtReader() {}

    static List<HoursAt> read(Fields top, Faults faults) {
        Optional<Node> node = top.node(Layout.HOURS_AT);
        if (node.isEmpty()) {
            return List.of();
        }
        List<Fields> entries = BuildReader.eachMapping(node.get(), Layout.HOURS_AT, Layout.HOURS_AT_KEYS, faults);
        List<HoursAt> steps = new ArrayList<>();
        for (Fields fields : entries) {
            Optional<Quantity> speed = fields.required("speed", "3000 rpm")
                    .flatMap(t -> fields.quantity("speed", Dimension.ROTATIONAL_SPEED));
            Optional<Quantity> share =
                    fields.required("share", "70 %").flatMap(t -> fields.quantity("share", Dimension.RATIO));
            if (speed.isPresent() && share.isPresent()) {
                steps.add(new HoursAt(speed.get(), share.get()));
            }
        }
        boolean isWhole = node.get() instanceof Sequence list
                && steps.size() == list.items().size();
        if (!isWhole) {
            return List.of(); // what is wrong with the others is said; what is left would add up to too little
        }
        Optional<HoursAt.Trouble> trouble = HoursAt.trouble(steps);
        trouble.ifPresent(t -> refuse(t, node.get().place(), entries, faults));
        return trouble.isPresent() ? List.of() : steps;
    }

    private static void refuse(HoursAt.Trouble trouble, Place all, List<Fields> entries, Faults faults) {
        if (trouble.step().isPresent()) {
            entries.get(trouble.step().getAsInt())
                    .refuse(
                            trouble.isShare() ? "share" : "speed",
                            trouble.found(),
                            trouble.why(),
                            trouble.allowed(),
                            trouble.mend());
        } else {
            faults.add(all, Layout.HOURS_AT, trouble.found(), trouble.why(), trouble.allowed(), trouble.mend());
        }
    }
}
