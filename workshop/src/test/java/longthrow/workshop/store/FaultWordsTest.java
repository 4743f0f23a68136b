package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.sql.SQLTransientConnectionException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What an owner reads of trouble with the disk: what, where, how to mend it, and no name out of the program's inside. */
class FaultWordsTest {
    @TempDir
    private Path folder;

    static Stream<Arguments> troubles() {
        return Stream.of(
                Arguments.of(new AccessDeniedException("/data/longthrow.db"), "may not write /data/longthrow.db"),
                Arguments.of(new ReadOnlyFileSystemException(), "can only be read"),
                Arguments.of(new NotDirectoryException("/data"), "/data is a file where a folder is needed"),
                Arguments.of(new FileAlreadyExistsException("/data/files"), "/data/files is in the way"),
                Arguments.of(new NoSuchFileException("/data/files"), "/data/files is not there"),
                Arguments.of(new FileSystemException("/data", null, "Input/output error"), "'Input/output error'"),
                Arguments.of(
                        new FileSystemException("/data", null, "Read-only file system"), "'Read-only file system'"),
                Arguments.of(new IOException("Stale file handle"), "'Stale file handle'"),
                Arguments.of(new IOException(), "gave no reason"),
                Arguments.of(
                        new SQLiteException("[SQLITE_READONLY] x", SQLiteErrorCode.SQLITE_READONLY),
                        "Attempt to write a readonly database"));
    }

    @ParameterizedTest
    @MethodSource("troubles")
    void everyTroubleOfTheDiskIsSaidInPlainWords(Exception trouble, String words) {
        StoreFault fault = Disk.fault("keep the edit", folder, trouble);
        assertThat(fault.what()).startsWith("could not keep the edit: ").contains(words);
        assertThat(fault.where()).isEqualTo(folder.toString());
        assertThat(fault.mend()).contains("acknowledged");
        isPlain(fault);
    }

    @Test
    void everyCodeOfTheDatabaseIsSaidInPlainWords() {
        for (SQLiteErrorCode code : SQLiteErrorCode.values()) {
            RuntimeException fault = Database.translated(
                    "keep the edit", folder, new SQLiteException("[" + code + "] org.sqlite.Inside", code));
            assertThat(fault).isInstanceOfSatisfying(StoreFault.class, FaultWordsTest::isPlain);
        }
    }

    @Test
    void whoseTurnDoesNotComeIsToldToTryAgain() {
        RuntimeException fault = Database.translated(
                "keep the edit", folder, new SQLTransientConnectionException("longthrow writer - not available"));
        assertThat(fault).isInstanceOfSatisfying(StoreFault.class, busy -> {
            assertThat(busy.kind()).isEqualTo(StoreFault.Kind.LOCKED);
            assertThat(busy.what()).contains("30 s");
            assertThat(busy.mend()).startsWith("Try again");
            isPlain(busy);
        });
    }

    private static void isPlain(StoreFault fault) {
        assertThat(fault.getMessage()).doesNotContain("Exception", "java.", "org.", "null", "[SQLITE_");
        assertThat(fault.mend()).isNotBlank();
    }
}
