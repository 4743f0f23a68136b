package longthrow.buildfile;

import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;

/** The first line of a file, which says what it is and in which format. */
final class VersionLine {
    private VersionLine() {}

    /** Whether reading on makes sense: a file of another format would only give faults that mean nothing. */
    static boolean isReadable(Mapping root, String key, int version, Faults faults) {
        String line = key + ": " + version;
        for (int i = 0; i < root.entries().size(); i++) {
            Entry entry = root.entries().get(i);
            if (!entry.key().text().equals(key)) {
                continue;
            }
            if (i > 0) {
                faults.add(
                        entry.key().place(),
                        key,
                        "",
                        "the format line is not the first",
                        "",
                        "move '" + line + "' to the top");
            }
            return Fields.text(entry.value(), key, faults)
                    .map(found -> isVersion(found, entry, version, faults))
                    .orElse(true);
        }
        for (Entry entry : root.entries()) {
            String instead = insteadOf(entry.key().text(), key);
            if (!instead.isEmpty()) {
                faults.add(
                        entry.key().place(),
                        entry.key().text(),
                        "",
                        whatItIs(entry.key().text()),
                        "",
                        instead);
                return false;
            }
        }
        faults.add(
                root.place(),
                "",
                "",
                "the format line is missing, so nothing says what kind of file this is",
                "",
                "make '" + line + "' the first line");
        return true;
    }

    private static String whatItIs(String key) {
        return switch (key) {
            case DonorFile.VERSION -> "this is a donors catalogue";
            case CatalogueFile.VERSION -> "this is a catalogue of parts";
            case DynoSheetFile.VERSION -> "this is a sheet of runs on a dynamometer";
            default -> "this is a build file";
        };
    }

    /** How the file is handed over that starts with this key; empty for any other key. */
    private static String insteadOf(String key, String wanted) {
        if (wanted.equals(DynoSheetFile.VERSION) && key.equals(Layout.VERSION)) {
            return "ask 'longthrow measure' or 'longthrow power' of it; runs are written on a sheet of their own";
        }
        return switch (key) {
            case DonorFile.VERSION -> "give it with --donors, beside a build file";
            case CatalogueFile.VERSION -> "read it with 'longthrow catalogue'";
            case DynoSheetFile.VERSION -> "read it with 'longthrow dyno'";
            case Layout.VERSION -> "give it as the build file itself, without --donors";
            default -> "";
        };
    }

    private static boolean isVersion(String found, Entry entry, int version, Faults faults) {
        if (found.equals(String.valueOf(version))) {
            return true;
        }
        boolean newer = found.matches("[1-9][0-9]{0,8}");
        faults.add(
                entry.value().place(),
                entry.key().text(),
                found,
                newer
                        ? "is a newer format than this program knows; reading it could misunderstand a figure"
                        : "is not a format version",
                String.valueOf(version),
                newer ? "use a newer program for this file" : "write " + version);
        return !newer;
    }
}
