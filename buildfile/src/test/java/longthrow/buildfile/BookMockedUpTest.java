package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Verdict;
import longthrow.core.book.Answers;
import longthrow.core.book.Book;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.clear.PairsOf;
import longthrow.core.engine.MockUp;
import longthrow.core.measure.Measure;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** What was mocked up, among the assembly targets of the Book of an invented engine. */
class BookMockedUpTest {
    private static final String FAR =
            "  - {pair: rod_bolts_to_case, way: wire, gap: 4.0 mm, both_ways: yes, with_stroke: 56.5 mm}\n";

    private static Build build(String mockedUp) throws IOException {
        String text = Files.readString(Path.of("../examples/scenarios/s1-longer-throw.yaml"))
                + (mockedUp.isEmpty() ? "" : "\nmocked_up:\n" + mockedUp);
        return BuildFile.read(text).build().orElseThrow();
    }

    private static Book book(Build build, boolean asksClear) {
        Answers answers = Answers.of(Measure.of(build, List.of()), Optional.empty());
        return Book.of(
                build,
                asksClear ? answers.with(Optional.of(Clear.of(build)), Optional.empty(), Optional.empty()) : answers,
                Catalogue.EMPTY,
                List.of());
    }

    private static Book.Target target(Book book, MockUp gap) {
        return book.targets().stream()
                .filter(t -> t.label().equals(gap.label()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsMockedUpIsNoLongerSaidToBeNotRead() throws IOException {
        assertThat(target(book(build(""), true), MockUp.ROD_TO_ANYTHING).now()).isEmpty();
        Book.Target one = target(book(build(FAR), true), MockUp.ROD_TO_ANYTHING);
        assertThat(one.now())
                .startsWith("rod bolts to case 4.0")
                .contains("as mocked up")
                .containsPattern("; 1 of \\d+ pairs mocked up$");
        assertThat(one.limits())
                .as("of the other pairs some are not known")
                .allMatch(l -> l.state() == Verdict.State.UNKNOWN);
        Book.Target two = target(
                book(
                        build(
                                FAR
                                        + "  - {pair: big_end_to_case, way: wire, gap: 0.4 mm, both_ways: yes, with_stroke: 56.5 mm}\n"),
                        true),
                MockUp.ROD_TO_ANYTHING);
        assertThat(two.now()).startsWith("rod big end to case 0.4").containsPattern("; 2 of \\d+ pairs");
        assertThat(two.other()).contains("rod big end to case 0.4", "rod bolts to case 4.0");
        assertThat(two.limits()).as("one does not keep it").anyMatch(l -> l.state() == Verdict.State.FAILS);
    }

    /** A wide gap that was mocked up hides none that is drawn smaller: bolts of the example come near its camshaft, and far from its case. */
    @Test
    void theSmallestGapIsNamedWhereAnotherWasMockedUp() {
        String far = ClearAnswerTest.whole()
                + "mocked_up:\n  - {pair: rod_bolts_to_case, way: wire, gap: 29.0 mm, both_ways: yes, with_stroke: 55.40 mm}\n";
        Build build = BuildFile.read(far).build().orElseThrow();
        String now = target(book(build, true), MockUp.ROD_TO_ANYTHING).now();
        assertThat(now)
                .startsWith("rod big end to intake lobe 2.")
                .contains(" as drawn; mocked up: rod bolts to case ");
    }

    @Test
    void aReadingThatTellsNoMoreIsSaidToAndOneThatNobodyHeldAgainstTheEngineStandsAsWritten() throws IOException {
        Book.Target past = target(
                book(build(FAR.replace("with_stroke: 56.5 mm", "with_stroke: 50.0 mm")), true), MockUp.ROD_TO_ANYTHING);
        assertThat(past.now()).contains("mocked up 4.0 mm, which tells no more", "; 0 of ");
        assertThat(past.limits()).noneMatch(l -> l.state() == Verdict.State.MEETS);
        assertThat(target(book(build(FAR), false), MockUp.ROD_TO_ANYTHING).now())
                .contains("rod bolts to case 4.0 mm, as mocked up");
    }

    /** The pairs by which targets are told are those that are held against the same limits, of any layout. */
    @Test
    void thePairsOfAGapAreThoseThatAreHeldAgainstIt() {
        String overhead = ClearAnswerTest.whole();
        for (String valves : List.of("overhead", "side")) {
            Answer clear = Clear.of(BuildFile.read(overhead.replace("valves: overhead", "valves: " + valves))
                    .build()
                    .orElseThrow());
            for (MockUp gap : MockUp.values()) {
                Set<MovingPair> held = EnumSet.noneOf(MovingPair.class);
                for (Clearance pair : clear.clearances()) {
                    boolean isHeld = gap.alternatives().stream()
                            .anyMatch(a ->
                                    pair.limits().stream().anyMatch(l -> l.key().equals(gap.key(a))));
                    if (isHeld) {
                        held.add(MovingPair.at(pair.key()).orElseThrow());
                    }
                }
                assertThat(PairsOf.gap(gap)).as(gap.label()).containsAll(held);
            }
        }
        assertThat(PairsOf.figure(Term.SQUISH)).contains(MovingPair.PISTON_TO_HEAD);
        assertThat(PairsOf.figure(Term.BORE)).isEmpty();
    }
}
