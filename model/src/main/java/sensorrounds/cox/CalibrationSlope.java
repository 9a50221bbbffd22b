package sensorrounds.cox;

import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.Estimate;

/**
 * Do predicted differences in log hazard hold up on data the model has not seen? A regression on the predicted log hazard
 * alone: its coefficient is 1 for a well calibrated model, below 1 for one whose predictions are spread too wide. Source:
 * Royston and Altman (2013), BMC Med. Res. Methodol. 13:33.
 *
 * @param slope with limits
 * @param standardError of the slope
 * @param againstOne likelihood-ratio test of a slope of 1
 */
public record CalibrationSlope(Estimate slope, double standardError, ChiSquareTest againstOne) {
    /**
     * The slope, Efron's rule for ties, limits at 95 %.
     *
     * @param predictions a sample with one column, the predicted log hazard
     * @throws IllegalArgumentException if there is more than one column
     * @throws IllegalStateException if the regression has no answer; the message says why
     */
    public static CalibrationSlope of(CoxSample predictions) {
        if (predictions.columns().size() != 1) {
            throw new IllegalArgumentException(
                    "a calibration slope needs one column, the predicted log hazard, not " + predictions.columns());
        }
        CoxFit fit = CoxFitter.withDefaults().fit(predictions);
        CoxFit.Coefficient coefficient = fit.coefficients().get(0);
        double half = StandardNormal.quantile(0.975) * coefficient.standardError();
        double atOne = new PartialLikelihood(fit.sweep(), fit.ties())
                .at(new double[] {fit.sweep().scale(0)})
                .value();
        return new CalibrationSlope(
                new Estimate(coefficient.value(), coefficient.value() - half, coefficient.value() + half),
                coefficient.standardError(),
                new ChiSquareTest(2 * (fit.logLikelihood() - atOne), 1));
    }
}
