package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import longthrow.buildfile.Node.Entry;
import longthrow.core.build.FlowTable;
import longthrow.core.cycle.BenchTable;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;

/** The section {@code flow_tables:} of a build file. What a table needs to count and does not say is asked for where it counts; what contradicts itself is refused here. */
final class FlowTableReader {
    private final Fields fields;
    private final Faults faults;

    private FlowTableReader(Fields fields, Faults faults) {
        this.fields = fields;
        this.faults = faults;
    }

    static List<FlowTable> read(Fields top, Faults faults) {
        List<FlowTable> tables = new ArrayList<>();
        top.node(Layout.FLOW_TABLES)
                .ifPresent(n -> BuildReader.eachMapping(n, Layout.FLOW_TABLES, Layout.FLOW_TABLE_KEYS, faults)
                        .forEach(fields ->
                                new FlowTableReader(fields, faults).table().ifPresent(tables::add)));
        return tables;
    }

    private Optional<FlowTable> table() {
        Optional<String> valve =
                fields.required("valve", "intake").flatMap(t -> fields.word("valve", Layout.LIFT_VALVES));
        List<FlowTable.Row> rows = rows();
        boolean isFlow = !rows.isEmpty() && rows.get(0).flow().dimension() == Dimension.VOLUME_FLOW;
        if (isFlow && fields.has("coefficient_of")) {
            fields.refuse(
                    "coefficient_of",
                    fields.textOrEmpty("coefficient_of"),
                    "has no place beside rows that are flows",
                    "",
                    "leave it out, or write coefficients without a unit");
        }
        Optional<Quantity> within = fields.has("within") ? fields.width("within", Dimension.RATIO) : Optional.empty();
        within.filter(w -> w.si() >= 0.5)
                .ifPresent(w -> fields.refuse(
                        "within",
                        w.written(),
                        "is so wide that the table says nothing",
                        "under 50 %",
                        "write half the width within which a flow is right 95 times in 100, as a share of it: 3 %"));
        FlowTable table = new FlowTable(
                valve.orElse(""),
                chosen("direction", Layout.FLOW_DIRECTIONS, FlowTable.Direction.values(), FlowTable.Direction::key),
                chosen("coefficient_of", Layout.FLOW_AREAS, FlowTable.Area.values(), FlowTable.Area::key),
                within(
                        "depression",
                        Dimension.PRESSURE,
                        BenchTable.WEAKEST,
                        BenchTable.STRONGEST,
                        "249 Pa to 24900 Pa (1 to 100 inches of water)"),
                chosen("joined", Layout.FLOW_JOINED, FlowTable.Joined.values(), FlowTable.Joined::key),
                within("temperature", Dimension.TEMPERATURE, BenchTable.COLDEST, BenchTable.HOTTEST, "-43 °C to 77 °C"),
                within(
                        "air",
                        Dimension.PRESSURE,
                        BenchTable.THINNEST,
                        BenchTable.DENSEST,
                        "50 kPa to 110 kPa, absolute"),
                within,
                fields.textOrEmpty(Layout.NOTE),
                rows);
        return valve.isPresent() ? Optional.of(table) : Optional.empty();
    }

    private <E extends Enum<E>> Optional<E> chosen(String key, List<String> words, E[] all, Function<E, String> name) {
        return fields.word(key, words)
                .flatMap(word -> Arrays.stream(all)
                        .filter(e -> name.apply(e).equals(word))
                        .findFirst());
    }

    private Optional<Quantity> within(String key, Dimension dimension, double least, double most, String allowed) {
        Optional<Quantity> quantity = fields.quantity(key, dimension);
        quantity.filter(q -> !(q.si() >= least && q.si() <= most))
                .ifPresent(q -> fields.refuse(
                        key,
                        q.written(),
                        "is not what a flow bench works at",
                        allowed,
                        "write it with its own unit, as it was at the bench"));
        return quantity;
    }

    private List<FlowTable.Row> rows() {
        List<FlowTable.Row> rows = new ArrayList<>();
        fields.eachRow("'2 mm: 9.6 l/s' below 'rows:'", (entry, path) -> row(entry, path, rows));
        return rows;
    }

    private void row(Entry entry, String path, List<FlowTable.Row> rows) {
        Optional<Quantity> lift = Fields.quantity(entry.key(), path, Dimension.LENGTH, faults);
        Optional<Quantity> flow = Fields.quantity(entry.value(), path, dimension(entry), faults);
        if (lift.isEmpty() || flow.isEmpty()) {
            return;
        }
        if (!rows.isEmpty()) {
            FlowTable.Row before = rows.get(rows.size() - 1);
            if (lift.get().compareTo(before.lift()) <= 0) {
                faults.add(
                        entry.key().place(),
                        path,
                        lift.get().written(),
                        "does not come after " + before.lift().written(),
                        "lifts that rise from line to line",
                        "sort the lines by lift, each lift once");
            }
            if (flow.get().dimension() != before.flow().dimension()) {
                faults.add(
                        entry.value().place(),
                        path,
                        flow.get().written(),
                        "is not of the kind of " + before.flow().written(),
                        "flows with their unit, or coefficients without one",
                        "write all rows alike");
            }
        }
        if (!(lift.get().si() >= 0) || !(flow.get().si() >= 0)) {
            faults.add(
                    entry.key().place(),
                    path,
                    lift.get().written() + ": " + flow.get().written(),
                    "is negative",
                    "0 or above",
                    "say the way of the air with 'direction'");
        }
        rows.add(new FlowTable.Row(lift.get(), flow.get()));
    }

    /** A figure without unit is a coefficient. */
    private Dimension dimension(Entry entry) {
        boolean isBare = Fields.text(entry.value(), "", new Faults())
                .filter(t -> QuantityParser.parse(t, Dimension.RATIO) instanceof Parsed.Understood)
                .isPresent();
        return isBare ? Dimension.RATIO : Dimension.VOLUME_FLOW;
    }
}
