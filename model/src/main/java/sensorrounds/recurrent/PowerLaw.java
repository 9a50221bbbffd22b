package sensorrounds.recurrent;

import java.util.ArrayList;
import java.util.List;

/**
 * Power-law process (Crow, AMSAA): a Poisson process with mean number of events scale x t^shape by age t, by maximum
 * likelihood over units that share it. A shape above 1 means that events come more often, below 1 less often. For one unit
 * watched from 0 to T with n events the shape is n / sum log(T / t); units watched from later ages on, to different ages and
 * with gaps take the root of the likelihood's derivative. Sources: Crow (1974), AMSAA TR-138; MIL-HDBK-189 (1981), app. C;
 * Meeker and Escobar (1998), Statistical Methods for Reliability Data, ch. 16.
 */
public final class PowerLaw {
    private PowerLaw() {}

    /** The fit; ask {@link PowerLawFit#converged} before its figures. */
    public static PowerLawFit fit(List<EventHistory> units, Truncation truncation) {
        List<TiltedTime.Stretch> stretches = new ArrayList<>();
        List<EventHistory> observed = new ArrayList<>();
        long n = 0;
        double sumLogs = 0;
        for (EventHistory unit : units) {
            EventHistory o = truncation.observed(unit);
            for (ObservationWindow w : o.windows()) {
                if (w.from() < 0) {
                    throw new IllegalArgumentException("a power law counts time from 0 on, and a unit was watched from "
                            + w.from() + "; give ages since first use");
                }
                stretches.add(new TiltedTime.Stretch(Math.log(w.from()), Math.log(w.to())));
            }
            for (double event : o.events()) {
                sumLogs += Math.log(event);
                n++;
            }
            observed.add(o);
        }
        if (n < 2) {
            return PowerLawFit.failed(RateStatus.TOO_FEW_EVENTS, "a power law takes two events or more, not " + n, n);
        }
        TiltedTime law = new TiltedTime(stretches);
        double shape = law.tiltOfMean(sumLogs / n, true);
        if (!(shape > 0 && shape < Double.POSITIVE_INFINITY)) {
            return PowerLawFit.failed(
                    RateStatus.NO_FINITE_MAXIMUM,
                    "no shape above 0 fits best: the events lie as early, or as late, as they could",
                    n);
        }
        TiltedTime.Moments m = law.at(shape);
        double logScale = Math.log(n) - m.logMass() - Math.log(shape);
        double information = n * m.variance();
        double lever = m.mean() + 1 / shape;
        return PowerLawFit.converged(
                n,
                shape,
                logScale,
                Math.sqrt(1 / information),
                Math.sqrt(1.0 / n + lever * lever / information),
                n * logScale + n * Math.log(shape) + (shape - 1) * sumLogs - n,
                observed.size() == 1 ? observed.get(0) : null,
                truncation);
    }
}
