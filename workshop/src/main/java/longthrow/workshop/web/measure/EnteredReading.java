package longthrow.workshop.web.measure;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.measure.EntryCautions;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.EitherComma;
import longthrow.workshop.web.Workbench;
import org.jspecify.annotations.Nullable;

/**
 * The form of a card, read: what is entered for a term, and which of the entries there are it takes the place of.
 * @param place of the entry it changes, from 0; {@link #NEW} beside those there are
 * @param entry what is entered; empty where something is wrong with it, or where it takes an entry out
 * @param faults what is wrong, for people
 * @param said how unusual writing was understood, for people
 * @param commas the two readings of figures whose comma may be a decimal mark or part thousands; empty where none has two
 */
record EnteredReading(
        int place, Optional<Given> entry, List<String> faults, List<String> said, Optional<Commas> commas) {
    static final int NEW = -1;

    /** So many boxes are read at once; our own choice. */
    private static final int MOST_READINGS = 50;

    /**
     * Figures that can be read in two ways, in each of them.
     * @param decimal   with the comma as a decimal mark
     * @param thousands with the comma between thousands
     */
    record Commas(List<String> decimal, List<String> thousands) {
        Commas {
            decimal = List.copyOf(decimal);
            thousands = List.copyOf(thousands);
        }
    }

    EnteredReading {
        faults = List.copyOf(faults);
        said = List.copyOf(said);
    }

    /** What the entries of the term become; empty when none is left. */
    List<Given> among(List<Given> entries) {
        List<Given> all = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            if (i == place) {
                entry.ifPresent(all::add);
            } else if (!(entries.get(i) instanceof Given.NotKnown)) {
                all.add(entries.get(i)); // 'not known' ends where something is known
            }
        }
        if (place == NEW || place >= entries.size()) {
            entry.ifPresent(all::add);
        }
        return all;
    }

    /** Reads the fields {@code entry}, {@code how}, {@code reading} (several), {@code unit}, {@code with}, {@code part_at}, {@code note} and others. */
    static EnteredReading of(Context request, Term term, Build build) {
        String at = Workbench.field(request, "entry");
        int place = at.isEmpty() || at.equals("new") ? NEW : Workbench.number(at);
        List<Given> entries = build.of(term);
        @Nullable Given before = place >= 0 && place < entries.size() ? entries.get(place) : null;
        String note = Workbench.field(request, "note");
        if (request.formParam("unknown") != null) {
            boolean alone = entries.size() <= 1 || place == NEW;
            return new EnteredReading(
                    place,
                    alone ? Optional.of(new Given.NotKnown(note)) : Optional.empty(),
                    List.of(),
                    List.of(),
                    Optional.empty());
        }
        Reader reader = new Reader(request, term, build.units());
        reader.whole(at, entries.size());
        Optional<Given> entry = switch (Workbench.field(request, "how")) {
            case "sheet" -> reader.sheet(note, before);
            case "guess" -> reader.guess(note);
            case "", "read" -> reader.taken(note, before);
            default -> reader.neither();
        };
        return new EnteredReading(
                place,
                reader.faults.isEmpty() ? entry : Optional.empty(),
                reader.faults,
                reader.said,
                reader.decimal.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Commas(reader.decimal, reader.thousands)));
    }

    /** Reads the boxes of one form and collects what is wrong with them. */
    private static final class Reader {
        private final Context request;
        private final Term term;
        private final UnitSystem units;
        private final String unit;
        private final String comma;
        private final List<String> faults = new ArrayList<>();
        private final List<String> said = new ArrayList<>();
        private final List<String> decimal = new ArrayList<>();
        private final List<String> thousands = new ArrayList<>();

        Reader(Context request, Term term, UnitSystem units) {
            this.request = request;
            this.term = term;
            this.units = units;
            this.unit = Workbench.field(request, "unit");
            this.comma = Workbench.field(request, EitherComma.FIELD);
        }

        /** A form that was altered, or belongs to another build, is not taken for a reading. */
        void whole(String at, int entries) {
            boolean fresh = at.isEmpty() || at.equals("new");
            // one past the last is the place of an entry that was taken out meanwhile: what is typed then stands beside
            if (!fresh && (!at.matches("\\d{1,4}") || Integer.parseInt(at) > entries)) {
                faults.add("The form changes entry '" + at + "', and there is none. Load the page again.");
            }
        }

        Optional<Given> neither() {
            faults.add("The form does not say whether it is read, off a sheet or a guess. Load the page again.");
            return Optional.empty();
        }

        Optional<Given> taken(String note, @Nullable Given before) {
            if (request.formParams("reading").size() > MOST_READINGS) {
                faults.add("More than " + MOST_READINGS + " readings at once. Send fewer; more may follow.");
                return Optional.empty();
            }
            List<Stated> readings = new ArrayList<>();
            for (String box : request.formParams("reading")) {
                if (!box.isBlank()) {
                    stated(box.strip(), unit, term.dimension(), term.believable()::holds)
                            .ifPresent(readings::add);
                }
            }
            if (readings.isEmpty() && faults.isEmpty()) {
                faults.add("No reading is entered. Enter at least one, or say that it is not known.");
            }
            readings.stream().map(Stated::value).forEach(this::wish);
            Optional<Quantity> partAt = temperature();
            boolean inTheBox = readings.stream().anyMatch(r -> r.expandedDoubt().isPresent());
            Optional<Quantity> beside = plusMinus();
            boolean doubted = inTheBox || beside.isPresent();
            if (inTheBox && beside.isPresent()) {
                faults.add("The ± is entered twice, in the box of the reading and beside it. Leave one of them.");
            } else if (doubted && readings.size() > 1) {
                faults.add(
                        "One of several readings has a ± of its own. Enter the readings without it, or the one figure with its ±.");
            }
            if (readings.isEmpty() || !faults.isEmpty()) {
                return Optional.empty();
            }
            if (doubted) {
                Stated one = readings.get(0);
                return Optional.of(new Given.Typed(
                        one.value(), one.expandedDoubt().or(() -> beside).orElseThrow(), note));
            }
            String with = Workbench.field(request, "with");
            Given.@Nullable Taken old = before instanceof Given.Taken taken ? taken : null;
            return Optional.of(new Given.Taken(
                    readings.stream().map(Stated::value).toList(),
                    with.isEmpty() ? null : with,
                    partAt.orElse(null),
                    old == null ? null : old.instrumentTemperature(),
                    old == null ? Given.Origin.NOT_SAID : old.origin(),
                    note));
        }

        Optional<Given> sheet(String note, @Nullable Given before) {
            Optional<Quantity> value = figure("value", "The figure of the sheet");
            Optional<Quantity> tolerance = plusMinus();
            boolean catalogue = before instanceof Given.Specified old && old.catalogue();
            return value.map(v ->
                    new Given.Specified(v, tolerance.orElse(null), Workbench.field(request, "by"), catalogue, note));
        }

        Optional<Given> guess(String note) {
            Optional<Quantity> value = figure("value", "The guessed figure");
            Optional<Quantity> doubt = plusMinus();
            String because = Workbench.field(request, "by");
            if (doubt.isEmpty() && faults.isEmpty()) {
                faults.add("A guess needs its ±: within what it lies, as far as you would bet nineteen to one.");
            }
            if (because.isEmpty()) {
                faults.add("A guess needs its reason, a few words.");
            }
            return value.isEmpty() || doubt.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Given.Assumed(value.get(), doubt.get(), because, note));
        }

        private Optional<Quantity> figure(String name, String what) {
            String box = Workbench.field(request, name);
            if (box.isEmpty()) {
                faults.add(what + " is missing.");
                return Optional.empty();
            }
            Optional<Stated> stated = stated(box, unit, term.dimension(), term.believable()::holds);
            if (stated.flatMap(Stated::expandedDoubt).isPresent()) {
                faults.add("'" + box + "' has a ±; write it into the box beside.");
            }
            stated.map(Stated::value).ifPresent(this::wish);
            return stated.map(Stated::value);
        }

        /** A wish decides on stops and is never held against a reading, so that one far off is asked about before it is kept. */
        private void wish(Quantity figure) {
            if (term.isWish() && !term.believable().holds(figure.si())) {
                FigurePrinter printer = new FigurePrinter(units);
                faults.add(term.label() + ": " + figure.written() + " is outside what 80 to 500 cc singles run at, "
                        + printer.print(term.dimension(), term.believable().least(), 0)
                                .first()
                                .text() + " to "
                        + printer.print(term.dimension(), term.believable().most(), 0)
                                .first()
                                .text()
                        + " (common practice, no source); nothing was kept. "
                        + EntryCautions.inThousands(term, figure)
                                .map(t -> "If " + t + " was meant, write it so.")
                                .orElse("Check the figure and its unit."));
            }
        }

        private Optional<Quantity> plusMinus() {
            String box = Workbench.field(request, "plus_minus");
            return box.isEmpty()
                    ? Optional.empty()
                    : stated(
                                    box,
                                    unit,
                                    term.dimension().ofDifference(),
                                    si -> si < term.believable().width())
                            .map(Stated::value);
        }

        private Optional<Quantity> temperature() {
            String box = Workbench.field(request, "part_at");
            return box.isEmpty()
                    ? Optional.empty()
                    : stated(box, Workbench.field(request, "part_at_unit"), Dimension.TEMPERATURE, si -> true)
                            .map(Stated::value);
        }

        /**
         * A bare number takes the unit beside it. A comma that can be read in two ways is read in the one in which an engine can have the figure, and how
         * it was read is said; where both can be, or neither, the form is asked which is meant, as the command asks.
         */
        private Optional<Stated> stated(String box, String itsUnit, Dimension dimension, Predicate<Double> believable) {
            String whole = BareNumber.with(box, itsUnit);
            Parsed parsed = QuantityParser.parse(whole, dimension);
            if (parsed instanceof Parsed.Understood understood) {
                return Optional.of(understood.stated());
            }
            Optional<EitherComma> either = EitherComma.of(whole, dimension);
            if (either.isEmpty()) {
                faults.add(((Parsed.Refused) parsed).message());
                return Optional.empty();
            }
            String withPoint = either.get().decimal();
            String without = either.get().thousands();
            Optional<Stated> asDecimal = understood(withPoint, dimension);
            Optional<Stated> asThousands = understood(without, dimension);
            boolean mayBeDecimal = believable.test(asDecimal.get().value().si());
            boolean mayBeThousands = believable.test(asThousands.get().value().si());
            if (comma.equals(EitherComma.THOUSANDS) || (comma.isEmpty() && mayBeThousands && !mayBeDecimal)) {
                said.add("read " + whole + " as " + without);
                return asThousands;
            }
            if (comma.equals(EitherComma.DECIMAL) || (mayBeDecimal && !mayBeThousands)) {
                said.add("read " + whole + " as " + withPoint);
                return asDecimal;
            }
            decimal.add(withPoint);
            thousands.add(without);
            faults.add(
                    "'" + whole + "' can be read as " + withPoint + " or as " + without
                            + ": say which it is. A comma is taken as it must be meant where no engine has the figure otherwise.");
            return Optional.empty();
        }

        private static Optional<Stated> understood(String text, Dimension dimension) {
            return QuantityParser.parse(text, dimension) instanceof Parsed.Understood understood
                    ? Optional.of(understood.stated())
                    : Optional.empty();
        }
    }
}
