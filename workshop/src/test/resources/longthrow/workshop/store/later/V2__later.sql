-- A step that a later program might take, for the tests.
PRAGMA user_version = 2;
ALTER TABLE build ADD COLUMN colour TEXT;
