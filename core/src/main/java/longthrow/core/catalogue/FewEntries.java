package longthrow.core.catalogue;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An unchangeable map from a few words of a registry, in the registry's order. A catalogue has a hundred thousand rows of ten figures
 * each; an {@link java.util.EnumMap} keeps room for every term there is in each of them.
 */
public final class FewEntries<K extends Enum<K>, V> extends AbstractMap<K, V> {
    private final List<K> keys;
    private final Object[] values;

    private FewEntries(List<K> keys, Object[] values) {
        this.keys = keys;
        this.values = values;
    }

    public static <K extends Enum<K>, V> FewEntries<K, V> none() {
        return new FewEntries<K, V>(List.<K>of(), new Object[0]);
    }

    /** A copy. */
    static <K extends Enum<K>, V> FewEntries<K, V> copyOf(Map<K, V> map) {
        if (map instanceof FewEntries<K, V> few) {
            return few;
        }
        List<K> keys = new ArrayList<>(map.keySet());
        keys.sort(null);
        return of(keys, keys.stream().map(map::get).toArray());
    }

    /**
     * Keys and their values side by side.
     * @throws IllegalArgumentException unless the keys rise in the order of their registry and each has a value
     */
    public static <K extends Enum<K>, V> FewEntries<K, V> of(List<K> keys, List<V> values) {
        return of(keys, values.toArray());
    }

    private static <K extends Enum<K>, V> FewEntries<K, V> of(List<K> keys, Object[] values) {
        List<K> own = List.copyOf(keys);
        for (int i = 1; i < own.size(); i++) {
            if (own.get(i - 1).compareTo(own.get(i)) >= 0) {
                throw new IllegalArgumentException(own.get(i) + " does not come after " + own.get(i - 1));
            }
        }
        if (own.size() != values.length || Arrays.asList(values).contains(null)) {
            throw new IllegalArgumentException("each of " + own + " needs a value");
        }
        return new FewEntries<>(own, values);
    }

    /** In the registry's order. */
    List<K> keys() {
        return keys;
    }

    @Override
    public @Nullable V get(@Nullable Object key) {
        for (int i = 0; i < keys.size(); i++) {
            if (keys.get(i) == key) {
                return value(i);
            }
        }
        return null;
    }

    @Override
    public boolean containsKey(@Nullable Object key) {
        return get(key) != null;
    }

    @SuppressWarnings("unchecked") // filled with V only
    private V value(int at) {
        return (V) values[at];
    }

    @Override
    public Set<Entry<K, V>> entrySet() {
        return new AbstractSet<>() {
            @Override
            public int size() {
                return keys.size();
            }

            @Override
            public Iterator<Entry<K, V>> iterator() {
                return new Walk();
            }
        };
    }

    private final class Walk implements Iterator<Entry<K, V>> {
        private int next;

        @Override
        public boolean hasNext() {
            return next < keys.size();
        }

        @Override
        public Entry<K, V> next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            Entry<K, V> entry = new SimpleImmutableEntry<>(keys.get(next), value(next));
            next++;
            return entry;
        }
    }
}
