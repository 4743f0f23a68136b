package longthrow.buildfile;

/**
 * How something unusual was understood, to be said back to the owner.
 * @param line from 1
 * @param path key path
 * @param text such as "read 16,2 mm as 16.2 mm"
 */
public record Note(int line, String path, String text) {
    public String message() {
        return "line " + line + ", " + path + ": " + text;
    }
}
