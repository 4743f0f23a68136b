package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Stops;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * What stands out in one entry by itself, before it is held against any other: told when it is entered and in the answer. Nothing is refused for it
 * and nothing is mended.
 */
public final class EntryCautions {
    /** One to three digits, a point and three digits, as those write six thousand and a half who part thousands by a point. */
    private static final Pattern PERHAPS_THOUSANDS =
            Pattern.compile("^\\s*([+\\-−]?\\s*[1-9]\\d{0,2})\\.(\\d{3})(?!\\d)(.*)$", Pattern.DOTALL);

    private static final double THOUSAND = 1000;

    private EntryCautions() {}

    /**
     * Everything that stands out in an entry.
     * @param place of it, for the finding
     */
    public static List<Finding> of(Build build, Term term, Given given, String place) {
        List<Finding> all = new ArrayList<>();
        written(given).stream()
                .flatMap(q -> inThousands(term, q).stream()
                        .map(t -> new Finding(
                                Finding.Kind.WARNING,
                                place,
                                q.written() + " was taken as " + Measure.words(build, term, q.si(), 0)
                                        + ", which no 80 to 500 cc single shows; with a point that parts thousands it is "
                                        + t,
                                "if " + t + " was meant, write it so")))
                .findFirst()
                .ifPresent(all::add);
        wideDoubt(build, term, given, place).ifPresent(all::add);
        nobodysWord(build, term, given, place).ifPresent(all::add);
        return all;
    }

    /** A figure without its point, where its point may be one that parts thousands: no engine has the figure as it stands, and one may have it so. */
    public static Optional<String> inThousands(Term term, Quantity figure) {
        Matcher digits = PERHAPS_THOUSANDS.matcher(figure.written());
        Believable range = term.believable();
        boolean perhaps = figure.dimension() != Dimension.TEMPERATURE
                && !range.holds(figure.si())
                && range.holds(THOUSAND * figure.si())
                && digits.matches();
        return perhaps ? Optional.of(digits.group(1) + digits.group(2) + digits.group(3)) : Optional.empty();
    }

    /**
     * A doubt that leaves nothing of the figure: larger than the figure itself where the figure cannot be near nothing, or wider than all that engines
     * of this kind show.
     */
    static Optional<Finding> wideDoubt(Build build, Term term, Given given, String place) {
        Optional<Quantity> doubt = Optional.ofNullable(doubt(given));
        Optional<Quantity> figure = given.figure();
        if (doubt.isEmpty() || figure.isEmpty() || term.dimension() == Dimension.TEMPERATURE) {
            return Optional.empty();
        }
        Believable range = term.believable();
        double half = doubt.get().si();
        boolean largerThanItself =
                range.least() > 0 && half > Math.abs(figure.get().si());
        if (!largerThanItself && half <= range.width()) {
            return Optional.empty();
        }
        String stands = Measure.words(build, term, half, 0);
        return Optional.of(
                new Finding(
                        Finding.Kind.WARNING,
                        place,
                        term.label() + ": its ± of " + stands + " is "
                                + (largerThanItself
                                        ? "larger than the figure itself, "
                                                + figure.get().written()
                                        : "wider than all that 80 to 500 cc singles show")
                                + ", so next to nothing is known of it, nor of what hangs on it",
                        "look at the ± and its unit; it is half the width of the range that holds the true figure 95 times in 100"));
    }

    /** Of everything that counts, or counts for more, as a maker's word: what is none as it is written, each at its place. */
    public static List<Finding> nobodysWords(Build build) {
        return Stream.concat(Stops.RATINGS.stream(), Stops.BETTER_AS_HIS.stream())
                .flatMap(term ->
                        build.of(term).stream().flatMap(given -> nobodysWord(build, term, given, term.path()).stream()))
                .toList();
    }

    /** A rating that nobody stands behind: it may stop an engine and never lets one run. And what else would count as its maker's word, off a sheet of which is not said so. */
    private static Optional<Finding> nobodysWord(Build build, Term term, Given given, String place) {
        boolean isSheetsWord = Stops.BETTER_AS_HIS.contains(term) && given instanceof Given.Specified;
        return (Stops.RATINGS.contains(term) || isSheetsWord)
                        && !given.isMakersWord(term)
                        && given.figure().isPresent()
                ? Optional.of(new Finding(
                        Finding.Kind.WARNING,
                        place,
                        term.label() + " " + given.figure().get().written()
                                + " "
                                + Stops.whoseWord(build, term)
                                + (isSheetsWord ? ", so it does not count as his" : ", so it lifts no stop"),
                        Stops.WHOSE_WORD))
                : Optional.empty();
    }

    private static List<Quantity> written(Given given) {
        return given instanceof Given.Taken taken
                ? taken.readings()
                : given.figure().map(List::of).orElse(List.of());
    }

    private static @Nullable Quantity doubt(Given given) {
        if (given instanceof Given.Typed typed) {
            return typed.plusMinus();
        }
        if (given instanceof Given.Specified sheet) {
            return sheet.tolerance();
        }
        return given instanceof Given.Assumed assumed ? assumed.plusMinus() : null;
    }
}
