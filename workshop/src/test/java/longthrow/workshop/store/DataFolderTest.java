package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Expected folders: XDG Base Directory Specification 0.8 and the customs of macOS and Windows, from memory. */
class DataFolderTest {
    private static final Map<String, String> LINUX = Map.of("os.name", "Linux", "user.home", "/home/owner");
    private static final Map<String, String> MAC = Map.of("os.name", "Mac OS X", "user.home", "/Users/owner");
    private static final Map<String, String> WINDOWS = Map.of("os.name", "Windows 11", "user.home", "C:\\Users\\owner");

    @Test
    void theOptionStandsAboveEverything() {
        Map<String, String> environment = Map.of("XDG_DATA_HOME", "/x", "LOCALAPPDATA", "C:\\L");
        for (Map<String, String> system : java.util.List.of(LINUX, MAC, WINDOWS)) {
            DataFolder folder = DataFolder.of(environment, system, Optional.of("my/data"));
            assertThat(folder.path()).isEqualTo(Path.of("my/data"));
            assertThat(folder.why()).contains("--data");
        }
        Faults.of(StoreFault.Kind.NO_FOLDER, () -> DataFolder.of(environment, LINUX, Optional.of(" ")));
        Faults.of(StoreFault.Kind.NO_FOLDER, () -> DataFolder.of(environment, LINUX, Optional.of("a\0b")));
    }

    @Test
    void onLinuxTheVariableThenTheHome() {
        assertThat(of(Map.of("XDG_DATA_HOME", "/data"), LINUX)).isEqualTo(Path.of("/data/longthrow"));
        assertThat(of(Map.of(), LINUX)).isEqualTo(Path.of("/home/owner/.local/share/longthrow"));
        assertThat(of(Map.of("XDG_DATA_HOME", ""), LINUX)).isEqualTo(Path.of("/home/owner/.local/share/longthrow"));
    }

    /** "All paths set in these environment variables must be absolute", else they are to be ignored. */
    @Test
    void aRelativeVariableDoesNotCountAndThatIsSaid() {
        DataFolder folder = DataFolder.of(Map.of("XDG_DATA_HOME", "data"), LINUX, Optional.empty());
        assertThat(folder.path()).isEqualTo(Path.of("/home/owner/.local/share/longthrow"));
        assertThat(folder.why()).contains("XDG_DATA_HOME is 'data'");
    }

    @Test
    void onMacTheSupportFolderWhateverTheVariableSays() {
        assertThat(of(Map.of("XDG_DATA_HOME", "/data"), MAC))
                .isEqualTo(Path.of("/Users/owner/Library/Application Support/Longthrow"));
    }

    @Test
    void onWindowsTheLocalDataThenTheHome() {
        assertThat(of(Map.of("LOCALAPPDATA", "D:\\Local"), WINDOWS))
                .isEqualTo(Path.of("D:\\Local").resolve("Longthrow"));
        assertThat(of(Map.of(), WINDOWS)).isEqualTo(Path.of("C:\\Users\\owner", "AppData", "Local", "Longthrow"));
    }

    @Test
    void withoutAHomeAFolderIsAskedFor() {
        for (String home : new String[] {"", "?"}) {
            StoreFault fault = Faults.of(
                    StoreFault.Kind.NO_FOLDER, () -> of(Map.of(), Map.of("os.name", "Linux", "user.home", home)));
            assertThat(fault.mend()).contains("--data");
        }
        Faults.of(StoreFault.Kind.NO_FOLDER, () -> of(Map.of(), Map.of()));
    }

    private static Path of(Map<String, String> environment, Map<String, String> properties) {
        return DataFolder.of(environment, properties, Optional.empty()).path();
    }
}
