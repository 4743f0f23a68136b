package longthrow.core.book;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.Answer;

/**
 * What a Book is set from: answers about one build. Each that is empty was not asked, and the Book says so.
 * @param measure to {@code measure}
 * @param fit     to {@code fit}, where a catalogue was searched
 * @param clear   to {@code clear}
 * @param life    to {@code life}
 * @param shake   to {@code shake}
 */
public record Answers(
        Answer measure, Optional<Answer> fit, Optional<Answer> clear, Optional<Answer> life, Optional<Answer> shake) {
    /** Without those of the moving engine. */
    public static Answers of(Answer measure, Optional<Answer> fit) {
        return new Answers(measure, fit, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** With those of the moving engine. */
    public Answers with(Optional<Answer> whatTouches, Optional<Answer> whatLetsGo, Optional<Answer> whereItShakes) {
        return new Answers(measure, fit, whatTouches, whatLetsGo, whereItShakes);
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
}
