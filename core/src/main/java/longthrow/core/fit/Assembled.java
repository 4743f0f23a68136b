package longthrow.core.fit;

import java.util.EnumSet;
import java.util.Set;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What is read on parts that are together, and which they are: of no worth once one of them is another, and not to be read before it is there. */
public final class Assembled {
    private static final Set<Part> REACH = Set.of(Part.CRANKSHAFT, Part.ROD, Part.PISTON);
    private static final Set<Part> ALL = Set.of(Part.CRANKSHAFT, Part.ROD, Part.PISTON, Part.GASKET, Part.HEAD);

    private Assembled() {}

    /** Parts that must be together for a reading; empty for one that is taken on its part alone. */
    public static Set<Part> parts(Term term) {
        if (Fitted.REACH.contains(term)) {
            return REACH;
        }
        if (Fitted.UNDER_THE_HEAD.contains(term) || Fitted.PUT_TOGETHER.contains(term)) {
            return ALL;
        }
        return Fitted.BETWEEN.getOrDefault(term, EnumSet.noneOf(Part.class));
    }
}
