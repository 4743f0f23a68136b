package longthrow.buildfile;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Maps, lists, texts, whole numbers and truth values as JSON (RFC 8259), two spaces a level. */
final class Json {
    private Json() {}

    /** A map in the order in which its pairs are given. */
    static Map<String, Object> object(Object... keysAndValues) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            map.put((String) keysAndValues[i], keysAndValues[i + 1]);
        }
        return map;
    }

    static String write(Object value) {
        StringBuilder text = new StringBuilder();
        write(value, 0, text);
        return text.append('\n').toString();
    }

    private static void write(Object value, int indent, StringBuilder text) {
        if (value instanceof Map<?, ?> map) {
            open('{', text);
            String part = "";
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                text.append(part).append('\n').append(" ".repeat(indent + 2));
                string((String) entry.getKey(), text);
                text.append(": ");
                write(entry.getValue(), indent + 2, text);
                part = ",";
            }
            close('}', map.isEmpty(), indent, text);
        } else if (value instanceof Collection<?> list) {
            open('[', text);
            String part = "";
            for (Object item : list) {
                text.append(part).append('\n').append(" ".repeat(indent + 2));
                write(item, indent + 2, text);
                part = ",";
            }
            close(']', list.isEmpty(), indent, text);
        } else if (value instanceof String string) {
            string(string, text);
        } else {
            text.append(value);
        }
    }

    private static void open(char bracket, StringBuilder text) {
        text.append(bracket);
    }

    private static void close(char bracket, boolean empty, int indent, StringBuilder text) {
        text.append(empty ? "" : "\n" + " ".repeat(indent)).append(bracket);
    }

    private static void string(String value, StringBuilder text) {
        text.append('"');
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            switch (c) {
                case '"' -> text.append("\\\"");
                case '\\' -> text.append("\\\\");
                case '\n' -> text.append("\\n");
                case '\r' -> text.append("\\r");
                case '\t' -> text.append("\\t");
                default -> text.append(c < ' ' ? String.format(Locale.ROOT, "\\u%04x", (int) c) : c);
            }
        }
        text.append('"');
    }
}
