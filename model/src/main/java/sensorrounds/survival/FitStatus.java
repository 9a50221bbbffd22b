package sensorrounds.survival;

/** What came of a fit, in one list of codes for all estimators of life; {@link FitReport} carries it with the figures. */
public enum FitStatus {
    CONVERGED,
    /** There are no lives. */
    NO_LIVES,
    /** No life was under observation for any time: the windows are empty. */
    EMPTY_WINDOWS,
    /** No life failed. */
    NO_FAILURES,
    /** One failure for more than one parameter. */
    ONE_FAILURE,
    /** Failures, but no more than the law has parameters. */
    TOO_FEW_FAILURES,
    /** No failure tells anything about its cause. */
    ALL_CAUSES_UNKNOWN,
    /** A cause has fewer failures known to be its own than its law has parameters. */
    TOO_FEW_KNOWN,
    /** Too few vehicles have two lives and a failure. */
    NO_SETS,
    /** All lives belong to one cluster, so that errors by cluster cannot be told. */
    ONE_CLUSTER,
    /** A column is constant or follows from others. */
    COLLINEAR_COLUMN,
    /** Along a column the likelihood rises without end. */
    SEPARATED_COLUMN,
    /** The curve falls to 0 while lives that entered later live on. */
    COLLAPSED,
    /** No finite maximum, or a direction the data do not determine. */
    FLAT_LIKELIHOOD,
    /** The search ended without a maximum. */
    NOT_CONVERGED
}
