package sensorrounds.history;

/** How a sensor's life ended, as far as the logs tell. Only FAILED is a failure; the others censor. */
public enum LifeEnd {
    IN_SERVICE,
    FAILED,
    /** Replaced while it still answered. Crews replace what looks weak, so this censoring is informative. */
    PREVENTIVE,
    /** Replaced because of a slip of the process: wrong type, not learned. The sensor was sound. */
    PROCESS,
    /** Lost, or gone with the customer's wheels. */
    LOST,
    LEFT_FLEET,
    /** Answers on another vehicle since. Its life goes on there. */
    MOVED,
    /** Sensors fall silent at this place one after the other: receiver, wiring or blind spot, not the sensor. */
    PLACE_SUSPECTED
}
