package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sensorrounds.condition.RoadVisits.Sign;
import sensorrounds.history.FailureCause;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;

/**
 * What was seen of one sensor, packed: two whole numbers per visit. The sensor was good at age 0 and is known not to have
 * been dead at its entry age (left truncation); what was read before is left out. Of several tries on one day the first
 * answer counts, else the first silence: they share their causes. The last entry is the as-of day, or the day its life
 * ended: until then nobody was called to it. Immutable.
 */
public final class HiddenReadings implements Serializable {
    private static final long serialVersionUID = 1;

    static final int KNOWN_DEAD = -1;
    static final int KNOWN_ALIVE = -2;
    /** A visit at which this sensor was not tried, or no visit at all. */
    static final int NOT_READ = -3;
    /** Battery reports: none, or OK or low, in the cold or not. */
    static final int BATTERIES = 5;

    private static final int LOW = 2;
    private static final int TRIES = WakeCells.MAX_TRIES + 1;
    private static final int AGE_BITS = 16;
    private static final int AGE_MASK = (1 << AGE_BITS) - 1;
    private static final Sign[] SIGNS = Sign.values();

    private final int cohort;
    private final int fittedDay;
    private final int entryDays;
    private final boolean failed;
    /** Age in days with the context above it, and code, in turns. */
    private final int[] packed;

    private HiddenReadings(int cohort, int fittedDay, int entryDays, boolean failed, int[] packed) {
        this.cohort = cohort;
        this.fittedDay = fittedDay;
        this.entryDays = entryDays;
        this.failed = failed;
        this.packed = packed;
    }

