package longthrow.core.overlay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.gain.AirCorrection;
import longthrow.core.gain.AirReading;
import longthrow.core.gain.AirStandard;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;

/**
 * From the air of a standard back to that in which the prediction stands, by the same standard: what was corrected by one factor is divided by the factor of the other air. What both factors share, how this engine
 * follows the air above all, counts only by how far the two airs lie apart.
 */
final class OneAir {
    private final DynoRuns runs;
    private final FigurePrinter printer;
    private final Optional<TorqueCurve.Air> air;
    private final Optional<AirCorrection> there;

    OneAir(DynoRuns runs, TorqueCurve curve, FigurePrinter printer) {
        this.runs = runs;
        this.printer = printer;
        this.air = curve.air();
        this.there = Arrays.stream(AirStandard.values())
                .filter(s -> s.label().equals(runs.standard()))
                .findFirst()
                .flatMap(s -> reading().map(s::correct));
    }

    /** The doubt of the build's own air is in the prediction's band: here it is the air that was reckoned with. */
    private Optional<AirReading> reading() {
        return air.map(a -> new AirReading(
                Measured.exact(a.pressure().value()),
                Measured.exact(a.temperature().value()),
                Measured.exact(a.humidity().value())));
    }

    /** Whether these can be brought to the prediction's air. */
    boolean isBrought(List<DynoRuns.Run> of) {
        return there.isPresent() && of.stream().allMatch(r -> r.factor().isPresent());
    }

    /** What corrected figures of the standard's air are multiplied by to stand in the prediction's; 1 where they cannot be brought there. */
    double back(List<DynoRuns.Run> of) {
        return isBrought(of) ? 1 / there.orElseThrow().factor().value() : 1;
    }

    /** 95 % half-width, as a share, of what brought the mean of these runs from the air of their days to the prediction's; 0 where nothing was brought. */
    double half(List<DynoRuns.Run> of) {
        return isBrought(of) ? share(of).expanded() : 0;
    }

    private Measured share(List<DynoRuns.Run> of) {
        Map<Source, Double> doubt = new LinkedHashMap<>();
        Measured to = there.orElseThrow().factor();
        for (DynoRuns.Run run : of) {
            Measured from = run.factor().orElseThrow();
            from.contributions().forEach((source, c) -> doubt.merge(source, c / from.value() / of.size(), Double::sum));
        }
        to.contributions().forEach((source, c) -> doubt.merge(source, -c / to.value(), Double::sum));
        return Measured.withContributions(1, doubt);
    }

    /** A figure that was corrected by a factor, brought on; its doubt shares what the two factors share. */
    Measured brought(Measured corrected, boolean isBrought) {
        if (!isBrought) {
            return corrected;
        }
        Measured to = there.orElseThrow().factor();
        double value = corrected.value() / to.value();
        Map<Source, Double> doubt = new LinkedHashMap<>();
        corrected.contributions().forEach((source, c) -> doubt.merge(source, c / to.value(), Double::sum));
        to.contributions().forEach((source, c) -> doubt.merge(source, -c * value / to.value(), Double::sum));
        return Measured.withContributions(value, doubt);
    }

    /** The air of the prediction, in words. */
    String words() {
        return air.map(a ->
                        said(Dimension.TEMPERATURE, a.temperature()) + " and " + said(Dimension.PRESSURE, a.pressure())
                                + String.format(
                                        Locale.ROOT,
                                        ", relative humidity %.0f %%",
                                        100 * a.humidity().value()))
                .orElse("a day that is not told");
    }

    private String said(Dimension dimension, Measured figure) {
        return printer.print(dimension, figure.value(), figure.expanded())
                .first()
                .text();
    }

    List<String> sentences() {
        if (there.isEmpty()) {
            return List.of(
                    "The runs stand as they were read, in the air of their days; the prediction stands in air of "
                            + words() + ". Neither was brought to the other.");
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(String.format(
                Locale.ROOT,
                "The prediction stands in air of %s. The runs, corrected to %s, were brought there by the same standard: times %.4f.",
                words(),
                runs.standard(),
                1 / there.get().factor().value()));
        if (!there.get().isWithin()) {
            sentences.add("That is further than the standard is meant for: "
                    + String.join("; ", there.get().beyond()) + ".");
        }
        return sentences;
    }
}
