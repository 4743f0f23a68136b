package longthrow.core.book;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.book.Book.Ticket;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;
import longthrow.core.engine.Outcome;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Jobs for the machine shop: what was taken and not read since, what the best way that fits asks for, what a figure past its rule asks for, and how far a head may be cut.
 * What no answer says is not made up: it is to be agreed with the shop.
 */
final class Tickets {
    private static final String TO_AGREE = "not said: agree it with the shop";

    private final Build build;
    private final Answer measure;
    private final Optional<Answer> fit;
    private final Catalogue catalogue;
    private final Words words;

    Tickets(Build build, Answer measure, Optional<Answer> fit, Catalogue catalogue, Words words) {
        this.build = build;
        this.measure = measure;
        this.fit = fit;
        this.catalogue = catalogue;
        this.words = words;
    }

    List<Ticket> all() {
        List<Ticket> tickets = new ArrayList<>();
        build.pending().forEach(work -> tickets.add(taken(work)));
        fit.flatMap(f -> Ways.chosen(build, f))
                .ifPresent(best -> best.pieces().stream()
                        .filter(p -> p.kind().equals(Candidate.Piece.OPERATION))
                        .forEach(p -> operation(p).ifPresent(o -> tickets.add(ordered(p, o, best)))));
        Set<String> asked = new LinkedHashSet<>();
        for (Verdict verdict : measure.verdicts()) {
            pastItsRule(verdict)
                    .filter(t -> asked.add(t.part() + t.work() + verdict.term()))
                    .ifPresent(tickets::add);
        }
        Optional<Ticket> bore = boreToPiston();
        bore.ifPresent(tickets::add);
        headCut().ifPresent(tickets::add);
        measure.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.PART)
                .flatMap(f -> byVerdict(f).stream())
                .filter(t ->
                        bore.isEmpty() || !t.part().equals(Part.PISTON.label())) // the bore is what is honed for it
                .filter(t -> tickets.stream().noneMatch(other -> other.part().equals(t.part())))
                .toList()
                .forEach(tickets::add);
        return tickets;
    }

    // ---- decided on

    private Ticket taken(Decided.Work work) {
        Operation.Kind kind = work.kind();
        Term term = kind.changes();
        Quantity held = work.tolerance();
        return new Ticket(
                of(term),
                work.note().isEmpty() ? work.job() : work.job() + ": " + work.note(),
                kind.makesAPart()
                        ? "made new"
                        : work.before().map(b -> words.size(term, b.si())).orElse("not known: read it before the job"),
                work.after().map(a -> words.size(term, a.si())).orElse(work.job()),
                held == null ? TO_AGREE : "± " + held.written(),
                kind.datum(),
                inspect(term) + "; " + kind.consequences(),
                "taken: " + work.code() + (work.name().isEmpty() ? "" : ", " + work.name()) + "; stands here until "
                        + term.label() + " is read after the job");
    }

    /** The part worked on, with the code of what was taken for it. */
    private String of(Term term) {
        return build.taken().stream()
                .flatMap(d -> d instanceof Decided.Bought b && b.kind().part() == term.part()
                        ? Stream.of(b.code() + ", " + term.part().label())
                        : Stream.of())
                .findFirst()
                .orElse(term.part().label());
    }

    // ---- asked for by parts that fit

    private Optional<Operation> operation(Candidate.Piece piece) {
        return catalogue.operations().stream()
                .filter(o -> o.code().equals(piece.code()) && o.name().equals(piece.name()))
                .findFirst();
    }

    private Ticket ordered(Candidate.Piece piece, Operation operation, Candidate best) {
        Operation.Kind kind = operation.kind();
        Term term = kind.changes();
        ExactLength held = operation.tolerance();
        Optional<CataloguePart> bought = bought(term, best);
        Optional<Double> before = bought.flatMap(p -> p.figure(term))
                .map(f -> f.value().si())
                .or(() -> measure.value(term)
                        .filter(r -> !r.contradicted() && bought.isEmpty())
                        .map(r -> r.figure().value()));
        return new Ticket(
                bought.map(p -> p.code() + ", " + term.part().label())
                        .orElse(term.part().label()),
                piece.note(),
                kind.makesAPart()
                        ? "made new"
                        : before.map(b -> words.size(term, b)).orElse("not known: read it before the job"),
                after(kind, before, piece).map(a -> words.size(term, a)).orElse(piece.note()),
                held == null ? TO_AGREE : "± " + held,
                kind.datum(),
                inspect(term) + "; " + kind.consequences(),
                "fit: " + best.title());
    }

    private Optional<CataloguePart> bought(Term term, Candidate best) {
        return best.pieces().stream()
                .flatMap(piece -> catalogue.parts().stream()
                        .filter(p -> p.kind().key().equals(piece.kind())
                                && p.code().equals(piece.code())
                                && p.name().equals(piece.name())))
                .filter(p -> p.kind().part() == term.part())
                .findFirst();
    }

    /** The size it must have afterwards, where the job moves that size by the amount or makes it. */
    private static Optional<Double> after(Operation.Kind kind, Optional<Double> before, Candidate.Piece piece) {
        if (piece.amount().isEmpty()) {
            return Optional.empty();
        }
        double amount = piece.amount().getAsDouble();
        return switch (kind) {
            case DECK_CUT, CROWN_CUT, SKIRT_CUT, COUNTERWEIGHT_TURN, BIG_END_FACE -> before.map(b -> b - amount);
            case SMALL_END_HONE -> before.map(b -> b + amount);
            case BORE_AND_HONE, SLEEVE, GASKET_TO_ORDER, ROD_TO_ORDER -> Optional.of(amount);
            case HEAD_CUT, CRANKPIN_OFFSET_GRIND ->
                Optional.empty(); // the size they change does not move by the amount
        };
    }

    // ---- asked for by a rule

    /** A figure surely or perhaps past a rule that counts, where machining is what mends it. */
    private Optional<Ticket> pastItsRule(Verdict verdict) {
        boolean past = verdict.chosen()
                && !verdict.cure().isEmpty()
                && (verdict.state() == Verdict.State.FAILS || verdict.state() == Verdict.State.NEAR);
        Optional<Rule> rule = Rule.of(verdict);
        Optional<Result> figure = measure.value(verdict.term()).filter(r -> !r.contradicted());
        if (!past || rule.isEmpty() || figure.isEmpty() || verdict.term() == Term.PISTON_TO_WALL) {
            return Optional.empty();
        }
        double value = figure.get().figure().value();
        boolean low = value < verdict.least();
        boolean high = value > verdict.most();
        Outcome outcome = low
                ? rule.get().whenLow().outcome()
                : high ? rule.get().whenHigh().outcome() : Outcome.KEEP;
        if (outcome != Outcome.MACHINE) {
            return Optional.empty();
        }
        return Optional.of(new Ticket(
                rule.get().part().label(),
                verdict.cure(),
                verdict.term().label() + " " + words.line(figure.get()),
                verdict.term().label() + " " + window(verdict),
                "inside that window, doubt of the reading included",
                datum(verdict.term()),
                inspect(verdict.term()),
                "measure: " + verdict.label() + "; " + verdict.source()));
    }

    private String window(Verdict verdict) {
        boolean low = Double.isFinite(verdict.least());
        boolean high = Double.isFinite(verdict.most());
        String least = low ? words.size(verdict.term(), verdict.least()) : "";
        String most = high ? words.size(verdict.term(), verdict.most()) : "";
        return low && high ? least + " to " + most : low ? "least " + least : "most " + most;
    }

    private static String datum(Term term) {
        return Arrays.stream(Operation.Kind.values())
                .filter(k -> k.changes() == term || isHeldBy(term, k))
                .map(Operation.Kind::datum)
                .findFirst()
                .orElse(TO_AGREE);
    }

    /** The job that moves a clearance, by the size it changes. */
    private static boolean isHeldBy(Term clearance, Operation.Kind kind) {
        return switch (clearance) {
            case PIN_CLEARANCE -> kind == Operation.Kind.SMALL_END_HONE;
            case ROD_SIDE_CLEARANCE, SIDE_CLEARANCE_BY_WIDTH -> kind == Operation.Kind.BIG_END_FACE;
            case SKIRT_TO_COUNTERWEIGHT -> kind == Operation.Kind.SKIRT_CUT;
            case BOSS_TO_COUNTERWEIGHT -> kind == Operation.Kind.COUNTERWEIGHT_TURN;
            case BORE_TAPER, OUT_OF_ROUND -> kind == Operation.Kind.BORE_AND_HONE;
            case DECK_FLATNESS -> kind == Operation.Kind.DECK_CUT;
            case HEAD_FLATNESS, VALVE_TO_HEAD -> kind == Operation.Kind.HEAD_CUT;
            default -> false;
        };
    }

    /** The bore is finished from the piston in hand, when it does not keep its clearance to it for sure. */
    private Optional<Ticket> boreToPiston() {
        Optional<Result> bore = sound(Term.BORE);
        Optional<Result> piston = sound(Term.PISTON_DIAMETER);
        Optional<Verdict> verdict = measure.verdictsOn(Term.PISTON_TO_WALL).stream()
                .filter(v -> v.chosen() && Double.isFinite(v.least()) && Double.isFinite(v.most()))
                .findFirst();
        if (bore.isEmpty() || piston.isEmpty() || verdict.isEmpty()) {
            return Optional.empty();
        }
        double least = piston.get().figure().value() + verdict.get().least();
        double most = piston.get().figure().value() + verdict.get().most();
        boolean canBeCut = bore.get().figure().value() < least;
        if (!canBeCut && bore.get().figure().value() <= most) {
            return Optional.empty(); // inside: what is near a limit is read again first
        }
        return Optional.of(new Ticket(
                Part.CYLINDER.label(),
                canBeCut
                        ? "hone to the piston in hand, after it was measured by the shop"
                        : "nothing to hone: the bore is past the window for this piston; a larger piston first, then bore and hone to it",
                words.line(bore.get()),
                canBeCut
                        ? words.size(Term.BORE, least) + " to " + words.size(Term.BORE, most)
                        : "by the piston that will be fitted, plus "
                                + words.size(Term.PISTON_TO_WALL, verdict.get().least()) + " to "
                                + words.size(Term.PISTON_TO_WALL, verdict.get().most()),
                "inside that window; leave the last 0.05 to 0.08 mm of a bored cylinder for honing (service-manual practice)",
                Operation.Kind.BORE_AND_HONE.datum(),
                inspect(Term.BORE) + " at three depths and two directions at 20 °C; then piston to wall",
                "measure: " + verdict.get().label() + "; " + verdict.get().source()));
    }

    /** How far a head may be cut, where a rule says: no order, a limit. */
    private Optional<Ticket> headCut() {
        return measure.value(Term.HEAD_CUT)
                .filter(r -> !r.contradicted() && r.figure().value() > 0)
                .map(cut -> new Ticket(
                        Part.HEAD.label(),
                        "may be cut, if you want it, by no more than " + words.line(cut),
                        sound(Term.CLEARANCE_VOLUME)
                                .map(v -> v.term().label() + " " + words.line(v))
                                .orElse("clearance volume not known"),
                        after(Term.RATIO_AFTER_CUT) + after(Term.VALVE_TO_HEAD_AFTER_CUT) + guard(),
                        TO_AGREE,
                        Operation.Kind.HEAD_CUT.datum(),
                        inspect(Term.CLEARANCE_VOLUME) + ", and " + inspect(Term.VALVE_TO_HEAD) + "; "
                                + Operation.Kind.HEAD_CUT.consequences(),
                        "measure: " + Term.HEAD_CUT.meaning()));
    }

    /** A part that is to be machined though no single size says so: damage seen, or sources that disagree. */
    private static Optional<Ticket> byVerdict(Finding part) {
        int colon = part.message().indexOf(": ");
        String verdict = colon < 0 ? "" : part.message().substring(colon + 2);
        String begins = Outcome.MACHINE.label() + ": ";
        return !verdict.startsWith(begins)
                ? Optional.empty()
                : Optional.of(new Ticket(
                        part.message().substring(0, colon),
                        part.mend().isEmpty() ? Outcome.MACHINE.label() : part.mend(),
                        verdict.substring(begins.length()),
                        TO_AGREE,
                        TO_AGREE,
                        TO_AGREE,
                        "read the part anew, all of it, and enter it",
                        "measure: the verdict on the part"));
    }

    private String after(Term term) {
        return sound(term)
                .map(r -> r.term().label() + " " + words.line(r) + "; ")
                .orElse("");
    }

    private String guard() {
        return build.ownRules().stream()
                .filter(o -> o.term() == Term.CLEARANCE_VOLUME)
                .flatMap(o -> o.lower().stream()
                        .map(least -> "clearance volume no less than " + least.written()
                                + (o.guard() == null
                                        ? ""
                                        : " and what is kept back from it, "
                                                + o.guard().written())))
                .findFirst()
                .orElse("");
    }

    private Optional<Result> sound(Term term) {
        return measure.value(term).filter(r -> !r.contradicted());
    }

    private static String inspect(Term term) {
        return "read " + term.label() + (term.isRead() ? ": " + term.reading().how() : "");
    }
}
