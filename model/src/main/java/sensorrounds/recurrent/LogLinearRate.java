package sensorrounds.recurrent;

import java.util.ArrayList;
import java.util.List;

/**
 * Poisson process with rate exp(g0 + g1 t), by maximum likelihood over units that share it, each watched from any time on,
 * with gaps. Source: Cox and Lewis (1966), The Statistical Analysis of Series of Events, 3.3.
 */
public final class LogLinearRate {
    private LogLinearRate() {}

    /**
     * The fitted rate.
     *
     * @param cause why there is none, in words; empty when there is one
     * @param intercept g0; this and all figures that follow are NaN unless the fit converged
     * @param slope g1, per unit of time; above 0 where events come more often
     */
    public record Fit(
            RateStatus status,
            String cause,
            long events,
            double intercept,
            double slope,
            double interceptError,
            double slopeError,
            double logLikelihood) {
        public boolean converged() {
            return status == RateStatus.CONVERGED;
        }

        /** Events per unit of time. */
        public double rate(double time) {
            return Math.exp(intercept + slope * time);
        }

        static Fit failed(RateStatus status, String cause, long events) {
            double none = Double.NaN;
            return new Fit(status, cause, events, none, none, none, none, none);
        }
    }

    public static Fit fit(List<EventHistory> units, Truncation truncation) {
        List<TiltedTime.Stretch> stretches = new ArrayList<>();
        long n = 0;
        double sum = 0;
        for (EventHistory unit : units) {
            EventHistory observed = truncation.observed(unit);
            observed.windows().forEach(w -> stretches.add(new TiltedTime.Stretch(w.from(), w.to())));
            for (double event : observed.events()) {
                sum += event;
                n++;
            }
        }
        if (n < 2) {
            return Fit.failed(RateStatus.TOO_FEW_EVENTS, "a rate that changes takes two events or more, not " + n, n);
        }
        TiltedTime law = new TiltedTime(stretches);
        double slope = law.tiltOfMean(sum / n, false);
        if (Double.isNaN(slope)) {
            return Fit.failed(
                    RateStatus.NO_FINITE_MAXIMUM, "all events fall on one end of the time under observation", n);
        }
        TiltedTime.Moments m = law.at(slope);
        double intercept = Math.log(n) - m.logMass();
        double information = n * m.variance();
        return new Fit(
                RateStatus.CONVERGED,
                "",
                n,
                intercept,
                slope,
                Math.sqrt(1.0 / n + m.mean() * m.mean() / information),
                Math.sqrt(1 / information),
                n * intercept + slope * sum - n);
    }
}
