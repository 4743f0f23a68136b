package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.ValveMovement;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.LiftCurve;
import longthrow.core.motion.LobeCurve;
import longthrow.core.motion.ValveMotion;
import longthrow.core.term.Term;

/** Each valve's motion place by place: by its lift table where one tells it, else by duration, centre and full lift with the flanks assumed. */
final class ValveLifts {
    /** From place to place [rad]: well inside the distance of readings. */
    private static final double STEP = Math.toRadians(1);

    private ValveLifts() {}

    static List<ValveLift> of(Build build, List<TableReading> tables, Function<Term, Optional<Measured>> figures) {
        List<ValveLift> found = new ArrayList<>();
        for (Valve valve : Valve.values()) {
            List<TableReading> own = tables.stream()
                    .filter(t -> t.table().valve() == valve && t.atValve().isPresent())
                    .toList();
            own.stream().flatMap(t -> byTable(t).stream()).forEach(found::add);
            boolean atLobe = tables.stream().anyMatch(t -> t.table().valve() == valve);
            if (own.isEmpty()) {
                ValveMovements.lobe(build, valve, figures, atLobe)
                        .map(inputs -> byFigures(valve, inputs))
                        .ifPresent(found::add);
            }
        }
        return List.copyOf(found);
    }

    private static Optional<ValveLift> byTable(TableReading table) {
        ValveMotion motion = table.atValve().orElseThrow();
        LiftCurve curve = table.table().curve();
        List<ValveLift.Place> places = new ArrayList<>();
        double peak = curve.peakAngle();
        for (int side : new int[] {-1, 1}) {
            List<ValveLift.Place> flank = new ArrayList<>();
            for (int k = side < 0 ? 1 : 0; curve.reaches(peak + side * k * STEP); k++) {
                double angle = peak + side * k * STEP;
                double lift = motion.at(angle);
                if (!(lift > 0)) {
                    break;
                }
                flank.add(new ValveLift.Place(angle, lift, times(motion.ratio(), curve.bendWhereSlowed(angle))));
            }
            if (side < 0) {
                java.util.Collections.reverse(flank);
            }
            places.addAll(flank);
        }
        return motion.sharpest()
                .map(nose -> new ValveLift(
                        table.table().valve().part,
                        table.table().place(),
                        places,
                        motion.peak(),
                        nose,
                        table.defaults()));
    }

    private static Measured times(Measured ratio, Measured bend) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        Carried.add(errors, bend, ratio.value());
        Carried.add(errors, ratio, bend.value());
        return Measured.withContributions(ratio.value() * bend.value(), errors);
    }

    /** @param inputs full lift, checking lift, duration, centre */
    private static ValveLift byFigures(Valve valve, List<Measured> inputs) {
        LobeCurve middle = curve(inputs.stream().mapToDouble(Measured::value).toArray());
        List<ValveLift.Place> places = new ArrayList<>();
        int reach = (int) Math.floor(middle.halfWidth() / STEP);
        for (int k = -reach; k <= reach; k++) {
            double share = k * STEP / middle.halfWidth(); // the same share of the lobe for a lobe a little wider
            double angle = middle.centre() + k * STEP;
            double lift = middle.at(angle);
            if (lift > 0) {
                Measured bend = Carried.through(
                        x -> {
                            LobeCurve other = curve(x);
                            return other.bend(other.centre() + share * other.halfWidth());
                        },
                        inputs);
                places.add(new ValveLift.Place(angle, lift, bend));
            }
        }
        Measured nose = Carried.through(x -> curve(x).sharpest(), inputs);
        DefaultUsed assumed = new DefaultUsed(
                valve.lift.part().key(), LobeCurve.ASSUMED, "docs/decisions/0010-lift-tables-as-readings.md");
        return new ValveLift(valve.part, ValveMovement.LOBE_FIGURES, places, inputs.get(0), nose, List.of(assumed));
    }

    private static LobeCurve curve(double[] x) {
        return LobeCurve.of(x[0], x[1], x[2], x[3]);
    }
}
