package sensorrounds.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import sensorrounds.fleet.Vehicle;

/** The fleet register as a run used it, so that its results can be read beside it and a vehicle without visits is known. */
final class RegisterSheet {
    /** Name of the file without its ending. */
    static final String NAME = "fleet-register";

    private static final StructType COLUMNS = new StructType()
            .add("vehicle_id", DataTypes.StringType)
            .add("vehicle_class", DataTypes.StringType)
            .add("model_group", DataTypes.StringType)
            .add("first_used", DataTypes.DateType)
            .add("depot", DataTypes.StringType)
            .add("driving_side", DataTypes.StringType)
            .add("system", DataTypes.StringType)
            .add("axles", DataTypes.StringType)
            .add("original_part", DataTypes.StringType)
            .add("annual_km", DataTypes.DoubleType)
            .add("next_planned_visit", DataTypes.DateType)
            .add("left_fleet", DataTypes.DateType);

    private RegisterSheet() {}

    /** @param vehicles in the order to write */
    static void write(Collection<Vehicle> vehicles, RunStore store, Path folder) {
        try {
            CsvSheet.write(
                    COLUMNS,
                    vehicles.stream().map(RegisterSheet::row).iterator(),
                    store.create(new Path(folder, "csv/" + NAME + ".csv")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Row row(Vehicle v) {
        return RowFactory.create(
                v.vehicleId(),
                v.vehicleClass(),
                v.modelGroup(),
                v.firstUsed(),
                v.depot(),
                v.drivingSide(),
                v.system().name(),
                v.axles() == null ? null : v.axles().code(),
                v.originalPart(),
                v.annualKm(),
                v.nextPlannedVisit(),
                v.leftFleet());
    }
}
