package longthrow.core.power;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.FlowTable;
import longthrow.core.cycle.BenchTable;
import longthrow.core.cycle.ValveFlow;
import longthrow.core.cycle.ValveGroup;
import longthrow.core.cycle.ValveLift;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/**
 * What the flow tables of one valve come to: the one that counts as areas by lift, and a factor of 1 with the doubt of the bench. What a table needs and does not say, or cannot be, is a finding, and it does not count.
 */
final class FlowTableReading {
    private static final String DECISION = "docs/decisions/0029-the-bench-and-what-stands-in-the-way.md";

    private final Known known;
    private final boolean intake;
    private final int count;
    private final List<Finding> findings = new ArrayList<>();
    private final List<DefaultUsed> taken = new ArrayList<>();
    private Optional<ValveFlow> flow = Optional.empty();
    private Optional<Measured> factor = Optional.empty();

    /**
     * Of one valve.
     * @param count of such valves in the head
     */
    FlowTableReading(Known known, boolean intake, int count) {
        this.known = known;
        this.intake = intake;
        this.count = count;
        List<FlowTable> all = known.build().flows();
        List<Integer> sound = new ArrayList<>();
        for (int k = 0; k < all.size(); k++) {
            if (all.get(k).valve().equals(word()) && isSound(all.get(k), place(k))) {
                sound.add(k);
            }
        }
        sound.stream()
                .filter(k -> isItsOwnWay(all.get(k)))
                .findFirst()
                .or(() -> sound.stream().findFirst())
                .ifPresent(k -> {
                    counts(all.get(k), place(k));
                    sound.stream()
                            .filter(other -> !other.equals(k))
                            .forEach(other -> findings.add(new Finding(
                                    Finding.Kind.WARNING,
                                    place(other),
                                    "this flow table of the " + word() + " valve does not count beside " + place(k),
                                    "keep the one that tells of the port as it is; put the other among the notes")));
                });
    }

    private String word() {
        return intake ? "intake" : "exhaust";
    }

    private static String place(int k) {
        return "flow_tables[" + (k + 1) + "]";
    }

    private boolean isItsOwnWay(FlowTable table) {
        return table.direction().equals(Optional.of(intake ? FlowTable.Direction.INTO : FlowTable.Direction.OUT));
    }

    Optional<ValveFlow> flow() {
        return flow;
    }

    /**
     * Of the areas, 1 with the doubt of the bench and of what the coefficients are of; and of the flanks of an assumed lobe, for on them hangs how long the port stands how wide.
     * @param lifted whether the lift of the valve was read
     */
    Optional<Measured> factor(boolean lifted) {
        return lifted ? factor : factor.map(this::flanked);
    }

