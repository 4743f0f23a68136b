package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.build.GasReading;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/** Reads a gas trace: at which speed, above what, of which cycles, how well, and its rows. One that no engine can make is refused with why. */
final class GasTraceReader {
    private final Fields fields;
    private final Faults faults;

    private GasTraceReader(Fields fields, Faults faults) {
        this.fields = fields;
        this.faults = faults;
    }

    static Optional<GasReading> read(Fields fields, Faults faults) {
        return new GasTraceReader(fields, faults).read();
    }

    private Optional<GasReading> read() {
        Optional<Quantity> speed = fields.required("speed", "3000 rpm")
                .flatMap(t -> fields.quantity("speed", Dimension.ROTATIONAL_SPEED))
                .filter(this::isBelievable);
        Optional<GasReading.Reference> pressure = fields.required("pressure", "absolute")
                .flatMap(t -> fields.word("pressure", Layout.GAS_PRESSURES))
                .flatMap(key -> Arrays.stream(GasReading.Reference.values())
                        .filter(r -> r.key().equals(key))
                        .findFirst());
        Optional<GasReading.Cycles> cycles = fields.required("cycles", "mean")
                .flatMap(t -> fields.word("cycles", Layout.GAS_CYCLES))
                .flatMap(key -> Arrays.stream(GasReading.Cycles.values())
                        .filter(c -> c.key().equals(key))
                        .findFirst());
        Optional<Quantity> within = fields.required("within", "3 %")
                .flatMap(t -> fields.width("within", Dimension.RATIO))
                .filter(this::isAShare);
        Optional<Quantity> air = fields.quantity("air", Dimension.PRESSURE);
        if (pressure.filter(p -> p == GasReading.Reference.ABSOLUTE).isPresent() && fields.has("air")) {
            fields.refuse(
                    "air", "air", "has no place beside absolute pressures", "", "leave it out, or say pressure: gauge");
            return Optional.empty();
        }
        List<GasReading.Row> rows = rows();
        if (speed.isEmpty() || pressure.isEmpty() || cycles.isEmpty() || within.isEmpty() || !faults.isEmpty()) {
            return Optional.empty();
        }
        GasReading reading = new GasReading(
                speed.get(),
                pressure.get(),
                air.orElse(null),
                cycles.get(),
                within.get(),
                fields.textOrEmpty(Layout.NOTE),
                rows);
        Optional<GasReading.Trouble> trouble = reading.trouble();
        trouble.ifPresent(t -> faults.add(fields.place(), fields.path(), t.found(), t.why(), "", t.mend()));
        return trouble.isPresent() ? Optional.empty() : Optional.of(reading);
    }

    private boolean isBelievable(Quantity speed) {
        boolean holds = Term.WANTED_SPEED.believable().holds(speed.si());
        if (!holds) {
            fields.refuse(
                    "speed",
                    speed.written(),
                    "is no speed of such an engine",
                    "100 rpm to 16000 rpm",
                    "write the crank's speed while the trace was taken");
        }
        return holds;
    }

    private boolean isAShare(Quantity within) {
        if (within.si() < 0.5) {
            return true;
        }
        fields.refuse(
                "within",
                within.written(),
                "is so wide that the trace says nothing",
                "under 50 %",
                "write half the width within which a pressure is right 95 times in 100, as a share of it: 3 %");
        return false;
    }

    private List<GasReading.Row> rows() {
        List<GasReading.Row> rows = new ArrayList<>();
        fields.eachRow("'-180°: 98 kPa' below 'rows:'; 0° is firing top dead centre", (entry, path) -> {
            Optional<Quantity> angle = Fields.quantity(entry.key(), path, Dimension.ANGLE, faults);
            Optional<Quantity> pressure = Fields.quantity(entry.value(), path, Dimension.PRESSURE, faults);
            if (angle.isPresent() && pressure.isPresent()) {
                rows.add(new GasReading.Row(angle.get(), pressure.get()));
            }
        });
        return rows;
    }
}
