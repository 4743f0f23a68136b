package longthrow.workshop.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import longthrow.core.answer.Rung;
import longthrow.workshop.print.PageWords;

/**
 * Something that would have to be read or asked.
 * @param place where it is entered
 * @param how   to read it, or whom to ask
 */
public record ToRead(Frame.Place place, String how) {
    /**
     * Of what an answer misses.
     * @param base address of the build
     */
    public static List<ToRead> of(List<Rung.Missing> missing, String base) {
        return missing.stream()
                .map(m -> new ToRead(Ways.input(m, base), PageWords.said(m.how())))
                .toList();
    }

    /**
     * Something to read, and how much waits for it.
     * @param place where it is entered
     * @param count of what waits for it, &gt; 0
     */
    public record Awaited(Frame.Place place, int count) {}

    /**
     * What most waits for, that first: of each thing told of, all that is missing.
     * @param most how many are named at most
     */
    public static List<Awaited> first(Stream<List<Rung.Missing>> missing, String base, int most) {
        Map<Frame.Place, Integer> waiting = new LinkedHashMap<>();
        missing.flatMap(List::stream)
                .map(m -> Ways.input(m, base))
                .filter(place -> !place.address().isEmpty())
                .forEach(place -> waiting.merge(place, 1, Integer::sum));
        return waiting.entrySet().stream()
                .sorted(Map.Entry.<Frame.Place, Integer>comparingByValue().reversed())
                .limit(most)
                .map(e -> new Awaited(e.getKey(), e.getValue()))
                .toList();
    }
}