    private Measured flanked(Measured bare) {
        Map<Source, Double> contributions = new LinkedHashMap<>(bare.contributions());
        contributions.put(
                Source.known(
                        word() + " flanks",
                        Source.Kind.ASSUMED,
                        "flanks of the " + word() + " lobe, assumed",
                        ValveLift.FLANK_DOUBT),
                ValveLift.FLANK_DOUBT);
        return Measured.withContributions(bare.value(), contributions);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    List<DefaultUsed> taken() {
        return List.copyOf(taken);
    }

    private static boolean isFlow(FlowTable table) {
        return !table.rows().isEmpty() && table.rows().get(0).flow().dimension() == Dimension.VOLUME_FLOW;
    }

    private Term head() {
        return intake ? Term.INTAKE_HEAD : Term.EXHAUST_HEAD;
    }

    private Term stem() {
        return intake ? Term.INTAKE_STEM : Term.EXHAUST_STEM;
    }

    private Term inside() {
        return intake ? Term.INTAKE_THROAT : Term.EXHAUST_THROAT;
    }

    /** Where it is no wider than the head that shuts it. */
    private Optional<Measured> throat() {
        return known.figure(inside())
                .filter(t ->
                        known.figure(head()).filter(h -> t.value() <= h.value()).isPresent());
    }

    // ---- whether it counts

    private boolean isSound(FlowTable table, String place) {
        List<String> lacks = new ArrayList<>();
        List<String> mend = new ArrayList<>();
        if (table.direction().isEmpty()) {
            lacks.add("which way the air went is not said");
            mend.add("write direction: " + FlowTable.Direction.INTO.key() + " or " + FlowTable.Direction.OUT.key());
        }
        if (isFlow(table) && table.depression().isEmpty()) {
            lacks.add("at what depression it was read is not said");
            mend.add("write depression, such as 28 inH2O, from the bench's sheet");
        }
        if (!isFlow(table) && table.coefficient().isEmpty()) {
            lacks.add("its figures have no unit, and of what area they are coefficients is not said");
            mend.add("write coefficient_of: " + FlowTable.Area.CURTAIN.key() + ", " + FlowTable.Area.HEAD.key() + " or "
                    + FlowTable.Area.THROAT.key() + "; or each flow with its unit");
        }
        if (known.figure(head()).isEmpty()) {
            lacks.add("the head of the valve, that the flow is held against, is not known");
            mend.add("read " + head().path());
        }
        if (table.coefficient().equals(Optional.of(FlowTable.Area.THROAT))
                && (throat().isEmpty() || known.figure(stem()).isEmpty())) {
            lacks.add("throat or stem, of which its figures are coefficients, is not known");
            mend.add("read " + inside().path() + " and " + stem().path());
        }
        if (lacks.isEmpty()) {
            BenchTable bench = bench(table);
            for (BenchTable.Remark remark : bench.remarks(group())) {
                if (remark.refuses()) {
                    lacks.add((remark.row() < 0 ? "" : "row " + (remark.row() + 1) + ": ") + remark.words());
                }
            }
        }
        if (!lacks.isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    "the flow table of the " + word()
                            + " valve does not count, and what is published for such a valve stands for it: "
                            + String.join("; ", lacks),
                    mend.isEmpty() ? "mend or take out what is wrong with it" : String.join("; ", mend)));
        }
        return lacks.isEmpty();
    }

    private ValveGroup group() {
        double diameter = known.figure(head()).orElseThrow().value();
        OptionalDouble inside = throat().stream().mapToDouble(Measured::value).findFirst();
        double rod = known.figure(stem())
                .map(Measured::value)
                .filter(d -> d < inside.orElse(diameter))
                .orElse(0.0);
        return new ValveGroup(count, diameter, rod, inside, Optional.empty());
    }

    private static OptionalDouble si(Optional<Quantity> quantity) {
        return quantity.stream().mapToDouble(Quantity::si).findFirst();
    }

    private BenchTable bench(FlowTable table) {
        double drop = si(table.depression()).orElse(Double.NaN);
        List<BenchTable.Row> rows = table.rows().stream()
                .map(r -> new BenchTable.Row(r.lift().si(), r.flow().si(), drop))
                .toList();
        BenchTable.Scale scale = isFlow(table)
                ? new BenchTable.Scale.VolumeFlow(si(table.temperature()), si(table.air()))
                : new BenchTable.Scale.Coefficient(
                        switch (table.coefficient().orElseThrow()) {
                            case CURTAIN -> BenchTable.Basis.CURTAIN;
                            case HEAD -> BenchTable.Basis.HEAD;
                            case THROAT -> BenchTable.Basis.THROAT;
                        });
        BenchTable.Entry entry = table.joined()
                .map(j -> switch (j) {
                    case RADIUSED -> BenchTable.Entry.RADIUSED;
                    case BARE -> BenchTable.Entry.BARE;
                })
                .orElse(BenchTable.Entry.NOT_SAID);
        return new BenchTable(
                table.direction().orElseThrow() == FlowTable.Direction.INTO,
                rows,
                scale,
                entry,
                table.within().map(w -> w.si() / Source.NORMAL_95).orElse(BenchTable.USUAL_METER_DOUBT));
    }

    // ---- what it tells

    private void counts(FlowTable table, String place) {
        BenchTable bench = bench(table);
        ValveGroup valves = group();
        ValveFlow read = ValveFlow.read(bench, valves, intake);
        flow = Optional.of(read);
        double doubt = intake ? read.intoDoubt() : read.outOfDoubt();
        Map<Source, Double> contributions = new LinkedHashMap<>();
        Source flowed = Source.known(
                place, Source.Kind.INSTRUMENT, "flow of the " + word() + " port as the bench read it", doubt);
        contributions.put(flowed, doubt);
        table.coefficient().ifPresent(area -> basis(area, contributions));
        factor = Optional.of(Measured.withContributions(1, contributions));
        if (table.within().isEmpty()) {
            taken.add(new DefaultUsed(
                    place,
                    String.format(
                            Locale.ROOT,
                            "flows within %.0f %% of what they are, standard uncertainty",
                            100 * BenchTable.USUAL_METER_DOUBT),
                    "what benches repeat and agree to; common practice, no source"));
        }
        for (BenchTable.Remark remark : bench.remarks(valves)) {
            if (remark.row() < 0) {
                taken.add(new DefaultUsed(place, remark.words(), DECISION));
            } else {
                findings.add(
                        new Finding(Finding.Kind.NOTE, place, "row " + (remark.row() + 1) + ": " + remark.words(), ""));
            }
        }
        if (!isItsOwnWay(table)) {
            taken.add(new DefaultUsed(place, ValveFlow.AGAINST, DECISION));
        }
        findings.add(new Finding(Finding.Kind.NOTE, place, said(read, valves, doubt), ""));
    }

    /** What the areas lean on besides: the size that the coefficients are of. */
    private void basis(FlowTable.Area area, Map<Source, Double> contributions) {
        Measured diameter = known.figure(head()).orElseThrow();
        switch (area) {
            case CURTAIN ->
                diameter.contributions().forEach((s, c) -> contributions.merge(s, c / diameter.value(), Double::sum));
            case HEAD ->
                diameter.contributions()
                        .forEach((s, c) -> contributions.merge(s, 2 * c / diameter.value(), Double::sum));
            case THROAT -> {
                Measured inside = throat().orElseThrow();
                Measured rod = known.figure(stem()).orElseThrow();
                double ring = inside.value() * inside.value() - rod.value() * rod.value();
                inside.contributions()
                        .forEach((s, c) -> contributions.merge(s, 2 * inside.value() * c / ring, Double::sum));
                rod.contributions().forEach((s, c) -> contributions.merge(s, -2 * rod.value() * c / ring, Double::sum));
            }
        }
    }

    private String said(ValveFlow read, ValveGroup valves, double doubt) {
        double lift = read.lastLift();
        ValveFlow usual = ValveFlow.usual(ValveGroup.of(valves.head()), intake);
        double here = intake ? read.into(lift) : read.outOf(lift);
        double published = count * (intake ? usual.into(lift) : usual.outOf(lift));
        return String.format(
                Locale.ROOT,
                "flow of the %s port is that of this table: at a lift of %.2f mm an effective area of %.0f mm² ± %.0f %%, %.2f of what is published for such a valve",
                word(),
                1e3 * lift,
                1e6 * here,
                100 * Source.NORMAL_95 * doubt,
                here / published);
    }
}
