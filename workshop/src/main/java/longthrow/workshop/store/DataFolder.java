package longthrow.workshop.store;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Where the owner's data live.
 *
 * @param path the folder
 * @param why  which rule chose it, in words for its owner
 */
public record DataFolder(Path path, String why) {
    private static final String OPTION = "--data";

    /**
     * The folder by option, else by what the system holds to: XDG Base Directory Specification 0.8 (a relative path in the
     * variable does not count), Application Support on macOS, local application data on Windows. Touches no disk.
     *
     * @param environment variables of the process
     * @param properties  of the Java machine: {@code os.name}, {@code user.home}
     * @param option      what {@code --data} was given
     * @throws StoreFault if none can be told
     */
    public static DataFolder of(
            Map<String, String> environment, Map<String, String> properties, Optional<String> option) {
        if (option.isPresent()) {
            if (option.get().isBlank()) {
                throw none("the folder given is empty", "Give a folder: " + OPTION + " /path/to/folder");
            }
            return new DataFolder(path(option.get(), OPTION), "given by " + OPTION);
        }
        String system = properties.getOrDefault("os.name", "").toLowerCase(Locale.ROOT);
        if (system.startsWith("windows")) {
            return windows(environment, properties);
        }
        if (system.startsWith("mac")) {
            return new DataFolder(
                    home(properties)
                            .resolve("Library")
                            .resolve("Application Support")
                            .resolve("Longthrow"),
                    "the place for data of programs on macOS");
        }
        String xdg = environment.getOrDefault("XDG_DATA_HOME", "");
        if (xdg.startsWith("/")) {
            return new DataFolder(path(xdg, "XDG_DATA_HOME").resolve("longthrow"), "given by XDG_DATA_HOME");
        }
        return new DataFolder(
                home(properties).resolve(".local").resolve("share").resolve("longthrow"),
                xdg.isEmpty()
                        ? "the place for data of programs"
                        : "the place for data of programs; XDG_DATA_HOME is '" + xdg
                                + "' and does not count, for it is no full path");
    }

    private static DataFolder windows(Map<String, String> environment, Map<String, String> properties) {
        String local = environment.getOrDefault("LOCALAPPDATA", "");
        return local.isBlank()
                ? new DataFolder(
                        home(properties).resolve("AppData").resolve("Local").resolve("Longthrow"),
                        "the place for data of programs on Windows; LOCALAPPDATA is not set")
                : new DataFolder(path(local, "LOCALAPPDATA").resolve("Longthrow"), "given by LOCALAPPDATA");
    }

    private static Path home(Map<String, String> properties) {
        String home = properties.getOrDefault("user.home", "");
        if (home.isBlank() || home.equals("?")) { // what Java says where the user has no home
            throw none(
                    "the system names no home folder for this user", "Give a folder: " + OPTION + " /path/to/folder");
        }
        return path(home, "user.home");
    }

    private static Path path(String text, String from) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw none(
                    "'" + text + "' from " + from + " is no path here: " + e.getReason(),
                    "Give a folder: " + OPTION + " /path/to/folder");
        }
    }

    private static StoreFault none(String what, String mend) {
        return new StoreFault(StoreFault.Kind.NO_FOLDER, what, "the folder for the data", mend);
    }
}
