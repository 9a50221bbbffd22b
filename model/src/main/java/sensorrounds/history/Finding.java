package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * A contradiction in the logs, and what was done about it. Nothing is put right in silence.
 *
 * @param sensorId null when it concerns the vehicle
 * @param position null when it concerns no one place
 * @param wheelSet wheel set of that place; null with one set, or when it concerns no one place
 * @param what what was found, in a sentence
 * @param done what the engine made of it, in a sentence
 * @param sources rows that show it
 */
public record Finding(
        Kind kind,
        String vehicleId,
        String sensorId,
        WheelPosition position,
        String wheelSet,
        LocalDate day,
        String what,
        String done,
        List<Source> sources)
        implements Serializable {
    /** Kind of contradiction. */
    public enum Kind {
        /** The wheel answers with an ID that nobody recorded as fitted. */
        UNRECORDED_CHANGE,
        /** The same ID at two places of one visit. */
        TWO_PLACES_AT_ONCE,
        /** A sensor taken as failed answers again. */
        ALIVE_AGAIN,
        /** Replaced, and the new sensor carries the old ID; recorded, or shown by signs. */
        CLONED_ID,
        /** Sensor moved to another wheel or another vehicle. */
        MOVED,
        /** Young sensors fall silent one after the other at one place, and none has been heard there for long since. */
        PLACE_KEEPS_FAILING,
        /** Silent wheels on a vehicle whose system has no wheel sensors. */
        NO_WHEEL_SENSORS,
        /** The vehicle is not in the fleet register. */
        UNREGISTERED_VEHICLE,
        /** A visit before the vehicle's first use or after it left. */
        IMPOSSIBLE_ORDER,
        /** Odometer lower than before. */
        ODOMETER_BACK,
        /** A visit at which every wheel was silent: the reader rather than the sensors. */
        READER_HEARD_NOTHING,
        /** A pressure, temperature or distance that can hardly be right. */
        UNLIKELY_VALUE,
        /** An ID one slip away from the one seen there at other visits. */
        MISTYPED_ID,
        /** The same ID, or the same VIN, on two vehicles over the same time. */
        TWO_VEHICLES_AT_ONCE,
        /** One visit under two keys. */
        VISIT_TWICE,
        /** Entries of one visit that cannot all be right. */
        CONTRADICTORY_ENTRY,
        /** A number plate or VIN that changes under one vehicle key. */
        IDENTITY_CHANGED,
        /** A trailer's wheel under its tractor, a tractor's under its trailer, or a neighbour's wheel that answered. */
        WHEEL_OF_ANOTHER_VEHICLE
    }

    public Finding {
        sources = List.copyOf(sources);
    }
}
