package sensorrounds.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import sensorrounds.survival.Lifetime;

/**
 * One life as the survival sample takes it, or the words why it cannot: ages in whole days, under observation alive from
 * {@code entry}, known good at {@code lower}, known failed by {@code upper}.
 *
 * @param lifetime null when excluded
 * @param exclusion null when it is in
 */
record LifeSample(Lifetime lifetime, String exclusion) {

    static LifeSample of(LifeDraft life, Verdict verdict) {
        LocalDate born = life.origin().fittedOn();
        if (born == null) {
            return out("its age is not known: " + life.origin().why());
        }
        boolean fitted = life.origin().basis() == OriginBasis.RECORDED_FITTING;
        if (!fitted && life.firstAnswered() == null) {
            return out("it never answered while the vehicle was under observation");
        }
        if (fitted && life.readings().isEmpty() && !verdict.failed()) {
            return out("it was not tried since it was fitted");
        }
        // From a recorded fitting on, the sensor is watched from its first day; an original only once it was heard.
        long entry = fitted ? 0 : age(born, life.firstAnswered());
        long lower = verdict.lastGood() == null ? entry : age(born, verdict.lastGood());
        if (entry < 0 || lower < entry) {
            return out("its dates contradict each other: age zero on " + born + ", first answer on "
                    + life.firstAnswered() + ", last known good on " + verdict.lastGood());
        }
        if (!verdict.failed()) {
            return lower == entry
                    ? out(
                            fitted
                                    ? "it was not heard after the day it was fitted"
                                    : "it was heard on one day only, so it was under observation for no time")
                    : new LifeSample(Lifetime.censored((int) entry, (int) lower), null);
        }
        long upper = age(born, verdict.failedBy());
        if (upper <= entry) {
            return out(
                    fitted
                            ? "it is recorded as failed on the day it was fitted"
                            : "it was found failed when it was first read, so its life was not under observation");
        }
        if (upper < lower) {
            return out("its dates contradict each other: known good on " + verdict.lastGood() + ", known failed on "
                    + verdict.failedBy());
        }
        return new LifeSample(Lifetime.interval((int) entry, (int) lower, (int) upper), null);
    }

    private static LifeSample out(String why) {
        return new LifeSample(null, why);
    }

    private static long age(LocalDate born, LocalDate day) {
        return ChronoUnit.DAYS.between(born, day);
    }
}
