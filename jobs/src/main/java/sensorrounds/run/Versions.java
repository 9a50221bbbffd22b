package sensorrounds.run;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** Versions as the build wrote them. */
public final class Versions {
    private static final Properties BUILD = load();

    private Versions() {}

    public static String own() {
        return BUILD.getProperty("version");
    }

    public static String spark() {
        return BUILD.getProperty("spark");
    }

    private static Properties load() {
        Properties p = new Properties();
        try (InputStream in = Versions.class.getResourceAsStream("/sensorrounds/build.properties")) {
            p.load(in);
            return p;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
