package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Donor;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Readings and what they are worth, by hand from JCGM 100:2008 and ISO 1. */
class ReadingsTest {

    private static Measured figure(Build build, Term term) {
        return Measure.of(build, List.of()).value(term).orElseThrow().figure();
    }

    /** 65 mm of aluminium at 30 °C with a steel instrument as warm: (1 + 11.5e-6 x 10) / (1 + 22.5e-6 x 10) brings it down by 7.15 um. */
    @Test
    void aWarmCylinderIsBroughtToTwentyDegrees() {
        Build build = Builds.engine("warm")
                .choose(Choice.CYLINDER_METAL, "aluminium")
                .readingsAt(Term.BORE, "bore_gauge", "30 °C", null, "65.000 mm")
                .build();
        assertThat(figure(build, Term.BORE).value()).isCloseTo(0.065 * (1 - 110e-6), within(0.03e-6));
    }

    /** The same with the instrument left at 20 °C: the whole 225 ppm of the aluminium, 14.6 um. */
    @Test
    void aColdInstrumentOnAWarmCylinderReadsTheWholeGrowth() {
        Build build = Builds.engine("warm")
                .choose(Choice.CYLINDER_METAL, "aluminium")
                .readingsAt(Term.BORE, "bore_gauge", "30 °C", "20 °C", "65.000 mm")
                .build();
        assertThat(figure(build, Term.BORE).value()).isCloseTo(0.065 * (1 - 225e-6), within(0.01e-6));
    }

