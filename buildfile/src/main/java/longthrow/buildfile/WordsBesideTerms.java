package longthrow.buildfile;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.Layout.Form;
import longthrow.core.build.Damage;
import longthrow.core.build.FitWish;
import longthrow.core.build.FlowTable;
import longthrow.core.build.GasReading;
import longthrow.core.build.MockedUp;
import longthrow.core.build.TracedOutline;
import longthrow.core.build.Whose;
import longthrow.core.catalogue.PartKind;
import longthrow.core.clear.Tracing;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The part of the glossary on every word of a build file that is neither a term nor chosen for a part. */
final class WordsBesideTerms {
    /** A key may stand once here for all its places, or with its place where it means something else there. */
    private static final Map<String, String> MEANINGS = Map.ofEntries(
            Map.entry(Layout.VERSION, "format of the file, always its first line: `" + Layout.FORMAT_VERSION + "`"),
            Map.entry(Layout.UNITS, "which units are printed first: `metric` or `inch`; any unit may be typed"),
            Map.entry(Layout.NOTES, "a list of remarks in your own words"),
            Map.entry(Layout.INSTRUMENTS, "instruments of your own by name; see below"),
            Map.entry(
                    Layout.AIMS,
                    "figures to aim at, as `section.key: figure` without ±; any term of the tables above, worked out or read; `unknown` for none"),
            Map.entry(Layout.RULES, "which rules are kept to; see below"),
            Map.entry(Layout.SEEN, "a list of damage seen; see below"),
            Map.entry(Layout.LIFT_TABLES, "a list of valve lift by crank angle; see below"),
            Map.entry(Layout.FLOW_TABLES, "a list of flows of a port by lift of its valve; see below"),
            Map.entry(Layout.OUTLINES, "a list of outlines of parts as they were traced; see below"),
            Map.entry(Layout.MOCKED_UP, "a list of gaps read when the engine was mocked up; see below"),
            Map.entry("pair", "the two parts, by a name from the table below; must be there"),
            Map.entry(
                    "way",
                    "how it was read: " + Markdown.keys(Layout.MOCK_UP_WAYS)
                            + "; must be there; `soft_spring` where a valve in them meets the other part, see the table below"),
            Map.entry(
                    "gap",
                    "what was read, one or a list of the same gap, or one with its ± (less than its way of reading allows is taken as that); `touches` where they touched or left a mark"),
            Map.entry(
                    "at_least",
                    "instead of a gap, what passed free between them; `0 mm` where nothing was tried and nothing left a mark"),
            Map.entry(
                    Layout.MOCKED_UP + ".rows",
                    "instead of a gap, `angle: gap` from line to line, " + MockedUp.LEAST_ROWS + " to "
                            + MockedUpReader.MOST_ROWS
                            + " of them, crank angle after firing top dead centre, rising; overlap is at 360°"),
            Map.entry(
                    "both_ways",
                    "`yes` if it was turned with the shafts pushed both ways of their end play, `no`, or `unknown`, as when it is left out"),
            Map.entry(
                    "with_stroke",
                    "stroke of the crankshaft it was mocked up with; left out, the present one, and where that is another than the donor's, or a part was taken or machined since, the entry tells no more"),
            Map.entry("with_rod_length", "likewise of the rod, centre to centre"),
            Map.entry("with_compression_height", "likewise of the piston"),
            Map.entry("with_gasket", "likewise crushed thickness of the gasket"),
            Map.entry("with_intake_lift", "likewise of the camshaft, by full lift of the intake valve at the valve"),
            Map.entry("with_exhaust_lift", "likewise by full lift of the exhaust valve"),
            Map.entry("with_cam_core", "likewise by diameter of its core, for pairs with the shaft between its lobes"),
            Map.entry(Layout.GAS_TRACES, "a list of pressures in the cylinder by crank angle; see below"),
            Map.entry(
                    Layout.HOURS_AT, "how the running time is spent, as a list of speeds with their shares; see below"),
            Map.entry(Layout.BENCH, "how well and how fast you read, by kind of reading; see below"),
            Map.entry(Layout.FIT, "what is wanted of a search for parts; see below"),
            Map.entry(Layout.TAKEN, "a list of parts and work decided on; see below"),
            Map.entry(Layout.NAME, "what it is called, in your own words"),
            Map.entry(Layout.INVENTED, "`yes` for an engine that is made up; else `no`, or left out"),
            Map.entry(Layout.SHIMS, "thickness of each shim on one side of the big-end cap: `[0.05 mm, 0.05 mm]`"),
            Map.entry("readings", "one reading or a list of them, each with its unit and without ±"),
            Map.entry("with", "the instrument: a built-in kind or one of your own; left out, the usual one"),
            Map.entry("part_at", "temperature of the part when it was read, " + Temperatures.RANGE),
            Map.entry("instrument_at", "temperature of the instrument, " + Temperatures.RANGE),
            Map.entry("who", "who read it"),
            Map.entry("when", "when"),
            Map.entry("photo", "name of a picture"),
            Map.entry(Layout.NOTE, "a remark in your own words"),
            Map.entry("value", "a figure with its ±, which holds the true one 95 times in 100"),
            Map.entry("specified", "the figure of the maker's sheet, with or without ±"),
            Map.entry("catalogue", "the figure of a catalogue, with or without ±"),
            Map.entry("tolerance", "instead of the ±: half the width of the range that is promised"),
            Map.entry("by", "whose sheet or catalogue; as the maker's word count " + Whose.accepted()),
            Map.entry("assumed", "a guess with its ±"),
            Map.entry("because", "why it is a fair guess; must be there"),
            Map.entry(Layout.UNKNOWN, "not known, with a remark; the bare word `unknown` does as well"),
            Map.entry("kind", "a built-in kind of instrument from the table below; must be there"),
            Map.entry("resolution", "the step it is read to; left out, that of the kind"),
            Map.entry("error", "95 % half-width of its stated error, shared by all its readings"),
            Map.entry("error_share", "the same as a share of the reading, such as `1 %`"),
            Map.entry("steel", "`no` for one that does not grow with heat as steel does"),
            Map.entry("set_with", "what it was set with: a built-in kind, or an instrument further up"),
            Map.entry("calibration", "a remark on when and how it was checked"),
            Map.entry(
                    "choose",
                    "`rule: alternative` from the table below, where the trade disagrees; `unknown` for none"),
            Map.entry(Layout.RULES + ".keep", "a list of rules of your own: of a class, of a part's maker, of yours"),
            Map.entry("term", "the figure it is about, as `section.key`"),
            Map.entry("least", "the least that keeps it; one of least and most must be there"),
            Map.entry("most", "the most that keeps it"),
            Map.entry("guard", "how far inside the limit you want to stay"),
            Map.entry(
                    "temperature",
                    "at which the limit holds, " + Temperatures.RANGE + "; left out, 20 °C, as ISO 1:2022 has it"),
            Map.entry("procedure", "how it is measured by those who check it"),
            Map.entry("reference", "where it is written"),
            Map.entry("part", "the section of the part: `cylinder`, `flywheel`"),
            Map.entry("damage", "one of the words below"),
            Map.entry(
                    "where",
                    "where on it, in your own words; beside `none` first how it was looked over, which counts as "
                            + Damage.How.accepted()),
            Map.entry("valve", Markdown.keys(Layout.LIFT_VALVES)),
            Map.entry("at", "where the dial stood: " + Markdown.keys(Layout.LIFT_AT)),
            Map.entry("rows", "`angle: lift` from line to line, angles rising from the peak: `20°: 7.71 mm`"),
            Map.entry(
                    "direction",
                    "which way the air went; without it the table does not count: "
                            + Arrays.stream(FlowTable.Direction.values())
                                    .map(d -> "`" + d.key() + "` " + d.meaning())
                                    .collect(Collectors.joining("; "))),
            Map.entry(
                    "coefficient_of",
                    "where the rows are coefficients, of which area; without it they do not count: "
                            + Arrays.stream(FlowTable.Area.values())
                                    .map(a -> "`" + a.key() + "` " + a.meaning())
                                    .collect(Collectors.joining("; "))),
            Map.entry(
                    "depression",
                    "where the rows are flows, at how much less pressure than the room's they were read; without it they do not count: `28 inH2O`"),
            Map.entry(
                    "joined",
                    "how the port was joined to the room: "
                            + Arrays.stream(FlowTable.Joined.values())
                                    .map(j -> "`" + j.key() + "` " + j.meaning())
                                    .collect(Collectors.joining("; "))
                            + "; left out, not known, which adds doubt"),
            Map.entry(
                    Layout.FLOW_TABLES + ".temperature",
                    "of the air before the port, where the rows are flows; left out, a room's, with doubt"),
            Map.entry(Layout.FLOW_TABLES + ".air", "pressure of the air before the port, likewise: `99.8 kPa`"),
            Map.entry(
                    Layout.FLOW_TABLES + ".within",
                    "95 % half-width of a flow as a share of it: `3 %`; left out, what such benches repeat and agree to"),
            Map.entry(
                    Layout.FLOW_TABLES + ".rows",
                    "`lift: flow` from line to line, lifts rising, all valves of the port lifted: `2 mm: 9.6 l/s`, or a coefficient without unit: `2 mm: 0.66`"),
            Map.entry(Layout.OUTLINES + ".part", "the part it is of, from the words below"),
            Map.entry(
                    "unit",
                    "the length of one unit of the drawing, such as `1 mm`; of a picture the length of one pixel; must be there"),
            Map.entry(
                    "points",
                    "corners in order, once around: `x, y` an item, at most " + Tracing.MOST_EDGES
                            + "; y upwards; the last is joined to the first"),
            Map.entry(
                    "svg_path",
                    "instead of the points: a path as in SVG, y downwards as there; a long one as a list of pieces of at most "
                            + PlainText.LONGEST_SCALAR + " characters"),
            Map.entry("datum_x", "where the part's datum stands in the drawing, across; left out, 0"),
            Map.entry("datum_y", "likewise up, in a path down; left out, 0"),
            Map.entry(
                    "mirrored",
                    "`yes` where it was traced from the end at which the crankshaft turns anticlockwise; of rocker and retainer, with the rocker's pivot to the right"),
            Map.entry(
                    Layout.OUTLINES + ".from",
                    "where the part begins along the crankshaft, see below; left out with `to`, throughout"),
            Map.entry(Layout.OUTLINES + ".to", "where it ends"),
            Map.entry(
                    "doubt",
                    "by how much the tracing may be off all round, 95 % half-width; left out: "
                            + TracedOutline.USUAL_DOUBT_SOURCE + "; less than 0.1 mm is taken as that: "
                            + TracedOutline.LEAST_DOUBT_SOURCE),
            Map.entry(Layout.HOURS_AT + ".speed", "of the crank; must be there"),
            Map.entry(
                    "share",
                    "of the running time that is spent at it, such as `30 %`; all together 100 %; must be there"),
            Map.entry("speed", "of the crank while it was taken"),
            Map.entry(
                    "pressure",
                    Arrays.stream(GasReading.Reference.values())
                            .map(r -> "`" + r.key() + "` " + r.meaning())
                            .collect(Collectors.joining("; "))),
            Map.entry("air", "pressure of the air on that day, beside gauge pressures alone: `99.6 kPa`"),
            Map.entry(
                    "cycles",
                    Arrays.stream(GasReading.Cycles.values())
                            .map(c -> "`" + c.key() + "` " + c.meaning())
                            .collect(Collectors.joining("; "))),
            Map.entry(
                    "within", "95 % half-width of a pressure as a share of it, transducer and pegging together: `3 %`"),
            Map.entry(
                    Layout.GAS_TRACES + ".rows",
                    "`angle: pressure` from line to line, angles rising, 0° at firing top dead centre: `-180°: 98 kPa`"),
            Map.entry("repeatability", "standard deviation of one of your readings"),
            Map.entry("minutes", "for one more reading"),
            Map.entry(Layout.FIT + ".choose", "a list of kinds of part that may be bought, from the words below"),
            Map.entry(Layout.FIT + ".keep", "a list of codes that must be among the parts"),
            Map.entry("budget", "the most to be spent, with its currency: `330 EUR`; `unknown` for no limit"),
            Map.entry("machining", "whether machine operations of the catalogue may be used: `yes` or `no`"),
            Map.entry("order", "what counts first among combinations that fit, from the words below"),
            Map.entry(Layout.TAKEN + ".part", "the kind of a part to buy, from the words above"),
            Map.entry("work", "the kind of machine operation, such as `small_end_hone`; it says which term changes"),
            Map.entry("code", "by which it is ordered; must be there"),
            Map.entry("vendor", "who sells it or does it"),
            Map.entry("price", "without shipping, with its currency"),
            Map.entry("shipping", "with its currency"),
            Map.entry("lead_days", "until it is there"),
            Map.entry("amount", "of work: what is taken off, or the size made; must be there"),
            Map.entry("from", "the size before the job"),
            Map.entry("to", "the size after the job"),
            Map.entry(Layout.TAKEN + ".tolerance", "half the width to which the job is held"),
            Map.entry(Layout.TAKEN + "." + Layout.NOTE, "other sizes to make"),
            Map.entry("air_pressure", "of the place, absolute: `1013 hPa`"));

