package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.Voucher;
import longthrow.core.term.Choice;
import longthrow.core.term.TaperRate;
import org.jspecify.annotations.Nullable;

/** Cells that hold words: free ones, one of a few, or a number of days. */
final class WordColumn extends CatalogueColumn {
    /** Beyond two years nothing is on its way. */
    private static final int MOST_DAYS = 730;

    /** A power of two. */
    private static final int MOST_KEPT = 1024;

    private static final Pattern DAYS =
            Pattern.compile("([0-9]{1,4}) ?(d|days?|w|wks?|weeks?)?", Pattern.CASE_INSENSITIVE);

    private final @Nullable CatalogueLabel label;
    private final @Nullable Choice choice;
    private final int daysOfOne;
    private final PlainDecimal decimal = new PlainDecimal(false);
    /** Texts met before, at a place told by their characters: lists repeat vendor, currency and date on every row. */
    private final @Nullable String[] met;

    private WordColumn(String header, @Nullable CatalogueLabel label, @Nullable Choice choice, int daysOfOne) {
        super(header);
        this.label = label;
        this.choice = choice;
        this.daysOfOne = daysOfOne;
        boolean repeats = label != CatalogueLabel.CODE && label != CatalogueLabel.NAME && label != CatalogueLabel.NOTE;
        this.met = new String[repeats ? MOST_KEPT : 0];
    }

    static WordColumn of(String header, CatalogueLabel label) {
        return new WordColumn(header, label, null, 1);
    }

    /** @param inWeeks whether the header says so */
    static WordColumn days(String header, boolean inWeeks) {
        return new WordColumn(header, CatalogueLabel.LEAD_DAYS, null, inWeeks ? 7 : 1);
    }

    static WordColumn of(String header, Choice choice) {
        return new WordColumn(header, null, choice, 1);
    }

    @Override
    void take(char[] buffer, int from, int end, CatalogueRow row) {
        String text = text(buffer, from, end, row);
        if (text.isEmpty()) {
            return;
        }
        if (label == CatalogueLabel.LEAD_DAYS && text.length() <= 2 && decimal.read(buffer, from, end)) {
            int number = (int) decimal.unscaled();
            if (number >= 0 && decimal.scale() == 0) {
                row.leadDays(number * daysOfOne);
                return;
            }
        }
        if (choice != null) {
            word(choice, text, row);
        } else if (label != null) {
            words(label, text, row);
        }
    }

    private String text(char[] buffer, int from, int end, CatalogueRow row) {
        if (met.length == 0) {
            return checked(new String(buffer, from, end - from), row);
        }
        int hash = 0;
        for (int i = from; i < end; i++) {
            hash = 31 * hash + buffer[i];
        }
        int place = (hash ^ (hash >>> 16)) & (MOST_KEPT - 1);
        String before = met[place];
        if (before != null && isSame(before, buffer, from, end)) {
            return before;
        }
        String text = checked(new String(buffer, from, end - from), row);
        met[place] = text;
        return text;
    }

    private static boolean isSame(String text, char[] buffer, int from, int end) {
        if (end - from != text.length()) {
            return false;
        }
        for (int i = 0; i < text.length(); i++) {
            if (buffer[from + i] != text.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** The text on one line; empty after saying why it is refused. */
    private String checked(String text, CatalogueRow row) {
        if (text.length() > PlainText.LONGEST_SCALAR) {
            row.refuse(
                    header(),
                    text,
                    "has " + text.length() + " characters",
                    "at most " + PlainText.LONGEST_SCALAR,
                    "shorten it; a quotation mark may be missing");
            return "";
        }
        boolean spaced = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r' || c == '\t') {
                spaced = true;
            } else if (c < ' ' || c > '~') {
                int point = text.codePointAt(i);
                if (PlainText.isInvisible(point)) {
                    row.refuse(
                            header(),
                            text,
                            String.format(Locale.ROOT, "holds the invisible character U+%04X", point),
                            "plain text",
                            "type it again");
                    return "";
                }
                i += Character.charCount(point) - 1;
            }
        }
        return spaced ? text.replaceAll("[\\n\\r\\t ]+", " ") : text;
    }

    private void word(Choice of, String text, CatalogueRow row) {
        if (of.isTaper() && !TaperRate.isRate(text)) {
            row.refuse(header(), text, "is no rate of taper", TaperRate.ALLOWED, TaperRate.mend(text));
            return;
        }
        if (of.options().isEmpty()) {
            row.word(of, text);
            return;
        }
        String plain = text.toLowerCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        List<String> allowed = new ArrayList<>();
        for (Choice.Option option : of.options()) {
            if (option.key().equals(plain) || option.label().equalsIgnoreCase(text)) {
                row.word(of, option.key());
                return;
            }
            allowed.add(option.key());
        }
        oneOf(text, allowed, row);
    }

    private void oneOf(String text, List<String> allowed, CatalogueRow row) {
        row.refuse(
                header(),
                text,
                "is not one of the words that fit here",
                String.join(", ", allowed),
                TradeWords.didYouMean(text, allowed).orElse("write one of them, or leave the cell empty"));
    }

    private void words(CatalogueLabel of, String text, CatalogueRow row) {
        switch (of) {
            case LEAD_DAYS -> days(text, row);
            case BASIS -> {
                if (text.equalsIgnoreCase(Voucher.Basis.CLAIMED.key())) {
                    row.basis(Voucher.Basis.CLAIMED);
                    return;
                }
                if (text.equalsIgnoreCase(Voucher.Basis.MEASURED.key())) {
                    row.basis(Voucher.Basis.MEASURED);
                    return;
                }
                oneOf(text, List.of(Voucher.Basis.CLAIMED.key(), Voucher.Basis.MEASURED.key()), row);
            }
            case OPERATION -> {
                String plain = text.toLowerCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
                List<String> allowed = new ArrayList<>();
                for (Operation.Kind kind : Operation.Kind.values()) {
                    if (kind.key().equals(plain) || kind.label().equalsIgnoreCase(text)) {
                        row.operation(kind);
                        return;
                    }
                    allowed.add(kind.key());
                }
                oneOf(text, allowed, row);
            }
            case CURRENCY -> {
                if (text.matches("[\\p{L}€]{1,12}")) {
                    row.label(of, MoneyColumn.currency(text));
                } else {
                    row.refuse(header(), text, "is no currency", "three letters, such as EUR", MoneyColumn.mend(text));
                }
            }
            default -> row.label(of, text);
        }
    }

    private void days(String text, CatalogueRow row) {
        Matcher days = DAYS.matcher(text);
        if (days.matches()) {
            String unit = days.group(2);
            int worth = unit == null ? daysOfOne : unit.toLowerCase(Locale.ROOT).startsWith("w") ? 7 : 1;
            int all = Integer.parseInt(days.group(1)) * worth;
            if (all <= MOST_DAYS) {
                row.leadDays(all);
                return;
            }
        }
        row.refuse(
                header(),
                text,
                "is no number of days",
                "0 to " + MOST_DAYS + ", whole",
                "write whole days, such as 12, or weeks, such as 3 weeks");
    }
}
