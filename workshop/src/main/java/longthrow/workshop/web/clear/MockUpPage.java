package longthrow.workshop.web.clear;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.MockUpEntry;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.build.MockedUp;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.Workbench;

/**
 * One pair of moving parts, to write down what its mock-up told.
 * @param pair   key
 * @param how    it is read
 * @param kept   what stands in the build of this pair already
 * @param form   as it is to be filled
 * @param faults of what was sent
 */
public record MockUpPage(Frame frame, String pair, String how, List<Kept> kept, Form form, List<String> faults) {
    /** Rows of a form for gaps by angle; layout. */
    static final int ROWS = 9;

    /** No gap at all, as it is typed. */
    private static final Pattern NOTHING = Pattern.compile("0+([.,]0*)?\\s*(mm|in)?");

    public MockUpPage {
        kept = List.copyOf(kept);
        faults = List.copyOf(faults);
    }

    /**
     * An entry there is.
     * @param index in the build file, from 0
     * @param was   as it stands there
     * @param said  for people
     */
    public record Kept(int index, String was, String said) {}

    /** One of several. */
    public record Option(String key, String label, boolean chosen) {}

    /** One line of a gap by angle. */
    public record Row(int number, String angle, String gap) {}

    /** A size of the parts that were in it. */
    public record Size(String key, String label, String value) {}

    /**
     * The form.
     * @param unit    of bare numbers
     * @param found   what was found: {@code gap}, {@code touches}, {@code free} or {@code rows}
     * @param gap     what was read, or what passed free
     * @param endPlay whether it is asked which way the shafts were pushed
     */
    public record Form(
            int based,
            String key,
            String unit,
            List<Option> ways,
            String found,
            String gap,
            List<Row> rows,
            boolean endPlay,
            List<Option> bothWays,
            List<Size> sizes,
            String note) {
        public Form {
            ways = List.copyOf(ways);
            rows = List.copyOf(rows);
            bothWays = List.copyOf(bothWays);
            sizes = List.copyOf(sizes);
        }

        /** One that nothing was written into yet. */
        static Form blank(MovingPair pair, int based, Build build, Answer measure) {
            return new Form(
                    based,
                    UUID.randomUUID().toString(),
                    MockUpPage.unit(build),
                    MockUpPage.ways(pair, ""),
                    "gap",
                    "",
                    rows(List.of(), List.of()),
                    pair.hangsOnEndPlay(),
                    MockUpPage.bothWays(""),
                    isAllThere(build)
                            ? sizes(pair, present(pair, measure))
                            : sizes(pair, Map.of()), // else what is still to come would be said to have been in it
                    "");
        }

        /** As it was sent. */
        static Form sent(MovingPair pair, Context request, Build build) {
            Map<Term, String> sizes = new LinkedHashMap<>();
            MockedUp.sizes(pair).forEach(t -> sizes.put(t, Workbench.field(request, BuildFile.mockUpKey(t))));
            return new Form(
                    Workbench.basedOn(request),
                    UUID.randomUUID().toString(),
                    MockUpPage.unit(build),
                    MockUpPage.ways(pair, Workbench.field(request, "way")),
                    Workbench.field(request, "found"),
                    Workbench.field(request, "gap"),
                    rows(request.formParams("angle"), request.formParams("at_angle")),
                    pair.hangsOnEndPlay(),
                    MockUpPage.bothWays(Workbench.field(request, "both_ways")),
                    sizes(pair, sizes),
                    Workbench.field(request, "note"));
        }

        private static List<Row> rows(List<String> angles, List<String> gaps) {
            return IntStream.range(0, ROWS)
                    .mapToObj(k ->
                            new Row(k + 1, k < angles.size() ? angles.get(k) : "", k < gaps.size() ? gaps.get(k) : ""))
                    .toList();
        }

        private static List<Size> sizes(MovingPair pair, Map<Term, String> values) {
            return MockedUp.sizes(pair).stream()
                    .map(t -> new Size(BuildFile.mockUpKey(t), t.label(), values.getOrDefault(t, "")))
                    .toList();
        }
    }

    /** Unit of a bare number. */
    static String unit(Build build) {
        return BareNumber.length(build.units());
    }

    /** Ways to read it, the usual one of this pair chosen. */
    static List<Option> ways(MovingPair pair, String chosen) {
        String usual = pair.isOverPiston()
                ? MockedUp.Way.SOFT_SPRING.key()
                : pair == MovingPair.PUSHROD_TO_TUBE ? MockedUp.Way.BLUE.key() : MockedUp.Way.CLAY.key();
        String key = chosen.isEmpty() ? usual : chosen;
        return Arrays.stream(MockedUp.Way.values())
                .filter(way -> way.reads(pair))
                .map(way -> new Option(way.key(), way.label(), way.key().equals(key)))
                .toList();
    }

