package longthrow.buildfile;

import static java.util.stream.Collectors.joining;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.buildfile.Layout.Form;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.FitWish;
import longthrow.core.build.FlowTable;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.HoursAt;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.build.MockedUp;
import longthrow.core.build.OwnRule;
import longthrow.core.build.TracedOutline;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** A build to its canonical text: sections in order of stripping, quantities as they were written. */
final class BuildWriter {
    private final Build build;
    private final StringBuilder text = new StringBuilder();

    BuildWriter(Build build) {
        this.build = build;
    }

    String text() {
        line(0, Layout.VERSION, String.valueOf(Layout.FORMAT_VERSION));
        section(Part.WHOLE);
        line(0, Layout.UNITS, Layout.word(build.units()));
        list(0, Layout.NOTES, build.notes());
        instruments();
        for (Part part : Part.values()) {
            if (part != Part.WHOLE) {
                section(part);
            }
        }
        aims();
        rules();
        damage();
        liftTables();
        flowTables();
        outlines();
        mockedUp();
        gasTraces();
        hoursAt();
        bench();
        fit();
        taken();
        return text.toString();
    }

    private void section(Part part) {
        int at = text.length();
        if (part == Part.WHOLE) {
            words(2, Layout.NAME, build.name());
            if (build.invented()) {
                line(2, Layout.INVENTED, "yes");
            }
        }
        for (Choice choice : Choice.values()) {
            if (choice.part() == part) {
                build.choice(choice).ifPresent(word -> words(2, choice.key(), word));
            }
        }
        for (Term term : Layout.terms(part)) {
            if (!build.of(term).isEmpty()) {
                given(term.key(), build.of(term));
            }
        }
        if (part == Part.ROD && !build.shims().isEmpty()) {
            String shims = build.shims().stream().map(ExactLength::toString).collect(joining(", ", "[", "]"));
            line(2, Layout.SHIMS, shims);
        }
        if (text.length() > at) {
            text.insert(at, part.key() + ":\n");
        }
    }

    // ---- values

    private void given(String key, List<Given> all) {
        if (all.size() == 1) {
            given(2, key + ":", all.get(0), true);
            return;
        }
        text.append("  ").append(key).append(":\n");
        boolean onlyBareFigures = all.stream().allMatch(g -> shortForm(g).isBareFigure());
        for (int i = 0; i < all.size(); i++) {
            // a list of nothing but bare figures is read as repeat readings of one instrument
            given(4, "-", all.get(i), !(onlyBareFigures && i == 0));
        }
    }

    /** The one-line form of a value; empty where it needs its keys. */
    private record OneLine(String text, boolean doubted) {
        static final OneLine NONE = new OneLine("", true);

        boolean isBareFigure() {
            return !text.isEmpty() && !doubted;
        }
    }

    /** The one-line form of an entry; empty where it needs its keys. */
    static String brief(Given given) {
        return shortForm(given).text();
    }

    private static OneLine shortForm(Given given) {
        if (given instanceof Given.Typed typed && given.note().isEmpty()) {
            return new OneLine(withDoubt(typed.value(), typed.plusMinus()), true);
        }
        if (given instanceof Given.NotKnown && given.note().isEmpty()) {
            return new OneLine(Layout.UNKNOWN, true);
        }
        if (given instanceof Given.Taken taken) {
            Given.Taken bare =
                    new Given.Taken(taken.readings().subList(0, 1), null, null, null, Given.Origin.NOT_SAID, "");
            return taken.equals(bare) ? new OneLine(taken.readings().get(0).written(), false) : OneLine.NONE;
        }
        return OneLine.NONE;
    }

    private static String withDoubt(Quantity value, Quantity plusMinus) {
        return value.written() + " ± " + plusMinus.written();
    }

    /**
     * One value.
     * @param lead {@code key:} or a dash
     */
    private void given(int indent, String lead, Given given, boolean shortIfPossible) {
        OneLine brief = shortForm(given);
        if (shortIfPossible && !brief.text().isEmpty()) {
            text.append(" ".repeat(indent))
                    .append(lead)
                    .append(' ')
                    .append(Scalars.write(brief.text(), false))
                    .append('\n');
            return;
        }
        block(indent, lead, longForm(given));
    }

