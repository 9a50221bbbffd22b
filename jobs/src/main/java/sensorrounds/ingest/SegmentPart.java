package sensorrounds.ingest;

import java.io.Closeable;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.hadoop.ParquetWriter;
import sensorrounds.tables.LogRow;

/** What one thread writes of a segment: a file for each outcome that comes up, laid out as Spark lays out a partitioned table. */
final class SegmentPart implements Closeable {
    private final Path folder;
    private final int number;
    private final Configuration hadoop;
    private final Map<LogRow.Outcome, ParquetWriter<Block>> writers = new EnumMap<>(LogRow.Outcome.class);

    SegmentPart(Path folder, int number, Configuration hadoop) {
        this.folder = folder;
        this.number = number;
        this.hadoop = hadoop;
    }

    void write(Block block) throws IOException {
        ParquetWriter<Block> writer = writers.get(block.outcome());
        if (writer == null) {
            writer = BlockFiles.writer(
                    new Path(
                            BlockFiles.folder(folder, block.outcome()),
                            String.format(Locale.ROOT, "part-%05d.snappy.parquet", number)),
                    hadoop);
            writers.put(block.outcome(), writer);
        }
        writer.write(block);
    }

    /** Only what was closed without a failure is whole. */
    @Override
    public void close() throws IOException {
        IOException failure = null;
        for (ParquetWriter<Block> writer : writers.values()) {
            try {
                writer.close();
            } catch (IOException e) {
                failure = e;
            }
        }
        if (failure != null) {
            throw failure;
        }
    }
}
