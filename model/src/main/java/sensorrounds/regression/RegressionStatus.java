package sensorrounds.regression;

/** What came of a regression. */
public enum RegressionStatus {
    CONVERGED,
    /** There are no lives. */
    NO_LIVES,
    /** No life was under observation for any time: the windows are empty. */
    EMPTY_WINDOWS,
    /** No life failed. */
    NO_FAILURES,
    /** One failure for more than one parameter. */
    ONE_FAILURE,
    /** A column is constant or follows from others. */
    COLLINEAR_COLUMN,
    /** Along a column the likelihood rises without end. */
    SEPARATED_COLUMN,
    /** No finite maximum, or a direction the data do not determine. */
    FLAT_LIKELIHOOD,
    /** Errors by cluster were asked for, and what is to be told rests on a single cluster. */
    ONE_CLUSTER,
    /** The search ended without a maximum. */
    NOT_CONVERGED
}
