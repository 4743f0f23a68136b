package longthrow.workshop.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.jdbi.v3.core.JdbiException;

/** Builds and their revisions: every accepted edit is a further one, none is overwritten, and undoing is an edit too. */
final class Revisions {
    private final Access access;

    Revisions(Access access) {
        this.access = access;
    }

    /** A new build with its first revision. The same key again gives the build it made the first time. */
    BuildId create(String name, String text, UUID key) {
        String where = "new build";
        String plainName = StoredText.name(name, where);
        StoredText.build(text, access.limits().textBytes(), where);
        return access.write("create build '" + plainName + "'", handle -> {
            BuildTable table = new BuildTable(handle);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                refuseIfOther(known.get(), known.get().number() == 1, text, key);
                return known.get().build();
            }
            BuildId id = BuildId.fresh();
            Instant now = access.now();
            table.insert(id, plainName, now, Optional.empty());
            table.append(id, new BuildTable.Edit(key, 0, OptionalInt.empty(), false, now, "created", text));
            return id;
        });
    }

    /** All builds, the archived too, in the order they came. */
    List<BuildEntry> builds() {
        return access.read("list the builds", handle -> new BuildTable(handle).list());
    }

    /** The newest revision. */
    Revision latest(BuildId id) {
        return access.read("read the build", handle -> latest(new BuildTable(handle), id));
    }

    /** A revision by its number. */
    Revision at(BuildId id, int number) {
        return access.read("read the build", handle -> at(new BuildTable(handle), id, number));
    }

    /** All revisions, oldest first. */
    List<RevisionEntry> history(BuildId id) {
        return access.read("read the history", handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            return table.history(id);
        });
    }

    /** The revision that an edit with this key became, if it came here before. */
    Optional<RevisionEntry> savedBy(UUID key) {
        return access.read("look for an edit", handle -> new BuildTable(handle).byKey(key));
    }

    /**
     * An edit becomes the next revision, if the build still stands where the edit began. The same key again gives the first
     * result and adds nothing.
     *
     * @param basedOn number of the revision the edit was made on
     * @param what    what was done, one line, may be empty
     */
    SaveResult save(BuildId id, int basedOn, String text, String what, UUID key) {
        String where = "build " + id;
        StoredText.build(text, access.limits().textBytes(), where);
        String plainWhat = StoredText.what(what, where);
        return access.write("keep the edit", handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id) && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, text, key);
                return new SaveResult.Saved(known.get(), true);
            }
            return append(
                    table,
                    id,
                    new BuildTable.Edit(key, basedOn, OptionalInt.empty(), false, access.now(), plainWhat, text));
        });
    }

    /**
     * Takes back the last edit: a new revision with the text before it. Again takes back the one before that. What was taken
     * back stays in the history, from where {@link #bringBack} fetches it.
     *
     * @param basedOn number of the revision that is to be undone
     */
    SaveResult undo(BuildId id, int basedOn, UUID key) {
        return access.write("undo the last edit", handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id) && known.get().undo() && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, key);
                return new SaveResult.Saved(known.get(), true);
            }
            int stands = stands(at(table, id, basedOn).entry());
            if (basedOn == table.latestNumber(id) && stands == 1) {
                throw new StoreFault(
                        StoreFault.Kind.REFUSED,
                        "there is nothing before revision 1 to go back to",
                        "build " + id,
                        "The history shows every revision; each can be brought back");
            }
            int target = stands == 1 ? 1 : stands(at(table, id, stands - 1).entry());
            return bringBack(table, id, target, true, basedOn, key);
        });
    }

    /** A new revision with the text of an older one; an edit like any other, which {@link #undo} takes back. */
    SaveResult bringBack(BuildId id, int number, int basedOn, UUID key) {
        return access.write("bring back revision " + number, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id)
                        && !known.get().undo()
                        && known.get().restores().equals(OptionalInt.of(number))
                        && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, key);
                return new SaveResult.Saved(known.get(), true);
            }
            return bringBack(table, id, number, false, basedOn, key);
        });
    }

    private SaveResult bringBack(BuildTable table, BuildId id, int target, boolean undo, int basedOn, UUID key) {
        String text = at(table, id, target).text();
        String what = (undo ? "undone: back to revision " : "back to revision ") + target;
        return append(
                table, id, new BuildTable.Edit(key, basedOn, OptionalInt.of(target), undo, access.now(), what, text));
    }

    /** Where in the row of edits a revision stands: at itself, or by undoing at an older one. */
    private static int stands(RevisionEntry revision) {
        return revision.undo() ? revision.restores().orElseThrow() : revision.number();
    }

    private SaveResult append(BuildTable table, BuildId id, BuildTable.Edit edit) {
        int latest = table.latestNumber(id);
        if (edit.basedOn() < 1 || edit.basedOn() > latest) {
            throw noRevision(id, edit.basedOn(), latest);
        }
        return edit.basedOn() == latest
                ? new SaveResult.Saved(table.append(id, edit), false)
                : new SaveResult.Outdated(latest(table, id));
    }

    /** What is different between two revisions, line by line. */
    Comparison compare(BuildId id, int before, int after) {
        return access.read("compare the revisions", handle -> {
            BuildTable table = new BuildTable(handle);
            Revision one = at(table, id, before);
            Revision other = at(table, id, after);
            return new Comparison(one.entry(), other.entry(), LineDiff.of(one.text(), other.text()));
        });
    }

    /** Gives a build another name; its text stays. */
    void rename(BuildId id, String name) {
        String plain = StoredText.name(name, "build " + id);
        change("rename the build", id, table -> table.rename(id, plain));
    }

    /** Puts a build away; it stays with all its revisions and files. */
    void archive(BuildId id) {
        change("put the build away", id, table -> table.archive(id, Optional.of(access.now())));
    }

    /** Takes a build out again that was put away. */
    void unarchive(BuildId id) {
        change("take the build out again", id, table -> table.archive(id, Optional.empty()));
    }

    private void change(String doing, BuildId id, Consumer<BuildTable> work) {
        access.write(doing, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            work.accept(table);
            return true;
        });
    }

    static void refuseIfUnknown(BuildTable table, BuildId id) {
        if (table.name(id).isEmpty()) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such build, or not any more",
                    "build " + id,
                    "Look at the list of builds");
        }
    }

    private static void refuseIfOther(RevisionEntry known, boolean alike, String text, UUID key) {
        String sum = StoredText.sha256(text.getBytes(StandardCharsets.UTF_8));
        refuseIfOther(known, alike && known.sha256().equals(sum), key);
    }

    /** A key that comes with another edit would make that edit vanish. */
    private static void refuseIfOther(RevisionEntry known, boolean alike, UUID key) {
        if (!alike) {
            throw new StoreFault(
                    StoreFault.Kind.REFUSED,
                    "key " + key + " came before with another edit, which is revision " + known.number() + " of build "
                            + known.build() + "; this one was not saved",
                    "build " + known.build(),
                    "Send it with a key of its own");
        }
    }

    private static Revision latest(BuildTable table, BuildId id) {
        refuseIfUnknown(table, id);
        return at(table, id, table.latestNumber(id));
    }

    static Revision at(BuildTable table, BuildId id, int number) {
        refuseIfUnknown(table, id);
        Revision revision = table.at(id, number).orElseThrow(() -> noRevision(id, number, table.latestNumber(id)));
        String sum = StoredText.sha256(revision.text().getBytes(StandardCharsets.UTF_8));
        if (!sum.equals(revision.entry().sha256())) {
            throw new StoreFault(
                    StoreFault.Kind.DAMAGED,
                    "revision " + number + " of build '" + table.name(id).orElse("")
                            + "' is not what was saved: its check sum differs",
                    "build " + id,
                    "Its history shows which revisions are whole; a backup from before may hold this one as it was");
        }
        return revision;
    }

    /** Why a revision cannot be read as it was saved; empty where it can. */
    static Optional<StoreFault> damage(BuildTable table, BuildId id, int number) {
        try {
            at(table, id, number);
            return Optional.empty();
        } catch (StoreFault fault) {
            return Optional.of(fault);
        } catch (JdbiException broken) {
            if (Database.translated("read the build", Path.of(Access.DATABASE), broken) instanceof StoreFault fault
                    && fault.kind() == StoreFault.Kind.DAMAGED) {
                return Optional.of(new StoreFault(
                        StoreFault.Kind.DAMAGED,
                        "revision " + number + " of build '" + table.name(id).orElse("")
                                + "' cannot be read: the database is damaged there",
                        fault.where(),
                        fault.mend(),
                        broken));
            }
            throw broken;
        }
    }

    /** Numbers of the revisions that cannot be read as they were saved. */
    List<Integer> damaged(BuildId id) {
        return access.read("look the build over", handle -> {
            BuildTable table = new BuildTable(handle);
            return IntStream.rangeClosed(1, table.latestNumber(id))
                    .filter(number -> damage(table, id, number).isPresent())
                    .boxed()
                    .toList();
        });
    }

    /** Every revision of every build; what is damaged goes among what was met. @return how many were looked at */
    int lookOver() {
        int looked = 0;
        for (BuildEntry build : builds()) {
            for (int number = 1; number <= build.latest(); number++) {
                if (Thread.currentThread().isInterrupted()) {
                    return looked;
                }
                int one = number;
                Optional<StoreFault> damage =
                        access.read("look the build over", handle -> damage(new BuildTable(handle), build.id(), one));
                damage.ifPresent(fault -> access.troubles().met(fault, access.now()));
                looked++;
            }
        }
        return looked;
    }

    private static StoreFault noRevision(BuildId id, int number, int latest) {
        return new StoreFault(
                StoreFault.Kind.NOT_FOUND,
                "there is no revision " + number + "; there are 1 to " + latest,
                "build " + id,
                "Look at its history");
    }
}
