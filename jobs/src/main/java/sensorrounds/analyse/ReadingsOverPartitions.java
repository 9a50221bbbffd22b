package sensorrounds.analyse;

import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.storage.StorageLevel;
import sensorrounds.condition.HiddenModel;
import sensorrounds.condition.HiddenPass;
import sensorrounds.condition.HiddenPoint;
import sensorrounds.condition.HiddenReadings;
import sensorrounds.condition.HiddenSum;
import sensorrounds.history.VehicleHistory;
import sensorrounds.review.Conditions;

/**
 * Readings of sensors held over the cluster for the fit of their hidden condition: a list for each partition, walked once
 * per step of the search. Only sums come to the driver, and once the readings of a sample of bounded size. The sums are
 * exact, so that the partitioning does not show in any figure.
 */
final class ReadingsOverPartitions implements Conditions.Fleet {
    private final JavaSparkContext spark;
    private final JavaRDD<VehicleHistory> histories;
    private final Broadcast<Conditions> conditions;
    private final JavaRDD<List<HiddenReadings>> held;
    /** Of the sample, once asked for. */
    private List<HiddenReadings> part;

    ReadingsOverPartitions(JavaSparkContext spark, JavaRDD<VehicleHistory> histories, Conditions conditions) {
        this.spark = spark;
        this.histories = histories;
        this.conditions = spark.broadcast(conditions);
        Broadcast<Conditions> shared = this.conditions;
        this.held = histories
                .<List<HiddenReadings>>mapPartitions(vehicles -> {
                    List<HiddenReadings> all = new ArrayList<>();
                    vehicles.forEachRemaining(h -> all.addAll(shared.value().readings(h)));
                    return List.of(all).iterator();
                })
                .persist(StorageLevel.MEMORY_AND_DISK());
    }

    @Override
    public HiddenPass sample(HiddenModel model) {
        if (part == null) {
            Broadcast<Conditions> shared = conditions;
            part = histories
                    .filter(h -> shared.value().inSample(h))
                    .flatMap(h -> shared.value().readings(h).iterator())
                    .collect();
        }
        return HiddenPass.over(part, model);
    }

    @Override
    public HiddenPass all(HiddenModel model) {
        return (at, detail) -> {
            Broadcast<HiddenPoint> point = spark.broadcast(new HiddenPoint(at, model));
            HiddenSum sum =
                    held.map(list -> HiddenSum.of(list, point.value(), detail)).treeReduce(HiddenSum::merge);
            point.destroy();
            return sum;
        };
    }

    /** Lets go of the memory the readings take. */
    void release() {
        held.unpersist(false);
    }
}
