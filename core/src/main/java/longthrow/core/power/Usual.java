package longthrow.core.power;

import java.util.EnumMap;
import java.util.Map;
import longthrow.core.cycle.BurnAngles;
import longthrow.core.cycle.CombustionEfficiency;
import longthrow.core.cycle.Crevice;
import longthrow.core.cycle.IntakeMixture;
import longthrow.core.cycle.Throttle;
import longthrow.core.cycle.ValveFlow;
import longthrow.core.cycle.ValveLift;
import longthrow.core.cycle.WallHeat;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;
import longthrow.core.gas.VapourPressure;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.power.Kind.Basis;
import longthrow.core.power.Kind.Cooling;
import longthrow.core.power.Kind.Layout;
import longthrow.core.power.Kind.Use;

/**
 * What is taken where nothing was read: by use, cooling, valve layout, bore, stroke, compression and the basis of a rating, and by what was read of the part itself; never by a rated speed or
 * torque. Each with the range within which it is met, taken as a rectangle, and where it is from. One home.
 */
final class Usual {
    private static final String PRACTICE = "common practice, no source";

    /** Heywood (1988), table 6.1, valve heads over the bore by chamber; from memory. */
    private static final String HEADS = "Heywood (1988), table 6.1, from memory";

    /** Two sheets of utility engines of 118 and 163 cc print 22/19 mm on a 60 mm bore and 25/24 mm on 68 mm. */
    private static final String UTILITY_HEADS = "two assembly sheets of utility engines of 118 and 163 cc";

    /** Heywood (1988), chapter 6: opens 10 to 25, closes 40 to 60, opens 50 to 60, closes 8 to 20; from memory. Longer for what turns faster: practice. */
    private static final String EVENTS = "Heywood (1988), chapter 6, from memory, and common practice for the use";

    /** Shaft of a throttle plate over its bore. Common practice, no source. */
    static final double SHAFT_OF_THROTTLE = 0.25;

    /** How far either way the plug is met from where such chambers usually have it, in bores; judgement, no source. */
    private static final double PLUG_EITHER = 0.1;

    private static final String BAND = "published correlation, as it is";

    private final Kind kind;
    private final Fuel fuel;
    private final Map<Needed, Measured> known;
    private final Map<Needed, String> sources = new EnumMap<>(Needed.class);
    private final Map<Needed, Measured> all;
    private final ValveTables tables;

    private Usual(Kind kind, Fuel fuel, Map<Needed, Measured> known, ValveTables tables) {
        this.kind = kind;
        this.fuel = fuel;
        this.known = known;
        this.all = new EnumMap<>(known);
        this.tables = tables;
    }

    /**
     * Fills what is missing.
     * @param known  bore, stroke and compression ratio at least
     * @param tables of the valves
     */
    static Figures fill(Kind kind, Fuel fuel, Map<Needed, Measured> known, ValveTables tables) {
        for (Needed needed : new Needed[] {Needed.BORE, Needed.STROKE, Needed.COMPRESSION_RATIO}) {
            if (!known.containsKey(needed)) {
                throw new IllegalArgumentException(
                        needed.label() + " is not known, and nothing usual stands for it; read it");
            }
        }
        Usual usual = new Usual(kind, fuel, known, tables);
        usual.cylinder();
        usual.valves();
        usual.intake();
        usual.exhaust();
        usual.walls();
        usual.fire();
        usual.day();
        return new Figures(kind, fuel, usual.all, usual.sources, tables);
    }

    private double value(Needed needed) {
        Measured measured = all.get(needed);
        if (measured == null) {
            throw new IllegalStateException(needed + " is asked for before it is set");
        }
        return measured.value();
    }

    private void take(Needed needed, double value, double low, double high, String source) {
        if (known.containsKey(needed)) {
            return;
        }
        Source doubt = Source.rectangular("usual " + needed, Source.Kind.ASSUMED, needed.label(), 0.5 * (high - low));
        all.put(needed, Measured.of(value, java.util.List.of(doubt)));
        sources.put(needed, source);
    }

    /** A share either way. */
    private void within(Needed needed, double value, double share, String source) {
        take(needed, value, value * (1 - share), value * (1 + share), source);
    }

    private void take(Needed needed, PublishedValue published) {
        take(needed, published.value(), published.low(), published.high(), published.source());
    }

    private double displacement() {
        double bore = value(Needed.BORE);
        return 0.25 * Math.PI * bore * bore * value(Needed.STROKE);
    }

