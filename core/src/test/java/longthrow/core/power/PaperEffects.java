package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;

/** What a change did to an engine in a paper, beside the difference of two predictions in which only that differs. */
final class PaperEffects {
    /** Where a mean over the curve is told and its speeds are not: these [rpm], our choice. */
    private static final double[] OVER_THE_CURVE = {4000, 5000, 6000, 7000, 8000};

    /** What the longer cam's duration is taken to be told at [m]; the paper's abstract does not say. */
    private static final double CAM_TOLD_AT = 0.001;

    private PaperEffects() {}

    /** How an effect counts. */
    enum Score {
        SIZE,
        SIGN,
        NONE
    }

    /**
     * One effect.
     * @param measured  relative gain
     * @param predicted relative gain; empty where nothing was printed to predict from
     */
    record Effect(
            String id,
            String quantity,
            String change,
            double measured,
            OptionalDouble predicted,
            Score score,
            String note) {
        /** Whether it is as asked; empty where it is not scored. */
        Optional<Boolean> held() {
            double found = predicted.orElse(Double.NaN);
            return switch (score) {
                case SIZE -> Optional.of(Math.abs(found - measured) <= 0.02);
                case SIGN -> Optional.of(found * measured > 0);
                case NONE -> Optional.empty();
            };
        }
    }

    static Figures figures(Map<String, String> row, OptionalDouble compression, Fuel fuel) {
        int valves = Integer.parseInt(PublishedEngine.text(row, "valves"));
        Kind kind = new Kind(
                Kind.Use.ROAD,
                PublishedEngine.cooling(PublishedEngine.text(row, "cooling")),
                Kind.Layout.OVERHEAD_CAM,
                valves / 2,
                valves / 2,
                Kind.Basis.MAKER);
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        PublishedEngine.put(known, Needed.BORE, PublishedEngine.number(row, "bore_mm"), 1e-3);
        PublishedEngine.put(known, Needed.STROKE, PublishedEngine.number(row, "stroke_mm"), 1e-3);
        PublishedEngine.put(known, Needed.COMPRESSION_RATIO, compression, 1);
        PublishedEngine.put(known, Needed.VENTURI, PublishedEngine.number(row, "carb_or_throttle_mm"), 1e-3);
        return Figures.of(kind, fuel, known);
    }

    private static Figures figures(Map<String, String> row) {
        return figures(row, PublishedEngine.number(row, "compression_ratio"), Fuel.petrol());
    }

    private static Map<String, String> row(String id, String quantity) {
        return PublishedEngine.rows("paper_effects").stream()
                .filter(row -> PublishedEngine.text(row, "id").equals(id)
                        && PublishedEngine.text(row, "quantity").equals(quantity))
                .findFirst()
                .orElseThrow();
    }

    private static double speed(Map<String, String> row, String which) {
        return PublishedEngine.number(row, "rpm_" + which).orElseThrow();
    }

    private static Effect effect(Map<String, String> row, OptionalDouble predicted, Score score, String note) {
        return new Effect(
                PublishedEngine.text(row, "id"),
                PublishedEngine.text(row, "quantity"),
                PublishedEngine.text(row, "change"),
                PublishedEngine.number(row, "gain_pct").orElseThrow() / 100,
                predicted,
                score,
                note);
    }

    private static double torque(Figures figures, double rpm) {
        return Truth.at(figures, rpm).torque();
    }

    /** RON 88 and 92: the same petrol but for its octane number. */
    static Effect octane(String quantity) {
        Map<String, String> row = row("P05", quantity);
        OptionalDouble compression = PublishedEngine.number(row, "compression_ratio");
        double rpm = speed(row, "after");
        Curve.Point low = Truth.at(figures(row, compression, Fuel.petrol(88)), rpm);
        Curve.Point high = Truth.at(figures(row, compression, Fuel.petrol(92)), rpm);
        return effect(
                row,
                OptionalDouble.of(high.torque() / low.torque() - 1),
                Score.SIZE,
                String.format(
                        Locale.ROOT,
                        "the octane number reaches the torque only by knock, which the prediction tells and does not take off; it finds %.0f octane wanted",
                        high.point().fire().orElseThrow().octaneWanted()));
    }

    /** Compression 8 to 11, exact mixture, best spark. */
    static Effect compression() {
        Map<String, String> row = row("P09", "torque");
        double[] torques = DoubleStream.of(8, 11)
                .map(ratio -> {
                    Figures figures = figures(row, OptionalDouble.of(ratio), Fuel.petrol());
                    return torque(figures.with(Needed.MIXTURE, 1), speed(row, "after"));
                })
                .toArray();
        return effect(
                row,
                OptionalDouble.of(torques[1] / torques[0] - 1),
                Score.SIZE,
                String.format(
                        Locale.ROOT,
                        "%.1f %% for each unit beside 2.5; the measured figure is from memory",
                        100 * (torques[1] / torques[0] - 1) / 3));
    }

