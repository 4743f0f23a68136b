package longthrow.workshop.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;

/** A backup comes back; what it replaces is moved aside, never deleted. */
final class Restoring {
    private Restoring() {}

    /** Replaces the database, and gives the folder in which the replaced one lies now. */
    static Path replace(Path folder, String database, List<String> beside, Path backup, Instant now)
            throws IOException {
        Path unfinished = folder.resolve(database + Disk.UNFINISHED);
        Files.copy(backup, unfinished, StandardCopyOption.REPLACE_EXISTING);
        Disk.sync(unfinished);
        Path aside = Files.createDirectory(
                folder.resolve("replaced-" + now.toString().replace(":", "")));
        for (String end : List.of("", beside.get(0), beside.get(1))) {
            Path old = folder.resolve(database + end);
            if (Files.exists(old)) {
                Files.move(old, aside.resolve(database + end), StandardCopyOption.ATOMIC_MOVE);
            }
        }
        Disk.syncFolder(aside);
        Disk.moveInPlace(unfinished, folder.resolve(database));
        return aside;
    }
}