    /**
     * Where its maker lets such an engine work [rad/s]: a utility engine at 3600 rpm, which drives generators of 60 Hz; others at a mean piston speed at their most power of 13.8 to 18 m/s (road and trail) and
     * 17 to 22 m/s (competition), ranges of published engines.
     */
    static double nominalSpeed(Kind kind, double stroke) {
        return switch (kind.use()) {
            case UTILITY -> 3600 * Math.PI / 30;
            case ROAD -> Math.PI * 15.9 / stroke;
            case COMPETITION -> Math.PI * 19.5 / stroke;
        };
    }

    private double nominalSpeed() {
        return nominalSpeed(kind, value(Needed.STROKE));
    }

    /** Volume breathed in at the nominal speed, four fifths of what is swept [m3/s]. */
    private double nominalFlow() {
        return 0.8 * displacement() * nominalSpeed() / (4 * Math.PI);
    }

    private void cylinder() {
        within(Needed.ROD, 1.65 * value(Needed.STROKE), 0.12, PRACTICE);
        take(Needed.OFFSET, 0, -0.001, 0.001, PRACTICE);
        double perVolume = kind.use() == Use.UTILITY ? 100 : 50; // kg m2 by m3
        within(Needed.INERTIA, perVolume * displacement(), 0.5, PRACTICE);
    }

    private boolean fourValves() {
        return kind.intakes() > 1;
    }

    private void valves() {
        double bore = value(Needed.BORE);
        if (kind.use() == Use.UTILITY && !fourValves()) {
            take(Needed.INTAKE_HEAD, 0.37 * bore, 0.35 * bore, 0.42 * bore, UTILITY_HEADS);
            take(Needed.EXHAUST_HEAD, 0.335 * bore, 0.31 * bore, 0.36 * bore, UTILITY_HEADS);
        } else if (fourValves()) {
            take(Needed.INTAKE_HEAD, 0.36 * bore, 0.35 * bore, 0.37 * bore, HEADS);
            take(Needed.EXHAUST_HEAD, 0.30 * bore, 0.28 * bore, 0.32 * bore, HEADS);
        } else if (kind.layout() == Layout.SIDE_VALVE) {
            take(Needed.INTAKE_HEAD, 0.42 * bore, 0.38 * bore, 0.46 * bore, PRACTICE);
            take(Needed.EXHAUST_HEAD, 0.38 * bore, 0.34 * bore, 0.42 * bore, PRACTICE);
        } else {
            take(Needed.INTAKE_HEAD, 0.47 * bore, 0.43 * bore, 0.50 * bore, HEADS);
            take(Needed.EXHAUST_HEAD, 0.39 * bore, 0.35 * bore, 0.43 * bore, HEADS);
        }
        within(Needed.INTAKE_THROAT, 0.87 * value(Needed.INTAKE_HEAD), 0.05, PRACTICE);
        within(Needed.EXHAUST_THROAT, 0.87 * value(Needed.EXHAUST_HEAD), 0.05, PRACTICE);
        within(
                Needed.INTAKE_LIFT,
                0.23 * value(Needed.INTAKE_HEAD),
                0.17,
                "a quarter of the head at most (Heywood (1988), 6.3, from memory)");
        within(
                Needed.EXHAUST_LIFT,
                0.24 * value(Needed.EXHAUST_HEAD),
                0.17,
                "a quarter of the head at most (Heywood (1988), 6.3, from memory)");
        take(
                Needed.CHECKING_LIFT,
                0.00015,
                0.0001,
                0.0003,
                "0.006 in, where valve makers tell seat events; from memory");
        switch (kind.use()) {
            case UTILITY -> events(10, 45, 50, 12, 10);
            case ROAD -> events(25, 58, 60, 22, 12);
            case COMPETITION -> events(38, 70, 72, 38, 12);
        }
        for (boolean intake : new boolean[] {true, false}) {
            // how long it stands how wide hangs on the flanks too: assumed where no lift table was read
            double flanks = tables.lift(intake).isPresent() ? 0 : ValveLift.FLANK_DOUBT;
            asPublished(
                    intake ? Needed.INTAKE_FLOW : Needed.EXHAUST_FLOW,
                    Math.hypot(ValveFlow.usualDoubt(intake), flanks));
        }
    }

    /**
     * A formula as it is, with the doubt that it tells of itself.
     * @param doubt relative standard uncertainty
     */
    private void asPublished(Needed needed, double doubt) {
        within(needed, 1, doubt * Math.sqrt(3), BAND);
    }

    /** Degrees, and how far either way they are met. */
    private void events(
            double intakeOpens, double intakeCloses, double exhaustOpens, double exhaustCloses, double either) {
        event(Needed.INTAKE_OPENS, intakeOpens, either);
        event(Needed.INTAKE_CLOSES, intakeCloses, either);
        event(Needed.EXHAUST_OPENS, exhaustOpens, either);
        event(Needed.EXHAUST_CLOSES, exhaustCloses, either);
    }

