package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Units;
import longthrow.core.term.Part;
import org.junit.jupiter.api.Test;

/** Where bars and paths lie, by hand: 312 pixels from standing still to the end of a ladder's scale, 116 from the middle of a path to what its picture reaches. */
class LadderAndHodographTest {
    private static final Pattern UPRIGHT = Pattern.compile("class=\"(lit|wanted)\" d=\"M ([\\d.]+) ");
    private static final Pattern LIT = Pattern.compile("class=\"lit\" d=\"(M [^\"]* Z)\"");

    private static Rung rung(String key, double rpm, double half) {
        Measured speed = half == 0
                ? Measured.exact(Units.RPM.toSi(rpm))
                : Measured.of(
                        Units.RPM.toSi(rpm), List.of(Source.at95(key, Source.Kind.ASSUMED, key, Units.RPM.toSi(half))));
        return new Rung(
                key,
                "limit " + key,
                Part.ROD,
                Rung.Kind.STRENGTH,
                Rung.Weight.REFUSES,
                Optional.of(speed),
                Rung.State.HOLDS,
                1,
                List.of(),
                List.of(),
                "by hand",
                List.of(),
                "holds",
                "");
    }

    private static LimitLadder ladder(OptionalDouble wantedRpm, Rung... rungs) {
        OptionalDouble asked = wantedRpm.isPresent()
                ? OptionalDouble.of(Units.RPM.toSi(wantedRpm.getAsDouble()))
                : OptionalDouble.empty();
        return new LimitLadder(
                new Approval(
                        Approval.State.NOT_APPROVED,
                        asked,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "not approved",
                        List.of("why"),
                        List.of(),
                        ""),
                Arrays.asList(rungs),
                LimitLadder.Start.NOTHING);
    }

    private static double at(String bar, String kind) {
        Matcher found = UPRIGHT.matcher(bar);
        while (found.find()) {
            if (found.group(1).equals(kind)) {
                return Double.parseDouble(found.group(2));
            }
        }
        throw new AssertionError("no " + kind + " in " + bar);
    }

    @Test
    void aLimitAndTheSpeedWantedStandWhereTheScaleSays() {
        Rung rung = rung("a", 6000, 500);
        RungBar bars = RungBar.of(ladder(OptionalDouble.of(4000), rung, rung("far", 30_000, 0)));
        assertThat(Units.RPM.fromSi(bars.most()))
                .as("two and a half times the speed wanted")
                .isCloseTo(10_000, within(1e-6));
        String bar = bars.bar(rung, "holds", "a");
        assertThat(at(bar, "lit")).isCloseTo(4 + 0.6 * 312, within(0.06));
        assertThat(at(bar, "wanted")).isCloseTo(4 + 0.4 * 312, within(0.06));
        assertThat(bar).as("the band is hatched").contains("class=\"doubt\"");
        assertThat(bar).contains("<title id=\"a-title\">limit a</title>", ">holds</desc>");
    }

    @Test
    void whatIsStatedHasNoBandAndWhatLiesFartherAnArrow() {
        RungBar bars = RungBar.of(ladder(OptionalDouble.of(4000), rung("stated", 3600, 0), rung("far", 30_000, 900)));
        assertThat(bars.bar(rung("stated", 3600, 0), "holds", "b")).doesNotContain("class=\"doubt\"");
        assertThat(bars.bar(rung("far", 30_000, 900), "holds", "c"))
                .doesNotContain("class=\"doubt\"")
                .contains("fill=\"currentColor\" d=\"M 316 13 L");
    }

    @Test
    void withoutASpeedWantedTheScaleEndsBehindTheLargestLimit() {
        RungBar bars = RungBar.of(ladder(OptionalDouble.empty(), rung("a", 5900, 0)));
        assertThat(Units.RPM.fromSi(bars.most())).isCloseTo(6000, within(1e-6));
        assertThat(bars.scale(s -> Math.round(Units.RPM.fromSi(s)) + " rpm", "s"))
                .contains("6000 rpm")
                .doesNotContain("wanted");
    }

