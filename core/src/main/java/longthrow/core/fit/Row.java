package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import longthrow.core.answer.Candidate;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * One part as the search sees it: a row of the catalogue, the engine's own, or one of them machined.
 * @param part null for the engine's own
 * @param cuts machining, in order
 * @param sums what is asked for of every combination, added up once
 */
record Row(
        PartKind kind,
        @Nullable CataloguePart part,
        List<Cut> cuts,
        Map<Term, Dim> dims,
        Map<Choice, String> words,
        Sums sums) {
    /** Code of the part that is there already. */
    static final String OWN = "own";
    /** A crown with no more dish or dome than this is flat [m3]: what a burette tells apart; common practice, no source. */
    private static final double FLAT = 0.1e-6;

    Row {
        cuts = List.copyOf(cuts);
        EnumMap<Term, Dim> copy = new EnumMap<>(Term.class);
        copy.putAll(dims);
        dims = Collections.unmodifiableMap(copy);
        EnumMap<Choice, String> said = new EnumMap<>(Choice.class);
        said.putAll(words);
        words = Collections.unmodifiableMap(said);
    }

    Row(PartKind kind, @Nullable CataloguePart part, List<Cut> cuts, Map<Term, Dim> dims, Map<Choice, String> words) {
        this(kind, part, cuts, dims, words, Sums.of(part, cuts, dims));
    }

    /**
     * Of a row and its machining.
     * @param price    with shipping, of what is priced, in hundredths
     * @param isPriced whether everything is
     * @param leadDays of what takes longest
     * @param vague    sizes of a bought part without a tolerance
     * @param isVague  whether any size has none
     */
    record Sums(long price, boolean isPriced, int leadDays, int vague, boolean isVague) {
        private static Sums of(@Nullable CataloguePart part, List<Cut> cuts, Map<Term, Dim> dims) {
            List<Offer> offers = offers(part, cuts);
            int vague = (int) dims.values().stream().filter(Dim::isVague).count();
            return new Sums(
                    offers.stream()
                            .mapToLong(o -> o.price().orElse(0) + o.shipping().orElse(0))
                            .sum(),
                    offers.stream().allMatch(o -> o.price().isPresent()),
                    offers.stream().mapToInt(o -> o.leadDays().orElse(0)).max().orElse(0),
                    part == null ? 0 : vague,
                    vague > 0);
        }

        /** Of a part that is made the work is what is paid for. */
        private static List<Offer> offers(@Nullable CataloguePart part, List<Cut> cuts) {
            List<Offer> offers = new ArrayList<>();
            if (part != null
                    && cuts.stream().noneMatch(c -> c.operation().kind().makesAPart())) {
                offers.add(part.offer());
            }
            cuts.forEach(c -> offers.add(c.operation().offer()));
            return offers;
        }
    }

    /**
     * Machining of a part.
     * @param amount taken off, or the size made [m]
     * @param text   what is done, for people
     */
    record Cut(Operation operation, double amount, String text) {}

    Optional<Dim> dim(Term term) {
        return Optional.ofNullable(dims.get(term));
    }

    /** By its code, and what is done to it. */
    String title() {
        String code = part == null ? OWN + " " + kind.label() : part.code();
        return cuts.isEmpty()
                ? code
                : code + " (" + cuts.stream().map(Cut::text).collect(Collectors.joining(", ")) + ")";
    }

    String base() {
        return part == null ? OWN : part.code();
    }

    boolean isOwn() {
        return part == null;
    }

    /** Whether it is made to order, so that the work is what is paid for. */
    boolean isMade() {
        return cuts.stream().anyMatch(c -> c.operation().kind().makesAPart());
    }

    /** Price with shipping of what is priced. */
    long knownPrice() {
        return sums.price();
    }

    boolean isPriced() {
        return sums.isPriced();
    }

    int leadDays() {
        return sums.leadDays();
    }

    Row with(Cut cut, Term term, Dim dim) {
        Map<Term, Dim> changed = new EnumMap<>(Term.class);
        changed.putAll(dims);
        changed.put(term, dim);
        List<Cut> more = new ArrayList<>(cuts);
        more.add(cut);
        return new Row(kind, part, more, changed, words);
    }

    /** A figure moved by a share of an amount, if it is known. */
    Row moved(Term term, double amount, double share, @Nullable ExactLength held) {
        Optional<Dim> dim = dim(term);
        if (dim.isEmpty()) {
            return this;
        }
        Map<Term, Dim> changed = new EnumMap<>(Term.class);
        changed.putAll(dims);
        changed.put(term, dim.get().machined(amount, share, held));
        return new Row(kind, part, cuts, changed, words);
    }

    /**
     * After a cut a flat crown has the volume it had. A dish has lost between nothing and the cut over the whole crown, and a dome likewise; where the crown's
     * width is not known, so is what is left.
     */
    Row crownCut(double amount) {
        Optional<Dim> crown = dim(Term.CROWN_VOLUME);
        if (crown.isEmpty() || Math.abs(crown.get().value()) <= FLAT) {
            return this;
        }
        Map<Term, Dim> changed = new EnumMap<>(Term.class);
        changed.putAll(dims);
        changed.remove(Term.CROWN_VOLUME);
        dim(Term.PISTON_DIAMETER).ifPresent(width -> {
            double volume = crown.get().value();
            double lost = Math.min(Math.abs(volume), amount * Math.PI / 4 * width.value() * width.value());
            double middle = volume - Math.signum(volume) * lost / 2;
            changed.put(
                    Term.CROWN_VOLUME,
                    new Dim(
                                    middle,
                                    crown.get().half(),
                                    crown.get().uncertainty(),
                                    crown.get().isVague())
                            .moved(0, lost / 2));
        });
        return new Row(kind, part, cuts, changed, words);
    }

    /** What is bought and machined of it. */
    List<Candidate.Piece> pieces() {
        List<Candidate.Piece> pieces = new ArrayList<>();
        if (part != null && !isMade()) {
            pieces.add(piece(kind.key(), part.code(), part.name(), part.offer(), part.note()));
        }
        cuts.forEach(c -> pieces.add(
                work(c, part != null && c.operation().kind().makesAPart() ? c.text() + ": " + part.note() : c.text())));
        return pieces;
    }

    static Candidate.Piece piece(String kind, String code, String name, Offer offer, String note) {
        return piece(kind, code, name, offer, note, OptionalDouble.empty());
    }

    /** What is machined. */
    static Candidate.Piece work(Cut cut, String note) {
        Operation operation = cut.operation();
        return piece(
                Candidate.Piece.OPERATION,
                operation.code(),
                operation.name(),
                operation.offer(),
                note,
                OptionalDouble.of(cut.amount()));
    }

    private static Candidate.Piece piece(
            String kind, String code, String name, Offer offer, String note, OptionalDouble amount) {
        OptionalLong price = offer.price().isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(offer.price().getAsLong() + offer.shipping().orElse(0));
        OptionalInt lead = offer.leadDays();
        return new Candidate.Piece(kind, code, name, offer.vendor(), price, offer.currency(), lead, note, amount);
    }
}
