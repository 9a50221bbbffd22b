package sensorrounds.fleet;

/** How the vehicle watches its tyres. An indirect system has no wheel sensors: silence there is not death. */
public enum MonitoringSystem {
    DIRECT,
    INDIRECT,
    HYBRID,
    UNKNOWN
}
