package longthrow.workshop;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.buildfile.CatalogueFile;

/**
 * The invented engine and the invented catalogue that come along, the very files of the folder examples.
 * @param build     text of the build file
 * @param catalogue files by name
 */
record Example(String build, Map<String, byte[]> catalogue) {
    private static final String FOLDER = "catalogue/";

    static Example ofThisProgram() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (String kind : CatalogueFile.kinds()) {
            String name = kind + ".csv";
            try (InputStream in = Example.class.getResourceAsStream(FOLDER + name)) {
                if (in != null) {
                    files.put(name, in.readAllBytes());
                }
            }
        }
        return new Example(new String(DemoCommand.text(), StandardCharsets.UTF_8), files);
    }
}
