package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;

/**
 * What was seen of one sensor, packed: two whole numbers per reading. The sensor was good at age 0 and is known not to
 * have been dead at its entry age (left truncation); what was read before is left out. Of several tries on one day the
 * first answer counts, else the first silence: they share their causes. Immutable.
 */
public final class HiddenReadings implements Serializable {
    private static final long serialVersionUID = 1;

    static final int KNOWN_DEAD = -1;
    static final int KNOWN_ALIVE = -2;
    /** Battery reports: none, or OK or low, in the cold or not. */
    static final int BATTERIES = 5;

    private static final int LOW = 2;
    private static final int TRIES = WakeCells.MAX_TRIES + 1;

    private final int entryDays;
    private final boolean failed;
    /** Age in days and code, in turns. */
    private final int[] packed;

    private HiddenReadings(int entryDays, boolean failed, int[] packed) {
        this.entryDays = entryDays;
        this.failed = failed;
        this.packed = packed;
    }

    /** Why a life can have no readings here, in words; empty when it can. */
    public static Optional<String> exclusion(SensorLife life) {
        if (life.basis() == OriginBasis.UNKNOWN || life.fittedOn() == null) {
            return Optional.of("its age is not known");
        }
        if (life.end() == LifeEnd.PLACE_SUSPECTED) {
            return Optional.of("the place is suspected, not the sensor");
        }
        boolean watchedFromFitting = life.basis() == OriginBasis.RECORDED_FITTING;
        if (!watchedFromFitting && life.firstAnswered() == null) {
            return Optional.of("it never answered while the vehicle was under observation");
        }
        return !watchedFromFitting && life.firstAnswered().isBefore(life.fittedOn())
                ? Optional.of("it answered on " + life.firstAnswered() + ", before its fitting on " + life.fittedOn())
                : Optional.empty();
    }

    /**
     * Readings of a life up to and including {@code asOf}.
     *
     * <p>A failed sensor that was taken out counts as known dead from the day it was first known failed; one that is
     * merely silent and still on the wheel does not, its silence speaks for itself.
     *
     * @param unheard days at which the reader heard nothing at all, see {@link UnheardVisits}
     * @return empty for a life with an {@link #exclusion}, one that began after {@code asOf}, or one with an age past
     *     reckoning
     */
    public static Optional<HiddenReadings> of(
            SensorLife life, Set<LocalDate> unheard, WakeChances chances, HiddenSettings settings, LocalDate asOf) {
        if (exclusion(life).isPresent() || life.fittedOn().isAfter(asOf)) {
            return Optional.empty();
        }
        boolean failed = life.end() == LifeEnd.FAILED
                && life.firstKnownFailed() != null
                && !life.firstKnownFailed().isAfter(asOf);
        LocalDate dead = failed && life.endedOn() != null ? life.firstKnownFailed() : null;
        // From a recorded fitting on, the sensor is watched from its first day; an original only once it was heard.
        Builder builder =
                new Builder(life.basis() == OriginBasis.RECORDED_FITTING ? 0 : days(life, life.firstAnswered()));
        for (LifeReading r : life.readings()) {
            boolean counts = SlowWaking.tried(r)
                    && !r.day().isAfter(asOf)
                    && !unheard.contains(r.day())
                    && (dead == null || r.day().isBefore(dead) || r.answered());
            int age = days(life, r.day());
            if (counts && age >= builder.entryDays) {
                builder.read(age, code(r, chances, settings), r.answered());
            }
        }
        if (dead != null) {
            // An answer on the day of the failure came before it; days are the grain of time here.
            builder.dead(Math.max(days(life, dead), builder.lastAge() + 1));
        } else if (failed) {
            builder.failed = true;
        }
        return builder.lastAge() > HiddenSettings.MAX_AGE_DAYS || builder.entryDays > days(life, asOf)
                ? Optional.empty()
                : Optional.of(builder.build());
    }

    private static int days(SensorLife life, LocalDate day) {
        return Math.toIntExact(ChronoUnit.DAYS.between(life.fittedOn(), day));
    }

    private static int code(LifeReading r, WakeChances chances, HiddenSettings settings) {
        ConditionSettings condition = chances.settings();
        boolean cold = r.ambientCelsius() != null && r.ambientCelsius() < condition.coldCelsius();
        int battery = r.battery() == null || !r.answered()
                ? 0
                : 1 + (r.battery().isLow(condition.battery()) ? LOW : 0) + (cold ? 1 : 0);
        int tries = r.attempts() != null ? r.attempts() : r.answered() ? 0 : settings.triesWhenNotWritten();
        return code(chances.cell(r), tries, r.answered(), battery);
    }

    /** @param tries 0 when not known; more than are counted count as the most that are */
    static int code(int cell, int tries, boolean answered, int battery) {
        return (wakeIndex(cell, Math.min(tries, WakeCells.MAX_TRIES), answered)) * BATTERIES + battery;
    }

    static int wakeIndex(int cell, int tries, boolean answered) {
        return 2 * (cell * TRIES + tries) + (answered ? 1 : 0);
    }

    /** Index of a battery report. */
    static int battery(boolean low, boolean cold) {
        return 1 + (low ? LOW : 0) + (cold ? 1 : 0);
    }

    static boolean isLow(int battery) {
        return battery > LOW;
    }

    static boolean isCold(int battery) {
        return battery > 0 && (battery - 1) % 2 == 1;
    }

    int entryDays() {
        return entryDays;
    }

    /** Known or believed failed by its history. */
    boolean failed() {
        return failed;
    }

    int size() {
        return packed.length / 2;
    }

    int age(int i) {
        return packed[2 * i];
    }

    int code(int i) {
        return packed[2 * i + 1];
    }

    int lastAge() {
        return packed.length == 0 ? entryDays : packed[packed.length - 2];
    }

    /** These readings and then the knowledge that the sensor is dead, or is not, at an age not before the last. */
    HiddenReadings and(int code, int age) {
        int[] longer = Arrays.copyOf(packed, packed.length + 2);
        longer[packed.length] = age;
        longer[packed.length + 1] = code;
        return new HiddenReadings(entryDays, failed, longer);
    }

    /** Collects readings in order of age. */
    static final class Builder {
        private final int entryDays;
        private int[] packed = new int[16];
        private int length;
        private boolean lastAnswered;
        private boolean failed;

        Builder(int entryDays) {
            this.entryDays = entryDays;
        }

        Builder read(int age, int code, boolean answered) {
            if (length > 0 && packed[length - 2] == age) {
                if (lastAnswered || !answered) {
                    return this;
                }
                length -= 2;
            }
            lastAnswered = answered;
            return add(age, code);
        }

        Builder dead(int age) {
            failed = true;
            return add(age, KNOWN_DEAD);
        }

        private Builder add(int age, int code) {
            if (length == packed.length) {
                packed = Arrays.copyOf(packed, 2 * length);
            }
            packed[length++] = age;
            packed[length++] = code;
            return this;
        }

        private int lastAge() {
            return length == 0 ? entryDays : packed[length - 2];
        }

        HiddenReadings build() {
            return new HiddenReadings(entryDays, failed, Arrays.copyOf(packed, length));
        }
    }
}
