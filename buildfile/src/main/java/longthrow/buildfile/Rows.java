package longthrow.buildfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import longthrow.buildfile.RowFate.Outcome;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The rows of one import, each code of a vendor once within its kind. */
final class Rows {
    private final List<CataloguePart> parts = new ArrayList<>();
    private final List<Operation> operations = new ArrayList<>();
    private final List<RowFate> fates = new ArrayList<>();
    /** By kind, vendor, code. */
    private final Map<PartKind, Map<String, Map<String, CataloguePart>>> partOf = new EnumMap<>(PartKind.class);

    private final Map<String, Map<String, Operation>> operationOf = new HashMap<>();

    /** The row as it stands, with its fate. */
    void add(CatalogueRow row, Shelf shelf, String file) {
        PartKind kind = shelf.kind();
        int line = row.line();
        if (kind == null) {
            Optional<Operation> operation = row.machining();
            RowFate fate = fate(row, file, line, operation.isPresent());
            if (operation.isPresent()) {
                add(operation.get(), fate);
            } else {
                fates.add(fate);
            }
            return;
        }
        Optional<CataloguePart> part = row.part(kind);
        RowFate fate = fate(row, file, line, part.isPresent());
        if (part.isPresent()) {
            add(part.get(), fate);
        } else {
            fates.add(fate);
        }
    }

    private static RowFate fate(CatalogueRow row, String file, int line, boolean kept) {
        return new RowFate(
                file, line, row.code(), kept ? Outcome.KEPT : Outcome.REFUSED, row.troubles(), row.remarks(), "");
    }

    /** The rows of another import behind these. */
    void addAll(Imported other) {
        int part = 0;
        int operation = 0;
        for (RowFate fate : other.fates()) {
            String place = fate.file() + ":" + fate.line();
            if (fate.outcome() != Outcome.KEPT) {
                fates.add(fate);
            } else if (part < other.parts().size()
                    && other.parts().get(part).place().equals(place)) {
                add(other.parts().get(part++), fate);
            } else {
                add(other.operations().get(operation++), fate);
            }
        }
    }

    private void add(CataloguePart part, RowFate fate) {
        CataloguePart earlier = partOf.computeIfAbsent(part.kind(), k -> new HashMap<>())
                .computeIfAbsent(part.offer().vendor(), v -> new HashMap<>())
                .putIfAbsent(part.code(), part);
        if (earlier == null) {
            parts.add(part);
            fates.add(fate);
        } else {
            fates.add(again(fate, earlier.place(), difference(earlier, part)));
        }
    }

    private void add(Operation operation, RowFate fate) {
        Operation earlier = operationOf
                .computeIfAbsent(operation.offer().vendor(), k -> new HashMap<>())
                .putIfAbsent(operation.code(), operation);
        if (earlier == null) {
            operations.add(operation);
            fates.add(fate);
        } else {
            fates.add(again(fate, earlier.place(), difference(earlier, operation)));
        }
    }

    private static RowFate again(RowFate fate, String other, @Nullable String difference) {
        if (difference == null) {
            return new RowFate(fate.file(), fate.line(), fate.code(), Outcome.SAME, List.of(), fate.remarks(), other);
        }
        Fault reason = new Fault(
                fate.line(),
                0,
                CatalogueLabel.CODE.key(),
                fate.code(),
                "stands at " + other + " and differs: " + difference,
                "each code of a vendor once",
                "keep the right one; if both are sold, write what tells them apart into the code");
        return new RowFate(
                fate.file(), fate.line(), fate.code(), Outcome.OTHER_FIGURES, List.of(reason), fate.remarks(), other);
    }

    /** What tells two rows of one code apart; null for nothing. */
    private static @Nullable String difference(CataloguePart a, CataloguePart b) {
        List<String> all = new ArrayList<>();
        TreeSet<Term> terms = new TreeSet<>(a.figures().keySet());
        terms.addAll(b.figures().keySet());
        for (Term term : terms) {
            compare(
                    all,
                    term.path(),
                    a.figure(term).map(Rows::shown),
                    b.figure(term).map(Rows::shown),
                    a.figure(term).equals(b.figure(term)));
        }
        TreeSet<Choice> choices = new TreeSet<>(a.words().keySet());
        choices.addAll(b.words().keySet());
        for (Choice choice : choices) {
            compare(
                    all,
                    choice.path(),
                    a.word(choice),
                    b.word(choice),
                    a.word(choice).equals(b.word(choice)));
        }
        boolean other = !a.name().equals(b.name())
                || !a.offer().equals(b.offer())
                || !a.voucher().equals(b.voucher())
                || !a.note().equals(b.note())
                || a.invented() != b.invented();
        return all.isEmpty() ? other ? "name, offer, who vouches, or note" : null : String.join(", ", all);
    }

    private static void compare(
            List<String> all, String path, Optional<String> there, Optional<String> here, boolean equal) {
        if (!equal && all.size() < 3) {
            all.add(path + " " + there.orElse("not said") + " there, " + here.orElse("not said") + " here");
        }
    }

    private static String shown(CataloguePart.Figure figure) {
        return figure.value().written()
                + (figure.tolerance() == null ? "" : " ± " + figure.tolerance().written());
    }

    private static @Nullable String difference(Operation a, Operation b) {
        boolean same = a.kind() == b.kind()
                && a.least().equals(b.least())
                && a.most().equals(b.most())
                && java.util.Objects.equals(a.step(), b.step())
                && java.util.Objects.equals(a.tolerance(), b.tolerance())
                && a.name().equals(b.name())
                && a.offer().equals(b.offer())
                && a.note().equals(b.note())
                && a.invented() == b.invented();
        return same
                ? null
                : a.kind().key() + " " + a.least() + " to " + a.most() + " there, "
                        + b.kind().key() + " " + b.least() + " to " + b.most() + " here";
    }

    Imported imported(List<Fault> faults, List<Note> notes) {
        return new Imported(parts, operations, fates, faults, notes);
    }
}
