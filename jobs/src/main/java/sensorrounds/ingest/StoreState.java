package sensorrounds.ingest;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a store holds at one time: which logs it has read, and in which segments their rows lie.
 *
 * @param reader the code that read them, as {@link ReaderVersion} has it
 * @param listedAt when the logs were listed, milliseconds by the clock of the store's file system
 * @param lastSegment highest number a segment has had so far
 * @param segments in the order they were written
 * @param logs by name
 * @param pseudonyms what personal data in them was replaced with; null where it stands as written
 */
record StoreState(
        String reader,
        long listedAt,
        int lastSegment,
        List<Segment> segments,
        SortedMap<String, StoredLog> logs,
        Pseudonyms.Mark pseudonyms) {
    private static final ObjectMapper JSON = new ObjectMapper();

    StoreState {
        segments = List.copyOf(segments);
        logs = Collections.unmodifiableSortedMap(new TreeMap<>(logs));
    }

    /**
     * Rows written at one time.
     *
     * @param files Parquet files it consists of
     * @param bytes their size in all
     * @param gone logs in it that have changed or were withdrawn since: their rows do not count
     */
    record Segment(int number, int files, long bytes, List<String> gone) {
        Segment {
            gone = List.copyOf(gone);
        }

        Segment without(List<String> names) {
            List<String> all = new ArrayList<>(gone);
            all.addAll(names);
            Collections.sort(all);
            return new Segment(number, files, bytes, all);
        }
    }

    /** A state without logs. */
    static StoreState empty(int lastSegment, Pseudonyms.Mark pseudonyms) {
        return new StoreState(ReaderVersion.get(), 0, lastSegment, List.of(), new TreeMap<>(), pseudonyms);
    }

    /** Logs in a segment whose rows count, by segment. */
    Map<Integer, Integer> logsPerSegment() {
        Map<Integer, Integer> logsPer = new HashMap<>();
        logs.values().forEach(log -> logsPer.merge(log.segment(), 1, Integer::sum));
        return logsPer;
    }

    byte[] json() {
        try {
            return JSON.writeValueAsBytes(this);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @throws IOException when the bytes are no state, or one that another form of this program wrote */
    static StoreState of(byte[] json) throws IOException {
        return JSON.readValue(json, StoreState.class);
    }
}
