package longthrow.core.cycle;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.Joint;
import longthrow.core.pipe.Orifice;
import longthrow.core.pipe.PipeFlow;
import longthrow.core.pipe.PipeFlow.Side;
import longthrow.core.pipe.PipeGases;
import longthrow.core.pipe.PipeShape;
import longthrow.core.pipe.PipeWall;
import longthrow.core.pipe.Throat;
import longthrow.core.pipe.Volume;

/** The gas on the way between valve and outside. Left ends of its pipes are towards the valve. Changes as it is advanced; of one thread. */
final class DuctFlow {
    /** A slope takes three cells. */
    private static final int FEWEST_CELLS = 3;

    /** The mean stream that rubs on the walls is read at every so-manieth step: it needs no more. */
    private static final int READ_EVERY = 8;

    /** No plenum is made warmer or colder at once by more than this share: the first cycles are like none that follow. */
    private static final double LONGEST_LEAP = 0.2;

    /** Of the way that is foreseen so much is gone at once: what follows changes with it, and what waves carry to and fro renews a plenum faster than what passes through. Tried on a hundred engines: 902 cycles in place of 1021. */
    private static final double CAUTION = 0.75;

    /** Nor is what a cycle brought taken for more than so many like it: what two cycles differ by chance would be taken so many times too. */
    private static final double MOST_TIMES = 10;

    private final PipeGases gases;
    private final List<PipeFlow> pipes = new ArrayList<>();
    private final List<PipeWall> walls = new ArrayList<>();
    private final List<Room> rooms = new ArrayList<>();
    private final List<Runnable> links = new ArrayList<>();
    private final Throat valve;
    private DoubleSupplier out = () -> 0;
    private int steps;

    /** A plenum, and the area of its holes by which its longest step goes. */
    private static final class Room {
        final Volume volume;
        double holes;

        // ---- as the cycle began
        double pressure;
        double temperature;
        double share;

        Room(Volume volume) {
            this.volume = volume;
            note();
        }

        void note() {
            pressure = volume.pressure();
            temperature = volume.temperature();
            share = volume.share();
        }

        /**
         * What has not yet come to rest dies away with the share of the gas that is renewed, or brought to its wall's warmth, in a cycle: like exp(-n renewals) after n of them. So what is still to come is what the last
         * brought, times 1 / (exp(renewals) - 1). Warmth is compared at one pressure, for waves squeeze the gas now more, now less.
         */
        void foresee(double passed, double time) {
            double renewals = (passed + volume.heatPerKelvin() * time / volume.heatCapacity()) / volume.mass();
            double times = CAUTION * Math.min(MOST_TIMES, 1 / Math.expm1(renewals));
            double now = volume.temperature();
            double before = temperature * Math.pow(volume.pressure() / pressure, 1 - 1 / volume.gamma());
            double most = LONGEST_LEAP * now;
            double leap = Math.min(most, Math.max(-most, times * (now - before)));
            double burned = volume.share() + times * (volume.share() - share);
            volume.refill(now + leap, Math.min(1, Math.max(0, burned)));
        }
    }

    /**
     * What may come in at the mouth.
     * @param pressure    [Pa]
     * @param temperature [K]
     * @param burned      share of burned gas
     */
    record Outside(double pressure, double temperature, double burned) {}

    /**
     * Filled with what is in it at first, at rest.
     * @param cell  longest cell [m]
     * @param first state of the gas in it
     */
    DuctFlow(Duct duct, PipeGases gases, FlowKernel kernel, double cell, Outside outside, Outside first) {
        this.gases = gases;
        valve = new Throat(gases);
        PipeFlow before = null;
        Room room = null;
        double plate = Double.POSITIVE_INFINITY;
        for (Piece piece : duct.pieces()) {
            if (piece instanceof Tube tube) {
                PipeFlow pipe = pipe(tube, kernel, cell, first);
                if (room != null) {
                    bind(room, pipe, Side.LEFT, plate);
                } else if (before != null) {
                    bind(before, pipe, plate);
                }
                before = pipe;
                room = null;
                plate = Double.POSITIVE_INFINITY;
            } else if (piece instanceof Plenum plenum && before != null) {
                Volume volume = new Volume(gases, plenum.volume(), first.pressure, first.temperature, first.burned);
                volume.wall(plenum.coefficient() * plenum.surface(), plenum.wall());
                room = new Room(volume);
                rooms.add(room);
                bind(room, before, Side.RIGHT, plate);
                plate = Double.POSITIVE_INFINITY;
            } else if (piece instanceof Plate hole) {
                plate = hole.area();
            }
        }
        if (room != null) {
            open(room, plate, outside);
        } else if (before != null) {
            open(before, plate, duct.mouth(), outside);
        }
    }

