package longthrow.core.book;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.book.Book.PartLine;
import longthrow.core.book.Book.ReadingLine;
import longthrow.core.book.Book.Unread;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.build.MockedUp;
import longthrow.core.measure.AsPlanned;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Everything that was entered, entry by entry, beside the figure it came to. */
final class Readings {
    private final Build build;
    private final Answer measure;
    private final Words words;

    Readings(Build build, Answer measure, Words words) {
        this.build = build;
        this.measure = measure;
        this.words = words;
    }

    List<ReadingLine> lines() {
        List<ReadingLine> lines = new ArrayList<>();
        for (Term term : Term.read()) {
            String result = measure.value(term).map(words::line).orElse("");
            for (Given given : build.of(term)) {
                if (given instanceof Given.NotKnown && given.note().isEmpty()) {
                    continue; // by name, in one line of its part
                }
                lines.add(new ReadingLine(
                        term.part().label(), term.label(), given.written(), by(term, given), result, remark(given)));
            }
        }
        build.mockedUp().forEach(mocked -> lines.add(mockedUp(mocked)));
        return lines;
    }

    private static ReadingLine mockedUp(MockedUp mocked) {
        Stream<String> parts = MockedUp.SIZES.stream()
                .flatMap(size -> Stream.ofNullable(mocked.with().get(size)).map(q -> size.label() + " " + q.written()));
        String ways = switch (mocked.endPlay()) {
            case BOTH_WAYS -> "both ways of the end play";
            case ONE_WAY -> "one way of the end play";
            case NOT_SAID -> mocked.pair().hangsOnEndPlay() ? "ways of the end play not said" : "";
        };
        return new ReadingLine(
                "mock-up",
                mocked.pair().label(),
                mocked.found().written(),
                mocked.way().label(),
                "",
                Stream.concat(Stream.of(ways, mocked.note()), parts)
                        .filter(said -> !said.isEmpty())
                        .collect(Collectors.joining("; ")));
    }

    /** Of each part, in the order of the readings, what was said not to be known, without more to say of it. */
    List<Unread> unread() {
        Map<Part, List<String>> byPart = new LinkedHashMap<>();
        for (Term term : Term.read()) {
            if (build.of(term).stream()
                    .anyMatch(g -> g instanceof Given.NotKnown && g.note().isEmpty())) {
                byPart.computeIfAbsent(term.part(), p -> new ArrayList<>()).add(term.label());
            }
        }
        return byPart.entrySet().stream()
                .map(e -> new Unread(e.getKey().label(), e.getValue()))
                .toList();
    }

    private String by(Term term, Given given) {
        if (given instanceof Given.Taken t) {
            return instrument(term, t.instrument());
        }
        if (isPlanned(build, term, given) && given instanceof Given.Specified s) {
            return AsPlanned.MARK + ": " + s.by();
        }
        if (given instanceof Given.Specified s) {
            return (s.catalogue() ? "a seller's list" : "a maker's sheet") + (s.by().isEmpty() ? "" : ": " + s.by());
        }
        if (given instanceof Given.Assumed a) {
            return "guessed, because " + a.because();
        }
        return given instanceof Given.Typed ? "± as its owner states it" : "not read";
    }

    /** Whether it is a size that work which was decided on is still to give. */
    static boolean isPlanned(Build build, Term term, Given given) {
        return given instanceof Given.Specified s
                && !s.catalogue()
                && build.pendingOn(term).isPresent();
    }

    private String instrument(Term term, @Nullable String key) {
        if (key == null) {
            return "none named: " + term.reading().usualInstrument().label();
        }
        Instrument own = build.instruments().get(key);
        if (own == null) {
            return builtIn(key);
        }
        return own.key() + ", " + own.kind().label() + (own.calibration().isEmpty() ? "" : "; " + own.calibration());
    }

    /** Name of a built-in kind of instrument. */
    static String builtIn(String key) {
        return Arrays.stream(InstrumentKind.values())
                .filter(k -> k.key().equals(key))
                .map(InstrumentKind::label)
                .findFirst()
                .orElse(key);
    }

    private static String remark(Given given) {
        Stream<String> words = Stream.of(given.note());
        if (given instanceof Given.Taken t) {
            words = Stream.of(
                    temperature("part at ", t.partTemperature()),
                    temperature("instrument at ", t.instrumentTemperature()),
                    named("by ", t.origin().who()),
                    t.origin().when(),
                    named("photograph ", t.origin().photo()),
                    t.note());
        }
        return words.filter(w -> !w.isEmpty()).collect(Collectors.joining("; "));
    }

    private static String named(String before, String words) {
        return words.isEmpty() ? "" : before + words;
    }

    private static String temperature(String before, @Nullable Quantity at) {
        return Optional.ofNullable(at).map(t -> before + t.written()).orElse("");
    }

    /** Parts of which a figure stands on somebody's sheet, with whose. */
    static List<PartLine> onASheet(Build build) {
        List<PartLine> lines = new ArrayList<>();
        for (Term term : Term.read()) {
            for (Given given : build.of(term)) {
                if (given instanceof Given.Specified s) {
                    lines.add(new PartLine(
                            term.part().label(),
                            term.label() + " " + s.value().written() + " by "
                                    + (isPlanned(build, term, given)
                                            ? "what was taken, " + AsPlanned.MARK
                                            : s.catalogue() ? "a seller's list" : "a maker's sheet")
                                    + (s.by().isEmpty() ? "" : ": " + s.by())));
                }
            }
        }
        return lines;
    }
}
