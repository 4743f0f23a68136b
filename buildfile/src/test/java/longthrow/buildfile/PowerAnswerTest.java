package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.life.Life;
import longthrow.core.measurement.Measured;
import longthrow.core.pipe.PlainKernel;
import longthrow.core.power.Figures;
import longthrow.core.power.Needed;
import longthrow.core.power.Prediction;
import longthrow.core.power.Run;
import longthrow.core.power.Runner;
import longthrow.core.power.Speeds;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/** What torque an invented engine makes, by what its owner wrote of it. */
class PowerAnswerTest {
    private static final String ENGINE = Repository.text("examples/scenarios/breathing.yaml");

    private static final String PORTS = ENGINE + """
            intake_valve: {throat_diameter: 22.1 mm, port_length: 47 mm}
            exhaust_valve: {throat_diameter: 19.2 mm, port_length: 51 mm}
            intake: {runner_length: 0 mm, runner_bore: 20.5 mm, airbox_volume: 480 cc}
            carburettor: {length: 62 mm}
            exhaust: {silencer_volume: 910 cc}
            """;

    private static final Runner RUNNER = Runner.inTurn(PlainKernel::new, () -> true);

    private static Build build(String text) {
        return BuildFile.read(text.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
    }

    private static Answer power(String text, Speeds speeds, Runner runner) {
        Build build = build(text);
        return Prediction.of(build, Life.of(build, Catalogue.EMPTY, List.of()), speeds, runner)
                .orElseThrow();
    }

    private static TorqueCurve curve(Answer answer) {
        return answer.torque().orElseThrow();
    }

    private static Speeds rpm(double... speeds) {
        List<Double> chosen = new ArrayList<>();
        for (double speed : speeds) {
            chosen.add(Units.RPM.toSi(speed));
        }
        return new Speeds(chosen, Speeds.MOST, 1);
    }

    private static double value(Row row, String key) {
        return row.figure(key)
                .orElseThrow(() -> new AssertionError(key))
                .figure()
                .value();
    }

    /** Counts what is asked and does none of it. */
    private static Runner counting(AtomicInteger count) {
        return runs -> {
            count.addAndGet(runs.size());
            return Optional.of(Collections.nCopies(runs.size(), new Run.Outcome(Optional.empty(), "not run")));
        };
    }

    @Test
    void tellsTorqueWithItsBandAndWhatBoundsIt() {
        Answer answer = power(ENGINE, rpm(3000), RUNNER);
        TorqueCurve curve = curve(answer);
        assertThat(curve.missing()).isEmpty();
        Row row = curve.rows().get(0);
        assertThat(row.standing()).isEqualTo(Standing.NOT_APPROVED); // nobody has looked at anything
        double displacement = Math.PI / 4 * 0.070 * 0.070 * 0.052;
        double bmep = value(row, "bmep");
        assertThat(value(row, "torque")).isCloseTo(bmep * displacement / (4 * Math.PI), near(1e-3));
        assertThat(value(row, "power")).isCloseTo(value(row, "torque") * row.speed(), near(1e-12));
        assertThat(value(row, "imep") - value(row, "pmep") - value(row, "fmep")).isCloseTo(bmep, near(1e-9));
        assertThat(value(row, "fuel") / value(row, "power")).isCloseTo(value(row, "bsfc"), near(1e-12));
        assertThat(value(row, "spark")).isCloseTo(Math.toRadians(24), near(1e-9));
        assertThat(value(row, "burn_10")).isLessThan(value(row, "burn_50"));
        assertThat(value(row, "burn_50")).isLessThan(value(row, "burn_90"));
        assertThat(bmep).isBetween(5e5, 9.5e5); // engines of this kind, references/engines: 7 to 9 bar
        assertThat(row.figure("torque").orElseThrow().figure().expanded() / value(row, "torque"))
                .isBetween(0.08, 0.35);
        assertThat(row.bounds())
                .isNotEmpty()
                .allMatch(b -> b.gain() >= 0.01 && b.said().contains("%"));
        assertThat(row.bounds()).isSortedAccordingTo((a, b) -> Double.compare(b.gain(), a.gain()));
        assertThat(curve.sentences()).anyMatch(said -> said.contains("SAE J1349"));
        assertThat(curve.sentences()).anyMatch(said -> said.startsWith("Whether it knocks is not known"));
        assertThat(row.figure("octane_spare")).isEmpty();
        TorqueCurve.Reckoning reckoning = row.reckoning().orElseThrow();
        assertThat(Math.abs(reckoning.energy())).isLessThan(1e-3);
        assertThat(Math.abs(reckoning.mass())).isLessThan(1e-3);
        assertThat(curve.cycleSpeed()).isEqualTo(row.speed());
        assertThat(curve.cycle()).hasSize(361);
        assertThat(curve.cycle().get(90).volume())
                .isLessThan(curve.cycle().get(0).volume());
        assertThat(curve.cycle().stream()
                        .mapToDouble(TorqueCurve.Place::pressure)
                        .max()
                        .orElseThrow())
                .isCloseTo(value(row, "peak_pressure"), near(0.02));
        assertThat(curve.shares().stream().mapToDouble(TorqueCurve.Share::share).sum())
                .isBetween(0.5, 1.0000001);
        // what was taken and can be read is asked for: the events first, for each alone tells nothing
        assertThat(curve.next()).isNotEmpty().allMatch(r -> r.after() < r.now());
        assertThat(curve.next()).allMatch(r -> !r.read().where().isEmpty());
        assertThat(curve.sentences().get(0)).contains("Most torque", "±", "3000 rpm", "not approved");
    }

    /** Nothing is taken silently. */
    @Test
    void everyFigureThatWasNotReadIsSaid() {
        Answer answer = power(ENGINE, rpm(3000), counting(new AtomicInteger()));
        List<String> said = answer.defaults().stream().map(DefaultUsed::where).toList();
        assertThat(said)
                .contains(
                        "connecting_rod.length",
                        "carburettor.venturi",
                        "exhaust.primary_length",
                        "camshaft.checking_lift",
                        "power.mixture",
                        "power.wall_heat",
                        "power.friction",
                        "place.air_pressure",
                        "place.air_temperature",
                        "place.relative_humidity",
                        "engine.valves_per_cylinder",
                        "intake.air_filter",
                        "exhaust.silencer")
                .doesNotContain("engine.cooling", "engine.made_for", "use.fuel");
        // bore and stroke were read: only how well they were is taken
        assertThat(answer.defaults())
                .filteredOn(d -> List.of("cylinder.bore", "crankshaft.stroke").contains(d.where()))
                .isNotEmpty()
                .noneMatch(d -> d.what().startsWith("bore ") || d.what().startsWith("stroke "));
        assertThat(answer.defaults()).allMatch(d -> !d.source().isBlank());
    }

    @Test
    void whatIsMissingIsAskedForAndNothingIsRun() {
        AtomicInteger count = new AtomicInteger();
        String[][] without = {
            {"cylinder: {bore: 70 mm, deck_clearance: 0.3 mm}", "cylinder: {deck_clearance: 0.3 mm}", "cylinder.bore"},
            {"crankshaft: {stroke: 52 mm}", "crankshaft: {bob_weight: 200 g}", "crankshaft.stroke"},
            {"head: {chamber_volume: 25.0 cc}", "head: {flatness: 0.02 mm}", "head.chamber_volume"},
            {"valves: overhead, ", "", "engine.valves"},
            {", made_for: utility", "", "engine.made_for"},
        };
        for (String[] one : without) {
            assertThat(ENGINE).contains(one[0]);
            TorqueCurve curve = curve(power(ENGINE.replace(one[0], one[1]), rpm(3000), counting(count)));
            assertThat(curve.missing())
                    .as(one[2])
                    .extracting(Rung.Missing::where)
                    .contains(one[2]);
            assertThat(curve.rows()).isEmpty();
            assertThat(curve.sentences()).isEmpty();
        }
        assertThat(count).hasValue(0);
    }

    @Test
    void aGovernedSpeedMakesItAUtilityEngineAndSaysSo() {
        String governed = ENGINE.replace(", made_for: utility, cooling: fan", "")
                .replace("use: {", "use: {governed_speed: {specified: 3600 rpm, by: the engine's plate}, ");
        Answer answer = power(governed, rpm(3000), counting(new AtomicInteger()));
        assertThat(curve(answer).takenFor()).contains("machine", "fan", "pushrods", "2 valves");
        assertThat(answer.defaults())
                .anyMatch(d -> d.where().equals("engine.made_for") && d.what().contains("governed"));
        assertThat(answer.defaults()).anyMatch(d -> d.where().equals("engine.cooling"));
    }

    /** Refused speeds are not even run. */
    @Test
    void noPowerIsToldOfWhatIsRefused() {
        String cracked = ENGINE + "seen:\n  - {part: crankshaft, damage: crack}\n";
        AtomicInteger count = new AtomicInteger();
        TorqueCurve curve = curve(power(cracked, rpm(2000, 3000), counting(count)));
        assertThat(curve.rows()).hasSize(2).allMatch(r -> r.standing() == Standing.REFUSED);
        assertThat(curve.rows()).allMatch(r -> r.figures().isEmpty() && !r.why().isBlank());
        assertThat(count).hasValue(0);
    }

    @Test
    void aWholeGovernorShutsTheThrottle() {
        String governed = ENGINE.replace(
                "use: {", "use: {governor: whole, governed_speed: {specified: 3000 rpm, by: the engine's plate}, ");
        TorqueCurve curve = curve(power(governed, rpm(2900, 3400), counting(new AtomicInteger())));
        assertThat(curve.rows().get(0).standing()).isEqualTo(Standing.NOT_RECKONED); // the runner ran nothing
        assertThat(curve.rows().get(1).standing()).isEqualTo(Standing.GOVERNED);
        assertThat(curve.rows().get(1).why()).contains("3000 rpm");
    }

    @Test
    void someEventsWithoutTheOthersAreNotUsed() {
        String some = ENGINE.replace("camshaft: {", "camshaft: {intake_opens: 12°, intake_closes: 50°, ");
        Answer answer = power(some, rpm(3000), counting(new AtomicInteger()));
        assertThat(answer.findings())
                .anyMatch(f -> f.message().contains("not used") && f.mend().contains("camshaft.exhaust_opens"));
        assertThat(answer.defaults()).anyMatch(d -> d.where().equals("camshaft.intake_closes"));
    }

    /** High up, hot and moist it makes less, and a fuel of octane number 72 is enough at a ratio of 7.5. */
    @Test
    void theDayAndTheFuelAreTakenAsTold() {
        String there = ENGINE.replace("fuel: petrol", "fuel: petrol, octane_number: 72, octane_scale: mean")
                + "place: {air_pressure: 80.0 kPa, air_temperature: 35 °C, relative_humidity: 99 %}\n";
        Answer answer = power(there, rpm(3000), RUNNER);
        Row row = curve(answer).rows().get(0);
        double standard = value(curve(power(ENGINE, rpm(3000), RUNNER)).rows().get(0), "torque");
        // indicated work goes by the density of dry air, 0.74 of the standard's; friction stays
        assertThat(value(row, "torque") / standard).isBetween(0.60, 0.76);
        assertThat(row.figure("torque").orElseThrow().figure().isUnknown())
                .isFalse(); // though humidity cannot be moved up
        assertThat(answer.defaults())
                .noneMatch(
                        d -> d.where().equals("place.air_pressure") && d.what().contains("kPa"));
        assertThat(curve(answer).sentences()).anyMatch(said -> said.contains("80.0") && said.contains("as told"));
        double wanted = value(row, "octane_wanted");
        assertThat(value(row, "octane_spare")).isEqualTo(72 - wanted);
        assertThat(answer.findings())
                .as("wants %s", wanted)
                .noneMatch(f -> f.where().equals("use.octane_number"));
        assertThat(curve(answer).sentences()).noneMatch(said -> said.startsWith("Whether it knocks"));
    }

    /** Swept 200.1 cc over 15 + 4.7 + 1.2 cc: a ratio of 10.6, far too much for an octane number of 72. */
    @Test
    void itIsSaidWhereTheFuelKnocks() {
        String squeezed = ENGINE.replace("chamber_volume: 25.0 cc", "chamber_volume: 15.0 cc")
                .replace("fuel: petrol", "fuel: petrol, octane_number: 72, octane_scale: mean");
        Answer answer = power(squeezed, rpm(3000), RUNNER);
        double wanted = value(curve(answer).rows().get(0), "octane_wanted");
        assertThat(answer.findings())
                .as("wants %s", wanted)
                .anyMatch(f -> f.where().equals("use.octane_number")
                        && f.message().contains("knock")
                        && f.message().contains("3000 rpm"));
    }

    @Test
    void anOctaneNumberWithoutItsScaleOrOfAnAlcoholIsNotUsed() {
        for (String[] one : new String[][] {
            {"fuel: petrol, octane_number: 95", "octane_scale"}, {"fuel: methanol, octane_number: 107", "methanol"}
        }) {
            Answer answer = power(ENGINE.replace("fuel: petrol", one[0]), rpm(3000), counting(new AtomicInteger()));
            assertThat(answer.findings())
                    .filteredOn(f -> f.where().equals("use.octane_number"))
                    .as(one[0])
                    .anyMatch(f -> f.message().contains("not used") && (f.message() + f.mend()).contains(one[1]));
        }
    }

    @Test
    void withoutAFilterThereIsNone() {
        String bare = ENGINE + "intake: {air_filter: none}\nexhaust: {silencer: none}\n";
        List<String> said = power(bare, rpm(3000), counting(new AtomicInteger())).defaults().stream()
                .map(DefaultUsed::where)
                .toList();
        assertThat(said)
                .doesNotContain(
                        "intake.filter_drop",
                        "intake.airbox_volume",
                        "exhaust.silencer_volume",
                        "exhaust.silencer_hole");
        List<String> fitted = power(ENGINE, rpm(3000), counting(new AtomicInteger())).defaults().stream()
                .map(DefaultUsed::where)
                .toList();
        assertThat(fitted)
                .contains(
                        "intake.filter_drop",
                        "intake.airbox_volume",
                        "exhaust.silencer_volume",
                        "exhaust.silencer_hole");
    }

    /** What was read stands for the usual as it is, to the last digit, and is not said to be taken. */
    @Test
    void whatIsReadOfPortsRunnerBoxAndSilencerIsUsedAsItIs() {
        Figures figures = figures(PORTS, new ArrayList<>());
        Map<Needed, Double> wanted = new EnumMap<>(Needed.class);
        wanted.put(Needed.INTAKE_THROAT, 0.0221);
        wanted.put(Needed.EXHAUST_THROAT, 0.0192);
        wanted.put(Needed.INTAKE_PORT_LENGTH, 0.047);
        wanted.put(Needed.EXHAUST_PORT_LENGTH, 0.051);
        wanted.put(Needed.INTAKE_RUNNER_LENGTH, 0.0);
        wanted.put(Needed.INTAKE_BORE, 0.0205);
        wanted.put(Needed.CARBURETTOR_LENGTH, 0.062);
        wanted.put(Needed.AIRBOX, 480e-6);
        wanted.put(Needed.SILENCER, 910e-6);
        wanted.forEach((needed, value) -> {
            assertThat(figures.number(needed)).as(needed.label()).isCloseTo(value, near(1e-9));
            assertThat(figures.usual(needed)).as(needed.label()).isEmpty();
        });
        // 910 cc by a jug that is good to 10 cc and 1 %, and filled to 10 cc: 1 to 3 % at 95 %
        Measured silencer = figures.value(Needed.SILENCER).orElseThrow();
        assertThat(silencer.expanded() / silencer.value()).isBetween(0.01, 0.035);
    }

    /** The carburettor is bolted to the port: there is no runner, and it runs. */
    @Test
    void anEngineWithoutARunnerRuns() {
        Row row = curve(power(PORTS, rpm(3000), RUNNER)).rows().get(0);
        assertThat(row.why()).doesNotContain("the sums do not bear");
        assertThat(value(row, "bmep")).isBetween(4e5, 9.5e5);
        assertThat(row.figure("torque").orElseThrow().figure().isUnknown()).isFalse();
    }

    @Test
    void aThroatWiderThanItsValveIsNotUsed() {
        String wide = PORTS.replace("throat_diameter: 22.1 mm", "head_diameter: 21.0 mm, throat_diameter: 22.1 mm");
        List<Finding> findings = new ArrayList<>();
        Figures figures = figures(wide, findings);
        assertThat(figures.number(Needed.INTAKE_HEAD)).isCloseTo(0.021, near(1e-9));
        assertThat(figures.number(Needed.INTAKE_THROAT)).isCloseTo(0.87 * 0.021, near(1e-9)); // the usual behind it
        assertThat(findings)
                .anyMatch(f -> f.where().equals("intake_valve.throat_diameter")
                        && f.message().contains("22.1")
                        && f.message().contains("21.0"));
        List<Finding> none = new ArrayList<>();
        figures(PORTS.replace("throat_diameter: 22.1 mm", "head_diameter: 25.0 mm, throat_diameter: 22.1 mm"), none);
        assertThat(none).noneMatch(f -> f.where().equals("intake_valve.throat_diameter"));
    }

    /** Read on an engine they are another engine's, or in another unit: what is usual stands for them, out loud. */
    @Test
    void whatNoValveHasIsNotUsed() {
        String[][] cases = {
            {"intake_valve: {head_diameter: 60 mm}", "intake_valve.head_diameter"},
            {
                "intake_valve: {head_diameter: 45 mm}\nexhaust_valve: {head_diameter: 43 mm}",
                "exhaust_valve.head_diameter"
            },
            {"intake_valve: {throat_diameter: 10 mm, stem_diameter: 12 mm}", "intake_valve.throat_diameter"},
            {"intake_valve: {head_diameter: 20 mm, lift: 16 mm}", "intake_valve.lift"},
        };
        for (String[] one : cases) {
            List<Finding> findings = new ArrayList<>();
            Figures figures = figures(ENGINE + one[0] + "\n", findings);
            assertThat(findings)
                    .as(one[0])
                    .anyMatch(f -> f.where().equals(one[1]) && f.message().contains("is not used"));
            assertThat(figures.number(Needed.INTAKE_HEAD)).isLessThan(0.045);
        }
        List<Finding> none = new ArrayList<>();
        figures(
                ENGINE + "intake_valve: {head_diameter: 27 mm, lift: 7 mm}\nexhaust_valve: {head_diameter: 25 mm}\n",
                none);
        assertThat(none).noneMatch(f -> f.message().contains("is not used"));
    }

    /** None is left out without a word, whatever is wrong with it. */
    @Test
    void aLiftTableThatDoesNotCountIsSaid() {
        String lift = "lift_tables: [{valve: intake, at: valve, rows: {";
        for (String rows : List.of(
                "0°: 60 mm, 40°: 50 mm, 80°: 30 mm, 120°: 8 mm, 140°: 1 mm",
                "0°: 1 mm, 40°: 3 mm, 80°: 9 mm",
                "0°: 6 mm")) {
            List<Finding> findings = new ArrayList<>();
            figures(ENGINE + lift + rows + "}}]\n", findings);
            assertThat(findings)
                    .as(rows)
                    .anyMatch(f -> f.where().equals("lift_tables[1]")
                            && f.message().contains("does not count for torque")
                            && !f.mend().isEmpty());
        }
        List<Finding> findings = new ArrayList<>();
        figures(ENGINE + "intake_valve: {lift: 12 mm}\n" + lift + "0°: 6 mm, 40°: 4 mm, 80°: 0 mm}}]\n", findings);
        assertThat(findings)
                .anyMatch(f -> f.where().equals("lift_tables[1]") && f.message().contains("12"));
    }

    /** 60 degrees as they are written come out a last digit above what they are in radians. */
    @Test
    void aSparkThatNoEngineRunsWithIsNotUsed() {
        assertThat(figures(ENGINE.replace("24°", "60°"), new ArrayList<>()).number(Needed.SPARK))
                .isCloseTo(Math.toRadians(60), near(1e-9));
        List<Finding> findings = new ArrayList<>();
        Figures figures = figures(
                ENGINE.replace("24°", "60°, key_offset: 4 mm") + "flywheel: {taper_diameter: 19 mm}\n", findings);
        assertThat(figures.usual(Needed.SPARK).isPresent() || !figures.has(Needed.SPARK))
                .isTrue();
        assertThat(findings)
                .anyMatch(f -> f.message().contains("60 °") && f.message().contains("is not used"));
    }

    @Test
    void aVenturiWiderThanTheWayBehindItIsSaid() {
        List<Finding> findings = new ArrayList<>();
        figures(PORTS.replace("carburettor: {", "carburettor: {venturi: 24 mm, "), findings);
        assertThat(findings)
                .anyMatch(f -> f.where().equals("carburettor.venturi")
                        && f.message().contains("20.5")
                        && f.message().contains("24"));
        List<Finding> none = new ArrayList<>();
        Figures usual = figures(PORTS, none);
        assertThat(none).noneMatch(f -> f.where().equals("carburettor.venturi"));
        assertThat(usual.number(Needed.VENTURI)).isLessThanOrEqualTo(0.0205);
    }

    @Test
    void aBoxOrSilencerThatIsReadAndNotFittedIsSaid() {
        String bare = PORTS.replace("intake: {", "intake: {air_filter: none, ")
                .replace("exhaust: {", "exhaust: {silencer: none, ");
        List<Finding> findings = new ArrayList<>();
        Figures figures = figures(bare, findings);
        assertThat(figures.has(Needed.AIRBOX)).isFalse();
        assertThat(figures.has(Needed.SILENCER)).isFalse();
        assertThat(findings).extracting(Finding::where).contains("intake.airbox_volume", "exhaust.silencer_volume");
    }

    /** Three readings that are not the hole itself, each by hand. */
    @Test
    void whatNarrowsTheWayBecomesThePlainHoleThatCostsAsMuch() {
        String more = PORTS.replace("exhaust: {", "exhaust: {silencer_hole: 11 mm, ")
                .replace("carburettor: {", "carburettor: {throttle_bore: 20 mm, ")
                .replace("intake: {", "intake: {filter_drop: 1.1 kPa, filter_drop_speed: 3000 rpm, ")
                .replace("use: {", "head: {plug_to_wall: 52 mm}\nuse: {");
        more = more.replace("head: {chamber_volume: 25.0 cc}\n", "")
                .replace("head: {plug", "head: {chamber_volume: 25.0 cc, plug");
        List<Finding> findings = new ArrayList<>();
        Figures figures = figures(more, findings);
        // 11 mm x root(0.7155): half-way from pi / (pi + 2) to 0.82
        Measured silencer = figures.value(Needed.SILENCER_HOLE).orElseThrow();
        assertThat(silencer.value()).isCloseTo(0.0093046, near(1e-4));
        // area within 0.105 / 0.715 / root 3 = 8.5 %, so its diameter 4.2 %; the plug gauge adds little
        assertThat(silencer.standardUncertainty() / silencer.value()).isBetween(0.042, 0.05);
        // Heywood's plate of 20 mm behind a shaft of 5: 2 / pi x (0.25 root(1 - 0.0625) + asin 0.25) = 0.3150 hidden;
        // of the
        // 0.6850 left 0.65 + 0.30 x 0.6850 = 0.8555 flows: 20 mm x root(0.5860)
        assertThat(figures.number(Needed.THROTTLE)).isCloseTo(0.015310, near(1e-4));
        assertThat(figures.number(Needed.FLAME_TRAVEL)).isCloseTo(0.052, near(1e-9));
        // 0.8 x 200.1 cc x 25 cycles a second are 4.0 L/s; 1100 Pa in 1.168 kg/m3 drive 43.4 m/s: an even flow wants 92
        // mm2,
        // pulses, 4.44 times the drop without a room, 1 with a large one, want up to 2.1 times that area
        double area = Math.PI / 4 * Math.pow(figures.number(Needed.FILTER), 2);
        assertThat(area).isBetween(1.5 * 92e-6, 2.1 * 92e-6);
        Measured filter = figures.value(Needed.FILTER).orElseThrow();
        assertThat(filter.standardUncertainty() / filter.value()).isBetween(0.06, 0.13); // the usual one: 0.144
        for (Needed needed : List.of(Needed.SILENCER_HOLE, Needed.THROTTLE, Needed.FILTER, Needed.FLAME_TRAVEL)) {
            assertThat(figures.usual(needed)).as(needed.label()).isEmpty();
        }
        assertThat(findings).noneMatch(f -> f.message().contains("does not count"));
    }

    @Test
    void aReadingThatCannotCountSaysWhy() {
        String[][] cases = {
            {"intake: {filter_drop: 1.1 kPa}", "intake.filter_drop", "speed"},
            {"intake: {filter_drop_speed: 3000 rpm}", "intake.filter_drop_speed", "drop"},
            {
                "intake: {air_filter: none, filter_drop: 1.1 kPa, filter_drop_speed: 3000 rpm}",
                "intake.filter_drop",
                "none"
            },
            {"intake: {filter_drop: 0.02 kPa, filter_drop_speed: 3000 rpm}", "intake.filter_drop", "nothing"},
            {"exhaust: {silencer: none, silencer_hole: 11 mm}", "exhaust.silencer_hole", "none"},
            {"crankcase: {breather_hole: 8 mm}", "crankcase.breather_hole", "breathe"},
            {"crankcase: {free_volume: 700 cc}", "crankcase.free_volume", "breathe"},
        };
        for (String[] one : cases) {
            List<Finding> findings = new ArrayList<>();
            figures(ENGINE + one[0] + "\n", findings);
            assertThat(findings)
                    .as(one[0])
                    .anyMatch(f -> f.where().equals(one[1]) && f.message().contains(one[2]));
        }
    }

    /** Of a bore of 70 mm no plug is 30 mm from the farthest wall. */
    @Test
    void aPlugNearerThanAnyIsNotUsed() {
        String near = ENGINE.replace("chamber_volume: 25.0 cc", "chamber_volume: 25.0 cc, plug_to_wall: 30 mm");
        List<Finding> findings = new ArrayList<>();
        Figures figures = figures(near, findings);
        assertThat(figures.number(Needed.FLAME_TRAVEL)).isCloseTo(0.75 * 0.070, near(1e-9));
        assertThat(findings)
                .anyMatch(f ->
                        f.where().equals("head.plug_to_wall") && f.message().contains("not used"));
    }

    /** A farther plug burns later; a wider silencer and a freer filter give torque. */
    @Test
    void theseReadingsMoveTheTorqueTheRightWay() {
        String more = PORTS.replace("exhaust: {", "exhaust: {silencer_hole: 11 mm, ")
                .replace("intake: {", "intake: {filter_drop: 1.1 kPa, filter_drop_speed: 3000 rpm, ")
                .replace("chamber_volume: 25.0 cc", "chamber_volume: 25.0 cc, plug_to_wall: 48 mm");
        assertThat(more).contains("plug_to_wall");
        Row as = ran(more);
        assertThat(value(ran(more.replace("silencer_hole: 11 mm", "silencer_hole: 16 mm")), "torque"))
                .isGreaterThan(1.005 * value(as, "torque"));
        assertThat(value(ran(more.replace("filter_drop: 1.1 kPa", "filter_drop: 0.4 kPa")), "torque"))
                .isGreaterThan(1.005 * value(as, "torque"));
        assertThat(value(ran(more.replace("plug_to_wall: 48 mm", "plug_to_wall: 60 mm")), "burn_50"))
                .isGreaterThan(value(as, "burn_50") + Math.toRadians(1));
    }

    /** Does the first alone: the figures as they are, without their doubt. */
    private static Optional<List<Run.Outcome>> asTheyAre(List<Run> runs) {
        List<Run.Outcome> outcomes = new ArrayList<>(
                RUNNER.all(runs.subList(0, Math.min(1, runs.size()))).orElseThrow());
        while (outcomes.size() < runs.size()) {
            outcomes.add(new Run.Outcome(Optional.empty(), "not run"));
        }
        return Optional.of(outcomes);
    }

    private static Row ran(String text) {
        return curve(power(text, rpm(3000), PowerAnswerTest::asTheyAre)).rows().get(0);
    }

    private static String jetted(String carburettor) {
        return ENGINE + "intake: {air_filter: none}\ncarburettor: {venturi: 16 mm, bowl_vent: inside, " + carburettor
                + "}\n";
    }

    private static Optional<Measured> mixture(String carburettor) {
        return ran(jetted(carburettor)).figure("jet_mixture").map(f -> f.figure());
    }

    /**
     * By hand: 0.75 / 0.95 x (0.72 / 16)2 x root(747.5 / 1.16) x 14.6 = 0.59 of the fuel where air flows evenly; by the mean of its depression a single's pulses draw about twice that, and what swings back again: half-way 0.9.
     */
    @Test
    void whatJetAndVenturiGiveIsToldBesideWhatIsReckonedWith() {
        Measured drilled = mixture("main_jet_drill: 0.72 mm").orElseThrow();
        assertThat(drilled.value()).isBetween(0.59 * 1.3, 0.59 * 1.8);
        // 0.10 / 0.75 of the jet and as far as the pulses are evened out, rectangular, and 7 % of the model
        assertThat(drilled.standardUncertainty() / drilled.value()).isBetween(0.15, 0.30);
        // goes with the bore's area, but for the lip of the nozzle
        assertThat(mixture("main_jet_drill: 0.80 mm").orElseThrow().value() / drilled.value())
                .isCloseTo(Math.pow(0.80 / 0.72, 2), near(0.002));
        for (String same : List.of(
                "main_jet_number: 72, main_jet_numbering: hundredths_mm",
                "main_jet_number: 28.346, main_jet_numbering: thousandths_in")) {
            assertThat(mixture(same).orElseThrow().value()).as(same).isCloseTo(drilled.value(), near(1e-3));
        }
        // 0.75 x 0.4072 mm2 x root(2 x 9.80665 x 0.5) m/s = 0.9563 cc a second
        Measured flowed = mixture("main_jet_flow: 57.4 cc/min, main_jet_head: 500 mm, main_jet_liquid: petrol")
                .orElseThrow();
        assertThat(flowed.value()).isCloseTo(drilled.value(), near(0.005));
        assertThat(flowed.standardUncertainty()).isLessThan(drilled.standardUncertainty());
        Measured water = mixture("main_jet_flow: 57.4 cc/min, main_jet_head: 500 mm, main_jet_liquid: water")
                .orElseThrow();
        assertThat(water.value()).isCloseTo(flowed.value(), near(1e-9));
        assertThat(water.standardUncertainty()).isGreaterThan(flowed.standardUncertainty());
        for (String silent : List.of(
                "main_jet_number: 72", "main_jet_number: 72, main_jet_numbering: own", "main_jet_flow: 57.4 cc/min")) {
            assertThat(mixture(silent)).as(silent).isEmpty();
        }
    }

    @Test
    void aJetThatCannotBeIsSaid() {
        Answer fine = power(jetted("main_jet_drill: 0.72 mm"), rpm(3000), PowerAnswerTest::asTheyAre);
        assertThat(curve(fine).sentences()).anyMatch(s -> s.startsWith("By main jet and venturi"));
        assertThat(fine.findings()).noneMatch(f -> f.where().startsWith("carburettor.main_jet"));
        String[][] cases = {
            {"main_jet_drill: 1.60 mm", "carburettor.main_jet_drill", "too rich"},
            {"main_jet_drill: 0.35 mm", "carburettor.main_jet_drill", "too lean"},
            {"main_jet_drill: 0.62 mm", "carburettor.main_jet_drill", "probably too lean"},
            {"main_jet_number: 72", "carburettor.main_jet_number", "not told"},
            {"main_jet_number: 72, main_jet_numbering: own", "carburettor.main_jet_number", "own"},
            {"main_jet_number: 900, main_jet_numbering: hundredths_mm", "carburettor.main_jet_number", "9"},
            {"main_jet_flow: 57.4 cc/min", "carburettor.main_jet_flow", "height"},
            {"main_jet_head: 500 mm", "carburettor.main_jet_head", "flowed"},
            {
                "main_jet_drill: 0.72 mm, main_jet_number: 98, main_jet_numbering: hundredths_mm",
                "carburettor.main_jet_number",
                "one jet"
            },
            {
                "main_jet_drill: 0.72 mm, main_jet_number: 72.5, main_jet_numbering: hundredths_mm",
                "carburettor.main_jet_number",
                "agree"
            },
        };
        for (String[] one : cases) {
            Answer answer = power(jetted(one[0]), rpm(3000), PowerAnswerTest::asTheyAre);
            assertThat(answer.findings())
                    .as(one[0])
                    .anyMatch(f -> f.where().equals(one[1]) && f.message().contains(one[2]));
        }
    }

    /** Breathing by a check valve costs a fifth of what an open hole of its size does; by which, and how large a room, is told. */
    @Test
    void theCrankcaseTakesWhatItsBreatherLetsIt() {
        String valve = ENGINE + "crankcase: {breather: check_valve, breather_hole: 8 mm, free_volume: 600 cc}\n";
        String open = valve.replace("check_valve", "open_hole");
        Figures valved = figures(valve, new ArrayList<>());
        assertThat(valved.has(Needed.CRANKCASE)).isFalse();
        assertThat(valved.number(Needed.CASE_VOLUME)).isCloseTo(600e-6, near(1e-9));
        assertThat(valved.number(Needed.BREATHER_VALVE)).isCloseTo(0.008 * Math.sqrt(0.61), near(1e-6));
        Figures opened = figures(open, new ArrayList<>());
        assertThat(opened.number(Needed.BREATHER_OPEN)).isCloseTo(0.008 * Math.sqrt(0.7155), near(1e-4));
        double lessFriction = value(ran(open), "fmep") - value(ran(valve), "fmep");
        assertThat(lessFriction).isBetween(1000.0, 30_000.0); // CrankcasePumping: 1.5 to 30 kPa open, 0.1 to 1.2 valved
        Figures kindAlone = figures(ENGINE + "crankcase: {breather: check_valve}\n", new ArrayList<>());
        assertThat(kindAlone.usual(Needed.BREATHER_VALVE)).isPresent();
        assertThat(kindAlone.usual(Needed.CASE_VOLUME)).isPresent();
        assertThat(figures(ENGINE, new ArrayList<>()).has(Needed.CRANKCASE)).isTrue();
    }

    /** What the sums are handed. */
    private static Figures figures(String text, List<Finding> findings) {
        List<Figures> handed = new ArrayList<>();
        Answer answer = power(text, rpm(3000), runs -> {
            runs.forEach(run -> handed.add(run.figures()));
            return Optional.of(Collections.nCopies(runs.size(), new Run.Outcome(Optional.empty(), "not run")));
        });
        findings.addAll(answer.findings());
        return handed.get(0);
    }

    @Test
    void endedFromOutsideItGivesNoAnswer() {
        Build build = build(ENGINE);
        Answer life = Life.of(build, Catalogue.EMPTY, List.of());
        assertThat(Prediction.of(build, life, rpm(3000), Runner.inTurn(PlainKernel::new, () -> false)))
                .isEmpty();
    }

    private static org.assertj.core.data.Percentage near(double relative) {
        return org.assertj.core.data.Percentage.withPercentage(100 * relative);
    }
}
