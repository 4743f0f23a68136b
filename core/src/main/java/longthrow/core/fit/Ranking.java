package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import longthrow.core.answer.Sureness;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish.Preference;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * The owner's order of preference among combinations that fit; what remains equal is put in the order of price and codes. The search orders by what
 * rows say of themselves; those that it brings are put in order once more by what the whole engine comes to with them.
 */
final class Ranking implements Comparator<Found> {
    /**
     * How one stands once it is put into the build.
     * @param sureness how surely it fits, by every rule
     * @param refused  sources that refuse it though another of the same rule passes it, where the owner chose none
     * @param untold   figures that it has not
     */
    record Standing(Sureness sureness, int refused, int untold) {}

    private final List<Preference> order;
    private final @Nullable Quantity aimedSquish;
    private final @Nullable Quantity aimedRatio;

    private final @Nullable Function<Found, Standing> standing;

    /** By what the rows say of themselves. */
    Ranking(Build build) {
        this(build, null);
    }

    /** By how each stands in the engine. */
    Ranking(Build build, @Nullable Function<Found, Standing> standing) {
        this.standing = standing;
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
            case SOURCES ->
                standing == null
                        ? 0
                        : Integer.compare(
                                standing.apply(a).refused(), standing.apply(b).refused());
            case UNKNOWNS -> unknowns(a, b);
            case MACHINING -> Integer.compare(a.cuts(), b.cuts());
            case PRICE -> Long.compare(a.price(), b.price());
            case SQUISH -> Double.compare(squishError(a), squishError(b));
            case RATIO -> Double.compare(ratioError(a), ratioError(b));
            case LEAD_TIME -> Integer.compare(a.leadDays(), b.leadDays());
        };
    }

    /** What is not said cannot be sure: it ranks below what is said. */
    private int certainty(Found a, Found b) {
        int judged = standing == null
                ? 0
                : standing.apply(a).sureness().compareTo(standing.apply(b).sureness());
        if (judged != 0) {
            return judged;
        }
        int known = Boolean.compare(a.isPartlyUnknown(), b.isPartlyUnknown());
        int sure = known != 0 ? known : a.sureness().compareTo(b.sureness());
        return sure != 0
                ? sure
                : Boolean.compare(b.combination().bySizes(), a.combination().bySizes());
    }

    /** A figure that cannot be told weighs more than a remark that a row does not make. */
    private int unknowns(Found a, Found b) {
        int untold = standing == null
                ? 0
                : Integer.compare(standing.apply(a).untold(), standing.apply(b).untold());
        return untold != 0 ? untold : Integer.compare(a.unknowns(), b.unknowns());
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
