package sensorrounds.review;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.causes.Incidence;
import sensorrounds.survival.Curves;
import sensorrounds.survival.Estimate;

/**
 * Share of a cohort's sensors ended by a cause up to an age, while the other causes are at work too. At any age the
 * shares of all causes and the share still working and in place add to 1.
 *
 * @param ageDays age in days
 * @param incidence share ended by the cause
 * @param lower lower 95 % limit; NaN where the share is 0 or 1, as upper
 * @param upper upper 95 % limit
 * @param atRisk sensors under observation at that age; may rise with age when entry is delayed
 * @param ends ends by this cause up to that age
 */
public record CauseIncidence(
        String cohort,
        EndCause cause,
        int ageDays,
        double incidence,
        double lower,
        double upper,
        double atRisk,
        double ends)
        implements Serializable {

    /** Every cause on the grid of {@link Curves#GRID_DAYS} days, up to the last age under observation. */
    static List<CauseIncidence> of(String cohort, Incidence<EndCause> incidence) {
        List<Integer> ages = Curves.grid(incidence.to());
        List<CauseIncidence> rows = new ArrayList<>();
        for (EndCause cause : incidence.causes()) {
            int k = incidence.causes().indexOf(cause);
            List<Estimate> shares = incidence.at(cause, ages);
            double ends = 0;
            int step = 0;
            for (int i = 0; i < ages.size(); i++) {
                int age = ages.get(i);
                for (;
                        step < incidence.steps().size()
                                && incidence.steps().get(step).age() <= age;
                        step++) {
                    ends += incidence.steps().get(step).ends()[k];
                }
                rows.add(new CauseIncidence(
                        cohort,
                        cause,
                        age,
                        shares.get(i).value(),
                        shares.get(i).lower(),
                        shares.get(i).upper(),
                        incidence.riskSet().at(Math.max(age, Double.MIN_VALUE)),
                        ends));
            }
        }
        return rows;
    }
}
