package sensorrounds.regression;

import java.io.Serializable;

/**
 * A fitted coefficient in the covariate's own unit. On log scale: lives are exp(value) times as long per unit.
 *
 * @param part what it acts on
 * @param name of the covariate, or {@link #CONSTANT}
 * @param value estimate
 * @param error standard error of the kind the regression was asked for
 * @param lower Wald limit
 * @param upper Wald limit
 */
public record Coefficient(Part part, String name, double value, double error, double lower, double upper)
        implements Serializable {
    /** Name of what does not depend on a covariate. */
    public static final String CONSTANT = "(constant)";

    /** What a coefficient acts on. */
    public enum Part {
        LOG_SCALE,
        LOG_SHAPE,
        /** The parameter of the law of W. */
        LAW
    }
}
