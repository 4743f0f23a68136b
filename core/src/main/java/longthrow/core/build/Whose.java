package longthrow.core.build;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Voucher;

/**
 * Who stands behind a figure that was specified, by what its owner wrote after {@code by}. Only the maker's word, off his sheet or off the engine's own plate,
 * lets anything run: a seller says what sells, and a name alone says nothing of what its bearer made. What is not surely a maker's counts as a claim.
 */
public enum Whose {
    /** The one who made the part or the engine: his sheet, manual, stamp or plate. */
    MAKERS,
    /** One who sells it. */
    SELLERS,
    /** Somebody's, of whom is not said that he made it. */
    SOMEBODYS,
    /** Nothing is said. */
    NOBODYS;

    private static final Set<String> MAKER = Set.of("maker", "makers", "manufacturer", "manufacturers", "factory");

    /** What a maker leaves on his part or in the box; a seller who has one is still a seller. */
    private static final Set<String> LEFT_BY_HIM =
            Set.of("plate", "nameplate", "stamp", "stamped", "sheet", "datasheet", "manual", "engraved", "cast");

    private static final Set<String> SELLER = Set.of(
            "seller",
            "sellers",
            "sold",
            "dealer",
            "dealers",
            "vendor",
            "vendors",
            "shop",
            "shops",
            "store",
            "trader",
            "list",
            "listing",
            "advert",
            "ad",
            "auction",
            "forum",
            "owner",
            "owners",
            "friend",
            "video",
            "web",
            "website",
            "internet");

    /** The owner's own: a sheet that he wrote, a plate that he made, is not his who made the part, unless he says that it is the maker's. */
    private static final Set<String> OWN =
            Set.of("my", "mine", "own", "myself", "i", "me", "we", "our", "ours", "self", "homemade", "handwritten");

    private static final Set<String> DOUBTED = Set.of(
            "no",
            "not",
            "none",
            "without",
            "lost",
            "missing",
            "unknown",
            "guess",
            "guessed",
            "maybe",
            "perhaps",
            "uncertain",
            "unsure",
            "unclear",
            "misread",
            "worn",
            "faded",
            "could",
            "might",
            "about",
            "another",
            "other",
            "others",
            "similar",
            "like",
            "bigger",
            "smaller",
            "larger",
            "replaced",
            "nothing");

    /** Words for a part that is not the one the engine was made with, whoever made it. */
    private static final Set<String> IN_ITS_PLACE = Set.of(
            "aftermarket", "replacement", "replaced", "upgrade", "upgraded", "billet", "racing", "tuning", "new");

    /** Whether it says of the part that it came in the place of the engine's own. */
    static boolean isOfAnotherPart(String by) {
        return words(by).stream().anyMatch(IN_ITS_PLACE::contains);
    }

    private static Set<String> words(String by) {
        return Arrays.stream(by.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"))
                .filter(w -> !w.isEmpty())
                .collect(Collectors.toUnmodifiableSet());
    }

    /** As an entry made of a catalogue's row says whose figure it is: its code, and who its seller says vouches for it. */
    public static String by(CataloguePart part) {
        String whose =
                part.voucher().basis() == Voucher.Basis.CLAIMED ? part.voucher().by() : "";
        return whose.isBlank() ? part.code() : part.code() + ", " + whose;
    }

    /** Of a catalogue's row. */
    public static Whose of(CataloguePart part) {
        return of(by(part), true);
    }

    /**
     * Of what stands after {@code by}.
     * @param by          as written, empty for nothing
     * @param isCatalogue whether it is of a catalogue's row: a catalogue is its seller's, unless it names the maker
     */
    static Whose of(String by, boolean isCatalogue) {
        Set<String> words = words(by);
        if (by.contains("?")) {
            return SOMEBODYS;
        }
        if (words.stream().anyMatch(SELLER::contains)) {
            return SELLERS;
        }
        boolean isOwn = words.contains("i") || words.contains("me") || words.contains("myself");
        boolean isMakers = (words.stream().anyMatch(MAKER::contains) && !isOwn)
                || (!isCatalogue
                        && words.stream().anyMatch(LEFT_BY_HIM::contains)
                        && words.stream().noneMatch(OWN::contains));
        if (isMakers && words.stream().noneMatch(DOUBTED::contains)) {
            return MAKERS;
        }
        return isCatalogue ? SELLERS : words.isEmpty() ? NOBODYS : SOMEBODYS;
    }
}
