package longthrow.workshop.store;

import org.jspecify.annotations.Nullable;

/** Something the store did not do, said so that its owner can mend it. Nothing was changed by what failed. */
public final class StoreFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What kind of trouble it is, for whoever has to answer in another language than words. */
    public enum Kind {
        /** No place for the data could be found. */
        NO_FOLDER,
        /** The folder or a file in it cannot be made or written. */
        NOT_WRITABLE,
        /** Another process, or this one, has the store open. */
        LOCKED,
        /** What is on the disk is broken or gone. */
        DAMAGED,
        /** The data were written by a newer program. */
        NEWER_SCHEMA,
        /** No room on the disk. */
        DISK_FULL,
        /** The disk or the system refused to read or write. */
        DISK_FAILED,
        /** The store is damaged and can only be read. */
        READ_ONLY,
        /** There is no such build, revision, file or catalogue. */
        NOT_FOUND,
        /** A text, name, key or file that is not taken as it is. */
        REFUSED,
        /** An archive that is not taken as it is. */
        BAD_ARCHIVE,
        /** The store was closed already. */
        CLOSED
    }

    private final Kind kind;
    private final String what;
    private final String where;
    private final String mend;

    StoreFault(Kind kind, String what, String where, String mend) {
        this(kind, what, where, mend, null);
    }

    StoreFault(Kind kind, String what, String where, String mend, @Nullable Throwable cause) {
        super(where + ": " + what + ". " + mend, cause);
        this.kind = kind;
        this.what = what;
        this.where = where;
        this.mend = mend;
    }

    /** The same with other words about what to do. */
    StoreFault withMend(String other) {
        return new StoreFault(kind, what, where, other, this);
    }

    /** What kind of trouble it is. */
    public Kind kind() {
        return kind;
    }

    /** What was found, and what is allowed. */
    public String what() {
        return what;
    }

    /** The folder, file, build or entry it is about. */
    public String where() {
        return where;
    }

    /** What its owner can do about it. */
    public String mend() {
        return mend;
    }
}
