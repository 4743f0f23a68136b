package longthrow.workshop.draw;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Clearance;
import longthrow.core.clear.Drawn;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;

/** Two parts to scale in a plane of their own, where they come nearest: what the section along the cylinder does not show. */
public final class PlanePicture {
    private static final int WIDTH = 300;
    /** No more is shown than so far from where they are nearest [m]; layout. */
    private static final double AROUND = 18e-3;

    private static final double MARGIN = 4e-3;

    private PlanePicture() {}

    /**
     * The picture, a whole SVG element; empty where the pair is not drawn, or is told without a drawing.
     * @param drawn pairs as they are drawn
     */
    public static Optional<String> of(Clearance pair, List<Drawn> drawn, String idPrefix) {
        return drawn.stream()
                .filter(d -> d.key().equals(pair.key()))
                .findFirst()
                .flatMap(d -> pair.cold()
                        .flatMap(gap -> gap.place().map(place -> picture(pair, d, gap.angle(), place, idPrefix))));
    }

    private static String picture(Clearance pair, Drawn drawn, double angle, Clearance.Place place, String idPrefix) {
        double x = (place.acrossOne() + place.acrossOther()) / 2;
        double y = (place.upOne() + place.upOther()) / 2;
        List<Outline> one = standing(drawn.one(), angle);
        List<Outline> other = standing(drawn.other(), angle);
        List<Outline> smaller = farthest(drawn.one()) <= farthest(drawn.other()) ? one : other;
        double left = Math.max(x - AROUND, -reach(smaller, -Math.PI / 2) - MARGIN);
        double right = Math.min(x + AROUND, reach(smaller, Math.PI / 2) + MARGIN);
        double low = Math.max(y - AROUND, -reach(smaller, Math.PI) - MARGIN);
        double high = Math.min(y + AROUND, reach(smaller, 0) + MARGIN);
        double scale = WIDTH / (right - left);
        int height = (int) Math.ceil((high - low) * scale);
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                height,
                pair.one() + " to " + pair.other() + ", in a plane of their own",
                String.format(
                        Locale.ROOT,
                        "To scale where they come nearest, at %d° of crank: %s.",
                        Math.round(Math.toDegrees(angle)),
                        pair.why()));
        String middle = "translate(" + Svg.n(-left * scale) + " " + Svg.n(high * scale) + ")";
        svg.open("g", "transform", middle);
        body(svg, other, scale);
        body(svg, one, scale);
        svg.add(
                "path",
                "class",
                "lit",
                "d",
                Svg.path(
                        "M",
                        place.acrossOne() * scale,
                        -place.upOne() * scale,
                        "L",
                        place.acrossOther() * scale,
                        -place.upOther() * scale),
                "stroke",
                "currentColor",
                "stroke-width",
                "2.5");
        svg.add(
                "circle",
                "class",
                "lit",
                "cx",
                Svg.n(x * scale),
                "cy",
                Svg.n(-y * scale),
                "r",
                "9",
                "stroke",
                "currentColor",
                "stroke-width",
                "2",
                "fill",
                "none");
        svg.close();
        return svg.finished();
    }

    /** As they stand at a crank angle. */
    private static List<Outline> standing(Body body, double angle) {
        Motion.Standing at = body.motion().standing(angle);
        return body.outlines().stream()
                .map(outline -> outline.placed(at.turn(), at.x(), at.y()))
                .toList();
    }

    private static double farthest(Body body) {
        return body.outlines().stream().mapToDouble(Outline::farthest).max().orElse(0);
    }

    private static double reach(List<Outline> outlines, double direction) {
        return outlines.stream().mapToDouble(o -> o.reach(direction)).max().orElse(0);
    }

    private static void body(Svg svg, List<Outline> outlines, double scale) {
        for (Outline outline : outlines) {
            svg.add(
                    "path",
                    "class",
                    "body on",
                    "d",
                    outline.svgPath(1 / scale),
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "1.6",
                    "fill",
                    "currentColor",
                    "fill-opacity",
                    "0.12",
                    "fill-rule",
                    "evenodd");
        }
    }
}
