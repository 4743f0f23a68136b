package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.catalogue.Voucher;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Builds and catalogues for tests, written as an owner and a vendor would write them; all invented. */
final class Stock {
    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<Choice, String> choices = new LinkedHashMap<>();
    private final Map<String, String> rules = new LinkedHashMap<>();
    private final List<OwnRule> own = new ArrayList<>();
    private final Map<Term, Quantity> aims = new LinkedHashMap<>();
    private final List<CataloguePart> parts = new ArrayList<>();
    private final List<Operation> operations = new ArrayList<>();
    private FitWish wish = FitWish.NONE;

    static Stated stated(Term term, String text) {
        return stated(term.dimension(), text);
    }

    private static Stated stated(Dimension dimension, String text) {
        Parsed parsed = QuantityParser.parse(text, dimension);
        if (parsed instanceof Parsed.Understood understood) {
            return understood.stated();
        }
        throw new IllegalArgumentException(text + ": " + parsed);
    }

    Stock typed(Term term, String text) {
        Stated stated = stated(term, text);
        given.put(
                term,
                List.of(new Given.Typed(stated.value(), stated.expandedDoubt().orElseThrow(), "")));
        return this;
    }

    Stock is(Choice choice, String word) {
        choices.put(choice, word);
        return this;
    }

    Stock choose(String rule, String alternative) {
        rules.put(rule, alternative);
        return this;
    }

    Stock own(OwnRule rule) {
        own.add(rule);
        return this;
    }

    Stock aim(Term term, String text) {
        aims.put(term, stated(term, text).value());
        return this;
    }

    Stock wish(FitWish wanted) {
        wish = wanted;
        return this;
    }

    /** Whole units of money; -1 for a price that is not said. */
    Stock part(PartKind kind, String code, long price, Map<Term, String> figures, Map<Choice, String> words) {
        Map<Term, CataloguePart.Figure> map = new EnumMap<>(Term.class);
        figures.forEach((term, text) -> {
            Stated stated = stated(term, text);
            map.put(
                    term,
                    new CataloguePart.Figure(
                            stated.value(), stated.expandedDoubt().orElse(null), false));
        });
        parts.add(new CataloguePart(
                kind, code, kind.label() + " " + code, true, map, words, offer(price), Voucher.CLAIMED, "", ""));
        return this;
    }

    Stock operation(Operation.Kind kind, String code, String least, String most, String step, long price) {
        return held(kind, code, least, most, step, "0.002", price);
    }

    /** As {@link #operation}, which is held to 0.002 mm, held to another tolerance; null for one that is not said. */
    Stock held(
            Operation.Kind kind,
            String code,
            String least,
            String most,
            String step,
            @Nullable String tolerance,
            long price) {
        operations.add(new Operation(
                kind,
                code,
                kind.label(),
                true,
                ExactLength.ofMillimetres(least),
                ExactLength.ofMillimetres(most),
                step.isEmpty() ? null : ExactLength.ofMillimetres(step),
                tolerance == null ? null : ExactLength.ofMillimetres(tolerance),
                offer(price),
                "",
                ""));
        return this;
    }

    private static Offer offer(long price) {
        return new Offer(
                price < 0 ? OptionalLong.empty() : OptionalLong.of(100 * price),
                OptionalLong.empty(),
                price < 0 ? "" : "EUR",
                "Invented Vendor",
                OptionalInt.empty());
    }

    Build build() {
        Build empty = Build.empty("invented");
        return new Build(
                "invented",
                true,
                empty.units(),
                List.of(),
                Map.of(),
                given,
                choices,
                rules,
                own,
                aims,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                wish,
                List.of());
    }

    Catalogue catalogue() {
        return new Catalogue(parts, operations);
    }

