package sensorrounds.recurrent;

import java.util.List;

/**
 * A rate that does not change: events over time watched. The measure for rates that do.
 *
 * @param rate events per unit of time; 0 without events
 * @param logLikelihood of the Poisson process; 0 without events
 */
public record ConstantRate(long events, double exposure, double rate, double logLikelihood) {
    /** @throws IllegalArgumentException when no unit was watched */
    public static ConstantRate of(List<EventHistory> units, Truncation truncation) {
        long events = 0;
        double exposure = 0;
        for (EventHistory unit : units) {
            events += unit.count();
            exposure += truncation.observed(unit).exposure();
        }
        if (!(exposure > 0)) {
            throw new IllegalArgumentException("a rate needs time under observation, and no unit has any");
        }
        double rate = events / exposure;
        return new ConstantRate(events, exposure, rate, events == 0 ? 0 : events * Math.log(rate) - events);
    }
}