    private static List<Shaking.Point> ellipse(double along, double across) {
        List<Shaking.Point> points = new ArrayList<>();
        for (int k = 0; k < 72; k++) {
            double angle = 2 * Math.PI * k / 72;
            points.add(new Shaking.Point(angle, along * Math.cos(angle), across * Math.sin(angle)));
        }
        return points;
    }

    @Test
    void thePathIsToScaleUpwardsAndToTheRight() {
        String chart = HodographChart.of(ellipse(1000, 500), List.of(), 2000, n -> Math.round(n) + " N", "path", "h");
        Matcher lit = LIT.matcher(chart);
        assertThat(lit.find()).isTrue();
        String[] numbers = lit.group(1).split(" ", -1);
        assertThat(Double.parseDouble(numbers[1])).as("top dead centre").isCloseTo(160, within(0.06));
        assertThat(Double.parseDouble(numbers[2])).isCloseTo(160 - 116 / 2.0, within(0.06));
        assertThat(Double.parseDouble(numbers[1 + 3 * 18])).as("90 degrees").isCloseTo(160 + 116 / 4.0, within(0.06));
        assertThat(chart)
                .contains(">scale: 1000 N<", ">0°<", ">1000 N along<", ">90°<", ">500 N across<", ">180°<", ">270°<")
                .doesNotContain("class=\"unknown\"", "2000 N");
        Matcher bar = Pattern.compile("V 312 M ([\\d.]+) 304").matcher(chart);
        assertThat(bar.find()).isTrue();
        assertThat(Double.parseDouble(bar.group(1)) - 12)
                .as("half of what the picture reaches")
                .isCloseTo(116 / 2.0, within(0.06));
    }

    @Test
    void aSecondPathIsBrokenAndTheLargerOneIsHeld() {
        String chart =
                HodographChart.of(ellipse(100, 50), ellipse(1000, 500), 0, n -> Math.round(n) + " N", "path", "h");
        assertThat(chart)
                .contains("class=\"unknown\"", "stroke-dasharray", ">scale: 500 N<", ">100 N along<", ">50 N across<");
        assertThatThrownBy(() -> HodographChart.of(List.of(), List.of(), 1, n -> "", "path", "h"))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static final Pattern WORDS = Pattern.compile(
            "<text class=\"quiet\" x=\"([\\d.]+)\" y=\"([\\d.]+)\" text-anchor=\"(\\w+)\"[^>]*>([^<]*)</text>");

    /** Round, flat, narrow and lying askew: no word stands on the path, none out of the picture. */
    @Test
    void noWordIsOverprintedByThePath() {
        double[][] shapes = {{1000, 1000}, {1000, 100}, {100, 1000}, {900, 400}, {700, 690}};
        for (double[] shape : shapes) {
            for (double second : new double[] {0, 0.3, 0.6}) {
                List<Shaking.Point> path = new ArrayList<>();
                for (int k = 0; k < 72; k++) {
                    double angle = 2 * Math.PI * k / 72;
                    path.add(new Shaking.Point(
                            angle,
                            shape[0] * (Math.cos(angle) + second * Math.cos(2 * angle)),
                            shape[1] * Math.sin(angle)));
                }
                String chart = HodographChart.of(path, List.of(), 1500, n -> Math.round(n) + " N", "path", "h");
                double most = Math.max(1500, HodographChart.largest(path));
                Matcher words = WORDS.matcher(chart);
                int count = 0;
                while (words.find()) {
                    count++;
                    double wide = words.group(4).length() * 13 * 0.55;
                    double x = Double.parseDouble(words.group(1));
                    double y = Double.parseDouble(words.group(2));
                    double left = x
                            - (words.group(3).equals("end")
                                    ? wide
                                    : words.group(3).equals("middle") ? wide / 2 : 0);
                    assertThat(left).as(words.group(4)).isBetween(0.0, 320 - wide);
                    for (Shaking.Point point : path) {
                        double px = 160 + point.across() / most * 116;
                        double py = 160 - point.along() / most * 116;
                        assertThat(px > left && px < left + wide && py > y - 10 && py < y)
                                .as("'%s' on the path, of %s and %s", words.group(4), Arrays.toString(shape), second)
                                .isFalse();
                    }
                }
                assertThat(count).isGreaterThanOrEqualTo(9);
            }
        }
    }
}
