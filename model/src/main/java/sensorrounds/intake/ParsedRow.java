package sensorrounds.intake;

import sensorrounds.visit.LoggedWheel;

/** What became of one row of a log: it was understood, or it goes into quarantine. */
public sealed interface ParsedRow permits ParsedRow.Accepted, Rejection {
    /** A row that was understood. */
    record Accepted(LoggedWheel row) implements ParsedRow {}
}
