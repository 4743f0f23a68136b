package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** What may be written, and what it means. */
class BuildFileReadTest {
    static final String HEAD = "longthrow: 1\nengine: {name: a}\n";

    private static Build build(String rest) {
        ReadBuild read = BuildFile.read(HEAD + rest);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    private static Given given(String value) {
        return build("cylinder:\n  bore: " + value + "\n").of(Term.BORE).get(0);
    }

    @Test
    void aBareQuantityIsOneReadingWithTheUsualInstrument() {
        Given.Taken taken = (Given.Taken) given("66.00 mm");
        assertThat(taken.readings()).extracting(Object::toString).containsExactly("66.00 mm");
        assertThat(taken.instrument()).isNull();
    }

    @Test
    void everyValueStaysTheTextThatWasTyped() {
        Build build = build("gasket: {thickness: 1.10 mm}\nhead: {chamber_area: 12e2 mm2}\n");
        assertThat(build.of(Term.GASKET_THICKNESS).get(0).figure().orElseThrow().written())
                .isEqualTo("1.10 mm");
        assertThat(build.of(Term.CHAMBER_AREA).get(0).figure().orElseThrow().written())
                .isEqualTo("12e2 mm2");
    }

    @Test
    void aQuantityWithItsDoubtIsTyped() {
        Given.Typed typed = (Given.Typed) given("66.00 mm ± 0.01 mm");
        assertThat(typed.value().si()).isEqualTo(0.066);
        assertThat(typed.plusMinus().si()).isEqualTo(1e-5);
        assertThat(given("66.00 +/- 0.01 mm")).isEqualTo(typed);
    }

    @Test
    void severalBareQuantitiesAreReadingsOfOneInstrument() {
        for (String way : List.of("[66.00 mm, 66.01 mm]", "66.00 mm, 66.01 mm", "{readings: [66.00 mm, 66.01 mm]}")) {
            Given.Taken taken = (Given.Taken) given(way);
            assertThat(taken.readings()).as(way).extracting(Object::toString).containsExactly("66.00 mm", "66.01 mm");
        }
    }

    @Test
    void severalReadingsWithoutBracketsAreSaidBack() {
        assertThat(notes("66.00 mm, 66.01 mm")).containsExactly("taken as 2 readings of one instrument");
        assertThat(notes("[66.00 mm, 66.01 mm]")).isEmpty();
    }

    private static List<String> notes(String bore) {
        return BuildFile.read(HEAD + "cylinder:\n  bore: " + bore + "\n").notes().stream()
                .map(Note::text)
                .toList();
    }

    @Test
    void aMissingUnitIsAskedForWithTheDoubtKept() {
        assertThat(mend("86.40 ± 0.03")).isEqualTo("write 86.40 ± 0.03 mm or 86.40 ± 0.03 in");
        assertThat(mend("86.40 ± 1 %")).isEqualTo("write 86.40 mm or 86.40 in, and behind it ± 1 %");
        assertThat(mend("86.40")).isEqualTo("write 86.40 mm or 86.40 in");
    }

    private static String mend(String bore) {
        return BuildFile.read(HEAD + "cylinder:\n  bore: " + bore + "\n")
                .faults()
                .get(0)
                .mend();
    }

    @Test
    void asManyEntriesOfOneTermAsAreAllowedAreRead() {
        String entries = "66.00 mm ± 0.01 mm, ".repeat(GivenReader.MOST_ENTRIES);
        assertThat(BuildFile.read(HEAD + "cylinder:\n  bore: [" + entries + "]\n")
                        .build())
                .isPresent();
    }

    @Test
    void aMissingUnitIsAskedForBehindADecimalPoint() {
        assertThat(BuildFile.read(HEAD + "cylinder:\n  bore: 66,40\n")
                        .faults()
                        .get(0)
                        .mend())
                .isEqualTo("write 66.40 mm or 66.40 in");
        assertThat(BuildFile.read(HEAD + "cylinder:\n  bore: [66,40 mm, 66,42 mm]\n")
                        .faults())
                .extracting(Fault::mend)
                .containsExactly("write 66.40 mm", "write 66.42 mm");
    }

    @Test
    void readingsCarryInstrumentTemperaturesAndOrigin() {
        Given.Taken taken =
                (Given.Taken) given("{readings: 66.00 mm, with: bore_gauge, part_at: 31 °C, instrument_at: 72 °F,"
                        + " who: me, when: 2026-05-04, photo: bore 3.jpg, note: rocked twice}");
        assertThat(taken.instrument()).isEqualTo("bore_gauge");
        assertThat(taken.partTemperature()).hasToString("31 °C");
        assertThat(taken.instrumentTemperature()).hasToString("72 °F");
        assertThat(taken.origin()).isEqualTo(new Given.Origin("me", "2026-05-04", "bore 3.jpg"));
        assertThat(taken.note()).isEqualTo("rocked twice");
    }

    @Test
    void aSheetGivesAToleranceOrNone() {
        Given.Specified with = (Given.Specified) given("{specified: 66.00 mm, tolerance: 0.02 mm, by: the maker}");
        assertThat(with.tolerance()).hasToString("0.02 mm");
        assertThat(with.catalogue()).isFalse();
        Given.Specified without = (Given.Specified) given("{catalogue: 66.00 mm, by: a list}");
        assertThat(without.tolerance()).isNull();
        assertThat(without.catalogue()).isTrue();
        assertThat(given("{specified: 66.00 mm ± 0.02 mm, by: the maker}")).isEqualTo(with);
    }

    @Test
    void aGuessHasAReasonAndAnUnknownMayHaveANote() {
        assertThat(given("{assumed: 66 mm ± 1 mm, because: it looks like it}")).isInstanceOf(Given.Assumed.class);
        assertThat(given("unknown")).isEqualTo(new Given.NotKnown(""));
        assertThat(given("{unknown: gauge lent out}")).isEqualTo(new Given.NotKnown("gauge lent out"));
    }

    @Test
    void oneTermMayBeComeByInSeveralWays() {
        Build build = build("crankshaft:\n  stroke:\n    - 55.38 mm\n    - {specified: 55.40 mm, by: the maker}\n");
        assertThat(build.of(Term.STROKE)).hasSize(2);
        assertThat(build.of(Term.STROKE).get(0)).isInstanceOf(Given.Taken.class);
        assertThat(build.of(Term.STROKE).get(1)).isInstanceOf(Given.Specified.class);
    }

    @Test
    void anInstrumentOfYourOwnOverridesItsKind() {
        Build build = build("""
                instruments:
                  wheel: {kind: degree_wheel, resolution: 0.25°, error: 0°}
                camshaft:
                  intake_opens: {readings: [9.0°, 8.0°], with: wheel}
                """);
        Instrument wheel = Objects.requireNonNull(build.instruments().get("wheel"));
        // 0.25° = 0.25 pi/180 rad
        assertThat(wheel.resolution()).isEqualTo(Math.PI / 720);
        assertThat(wheel.statedError()).isZero();
    }

    @Test
    void whatAnInstrumentDoesNotSayIsSaidBack() {
        ReadBuild read = BuildFile.read(HEAD + "instruments:\n  c: {kind: caliper}\n");
        assertThat(read.build()).isPresent();
        assertThat(read.notes()).extracting(Note::message).anyMatch(n -> n.contains("error not said"));
    }

    @Test
    void theRestOfTheFileIsRead() {
        Build build =
                BuildFile.read(Repository.text("examples/demo.yaml")).build().orElseThrow();
        assertThat(build.invented()).isTrue();
        assertThat(build.units()).isEqualTo(UnitSystem.METRIC_FIRST);
        assertThat(build.notes()).hasSize(2);
        assertThat(build.choice(Choice.ROD_METAL)).contains("billet_aluminium");
        assertThat(build.aims()).containsOnlyKeys(Term.SQUISH, Term.COMPRESSION_RATIO);
        assertThat(build.rulesChosen()).containsEntry("squish_least", "general");
        assertThat(build.ownRules()).hasSize(2);
        assertThat(build.damage())
                .extracting(Damage::part, Damage::kind)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(Part.CYLINDER, Damage.Kind.SCORED));
        assertThat(build.lifts().get(0).rows()).hasSize(16);
        assertThat(build.repeatability(ReadingKind.DECK)).isEqualTo(1e-5);
        assertThat(build.minutes(ReadingKind.DECK)).isEqualTo(3);
    }

