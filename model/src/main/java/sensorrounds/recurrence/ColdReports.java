package sensorrounds.recurrence;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import sensorrounds.condition.PooledOdds;

/**
 * How much likelier a low battery report is in the cold: the odds ratio within vehicles (Mantel and Haenszel 1959), its log shrunk
 * to 0.
 */
final class ColdReports {
    private ColdReports() {}

    /** Log of the ratio; empty where no vehicle was read both in the cold and not, with a low report and another. */
    static OptionalDouble of(List<SuspectCase> cases, double priorDeviation) {
        List<PooledOdds.Stratum> strata = new ArrayList<>();
        for (SuspectCase c : cases) {
            long[] counts = new long[4];
            for (SuspectCase.Sensor s : c.sensors()) {
                SensorReads r = s.reads();
                for (int k = 0; k < r.size(); k++) {
                    if (r.reported(k)) {
                        counts[(r.cold(k) ? 0 : 2) + (r.low(k) ? 0 : 1)]++;
                    }
                }
            }
            strata.add(new PooledOdds.Stratum(counts[0], counts[1], counts[2], counts[3]));
        }
        PooledOdds ratio = PooledOdds.of(strata);
        return ratio.known() ? OptionalDouble.of(ratio.shrunk(priorDeviation)) : OptionalDouble.empty();
    }
}
