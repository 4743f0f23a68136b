package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.DynoRuns;
import longthrow.core.book.Answers;
import longthrow.core.book.Book;
import longthrow.core.book.ProvedChapter;
import longthrow.core.book.SharedRuns;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logs;
import longthrow.core.measure.Measure;
import org.junit.jupiter.api.Test;

/** What was proved on the dynamometer, in the Book of an invented engine. Figures of the header are those of its scenario ({@link DynoAnswerTest}). */
class BookProvedTest {
    private static final Path FOLDER = Repository.at("examples/dyno");
    private static final String HEADER = Repository.text("examples/dyno/header.yaml");
    private static final String MUFFLER = Repository.text("examples/dyno/muffler.yaml");

    private static DynoSheet sheet(String text) {
        ReadDynoSheet read = DynoSheetFile.read(text);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.sheet().orElseThrow();
    }

    private static Logs logs(DynoSheet sheet) {
        return new LogsOfASheet(sheet, name -> bytes(name).map(LogSource::of), 1);
    }

    private static Optional<byte[]> bytes(String name) {
        try {
            Path path = FOLDER.resolve(name.replaceFirst("zoltan-", ""));
            return Files.exists(path) ? Optional.of(Files.readAllBytes(path)) : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Answers.Ran ran(String text) {
        DynoSheet sheet = sheet(text);
        return new Answers.Ran(Dyno.of(sheet, logs(sheet)), false);
    }

    private static Answers.Ran shared(String text) {
        DynoSheet own = sheet(text);
        SharedRuns shared = SharedRuns.of(own);
        return new Answers.Ran(Dyno.of(shared.sheet(), shared.logs(logs(own))), true);
    }

    private static Book book(Answers.Ran... ran) {
        Build build = BuildFile.read(Repository.text("examples/scenarios/s1-rod-wanted.yaml"))
                .build()
                .orElseThrow();
        return Book.of(
                build,
                Answers.of(Measure.of(build, List.of()), Optional.empty()).withRuns(Optional.of(List.of(ran))),
                Catalogue.EMPTY,
                List.of());
    }

    private static ProvedChapter chapter(Answers.Ran ran) {
        List<ProvedChapter> chapters = book(ran).proved().orElseThrow();
        assertThat(chapters).hasSize(1);
        return chapters.get(0);
    }

    @Test
    void theHeaderIsARealGainWithThePlusMinusThatDecides() {
        ProvedChapter chapter = chapter(ran(HEADER));
        assertThat(chapter.title()).isEqualTo("Kolvane 249, did the header help");
        assertThat(chapter.invented()).isTrue();
        assertThat(chapter.standard()).isEqualTo("corrected to ISO 1585 (spark ignition)");
        assertThat(chapter.bench()).contains("own drum");
        assertThat(chapter.standing())
                .contains("names no build", "the sheet does not say", "lifts no stop and approves no speed");
        assertThat(chapter.changes()).hasSize(1);
        ProvedChapter.Change header = chapter.changes().get(0);
        assertThat(header.gain()).as("whatever shape the drift had").isEqualTo("+2.0 ± 0.6 %");
        assertThat(header.straight()).isEqualTo("+2.00 ± 0.45 %");
        assertThat(header.verdict()).isEqualTo("a real gain");
        assertThat(header.isShown()).isTrue();
        assertThat(header.said()).contains("'header' gains, peak +2.0 ± 0.6 % by ISO 1585");
        assertThat(String.join(" ", header.grounds()))
                .contains("The second decides", "No session checks another", "This is the peak alone")
                .doesNotContain(header.said());
        assertThat(chapter.said()).as("what changes say is not said twice").isEmpty();
        assertThat(chapter.counting()).isEqualTo("12 of 15 runs count");
        assertThat(chapter.aside())
                .containsExactly(
                        new ProvedChapter.Aside("first pull of its session: warm-up", "A1 run 1, B run 1, A2 run 1"));
        assertThat(chapter.sessions())
                .extracting(ProvedChapter.Session::name, ProvedChapter.Session::setup, ProvedChapter.Session::runs)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("A1", "stock", "4 of 5"),
                        org.assertj.core.groups.Tuple.tuple("B", "header", "4 of 5"),
                        org.assertj.core.groups.Tuple.tuple("A2", "stock", "4 of 5"));
        assertThat(chapter.sessions().get(2).air()).startsWith("times 1.01").contains("±");
        assertThat(chapter.highest()).extracting(ProvedChapter.Highest::setup).containsExactly("stock", "header");
        Book.Figure power = chapter.highest().get(0).figures().get(0);
        assertThat(power.label()).isEqualTo("highest power of 8 runs, the least and the most");
        // 9.42 kW x 1.0132 in A2 and 9.73 kW x 0.9925 in A1
        assertThat(power.words())
                .startsWith("from 9.544 kW")
                .contains("to 9.657 kW")
                .contains("doubt unknown");
        assertThat(chapter.cautions()).anyMatch(c -> c.startsWith("Nobody in the plane of flywheel"));
    }

    @Test
    void theMufflerHasItsMeanItsSpeedsAndWhatSlipped() {
        ProvedChapter chapter = chapter(ran(MUFFLER));
        ProvedChapter.Change muffler = chapter.changes().get(0);
        assertThat(muffler.gain()).isEqualTo("+2.58 ± 0.43 %");
        assertThat(muffler.of()).startsWith("the area under the curve");
        assertThat(chapter.sessions().get(1).remark()).isEqualTo("2026-05-02, by R. Example, on own drum");
        assertThat(chapter.aside())
                .extracting(ProvedChapter.Aside::why)
                .satisfiesExactly(
                        why -> assertThat(why).isEqualTo("first pull of its session: warm-up"),
                        why -> assertThat(why)
                                .startsWith("the clutch slipped: engine and drum did not keep their ratio"));
        List<Book.Figure> stock = chapter.highest().get(0).figures();
        assertThat(stock)
                .extracting(Book.Figure::label)
                .containsExactly(
                        "highest torque of 6 runs, the least and the most",
                        "highest torque of their mean, ± by their scatter",
                        "highest power of 6 runs, the least and the most",
                        "highest power of their mean, ± by their scatter");
        assertThat(stock.get(0).words()).contains("13.12 ± 0.31 N·m", "13.22 ± 0.31 N·m", " at 3100 rpm");
        assertThat(stock.get(3).words()).contains("it may be higher beyond");
    }

    /** What is noticed of a sheet says that it is of the sheet: an engine has a bench, too. */
    @Test
    void whatWasTakenAsUsualStandsWithTheRest() {
        Book book = book(ran(HEADER), ran(MUFFLER));
        assertThat(book.proved().orElseThrow()).hasSize(2);
        assertThat(book.defaults())
                .filteredOn(d -> d.where().equals("sheet of runs 1: sessions.air.pressure"))
                .hasSize(1);
        assertThat(book.defaults()).anyMatch(d -> d.where().equals("sheet of runs 2: bench.engine_turns"));
        Book elsewhere = book(ran(HEADER.replace("  - name: A2\n", "  - name: A2\n    dyno: the club's\n")));
        assertThat(elsewhere.findings())
                .anyMatch(f -> f.where().equals("sheet of runs: session A2")
                        && f.message().contains("the club's"));
    }

    @Test
    void runsMoveNoVerdictOnTheEngine() {
        assertThat(book(ran(HEADER)).approval()).isEqualTo(book().approval());
        assertThat(book(ran(HEADER)).stops()).isEqualTo(book().stops());
        assertThat(book().proved()).contains(List.of());
    }

    /** Every word that its owner can write is planted; figures are those of the sheet with words. */
    @Test
    void handedOnNoWordOfTheSheetIsLeft() {
        String planted = MUFFLER.replace("Tarn 206, another muffler", "Zoltan's muffler")
                .replace("  - Engine, drum and logs", "  - Zoltan of Qwertyhausen\n  - Engine, drum and logs")
                .replace("bench:\n", "engine: zoltan.yaml\nbench:\n")
                .replace("own drum", "Zoltan's drum")
                .replace("coast-down.csv", "zoltan-coast-down.csv")
                .replace("baseline: stock", "baseline: Zoltan's stock")
                .replace("setup: stock", "setup: Zoltan's stock")
                .replace("setup: muffler", "setup: Zoltan's muffler")
                .replace("R. Example", "Zoltan")
                .replace("name: B\n", "name: Zoltan's B\n    dyno: Zoltan's drum\n")
                .replace("{log: b-4.csv}", "{log: zoltan-b-4.csv, name: Zoltan's best}")
                .replace("{log: a1-4.csv}", "{log: a1-4.csv, aside: Zoltan slipped}");
        Book own = book(ran(planted));
        assertThat(own.toString()).contains("Zoltan's drum").contains("Zoltan slipped");
        Book handedOn = book(shared(planted));
        assertThat(handedOn.toString().toLowerCase(Locale.ROOT))
                .doesNotContain("zoltan", "qwertyhausen", "a1-2.csv", "tarn 206", "times 0.9");
        ProvedChapter chapter = handedOn.proved().orElseThrow().get(0);
        assertThat(chapter.title()).isEqualTo("Runs, name left out");
        assertThat(chapter.changes().get(0).setup()).isEqualTo("setup 2");
        assertThat(chapter.changes().get(0).baseline()).isEqualTo("setup 1 (the baseline)");
        assertThat(chapter.changes().get(0).gain())
                .isEqualTo(own.proved().orElseThrow().get(0).changes().get(0).gain());
        assertThat(chapter.sessions())
                .extracting(ProvedChapter.Session::name, ProvedChapter.Session::remark)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("S1", "2026-05-02"),
                        org.assertj.core.groups.Tuple.tuple("S2", "2026-05-02"),
                        org.assertj.core.groups.Tuple.tuple("S3", "2026-05-02"));
        assertThat(chapter.aside()).anyMatch(a -> a.why().equals("set aside: why is left out"));
        assertThat(SharedRuns.of(sheet(planted)).leftOut())
                .contains("runs: who, 3 times", "runs: name", "runs: names of runs", "runs: aside");
    }

    /** A session on another dynamometer stays on another, whatever both are called. */
    @Test
    void handedOnDynamometersStayTwo() {
        String two = HEADER.replace("  - name: A2\n", "  - name: A2\n    dyno: the club's\n");
        DynoRuns runs = shared(two).answer().runs().orElseThrow();
        assertThat(runs.gains().get(0).verdict()).isEqualTo(DynoRuns.Verdict.BASELINE_NOT_REPEATED);
        assertThat(book(shared(two)).toString()).contains("dynamometer 2").doesNotContain("club");
    }
}
