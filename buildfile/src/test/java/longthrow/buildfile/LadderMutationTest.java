package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.LiftTable;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** What a ladder does when something is missing: no default in silence, and no approval without ratings. The engine is made up. */
class LadderMutationTest {
    /** Everything that any rung asks for, each read once, so that nothing stands in for it. */
    static final String WHOLE = """
            longthrow: 1
            engine: {name: whole, invented: yes, valves: overhead}
            flywheel:
              kind: solid_iron
              diameter: 172 mm
              rated_speed: {specified: 3000 rpm, by: its maker's sheet, note: made up}
              taper_diameter: 19.02 mm
              taper: "1:8"
              nut_thread_diameter: 13.86 mm
              nut_torque: 74 N·m
              nut_lubricant: dry
            head: {chamber_volume: 17.4 cc}
            gasket: {thickness: 1.10 mm, bore: 67.8 mm ± 0.2 mm}
            camshaft: {lifter: flat, lifter_mass: 18.4 g, base_circle_diameter: 28 mm, lobe_width: 12 mm}
            intake_valve: {lift: 6.32 mm, lash: 0.10 mm, mass: 26.4 g}
            exhaust_valve: {lift: 6.30 mm, lash: 0.12 mm, mass: 24.9 g}
            valve_spring:
              installed_height: 21.4 mm
              solid_height: 13.1 mm
              seat_load: 92 N
              open_load: 178 N
              metal: chrome_silicon
              wire_diameter: 3.2 mm
              outside_diameter: 26 mm
              mass: 13.1 g
              retainer_mass: 8.6 g
              retainer_to_seal: 8.1 mm
            rocker: {pushrod_arm: 16.5 mm, valve_arm: 25.5 mm, effective_mass: 12 g}
            pushrod: {length: 121.4 mm, outside_diameter: 6.02 mm, wall: 1.0 mm, mass: 15.6 g}
            cylinder: {metal: iron, bore: 65.52 mm ± 0.008 mm, deck_clearance: 0.84 mm}
            piston:
              alloy: cast
              diameter: 65.470 mm ± 0.004 mm
              pin_diameter: 15.998 mm
              pin_inside_diameter: 10.5 mm
              pin_length: 50 mm
              boss_gap: 23 mm
              crown_volume: 1.2 cc ± 0.3 cc
              mass: 171.4 g
              pin_mass: 39.8 g
            rings: {top_thickness: 1.49 mm, top_gap: 0.30 mm ± 0.02 mm, mass: 11.2 g}
            connecting_rod:
              metal: billet_aluminium
              length: 85.20 mm
              small_end_width: 21 mm
              small_end_bore: 16.026 mm ± 0.003 mm
              side_clearance: 0.45 mm ± 0.03 mm
              small_end_mass: 48.6 g
              big_end_mass: 127.2 g
              rated_speed: {specified: 3200 rpm, by: its maker's sheet, note: made up}
              beam_width: 18.0 mm
              beam_thickness: 14.0 mm
              web_thickness: 5.0 mm
              flange_thickness: 4.2 mm
              bolt_grade: class_12_9
              bolt_into: aluminium
              bolt_lubricant: oil
              bolt_thread_diameter: 6.93 mm
              bolt_thread_pitch: 1.00 mm
              bolt_grip: 27.5 mm
              bolt_torque: 17 N·m
              bolt_engagement: 15 mm
              bolt_tightenings: 3
              big_end_bearing: bare
              big_end_bore: 30.045 mm
              big_end_width: 22.0 mm
            crankshaft: {metal: steel, run_out: 0.02 mm ± 0.01 mm, stroke: 55.40 mm, crankpin_diameter: 29.995 mm, main_span: 78 mm}
            use:
              duty: mild
              governed_speed: {specified: 3600 rpm, by: the engine's plate, note: made up}
              wanted_speed: 5200 rpm
              hours_wanted: 60 h
              rod_temperature: 112 °C
              oil: 10w_30
              oil_temperature: 98 °C
            limiter: {cut_speed: {specified: 5300 rpm, by: its maker}}
            lift_tables:
              - {valve: intake, at: valve, rows: {0°: 6.32 mm, 20°: 6.06 mm, 40°: 5.32 mm, 60°: 4.23 mm, 80°: 2.95 mm, 100°: 1.74 mm, 120°: 0.78 mm, 140°: 0.22 mm, 150°: 0.06 mm}}
              - {valve: exhaust, at: valve, rows: {0°: 6.30 mm, 20°: 6.04 mm, 40°: 5.30 mm, 60°: 4.21 mm, 80°: 2.93 mm, 100°: 1.72 mm, 120°: 0.76 mm, 140°: 0.21 mm, 150°: 0.06 mm}}
            """;

