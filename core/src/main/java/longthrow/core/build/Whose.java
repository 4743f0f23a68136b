package longthrow.core.build;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Voucher;
import longthrow.core.term.Part;

/**
 * Who stands behind a figure that was specified, by what its owner wrote after {@code by}. Only the maker's word, off his sheet or off the engine's own plate,
 * lets anything run: a seller says what sells, and a name alone says nothing of what its bearer made. It counts as the maker's in a few {@link #accepted} forms alone,
 * for no list of words that take it back would ever be complete; what else is to be said of it stands in a note.
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

    /** What a maker leaves of his word, after "maker's". */
    private static final String LEFT_BY_HIM = "sheet|plate|stamp|manual";

    /** Words for one who sells; they tell how it is said, and decide nothing. */
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

    /** Words for a part that is not the one the engine was made with, whoever made it. */
    private static final Set<String> IN_ITS_PLACE = Set.of(
            "aftermarket", "replacement", "replaced", "upgrade", "upgraded", "billet", "racing", "tuning", "new");

    /** As {@link #by(CataloguePart)} writes it: a code, which has no space in it, and who claims it. */
    private static final Pattern CODED = Pattern.compile("\\S+, (.*)");

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

    /** Of a catalogue's row: its seller's, unless he names the maker as the one who claims it. */
    public static Whose of(CataloguePart part) {
        boolean isMakers = part.voucher().basis() == Voucher.Basis.CLAIMED
                && isMakersForm(part.voucher().by(), part.kind().part());
        return isMakers ? MAKERS : SELLERS;
    }

    /**
     * Of what stands after {@code by}.
     * @param by          as written, empty for nothing
     * @param isCatalogue whether it is of a catalogue's row: a catalogue is its seller's, unless it names the maker, alone or behind the code of the row
     * @param part        of the figure: the maker of another says nothing of it
     */
    static Whose of(String by, boolean isCatalogue, Part part) {
        Matcher coded = CODED.matcher(by);
        if (isMakersForm(isCatalogue && coded.matches() ? coded.group(1) : by, part)) {
            return MAKERS;
        }
        if (isCatalogue || words(by).stream().anyMatch(SELLER::contains)) {
            return SELLERS;
        }
        return by.isBlank() ? NOBODYS : SOMEBODYS;
    }

    private static boolean isMakersForm(String by, Part part) {
        String words =
                by.strip().toLowerCase(Locale.ROOT).replace('\u2019', '\'').replaceAll("\\s+", " ");
        String made = String.join("|", namesOf(part));
        return words.matches("(the |its )?((" + made + ")('s)? )?maker('s (" + LEFT_BY_HIM + "))?")
                || words.matches("(the |its )?engine's plate");
    }

    /** Names under which a part's maker may be told, beside the engine's. */
    private static List<String> namesOf(Part part) {
        List<String> names = new ArrayList<>(List.of("engine", part.label()));
        names.addAll(
                switch (part) {
                    case ROD -> List.of("rod");
                    case FLYWHEEL -> List.of("wheel");
                    case CRANKSHAFT -> List.of("crank", "donor");
                    case CAMSHAFT -> List.of("cam");
                    case GASKET -> List.of("gasket");
                    case SPRING -> List.of("spring");
                    case RINGS -> List.of("ring");
                    case LIMITER -> List.of("limiter");
                    case WHOLE,
                            OUTPUT_SHAFT,
                            IGNITION,
                            HEAD,
                            INTAKE_VALVE,
                            EXHAUST_VALVE,
                            ROCKER,
                            PUSHROD,
                            CYLINDER,
                            PISTON,
                            CRANKCASE,
                            INTAKE,
                            CARBURETTOR,
                            EXHAUST,
                            CLUTCH,
                            SPROCKET,
                            USE,
                            PLACE -> List.of();
                });
        return names;
    }

    /** The forms that count as a maker's word, for messages and documents. */
    public static String accepted() {
        return "the maker, the maker's sheet, plate, stamp or manual (or its; of a rod, the rod maker's) and the engine's plate alone";
    }
}
