package longthrow.core.cycle;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.gas.PublishedValue;
import longthrow.core.quantity.Require;

/**
 * What a splash-oiled single loses by rubbing, by component, as mean effective pressures [Pa].
 *
 * <p>K. J. Patton, R. G. Nitschke and J. B. Heywood, SAE 890836 (1989), and its revision, D. Sandoval and J. B. Heywood, SAE 2003-01-0725 (abstract read: gas loading and pumping were changed,
 * oil viscosity came in; every constant is from memory). With lengths in mm, N in rpm, Sp in m/s and one cylinder, in kPa:
 * seals 1.22e5 D / (B^2 S); plain bearings 3.03e-4 v N D^3 L n / (B^2 S); oil drag 1.35e-10 D^2 N^2 n; skirt 294 v Sp / B; rings 4.06e4 (1 + N0 / N) / B^2; gas load
 * 6.89 (pi / pa) (0.088 v rc + 0.182 rc^(1.33 - K Sp)); camshaft 244 v N n / (B^2 S) + 4.12; followers Cff (1 + N0 / N) n / S or Crf N n / S; rocking and sliding Coh v L^1.5 N^0.5 n / (B S) + Com (1 + N0 / N) L n / S.
 * 1989: N0 = 1000, K = 0.0238, v = 1. 2003: N0 = 500, K = 2 x 0.0238, v the square root of the oil's viscosity over that of SAE 10W-30 at 90 °C.
 *
 * <p>Their auxiliaries (oil and water pump, generator) are left out: a splash-oiled single has none of them. The fan of an air-cooled one is in its flywheel. The dipper's churning has no published figure: oil drag, meant for
 * oil fed through a drilled crankshaft, is left in for it where bearings are plain. Crankcase pumping and gas exchange are not rubbing and not here. Both models were made from car engines; for a small single they are carried on.
 */
public final class Friction {
    private static final double KILOPASCAL = 1e3;
    private static final double MILLIMETRE = 1e-3;
    private static final double BAR = 1e5;

    /** Each part's relative standard uncertainty: judgement, from the spread of car engines about the model and from what is quoted from memory. */
    private static final double PART_DOUBT = 0.3;

    /** That all parts are off together, because the models were made from larger engines: relative standard uncertainty, judgement. */
    private static final double COMMON_DOUBT = 0.10;

    /** Which state of the model. */
    public enum Edition {
        PATTON_1989(1000, 1),
        SANDOVAL_2003(500, 2);

        private final double mixedSpeedRpm;
        private final double gasSpeedFactor;

        Edition(double mixedSpeedRpm, double gasSpeedFactor) {
            this.mixedSpeedRpm = mixedSpeedRpm;
            this.gasSpeedFactor = gasSpeedFactor;
        }

        private double oil(double viscosityRatio) {
            return this == PATTON_1989 ? 1 : Math.sqrt(viscosityRatio);
        }
    }

    /** Where it rubs. */
    public enum Part {
        SEALS("shaft seals"),
        MAIN_BEARINGS("main bearings"),
        OIL_DRAG("oil drag of the crankshaft"),
        BIG_END("big end"),
        SKIRT("piston skirt"),
        RINGS("piston rings"),
        GAS_LOAD("rings pressed by the gas"),
        CAMSHAFT("camshaft bearings"),
        FOLLOWERS("cam followers"),
        VALVE_MOTION("rockers, tappets and guides"),
        FAN("cooling fan");

        private final String label;