    private void event(Needed needed, double degrees, double either) {
        take(
                needed,
                Math.toRadians(degrees),
                Math.toRadians(degrees - either),
                Math.toRadians(degrees + either),
                EVENTS);
    }

    private void intake() {
        double bore = value(Needed.BORE);
        boolean utility = kind.use() == Use.UTILITY;
        within(Needed.INTAKE_PORT_LENGTH, (utility ? 0.75 : 1.0) * bore, 0.3, PRACTICE);
        within(Needed.INTAKE_RUNNER_LENGTH, (utility ? 0.35 : 0.9) * bore, 0.5, PRACTICE);
        within(Needed.CARBURETTOR_LENGTH, 0.9 * bore, 0.3, PRACTICE);
        double throats = value(Needed.INTAKE_THROAT) * Math.sqrt(kind.intakes());
        // bore [mm] = 0.65 root (displacement [l] x rpm): a rule of tuning books, 0.65 to 0.9 as they print it, from
        // memory; the low end is that of road carburettors
        double rule = 0.65e-3 * Math.sqrt(displacement() * 1000 * nominalSpeed() * 30 / Math.PI);
        double venturi = Math.min(rule, 0.95 * throats);
        if (known.containsKey(Needed.INTAKE_BORE)) { // no wider than the way behind it
            venturi = Math.min(venturi, value(Needed.INTAKE_BORE));
        }
        within(
                Needed.VENTURI,
                venturi,
                0.12,
                "0.65 times the root of litres and rpm, in mm; tuning books, from memory");
        if (utility) {
            // a plate on a shaft in a bore 1.2 venturis wide stays in the way when it is open: Heywood (1988), 7.6
            within(
                    Needed.THROTTLE,
                    openThrottle(1.2 * value(Needed.VENTURI), SHAFT_OF_THROTTLE, 1),
                    0.1,
                    "plate and shaft of a wide open throttle (Heywood (1988), 7.6); shaft a quarter of the bore: "
                            + PRACTICE);
        }
        within(Needed.INTAKE_BORE, Math.max(0.95 * throats, value(Needed.VENTURI)), 0.08, PRACTICE);
        if (kind.basis() != Basis.GROSS) {
            double rooms = displacement() * (utility ? 2 : 8);
            take(Needed.AIRBOX, rooms, 0.5 * rooms, 1.7 * rooms, PRACTICE);
            within(Needed.FILTER, hole(nominalFlow(), 1.2, 1200), 0.25, "1.2 kPa at the nominal flow; " + PRACTICE);
        }
    }

    /**
     * Diameter of the plain hole that a wide open plate on its shaft is like [m].
     * @param bore   at the plate [m]
     * @param shaft  over the bore
     * @param factor on the throttle's coefficient
     */
    static double openThrottle(double bore, double shaft, double factor) {
        Throttle open = new Throttle.Butterfly(bore, shaft * bore, 0, 0.5 * Math.PI);
        return Math.sqrt(4 / Math.PI * factor * open.effectiveArea());
    }

    /** Diameter of the hole whose jet costs so much pressure [Pa] at a flow [m3/s] of gas so dense [kg/m3]. */
    private static double hole(double flow, double density, double drop) {
        return Math.sqrt(4 / Math.PI * flow * Math.sqrt(density / (2 * drop)));
    }

    private void exhaust() {
        double bore = value(Needed.BORE);
        boolean utility = kind.use() == Use.UTILITY;
        double throats = value(Needed.EXHAUST_THROAT) * Math.sqrt(kind.exhausts());
        within(Needed.EXHAUST_PORT_LENGTH, (utility ? 0.7 : 0.9) * bore, 0.3, PRACTICE);
        within(Needed.PRIMARY_LENGTH, (utility ? 0.8 : 8.0) * bore, 0.4, PRACTICE);
        within(Needed.PRIMARY_BORE, 1.05 * throats, 0.10, PRACTICE);
        if (kind.basis() != Basis.GROSS) {
            double rooms = displacement() * (utility ? 6 : 12);
            take(Needed.SILENCER, rooms, 0.5 * rooms, 1.7 * rooms, PRACTICE);
            double hot = 0.45; // kg/m3 at some 800 K
            double flow = nominalFlow() * 1.2 / hot;
            double drop = utility ? 5000 : 10_000;
            within(
                    Needed.SILENCER_HOLE,
                    hole(flow, hot, drop),
                    0.2,
                    (utility ? "5" : "10") + " kPa at the nominal flow; " + PRACTICE);
        }
    }

