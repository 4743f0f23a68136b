package longthrow.core.dyno;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;
import longthrow.core.reduce.Remark;

/**
 * A file without time in which a dynamometer wrote torque or power at speeds: the same as rows typed into the sheet.
 * @param table   empty where it makes none
 * @param remarks what is to be said of it
 * @param trouble why it makes none; empty where it does
 */
record LoggedTable(Optional<DynoSheet.Table> table, List<Remark> remarks, String trouble) {
    /** Torque by speed is power within this share, or one of the three is not what it is taken for. Judgement: dynamometers round, and smooth both by themselves. */
    private static final double GO_TOGETHER = 0.02;

    /** Of a line, in SI. */
    private record Line(double speed, double figure) {}

    static LoggedTable of(Recording rows, String file) {
        Optional<double[]> speed = rows.values(Channel.ENGINE_SPEED);
        Optional<double[]> torque = rows.values(Channel.TORQUE);
        Optional<double[]> power = rows.values(Channel.POWER);
        if (speed.isEmpty() || (torque.isEmpty() && power.isEmpty())) {
            return new LoggedTable(
                    Optional.empty(),
                    List.of(),
                    "a table needs columns of engine speed and of torque or power, and " + file
                            + " has none that is known to be "
                            + (speed.isEmpty() ? "engine speed" : "torque or power")
                            + ": name it with columns:");
        }
        List<Remark> remarks = new ArrayList<>();
        List<Line> lines = lines(speed.get(), torque.or(() -> power).get(), file, remarks);
        if (torque.isPresent() && power.isPresent()) {
            together(speed.get(), torque.get(), power.get(), file, remarks);
        }
        Unit unit = torque.isPresent() ? Units.NEWTON_METRE : Units.WATT;
        List<DynoSheet.Row> table = new ArrayList<>();
        for (int from = 0; from < lines.size(); ) {
            int to = from;
            double sum = 0;
            while (to < lines.size() && lines.get(to).speed() == lines.get(from).speed()) {
                sum += lines.get(to++).figure();
            }
            if (to - from > 1) {
                note(
                        remarks,
                        String.format(
                                Locale.ROOT,
                                "%d rows of %s stand at %.0f rpm: their mean is taken",
                                to - from,
                                file,
                                Units.RPM.fromSi(lines.get(from).speed())));
            }
            Quantity figure = Quantity.of(BigDecimal.valueOf(sum / (to - from)), unit);
            table.add(new DynoSheet.Row(
                    Quantity.of(BigDecimal.valueOf(lines.get(from).speed()), Units.RADIAN_PER_SECOND),
                    new Stated(figure.written(), figure, Optional.empty(), List.of())));
            from = to;
        }
        if (table.isEmpty()) {
            return new LoggedTable(
                    Optional.empty(), remarks, "no row of " + file + " has a speed above 0 and a figure at it");
        }
        note(
                remarks,
                file + " has no time: its rows are taken as the table of " + (torque.isPresent() ? "torque" : "power")
                        + " at speeds, as if they were written below rows:");
        return new LoggedTable(Optional.of(new DynoSheet.Table(table)), remarks, "");
    }

    private static List<Line> lines(double[] speed, double[] figure, String file, List<Remark> remarks) {
        List<Line> lines = new ArrayList<>();
        boolean rises = true;
        for (int i = 0; i < speed.length; i++) {
            if (speed[i] > 0 && !Double.isNaN(figure[i])) {
                rises &= lines.isEmpty()
                        || speed[i] >= lines.get(lines.size() - 1).speed();
                lines.add(new Line(speed[i], figure[i]));
            }
        }
        int lacking = speed.length - lines.size();
        if (lacking > 0) {
            note(
                    remarks,
                    lacking + (lacking == 1 ? " row of " : " rows of ") + file
                            + (lacking == 1 ? " has" : " have")
                            + " no speed above 0 or no figure at it, and no place in the table");
        }
        if (!rises) {
            note(remarks, "the rows of " + file + " do not stand by rising speed: they were sorted by it");
            lines.sort(Comparator.comparingDouble(Line::speed));
        }
        return lines;
    }

    private static void together(double[] speed, double[] torque, double[] power, String file, List<Remark> remarks) {
        int apart = 0;
        int rows = 0;
        double example = Double.NaN;
        for (int i = 0; i < speed.length; i++) {
            double share = speed[i] * torque[i] / power[i];
            if (Double.isFinite(share)) {
                rows++;
                boolean off = Math.abs(share - 1) > GO_TOGETHER;
                example = off && apart == 0 ? share : example;
                apart += off ? 1 : 0;
            }
        }
        if (2 * apart > rows) {
            remarks.add(new Remark(
                    Remark.Weight.WARNING,
                    String.format(
                            Locale.ROOT,
                            "in %d of %d rows of %s torque and speed make another power than stands beside them (%.3f times it"
                                    + " in the first such row): a unit is another than is taken, or power and torque are told"
                                    + " at two places. Torque is used",
                            apart,
                            rows,
                            file,
                            example)));
        }
    }

    private static void note(List<Remark> remarks, String text) {
        remarks.add(new Remark(Remark.Weight.NOTE, text));
    }
}
