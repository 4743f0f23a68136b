-- Times are UTC as in ISO 8601, hashes are SHA-256 in small hexadecimal digits, identities are UUIDs as text.
PRAGMA application_id = 1280600178; -- 'LThr'
PRAGMA user_version = 1;

CREATE TABLE build (
    id       INTEGER PRIMARY KEY,
    uuid     TEXT NOT NULL UNIQUE,
    name     TEXT NOT NULL,
    created  TEXT NOT NULL,
    archived TEXT
) STRICT;

-- Every accepted edit, with the build file exactly as typed. Numbers run from 1 without gaps.
CREATE TABLE revision (
    id          INTEGER PRIMARY KEY,
    build       INTEGER NOT NULL REFERENCES build (id),
    number      INTEGER NOT NULL CHECK (number >= 1),
    client_key  TEXT NOT NULL UNIQUE,
    based_on    INTEGER NOT NULL CHECK (based_on >= 0 AND based_on < number),
    restores    INTEGER CHECK (restores >= 1 AND restores < number),
    undo        INTEGER NOT NULL CHECK (undo = 0 OR (undo = 1 AND restores IS NOT NULL)),
    saved       TEXT NOT NULL,
    what        TEXT NOT NULL,
    text        TEXT NOT NULL,
    text_sha256 TEXT NOT NULL,
    UNIQUE (build, number)
) STRICT;

CREATE TRIGGER revision_is_never_changed BEFORE UPDATE ON revision
BEGIN
    SELECT RAISE(ABORT, 'a revision is never changed');
END;

-- Contents that lie in the folder files, each once.
CREATE TABLE content (
    sha256 TEXT PRIMARY KEY,
    bytes  INTEGER NOT NULL CHECK (bytes >= 0)
) STRICT;

-- Contents whose files are to be deleted: forgotten, but the program was cut off before it came to that.
CREATE TABLE forgotten_content (
    sha256 TEXT PRIMARY KEY
) STRICT;

CREATE TABLE attachment (
    id         INTEGER PRIMARY KEY,
    revision   INTEGER NOT NULL REFERENCES revision (id),
    name       TEXT NOT NULL,
    media_type TEXT NOT NULL,
    sha256     TEXT NOT NULL REFERENCES content (sha256),
    attached   TEXT NOT NULL,
    UNIQUE (revision, name, sha256)
) STRICT;

CREATE INDEX attachment_content ON attachment (sha256);

CREATE TABLE catalogue (
    id       INTEGER PRIMARY KEY,
    uuid     TEXT NOT NULL UNIQUE,
    name     TEXT NOT NULL,
    sha256   TEXT NOT NULL REFERENCES content (sha256),
    imported TEXT NOT NULL,
    active   INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;

CREATE INDEX catalogue_content ON catalogue (sha256);

CREATE TABLE setting (
    key   TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
