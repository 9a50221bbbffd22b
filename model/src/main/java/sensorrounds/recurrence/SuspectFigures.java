package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.Locale;
import java.util.Optional;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.HiddenParameters;

/**
 * What the signs of suspects are weighed by: declared, taken from the hidden condition of the fleet's sensors, or learned
 * from its own vehicles whose warning recurs. Immutable.
 *
 * @param vehicles vehicles learned from; 0 when not learned
 * @param wake odds of waking, relative to a sound sensor, by {@link #WAKE}
 * @param silence chance to be silent at a visit with the warning on whatever the tries, by {@link #SILENCE}
 * @param low chance that a battery report is low, by {@link #LOW}
 * @param apart chance that sensor and gauge disagree, by {@link #APART}
 * @param naming chance that a code seen at a visit names the cause's place, by {@link #NAMING}
 * @param misnaming chance that one names any place else, by {@link #MISNAMING}
 * @param lead days from the beginning of the weakness to the first warning, by {@link #LEAD}
 * @param age weight of a sensor before other signs, by age class, the weight of "not a sensor" being 1
 * @param missed chance that a read of any sensor fails at a visit without the warning, however often it is tried
 * @param coldLow added to the log odds of a low report in the cold
 */
public record SuspectFigures(
        Basis basis,
        int vehicles,
        String note,
        SignLaw wake,
        SignLaw silence,
        SignLaw low,
        SignLaw apart,
        double[] naming,
        double[] misnaming,
        double[] lead,
        double[] age,
        double missed,
        double coldLow)
        implements Serializable {
    /** Where the figures come from; each rung stands on the one before it. */
    enum Basis {
        DECLARED,
        /** Reports, waking and drowned reads as fitted to all sensors of the fleet; the rest declared. */
        HIDDEN_CONDITION,
        /** Learned from the fleet's flagged vehicles, the figures of the rung before being worth some of them. */
        FLAGGED_VEHICLES
    }

    static final double[] WAKE = {1.6, 1.25, 1, 0.75, 0.5, 0.35, 0.2, 0.1, 0.05};
    static final double[] SILENCE = {0.005, 0.015, 0.03, 0.06, 0.12, 0.25, 0.5};
    static final double[] LOW = {0.005, 0.01, 0.017, 0.03, 0.05, 0.08, 0.15, 0.3, 0.55, 0.8, 0.95};
    static final double[] APART = {0.01, 0.05, 0.2, 0.5, 0.9};
    static final double[] NAMING = {0.01, 0.1, 0.3, 0.6, 0.9};
    static final double[] MISNAMING = {0.01, 0.025, 0.05, 0.1, 0.2, 0.4};
    /** Days; the last stands for all of its life. */
    static final int[] LEAD = {0, 30, 90, 180, 365, 730, Integer.MAX_VALUE};

    /** Where nothing is learned a weak sensor is taken as weak for long: its slow reads of earlier years count as now. */
    private static final double[] DECLARED_LEAD = {0.05, 0.1, 0.1, 0.05, 0.1, 0.1, 0.5};
    /** Years at which an age class ends; one more class beyond, and one for ages not known. */
    static final int[] AGE_LIMITS = {1, 2, 3, 4, 5, 6, 7, 8, 10};

    static final int AGE_CLASSES = AGE_LIMITS.length + 2;
    private static final double PLAIN_SILENCE = 0.015;
    private static final double SHOWN_SILENCE = 0.25;
    private static final double PLAIN_LOW = 0.02;
    private static final double SHOWN_LOW = 0.8;
    private static final double PLAIN_APART = 0.03;
    private static final double SHOWN_APART = 0.5;
    private static final double SHOWN_NAMING = 0.6;
    private static final double MISSED = 0.01;
    /** From a low report in two of a hundred to one in ten. */
    private static final double COLD_LOW = 1.7;

    /** The declared figures. */
    public static SuspectFigures declared(RecurrenceSettings settings) {
        return of(settings, settings.condition().slowOddsFactor(), PLAIN_LOW, SHOWN_LOW, MISSED, COLD_LOW, "");
    }

    /** With what the hidden condition of all sensors says, where it could be fitted. */
    public static SuspectFigures of(RecurrenceSettings settings, Optional<HiddenFit> fit) {
        if (fit.isEmpty() || !fit.get().converged()) {
            return declared(settings);
        }
        HiddenParameters p = fit.get().parameters();
        double coldGood = logOdds(p.low(false, true)) - logOdds(p.low(false, false));
        return of(
                        settings,
                        within(p.wakeOddsFactor(), 0.05, 0.6),
                        within(p.low(false, false), 0.005, 0.2),
                        within(p.low(true, false), 0.2, 0.95),
                        within(p.missedChance(), 0.001, 0.1),
                        within(coldGood, 0, 3),
                        String.format(
                                Locale.ROOT,
                                "waking, low reports and missed reads weighed as fitted to %d sensors",
                                fit.get().sensors()))
                .on(Basis.HIDDEN_CONDITION);
    }

    /** Where the weights come from, to be put behind another sentence; empty when they are declared. */
    String words() {
        return note.isEmpty() ? "" : "; " + note;
    }

    private static double logOdds(double p) {
        return Math.log(p / (1 - p));
    }

    private static double within(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    private SuspectFigures on(Basis rung) {
        return with(rung, note);
    }

    /** The same with more words at the end of its note. */
    SuspectFigures noting(String more) {
        return with(basis, note + more);
    }

    private SuspectFigures with(Basis rung, String words) {
        return new SuspectFigures(
                rung, vehicles, words, wake, silence, low, apart, naming, misnaming, lead, age, missed, coldLow);
    }

    private static SuspectFigures of(
            RecurrenceSettings settings,
            double slowFactor,
            double plainLow,
            double shownLow,
            double missed,
            double coldLow,
            String note) {
        SuspectWeights w = settings.weights();
        return new SuspectFigures(
                Basis.DECLARED,
                0,
                note,
                SignLaw.declared(
                        WAKE,
                        1,
                        slowFactor,
                        w.slowIfCause(),
                        settings.condition().slowPrior()),
                SignLaw.declared(SILENCE, PLAIN_SILENCE, SHOWN_SILENCE, w.silentIfCause(), w.silentIfOther()),
                SignLaw.declared(LOW, plainLow, shownLow, w.lowIfCause(), w.lowIfOther()),
                SignLaw.declared(APART, PLAIN_APART, SHOWN_APART, w.apartIfCause(), w.apartIfOther()),
                SignLaw.declared(NAMING, NAMING[0], SHOWN_NAMING, w.codeIfCause(), 0)
                        .cause(),
                SignLaw.spread(MISNAMING, w.codeIfOther()),
                DECLARED_LEAD,
                declaredAges(w),
                missed,
                coldLow);
    }

    private static double[] declaredAges(SuspectWeights w) {
        double[] age = new double[AGE_CLASSES];
        int from = 0;
        for (int i = 0; i < AGE_LIMITS.length; i++) {
            age[i] = w.ofAge(Math.round((from + AGE_LIMITS[i]) / 2.0 * SystemWarnings.DAYS_PER_YEAR));
            from = AGE_LIMITS[i];
        }
        age[AGE_LIMITS.length] = w.old();
        age[AGE_CLASSES - 1] = w.unknownAge();
        return age;
    }

    /** Age class of a sensor of so many days. */
    static int ageClass(long days) {
        int i = 0;
        while (i < AGE_LIMITS.length && days >= AGE_LIMITS[i] * SystemWarnings.DAYS_PER_YEAR) {
            i++;
        }
        return i;
    }

    static int unknownAge() {
        return AGE_CLASSES - 1;
    }
}
