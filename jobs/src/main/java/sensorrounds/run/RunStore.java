package sensorrounds.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileAlreadyExistsException;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import sensorrounds.ingest.PointerFile;
import sensorrounds.ingest.RefusedInput;

/**
 * The output folder: each run in a folder of its own under {@code runs/}, and one small pointer file,
 * {@code latest.json}, that names the run to read; backtests beside them in the same way. A reader sees the whole old run or
 * the whole new one; nothing is overwritten in place, and a run that fails leaves the pointer where it was.
 */
public final class RunStore {
    static final String STATUS = "run-status.json";
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path root;
    private final Kind kind;
    private final FileSystem files;
    private final Configuration hadoop;

    /** What a folder holds; each kind is numbered, and pointed to, for itself. */
    public enum Kind {
        RUN("run", "runs", "latest.json"),
        BACKTEST("backtest", "backtests", "latest-backtest.json");

        private final String word;
        private final String folder;
        private final String pointer;

        Kind(String word, String folder, String pointer) {
            this.word = word;
            this.folder = folder;
            this.pointer = pointer;
        }
    }

    /** Of runs. */
    public RunStore(String folder, Configuration hadoop) {
        this(folder, Kind.RUN, hadoop);
    }

    public RunStore(String folder, Kind kind, Configuration hadoop) {
        this.kind = kind;
        this.root = new Path(folder);
        this.hadoop = hadoop;
        try {
            this.files = root.getFileSystem(hadoop);
        } catch (IOException | IllegalArgumentException e) {
            throw new RefusedInput(
                    "output folder cannot be used",
                    folder,
                    e.getMessage(),
                    "a path or URI that can be written",
                    "give another --out");
        }
    }

    /** State of a run as schedulers read it from {@code run-status.json}. */
    public enum State {
        RUNNING,
        DONE,
        DONE_OVER_QUARANTINE_LIMIT,
        FAILED
    }

    /**
     * Takes the next free run number.
     *
     * @return the new run's folder, empty but for its status file
     */
    public Path begin() {
        try {
            Path runs = new Path(root, kind.folder);
            files.mkdirs(runs);
            int next = Arrays.stream(files.listStatus(runs))
                            .map(s -> s.getPath().getName())
                            .filter(n -> n.matches("\\d+"))
                            .mapToInt(Integer::parseInt)
                            .max()
                            .orElse(0)
                    + 1;
            while (true) {
                Path run = new Path(runs, String.format(Locale.ROOT, "%06d", next++));
                if (files.exists(run)) {
                    continue;
                }
                files.mkdirs(run);
                // Creating without overwrite is what decides between two runs that start together.
                try (OutputStream out = files.create(new Path(run, STATUS), false)) {
                    out.write(status(State.RUNNING, ""));
                    return run;
                } catch (FileAlreadyExistsException e) {
                    // Another run was quicker with this number: take the next one.
                    continue;
                }
            }
        } catch (IOException e) {
            throw new RefusedInput(
                    "output folder cannot be written",
                    root.toString(),
                    e.getMessage(),
                    "a folder in which files can be made",
                    "make it writable, or give another --out");
        }
    }

    /**
     * Has a run's folder filled, and publishes it. When that does not come about the run is marked as failed, with the reason.
     *
     * @param fill the work, and what came of it
     * @param state in which that leaves the run
     */
    <T> T publishing(Path run, Supplier<T> fill, Function<T, State> state) {
        String why = "the process was stopped";
        boolean published = false;
        try {
            T outcome = fill.get();
            mark(run, state.apply(outcome), "");
            publish(run);
            published = true;
            return outcome;
        } catch (Exception e) {
            // Not only RuntimeException: Spark throws its checked ones undeclared.
            why = RefusedInput.in(e).map(RefusedInput::getMessage).orElse(e.toString());
            throw e;
        } finally {
            if (!published) {
                mark(run, State.FAILED, why);
            }
        }
    }

    /** Writes the run's status; {@code detail} is the message for a failed one. */
    public void mark(Path run, State state, String detail) {
        write(new Path(run, STATUS), status(state, detail));
    }

    /**
     * Points readers to the finished run, in one step; unless they are pointed to one that began after it, which an older
     * run that took longer must not put back.
     */
    public void publish(Path run) {
        if (latest().filter(shown -> number(shown) > number(run)).isPresent()) {
            return;
        }
        ObjectNode pointer = JSON.createObjectNode();
        pointer.put(kind.word, kind.folder + "/" + run.getName());
        pointer.put("report", kind.folder + "/" + run.getName() + "/report.html");
        byte[] bytes = (pointer.toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8);
        Path target = new Path(root, kind.pointer);
        try {
            PointerFile.replace(target, run.getName(), bytes, hadoop);
        } catch (IOException e) {
            throw new UncheckedIOException("the finished run " + run + " could not be published", e);
        }
    }

    private static int number(Path run) {
        return run.getName().matches("\\d{1,9}") ? Integer.parseInt(run.getName()) : 0;
    }

    /** @return folder of the published run, or empty when nothing was published yet */
    public Optional<Path> latest() {
        try {
            Path pointer = new Path(root, kind.pointer);
            if (!files.exists(pointer)) {
                return Optional.empty();
            }
            try (InputStream in = files.open(pointer)) {
                JsonNode node = JSON.readTree(in);
                return Optional.of(new Path(root, node.path(kind.word).asText()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes a small file of a run. */
    public void write(Path file, byte[] bytes) {
        try (OutputStream out = files.create(file, true)) {
            out.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public OutputStream create(Path file) throws IOException {
        return files.create(file, true);
    }

    private static byte[] status(State state, String detail) {
        ObjectNode node = JSON.createObjectNode();
        node.put("state", state.name());
        node.put("detail", detail);
        return (node.toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8);
    }
}
