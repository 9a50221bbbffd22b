package sensorrounds.history;

import java.time.LocalDate;

/**
 * What became of a sensor, judged from its whole draft.
 *
 * @param cause null unless FAILED
 * @param lastGood last day it was known good; null when it never was under observation
 * @param failedBy first day known failed; null unless FAILED
 * @param endedOn day it left the vehicle; null while on it
 */
record Verdict(LifeEnd end, FailureCause cause, LocalDate lastGood, LocalDate failedBy, LocalDate endedOn) {
    boolean failed() {
        return end == LifeEnd.FAILED;
    }

    /** Failed without anybody having seen why: known by its silence, or by a battery taken for exhausted. */
    boolean fellSilent() {
        return failed() && (cause == FailureCause.UNKNOWN || cause == FailureCause.BATTERY);
    }

    /** The same sensor with the place blamed: it was good at its last answer, and that is all that is known. */
    Verdict placeBlamed() {
        return new Verdict(LifeEnd.PLACE_SUSPECTED, null, lastGood, null, endedOn);
    }

    /**
     * @param leftOn day the vehicle left the fleet; null while it is there
     */
    static Verdict of(LifeDraft life, HistorySettings settings, LocalDate leftOn) {
        LifeDraft.Ending ending = life.ending();
        if (ending != null) {
            return new Verdict(ending.end(), ending.cause(), ending.lastGood(), ending.failedBy(), life.endedOn());
        }
        LocalDate endedOn = life.endedOn() == null ? leftOn : life.endedOn();
        if (life.silentDays() >= settings.silentVisitsForFailure()) {
            return new Verdict(LifeEnd.FAILED, FailureCause.UNKNOWN, life.lastAnswered(), life.silentBy(), endedOn);
        }
        LifeEnd end = life.isLaidAside() ? LifeEnd.LOST : leftOn == null ? LifeEnd.IN_SERVICE : LifeEnd.LEFT_FLEET;
        return new Verdict(end, null, life.lastAnswered(), null, endedOn);
    }
}
