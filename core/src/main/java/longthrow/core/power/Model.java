package longthrow.core.power;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.cycle.Bearing;
import longthrow.core.cycle.Chamber;
import longthrow.core.cycle.Crankcase;
import longthrow.core.cycle.CrankcasePumping;
import longthrow.core.cycle.CylinderSpace;
import longthrow.core.cycle.Duct;
import longthrow.core.cycle.Engine;
import longthrow.core.cycle.Friction;
import longthrow.core.cycle.IntakeMixture;
import longthrow.core.cycle.Passage;
import longthrow.core.cycle.Piece;
import longthrow.core.cycle.Plate;
import longthrow.core.cycle.Plenum;
import longthrow.core.cycle.Restrictor;
import longthrow.core.cycle.Setting;
import longthrow.core.cycle.Spark;
import longthrow.core.cycle.Surroundings;
import longthrow.core.cycle.Tube;
import longthrow.core.cycle.ValveFlow;
import longthrow.core.cycle.ValveGear;
import longthrow.core.cycle.ValveGroup;
import longthrow.core.cycle.ValveLift;
import longthrow.core.cycle.Walls;
import longthrow.core.cycle.WorkingGases;
import longthrow.core.flow.EndCorrection;
import longthrow.core.gas.MoistAir;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.LobeCurve;
import longthrow.core.pipe.Mouth;
import longthrow.core.power.Kind.Cooling;
import longthrow.core.power.Kind.Layout;
import longthrow.core.power.Kind.Use;

/** The engine whose cycle is run, made of its figures. */
final class Model {
    /** Chamber's and crown's surface over the bore's area: a side valve's chamber lies beside the bore too. Judgement, no source. */
    private static final double SIDE_CHAMBER = 2.1;

    private static final double CHAMBER = 1.3;
    private static final double CROWN = 1.05;

    private static final String PRACTICE = "common practice, no source";

    /** Stem over head. Common practice, no source. */
    private static final double STEM = 0.2;

    /** Cast ports and drawn pipes [m]: Moody (1944), cast iron and commercial steel. */
    private static final double CAST = 2.6e-4;

    private static final double DRAWN = 4.5e-5;

    /** Surface of a silencer by its volume, as a cylinder twice as long as wide. */
    private static final double SILENCER_FORM = 5 * Math.PI / Math.pow(Math.PI, 2.0 / 3);

    /** To the wall of a silencer by its gas [W/(m2 K)]: forced air at some 10 m/s; judgement, no source. */
    private static final double SILENCER_HEAT = 30;

    /** Edge of a carburettor's entry over its bore. Common practice, no source. */
    private static final double BELL = 0.1;

    /** Mouth of a carburettor over its venturi. Common practice, no source. */
    private static final double EXIT = 1.2;

    /** Mains and big end over the bore where nothing was read. Common practice, no source. */
    private static final double SHAFT = 0.37;

    private static final double PLAIN_BIG_END = 0.44;
    private static final double PLAIN_BIG_END_LENGTH = 0.33;
    private static final double NEEDLE_BIG_END = 0.4;
    private static final double NEEDLE_BIG_END_WIDTH = 0.5;

    /** Outside of the fan over the bore. Common practice, no source. */
    private static final double FAN = 2.4;

    /** Past the rings, of what is drawn in: Heywood (1988), 8.6, about a hundredth, from memory. */
    private static final double BLOW_BY = 0.01;

    /** Volumetric efficiency where blow-by is told by it; what the crankcase takes hardly feels it. Common practice, no source. */
    private static final double USUAL_FILLING = 0.8;

    private final Figures figures;
    private final MoistAir air;
    private final WorkingGases gases;

    Model(Figures figures) {
        this.figures = figures;
        this.air = MoistAir.of(at(Needed.HUMIDITY), at(Needed.AIR_TEMPERATURE), at(Needed.AIR_PRESSURE));
        this.gases = WorkingGases.of(figures.fuel(), air, at(Needed.MIXTURE));
    }

    private double at(Needed needed) {
        return figures.number(needed);
    }

    WorkingGases gases() {
        return gases;
    }

