package sensorrounds.replacement;

import sensorrounds.survival.LifeLaw;

/** A fitted law as age replacement sees it, ages in days. */
record FittedAgeing(LifeLaw law) implements AgeingLaw {
    @Override
    public double survival(double age) {
        return law.survival(age);
    }

    @Override
    public double hazard(double age) {
        return law.hazard(age);
    }

    @Override
    public double lastAge() {
        return law.ageAtHazard(LifeLaw.LAST_HAZARD);
    }
}
