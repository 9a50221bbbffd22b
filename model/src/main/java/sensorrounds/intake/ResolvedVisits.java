package sensorrounds.intake;

import java.util.List;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Visit;

/**
 * The visits of one vehicle after duplicates and revisions are settled. Every row that went in is in exactly one of
 * accepted, duplicates and rejections.
 *
 * @param visits ordered by time, then visit key
 * @param accepted the rows of the visits, in the same order
 * @param duplicates ordered by source
 * @param rejections rows that contradict one another, ordered by source
 */
public record ResolvedVisits(
        List<Visit> visits, List<LoggedWheel> accepted, List<Duplicate> duplicates, List<Rejection> rejections) {
    public ResolvedVisits {
        visits = List.copyOf(visits);
        accepted = List.copyOf(accepted);
        duplicates = List.copyOf(duplicates);
        rejections = List.copyOf(rejections);
    }
}
