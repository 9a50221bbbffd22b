package sensorrounds.analyse;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.SparkTest;
import sensorrounds.analyst.FittingSeason;
import sensorrounds.analyst.SampledVehicle;
import sensorrounds.analyst.SampledVehicle.SampledLife;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.analyst.VehicleSample;
import sensorrounds.analyst.WheelPlace;
import sensorrounds.analyst.WholeFleet;
import sensorrounds.season.Climates;
import sensorrounds.season.MonthTemperatures;
import sensorrounds.season.SeasonSettings;
import sensorrounds.survival.Lifetime;

/** Who lives longer, of a fleet larger than its draw: the same figures on one machine and over any partitions, to the last digit. */
class VehiclesOverPartitionsTest {
    private static final List<SampledVehicle> FLEET = fleet(20261125, 500);
    private static VehicleFits drawn;
    private static VehicleFits onOneMachine;

    private static List<SampledVehicle> fleet(long seed, int vehicles) {
        Random random = new Random(seed);
        List<SampledVehicle> fleet = new ArrayList<>();
        for (int v = 0; v < vehicles; v++) {
            boolean truck = random.nextInt(3) == 0;
            List<SampledLife> lives = new ArrayList<>();
            while (lives.size() < 4) {
                double life = (truck ? 1800 : 2600) * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
                int entry = random.nextInt(3) == 0 ? 0 : random.nextInt(1500);
                if (life > entry) {
                    int last = entry;
                    int next = entry + 50 + random.nextInt(250);
                    while (next < life && next < entry + 1200) {
                        last = next;
                        next += 50 + random.nextInt(250);
                    }
                    lives.add(new SampledLife(
                            next < entry + 1200 ? Lifetime.interval(entry, last, next) : Lifetime.censored(entry, last),
                            "P-" + random.nextInt(2),
                            lives.size() < 2 ? WheelPlace.FRONT_AXLE : WheelPlace.OTHER_AXLE,
                            LocalDate.of(2015, 1, 1),
                            FittingSeason.values()[random.nextInt(2)]));
                }
            }
            fleet.add(new SampledVehicle(
                    "V" + v, truck ? "truck" : "van", "depot " + random.nextInt(3), 8_000.0 + v * 31, lives));
        }
        return fleet;
    }

    @BeforeAll
    static void fit() {
        VehicleSample sample = new VehicleSample(600);
        FLEET.forEach(sample::add);
        drawn = VehicleFits.of(sample, Climates.of(new MonthTemperatures(), SeasonSettings.defaults()));
        onOneMachine = drawn.over(WholeFleet.of(FLEET::stream));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 11})
    void anyPartitioningGivesTheSameFigures(int partitions) {
        VehiclesOverPartitions fleet = new VehiclesOverPartitions(
                JavaSparkContext.fromSparkContext(SparkTest.spark().sparkContext())
                        .parallelize(FLEET, partitions));

        VehicleFits distributed = drawn.over(fleet);
        fleet.release();

        assertThat(distributed.effects().effects())
                .isEqualTo(onOneMachine.effects().effects())
                .isNotEqualTo(drawn.effects().effects());
        assertThat(distributed.effects().lives()).isEqualTo(2000);
        assertThat(distributed.effects().drawn()).isLessThanOrEqualTo(600);
        assertThat(distributed.reports().get("weibull regression on covariates").lives())
                .isEqualTo(2000);
    }
}
