package sensorrounds.ingest;

import org.apache.spark.sql.SparkSession;

/** Writes a partitioned table with one open file per partition value and task. */
final class ConcurrentWriters {
    /** With fewer writers than values Spark would sort by them first and lose the order of the rows. */
    private static final String WRITERS = "spark.sql.maxConcurrentOutputFileWriters";

    private ConcurrentWriters() {}

    static void each(SparkSession spark, int values, Runnable write) {
        String before = spark.conf().get(WRITERS, "0");
        spark.conf().set(WRITERS, values);
        try {
            write.run();
        } finally {
            spark.conf().set(WRITERS, before);
        }
    }
}
