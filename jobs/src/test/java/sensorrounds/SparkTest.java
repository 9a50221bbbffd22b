package sensorrounds;

import org.apache.spark.sql.SparkSession;

/** The one local session of the test JVM, started by the first test that asks and ended with the JVM. */
public final class SparkTest {
    private SparkTest() {}

    public static SparkSession spark() {
        return Holder.SESSION;
    }

    private static final class Holder {
        static final SparkSession SESSION = SparkSession.builder()
                .master("local[2]")
                .appName("tests")
                .config("spark.ui.enabled", false)
                .config("spark.sql.shuffle.partitions", 2)
                .config("spark.sql.session.timeZone", "UTC")
                .config("spark.sql.datetime.java8API.enabled", true)
                .config("spark.log.level", "ERROR")
                .getOrCreate();
    }
}