    Engine engine() {
        CylinderSpace space = space();
        Chamber chamber = chamber(figures.kind());
        return new Engine(
                space,
                valve(true),
                valve(false),
                intake(),
                exhaust(),
                new Walls(at(Needed.HEAD_TEMPERATURE), at(Needed.CROWN_TEMPERATURE), at(Needed.SLEEVE_TEMPERATURE)),
                new Engine.Firing(
                        chamber,
                        at(Needed.FLAME_TRAVEL),
                        at(Needed.WALL_HEAT),
                        at(Needed.BURNING),
                        at(Needed.DEVELOPMENT),
                        Math.min(1, at(Needed.FIRE_EFFICIENCY)),
                        at(Needed.CREVICES)),
                at(Needed.INERTIA));
    }

    Setting setting(double speed) {
        double fuel = at(Needed.MIXTURE);
        double evaporated = at(Needed.EVAPORATED);
        double mixed = IntakeMixture.asAllVapour(
                figures.fuel(),
                air,
                fuel,
                IntakeMixture.temperature(figures.fuel(), air, fuel, at(Needed.AIR_TEMPERATURE), evaporated),
                evaporated);
        Spark spark = figures.has(Needed.SPARK) ? new Spark.Fixed(at(Needed.SPARK)) : Spark.HalfBurnedAt.best();
        return new Setting(speed, spark, new Surroundings(at(Needed.AIR_PRESSURE), mixed, at(Needed.AIR_TEMPERATURE)));
    }

    CylinderSpace space() {
        double bore = at(Needed.BORE);
        double area = 0.25 * Math.PI * bore * bore;
        double rod = at(Needed.ROD);
        double offset = at(Needed.OFFSET);
        double stroke = at(Needed.STROKE);
        double square = stroke * stroke;
        double rods = 4 * rod * rod;
        double radius = 0.5 * stroke * Math.sqrt((rods - 4 * offset * offset - square) / (rods - square));
        double chamber = figures.kind().layout() == Layout.SIDE_VALVE ? SIDE_CHAMBER : CHAMBER;
        return new CylinderSpace(
                bore,
                new CrankMotion(radius, rod, offset),
                area * stroke / (at(Needed.COMPRESSION_RATIO) - 1),
                chamber * area,
                CROWN * area);
    }

    /** Shape of the chamber by what sort of engine it is. */
    static Chamber chamber(Kind kind) {
        if (kind.layout() == Layout.SIDE_VALVE) {
            return Chamber.SIDE_VALVE;
        }
        if (kind.intakes() > 1) {
            return Chamber.PENT_ROOF;
        }
        return kind.use() == Use.UTILITY ? Chamber.WEDGE : Chamber.HEMISPHERE;
    }

    /** Of one valve, by crank angle from firing top dead centre. */
    ValveLift lift(boolean intake) {
        double lift = at(intake ? Needed.INTAKE_LIFT : Needed.EXHAUST_LIFT);
        double opens = at(intake ? Needed.INTAKE_OPENS : Needed.EXHAUST_OPENS);
        double closes = at(intake ? Needed.INTAKE_CLOSES : Needed.EXHAUST_CLOSES);
        double centre = (intake ? 2.5 : 1.5) * Math.PI + 0.5 * (closes - opens);
        double checking = at(Needed.CHECKING_LIFT);
        double duration = Math.PI + opens + closes;
        Optional<TableLift> read = figures.tables().lift(intake);
        if (read.isPresent()) {
            return read.get().at(lift, checking, duration, centre);
        }
        LobeCurve lobe = LobeCurve.of(lift, checking, duration, centre);
        return ValveLift.assumed(lobe, 1, 0);
    }

    private Passage valve(boolean intake) {
        double head = at(intake ? Needed.INTAKE_HEAD : Needed.EXHAUST_HEAD);
        double throat = Math.min(head, at(intake ? Needed.INTAKE_THROAT : Needed.EXHAUST_THROAT));
        int count = intake ? figures.kind().intakes() : figures.kind().exhausts();
        ValveLift over = lift(intake);
        ValveFlow flow = figures.tables()
                .flow(intake)
                .orElseGet(() -> ValveFlow.usual(
                        new ValveGroup(count, head, STEM * head, OptionalDouble.of(throat), Optional.empty()), intake));
        double factor = at(intake ? Needed.INTAKE_FLOW : Needed.EXHAUST_FLOW);
        return Passage.of(angle -> factor * flow.into(over.at(angle)), angle -> factor * flow.outOf(over.at(angle)));
    }

