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
        boolean longEnough = visit.driveMinutes() != null && minutes(visit, settings) >= settings.proofDriveMinutes();
        return stayedOff && longEnough ? OFF : NONE;
    }

    /** Minutes driven that count, 0 when none were written down: no more than its distance makes at a driving speed. */
    static double minutes(VisitSummary visit, HistorySettings settings) {
        if (visit.driveMinutes() == null) {
            return 0;
        }
        return visit.driveKm() == null || settings.drivingKmh() == 0
                ? visit.driveMinutes()
                : Math.min(visit.driveMinutes(), 60 * visit.driveKm() / settings.drivingKmh());
    }

    /**
     * Whether a warning off on arrival proves nothing, since by the odometer the vehicle has hardly been driven from the earlier
     * visit to the later one. A reading under the earlier one is a slip and says nothing.
     */
    static boolean hardlyDriven(VisitSummary earlier, VisitSummary later, HistorySettings settings) {
        if (earlier.odometerKm() == null || later.odometerKm() == null) {
            return false;
        }
        double km = later.odometerKm() - earlier.odometerKm();
        return km >= 0 && km < settings.proofDriveKm();
    }
}
