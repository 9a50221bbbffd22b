package sensorrounds.simulate;

import java.util.List;

/**
 * A visit as it is put into a file.
 *
 * @param cutOff true when the line breaks off in the middle
 * @param mishaps what went wrong, for the truth folder
 */
record LogEntry(SimulatedVisit visit, Slips slips, boolean cutOff, List<Mishap> mishaps) {
    /** What intake should make of the rows of a mishap. */
    enum Expected {
        ACCEPTED,
        QUARANTINED,
        DUPLICATE,
        /** Replaced by a later form of the same visit. */
        SUPERSEDED
    }

    /**
     * Something that went wrong.
     *
     * @param wheel number of the wheel in the visit, or -1 for the whole visit
     * @param rows rows it touches
     */
    record Mishap(String kind, int wheel, int rows, Expected expected) {}

    LogEntry {
        mishaps = List.copyOf(mishaps);
    }

    static LogEntry clean(SimulatedVisit visit) {
        return new LogEntry(visit, Slips.NONE, false, List.of());
    }

    int rows() {
        return cutOff ? 1 : visit.rows();
    }
}
