package longthrow.core.answer;

import java.util.List;
import java.util.Set;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.term.Term;

/**
 * One figure.
 * @param term         what it is
 * @param figure       value and doubt
 * @param provenance   where the readings behind it came from
 * @param from         places in the build file it rests on
 * @param contradicted whether readings behind it disagree: then it is not to be used
 */
public record Result(Term term, Measured figure, Set<Provenance> provenance, List<String> from, boolean contradicted) {
    public Result {
        provenance = Set.copyOf(provenance);
        from = List.copyOf(from);
    }
}
