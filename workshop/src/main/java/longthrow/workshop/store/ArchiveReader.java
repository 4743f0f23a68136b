package longthrow.workshop.store;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.jdbi.v3.core.Handle;

/**
 * An archive that arrived, looked through to its end before anything of it is taken. Names of entries are compared with the
 * few forms there are and never become paths; contents go to files under their own hash.
 */
final class ArchiveReader implements AutoCloseable {
    private static final Pattern FOLDER = Pattern.compile("(builds/([0-9a-f-]{36}/)?|files/)");
    private static final Pattern ENTRY =
            Pattern.compile("manifest\\.json|builds/[0-9a-f-]{36}/[0-9]{1,9}\\.yaml|files/[0-9a-f]{64}");

    /** The manifest says a few hundred bytes about each entry; our own choice. */
    private static final long MOST_MANIFEST_BYTES = 64L << 20;

    private final Path spooled;
    private final ZipFile zip;
    private final StoreLimits limits;
    private final List<ContentFiles.Arrived> contents = new ArrayList<>();
    private final Map<String, ZipEntry> entries = new LinkedHashMap<>();
    private ArchiveManifest manifest = new ArchiveManifest(List.of(), List.of(), Map.of(), List.of());
    private long unpacked;

    private ArchiveReader(Path spooled, ZipFile zip, StoreLimits limits) {
        this.spooled = spooled;
        this.zip = zip;
        this.limits = limits;
    }

    static ArchiveReader read(InputStream in, StoreLimits limits, ContentFiles files, Database database) {
        try {
            Path spooled = files.unfinished();
            boolean opened = false;
            try {
                spool(in, spooled, limits);
                ArchiveReader reader = new ArchiveReader(spooled, zip(spooled), limits);
                opened = true;
                return reader.checked(files, database);
            } finally {
                if (!opened) {
                    Files.deleteIfExists(spooled);
                }
            }
        } catch (IOException e) {
            throw Disk.fault("take in the archive", files.folder(), e);
        }
    }

    private static ZipFile zip(Path spooled) {
        try {
            return new ZipFile(spooled.toFile());
        } catch (IOException | IllegalArgumentException e) { // whatever a broken directory of a zip leads to
            throw bad(
                    "it is no zip, or its end is missing (" + e.getMessage() + ")",
                    "archive",
                    "Copy or send it again, in whole");
        }
    }

    private static void spool(InputStream in, Path to, StoreLimits limits) throws IOException {
        try (OutputStream out = Files.newOutputStream(to)) {
            byte[] buffer = new byte[64 * 1024];
            long bytes = 0;
            for (int got = ContentFiles.read(in, buffer, "archive");
                    got >= 0;
                    got = ContentFiles.read(in, buffer, "archive")) {
                bytes += got;
                if (bytes > limits.archiveBytes()) {
                    throw bad(
                            String.format(Locale.ROOT, "it has more than %,d bytes, the limit", limits.archiveBytes()),
                            "archive",
                            "Copy the folder of the data instead");
                }
                out.write(buffer, 0, got);
            }
        }
    }

    private ArchiveReader checked(ContentFiles files, Database database) {
        boolean good = false;
        try {
            list();
            String json = StoredText.decode(bytes(entry(ArchiveManifest.NAME), MOST_MANIFEST_BYTES))
                    .orElseThrow(() -> ArchiveManifest.bad("it is not UTF-8"));
            manifest = database.read("read the manifest of an archive", handle -> ArchiveManifest.read(handle, json));
            compareWithManifest();
            readThrough(files);
            good = true;
            return this;
        } finally {
            if (!good) {
                close();
            }
        }
    }