    /**
     * Scenario S1, invented: a rod for a longer throw. Crank, piston, head and deck stand; four rods and two gaskets are on offer, and a hone.
     * Sizes given without a doubt are good to a thousandth of a millimetre.
     */
    static Stock longerThrow() {
        Stock stock = new Stock()
                .is(Choice.VALVE_LAYOUT, "overhead")
                .is(Choice.FUEL, "petrol")
                .choose("squish_least", "general")
                .aim(Term.SQUISH, "1.27 mm")
                .typed(Term.BORE, "66.00 mm ± 0.01 mm")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc")
                .typed(Term.PIN_TOP_TO_CROWN, "16.40 mm ± 0.02 mm")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .typed(Term.CROWN_VOLUME, "1.1 cc ± 0.15 cc")
                .typed(Term.SKIRT_BELOW_PIN, "17.6 mm ± 0.001 mm")
                .typed(Term.TOP_RING_THICKNESS, "1.5 mm ± 0.001 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.DONOR_STROKE, "50.00 mm ± 0.001 mm")
                .typed(Term.CRANKPIN_DIAMETER, "26.98 mm ± 0.001 mm")
                .typed(Term.CRANKPIN_WIDTH, "24.20 mm ± 0.001 mm")
                .typed(Term.COUNTERWEIGHT_RADIUS, "38.9 mm ± 0.001 mm")
                .typed(Term.WANTED_SPEED, "6500 rpm ± 10 rpm")
                .wish(new FitWish(
                        List.of(PartKind.CONNECTING_ROD, PartKind.GASKET),
                        List.of(),
                        OptionalLong.of(33_000),
                        "EUR",
                        true,
                        List.of(),
                        null))
                .operation(Operation.Kind.SMALL_END_HONE, "HONE", "0.005", "0.06", "", 14);
        rod(stock, "R1", 78, "85.60", "27.03", "17.01", "23.6");
        rod(stock, "R2", 74, "86.40", "27.03", "16.01", "23.6");
        rod(stock, "R3", 95, "86.40", "27.02", "17.01", "23.9");
        rod(stock, "R4", 88, "87.30", "27.03", "17.01", "23.6");
        for (String thickness : List.of("1.02", "1.30")) {
            stock.part(
                    PartKind.GASKET,
                    "G" + thickness,
                    -1,
                    Map.of(Term.GASKET_THICKNESS, thickness + " mm ± 0.03 mm", Term.GASKET_BORE, "68.5 mm ± 0.001 mm"),
                    Map.of());
        }
        return stock;
    }

    /** A piston that suits that scenario; change one of its sizes for a trap. */
    static Map<Term, String> piston() {
        Map<Term, String> sizes = new HashMap<>();
        sizes.put(Term.COMPRESSION_HEIGHT, "24.90 mm ± 0.02 mm");
        sizes.put(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm");
        sizes.put(Term.PISTON_DIAMETER, "65.95 mm ± 0.005 mm");
        sizes.put(Term.SKIRT_BELOW_PIN, "17.6 mm ± 0.01 mm");
        sizes.put(Term.CROWN_VOLUME, "1.1 cc ± 0.15 cc");
        sizes.put(Term.TOP_LAND_HEIGHT, "5 mm ± 0.1 mm");
        sizes.put(Term.TOP_RING_THICKNESS, "1.5 mm ± 0.01 mm");
        return sizes;
    }

    /** Only rows of these kinds, with these codes among them. */
    static FitWish keeping(List<String> keep, PartKind... choose) {
        return new FitWish(List.of(choose), keep, OptionalLong.empty(), "", true, List.of(), null);
    }

    private static void rod(
            Stock stock, String code, long price, String length, String bigEnd, String smallEnd, String width) {
        stock.part(
                PartKind.CONNECTING_ROD,
                code,
                price,
                Map.of(
                        Term.ROD_LENGTH, length + " mm ± 0.03 mm",
                        Term.BIG_END_BORE, bigEnd + " mm ± 0.001 mm",
                        Term.SMALL_END_BORE, smallEnd + " mm ± 0.001 mm",
                        Term.BIG_END_WIDTH, width + " mm ± 0.001 mm"),
                Map.of(Choice.ROD_METAL, "billet_aluminium"));
    }
}
