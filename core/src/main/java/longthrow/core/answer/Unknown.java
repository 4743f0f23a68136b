package longthrow.core.answer;

import java.util.List;
import longthrow.core.term.Term;

/**
 * What cannot be said yet.
 * @param term    the figure
 * @param missing what would have to be read
 * @param why     in words
 */
public record Unknown(Term term, List<Term> missing, String why) {
    public Unknown {
        missing = List.copyOf(missing);
    }
}
