package sensorrounds.analyse;

import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import sensorrounds.analyst.CovariateCode;
import sensorrounds.analyst.LevelCounts;
import sensorrounds.analyst.SampledVehicle;
import sensorrounds.analyst.WholeFleet;
import sensorrounds.regression.LifeSource;

/** All vehicles of a fleet over the cluster, for a fit to more of their lives than the driver should hold. */
final class VehiclesOverPartitions implements WholeFleet {
    private final JavaRDD<SampledVehicle> vehicles;
    private final List<LivesOverPartitions> held = new ArrayList<>();

    /** @param vehicles one row for each vehicle, with all its lives */
    VehiclesOverPartitions(JavaRDD<SampledVehicle> vehicles) {
        this.vehicles = vehicles;
    }

    @Override
    public LifeSource lives(CovariateCode code) {
        JavaRDD<LifeRow> rows = vehicles.flatMap(vehicle -> code.of(vehicle).stream()
                .map(life -> new LifeRow(
                        vehicle.vehicleId(),
                        life.life().entry(),
                        life.life().lower(),
                        life.upper(),
                        1,
                        life.covariates()))
                .iterator());
        LivesOverPartitions lives = LivesOverPartitions.ofWholeVehicles(rows, code.names());
        held.add(lives);
        return lives;
    }

    @Override
    public LevelCounts counts(CovariateCode code) {
        return vehicles.treeAggregate(new LevelCounts(code), LevelCounts::add, LevelCounts::merge);
    }

    /** Lets go of the memory the lives take. */
    void release() {
        held.forEach(LivesOverPartitions::release);
    }
}
