package longthrow.core.power;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;

/** A row of the published engines, as {@code references/engines} has them, and what the prediction is told of it: what is printed and nothing else. */
record PublishedEngine(
        String id,
        String name,
        Kind kind,
        Map<Needed, Measured> known,
        OptionalDouble torque,
        OptionalDouble torqueSpeed,
        OptionalDouble power,
        OptionalDouble powerSpeed,
        String source) {
    private static final Pattern EVENTS =
            Pattern.compile("IO (\\d+) BTDC, IC (\\d+) ABDC, EO (\\d+) BBDC, EC (\\d+) ATDC.*");

    Figures figures() {
        return Figures.of(kind, Fuel.petrol(), known);
    }

    /** The makers' rows. */
    static List<PublishedEngine> makers() {
        List<PublishedEngine> engines = new ArrayList<>();
        for (Map<String, String> row : rows("production_specs")) {
            engines.add(maker(row));
        }
        return engines;
    }

    private static PublishedEngine maker(Map<String, String> row) {
        boolean utility = text(row, "class").matches("industrial.*|domestic.*");
        Kind.Layout layout = layout(text(row, "cam"));
        int valves = Integer.parseInt(text(row, "valves"));
        Kind.Cooling cooling = cooling(text(row, "cooling"));
        Kind.Basis basis = text(row, "rating_basis").startsWith("gross")
                ? Kind.Basis.MAKER_GROSS
                : utility ? Kind.Basis.NET : Kind.Basis.MAKER;
        Kind kind =
                new Kind(utility ? Kind.Use.UTILITY : Kind.Use.ROAD, cooling, layout, valves / 2, valves / 2, basis);
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        put(known, Needed.BORE, number(row, "bore_mm"), 1e-3);
        put(known, Needed.STROKE, number(row, "stroke_mm"), 1e-3);
        put(known, Needed.COMPRESSION_RATIO, number(row, "compression_ratio"), 1);
        put(known, Needed.VENTURI, number(row, "carb_or_throttle_mm"), 1e-3);
        String[] heads = text(row, "valve_head_in_ex_mm").split("/", -1);
        if (heads.length == 2) {
            put(known, Needed.INTAKE_HEAD, OptionalDouble.of(Double.parseDouble(heads[0])), 1e-3);
            put(known, Needed.EXHAUST_HEAD, OptionalDouble.of(Double.parseDouble(heads[1])), 1e-3);
        }
        Matcher events = EVENTS.matcher(text(row, "valve_timing_deg"));
        if (events.matches()) {
            Needed[] order = {Needed.INTAKE_OPENS, Needed.INTAKE_CLOSES, Needed.EXHAUST_OPENS, Needed.EXHAUST_CLOSES};
            for (int i = 0; i < order.length; i++) {
                put(known, order[i], OptionalDouble.of(Double.parseDouble(events.group(i + 1))), Math.PI / 180);
            }
        }
        return new PublishedEngine(
                text(row, "id"),
                text(row, "class"),
                kind,
                known,
                number(row, "torque_Nm"),
                number(row, "torque_rpm"),
                number(row, "power_kW"),
                number(row, "power_rpm"),
                text(row, "source"));
    }

    static Kind.Cooling cooling(String text) {
        return switch (text) {
            case "forced air" -> Kind.Cooling.FAN;
            case "liquid" -> Kind.Cooling.LIQUID;
            default -> Kind.Cooling.WIND;
        };
    }

    private static Kind.Layout layout(String cam) {
        return switch (cam) {
            case "pushrod" -> Kind.Layout.PUSHROD;
            case "side valve" -> Kind.Layout.SIDE_VALVE;
            default -> Kind.Layout.OVERHEAD_CAM;
        };
    }

    static void put(Map<Needed, Measured> known, Needed needed, OptionalDouble value, double unit) {
        value.ifPresent(v -> known.put(needed, Measured.exact(v * unit)));
    }

    static String text(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    static OptionalDouble number(Map<String, String> row, String column) {
        String text = text(row, column);
        return text.matches("[0-9.]+") ? OptionalDouble.of(Double.parseDouble(text)) : OptionalDouble.empty();
    }

    static List<Map<String, String>> rows(String file) {
        String text;
        try (InputStream in = Objects.requireNonNull(
                PublishedEngine.class.getResourceAsStream("/references/engines/" + file + ".csv"))) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<List<String>> lines = new ArrayList<>();
        for (String line : text.lines().toList()) {
            lines.add(cells(line));
        }
        List<Map<String, String>> rows = new ArrayList<>();
        for (List<String> line : lines.subList(1, lines.size())) {
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < lines.get(0).size(); i++) {
                row.put(lines.get(0).get(i), i < line.size() ? line.get(i) : "");
            }
            rows.add(row);
        }
        return rows;
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
