import java.io.DataInputStream;
import java.io.BufferedInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.spark.ml.linalg.Vectors;
import org.apache.spark.ml.linalg.VectorUDT;
import org.apache.spark.ml.regression.AFTSurvivalRegression;
import org.apache.spark.ml.regression.AFTSurvivalRegressionModel;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.Metadata;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/** Times Spark MLlib's regression of lives, right-censored only: intervals at their middle. Arguments: file, repetitions. */
public final class MllibPeer {
    public static void main(String[] arguments) throws Exception {
        Path file = Path.of(arguments[0]);
        int lives = (int) (Files.size(file) / 64);
        double[][] columns = new double[8][lives];
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 20))) {
            for (double[] column : columns) {
                for (int i = 0; i < lives; i++) {
                    column[i] = in.readDouble();
                }
            }
        }
        try (SparkSession session = SparkSession.builder().master("local[2]").config("spark.ui.enabled", "false").getOrCreate()) {
            session.sparkContext().setLogLevel("ERROR");
            List<Row> rows = new ArrayList<>();
            for (int i = 0; i < lives; i++) {
                boolean failed = columns[2][i] < Double.POSITIVE_INFINITY;
                double exit = failed ? (columns[1][i] + columns[2][i]) / 2 : columns[1][i];
                if (exit > 0) {
                    rows.add(RowFactory.create(exit, failed ? 1.0 : 0.0, Vectors.dense(
                            columns[3][i], columns[4][i], columns[5][i], columns[6][i], columns[7][i])));
                }
            }
            StructType schema = new StructType(new StructField[] {
                new StructField("label", DataTypes.DoubleType, false, Metadata.empty()),
                new StructField("censor", DataTypes.DoubleType, false, Metadata.empty()),
                new StructField("features", new VectorUDT(), false, Metadata.empty())});
            Dataset<Row> data = session.createDataFrame(rows, schema).repartition(2).cache();
            data.count();
            int repetitions = Integer.parseInt(arguments[1]);
            double[] seconds = new double[repetitions];
            AFTSurvivalRegressionModel model = null;
            for (int i = 0; i < repetitions; i++) {
                long start = System.nanoTime();
                model = new AFTSurvivalRegression().fit(data);
                seconds[i] = (System.nanoTime() - start) / 1e9;
            }
            double first = seconds[0];
            Arrays.sort(seconds);
            System.out.printf("Spark %s MLlib, right-censored at midpoints: median %.2f s, first call %.2f s, of %d; %s, constant %.4f, log shape %.6f%n",
                    session.version(), seconds[repetitions / 2], first, repetitions, model.coefficients(), model.intercept(), -Math.log(model.scale()));
        }
    }
}
