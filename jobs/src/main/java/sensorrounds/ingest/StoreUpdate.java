package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.SparkSession;
import sensorrounds.ingest.StoreState.Segment;

/**
 * Brings a store up to what the logs hold now: logs that are new or have changed are read, those that were withdrawn no
 * longer count, all others are left alone. What is kept is a function of each log alone; duplicates and all else that lies
 * between logs is settled over all rows whenever they are used, so that no order of updates can matter.
 */
public final class StoreUpdate {
    /** Each day's logs make a segment; with very many, opening them takes longer than reading them. */
    private static final int MOST_SEGMENTS = 40;
    /** What this process does faster by itself than Spark starts, in bytes to read. */
    private static final long MOST_BYTES_ON_THREADS = 64L << 20;

    /** About how many times its stored size a compressed log has. */
    private static final long GUNZIPPED = 10;

    private final LogStore store;
    private final int mostSegments;
    private final long mostBytesOnThreads;
    private final StoreWork onThreads;
    private final Supplier<StoreWork> onSpark;

    /** @param spark opened when an update is too big to be done without it */
    public StoreUpdate(Supplier<SparkSession> spark, LogStore store) {
        this(spark, store, MOST_SEGMENTS, MOST_BYTES_ON_THREADS);
    }

    StoreUpdate(Supplier<SparkSession> spark, LogStore store, int mostSegments, long mostBytesOnThreads) {
        this.store = store;
        this.mostSegments = mostSegments;
        this.mostBytesOnThreads = mostBytesOnThreads;
        this.onThreads = new StoreWorkOnThreads(store);
        this.onSpark = () -> new StoreWorkOnSpark(spark.get(), store);
    }

    /** How closely logs that seem to be as before are looked at. */
    public enum Scrutiny {
        /** Their size and the time they were written. */
        SIZE_AND_TIME,
        /** All their content. */
        CONTENT
    }

    /**
     * What was done.
     *
     * @param logs all logs, as they now stand in the store
     * @param read what came of the logs that were read now, before duplicates are known; null when none was
     */
    public record Outcome(StoredLogs logs, int unchanged, int fresh, int changed, int withdrawn, IngestSummary read) {}

    /**
     * @param files all logs that are to count
     * @throws RefusedInput when a log cannot be read to its end, or changes meanwhile; the store is then as it was
     */
    public Outcome run(List<LogFile> files, Scrutiny scrutiny) {
        return IngestFailures.unwrap(() -> {
            StoreState before = store.state();
            StorePlan plan = StorePlan.of(before, files, scrutiny);
            boolean toDecide = !plan.doubtful().isEmpty();
            plan = plan.decided(before, checksums(plan.doubtful()));
            List<LogFile> toRead = plan.toRead();
            IngestSummary read = null;
            if (toDecide || !toRead.isEmpty() || !plan.withdrawn().isEmpty()) {
                Draft draft = new Draft(before, store.openedAt());
                plan.kept().forEach(draft::keep);
                draft.drop(plan.withdrawn());
                draft.drop(plan.changed().stream().map(LogFile::name).toList());
                if (!toRead.isEmpty()) {
                    read = read(toRead, draft);
                }
                merge(draft);
                store.publish(draft.state());
            }
            return new Outcome(
                    new StoredLogs(store, store.state(), files),
                    plan.kept().size(),
                    plan.fresh().size(),
                    plan.changed().size(),
                    plan.withdrawn().size(),
                    read);
        });
    }

    private IngestSummary read(List<LogFile> toRead, Draft draft) throws IOException {
        Map<String, String> sums = checksums(toRead);
        int segment = store.claim(draft.nextSegment());
        IngestTally written =
                work(bytes(toRead)).read(toRead, store.segment(segment).toString());
        IngestSummary summary = IngestReconciliation.check(written.summary(), toRead);
        toRead.forEach(this::refuseIfChanged);
        draft.add(store.measure(segment));
        Map<String, IngestSummary.FileResult> results = new HashMap<>();
        summary.files().forEach(f -> results.put(f.file(), f));
        for (LogFile file : toRead) {
            IngestSummary.FileResult result = results.get(file.name());
            draft.logs.put(
                    file.name(),
                    new StoredLog(
                            file.bytes(),
                            file.modified(),
                            sums.get(file.name()),
                            LayoutDigest.of(file.layout()),
                            segment,
                            result.count().rows(),
                            result.quarantined()));
        }
        return summary;
    }

