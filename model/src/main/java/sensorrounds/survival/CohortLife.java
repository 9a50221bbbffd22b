package sensorrounds.survival;

import java.util.List;
import java.util.Optional;

/**
 * The law of life in use for a cohort, and how it came about.
 *
 * @param weibull the Weibull beside it, the same law when that is in use; empty when there is no law
 * @param life empty exactly when the rung is {@link CohortLadder.Rung#NONE}; the fit's note then says why
 * @param searches what each fit to its lives says of itself, in use or not
 */
public record CohortLife(
        CohortLadder.Rung rung,
        Optional<LifeLaw> life,
        Optional<WeibullLife> weibull,
        CohortFit fit,
        List<FitLine> searches) {}
