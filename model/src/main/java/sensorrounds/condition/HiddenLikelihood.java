package sensorrounds.condition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sensorrounds.condition.RoadVisits.Sign;

/**
 * Log-likelihood of one sensor's readings at one point, its derivatives, and the chances of its conditions after the last
 * reading: the forward algorithm with scaling and its transpose backwards (Rabiner 1989, Proc. IEEE 77:257; the
 * derivatives by Fisher's identity, Fisher 1925, Proc. Camb. Phil. Soc. 22:700). Given not dead at entry. A few dozen
 * operations per reading, no exponential. Holds work space: one per thread.
 *
 * <p>Death has two kinds: one whose warning will bring the driver in, unless somebody finds it first, and one nobody
 * reports. That no visit was called for since the last one is evidence against the first kind.
 */
final class HiddenLikelihood {
    private static final int NOTHING_SEEN = HiddenReadings.NOT_READ;
    private static final int PLAIN = HiddenReadings.context(false, Sign.NONE);

    private final HiddenTables tables;
    private final HiddenCohorts cohorts;
    private final double[] score;
    private final double share;
    private int steps;
    private int cohort;
    private int[] stepPiece = new int[64];
    private int[] stepDays = new int[64];
    private int[] stepCode = new int[64];
    private int[] stepContext = new int[64];
    /** Conditions before each step: good, weak, dead and to be reported, dead and not. */
    private double[] before = new double[256];

    private double[] scale = new double[64];
    private double goodNow;
    private double weakNow;
    private double reportedNow;
    private double quietNow;

    HiddenLikelihood(HiddenTables tables) {
        this.tables = tables;
        this.cohorts = tables.cohorts;
        this.share = tables.share;
        this.score = new double[tables.parameters.size()];
    }

