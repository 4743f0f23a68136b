package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.measure.Measure;
import longthrow.core.term.Term;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class MovingSectionTest {
    private static final double ROUNDING = 0.05;

    private static Answer measure;
    private static Answer clear;
    private static MovingSection section;

    @BeforeAll
    static void draw() throws IOException {
        Build build = BuildFile.read(Files.readString(Path.of("../examples/demo.yaml")))
                .build()
                .orElseThrow();
        measure = Measure.of(build, List.of());
        clear = Clear.of(build);
        section = MovingSection.of(measure, clear, Drawn.of(build));
    }

    private static double figure(Term term) {
        return measure.value(term).orElseThrow().figure().value();
    }

    /** translate(x y) rotate(degrees) */
    private static double[] transform(Element group) {
        Matcher numbers = Pattern.compile("translate\\((\\S+) (\\S+)\\) rotate\\((\\S+)\\)")
                .matcher(group.getAttribute("transform"));
        assertThat(numbers.matches()).isTrue();
        return new double[] {
            Double.parseDouble(numbers.group(1)),
            Double.parseDouble(numbers.group(2)),
            Double.parseDouble(numbers.group(3))
        };
    }

    private static List<Element> groups(String svg) {
        return Drawing.of(svg).all("g").stream()
                .filter(g -> g.getAttribute("class").equals("moves"))
                .toList();
    }

    /** Piston, crank and rod come first. Slider-crank by plane trigonometry: sine of the rod's lean is throw over rod times that of the crank angle. */
    @Test
    void rodAndPistonStandWhereTrigonometryPutsThem() {
        double radius = figure(Term.STROKE) / 2;
        double rod = figure(Term.ROD_LENGTH);
        double[] atTop = transform(groups(section.at(0, Optional.empty(), "x")).get(0));
        double[] atBottom =
                transform(groups(section.at(180, Optional.empty(), "x")).get(0));
        double scale = (atBottom[1] - atTop[1]) / (2 * radius);
        assertThat(scale).isPositive();
        for (int degrees : new int[] {90, 250, 470}) {
            List<Element> groups = groups(section.at(degrees, Optional.empty(), "x"));
            double angle = Math.toRadians(degrees);
            double lean = Math.asin(radius * Math.sin(angle) / rod);
            double down = radius + rod - radius * Math.cos(angle) - rod * Math.cos(lean);
            assertThat(transform(groups.get(0))[1] - atTop[1]).isCloseTo(down * scale, within(2 * ROUNDING));
            assertThat(transform(groups.get(1))[2] % 360).isCloseTo(degrees % 360, within(ROUNDING));
            assertThat(transform(groups.get(2))[2]).isCloseTo(-Math.toDegrees(lean), within(ROUNDING));
        }
    }

    /** Half a turn of the camshaft for one of the crank, the other way round, as two gears make it. */
    @Test
    void lobesTurnAtHalfSpeed() {
        List<Element> before = groups(section.at(0, Optional.empty(), "x"));
        List<Element> after = groups(section.at(360, Optional.empty(), "x"));
        boolean seen = false;
        for (int k = 3; k < before.size(); k++) {
            double turned = transform(after.get(k))[2] - transform(before.get(k))[2];
            seen |= Math.abs(Math.abs(turned) - 180) < ROUNDING;
        }
        assertThat(seen).isTrue();
    }

    /** The two points that are marked are as far from each other as the gap says, to scale. */
    @Test
    void markedPointsAreTheGapApart() {
        double radius = figure(Term.STROKE) / 2;
        double top = transform(groups(section.at(0, Optional.empty(), "x")).get(0))[1];
        double bottom = transform(groups(section.at(180, Optional.empty(), "x")).get(0))[1];
        double scale = (bottom - top) / (2 * radius);
        assertThat(section.shown()).hasSizeGreaterThan(5);
        for (Clearance pair : section.shown()) {
            Clearance.Gap gap = pair.cold().orElseThrow();
            int at = (int) Math.round(Math.toDegrees(gap.angle()));
            String svg = section.at(at, Optional.of(pair.key()), "x");
            Element mark = Drawing.of(svg).all("g").stream()
                    .filter(g -> g.getAttribute("class").equals("nearest on"))
                    .findFirst()
                    .orElseThrow();
            assertThat(mark.getAttribute("data-pair")).isEqualTo(pair.key());
            Matcher line = Pattern.compile("M (\\S+) (\\S+) L (\\S+) (\\S+)")
                    .matcher(((Element) mark.getElementsByTagName("path").item(0)).getAttribute("d"));
            assertThat(line.matches()).isTrue();
            double apart = Math.hypot(
                    Double.parseDouble(line.group(3)) - Double.parseDouble(line.group(1)),
                    Double.parseDouble(line.group(4)) - Double.parseDouble(line.group(2)));
            assertThat(apart).as(pair.key()).isCloseTo(Math.abs(gap.value()) * scale, within(0.2));
        }
    }

    @Test
    void standsAloneAtEveryAngle() {
        for (int degrees : new int[] {0, 1, 359, 719, 720, 1000, -5}) {
            String drawn = section.at(degrees, Optional.empty(), "x");
            assertThat(Drawing.of(drawn).faults("x"))
                    .as("but that it moves by transforms, and that what is cut off is cut by a path of its own")
                    .containsOnly("contains transform", "contains url(");
            assertThat(drawn.replaceAll("url\\(#x-[a-z0-9-]+\\)", "")).doesNotContain("url(");
        }
        for (Clearance pair : section.shown()) {
            assertThat(Drawing.of(GapChart.of(pair, "c")).faults("c"))
                    .as(pair.key())
                    .isEmpty();
        }
    }
}
