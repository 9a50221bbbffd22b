package sensorrounds.survival;

import sensorrounds.survival.EarlyWearFitter.Early;

/**
 * The law that a sample's own lives speak for: the Weibull, or an early hazard beside wear-out, with constant early hazard
 * or with a shape of its own, whichever has the smallest Akaike criterion.
 *
 * @param weibull the Weibull fit, beside or in use
 * @param twoHazards the better of the fits with two hazards
 */
record OwnLaw(ParametricFit weibull, EarlyWearFit twoHazards) {
    static OwnLaw of(LifetimeSample sample) {
        ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(sample);
        EarlyWearFit constant = EarlyWearFitter.of(Early.CONSTANT).fit(sample, plain);
        EarlyWearFit free = EarlyWearFitter.of(Early.FREE_SHAPE).fit(sample, plain);
        return new OwnLaw(plain, free.aic() < constant.aic() ? free : constant);
    }

    /** AIC of the Weibull less that of the two hazards; NaN when either has no fit. */
    double aicGain() {
        return weibull.converged() && twoHazards.law().isPresent()
                ? 2 * (2 - weibull.logLikelihood()) - twoHazards.aic()
                : Double.NaN;
    }

    LifeLaw law() {
        return aicGain() > 0 ? twoHazards.law().orElseThrow() : weibull.life();
    }

    /** What to know of the choice; empty when the two hazards are in use. */
    String note() {
        return aicGain() > 0
                ? ""
                : "a single Weibull: "
                        + (twoHazards.law().isPresent()
                                ? "an early hazard beside wear-out gains too little"
                                : twoHazards.report().cause());
    }
}
