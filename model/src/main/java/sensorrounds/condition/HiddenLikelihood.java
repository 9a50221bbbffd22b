package sensorrounds.condition;

import java.util.Arrays;

/**
 * Log-likelihood of one sensor's readings at one point, its derivatives, and the chances of its conditions after the last
 * reading: the forward algorithm with scaling and its transpose backwards (Rabiner 1989, Proc. IEEE 77:257; the
 * derivatives by Fisher's identity, Fisher 1925, Proc. Camb. Phil. Soc. 22:700). Given not dead at entry. A few dozen
 * operations per reading, no exponential. Holds work space: one per thread.
 */
final class HiddenLikelihood {
    private static final int NOTHING_SEEN = -3;

    private final HiddenTables tables;
    private final double[] score;
    private int steps;
    private int[] stepBand = new int[64];
    private int[] stepDays = new int[64];
    private int[] stepCode = new int[64];
    private double[] good = new double[64];
    private double[] weak = new double[64];
    private double[] scale = new double[64];
    private double goodNow;
    private double weakNow;

    HiddenLikelihood(HiddenTables tables) {
        this.tables = tables;
        this.score = new double[tables.parameters.size()];
    }

    /** Log-likelihood; minus infinity when the readings cannot happen. Leaves {@link #goodNow} and {@link #weakNow}. */
    double value(HiddenReadings readings) {
        layOut(readings);
        goodNow = 1;
        weakNow = 0;
        if (readings.entryDays() > 0) {
            double[] at = tables.conditionAt(readings.entryDays());
            goodNow = at[0] / (at[0] + at[1]);
            weakNow = at[1] / (at[0] + at[1]);
        }
        double dead = 0;
        double value = 0;
        // Logs are slow; a product of scales stays in range for many readings.
        double product = 1;
        for (int s = 0; s < steps; s++) {
            good[s] = goodNow;
            weak[s] = weakNow;
            double[] p = tables.chances[stepBand[s]];
            int i = HiddenTables.ROW * stepDays[s];
            double g = goodNow * p[i + HiddenTables.GG];
            double w = goodNow * p[i + HiddenTables.GW] + weakNow * p[i + HiddenTables.WW];
            double d = dead + goodNow + weakNow - g - w;
            int code = stepCode[s];
            if (code != NOTHING_SEEN) {
                g *= ifGood(code);
                w *= ifWeak(code);
                d *= ifDead(code);
            }
            double sum = g + w + d;
            if (!(sum > 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            scale[s] = sum;
            goodNow = g / sum;
            weakNow = w / sum;
            dead = d / sum;
            product *= sum;
            if (product < 1e-200) {
                value += Math.log(product);
                product = 1;
            }
        }
        return value + Math.log(product);
    }

    /** Chance of being good after the last reading, from the last call. */
    double goodNow() {
        return goodNow;
    }

    double weakNow() {
        return weakNow;
    }

    /** As {@link #value}, and leaves the derivatives in {@link #score}. */
    double valueAndScore(HiddenReadings readings) {
        double value = value(readings);
        Arrays.fill(score, 0);
        if (value == Double.NEGATIVE_INFINITY) {
            return value;
        }
        double afterGood = 1;
        double afterWeak = 1;
        double afterDead = 1;
        int bands = tables.bands;
        for (int s = steps - 1; s >= 0; s--) {
            double[] p = tables.chances[stepBand[s]];
            int i = HiddenTables.ROW * stepDays[s];
            double a = good[s];
            double b = weak[s];
            int code = stepCode[s];
            if (code != NOTHING_SEEN) {
                afterGood *= ifGood(code);
                afterWeak *= ifWeak(code);
                afterDead *= ifDead(code);
                if (code >= 0) {
                    countSeen(
                            code,
                            a * p[i + HiddenTables.GG] * afterGood / scale[s],
                            (a * p[i + HiddenTables.GW] + b * p[i + HiddenTables.WW]) * afterWeak / scale[s]);
                }
            }
            double goodOverDead = (afterGood - afterDead) / scale[s];
            double weakOverDead = (afterWeak - afterDead) / scale[s];
            score[stepBand[s]] += a
                    * (goodOverDead * p[i + HiddenTables.GG_WEAKENING]
                            + weakOverDead * p[i + HiddenTables.GW_WEAKENING]);
            score[bands + stepBand[s]] +=
                    weakOverDead * (a * p[i + HiddenTables.GW_DYING] + b * p[i + HiddenTables.WW_DYING]);
            score[2 * bands] +=
                    a * (goodOverDead * p[i + HiddenTables.GG_SUDDEN] + weakOverDead * p[i + HiddenTables.GW_SUDDEN]);
            afterDead /= scale[s];
            afterGood = goodOverDead * p[i + HiddenTables.GG] + weakOverDead * p[i + HiddenTables.GW] + afterDead;
            afterWeak = weakOverDead * p[i + HiddenTables.WW] + afterDead;
        }
        if (readings.entryDays() > 0) {
            addEntry(readings.entryDays(), afterGood, afterWeak);
        }
        return value;
    }

    double[] score() {
        return score;
    }

    /** How the condition at entry, given not dead, moves with the rates. */
    private void addEntry(int age, double afterGood, double afterWeak) {
        double[] at = tables.conditionAt(age);
        int n = tables.rates();
        double total = at[0] + at[1];
        double mean = (at[0] * afterGood + at[1] * afterWeak) / total;
        for (int k = 0; k < n; k++) {
            score[k] += (at[2 + k] * (afterGood - mean) + at[2 + n + k] * (afterWeak - mean)) / total;
        }
    }

    private void countSeen(int code, double wasGood, double wasWeak) {
        int wakeIndex = code / HiddenReadings.BATTERIES;
        int battery = code - HiddenReadings.BATTERIES * wakeIndex;
        score[tables.parameters.wake()] += wasWeak * tables.wakes[3 * wakeIndex + 2];
        if (battery > 0) {
            boolean cold = HiddenReadings.isCold(battery);
            score[tables.parameters.report(false, cold)] += wasGood * tables.batteries[4 * battery + 2];
            score[tables.parameters.report(true, cold)] += wasWeak * tables.batteries[4 * battery + 3];
        }
    }

    private double ifGood(int code) {
        return code < 0
                ? code == HiddenReadings.KNOWN_ALIVE ? 1 : 0
                : tables.wakes[3 * (code / HiddenReadings.BATTERIES)]
                        * tables.batteries[4 * (code % HiddenReadings.BATTERIES)];
    }

    private double ifWeak(int code) {
        return code < 0
                ? code == HiddenReadings.KNOWN_ALIVE ? 1 : 0
                : tables.wakes[3 * (code / HiddenReadings.BATTERIES) + 1]
                        * tables.batteries[4 * (code % HiddenReadings.BATTERIES) + 1];
    }

    /** A dead sensor is silent for sure. */
    private static double ifDead(int code) {
        return code == HiddenReadings.KNOWN_DEAD || code >= 0 && (code / HiddenReadings.BATTERIES) % 2 == 0 ? 1 : 0;
    }

    /** Cuts the time between readings where the age bands do. */
    private void layOut(HiddenReadings readings) {
        steps = 0;
        int age = readings.entryDays();
        int band = tables.band(age);
        for (int r = 0; r < readings.size(); r++) {
            int to = readings.age(r);
            while (to > tables.from[band + 1]) {
                step(band, tables.from[band + 1] - age, NOTHING_SEEN);
                age = tables.from[++band];
            }
            step(band, to - age, readings.code(r));
            age = to;
        }
    }

    private void step(int band, int days, int code) {
        if (steps == stepBand.length) {
            int longer = 2 * steps;
            stepBand = Arrays.copyOf(stepBand, longer);
            stepDays = Arrays.copyOf(stepDays, longer);
            stepCode = Arrays.copyOf(stepCode, longer);
            good = Arrays.copyOf(good, longer);
            weak = Arrays.copyOf(weak, longer);
            scale = Arrays.copyOf(scale, longer);
        }
        stepBand[steps] = band;
        stepDays[steps] = days;
        stepCode[steps] = code;
        steps++;
    }
}