        Part(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    /**
     * The engine.
     * @param bore   [m]
     * @param stroke [m]
     * @param seal   diameter of the shaft where its seals run [m]; 0 without seals
     * @param mains  bearings of the crankshaft
     * @param bigEnd of the rod
     * @param valves what works them
     * @param fan    of an air-cooled engine, on its flywheel; empty where air comes from driving
     */
    public record Engine(
            double bore, double stroke, double seal, Bearing mains, Bearing bigEnd, Valves valves, Optional<Fan> fan) {
        public Engine {
            Require.positive("bore [m]", bore);
            Require.positive("stroke [m]", stroke);
            Require.notNegative("shaft diameter at the seals [m]", seal);
        }

        double displacement() {
            return Math.PI / 4 * bore * bore * stroke;
        }
    }

    /**
     * The valve train.
     * @param count       of valves
     * @param lift        largest, at the valve [m]
     * @param camBearings of all camshafts
     */
    public record Valves(ValveGear gear, int count, double lift, int camBearings) {
        public Valves {
            Require.positive("number of valves", count);
            Require.positive("valve lift [m]", lift);
            Require.positive("number of camshaft bearings", camBearings);
        }
    }

    /**
     * Blower wheel: power = k rho n^3 D^5 by the fan laws, n in turns a second.
     * @param diameter   over the blades [m]
     * @param airDensity [kg/m3]
     */
    public record Fan(double diameter, double airDensity) {
        /**
         * k: 1 to 3. With the coefficients of flow and pressure of radial wheels (B. Eck, Fans, from memory: product over efficiency 0.08 to 0.25), k = pi^4 / 8 times that; which wheel an
         * engine has is common practice, no source.
         */
        public static final PublishedValue POWER_FACTOR = new PublishedValue(
                2,
                1,
                3,
                "fan laws; 0.08 to 0.25 of B. Eck, Fans, from memory; common practice, no source for the wheel");

        public Fan {
            Require.positive("diameter over the fan's blades [m]", diameter);
            Require.positive("density of the cooling air [kg/m3]", airDensity);
        }

        /** [W]. */
        double power(double speed) {
            double turns = speed / (2 * Math.PI);
            return POWER_FACTOR.value() * airDensity * Math.pow(turns, 3) * Math.pow(diameter, 5);
        }
    }

    /**
     * How it runs.
     * @param speed               of the crankshaft [rad/s]
     * @param compressionRatio    above 1
     * @param intakePressureRatio pressure in the intake over that of the surroundings
     * @param oilViscosity        kinematic, at the oil's temperature [m2/s]
     */
    public record Running(double speed, double compressionRatio, double intakePressureRatio, double oilViscosity) {
        public Running {
            Require.positive("crankshaft speed [rad/s]", speed);
            if (!(compressionRatio > 1 && Double.isFinite(compressionRatio))) {
                throw new IllegalArgumentException("compression ratio is " + compressionRatio + "; it must be above 1");
            }
            Require.positive("intake pressure over ambient", intakePressureRatio);
            Require.positive("oil viscosity [m2/s]", oilViscosity);
        }
    }

    /**
     * Mean effective pressure of one part.
     * @param mep   [Pa]
     * @param doubt its standard uncertainty [Pa]
     */
    public record Loss(Part part, double mep, double doubt) {}

    private final Map<Part, Loss> losses;

    private Friction(Map<Part, Loss> losses) {
        this.losses = losses;
    }

    /**
     * SAE 10W-30 as the revision has it: Vogel's nu = 0.1403 exp(869.72 / (t + 104.4)) mm2/s (from memory: 12.3 at 90 °C).
     * @param temperature [K], 253 to 443
     * @return [m2/s]
     */
    public static double referenceOil(double temperature) {
        double celsius = Require.within("oil temperature [K]", temperature, 253.15, 443.15) - 273.15;
        return 0.1403e-6 * Math.exp(869.72 / (celsius + 104.4));
    }

    /** Temperature at which the revision's constants stand [K]. */
    public static final double REFERENCE_OIL_TEMPERATURE = 363.15;

    /** By the revision of 2003. */
    public static Friction of(Engine engine, Running running) {
        return of(Edition.SANDOVAL_2003, engine, running);
    }

    public static Friction of(Edition edition, Engine engine, Running running) {
        Sums sums = new Sums(edition, engine, running);
        Map<Part, Loss> losses = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            double mep = sums.of(part);
            if (mep > 0) {
                losses.put(part, new Loss(part, mep, mep * relativeDoubt(part)));
            }
        }
        return new Friction(losses);
    }

    private static double relativeDoubt(Part part) {
        PublishedValue fan = Fan.POWER_FACTOR;
        return part == Part.FAN ? (fan.high() - fan.low()) / (2 * Math.sqrt(3) * fan.value()) : PART_DOUBT;
    }

    /** What there is, from the crankshaft up. */
    public List<Loss> losses() {
        return List.copyOf(losses.values());
    }

    /** Mean effective pressure of one part [Pa]; 0 where the engine has none. */
    public double mep(Part part) {
        Loss loss = losses.get(part);
        return loss == null ? 0 : loss.mep;
    }

    /** All together [Pa]. */
    public double total() {
        return losses.values().stream().mapToDouble(Loss::mep).sum();
    }

    /** Standard uncertainty of all together [Pa]: parts by themselves, and all at once. */
    public double doubt() {
        double alone = losses.values().stream()
                .mapToDouble(loss -> loss.doubt * loss.doubt)
                .sum();
        return Math.sqrt(alone + Math.pow(COMMON_DOUBT * total(), 2));
    }

    /** The parts in the units of their source. */
    private static final class Sums {
        private final Edition edition;
        private final Engine engine;
        private final double rpm;
        private final double oil;
        private final double kinematic;
        private final double pistonSpeed;
        private final double bore;
        private final double stroke;
        private final double areaStroke;
        private final double mixed;
        private final Running running;

        Sums(Edition edition, Engine engine, Running running) {
            this.edition = edition;
            this.engine = engine;
            this.running = running;
            this.rpm = running.speed * 30 / Math.PI;
            this.oil = edition.oil(running.oilViscosity / referenceOil(REFERENCE_OIL_TEMPERATURE));
            this.kinematic = running.oilViscosity;
            this.pistonSpeed = running.speed * engine.stroke / Math.PI;
            this.bore = engine.bore / MILLIMETRE;
            this.stroke = engine.stroke / MILLIMETRE;
            this.areaStroke = bore * bore * stroke;
            this.mixed = 1 + edition.mixedSpeedRpm / rpm;
        }

