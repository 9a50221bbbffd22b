package sensorrounds.ingest;

import java.util.List;

/**
 * The heavy part of a store's update. By whichever way it is done, the same logs give the same blocks; only how these are
 * spread over files, and in which order, may differ, and no table depends on that.
 */
interface StoreWork {
    /** What is written of the content of each log, as {@link Checksums} has it, in the order of the logs. */
    List<String> checksums(List<LogFile> files);

    /**
     * Reads logs and writes their blocks.
     *
     * @param folder must not exist
     * @return rows counted in what was written, before duplicates are known
     */
    IngestTally read(List<LogFile> files, String folder);

    /**
     * Writes the blocks that count in some segments into one folder. No log is read.
     *
     * @param folder must not exist
     */
    void copy(List<StoreState.Segment> segments, String folder);
}
