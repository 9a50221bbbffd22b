package sensorrounds.ingest;

import com.fasterxml.jackson.core.json.PackageVersion;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.List;
import java.util.TreeMap;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.apache.parquet.Version;
import sensorrounds.intake.VisitParser;

/**
 * A word for the code that turns logs into blocks. It is taken from the classes themselves, so that nobody can change how
 * logs are read and forget to say so: what other code has read is read again.
 */
final class ReaderVersion {
    private static final List<String> OURS = List.of(
            "sensorrounds/ingest/",
            "sensorrounds/workbook/",
            "sensorrounds/intake/",
            "sensorrounds/visit/",
            "sensorrounds/fleet/");

    private ReaderVersion() {}

    static String get() {
        return Holder.WORD;
    }

    private static final class Holder {
        static final String WORD = word();
    }

    private static String word() {
        TreeMap<String, Long> classes = new TreeMap<>();
        OURS.forEach(folder -> {
            classes.putAll(sums(VisitParser.class, folder));
            classes.putAll(sums(ReaderVersion.class, folder));
        });
        classes.putAll(sums(CsvReader.class, "de/siegmar/fastcsv/"));
        CRC32 all = new CRC32();
        all.update((classes + PackageVersion.VERSION.toString() + Version.VERSION_NUMBER)
                .getBytes(StandardCharsets.UTF_8));
        return String.format("%08x-%d", all.getValue(), classes.size());
    }

    /** Checksums of the classes in a folder of the jar, or of the build folder, that a class comes from. */
    private static TreeMap<String, Long> sums(Class<?> of, String folder) {
        CodeSource source = of.getProtectionDomain().getCodeSource();
        if (source == null || !source.getLocation().getProtocol().equals("file")) {
            throw new IllegalStateException("cannot tell the version of " + of + ", which comes from " + source);
        }
        TreeMap<String, Long> sums = new TreeMap<>();
        try {
            Path place = Path.of(new URI(source.getLocation().toString()));
            if (Files.isDirectory(place)) {
                ofFolder(place, folder, sums);
            } else {
                try (JarFile jar = new JarFile(place.toFile())) {
                    jar.stream()
                            .filter(e -> e.getName().startsWith(folder) && !e.isDirectory())
                            .forEach(e -> sums.put(e.getName(), e.getCrc()));
                }
            }
            return sums;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the classes of this program", e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void ofFolder(Path place, String folder, TreeMap<String, Long> sums) throws IOException {
        Path start = place.resolve(folder);
        if (!Files.isDirectory(start)) {
            return;
        }
        try (Stream<Path> files = Files.walk(start)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                CRC32 crc = new CRC32();
                crc.update(Files.readAllBytes(file));
                sums.put(place.relativize(file).toString().replace(File.separatorChar, '/'), crc.getValue());
            }
        }
    }
}
