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
            "How easily each reader, and each technician who can be told apart from the readers, wakes sensors, so that a "
                    + "slow hand is not taken for dying sensors.",
            List.of(
                    text(
                            "of",
                            "READER, PAIR (a reader and the technician who alone uses it, who cannot be told apart) or "
                                    + "TECHNICIAN (told apart by colleagues who use the same readers).",
                            q -> q.of().name()),
                    text("reader_id", "Reader; empty for a technician.", ReaderQuality::readerId),
                    text("technician_id", "Technician; empty for a reader alone.", ReaderQuality::technicianId),
                    count("reads", "Wheels it tried.", ReaderQuality::reads),
                    number("mean_attempts", "Mean number of tries per wheel.", ReaderQuality::meanAttempts),
                    number(
                            "chance",
                            "Chance that one try wakes a sound sensor, shrunk to all readers; of a technician with an average "
                                    + "reader, shrunk to all technicians.",
                            ReaderQuality::chance),
                    number("chance_lower", "Lower 95 % limit.", ReaderQuality::chanceLower),
                    number("chance_upper", "Upper 95 % limit.", ReaderQuality::chanceUpper),
                    flag(
                            "slow",
                            "True when the reads suffice and the upper limit lies under the chance over all readers; for a "
                                    + "technician also slower than colleagues with the same readers.",
                            ReaderQuality::slow)));

    private ReaderQualities() {}
}