    private void list() {
        long said = 0;
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            ZipEntry entry = all.nextElement();
            String name = entry.getName();
            if (FOLDER.matcher(name).matches() && entry.getSize() <= 0) {
                continue; // packing anew by hand makes entries for folders
            }
            if (!ENTRY.matcher(name).matches()) {
                throw bad(
                        name.contains("..") || name.startsWith("/") || name.contains("\\") || name.contains(":")
                                ? "entry '" + shown(name) + "' would lie outside the archive's own folders"
                                : "entry '" + shown(name) + "' does not belong into an archive of Longthrow",
                        "archive",
                        "Use an archive as it was exported");
            }
            if (entries.put(name, entry) != null) {
                throw bad("entry '" + name + "' is in it twice", "archive", "Use an archive as it was exported");
            }
            if (entries.size() > limits.archiveEntries()) {
                throw bad(
                        String.format(Locale.ROOT, "it has more than %,d entries, the limit", limits.archiveEntries()),
                        "archive",
                        "Copy the folder of the data instead");
            }
            said += Math.max(0, entry.getSize());
            checkUnpacked(said);
        }
    }

    private void checkUnpacked(long bytes) {
        if (bytes > limits.archiveContentBytes()) {
            throw bad(
                    String.format(
                            Locale.ROOT,
                            "it would unpack to more than %,d bytes, the limit",
                            limits.archiveContentBytes()),
                    "archive",
                    "Copy the folder of the data instead");
        }
        long packed = spooled.toFile().length();
        if (bytes > limits.archiveFreeBytes() && bytes / Math.max(1, packed) >= limits.archiveRatio()) {
            throw bad(
                    String.format(
                            Locale.ROOT,
                            "it would unpack to %,d bytes or more, %d times its size or more; at most %d times is taken",
                            bytes,
                            bytes / Math.max(1, packed),
                            limits.archiveRatio()),
                    "archive",
                    "It looks like an archive made to fill a disk. Use one as it was exported");
        }
    }

    private void compareWithManifest() {
        Set<String> named = new HashSet<>(manifest.entries().keySet());
        for (String name : entries.keySet()) {
            if (!named.remove(name) && !name.equals(ArchiveManifest.NAME)) {
                throw bad(
                        "entry '" + name + "' is not in its manifest", "archive", "Use an archive as it was exported");
            }
        }
        if (!named.isEmpty()) {
            throw bad(
                    named.size() + " of the entries its manifest names are missing, for instance '"
                            + named.stream().sorted().findFirst().orElseThrow() + "'",
                    "archive",
                    "Use an archive as it was exported, in whole");
        }
    }

    /** Reads every entry to its end and holds it against its hash; contents are kept as they arrive. */
    private void readThrough(ContentFiles files) {
        for (ArchiveManifest.Build build : manifest.builds()) {
            for (ArchiveManifest.Revision revision : build.revisions()) {
                text(revision);
            }
        }
        for (Map.Entry<String, Long> content : manifest.contents().entrySet()) {
            String name = ArchiveManifest.contentEntry(content.getKey());
            long most = Math.min(limits.fileBytes(), content.getValue());
            if (content.getValue() > limits.fileBytes()) {
                throw tooLarge(name, limits.fileBytes());
            }
            try (InputStream in = new Unpacked(zip.getInputStream(entry(name)), name)) {
                ContentFiles.Arrived arrived = files.receive(in, most, name);
                contents.add(arrived);
                unpacked += arrived.bytes();
                checkUnpacked(unpacked);
                checkHash(name, arrived.sha256(), content.getKey());
                if (arrived.bytes() != content.getValue()) {
                    throw bad(
                            "entry '" + name + "' has " + arrived.bytes() + " bytes, its manifest says "
                                    + content.getValue(),
                            "archive",
                            "Use an archive as it was exported");
                }
            } catch (IOException e) {
                throw broken(name, e);
            }
        }
    }

    /** The text of a revision, held against its hash and everything a text must be. */
    private String text(ArchiveManifest.Revision revision) {
        byte[] bytes = bytes(entry(revision.entry()), limits.textBytes());
        checkHash(revision.entry(), StoredText.sha256(bytes), revision.sha256());
        String text = StoredText.decode(bytes)
                .orElseThrow(() -> bad(
                        "entry '" + revision.entry() + "' is not UTF-8",
                        "archive",
                        "Use an archive as it was exported"));
        StoredText.build(text, limits.textBytes(), "archive, entry '" + revision.entry() + "'");
        return text;
    }

    private static void checkHash(String name, String found, String said) {
        if (!found.equals(said)) {
            throw bad(
                    "entry '" + name + "' is not what was exported: its check sum is " + found + ", the manifest says "
                            + said,
                    "archive",
                    "Nothing was imported. Copy or send the archive again");
        }
    }

    /** An entry whose packing is broken is the archive's fault, not that of the disk it is written to. */
    private static final class Unpacked extends FilterInputStream {
        private final String name;

        Unpacked(InputStream in, String name) {
            super(in);
            this.name = name;
        }

        @Override
        public int read(byte[] into, int from, int most) {
            try {
                return super.read(into, from, most);
            } catch (IOException e) {
                throw broken(name, e);
            }
        }
    }

    private byte[] bytes(ZipEntry entry, long most) {
        try (InputStream in = zip.getInputStream(entry)) {
            byte[] bytes = in.readNBytes((int) Math.min(Integer.MAX_VALUE - 16L, most + 1));
            if (bytes.length > most) {
                throw tooLarge(entry.getName(), most);
            }
            unpacked += bytes.length;
            CRC32 sum =
                    new CRC32(); // the hashes stand in the manifest, its own sum only here, and ZipFile does not look
            sum.update(bytes);
            if (sum.getValue() != entry.getCrc()) {
                throw broken(entry.getName(), new ZipException("check sum of the zip differs"));
            }
            return bytes;
        } catch (IOException e) {
            throw broken(entry.getName(), e);
        }
    }

    private ZipEntry entry(String name) {
        return Optional.ofNullable(entries.get(name))
                .orElseThrow(() -> bad(
                        "it has no entry '" + name + "'", "archive", "Use an archive as it was exported, in whole"));
    }

    List<ContentFiles.Arrived> contents() {
        return List.copyOf(contents);
    }

    /** Puts everything into the tables, in the transaction of the caller. */
    ImportReport into(Handle handle) {
        ContentTable table = new ContentTable(handle);
        contents.forEach(arrived -> table.insert(arrived.sha256(), arrived.bytes()));
        List<ImportReport.ImportedBuild> done = new ArrayList<>();
        for (ArchiveManifest.Build build : manifest.builds()) {
            done.add(into(new BuildTable(handle), table, build));
        }
        int fresh = 0;
        for (ArchiveManifest.Catalogue catalogue : manifest.catalogues()) {
            Optional<CatalogueEntry> here = table.catalogue(catalogue.id());
            if (here.isEmpty()) {
                table.insertCatalogue(
                        catalogue.id(), catalogue.name(), catalogue.sha256(), catalogue.imported(), catalogue.active());
                fresh++;
            } else if (!here.get().sha256().equals(catalogue.sha256())) {
                throw bad(
                        "catalogue " + catalogue.id() + " is here already with another content",
                        "archive",
                        "Nothing was imported. The archive was edited; use one as it was exported");
            }
        }
        table.forgetUnused();
        return new ImportReport(done, fresh, manifest.leftOut());
    }

    private ImportReport.ImportedBuild into(BuildTable builds, ContentTable table, ArchiveManifest.Build build) {
        BuildId id = build.id();
        List<BuildTable.Known> here = builds.keys(id);
        if (here.isEmpty()) {
            builds.insert(id, build.name(), build.created(), build.archived());
        }
        Map<UUID, RevisionEntry> byKey = new HashMap<>();
        here.forEach(known -> byKey.put(StoredText.uuid(known.key()).orElseThrow(), known.revision()));
        int[] numbers = new int[build.revisions().size() + 1]; // number here, by number there
        boolean diverged = false;
        int files = 0;
        for (ArchiveManifest.Revision revision : build.revisions()) {
            RevisionEntry own = byKey.get(revision.key());
            if (own != null && !own.sha256().equals(revision.sha256())) {
                throw bad(
                        "revision " + revision.number() + " of build " + id + " differs from revision " + own.number()
                                + " here, though it is the same edit",
                        "archive",
                        "Nothing was imported. The archive was edited; use one as it was exported");
            }
            if (own == null) {
                builds.byKey(revision.key()).ifPresent(other -> {
                    throw bad(
                            "revision " + revision.number() + " of build " + id + " has the key of revision "
                                    + other.number() + " of another build here, " + other.build(),
                            "archive",
                            "Nothing was imported. The archive was edited; use one as it was exported");
                });
                own = builds.append(id, edit(revision, numbers));
            }
            numbers[revision.number()] = own.number();
            diverged |= own.number() != revision.number();
            for (ArchiveManifest.Attached file : revision.files()) {
                files += table.attach(id, own.number(), file.name(), file.mediaType(), file.sha256(), file.attached())
                        ? 1
                        : 0;
            }
        }
        int latest = builds.latestNumber(id);
        return new ImportReport.ImportedBuild(
                id, builds.name(id).orElseThrow(), outcome(here.size(), latest, diverged), here.size(), latest, files);
    }

    private BuildTable.Edit edit(ArchiveManifest.Revision revision, int[] numbers) {
        return new BuildTable.Edit(
                revision.key(),
                revision.basedOn() == 0 ? 0 : numbers[revision.basedOn()],
                revision.restores().isPresent()
                        ? OptionalInt.of(numbers[revision.restores().getAsInt()])
                        : OptionalInt.empty(),
                revision.undo(),
                revision.saved(),
                revision.what(),
                text(revision));
    }

    private static ImportReport.Outcome outcome(int before, int latest, boolean diverged) {
        if (before == 0) {
            return ImportReport.Outcome.NEW;
        }
        if (before == latest) {
            return ImportReport.Outcome.SAME;
        }
        return diverged ? ImportReport.Outcome.DIVERGED : ImportReport.Outcome.FURTHER;
    }

    private static StoreFault tooLarge(String name, long most) {
        return bad(
                String.format(Locale.ROOT, "entry '%s' has more than %,d bytes, the limit for it", name, most),
                "archive",
                "Use an archive as it was exported, by a program with the same limits");
    }

    private static StoreFault broken(String name, IOException cause) {
        return bad(
                "entry '" + name + "' cannot be read to its end (" + cause.getMessage() + ")",
                "archive",
                "Copy or send it again, in whole");
    }

    private static StoreFault bad(String what, String where, String mend) {
        String nothing = mend.startsWith("Nothing") ? "" : "Nothing was imported. ";
        return new StoreFault(StoreFault.Kind.BAD_ARCHIVE, what, where, nothing + mend);
    }

    private static String shown(String name) {
        String plain = name.replaceAll("\\p{Cntrl}", "?");
        return plain.length() > 100 ? plain.substring(0, 100) + "…" : plain;
    }

    @Override
    public void close() {
        contents.forEach(ContentFiles.Arrived::close);
        try {
            zip.close();
            Files.deleteIfExists(spooled);
        } catch (IOException stays) {
            // swept out at the next start
        }
    }
}