    @Test
    void aTemperatureWithoutAMetalIsSaidNotGuessed() {
        Build build = Builds.engine("warm")
                .readingsAt(Term.BORE, "bore_gauge", "30 °C", null, "65.000 mm")
                .build();
        Answer answer = Measure.of(build, List.of());
        assertThat(answer.findings())
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING && f.message().contains("not brought to 20"));
    }

    /** An error of one micrometer cancels in the difference of two things read with it: only scatter and steps are left. */
    @Test
    void oneMicrometerCancelsInAClearance() {
        Build same = Builds.engine("same")
                .instrument("mic", InstrumentKind.MICROMETER, 0.001e-3, 0.02e-3)
                .readings(Term.BORE, "mic", "65.000 mm")
                .readings(Term.PISTON_DIAMETER, "mic", "64.950 mm")
                .build();
        Build two = Builds.engine("two")
                .instrument("mic", InstrumentKind.MICROMETER, 0.001e-3, 0.02e-3)
                .instrument("other", InstrumentKind.MICROMETER, 0.001e-3, 0.02e-3)
                .readings(Term.BORE, "mic", "65.000 mm")
                .readings(Term.PISTON_DIAMETER, "other", "64.950 mm")
                .build();
        double scatter = Math.hypot(0.006e-3, 0.002e-3);
        double steps = Math.sqrt(2) * 0.0005e-3 / Math.sqrt(3);
        assertThat(figure(same, Term.PISTON_TO_WALL).standardUncertainty())
                .isCloseTo(Math.hypot(scatter, steps), within(1e-9));
        double tools = Math.sqrt(2) * 0.02e-3 / 1.96;
        assertThat(figure(two, Term.PISTON_TO_WALL).standardUncertainty())
                .isCloseTo(Math.sqrt(scatter * scatter + steps * steps + tools * tools), within(1e-9));
    }

    @Test
    void aSheetWithoutToleranceLeavesTheFigureUnknown() {
        Answer answer = Measure.of(
                Builds.engine("sheet").specified(Term.STROKE, "54 mm", null).build(), List.of());
        assertThat(answer.value(Term.STROKE)).isEmpty();
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("no tolerance"));
        assertThat(answer.unknowns()).anyMatch(u -> u.term() == Term.STROKE);
    }

    @Test
    void anEmptyBuildKnowsNothingAndSaysWhatToRead() {
        Answer answer = Measure.of(Build.empty("nothing"), List.of());
        assertThat(answer.values()).isEmpty();
        assertThat(answer.unknowns()).isNotEmpty();
        assertThat(answer.unknowns()).allMatch(u -> !u.missing().isEmpty());
    }

    /** One figure missing from the stack is found from the others: 139.62 - 28.25 - 24.90 - 0.07 = 86.40 mm. */
    @Test
    void theStackGivesTheOneTermThatWasNotRead() {
        Build build = Builds.engine("rod missing")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.COMPRESSION_HEIGHT, "24.90 mm ± 0.02 mm")
                .typed(Term.DECK_CLEARANCE, "0.07 mm ± 0.02 mm")
                .build();
        assertThat(figure(build, Term.ROD_LENGTH).value()).isCloseTo(86.40e-3, within(1e-9));
    }

    /** Pin top for pin centre, against a rod, a crank, a deck and a piston read directly. */
    @Test
    void aPinTopTakenForTheCentreIsNamed() {
        Build build = Builds.engine("slip")
                .readings(Term.DECK_HEIGHT, "height_gauge", "139.62 mm")
                .readings(Term.STROKE, "depth_gauge", "56.50 mm")
                .readings(Term.ROD_LENGTH, "caliper", "86.40 mm")
                .readings(Term.PIN_DIAMETER, "micrometer", "17.000 mm")
                .readings(Term.COMPRESSION_HEIGHT, "depth_gauge", "16.40 mm")
                .readings(Term.PIN_TOP_TO_CROWN, "depth_gauge", "16.41 mm")
                .readings(Term.DECK_CLEARANCE, "depth_gauge", "0.08 mm")
                .readings(Term.GASKET_THICKNESS, "micrometer", "1.300 mm")
                .build();
        Answer answer = Measure.of(build, List.of());
        Finding first = answer.findings().get(0);
        assertThat(first.kind()).isEqualTo(Finding.Kind.SUSPECT);
        assertThat(first.where()).isEqualTo(Term.COMPRESSION_HEIGHT.path());
        assertThat(answer.value(Term.COMPRESSION_HEIGHT).orElseThrow().contradicted())
                .isTrue();
        assertThat(answer.next().get(0).read()).isEqualTo(Term.COMPRESSION_HEIGHT);
    }

    @Test
    void whatNoEngineCanHaveIsStopped() {
        Build build = Builds.engine("no room")
                .typed(Term.BORE, "66 mm ± 0.01 mm")
                .typed(Term.STROKE, "56.5 mm ± 0.02 mm")
                .typed(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc")
                .typed(Term.CROWN_VOLUME, "-24 cc ± 0.2 cc")
                .typed(Term.GASKET_BORE, "68.5 mm ± 0.1 mm")
                .typed(Term.GASKET_THICKNESS, "1.3 mm ± 0.03 mm")
                .typed(Term.DECK_CLEARANCE, "0.1 mm ± 0.02 mm")
                .build();
        Answer answer = Measure.of(build, List.of());
        assertThat(answer.stops()).anyMatch(s -> s.refused() && s.why().contains("no room above the piston"));
        assertThat(answer.value(Term.COMPRESSION_RATIO).orElseThrow().contradicted())
                .isTrue();
        assertThat(answer.verdictsOn(Term.COMPRESSION_RATIO)).noneMatch(v -> v.state() == Verdict.State.MEETS);
    }

    /** A hole of 60 mm over a bore of 66 mm. */
    @Test
    void aGasketThatStandsInTheBoreIsStopped() {
        Answer answer = Measure.of(
                Builds.engine("small gasket")
                        .typed(Term.BORE, "66 mm ± 0.01 mm")
                        .typed(Term.GASKET_BORE, "60 mm ± 0.1 mm")
                        .build(),
                List.of());
        assertThat(answer.stops())
                .singleElement()
                .matches(s -> s.refused() && s.why().contains("stand in the bore"));
        assertThat(answer.verdictsOn(Term.GASKET_OVER_BORE)).allMatch(v -> v.state() == Verdict.State.FAILS);
    }

    @Test
    void theBestReadingForEachFigureComesBeforeTheSecondBestForOne() {
        Answer answer = Measure.of(
                Builds.engine("two near")
                        .choose(Choice.ROD_METAL, "billet_aluminium")
                        .typed(Term.BIG_END_WIDTH, "23.90 mm ± 0.05 mm")
                        .typed(Term.CRANKPIN_WIDTH, "24.20 mm ± 0.05 mm")
                        .typed(Term.SMALL_END_BORE, "17.018 mm ± 0.01 mm")
                        .typed(Term.PIN_DIAMETER, "17.000 mm ± 0.01 mm")
                        .build(),
                List.of());
        assertThat(answer.next().subList(0, 2))
                .extracting(n -> n.target())
                .containsExactlyInAnyOrder(Term.ROD_SIDE_CLEARANCE, Term.PIN_CLEARANCE);
    }

    @Test
    void aLeakDownIsAnsweredWithWhatToReadNext() {
        Build build = Builds.engine("leak")
                .readings(Term.LEAK_DOWN, "leak_down_tester", "7 %")
                .build();
        assertThat(Measure.of(build, List.of()).value(Term.LEAK_DOWN)).isPresent();
    }

    /** Five hundred readings of one bore are answered as one is. */
    @Test
    void manyReadingsOfOneTermAreNoBurden() {
        String[] readings = new String[500];
        for (int k = 0; k < readings.length; k++) {
            readings[k] = String.format(java.util.Locale.ROOT, "66.%03d mm", k % 13);
        }
        Build build = Builds.engine("many")
                .readings(Term.BORE, "bore_gauge", readings)
                .build();
        long start = System.nanoTime();
        assertThat(Measure.of(build, List.of()).value(Term.BORE)).isPresent();
        assertThat((System.nanoTime() - start) * 1e-9).as("seconds").isLessThan(5);
    }

    @Test
    void readingsThatNoEngineComesNearAreSaidNotThrown() {
        Build build = Builds.engine("wild")
                .instrument("gauge", InstrumentKind.BORE_GAUGE, 0.002e-3, 0.05)
                .readings(Term.BORE, "gauge", "30 mm", "110 mm")
                .typed(Term.STROKE, "56.5 mm ± 0.02 mm")
                .build();
        assertThat(Measure.of(build, List.of()).findings()).isNotEmpty();
    }

    @Test
    void aRadiusLeftOutIsSuspectedThoughNothingElseChecksIt() {
        Build build = Builds.engine("one crown reading")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.ROD_LENGTH, "86.40 mm ± 0.03 mm")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .typed(Term.COMPRESSION_HEIGHT, "16.40 mm ± 0.02 mm")
                .build();
        assertThat(Measure.of(build, List.of()).findings().get(0).kind()).isEqualTo(Finding.Kind.SUSPECT);
    }

    private static Donor version(String name, String stroke, @Nullable String spread) {
        return new Donor(
                name,
                "",
                Map.of(
                        Term.STROKE,
                        new Donor.Figure(
                                Builds.quantity(Term.STROKE, stroke),
                                spread == null ? null : Builds.quantity(Term.STROKE, spread))));
    }

    @Test
    void aVersionIsToldByAFigureWithASpreadAndNotWithoutOne() {
        Build build =
                Builds.engine("which").typed(Term.STROKE, "54.02 mm ± 0.03 mm").build();
        List<Donor> known = List.of(version("short", "50 mm", "0.1 mm"), version("long", "54 mm", "0.1 mm"));
        assertThat(Measure.of(build, known).findings())
                .anyMatch(f -> f.message().contains("version long"));
        List<Donor> vague = List.of(version("short", "50 mm", null), version("long", "54 mm", "0.1 mm"));
        assertThat(Measure.of(build, vague).findings())
                .anyMatch(f -> f.where().equals("donor") && f.message().contains("spread is known"))
                .noneMatch(f -> f.message().contains("version long"));
    }

    @Test
    void aPinThatStandsForItsBoreIsListed() {
        Build build = Builds.engine("pin")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .readings(Term.PIN_BOTTOM_TO_CROWN, "depth_gauge", "33.40 mm")
                .build();
        assertThat(Measure.of(build, List.of()).defaults())
                .anyMatch(d -> d.where().equals(Term.PISTON_PIN_BORE.path()));
    }
}
