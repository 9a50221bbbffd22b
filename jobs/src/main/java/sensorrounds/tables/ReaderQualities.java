package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.condition.ReaderQuality;

/** Stored table of readers. */
public final class ReaderQualities {
    public static final Table<ReaderQuality> TABLE = new Table<>(
            "reader_quality",
            "How easily each reader wakes sensors, so that a slow reader is not taken for dying sensors.",
            List.of(
                    text("reader_id", "Reader.", ReaderQuality::readerId),
                    count("reads", "Wheels it tried.", ReaderQuality::reads),
                    number("mean_attempts", "Mean number of tries per wheel.", ReaderQuality::meanAttempts),
                    number(
                            "chance",
                            "Chance that one try wakes a sound sensor, shrunk to all readers.",
                            ReaderQuality::chance),
                    number("chance_lower", "Lower 95 % limit.", ReaderQuality::chanceLower),
                    number("chance_upper", "Upper 95 % limit.", ReaderQuality::chanceUpper),
                    flag(
                            "slow",
                            "True when the upper limit lies under the chance over all readers.",
                            ReaderQuality::slow)));

    private ReaderQualities() {}
}