    private void block(int indent, String lead, Map<String, String> fields) {
        boolean dash = lead.equals("-");
        text.append(" ".repeat(indent)).append(lead).append(dash ? " " : "\n");
        boolean first = dash;
        for (Map.Entry<String, String> field : fields.entrySet()) {
            text.append(first ? "" : " ".repeat(indent + 2));
            text.append(field.getKey()).append(": ").append(field.getValue()).append('\n');
            first = false;
        }
    }

    /** An entry by its keys, values as they may stand in a block. */
    static Map<String, String> longForm(Given given) {
        Map<String, String> fields = new LinkedHashMap<>();
        if (given instanceof Given.Taken taken) {
            taken(taken, fields);
        } else if (given instanceof Given.Typed typed) {
            put(fields, Form.VALUE.key(), withDoubt(typed.value(), typed.plusMinus()));
        } else if (given instanceof Given.Specified s) {
            put(
                    fields,
                    (s.catalogue() ? Form.CATALOGUE : Form.SPECIFIED).key(),
                    s.value().written());
            put(fields, "tolerance", written(s.tolerance()));
            put(fields, "by", s.by());
        } else if (given instanceof Given.Assumed a) {
            put(fields, Form.ASSUMED.key(), withDoubt(a.value(), a.plusMinus()));
            fields.put("because", Scalars.write(a.because(), false));
        } else {
            fields.put(Form.UNKNOWN.key(), Scalars.write(given.note(), false));
            return fields;
        }
        put(fields, Layout.NOTE, given.note());
        return fields;
    }

    private static void taken(Given.Taken taken, Map<String, String> fields) {
        fields.put(
                Form.READINGS.key(),
                taken.readings().stream()
                        .map(q -> Scalars.write(q.written(), true))
                        .collect(joining(", ", "[", "]")));
        put(fields, "with", taken.instrument() == null ? "" : taken.instrument());
        put(fields, "part_at", written(taken.partTemperature()));
        put(fields, "instrument_at", written(taken.instrumentTemperature()));
        put(fields, "who", taken.origin().who());
        put(fields, "when", taken.origin().when());
        put(fields, "photo", taken.origin().photo());
    }

    private static String written(@Nullable Quantity quantity) {
        return quantity == null ? "" : quantity.written();
    }

    private static void put(Map<String, String> fields, String key, String value) {
        if (!value.isEmpty()) {
            fields.put(key, Scalars.write(value, false));
        }
    }

    // ---- the rest

    private void instruments() {
        if (build.instruments().isEmpty()) {
            return;
        }
        text.append(Layout.INSTRUMENTS).append(":\n");
        for (Instrument i : build.instruments().values()) {
            Dimension step = i.kind().dimension().ofDifference();
            Map<String, String> fields = new LinkedHashMap<>();
            fields.put("kind", i.kind().key());
            fields.put("resolution", Scalars.figure(step, i.resolution()));
            fields.put("error", Scalars.figure(step, i.statedError()));
            if (i.relativeError() != 0) {
                fields.put("error_share", Scalars.decimal(i.relativeError()));
            }
            if (!i.temperatureMetalIsSteel()) {
                fields.put("steel", "no");
            }
            Instrument standard = i.setWith();
            if (standard != null) {
                fields.put("set_with", standard(standard, i));
            }
            put(fields, "calibration", i.calibration());
            block(2, i.key() + ":", fields);
        }
    }

    /** Only a name can be written, so the standard must be what the name stands for. */
    private String standard(Instrument standard, Instrument of) {
        Instrument named = build.instruments().get(standard.key());
        if (!standard.equals(named == null ? Instrument.builtIn(standard.kind()) : named)) {
            throw new IllegalArgumentException("instrument " + of.key() + " was set with " + standard.key()
                    + ", which is neither built in nor among the instruments of the build; add it there, before "
                    + of.key());
        }
        return standard.key();
    }

