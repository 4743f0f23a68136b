package longthrow.buildfile;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cells that hold an amount of money, with or without its currency. */
final class MoneyColumn extends CatalogueColumn {
    /** More than any engine costs, and far below where hundredths no longer fit. */
    private static final int MOST_DIGITS = 12;

    private static final Pattern AMOUNT = Pattern.compile("(?:(?<before>[\\p{L}€]{1,12}) ?)?(?<whole>[0-9]{1,"
            + MOST_DIGITS + "})(?:[.,](?<parts>[0-9]{1,2}))?(?: ?(?<after>[\\p{L}€]{1,12}))?");

    static final String ALLOWED = "0 or more, at most two decimals, such as 78 EUR or 78.50 EUR";

    /**
     * An amount.
     * @param hundredths whole
     * @param currency   empty when not said
     */
    record Money(long hundredths, String currency) {}

    private final boolean isShipping;
    private final String currency;
    private final PlainDecimal decimal;

    /** @param currency of the header; empty when it has none */
    MoneyColumn(String header, boolean isShipping, String currency, boolean decimalComma) {
        super(header);
        this.isShipping = isShipping;
        this.currency = currency;
        this.decimal = new PlainDecimal(decimalComma);
    }

    @Override
    void take(char[] buffer, int from, int end, CatalogueRow row) {
        if (decimal.read(buffer, from, end) && decimal.scale() <= 2 && decimal.unscaled() >= 0) {
            long factor = decimal.scale() == 0 ? 100 : decimal.scale() == 1 ? 10 : 1;
            if (decimal.unscaled() < Long.MAX_VALUE / 1000) {
                row.money(isShipping, decimal.unscaled() * factor, currency, header());
                return;
            }
        }
        String text = new String(buffer, from, end - from);
        Optional<Money> money = read(text);
        if (money.isPresent()) {
            String own = money.get().currency();
            row.money(isShipping, money.get().hundredths(), own.isEmpty() ? currency : own, header());
        } else {
            row.refuse(header(), text, "is no price", ALLOWED, mend(text));
        }
    }

    /** An amount as somebody writes it. */
    static Optional<Money> read(String text) {
        Matcher amount = AMOUNT.matcher(text.strip());
        if (!amount.matches() || (amount.group("before") != null && amount.group("after") != null)) {
            return Optional.empty();
        }
        String parts = amount.group("parts") == null ? "00" : (amount.group("parts") + "0").substring(0, 2);
        String word = amount.group("before") != null ? amount.group("before") : amount.group("after");
        return Optional.of(new Money(
                Long.parseLong(amount.group("whole")) * 100 + Long.parseLong(parts),
                word == null ? "" : currency(word)));
    }

    static String mend(String text) {
        if (text.startsWith("-")) {
            return "leave out the minus";
        }
        if (text.indexOf('$') >= 0 || text.indexOf('£') >= 0 || text.indexOf('¥') >= 0) {
            return "write the three letters of the currency instead of its sign, which several countries share";
        }
        return text.matches(".*[0-9][.,' ][0-9]{3}.*")
                ? "write it without marks between the thousands"
                : "write the amount, then the three letters of its currency";
    }

    /** Whether a word has the form of a currency's code (ISO 4217): three letters. Which of them are in use changes, and is not asked. */
    static boolean isCurrency(String word) {
        return word.matches("[A-Z]{3}");
    }

    /** Three letters in capitals; another word as it is. */
    static String currency(String word) {
        return word.equals("€") ? "EUR" : word.length() == 3 ? word.toUpperCase(Locale.ROOT) : word;
    }
}
