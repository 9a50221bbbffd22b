package sensorrounds.analyst;

import java.io.Serializable;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.RegressionFit;
import sensorrounds.regression.RegressionStatus;

/**
 * How well one family of laws of life describes the lives of the regression, beside the others.
 *
 * @param parameters 0 where there is no fit
 * @param logLikelihood NaN where there is no fit, as {@code aic}
 * @param aicAboveBest 0 for the family in front; under 2 is no difference worth naming (common practice, no source)
 * @param note why there is no fit; empty when there is one
 */
public record FamilyFit(
        LifeFamily family,
        RegressionStatus status,
        int parameters,
        double logLikelihood,
        double aic,
        double aicAboveBest,
        String note)
        implements Serializable {
    static FamilyFit of(RegressionFit fit, double best) {
        boolean fitted = fit.converged();
        return new FamilyFit(
                fit.family(),
                fit.status(),
                fitted ? fit.parameters() : 0,
                fitted ? fit.logLikelihood() : Double.NaN,
                fitted ? fit.aic() : Double.NaN,
                fitted ? fit.aic() - best : Double.NaN,
                fit.cause());
    }
}