    /** Log-likelihood; minus infinity when the readings cannot happen. Leaves {@link #goodNow} and {@link #weakNow}. */
    double value(HiddenReadings readings) {
        layOut(readings);
        goodNow = 1;
        weakNow = 0;
        reportedNow = 0;
        quietNow = 0;
        if (readings.entryDays() > 0) {
            double[] at = tables.conditionAt(cohort, readings.entryDays());
            goodNow = at[0] / (at[0] + at[1]);
            weakNow = at[1] / (at[0] + at[1]);
        }
        double value = 0;
        // Logs are slow; a product of scales stays in range for many readings.
        double product = 1;
        for (int s = 0; s < steps; s++) {
            before[4 * s] = goodNow;
            before[4 * s + 1] = weakNow;
            before[4 * s + 2] = reportedNow;
            before[4 * s + 3] = quietNow;
            move(s);
            int code = stepCode[s];
            if (code != NOTHING_SEEN || stepContext[s] > 1) {
                goodNow *= ifGood(code, stepContext[s]);
                weakNow *= ifWeak(code, stepContext[s]);
                reportedNow *= ifReported(code, stepContext[s]);
                quietNow *= ifQuiet(code, stepContext[s]);
            }
            double sum = goodNow + weakNow + reportedNow + quietNow;
            if (!(sum > 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            scale[s] = sum;
            goodNow /= sum;
            weakNow /= sum;
            reportedNow /= sum;
            quietNow /= sum;
            if (foundSilent(code)) {
                // The technician knows now: whether the driver would have come tells no more.
                quietNow += reportedNow;
                reportedNow = 0;
            }
            product *= sum;
            if (product < 1e-200) {
                value += Math.log(product);
                product = 1;
            }
        }
        return value + Math.log(product);
    }

    private void move(int s) {
        double[] p = tables.chances[cohort][stepPiece[s]];
        int i = HiddenTables.ROW * stepDays[s];
        double g = goodNow;
        double w = weakNow;
        double died = g * (1 - p[i + HiddenTables.GG] - p[i + HiddenTables.GW]) + w * (1 - p[i + HiddenTables.WW]);
        goodNow = g * p[i + HiddenTables.GG];
        weakNow = g * p[i + HiddenTables.GW] + w * p[i + HiddenTables.WW];
        reportedNow = HiddenReadings.isMonitored(stepContext[s])
                ? reportedNow * tables.unreported[stepDays[s]]
                        + share * (g * p[i + HiddenTables.GU] + w * p[i + HiddenTables.WU])
                : reportedNow + share * died;
        quietNow += (1 - share) * died;
    }

    /** Chance of being good after the last reading, from the last call. */
    double goodNow() {
        return goodNow;
    }

    double weakNow() {
        return weakNow;
    }

    /** Conditions after each read of the sensor whose value was asked for last. */
    List<HiddenFilter.Condition> afterReads(HiddenReadings readings) {
        List<HiddenFilter.Condition> all = new ArrayList<>();
        int age = readings.entryDays();
        for (int s = 0; s < steps; s++) {
            age += stepDays[s];
            if (stepCode[s] >= 0) {
                boolean last = s + 1 == steps;
                double good = last ? goodNow : before[4 * s + 4];
                double weak = last ? weakNow : before[4 * s + 5];
                all.add(new HiddenFilter.Condition(cohort, age, good, weak, Math.max(0, 1 - good - weak)));
            }
        }
        return all;
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
        double afterReported = 1;
        double afterQuiet = 1;
        int shareAt = tables.parameters.reported();
        int reportingAt = tables.parameters.reporting();
        int bands = tables.bands;
        for (int s = steps - 1; s >= 0; s--) {
            double[] p = tables.chances[cohort][stepPiece[s]];
            int i = HiddenTables.ROW * stepDays[s];
            int band = cohorts.band(stepPiece[s]);
            double a = before[4 * s];
            double b = before[4 * s + 1];
            double c = before[4 * s + 2];
            int code = stepCode[s];
            int context = stepContext[s];
            boolean monitored = HiddenReadings.isMonitored(context);
            double goodStays = p[i + HiddenTables.GG];
            double turned = p[i + HiddenTables.GW];
            double weakStays = p[i + HiddenTables.WW];
            double goodDies = 1 - goodStays - turned;
            double weakDies = 1 - weakStays;
            double stays = monitored ? tables.unreported[stepDays[s]] : 1;
            double goodUnreported = monitored ? p[i + HiddenTables.GU] : goodDies;
            double weakUnreported = monitored ? p[i + HiddenTables.WU] : weakDies;
            if (foundSilent(code)) {
                afterReported = afterQuiet;
            }
            if (code != NOTHING_SEEN || context > 1) {
                afterGood *= ifGood(code, context);
                afterWeak *= ifWeak(code, context);
                afterReported *= ifReported(code, context);
                afterQuiet *= ifQuiet(code, context);
                double unreported = c * stays + share * (a * goodUnreported + b * weakUnreported);
                double quiet = before[4 * s + 3] + (1 - share) * (a * goodDies + b * weakDies);
                countSeen(
                        code,
                        context,
                        a * goodStays * afterGood / scale[s],
                        (a * turned + b * weakStays) * afterWeak / scale[s],
                        unreported * afterReported / scale[s],
                        quiet * afterQuiet / scale[s]);
            }
            afterGood /= scale[s];
            afterWeak /= scale[s];
            afterReported /= scale[s];
            afterQuiet /= scale[s];
            double overDead = (1 - share) * afterQuiet + (monitored ? 0 : share * afterReported);
            double overUnreported = monitored ? share * afterReported : 0;
            double goodLess = afterGood - overDead;
            double weakLess = afterWeak - overDead;
            score[band] += a
                    * (goodLess * p[i + HiddenTables.GG_WEAKENING]
                            + weakLess * p[i + HiddenTables.GW_WEAKENING]
                            + overUnreported * p[i + HiddenTables.GU_WEAKENING]);
            score[bands + band] += weakLess * (a * p[i + HiddenTables.GW_DYING] + b * p[i + HiddenTables.WW_DYING])
                    + overUnreported * (a * p[i + HiddenTables.GU_DYING] + b * p[i + HiddenTables.WU_DYING]);
            score[2 * bands] += a
                    * (goodLess * p[i + HiddenTables.GG_SUDDEN]
                            + weakLess * p[i + HiddenTables.GW_SUDDEN]
                            + overUnreported * p[i + HiddenTables.GU_SUDDEN]);
            score[shareAt] += share
                    * (1 - share)
                    * (afterReported * (a * goodUnreported + b * weakUnreported)
                            - afterQuiet * (a * goodDies + b * weakDies));
            if (monitored) {
                score[reportingAt] += afterReported
                        * (share * (a * p[i + HiddenTables.GU_REPORTING] + b * p[i + HiddenTables.WU_REPORTING])
                                - c * tables.reporting * stepDays[s] * stays);
            }
            double nextGood = afterGood * goodStays
                    + afterWeak * turned
                    + share * afterReported * goodUnreported
                    + (1 - share) * afterQuiet * goodDies;
            afterWeak = afterWeak * weakStays
                    + share * afterReported * weakUnreported
                    + (1 - share) * afterQuiet * weakDies;
            afterGood = nextGood;
            afterReported *= stays;
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
        double[] at = tables.conditionAt(cohort, age);
        int n = tables.rates();
        double total = at[0] + at[1];
        double mean = (at[0] * afterGood + at[1] * afterWeak) / total;
        for (int k = 0; k < n; k++) {
            score[k] += (at[2 + k] * (afterGood - mean) + at[2 + n + k] * (afterWeak - mean)) / total;
        }
    }

    private void countSeen(int code, int context, double good, double weak, double reported, double quiet) {
        HiddenParameters at = tables.parameters;
        if (code >= 0) {
            int wakeIndex = code / HiddenReadings.BATTERIES;
            int battery = code - HiddenReadings.BATTERIES * wakeIndex;
            int w = HiddenTables.WAKE_ROW * wakeIndex;
            double waking = weak * tables.wakes[w + 2];
            score[at.wake()] += waking;
            if (WakeChances.isCold(HiddenReadings.cell(wakeIndex))) {
                score[at.wakeCold()] += waking;
            }
            score[at.missed()] += good * tables.wakes[w + 3] + weak * tables.wakes[w + 4];
            if (battery > 0) {
                boolean cold = HiddenReadings.isCold(battery);
                score[at.report(false, cold)] += good * tables.batteries[4 * battery + 2];
                score[at.report(true, cold)] += weak * tables.batteries[4 * battery + 3];
            }
        }
        Sign sign = HiddenReadings.sign(context);
        if (sign == Sign.CALLED) {
            score[at.reporting()] += reported * (tables.called - 1) / tables.called;
        } else if (sign != Sign.NONE) {
            int i = 4 * sign.ordinal() + 2;
            score[at.warning(false)] += (good + weak) * tables.signs[i];
            score[at.warning(true)] += (reported + quiet) * tables.signs[i + 1];
        }
    }

    private double ifGood(int code, int context) {
        double sign = tables.signs[4 * (context >> 1)];
        return code >= 0
                ? sign
                        * tables.wakes[HiddenTables.WAKE_ROW * (code / HiddenReadings.BATTERIES)]
                        * tables.batteries[4 * (code % HiddenReadings.BATTERIES)]
                : code == HiddenReadings.KNOWN_DEAD ? 0 : sign;
    }

    private double ifWeak(int code, int context) {
        double sign = tables.signs[4 * (context >> 1)];
        return code >= 0
                ? sign
                        * tables.wakes[HiddenTables.WAKE_ROW * (code / HiddenReadings.BATTERIES) + 1]
                        * tables.batteries[4 * (code % HiddenReadings.BATTERIES) + 1]
                : code == HiddenReadings.KNOWN_DEAD ? 0 : sign;
    }

    private double ifReported(int code, int context) {
        return HiddenReadings.sign(context) == Sign.CALLED ? tables.called * ifDead(code) : ifQuiet(code, context);
    }

    private double ifQuiet(int code, int context) {
        return ifDead(code) * tables.signs[4 * (context >> 1) + 1];
    }

    /** A dead sensor is silent for sure. */
    private static double ifDead(int code) {
        return code == HiddenReadings.KNOWN_DEAD || code == NOTHING_SEEN || foundSilent(code) ? 1 : 0;
    }

    private static boolean foundSilent(int code) {
        return code >= 0 && (code / HiddenReadings.BATTERIES) % 2 == 0;
    }

    /** Cuts the time between readings where the pieces of age do. */
    private void layOut(HiddenReadings readings) {
        steps = 0;
        cohort = readings.cohort();
        int age = readings.entryDays();
        int piece = cohorts.pieceAt(age);
        for (int r = 0; r < readings.size(); r++) {
            int to = readings.age(r);
            int context = readings.context(r);
            while (to > cohorts.from(piece + 1)) {
                int cut = cohorts.from(piece + 1);
                step(piece, cut - age, NOTHING_SEEN, PLAIN | (context & 1));
                age = cut;
                piece++;
            }
            step(piece, to - age, readings.code(r), context);
            age = to;
        }
    }

    private void step(int piece, int days, int code, int context) {
        if (steps == stepPiece.length) {
            int longer = 2 * steps;
            stepPiece = Arrays.copyOf(stepPiece, longer);
            stepDays = Arrays.copyOf(stepDays, longer);
            stepCode = Arrays.copyOf(stepCode, longer);
            stepContext = Arrays.copyOf(stepContext, longer);
            before = Arrays.copyOf(before, 4 * longer);
            scale = Arrays.copyOf(scale, longer);
        }
        stepPiece[steps] = piece;
        stepDays[steps] = days;
        stepCode[steps] = code;
        stepContext[steps] = context;
        steps++;
    }
}
