package sensorrounds.regression;

/**
 * Log-likelihood of one life given alive at entry, with its derivatives in m = log scale and k = log shape. Instances
 * hold no state between calls but the law.
 */
interface LifeKernel {
    /** Places of the answer. */
    int VALUE = 0;

    int M = 1;
    int K = 2;
    int MM = 3;
    int MK = 4;
    int KK = 5;
    int SIZE = 6;

    /**
     * Fills the answer for one life of weight 1.
     *
     * @param logEntry minus infinity when observed from birth
     * @param logLower minus infinity when never seen good
     * @param logUpper equal to logLower for an exact age, infinite when no failure was seen
     */
    void at(double logEntry, double logLower, double logUpper, double m, double k, double[] answer);
}
