package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is round is drawn round. SVG 1.1 appendix F.6.5: the centre of an arc lies sqrt(r^2 - c^2 / 4) beside the middle of its chord c, so that near
 * half a circle a chord that is cut short by a twentieth of a pixel moves the centre by more than one.
 */
class RoundTest {
    /** As far as the centre may stand from where it is meant to [px]: what is seen at the size printed. */
    private static final double SEEN = 0.5;
    /** Half of the last digit that is written, at both ends of a chord and twice in a radius [px]. */
    private static final double WRITTEN = 0.2;

    private static final Pattern PIECE = Pattern.compile("([MmLlHhVvAaCcZz])|(-?[0-9.]+)");

    /** An arc as written: what its centre is beside the middle of its chord, and what that could be by the rounding. */
    private record Arc(double radius, double chord) {
        double centreBesideChord() {
            return Math.sqrt(Math.max(0, radius * radius - chord * chord / 4));
        }

        /** Half a circle as it was meant, or so near to one that the digits written do not tell which. */
        boolean isAboutHalf() {
            return chord > 2 * radius - WRITTEN;
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {20.25, 20.2499, 20.3, 7.84, 33.333, 0.96})
    void circleIsTwoHalvesWhoseChordIsTheirDiameter(double radius) {
        List<Arc> arcs = arcs(Svg.path(Sketch.round(165.04, 211.27, radius)));
        assertThat(arcs).hasSize(2);
        assertThat(arcs).allSatisfy(arc -> {
            assertThat(arc.centreBesideChord()).isLessThan(0.01);
            assertThat(arc.chord()).isCloseTo(2 * radius, within(0.1));
        });
    }

    /** Pins of 14 to 20 mm at many angles: each eye, pin, journal and cheek. */
    @Test
    void crossSectionHasNoDentedArc() {
        for (double pin = 14; pin < 20; pin += 0.37) {
            CrossSection section = CrossSection.of(
                    DrawnAnswer.whole().with(Term.PIN_DIAMETER, pin, 0.004).answer());
            for (double angle = 0; angle < 6.3; angle += 0.41) {
                assertThat(dented(section.at(angle, "x")))
                        .as("pin " + pin + ", angle " + angle)
                        .isEmpty();
            }
        }
    }

    private static Stream<Term> cards() {
        return Stream.of(Term.values()).filter(t -> ReadingCard.of(t).isPresent());
    }

    @ParameterizedTest
    @MethodSource("cards")
    void cardsHaveNoDentedArc(Term term) {
        assertThat(dented(ReadingCard.of(term).orElseThrow().svg("x"))).isEmpty();
    }

    /** Arcs of about half a circle whose centre stands off the chord by more than is seen. */
    private static List<String> dented(String svg) {
        List<String> dented = new ArrayList<>();
        for (var path : Drawing.of(svg).all("path")) {
            for (Arc arc : arcs(path.getAttribute("d"))) {
                if (arc.isAboutHalf() && arc.centreBesideChord() > SEEN) {
                    dented.add(arc + " in " + path.getAttribute("d"));
                }
            }
        }
        return dented;
    }

    /** Circular arcs of path data, absolute or relative. */
    private static List<Arc> arcs(String data) {
        List<String> pieces = new ArrayList<>();
        Matcher matcher = PIECE.matcher(data);
        while (matcher.find()) {
            pieces.add(matcher.group());
        }
        List<Arc> arcs = new ArrayList<>();
        Point2D.Double at = new Point2D.Double();
        Point2D.Double start = new Point2D.Double();
        char command = 'M';
        for (int i = 0; i < pieces.size(); ) {
            if (Character.isLetter(pieces.get(i).charAt(0))) {
                command = pieces.get(i++).charAt(0);
            }
            boolean relative = Character.isLowerCase(command);
            double x = relative ? at.x : 0;
            double y = relative ? at.y : 0;
            switch (Character.toUpperCase(command)) {
                case 'Z' -> at.setLocation(start);
                case 'H' -> at.x = x + number(pieces, i++);
                case 'V' -> at.y = y + number(pieces, i++);
                case 'A' -> {
                    Point2D.Double to = new Point2D.Double(x + number(pieces, i + 5), y + number(pieces, i + 6));
                    if (number(pieces, i) == number(pieces, i + 1)) {
                        arcs.add(new Arc(number(pieces, i), at.distance(to)));
                    }
                    at.setLocation(to);
                    i += 7;
                }
                case 'C' -> {
                    at.setLocation(x + number(pieces, i + 4), y + number(pieces, i + 5));
                    i += 6;
                }
                default -> {
                    at.setLocation(x + number(pieces, i), y + number(pieces, i + 1));
                    i += 2;
                    if (Character.toUpperCase(command) == 'M') {
                        start.setLocation(at);
                    }
                }
            }
        }
        return arcs;
    }

    private static double number(List<String> pieces, int at) {
        return Double.parseDouble(pieces.get(at));
    }
}
