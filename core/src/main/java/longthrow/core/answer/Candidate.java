package longthrow.core.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import longthrow.core.term.Term;

/**
 * One way that goes together: parts and machining, what the engine then is, what it costs, and what it leaves open.
 * @param title    parts in a few words, by their codes
 * @param sureness how surely the parts go together
 * @param isPartlyUnknown whether a size that a limit or a neighbour asks for is not said: then it fits as far as is known
 * @param pieces   what is bought or machined
 * @param total    what it costs
 * @param values   figures of the engine with these parts
 * @param verdicts those figures held against rules
 * @param aims     those figures held against what the owner aims at, and against his own limits
 * @param splits   rules on which sources differ about this candidate and of which the owner chose none
 * @param changes  what differs from the engine as it is
 * @param forces   what else it makes necessary
 * @param unknowns what stays unknown until it is mocked up or asked for
 * @param notKnown figures that others beside it may have and this one has not, with why
 */
public record Candidate(
        String title,
        Sureness sureness,
        boolean isPartlyUnknown,
        List<Piece> pieces,
        Total total,
        List<Result> values,
        List<Verdict> verdicts,
        List<Aimed> aims,
        List<Split> splits,
        List<Finding> changes,
        List<Finding> forces,
        List<Finding> unknowns,
        List<Unknown> notKnown) {
    public Candidate {
        pieces = List.copyOf(pieces);
        values = List.copyOf(values);
        verdicts = List.copyOf(verdicts);
        aims = List.copyOf(aims);
        splits = List.copyOf(splits);
        notKnown = List.copyOf(notKnown);
        changes = List.copyOf(changes);
        forces = List.copyOf(forces);
        unknowns = List.copyOf(unknowns);
    }

    /** The aim at one figure of a term, if there is one. */
    public Optional<Aimed> aim(Term term) {
        return aims.stream().filter(a -> a.isOneFigure() && a.term() == term).findFirst();
    }

    /** Aims that are not surely met: missed, near, within the doubt, or not known. */
    public List<Aimed> openAims() {
        return aims.stream().filter(a -> a.state() != Aimed.State.MEETS).toList();
    }

    /**
     * A rule on which the trade's sources differ about one candidate, while the owner chose none of them: the mildest lets it pass.
     * @param rule    key of the rule
     * @param term    the figure
     * @param label   of the rule
     * @param sources how many may be meant for this engine and know the figure
     * @param refuse  what those say that would not pass it
     * @param said    for people: how many pass it, and which do not
     */
    public record Split(String rule, Term term, String label, int sources, List<String> refuse, String said) {
        public Split {
            refuse = List.copyOf(refuse);
        }
    }

    /**
     * A part or an operation.
     * @param kind     of part, or {@code machine_operation}
     * @param code     by which it is ordered
     * @param name     for people
     * @param vendor   empty when not said
     * @param price    whole hundredths with shipping; empty when not said
     * @param currency empty when there is no price
     * @param leadDays empty when not said
     * @param note     what is to be done, or what the row warns of; empty for none
     * @param amount   of an operation: what is taken off, or the size made [m]; empty for a part
     */
    public record Piece(
            String kind,
            String code,
            String name,
            String vendor,
            OptionalLong price,
            String currency,
            OptionalInt leadDays,
            String note,
            OptionalDouble amount) {
        /** Instead of a kind of part: what a machine shop does. */
        public static final String OPERATION = "machine_operation";
    }

    /**
     * The sum of what is priced.
     * @param known     whole hundredths
     * @param currency  empty when nothing is priced
     * @param notPriced pieces without a price: the true total is more
     * @param forgotten what else is usually needed and not in the sum
     * @param budget    whole hundredths; empty for none
     * @param toSpend   the budget for people, and in which currency it is taken where none was named; empty for none
     */
    public record Total(
            long known,
            String currency,
            List<String> notPriced,
            List<String> forgotten,
            OptionalLong budget,
            String toSpend) {
        public Total {
            notPriced = List.copyOf(notPriced);
            forgotten = List.copyOf(forgotten);
        }
    }
}