    private PipeFlow pipe(Tube tube, FlowKernel kernel, double cell, Outside first) {
        int cells = Math.max(FEWEST_CELLS, (int) Math.ceil(tube.length() / cell - 1e-9));
        PipeFlow pipe = new PipeFlow(PipeShape.of(tube.length(), cells, tube::diameter), gases, kernel);
        pipe.fill(x -> first.pressure, x -> first.temperature, x -> 0, x -> first.burned);
        PipeWall wall = new PipeWall(tube.roughness(), tube.wall(), 0);
        wall.apply(pipe);
        pipes.add(pipe);
        walls.add(wall);
        return pipe;
    }

    private void bind(PipeFlow one, PipeFlow other, double area) {
        Joint joint = new Joint(gases);
        double narrower = Math.min(area, Math.min(one.endArea(Side.RIGHT), other.endArea(Side.LEFT)));
        links.add(() -> joint.join(one, Side.RIGHT, other, Side.LEFT, narrower, narrower));
    }

    private void bind(Room room, PipeFlow pipe, Side side, double plate) {
        Throat throat = new Throat(gases);
        double area = Math.min(plate, pipe.endArea(side));
        room.holes += area;
        Volume volume = room.volume;
        links.add(() -> {
            throat.join(pipe, side, area, volume.pressure(), volume.temperature(), volume.share());
            volume.give(throat);
        });
    }

    private void open(Room room, double area, Outside outside) {
        Orifice hole = new Orifice(gases);
        room.holes += area;
        Volume volume = room.volume;
        links.add(() -> {
            hole.join(
                    area,
                    volume.pressure(),
                    volume.temperature(),
                    volume.share(),
                    outside.pressure,
                    outside.temperature,
                    outside.burned);
            volume.give(-hole.mass(), -hole.energy(), -hole.burned());
        });
        out = hole::mass;
    }

    private void open(PipeFlow pipe, double plate, double mouth, Outside outside) {
        Throat throat = new Throat(gases);
        double wide = Math.min(plate, pipe.endArea(Side.RIGHT));
        double in = wide * mouth;
        links.add(() -> throat.join(pipe, Side.RIGHT, wide, in, outside.pressure, outside.temperature, outside.burned));
        out = throat::mass;
    }

    double longestStep() {
        double longest = Double.POSITIVE_INFINITY;
        for (PipeFlow pipe : pipes) {
            longest = Math.min(longest, pipe.longestStep());
        }
        for (Room room : rooms) {
            longest = Math.min(longest, room.volume.longestStep(room.holes));
        }
        return longest;
    }

    void predict(double dt) {
        for (PipeFlow pipe : pipes) {
            pipe.predict(dt);
        }
        for (Room room : rooms) {
            room.volume.predict(dt);
        }
    }

    /**
     * The valve, in the middle of the step; then {@link #intoCylinder} and its like say what flows.
     * @param into  effective area into the cylinder [m2]
     * @param outOf the same out of it
     */
    void meet(double into, double outOf, double pressure, double temperature, double burned) {
        valve.join(pipes.get(0), Side.LEFT, into, outOf, pressure, temperature, burned);
    }

    /** [kg/s]. */
    double intoCylinder() {
        return valve.mass();
    }

    double burnedIntoCylinder() {
        return valve.burned();
    }

