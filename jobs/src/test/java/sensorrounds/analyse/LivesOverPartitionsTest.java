package sensorrounds.analyse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.SparkTest;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.LifeSource;
import sensorrounds.regression.RegressionFit;
import sensorrounds.regression.RegressionStatus;

/** The fit over partitions is that of one machine, to 1e-10 of its own size, whatever the partitions. */
class LivesOverPartitionsTest {
    private static final List<String> NAMES = List.of("cold", "load", "axle");
    private static final int LIVES = 12_000;
    private static final List<LifeRow> ROWS = simulated(20261125, LIVES);

    /** Weibull lives, four to a vehicle, entered late, failures known between visits or exactly. */
    private static List<LifeRow> simulated(long seed, int lives) {
        Random random = new Random(seed);
        List<LifeRow> rows = new ArrayList<>();
        double load = 0;
        while (rows.size() < lives) {
            load = rows.size() % 4 == 0 ? random.nextGaussian() : load;
            double[] x = {random.nextInt(2), load, random.nextInt(3)};
            double logScale = 8 - 0.3 * x[0] + 0.1 * x[1] + 0.05 * x[2];
            double life = Math.exp(logScale) * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.2);
            double entry = random.nextInt(3) == 0 ? 0 : random.nextInt(2000);
            double gap = 200 + random.nextInt(300);
            if (life <= entry) {
                continue;
            }
            double lower = entry + gap * Math.floor((life - entry) / gap);
            boolean seen = life <= entry + 1500;
            boolean exact = seen && random.nextInt(10) == 0;
            double last = entry + 1500;
            rows.add(new LifeRow(
                    "V" + rows.size() / 4,
                    entry,
                    exact ? life : seen ? lower : last,
                    exact ? life : seen ? lower + gap : Double.POSITIVE_INFINITY,
                    1,
                    x));
        }
        return rows;
    }

    private static CovariateLives onOneMachine(List<LifeRow> rows) {
        CovariateLives lives = CovariateLives.of(
                        rows.stream().mapToDouble(LifeRow::entry).toArray(),
                        rows.stream().mapToDouble(LifeRow::lower).toArray(),
                        rows.stream().mapToDouble(LifeRow::upper).toArray(),
                        rows.stream().mapToDouble(LifeRow::weight).toArray())
                .withClusters(IntStream.range(0, rows.size()).map(i -> i / 4).toArray());
        for (int j = 0; j < NAMES.size(); j++) {
            int column = j;
            lives = lives.withColumn(
                    NAMES.get(j),
                    rows.stream().mapToDouble(r -> r.covariates()[column]).toArray());
        }
        return lives;
    }

    private static JavaRDD<LifeRow> shuffled(List<LifeRow> rows, int partitions) {
        List<LifeRow> copy = new ArrayList<>(rows);
        Collections.shuffle(copy, new Random(partitions));
        return JavaSparkContext.fromSparkContext(SparkTest.spark().sparkContext())
                .parallelize(copy, partitions);
    }

    private static void same(RegressionFit distributed, RegressionFit whole) {
        assertThat(whole.converged()).as(whole.cause()).isTrue();
        assertThat(distributed.converged()).as(distributed.cause()).isTrue();
        same("log L", distributed.logLikelihood(), whole.logLikelihood());
        same("exposure", distributed.exposure(), whole.exposure());
        for (int i = 0; i < whole.coefficients().size(); i++) {
            Coefficient ours = distributed.coefficients().get(i);
            Coefficient theirs = whole.coefficients().get(i);
            same(theirs.name(), ours.value(), theirs.value());
            same("error of " + theirs.name(), ours.error(), theirs.error());
        }
    }

    private static void same(String what, double actual, double expected) {
        assertThat(Math.abs(actual - expected))
                .as("%s: %s over partitions, %s on one machine", what, actual, expected)
                .isLessThanOrEqualTo(1e-10 * Math.abs(expected));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 50})
    void anyPartitioningGivesTheSameFit(int partitions) {
        LifeRegression regression = LifeRegression.of(LifeFamily.WEIBULL).withShapeOn("cold");

        RegressionFit distributed = regression.fit(LivesOverPartitions.of(shuffled(ROWS, partitions), NAMES));

        same(distributed, regression.fit(onOneMachine(ROWS)));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 7, 50})
    void errorsByVehicleHoldAlthoughItsLivesCameApart(int partitions) {
        LifeRegression regression = LifeRegression.of(LifeFamily.LOGLOGISTIC).with(LifeRegression.Errors.BY_CLUSTER);

        RegressionFit distributed =
                regression.fit(LivesOverPartitions.byVehicle(shuffled(ROWS, partitions), NAMES, partitions));

        same(distributed, regression.fit(onOneMachine(ROWS)));
    }

    /** Above a stated size the search begins among a part of the lives; where it ends is the same. */
    @Test
    void beginningFromAPartDoesNotShow() {
        List<LifeRow> many = simulated(5, 110_000);
        LifeSource distributed = LivesOverPartitions.of(shuffled(many, 7), NAMES);
        LifeRegression regression = LifeRegression.of(LifeFamily.WEIBULL);

        assertThat(distributed.part()).isPresent();
        same(regression.fit(distributed), regression.fit(onOneMachine(many)));
    }

    @Test
    void morePartitionsThanLivesAndRefusalsPassThrough() {
        List<LifeRow> sound = List.of(
                new LifeRow(null, 0, 900, Double.POSITIVE_INFINITY, 1, new double[0]),
                new LifeRow(null, 100, 700, Double.POSITIVE_INFINITY, 2, new double[0]));

        RegressionFit fit =
                LifeRegression.of(LifeFamily.WEIBULL).fit(LivesOverPartitions.of(shuffled(sound, 5), List.of()));

        assertThat(fit.status()).isEqualTo(RegressionStatus.NO_FAILURES);
        assertThat(fit.lives()).isEqualTo(3);
        assertThat(fit.exposure()).isCloseTo(900 + 1200, within(1e-9));
    }

    @Test
    void refusesWhatIsNoLifeAndLivesWithoutTheirVehicle() {
        assertThatThrownBy(() -> new LifeRow("V7", 5, 4, 9, 1, new double[0]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("vehicle V7: entry 5.0, lower 4.0");
        JavaRDD<LifeRow> nameless = shuffled(List.of(new LifeRow(null, 0, 4, 9, 1, new double[0])), 1);
        assertThatThrownBy(() -> LivesOverPartitions.byVehicle(nameless, List.of(), 1))
                .rootCause()
                .hasMessageContaining("a life without its vehicle");
        JavaRDD<LifeRow> narrow = shuffled(List.of(new LifeRow("V1", 0, 4, 9, 1, new double[] {1})), 1);
        assertThatThrownBy(() -> LivesOverPartitions.of(narrow, NAMES))
                .rootCause()
                .hasMessageContaining("has 1 covariates where each of [cold, load, axle] needs one");
    }
}
