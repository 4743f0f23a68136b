package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish.Preference;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The owner's order of preference among combinations that fit; what remains equal is put in the order of price and codes. */
final class Ranking implements Comparator<Found> {
    private final List<Preference> order;
    private final @Nullable Quantity aimedSquish;
    private final @Nullable Quantity aimedRatio;

    Ranking(Build build) {
        order = build.fit().preferences();
        aimedSquish = build.aims().get(Term.SQUISH);
        aimedRatio = build.aims().get(Term.COMPRESSION_RATIO);
    }

    /** The order in words, as {@link #compare} keeps it for this build. */
    static String words(Build build) {
        boolean squish = build.aims().containsKey(Term.SQUISH);
        boolean ratio = build.aims().containsKey(Term.COMPRESSION_RATIO);
        List<Preference> order = build.fit().preferences();
        List<String> words = new ArrayList<>();
        for (Preference preference : order) {
            boolean idle = (preference == Preference.SQUISH && !squish) || (preference == Preference.RATIO && !ratio);
            words.add(preference.meaning() + (idle ? " (none is aimed at, so it does not count)" : ""));
        }
        if (!order.contains(Preference.PRICE)) {
            words.add(Preference.PRICE.meaning());
        }
        words.add("the one that takes least metal off, then the name");
        List<String> left = new ArrayList<>();
        if (squish && !order.contains(Preference.SQUISH)) {
            left.add(Preference.SQUISH.key());
        }
        if (ratio && !order.contains(Preference.RATIO)) {
            left.add(Preference.RATIO.key());
        }
        return String.join(", then ", words)
                + (left.isEmpty()
                        ? ""
                        : "; how near it comes to the " + String.join(" and ", left)
                                + " aimed at does not count in the order (fit: order: can make it count)");
    }

    @Override
    public int compare(Found a, Found b) {
        for (Preference preference : order) {
            int by = by(preference, a, b);
            if (by != 0) {
                return by;
            }
        }
        int byPrice = Long.compare(a.price(), b.price());
        if (byPrice != 0) {
            return byPrice;
        }
        int byMetal = Double.compare(a.metal(), b.metal()); // of equals the one that takes least off
        return byMetal != 0 ? byMetal : a.title().compareTo(b.title());
    }

    private int by(Preference preference, Found a, Found b) {
        return switch (preference) {
            case CERTAINTY -> certainty(a, b);
            case UNKNOWNS -> Integer.compare(a.unknowns(), b.unknowns());
            case MACHINING -> Integer.compare(a.cuts(), b.cuts());
            case PRICE -> Long.compare(a.price(), b.price());
            case SQUISH -> Double.compare(squishError(a), squishError(b));
            case RATIO -> Double.compare(ratioError(a), ratioError(b));
            case LEAD_TIME -> Integer.compare(a.leadDays(), b.leadDays());
        };
    }

    /** What is not said cannot be sure: it ranks below what is said. */
    private static int certainty(Found a, Found b) {
        int known = Boolean.compare(a.isPartlyUnknown(), b.isPartlyUnknown());
        int sure = known != 0 ? known : a.sureness().compareTo(b.sureness());
        return sure != 0
                ? sure
                : Boolean.compare(b.combination().bySizes(), a.combination().bySizes());
    }

    /** 0 without an aim. [m] */
    private double squishError(Found found) {
        return aimedSquish == null ? 0 : Math.abs(found.combination().squishHalf() / 2e12 - aimedSquish.si());
    }

    /** 0 without an aim; an unknown ratio comes last. */
    private double ratioError(Found found) {
        double ratio = found.combination().ratio();
        return aimedRatio == null ? 0 : Double.isNaN(ratio) ? Double.MAX_VALUE : Math.abs(ratio - aimedRatio.si());
    }
}