        double of(Part part) {
            return switch (part) {
                case SEALS -> KILOPASCAL * 1.22e5 * engine.seal / MILLIMETRE / areaStroke;
                case MAIN_BEARINGS -> bearing(engine.mains);
                case OIL_DRAG -> oilDrag();
                case BIG_END -> bearing(engine.bigEnd);
                case SKIRT -> KILOPASCAL * 294 * oil * pistonSpeed / bore;
                case RINGS -> KILOPASCAL * 4.06e4 * mixed / (bore * bore);
                case GAS_LOAD -> gasLoad();
                case CAMSHAFT -> KILOPASCAL * (244 * oil * rpm * engine.valves.camBearings / areaStroke + 4.12);
                case FOLLOWERS -> followers();
                case VALVE_MOTION -> valveMotion();
                case FAN -> engine.fan.map(this::fan).orElse(0.0);
            };
        }

        private double bearing(Bearing bearing) {
            if (bearing instanceof Bearing.Plain plain) {
                double d = plain.diameter() / MILLIMETRE;
                double l = plain.length() / MILLIMETRE;
                return KILOPASCAL * 3.03e-4 * oil * rpm * d * d * d * l * plain.count() / areaStroke;
            }
            Bearing.Rolling rolling = (Bearing.Rolling) bearing;
            double byLoad = rolling.kind().friction() * rolling.meanLoad() * rolling.shaft() / 2;
            double thick = kinematic / (MILLIMETRE * MILLIMETRE) * rpm;
            double middle = rolling.middle() / MILLIMETRE;
            double byOil = MILLIMETRE
                    * 1e-7
                    * rolling.kind().oilFactor()
                    * rolling.count()
                    * Math.pow(Math.max(thick, 2000), 2.0 / 3) // below, Palmgren has 160e-7 f0 dm^3, the value at 2000
                    * Math.pow(middle, 3);
            return 4 * Math.PI * (byLoad + byOil) / engine.displacement();
        }

        private double oilDrag() {
            if (engine.mains instanceof Bearing.Plain plain) {
                double d = plain.diameter() / MILLIMETRE;
                return KILOPASCAL * 1.35e-10 * d * d * rpm * rpm * plain.count();
            }
            return 0;
        }

        private double gasLoad() {
            double rc = running.compressionRatio;
            double power = 1.33 - 0.0238 * edition.gasSpeedFactor * pistonSpeed;
            return KILOPASCAL * 6.89 * running.intakePressureRatio * (0.088 * oil * rc + 0.182 * Math.pow(rc, power));
        }

        private double followers() {
            Valves valves = engine.valves;
            return KILOPASCAL * (valves.gear.flat * mixed + valves.gear.roller * rpm) * valves.count / stroke;
        }

        private double valveMotion() {
            Valves valves = engine.valves;
            double lift = valves.lift / MILLIMETRE;
            double film = valves.gear.film * oil * Math.pow(lift, 1.5) * Math.sqrt(rpm) / (bore * stroke);
            double contact = valves.gear.mixed * mixed * lift / stroke;
            return KILOPASCAL * valves.count * (film + contact);
        }

        private double fan(Fan fan) {
            return fan.power(running.speed) * 4 * Math.PI / (running.speed * engine.displacement());
        }
    }

    /**
     * 0.137 + 0.005 pmax + 0.162 Sp in bar: S. K. Chen and P. F. Flynn, SAE 650733 (1965), constants from memory; made for a diesel single. A cross-check.
     * @param peakPressure [Pa]
     * @param pistonSpeed  mean, [m/s]
     * @return [Pa]
     */
    public static double chenFlynn(double peakPressure, double pistonSpeed) {
        Require.positive("peak pressure [Pa]", peakPressure);
        Require.positive("mean piston speed [m/s]", pistonSpeed);
        return BAR * (0.137 + 0.005 * peakPressure / BAR + 0.162 * pistonSpeed);
    }

    /**
     * 0.97 + 0.15 n + 0.05 n^2 in bar, n in 1000 rpm: D. Barnes-Moss (1975), as in Heywood (1988), eq. 13.6, from memory. Motored car engines of four cylinders at full throttle, pumping and auxiliaries
     * within. A cross-check from above.
     * @param speed of the crankshaft [rad/s]
     * @return [Pa]
     */
    public static double barnesMoss(double speed) {
        double n = Require.positive("crankshaft speed [rad/s]", speed) * 30 / Math.PI / 1000;
        return BAR * (0.97 + 0.15 * n + 0.05 * n * n);
    }

    /**
     * Oil and water pump and generator, 6.23 + 5.22e-3 N - 1.79e-7 N^2 kPa of the model of 1989 (from memory): for engines that have them, which a splash-oiled single has not.
     * @param speed of the crankshaft [rad/s]
     * @return [Pa]
     */
    public static double auxiliaries(double speed) {
        double n = Require.positive("crankshaft speed [rad/s]", speed) * 30 / Math.PI;
        return KILOPASCAL * (6.23 + 5.22e-3 * n - 1.79e-7 * n * n);
    }
}