    /** Why a life can have no readings here, in words; empty when it can. */
    public static Optional<String> exclusion(SensorLife life) {
        if (life.end() == LifeEnd.PLACE_SUSPECTED) {
            return Optional.of("the place is suspected, not the sensor");
        }
        if (life.basis() == OriginBasis.UNKNOWN || life.fittedOn() == null) {
            return Optional.of("its age is not known");
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
     * What was seen of a life up to and including {@code asOf}.
     *
     * <p>A sensor counts as known dead from the visit at which its failure was seen: a broken stem, water, damage in the
     * work. One that was silent does not, whether it was left or taken out: crews take weak sensors for dead ones, and its
     * silence speaks for itself.
     *
     * @param unheard days at which the reader heard nothing at all, see {@link UnheardVisits}
     * @param cohort name of the cohort whose law it follows; ignored where the model has one cohort
     * @return empty for a life with an {@link #exclusion}, one that began after {@code asOf}, or one with an age past
     *     reckoning
     */
    static Optional<HiddenReadings> of(
            SensorLife life,
            RoadVisits visits,
            Set<LocalDate> unheard,
            HiddenModel model,
            String cohort,
            LocalDate asOf) {
        if (exclusion(life).isPresent()) {
            return Optional.empty();
        }
        // From a recorded fitting on, the sensor is watched from its first day; an original only once it was heard.
        boolean fromFitting = life.basis() == OriginBasis.RECORDED_FITTING;
        LocalDate entry = fromFitting ? life.fittedOn() : life.firstAnswered();
        return of(life, visits, unheard, model, cohort, asOf, life.fittedOn(), entry);
    }

    /** As above for a life taken to be fitted on a day, and to be under observation from another. */
    static Optional<HiddenReadings> of(
            SensorLife life,
            RoadVisits visits,
            Set<LocalDate> unheard,
            HiddenModel model,
            String cohort,
            LocalDate asOf,
            LocalDate fitted,
            LocalDate entry) {
        if (fitted.isAfter(asOf) || entry.isAfter(asOf)) {
            return Optional.empty();
        }
        boolean failed = life.end() == LifeEnd.FAILED
                && life.firstKnownFailed() != null
                && !life.firstKnownFailed().isAfter(asOf);
        LocalDate dead = failed && life.endedOn() != null && wasSeen(life.cause()) ? foundDead(life) : null;
        LocalDate end =
                dead != null ? dead : life.endedOn() != null && life.endedOn().isBefore(asOf) ? life.endedOn() : asOf;
        int endAge = days(fitted, end);
        if (Math.max(endAge, days(fitted, entry)) >= HiddenSettings.MAX_AGE_DAYS) {
            return Optional.empty();
        }
        Map<LocalDate, LifeReading> read = counted(life, unheard, dead);
        Builder builder = new Builder(number(model, cohort), days(fitted, entry));
        builder.fittedDay = ColdSeason.day(fitted);
        builder.failed = failed;
        boolean monitored = visits.monitored(life, 0);
        List<LocalDate> days = visits.days();
        for (int v = 0; v < days.size() && !days.get(v).isAfter(end); v++) {
            LocalDate day = days.get(v);
            if (day.isBefore(entry)) {
                monitored = visits.monitored(life, v);
                continue;
            }
            LifeReading r = read.get(day);
            // On the day of its fitting the warning told of the sensor before it.
            boolean dies = day.equals(dead) && r == null;
            Sign shown = dies ? visits.signOfBreak(day) : visits.sign(day);
            Sign sign = monitored && day.isAfter(fitted) ? shown : Sign.NONE;
            boolean after = visits.monitored(life, v);
            if (dies) {
                builder.add(Math.max(days(fitted, day), builder.entryDays + 1), context(monitored, sign), KNOWN_DEAD);
            } else if (r != null || sign != Sign.NONE || after != monitored) {
                int code = r == null ? NOT_READ : code(r, model);
                builder.add(days(fitted, day), context(monitored, sign), code);
            }
            monitored = after;
        }
        if (dead != null && !builder.endsWith(KNOWN_DEAD)) {
            // An answer on the day of the failure came before it; days are the grain of time here.
            builder.add(Math.max(endAge, builder.lastAge() + 1), context(monitored, Sign.NONE), KNOWN_DEAD);
        } else if (dead == null && endAge > builder.lastAge()) {
            builder.add(endAge, context(monitored, Sign.NONE), NOT_READ);
        }
        return Optional.of(builder.build());
    }

    private static boolean wasSeen(FailureCause cause) {
        return cause == FailureCause.STEM_OR_CORROSION
                || cause == FailureCause.INGRESS
                || cause == FailureCause.TYRE_CHANGE_DAMAGE;
    }

    private static int number(HiddenModel model, String cohort) {
        return model.cohorts().size() == 1 ? 0 : model.cohorts().number(cohort);
    }

    /** The visit that found it: its first silence since it is known failed, else the day it was taken out. */
    private static LocalDate foundDead(SensorLife life) {
        return life.readings().stream()
                .filter(r -> SlowWaking.tried(r) && !r.answered() && !r.day().isBefore(life.firstKnownFailed()))
                .map(LifeReading::day)
                .filter(d -> !d.isAfter(life.endedOn()))
                .findFirst()
                .orElse(life.endedOn());
    }

    /** A sensor can answer with its stem broken: at the visit that saw it, the break counts and the answer does not. */
    private static Map<LocalDate, LifeReading> counted(SensorLife life, Set<LocalDate> unheard, LocalDate dead) {
        boolean answerCounts = life.cause() == FailureCause.TYRE_CHANGE_DAMAGE;
        Map<LocalDate, LifeReading> read = new HashMap<>();
        for (LifeReading r : life.readings()) {
            if (SlowWaking.tried(r)
                    && !unheard.contains(r.day())
                    && (dead == null || r.day().isBefore(dead) || r.answered() && answerCounts)) {
                read.merge(r.day(), r, (a, b) -> a.answered() || !b.answered() ? a : b);
            }
        }
        return read;
    }

    private static int days(LocalDate fitted, LocalDate day) {
        return Math.toIntExact(ChronoUnit.DAYS.between(fitted, day));
    }

    private static int code(LifeReading r, HiddenModel model) {
        WakeChances chances = model.wake();
        ConditionSettings condition = chances.settings();
        boolean cold = r.ambientCelsius() != null && r.ambientCelsius() < condition.coldCelsius();
        int battery = r.battery() == null || !r.answered()
                ? 0
                : 1 + (r.battery().isLow(condition.battery()) ? LOW : 0) + (cold ? 1 : 0);
        int tries = r.attempts() != null
                ? r.attempts()
                : r.answered() ? 0 : model.settings().triesWhenNotWritten();
        return code(chances.cell(r), tries, r.answered(), battery);
    }

    /** @param tries 0 when not known; more than are counted count as the most that are */
    static int code(int cell, int tries, boolean answered, int battery) {
        return (wakeIndex(cell, Math.min(tries, WakeCells.MAX_TRIES), answered)) * BATTERIES + battery;
    }

    static int wakeIndex(int cell, int tries, boolean answered) {
        return 2 * (cell * TRIES + tries) + (answered ? 1 : 0);
    }

    /** Number of the cell of a wake index. */
    static int cell(int wakeIndex) {
        return wakeIndex / 2 / TRIES;
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

    /** Whether a death would have shown in the time before an entry, and the sign at its visit. */
    static int context(boolean monitored, Sign sign) {
        return 2 * sign.ordinal() + (monitored ? 1 : 0);
    }

    static boolean isMonitored(int context) {
        return (context & 1) == 1;
    }

    static Sign sign(int context) {
        return SIGNS[context >> 1];
    }

    int cohort() {
        return cohort;
    }

    /** Day on which it was fitted, or is taken to have been: where in the year its ages lie. */
    int fittedDay() {
        return fittedDay;
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
        return packed[2 * i] & AGE_MASK;
    }

    int context(int i) {
        return packed[2 * i] >> AGE_BITS;
    }

    int code(int i) {
        return packed[2 * i + 1];
    }

    int lastAge() {
        return packed.length == 0 ? entryDays : age(size() - 1);
    }

    /** These readings and then the knowledge that the sensor is dead, or is not, at an age not before the last. */
    HiddenReadings and(int code, int age) {
        int[] longer = Arrays.copyOf(packed, packed.length + 2);
        longer[packed.length] = age;
        longer[packed.length + 1] = code;
        return new HiddenReadings(cohort, fittedDay, entryDays, failed, longer);
    }

    /** Collects readings in order of age. */
    static final class Builder {
        private final int cohort;
        private final int entryDays;
        private int[] packed = new int[16];
        private int length;
        private boolean lastAnswered;
        private boolean failed;
        private int fittedDay;

        Builder(int entryDays) {
            this(0, entryDays);
        }

        Builder(int cohort, int entryDays) {
            this.cohort = cohort;
            this.entryDays = entryDays;
        }

        Builder fittedOn(int day) {
            fittedDay = day;
            return this;
        }

        /** A read on a vehicle that shows no warning. */
        Builder read(int age, int code, boolean answered) {
            if (length > 0 && lastAge() == age) {
                if (lastAnswered || !answered) {
                    return this;
                }
                length -= 2;
            }
            lastAnswered = answered;
            return add(age, context(false, Sign.NONE), code);
        }

        Builder dead(int age) {
            failed = true;
            return add(age, context(false, Sign.NONE), KNOWN_DEAD);
        }

        Builder add(int age, int context, int code) {
            if (length == packed.length) {
                packed = Arrays.copyOf(packed, 2 * length);
            }
            packed[length++] = age | context << AGE_BITS;
            packed[length++] = code;
            return this;
        }

        private int lastAge() {
            return length == 0 ? entryDays : packed[length - 2] & AGE_MASK;
        }

        private boolean endsWith(int code) {
            return length > 0 && packed[length - 1] == code;
        }

        HiddenReadings build() {
            return new HiddenReadings(cohort, fittedDay, entryDays, failed, Arrays.copyOf(packed, length));
        }
    }
}
