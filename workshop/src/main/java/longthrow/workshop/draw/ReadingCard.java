package longthrow.workshop.draw;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Percent;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * How one reading is taken: a picture with datum and instrument, a few steps, what goes wrong most often, and the scatter to expect.
 * Speeds that stand on a maker's sheet, and your own wishes, are not read on the bench and have no card. Steps and mistakes are common practice,
 * no source; errors are those of the bench's one table, {@link ReadingKind} and {@link InstrumentKind}.
 */
public final class ReadingCard {
    /** Draws the picture of a reading. */
    @FunctionalInterface
    interface Scene {
        /** Draws into a sketch that knows its term. */
        void draw(CardSketch sketch);
    }

    private static final Map<Term, ReadingCard> CARDS = cards();

    private final Term term;
    private final String datum;
    private final Scene scene;
    private final String mistake;
    private final List<String> steps;
    private final String caution;

    ReadingCard(Term term, String datum, Scene scene, String mistake, List<String> steps, String caution) {
        this.term = term;
        this.datum = datum;
        this.scene = scene;
        this.mistake = mistake;
        this.steps = List.copyOf(steps);
        this.caution = caution;
    }

    static ReadingCard card(Term term, String datum, Scene scene, String mistake, String... steps) {
        return new ReadingCard(term, datum, scene, mistake, List.of(steps), "");
    }

    ReadingCard cautioned(String what) {
        return new ReadingCard(term, datum, scene, mistake, steps, what);
    }

    private static Map<Term, ReadingCard> cards() {
        Map<Term, ReadingCard> cards = new EnumMap<>(Term.class);
        Stream.of(
                        WholeCards.cards(),
                        WeighingCards.cards(),
                        RunningCards.cards(),
                        PlaceCards.cards(),
                        BreathingCards.cards(),
                        RestrictorCards.cards(),
                        JetCards.cards(),
                        ShaftCards.cards(),
                        FlywheelCards.cards(),
                        HeadCards.cards(),
                        ValveCards.cards(),
                        ValveShapeCards.cards(),
                        SpringCards.cards(),
                        RockerCards.cards(),
                        CamshaftCards.cards(),
                        ReleaseCards.cards(),
                        CylinderCards.cards(),
                        CaseCards.cards(),
                        PistonCards.cards(),
                        PistonShapeCards.cards(),
                        RodCards.cards(),
                        RodShapeCards.cards(),
                        RodBoltCards.cards(),
                        CrankCards.cards(),
                        CounterweightCards.cards())
                .flatMap(List::stream)
                .forEach(card -> {
                    if (cards.put(card.term, card) != null) {
                        throw new IllegalStateException(card.term + " has two cards");
                    }
                });
        return Collections.unmodifiableMap(cards);
    }

    /** The card of a term; none for what is worked out, stands on a maker's sheet or is a wish. */
    public static Optional<ReadingCard> of(Term term) {
        return Optional.ofNullable(CARDS.get(term));
    }

    /** Every card, in stripping order. */
    public static List<ReadingCard> all() {
        return List.copyOf(CARDS.values());
    }

    public Term term() {
        return term;
    }

    /** What is measured from, in a few words; they stand in the picture too. */
    public String datum() {
        return datum;
    }

    /** The usual instrument, as the picture names it. */
    public String instrument() {
        return kind().label();
    }

    private InstrumentKind kind() {
        return term.reading().usualInstrument();
    }

    /** Two to four short steps. */
    public List<String> steps() {
        return steps;
    }

    /** What goes wrong most often, one sentence. */
    public String mistake() {
        return mistake;
    }

    /** Where it can hurt; empty where it does not. */
    public Optional<String> caution() {
        return caution.isEmpty() ? Optional.empty() : Optional.of(caution);
    }

    /** As {@link #usualError(UnitSystem)}, metric first. */
    public String usualError() {
        return usualError(UnitSystem.METRIC_FIRST);
    }

    /** What one careful reading scatters by and what the instrument may be off by: the figures taken where the build states none. */
    public String usualError(UnitSystem units) {
        if (term.dimension() == Dimension.COUNT) {
            return "none: counted";
        }
        StringBuilder text = new StringBuilder("one reading scatters by ")
                .append(printed(units, term.reading().repeatability()))
                .append(" (standard deviation); the instrument shows steps of ")
                .append(printed(units, kind().resolution()));
        if (kind().statedError() > 0) {
            text.append(" and may be off by ").append(printed(units, kind().statedError()));
        }
        if (kind().relativeError() > 0) {
            text.append(kind().statedError() > 0 ? " and " : " and may be off by ")
                    .append(Percent.ofShare(kind().relativeError()))
                    .append(" of the reading");
        }
        return text.append(" (19 times in 20)").toString();
    }

    private String printed(UnitSystem units, double si) {
        if (term.reading() == ReadingKind.COILS) {
            return BigDecimal.valueOf(si).toPlainString() + " of a coil";
        }
        if (term.dimension() == Dimension.RATIO) {
            return Percent.ofShare(si);
        }
        return new FigurePrinter(units)
                .print(difference(term.dimension()), si, 0)
                .line();
    }

    /** An error of a temperature is a difference of temperatures. */
    private static Dimension difference(Dimension dimension) {
        return dimension == Dimension.TEMPERATURE ? Dimension.TEMPERATURE_DIFFERENCE : dimension;
    }

    /**
     * The picture, a whole SVG element.
     * @param idPrefix begins its ids; another for each drawing on a page
     */
    public String svg(String idPrefix) {
        Svg svg = new Svg(
                idPrefix,
                CardSketch.WIDTH,
                CardSketch.HEIGHT,
                "Reading of " + term.label() + ", " + term.symbol(),
                "Measured from: " + datum + ". Instrument: " + instrument() + ". Read: " + term.meaning() + ". How: "
                        + term.reading().how() + ".");
        CardSketch sketch = new CardSketch(svg, term, datum, instrument());
        sketch.caption();
        scene.draw(sketch);
        sketch.setWords();
        return svg.finished();
    }
}
