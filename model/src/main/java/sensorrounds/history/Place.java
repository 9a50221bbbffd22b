package sensorrounds.history;

import sensorrounds.visit.WheelPosition;

/**
 * A place for a sensor: a position within one wheel set. The other set's sensors lie in store, so that their silence is
 * no sign of anything.
 *
 * @param wheelSet null for a vehicle with one set
 */
record Place(String wheelSet, WheelPosition position) {
    String words() {
        return wheelSet == null ? position.words() : position.words() + " of wheel set " + wheelSet;
    }
}
