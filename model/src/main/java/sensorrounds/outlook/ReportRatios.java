package sensorrounds.outlook;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.survival.HazardSum;
import sensorrounds.survival.LifeLaw;

/**
 * Failure ratio by last report: how many failures sensors with that report had against what the law of their cohort
 * expects at their ages. It is the standardised mortality ratio O/E with a gamma prior, which with a Poisson count
 * gives a gamma posterior of shape O + k m and rate E + k (m prior mean, k prior weight): mean (O + k m)/(E + k).
 *
 * <p>A ratio was counted over windows from one contact to the next, so it says little of the time after: a sensor that is
 * sound today turns low like any other within the year. What speaks for a sensor wears off: a ratio under 1 rises steadily
 * over the median window of its report, with the ratio as its mean, and is 1 after. What speaks against it, a low battery
 * or a silence, stays: a ratio over 1 holds for two windows. Both are our choice, held against the truth of simulated fleets
 * (docs/validation-calibration.md).
 *
 * <p>Source: Breslow and Day (1987), Statistical Methods in Cancer Research II, ch. 2 (standardised ratio); gamma
 * posterior of a Poisson rate, e.g. Gelman et al., Bayesian Data Analysis, sec. 2.6 (from memory). Variance of the log
 * of a gamma variable: the trigamma function of its shape.
 */
public final class ReportRatios implements Serializable {
    private static final long serialVersionUID = 1;
    /** Steps of a ratio that rises over its reach. */
    private static final int STEPS = 4;

    /**
     * The ratio of one report, with its working.
     *
     * @param landmarks landmarks it rests on
     * @param observed failures among them
     * @param expected failures expected by the laws of their cohorts
     * @param ratio posterior mean
     * @param varLogRatio posterior variance of its log
     * @param reachDays days after the last answer over which it holds
     */
    public record Ratio(
            LastReport report,
            long landmarks,
            long observed,
            double expected,
            double priorMean,
            double priorWeight,
            double ratio,
            double varLogRatio,
            double reachDays)
            implements Serializable {
        /**
         * The hazard of a law over the days after the last answer, at an age: multiplied by {@link #at} over the reach,
         * the law's own after. Its limits know of both the fit and the ratio.
         */
        HazardSum hazard(LifeLaw law, double age, double days) {
            HazardSum within = HazardSum.of(law);
            double reached = Math.min(days, reachDays);
            for (int i = 0; i < STEPS && reachDays * i / STEPS < reached; i++) {
                double to = Math.min(reached, reachDays * (i + 1) / STEPS);
                within = within.plus(at((i + 0.5) / STEPS), age + reachDays * i / STEPS, age + to);
            }
            HazardSum sum = within.plus(1, age + reached, age + days);
            double share = sum.value() > 0 ? within.value() / sum.value() : 0;
            return sum.withVariance(share * share * varLogRatio);
        }

        /** {@link HazardSum#failure} of {@link #hazard}, without what limits need. */
        double failure(LifeLaw law, double age, double days) {
            double reached = Math.min(days, reachDays);
            double before = law.cumulativeHazard(age);
            double hazard = 0;
            for (int i = 0; i < STEPS && reachDays * i / STEPS < reached; i++) {
                double by = law.cumulativeHazard(age + Math.min(reached, reachDays * (i + 1) / STEPS));
                hazard += at((i + 0.5) / STEPS) * (by - before);
                before = by;
            }
            return -Math.expm1(-hazard - (law.cumulativeHazard(age + days) - before));
        }

        /** The ratio at a share of the reach: the same throughout over 1, else rising, with the ratio as its mean. */
        private double at(double share) {
            double first = Math.max(0, 2 * ratio - 1);
            return ratio >= 1 ? ratio : first + 2 * (ratio - first) * share;
        }
    }

    /** Windows a report needs for a reach of its own; our choice, no source. */
    private static final long LEAST_WINDOWS = 20;

    /** Half a year between visits, where there is no visit to tell; common practice, no source. */
    private static final double WINDOW_WITHOUT_VISITS = 182;

    private final List<Ratio> ratios;

    private ReportRatios(List<Ratio> ratios) {
        this.ratios = List.copyOf(ratios);
    }

    public static ReportRatios fit(ReportCells cells, OutlookSettings settings) {
        List<Ratio> all = new ArrayList<>();
        for (LastReport report : LastReport.values()) {
            OutlookSettings.Prior prior = settings.prior(report);
            long observed = cells.observed(report);
            double expected = cells.expected(report);
            double shape = observed + prior.weight() * prior.mean();
            double ratio = shape / (expected + prior.weight());
            double window = cells.medianWindow(report, LEAST_WINDOWS, WINDOW_WITHOUT_VISITS);
            all.add(new Ratio(
                    report,
                    cells.landmarks(report),
                    observed,
                    expected,
                    prior.mean(),
                    prior.weight(),
                    ratio,
                    trigamma(shape),
                    ratio > 1 ? 2 * window : window));
        }
        return new ReportRatios(all);
    }

    public Ratio of(LastReport report) {
        return ratios.get(report.ordinal());
    }

    /** One for every report, in the order of {@link LastReport}. */
    public List<Ratio> all() {
        return ratios;
    }

    /**
     * Trigamma function for x over 0: recurrence up to 10, then the asymptotic series. Source: Abramowitz and Stegun
     * (1964), 6.4.6 and 6.4.12.
     */
    static double trigamma(double x) {
        double sum = 0;
        double y = x;
        while (y < 10) {
            sum += 1 / (y * y);
            y++;
        }
        double s = 1 / (y * y);
        return sum
                + 1 / y
                + s / 2
                + s / y * (1.0 / 6 - s * (1.0 / 30 - s * (1.0 / 42 - s * (1.0 / 30 - s * 5.0 / 66))));
    }
}
