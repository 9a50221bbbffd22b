package sensorrounds.history;

/** On what a sensor's age rests. */
public enum OriginBasis {
    /** Its fitting is in the logs. */
    RECORDED_FITTING,
    /** Taken as fitted when the vehicle was new. */
    VEHICLE_FIRST_USE,
    /** Nothing to go by: no age, and so no place in the survival sample. */
    UNKNOWN
}
