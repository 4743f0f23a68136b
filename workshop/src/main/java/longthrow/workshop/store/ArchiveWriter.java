package longthrow.workshop.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jdbi.v3.core.Handle;

/** Everything in the store as a zip. Build files lie in it as plain text, so that it can be read without this program. */
final class ArchiveWriter {
    private final ZipOutputStream zip;
    private final LocalDateTime made;

    private ArchiveWriter(ZipOutputStream zip, Instant now) {
        this.zip = zip;
        this.made = LocalDateTime.ofInstant(now, ZoneOffset.UTC);
    }

    static ExportReport write(Handle handle, ContentFiles files, Instant now, OutputStream out) {
        try {
            ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
            LeftOut left = LeftOut.of(handle, files);
            ArchiveWriter writer = new ArchiveWriter(zip, now);
            writer.entry(
                    ArchiveManifest.NAME, ArchiveManifest.of(handle, now, left).getBytes(StandardCharsets.UTF_8));
            BuildTable builds = new BuildTable(handle);
            for (BuildEntry build : builds.list()) {
                int place = 0;
                for (int number = 1; number <= build.latest(); number++) {
                    if (!left.texts().contains(new LeftOut.Text(build.id(), number))) {
                        place++;
                        writer.text(Revisions.at(builds, build.id(), number), place);
                    }
                }
            }
            for (String sha256 : ArchiveManifest.contents(handle, left)) {
                writer.entry(ArchiveManifest.contentEntry(sha256), files.read(sha256, sha256));
            }
            zip.finish();
            zip.flush();
            return new ExportReport(left.why());
        } catch (IOException e) {
            throw new StoreFault(
                    StoreFault.Kind.DISK_FAILED,
                    "the archive could not be written to its end: " + Disk.words(e),
                    "archive",
                    "What came out is not whole; throw it away. Look whether there is room where it goes, and export again",
                    e);
        }
    }

    private void text(Revision revision, int place) throws IOException {
        entry(
                ArchiveManifest.textEntry(revision.entry().build(), place),
                revision.text().getBytes(StandardCharsets.UTF_8));
    }

    private void entry(String name, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(made);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }
}
