package sensorrounds.run;

import org.apache.spark.SparkConf;
import org.apache.spark.sql.SparkSession;

/** The one place where Spark is configured. */
public final class SparkSessions {
    private SparkSessions() {}

    /**
     * Opens the session. What spark-submit or the user has set stands; the rest is filled in.
     *
     * @param inputBytes size of the input, from which the number of shuffle partitions follows
     */
    public static SparkSession open(String name, long inputBytes) {
        return SparkSession.builder().config(conf(name, inputBytes)).getOrCreate();
    }

    /** Partitions that shuffles of this session are set to. */
    static int partitions(SparkSession spark) {
        return Integer.parseInt(spark.conf().get("spark.sql.shuffle.partitions"));
    }

    static SparkConf conf(String name, long inputBytes) {
        SparkConf conf = new SparkConf();
        conf.setIfMissing("spark.master", "local[*]");
        boolean local = conf.get("spark.master").startsWith("local");
        conf.setIfMissing("spark.app.name", name);
        // A batch run has nobody watching its web page, and starting it costs half a second.
        conf.setIfMissing("spark.ui.enabled", "false");
        conf.setIfMissing("spark.ui.showConsoleProgress", "false");
        if (local) {
            conf.setIfMissing("spark.driver.host", "localhost");
            conf.setIfMissing("spark.driver.bindAddress", "127.0.0.1");
            conf.setIfMissing("spark.hadoop.fs.file.impl", QuickLocalFileSystem.class.getName());
        }
        conf.setIfMissing(
                "spark.sql.shuffle.partitions",
                Integer.toString(
                        shufflePartitions(inputBytes, Runtime.getRuntime().availableProcessors())));
        // Tables hold calendar days and local wall-clock times; a session zone must never shift them.
        conf.set("spark.sql.session.timeZone", "UTC");
        conf.set("spark.sql.datetime.java8API.enabled", "true");
        conf.set("spark.sql.parquet.outputTimestampType", "TIMESTAMP_MICROS");
        conf.setIfMissing(
                "spark.sql.sources.commitProtocolClass",
                "org.apache.spark.sql.execution.datasources.SQLHadoopMapReduceCommitProtocol");
        return SparkSession.builder().config(conf).getOrCreate();
    }

    /** About 32 MB of input to a partition, two at least so that both halves of a merge are always exercised. */
    static int shufflePartitions(long inputBytes, int cores) {
        long bySize = inputBytes / (32L << 20) + 1;
        return (int) Math.min(4096, Math.max(Math.max(2, bySize > 1 ? cores : 2), bySize));
    }
}
