package sensorrounds.analyst;

import java.time.LocalDate;
import sensorrounds.history.SensorLife;

/**
 * The half of the year in which a sensor was fitted: known before anything that happens to it, so that it is no symptom. Named by
 * months, since which half is cold depends on where the fleet is.
 */
public enum FittingSeason {
    APRIL_TO_SEPTEMBER("April to September"),
    OCTOBER_TO_MARCH("October to March");

    private final String words;

    FittingSeason(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Of a sensor's fitting as its age counts it; null when that is not known. */
    public static FittingSeason of(SensorLife life) {
        return life.fittedOn() == null ? null : of(life.fittedOn());
    }

    static FittingSeason of(LocalDate day) {
        return day.getMonthValue() >= 4 && day.getMonthValue() <= 9 ? APRIL_TO_SEPTEMBER : OCTOBER_TO_MARCH;
    }
}
