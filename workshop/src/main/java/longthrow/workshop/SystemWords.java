package longthrow.workshop;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** What the operating system says of a file that failed, in an owner's words. */
final class SystemWords {
    private SystemWords() {}

    /** Why it failed: the usual reasons in plain words, any other in the system's own; never the name of a class. */
    static String plain(IOException failed) {
        if (failed instanceof AccessDeniedException) {
            return "you may not write in its folder";
        }
        if (failed instanceof NoSuchFileException) {
            return "it is gone meanwhile";
        }
        String said = said(failed);
        String low = said.toLowerCase(Locale.ROOT);
        // As strerror(3) of the C library says them without a locale of its own.
        if (low.contains("no space left")) {
            return "no space left on the disk";
        } else if (low.contains("quota exceeded")) {
            return "your share of the disk is used up";
        } else if (low.contains("read-only file system")) {
            return "the disk is read-only";
        } else if (low.contains("bad file descriptor")) {
            return "the output is closed";
        } else if (low.contains("levels of symbolic links")) {
            return "it is a link that leads back to itself; name the file it should lead to";
        }
        return said.isEmpty() ? "the system does not say why" : said;
    }

    /** Whether whoever read the output, such as {@code head}, had enough: no fault of anybody. */
    static boolean readerHasLeft(IOException failed) {
        return said(failed).toLowerCase(Locale.ROOT).contains("broken pipe");
    }

    private static String said(IOException failed) {
        String said = failed instanceof FileSystemException file ? file.getReason() : failed.getMessage();
        return said == null ? "" : said;
    }
}
