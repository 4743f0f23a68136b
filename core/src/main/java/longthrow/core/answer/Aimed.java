package longthrow.core.answer;

import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/**
 * A figure held against what the owner aims at: one figure, or a limit of his own. One figure has no tolerance, so it cannot be surely
 * met: either the aim lies within the doubt, or it is missed. A limit is judged as every limit is (JCGM 106:2012 8.3).
 * @param term  the figure
 * @param wish  the aim as it was written, or what the owner calls his limit
 * @param least inclusive [SI]; negative infinity for none; the aim itself where it is one figure
 * @param most  inclusive [SI]; positive infinity for none; the aim itself where it is one figure
 * @param off   how far the figure stands outside [SI]: positive above, negative below, 0 inside; NaN when the figure is not known
 * @param doubt 95 % half-width of it [SI]; NaN when not known
 * @param state how it stands
 * @param brief by how much and on which side, in a few words, for under the figure
 * @param said  the same with its doubt, in both units
 */
public record Aimed(
        Term term,
        String wish,
        double least,
        double most,
        double off,
        double doubt,
        State state,
        String brief,
        String said) {

    /** How a figure stands to an aim. */
    public enum State {
        /** A limit is surely kept. */
        MEETS("meets", "meets"),
        /** Whether a limit is kept cannot be told. */
        NEAR("near", "near"),
        /** One figure is aimed at, and it lies within the doubt. */
        WITHIN_DOUBT("within_doubt", "within the doubt"),
        /** Outside, beyond the doubt. */
        MISSES("misses", "misses"),
        /** The figure or its doubt is not known. */
        UNKNOWN("unknown", "not known");

        private final String key;
        private final String label;

        State(String key, String label) {
            this.key = key;
            this.label = label;
        }

        /** In JSON. */
        public String key() {
            return key;
        }

        /** For people. */
        public String label() {
            return label;
        }

        private static State of(Verdict.State state) {
            return switch (state) {
                case MEETS -> MEETS;
                case NEAR -> NEAR;
                case FAILS -> MISSES;
                case UNKNOWN -> UNKNOWN;
            };
        }
    }

    /**
     * One figure is aimed at.
     * @param why why the figure is not known, for people; not looked at where it is known
     */
    public static Aimed at(Term term, Quantity aim, Optional<Measured> figure, String why, FigurePrinter printer) {
        Optional<Measured> known = figure.filter(f -> !f.isUnknown());
        if (known.isEmpty()) {
            String said = "you aim at " + printer.print(aim).line() + "; "
                    + (why.isEmpty() ? term.label() + " is not known" : why);
            return new Aimed(
                    term,
                    aim.written(),
                    aim.si(),
                    aim.si(),
                    Double.NaN,
                    Double.NaN,
                    State.UNKNOWN,
                    "aim " + aim.written(),
                    said);
        }
        double off = known.get().value() - aim.si();
        double doubt = known.get().expanded();
        boolean within = isWithin(off, doubt);
        String side = off == 0 ? " on " : off > 0 ? " above " : " below ";
        PrintedFigures by = printer.print(difference(term), Math.abs(off), doubt);
        return new Aimed(
                term,
                aim.written(),
                aim.si(),
                aim.si(),
                off,
                doubt,
                within ? State.WITHIN_DOUBT : State.MISSES,
                (off == 0 ? "" : bare(by.first())) + side + "your aim of " + aim.written(),
                by.line() + (off == 0 ? " from " : side) + "your aim of "
                        + printer.print(aim).line() + (within ? ", within the doubt" : ", outside the doubt"));
    }

    /** A limit of the owner's own, judged already. */
    public static Aimed limit(Verdict verdict, Optional<Measured> figure) {
        Optional<Measured> known = figure.filter(f -> !f.isUnknown());
        return new Aimed(
                verdict.term(),
                verdict.label(),
                verdict.least(),
                verdict.most(),
                known.map(f -> outside(f.value(), verdict.least(), verdict.most()))
                        .orElse(Double.NaN),
                known.map(Measured::expanded).orElse(Double.NaN),
                State.of(verdict.state()),
                verdict.label(),
                verdict.label() + ": " + verdict.why() + (verdict.cure().isEmpty() ? "" : ". Cure: " + verdict.cure()));
    }

    /** Whether an aim so far off cannot be told from the figure. [SI] */
    public static boolean isWithin(double off, double doubt) {
        return Math.abs(off) <= doubt;
    }

    private static double outside(double value, double least, double most) {
        return value < least ? value - least : value > most ? value - most : 0;
    }

    private static Dimension difference(Term term) {
        return term.dimension().ofDifference();
    }

    private static String bare(Figure figure) {
        return new Figure(figure.value(), "", figure.unit()).text();
    }

    /** Whether one figure is aimed at; otherwise it is a limit. */
    public boolean isOneFigure() {
        return least == most;
    }
}
