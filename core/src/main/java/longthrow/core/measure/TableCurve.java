package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.build.Build;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.measurement.Source;
import longthrow.core.motion.LiftCurve;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * The curve through one lift table, as its tools and rows have it; nothing else of the build is in it.
 * @param place    in the build file
 * @param atValve  whether the dial stood at the valve; else at the lobe
 * @param fromPeak whether angles count from the peak, so that the other flank is the mirror of this one
 * @param scatter  of one lift by the table of repeatability [m]
 */
record TableCurve(String place, Valve valve, boolean atValve, boolean fromPeak, LiftCurve curve, double scatter) {
    /** A dial set by eye stands within this of the line of motion [rad] and then reads big by up to one over its cosine; common practice, no source. */
    private static final double DIAL_DIRECTION = Math.toRadians(5);

    /** Of every table with rows enough, in the order of the file. */
    static List<TableCurve> of(Build build) {
        List<TableCurve> curves = new ArrayList<>();
        for (int k = 0; k < build.lifts().size(); k++) {
            LiftTable table = build.lifts().get(k);
            if (LiftTables.isWhole(table)) {
                curves.add(of(build, table, "lift_tables[" + (k + 1) + "]"));
            }
        }
        return List.copyOf(curves);
    }

    /** Whether a table of this valve may tell its events at the checking lift. */
    static boolean mayTell(Build build, Valve valve) {
        return build.has(Term.CHECKING_LIFT)
                && build.lifts().stream().anyMatch(t -> Valve.of(t.valve()) == valve && LiftTables.isWhole(t));
    }

    /** Curves of late: many engines that are only thought of share the tables of one. A curve is what its key says and nothing else. */
    private static final Map<List<Object>, TableCurve> LATELY =
            Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<List<Object>, TableCurve> eldest) {
                    return size() > MOST_REMEMBERED;
                }
            });

    private static final int MOST_REMEMBERED = 16;

    private static TableCurve of(Build build, LiftTable table, String place) {
        List<Object> key = List.of(
                place,
                table,
                tool(build, InstrumentKind.DIAL_INDICATOR),
                tool(build, InstrumentKind.DEGREE_WHEEL),
                build.repeatability(ReadingKind.LIFT));
        TableCurve known = LATELY.get(key);
        if (known == null) {
            known = fitted(build, table, place);
            LATELY.put(key, known);
        }
        return known;
    }

    private static TableCurve fitted(Build build, LiftTable table, String place) {
        double[] angles = table.rows().stream().mapToDouble(r -> r.angle().si()).toArray();
        double[] lifts = table.rows().stream().mapToDouble(r -> r.lift().si()).toArray();
        boolean fromPeak = LiftTables.isFromPeak(table);
        LiftCurve.Bench bench = bench(build, place);
        return new TableCurve(
                place,
                Valve.of(table.valve()),
                table.at().equals("valve"),
                fromPeak,
                LiftCurve.of(place, table.valve() + " lift table", angles, lifts, fromPeak, bench),
                bench.liftScatter());
    }

    /** What the curve takes for granted. */
    List<DefaultUsed> defaults() {
        return List.of(
                fromPeak
                        ? new DefaultUsed(
                                place,
                                "angles count from the peak; the other flank is taken as the mirror of this one, so it tells no lobe centre",
                                "the first row stands at 0 and is the highest")
                        : new DefaultUsed(
                                place,
                                "0 on the wheel is taken as a top dead centre, degrees counted on in the running direction",
                                "common practice, no source"),
                new DefaultUsed(
                        place,
                        "each lift scatters as the table of repeatability says until its rows say otherwise; the dial may stand 5° off the line of motion",
                        "docs/decisions/0007-smoothing.md; common practice, no source"));
    }

    private static LiftCurve.Bench bench(Build build, String place) {
        Instrument dial = tool(build, InstrumentKind.DIAL_INDICATOR);
        Instrument wheel = tool(build, InstrumentKind.DEGREE_WHEEL);
        double liftScatter = Math.hypot(build.repeatability(ReadingKind.LIFT), dial.resolution() / Math.sqrt(12));
        Map<Source, Double> gains = new LinkedHashMap<>();
        for (Instrument at = dial; at != null; at = at.setWith()) {
            if (at.relativeError() > 0) {
                Source source = Readings.gain(at);
                gains.put(source, source.standardUncertainty());
            }
        }
        Source direction = Source.rectangular(
                place + " dial direction",
                Source.Kind.INSTRUMENT,
                "direction of the dial",
                1 / Math.cos(DIAL_DIRECTION) - 1);
        gains.put(direction, direction.standardUncertainty());
        return new LiftCurve.Bench(
                liftScatter,
                ReadingKind.POOLED_DEGREES_OF_FREEDOM,
                wheel.resolution() / Math.sqrt(12),
                stated(wheel),
                stated(dial),
                gains);
    }

    /** The same sources as those of other readings with this tool. */
    private static Map<Source, Double> stated(Instrument tool) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        for (Instrument at = tool; at != null; at = at.setWith()) {
            if (at.statedError() > 0) {
                Source source = Readings.statedError(at);
                errors.put(source, source.standardUncertainty());
            }
        }
        return errors;
    }

    /** The owner's tool of this kind when there is just one; else the built-in figures. */
    private static Instrument tool(Build build, InstrumentKind kind) {
        List<Instrument> own = build.instruments().values().stream()
                .filter(i -> i.kind() == kind)
                .toList();
        return own.size() == 1 ? own.get(0) : Instrument.builtIn(kind);
    }
}
