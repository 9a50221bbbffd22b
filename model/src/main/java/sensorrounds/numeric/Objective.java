package sensorrounds.numeric;

/** A function to be maximised, with its first and second derivatives. */
@FunctionalInterface
public interface Objective {
    /** Value and derivatives at the point; a value that is not finite says the point is not admissible. */
    Evaluation at(double[] point);

    /** Value, gradient and Hessian at one point. */
    record Evaluation(double value, double[] gradient, double[][] hessian) {}
}
