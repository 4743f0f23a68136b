package longthrow.workshop.web.shake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Shaking;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;
import longthrow.workshop.draw.HodographChart;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Around;
import longthrow.workshop.web.BothUnits;
import longthrow.workshop.web.ChosenSpeed;
import longthrow.workshop.web.ToRead;

/**
 * Where the shake goes, laid out.
 * @param base    address of the build
 * @param speeds  that can be chosen
 * @param told    at the one chosen
 * @param holes   that would lighten it, in words
 * @param pistons on offer, in words
 * @param toRead  what is missing
 * @param around  what stands around every answer
 */
public record ShakeAnswer(
        String base,
        Speeds speeds,
        Told told,
        List<Hole> holes,
        List<Figure> pistons,
        List<ToRead> toRead,
        Around around) {
    public ShakeAnswer {
        holes = List.copyOf(holes);
        pistons = List.copyOf(pistons);
        toRead = List.copyOf(toRead);
    }

    /**
     * Speeds to choose from [rpm].
     * @param bare  shown, without its unit; empty where none is known
     * @param least of slider and field
     * @param most  of the field
     * @param slide most of the slider; 0 where the build has no speed to go by
     */
    public record Speeds(String bare, int least, int most, int step, int slide) {
        /** As it stands in the field, with its unit. */
        public String shown() {
            return bare.isEmpty() ? "" : bare + " " + Units.RPM.symbol();
        }
    }

    /**
     * What hangs on the speed.
     * @param trouble   why another speed is not shown; empty for none
     * @param at        speed it is told at, in a sentence
     * @param unknown   address of the field of the speed wanted where no speed is known; else empty
     * @param sentences what it comes to
     * @param path      of the force, as SVG; empty where it is not known
     * @param beside    what the broken line is; empty where there is none
     * @param trade     what a counterweight makes of the once-a-turn force
     */
    public record Told(
            String trouble,
            String at,
            String unknown,
            List<String> sentences,
            String path,
            String beside,
            List<Figure> figures,
            List<Trade> trade) {
        public Told {
            sentences = List.copyOf(sentences);
            figures = List.copyOf(figures);
            trade = List.copyOf(trade);
        }
    }

    /** A figure with its doubt. */
    public record Figure(String label, BothUnits words) {}

    /** A balance factor and what it leaves along the cylinder and across it. */
    public record Trade(String factor, boolean own, BothUnits along, BothUnits across) {}

    /** Where to drill what, and what is left. */
    public record Hole(String aim, String drill, String where, BothUnits depth, BothUnits wall, BothUnits result) {}

    /**
     * Laid out.
     * @param own      at the speed of the build
     * @param shown    at the speed to be shown
     * @param isWanted whether the build says which speed is wanted
     */
    static ShakeAnswer of(Answer own, Answer shown, ChosenSpeed view, boolean isWanted, String base) {
        FigurePrinter printer = new FigurePrinter(own.units());
        Optional<Shaking> shaking = shown.shaking();
        Optional<Double> of = own.shaking().map(Shaking::speed).filter(speed -> !Double.isNaN(speed));
        int slide = of.map(HodographChart::farthestRpm).orElse(0);
        return new ShakeAnswer(
                base,
                new Speeds(
                        shaking.map(Shaking::speed)
                                .filter(speed -> !Double.isNaN(speed))
                                .map(speed -> String.format(Locale.ROOT, "%.0f", Units.RPM.fromSi(speed)))
                                .orElse(""),
                        (int) Math.round(
                                Units.RPM.fromSi(Term.WANTED_SPEED.believable().least())),
                        (int) Math.round(
                                Units.RPM.fromSi(Term.WANTED_SPEED.believable().most())),
                        HodographChart.STEP_RPM,
                        slide),
                told(own, shown, view, isWanted, printer, base),
                shaking.map(Shaking::drilling).orElse(List.of()).stream()
                        .map(h -> hole(printer, h))
                        .toList(),
                shaking.map(Shaking::pistons).orElse(List.of()).stream()
                        .map(p -> new Figure(
                                p.code() + ", " + p.name(), BothUnits.of(printer, Dimension.RATIO, p.factor())))
                        .toList(),
                own.shaking().map(s -> ToRead.of(s.missing(), base)).orElse(List.of()),
                Around.of(own, base));
    }

    private static Told told(
            Answer own, Answer shown, ChosenSpeed view, boolean isWanted, FigurePrinter printer, String base) {
        Optional<Shaking> shaking = shown.shaking();
        Optional<Double> of = own.shaking().map(Shaking::speed).filter(speed -> !Double.isNaN(speed));
        Optional<Double> at = shaking.map(Shaking::speed).filter(speed -> !Double.isNaN(speed));
        boolean isAnother = view.speed().isPresent() && !at.equals(of);
        String whose = isWanted ? "the speed wanted" : "the maker's governed or rated speed";
        String said = at.map(speed -> "At " + exact(printer, Dimension.ROTATIONAL_SPEED, speed)
                        + (isAnother
                                ? ", chosen here"
                                        + of.map(s -> "; " + whose + " is "
                                                        + exact(printer, Dimension.ROTATIONAL_SPEED, s))
                                                .orElse("")
                                : ", " + whose)
                        + ".")
                .orElse("No speed is known, so no force is told.");
        List<Shaking.Point> path = shaking.map(Shaking::path).orElse(List.of());
        List<Shaking.Point> beside =
                isAnother ? own.shaking().map(Shaking::path).orElse(List.of()) : List.of();
        Optional<Double> factor = shaking.flatMap(ShakeAnswer::factor);
        return new Told(
                view.trouble(),
                said,
                at.isPresent() ? "" : base + "/measure/" + Term.WANTED_SPEED.path(),
                shaking.map(Shaking::sentences).orElse(List.of()).stream()
                        .map(PageWords::said)
                        .toList(),
                path.isEmpty()
                        ? ""
                        : HodographChart.of(
                                path,
                                beside,
                                own.shaking().map(HodographChart::reach).orElse(0.0),
                                HodographChart.words(printer),
                                "Path of the shaking force over one turn. " + said,
                                "hodograph"),
                beside.isEmpty() ? "" : whose,
                shaking.map(Shaking::figures).orElse(List.of()).stream()
                        .map(f -> new Figure(f.label(), BothUnits.of(printer, f.dimension(), f.figure())))
                        .toList(),
                shaking.map(Shaking::trade).orElse(List.of()).stream()
                        .map(t -> new Trade(
                                String.format(Locale.ROOT, "%.0f %%", 100 * t.factor()),
                                factor.equals(Optional.of(t.factor())),
                                BothUnits.of(printer, Dimension.FORCE, t.along()),
                                BothUnits.of(printer, Dimension.FORCE, t.across())))
                        .toList());
    }

    private static Optional<Double> factor(Shaking shaking) {
        return shaking.figures().stream()
                .filter(f -> f.key().equals("balance_factor"))
                .map(f -> f.figure().value())
                .findFirst();
    }

    private static Hole hole(FigurePrinter printer, Shaking.Holes holes) {
        return new Hole(
                holes.aim().label(),
                holes.count() + " of " + exact(printer, Dimension.LENGTH, holes.diameter()),
                exact(printer, Dimension.LENGTH, holes.radius()),
                BothUnits.of(printer, Dimension.LENGTH, holes.depth()),
                BothUnits.of(printer, Dimension.LENGTH, holes.wall()),
                BothUnits.of(printer, Dimension.RATIO, holes.result()));
    }

    private static String exact(FigurePrinter printer, Dimension dimension, double si) {
        return printer.print(dimension, si, 0).line();
    }
}
