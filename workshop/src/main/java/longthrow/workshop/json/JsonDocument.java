package longthrow.workshop.json;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A whole document: the number of its format, then what its shape says.
 * @param format      that readers look at first
 * @param title       of the schema
 * @param description of the schema
 * @param shape       of the rest
 */
record JsonDocument<T>(int format, String title, String description, JsonShape<T> shape) {
    /** The document, ended by a line feed. */
    String of(T subject) {
        Map<String, @Nullable Object> document = new LinkedHashMap<>();
        document.put("format", format);
        document.putAll(shape.tree(subject));
        return JsonText.of(document);
    }

    /** The JSON Schema (draft 2020-12) of every document that {@link #of} writes. */
    String schema() {
        Map<String, Object> whole = shape.schema();
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("format", Map.of("const", format));
        ((Map<?, ?>) whole.getOrDefault("properties", Map.of()))
                .forEach((key, value) -> properties.put(String.valueOf(key), value));
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", title);
        schema.put("description", description + " Generated from the code; a test holds it there.");
        schema.putAll(whole);
        schema.put("properties", properties);
        schema.put("required", List.copyOf(properties.keySet()));
        if (JsonText.of(whole).contains(JsonShape.TERM_DEFINITION)) {
            schema.put("$defs", Map.of("term", terms()));
        }
        return JsonText.of(schema);
    }

    private static Map<String, Object> terms() {
        Map<String, Object> terms = new LinkedHashMap<>();
        terms.put("description", "section and key of a term, as in the build file");
        terms.put("enum", Arrays.stream(Term.values()).map(Term::path).toList());
        return terms;
    }
}
