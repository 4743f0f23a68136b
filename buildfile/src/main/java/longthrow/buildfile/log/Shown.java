package longthrow.buildfile.log;

/** Pieces of a log as they are said back: short, nothing invisible. */
final class Shown {
    private static final int MOST = 40;

    private Shown() {}

    static String of(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints()
                .limit(MOST)
                .map(c ->
                        Character.isISOControl(c) || !Character.isDefined(c) || Character.getType(c) == Character.FORMAT
                                ? '\uFFFD'
                                : c)
                .forEach(shown::appendCodePoint);
        return text.codePointCount(0, text.length()) > MOST ? shown + "…" : shown.toString();
    }
}
