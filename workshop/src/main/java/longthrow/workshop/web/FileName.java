package longthrow.workshop.web;

import java.util.Locale;

/** Names of files that are handed out: plain letters and digits only, for they go into a header, and onto disks of every kind. */
public final class FileName {
    private static final int LONGEST = 60;

    private FileName() {}

    /** Of an engine's name, without an ending. */
    public static String of(String name) {
        String plain =
                name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return plain.isEmpty() ? "engine" : plain.substring(0, Math.min(LONGEST, plain.length()));
    }
}
