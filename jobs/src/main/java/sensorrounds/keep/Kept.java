package sensorrounds.keep;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.storage.StorageLevel;

/** Keeps the objects of an RDD for several passes, in memory and on disk where memory is short. */
public final class Kept {
    /** Rows that are kept as one, so that Spark has few things to weigh: {@link Chunk}. */
    private static final int CHUNK = 1024;

    private Kept() {}

    /** The same rows in the same order. */
    public static <T> JavaRDD<T> of(JavaRDD<T> rows) {
        return kept(rows).flatMap(chunk -> chunk.rows().iterator());
    }

    /** Lets something be done with the same rows in the same order, and then lets go of them. */
    public static <T> void during(JavaRDD<T> rows, Consumer<JavaRDD<T>> use) {
        JavaRDD<Chunk<T>> kept = kept(rows);
        try {
            use.accept(kept.flatMap(chunk -> chunk.rows().iterator()));
        } finally {
            kept.unpersist(false);
        }
    }

    private static <T> JavaRDD<Chunk<T>> kept(JavaRDD<T> rows) {
        return rows.<Chunk<T>>mapPartitions(Chunks::new).persist(StorageLevel.MEMORY_AND_DISK());
    }

    private record Chunks<T>(Iterator<T> rows) implements Iterator<Chunk<T>> {
        @Override
        public boolean hasNext() {
            return rows.hasNext();
        }

        @Override
        public Chunk<T> next() {
            List<T> chunk = new ArrayList<>(CHUNK);
            while (chunk.size() < CHUNK && rows.hasNext()) {
                chunk.add(rows.next());
            }
            return Chunk.of(chunk);
        }
    }
}
