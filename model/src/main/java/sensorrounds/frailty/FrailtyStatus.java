package sensorrounds.frailty;

/** What came of a frailty fit. */
public enum FrailtyStatus {
    CONVERGED,
    /** The likelihood is highest at variance 0: no likeness within vehicles was found, the law is that of lives apart. */
    NO_LIKENESS,
    /** The law without frailty could not be fitted; that fit names the reason. */
    NO_LAW_WITHOUT_FRAILTY,
    /** Too few vehicles have two lives and a failure: likeness cannot be told from the form of the law. */
    NO_SETS,
    /** No finite maximum, or a direction the data do not determine. */
    FLAT_LIKELIHOOD,
    /** The search ended without a maximum. */
    NOT_CONVERGED
}
