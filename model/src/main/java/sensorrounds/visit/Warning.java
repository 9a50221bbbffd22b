package sensorrounds.visit;

/**
 * What the vehicle's warning showed on arrival. Steady from the start means low pressure; flashing, then steady, means
 * a fault of the system itself (49 CFR 571.138 S4.2 and S4.4).
 */
public enum Warning {
    NONE,
    LOW_PRESSURE,
    SYSTEM_FAULT,
    MESSAGE
}
