package sensorrounds.frailty;

import java.io.Serializable;
import java.util.List;

/**
 * A law of life whose hazard is multiplied by a frailty common to the vehicle: H(t) = w (t / scale)^shape, log scale
 * linear in covariates, w gamma distributed with mean 1 over vehicles.
 */
public final class FrailtyLaw implements Serializable {
    private final List<String> names;
    private final double[] logScale;
    private final double shape;
    private final double variance;

    FrailtyLaw(List<String> names, double[] logScale, double shape, double variance) {
        this.names = names;
        this.logScale = logScale;
        this.shape = shape;
        this.variance = variance;
    }

    /**
     * A declared law without covariates.
     *
     * @param scale in the lives' unit of time
     * @param variance of frailty over vehicles; 0 for none
     */
    public static FrailtyLaw of(double shape, double scale, double variance) {
        boolean finite = shape < Double.POSITIVE_INFINITY && scale < Double.POSITIVE_INFINITY && variance < 1e6;
        if (!(shape > 0 && scale > 0 && variance >= 0 && finite)) {
            throw new IllegalArgumentException("a law needs a positive shape and scale and a variance from 0 up, not "
                    + shape + ", " + scale + " and " + variance);
        }
        return new FrailtyLaw(List.of(), new double[] {Math.log(scale)}, shape, variance);
    }

    /** Names of the covariates that act on log scale. */
    public List<String> names() {
        return names;
    }

    public double shape() {
        return shape;
    }

    /** Variance of frailty over vehicles. */
    public double variance() {
        return variance;
    }

    /** Scale for these covariates at frailty 1. */
    public double scale(List<Double> covariates) {
        if (covariates.size() != names.size()) {
            throw new IllegalArgumentException("each of " + names + " needs one value, not " + covariates);
        }
        double log = logScale[0];
        for (int j = 0; j < names.size(); j++) {
            log += logScale[j + 1] * covariates.get(j);
        }
        return Math.exp(log);
    }

    /** (age / scale)^shape, the cumulative hazard at frailty 1. */
    public double cumulativeHazard(double age, List<Double> covariates) {
        return age <= 0 ? 0 : Math.pow(age / scale(covariates), shape);
    }

    /** Share of sensors of all vehicles that outlive an age, (1 + variance H)^(-1/variance), the Laplace transform at H. */
    public double survival(double age, List<Double> covariates) {
        double hazard = cumulativeHazard(age, covariates);
        return Math.exp(variance > 0 ? -Math.log1p(variance * hazard) / variance : -hazard);
    }

    /** What the lives of one vehicle say about it; when their observation began does not matter. */
    public SetPosterior posterior(List<SetMember> set) {
        return SetPosterior.of(this, set);
    }
}
