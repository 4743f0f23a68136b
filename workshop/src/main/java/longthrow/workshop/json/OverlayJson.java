package longthrow.workshop.json;

import java.util.Arrays;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.quantity.Dimension;

/** What was measured over what is predicted, as JSON. */
final class OverlayJson {
    private static final JsonShape<Overlay.At> AT = new JsonShape<Overlay.At>()
            .numberOrNull(
                    "speed", "of the crank, in rad/s; null for a peak of which it was not written", Overlay.At::speed)
            .number(
                    "measured",
                    "in the prediction's air where it could be brought there, in N m or W",
                    Overlay.At::measured)
            .numberOrNull("measured_half", "95 % half-width; null where it is not known", Overlay.At::measuredHalf)
            .numberOrNull("predicted", "in the same unit; null where none is told", Overlay.At::predicted)
            .numberOrNull(
                    "predicted_half",
                    "95 % half-width; null where it is not known or none is told",
                    Overlay.At::predictedHalf)
            .numberOrNull(
                    "difference",
                    "predicted less measured, as a share of the measured; null where none is told",
                    Overlay.At::difference)
            .numberOrNull("half", "95 % half-width of it by both doubts; null where it is not known", Overlay.At::half)
            .truth("within", "whether the two lie within their doubts together", Overlay.At::isWithin)
            .text("why", "none is told; empty where it is", Overlay.At::why);

    private static final JsonShape<Overlay.Held> HELD = new JsonShape<Overlay.Held>()
            .text("name", "of the setup, or of the run", Overlay.Held::name)
            .text("of", "what of it is held against the prediction", Overlay.Held::of)
            .word(
                    "figure",
                    "what is compared",
                    Arrays.asList("torque", "power"),
                    h -> h.figure() == Dimension.POWER ? "power" : "torque")
            .word(
                    "verdict",
                    "on the whole",
                    JsonShape.words(Overlay.Verdict.values(), Overlay.Verdict::key),
                    h -> h.verdict().key())
            .numberOrNull(
                    "ratio",
                    "measured over predicted, over the speeds that have both; null where none has",
                    Overlay.Held::ratio)
            .numberOrNull("half", "95 % half-width of it; null where it is not known", Overlay.Held::half)
            .number("within", "speeds at which the two lie within their doubts together", h -> h.within())
            .number("compared", "speeds that have both", h -> h.compared())
            .list("points", "by rising speed; a peak stands alone", AT, Overlay.Held::points)
            .texts("sentences", "what it comes to, in plain words", Overlay.Held::sentences);

    static final JsonShape<Overlay> OVERLAY = new JsonShape<Overlay>()
            .text("sheet", "name of what was tried", Overlay::sheet)
            .truth("invented", "whether the sheet says that it is made up", Overlay::invented)
            .text("standard", "that its figures were corrected to; empty where they are as read", Overlay::standard)
            .text("place", "where torque was measured", Overlay::place)
            .texts("sentences", "which air each stands in, and what else may stand between them", Overlay::sentences)
            .list("held", "each setup, the baseline first; each run where there is no mean", HELD, Overlay::held);

    static final JsonShape<TorqueCurve.Air> AIR = new JsonShape<TorqueCurve.Air>()
            .number("pressure", "of the barometer, in Pa", a -> a.pressure().value())
            .number("temperature", "in K", a -> a.temperature().value())
            .number("humidity", "relative, 0 to 1", a -> a.humidity().value());

    private OverlayJson() {}
}
