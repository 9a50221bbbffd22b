package sensorrounds.survival;

import java.io.Serializable;

/**
 * What is held likely of a law of life before its data are seen, for fleets with too few failures for a fit: median life and
 * Weibull shape, independent, each normal on its log. The four numbers are declared, not estimated; 95 % of the prior lies between
 * them. Stated for a quantile and the shape, since those two are nearly independent in people's knowledge and scale and shape are
 * not: Meeker, Escobar and Pascual (2022), Statistical Methods for Reliability Data, 2nd ed., ch. 10 (from memory).
 *
 * @param medianLifeLow age in days below which the median life is held unlikely
 * @param medianLifeHigh age in days above which it is
 * @param shapeLow 1 is a constant hazard
 */
public record WeakPrior(double medianLifeLow, double medianLifeHigh, double shapeLow, double shapeHigh)
        implements Serializable {
    /** log(-log(1/2)): the median is this far below log scale, in units of 1 / shape. */
    static final double MEDIAN = Math.log(Math.log(2));

    public WeakPrior {
        if (!(new LikelyRange(medianLifeLow, medianLifeHigh).isRising()
                && new LikelyRange(shapeLow, shapeHigh).isRising())) {
            throw new IllegalArgumentException(
                    "a weak prior needs rising positive limits of the median life and of the shape," + " not "
                            + medianLifeLow + " to " + medianLifeHigh + " and " + shapeLow + " to " + shapeHigh);
        }
    }

    /**
     * Median life of 3 to 20 years, shape of 1 to 5: wide enough for any sensor with a sealed battery that wears out. Common
     * practice, no source.
     */
    public static WeakPrior declared() {
        return new WeakPrior(3 * 365.25, 20 * 365.25, 1, 5);
    }

    /** Centre of the log of the median life. */
    double centre() {
        return new LikelyRange(medianLifeLow, medianLifeHigh).centre();
    }

    double spread() {
        return new LikelyRange(medianLifeLow, medianLifeHigh).spread();
    }

    double shapeCentre() {
        return new LikelyRange(shapeLow, shapeHigh).centre();
    }

    double shapeSpread() {
        return new LikelyRange(shapeLow, shapeHigh).spread();
    }
}
