package sensorrounds.survival;

import java.util.Arrays;
import java.util.Objects;

/**
 * A law of life of two hazards that compete: one that is there from the start (stems, damage, water), and wear-out that
 * sets in late and steeply (batteries). H(t) = (t/earlyScale)^earlyShape + (t/wearScale)^wearShape, a poly-Weibull law;
 * with an early shape of 1 the early hazard is constant. A single Weibull between the two is too high for young sensors
 * and too flat for old ones. Sources: Berger and Sun (1993), J. American Statistical Association 88:1412-1418; Davison and
 * Louzada-Neto (2000), Biometrics 56:1201-1208 (both from memory).
 */
public final class EarlyWearLife implements LifeLaw {
    private static final long serialVersionUID = 1;

    private final double earlyShape;
    private final double earlyScale;
    private final double wearShape;
    private final double wearScale;
    private final double[][] covariance;

    /** @param covariance of the logs of early scale, early shape, wear scale, wear shape; zeros for what was not fitted */
    EarlyWearLife(double earlyShape, double earlyScale, double wearShape, double wearScale, double[][] covariance) {
        this.earlyShape = earlyShape;
        this.earlyScale = earlyScale;
        this.wearShape = wearShape;
        this.wearScale = wearScale;
        this.covariance = covariance;
    }

    /** Shape of the early hazard; 1 when it is constant. */
    public double earlyShape() {
        return earlyShape;
    }

    public double earlyScaleDays() {
        return earlyScale;
    }

    public double wearShape() {
        return wearShape;
    }

    public double wearScaleDays() {
        return wearScale;
    }

    @Override
    public double cumulativeHazard(double ageDays) {
        return ageDays <= 0 ? 0 : early(ageDays) + wear(ageDays);
    }

    @Override
    public double hazard(double ageDays) {
        return (earlyShape * early(ageDays) + wearShape * wear(ageDays)) / ageDays;
    }

    /** By bisection to the last bit between the ages the two hazards would take alone. */
    @Override
    public double ageAtHazard(double hazard) {
        if (!(hazard > 0)) {
            return 0;
        }
        double high =
                Math.min(earlyScale * Math.pow(hazard, 1 / earlyShape), wearScale * Math.pow(hazard, 1 / wearShape));
        double low = 0;
        while (true) {
            double middle = (low + high) / 2;
            if (middle <= low || middle >= high) {
                return high;
            }
            if (cumulativeHazard(middle) < hazard) {
                low = middle;
            } else {
                high = middle;
            }
        }
    }

    @Override
    public double[] hazardGradient(double ageDays) {
        if (ageDays <= 0) {
            return new double[4];
        }
        double early = early(ageDays);
        double wear = wear(ageDays);
        return new double[] {
            -earlyShape * early,
            early > 0 ? earlyShape * early * Math.log(ageDays / earlyScale) : 0,
            -wearShape * wear,
            wear > 0 ? wearShape * wear * Math.log(ageDays / wearScale) : 0
        };
    }

    @Override
    public double[][] covariance() {
        double[][] copy = new double[covariance.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = covariance[i].clone();
        }
        return copy;
    }

    /**
     * The law whose hazard is so many times this one's at every age.
     *
     * @param varLog variance of the log of that factor, independent of this law's errors
     */
    EarlyWearLife times(double factor, double varLog) {
        double log = Math.log(factor);
        double[] slope = {-1 / earlyShape, 0, -1 / wearShape, 0};
        double[][] sum = covariance();
        for (int i = 0; i < slope.length; i++) {
            for (int j = 0; j < slope.length; j++) {
                sum[i][j] += slope[i] * slope[j] * varLog;
            }
        }
        return new EarlyWearLife(
                earlyShape,
                earlyScale * Math.exp(slope[0] * log),
                wearShape,
                wearScale * Math.exp(slope[2] * log),
                sum);
    }

    private double early(double age) {
        return Math.exp(earlyShape * Math.log(age / earlyScale));
    }

    private double wear(double age) {
        return Math.exp(wearShape * Math.log(age / wearScale));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof EarlyWearLife o
                && earlyShape == o.earlyShape
                && earlyScale == o.earlyScale
                && wearShape == o.wearShape
                && wearScale == o.wearScale
                && Arrays.deepEquals(covariance, o.covariance);
    }

    @Override
    public int hashCode() {
        return Objects.hash(earlyShape, earlyScale, wearShape, wearScale);
    }

    @Override
    public String toString() {
        return "early hazard (t/" + earlyScale + ")^" + earlyShape + ", wear-out (t/" + wearScale + ")^" + wearShape;
    }
}
