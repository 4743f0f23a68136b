package longthrow.workshop.json;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes a tree of maps, lists, texts, numbers, truths and nulls as JSON text (RFC 8259), indented by two. Enough for one
 * document a call; a library would add to the start of every command what it takes to load.
 */
final class JsonText {
    private final StringBuilder out = new StringBuilder();

    private JsonText() {}

    /** @throws IllegalArgumentException if something in the tree has no JSON form, a number that is not finite above all */
    static String of(@Nullable Object tree) {
        JsonText text = new JsonText();
        text.write(tree, 0);
        return text.out.append('\n').toString();
    }

    private void write(@Nullable Object value, int depth) {
        if (value == null || value instanceof Boolean || value instanceof Integer || value instanceof Long) {
            out.append(value);
        } else if (value instanceof Double number) {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("JSON has no number " + number + "; give null where there is none");
            }
            out.append(number.doubleValue());
        } else if (value instanceof String words) {
            quote(words);
        } else if (value instanceof Map<?, ?> map) {
            writeMap(map, depth);
        } else if (value instanceof List<?> list) {
            writeList(list, depth);
        } else {
            throw new IllegalArgumentException("JSON has no form for " + value.getClass());
        }
    }

    private void writeMap(Map<?, ?> map, int depth) {
        out.append('{');
        Iterator<? extends Map.Entry<?, ?>> entries = map.entrySet().iterator();
        while (entries.hasNext()) {
            Map.Entry<?, ?> entry = entries.next();
            newLine(depth + 1);
            quote(String.valueOf(entry.getKey()));
            out.append(": ");
            write(entry.getValue(), depth + 1);
            out.append(entries.hasNext() ? "," : "");
        }
        if (!map.isEmpty()) {
            newLine(depth);
        }
        out.append('}');
    }

    private void writeList(List<?> list, int depth) {
        boolean flat = list.stream().noneMatch(e -> e instanceof Map || e instanceof List);
        out.append('[');
        for (int i = 0; i < list.size(); i++) {
            if (i > 0) {
                out.append(flat ? ", " : ",");
            }
            if (!flat) {
                newLine(depth + 1);
            }
            write(list.get(i), depth + 1);
        }
        if (!flat) {
            newLine(depth);
        }
        out.append(']');
    }

    private void newLine(int depth) {
        out.append('\n').append("  ".repeat(depth));
    }

    private void quote(String words) {
        out.append('"');
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20 || (c >= 0x7f && c < 0xa0) || loneSurrogate(words, i)) {
                        out.append("\\u");
                        String hex = Integer.toHexString(c);
                        out.append("0".repeat(4 - hex.length())).append(hex);
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    /** Half of a pair without the other half: UTF-8 cannot hold it. */
    private static boolean loneSurrogate(String words, int at) {
        char c = words.charAt(at);
        if (Character.isHighSurrogate(c)) {
            return at + 1 == words.length() || !Character.isLowSurrogate(words.charAt(at + 1));
        }
        return Character.isLowSurrogate(c) && (at == 0 || !Character.isHighSurrogate(words.charAt(at - 1)));
    }
}
