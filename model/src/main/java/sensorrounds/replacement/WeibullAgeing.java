package sensorrounds.replacement;

import sensorrounds.survival.WeibullLife;

/** The fitted Weibull law as age replacement sees it, ages in days. */
record WeibullAgeing(WeibullLife law) implements AgeingLaw {
    /** Cumulative hazard at which S is 1e-17. */
    private static final double LAST_HAZARD = 17 * Math.log(10);

    @Override
    public double survival(double age) {
        return law.survival(age);
    }

    @Override
    public double hazard(double age) {
        return law.shape() / law.scaleDays() * Math.pow(age / law.scaleDays(), law.shape() - 1);
    }

    @Override
    public double lastAge() {
        return law.scaleDays() * Math.pow(LAST_HAZARD, 1 / law.shape());
    }
}
