package sensorrounds.run;

import java.util.function.Supplier;
import org.apache.spark.SparkConf;
import org.apache.spark.sql.SparkSession;

/** The one place where Spark is configured. */
public final class SparkSessions {
    private SparkSessions() {}

    /** A session in use; closing it stops the session, unless somebody else had it open before. */
    public record Session(SparkSession spark, boolean ours) implements AutoCloseable {
        @Override
        public void close() {
            if (ours) {
                spark.stop();
            }
        }
    }

    /**
     * Opens a session, or joins the one that is open. What spark-submit or the user has set stands; the rest is filled
     * in.
     *
     * @param inputBytes size of the input, from which the number of shuffle partitions follows
     */
    public static Session open(String name, long inputBytes) {
        boolean joined = SparkSession.getDefaultSession().isDefined();
        return new Session(SparkSession.builder().config(conf(name, inputBytes)).getOrCreate(), !joined);
    }

    /** A session that is opened when it is first asked for; closing it stops the one it has opened. */
    static final class Later implements Supplier<SparkSession>, AutoCloseable {
        private final String name;
        private final long inputBytes;
        private Session session;

        /** As for {@link #open}. */
        Later(String name, long inputBytes) {
            this.name = name;
            this.inputBytes = inputBytes;
        }

        @Override
        public SparkSession get() {
            if (session == null) {
                session = open(name, inputBytes);
            }
            return session.spark();
        }

        @Override
        public void close() {
            if (session != null) {
                session.close();
            }
        }
    }

    /** Partitions that shuffles of this session are set to. */
    static int partitions(SparkSession spark) {
        return Integer.parseInt(spark.conf().get("spark.sql.shuffle.partitions"));
    }

    /** The configuration of a session, without one. */
    static SparkConf conf(String name, long inputBytes) {
        SparkConf conf = new SparkConf();
        conf.setIfMissing("spark.master", "local[*]");
        conf.setIfMissing("spark.app.name", name);
        // A batch run has nobody watching its web page, and starting it costs half a second.
        conf.setIfMissing("spark.ui.enabled", "false");
        conf.setIfMissing("spark.ui.showConsoleProgress", "false");
        if (conf.get("spark.master").startsWith("local")) {
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
        return conf;
    }

    /** About 32 MB of input to a partition, two at least so that both halves of a merge are always exercised. */
    static int shufflePartitions(long inputBytes, int cores) {
        long bySize = inputBytes / (32L << 20) + 1;
        return (int) Math.min(4096, Math.max(bySize > 1 ? cores : 2, bySize));
    }
}
