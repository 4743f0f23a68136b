package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Unit;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Which columns a catalogue of one shelf may have, and which one a header means. */
final class CatalogueColumns {
    private static final Pattern BRACKETED = Pattern.compile("([^\\[(]*)[\\[(]([^\\])]*)[\\])](.*)");
    private static final Pattern TOLERANCE =
            Pattern.compile("(?<=^|[ _])(?:tolerance|tol\\.?|plus_minus)(?=$|[ _])|±|\\+/-|\\+-");

    private static final String TOLERANCE_KEY = "_tolerance";

    private final Shelf shelf;
    private final boolean decimalComma;
    /** Whether the columns are keys of a YAML list, which hold no units. */
    private final boolean keyed;

    private final List<Term> terms;
    /** What each name may mean: a label, a term, a choice; more than one where it is not clear. */
    private final Map<String, Set<Object>> known = new LinkedHashMap<>();
    /** Units of the headers found so far, for tolerances whose own header names none. */
    private final Map<Term, Unit> units = new EnumMap<>(Term.class);

    private CatalogueColumns(Shelf shelf, boolean decimalComma, boolean keyed) {
        this.shelf = shelf;
        this.decimalComma = decimalComma;
        this.keyed = keyed;
        this.terms = CatalogueRow.terms(shelf);
        for (CatalogueLabel label : CatalogueLabel.of(shelf)) {
            name(label.key(), label);
            label.others().forEach(other -> name(other, label));
        }
        PartKind kind = shelf.kind();
        if (kind == null) {
            return;
        }
        for (Part part : kind.sections()) {
            for (Term term : Layout.terms(part)) {
                names(part, term.key(), term.label(), term);
            }
            Arrays.stream(Choice.values())
                    .filter(c -> c.part() == part)
                    .forEach(c -> names(part, c.key(), part.label() + " " + c.key(), c));
        }
    }

    /** Those of a CSV file. */
    static CatalogueColumns headed(Shelf shelf, boolean decimalComma) {
        return new CatalogueColumns(shelf, decimalComma, false);
    }

    /** Those of a list in a YAML file. */
    static CatalogueColumns keyed(Shelf shelf) {
        return new CatalogueColumns(shelf, true, true);
    }

    /** A bare key means the part's own figure where it has one, else whichever section has it. */
    private void names(Part part, String key, String label, Object meaning) {
        PartKind kind = Objects.requireNonNull(shelf.kind());
        boolean ownHasIt =
                part != kind.part() && Layout.keys(kind.part()).contains(key) && kind != PartKind.DONOR_ENGINE;
        boolean isLabel =
                CatalogueLabel.of(shelf).stream().anyMatch(l -> l.key().equals(key));
        if (!ownHasIt && !isLabel) {
            name(key, meaning);
        }
        name(part.key() + "." + key, meaning);
        if (!known.containsKey(plain(label))) {
            name(plain(label), meaning);
        }
    }

    private void name(String name, Object meaning) {
        known.computeIfAbsent(name, n -> new LinkedHashSet<>()).add(meaning);
    }

