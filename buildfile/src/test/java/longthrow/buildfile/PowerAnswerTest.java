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
        assertThat(curve.rows().get(0).standing()).isEqualTo(Standing.DOES_NOT_RUN); // the runner ran nothing
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
                        "power.filter", "intake.airbox_volume", "exhaust.silencer_volume", "power.silencer_hole");
        List<String> fitted = power(ENGINE, rpm(3000), counting(new AtomicInteger())).defaults().stream()
                .map(DefaultUsed::where)
                .toList();
        assertThat(fitted)
                .contains("power.filter", "intake.airbox_volume", "exhaust.silencer_volume", "power.silencer_hole");
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

    /** Whoever writes it is told that it does nothing for the torque. */
    @Test
    void whatDoesNotCountYetIsSaidAtItsPlace() {
        String more = PORTS.replace("exhaust: {", "exhaust: {silencer_hole: 11 mm, ")
                .replace("carburettor: {", "carburettor: {main_jet_drill: 0.72 mm, ");
        List<Finding> findings = new ArrayList<>();
        figures(more, findings);
        assertThat(findings)
                .filteredOn(f -> f.message().contains("does not count"))
                .extracting(Finding::where)
                .containsExactly("carburettor.main_jet_drill", "exhaust.silencer_hole");
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
