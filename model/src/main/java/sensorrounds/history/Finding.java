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
 * @param settle what would settle it at the next stop, or put it right
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
        String settle,
        List<Source> sources)
        implements Serializable {
    /** Kind of contradiction. */
    public enum Kind {
        /** The wheel answers with an ID that nobody recorded as fitted. */
        UNRECORDED_CHANGE("read the ID at that place at the next stop, and write down the fitting or the wheel set"),
        /** The same ID at two places of one visit. */
        TWO_PLACES_AT_ONCE("read both wheels again, one by one, the reader cleared in between"),
        /** A sensor taken as failed answers again. */
        ALIVE_AGAIN(
                "read its ID again at the next stop, off the sensor itself if the tyre comes off: at once and the same ID, it is sound; another ID was swapped or copied; silent or slow again, it is failing"),
        /** Replaced, and the new sensor carries the old ID; recorded, or shown by signs. */
        CLONED_ID("nothing, if the old ID was programmed on purpose; if not, read the ID at that place again"),
        /** Sensor moved to another wheel or another vehicle. */
        MOVED("nothing, if the wheels were changed round; if not, read the IDs at both places again"),
        /** Young sensors fall silent one after the other at one place, and none has been heard there for long since. */
        PLACE_KEEPS_FAILING(
                "put a wheel with a sensor known to answer at that place and drive: a warning for it again speaks against the place"),
        /** Silent wheels on a vehicle whose system has no wheel sensors. */
        NO_WHEEL_SENSORS(
                "look whether the wheels have sensors, and correct the vehicle's system in the fleet register if they have"),
        /** The vehicle is not in the fleet register. */
        UNREGISTERED_VEHICLE("add the vehicle to the fleet register, or correct its key in the log"),
        /** A visit before the vehicle's first use or after it left. */
        IMPOSSIBLE_ORDER(
                "hold the day of the visit against first use and leaving in the fleet register, and correct the wrong one"),
        /** Odometer lower than before. */
        ODOMETER_BACK("read the odometer again; a new instrument starts anew"),
        /** A visit at which every wheel was silent: the reader rather than the sensors. */
        READER_HEARD_NOTHING("charge the reader or take another one, and read the wheels again"),
        /** A pressure, temperature or distance that can hardly be right. */
        UNLIKELY_VALUE("measure again, and check the unit that the reader is set to"),
        /** An ID one slip away from the one seen there at other visits. */
        MISTYPED_ID("read the sensor again, and correct the ID where it was copied by hand"),
        /** The same ID, or the same VIN, on two vehicles over the same time. */
        TWO_VEHICLES_AT_ONCE("read the ID, or the VIN, on both vehicles again, and correct the log that has it wrong"),
        /** One visit under two keys. */
        VISIT_TWICE("keep one of the two, or write the second under the key of the first"),
        /** Entries of one visit that cannot all be right. */
        CONTRADICTORY_ENTRY("ask who was at the visit, and correct the rows"),
        /** A number plate or VIN that changes under one vehicle key. */
        IDENTITY_CHANGED("nothing, if the plate was really changed; if not, give each vehicle a key of its own"),
        /** A trailer's wheel under its tractor, a tractor's under its trailer, or a neighbour's wheel that answered. */
        WHEEL_OF_ANOTHER_VEHICLE(
                "write tractor and trailer down as two visits, correct the axles in the fleet register, or read away from other vehicles");

        private final String settle;

        Kind(String settle) {
            this.settle = settle;
        }

        /** What would settle such a contradiction, or put it right. */
        public String settle() {
            return settle;
        }
    }

    public Finding {
        sources = List.copyOf(sources);
    }

    /** A finding settled as its kind is. */
    public Finding(
            Kind kind,
            String vehicleId,
            String sensorId,
            WheelPosition position,
            String wheelSet,
            LocalDate day,
            String what,
            String done,
            List<Source> sources) {
        this(kind, vehicleId, sensorId, position, wheelSet, day, what, done, kind.settle(), sources);
    }
}
