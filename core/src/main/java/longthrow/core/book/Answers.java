package longthrow.core.book;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;

/**
 * What a Book is set from: answers about one build. Each that is empty was not asked, and the Book says so.
 * @param measure to {@code measure}
 * @param fit     to {@code fit}, where a catalogue was searched
 * @param clear   to {@code clear}
 * @param life    to {@code life}
 * @param shake   to {@code shake}
 * @param dyno    to {@code dyno}, one for each sheet of runs that was handed in; empty while they are not worked out
 */
public record Answers(
        Answer measure,
        Optional<Answer> fit,
        Optional<Answer> clear,
        Optional<Answer> life,
        Optional<Answer> shake,
        Optional<List<Ran>> dyno) {
    public Answers {
        dyno = dyno.map(List::copyOf);
    }

    /**
     * What the runs of one sheet came to.
     * @param answer   about them
     * @param isShared whether free words were taken out of the sheet before it was asked about
     */
    public record Ran(Answer answer, boolean isShared) {}

    /** Without those of the moving engine; no sheet of runs is handed in. */
    public static Answers of(Answer measure, Optional<Answer> fit) {
        return new Answers(measure, fit, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(List.of()));
    }

    /** With those of the moving engine. */
    public Answers with(Optional<Answer> whatTouches, Optional<Answer> whatLetsGo, Optional<Answer> whereItShakes) {
        return new Answers(measure, fit, whatTouches, whatLetsGo, whereItShakes, dyno);
    }

    /** With those to sheets of runs; empty while they are not worked out. */
    public Answers withRuns(Optional<List<Ran>> proved) {
        return new Answers(measure, fit, clear, life, shake, proved);
    }

    /** Whether the three of the moving engine are all there. */
    public boolean isWhole() {
        return clear.isPresent() && life.isPresent() && shake.isPresent();
    }

    /** Of all that are there, in the order of the questions, each once: they rest on the same readings. */
    <T> List<T> each(Function<Answer, List<T>> of) {
        Set<T> each = new LinkedHashSet<>(of.apply(measure));
        List<Optional<Answer>> others = List.of(fit, clear, life, shake);
        others.forEach(other -> other.map(of).ifPresent(each::addAll));
        return new ArrayList<>(each);
    }

    /** What was noticed, with that of the sheets behind the rest, each said of its sheet. */
    List<Finding> findings() {
        List<Finding> all = each(Answer::findings);
        List<Ran> sheets = dyno.orElse(List.of());
        for (int k = 0; k < sheets.size(); k++) {
            String sheet = sheet(k, sheets.size());
            sheets.get(k)
                    .answer()
                    .findings()
                    .forEach(f -> all.add(new Finding(f.kind(), sheet + f.where(), f.message(), f.mend())));
        }
        return all;
    }

    /** What was taken for granted, likewise. */
    List<DefaultUsed> defaults() {
        List<DefaultUsed> all = each(Answer::defaults);
        List<Ran> sheets = dyno.orElse(List.of());
        for (int k = 0; k < sheets.size(); k++) {
            String sheet = sheet(k, sheets.size());
            sheets.get(k)
                    .answer()
                    .defaults()
                    .forEach(d -> all.add(new DefaultUsed(sheet + d.where(), d.what(), d.source())));
        }
        return all;
    }

    /** A sheet has places that an engine has too. */
    private static String sheet(int which, int of) {
        return of == 1 ? "sheet of runs: " : "sheet of runs " + (which + 1) + ": ";
    }
}
