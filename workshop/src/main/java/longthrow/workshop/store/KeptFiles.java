package longthrow.workshop.store;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/**
 * Files attached to builds, catalogues, and whole archives coming in: contents in their places and the rows that name them,
 * never the one without the other.
 */
final class KeptFiles {
    private final Access access;
    private final ContentFiles files;

    /** One at a time puts contents in their places and deletes them, so that neither overtakes the rows. */
    private final Object placing = new Object();

    KeptFiles(Access access, ContentFiles files) {
        this.access = access;
        this.files = files;
    }

    /**
     * Deletes a build for good, with its revisions and the files nothing else uses. Backups made before still hold its texts
     * until their time is over.
     */
    void forget(BuildId id) {
        synchronized (placing) {
            access.write("delete the build", handle -> {
                BuildTable table = new BuildTable(handle);
                Revisions.refuseIfUnknown(table, id);
                ContentTable contents = new ContentTable(handle);
                contents.detachAll(id);
                table.delete(id);
                contents.forgetUnused();
                return true;
            });
            finishForgetting(access.database(), files);
        }
    }

    /**
     * Attaches a file to a revision. The same content is kept once; the same name with the same content on the same revision
     * again changes nothing.
     *
     * @param mediaType type and subtype, as image/jpeg
     * @param content   read to its end, not closed
     */
    StoredFile attach(BuildId id, int revision, String name, String mediaType, InputStream content) {
        String where = "build " + id;
        String plainName = StoredText.name(name, where);
        String plainType = StoredText.mediaType(mediaType, where);
        access.refuseIfReadOnly("attach a file");
        access.read("attach a file", handle -> Revisions.at(new BuildTable(handle), id, revision));
        return keep(content, plainName, (handle, arrived) -> {
            Revisions.at(new BuildTable(handle), id, revision);
            ContentTable contents = new ContentTable(handle);
            contents.insert(arrived.sha256(), arrived.bytes());
            detachIfOvertaken(contents, id, revision, plainName, arrived.sha256());
            contents.attach(id, revision, plainName, plainType, arrived.sha256(), access.now());
            return contents.files(id).stream()
                    .filter(file -> file.revision() == revision
                            && file.name().equals(plainName)
                            && file.sha256().equals(arrived.sha256()))
                    .findFirst()
                    .orElseThrow();
        });
    }

    /** A content that comes back after another of its name stands last again: the newest of a name counts. */
    private static void detachIfOvertaken(ContentTable contents, BuildId id, int revision, String name, String sha256) {
        List<StoredFile> ofName = contents.files(id).stream()
                .filter(file -> file.revision() == revision && file.name().equals(name))
                .toList();
        boolean isLast =
                !ofName.isEmpty() && ofName.get(ofName.size() - 1).sha256().equals(sha256);
        if (!isLast) {
            contents.detach(id, revision, name, sha256);
        }
    }

    /** Files attached to any revision of a build, in the order of the revisions. */
    List<StoredFile> files(BuildId id) {
        return access.read("list the files of the build", handle -> {
            Revisions.refuseIfUnknown(new BuildTable(handle), id);
            return new ContentTable(handle).files(id);
        });
    }

    /** The content of an attached file, held against its hash. */
    byte[] content(StoredFile file) {
        return content(file.sha256(), file.name());
    }

    /** The content of a catalogue, held against its hash. */
    byte[] content(CatalogueEntry catalogue) {
        return content(catalogue.sha256(), catalogue.name());
    }

