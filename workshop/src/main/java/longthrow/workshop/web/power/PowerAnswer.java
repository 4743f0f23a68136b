package longthrow.workshop.web.power;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.JetAdvice;
import longthrow.core.answer.Rung;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.overlay.Overlays;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import longthrow.workshop.draw.CycleChart;
import longthrow.workshop.draw.TorqueChart;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Around;
import longthrow.workshop.web.BothUnits;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.ToRead;
import longthrow.workshop.web.Ways;

/**
 * What torque over what speeds, laid out.
 * @param base      address of the build
 * @param sentences what it comes to
 * @param takenFor  what sort of engine it is reckoned as
 * @param kinds     words and figures that say so
 * @param chart     torque and power over speed, as SVG; empty where there is no curve
 * @param standings how the speeds stand, and why, told once for all that stand so
 * @param lines     of the table of speeds
 * @param steps     what is meant by what keeps torque down
 * @param cycle     two turns at one speed; empty where none was reckoned
 * @param owners    of the doubt of the most torque
 * @param next      readings that would cut it most
 * @param sparks    what the spark does, a sentence for each speed that was looked at
 * @param jet       what the main jet becomes; empty where no torque is told
 * @param missing   what it cannot do without
 * @param over      what was measured over it
 * @param around    what stands around every answer
 */
