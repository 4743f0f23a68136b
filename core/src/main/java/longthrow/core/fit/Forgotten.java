package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.catalogue.PartKind;

/** What is usually needed along with a part and easily left out of the sum; common practice, no source. */
public final class Forgotten {
    private Forgotten() {}

    /** What any build needs besides the parts that are looked for: asked about one by one, never priced by guess. */
    public static List<String> always() {
        return List.of(
                "gasket set",
                "piston rings",
                "bolts: rod, head, covers",
                "flywheel key and nut",
                "shaft seals and bearings",
                "oil, for running in and after",
                "spark plug",
                "machining and the way to the shop",
                "fuel, cleaning stuff, thread locker",
                "shipping where a price does not hold it");
    }

    static List<String> with(Found found) {
        List<String> items = new ArrayList<>();
        found.rows().filter(r -> !r.isOwn()).map(Row::kind).distinct().forEach(kind -> items.addAll(with(kind)));
        boolean machined = found.deckCut() != null
                || !found.honed().isEmpty()
                || found.rows().anyMatch(r -> !r.cuts().isEmpty());
        if (machined) {
            items.add("way to the shop and back, cleaning after machining");
        }
        if (!items.isEmpty()) {
            items.add("gasket set, oil, shipping where it is not said");
        }
        return items;
    }

    private static List<String> with(PartKind kind) {
        return switch (kind) {
            case CONNECTING_ROD -> List.of("rod bolts, new", "insert shells where the rod takes them");
            case PISTON -> List.of("rings, pin and clips if not in the box", "honing the bore for new rings");
            case CRANKSHAFT -> List.of("shaft seals, main bearings", "flywheel key and nut");
            case GASKET -> List.of("head bolts or washers if stretched");
            case HEAD -> List.of("valve job, valve stem seals");
            default -> List.of();
        };
    }
}
