package sensorrounds.outlook;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * Failure ratio by last report: how many failures sensors with that report had against what the law of their cohort
 * expects at their ages. It is the standardised mortality ratio O/E with a gamma prior, which with a Poisson count
 * gives a gamma posterior of shape O + k m and rate E + k (m prior mean, k prior weight): mean (O + k m)/(E + k).
 *
 * <p>Source: Breslow and Day (1987), Statistical Methods in Cancer Research II, ch. 2 (standardised ratio); gamma
 * posterior of a Poisson rate, e.g. Gelman et al., Bayesian Data Analysis, sec. 2.6 (from memory). Variance of the log
 * of a gamma variable: the trigamma function of its shape.
 */
public final class ReportRatios implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * The ratio of one report, with its working.
     *
     * @param landmarks landmarks it rests on
     * @param observed failures among them
     * @param expected failures expected by the laws of their cohorts
     * @param ratio posterior mean
     * @param varLogRatio posterior variance of its log
     */
    public record Ratio(
            LastReport report,
            long landmarks,
            long observed,
            double expected,
            double priorMean,
            double priorWeight,
            double ratio,
            double varLogRatio)
            implements Serializable {}

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
            all.add(new Ratio(
                    report,
                    cells.landmarks(report),
                    observed,
                    expected,
                    prior.mean(),
                    prior.weight(),
                    shape / (expected + prior.weight()),
                    trigamma(shape)));
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