public record PowerAnswer(
        String base,
        List<String> sentences,
        String takenFor,
        List<Frame.Place> kinds,
        String chart,
        List<Stand> standings,
        List<Line> lines,
        List<String> steps,
        Optional<Cycle> cycle,
        List<String> owners,
        List<Next> next,
        List<String> sparks,
        Optional<Jet> jet,
        List<ToRead> missing,
        PowerOver over,
        Around around) {
    private static final List<String> FIRST = List.of(TorqueChart.TORQUE, TorqueChart.POWER);

    public PowerAnswer {
        sentences = List.copyOf(sentences);
        kinds = List.copyOf(kinds);
        standings = List.copyOf(standings);
        lines = List.copyOf(lines);
        steps = List.copyOf(steps);
        owners = List.copyOf(owners);
        next = List.copyOf(next);
        sparks = List.copyOf(sparks);
        missing = List.copyOf(missing);
    }

    /**
     * The main jet for this place, weather and fuel.
     * @param said     what it comes to
     * @param missing  what would have to be written
     * @param cautions that stand beside it
     * @param read     what tells on the engine whether it is right
     */
    public record Jet(String said, List<ToRead> missing, List<String> cautions, List<String> read) {
        public Jet {
            missing = List.copyOf(missing);
            cautions = List.copyOf(cautions);
            read = List.copyOf(read);
        }

        static Jet of(JetAdvice advice, String base) {
            return new Jet(
                    PageWords.said(advice.said()), ToRead.of(advice.missing(), base), advice.cautions(), advice.read());
        }
    }

    /** Speeds that stand alike for the same reason. */
    public record Stand(String key, String label, String why) {
        /** Not said twice. */
        public String words() {
            return why.startsWith(label) ? why : label + ": " + why;
        }
    }

    /**
     * One speed, or several next to each other at which no power is told for the same reason.
     * @param id       on the page
     * @param state    how it stands, as a key for the style sheet
     * @param torque   empty where none is told
     * @param power    empty where none is told
     * @param bounds   what keeps torque down, the most first
     * @param why      no power is told; empty where it is
     * @param figures  the others
     * @param reckoned how the sums came out; empty where none were done
     */
    public record Line(
            String id,
            String speed,
            String state,
            String standing,
            Optional<BothUnits> torque,
            Optional<BothUnits> power,
            List<String> bounds,
            String why,
            List<Figure> figures,
            String reckoned) {
        public Line {
            bounds = List.copyOf(bounds);
            figures = List.copyOf(figures);
        }

        /** What keeps torque down, in one line. */
        public String heldDown() {
            return String.join(", ", bounds);
        }

        /** Whether power is told. */
        public boolean isTold() {
            return torque.isPresent();
        }
    }

    /** A figure with its doubt. */
    public record Figure(String label, BothUnits words) {}

    /** Pictures of two turns, as SVG. */
    public record Cycle(String speed, String loop, String valves) {}

    /** A reading that would cut the doubt, and by how much. */
    public record Next(Frame.Place place, String how, String cut) {}

    /**
     * Laid out.
     * @param laid     what was measured over it
     * @param idPrefix of all that has a name of its own on the page
     */
    static PowerAnswer of(Answer predicted, Dynos.Laid laid, String base, String idPrefix) {
        Answer answer = Overlays.onto(predicted, laid.answers());
        TorqueCurve curve = answer.torque().orElse(TorqueCurve.unknown(List.of()));
        FigurePrinter printer = new FigurePrinter(answer.units());
        return new PowerAnswer(
                base,
                curve.sentences().stream().map(PageWords::said).toList(),
                curve.takenFor(),
                curve.takenFor().isEmpty() ? List.of() : kinds(base),
                curve.rows().isEmpty() ? "" : TorqueChart.of(curve, answer.units(), idPrefix + "-curve"),
                standings(curve),
                lines(curve, printer, idPrefix),
                curve.steps().stream().map(PageWords::said).toList(),
                cycle(curve, printer, answer.units(), idPrefix),
                curve.shares().stream()
                        .map(share -> PageWords.said(share.what()) + " " + percent(share.share()))
                        .toList(),
                curve.next().stream().map(reading -> next(reading, base)).toList(),
                curve.sparks().stream().map(s -> PageWords.said(s.said())).toList(),
                curve.jet().map(advice -> Jet.of(advice, base)),
                ToRead.of(curve.missing(), base),
                PowerOver.of(answer, laid, base),
                Around.of(answer, base));
    }

    private static List<Frame.Place> kinds(String base) {
        return List.of(
                Ways.input(Choice.MADE_FOR.path(), base),
                Ways.input(Choice.COOLING.path(), base),
                named(Choice.VALVE_LAYOUT.meaning(), Choice.VALVE_LAYOUT.path(), base),
                Ways.input(Choice.CAM_DRIVE.path(), base),
                named("number of valves", Term.VALVES.path(), base));
    }

    private static Frame.Place named(String label, String where, String base) {
        return new Frame.Place(label, Ways.input(where, base).address());
    }

    private static List<Stand> standings(TorqueCurve curve) {
        Map<Standing, String> whys = new LinkedHashMap<>();
        for (Row row : curve.rows()) {
            whys.merge(row.standing(), PageWords.said(row.why()), (a, b) -> a.equals(b) ? a : "");
        }
        return whys.entrySet().stream()
                .filter(e -> !e.getValue().isEmpty())
                .map(e -> new Stand(e.getKey().key(), e.getKey().label(), e.getValue()))
                .toList();
    }

    // ---- the table of speeds

    private static List<Line> lines(TorqueCurve curve, FigurePrinter printer, String idPrefix) {
        List<Line> lines = new ArrayList<>();
        List<Row> rows = curve.rows();
        for (int i = 0, from = 0; i < rows.size(); i++) {
            if (i + 1 == rows.size() || !isOneLine(rows.get(i), rows.get(i + 1))) {
                lines.add(line(rows.get(from), rows.get(i), printer, idPrefix));
                from = i + 1;
            }
        }
        return lines;
    }

    private static boolean isOneLine(Row one, Row next) {
        return one.figures().isEmpty()
                && next.figures().isEmpty()
                && one.standing() == next.standing()
                && one.why().equals(next.why());
    }

    private static Line line(Row first, Row last, FigurePrinter printer, String idPrefix) {
        String speed = first.speed() == last.speed()
                ? speed(printer, first.speed())
                : speed(printer, first.speed()) + " to " + speed(printer, last.speed());
        return new Line(
                idPrefix + "-" + Math.round(Units.RPM.fromSi(first.speed())),
                speed,
                first.standing().key(),
                first.standing().label(),
                words(first, TorqueChart.TORQUE, printer),
                words(first, TorqueChart.POWER, printer),
                first.bounds().stream()
                        .map(bound -> PageWords.said(bound.brief()))
                        .toList(),
                first.figures().isEmpty() ? PageWords.said(first.why()) : "",
                first.figures().stream()
                        .filter(figure -> !FIRST.contains(figure.key()))
                        .map(figure ->
                                new Figure(figure.label(), BothUnits.of(printer, figure.dimension(), figure.figure())))
                        .toList(),
                first.reckoning().map(r -> reckoned(r, printer)).orElse(""));
    }

    private static Optional<BothUnits> words(Row row, String key, FigurePrinter printer) {
        return row.figure(key).map(figure -> BothUnits.of(printer, figure.dimension(), figure.figure()));
    }

    private static String reckoned(TorqueCurve.Reckoning reckoning, FigurePrinter printer) {
        return String.format(
                Locale.ROOT,
                "%d cycles, until the last differed from the one before by %.2g %%; %d steps in it, %d cells of gas, none longer than %s. What came in and is missing "
                        + "over that cycle: %.1g of the mass, %.1g of the energy.",
                reckoning.cycles(),
                100 * Math.abs(reckoning.change()),
                reckoning.steps(),
                reckoning.cells(),
                printer.print(Dimension.LENGTH, reckoning.cell(), 0).line(),
                Math.abs(reckoning.mass()),
                Math.abs(reckoning.energy()));
    }

    private static String speed(FigurePrinter printer, double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed))), 0)
                .first()
                .text();
    }

    // ---- two turns, and the doubt

    private static Optional<Cycle> cycle(TorqueCurve curve, FigurePrinter printer, UnitSystem units, String idPrefix) {
        return curve.cycle().isEmpty()
                ? Optional.empty()
                : Optional.of(new Cycle(
                        speed(printer, curve.cycleSpeed()),
                        CycleChart.loop(curve.cycle(), units, idPrefix + "-loop"),
                        CycleChart.valves(curve.cycle(), units, idPrefix + "-valves")));
    }

    private static Next next(TorqueCurve.Reading reading, String base) {
        Rung.Missing read = reading.read();
        Frame.Place place = ToRead.of(List.of(read), base).get(0).place();
        return new Next(
                place,
                PageWords.said(read.how()),
                "± of the most torque from " + percent(reading.now()) + " to " + percent(reading.after()));
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