    /** The printed static angles, taken as the angles at that speed. */
    static Effect fewDegrees(String quantity) {
        Map<String, String> row = row("P02", quantity);
        double rpm = speed(row, "after");
        double gain = sparked(row, 17, rpm) / sparked(row, 15, rpm) - 1;
        return effect(
                row,
                OptionalDouble.of(gain),
                Score.SIGN,
                "static angles; how the ignition advances with speed is not printed, so they stand as they are");
    }

    private static double sparked(Map<String, String> row, double degrees, double rpm) {
        return torque(figures(row).with(Needed.SPARK, Math.toRadians(degrees)), rpm);
    }

    /** Spark from 15 to 20, then on to 22.5 and 25, where the paper found less than at 20. */
    static List<Effect> manyDegrees() {
        Map<String, String> row = row("P03", "torque");
        double[] means = DoubleStream.of(15, 20, 22.5, 25)
                .map(degrees -> DoubleStream.of(OVER_THE_CURVE)
                        .parallel()
                        .map(rpm -> sparked(row, degrees, rpm))
                        .sum())
                .toArray();
        List<Effect> effects = new ArrayList<>();
        effects.add(effect(
                row, OptionalDouble.of(means[1] / means[0] - 1), Score.SIGN, "mean of 4000 to 8000 rpm, our choice"));
        double further = Math.max(means[2], means[3]) / means[1] - 1;
        effects.add(
                new Effect(
                        "P03",
                        "torque",
                        "spark 20 to 22.5 or 25 degrees, the better (how much less is not printed)",
                        -Double.MIN_VALUE,
                        OptionalDouble.of(further),
                        Score.SIGN,
                        "static angles again: with what the ignition advances on top, 20 is near the best; without it, it is not"));
        return effects;
    }

    /** A longer cam, at the speeds of its own peaks. */
    static Effect cam(String quantity) {
        Map<String, String> row = row("P01", quantity);
        Figures before = figures(row);
        Figures after = before.with(Needed.CHECKING_LIFT, CAM_TOLD_AT);
        for (boolean intake : new boolean[] {true, false}) {
            Needed opens = intake ? Needed.INTAKE_OPENS : Needed.EXHAUST_OPENS;
            Needed closes = intake ? Needed.INTAKE_CLOSES : Needed.EXHAUST_CLOSES;
            double more = Math.toRadians(255) - Math.PI - before.number(opens) - before.number(closes);
            after = after.with(opens, before.number(opens) + 0.5 * more)
                    .with(closes, before.number(closes) + 0.5 * more);
        }
        double first = speed(row, "before");
        double then = speed(row, "after");
        double gain = torque(after, then) / torque(before, first);
        return effect(
                row,
                OptionalDouble.of(("power".equals(quantity) ? gain * then / first : gain) - 1),
                Score.NONE,
                "what the standard cam was is not printed (the usual is taken), nor at which lift the 255 degrees are told (1 mm is taken)");
    }

    /** Nothing printed of the engine. */
    static Effect porting(String quantity) {
        return effect(row("P08", quantity), OptionalDouble.empty(), Score.NONE, "no bore, stroke or ratio is printed");
    }

    static List<Effect> run() {
        List<Effect> effects = new ArrayList<>(
                List.of(octane("torque"), octane("power"), compression(), fewDegrees("torque"), fewDegrees("power")));
        effects.addAll(manyDegrees());
        effects.addAll(List.of(cam("torque"), cam("power"), porting("torque"), porting("power")));
        return effects;
    }

    static String line(Effect effect) {
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %s | %s |",
                effect.id(),
                effect.quantity(),
                effect.change(),
                Math.abs(effect.measured()) < 1e-6 ? "less" : percent(effect.measured()),
                effect.predicted().isPresent() ? percent(effect.predicted().getAsDouble()) : "cannot be",
                effect.held()
                        .map(held -> (effect.score() == Score.SIZE ? "within 2 points: " : "sign: ")
                                + (held ? "yes" : "**no**"))
                        .orElse("not scored"),
                effect.note());
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * share);
    }

    static String section(List<Effect> effects) {
        return """

                ## What a change does

                Gains that papers measured beside the difference of two predictions in which only what the paper changed differs; the engine as printed (bore, stroke and ratio from memory for the most part, says the column `engine_how` of
                `paper_effects.csv`), the rest the usual of the road.

                | paper | figure | change | measured | predicted | scored | note |
                |---|---|---|---|---|---|---|
                """
                + effects.stream().map(PaperEffects::line).collect(Collectors.joining("\n"))
                + "\n\n| asked | measured |\n|---|---|\n"
                + Truth.score("P05 and P09: size within 2 points", "%s", count(effects, Score.SIZE))
                + Truth.score("P02 and P03: sign", "%s", count(effects, Score.SIGN));
    }

    private static String count(List<Effect> effects, Score score) {
        List<Effect> scored =
                effects.stream().filter(effect -> effect.score() == score).toList();
        return scored.stream().filter(effect -> effect.held().orElseThrow()).count() + " of " + scored.size();
    }
}
