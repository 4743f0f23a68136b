package longthrow.buildfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.Unit;
import org.jspecify.annotations.Nullable;

/** Cells that hold a figure, or the half-width of one. Plain decimals with the header's unit take a short way. */
final class FigureColumn extends CatalogueColumn {
    /** Where the figure of a cell goes. */
    interface Taker {
        void take(CatalogueRow row, Quantity value, @Nullable Quantity tolerance);
    }

    /** Texts that were read are kept, since lists repeat themselves; at most so many, so that a strange file fills no memory; a power of two. */
    private static final int MOST_KEPT = 4096;

    private static final int LONGEST_KEPT = 40;

    private static final Pattern DECIMAL_COMMA = Pattern.compile("(?<=[0-9]),(?=[0-9])");

    private final Dimension dimension;
    private final @Nullable Unit unit;
    private final boolean isTolerance;
    private final boolean decimalComma;
    private final boolean keyed;
    private final Taker taker;
    private final PlainDecimal decimal;
    /** Decimals up to which the short way is exact; -1 for never. */
    private final int mostDecimals;

    private final Map<String, Parsed> known = new HashMap<>();
    private final @Nullable Quantity[] met;
    private final long[] metKeys;

    /**
     * A column.
     * @param unit  of bare numbers; null when none is said
     * @param keyed whether it is a key, which cannot hold the unit as a header can
     */
    FigureColumn(
            String header,
            Dimension dimension,
            @Nullable Unit unit,
            boolean isTolerance,
            boolean decimalComma,
            boolean keyed,
            Taker taker) {
        super(header);
        this.dimension = isTolerance ? dimension.ofDifference() : dimension;
        this.unit = unit;
        this.isTolerance = isTolerance;
        this.decimalComma = decimalComma;
        this.keyed = keyed;
        this.taker = taker;
        this.decimal = new PlainDecimal(decimalComma);
        this.mostDecimals = mostDecimals(dimension, unit);
        this.met = new Quantity[mostDecimals < 0 ? 0 : MOST_KEPT];
        this.metKeys = new long[met.length];
    }

    private static int mostDecimals(Dimension dimension, @Nullable Unit unit) {
        if (unit == null || dimension == Dimension.TEMPERATURE || dimension == Dimension.COUNT || unit.piPower() != 0) {
            return -1;
        }
        return dimension == Dimension.LENGTH ? unit.decimalsOfExactLength() : 9;
    }

    @Override
    void take(char[] buffer, int from, int end, CatalogueRow row) {
        if (unit != null && decimal.read(buffer, from, end) && decimal.scale() <= mostDecimals) {
            hand(row, decimal(unit), null, null);
            return;
        }
        String text = new String(buffer, from, end - from);
        Parsed parsed = known.get(text);
        if (parsed == null) {
            parsed = parse(text);
            if (text.length() <= LONGEST_KEPT) {
                if (known.size() >= MOST_KEPT) {
                    known.clear();
                }
                known.put(text, parsed);
            }
        }
        if (parsed instanceof Parsed.Refused refused) {
            row.refuse(header(), refused.found(), refused.why(), refused.allowed(), mend(refused, text));
            return;
        }
        Stated stated = ((Parsed.Understood) parsed).stated();
        stated.notes().forEach(note -> row.remark(header(), note));
        hand(row, stated.value(), stated.expandedDoubt().orElse(null), text);
    }

    /** The decimal just read; sizes are round, so that most of them were met before. */
    private Quantity decimal(Unit of) {
        long key = 16 * decimal.unscaled() + decimal.scale();
        int place = (int) (key ^ (key >>> 13)) & (MOST_KEPT - 1);
        Quantity before = met[place];
        if (before != null && metKeys[place] == key) {
            return before;
        }
        Quantity quantity = Quantity.ofDecimal(decimal.unscaled(), decimal.scale(), of);
        met[place] = quantity;
        metKeys[place] = key;
        return quantity;
    }

    private void hand(CatalogueRow row, Quantity value, @Nullable Quantity doubt, @Nullable String text) {
        if (isTolerance && doubt != null) {
            row.refuse(header(), text == null ? "" : text, "has a second ±", "one half-width", "write one half-width");
        } else if (isTolerance) {
            if (isWidth(row, value)) {
                taker.take(row, value, value);
            }
        } else if (doubt == null || isWidth(row, doubt)) {
            taker.take(row, value, doubt);
        }
    }

    private boolean isWidth(CatalogueRow row, Quantity width) {
        if (width.si() > 0) {
            return true;
        }
        row.refuse(
                header(),
                width.written(),
                width.si() < 0 ? "is negative" : "says there is no doubt at all",
                "above 0",
                "write half the width of the range the seller keeps, or leave the cell empty where it is not said");
        return false;
    }

    private String mend(Parsed.Refused refused, String text) {
        return refused.why().equals("has no unit") && unit == null && !keyed
                ? refused.mend() + ", or put the unit into the header: " + header() + " ["
                        + dimension.fittingUnits().get(0) + "]"
                : text.indexOf(',') >= 0 && !decimalComma
                        ? refused.mend() + "; in a file of cells parted by commas the decimal mark is a point"
                        : refused.mend();
    }

    private Parsed parse(String written) {
        String text = isTolerance ? written.replaceFirst("^(±|\\+/-|\\+-) ?", "") : written;
        String whole = withUnit(text);
        Parsed parsed = QuantityParser.parse(whole, dimension);
        if (decimalComma && parsed instanceof Parsed.Understood understood && whole.indexOf(',') >= 0) {
            // In such a file a decimal comma is the usual mark and no news.
            Parsed pointed = QuantityParser.parse(DECIMAL_COMMA.matcher(whole).replaceAll("."), dimension);
            Stated stated = understood.stated();
            List<String> notes =
                    pointed instanceof Parsed.Understood p && p.stated().value().equals(stated.value())
                            ? new ArrayList<>(p.stated().notes())
                            : stated.notes();
            return new Parsed.Understood(new Stated(stated.written(), stated.value(), stated.expandedDoubt(), notes));
        }
        return parsed;
    }

    /** With the header's unit behind it, unless the cell has its own. */
    private String withUnit(String text) {
        if (unit == null || text.isEmpty()) {
            return text;
        }
        char last = text.charAt(text.length() - 1);
        boolean bare = Character.isDigit(last)
                || last == '.'
                || last == ')'
                || Character.getType(last) == Character.OTHER_NUMBER;
        return bare ? text + " " + unit.symbol() : text;
    }

    /** The unit of this dimension written so in a header. */
    static Optional<Unit> unit(Dimension dimension, String written) {
        return Unit.find(dimension, written);
    }
}
