package longthrow.workshop.json;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * One kind of JSON object, described once: what each key means, what may stand there, and where it is taken from. What is
 * written and the schema it is held against cannot part, since both come from here.
 *
 * @param <T> what is written
 */
final class JsonShape<T> {
    /** Where the document's schema lists the terms, once. */
    static final String TERM_DEFINITION = "#/$defs/term";

    private final List<Field<T>> fields = new ArrayList<>();

    private record Field<T>(String key, Map<String, Object> schema, Function<T, @Nullable Object> value) {}

    JsonShape<T> text(String key, String meaning, Function<T, String> value) {
        return field(key, schema(meaning, "string"), value::apply);
    }

    /** One of these words. */
    JsonShape<T> word(String key, String meaning, List<String> words, Function<T, String> value) {
        Map<String, Object> schema = schema(meaning, "string");
        schema.put("enum", words);
        return field(key, schema, value::apply);
    }

    /** The place of a term, from the list that {@link #TERM_DEFINITION} names. */
    JsonShape<T> term(String key, String meaning, Function<T, Term> value) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", meaning);
        schema.put("$ref", TERM_DEFINITION);
        return field(key, schema, from -> value.apply(from).path());
    }

    JsonShape<T> truth(String key, String meaning, Predicate<T> value) {
        return field(key, schema(meaning, "boolean"), value::test);
    }

    /** A number that is always known. */
    JsonShape<T> number(String key, String meaning, ToDoubleFunction<T> value) {
        return field(key, schema(meaning, "number"), value::applyAsDouble);
    }

    /** A number that may be unlimited or not known: null unless it is finite. */
    JsonShape<T> numberOrNull(String key, String meaning, ToDoubleFunction<T> value) {
        return field(key, schema(meaning, List.of("number", "null")), from -> finite(value.applyAsDouble(from)));
    }

    JsonShape<T> textOrNull(String key, String meaning, Function<T, @Nullable String> value) {
        return field(key, schema(meaning, List.of("string", "null")), value::apply);
    }

    JsonShape<T> texts(String key, String meaning, Function<T, List<String>> value) {
        Map<String, Object> schema = schema(meaning, "array");
        schema.put("items", Map.of("type", "string"));
        return field(key, schema, value::apply);
    }

    /** A list of objects. */
    <E> JsonShape<T> list(String key, String meaning, JsonShape<E> shape, Function<T, List<E>> value) {
        Map<String, Object> schema = schema(meaning, "array");
        schema.put("items", shape.schema());
        return field(
                key, schema, from -> value.apply(from).stream().map(shape::tree).toList());
    }

    /** Objects under the places of terms, each there or not. */
    <E> JsonShape<T> byTerm(
            String key, String meaning, JsonShape<E> shape, Function<E, Term> termOf, Function<T, List<E>> value) {
        Map<String, Object> schema = schema(meaning, "object");
        schema.put("propertyNames", Map.of("$ref", TERM_DEFINITION));
        schema.put("additionalProperties", shape.schema());
        return field(key, schema, from -> {
            Map<String, Object> entries = new LinkedHashMap<>();
            for (E element : value.apply(from)) {
                String path = termOf.apply(element).path();
                if (entries.put(path, shape.tree(element)) != null) {
                    throw new IllegalArgumentException(path + " stands twice under " + key);
                }
            }
            return entries;
        });
    }

    /** The object for one value. */
    Map<String, @Nullable Object> tree(T from) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        fields.forEach(field -> tree.put(field.key(), field.value().apply(from)));
        return tree;
    }

    /** Its JSON Schema: every key is always there, and no other. */
    Map<String, Object> schema() {
        Map<String, Object> properties = new LinkedHashMap<>();
        fields.forEach(field -> properties.put(field.key(), field.schema()));
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", properties);
        schema.put("required", fields.stream().map(Field::key).toList());
        schema.put("additionalProperties", false);
        return schema;
    }

    static <E extends Enum<E>> List<String> words(E[] constants, Function<E, String> word) {
        return Arrays.stream(constants).map(word).toList();
    }

    private JsonShape<T> field(String key, Map<String, Object> schema, Function<T, @Nullable Object> value) {
        fields.add(new Field<>(key, schema, value));
        return this;
    }

    private static Map<String, Object> schema(String meaning, Object type) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", meaning);
        schema.put("type", type);
        return schema;
    }

    private static @Nullable Double finite(double number) {
        return Double.isFinite(number) ? (Double) number : null;
    }
}