    private final Markdown page;

    private WordsBesideTerms(Markdown page) {
        this.page = page;
    }

    static void write(Markdown page) {
        new WordsBesideTerms(page).write();
    }

    private void write() {
        List<String> sections = Arrays.stream(Part.values()).map(Part::key).toList();
        page.heading(2, "The other words of a build file");
        keys("", Layout.TOP_LEVEL.stream().filter(key -> !sections.contains(key)));
        page.line("");
        page.line("In sections of parts, besides terms and words: `" + Part.WHOLE.key() + ": " + Layout.NAME + "`, "
                + meaning("", Layout.NAME) + "; `" + Part.WHOLE.key() + ": " + Layout.INVENTED + "`, "
                + meaning("", Layout.INVENTED) + "; `" + Part.ROD.key() + ": " + Layout.SHIMS + "`, "
                + meaning("", Layout.SHIMS) + ".");
        page.heading(3, "How a value is written");
        page.line(
                "A figure with its unit (`66.01 mm`), one with its ± (`66.01 mm ± 0.01 mm`), a list of readings of one"
                        + " instrument (`[66.01 mm, 66.02 mm]`), `unknown`, or one of these forms in braces or on lines of"
                        + " their own; a list of them where it was come by in several ways, at most "
                        + GivenReader.MOST_ENTRIES + ".");
        page.line("");
        page.line("Forms: "
                + String.join(
                        "; ",
                        Arrays.stream(Form.values())
                                .map(form -> Markdown.keys(form.keys()))
                                .toList())
                + ".");
        page.line("");
        keys(
                "",
                Arrays.stream(Form.values())
                        .flatMap(form -> form.keys().stream())
                        .distinct());
        section(
                Layout.INSTRUMENTS,
                "`wheel: {kind: degree_wheel, resolution: 1°, error: 0.5°}`",
                Layout.INSTRUMENT_KEYS);
        section(
                Layout.RULES,
                "`rules: {choose: {" + Rule.SQUISH_LEAST.key()
                        + ": general}, keep: [{name: my class, term: engine.squish," + " least: 1.27 mm}]}`",
                Layout.RULES_KEYS);
        page.line("");
        page.line("A rule under `keep`:");
        page.line("");
        keys(Layout.RULES, Layout.OWN_RULE_KEYS.stream());
        rules();
        section(Layout.SEEN, "`seen: [{part: cylinder, damage: scored, where: thrust side}]`", Layout.DAMAGE_KEYS);
        page.line("");
        for (Damage.Kind kind : Damage.Kind.values()) {
            page.line("- `" + kind.key() + "` " + kind.label());
        }
        section(
                Layout.LIFT_TABLES,
                "`lift_tables: [{valve: intake, at: valve, rows: {0°: 8.20 mm, 20°: 7.71 mm}}]`",
                Layout.LIFT_TABLE_KEYS);
        section(Layout.FLOW_TABLES, "`" + Layout.FLOW_TABLES_EXAMPLE + "`", Layout.FLOW_TABLE_KEYS);
        page.line("");
        page.line(
                "Stands in `power` instead of the flow that is published for valves of such a size: one table a valve, best read the way the gas goes."
                        + " Read at another depression it is a table of its own, not a row of this one. The valve's head has to be read; for coefficients of the throat"
                        + " also throat and stem. See docs/decisions/0029.");
        section(Layout.OUTLINES, "`" + Layout.OUTLINE_EXAMPLE + "`", Layout.OUTLINE_KEYS);
        page.line("");
        page.line(
                "An outline is the shadow of its part along the crankshaft, seen from the end where the crankshaft turns clockwise"
                        + " with the cylinder up: x to the right is towards the anti-thrust side. It counts instead of the readings named;"
                        + " holes of a part are filled. Rocker and retainer are seen along the rocker's axis instead, with its pivot to the left: x is away from it."
                        + " What is round has no outline, for its diameter tells all that one would: a pushrod and its tube, the camshaft's core, a valve; nor has"
                        + " the sleeve's end, which stands all round, so that its shadow is solid from side to side.");
        page.line("");
        page.head("part", "it is", "(0, 0)", "+y", "from and to", "instead of");
        for (OutlinedPart part : OutlinedPart.values()) {
            page.row(
                    "`" + part.key() + "`",
                    part.label(),
                    part.datum(),
                    part.upwards(),
                    part.along().meaning(),
                    Markdown.keys(part.instead().stream().map(Term::path).toList()));
        }
        section(Layout.MOCKED_UP, "`" + Layout.MOCKED_UP_EXAMPLE + "`", Layout.MOCKED_UP_KEYS);
        page.line("");
        page.line(
                "Read cold, turned by hand. How well each way tells a gap is with the kinds of reading. An entry holds for the"
                        + " parts it was read with: with another stroke, rod, piston, gasket or camshaft it tells no more, nor"
                        + " where one of them was taken or machined, or the stroke is not the donor's, and the entry does not say its size.");
        page.line("");
        page.head("pair", "parts", "by soft springs");
        for (MovingPair pair : MovingPair.values()) {
            page.row("`" + pair.key() + "`", pair.label(), MockedUp.Way.SOFT_SPRING.reads(pair) ? "yes" : "");
        }
        section(
                Layout.GAS_TRACES,
                "`gas_traces: [{speed: 3000 rpm, pressure: absolute, cycles: mean, within: 3 %, rows: {-180°: 98 kPa, -165°: 99 kPa}}]`",
                Layout.GAS_TRACE_KEYS);
        page.line("");
        page.line(
                "Rows run from -180° to 180° of the crank about firing top dead centre, 0°, or farther: every 5° or closer within 60° of it, every 15° elsewhere. Taken at full throttle; each speaks for its own speed and down to 0.8 of it, and those whose bands meet, from the speed wanted down to idle (use.idle_speed) or to where the bounding one holds, count together by the hardest; elsewhere, and for the pull on the overrun, the bounding one counts. See docs/decisions/0018.");
        section(Layout.HOURS_AT, "`" + Layout.HOURS_AT_EXAMPLE + "`", Layout.HOURS_AT_KEYS);
        page.line("");
        page.line(
                "The duty by which `life` adds up how the rod's beam tires over `use.hours_wanted`, each speed once. It has to spend 1 % of the time at"
                        + " the speed wanted, or more, and no step may be faster than the limiter, or than the speed wanted where there is none: else nothing is approved."
                        + " Left out, all the hours are counted at that speed, which is on the safe side.");
        section(Layout.BENCH, "`bench: {deck: {repeatability: 0.01 mm, minutes: 3}}`", Layout.BENCH_KEYS);
        section(Layout.FIT, "`" + Layout.FIT_EXAMPLE + "`", Layout.FIT_KEYS);
        page.line("");
        page.line("Kinds of part: "
                + Markdown.keys(
                        Arrays.stream(PartKind.values()).map(PartKind::key).toList()) + ".");
        page.line("");
        for (FitWish.Preference preference : FitWish.Preference.values()) {
            page.line("- `" + preference.key() + "` " + preference.meaning());
        }
        section(
                Layout.TAKEN,
                "`" + Layout.TAKEN_EXAMPLE + "`",
                Stream.concat(Layout.TAKEN_PART_KEYS.stream(), Layout.TAKEN_WORK_KEYS.stream())
                        .distinct()
                        .toList());
        page.line("");
        page.line("Taking a way on the page Fit writes it. A size that work is still to give stands in its section as"
                + " `specified`, and is a plan until its term is read there: until then the Book has a ticket for the job."
                + " Take an item out when it is not to be done, and put back the size as it is.");
    }