    @Test
    void shimsAreExactLengths() {
        assertThat(build("connecting_rod: {shims_each_side: [0.05 mm, 0.001 in]}\n")
                        .shims())
                .extracting(Object::toString)
                .containsExactly("0.05 mm", "0.0254 mm");
    }

    @Test
    void aimsMayBeNestedOrPaths() {
        assertThat(build("aims: {engine: {squish: 1 mm}, crankshaft.stroke: 55 mm}\n")
                        .aims())
                .containsOnlyKeys(Term.SQUISH, Term.STROKE);
    }

    @Test
    void aMarkOfUtf8WindowsLineEndsAndAMissingLastLineEndDoNoHarm() {
        String text = HEAD + "cylinder:\n  bore: 66 mm ± 0.1 mm # ok\n";
        ReadBuild plain = BuildFile.read(text);
        String windows = "\uFEFF" + text.replace("\n", "\r\n").stripTrailing();
        ReadBuild other = BuildFile.read(windows.getBytes(StandardCharsets.UTF_8));
        assertThat(other.faults()).isEmpty();
        assertThat(other.build()).isEqualTo(plain.build());
    }

    @Test
    void anUnusualSpellingIsSaidBack() {
        assertThat(BuildFile.read(HEAD + "head: {chamber_volume: '16,2 cc'}\n").notes())
                .extracting(Note::message)
                .containsExactly("line 3, head.chamber_volume: read 16,2 cc as 16.2 cc");
    }

    @Test
    void aChoiceNotYetMadeIsNoChoice() {
        assertThat(build("head: {metal: unknown}\n").choices()).isEmpty();
    }

    @Test
    void aShareOfMoreThanTheWholeIsAskedAbout() {
        ReadBuild read = BuildFile.read("longthrow: 1\nengine:\n  name: x\n  leak_down: 7\n");
        assertThat(read.build()).isEmpty();
        assertThat(read.faults())
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("7 % is 0.07"));
    }
}