    /** By the gas law of the pipes [W]. */
    double energyIntoCylinder() {
        return valve.energy();
    }

    void finish(double dt) {
        for (Runnable link : links) {
            link.run();
        }
        boolean reads = steps % READ_EVERY == 0;
        steps++;
        for (int i = 0; i < pipes.size(); i++) {
            pipes.get(i).finish(dt);
            if (reads) {
                walls.get(i).gather(pipes.get(i), dt);
            }
        }
        for (Room room : rooms) {
            room.volume.finish(dt);
        }
    }

    /** A cycle is over: what its stream rubs and heats holds for the next. */
    void rub() {
        for (int i = 0; i < pipes.size(); i++) {
            walls.get(i).apply(pipes.get(i));
        }
    }

    /** The next cycle begins. */
    void begin() {
        rooms.forEach(Room::note);
    }

    /**
     * Between two cycles: fills plenums with what they would hold after many like the last, at the pressure that is there.
     * @param passed gas that went through in it [kg]; nothing is done where none did
     * @param time   that it took [s]
     */
    void foresee(double passed, double time) {
        if (passed > 0) {
            rooms.forEach(room -> room.foresee(passed, time));
        }
    }

    /** What stands in it. */
    Settled.Way kept() {
        List<Settled.Along> along = new ArrayList<>();
        for (int i = 0; i < pipes.size(); i++) {
            PipeFlow pipe = pipes.get(i);
            int cells = pipe.shape().cells();
            Settled.Along kept =
                    new Settled.Along(cells, walls.get(i).stream(), walls.get(i).warmth());
            for (int k = 0; k < cells; k++) {
                kept.put(k, pipe.pressure(k), pipe.temperature(k), pipe.velocity(k), pipe.burned(k));
            }
            along.add(kept);
        }
        return new Settled.Way(
                along,
                rooms.stream()
                        .map(room -> new Settled.Still(
                                room.volume.pressure(), room.volume.temperature(), room.volume.share()))
                        .toList());
    }

    /**
     * Begins with what stood in a like one.
     * @throws IllegalArgumentException where it has not as many pipes and plenums
     */
    void beginWith(Settled.Way with) {
        if (with.pipes().size() != pipes.size() || with.rooms().size() != rooms.size()) {
            throw new IllegalArgumentException("a duct of " + pipes.size() + " pipes and " + rooms.size()
                    + " plenums cannot begin with what stood in one of "
                    + with.pipes().size() + " and " + with.rooms().size());
        }
        for (int i = 0; i < pipes.size(); i++) {
            PipeFlow pipe = pipes.get(i);
            Settled.Along along = with.pipes().get(i);
            double length = pipe.shape().step() * pipe.shape().cells();
            pipe.fill(
                    x -> along.pressure(x / length),
                    x -> along.temperature(x / length),
                    x -> along.velocity(x / length),
                    x -> along.burned(x / length));
            walls.get(i).apply(pipe, along.stream, along.warmth);
        }
        for (int i = 0; i < rooms.size(); i++) {
            Settled.Still still = with.rooms().get(i);
            rooms.get(i).volume.fill(still.pressure(), still.temperature(), still.burned());
        }
    }

    /** Out of the mouth in the step last taken [kg/s]. */
    double massOut() {
        return out.getAsDouble();
    }

    /** In all cells, and all plenums [Pa]. */
    DoubleStream pressures() {
        return DoubleStream.concat(
                pipes.stream()
                        .flatMapToDouble(
                                pipe -> IntStream.range(0, pipe.shape().cells()).mapToDouble(pipe::pressure)),
                rooms.stream().mapToDouble(room -> room.volume.pressure()));
    }

    List<PipeFlow> pipes() {
        return pipes;
    }

    int cells() {
        return pipes.stream().mapToInt(pipe -> pipe.shape().cells()).sum();
    }

    /** In the cell next to the valve [Pa]. */
    double portPressure() {
        return pipes.get(0).pressure(0);
    }

    /** In the cell next to the valve [K]. */
    double portTemperature() {
        return pipes.get(0).temperature(0);
    }
}
