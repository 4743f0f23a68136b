package longthrow.core.cycle;

import java.util.Optional;
import longthrow.core.quantity.Require;

/** How large a fuel jet is, as it is told. What a maker's number means is asked, never assumed. */
public sealed interface JetSize {
    /**
     * Coefficient of a fuel jet by its bore, middle of 0.65 to 0.85 for small jets as long as they are wide or a few times that (Heywood 1988, section 7.3, from memory); it falls where the fuel is
     * thick or the edge sharp.
     */
    double BORE_COEFFICIENT = 0.75;

    /** Half of that range, relative. */
    double BORE_COEFFICIENT_REACH = 0.10 / BORE_COEFFICIENT;

    /** Relative standard uncertainty of a jet that was flowed, as of a stopwatch and a measuring glass: a judgement. */
    double FLOWED_DOUBT = 0.03;

    /**
     * What fuel sees.
     * @param area  effective [m2]
     * @param doubt relative standard uncertainty
     */
    record Hole(double area, double doubt) {}

    /** Empty where what is told does not say how large it is. */
    Optional<Hole> hole();

    /**
     * Diameter as read with a plug gauge [m].
     */
    record Bore(double diameter) implements JetSize {
        public Bore {
            Require.within("diameter of a jet [m]", diameter, 0.1e-3, 10e-3);
        }

        @Override
        public Optional<Hole> hole() {
            double circle = 0.25 * Math.PI * diameter * diameter;
            return Optional.of(new Hole(BORE_COEFFICIENT * circle, BORE_COEFFICIENT_REACH / Math.sqrt(3)));
        }
    }

    /**
     * What went through it on the bench.
     * @param volumeFlow [m3/s]
     * @param drop       over the jet [Pa]: height of the liquid over it times density times gravity
     * @param density    of the liquid [kg/m3]
     */
    record Flowed(double volumeFlow, double drop, double density) implements JetSize {
        public Flowed {
            Require.positive("flow through a jet [m3/s]", volumeFlow);
            Require.positive("pressure over a jet [Pa]", drop);
            Require.within("density of the liquid [kg/m3]", density, 500, 2000);
        }

        @Override
        public Optional<Hole> hole() {
            return Optional.of(new Hole(volumeFlow * Math.sqrt(0.5 * density / drop), FLOWED_DOUBT));
        }
    }

    /**
     * Number on the jet.
     * @param meaning empty where its maker's is not known
     */
    record Numbered(double number, Optional<Numbering> meaning) implements JetSize {
        public Numbered {
            Require.positive("jet number", number);
        }

        @Override
        public Optional<Hole> hole() {
            return meaning.flatMap(m -> m.bore(number)).flatMap(Bore::hole);
        }
    }

    /** What a jet's number counts: common practice, no source. */
    enum Numbering {
        /** Diameter in hundredths of a millimetre. */
        HUNDREDTHS_OF_A_MILLIMETRE(2),
        /** Diameter in thousandths of an inch. */
        THOUSANDTHS_OF_AN_INCH(2),
        /** Flow, by a head that only its maker knows: tells ratios, not the size. */
        FLOW(1);

        private final int power;

        Numbering(int power) {
            this.power = power;
        }

        /** Area goes with the number to this power. */
        public int power() {
            return power;
        }

        private Optional<Bore> bore(double number) {
            return switch (this) {
                case HUNDREDTHS_OF_A_MILLIMETRE -> Optional.of(new Bore(number * 1e-5));
                case THOUSANDTHS_OF_AN_INCH -> Optional.of(new Bore(number * 25.4e-6));
                case FLOW -> Optional.empty();
            };
        }
    }
}
