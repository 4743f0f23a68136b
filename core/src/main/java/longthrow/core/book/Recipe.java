package longthrow.core.book;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Result;
import longthrow.core.book.Book.ReadAgain;
import longthrow.core.book.Book.RecipeLine;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.Provenance;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What the engine is made of and how it is known, and what is not known well enough to buy by. */
final class Recipe {
    /** What says what engine it is, for the wall. */
    private static final List<Term> HEADLINE = List.of(
            Term.BORE,
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.SWEPT_VOLUME,
            Term.COMPRESSION_RATIO,
            Term.SQUISH,
            Term.DECK_CLEARANCE,
            Term.PISTON_TO_WALL,
            Term.GASKET_THICKNESS,
            Term.TIMING_WITH_KEY,
            Term.WANTED_SPEED,
            Term.GOVERNED_SPEED,
            Term.MEAN_PISTON_SPEED);

    /** The stack and what closes on it: a wrong one of these buys a wrong part. */
    private static final Set<Term> DECIDES_A_PURCHASE = EnumSet.of(
            Term.BORE,
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.PIN_TOP_TO_CROWN,
            Term.DECK_HEIGHT,
            Term.GASKET_THICKNESS,
            Term.CHAMBER_VOLUME,
            Term.CROWN_VOLUME,
            Term.PIN_DIAMETER,
            Term.CRANKPIN_DIAMETER,
            Term.CRANKPIN_WIDTH);

    private final Build build;
    private final Answer measure;
    private final Words words;
    private final Chosen chosen;

    Recipe(Build build, Answer measure, Words words) {
        this.build = build;
        this.measure = measure;
        this.words = words;
        this.chosen = new Chosen(build, words);
    }

    /** Whether it is one of the figures that say what engine it is. */
    static boolean isOnTheWall(Term term) {
        return HEADLINE.contains(term);
    }

    List<RecipeLine> headline() {
        return HEADLINE.stream()
                .flatMap(t -> measure.value(t).stream())
                .map(this::line)
                .toList();
    }

    /** Part by part: the words chosen, then the figures. */
    List<RecipeLine> lines() {
        List<RecipeLine> lines = new ArrayList<>();
        for (Part part : Part.values()) {
            for (Choice choice : Choice.values()) {
                if (choice.part() == part) {
                    build.choice(choice).ifPresent(word -> lines.add(chosen(choice, word)));
                }
            }
            measure.values().stream().filter(r -> r.term().part() == part).forEach(r -> lines.add(line(r)));
            build.pending().stream()
                    .filter(work -> work.kind().changes().part() == part)
                    .filter(work -> measure.value(work.kind().changes()).isEmpty())
                    .forEach(work -> lines.add(planned(work)));
        }
        return lines;
    }

    private static RecipeLine chosen(Choice choice, String word) {
        return new RecipeLine(
                choice.part().label(),
                choice.meaning(),
                choice.option(word).map(Choice.Option::label).orElse(word),
                "",
                "the owner's word",
                true);
    }

    /** A size of which no doubt is said is no figure of the answer, and yet it is what the shop is to make. */
    private RecipeLine planned(Decided.Work work) {
        Term term = work.kind().changes();
        return new RecipeLine(term.part().label(), term.label(), chosen.planned(work), "", AsPlanned.MARK, false);
    }

    private RecipeLine line(Result result) {
        PrintedFigures printed = words.printed(result);
        return new RecipeLine(
                result.term().part().label(),
                result.term().label(),
                printed.first().text(),
                printed.second().map(longthrow.core.quantity.Figure::text).orElse(""),
                how(result),
                isSound(result));
    }

    /** Measured or guessed, in a few words: by what was entered for the figures it rests on. */
    private String how(Result result) {
        if (result.contradicted()) {
            return "IN DISPUTE";
        }
        if (result.provenance().equals(Set.of(Provenance.STATED))) {
            return Provenance.STATED.label();
        }
        Set<String> known = new TreeSet<>();
        boolean workedOut = !result.term().isRead() || result.isWorkedOut();
        if (!workedOut) {
            build.of(result.term()).forEach(g -> known.add(kind(result.term(), g)));
        } else {
            result.from().stream()
                    .flatMap(place -> termAt(place).stream())
                    .forEach(t -> build.of(t).forEach(g -> known.add(kind(t, g))));
        }
        known.remove("");
        String words = known.isEmpty() ? result.howKnown() : String.join(" and ", known);
        String doubt = result.figure().isUnknown() ? ", doubt unknown" : "";
        return (workedOut ? words.isEmpty() ? "worked out" : "worked out: " + words : words) + doubt;
    }

    /** The figure whose place a result rests on; a place may say more behind it. */
    private static Optional<Term> termAt(String place) {
        return Term.at(place.split("[^a-z_0-9.]", 2)[0]);
    }

    private String kind(Term term, Given given) {
        if (given instanceof Given.Assumed) {
            return "guessed";
        }
        if (Readings.isPlanned(build, term, given)) {
            return AsPlanned.MARK;
        }
        if (given instanceof Given.Specified s) {
            return s.catalogue() ? "by a seller's list" : "by a maker's sheet";
        }
        return given instanceof Given.NotKnown ? "" : "measured";
    }

    private static boolean isSound(Result result) {
        return !result.contradicted()
                && !result.figure().isUnknown()
                && !result.provenance().contains(Provenance.PLANNED)
                && !result.provenance().contains(Provenance.ASSUMED);
    }

    /** What the readings themselves ask for first, then what decides a purchase and is guessed or somebody's word. */
    List<ReadAgain> again() {
        List<ReadAgain> again = new ArrayList<>();
        Set<Term> named = EnumSet.noneOf(Term.class);
        for (NextReading next : measure.next()) {
            named.add(next.read());
            again.add(new ReadAgain(
                    next.read().label(),
                    next.why(),
                    next.how() + "; with " + instrument(next.with()),
                    chosen.waits(next.read())));
        }
        for (Result result : measure.values()) {
            Term term = result.term();
            boolean asked =
                    DECIDES_A_PURCHASE.contains(term) || build.pendingOn(term).isPresent() || isSellersWordAlone(term);
            if (term.isRead() && !result.isWorkedOut() && asked) {
                reason(result)
                        .filter(why -> named.add(term))
                        .ifPresent(why -> again.add(
                                new ReadAgain(term.label(), why, term.reading().how(), chosen.waits(term))));
            }
        }
        return again;
    }

    private boolean isSellersWordAlone(Term term) {
        List<Given> entered = build.of(term);
        return !entered.isEmpty() && entered.stream().allMatch(g -> g instanceof Given.Specified s && s.catalogue());
    }

    private Optional<String> reason(Result result) {
        Set<Provenance> from = result.provenance();
        if (result.contradicted()) {
            return Optional.of("its readings are in dispute");
        }
        if (from.contains(Provenance.PLANNED) || build.pendingOn(result.term()).isPresent()) {
            return Optional.of(AsPlanned.MARK);
        }
        if (from.contains(Provenance.ASSUMED)) {
            return Optional.of("it is guessed");
        }
        if (result.figure().isUnknown()) {
            return Optional.of("its doubt is unknown");
        }
        List<Given> entered = build.of(result.term());
        if (!entered.isEmpty() && entered.stream().allMatch(g -> g instanceof Given.Specified)) {
            return Optional.of("it stands on somebody's sheet alone: measure the piece in hand");
        }
        return Optional.empty();
    }

    private String instrument(String key) {
        Instrument own = build.instruments().get(key);
        return own != null ? own.key() + ", " + own.kind().label() : Readings.builtIn(key);
    }
}
