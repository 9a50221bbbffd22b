package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.ChecksumException;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;

/**
 * The folder of a store of rows read from logs. Segments hold rows and are never changed; a state says which of them count;
 * one pointer file names the state. What is written becomes visible with the pointer, so that an update that dies leaves
 * the store as it was.
 *
 * <p>The logs are the truth and the store is a copy of what was read from them: whatever in it cannot be used is read again
 * from the logs.
 */
public final class LogStore implements AutoCloseable {
    private static final String POINTER = "store.json";
    private static final String STATES = "states";
    private static final String SEGMENTS = "segments";
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Configuration hadoop;
    private final FileSystem files;
    private final Path root;
    private final StoreLock lock;
    private final long openedAt;
    private final Pseudonyms pseudonyms;
    private final String unusable;
    private StoreState state;

    private LogStore(Configuration hadoop, FileSystem files, Path root, StoreLock lock, Pseudonyms pseudonyms)
            throws IOException {
        this.hadoop = hadoop;
        this.files = files;
        this.root = root;
        this.lock = lock;
        this.openedAt = lock.takenAt();
        this.pseudonyms = pseudonyms;
        Pseudonyms.Mark mark = pseudonyms == null ? null : pseudonyms.mark();
        StoreState found = StoreState.empty(0, mark);
        String fault = null;
        try {
            found = read().orElse(found);
            refuseOthers(found, mark);
        } catch (JsonProcessingException | ChecksumException e) {
            fault = "its state cannot be read";
        }
        if (fault == null && !found.reader().equals(ReaderVersion.get())) {
            fault = "another version of this program has filled it";
        }
        if (fault != null) {
            // Numbers of segments go on, so that nothing new is ever taken for something old.
            found = StoreState.empty(highestSegment(), mark);
        }
        this.state = withoutTornSegments(found);
        if (fault == null && state != found) {
            fault = "some of its files are missing or cut short";
        }
        this.unusable = fault;
    }

    /**
     * Opens a store, or begins one, and keeps others from it until it is closed.
     *
     * @throws RefusedInput when another process has it open, or the folder cannot be used
     */
    public static LogStore open(String folder, Configuration hadoop) {
        return open(folder, null, hadoop);
    }