    private void section(String section, String example, List<String> keys) {
        page.heading(3, "`" + section + "`");
        page.line("Such as " + example + ".");
        page.line("");
        keys(section, keys.stream());
    }

    private void keys(String section, Stream<String> keys) {
        page.head("key", "what stands behind it");
        keys.forEach(key -> page.row("`" + key + "`", meaning(section, key)));
    }

    private static String meaning(String section, String key) {
        return Optional.ofNullable(MEANINGS.get(TreeReader.within(section, key)))
                .or(() -> Optional.ofNullable(MEANINGS.get(key)))
                .orElseThrow(() -> new IllegalStateException("no meaning is given for the key " + section + " " + key));
    }

    /** Every rule of the trade with its alternatives and limits. */
    private void rules() {
        page.line("");
        page.line("The rules of the trade, each with the words that `choose` takes:");
        page.line("");
        page.head("rule", "about", "alternative", "meant for", "limit", "source");
        for (Rule rule : Rule.values()) {
            for (Alternative alternative : rule.alternatives()) {
                page.row(
                        "`" + rule.key() + "`",
                        rule.label(),
                        "`" + alternative.key() + "` " + alternative.label(),
                        alternative.condition().text(),
                        alternative.limits(),
                        alternative.source());
            }
        }
    }
}
