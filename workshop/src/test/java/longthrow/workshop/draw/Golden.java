package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Drawings kept beside the tests, to be looked at whenever they move; {@code -Dlongthrow.rewrite=true} writes them anew. */
final class Golden {
    private static final Path KEPT = Path.of("src", "test", "resources", "longthrow", "workshop", "draw");

    private Golden() {}

    static void matches(String name, String drawing) throws IOException {
        Path file = KEPT.resolve(name + ".svg");
        if (Boolean.getBoolean("longthrow.rewrite")) {
            Files.createDirectories(KEPT);
            Files.writeString(file, drawing);
        }
        assertThat(file).hasContent(drawing);
    }
}
