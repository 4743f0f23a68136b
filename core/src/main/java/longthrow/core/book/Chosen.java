package longthrow.core.book;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.Given;
import longthrow.core.catalogue.PartKind;
import longthrow.core.fit.Assembled;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What was decided on, and what therefore cannot be read yet. */
final class Chosen {
    private static final String NOT_READ = ", not read yet";

    private final Build build;
    private final Words words;
    private final Set<Part> awaited = EnumSet.noneOf(Part.class);

    Chosen(Build build, Words words) {
        this.build = build;
        this.words = words;
        build.taken().forEach(d -> {
            if (d instanceof Decided.Bought bought) {
                await(bought.kind());
            }
        });
        build.fit().choose().forEach(this::await);
    }

    /** What is taken or still to be bought and of which nothing was read is not there. */
    private void await(PartKind kind) {
        boolean there = Term.read().stream()
                .filter(t -> t.part() == kind.part())
                .flatMap(t -> build.of(t).stream())
                .anyMatch(g -> g instanceof Given.Taken || g instanceof Given.Typed);
        if (!there) {
            awaited.add(kind.part());
        }
    }

    /** Whether it can be read only when a part is there that is not, or when work on it is done. */
    boolean waits(Term term) {
        return awaited.contains(term.part())
                || build.pendingOn(term).isPresent()
                || Assembled.parts(term).stream().anyMatch(awaited::contains);
    }

    /** Parts by their codes, and work with the size it is to give. */
    List<String> lines() {
        return build.taken().stream().map(this::line).toList();
    }

    private String line(Decided decided) {
        String name = decided.code() + (decided.name().isEmpty() ? "" : ", " + decided.name());
        if (decided instanceof Decided.Bought bought) {
            return bought.kind().label() + ": " + name
                    + (awaited.contains(bought.kind().part()) ? NOT_READ : "");
        }
        return planned((Decided.Work) decided);
    }

    /** A plan, said so that nobody takes it for a size. */
    String planned(Decided.Work work) {
        String job = work.after()
                .map(size -> work.kind().label() + ": " + work.kind().changes().label() + " to "
                        + words.planned(work.kind().changes(), size.si()))
                .orElse(work.job());
        return (build.pending().contains(work) ? "planned: " : "done: ") + job + ", by " + work.code()
                + (work.offer().vendor().isEmpty() ? "" : ", " + work.offer().vendor())
                + (build.pending().contains(work) ? NOT_READ : ", read since");
    }
}
