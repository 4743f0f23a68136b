package longthrow.workshop.web.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.engine.Stops;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import longthrow.workshop.draw.ReadingCard;
import longthrow.workshop.web.EitherComma;
import longthrow.workshop.web.Frame;

/**
 * How one reading is taken, and the form that takes it.
 * @param written what is entered already, each to be changed or left
 * @param form    what stands in the boxes
 * @param faults  of what was sent
 * @param commas  two ways to read figures of it, one of which is to be chosen
 * @param rating  whether it counts only as its maker's word
 * @param wish    whether it is a decision, and nothing that is read
 * @param warm    whether it may be said how warm the part was
 * @param figures beside the form
 */
public record CardPage(
        Frame frame,
        Words words,
        Optional<HowTo> howTo,
        List<Fact> facts,
        List<Written> written,
        Form form,
        List<String> faults,
        Optional<TwoWays> commas,
        boolean rating,
        boolean wish,
        boolean warm,
        Figures figures) {
    /** Boxes for readings at least, and those left free; layout. */
    private static final int LEAST_BOXES = 4;

    private static final int FREE_BOXES = 2;

    public CardPage {
        facts = List.copyOf(facts);
        written = List.copyOf(written);
        faults = List.copyOf(faults);
    }

    /**
     * Figures that can be read in two ways.
     * @param form id of the form that they came by
     */
    public record TwoWays(String form, List<Way> ways) {
        public TwoWays {
            ways = List.copyOf(ways);
        }
    }

    /** One of them: what the form sends for it, and the figures as they are then. */
    public record Way(String comma, String words) {}

    /** What the quantity is. */
    public record Words(String path, String label, String symbol, String meaning, String sign) {}

    /**
     * How the reading is taken.
     * @param svg     drawing of datum and instrument
     * @param steps   in order
     * @param caution where it can hurt; empty where it does not
     */
    public record HowTo(String svg, List<String> steps, String datum, String mistake, String error, String caution) {
        public HowTo {
            steps = List.copyOf(steps);
        }

        static HowTo of(ReadingCard card, UnitSystem units) {
            return new HowTo(
                    card.svg("card"),
                    card.steps(),
                    card.datum(),
                    card.mistake(),
                    card.usualError(units),
                    card.caution().orElse(""));
        }
    }

    /** A thing to know. */
    public record Fact(String name, String value) {}

    /**
     * An entry that is there.
     * @param here whether the form changes it
     */
    public record Written(String text, String note, String address, boolean here) {}

    /** A box or an item of a list. */
    public record Box(int number, String value) {}

    /** An item to choose. */
    public record Item(String key, String label, boolean chosen) {}

    /**
     * The form.
     * @param action  where it goes
     * @param preview where it is asked while typing
     * @param based   revision that the form was begun on
     * @param key     of the edit, for once
     * @param entry   that it changes
     * @param how     it is known: read, sheet or guess
     * @param keypad  of a phone: decimal where nothing is negative, else text
     */
    public record Form(
            String action,
            String preview,
            String back,
            int based,
            String key,
            String entry,
            String how,
            String keypad,
            List<Box> boxes,
            List<Item> units,
            List<Item> instruments,
            String partAt,
            List<Item> temperatures,
            String value,
            String plusMinus,
            String by,
            String note) {
        public Form {
            boxes = List.copyOf(boxes);
            units = List.copyOf(units);
            instruments = List.copyOf(instruments);
            temperatures = List.copyOf(temperatures);
        }
    }

    /** What the boxes hold: of an entry, or of a form that was sent and not taken. */
    record Typed(
            int based,
            String entry,
            String how,
            List<String> readings,
            String unit,
            String with,
            String partAt,
            String partAtUnit,
            String value,
            String plusMinus,
            String by,
            String note) {
        /** A form with nothing in it. */
        static Typed empty(int based, String unit, String temperature) {
            return new Typed(based, "new", "read", List.of(), unit, "", "", temperature, "", "", "", "");
        }
    }

    static CardPage of(
            Frame frame,
            Term term,
            Build build,
            Typed typed,
            List<String> faults,
            Optional<EnteredReading.Commas> commas,
            Figures figures) {
        String here = frame.base() + "/measure/" + term.path();
        return new CardPage(
                frame,
                new Words(term.path(), term.label(), term.symbol(), term.meaning(), term.sign()),
                (term.isWish() ? Optional.<ReadingCard>empty() : ReadingCard.of(term))
                        .map(card -> HowTo.of(card, build.units())),
                facts(term, build),
                written(build.of(term), here, typed.entry()),
                new Form(
                        here,
                        frame.base() + "/preview/" + term.path(),
                        frame.base() + "/measure#" + term.path(),
                        typed.based(),
                        UUID.randomUUID().toString(),
                        typed.entry(),
                        typed.how(),
                        term.sign().isEmpty() ? "decimal" : "text",
                        boxes(typed.readings()),
                        units(term.dimension(), typed.unit()),
                        instruments(term, build, typed.with()),
                        typed.partAt(),
                        units(Dimension.TEMPERATURE, typed.partAtUnit()),
                        typed.value(),
                        typed.plusMinus(),
                        typed.by(),
                        typed.note()),
                faults,
                commas.map(c -> new TwoWays(
                        typed.how().equals("read") ? "reading-form" : "sheet-form",
                        Stream.of(EitherComma.DECIMAL, EitherComma.THOUSANDS)
                                .map(o -> new Way(
                                        o,
                                        String.join(", ", o.equals(EitherComma.DECIMAL) ? c.decimal() : c.thousands())))
                                .toList())),
                Stops.RATINGS.contains(term),
                term.isWish(),
                term.dimension() == Dimension.LENGTH || !typed.partAt().isEmpty(),
                figures);
    }

    /** The boxes filled from an entry; the usual ones where there is none. */
    static Typed typed(Term term, Build build, int based, String entry) {
        List<Given> entries = build.of(term);
        int at = place(entries, entry);
        String usual = usualUnit(term, build);
        String temperature = build.units() == UnitSystem.METRIC_FIRST ? "°C" : "°F";
        if (at < 0) {
            return Typed.empty(based, usual, temperature);
        }
        Given given = entries.get(at);
        String place = String.valueOf(at);
        if (given instanceof Given.Taken taken) {
            String unit = taken.readings().get(0).unit().symbol();
            Quantity partAt = taken.partTemperature();
            return new Typed(
                    based,
                    place,
                    "read",
                    taken.readings().stream().map(q -> bare(q, unit)).toList(),
                    unit,
                    taken.instrument() == null ? "" : taken.instrument(),
                    partAt == null ? "" : bare(partAt, partAt.unit().symbol()),
                    partAt == null ? temperature : partAt.unit().symbol(),
                    "",
                    "",
                    "",
                    taken.note());
        }
        if (given instanceof Given.Typed one) {
            String unit = one.value().unit().symbol();
            return new Typed(
                    based,
                    place,
                    "read",
                    List.of(bare(one.value(), unit)),
                    unit,
                    "",
                    "",
                    temperature,
                    "",
                    bare(one.plusMinus(), unit),
                    "",
                    one.note());
        }
        if (given instanceof Given.Specified sheet) {
            Quantity tolerance = sheet.tolerance();
            return new Typed(
                    based,
                    place,
                    "sheet",
                    List.of(),
                    usual,
                    "",
                    "",
                    temperature,
                    sheet.value().written(),
                    tolerance == null ? "" : tolerance.written(),
                    sheet.by(),
                    sheet.note());
        }
        if (given instanceof Given.Assumed guess) {
            return new Typed(
                    based,
                    place,
                    "guess",
                    List.of(),
                    usual,
                    "",
                    "",
                    temperature,
                    guess.value().written(),
                    guess.plusMinus().written(),
                    guess.because(),
                    guess.note());
        }
        return new Typed(based, place, "read", List.of(), usual, "", "", temperature, "", "", "", given.note());
    }

    /** Which entry the form changes: the one asked for, else the first that was read, else the only one, else a new one. */
    private static int place(List<Given> entries, String asked) {
        if (asked.matches("\\d{1,4}") && Integer.parseInt(asked) < entries.size()) {
            return Integer.parseInt(asked);
        }
        if (asked.equals("new") || entries.isEmpty()) {
            return EnteredReading.NEW;
        }
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i) instanceof Given.Taken || entries.get(i) instanceof Given.Typed) {
                return i;
            }
        }
        return entries.get(0) instanceof Given.NotKnown ? 0 : EnteredReading.NEW;
    }

    /** The number alone where its unit stands in the list beside; as written where it does not. */
    private static String bare(Quantity quantity, String unit) {
        String written = quantity.written();
        return quantity.unit().symbol().equals(unit) && written.endsWith(unit)
                ? written.substring(0, written.length() - unit.length()).strip()
                : written;
    }

    private static String usualUnit(Term term, Build build) {
        BenchUnits units = BenchUnits.of(term.dimension(), term.believable().middle());
        return (build.units() == UnitSystem.METRIC_FIRST ? units.metric() : units.inchTrade()).symbol();
    }

    private static List<Box> boxes(List<String> readings) {
        List<Box> boxes = new ArrayList<>();
        int many = Math.max(LEAST_BOXES, readings.size() + FREE_BOXES);
        for (int i = 0; i < many; i++) {
            boxes.add(new Box(i + 1, i < readings.size() ? readings.get(i) : ""));
        }
        return boxes;
    }

    private static List<Item> units(Dimension dimension, String chosen) {
        Set<String> symbols = new LinkedHashSet<>(dimension.fittingUnits());
        symbols.add(chosen);
        return symbols.stream()
                .map(s -> new Item(s, s.isEmpty() ? "no unit" : s, s.equals(chosen)))
                .toList();
    }

    /** The owner's own first, then the built-in kinds that read such a quantity. */
    private static List<Item> instruments(Term term, Build build, String chosen) {
        String usual = term.reading().usualInstrument().label();
        List<Item> items = new ArrayList<>();
        items.add(new Item("", "not said, so the usual: " + usual, chosen.isEmpty()));
        build.instruments().values().stream()
                .filter(i -> i.kind().dimension() == term.dimension())
                .map(Instrument::key)
                .forEach(k -> items.add(new Item(k, k.replace('_', ' ') + " (yours)", k.equals(chosen))));
        Stream.of(InstrumentKind.values())
                .filter(k -> k.dimension() == term.dimension())
                .filter(k -> !build.instruments().containsKey(k.key()))
                .forEach(k -> items.add(new Item(k.key(), k.label(), k.key().equals(chosen))));
        return items;
    }

    private static List<Written> written(List<Given> entries, String address, String here) {
        List<Written> all = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            Given given = entries.get(i);
            all.add(new Written(
                    MeasurePage.words(given), given.note(), address + "?entry=" + i, here.equals(String.valueOf(i))));
        }
        return all;
    }

    /** Instrument and usual error, from the bench's one table or what the owner wrote of it. */
    private static List<Fact> facts(Term term, Build build) {
        FigurePrinter printer = new FigurePrinter(build.units());
        InstrumentKind kind = term.reading().usualInstrument();
        List<Fact> facts = new ArrayList<>();
        boolean rating = Stops.RATINGS.contains(term); // to try whether a wheel holds is how wheels burst
        if (term.isWish()) {
            facts.add(new Fact("What it is", "your decision: nothing is read, and nothing scatters"));
            facts.add(believable(term, printer));
            return facts;
        }
        facts.add(new Fact("Instrument", rating ? "none: its maker's sheet, stamp or plate" : kind.label()));
        if (!rating) {
            facts.add(new Fact("How", term.reading().how()));
            facts.add(new Fact("It takes about", Math.round(build.minutes(term.reading())) + " min"));
        }
        if (!rating && term.dimension() != Dimension.COUNT && term.dimension() != Dimension.RATIO) {
            facts.add(new Fact(
                    "One reading scatters by",
                    printer.print(term.dimension().ofDifference(), build.repeatability(term.reading()), 0)
                            .line()));
        }
        facts.add(believable(term, printer));
        return facts;
    }

    private static Fact believable(Term term, FigurePrinter printer) {
        return new Fact(
                "Believable",
                printer.print(term.dimension(), term.believable().least(), 0)
                                .first()
                                .text() + " to "
                        + printer.print(term.dimension(), term.believable().most(), 0)
                                .first()
                                .text());
    }
}
