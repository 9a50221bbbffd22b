package sensorrounds.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sensorrounds.review.CauseIncidence;
import sensorrounds.review.EndCause;

/**
 * Share of a cohort's sensors ended by one cause, by age. It knows where it ends and gives nothing beyond.
 *
 * @param rows by age, never empty
 */
record CauseLine(EndCause cause, List<CauseIncidence> rows) {
    CauseLine {
        rows = rows.stream()
                .sorted(Comparator.comparingInt(CauseIncidence::ageDays))
                .toList();
    }

    /** Lines of the causes that ended any sensor of the cohort, in the order of the causes. */
    static List<CauseLine> of(List<CauseIncidence> all, String cohort) {
        Map<EndCause, List<CauseIncidence>> byCause = new EnumMap<>(EndCause.class);
        for (CauseIncidence row : all) {
            if (row.cohort().equals(cohort)) {
                byCause.computeIfAbsent(row.cause(), c -> new ArrayList<>()).add(row);
            }
        }
        return byCause.entrySet().stream()
                .map(e -> new CauseLine(e.getKey(), e.getValue()))
                .filter(l -> l.last().ends() > 0)
                .toList();
    }

    CauseIncidence last() {
        return rows.get(rows.size() - 1);
    }

    /** The shares at an age, between neighbours; empty beyond the last age. */
    Optional<CauseIncidence> at(int ageDays) {
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).ageDays() == ageDays) {
                return Optional.of(rows.get(i));
            }
            if (rows.get(i).ageDays() > ageDays) {
                return i == 0 ? Optional.empty() : Optional.of(between(rows.get(i - 1), rows.get(i), ageDays));
            }
        }
        return Optional.empty();
    }

    private static CauseIncidence between(CauseIncidence a, CauseIncidence b, int ageDays) {
        double w = (ageDays - a.ageDays()) / (double) (b.ageDays() - a.ageDays());
        return new CauseIncidence(
                a.cohort(),
                a.cause(),
                ageDays,
                a.incidence() + w * (b.incidence() - a.incidence()),
                a.lower() + w * (b.lower() - a.lower()),
                a.upper() + w * (b.upper() - a.upper()),
                a.atRisk(),
                a.ends());
    }
}
