package sensorrounds.assemble;

import java.util.Objects;
import sensorrounds.history.Finding;
import sensorrounds.plausibility.Doubt;

/** Puts doubts about single entries among the findings about a vehicle, which people read as one list. */
public final class DoubtFindings {
    private DoubtFindings() {}

    /** The doubt as a finding. */
    public static Finding of(Doubt doubt) {
        return new Finding(
                kind(doubt.kind()),
                doubt.vehicleId(),
                doubt.sensorId(),
                doubt.position(),
                doubt.wheelSet(),
                doubt.day(),
                doubt.what(),
                "used as written",
                doubt.kind().remedy(),
                doubt.sources());
    }

    /** True when the other finding says the same, and what was made of it besides. */
    static boolean saysTheSame(Finding doubt, Finding other) {
        return doubt.kind() == other.kind()
                && doubt.day().equals(other.day())
                && Objects.equals(doubt.sensorId(), other.sensorId());
    }

    private static Finding.Kind kind(Doubt.Kind kind) {
        return switch (kind) {
            case SENSOR_AT_TWO_PLACES -> Finding.Kind.TWO_PLACES_AT_ONCE;
            case ODOMETER_BACK -> Finding.Kind.ODOMETER_BACK;
            case SENSOR_ID_NEAR -> Finding.Kind.MISTYPED_ID;
            case SENSOR_AT_TWO_VEHICLES, VIN_AT_TWO_VEHICLES -> Finding.Kind.TWO_VEHICLES_AT_ONCE;
            case PRESSURE_UNIT,
                    PRESSURE_ABSOLUTE,
                    PRESSURE_UNLIKELY,
                    PLACARD_UNLIKELY,
                    TEMPERATURE_UNLIKELY,
                    ODOMETER_JUMP -> Finding.Kind.UNLIKELY_VALUE;
            case VISIT_TWICE -> Finding.Kind.VISIT_TWICE;
            case DATE_AFTER_VISIT, VISIT_FIELDS_DIFFER, READ_CONTRADICTED, WORK_CONTRADICTED ->
                Finding.Kind.CONTRADICTORY_ENTRY;
            case PLATE_CHANGED, VIN_CHANGED -> Finding.Kind.IDENTITY_CHANGED;
        };
    }
}
