package sensorrounds.recurrent;

import java.util.List;

/**
 * Tests of trend in the times of events, of one unit or pooled over several (superposed systems). Laplace and military
 * handbook test against a Poisson process; Lewis-Robinson allows any renewal process; the robust Laplace test allows any
 * process whose rate does not change, and units that differ, and is the one to use on a fleet.
 *
 * <p>Sources: Cox and Lewis (1966), The Statistical Analysis of Series of Events, 3.3; MIL-HDBK-189 (1981), app. C; Ascher
 * and Feingold (1984), Repairable Systems Reliability, ch. 5; Lewis and Robinson (1974); Lawless, Cigsar and Cook (2012),
 * Technometrics 54:147. The documents were not at hand; the reference cases check the figures.
 */
public final class TrendTests {
    private TrendTests() {}

    /**
     * Laplace's test: events of a unit with no trend fall evenly over the time it was watched, so their mean time less the
     * middle of that time is normal. Observation may begin late and may have gaps.
     */
    public static TrendTest laplace(List<EventHistory> units, Truncation truncation) {
        double sum = 0;
        double variance = 0;
        for (EventHistory unit : units) {
            EventHistory free = truncation.free(unit);
            sum += departure(free);
            variance += free.count() * Even.of(free).variance();
        }
        return TrendTest.normal(sum / Math.sqrt(variance));
    }

    /**
     * Laplace's test with the variance taken from the units' own departures: sum U / sqrt(sum U^2), where U sums over a unit's
     * events the time less the middle of its time. Holds when units differ and when one event brings on the next. It needs many
     * units: some tens with events.
     */
    public static TrendTest robustLaplace(List<EventHistory> units) {
        double sum = 0;
        double squares = 0;
        for (EventHistory unit : units) {
            double departure = departure(unit);
            sum += departure;
            squares += departure * departure;
        }
        return TrendTest.normal(sum / Math.sqrt(squares));
    }

    private static double departure(EventHistory unit) {
        if (unit.count() == 0) {
            return 0;
        }
        double middle = Even.of(unit).mean();
        double sum = 0;
        for (double event : unit.events()) {
            sum += event - middle;
        }
        return sum;
    }

    /** Mean and variance of a time that falls evenly over the windows. */
    private record Even(double mean, double variance) {
        static Even of(EventHistory unit) {
            double mean = 0;
            double length = unit.exposure();
            for (ObservationWindow w : unit.windows()) {
                mean += w.length() / length * (w.from() + w.to()) / 2;
            }
            double variance = 0;
            for (ObservationWindow w : unit.windows()) {
                double away = (w.from() + w.to()) / 2 - mean;
                variance += w.length() / length * (w.length() * w.length() / 12 + away * away);
            }
            return new Even(mean, variance);
        }
    }

    /**
     * The military handbook test: 2 sum log(T / t) is chi-square with 2n degrees of freedom, large where events come less
     * often. Strongest against a power law.
     *
     * @throws IllegalArgumentException when a unit was not watched from 0 on without a gap
     */
    public static TrendTest militaryHandbook(List<EventHistory> units, Truncation truncation) {
        double sum = 0;
        int n = 0;
        for (EventHistory unit : units) {
            EventHistory free = truncation.free(fromZero(unit, "the military handbook test"));
            for (double event : free.events()) {
                sum += Math.log(free.windows().get(0).to() / event);
            }
            n += free.count();
        }
        return TrendTest.chiSquareSmallWhenIncreasing(2 * sum, 2.0 * n);
    }

    /**
     * Lewis and Robinson's test of one unit: Laplace's statistic over the coefficient of variation of the times between events,
     * from 0 to the last event. NaN with fewer than two events.
     */
    public static TrendTest lewisRobinson(EventHistory unit, Truncation truncation) {
        double[] between = between(fromZero(unit, "Lewis and Robinson's test"));
        if (between.length < 2) {
            return TrendTest.undefined();
        }
        double mean = 0;
        for (double t : between) {
            mean += t / between.length;
        }
        double squares = 0;
        for (double t : between) {
            squares += (t - mean) * (t - mean);
        }
        double deviation = Math.sqrt(squares / (between.length - 1));
        return TrendTest.normal(laplace(List.of(unit), truncation).statistic() * mean / deviation);
    }

    /** Times between events, the first from 0. */
    static double[] between(EventHistory unit) {
        double[] events = unit.events();
        double[] between = new double[events.length];
        for (int i = 0; i < events.length; i++) {
            between[i] = i == 0 ? events[0] : events[i] - events[i - 1];
        }
        return between;
    }

    static EventHistory fromZero(EventHistory unit, String what) {
        if (unit.count() > 0
                && (unit.windows().size() != 1 || unit.windows().get(0).from() != 0)) {
            throw new IllegalArgumentException(what + " needs a unit watched from 0 on without a gap, not "
                    + unit.windows() + "; Laplace's test allows late beginnings and gaps");
        }
        return unit;
    }
}
