package longthrow.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.engine.Compression;
import longthrow.core.engine.Stack;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;

/**
 * A compression ratio from 30 readings, as heavy as the real question: every length brought to 20 °C from the temperature
 * and expansion of the part and of the instrument, every instrument with an error of its own that all its readings
 * share; stack and volumes by the formulas of the measure question. The engine is invented. Lengths [m], volumes [m3], temperatures [°C], expansion [1/K].
 */
final class StackToRatio {
    /** Value and standard uncertainty of each input; the order is of no account. */
    private static final Map<String, double[]> READINGS = readings();

    private StackToRatio() {}

    private static Map<String, double[]> readings() {
        Map<String, double[]> r = new LinkedHashMap<>();
        r.put("bore", new double[] {66.01e-3, 4e-6});
        r.put("stroke", new double[] {55.02e-3, 15e-6});
        r.put("rod", new double[] {92.03e-3, 20e-6});
        r.put("pinTop", new double[] {24.21e-3, 12e-6});
        r.put("pin", new double[] {17.995e-3, 2e-6});
        r.put("deckHeight", new double[] {152.98e-3, 25e-6});
        r.put("gasketBore", new double[] {67.4e-3, 60e-6});
        r.put("gasketThickness", new double[] {1.14e-3, 20e-6});
        r.put("chamber", new double[] {19.6e-6, 0.08e-6});
        r.put("dish", new double[] {1.2e-6, 0.05e-6});
        r.put("pockets", new double[] {0.35e-6, 0.03e-6});
        r.put("plug", new double[] {0.12e-6, 0.02e-6});
        r.put("landDiameter", new double[] {65.52e-3, 10e-6});
        r.put("landHeight", new double[] {5.1e-3, 30e-6});
        r.put("groove", new double[] {0.08e-6, 0.02e-6});
        r.put("bigEndClearance", new double[] {45e-6, 5e-6});
        r.put("smallEndClearance", new double[] {15e-6, 4e-6});
        r.put("boreGaugeError", new double[] {0, 3e-6});
        r.put("caliperError", new double[] {0, 12e-6});
        r.put("depthGaugeError", new double[] {0, 10e-6});
        r.put("buretteError", new double[] {0, 0.03e-6});
        r.put("blockTemperature", new double[] {17, 1});
        r.put("pistonTemperature", new double[] {18, 1});
        r.put("rodTemperature", new double[] {18, 1});
        r.put("crankTemperature", new double[] {18, 1});
        r.put("instrumentTemperature", new double[] {19, 1});
        r.put("aluminium", new double[] {21e-6, 1e-6});
        r.put("castIron", new double[] {10.5e-6, 0.6e-6});
        r.put("steel", new double[] {11.5e-6, 0.5e-6});
        r.put("instrumentSteel", new double[] {11.5e-6, 0.5e-6});
        return r;
    }

    static Formula formula() {
        Expression instrument = growth("instrumentSteel", "instrumentTemperature");
        Expression block = instrument.dividedBy(growth("castIron", "blockTemperature"));
        Expression piston = instrument.dividedBy(growth("aluminium", "pistonTemperature"));
        Expression rodScale = instrument.dividedBy(growth("aluminium", "rodTemperature"));
        Expression crank = instrument.dividedBy(growth("steel", "crankTemperature"));
        Expression caliper = input("caliperError");
        Expression depthGauge = input("depthGaugeError");
        Expression burette = input("buretteError");

        Expression bore = input("bore").plus(input("boreGaugeError")).times(block);
        Expression stroke = input("stroke").plus(depthGauge).times(crank);
        Expression rod = input("rod").plus(caliper).times(rodScale);
        Expression pin = input("pin").plus(caliper).times(crank);
        Expression compressionHeight =
                Stack.compressionHeightFromPinTop(input("pinTop").plus(caliper).times(piston), pin);
        Expression clearance =
                input("bigEndClearance").plus(input("smallEndClearance")).half();
        Expression below = Stack.deckClearance(
                input("deckHeight").plus(depthGauge).times(block), stroke, rod, compressionHeight.plus(clearance));

        Expression crevice = Compression.creviceVolume(
                        bore,
                        input("landDiameter").plus(caliper).times(piston),
                        input("landHeight").plus(depthGauge))
                .plus(input("groove"));
        Expression crown = Expression.sum(
                input("dish").plus(burette), input("pockets"), input("plug").negated());
        Expression left = Compression.clearanceVolume(
                        input("chamber").plus(burette),
                        Compression.gasketVolume(input("gasketBore").plus(caliper), input("gasketThickness")),
                        Compression.deckVolume(bore, below),
                        crown)
                .plus(crevice);
        return Formula.of("compression ratio", Compression.ratio(Compression.sweptVolume(bore, stroke), left));
    }

    /** The same by hand, in plain Java: what a person would write for this one question. */
    static double byHand(double[] x, List<String> order) {
        return new ByHand(x, order).ratio();
    }

    static double value(String input) {
        return of(input)[0];
    }

    static double uncertainty(String input) {
        return of(input)[1];
    }

    private static double[] of(String input) {
        double[] reading = READINGS.get(input);
        if (reading == null) {
            throw new IllegalArgumentException("no reading for " + input);
        }
        return reading;
    }

    private static Expression input(String name) {
        return Expression.input(name);
    }

    private static Expression growth(String expansion, String temperature) {
        return input(expansion).times(input(temperature).minus(20)).plus(1);
    }

    private static final class ByHand {
        private final double[] x;
        private final List<String> order;

        ByHand(double[] x, List<String> order) {
            this.x = x;
            this.order = order;
        }

        private double get(String name) {
            return x[order.indexOf(name)];
        }

        private double growth(String expansion, String temperature) {
            return 1 + get(expansion) * (get(temperature) - 20);
        }

        double ratio() {
            double instrument = growth("instrumentSteel", "instrumentTemperature");
            double block = instrument / growth("castIron", "blockTemperature");
            double piston = instrument / growth("aluminium", "pistonTemperature");
            double crank = instrument / growth("steel", "crankTemperature");
            double bore = (get("bore") + get("boreGaugeError")) * block;
            double stroke = (get("stroke") + get("depthGaugeError")) * crank;
            double rod = (get("rod") + get("caliperError")) * instrument / growth("aluminium", "rodTemperature");
            double pin = (get("pin") + get("caliperError")) * crank;
            double pinHeight = (get("pinTop") + get("caliperError")) * piston + pin / 2;
            double stack = stroke / 2 + rod + pinHeight + (get("bigEndClearance") + get("smallEndClearance")) / 2;
            double below = (get("deckHeight") + get("depthGaugeError")) * block - stack;
            double area = Math.PI / 4 * bore * bore;
            double gasketBore = get("gasketBore") + get("caliperError");
            double land = (get("landDiameter") + get("caliperError")) * piston;
            double crevice = (area - Math.PI / 4 * land * land) * (get("landHeight") + get("depthGaugeError"));
            double left = get("chamber") + get("dish") + 2 * get("buretteError") + get("pockets") - get("plug");
            left += Math.PI / 4 * gasketBore * gasketBore * get("gasketThickness") + area * below + crevice;
            left += get("groove");
            return (area * stroke + left) / left;
        }
    }
}
