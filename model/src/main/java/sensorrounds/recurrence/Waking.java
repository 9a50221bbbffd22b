package sensorrounds.recurrence;

import java.util.Arrays;

/**
 * Likelihood of a run of reads by how slowly the sensor wakes and how often it is silent with the warning on. The two levels
 * are told apart only where the sensor was silent with the warning on; elsewhere the likelihood is a product.
 */
final class Waking {
    private static final int W = SuspectFigures.WAKE.length;
    private static final int S = SuspectFigures.SILENCE.length;
    static final Waking NOTHING = new Waking(ones(W), ones(S), null);

    private final double[] wake;
    private final double[] silence;
    /** By wake, then silence; null for nothing beside the product. */
    private final double[] joint;

    private Waking(double[] wake, double[] silence, double[] joint) {
        this.wake = wake;
        this.silence = silence;
        this.joint = joint;
    }

    private static double[] ones(int n) {
        double[] all = new double[n];
        Arrays.fill(all, 1);
        return all;
    }

    /** One read, relative to its greatest likelihood. */
    static Waking of(SensorReads reads, int i, double missed) {
        if (!reads.tried(i)) {
            return NOTHING;
        }
        double p = ReadLikelihood.heard(reads.chance(i), missed);
        int tries = reads.tries(i);
        double[] wake = new double[W];
        for (int k = 0; k < W; k++) {
            double odds = SuspectFigures.WAKE[k] * p / (1 - p);
            double q = odds / (1 + odds);
            wake[k] = !reads.answered(i) ? Math.pow(1 - q, tries) : tries == 0 ? 1 : q * Math.pow(1 - q, tries - 1);
        }
        double[] heard = ones(S);
        for (int s = 0; s < S && reads.warned(i); s++) {
            heard[s] = 1 - SuspectFigures.SILENCE[s];
        }
        if (reads.answered(i)) {
            return new Waking(relative(wake), heard, null);
        }
        if (!reads.warned(i)) {
            for (int k = 0; k < W; k++) {
                wake[k] = missed + (1 - missed) * wake[k];
            }
            return new Waking(relative(wake), heard, null);
        }
        double[] joint = new double[W * S];
        for (int j = 0; j < joint.length; j++) {
            joint[j] = 1 - heard[j % S] + heard[j % S] * wake[j / S];
        }
        return new Waking(ones(W), ones(S), relative(joint));
    }

    private static double[] relative(double[] values) {
        double most = Arrays.stream(values).max().orElseThrow();
        for (int i = 0; i < values.length; i++) {
            values[i] /= most;
        }
        return values;
    }

    static double[] product(double[] a, double[] b) {
        double[] all = new double[a.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = a[i] * b[i];
        }
        return all;
    }

    Waking and(Waking other) {
        return new Waking(
                product(wake, other.wake),
                product(silence, other.silence),
                joint == null ? other.joint : other.joint == null ? joint : product(joint, other.joint));
    }

    /** Mean over both levels. */
    double mean(double[] wakeLaw, double[] silenceLaw) {
        if (joint == null) {
            return SignLaw.mean(wakeLaw, wake) * SignLaw.mean(silenceLaw, silence);
        }
        double sum = 0;
        for (int k = 0; k < W; k++) {
            double row = 0;
            for (int s = 0; s < S; s++) {
                row += silenceLaw[s] * silence[s] * joint[k * S + s];
            }
            sum += wakeLaw[k] * wake[k] * row;
        }
        return sum;
    }

    /** Adds the levels expected to both counts, weighing p in all. */
    void count(double[] wakeLaw, double[] silenceLaw, double p, double[] wakes, double[] silences) {
        if (joint == null) {
            ReadLikelihood.add(wakeLaw, wake, p, wakes);
            ReadLikelihood.add(silenceLaw, silence, p, silences);
            return;
        }
        double total = mean(wakeLaw, silenceLaw);
        for (int k = 0; k < W; k++) {
            for (int s = 0; s < S; s++) {
                double share = p * wakeLaw[k] * wake[k] * silenceLaw[s] * silence[s] * joint[k * S + s] / total;
                wakes[k] += share;
                silences[s] += share;
            }
        }
    }
}
