package sensorrounds.numeric;

/**
 * Where a maximisation ended.
 *
 * @param outcome whether that is a maximum
 * @param point last accepted point
 * @param at value and derivatives there
 * @param iterations Newton steps taken
 */
public record Maximum(Outcome outcome, double[] point, Objective.Evaluation at, int iterations) {
    /** How the search ended. */
    public enum Outcome {
        /** A maximum: negative definite Hessian, nothing more to gain. */
        CONVERGED,
        /** The start itself has no finite value. */
        BAD_START,
        /** No step however short gained anything, and the point is no maximum. */
        NO_PROGRESS,
        /** Out of iterations. */
        OUT_OF_ITERATIONS
    }
}
