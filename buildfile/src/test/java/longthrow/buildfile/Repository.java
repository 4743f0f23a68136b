package longthrow.buildfile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Files of the repository, seen from this module. */
final class Repository {
    static final List<String> EXAMPLES = List.of(
            "examples/demo.yaml",
            "examples/scenarios/s1-longer-throw.yaml",
            "examples/scenarios/s2-side-valve-kart.yaml",
            "examples/scenarios/s3-springs.yaml",
            "examples/scenarios/s4-vintage-iron.yaml",
            "examples/scenarios/overhead-cam.yaml");

    private Repository() {}

    static Path at(String path) {
        return Path.of("..").resolve(path);
    }

    static String text(String path) {
        try {
            return Files.readString(at(path), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
