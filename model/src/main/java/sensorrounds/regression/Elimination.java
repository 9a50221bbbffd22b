package sensorrounds.regression;

/** One parameter as a function of the others, such that a quantity keeps the value it is given. */
interface Elimination {
    /** Place of the eliminated parameter among all. */
    int place();

    /** All parameters, from the quantity's value and the parameters left. */
    double[] complete(double target, double[] free);

    /** First derivatives of the eliminated parameter in those left. */
    double[] slope(double target, double[] free);

    /** Second derivatives of the eliminated parameter in those left. */
    double[][] curvature(double target, double[] free);
}
