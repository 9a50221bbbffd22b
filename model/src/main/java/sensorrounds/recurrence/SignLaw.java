package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.Arrays;

/**
 * How strongly a sign shows: each sensor has a level of its own. Sensors behind recurring warnings either show the sign, at
 * levels drawn from one law, or are like all others, which follow another law. What the sign tells of one sensor is the ratio
 * of the mixtures, and stays below the ratio of the laws however often it is seen.
 *
 * @param other shares of the levels among sensors that are not the cause; they add up to 1
 * @param shown shares of the levels among causes that show the sign; they add up to 1
 * @param share share of causes that show it
 */
record SignLaw(double[] other, double[] shown, double share) implements Serializable {
    /** Of those that show a sign, this share shows it at any level, the rest at the declared one. */
    private static final double ANY = 0.4;
    /** Of those that do not, this share lies at the levels next to the declared one, so that learning can move there. */
    private static final double BESIDE = 0.1;

    /**
     * A declared law: some sensors show the sign, alike for cause and other, and the rest do not.
     *
     * @param levels rising or falling from those that do not show the sign to those that do
     * @param plain level of those that do not show it
     * @param showing level of those that do
     * @param ifCause share of causes that show it
     * @param ifOther share of others, at most that of causes
     */
    static SignLaw declared(double[] levels, double plain, double showing, double ifCause, double ifOther) {
        double[] at = at(levels, plain);
        double[] shown = at(levels, showing);
        int beyond = at.length - 1;
        while (at[beyond] == 0) {
            beyond--;
        }
        for (int i = 0; i < shown.length; i++) {
            shown[i] = (1 - ANY) * shown[i] + (i <= beyond ? 0 : ANY / (shown.length - 1 - beyond));
        }
        double[] other = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            other[i] += (1 - ifOther) * (1 - BESIDE) * at[i] + ifOther * shown[i];
            other[Math.max(0, i - 1)] += (1 - ifOther) * BESIDE / 2 * at[i];
            other[Math.min(beyond, i + 1)] += (1 - ifOther) * BESIDE / 2 * at[i];
        }
        // Of the causes that are like others a share shows the sign as others do.
        return new SignLaw(other, shown, (ifCause - ifOther) / (1 - ifOther));
    }

    /** All at one level; between two of them, shared so that the mean of the logs is right. */
    static double[] at(double[] levels, double level) {
        double[] law = new double[levels.length];
        int last = levels.length - 1;
        double sign = Math.signum(levels[last] - levels[0]);
        for (int i = 0; i < last; i++) {
            if (sign * level < sign * levels[i + 1] || i + 1 == last) {
                double way = Math.log(level / levels[i]) / Math.log(levels[i + 1] / levels[i]);
                law[i + 1] = Math.min(1, Math.max(0, way));
                law[i] = 1 - law[i + 1];
                return law;
            }
        }
        throw new IllegalArgumentException("a law wants two levels or more, not " + Arrays.toString(levels));
    }

    /** Half at one level, the other half at any. */
    static double[] spread(double[] levels, double level) {
        double[] law = at(levels, level);
        for (int i = 0; i < law.length; i++) {
            law[i] = 0.5 * law[i] + 0.5 / law.length;
        }
        return law;
    }

    /** Shares of the levels among causes. */
    double[] cause() {
        double[] law = new double[other.length];
        for (int i = 0; i < law.length; i++) {
            law[i] = (1 - share) * other[i] + share * shown[i];
        }
        return law;
    }

    /** What the sign tells: likelihood by level, under the law of causes over that of others. */
    double ratio(double[] likelihood) {
        return mean(cause(), likelihood) / mean(other, likelihood);
    }

    static double mean(double[] law, double[] values) {
        double sum = 0;
        for (int i = 0; i < law.length; i++) {
            sum += law[i] * values[i];
        }
        return sum;
    }

    /** Expected numbers of sensors at each level. */
    record Counts(double[] cause, double[] other) {
        static Counts of(double[] levels) {
            return new Counts(new double[levels.length], new double[levels.length]);
        }
    }

    /** The law of most probability given expected numbers under the present one, this law being worth so many causes. */
    SignLaw next(SignLaw now, Counts counts, double worth) {
        double[] like = counts.other().clone();
        double[] showing = new double[like.length];
        double[] cause = now.cause();
        double shows = 0;
        double all = 0;
        for (int i = 0; i < like.length; i++) {
            showing[i] = cause[i] == 0 ? 0 : counts.cause()[i] * now.share * now.shown[i] / cause[i];
            like[i] += counts.cause()[i] - showing[i];
            shows += showing[i];
            all += counts.cause()[i];
        }
        return new SignLaw(
                shares(other, like, worth), shares(shown, showing, worth), (worth * share + shows) / (worth + all));
    }

    /** Shares begun with, worth so many, and those counted. */
    static double[] shares(double[] start, double[] counts, double worth) {
        double total = worth + Arrays.stream(counts).sum();
        double[] shares = new double[counts.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = (worth * start[i] + counts[i]) / total;
        }
        return shares;
    }
}
