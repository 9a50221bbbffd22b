package sensorrounds.run;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.SparkSession;
import sensorrounds.assemble.Histories;
import sensorrounds.assemble.Moves;
import sensorrounds.assemble.Register;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.MovedSensors;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VehicleMoves;
import sensorrounds.ingest.LogTable;
import sensorrounds.ingest.SharedIdentities;
import sensorrounds.keep.Kept;
import sensorrounds.plausibility.Doubt;
import sensorrounds.tables.LogRow;

/**
 * The histories of all vehicles as the stored log rows tell them.
 *
 * @param all one for each vehicle, kept
 * @param acrossVehicles what is to be doubted and no single vehicle shows
 */
record FleetHistories(JavaRDD<VehicleHistory> all, List<Doubt> acrossVehicles) {
    /** @param rows folder of the table of log rows */
    static FleetHistories of(SparkSession spark, String rows, RunInputs inputs, LocalDate asOf) {
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        Broadcast<Map<String, Vehicle>> register = context.broadcast(Register.of(inputs.fleet()));
        HistorySettings settings = inputs.settings().review().history();
        context.setJobDescription("Find sensors on more than one vehicle");
        SharedIdentities.Shared shared =
                SharedIdentities.find(LogTable.read(spark, rows, LogRow.Outcome.ACCEPTED), inputs.fleet(), asOf);
        MovedSensors moved = MovedSensors.of(shared.heard());
        Map<String, VehicleMoves> moves =
                Moves.of(moved, LogTable.byVehicle(spark, rows, moved.sources()), register, settings, asOf);
        return new FleetHistories(
                Kept.of(Histories.of(
                        LogTable.byVehicle(spark, rows), register, context.broadcast(moves), settings, asOf)),
                shared.doubts(moved));
    }
}