    /** A file may be written over in place while it is read, and keep its size. */
    private void refuseIfChanged(LogFile file) {
        Path path = new Path(file.uri());
        try {
            FileStatus now = path.getFileSystem(store.hadoop()).getFileStatus(path);
            if (now.getLen() != file.bytes() || now.getModificationTime() != file.modified()) {
                throw ExactStream.changed(file, now.getLen() + " bytes, written meanwhile");
            }
        } catch (IOException e) {
            throw LogStreams.unreadable(file, 0, e);
        }
    }

    private Map<String, String> checksums(List<LogFile> files) {
        Map<String, String> sums = new HashMap<>();
        if (!files.isEmpty()) {
            List<String> found = work(bytes(files)).checksums(files);
            for (int i = 0; i < files.size(); i++) {
                sums.put(files.get(i).name(), found.get(i));
            }
        }
        return sums;
    }

    private StoreWork work(long bytes) {
        return bytes <= mostBytesOnThreads ? onThreads : onSpark.get();
    }

    private static long bytes(List<LogFile> files) {
        return files.stream()
                .mapToLong(f -> f.gzipped() ? GUNZIPPED * f.bytes() : f.bytes())
                .sum();
    }

    /**
     * Writes small segments together when there are many, and those anew of which most is gone. Rows are copied; no log is
     * read.
     */
    private void merge(Draft draft) throws IOException {
        Map<Integer, Integer> live = draft.state().logsPerSegment();
        draft.segments.removeIf(s -> !live.containsKey(s.number()));
        Set<Segment> together = new HashSet<>();
        if (draft.segments.size() > mostSegments) {
            draft.segments.stream()
                    .sorted(Comparator.comparingLong(Segment::bytes))
                    .limit(draft.segments.size() / 2 + 1L)
                    .forEach(together::add);
        }
        draft.segments.stream()
                .filter(s -> s.gone().size() > live.get(s.number()))
                .forEach(together::add);
        if (together.isEmpty()) {
            return;
        }
        List<Segment> old = draft.segments.stream().filter(together::contains).toList();
        int number = store.claim(draft.nextSegment());
        long bytes = old.stream().mapToLong(Segment::bytes).sum();
        work(bytes).copy(old, store.segment(number).toString());
        draft.replace(old, store.measure(number));
    }

    /** The state to come. */
    private static final class Draft {
        private final StoreState before;
        private final long listedAt;
        private final List<Segment> segments;
        private final SortedMap<String, StoredLog> logs = new TreeMap<>();
        private int last;

        Draft(StoreState before, long listedAt) {
            this.before = before;
            this.listedAt = listedAt;
            this.segments = new ArrayList<>(before.segments());
            this.last = before.lastSegment();
        }

        int nextSegment() {
            return ++last;
        }

        void keep(LogFile file) {
            logs.put(file.name(), before.logs().get(file.name()).writtenAt(file.modified()));
        }

        void drop(List<String> names) {
            Map<Integer, List<String>> gone = new HashMap<>();
            for (String name : names) {
                gone.computeIfAbsent(before.logs().get(name).segment(), s -> new ArrayList<>())
                        .add(name);
            }
            segments.replaceAll(s -> s.without(gone.getOrDefault(s.number(), List.of())));
        }

        void add(Segment segment) {
            segments.add(segment);
        }

        void replace(List<Segment> old, Segment merged) {
            segments.removeAll(old);
            segments.add(merged);
            Set<Integer> numbers = new HashSet<>();
            old.forEach(s -> numbers.add(s.number()));
            logs.replaceAll((name, log) -> numbers.contains(log.segment()) ? log.in(merged.number()) : log);
        }

        StoreState state() {
            return new StoreState(before.reader(), listedAt, last, segments, logs, before.pseudonyms());
        }
    }
}