    private Duct intake() {
        double throats = at(Needed.INTAKE_THROAT) * Math.sqrt(figures.kind().intakes());
        double bore = at(Needed.INTAKE_BORE);
        double venturi = Math.min(at(Needed.VENTURI), bore);
        double port = at(Needed.INTAKE_PORT_LENGTH);
        double runner = at(Needed.INTAKE_RUNNER_LENGTH);
        double carburettor = at(Needed.CARBURETTOR_LENGTH);
        double wall = at(Needed.INTAKE_WALL_TEMPERATURE);
        double cool = 0.5 * (wall + at(Needed.AIR_TEMPERATURE));
        double all = runner + carburettor;
        boolean boxed = figures.has(Needed.AIRBOX) && figures.has(Needed.FILTER);
        double mouth = EXIT * venturi;
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Tube(port, List.of(new Tube.Station(0, throats), new Tube.Station(port, bore)), wall, CAST));
        narrowest().map(Plate::hole).ifPresent(pieces::add);
        List<Tube.Station> stations = new ArrayList<>();
        stations.add(new Tube.Station(0, bore));
        if (runner > 0) { // 0 where the carburettor is bolted to the port
            stations.add(new Tube.Station(runner, bore));
        }
        // the venturi stands two thirds of the way out of the carburettor: room for the throttle on the engine's side
        stations.add(new Tube.Station(runner + 0.65 * carburettor, venturi));
        stations.add(new Tube.Station(all, mouth));
        pieces.add(new Tube(all + end(boxed).length(0.5 * mouth), stations, cool, DRAWN));
        if (boxed) {
            pieces.add(Plenum.of(at(Needed.AIRBOX)));
            pieces.add(Plate.hole(at(Needed.FILTER)));
        }
        return new Duct(pieces, Mouth.rounded(BELL, 1).shareIn());
    }

    /** Throttle and restrictor plate under the carburettor stand one behind the other: their losses add up. */
    private Optional<Double> narrowest() {
        Optional<Double> throttle = figures.value(Needed.THROTTLE).map(Measured::value);
        Optional<Double> restrictor = figures.value(Needed.INTAKE_RESTRICTOR).map(Measured::value);
        return throttle.isPresent() && restrictor.isPresent()
                ? Optional.of(Restrictor.inARow(throttle.get(), restrictor.get()))
                : throttle.or(() -> restrictor);
    }

    private Duct exhaust() {
        double throats = at(Needed.EXHAUST_THROAT) * Math.sqrt(figures.kind().exhausts());
        double bore = at(Needed.PRIMARY_BORE);
        double port = at(Needed.EXHAUST_PORT_LENGTH);
        double wall = at(Needed.EXHAUST_WALL_TEMPERATURE);
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Tube(port, List.of(new Tube.Station(0, throats), new Tube.Station(port, bore)), wall, CAST));
        figures.value(Needed.EXHAUST_RESTRICTOR).map(m -> Plate.hole(m.value())).ifPresent(pieces::add);
        boolean silenced = figures.has(Needed.SILENCER) && figures.has(Needed.SILENCER_HOLE);
        double length = at(Needed.PRIMARY_LENGTH) + end(silenced).length(0.5 * bore);
        pieces.add(new Tube(length, List.of(new Tube.Station(0, bore)), wall, DRAWN));
        if (silenced) {
            double volume = at(Needed.SILENCER);
            pieces.add(new Plenum(volume, SILENCER_FORM * Math.pow(volume, 2.0 / 3), wall, SILENCER_HEAT));
            pieces.add(Plate.hole(at(Needed.SILENCER_HOLE)));
        }
        return new Duct(pieces, 1);
    }

    /** What swings with the gas in a pipe beyond its end: standing free, or flush in the wall of a box. */
    private static EndCorrection end(boolean inWall) {
        return inWall ? EndCorrection.FLUSH : EndCorrection.FREE;
    }

    /**
     * What the model takes of every engine, for which no figure stands: one line each, with its source and whose doubt covers it.
     */
    static List<DefaultUsed> assumptions(Figures figures) {
        boolean side = figures.kind().layout() == Layout.SIDE_VALVE;
        boolean utility = figures.kind().use() == Use.UTILITY;
        List<DefaultUsed> taken = new ArrayList<>();
        taken.add(taken(
                Needed.WALL_HEAT,
                "wall of the chamber " + of(side ? SIDE_CHAMBER : CHAMBER) + " and of the crown " + of(CROWN)
                        + " of the bore's area",
                "judgement, no source"));
        if (figures.tables().flow(true).isEmpty()
                || figures.tables().flow(false).isEmpty()) {
            taken.add(taken(Needed.INTAKE_FLOW, "stems of the valves " + of(STEM) + " of their heads", PRACTICE));
        }
        taken.add(taken(
                Needed.INTAKE_FLOW,
                "edge of the carburettor's entry " + of(BELL) + " of its bore, its end " + of(EXIT)
                        + " venturis wide, the venturi 0.65 of the way along",
                PRACTICE));
        taken.add(taken(
                Needed.EXHAUST_FLOW,
                "roughness of cast ports " + of(1e3 * CAST) + " mm and of pipes " + of(1e3 * DRAWN) + " mm",
                "Moody (1944), cast iron and commercial steel"));
        if (figures.has(Needed.SILENCER) && figures.has(Needed.SILENCER_HOLE)) {
            taken.add(taken(
                    Needed.SILENCER_HOLE,
                    "silencer as a cylinder twice as long as wide, empty, its wall taking " + of(SILENCER_HEAT)
                            + " W/(m² K)",
                    "judgement, no source"));
        }
        boolean boxed = figures.has(Needed.AIRBOX) && figures.has(Needed.FILTER);
        taken.add(taken(Needed.CARBURETTOR_LENGTH, ends("carburettor's mouth", boxed, "airbox"), source(boxed)));
        boolean silenced = figures.has(Needed.SILENCER) && figures.has(Needed.SILENCER_HOLE);
        taken.add(taken(Needed.PRIMARY_LENGTH, ends("exhaust pipe", silenced, "silencer"), source(silenced)));
        taken.add(taken(
                Needed.FRICTION,
                "two ball mains on a shaft of " + of(SHAFT) + " bores, "
                        + (utility
                                ? "a plain big end of " + of(PLAIN_BIG_END) + " by " + of(PLAIN_BIG_END_LENGTH)
                                        + " bores"
                                : "a big end of needles, " + of(NEEDLE_BIG_END) + " bores"),
                PRACTICE));
        if (figures.has(Needed.BREATHER_VALVE) || figures.has(Needed.BREATHER_OPEN)) {
            taken.add(taken(
                    figures.has(Needed.BREATHER_VALVE) ? Needed.BREATHER_VALVE : Needed.BREATHER_OPEN,
                    "blow-by of " + of(BLOW_BY)
                            + " of the charge, a check valve that opens without pressure and shuts tight,"
                            + " no waves in a hose",
                    "Heywood (1988), 8.6, from memory, and " + PRACTICE));
        }
        if (figures.kind().cooling() == Cooling.FAN) {
            taken.add(taken(Needed.FRICTION, "a fan of " + of(FAN) + " bores across", PRACTICE));
        }
        return taken;
    }

    private static String ends(String what, boolean inWall, String box) {
        return "gas swings with that in the " + what + " as far as "
                + of(end(inWall).length(1)) + " of its radius beyond its end"
                + (inWall ? ", which stands flush in the wall of the " + box : ", which stands free");
    }

    private static String source(boolean inWall) {
        return inWall
                ? "Nomura, Yamamura and Inawashiro (1960), from memory; how it stands: common practice, no source"
                : "Levine and Schwinger (1948); how it stands: common practice, no source";
    }

    private static DefaultUsed taken(Needed cover, String what, String source) {
        return new DefaultUsed(cover.key(), what, source + "; its doubt is within that of \"" + cover.label() + "\"");
    }

    private static String of(double share) {
        return String.format(Locale.ROOT, "%.3g", share)
                .replaceAll("(\\.\\d*?)0+$", "$1")
                .replaceAll("\\.$", "");
    }

    // ---- what rubs

    private ValveGear gear() {
        return switch (figures.kind().layout()) {
            case SIDE_VALVE -> ValveGear.SIDE_VALVE;
            case PUSHROD -> ValveGear.PUSHROD_FLAT;
            case OVERHEAD_CAM -> ValveGear.OVERHEAD_CAM_ROCKER;
        };
    }

    /**
     * Mean effective pressure of what rubs, and of the breathing crankcase [Pa]. Ball mains; a plain big end in a utility engine, one of needles in others.
     * @param meanLoad on the mains [N]
     */
    double friction(double speed, double meanLoad) {
        double bore = at(Needed.BORE);
        double shaft = SHAFT * bore;
        boolean utility = figures.kind().use() == Use.UTILITY;
        Bearing mains = new Bearing.Rolling(Bearing.Kind.BALL, shaft, 1.5 * shaft, 2, meanLoad);
        Bearing bigEnd = utility
                ? new Bearing.Plain(PLAIN_BIG_END * bore, PLAIN_BIG_END_LENGTH * bore, 1)
                : new Bearing.Rolling(
                        Bearing.Kind.NEEDLE, NEEDLE_BIG_END * bore, NEEDLE_BIG_END_WIDTH * bore, 1, meanLoad);
        int valves = figures.kind().intakes() + figures.kind().exhausts();
        Optional<Friction.Fan> fan = figures.kind().cooling() == Cooling.FAN
                ? Optional.of(
                        new Friction.Fan(FAN * bore, air.density(at(Needed.AIR_TEMPERATURE), at(Needed.AIR_PRESSURE))))
                : Optional.empty();
        Friction friction = Friction.of(
                new Friction.Engine(
                        bore,
                        at(Needed.STROKE),
                        shaft,
                        mains,
                        bigEnd,
                        new Friction.Valves(gear(), valves, at(Needed.INTAKE_LIFT), 2),
                        fan),
                new Friction.Running(
                        speed, at(Needed.COMPRESSION_RATIO), 1, Friction.referenceOil(at(Needed.OIL_TEMPERATURE))));
        return at(Needed.FRICTION) * friction.total() + crankcase(speed);
    }

    // ---- what breathes under the piston

    /** Mean effective pressure that it takes [Pa]: by its room and its breather where that is told. */
    private double crankcase(double speed) {
        if (figures.has(Needed.CRANKCASE)) {
            return at(Needed.CRANKCASE);
        }
        CylinderSpace space = space();
        Crankcase crankcase = new Crankcase(
                space.pistonArea(),
                space.crank(),
                at(Needed.CASE_VOLUME),
                at(Needed.OIL_TEMPERATURE),
                Crankcase.usualConductance(at(Needed.CASE_VOLUME)));
        Crankcase.Breather breather = figures.has(Needed.BREATHER_VALVE)
                ? Crankcase.Breather.checkValve(hole(Needed.BREATHER_VALVE), 0)
                : Crankcase.Breather.hole(hole(Needed.BREATHER_OPEN));
        double charge = USUAL_FILLING
                * space.displacement()
                * air.density(at(Needed.AIR_TEMPERATURE), at(Needed.AIR_PRESSURE))
                * speed
                / (4 * Math.PI);
        Crankcase.Around around = new Crankcase.Around(
                at(Needed.AIR_PRESSURE), at(Needed.AIR_TEMPERATURE), BLOW_BY * charge, at(Needed.SLEEVE_TEMPERATURE));
        return CrankcasePumping.of(crankcase, breather, around, speed).meanEffective();
    }

    private double hole(Needed needed) {
        return 0.25 * Math.PI * at(needed) * at(needed);
    }
}