    private byte[] content(String sha256, String name) {
        boolean known = access.read("read file '" + name + "'", handle -> new ContentTable(handle).has(sha256));
        if (!known) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such file, or not any more",
                    "file '" + name + "'",
                    "Look at the list again");
        }
        return files.read(sha256, name);
    }

    /** Keeps a catalogue as the file it is, active from the start. The same name with the same content again changes nothing. */
    CatalogueEntry addCatalogue(String name, InputStream content) {
        String plain = StoredText.name(name, "catalogue");
        access.refuseIfReadOnly("keep a catalogue");
        return keep(content, plain, (handle, arrived) -> {
            ContentTable contents = new ContentTable(handle);
            Optional<CatalogueEntry> known = contents.catalogues().stream()
                    .filter(one -> one.name().equals(plain) && one.sha256().equals(arrived.sha256()))
                    .findFirst();
            if (known.isPresent()) {
                return known.get();
            }
            UUID id = UUID.randomUUID();
            contents.insert(arrived.sha256(), arrived.bytes());
            contents.insertCatalogue(id, plain, arrived.sha256(), access.now(), true);
            return contents.catalogue(id).orElseThrow();
        });
    }

    /** All catalogues, in the order they came. */
    List<CatalogueEntry> catalogues() {
        return access.read("list the catalogues", handle -> new ContentTable(handle).catalogues());
    }

    /** Says whether parts of a catalogue are wanted. */
    void activateCatalogue(UUID id, boolean active) {
        access.write("change the catalogue", handle -> {
            ContentTable contents = new ContentTable(handle);
            refuseIfUnknown(contents, id);
            contents.activate(id, active);
            return true;
        });
    }

    /** Deletes a catalogue for good. */
    void forgetCatalogue(UUID id) {
        synchronized (placing) {
            access.write("delete the catalogue", handle -> {
                ContentTable contents = new ContentTable(handle);
                refuseIfUnknown(contents, id);
                contents.deleteCatalogue(id);
                contents.forgetUnused();
                return true;
            });
            finishForgetting(access.database(), files);
        }
    }

    /**
     * Takes in what {@link Store#exportAll} gave, all of it or nothing. A build that is here already keeps its name and everything
     * it has; what the archive knows besides is added.
     *
     * @throws StoreFault saying what is wrong with the archive
     */
    ImportReport importAll(InputStream in) {
        access.refuseIfReadOnly("import an archive");
        try (ArchiveReader archive = ArchiveReader.read(in, access.limits(), files, access.database())) {
            synchronized (placing) {
                List<String> placed = new ArrayList<>();
                boolean done = false;
                try {
                    for (ContentFiles.Arrived arrived : archive.contents()) {
                        if (files.place(arrived)) {
                            placed.add(arrived.sha256());
                        }
                    }
                    ImportReport report = access.write("import an archive", handle -> archive.into(handle));
                    done = true;
                    return report;
                } finally {
                    if (!done) {
                        placed.forEach(this::takeAwayUnlessKnown);
                    }
                }
            }
        }
    }

    /** Rows that name a content which has just been put in its place. */
    @FunctionalInterface
    private interface Naming<T> {
        T rows(Handle handle, ContentFiles.Arrived arrived);
    }

    private <T> T keep(InputStream content, String name, Naming<T> naming) {
        try (ContentFiles.Arrived arrived =
                files.receive(content, access.limits().fileBytes(), name)) {
            synchronized (placing) {
                boolean fresh = files.place(arrived);
                boolean done = false;
                try {
                    T kept = access.write("keep file '" + name + "'", handle -> naming.rows(handle, arrived));
                    done = true;
                    return kept;
                } finally {
                    if (!done && fresh) {
                        takeAwayUnlessKnown(arrived.sha256());
                    }
                }
            }
        }
    }

    /** After a failure: a content without rows is no use; where that cannot be told it stays. */
    private void takeAwayUnlessKnown(String sha256) {
        try {
            if (!access.read("look for a file", handle -> new ContentTable(handle).has(sha256))) {
                files.delete(sha256);
            }
        } catch (StoreFault unknown) {
            // the first failure is the one to tell
        }
    }

    static void finishForgetting(Database database, ContentFiles files) {
        List<String> left = database.read("look for forgotten files", handle -> new ContentTable(handle).forgotten());
        for (String sha256 : left) {
            files.delete(sha256);
            database.write("delete a forgotten file", handle -> {
                new ContentTable(handle).forgottenIsDeleted(sha256);
                return true;
            });
        }
    }

    private static void refuseIfUnknown(ContentTable contents, UUID id) {
        if (contents.catalogue(id).isEmpty()) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such catalogue, or not any more",
                    "catalogue " + id,
                    "Look at the list of catalogues");
        }
    }
}
