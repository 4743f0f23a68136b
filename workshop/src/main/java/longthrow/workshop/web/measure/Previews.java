package longthrow.workshop.web.measure;

import java.util.LinkedHashMap;
import java.util.Map;

/** Which preview a form asked for last: while somebody types on, the ones before are not worth working out. */
final class Previews {
    /** More forms than are typed into at once; one that is forgotten has its preview worked out all the same. Our own choice. */
    private static final int MOST_FORMS = 1_000;

    private final Map<String, Long> newest = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
            return size() > MOST_FORMS;
        }
    };
    private long last;

    /** An asking of a form. */
    record Asked(String form, long number) {}

    /**
     * The form asks once more.
     * @param form by the key that it holds
     */
    synchronized Asked ask(String form) {
        last++;
        newest.put(form, last);
        return new Asked(form, last);
    }

    /** Whether its form has not asked again since. */
    synchronized boolean isNewest(Asked asked) {
        return newest.getOrDefault(asked.form(), asked.number()) == asked.number();
    }
}
