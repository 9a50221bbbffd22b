package sensorrounds.numeric;

/** A function to be maximised, with its first derivatives. */
@FunctionalInterface
public interface SlopeObjective {
    /** Value and slope at the point; a value that is not finite says the point is not admissible. */
    Evaluation at(double[] point);

    /**
     * Value and gradient at one point.
     *
     * @param information a guess at the negated Hessian, such as the sum of outer products of scores; null for none
     */
    record Evaluation(double value, double[] gradient, double[][] information) {}
}
