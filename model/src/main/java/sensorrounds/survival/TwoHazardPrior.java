package sensorrounds.survival;

import java.io.Serializable;

/**
 * What is held likely of the two hazards of a sensor before few failures are seen: a constant one of damage and corrosion, and
 * wear-out of the battery, which takes over with age. Both numbers are normal on their logs, 95 % between the limits, which are
 * declared, not estimated. That damage leads early and batteries later is common practice, as are battery lives between five and
 * twelve years, which a shape of 4.6 would give; no source for the limits.
 *
 * @param earlyPerYearLow early failures a sensor and year under which they are held unlikely
 * @param earlyPerYearHigh over which they are
 * @param wearShapeLow Weibull shape of wear-out; 1 would be no wear
 */
public record TwoHazardPrior(double earlyPerYearLow, double earlyPerYearHigh, double wearShapeLow, double wearShapeHigh)
        implements Serializable {
    private static final double DAYS_PER_YEAR = 365.25;

    public TwoHazardPrior {
        boolean early = new LikelyRange(earlyPerYearLow, earlyPerYearHigh).isRising();
        if (!(early && 1 <= wearShapeLow && new LikelyRange(wearShapeLow, wearShapeHigh).isRising())) {
            throw new IllegalArgumentException(
                    "a prior of two hazards needs rising positive rates and rising shapes from 1"
                            + " up, not " + earlyPerYearLow + " to " + earlyPerYearHigh + " and " + wearShapeLow
                            + " to "
                            + wearShapeHigh);
        }
    }

    /** Early failures of 0.1 to 5 % a year, wear-out of shape 1.5 to 8. */
    public static TwoHazardPrior declared() {
        return new TwoHazardPrior(0.001, 0.05, 1.5, 8);
    }

    /** Centre of the log of the early scale in days, at a constant early hazard. */
    double logEarlyScale() {
        return Math.log(DAYS_PER_YEAR) - new LikelyRange(earlyPerYearLow, earlyPerYearHigh).centre();
    }

    double earlySpread() {
        return new LikelyRange(earlyPerYearLow, earlyPerYearHigh).spread();
    }

    double logWearShape() {
        return new LikelyRange(wearShapeLow, wearShapeHigh).centre();
    }

    double wearShapeSpread() {
        return new LikelyRange(wearShapeLow, wearShapeHigh).spread();
    }
}
