package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.TracedOutline;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.clear.FewNumbers;
import longthrow.core.clear.OutlineChecks;
import longthrow.core.clear.ReliefCut;
import longthrow.core.clear.Tracing;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.OutlineText;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Point;
import longthrow.core.clearance.Sweep;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Outlines that were traced: read, edited, and what touches by them. Every figure is invented. */
class OutlinesTest {
    /** All that is promised of a gap [m]. */
    private static final double PROMISED = 0.01e-3;

    private static final String WHOLE = ClearAnswerTest.whole();
    private static final Build AS_READ = ClearAnswerTest.build(WHOLE);

    private static final Answer MEASURED = Measure.of(AS_READ, List.of());

    /** Of which only that is known which a skirt over counterweights hangs on. */
    private static final String BARE = """
            longthrow: 1
            engine: {name: invented}
            piston: {skirt_below_pin: 18.1 mm ± 0.05 mm, pin_offset: 0 mm ± 0.001 mm}
            connecting_rod: {length: 84.5 mm ± 0.02 mm}
            cylinder: {bore_offset: 0 mm ± 0.001 mm}
            crankshaft: {stroke: 50 mm ± 0.05 mm, end_play: 0.18 mm ± 0.02 mm, counterweight_radius: 37.6 mm ± 0.3 mm}
            """;

    private static Quantity mm(String figure) {
        return Quantity.of(figure, Unit.of(Dimension.LENGTH, "mm"));
    }

    /** Traced as closely as is believed, of points in millimetres. */
    private static TracedOutline traced(OutlinedPart part, String... points) {
        return new TracedOutline(
                part,
                mm("1"),
                TracedOutline.Form.POINTS,
                List.of(points),
                null,
                null,
                false,
                null,
                null,
                mm("0.1"),
                "");
    }

    private static String[] points(List<Point> loop) {
        return loop.stream()
                .map(p -> String.format(Locale.ROOT, "%.6f, %.6f", 1e3 * p.x(), 1e3 * p.y()))
                .toArray(String[]::new);
    }

    private static String with(String text, TracedOutline... outlines) {
        String changed = text;
        for (TracedOutline outline : outlines) {
            Edited edited = BuildFile.outline(changed, outline.part(), Optional.of(outline));
            changed = edited.text()
                    .orElseThrow(() -> new AssertionError(edited.faults().toString()));
        }
        return changed;
    }

    private static Answer clear(TracedOutline... outlines) {
        return Clear.of(ClearAnswerTest.build(with(BARE, outlines)));
    }

    private static Build whole(TracedOutline... outlines) {
        return ClearAnswerTest.build(with(WHOLE, outlines));
    }

    /** The least gap of a pair as it is drawn, without all that makes its doubt. */
    private static double least(Build build, String key) {
        Drawn drawn = drawn(build, key);
        return Sweep.least(Pair.of(drawn.one(), drawn.other())).orElseThrow().gap();
    }

    private static Map<String, Clearance> pairs(Answer answer) {
        return answer.clearances().stream().collect(Collectors.toMap(Clearance::key, Function.identity()));
    }

    private static Clearance pair(Answer answer, String key) {
        return Objects.requireNonNull(pairs(answer).get(key), key);
    }

    private static double cold(Answer answer, String key) {
        return pair(answer, key).cold().orElseThrow().value();
    }

    private static double figure(Term term) {
        return MEASURED.value(term).orElseThrow().figure().value();
    }

    private static TracedOutline at(TracedOutline o, String from, String to) {
        return new TracedOutline(
                o.part(),
                o.unit(),
                o.form(),
                o.lines(),
                o.datumX(),
                o.datumY(),
                o.mirrored(),
                mm(from),
                mm(to),
                o.doubt(),
                o.note());
    }

    private static TracedOutline doubted(TracedOutline o, String doubt) {
        return new TracedOutline(
                o.part(),
                o.unit(),
                o.form(),
                o.lines(),
                o.datumX(),
                o.datumY(),
                o.mirrored(),
                o.from(),
                o.to(),
                mm(doubt),
                o.note());
    }

    // ---- the same shape gives the same gaps

