package sensorrounds.ranktest;

/**
 * How much a difference counts at an age with failures. The log-rank weight is best against hazards that keep their
 * ratio; the others give more to early ages (or, Fleming and Harrington's with gamma above 0, to late ones).
 *
 * <p>Sources: Klein and Moeschberger (2003), Survival Analysis, table 7.1 and section 7.3; Gehan (1965), Biometrika
 * 52:203; Tarone and Ware (1977), Biometrika 64:156; Harrington and Fleming (1982), Biometrika 69:553; the modified Peto
 * and Peto estimate after Andersen et al. (1982).
 */
public final class RankWeight {
    /** 1 everywhere (Mantel 1966). */
    public static final RankWeight LOG_RANK = new RankWeight("log-rank", (before, modified, atRisk) -> 1);
    /** The weight at risk: Gehan's and Breslow's Wilcoxon test; depends on the pattern of censoring. */
    public static final RankWeight GEHAN = new RankWeight("Gehan", (before, modified, atRisk) -> atRisk);
    /** The root of the weight at risk. */
    public static final RankWeight TARONE_WARE =
            new RankWeight("Tarone-Ware", (before, modified, atRisk) -> Math.sqrt(atRisk));
    /** prod(1 - d / (Y + 1)) up to and including the age. */
    public static final RankWeight PETO_PETO = new RankWeight("Peto-Peto", (before, modified, atRisk) -> modified);

    private final String name;
    private final Formula formula;

    @FunctionalInterface
    private interface Formula {
        double at(double survivalBefore, double modifiedSurvival, double atRisk);
    }

    private RankWeight(String name, Formula formula) {
        this.name = name;
        this.formula = formula;
    }

    /** S(t-)^rho (1 - S(t-))^gamma with the pooled Kaplan-Meier curve just before the age; rho, gamma >= 0. */
    public static RankWeight flemingHarrington(double rho, double gamma) {
        if (!(rho >= 0 && gamma >= 0)) {
            throw new IllegalArgumentException("weights need rho >= 0 and gamma >= 0, not " + rho + " and " + gamma);
        }
        return new RankWeight(
                "Fleming-Harrington(" + rho + ", " + gamma + ")",
                (before, modified, atRisk) -> Math.pow(before, rho) * Math.pow(1 - before, gamma));
    }

    /**
     * @param survivalBefore pooled Kaplan-Meier estimate just before the age
     * @param modifiedSurvival prod(1 - d / (Y + 1)) up to and including the age
     * @param atRisk pooled weight at risk
     */
    double at(double survivalBefore, double modifiedSurvival, double atRisk) {
        return formula.at(survivalBefore, modifiedSurvival, atRisk);
    }

    @Override
    public String toString() {
        return name;
    }
}