    private void aims() {
        if (!build.aims().isEmpty()) {
            text.append(Layout.AIMS).append(":\n");
            build.aims().forEach((term, aim) -> words(2, term.path(), aim.written()));
        }
    }

    private void rules() {
        if (build.rulesChosen().isEmpty() && build.ownRules().isEmpty()) {
            return;
        }
        text.append(Layout.RULES).append(":\n");
        if (!build.rulesChosen().isEmpty()) {
            text.append("  choose:\n");
            build.rulesChosen().forEach((rule, alternative) -> words(4, rule, alternative));
        }
        if (!build.ownRules().isEmpty()) {
            text.append("  keep:\n");
        }
        for (OwnRule rule : build.ownRules()) {
            Map<String, String> fields = new LinkedHashMap<>();
            fields.put(Layout.NAME, Scalars.write(rule.name(), false));
            fields.put("term", rule.term().path());
            put(fields, "least", written(rule.least()));
            put(fields, "most", written(rule.most()));
            put(fields, "guard", written(rule.guard()));
            put(fields, "temperature", written(rule.temperature()));
            put(fields, "procedure", rule.procedure());
            put(fields, "reference", rule.reference());
            block(4, "-", fields);
        }
    }

    private void damage() {
        if (!build.damage().isEmpty()) {
            text.append(Layout.SEEN).append(":\n");
        }
        for (Damage seen : build.damage()) {
            Map<String, String> fields = new LinkedHashMap<>();
            fields.put("part", seen.part().key());
            fields.put("damage", seen.kind().key());
            put(fields, "where", seen.where());
            block(2, "-", fields);
        }
    }

    private void liftTables() {
        if (!build.lifts().isEmpty()) {
            text.append(Layout.LIFT_TABLES).append(":\n");
        }
        for (LiftTable table : build.lifts()) {
            text.append("  - valve: ")
                    .append(table.valve())
                    .append("\n    at: ")
                    .append(table.at())
                    .append('\n');
            text.append("    rows:").append(table.rows().isEmpty() ? " {}\n" : "\n");
            table.rows()
                    .forEach(row -> words(
                            6,
                            Scalars.write(row.angle().written(), false),
                            row.lift().written()));
        }
    }

    private void flowTables() {
        if (!build.flows().isEmpty()) {
            text.append(Layout.FLOW_TABLES).append(":\n");
        }
        for (FlowTable table : build.flows()) {
            block(2, "-", flowTable(table));
            text.append("    rows:").append(table.rows().isEmpty() ? " {}\n" : "\n");
            table.rows()
                    .forEach(row -> words(
                            6,
                            Scalars.write(row.lift().written(), false),
                            row.flow().written()));
        }
    }

