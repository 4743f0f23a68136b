package longthrow.core.power;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;

/** All that is needed of one engine on one day, read or usual, each with its doubt. What is not fitted (airbox, silencer) or sought (spark) is not there. Immutable. */
public final class Figures {
    private final Kind kind;
    private final Fuel fuel;
    private final Map<Needed, Measured> values;
    private final Map<Needed, String> usual;
    private final ValveTables tables;

    Figures(Kind kind, Fuel fuel, Map<Needed, Measured> values, Map<Needed, String> usual, ValveTables tables) {
        this.kind = kind;
        this.fuel = fuel;
        this.values = copy(values);
        this.usual = copy(usual);
        this.tables = tables;
    }

    private static <T> Map<Needed, T> copy(Map<Needed, T> map) { // none may be there
        Map<Needed, T> copy = new EnumMap<>(Needed.class);
        copy.putAll(map);
        return copy;
    }

    /**
     * What was read, and the usual for the rest.
     * @param known bore, stroke and compression ratio at least, coherent SI
     */
    public static Figures of(Kind kind, Fuel fuel, Map<Needed, Measured> known) {
        return Usual.fill(kind, fuel, known, ValveTables.NONE);
    }

    /**
     * The same of an engine that lacks something.
     * @param without what is not fitted, with what only it would have
     * @param tables  what was read of flow and lift of the valves
     */
    static Figures of(Kind kind, Fuel fuel, Map<Needed, Measured> known, Set<Needed> without, ValveTables tables) {
        Figures all = Usual.fill(kind, fuel, known, tables);
        Map<Needed, Measured> left = new EnumMap<>(all.values);
        Map<Needed, String> said = new EnumMap<>(all.usual);
        without.forEach(left::remove);
        without.forEach(said::remove);
        return new Figures(kind, fuel, left, said, tables);
    }

    public Kind kind() {
        return kind;
    }

    public Fuel fuel() {
        return fuel;
    }

    /** What was read of flow and lift of the valves. */
    ValveTables tables() {
        return tables;
    }

    public Optional<Measured> value(Needed needed) {
        return Optional.ofNullable(values.get(needed));
    }

    /** Where the usual figure is from; empty where it was read. */
    public Optional<String> usual(Needed needed) {
        return Optional.ofNullable(usual.get(needed));
    }

    /** How many of them were read. */
    long read() {
        return values.size() - taken();
    }

    /** How many of them are usual. */
    long taken() {
        return usual.size();
    }

    public boolean has(Needed needed) {
        return values.containsKey(needed);
    }

    /** Of what is there. */
    public double number(Needed needed) {
        Measured value = values.get(needed);
        if (value == null) {
            throw new IllegalStateException(needed + " is not there");
        }
        return value.value();
    }

    /** The same without one. */
    Figures without(Needed needed) {
        Map<Needed, Measured> fewer = new EnumMap<>(values);
        Map<Needed, String> said = new EnumMap<>(usual);
        fewer.remove(needed);
        said.remove(needed);
        return new Figures(kind, fuel, fewer, said, tables);
    }

    /** The same with one more that was read. */
    Figures read(Needed needed, Measured figure) {
        Figures bare = without(needed);
        Map<Needed, Measured> more = new EnumMap<>(bare.values);
        more.put(needed, figure);
        return new Figures(kind, fuel, more, bare.usual, tables);
    }

    /** The same with one that nobody read, as it is met in such engines. */
    Figures assumed(Needed needed, Measured figure, String source) {
        Map<Needed, Measured> more = new EnumMap<>(values);
        Map<Needed, String> said = new EnumMap<>(usual);
        more.put(needed, figure);
        said.put(needed, source);
        return new Figures(kind, fuel, more, said, tables);
    }

    /** The same with one of them at another value [SI]; its doubt gone. */
    Figures with(Needed needed, double value) {
        Map<Needed, Measured> changed = new EnumMap<>(values);
        changed.put(needed, Measured.exact(value));
        return new Figures(kind, fuel, changed, usual, tables);
    }
}