    /** A duty for it, which the rung on hours asks for and no other does. */
    static final String DUTY = "hours_at: [{speed: 3000 rpm, share: 70 %}, {speed: 5200 rpm, share: 30 %}]\n";

    private static Build whole() {
        ReadBuild read = BuildFile.read((WHOLE + DUTY).getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    private static Map<String, Rung> rungs(Answer answer) {
        return answer.ladder().orElseThrow().rungs().stream()
                .collect(Collectors.toMap(Rung::key, r -> r, (a, b) -> a, LinkedHashMap::new));
    }

    private static String why(Answer answer, String key) {
        return answer.ladder().orElseThrow().rung(key).orElseThrow().why();
    }

    private static Build without(Build build, Term term) {
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        given.putAll(build.given());
        given.remove(term);
        return build.withGiven(given);
    }

    private static Build without(Build build, Choice choice) {
        Map<Choice, String> choices = new LinkedHashMap<>(build.choices());
        choices.remove(choice);
        return build.withChoices(choices);
    }

    private static Build withLifts(Build b, List<LiftTable> lifts) {
        return new Build(
                b.name(),
                b.invented(),
                b.units(),
                b.notes(),
                b.instruments(),
                b.given(),
                b.choices(),
                b.rulesChosen(),
                b.ownRules(),
                b.aims(),
                b.damage(),
                b.shims(),
                lifts,
                b.outlines(),
                b.bench(),
                b.fit(),
                b.taken(),
                b.mockedUp(),
                b.gas(),
                b.hoursAt(),
                b.flows());
    }

    @Test
    void everyRungOfAWholeEngineIsKnown() {
        Map<String, Rung> rungs = rungs(Running.limitsAlone(whole()));
        assertThat(rungs).hasSizeGreaterThan(32);
        assertThat(rungs.values())
                .allSatisfy(
                        r -> assertThat(r.state()).as(r.key() + ": " + r.why()).isNotEqualTo(State.UNKNOWN));
        assertThat(rungs.values())
                .allSatisfy(r -> assertThat(r.hangsOn()).as(r.key()).isNotEmpty());
        assertThat(rungs.values())
                .allSatisfy(r -> assertThat(r.source()).as(r.key()).isNotBlank());
    }

    /** A reading, word or table less: each rung that hangs on it is unknown and names it, every other one is the same but for rounding, and nothing new is taken for granted. */
    @Test
    void nothingThatIsMissingIsReplacedInSilence() {
        Build whole = whole();
        Answer full = Running.limitsAlone(whole);
        Map<String, Build> variants = new LinkedHashMap<>();
        whole.given().keySet().stream()
                .filter(t -> t != Term.WANTED_SPEED)
                .forEach(t -> variants.put(t.path(), without(whole, t)));
        // the table at a valve tells its lift too, so the lift is gone only with it
        variants.put(
                Term.INTAKE_LIFT.path(),
                withLifts(without(whole, Term.INTAKE_LIFT), whole.lifts().subList(1, 2)));
        variants.put(
                Term.EXHAUST_LIFT.path(),
                withLifts(without(whole, Term.EXHAUST_LIFT), whole.lifts().subList(0, 1)));
        whole.choices().keySet().forEach(c -> variants.put(c.path(), without(whole, c)));
        variants.put("lift_tables[1]", withLifts(whole, whole.lifts().subList(1, 2)));
        variants.put("lift_tables[2]", withLifts(whole, whole.lifts().subList(0, 1)));
        Map<String, Term> toldByTables =
                Map.of("lift_tables[1]", Term.INTAKE_LIFT, "lift_tables[2]", Term.EXHAUST_LIFT);
        Set<String> mattered = new HashSet<>();
        variants.forEach((place, variant) -> {
            Answer less = Running.limitsAlone(variant);
            Map<String, Rung> now = rungs(less);
            rungs(full).forEach((key, before) -> {
                if (hangsOn(before, place)) {
                    mattered.add(place);
                    Rung after = now.get(key);
                    if (after != null) { // a rung of iron wheels is not asked of a wheel of which nothing is said; that
                        // is a rung of its own
                        assertThat(after.state())
                                .as(key + " without " + place + ": " + after.why())
                                .isEqualTo(State.UNKNOWN);
                        assertThat(after.missing())
                                .as(key + " without " + place)
                                .isNotEmpty();
                        assertThat(after.speed()).as(key + " without " + place).isEmpty();
                    }
                } else if (before.kind() == Rung.Kind.WEAR && now.get(key) == null) {
                    // what was read of a part is held against its limit where it is read, or follows from what is
                    assertThat(before.weight()).as(key + " without " + place).isNotEqualTo(Rung.Weight.REFUSES);
                } else if (before.kind() == Rung.Kind.WEAR
                        && Objects.requireNonNull(now.get(key)).state() != before.state()) {
                    // a clearance is the difference of readings; without a word that says which limit is meant it is
                    // not proven
                    Rung after = now.get(key);
                    assertThat(after.state()).as(key + " without " + place).isIn(State.UNKNOWN, State.NEAR);
                    assertThat(after.unlock()).as(key + " without " + place).isNotEmpty();
                } else if (!leansOnBoth(before, place, toldByTables)) {
                    Rung after = Objects.requireNonNull(now.get(key), () -> key + " is gone without " + place);
                    assertThat(after.state()).as(key + " without " + place).isEqualTo(before.state());
                    assertThat(after.speed().map(s -> s.value()).orElse(0.0))
                            .as(key + " without " + place)
                            .isCloseTo(before.speed().map(s -> s.value()).orElse(0.0), withinPercentage(1e-7));
                }
            });
            assertThat(taken(less)).as("taken without " + place).isSubsetOf(taken(full));
        });
        assertThat(mattered).hasSizeGreaterThan(60);
        assertThat(rungs(full)).containsKey("rod_beam_hours");
    }

    /** A table less moves the lift it told by what is left of the other reading; a lift less comes with its table less, in the variants. */
    private static boolean leansOnBoth(Rung rung, String place, Map<String, Term> toldByTables) {
        Term lift = toldByTables.get(place);
        boolean isLift = place.equals(Term.INTAKE_LIFT.path()) || place.equals(Term.EXHAUST_LIFT.path());
        return (lift != null && rung.hangsOn().contains(lift.path()))
                || (isLift && rung.hangsOn().stream().anyMatch(h -> h.startsWith("lift_tables")));
    }

    /** What a figure that is worked out hangs on, hangs on what it is worked out from. */
    private static boolean hangsOn(Rung rung, String place) {
        return rung.hangsOn().contains(place)
                || BEHIND.entrySet().stream()
                        .anyMatch(behind ->
                                rung.hangsOn().contains(behind.getKey().path())
                                        && behind.getValue().contains(place));
    }

    private static final Map<Term, List<String>> BEHIND = Map.of(
            Term.COMPRESSION_RATIO,
            List.of(
                    "head.chamber_volume",
                    "gasket.thickness",
                    "gasket.bore",
                    "cylinder.deck_clearance",
                    "piston.crown_volume",
                    "cylinder.bore",
                    "crankshaft.stroke"),
            Term.BIG_END_CLEARANCE,
            List.of("connecting_rod.big_end_bore", "crankshaft.crankpin_diameter"));

    private static Set<String> taken(Answer answer) {
        return answer.defaults().stream().map(DefaultUsed::what).collect(Collectors.toSet());
    }

    /** Acceptance: 1000 incomplete builds without flywheel or rod rated above the governed speed, asked for more than that: none is approved. Seed constant. */
    @Test
    void noIncompleteBuildIsApproved() {
        SplittableRandom random = new SplittableRandom(20261126);
        Build whole = whole();
        List<Term> terms = new ArrayList<>(whole.given().keySet());
        List<Choice> choices = new ArrayList<>(whole.choices().keySet());
        int approved = 0;
        int refused = 0;
        for (int k = 0; k < 1000; k++) {
            double keep = 0.5 + 0.5 * random.nextDouble();
            Map<Term, List<Given>> given = new EnumMap<>(Term.class);
            for (Term term : terms) {
                boolean isKept = term == Term.WANTED_SPEED || random.nextDouble() < keep;
                if (isKept && (random.nextDouble() < 0.7 || !isRating(term))) {
                    given.put(term, whole.of(term));
                }
            }
            Map<Choice, String> words = new LinkedHashMap<>();
            for (Choice choice : choices) {
                if (random.nextDouble() < keep) {
                    words.put(choice, whole.choice(choice).orElseThrow());
                }
            }
            if (random.nextBoolean()) {
                words.put(Choice.ROD_METAL, random.nextBoolean() ? "steel" : "cast_aluminium");
                words.put(Choice.FLYWHEEL_KIND, random.nextBoolean() ? "steel" : "billet_aluminium");
            }
            Build build = withLifts(
                    whole.withGiven(given).withChoices(words), random.nextDouble() < keep ? whole.lifts() : List.of());
            Approval approval =
                    Running.limitsAlone(build).ladder().orElseThrow().approval();
            approved += approval.verdict() == Approval.State.APPROVED ? 1 : 0;
            refused += approval.verdict() == Approval.State.REFUSED ? 1 : 0;
            assertThat(approval.verdict()).as("build " + k).isNotEqualTo(Approval.State.APPROVED);
            assertThat(approval.reasons()).as("build " + k).isNotEmpty();
        }
        assertThat(approved).isZero();
        assertThat(refused).isBetween(1, 999); // both other verdicts were met
    }

    private static boolean isRating(Term term) {
        return term == Term.FLYWHEEL_RATED_SPEED || term == Term.ROD_RATED_SPEED || term == Term.GOVERNED_SPEED;
    }

    static final String RATED = WHOLE.replace("rated_speed: {specified: 3000 rpm", "rated_speed: {specified: 7000 rpm")
                    .replace("rated_speed: {specified: 3200 rpm", "rated_speed: {specified: 6500 rpm")
                    .replace("wanted_speed: 5200 rpm", "wanted_speed: 3900 rpm")
                    .replace("seat_load: 92 N", "seat_load: 192 N")
                    .replace("open_load: 178 N", "open_load: 378 N")
                    .replace("pin_inside_diameter: 10.5 mm", "pin_inside_diameter: 8.5 mm")
                    .replace("pin_length: 50 mm", "pin_length: 42 mm")
                    .replace("kind: solid_iron", "kind: steel")
                    .replace("cut_speed: {specified: 5300 rpm", "cut_speed: {specified: 4000 rpm")
            + LookedOver.SEEN;

    private static Approval approval(String text) {
        ReadBuild read = BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return Running.limitsAlone(read.build().orElseThrow())
                .ladder()
                .orElseThrow()
                .approval();
    }

    /** The same engine with both ratings high enough and every rung known: it is approved when its rungs hold, so that the test above can fail. */
    @Test
    void aWholeAndRatedEngineIsApproved() {
        Approval approval = approval(RATED);
        assertThat(approval.verdict()).as(approval.reasons().toString()).isEqualTo(Approval.State.APPROVED);
        assertThat(approval.upTo().orElseThrow()).isGreaterThan(approval.asked().orElseThrow());
    }

    /** What is planned and not done yet stands as if it were done, and approves nothing before it is. */
    @Test
    void plannedWorkIsHeldAsDoneAndApprovesNothing() {
        String planned = RATED
                + "taken: [{work: head_cut, code: A1, amount: 0.10 mm, from: 17.4 cc, to: 16.9 cc, tolerance: 0.01 mm}]\n";
        String cut = planned.replace(
                "chamber_volume: 17.4 cc", "chamber_volume: {specified: 16.9 cc, tolerance: 0.2 cc, by: the shop}");
        assertThat(cut).isNotEqualTo(planned);
        Approval approval = approval(cut);
        assertThat(approval.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval.said()).contains("yet").contains("as planned");
        assertThat(approval.reasons()).hasSize(1).first().asString().contains("planned, not done yet");
        Answer answer = Running.limitsAlone(
                BuildFile.read(cut.getBytes(StandardCharsets.UTF_8)).build().orElseThrow());
        assertThat(why(answer, "rod_beam_buckling")).contains("as planned, not machined yet");
        assertThat(why(answer, "ring_flutter")).doesNotContain("as planned");
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("planned, not machined yet"));
    }
}
