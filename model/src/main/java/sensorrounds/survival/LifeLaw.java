package sensorrounds.survival;

import java.io.Serializable;
import sensorrounds.numeric.Quadrature;

/**
 * A fitted law of life by its cumulative hazard, ages in days, with what the fit does not know of it. Limits come from
 * the delta method on the log of a cumulative hazard, which keeps chances in (0, 1): Meeker and Escobar (1998), 8.4.
 */
public interface LifeLaw extends Serializable {
    /** Cumulative hazard at which S is 1e-17: nothing, to double precision. */
    double LAST_HAZARD = 17 * Math.log(10);

    /** H(age), 0 up to age 0. */
    double cumulativeHazard(double ageDays);

    /** Hazard rate per day at an age over 0. */
    double hazard(double ageDays);

    /** Age by which the cumulative hazard has reached this value. */
    double ageAtHazard(double cumulativeHazard);

    /** Derivatives of H(age) by the fitted parameters, in the order of {@link #covariance}. */
    double[] hazardGradient(double ageDays);

    /** Covariance of the fitted parameters. */
    double[][] covariance();

    default double survival(double ageDays) {
        return Math.exp(-cumulativeHazard(ageDays));
    }

    /** Age by which the share p has failed. */
    default double quantile(double p) {
        return ageAtHazard(-Math.log1p(-p));
    }

    /** Mean days lived up to an age: the integral of S from 0 to it. */
    default double meanWithin(double ageDays) {
        return Quadrature.integral(this::survival, 0, Math.min(ageDays, ageAtHazard(LAST_HAZARD)));
    }

    /** Mean life in days. */
    default double mean() {
        return meanWithin(Double.POSITIVE_INFINITY);
    }

    /** Mean days still to live for a unit alive at the age. */
    default double meanResidual(double ageDays) {
        double from = cumulativeHazard(ageDays);
        return Quadrature.integral(
                age -> Math.exp(from - cumulativeHazard(age)), ageDays, ageAtHazard(from + LAST_HAZARD));
    }

    /**
     * P(fail within the next {@code days} | alive at {@code ageDays}) = 1 - exp(-r (H(a+d) - H(a))), with the hazard
     * multiplied by {@code ratio}.
     */
    default double failureWithin(double ageDays, double days, double ratio) {
        return -Math.expm1(-ratio * (cumulativeHazard(ageDays + days) - cumulativeHazard(ageDays)));
    }

    /**
     * 95 % limits of {@link #failureWithin}.
     *
     * @param varLogRatio variance of log ratio, taken as independent of the fit
     * @return lower, upper
     */
    default double[] failureWithinLimits(double ageDays, double days, double ratio, double varLogRatio) {
        return HazardSum.of(this)
                .plus(ratio, ageDays, ageDays + days)
                .withVariance(varLogRatio)
                .failureLimits();
    }

    /** 95 % limits of {@link #survival}: lower, upper. */
    default double[] survivalLimits(double ageDays) {
        double[] failed = failureWithinLimits(0, Math.max(0, ageDays), 1, 0);
        return new double[] {1 - failed[1], 1 - failed[0]};
    }
}
