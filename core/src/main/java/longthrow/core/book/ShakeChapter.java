package longthrow.core.book;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.measure.Appraisal;
import longthrow.core.quantity.Dimension;
import longthrow.core.shake.Shake;

/**
 * Where the shake goes.
 * @param at        which speed of the crank it is told; empty when none is known
 * @param sentences what it comes to, and what no counterweight can cancel
 * @param figures   masses, factor, forces, movement
 * @param trade     what a counterweight makes of the once-a-turn force
 * @param holes     any one of which would lighten the counterweight to what the trade uses
 * @param pistons   on offer, each with the factor it would make
 * @param missing   what would have to be read for the rest
 * @param line      for the wall: balance factor and what is to be drilled
 */
public record ShakeChapter(
        String at,
        List<String> sentences,
        List<Book.Figure> figures,
        List<Trade> trade,
        List<Holes> holes,
        List<Book.Figure> pistons,
        List<Rung.Missing> missing,
        String line) {
    /** Readings named on the wall; layout. */
    private static final int NAMED = 3;

    private static final String NO_ENGINE = "Balance and shake unknown: " + Appraisal.NO_ENGINE + ".";

    public ShakeChapter {
        sentences = List.copyOf(sentences);
        figures = List.copyOf(figures);
        trade = List.copyOf(trade);
        holes = List.copyOf(holes);
        pistons = List.copyOf(pistons);
        missing = List.copyOf(missing);
    }

    /** A balance factor, and the force it leaves along the cylinder and across it. */
    public record Trade(String factor, String along, String across) {}

    /**
     * Holes in the counterweights, parallel to the crankshaft.
     * @param aim    what they are drilled for
     * @param drill  how many, and the drill
     * @param where  their centres stand
     * @param depth  to the full diameter
     * @param wall   left beyond the tip
     * @param result balance factor after it
     */
    public record Holes(String aim, String drill, String where, String depth, String wall, String result) {}

    /** Of an answer; one without forces comes of readings that make no engine. */
    static ShakeChapter of(Optional<Shaking> told, Words words) {
        return told.map(shaking -> of(shaking, words))
                .orElse(new ShakeChapter(
                        "", List.of(NO_ENGINE), List.of(), List.of(), List.of(), List.of(), List.of(), NO_ENGINE));
    }

    private static ShakeChapter of(Shaking shaking, Words words) {
        List<Holes> holes =
                shaking.drilling().stream().map(h -> holes(h, words)).toList();
        return new ShakeChapter(
                Double.isNaN(shaking.speed()) ? "" : words.exact(Dimension.ROTATIONAL_SPEED, shaking.speed()),
                shaking.sentences(),
                shaking.figures().stream()
                        .map(f -> new Book.Figure(f.label(), words.line(f.dimension(), f.figure())))
                        .toList(),
                shaking.trade().stream()
                        .map(t -> new Trade(
                                String.format(Locale.ROOT, "%.0f %%", 100 * t.factor()),
                                words.line(Dimension.FORCE, t.along()),
                                words.line(Dimension.FORCE, t.across())))
                        .toList(),
                holes,
                shaking.pistons().stream()
                        .map(p -> new Book.Figure(
                                p.name().isEmpty() ? p.code() : p.code() + ": " + p.name(),
                                words.line(Dimension.RATIO, p.factor())))
                        .toList(),
                shaking.missing(),
                line(shaking, holes, words));
    }

    private static Holes holes(Shaking.Holes holes, Words words) {
        return new Holes(
                holes.aim().label(),
                holes.count() + " of " + words.exact(Dimension.LENGTH, holes.diameter()),
                words.exact(Dimension.LENGTH, holes.radius())
                        + " from the crank axis, half of them each side of the middle",
                words.line(Dimension.LENGTH, holes.depth()),
                words.line(Dimension.LENGTH, holes.wall()),
                words.line(Dimension.RATIO, holes.result()));
    }

    private static String line(Shaking shaking, List<Holes> holes, Words words) {
        Optional<Shaking.Figure> factor = shaking.figures().stream()
                .filter(f -> f.key().equals(Shake.BALANCE_FACTOR))
                .findFirst();
        if (factor.isEmpty()) {
            List<String> read = shaking.missing().stream()
                    .map(Rung.Missing::what)
                    .limit(NAMED)
                    .toList();
            return "Balance factor and drill plan unknown"
                    + (read.isEmpty()
                            ? "."
                            : ": read " + String.join(", ", read)
                                    + (shaking.missing().size() > NAMED ? " and more." : "."));
        }
        String plan = holes.isEmpty()
                ? factor.get().figure().value() > Shake.MOST_FACTOR
                        ? "drill plan: none that is safe was found."
                        : "no hole is called for: the counterweight is not heavy."
                : "drill " + holes.get(0).drill() + ", " + holes.get(0).depth() + " deep, "
                        + holes.get(0).wall() + " left, factor then "
                        + holes.get(0).result() + " (" + holes.get(0).aim() + ").";
        return "Balance factor " + words.line(Dimension.RATIO, factor.get().figure()) + "; " + plan;
    }
}
