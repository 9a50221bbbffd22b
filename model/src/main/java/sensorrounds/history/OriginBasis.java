package sensorrounds.history;

/** On what a sensor's age rests. */
public enum OriginBasis {
    /** Its fitting is in the logs. */
    RECORDED_FITTING,
    /** Taken as fitted when the vehicle was new. */
    VEHICLE_FIRST_USE,
    /**
     * Taken as fitted when the vehicle was new, though the vehicle was first seen late: the wheel's tyre was made shortly
     * before the first use, so its bead was hardly ever broken, and no sensor is changed without breaking it.
     */
    TYRE_DATE,
    /** Known from the vehicle the sensor was on before; it is watched here from its first answer on. */
    EARLIER_VEHICLE,
    /** Nothing to go by: no age, and so no place in the survival sample. */
    UNKNOWN;

    /** The vehicle's own first sensor, and so of the part its register line names. */
    public boolean isOriginal() {
        return this == VEHICLE_FIRST_USE || this == TYRE_DATE;
    }
}
