package sensorrounds.simulate;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/** The folder a simulation is written to. It never writes into a folder it did not make itself. */
final class OutputFolder {
    /** Found in every simulated folder; what a folder without it holds is not ours to replace. */
    private static final String MARK = "truth/README.md";

    private static final List<String> OURS = List.of("visit-logs", "layouts", "truth");

    private final Path root;
    private final AtomicInteger files = new AtomicInteger();
    private final AtomicLong bytes = new AtomicLong();

    private OutputFolder(Path root) {
        this.root = root;
    }

    static OutputFolder open(Path root, SimulateTask.Existing existing) throws IOException {
        if (Files.exists(root) && !isEmpty(root)) {
            if (existing == SimulateTask.Existing.REFUSE) {
                throw new IllegalArgumentException("the folder " + root
                        + " is not empty: give a new folder, or ask for the simulated data in it to be replaced");
            }
            if (!Files.exists(root.resolve(MARK))) {
                throw new IllegalArgumentException("the folder " + root + " holds no simulated data (" + MARK
                        + " is missing), so nothing in it is replaced: give a new folder");
            }
            for (String name : OURS) {
                delete(root.resolve(name));
            }
        }
        return new OutputFolder(root);
    }

    /** Writes a whole file; one whose name ends in .gz is packed. */
    void write(String name, CharSequence text, Charset charset) throws IOException {
        byte[] content = text.toString().getBytes(charset);
        Path file = root.resolve(name);
        Files.createDirectories(file.getParent());
        try (OutputStream plain = new BufferedOutputStream(Files.newOutputStream(file));
                OutputStream out = name.endsWith(".gz") ? new GZIPOutputStream(plain) : plain) {
            out.write(content);
        }
        files.incrementAndGet();
        bytes.addAndGet(content.length);
    }

    /** Opens a large file for plain text in UTF-8, written piece by piece. */
    OutputStream stream(String name) throws IOException {
        Path file = root.resolve(name);
        Files.createDirectories(file.getParent());
        files.incrementAndGet();
        return Files.newOutputStream(file);
    }

    /** Moves the text into the stream and empties it. */
    void drain(StringBuilder text, OutputStream out) throws IOException {
        byte[] content = text.toString().getBytes(StandardCharsets.UTF_8);
        out.write(content);
        bytes.addAndGet(content.length);
        text.setLength(0);
    }

    void write(String name, CharSequence text) throws IOException {
        write(name, text, StandardCharsets.UTF_8);
    }

    int files() {
        return files.get();
    }

    /** Bytes written, before packing. */
    long bytes() {
        return bytes.get();
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> content = Files.list(folder)) {
            return content.findAny().isEmpty();
        }
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(p);
                }
            }
        }
    }
}