    private void walls() {
        boolean liquid = kind.cooling() == Cooling.LIQUID;
        double head = liquid ? 440 : 480;
        double crown = liquid ? 510 : 530;
        double sleeve = liquid ? 390 : 430;
        String source = "Heywood (1988), 12.7, from memory, and " + PRACTICE;
        take(Needed.HEAD_TEMPERATURE, head, head - 35, head + 35, source);
        take(Needed.CROWN_TEMPERATURE, crown, crown - 40, crown + 40, source);
        take(Needed.SLEEVE_TEMPERATURE, sleeve, sleeve - 30, sleeve + 30, source);
        double port = kind.use() == Use.UTILITY && !liquid ? 360 : 345;
        take(Needed.INTAKE_WALL_TEMPERATURE, port, port - 20, port + 20, PRACTICE);
        take(Needed.EXHAUST_WALL_TEMPERATURE, 600, 500, 750, PRACTICE);
        double oil = kind.cooling() == Cooling.FAN ? 373 : 363;
        take(Needed.OIL_TEMPERATURE, oil, oil - 20, oil + 20, PRACTICE);
    }

    private void fire() {
        if (kind.use() == Use.UTILITY) {
            take(
                    Needed.SPARK,
                    Math.toRadians(24),
                    Math.toRadians(20),
                    Math.toRadians(28),
                    "fixed keys of utility engines; " + PRACTICE);
        } // others are timed where half has burned best: see Model
        double bore = value(Needed.BORE);
        double travel = Model.chamber(kind).usualTravel() * bore;
        take(
                Needed.FLAME_TRAVEL,
                travel,
                travel - PLUG_EITHER * bore,
                travel + PLUG_EITHER * bore,
                "where such chambers have their plug; judgement, no source");
        double exact = fuel.stoichiometricAirFuel(MoistAir.DRY);
        double scale = exact / Fuel.petrol().stoichiometricAirFuel(MoistAir.DRY);
        double mixture = exact / (12.5 * scale);
        take(
                Needed.MIXTURE,
                mixture,
                exact / (13.5 * scale),
                exact / (11.5 * scale),
                "air to petrol 11.5 to 13.5 at full load, carburettors, from memory; other fuels as far from exact");
        take(Needed.EVAPORATED, IntakeMixture.evaporatedShare(fuel));
        take(Needed.FIRE_EFFICIENCY, CombustionEfficiency.BURNS);
        take(Needed.CREVICES, Crevice.SHARE);
        take(
                Needed.CRANKCASE,
                1500,
                0,
                10_000,
                "a check valve as breather takes 0.1 to 1.2 kPa, an open hole of 6 mm 1.5 to 30 kPa (CrankcasePumping); which is fitted: "
                        + PRACTICE);
        asPublished(Needed.DEVELOPMENT, BurnAngles.doubtOfDevelopment());
        asPublished(Needed.BURNING, BurnAngles.doubtOfRapid(Model.chamber(kind)));
        asPublished(Needed.WALL_HEAT, WallHeat.DOUBT);
        // Friction.doubt is 0.15 to 0.19 of the total for singles of 50 to 100 mm; more for the churning of a dipper,
        // which it has no term for: judgement, no source
        asPublished(Needed.FRICTION, 0.2);
    }

    /** Of the standard's 1 kPa of vapour, which at another temperature is another share of what the air can hold, all of it at most. */
    private double moisture() {
        return known.containsKey(Needed.AIR_TEMPERATURE)
                ? Math.min(1, 1000 / VapourPressure.CIPM_2007.at(value(Needed.AIR_TEMPERATURE)))
                : 0.32;
    }

    private void day() {
        double pressure = kind.basis() == Basis.NET ? 100_000 : 101_325;
        double temperature = switch (kind.basis()) {
            case GROSS, MAKER_GROSS -> 288.7;
            case NET -> 298.15;
            case MAKER -> 293.15;
        };
        double humidity = kind.basis() == Basis.NET ? moisture() : 0;
        String source = switch (kind.basis()) {
            case GROSS, MAKER_GROSS -> "SAE J607";
            case NET -> "SAE J1349: 25 °C, 99 kPa dry and 1 kPa of moisture";
            case MAKER -> "DIN 70020";
        };
        take(Needed.AIR_PRESSURE, pressure, pressure, pressure, source);
        take(Needed.AIR_TEMPERATURE, temperature, temperature, temperature, source);
        take(Needed.HUMIDITY, humidity, humidity, humidity, source);
    }
}
