package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.history.WarningEpisode;

/** Stored table of warning episodes. */
public final class WarningEpisodes {
    public static final Table<WarningEpisode> TABLE = new Table<>(
            "warning_episodes",
            "Warnings from when they were first seen until they were proven off; a lamp seen at two visits is one episode.",
            List.of(
                    text("vehicle_id", "Vehicle.", WarningEpisode::vehicleId),
                    word("warning", "Kind of warning.", WarningEpisode::kind),
                    day(
                            "first_seen",
                            "First visit with it, or the day since when the driver saw it.",
                            WarningEpisode::firstSeen),
                    day("last_seen", "Last visit with it.", WarningEpisode::lastSeen),
                    day("proven_off", "Day it was proven off; null while open.", WarningEpisode::provenOff),
                    whole(
                            "visits",
                            "Visits at which it was seen.",
                            e -> e.visitIds().size()),
                    whole(
                            "returns_after_repair",
                            "Times it was there again after work meant to end it.",
                            WarningEpisode::returnsAfterRepair),
                    flag(
                            "every_sensor_answered",
                            "True when at each of its visits every sensor was tried and answered.",
                            WarningEpisode::everySensorAnswered),
                    flag("lasting_cause", "True when a cause was found and put right.", WarningEpisode::lastingCause),
                    flag(
                            "explained_by_cold",
                            "True for a low-pressure warning that the cold explains.",
                            WarningEpisode::explainedByCold),
                    text("visit_ids", "Its visits, separated by blanks.", e -> String.join(" ", e.visitIds()))));

    private WarningEpisodes() {}
}
