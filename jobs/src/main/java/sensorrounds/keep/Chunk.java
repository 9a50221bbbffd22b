package sensorrounds.keep;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.util.KnownSizeEstimation;
import org.apache.spark.util.SizeEstimator;

/**
 * Some rows of what is kept, which know about how much memory they take. Spark would walk through the objects of hundreds
 * of them, and again as more are kept; a few tell as much.
 *
 * @param bytes about their size in memory
 */
record Chunk<T>(List<T> rows, long bytes) implements KnownSizeEstimation, Serializable {
    private static final int WEIGHED = 16;

    static <T> Chunk<T> of(List<T> rows) {
        List<T> weighed = new ArrayList<>(WEIGHED);
        int step = Math.max(1, rows.size() / WEIGHED);
        for (int i = 0; i < rows.size(); i += step) {
            weighed.add(rows.get(i));
        }
        long bytes = weighed.isEmpty() ? 0 : SizeEstimator.estimate(weighed) / weighed.size() * rows.size();
        return new Chunk<>(rows, bytes);
    }

    @Override
    public long estimatedSize() {
        return bytes;
    }
}
