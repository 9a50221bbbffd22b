package sensorrounds.history;

/** What a visit's test drive says of the warning. */
enum Proof {
    /** Driven longer than the detection time, and the warning stayed off. */
    OFF,
    /** The warning came back on the drive. */
    RETURNED,
    /** No drive, too short a one, or nobody wrote down how it went: a warning may be off only because its time has not
     * come. */
    NONE;

    static Proof of(VisitSummary visit, HistorySettings settings) {
        if (Boolean.TRUE.equals(visit.warningReturned())) {
            return RETURNED;
        }
        boolean stayedOff = Boolean.FALSE.equals(visit.warningReturned());
        boolean longEnough = visit.driveMinutes() != null && visit.driveMinutes() >= settings.proofDriveMinutes();
        return stayedOff && longEnough ? OFF : NONE;
    }
}