    /** What may be said of the end play. */
    static List<Option> bothWays(String chosen) {
        return List.of(
                new Option("unknown", "not known", !chosen.equals("yes") && !chosen.equals("no")),
                new Option("yes", "both ways", chosen.equals("yes")),
                new Option("no", "one way only", chosen.equals("no")));
    }

    /** Sizes of the parts that are in the build now, as far as they are known. */
    static Map<Term, String> present(MovingPair pair, Answer measure) {
        Map<Term, String> sizes = new LinkedHashMap<>();
        for (Term term : MockedUp.sizes(pair)) {
            measure.value(term)
                    .filter(r -> !r.figure().isUnknown() && !r.contradicted())
                    .ifPresent(r -> sizes.put(
                            term,
                            String.format(
                                    Locale.ROOT, "%.2f mm", 1e3 * r.figure().value())));
        }
        return sizes;
    }

    /** Whether no part and no work is still to come. */
    static boolean isAllThere(Build build) {
        return build.taken().isEmpty();
    }

    static MockUpPage of(Frame frame, MovingPair pair, Clearance told, Build build, Form form, List<String> faults) {
        List<Kept> kept = new ArrayList<>();
        for (int k = 0; k < build.mockedUp().size(); k++) {
            MockedUp mocked = build.mockedUp().get(k);
            String place = "mocked_up[" + (k + 1) + "]";
            if (mocked.pair() == pair) {
                kept.add(new Kept(k, BuildFile.mockedUp(List.of(mocked)), said(mocked, told, place)));
            }
        }
        return new MockUpPage(frame, pair.key(), told.how(), kept, form, faults);
    }

    private static String said(MockedUp mocked, Clearance told, String place) {
        return told.mocked().stream()
                .filter(m -> m.place().equals(place))
                .findFirst()
                .map(MockUpPage::said)
                .orElse(mocked.way().label() + ", " + mocked.found().written());
    }

    /** An entry as an answer tells it, for people. */
    static String said(Clearance.Mocked m) {
        return PageWords.said(m.way() + ", " + m.read() + (m.counts() ? ": this counts" : "")
                + (m.said().isEmpty() ? "" : "; " + m.said()));
    }

    // ---- to the build file

    /** What was sent, as it is put behind the keys of an entry; bare numbers with their unit. */
    static MockUpEntry typed(MovingPair pair, Context request, Build build) {
        String unit = unit(build);
        String found = Workbench.field(request, "found");
        String gap = Workbench.field(request, "gap");
        Map<String, String> words = new LinkedHashMap<>();
        words.put("pair", pair.key());
        words.put("way", Workbench.field(request, "way"));
        List<String> gaps = List.of();
        Map<String, String> rows = new LinkedHashMap<>();
        switch (found) {
            case "touches" -> gaps = List.of("touches");
            case "free" -> words.put("at_least", gap.isEmpty() ? "0 mm" : BareNumber.with(gap, unit));
            case "rows" -> rows.putAll(rows(request, unit));
            default ->
                gaps = NOTHING.matcher(gap).matches()
                        ? List.of("touches")
                        : Arrays.stream(gap.split(",\\s+|;\\s*", -1))
                                .map(String::strip)
                                .filter(g -> !g.isEmpty())
                                .map(g -> BareNumber.with(g, unit))
                                .toList();
        }
        if (pair.hangsOnEndPlay()) {
            words.put("both_ways", Workbench.field(request, "both_ways"));
        }
        for (Term term : MockedUp.sizes(pair)) {
            String key = BuildFile.mockUpKey(term);
            words.put(key, BareNumber.with(Workbench.field(request, key), unit));
        }
        words.put("note", Workbench.field(request, "note"));
        words.values().removeIf(String::isEmpty);
        return new MockUpEntry(words, gaps, rows);
    }

    private static Map<String, String> rows(Context request, String unit) {
        Map<String, String> rows = new LinkedHashMap<>();
        List<String> angles = request.formParams("angle");
        List<String> gaps = request.formParams("at_angle");
        for (int k = 0; k < Math.min(angles.size(), gaps.size()); k++) {
            String angle = angles.get(k).strip();
            String gap = gaps.get(k).strip();
            if (!angle.isEmpty() || !gap.isEmpty()) {
                rows.put(BareNumber.with(angle, "°"), BareNumber.with(gap, unit));
            }
        }
        return rows;
    }
}
