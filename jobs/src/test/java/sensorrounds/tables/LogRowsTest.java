package sensorrounds.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;

class LogRowsTest {
    @Test
    void rowsComeBackExactlyIncludingWhatIsUnknown() {
        for (LogRow row : SampleLogRows.all()) {
            assertThat(LogRows.decode(LogRows.TABLE.encode(row))).isEqualTo(row);
        }
    }

    @Test
    void rowsComeBackExactlyFromParquet(@TempDir Path folder) {
        SparkSession spark = SparkTest.spark();
        String table = folder.resolve("t").toString();
        LogRows.TABLE
                .frame(
                        spark,
                        JavaSparkContext.fromSparkContext(spark.sparkContext()).parallelize(SampleLogRows.all(), 2))
                .write()
                .partitionBy(LogRows.OUTCOME)
                .parquet(table);

        assertThat(sensorrounds.ingest.LogTable.read(spark, table)
                        .javaRDD()
                        .map(LogRows::decode)
                        .collect())
                .containsExactlyInAnyOrderElementsOf(SampleLogRows.all());
        assertThat(sensorrounds.ingest.LogTable.accepted(spark, table).collect())
                .containsExactlyInAnyOrderElementsOf(SampleLogRows.all().stream()
                        .map(LogRow::accepted)
                        .filter(r -> r != null)
                        .toList());
    }
}
