package longthrow.workshop.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.log.LogTold;
import longthrow.buildfile.log.LogsOfASheet.Confirmed;

/** What columns of loggers' files mean, as the owner confirmed it once for each layout: kept in the store, taken for every log of that layout whose sheet says nothing else, and forgotten again on his word. */
public final class Layouts {
    private static final String KEY = "log layout ";

    private final Workbench bench;

    /** Over the store. */
    public Layouts(Workbench bench) {
        this.bench = bench;
    }

    /**
     * A layout that was confirmed.
     * @param day  when
     * @param file for which log
     */
    public record Layout(LocalDate day, String file, LogTold told) {
        /** As it is said beside what was taken. */
        public String words() {
            return "as confirmed on " + day + " for " + file;
        }

        private String text() {
            return day + "\n" + file + "\n" + told.toText();
        }

        private static Optional<Layout> parse(String text) {
            String[] lines = text.split("\n", 3);
            if (lines.length < 3) {
                return Optional.empty();
            }
            try {
                LocalDate day = LocalDate.parse(lines[0]);
                return LogTold.parse(lines[2]).map(told -> new Layout(day, lines[1], told));
            } catch (DateTimeException none) {
                return Optional.empty();
            }
        }
    }

    /** All, by their fingerprints. One that cannot be read, as an older program may have written another, is asked again. */
    public Map<String, Layout> all() {
        Map<String, Layout> all = new LinkedHashMap<>();
        bench.store()
                .settings(KEY)
                .forEach((key, text) ->
                        Layout.parse(text).ifPresent(layout -> all.put(key.substring(KEY.length()), layout)));
        return all;
    }

    /** Keeps what the owner said of a log; what was kept for its layout before goes. */
    public void confirm(String fingerprint, String file, LogTold told) {
        LocalDate today = LocalDate.ofInstant(Instant.now(), ZoneId.systemDefault());
        bench.store().setSetting(KEY + fingerprint, new Layout(today, file, told).text());
    }

    /** Lets go of what was kept; logs of that layout are recognised anew. */
    public void forget(String fingerprint) {
        bench.store().removeSetting(KEY + fingerprint);
    }

    /** As a sheet's logs ask for it. */
    static Optional<Confirmed> told(Map<String, Layout> layouts, String fingerprint) {
        return Optional.ofNullable(layouts.get(fingerprint)).map(one -> new Confirmed(one.told(), one.words()));
    }
}
