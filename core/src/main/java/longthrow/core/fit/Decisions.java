package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import longthrow.core.answer.Candidate;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Part;

/** What was decided on before and still counts once a combination is taken, and what comes to it. */
final class Decisions {
    private final Build build;
    private final List<Decided> all = new ArrayList<>();

    /** What was taken for a part that goes, goes with it; work on it too. */
    Decisions(Build build, Found found) {
        this.build = build;
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        Set<Part> parts = EnumSet.noneOf(Part.class);
        found.rows().filter(r -> !r.isOwn()).forEach(r -> {
            kinds.add(r.kind());
            parts.add(r.kind().part());
        });
        build.taken().stream()
                .filter(d -> d instanceof Decided.Bought b
                        ? !kinds.contains(b.kind())
                        : d instanceof Decided.Work w
                                && !parts.contains(w.kind().changes().part()))
                .forEach(all::add);
    }

    List<Decided> all() {
        return all;
    }

    /** A part of the stack, unless it is made: then the work is what is paid for. */
    void buy(Row row) {
        CataloguePart part = row.part();
        if (part != null && !row.isMade()) {
            buy(new Decided.Bought(row.kind(), part.code(), part.name(), part.offer()));
        }
    }

    /** A part that follows from the stack. */
    void buy(Candidate.Piece piece) {
        PartKind.at(piece.kind())
                .ifPresent(kind -> buy(new Decided.Bought(
                        kind,
                        piece.code(),
                        piece.name(),
                        new Offer(
                                piece.price(),
                                OptionalLong.empty(),
                                piece.currency(),
                                piece.vendor(),
                                piece.leadDays()))));
    }

    private void buy(Decided.Bought bought) {
        all.removeIf(d -> d instanceof Decided.Bought b && b.kind() == bought.kind());
        all.add(bought);
    }

    /**
     * Work on a part. What is still to be done on the same size becomes one job with it, from the size that is there.
     * @param amount taken off, or the size made, written as it shall stand
     * @param before size it has, or is planned to have until now
     * @param after  size it must have then
     * @param note   other sizes to make
     */
    void work(Row.Cut cut, Quantity amount, Optional<Quantity> before, Optional<Quantity> after, String note) {
        Operation operation = cut.operation();
        Operation.Kind kind = operation.kind();
        Optional<Decided.Work> open = build.pending().stream()
                .filter(all::contains)
                .filter(w -> w.kind().changes() == kind.changes() && w.kind().isToSize() == kind.isToSize())
                .findFirst();
        open.ifPresent(all::remove);
        all.add(new Decided.Work(
                kind,
                operation.code(),
                operation.name(),
                operation.offer(),
                open.filter(w -> !kind.isToSize())
                        .map(w -> Fitted.finest(w.amount().si() + amount.si()))
                        .orElse(amount),
                open.isPresent() ? open.get().from() : before.orElse(null),
                after.orElse(null),
                Optional.ofNullable(operation.tolerance())
                        .map(t -> Quantity.of(t.toMillimetresExact(), Units.MILLIMETRE))
                        .orElse(null),
                note));
    }
}
