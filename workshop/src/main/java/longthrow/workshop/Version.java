package longthrow.workshop;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version this program was built as, from the resource the build fills in. */
final class Version implements IVersionProvider {
    private static final String RESOURCE = "version.properties";

    @Override
    public String[] getVersion() throws IOException {
        Properties built = new Properties();
        try (InputStream in = Version.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("resource " + RESOURCE + " is missing from the jar; build again");
            }
            built.load(in);
        }
        return new String[] {"longthrow " + built.getProperty("version")};
    }
}
