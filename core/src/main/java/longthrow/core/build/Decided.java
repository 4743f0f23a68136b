package longthrow.core.build;

import java.util.Optional;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/** What the owner decided to buy or to have machined, with its offer as the catalogue had it: a plan, until the size is read. */
public sealed interface Decided {

    /** By which it is ordered. */
    String code();

    /** For people; empty when the catalogue gives none. */
    String name();

    /** What it costs and who sells or does it. */
    Offer offer();

    /** A part to buy. */
    record Bought(PartKind kind, String code, String name, Offer offer) implements Decided {
        public Bought {
            requireCode(code);
        }
    }

    /**
     * Work for the machine shop; the term it changes and the datum are those of its kind.
     * @param amount    taken off, or the size made [length above 0]
     * @param from      size of the term before the job; null when not known, or for a part made new
     * @param to        size of the term after the job; null when not known
     * @param tolerance half-width to which the job is held [length above 0]; null when the shop says none
     * @param note      other sizes to make; empty for none
     */
    record Work(
            Operation.Kind kind,
            String code,
            String name,
            Offer offer,
            Quantity amount,
            @Nullable Quantity from,
            @Nullable Quantity to,
            @Nullable Quantity tolerance,
            String note)
            implements Decided {
        public Work {
            requireCode(code);
            requireWidth("amount", amount);
            if (tolerance != null) {
                requireWidth("tolerance", tolerance);
            }
            requireSize("from", from, kind.changes().dimension());
            requireSize("to", to, kind.changes().dimension());
        }

        public Optional<Quantity> before() {
            return Optional.ofNullable(from);
        }

        public Optional<Quantity> after() {
            return Optional.ofNullable(to);
        }

        /** What is to be done, in words with its amount. */
        public String job() {
            return kind.job(amount.si());
        }
    }

    private static void requireCode(String code) {
        if (code.isBlank()) {
            throw new IllegalArgumentException("what is taken needs the code by which it is ordered");
        }
    }

    private static void requireWidth(String name, Quantity width) {
        if (width.dimension() != Dimension.LENGTH || !(width.si() > 0)) {
            throw new IllegalArgumentException(
                    name + " of work is " + width.written() + "; it must be a length above 0");
        }
    }

    private static void requireSize(String name, @Nullable Quantity size, Dimension dimension) {
        if (size != null && size.dimension() != dimension) {
            throw new IllegalArgumentException(
                    name + " of work is " + size.written() + "; it must be " + dimension.withArticle());
        }
    }
}
