package sensorrounds.analyst;

import java.io.Serializable;

/**
 * What needs to know which sensors share a vehicle, fitted to a draw of vehicles.
 *
 * @param effects who lives longer
 * @param likeness how alike the sensors of one vehicle are
 */
public record VehicleFits(CovariateEffects effects, SetLikeness likeness) implements Serializable {
    public static VehicleFits of(VehicleSample sample) {
        CovariateRegression regression = new CovariateRegression(CovariateDesign.of(sample.vehicles()));
        CovariateEffects effects = regression.fit(sample.lives());
        return new VehicleFits(effects, SetLikeness.fit(regression.design()));
    }
}
