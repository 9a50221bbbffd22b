package sensorrounds.analyst;

import java.io.Serializable;
import sensorrounds.survival.Estimate;

/**
 * What one level of a factor does to the length of life, beside all other factors.
 *
 * @param level the level, of several merged ones their names
 * @param reference whether the other levels are compared with this one; its estimates are 1
 * @param lives lives at this level among those that took part; for the season those watched on some day of such months
 * @param failures those that failed; for the season those that most likely did in such months, rounded
 * @param lifeFactor NaN for the season, which is no property of a life; else how many times as long sensors last as at the reference level, Weibull, 95 % limits robust to
 *     likeness within vehicles; NaN where there is no fit
 * @param lifeFactorBest the same by the family of least AIC; NaN where that is the Weibull or has no fit
 * @param hazardRatio how many times as often they fail at any age, by Cox regression, limits as robust; for the season by the
 *     likelihood of intervals, with its limits
 * @param proportionalityP chance of as much drift of the hazard ratio with age if there were none
 */
public record CovariateEffect(
        Factor factor,
        String level,
        boolean reference,
        long lives,
        long failures,
        Estimate lifeFactor,
        double lifeFactorBest,
        Estimate hazardRatio,
        double proportionalityP)
        implements Serializable {}
