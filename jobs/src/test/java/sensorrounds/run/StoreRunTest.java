package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.ingest.StoreUpdate.Scrutiny;

/** A run from a store that was filled bit by bit publishes, byte for byte, what a run on the logs themselves does. */
class StoreRunTest {
    @TempDir
    private Path dir;

    @Test
    void theSampleLogsTakenInBitByBitGiveTheSameRunAsAllAtOnce() throws IOException {
        Path data = dir.resolve("data");
        copy(SampleRun.DATA, data);
        Path held = dir.resolve("held");
        move(data.resolve("visit-logs/T21"), held);
        String store = dir.resolve("store").toString();
        RunOptions options = new RunOptions(
                data.toString(), null, null, store, dir.resolve("out").toString(), null);

        // First without one technician, then with all and one log with a stray row, then as they are.
        IngestRun.of(options, Scrutiny.SIZE_AND_TIME, Progress.SILENT);
        move(held, data.resolve("visit-logs/T21"));
        Path grown = data.resolve("visit-logs/T11/T11-2025-q1.jsonl");
        byte[] right = Files.readAllBytes(grown);
        Files.write(grown, Arrays.copyOf(right, right.length / 2));
        IngestRun.Outcome second = IngestRun.of(options, Scrutiny.SIZE_AND_TIME, Progress.SILENT);
        assertThat(second.text()).contains("1 changed").contains("visit-logs/T21/");
        Files.write(grown, right);

        Path fromStore = Path.of(new Pipeline(options, Progress.SILENT).run().folder());

        assertThat(files(fromStore)).isEqualTo(files(SampleRun.get().folder()));
    }

    private static Map<String, String> files(Path run) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> all = Files.walk(run)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                String name = run.relativize(file).toString().replaceAll("(part-\\d+)-[-0-9a-f]{36}", "$1");
                if (!name.endsWith(".crc")) {
                    contents.put(name, Arrays.hashCode(Files.readAllBytes(file)) + "/" + Files.size(file));
                }
            }
        }
        assertThat(contents).hasSizeGreaterThan(30).containsKey("report.html").containsKey("run.json");
        return contents;
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path source : all.toList()) {
                Path target = to.resolve(from.relativize(source).toString());
                if (Files.isDirectory(source)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(source, target);
                }
            }
        }
    }

    private static void move(Path from, Path to) throws IOException {
        Files.move(from, to);
    }
}
