package longthrow.core.measure;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.measurement.Provenance;
import longthrow.core.term.Term;

/** What is said of sizes that work which was decided on is still to give. */
public final class AsPlanned {
    /** Beside a size that is a plan. */
    public static final String MARK = "planned, not machined yet; read it after the job";

    private AsPlanned() {}

    /** One for each job that nothing was read after. */
    public static List<Finding> findings(Build build) {
        return build.pending().stream()
                .map(work -> new Finding(
                        Finding.Kind.WARNING,
                        work.kind().changes().path(),
                        work.job() + " was taken and is planned, not machined yet: "
                                + work.kind().changes().label() + after(work)
                                + " and all that rests on it stand as if it were done",
                        "send it to the shop (the Book has the ticket), and read "
                                + work.kind().changes().label() + " after the job"))
                .toList();
    }

    private static String after(Decided.Work work) {
        return work.after().map(to -> " " + to.written()).orElse("");
    }

    /** Verdicts that rest on a planned size say so; the others are as they were. */
    public static List<Verdict> told(Build build, List<Verdict> verdicts, List<Result> values) {
        return build.pending().isEmpty()
                ? verdicts
                : verdicts.stream().map(v -> told(build, v, values)).toList();
    }

    private static Verdict told(Build build, Verdict verdict, List<Result> values) {
        return values.stream()
                .filter(r -> r.term() == verdict.term() && isPlanned(r))
                .findFirst()
                .filter(r -> verdict.state() != Verdict.State.UNKNOWN)
                .map(r -> verdict.withWhy(verdict.why() + said(build, List.of(r))))
                .orElse(verdict);
    }

    private static boolean isPlanned(Result result) {
        return result.provenance().contains(Provenance.PLANNED);
    }

    /** What to say after a sentence that rests on these figures: that it is as planned, and which size is; nothing where none is. */
    public static String said(Build build, Collection<Result> figures) {
        List<Result> planned = figures.stream().filter(AsPlanned::isPlanned).toList();
        return planned.isEmpty() ? "" : "; as planned, not machined yet" + names(build, planned);
    }

    private static String names(Build build, List<Result> planned) {
        String names = planned.stream()
                .flatMap(result -> result.from().stream())
                .flatMap(place -> Term.at(place.split("[^a-z_0-9.]", 2)[0]).stream()) // a place may say more behind it
                .filter(term -> build.pendingOn(term).isPresent())
                .map(Term::label)
                .distinct()
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? "" : ": " + names;
    }
}
