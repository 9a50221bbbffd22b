package sensorrounds.keep;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.storage.StorageLevel;

/** Keeps the objects of an RDD for several passes. */
public final class Kept {
    /**
     * Spark weighs what it keeps by walking the objects it has kept so far, again and again as they grow, and takes a
     * sample only of arrays longer than 400. Kept one by one, histories of a large fleet spend a fifth of the run being
     * weighed; kept in lists of this length they are sampled.
     */
    private static final int CHUNK = 1024;

    private Kept() {}

    /** The same rows in the same order, kept in memory and on disk where memory is short. */
    public static <T> JavaRDD<T> of(JavaRDD<T> rows) {
        return rows.<List<T>>mapPartitions(Chunks::new)
                .persist(StorageLevel.MEMORY_AND_DISK())
                .flatMap(List::iterator);
    }

    private record Chunks<T>(Iterator<T> rows) implements Iterator<List<T>> {
        @Override
        public boolean hasNext() {
            return rows.hasNext();
        }

        @Override
        public List<T> next() {
            List<T> chunk = new ArrayList<>(CHUNK);
            while (chunk.size() < CHUNK && rows.hasNext()) {
                chunk.add(rows.next());
            }
            return chunk;
        }
    }
}
