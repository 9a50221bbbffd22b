package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.history.FollowUp;

/** Stored table of repairs that must be proven by a drive. */
public final class FollowUps {
    public static final Table<FollowUp> TABLE = new Table<>(
            "follow_ups",
            "Work on a system warning, whether the warning stayed off on a drive longer than the detection time, and whether it came back later; open ones first.",
            List.of(
                    word(
                            "state",
                            "OPEN, PROVEN (stayed off when put to the proof), RETURNED or LEFT (the fleet, unproven).",
                            FollowUp::state),
                    text("vehicle_id", "Vehicle.", FollowUp::vehicleId),
                    day("repaired_on", "Day of the work.", FollowUp::repairedOn),
                    word("repair", "What was done.", FollowUp::repair),
                    number(
                            "driven_minutes",
                            "Minutes driven in proof at that visit; 0 when none was written down.",
                            FollowUp::drivenMinutes),
                    number("required_minutes", "Minutes that would prove it.", FollowUp::requiredMinutes),
                    day(
                            "settled_on",
                            "Day it was proven, the warning was back or the vehicle left; null while open.",
                            FollowUp::settledOn),
                    day(
                            "back_on",
                            "First later day with a system warning after it had stayed off; else null.",
                            FollowUp::backOn),
                    text("standing", "Where the proof stands, in words.", FollowUp::standing),
                    text("visit_id", "Visit of the work.", FollowUp::visitId)));

    private FollowUps() {}
}
