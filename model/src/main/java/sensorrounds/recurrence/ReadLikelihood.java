package sensorrounds.recurrence;

import java.util.Arrays;

/**
 * What the reads of one sensor tell of its being behind the warnings, with the day its weakness began integrated over: until
 * then it reads like any other sensor, from then on as causes do. How slowly it wakes, how often it is silent with the
 * warning on and how often its battery is reported low are levels of its own, drawn from {@link SuspectFigures}; given these
 * the reads are independent. Tries are geometric (Weinberg and Gladen 1986, Biometrics 42:547).
 *
 * <p>Each read's likelihood is taken relative to its greatest over the levels, which cancels in every ratio.
 */
final class ReadLikelihood {
    private static final int LOWS = SuspectFigures.LOW.length;
    private static final double MOST_CHANCE = 0.995;

    /** Likelihood by levels of the reads up to a beginning of the weakness and after it; the last beginning is never. */
    private record Split(Waking wakeBefore, Waking wakeAfter, double[] lowBefore, double[] lowAfter) {}

    private final Split[] splits;
    /** By lead, the split it stands for. */
    private final int[] splitOf;

    ReadLikelihood(SensorReads reads, SensorReads.Counted counted, double missed, double coldLow) {
        int n = reads.size();
        Waking[] wakeTo = new Waking[n + 1];
        Waking[] wakeFrom = new Waking[n + 1];
        double[][] lowTo = new double[n + 1][];
        double[][] lowFrom = new double[n + 1][];
        Waking[] wake = new Waking[n];
        double[][] low = new double[n][];
        wakeTo[0] = Waking.NOTHING;
        lowTo[0] = nothing();
        for (int i = 0; i < n; i++) {
            boolean left = counted == SensorReads.Counted.ANSWERS && !reads.answered(i);
            wake[i] = left ? Waking.NOTHING : Waking.of(reads, i, missed);
            low[i] = counted == SensorReads.Counted.ALL ? low(reads, i, coldLow) : nothing();
            wakeTo[i + 1] = wakeTo[i].and(wake[i]);
            lowTo[i + 1] = Waking.product(lowTo[i], low[i]);
        }
        wakeFrom[n] = Waking.NOTHING;
        lowFrom[n] = nothing();
        for (int i = n - 1; i >= 0; i--) {
            wakeFrom[i] = wakeFrom[i + 1].and(wake[i]);
            lowFrom[i] = Waking.product(lowFrom[i + 1], low[i]);
        }
        int[] before = Arrays.stream(SuspectFigures.LEAD).map(reads::before).toArray();
        int[] used = Arrays.stream(before).distinct().toArray();
        splitOf = new int[before.length];
        splits = new Split[used.length + 1];
        for (int s = 0; s < used.length; s++) {
            int at = used[s];
            splits[s] = new Split(wakeTo[at], wakeFrom[at], lowTo[at], lowFrom[at]);
            for (int l = 0; l < before.length; l++) {
                splitOf[l] = before[l] == at ? s : splitOf[l];
            }
        }
        splits[used.length] = new Split(wakeTo[n], wakeFrom[n], lowTo[n], lowFrom[n]);
    }

    private static double[] nothing() {
        double[] all = new double[LOWS];
        Arrays.fill(all, 1);
        return all;
    }

    /**
     * Chance of waking a sound sensor at a try that is not drowned, from the chance counted over the first two tries of all
     * reads. With m the chance of a drowned read and x of a failed try, these see (1-m)(1-x^2) answers for 2m+(1-m)(x+x^2)
     * failures per read, a quadratic in x.
     */
    static double heard(double counted, double missed) {
        double r = (1 - counted) / counted;
        double off = 2 * missed / (1 - missed) - r;
        if (off >= 0) {
            return MOST_CHANCE;
        }
        double x = (Math.sqrt(1 - 4 * (1 + r) * off) - 1) / (2 * (1 + r));
        return Math.min(MOST_CHANCE, 1 - x);
    }

    private static double[] low(SensorReads reads, int i, double coldLow) {
        double[] all = nothing();
        for (int k = 0; k < LOWS && reads.reported(i); k++) {
            double odds = SuspectFigures.LOW[k] / (1 - SuspectFigures.LOW[k]) * (reads.cold(i) ? Math.exp(coldLow) : 1);
            all[k] = (reads.low(i) ? odds : 1) / (1 + odds);
        }
        return all;
    }

    /** The laws of one set of figures, mixed once for all sensors. */
    static final class Laws {
        private final double[] wakeCause;
        private final double[] wakeOther;
        private final double[] silenceCause;
        private final double[] silenceOther;
        private final double[] lowCause;
        private final double[] lowOther;
        private final double[] lead;

        Laws(SuspectFigures f) {
            wakeCause = f.wake().cause();
            wakeOther = f.wake().other();
            silenceCause = f.silence().cause();
            silenceOther = f.silence().other();
            lowCause = f.low().cause();
            lowOther = f.low().other();
            lead = f.lead();
        }
    }

    /** How much likelier the reads are of the sensor behind the warnings than of another. */
    double ratio(Laws laws) {
        return Arrays.stream(bySplit(laws)).sum() / other(laws);
    }

    /** Likelihood of the reads of a sensor that is not the cause, up to a factor that no figure moves. */
    double other(Laws laws) {
        return before(splits[splits.length - 1], laws);
    }

    private static double before(Split s, Laws laws) {
        return s.wakeBefore.mean(laws.wakeOther, laws.silenceOther) * SignLaw.mean(laws.lowOther, s.lowBefore);
    }

    private static double after(Split s, Laws laws) {
        return s.wakeAfter.mean(laws.wakeCause, laws.silenceCause) * SignLaw.mean(laws.lowCause, s.lowAfter);
    }

    private double[] bySplit(Laws laws) {
        double[] weight = leads(laws);
        for (int s = 0; s < weight.length; s++) {
            weight[s] *= before(splits[s], laws) * after(splits[s], laws);
        }
        return weight;
    }

    private double[] leads(Laws laws) {
        double[] weight = new double[splits.length - 1];
        for (int l = 0; l < splitOf.length; l++) {
            weight[splitOf[l]] += laws.lead[l];
        }
        return weight;
    }

    /** Adds the levels this sensor is expected to have, it being the cause with a probability. */
    void count(Laws laws, double isCause, SuspectCounts counts) {
        countBefore(splits[splits.length - 1], laws, 1 - isCause, counts);
        double[] weight = bySplit(laws);
        double[] leads = leads(laws);
        double total = Arrays.stream(weight).sum();
        for (int l = 0; l < splitOf.length; l++) {
            counts.lead[l] += isCause * weight[splitOf[l]] / total * laws.lead[l] / leads[splitOf[l]];
        }
        for (int s = 0; s < weight.length; s++) {
            double p = isCause * weight[s] / total;
            countBefore(splits[s], laws, p, counts);
            splits[s].wakeAfter.count(
                    laws.wakeCause, laws.silenceCause, p, counts.wake.cause(), counts.silence.cause());
            add(laws.lowCause, splits[s].lowAfter, p, counts.low.cause());
        }
    }

    private static void countBefore(Split s, Laws laws, double p, SuspectCounts counts) {
        s.wakeBefore.count(laws.wakeOther, laws.silenceOther, p, counts.wake.other(), counts.silence.other());
        add(laws.lowOther, s.lowBefore, p, counts.low.other());
    }

    static void add(double[] law, double[] likelihood, double p, double[] counts) {
        double each = p / SignLaw.mean(law, likelihood);
        for (int k = 0; k < law.length; k++) {
            counts[k] += each * law[k] * likelihood[k];
        }
    }
}