    @Test
    void aCircleAsManyCornersIsTheCircle() {
        double radius = figure(Term.COUNTERWEIGHT_RADIUS);
        List<Point> corners = new ArrayList<>();
        for (int k = 0; k < 720; k++) {
            double way = Math.toRadians(k / 2.0);
            corners.add(new Point(radius * Math.cos(way), radius * Math.sin(way)));
        }
        TracedOutline circle = traced(OutlinedPart.COUNTERWEIGHT, points(corners));
        Build traced = whole(circle);
        for (String key : List.of(
                "skirt_to_counterweight",
                "boss_to_counterweight",
                "counterweight_to_sleeve",
                "counterweight_to_cam_core",
                "counterweight_to_intake_lobe")) {
            assertThat(least(traced, key)).as(key).isCloseTo(least(AS_READ, key), within(PROMISED));
        }
    }

    @Test
    void whatItIsDrawnFromIsNamedAndNoMoreIsAskedFor() {
        Clearance asRead = pair(Clear.of(ClearAnswerTest.build(BARE)), "skirt_to_counterweight");
        assertThat(asRead.hangsOn()).contains(Term.COUNTERWEIGHT_RADIUS.path());
        Clearance skirt = pair(clear(tipped(40)), "skirt_to_counterweight");
        assertThat(skirt.hangsOn()).contains("outlines[1]").doesNotContain(Term.COUNTERWEIGHT_RADIUS.path());
        assertThat(skirt.from()).contains("outlines[1]");
    }

    /** The shape by readings, brought to where an outline has its nose, is the lobe again where it is put back. */
    @Test
    void aLobeByItsProfileIsTheLobe() {
        Outline lobe = FewNumbers.of(AS_READ, OutlinedPart.EXHAUST_LOBE).get(0);
        double base = figure(Term.CAM_BASE_CIRCLE) / 2;
        assertThat(lobe.reach(0)).isGreaterThan(base + 3e-3); // its nose is up, over 3 mm of lift
        assertThat(lobe.reach(Math.PI)).isCloseTo(base, within(0.3e-3)); // and lash
        // by its readings it is drawn round with its lash, which its base circle has not
        Build traced = whole(doubted(
                traced(OutlinedPart.EXHAUST_LOBE, points(lobe.drawn(1e-7).get(0))), "0.2"));
        for (String key : List.of("big_end_to_exhaust_lobe", "rod_bolts_to_exhaust_lobe")) {
            for (double angle : new double[] {0, 1, 2.5, 4, 5.5, 7, 9, 11}) {
                assertThat(gap(drawn(traced, key), angle))
                        .as(key)
                        .isCloseTo(gap(drawn(AS_READ, key), angle), within(PROMISED));
            }
        }
    }

