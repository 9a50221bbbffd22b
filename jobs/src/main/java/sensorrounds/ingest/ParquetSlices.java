package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.hadoop.metadata.BlockMetaData;

/** Cuts a big Parquet file between its row groups. */
final class ParquetSlices {
    private ParquetSlices() {}

    /** @param sliceBytes about how many bytes to a slice; a row group stays whole */
    static List<LogSlice> of(LogFile file, long sliceBytes, Configuration hadoop) {
        try (ParquetRecords whole = ParquetRecords.open(LogSlice.whole(file), hadoop)) {
            List<LogSlice> slices = new ArrayList<>();
            long start = 0;
            long startRow = 0;
            long row = 0;
            for (BlockMetaData group : whole.footer().getBlocks()) {
                if (group.getStartingPos() - start >= sliceBytes) {
                    slices.add(new LogSlice(file, start, group.getStartingPos() - start, startRow));
                    start = group.getStartingPos();
                    startRow = row;
                }
                row += group.getRowCount();
            }
            slices.add(new LogSlice(file, start, file.bytes() - start, startRow));
            return slices;
        } catch (IOException e) {
            throw LogStreams.unreadable(file, 0, e);
        }
    }
}
