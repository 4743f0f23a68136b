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
            if (MovingSection.isInAnotherPlane(pair.key())) {
                continue;
            }
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

    /** Valve to valve and valve to bore wall are seen from above: drawn here, they would stand where no valve is. */
    @Test
    void whatLiesInAnotherPlaneIsNotDrawn() {
        List<String> elsewhere = List.of("intake_valve_to_wall", "exhaust_valve_to_wall", "valve_to_valve");
        List<Drawn> drawn = Drawn.of(whole(""));
        assertThat(drawn).extracting(Drawn::key).containsAll(elsewhere);
        MovingSection whole = section(whole(""), drawn);
        for (String key : elsewhere) {
            String svg = whole.at(370, Optional.of(key), "x");
            assertThat(svg)
                    .contains("not shown, for it lies in another plane")
                    .doesNotContain("nearest on")
                    .doesNotContainPattern("class=\"body( hid)? on\"");
            assertThat(Drawing.of(svg).all("path"))
                    .noneMatch(path -> List.of(path.getAttribute("data-pairs").split(" ", -1))
                            .contains(key));
        }
        assertThat(whole.at(370, Optional.of("skirt_to_counterweight"), "x"))
                .containsPattern("class=\"body( hid)? on\"");
        assertThat(whole.shown())
                .extracting(Clearance::key)
                .as("their charts stay")
                .containsAll(elsewhere);
    }

    /** A few names, each once, none on another, and told to whoever does not see them. */
    @Test
    void itsPartsHaveNames() {
        List<String> names = List.of("head", "cylinder", "piston", "rod", "counterweight", "camshaft");
        for (int degrees = 0; degrees < 720; degrees += 30) {
            String svg = section.at(degrees, Optional.empty(), "x");
            assertThat(svg).contains("Named in it: " + String.join(", ", names));
            List<double[]> boxes = new java.util.ArrayList<>();
            for (Element text : Drawing.of(svg).all("text")) {
                double x = Double.parseDouble(text.getAttribute("x"));
                double y = Double.parseDouble(text.getAttribute("y"));
                if (((Element) text.getParentNode()).getAttribute("class").equals("moves")) {
                    double[] at = transform((Element) text.getParentNode());
                    assertThat(at[2] % 360).as("never turned").isZero();
                    x += at[0];
                    y += at[1];
                }
                double half = 3.6 * text.getTextContent().length(); // 13 px letters are at most so wide
                boxes.add(new double[] {x - half, y - 11, x + half, y + 3});
                assertThat(Double.parseDouble(text.getAttribute("font-size"))).isGreaterThanOrEqualTo(13);
            }
            assertThat(Drawing.of(svg).all("text"))
                    .extracting(Element::getTextContent)
                    .containsExactlyInAnyOrderElementsOf(names);
            for (double[] one : boxes) {
                for (double[] other : boxes) {
                    boolean isApart = one == other
                            || one[2] <= other[0]
                            || other[2] <= one[0]
                            || one[3] <= other[1]
                            || other[3] <= one[1];
                    assertThat(isApart).as(degrees + "°").isTrue();
                }
            }
        }
    }

    private static Build whole(String outlines) {
        try {
            String text = Files.readString(Path.of("../examples/demo.yaml"))
                    .replace(
                            "  chamber_area: 3620 mm2",
                            "  chamber_area: 3620 mm2\n  valve_spacing: 29.0 mm\n  intake_from_axis: 14.5 mm\n  exhaust_from_axis: 15.0 mm")
                    .replace(
                            "  end_play: 0.18 mm",
                            "  end_play: 0.18 mm\n  exhaust_opens: {readings: [36.0°, 35.5°], with: degree_wheel}\n  exhaust_closes: {readings: [3.0°, 3.5°], with: degree_wheel}");
            return BuildFile.read(text + outlines).build().orElseThrow();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static MovingSection section(Build build, List<Drawn> drawn) {
        return MovingSection.of(Measure.of(build, List.of()), Clear.of(build), drawn);
    }

    /** The rod as traced stands in the place of the one drawn of a few readings, for paper too. */
    @Test
    void theTracedRodIsTheRodOfThePicture() {
        Build build = whole(
                "outlines:\n  - {part: connecting_rod, unit: 1 mm, from: -12 mm, to: 12 mm, doubt: 0.3 mm, points: [[-25, -24], [25, -24],"
                        + " [25, 13], [13, 26], [10, 60], [12, 75], [12, 98], [-12, 98], [-12, 75], [-10, 60], [-13, 26], [-25, 13]]}\n");
        MovingSection traced = section(build, Drawn.of(build));
        Clearance pair = traced.shown().stream()
                .filter(p -> p.key().equals("skirt_to_counterweight"))
                .findFirst()
                .orElseThrow();
        String rod = Drawing.of(traced.at(0, Optional.empty(), "x")).all("path").stream()
                .filter(path -> path.getAttribute("data-pairs").contains("big_end_to_case")
                        && path.getAttribute("data-pairs").contains("big_end_to_cam_core"))
                .map(path -> path.getAttribute("d"))
                .findFirst()
                .orElseThrow();
        assertThat(Drawing.of(traced.still(180, pair, "x")).all("path"))
                .filteredOn(path -> path.getAttribute("class").equals("part"))
                .extracting(path -> path.getAttribute("d"))
                .contains(rod);
        assertThat(section.still(180, pair, "x")).doesNotContain(rod);
    }

    /** What is cut off says so: on its axis, to whoever does not see it, and under it. */
    @Test
    void aChartThatIsCutOffSaysSo() {
        List<Clearance> cut = section.shown().stream()
                .filter(p -> GapChart.cutAt(p).isPresent())
                .toList();
        assertThat(cut).isNotEmpty();
        for (Clearance pair : section.shown()) {
            String svg = GapChart.of(pair, "c");
            assertThat(svg.contains("≥ ")).as(pair.key()).isEqualTo(cut.contains(pair));
            assertThat(svg.contains("it opens to")).isEqualTo(cut.contains(pair));
        }
    }
}