    /** Names to write, the short ones where they are clear. */
    List<String> canonical() {
        Set<Object> named = new LinkedHashSet<>();
        return known.entrySet().stream()
                .filter(e -> e.getValue().size() == 1)
                .filter(e -> named.add(e.getValue().iterator().next()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /**
     * A column with the way it was understood, or why there is none.
     * @param meaning what it is a column of; no two columns may have the same
     */
    record Found(@Nullable CatalogueColumn column, @Nullable Fault fault, String note, String meaning) {
        Found(@Nullable CatalogueColumn column, @Nullable Fault fault, String note) {
            this(column, fault, note, "");
        }
    }

    /** A header as read: the name, the unit it gives, whether it is of tolerances. */
    private record Header(String name, String unit, boolean tolerance) {}

    Found find(String typed) {
        String header = typed.strip().replaceAll("[\\s\u00a0]+", " ");
        if (header.isEmpty() || header.startsWith("#")) {
            return new Found(new CatalogueColumn.LeftOut(header), null, "");
        }
        for (Header way : ways(header)) {
            Set<Object> meanings = known.getOrDefault(way.name(), Set.of());
            if (meanings.size() > 1) {
                String paths = meanings.stream().map(CatalogueColumns::path).collect(Collectors.joining(" or "));
                return fault(header, "can mean more than one thing", paths, "write " + paths);
            }
            if (meanings.size() == 1) {
                return column(header, way, meanings.iterator().next(), "");
            }
        }
        for (Header way : ways(header)) {
            Optional<Term> meant = tradeWord(way.name());
            if (meant.isPresent()) {
                return column(
                        header,
                        way,
                        meant.get(),
                        "read the column '" + header + "' as " + meant.get().path());
            }
        }
        return unknown(header);
    }

    /** The column of exactly this name, for files that write keys. */
    Optional<CatalogueColumn> exact(String key) {
        boolean tolerance = !known.containsKey(key) && key.endsWith(TOLERANCE_KEY);
        String name = tolerance ? key.substring(0, key.length() - TOLERANCE_KEY.length()) : key;
        Set<Object> meanings = known.getOrDefault(name, Set.of());
        boolean clear =
                meanings.size() == 1 && (!tolerance || meanings.iterator().next() instanceof Term);
        return clear
                ? Optional.ofNullable(column(
                                key,
                                new Header(name, "", tolerance),
                                meanings.iterator().next(),
                                "")
                        .column())
                : Optional.empty();
    }

    /** For a key nobody knows. */
    String didYouMean(String key) {
        return TradeWords.didYouMean(
                        key, shelf.kind() == null ? "" : shelf.kind().part().key(), known.keySet())
                .orElse("write one of these, or put # before it if it is a remark");
    }

    /** The ways to take a header apart, the plainest first. */
    private static List<Header> ways(String header) {
        List<Header> ways = new ArrayList<>();
        Matcher bracketed = BRACKETED.matcher(header);
        if (bracketed.matches()) {
            String unit = bracketed.group(2).strip();
            add(
                    ways,
                    bracketed.group(1) + " " + bracketed.group(3),
                    unit.replaceFirst("^± ?", ""),
                    unit.startsWith("±"));
            return ways;
        }
        add(ways, header, "", false);
        for (int at = header.lastIndexOf(' '); at > 0; at = header.lastIndexOf(' ', at - 1)) {
            add(ways, header.substring(0, at), header.substring(at + 1), false);
        }
        for (int at = header.lastIndexOf('_'); at > 0; at = header.lastIndexOf('_', at - 1)) {
            add(ways, header.substring(0, at), header.substring(at + 1), false);
        }
        return ways;
    }

    private static void add(List<Header> ways, String name, String unit, boolean tolerance) {
        if (!tolerance) {
            ways.add(new Header(plain(name), unit, false));
        }
        String bare = TOLERANCE.matcher(name.toLowerCase(Locale.ROOT)).replaceAll("");
        String bareUnit = TOLERANCE.matcher(unit).replaceAll("").strip();
        if (tolerance || !plain(bare).equals(plain(name)) || !bareUnit.equals(unit)) {
            ways.add(new Header(plain(bare), bareUnit, true));
        }
    }

    private static String plain(String name) {
        return name.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s\u00a0,_-]+", "_")
                .replaceAll("^_|_$", "");
    }

    private static String path(Object meaning) {
        return meaning instanceof Term term
                ? term.path()
                : meaning instanceof Choice choice ? choice.path() : ((CatalogueLabel) meaning).key();
    }

    private Optional<Term> tradeWord(String name) {
        List<Term> meant = TradeWords.terms(name).stream()
                .map(Term::at)
                .flatMap(Optional::stream)
                .filter(terms::contains)
                .toList();
        return meant.size() == 1 ? Optional.of(meant.get(0)) : Optional.empty();
    }

    private Found column(String header, Header way, Object meaning, String note) {
        Found found = columnOf(header, way, meaning, note);
        return new Found(
                found.column(), found.fault(), found.note(), path(meaning) + (way.tolerance() ? " tolerance" : ""));
    }

    private Found columnOf(String header, Header way, Object meaning, String note) {
        if (meaning instanceof Term term) {
            return figure(header, way, term, note);
        }
        if (meaning instanceof Choice choice) {
            return way.unit().isEmpty() && !way.tolerance()
                    ? new Found(WordColumn.of(header, choice), null, note)
                    : fault(header, "has a unit, and words have none", choice.key(), "take the unit out of the header");
        }
        CatalogueLabel label = (CatalogueLabel) meaning;
        return switch (label) {
            case PRICE, SHIPPING -> money(header, way, label);
            case LEAD_DAYS -> {
                boolean weeks = way.unit().matches("(?i)w|wks?|weeks?");
                yield weeks || way.unit().matches("(?i)|d|days?")
                        ? new Found(WordColumn.days(header, weeks), null, note)
                        : fault(header, "has a unit that is no time of waiting", "days, weeks", "write lead_days");
            }
            case LEAST, MOST, STEP, HELD -> range(header, way, label);
            default ->
                way.unit().isEmpty()
                        ? new Found(WordColumn.of(header, label), null, note)
                        : fault(header, "has a unit, and words have none", label.key(), "write " + label.key());
        };
    }

    private Found money(String header, Header way, CatalogueLabel label) {
        if (!way.unit().matches("[\\p{L}€]{0,12}")) {
            return fault(
                    header,
                    "has a currency that cannot be told",
                    "three letters, such as price [EUR]",
                    MoneyColumn.mend(way.unit()));
        }
        String currency = way.unit().isEmpty() ? "" : MoneyColumn.currency(way.unit());
        return new Found(new MoneyColumn(header, label == CatalogueLabel.SHIPPING, currency, decimalComma), null, "");
    }

    private Found range(String header, Header way, CatalogueLabel label) {
        Dimension dimension = Objects.requireNonNull(label.dimension());
        return figure(
                header,
                way.unit(),
                dimension,
                "",
                unit -> new FigureColumn(
                        header,
                        dimension,
                        unit,
                        label == CatalogueLabel.HELD,
                        decimalComma,
                        keyed,
                        (row, value, tolerance) -> row.range(label, value, tolerance)));
    }

    private Found figure(String header, Header way, Term term, String note) {
        int slot = terms.indexOf(term);
        FigureColumn.Taker taker = way.tolerance()
                ? (row, value, tolerance) -> row.tolerance(slot, value, header)
                : (row, value, tolerance) -> row.figure(slot, value, tolerance, header);
        return figure(header, way.unit(), term.dimension(), note, unit -> {
            if (unit != null) {
                units.put(term, unit);
            }
            Unit taken = unit == null && way.tolerance() ? units.get(term) : unit;
            return new FigureColumn(header, term.dimension(), taken, way.tolerance(), decimalComma, keyed, taker);
        });
    }

    /** All columns of a header; a tolerance may stand before its figure. */
    List<Found> all(List<String> header) {
        header.forEach(this::find);
        return header.stream().map(this::find).toList();
    }

    private interface Maker {
        CatalogueColumn with(@Nullable Unit unit);
    }

    private static Found figure(String header, String unit, Dimension dimension, String note, Maker maker) {
        if (unit.isEmpty()) {
            return new Found(maker.with(null), null, note);
        }
        Optional<Unit> found = FigureColumn.unit(dimension, unit);
        return found.isPresent()
                ? new Found(maker.with(found.get()), null, note)
                : fault(
                        header,
                        "has the unit '" + Faults.shown(unit) + "', which is no unit of " + dimension.plainName(),
                        String.join(", ", dimension.fittingUnits()),
                        "write the unit in brackets, such as ["
                                + dimension.fittingUnits().get(0) + "]");
    }

    private Found unknown(String header) {
        String name = ways(header).get(0).name();
        Optional<Term> workedOut = Stream.ofNullable(shelf.kind())
                .flatMap(kind -> kind.sections().stream())
                .map(part -> Term.at(part.key() + "." + name))
                .flatMap(Optional::stream)
                .findFirst();
        if (workedOut.isPresent()) {
            return fault(header, "is worked out, not stated", "", "put # before it to leave the column out");
        }
        String guess = TradeWords.didYouMean(name, known.keySet()).orElse("");
        return fault(
                header,
                "is no column of a " + shelf.label() + " catalogue",
                String.join(", ", canonical()),
                (guess.isEmpty() ? "" : guess + " Else ") + "put # before it to leave the column out");
    }

    private static Found fault(String header, String why, String allowed, String mend) {
        return new Found(null, new Fault(0, 0, header, header, why, allowed, mend), "");
    }
}