    /** All but its rows. */
    private static Map<String, String> flowTable(FlowTable table) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("valve", table.valve());
        table.direction().ifPresent(d -> fields.put("direction", d.key()));
        table.coefficient().ifPresent(a -> fields.put("coefficient_of", a.key()));
        table.depression().ifPresent(d -> fields.put("depression", d.written()));
        table.joined().ifPresent(j -> fields.put("joined", j.key()));
        table.temperature().ifPresent(t -> fields.put("temperature", t.written()));
        table.air().ifPresent(a -> fields.put("air", a.written()));
        table.within().ifPresent(w -> fields.put("within", w.written()));
        put(fields, Layout.NOTE, table.note());
        return fields;
    }

    private void outlines() {
        if (!build.outlines().isEmpty()) {
            text.append(Layout.OUTLINES).append(":\n");
        }
        build.outlines().forEach(outline -> text.append(outline(outline)));
    }

    /** One outline as an item of a list, indented as the list. */
    static String outline(TracedOutline outline) {
        StringBuilder text = new StringBuilder();
        text.append("  - part: ").append(outline.part().key()).append('\n');
        field(text, "unit", outline.unit());
        text.append("    ").append(outline.form().key()).append(":\n");
        outline.lines()
                .forEach(line -> text.append("      - ")
                        .append(Scalars.write(line, false))
                        .append('\n'));
        field(text, "datum_x", outline.datumX());
        field(text, "datum_y", outline.datumY());
        if (outline.mirrored()) {
            text.append("    mirrored: yes\n");
        }
        field(text, "from", outline.from());
        field(text, "to", outline.to());
        field(text, "doubt", outline.doubt());
        if (!outline.note().isEmpty()) {
            text.append("    ")
                    .append(Layout.NOTE)
                    .append(": ")
                    .append(Scalars.write(outline.note(), false))
                    .append('\n');
        }
        return text.toString();
    }

    private static void field(StringBuilder text, String key, @Nullable Quantity value) {
        if (value != null) {
            text.append("    ")
                    .append(key)
                    .append(": ")
                    .append(Scalars.write(value.written(), false))
                    .append('\n');
        }
    }

    private void mockedUp() {
        if (!build.mockedUp().isEmpty()) {
            text.append(Layout.MOCKED_UP).append(":\n");
        }
        build.mockedUp().forEach(mocked -> block(2, "-", fields(mocked)));
    }

    /** What was mocked up by its keys, values as they may stand in a block. */
    static Map<String, String> fields(MockedUp mocked) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("pair", mocked.pair().key());
        fields.put("way", mocked.way().key());
        if (mocked.found() instanceof MockedUp.Touching) {
            fields.put("gap", MockedUpReader.TOUCHES);
        } else if (mocked.found() instanceof MockedUp.Free free) {
            put(fields, "at_least", free.atLeast().written());
        } else if (mocked.found() instanceof MockedUp.Curve curve) {
            fields.put(
                    "rows",
                    curve.rows().stream()
                            .map(row -> Scalars.write(row.angle().written(), true) + ": "
                                    + Scalars.write(row.gap().written(), true))
                            .collect(joining(", ", "{", "}")));
        } else if (mocked.found() instanceof MockedUp.Read read) {
            Quantity stated = read.plusMinus();
            if (stated != null) {
                put(fields, "gap", withDoubt(read.gaps().get(0), stated));
            } else if (read.gaps().size() == 1) {
                put(fields, "gap", read.gaps().get(0).written());
            } else {
                fields.put(
                        "gap",
                        read.gaps().stream()
                                .map(q -> Scalars.write(q.written(), true))
                                .collect(joining(", ", "[", "]")));
            }
        }
        if (mocked.endPlay() != MockedUp.EndPlay.NOT_SAID) {
            fields.put("both_ways", mocked.endPlay() == MockedUp.EndPlay.BOTH_WAYS ? "yes" : "no");
        }
        MockedUp.SIZES.forEach(size ->
                put(fields, MockedUpReader.key(size), written(mocked.with().get(size))));
        put(fields, Layout.NOTE, mocked.note());
        return fields;
    }

    private void gasTraces() {
        if (!build.gas().isEmpty()) {
            text.append(Layout.GAS_TRACES).append(":\n");
        }
        for (GasReading trace : build.gas()) {
            block(2, "-", gasTrace(trace));
            text.append("    rows:\n");
            trace.rows()
                    .forEach(row -> words(
                            6,
                            Scalars.write(row.angle().written(), false),
                            row.pressure().written()));
        }
    }

    /** All but its rows. */
    static Map<String, String> gasTrace(GasReading trace) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("speed", trace.speed().written());
        fields.put("pressure", trace.pressure().key());
        Quantity air = trace.air();
        if (air != null) {
            fields.put("air", air.written());
        }
        fields.put("cycles", trace.cycles().key());
        fields.put("within", trace.within().written());
        put(fields, Layout.NOTE, trace.note());
        return fields;
    }

    private void hoursAt() {
        if (!build.hoursAt().isEmpty()) {
            text.append(Layout.HOURS_AT).append(":\n");
        }
        build.hoursAt().forEach(step -> block(2, "-", hoursAt(step)));
    }

    /** A step of the duty. */
    static Map<String, String> hoursAt(HoursAt step) {
        Map<String, String> fields = new LinkedHashMap<>();
        put(fields, "speed", step.speed().written());
        put(fields, "share", step.share().written());
        return fields;
    }

    private void bench() {
        if (build.bench().isEmpty()) {
            return;
        }
        text.append(Layout.BENCH).append(":\n");
        build.bench().forEach((kind, own) -> {
            Map<String, String> fields = new LinkedHashMap<>();
            if (!Double.isNaN(own.repeatability())) {
                fields.put("repeatability", Scalars.figure(kind.dimension().ofDifference(), own.repeatability()));
            }
            if (!Double.isNaN(own.minutes())) {
                fields.put("minutes", Scalars.decimal(own.minutes()));
            }
            if (fields.isEmpty()) {
                line(2, kind.key(), "{}");
            } else {
                block(2, kind.key() + ":", fields);
            }
        });
    }

    private void fit() {
        FitWish wish = build.fit();
        if (wish.equals(FitWish.NONE)) {
            return;
        }
        text.append(Layout.FIT).append(":\n");
        onOneLine("choose", wish.choose().stream().map(PartKind::key).toList());
        onOneLine("keep", wish.keep());
        wish.budget().ifPresent(hundredths -> words(2, "budget", money(hundredths, wish.currency())));
        line(2, "machining", wish.machining() ? "yes" : "no");
        onOneLine("order", wish.order().stream().map(FitWish.Preference::key).toList());
        Quantity pressure = wish.airPressure();
        if (pressure != null) {
            words(2, "air_pressure", pressure.written());
        }
    }

    private void taken() {
        if (!build.taken().isEmpty()) {
            text.append(Layout.TAKEN).append(":\n");
        }
        build.taken().forEach(decided -> block(2, "-", fields(decided)));
    }

    /** What is taken by its keys, values as they may stand in a block. */
    static Map<String, String> fields(Decided decided) {
        Map<String, String> fields = new LinkedHashMap<>();
        if (decided instanceof Decided.Work work) {
            fields.put("work", work.kind().key());
        } else if (decided instanceof Decided.Bought bought) {
            fields.put("part", bought.kind().key());
        }
        Offer offer = decided.offer();
        put(fields, "code", decided.code());
        put(fields, Layout.NAME, decided.name());
        put(fields, "vendor", offer.vendor());
        offer.price().ifPresent(price -> put(fields, "price", money(price, offer.currency())));
        offer.shipping().ifPresent(shipping -> put(fields, "shipping", money(shipping, offer.currency())));
        offer.leadDays().ifPresent(days -> put(fields, "lead_days", String.valueOf(days)));
        if (decided instanceof Decided.Work work) {
            put(fields, "amount", work.amount().written());
            put(fields, "from", written(work.from()));
            put(fields, "to", written(work.to()));
            put(fields, "tolerance", written(work.tolerance()));
            put(fields, Layout.NOTE, work.note());
        }
        return fields;
    }

    private static String money(long hundredths, String currency) {
        return (BigDecimal.valueOf(hundredths, 2)
                                .setScale(hundredths % 100 == 0 ? 0 : 2)
                                .toPlainString()
                        + " " + currency)
                .strip();
    }

    private void onOneLine(String key, List<String> words) {
        if (!words.isEmpty()) {
            line(2, key, words.stream().map(w -> Scalars.write(w, true)).collect(joining(", ", "[", "]")));
        }
    }

    private void list(int indent, String key, List<String> words) {
        if (!words.isEmpty()) {
            text.append(" ".repeat(indent)).append(key).append(":\n");
            words.forEach(w -> text.append(" ".repeat(indent + 2))
                    .append("- ")
                    .append(Scalars.write(w, false))
                    .append('\n'));
        }
    }

    private void words(int indent, String key, String words) {
        line(indent, key, Scalars.write(words, false));
    }

    private void line(int indent, String key, String value) {
        text.append(" ".repeat(indent)).append(key).append(": ").append(value).append('\n');
    }
}
