package longthrow.workshop.web.book;

import java.util.Optional;
import longthrow.workshop.book.Sheet;
import longthrow.workshop.web.Frame;

/**
 * The Book of a build.
 * @param sheet  empty while the search for parts is not done; then the page asks for it afterwards
 * @param asked  what of it is shown
 */
public record BookPage(Frame frame, Optional<Sheet> sheet, Asked asked) {
    /** Whether a piece comes later: the sheet itself, or what of it is not worked out. */
    public boolean asksLater() {
        return sheet.filter(s -> s.book().isWhole()).isEmpty();
    }

    /** What to ask for what is not worked out; empty where nothing is missing. */
    public String asks() {
        return asksLater() ? asked.query() : "";
    }

    /**
     * What of a Book is shown.
     * @param wall  the one page for the wall
     * @param share as it is handed on
     * @param names with names, places and free words all the same
     */
    public record Asked(boolean wall, boolean share, boolean names) {
        /** Whether free words are left out. */
        public boolean stripped() {
            return share && !names;
        }

        /** Behind an address. */
        public String query() {
            return "?view=" + (wall ? "wall" : "sheet") + (share ? "&share=yes" : "") + (names ? "&names=yes" : "");
        }
    }
}
