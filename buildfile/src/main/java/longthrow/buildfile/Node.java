package longthrow.buildfile;

import java.util.List;

/** A piece of the file's tree, with its place. Offsets are characters from the start of the text. */
sealed interface Node {
    Place place();

    int start();

    /** Behind the last character of the last leaf, or of the closing bracket. */
    int end();

    /** What kind of thing it is, in plain words. */
    String plainName();

    /** Line and column, both from 1. */
    record Place(int line, int column) {
        static final Place NOWHERE = new Place(0, 0);
    }

    /**
     * One text.
     * @param plain without quotation marks
     */
    record Scalar(String text, boolean plain, Place place, int start, int end) implements Node {
        @Override
        public String plainName() {
            return isEmpty() ? "nothing" : "a single value";
        }

        /** Nothing was written at all; {@code ""} is a written empty text. */
        boolean isEmpty() {
            return plain && text.isEmpty();
        }
    }

    /** A key with what stands behind it. */
    record Entry(Scalar key, Node value) {}

    /**
     * Keys with their values.
     * @param flow in braces
     */
    record Mapping(List<Entry> entries, boolean flow, Place place, int start, int end) implements Node {
        @Override
        public String plainName() {
            return "lines of key: value";
        }
    }

    /**
     * A list.
     * @param flow in brackets
     */
    record Sequence(List<Node> items, boolean flow, Place place, int start, int end) implements Node {
        @Override
        public String plainName() {
            return "a list";
        }
    }
}
