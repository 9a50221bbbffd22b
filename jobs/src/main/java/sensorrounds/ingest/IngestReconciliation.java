package sensorrounds.ingest;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import sensorrounds.ingest.IngestSummary.FileResult;

/**
 * Holds what the readers of the files counted against what became of the rows. The two counts come by different ways: the
 * readers count while reading, the rows are counted in the finished table.
 */
final class IngestReconciliation {
    private IngestReconciliation() {}

    /**
     * @return the summary, when rows in = accepted + quarantined + duplicates for every file
     * @throws IllegalStateException naming the file for which it does not hold, which is a bug of ours and never the input's
     */
    static IngestSummary check(IngestSummary summary, List<LogFile> files) {
        Map<String, FileResult> results =
                summary.files().stream().collect(Collectors.toMap(FileResult::file, Function.identity()));
        for (LogFile file : files) {
            FileResult result = results.get(file.name());
            if (result == null || result.count() == null) {
                throw new IllegalStateException("the rows of " + file.name() + " were not counted by their reader");
            }
        }
        for (FileResult result : summary.files()) {
            long rowsIn = result.count() == null ? 0 : result.count().rows();
            if (rowsIn != result.rowsOut()) {
                throw new IllegalStateException("rows were lost or made up: " + result.file() + " has " + rowsIn
                        + " rows in, but " + result.accepted() + " accepted + " + result.quarantined()
                        + " quarantined + " + result.duplicates() + " duplicates = " + result.rowsOut());
            }
        }
        return summary;
    }
}
