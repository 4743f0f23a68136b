package longthrow.core.fit;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;

/** Prices of one currency only are added: no rate of exchange is known here, and none is guessed. */
final class Money {
    private Money() {}

    private static Stream<Offer> offers(Catalogue catalogue) {
        return Stream.concat(
                        catalogue.parts().stream().map(CataloguePart::offer),
                        catalogue.operations().stream().map(Operation::offer))
                .filter(o -> o.price().isPresent());
    }

    /** The budget's currency where it has one, else the one that most prices stand in; empty without prices. */
    static String currency(Build build, Catalogue catalogue) {
        if (!build.fit().currency().isEmpty()) {
            return build.fit().currency();
        }
        Map<String, Integer> count = new LinkedHashMap<>();
        offers(catalogue).forEach(o -> count.merge(o.currency(), 1, Integer::sum));
        return count.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
    }

    /** The same catalogue with the prices of other currencies left out of every sum, and said in the note of the row. */
    static Catalogue inOneCurrency(Build build, Catalogue catalogue, List<Finding> findings) {
        String currency = currency(build, catalogue);
        long others =
                offers(catalogue).filter(o -> !o.currency().equals(currency)).count();
        if (build.fit().budget().isPresent() && build.fit().currency().isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "fit.budget",
                    currency.isEmpty()
                            ? "the budget names no currency, and no price has one, so nothing is held against it"
                            : "the budget names no currency; it is taken as " + currency
                                    + ", in which most prices stand",
                    "write it behind the number, such as budget: 330 EUR"));
        }
        if (others == 0) {
            return catalogue;
        }
        findings.add(new Finding(
                Finding.Kind.WARNING,
                "catalogue",
                others + " prices are not in " + currency
                        + "; no rate of exchange is known here, so they count as not said",
                "write all prices, and the budget, in one currency"
                        + (build.fit().currency().isEmpty()
                                ? ""
                                : "; the prices are in "
                                        + String.join(
                                                ", ",
                                                offers(catalogue)
                                                        .map(Offer::currency)
                                                        .collect(Collectors.toCollection(TreeSet::new))))));
        return new Catalogue(
                catalogue.parts().stream().map(p -> only(p, currency)).toList(),
                catalogue.operations().stream().map(o -> only(o, currency)).toList());
    }

    private static CataloguePart only(CataloguePart part, String currency) {
        if (part.offer().price().isEmpty() || part.offer().currency().equals(currency)) {
            return part;
        }
        return new CataloguePart(
                part.kind(),
                part.code(),
                part.name(),
                part.invented(),
                part.figures(),
                part.words(),
                without(part.offer()),
                part.voucher(),
                noted(part.note(), part.offer()),
                part.place());
    }

    private static Operation only(Operation o, String currency) {
        if (o.offer().price().isEmpty() || o.offer().currency().equals(currency)) {
            return o;
        }
        return new Operation(
                o.kind(),
                o.code(),
                o.name(),
                o.invented(),
                o.least(),
                o.most(),
                o.step(),
                o.tolerance(),
                without(o.offer()),
                noted(o.note(), o.offer()),
                o.place());
    }

    private static Offer without(Offer offer) {
        return new Offer(OptionalLong.empty(), OptionalLong.empty(), "", offer.vendor(), offer.leadDays());
    }

    private static String noted(String note, Offer offer) {
        String price = String.format(
                Locale.ROOT, "asks %.2f %s, not counted", offer.price().orElse(0) / 100.0, offer.currency());
        return note.isEmpty() ? price : note + "; " + price;
    }

    /** A sum for people, in the currency that counts here; without one where no price has any. */
    static String words(long hundredths, String currency) {
        return (BigDecimal.valueOf(hundredths, 2).toPlainString() + " " + currency).strip();
    }

    /** The budget for people, and as what it is taken where its owner named no currency; empty for none. */
    static String toSpend(Build build, Catalogue catalogue) {
        OptionalLong budget = build.fit().budget();
        if (budget.isEmpty()) {
            return "";
        }
        String named = build.fit().currency();
        String taken = currency(build, catalogue);
        return words(budget.getAsLong(), named)
                + (!named.isEmpty()
                        ? ""
                        : taken.isEmpty()
                                ? " (you named no currency, and no price has one)"
                                : " (you named no currency; taken as " + taken + ")");
    }

    /** What may be spent; empty where no price stands in its currency, since then nothing can be held against it. */
    static OptionalLong budget(Build build, Catalogue catalogue) {
        String currency = currency(build, catalogue);
        return offers(catalogue).anyMatch(o -> o.currency().equals(currency))
                ? build.fit().budget()
                : OptionalLong.empty();
    }
}