    private static Drawn drawn(Build build, String key) {
        return Drawn.of(build).stream()
                .filter(d -> d.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static double gap(Drawn drawn, double angle) {
        return longthrow.core.clearance.Sweep.at(longthrow.core.clearance.Pair.of(drawn.one(), drawn.other()), angle)
                .orElseThrow()
                .gap();
    }

    @Test
    void aCaseAsItsThreeWallsIsThoseWalls() {
        double below = -1e3 * figure(Term.CASE_BELOW);
        double thrust = -1e3 * figure(Term.CASE_THRUST);
        double anti = 1e3 * figure(Term.CASE_ANTITHRUST);
        Build traced = whole(traced(
                OutlinedPart.CASE, thrust + ", " + below, anti + ", " + below, anti + ", 200", thrust + ", 200"));
        for (String key : List.of("big_end_to_case", "rod_bolts_to_case", "dipper_to_case")) {
            assertThat(least(traced, key)).as(key).isCloseTo(least(AS_READ, key), within(PROMISED));
        }
        assertThat(Drawn.of(AS_READ)).extracting(Drawn::key).doesNotContain("counterweight_to_case");
        double radius = 1e3 * figure(Term.COUNTERWEIGHT_RADIUS);
        assertThat(1e3 * least(traced, "counterweight_to_case"))
                .isCloseTo(Math.min(anti, Math.min(-thrust, -below)) - radius, within(0.01)); // a circle in a box
    }

    /** The rod of the example with its bolts, a little larger all round than what is read of it: bolts out to 25 mm, from 13 mm up to 24 mm down, eyes and beam. */
    private static final List<String> ROD = List.of(
            "-25, -24",
            "25, -24",
            "25, 13",
            "13, 26",
            "10, 60",
            "12, 75",
            "12, 98",
            "-12, 98",
            "-12, 75",
            "-10, 60",
            "-13, 26",
            "-25, 13");

    /** The rod with points replaced. */
    private static TracedOutline rod(String... replaced) {
        List<String> points = new ArrayList<>(ROD);
        for (int k = 0; k < replaced.length; k += 2) {
            assertThat(points).contains(replaced[k]);
            points.set(points.indexOf(replaced[k]), replaced[k + 1]);
        }
        return traced(OutlinedPart.ROD, points.toArray(String[]::new));
    }

    @Test
    void whatIsOfTheRodIsOneShapeWithItsBolts() {
        Build traced = whole(rod());
        assertThat(Drawn.of(traced))
                .extracting(Drawn::key)
                .contains("big_end_to_case", "rod_to_sleeve")
                .doesNotContain("rod_bolts_to_case", "rod_bolts_to_sleeve");
        // its corners stand farther out than the circle of the readings: by hand hypot(25, 24) - 23.5 mm, and part of
        // that at the wall
        assertThat(least(traced, "big_end_to_case")).isLessThan(least(AS_READ, "big_end_to_case") - 0.4e-3);
        assertThat(disagreements(traced)).isEmpty();
    }

    /** Each place of a rod that is read holds the outline: one that ends inside of it opens a gap that is not there. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-25, -24|-25, -18|25, -24|25, -18|rod bolt, lower end",
                "-25, -24|-21, -24|-25, 13|-21, 13|rod bolt, out",
                "25, -24|21, -24|25, 13|21, 13|anti-thrust side",
                "25, 13|25, 9|13, 26|13, 10|rod bolt, upper end",
                "-25, -24|-15, -24|25, -24|15, -24|rod bolt, lower end",
                "12, 98|12, 80|-12, 98|-12, 80|rod length",
                "12, 98|12, 89|-12, 98|-12, 89|small-end bore",
                "10, 60|6, 60|-10, 60|-6, 60|rod beam width",
            })
    void aRodSmallerThanWhatIsReadOfItTellsNoGap(String one, String is, String two, String too, String says) {
        Build smaller = whole(rod(one, is, two, too));
        assertThat(Drawn.of(smaller)).extracting(Drawn::key).doesNotContain("big_end_to_case", "rod_to_sleeve");
        assertThat(disagreements(smaller))
                .anySatisfy(f -> assertThat(f.message()).contains(says, "No gap is told from it until they agree"));
    }

    /** Nothing that goes around a crankpin goes through it: the bore is held where the bolts are not read. */
    @Test
    void aRodNarrowerThanItsBoreIsNone() {
        String bare =
                BARE.replace("length: 84.5 mm ± 0.02 mm", "length: 84.5 mm ± 0.02 mm, big_end_bore: 30 mm ± 0.01 mm");
        TracedOutline thin = traced(OutlinedPart.ROD, "-14, -17", "14, -17", "14, 17", "9, 95", "-9, 95", "-14, 17");
        assertThat(disagreements(ClearAnswerTest.build(with(bare, thin))))
                .singleElement()
                .satisfies(
                        f -> assertThat(f.message()).contains("28.00 mm as traced", "big-end bore", "No gap is told"));
        TracedOutline round = traced(OutlinedPart.ROD, "-16, -17", "16, -17", "16, 17", "9, 95", "-9, 95", "-16, 17");
        assertThat(disagreements(ClearAnswerTest.build(with(bare, round)))).isEmpty();
    }

    /** A lobe of a base circle of 2 r, as flat-sided as it may be, nose up to n. */
    private static TracedOutline lobe(double r, double n) {
        List<Point> corners = new ArrayList<>();
        for (int k = 0; k < 360; k++) {
            double way = Math.toRadians(k);
            double out = r
                    + (n - r)
                            * Math.max(0, Math.cos(2 * Math.min(way, 2 * Math.PI - way)))
                            * (k < 45 || k > 315 ? 1 : 0);
            corners.add(new Point(1e-3 * out * Math.sin(way), 1e-3 * out * Math.cos(way)));
        }
        return doubted(traced(OutlinedPart.EXHAUST_LOBE, points(corners)), "0.2");
    }

    private static TracedOutline turnedOver(TracedOutline o) {
        return new TracedOutline(
                o.part(),
                o.unit(),
                o.form(),
                o.lines().stream()
                        .map(line -> line.split(", "))
                        .map(xy -> xy[0] + ", " + -Double.parseDouble(xy[1]))
                        .toList(),
                null,
                null,
                false,
                null,
                null,
                o.doubt(),
                "");
    }

    /** What is upside down, or has its datum elsewhere, or another base circle is not that part: no gap is told, whichever way it is wrong. */
    @Test
    void whatCannotBeThatPartTellsNoGap() {
        double base = 1e3 * figure(Term.CAM_BASE_CIRCLE) / 2;
        double nose = base + 1e3 * (figure(Term.EXHAUST_LIFT) + figure(Term.EXHAUST_LASH));
        TracedOutline dipper = traced(OutlinedPart.DIPPER, "-4, -10", "4, -10", "4, -41", "-4, -41");
        TracedOutline skirt = traced(OutlinedPart.PISTON_SKIRT, "-30, -18.1", "30, -18.1", "30, 10", "-30, 10");
        tells(dipper, "dipper_to_case", "");
        tells(turnedOver(dipper), "dipper_to_case", "all of it lies above the big end's centre");
        tells(traced(OutlinedPart.DIPPER, "-1, -10", "1, -10", "1, -41", "-1, -41"), "dipper_to_case", "dipper width");
        tells(skirt, "skirt_to_counterweight", "");
        tells(
                traced(OutlinedPart.PISTON_SKIRT, "-30, 2", "30, 2", "30, 30", "-30, 30"),
                "skirt_to_counterweight",
                "all of it lies above the pin's centre");
        tells(lobe(base, nose), "big_end_to_exhaust_lobe", "");
        tells(turnedOver(lobe(base, nose)), "big_end_to_exhaust_lobe", "its nose does not point up");
        tells(lobe(base - 1, nose), "big_end_to_exhaust_lobe", "base circle diameter");
        tells(lobe(base + 1, nose + 1), "big_end_to_exhaust_lobe", "base circle diameter");
        tells(lobe(base, base + 2), "big_end_to_exhaust_lobe", "its nose over its base circle");
        tells(turnedOver(rod()), "big_end_to_case", "no farther up than down");
        tells(tipped(38), "skirt_to_counterweight", "");
        tells(at(tipped(38), "13", "29.5"), "counterweight_to_sleeve", "");
        tells(at(tipped(38), "13", "20"), "counterweight_to_sleeve", "counterweight thickness");
        tells(
                traced(OutlinedPart.COUNTERWEIGHT, "10, 20", "30, 20", "30, -20", "10, -20"),
                "skirt_to_counterweight",
                "the crankshaft axis lies outside of it");
        // one that is bolted on hangs below the axis and need not go round it
        tells(
                traced(OutlinedPart.COUNTERWEIGHT, "-28, -25", "28, -25", "20, -5", "-20, -5"),
                "skirt_to_counterweight",
                "");
        tells(
                traced(OutlinedPart.COUNTERWEIGHT, "0, -90", "12, 0", "0, 12", "-12, 0"),
                "skirt_to_counterweight",
                "counterweight radius");
    }

    /** Whether a pair is drawn with an outline, and what is said where it is not. */
    private static void tells(TracedOutline outline, String pair, String trouble) {
        Build build = whole(outline);
        List<String> drawn = Drawn.of(build).stream().map(Drawn::key).toList();
        List<String> said = disagreements(build).stream().map(Finding::message).toList();
        if (trouble.isEmpty()) {
            assertThat(drawn).as(said.toString()).contains(pair);
            assertThat(said).noneMatch(s -> s.contains("No gap is told"));
        } else {
            assertThat(drawn).as(trouble).doesNotContain(pair);
            assertThat(said).anyMatch(s -> s.contains(trouble) && s.contains("No gap is told from it"));
        }
    }

    private static List<Finding> disagreements(Build build) {
        Known known = new Known(Appraisal.sound(build));
        List<Finding> all = new ArrayList<>();
        for (TracedOutline outline : build.outlines()) {
            all.addAll(OutlineChecks.of(known, outline, "outline"));
        }
        return all;
    }

    // ---- a shape of its own

    /** At bottom dead centre the tip points at the piston: rod length less throw, tip and skirt are left; before and after it is more. */
    private static TracedOutline tipped(double tip) {
        return traced(OutlinedPart.COUNTERWEIGHT, "0, " + -tip, "12, 0", "0, 12", "-12, 0");
    }

    @Test
    void aTipPassesTheSkirtAsPlaneTrigonometryHasIt() {
        double tip = 40;
        double wanted = 84.5 - 50 / 2.0 - tip - 18.1;
        Answer traced = clear(tipped(tip));
        assertThat(1e3 * cold(traced, "skirt_to_counterweight")).isCloseTo(wanted, within(0.01));
        assertThat(Math.toDegrees(pair(traced, "skirt_to_counterweight")
                                .cold()
                                .orElseThrow()
                                .angle())
                        % 360)
                .isCloseTo(180, within(0.5));
    }

    /** An outline that ends 7 mm inside what is read opens every gap by as much: none is told. */
    @Test
    void anOutlineSmallerThanItsReadingTellsNoGap() {
        Answer traced = clear(tipped(30));
        assertThat(pair(traced, "skirt_to_counterweight").state()).isEqualTo(State.UNKNOWN);
        assertThat(disagreements(traced))
                .anySatisfy(f -> assertThat(f.message()).contains("No gap is told from it until they agree"));
        assertThat(pair(clear(tipped(40)), "skirt_to_counterweight").state()).isNotEqualTo(State.UNKNOWN);
    }

    /** The same with the tip towards the crankpin: upside down it would open the gap under the piston, so no gap is told. */
    @Test
    void upIsTowardsTheCrankpin() {
        Answer traced = clear(traced(OutlinedPart.COUNTERWEIGHT, "0, 40", "12, 0", "0, -12", "-12, 0"));
        Clearance skirt = pair(traced, "skirt_to_counterweight");
        assertThat(skirt.state()).isEqualTo(State.UNKNOWN);
        assertThat(skirt.missing()).anySatisfy(m -> assertThat(m.what()).contains("so it stands upside down"));
        assertThat(traced.findings()).anySatisfy(f -> assertThat(f.kind()).isEqualTo(Finding.Kind.SUSPECT));
    }

    @Test
    void theDoubtOfTheTracingIsInTheGap() {
        Clearance.Gap sure = pair(clear(doubted(tipped(40), "0.001")), "skirt_to_counterweight")
                .cold()
                .orElseThrow();
        Clearance.Gap loose = pair(clear(doubted(tipped(40), "0.8")), "skirt_to_counterweight")
                .cold()
                .orElseThrow();
        double half = (sure.high() - sure.low()) / 2;
        assertThat(loose.value()).isCloseTo(sure.value(), within(1e-9));
        assertThat((loose.high() - loose.low()) / 2)
                .isCloseTo(Math.hypot(half, 0.8e-3), within(0.08e-3)); // two normal errors; an end scatters by a tenth
        assertThat(loose.worst()).isLessThan(sure.worst() - 0.65e-3); // 0.8 mm less the 0.1 mm that is the least
        assertThat(loose.shares().get(0).owner()).isEqualTo("outline of the counterweight");
    }

    /** Nobody traces to a thousandth: it is raised, in the gap, in what is taken and in words; from a tenth on it is believed. */
    @Test
    void aDoubtThatNoTracingReachesIsRaised() {
        Answer absurd = clear(doubted(tipped(40), "0.000001"));
        Answer tenth = clear(doubted(tipped(40), "0.1"));
        assertThat(pair(absurd, "skirt_to_counterweight").cold().orElseThrow().worst())
                .isEqualTo(pair(tenth, "skirt_to_counterweight")
                        .cold()
                        .orElseThrow()
                        .worst());
        assertThat(absurd.findings())
                .anyMatch(f -> f.where().equals("outlines[1]") && f.message().contains("taken as 0.1 mm"));
        assertThat(absurd.defaults()).anyMatch(d -> d.what().contains("within 0.1 mm all round"));
        assertThat(tenth.findings()).noneMatch(f -> f.message().contains("taken as 0.1 mm"));
    }

    @Test
    void withoutADoubtTheUsualOneIsTakenAloud() {
        TracedOutline o = tipped(40);
        TracedOutline bare =
                new TracedOutline(o.part(), o.unit(), o.form(), o.lines(), null, null, false, null, null, null, "");
        assertThat(clear(bare).defaults())
                .anyMatch(d -> d.where().equals("outlines[1]")
                        && d.what().contains("within 0.5 mm")
                        && d.source().contains("common practice, no source"))
                .anyMatch(d -> d.what().contains("along the crankshaft is not told: taken throughout"));
    }

    // ---- depth

    /** A skirt between the counterweights, 4 mm from each, less the end play that no one says where it was: 3.82 mm. */
    @Test
    void whatPassesBesideCannotTouch() {
        TracedOutline skirt = traced(OutlinedPart.PISTON_SKIRT, "-30, -35", "30, -35", "30, 10", "-30, 10");
        assertThat(pair(clear(skirt, tipped(40)), "skirt_to_counterweight").state())
                .isEqualTo(State.TOUCHES);
        Clearance beside = pair(clear(at(skirt, "-8", "8"), at(tipped(40), "12", "24")), "skirt_to_counterweight");
        Clearance.Gap gap = beside.cold().orElseThrow();
        assertThat(gap.way()).isEqualTo(Clearance.Way.BESIDE);
        assertThat(gap.value()).isCloseTo(4e-3 - 0.18e-3, within(1e-6));
        assertThat(beside.state()).isEqualTo(State.CLEARS_COLD);
        assertThat(pair(clear(at(skirt, "-13", "8"), at(tipped(40), "12", "24")), "skirt_to_counterweight")
                        .state())
                .isEqualTo(State.TOUCHES);
    }

    // ---- both are there

    @Test
    void anOutlineThatDisagreesWithTheReadingSaysSoAndCounts() {
        double radius = 37.6;
        assertThat(disagreements(clear(doubted(tipped(radius), "0.3")))).isEmpty();
        assertThat(disagreements(clear(doubted(tipped(radius + 2), "0.3"))))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.where()).isEqualTo("outlines[1]");
                    assertThat(f.message()).contains("disagree").contains(Term.COUNTERWEIGHT_RADIUS.path());
                });
    }

    /** The skirt and the counterweight overlap, but no cut is told from an outline in dispute, be it on the safe side: who trusts it would cut away what is needed. */
    @Test
    void noCutIsToldFromWhatIsInDispute() {
        TracedOutline longer = doubted(tipped(46), "0.3");
        Clearance disputed = pair(clear(longer), "skirt_to_counterweight");
        assertThat(disputed.state()).isEqualTo(State.TOUCHES);
        assertThat(disputed.mend()).contains("the outline of the counterweight is in dispute", "no cut is told");
        assertThat(disputed.removal().orElseThrow().surely()).isNaN();
        assertThat(ReliefCut.isFor(disputed)).isFalse();
        assertThat(ReliefCut.of(ClearAnswerTest.build(with(BARE, longer)), disputed))
                .isEmpty();
        String agreed = BARE.replace("counterweight_radius: 37.6 mm", "counterweight_radius: 46 mm");
        Clearance cut = pair(Clear.of(ClearAnswerTest.build(with(agreed, longer))), "skirt_to_counterweight");
        assertThat(cut.mend()).contains("shorten the skirt by");
        assertThat(cut.removal().orElseThrow().leaves().orElseThrow()).isPositive();
        assertThat(ReliefCut.isFor(cut)).isTrue();
    }

    /** A skirt of 3 mm under the pin is not shortened by 5. */
    @Test
    void noMoreIsCutThanThereIs() {
        String shorter = BARE.replace("skirt_below_pin: 18.1 mm", "skirt_below_pin: 3 mm")
                .replace("counterweight_radius: 37.6 mm", "counterweight_radius: 60 mm");
        Clearance none = pair(Clear.of(ClearAnswerTest.build(shorter)), "skirt_to_counterweight");
        assertThat(none.state()).isEqualTo(State.TOUCHES);
        assertThat(none.mend()).contains("no cut mends it", "not there to be taken off");
        assertThat(ReliefCut.isFor(none)).isFalse();
    }

    /** Nothing is read of what stands behind a sleeve's end, so a cut there says so. */
    @Test
    void aCutIntoTheUnknownSaysSo() {
        String sleeve = BARE.replace(
                        "bore_offset: 0 mm ± 0.001 mm",
                        "bore_offset: 0 mm ± 0.001 mm, bore: 60 mm ± 0.02 mm, deck_height: 120 mm ± 0.05 mm, sleeve_length: 92 mm ± 0.05 mm")
                .replace(
                        "length: 84.5 mm ± 0.02 mm",
                        "length: 84.5 mm ± 0.02 mm, bolt_out: 25 mm ± 0.2 mm, bolt_up: 12 mm ± 0.2 mm, bolt_down: 16 mm ± 0.2 mm,"
                                + " bolt_head_width: 10 mm ± 0.2 mm");
        Clearance near = pair(Clear.of(ClearAnswerTest.build(sleeve)), "rod_bolts_to_sleeve");
        assertThat(ReliefCut.isFor(near)).as(near.why()).isTrue();
        assertThat(ReliefCut.isIntoTheUnknown(near)).isTrue();
    }

    private static List<Finding> disagreements(Answer answer) {
        return answer.findings().stream()
                .filter(f -> f.where().startsWith("outlines"))
                .toList();
    }

    // ---- the file

    @Test
    void takenOutAgainTheBuildIsAsItWas() {
        String traced = with(WHOLE, tipped(40), at(tipped(41), "12", "24"));
        assertThat(ClearAnswerTest.build(traced).outlines()).hasSize(1);
        String again = BuildFile.outline(traced, OutlinedPart.COUNTERWEIGHT, Optional.empty())
                .text()
                .orElseThrow();
        assertThat(again.strip()).isEqualTo(WHOLE.strip());
        assertThat(ClearAnswerTest.build(again)).isEqualTo(AS_READ);
    }

    @Test
    void anEditLeavesTheOtherOutlinesAndRemarksAlone() {
        String text = """
                longthrow: 1
                engine: {name: a}
                outlines:
                - part: dipper # mine
                  unit: 1 mm
                  points: [[-3, -10], [3, -10], [1, -40]]
                - part: pin_boss
                  unit: 1 mm
                  svg_path: M-9 0H9V9H-9Z
                bench: {}
                """;
        String changed = with(text, tipped(40), doubted(traced(OutlinedPart.PIN_BOSS, "-9,-9", "9,-9", "0,4"), "0.2"));
        assertThat(changed)
                .contains("- part: dipper # mine\n  unit: 1 mm\n  points: [[-3, -10], [3, -10], [1, -40]]\n")
                .contains("doubt: 0.2 mm")
                .contains("- part: counterweight\n  unit: 1 mm\n")
                .endsWith("bench: {}\n");
        assertThat(ClearAnswerTest.build(changed).outlines())
                .extracting(TracedOutline::part)
                .containsExactly(OutlinedPart.DIPPER, OutlinedPart.PIN_BOSS, OutlinedPart.COUNTERWEIGHT);
        assertThat(BuildFile.outline(text, OutlinedPart.DIPPER, Optional.empty())
                        .faults())
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("has remarks in it"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "unit: 1 mm, points: [[0, 0], [9, 0], [x, 9]] | 4 | 'x' is not a number",
                "unit: 1 mm, points: [[0, 0], [9, 9], [9, 0], [0, 9]] | 4 | points 1 to 2 and 3 to 4: the edge from 0, 0 to 9, 9 and the edge from 9, 0 to 0, 9 cross or touch near 4.5, 4.5, in units of the drawing",
                "unit: 0.25 mm, points: [[0, 0], [0, 0], [90, 90], [90, 0], [0, 70]] | 4 | points 2 to 3 and 4 to 5: the edge from 0, 0 to 90, 90",
                "unit: 1 mm, points: [[0, 0], [9, 0], [9, 9], [9, 4], [0, 4]] | 4 | point 3: the outline runs back over itself at 9, 9",
                "unit: 1 in, svg_path: 'M0 0 L1 1 H2 L0 1.5 L2 0.25 Z' | 4 | cross or touch near",
                "unit: 0.1 mm, svg_path: 'M0 0 L90 90 L90 0 L0 80 Z' | 4 | the edge from 0, 0 to 90, 90 and the edge from 90, 0 to 0, 80 cross or touch near 42.3529, 42.3529, in units of the drawing",
                "unit: 1 mm, datum_x: 5, points: [[0, 0], [9, 0], [9, 9]] | 4 | has no unit",
                "unit: 1 mm, doubt: 0.2, points: [[0, 0], [9, 0], [9, 9]] | 4 | has no unit",
                "unit: 1 mm, points: [[0, 0], [9, 0]] | 4 | at least 3",
                "unit: 1 mm, svg_path: 'M0 0H9V9' | 4 | close it with Z",
                "unit: 1 mm, svg_path: '' | 4 | empty",
                "points: [[0, 0], [9, 0], [9, 9]] | 4 | 'unit' is missing",
                "unit: 1, points: [[0, 0], [9, 0], [9, 9]] | 4 | unit",
                "unit: 1 mm | 4 | neither 'points' nor 'svg_path'",
                "unit: 1 mm, points: [[0, 0], [9, 0], [9, 9]], svg_path: M0 0 | 4 | both",
                "unit: 1 mm, points: [[0, 0], [900, 0], [9, 900]] | 4 | length of one of its pixels",
                "unit: 0.01 mm, points: [[0, 0], [9, 0], [9, 9]] | 4 | no such part is smaller",
                "unit: 1 mm, from: 3 mm, points: [[0, 0], [9, 0], [9, 9]] | 4 | give both",
                "unit: 1 mm, from: 3 mm, to: 2 mm, points: [[0, 0], [9, 0], [9, 9]] | 4 | lower one first",
                "unit: 1 mm, from: -3 mm, to: 2 mm, points: [[0, 0], [9, 0], [9, 9]] | 4 | give 0 or more",
            })
    void whatIsNoOutlineIsAFaultWithItsPlace(String item, int line, String says) {
        ReadBuild read =
                BuildFile.read("longthrow: 1\nengine: {name: a}\noutlines:\n  - {part: counterweight, " + item + "}\n");
        assertThat(read.faults()).isNotEmpty();
        assertThat(read.faults().get(0).line()).isEqualTo(line);
        assertThat(read.faults().get(0).message()).contains(says);
    }

    @Test
    void aFaultyPointIsNamedByItsOwnLine() {
        ReadBuild read = BuildFile.read("""
                longthrow: 1
                engine: {name: a}
                outlines:
                  - part: dipper
                    unit: 1 mm
                    points:
                      - 0, 0
                      - 9, 0
                      - 9; zwei
                """);
        assertThat(read.faults()).singleElement().satisfies(f -> {
            assertThat(f.line()).isEqualTo(9);
            assertThat(f.path()).isEqualTo("outlines[1].points[3]");
        });
    }

    @Test
    void whatIsTracedFromElsewhereSaysWhereItsDatumIs() {
        String text =
                "longthrow: 1\nengine: {name: a}\noutlines:\n  - {part: case, unit: 1 mm, points: [[9, 9], [99, 9], [99, 99], [9, 99]]";
        assertThat(BuildFile.read(text + "}\n").faults())
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("does not go around the crankshaft axis"));
        assertThat(BuildFile.read(text + ", datum_x: 50 mm, datum_y: 40 mm}\n").faults())
                .isEmpty();
    }

    // ---- frames

    private static Outline outline(TracedOutline traced) {
        return ((OutlineText.Taken) Tracing.read(traced)).outline();
    }

    /** A path counts downwards and a point list upwards; mirrored, left is right; by hand. */
    @Test
    void theFrameIsThatOfThePart() {
        TracedOutline path = new TracedOutline(
                OutlinedPart.DIPPER,
                mm("0.5"),
                TracedOutline.Form.SVG_PATH,
                List.of("M 20 40 H 30", "V 60 H 20 Z"),
                mm("10"),
                mm("10"),
                false,
                null,
                null,
                null,
                "");
        Outline o = outline(path); // x 10 to 15 mm, y down 20 to 30 mm, less (10, 10)
        assertThat(o.reach(Math.PI / 2)).isCloseTo(5e-3, within(1e-12));
        assertThat(o.reach(-Math.PI / 2)).isCloseTo(0, within(1e-12));
        assertThat(o.reach(Math.PI)).isCloseTo(20e-3, within(1e-12));
        assertThat(o.reach(0)).isCloseTo(-10e-3, within(1e-12));
        TracedOutline mirrored = new TracedOutline(
                path.part(),
                path.unit(),
                path.form(),
                path.lines(),
                path.datumX(),
                path.datumY(),
                true,
                null,
                null,
                null,
                "");
        assertThat(outline(mirrored).reach(-Math.PI / 2)).isCloseTo(5e-3, within(1e-12));
        assertThat(outline(mirrored).area()).isCloseTo(o.area(), within(1e-15));
    }

    @Test
    void holesOfAPartAreFilledAndThoseOfACaseStandInIt() {
        String ring = "M-30 -30H30V30H-30Z M-5 -25H5V-20H-5Z";
        TracedOutline rod = new TracedOutline(
                OutlinedPart.ROD,
                mm("1"),
                TracedOutline.Form.SVG_PATH,
                List.of(ring),
                null,
                null,
                false,
                null,
                null,
                null,
                "");
        assertThat(outline(rod).area()).isCloseTo(3600e-6, within(1e-12));
        TracedOutline walls = new TracedOutline(
                OutlinedPart.CASE,
                mm("1"),
                TracedOutline.Form.SVG_PATH,
                List.of(ring),
                null,
                null,
                false,
                null,
                null,
                null,
                "");
        assertThat(outline(walls).area()).isCloseTo(3550e-6, within(1e-12));
        Outline around = outline(walls).around(0.01);
        assertThat(around.area()).isCloseTo(80e-3 * 80e-3 - 3550e-6, within(1e-12));
        assertThat(around.depthOf(new Point(0, 0))).isNegative();
        assertThat(around.depthOf(new Point(0, 22e-3))).isPositive(); // y down in a path: the island stands above
    }

    @Test
    void anOutlineOfNoPlaceIsRefusedWithWords() {
        assertThatThrownBy(() -> at(traced(OutlinedPart.CASE, "-9,-9", "9,-9", "0,9"), "1", "2"))
                .hasMessageContaining("trace it where it is narrowest");
        assertThatThrownBy(() -> BuildFile.outline(WHOLE, OutlinedPart.ROD, Optional.of(tipped(40))))
                .hasMessageContaining("not of the rod");
    }
}