    /**
     * As {@link #open(String, Configuration)}.
     *
     * @param pseudonyms what replaces personal data before it is stored; null to keep it
     * @throws RefusedInput also when the store was filled otherwise
     */
    public static LogStore open(String folder, Pseudonyms pseudonyms, Configuration hadoop) {
        try {
            Path root = new Path(folder);
            FileSystem files = root.getFileSystem(hadoop);
            boolean foreign = files.exists(root)
                    && !files.exists(new Path(root, SEGMENTS))
                    && files.listStatusIterator(root).hasNext();
            if (foreign) {
                throw new RefusedInput(
                        "not a store",
                        folder,
                        "a folder with other files in it",
                        "a store made by this program, or a folder that is empty or not there yet",
                        "give another --store");
            }
            files.mkdirs(new Path(root, SEGMENTS));
            files.mkdirs(new Path(root, STATES));
            StoreLock lock = StoreLock.take(files, root);
            try {
                return new LogStore(hadoop, files, root, lock, pseudonyms);
            } catch (IOException | RuntimeException e) {
                lock.close();
                throw e;
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new RefusedInput(
                    "the store cannot be used",
                    folder,
                    e.getMessage(),
                    "a folder that can be read and written",
                    "make it so, or give another --store");
        }
    }

    /** Half of the rows under one key and half under another, or none, would make one vehicle two. */
    private void refuseOthers(StoreState found, Pseudonyms.Mark mark) {
        Pseudonyms.Mark filled = found.pseudonyms();
        if (found.logs().isEmpty() || Objects.equals(filled, mark)) {
            return;
        }
        throw new RefusedInput(
                "the store was filled otherwise",
                root.toString(),
                filled == null
                        ? "number plates and VINs as written"
                        : mark != null && !filled.key().equals(mark.key())
                                ? "pseudonyms made with another key"
                                : "pseudonyms for number plates and VINs"
                                        + (filled.technicians() == Pseudonyms.Technicians.REPLACED
                                                ? ", technicians too"
                                                : ", technicians as written"),
                filled == null
                        ? "a store filled with --pseudonymise and the same key"
                        : mark == null
                                ? "--pseudonymise with the key it was filled with"
                                : "the key it was filled with, and --pseudonymise-technicians as then",
                filled == null
                        ? "give another --store for the pseudonyms, and remove this one, which holds personal data"
                        : "call again as the store was filled, or give another --store");
    }

    /** What replaces personal data before it is stored; null to keep it. */
    Pseudonyms pseudonyms() {
        return pseudonyms;
    }

    /** Logs that are in the store as they are now, by size, time and layout. */
    public KnownLogs knows() {
        return new KnownLogs() {
            @Override
            public boolean knows(LogFile log) {
                StoredLog stored = state.logs().get(log.name());
                return stored != null && stored.isAsBefore(log);
            }

            @Override
            public List<String> sheets(String workbook) {
                String prefix = workbook + LogFile.SHEET_MARK;
                return state.logs().tailMap(prefix).keySet().stream()
                        .takeWhile(name -> name.startsWith(prefix))
                        .map(name -> name.substring(prefix.length()))
                        .toList();
            }
        };
    }

    /** Why logs that were in the store are read again; empty when nothing was wrong with it. */
    public Optional<String> unusable() {
        return Optional.ofNullable(unusable);
    }

    StoreState state() {
        return state;
    }

    Configuration hadoop() {
        return hadoop;
    }

    /** When the store was opened, by the clock of its file system. */
    long openedAt() {
        return openedAt;
    }

    Path segment(int number) {
        return new Path(root, String.format(Locale.ROOT, "%s/%06d", SEGMENTS, number));
    }

    /** A segment that has been written. */
    StoreState.Segment measure(int number) throws IOException {
        int count = 0;
        long bytes = 0;
        Path folder = segment(number);
        if (files.exists(folder)) {
            RemoteIterator<LocatedFileStatus> below = files.listFiles(folder, true);
            while (below.hasNext()) {
                FileStatus file = below.next();
                if (file.getPath().getName().endsWith(".parquet")) {
                    count++;
                    bytes += file.getLen();
                }
            }
        }
        return new StoreState.Segment(number, count, bytes, List.of());
    }

    /** Makes a number free for a segment: what lies there was written by an update that died. */
    int claim(int number) throws IOException {
        files.delete(segment(number), true);
        return number;
    }

    /** Makes the state the one that counts, in one step, and then removes what no longer does. */
    void publish(StoreState next) throws IOException {
        int number = numbers(STATES).stream().mapToInt(n -> n).max().orElse(0) + 1;
        Path file = new Path(root, String.format(Locale.ROOT, "%s/%06d.json", STATES, number));
        try (OutputStream out = files.create(file, true)) {
            out.write(next.json());
        }
        byte[] pointer = JSON.createObjectNode()
                .put("state", STATES + "/" + file.getName())
                .toString()
                .getBytes(StandardCharsets.UTF_8);
        PointerFile.replace(new Path(root, POINTER), Integer.toString(number), pointer, hadoop);
        state = next;
        Set<Integer> live =
                next.segments().stream().map(StoreState.Segment::number).collect(Collectors.toSet());
        for (int old : numbers(SEGMENTS)) {
            if (!live.contains(old)) {
                files.delete(segment(old), true);
            }
        }
        for (FileStatus old : files.listStatus(new Path(root, STATES))) {
            if (!old.getPath().getName().equals(file.getName())) {
                files.delete(old.getPath(), false);
            }
        }
    }

    @Override
    public void close() {
        lock.close();
    }

    private Optional<StoreState> read() throws IOException {
        Path pointer = new Path(root, POINTER);
        if (!files.exists(pointer)) {
            return Optional.empty();
        }
        Path named = new Path(root, JSON.readTree(bytes(pointer)).path("state").asText("none"));
        return Optional.of(StoreState.of(files.exists(named) ? bytes(named) : new byte[0]));
    }

    private byte[] bytes(Path file) throws IOException {
        try (InputStream in = files.open(file)) {
            return in.readAllBytes();
        }
    }

    private StoreState withoutTornSegments(StoreState found) throws IOException {
        List<StoreState.Segment> whole = new ArrayList<>();
        for (StoreState.Segment segment : found.segments()) {
            if (measure(segment.number()).without(segment.gone()).equals(segment)) {
                whole.add(segment);
            }
        }
        if (whole.size() == found.segments().size()) {
            return found;
        }
        Set<Integer> numbers = whole.stream().map(StoreState.Segment::number).collect(Collectors.toSet());
        Map<String, StoredLog> logs = new TreeMap<>(found.logs());
        logs.values().removeIf(log -> !numbers.contains(log.segment()));
        return new StoreState(
                found.reader(), found.listedAt(), found.lastSegment(), whole, new TreeMap<>(logs), found.pseudonyms());
    }

    private int highestSegment() {
        try {
            return numbers(SEGMENTS).stream().mapToInt(n -> n).max().orElse(0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<Integer> numbers(String folder) throws IOException {
        List<Integer> numbers = new ArrayList<>();
        for (FileStatus status : files.listStatus(new Path(root, folder))) {
            String name = status.getPath().getName().replace(".json", "");
            if (name.matches("\\d+")) {
                numbers.add(Integer.valueOf(name));
            }
        }
        return numbers;
    }
}
