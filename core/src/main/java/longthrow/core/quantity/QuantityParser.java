package longthrow.core.quantity;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads what people write: {@code 66.01 mm}, {@code 2 5/8 in}, {@code 5' 2"}, {@code -5 °F}, {@code 55 ± 0.02 mm}.
 *
 * <p>Nothing is guessed. What can be read in one way only is taken, and said back in the notes when it was written in an
 * unusual way; what can be read in two ways is refused with both spelled out. A number without a unit is refused
 * with the units that would fit. No text of any length makes it throw.
 */
public final class QuantityParser {
    /** Longer than any value with its doubt; a longer text is something else pasted in. */
    private static final int LONGEST_TEXT = 200;

    private static final Pattern BRACKETED = Pattern.compile("\\(([^()±]*+)±([^()±]*+)\\)(.*)");
    private static final Pattern FIRST_OF_PAIR = Pattern.compile("(ft\\.?|feet|foot|'|lbs?\\.?) ?[-,]? ?(?=[0-9.])");
    private static final Pattern RANGE = Pattern.compile("(-|to|\\.\\.\\.?|…) ?[0-9].*");
    private static final Pattern ONE_SIDED = Pattern.compile(".*[+-] ?[.,]?[0-9].*");

    /** Of a unit, the smaller one that may follow it, and how many of those make one. */
    private record Pair(Unit smaller, Fraction count) {}

    private static final Map<Unit, Pair> PAIRS = Map.of(
            Units.FOOT, new Pair(Units.INCH, Fraction.of(12)),
            Units.POUND, new Pair(Units.OUNCE, Fraction.of(16)));

    /** A number with its unit as written, before the unit is known. */
    private record Piece(WrittenNumber number, String unit, boolean isPair) {}

    private final @Nullable Dimension expected;
    private final String written;
    private final List<String> notes = new ArrayList<>();

    private QuantityParser(String written, @Nullable Dimension expected) {
        this.written = written;
        this.expected = expected;
    }

    /** Reads a quantity of the dimension wanted here. */
    public static Parsed parse(String text, Dimension expected) {
        return new QuantityParser(text, expected).parse();
    }

    /** Reads a quantity whose unit says its dimension; a bare number is refused. */
    public static Parsed parse(String text) {
        return new QuantityParser(text, null).parse();
    }

    private Parsed parse() {
        try {
            return new Parsed.Understood(read());
        } catch (Refusal refusal) {
            return refusal.of(written);
        }
    }

    private Stated read() throws Refusal {
        if (written.length() > LONGEST_TEXT) {
            throw new Refusal("is far too long", "at most " + LONGEST_TEXT + " characters", "write one quantity");
        }
        String plain = WrittenText.plain(written);
        if (plain.isEmpty()) {
            throw new Refusal("is empty", fitting(), "write a number and its unit, such as " + example("66.01"));
        }
        refuseControlCharacters(plain);
        Matcher bracketed = BRACKETED.matcher(plain);
        if (bracketed.matches()) {
            String unit = " " + bracketed.group(3).strip();
            plain = bracketed.group(1).strip() + unit + "±" + bracketed.group(2).strip() + unit;
        }
        int sign = plain.indexOf('±');
        if (sign < 0) {
            return new Stated(written, quantity(piece(plain), written.strip()), Optional.empty(), notes);
        }
        return readWithDoubt(
                plain.substring(0, sign).strip(), plain.substring(sign + 1).strip());
    }

    private Stated readWithDoubt(String valueText, String doubtText) throws Refusal {
        if (valueText.isEmpty() || doubtText.isEmpty() || doubtText.indexOf('±') >= 0) {
            throw new Refusal(
                    "needs one value before and one doubt behind a single ±", fitting(), "write it like 55 ± 0.02 mm");
        }
        Piece value = piece(valueText);
        Piece doubt = piece(doubtText);
        boolean inPercent = Spellings.find(doubt.unit(), Dimension.RATIO)
                .filter(entry -> entry.unit() == Units.PERCENT)
                .isPresent();
        boolean unitIsShared = value.unit().isEmpty() && !doubt.unit().isEmpty() && !inPercent;
        if (value.unit().isEmpty() && !unitIsShared && !(expected != null && expected.takesBareNumbers())) {
            String number = value.number().understood();
            throw new Refusal(
                    "has no unit",
                    fitting(),
                    "write "
                            + (inPercent
                                    ? example(number) + ", and behind it ± " + doubtText
                                    : example(number + " ± " + doubtText)));
        }
        Quantity quantity = unitIsShared
                ? quantity(new Piece(value.number(), doubt.unit(), false), valueText + " " + doubt.unit())
                : quantity(value, valueText);
        if (doubt.number().isNegative()) {
            throw new Refusal("has a negative doubt", "zero or more behind the ±", "leave out the minus behind the ±");
        }
        return new Stated(
                written, quantity, Optional.of(doubtOf(quantity, doubt, doubtText, inPercent, value.isPair())), notes);
    }

    private Quantity doubtOf(Quantity value, Piece doubt, String doubtText, boolean inPercent, boolean ofPair)
            throws Refusal {
        Unit unit = value.unit().ofDifference();
        if (inPercent && value.unit() != Units.PERCENT) {
            return relativeDoubt(value, doubt, doubtText);
        }
        if (doubt.unit().isEmpty() && ofPair) {
            throw new Refusal(
                    "has no unit behind the ±, and two before it",
                    fitting(),
                    "write ± " + doubtText + " " + unit.symbol() + ", or the unit that is meant");
        }
        if (!doubt.unit().isEmpty()) {
            unit = unit(doubt, unit.dimension());
        }
        noteReading(doubt, unit);
        return Quantity.of(
                (doubt.unit().isEmpty() ? doubtText + " " + unit.symbol() : doubtText).strip(),
                doubt.number().value(),
                unit);
    }

    private Quantity relativeDoubt(Quantity value, Piece doubt, String doubtText) throws Refusal {
        String percent = doubt.number().understood();
        if (value.dimension() == Dimension.RATIO || value.dimension() == Dimension.TEMPERATURE) {
            throw new Refusal(
                    "has a doubt in per cent of " + value.dimension().withArticle() + ", which can be read in two ways",
                    "a doubt in the unit of the value",
                    "write the ± in the unit of the value");
        }
        Fraction share = doubt.number().value().times(Units.PERCENT.factor());
        Fraction size = value.value().signum() < 0 ? value.value().negated() : value.value();
        Quantity absolute = Quantity.of(doubtText, size.times(share), value.unit());
        notes.add("read ± " + percent + " % as a share of the value, ± " + absolute.value() + " "
                + value.unit().symbol());
        return absolute;
    }

    /** Number and unit text; two of them for feet and inches, pounds and ounces, brought to the smaller unit. */
    private Piece piece(String text) throws Refusal {
        WrittenNumber first = WrittenNumber.read(text);
        Matcher pair = FIRST_OF_PAIR.matcher(first.rest());
        if (!pair.lookingAt() || !Spellings.all(first.rest()).isEmpty()) { // ft3 is one unit
            return new Piece(first, first.rest(), false);
        }
        Unit larger = Spellings.all(pair.group(1)).get(0).unit();
        Pair with = PAIRS.get(larger);
        WrittenNumber second = WrittenNumber.read(first.rest().substring(pair.end()));
        if (with == null || second.rest().isEmpty()) {
            throw new Refusal(
                    "has no unit behind " + second.typed(), fitting(), "write it like 5 ft 2 in, 2' 3\" or 3 lb 4 oz");
        }
        boolean smallerFollows = Spellings.find(second.rest(), with.smaller().dimension())
                .filter(entry -> entry.unit() == with.smaller())
                .isPresent();
        if (!smallerFollows || !first.value().isWhole() || second.value().compareTo(with.count()) >= 0) {
            throw new Refusal(
                    "does not read as whole " + larger + " and less than " + with.count() + " " + with.smaller(),
                    fitting(),
                    "write it like 5 ft 2 in, 2' 3\" or 3 lb 4 oz, or in one unit");
        }
        Fraction larges = first.value().times(with.count());
        Fraction sum = first.isNegative() ? larges.minus(second.value()) : larges.plus(second.value());
        WrittenNumber together = new WrittenNumber(
                sum, text.substring(0, text.length() - second.rest().length()).strip(), sum.toString(), second.rest());
        return new Piece(together, second.rest(), true);
    }

    private Quantity quantity(Piece piece, String itsText) throws Refusal {
        Unit unit = unit(piece, expected);
        noteReading(piece, unit);
        Quantity quantity = Quantity.of(itsText, piece.number().value(), unit);
        switch (unit.dimension()) {
            case LENGTH -> refuseInexact(quantity);
            case TEMPERATURE -> refuseBelowAbsoluteZero(quantity);
            case COUNT -> refusePartOfOne(quantity);
            default -> {}
        }
        return quantity;
    }

    private void noteReading(Piece piece, Unit unit) {
        boolean saidBack = Spellings.find(piece.unit(), unit.dimension())
                .filter(Spellings.Entry::saidBack)
                .isPresent();
        if (saidBack || !piece.number().isPlain()) {
            String space = piece.unit().startsWith("\"") || piece.unit().startsWith("'") ? "" : " ";
            String typed = (piece.number().typed() + space + piece.unit()).strip();
            String understood = (piece.number().understood() + " " + unit.symbol()).strip();
            notes.add("read " + typed + " as " + understood
                    + (saidBack ? ", " + unit.dimension().withArticle() : ""));
        }
    }

    private Unit unit(Piece piece, @Nullable Dimension wanted) throws Refusal {
        String unit = piece.unit();
        if (unit.isEmpty()) {
            return bareUnit(piece.number().understood(), wanted);
        }
        List<Spellings.Entry> known = Spellings.all(unit);
        if (wanted == null) {
            if (known.isEmpty()) {
                throw unknownUnit(piece, null);
            }
            return known.get(0).unit();
        }
        Optional<Spellings.Entry> fits = Spellings.find(unit, wanted);
        if (fits.isPresent()) {
            return fits.get().unit();
        }
        throw known.isEmpty()
                ? unknownUnit(piece, wanted)
                : wrongDimension(piece, known.get(0).unit(), wanted);
    }

    private Unit bareUnit(String number, @Nullable Dimension wanted) throws Refusal {
        if (wanted == Dimension.RATIO) {
            return Units.BARE_RATIO;
        }
        if (wanted == Dimension.COUNT) {
            return Units.BARE_COUNT;
        }
        throw new Refusal("has no unit", fitting(), "write " + example(number));
    }

    private Refusal wrongDimension(Piece piece, Unit unit, Dimension wanted) {
        List<String> near = Spellings.near(piece.unit(), wanted);
        String instead = near.isEmpty() ? alternatives(wanted) : String.join(" or ", near);
        if (unit.dimension() == Dimension.MASS && wanted == Dimension.FORCE) {
            instead = "N, lbf or kgf"; // a mass on a scale is a habit of spring testers
        }
        return new Refusal(
                "is " + unit.dimension().withArticle() + "; " + wanted.withArticle() + " is wanted here",
                String.join(", ", wanted.fittingUnits()),
                "give it in " + instead);
    }

    private Refusal unknownUnit(Piece piece, @Nullable Dimension wanted) {
        String unit = piece.unit();
        Optional<Spellings.Asked> asked = Spellings.askedAbout(unit);
        if (asked.isPresent()) {
            return new Refusal(
                    "has the unit " + unit + ", which " + asked.get().why(),
                    fitting(),
                    asked.get().mend());
        }
        if (RANGE.matcher(unit).matches() || ONE_SIDED.matcher(unit).matches()) {
            return new Refusal(
                    "reads like a range, a difference or one-sided limits; one value is wanted",
                    fitting(),
                    "write the middle and half the width, like 55 ± 0.02 mm");
        }
        if (WrittenNumber.startsAt(unit)) {
            return new Refusal(
                    "has two numbers side by side", fitting(), "write one number without spaces in it, then its unit");
        }
        List<String> near = wanted == null ? List.of() : Spellings.near(unit, wanted);
        return new Refusal(
                "has the unit '" + WrittenText.shown(unit) + "', which is not known",
                fitting(),
                near.isEmpty()
                        ? "write " + example(piece.number().typed())
                        : "did you mean " + String.join(" or ", near) + "?");
    }

    private void refuseInexact(Quantity length) throws Refusal {
        try {
            ExactLength.of(length);
        } catch (IllegalArgumentException inexact) {
            boolean fine =
                    !length.siFraction().times(Fraction.of(1_000_000_000_000L)).isWhole();
            throw new Refusal(
                    fine
                            ? "is not a whole number of picometres, the finest length that is kept exactly"
                            : "is beyond 9,223 km, the longest length that is kept",
                    fine
                            ? "9 decimals of a millimetre, inch fractions such as 5/64"
                            : "lengths of an engine and its place",
                    fine ? "write it as a decimal with fewer places" : "check the number and its exponent");
        }
    }

    private static void refuseBelowAbsoluteZero(Quantity temperature) throws Refusal {
        if (temperature.siFraction().signum() < 0) {
            throw new Refusal(
                    "is below absolute zero", "above -273.15 °C, -459.67 °F", "check the number and its sign");
        }
    }

    private static void refusePartOfOne(Quantity count) throws Refusal {
        if (!count.value().isWhole()) {
            throw new Refusal("is not a whole number", "a bare whole number", "count whole things");
        }
    }

    private static void refuseControlCharacters(String plain) throws Refusal {
        Optional<String> control = plain.codePoints()
                .filter(c -> Character.isISOControl(c)
                        || !Character.isDefined(c)
                        || Character.getType(c) == Character.SURROGATE
                        || Character.getType(c) == Character.FORMAT)
                .mapToObj(c -> String.format(Locale.ROOT, "U+%04X", c))
                .findFirst();
        if (control.isPresent()) {
            throw new Refusal(
                    "holds the invisible character " + control.get(), "one line of plain text", "type it again");
        }
    }

    private String fitting() {
        return expected == null ? "" : String.join(", ", expected.fittingUnits());
    }

    /** The number with the units to try: "66.01 mm or 66.01 in". */
    private String example(String number) {
        if (expected == null) {
            return number + " and its unit, such as " + number + " mm";
        }
        if (expected.takesBareNumbers()) {
            return number + " alone";
        }
        return expected.fittingUnits().stream()
                .limit(2)
                .map(unit -> number + " " + unit)
                .collect(joining(" or "));
    }

    private static String alternatives(Dimension wanted) {
        return wanted.fittingUnits().stream().limit(2).collect(joining(" or "));
    }
}
