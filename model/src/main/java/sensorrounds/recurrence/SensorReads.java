package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.LifeReading;
import sensorrounds.visit.ReadOutcome;

/**
 * The reads of one sensor as evidence: when, how likely a sound sensor was to wake at one try, tries, answer, battery
 * report. Immutable, in time order.
 */
final class SensorReads implements Serializable {
    private static final long serialVersionUID = 1;

    /** Which of the reads count: the weight of one sign is what it adds to those before it. */
    enum Counted {
        /** Tries of answered reads. */
        ANSWERS,
        /** And silent reads. */
        ANSWERS_AND_SILENCE,
        /** And battery reports. */
        ALL
    }

    private static final int ANSWERED = 1;
    private static final int WARNED = 2;
    private static final int COLD = 4;
    private static final int OK = 8;
    private static final int LOW = 16;
    /** Of a sensor known failed only the battery reports count. */
    private static final int NOT_TRIED = 32;
    /** Tries of a silent read whose number nobody wrote down. */
    private static final int UNWRITTEN = 1;

    private final int[] lead;
    private final double[] chance;
    private final int[] tries;
    private final int[] flags;

    private SensorReads(int n) {
        lead = new int[n];
        chance = new double[n];
        tries = new int[n];
        flags = new int[n];
    }

    /**
     * @param readings in time order
     * @param firstWarned day from which a read's lead counts
     * @param warned visits with the warning on
     * @param failed whether the sensor is known failed
     */
    static SensorReads of(
            List<LifeReading> readings,
            LocalDate firstWarned,
            Set<String> warned,
            boolean failed,
            WakeModel model,
            ConditionSettings settings) {
        SensorReads reads = new SensorReads(readings.size());
        for (int i = 0; i < reads.size(); i++) {
            LifeReading r = readings.get(i);
            reads.lead[i] = Math.toIntExact(ChronoUnit.DAYS.between(r.day(), firstWarned));
            double p = model.chance(r);
            reads.chance[i] = Double.isNaN(p) ? settings.priorChance() : p;
            boolean tried = !failed && (r.answered() || r.outcome() == ReadOutcome.NO_ANSWER);
            reads.tries[i] = r.attempts() != null && !Double.isNaN(p) ? r.attempts() : r.answered() ? 0 : UNWRITTEN;
            boolean cold = r.ambientCelsius() != null && r.ambientCelsius() < settings.coldCelsius();
            reads.flags[i] = (r.answered() ? ANSWERED : 0)
                    | (warned.contains(r.visitId()) ? WARNED : 0)
                    | (cold ? COLD : 0)
                    | (tried ? 0 : NOT_TRIED)
                    | (r.battery() == null || !r.answered() ? 0 : r.battery().isLow(settings.battery()) ? LOW : OK);
        }
        return reads;
    }

    int size() {
        return lead.length;
    }

    /** Reads before the weakness began, if it began so many days before the first warning. */
    int before(int leadDays) {
        int n = 0;
        while (n < lead.length && lead[n] > leadDays) {
            n++;
        }
        return n;
    }

    boolean answered(int i) {
        return (flags[i] & ANSWERED) != 0;
    }

    boolean warned(int i) {
        return (flags[i] & WARNED) != 0;
    }

    boolean cold(int i) {
        return (flags[i] & COLD) != 0;
    }

    boolean low(int i) {
        return (flags[i] & LOW) != 0;
    }

    boolean reported(int i) {
        return (flags[i] & (LOW | OK)) != 0;
    }

    boolean tried(int i) {
        return (flags[i] & NOT_TRIED) == 0;
    }

    double chance(int i) {
        return chance[i];
    }

    int tries(int i) {
        return tries[i];
    }
}
