package longthrow.core.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** A figure held against one aimed at; differences by hand. */
class AimedTest {
    private static final FigurePrinter METRIC = new FigurePrinter(UnitSystem.METRIC_FIRST);

    private static Measured squish(double millimetres, double doubt) {
        return Measured.of(
                millimetres * 1e-3, List.of(Source.at95("deck", Source.Kind.INSTRUMENT, "the deck", doubt * 1e-3)));
    }

    private static Aimed aimed(double millimetres, double doubt, String aim) {
        return Aimed.at(
                Term.SQUISH, Quantity.of(aim, Units.MILLIMETRE), Optional.of(squish(millimetres, doubt)), "", METRIC);
    }

    /** 1.87 - 1.37 = 0.50, far beyond 0.07. */
    @Test
    void whatLiesBeyondTheDoubtMisses() {
        Aimed above = aimed(1.87, 0.07, "1.37");
        assertThat(above.state()).isEqualTo(Aimed.State.MISSES);
        assertThat(above.off()).isCloseTo(0.50e-3, within(1e-12));
        assertThat(above.doubt()).isCloseTo(0.07e-3, within(0.005e-3));
        assertThat(above.brief()).isEqualTo("0.50 mm above your aim of 1.37 mm");
        assertThat(above.said())
                .startsWith("0.50 ± 0.07 mm (0.0197 ± 0.0028 in) above your aim of 1.37 mm")
                .endsWith("outside the doubt");
        Aimed below = aimed(0.87, 0.07, "1.37");
        assertThat(below.off()).isCloseTo(-0.50e-3, within(1e-12));
        assertThat(below.brief()).isEqualTo("0.50 mm below your aim of 1.37 mm");
    }

    /** 1.30 - 1.27 = 0.03 within 0.07; a point has no tolerance, so that it is met cannot be said. */
    @Test
    void whatLiesWithinTheDoubtCannotBeToldFromTheAim() {
        Aimed near = aimed(1.30, 0.07, "1.27");
        assertThat(near.state()).isEqualTo(Aimed.State.WITHIN_DOUBT);
        assertThat(near.said()).contains("above your aim").endsWith("within the doubt");
        assertThat(aimed(1.27, 0.07, "1.27").brief()).endsWith("on your aim of 1.27 mm");
    }

    @Test
    void aFigureThatIsNotKnownMeetsNothing() {
        Aimed open = Aimed.at(
                Term.COMPRESSION_RATIO,
                Quantity.of("9.7", Units.BARE_RATIO),
                Optional.empty(),
                "not said: chamber volume",
                METRIC);
        assertThat(open.state()).isEqualTo(Aimed.State.UNKNOWN);
        assertThat(open.off()).isNaN();
        assertThat(open.said()).isEqualTo("you aim at 9.7; not said: chamber volume");
    }

    /** JCGM 106:2012 8.3 as in every verdict: the state is that of the verdict, and the distance is 0 inside. */
    @Test
    void aLimitIsJudgedAsEveryLimitIs() {
        Verdict verdict = new Verdict(
                "own:mine",
                "mine",
                Term.SQUISH,
                1.2e-3,
                1.4e-3,
                0.01,
                Verdict.State.FAILS,
                true,
                "squish 1.5 mm is above",
                "cut it",
                "");
        Aimed over = Aimed.limit(verdict, Optional.of(squish(1.5, 0.02)));
        assertThat(over.state()).isEqualTo(Aimed.State.MISSES);
        assertThat(over.isOneFigure()).isFalse();
        assertThat(over.off()).isCloseTo(0.1e-3, within(1e-12));
        assertThat(over.said()).isEqualTo("mine: squish 1.5 mm is above. Cure: cut it");
        assertThat(Aimed.limit(verdict, Optional.of(squish(1.3, 0.02))).off()).isZero();
        assertThat(Aimed.limit(verdict, Optional.empty()).off()).isNaN();
    }
}
