package sensorrounds.visit;

/** How the sensor positions were taught to the vehicle. */
public enum RelearnKind {
    NONE,
    STATIONARY,
    DRIVE,
    DIAGNOSTIC_PORT
}
