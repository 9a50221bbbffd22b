package sensorrounds.regression;

import java.util.List;
import java.util.Optional;

/**
 * Lives a regression can be fitted to, wherever they are: each question is answered by a state that parts add up to, so
 * that lives spread over many machines give the same fit as lives in one array. {@link CovariateLives} is the one in
 * memory.
 */
public interface LifeSource {
    /** Names of the covariates, in the order of their columns. */
    List<String> names();

    /** Counts, means and ranges: one pass, states added by {@link LifeSummary#add(LifeSummary)}. */
    LifeSummary summary();

    /**
     * Log-likelihood with its derivatives: one pass of {@link LikelihoodPass}, states added by {@link
     * LikelihoodSums#add(LikelihoodSums)}.
     *
     * @param parameter of the law of W; ignored by families without one
     * @param point standardised parameters, {@link Design#slopes} of them
     */
    LikelihoodSums sums(Design design, double parameter, double[] point);

    /** Whether lives know their cluster. */
    boolean clustered();

    /**
     * What leaving out each cluster does: states added by {@link ClusterSteps#add(ClusterSteps)}. No cluster may be in two parts.
     *
     * @param point all standardised parameters, that of the law included
     * @param information of all lives at it, the Hessian with its sign changed
     */
    ClusterSteps clusterSteps(Design design, double[] point, double[][] information);

    /** Some of the lives, fit to find a start for the search among all; empty when that would not pay. */
    default Optional<LifeSource> part() {
        return Optional.empty();
    }
}
