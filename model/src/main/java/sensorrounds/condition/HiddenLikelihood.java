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
    /** Conditions: good, early weak, late weak, dead and to be reported, dead and not. */
    private static final int CONDITIONS = 5;

    private final HiddenTables tables;
    private final HiddenCohorts cohorts;
    private final HiddenSteps steps;
    private final double[] score;
    private final double share;
    private final int coldRate;
    /** Conditions before each step. */
    private double[] before = new double[256];

    private double[] scale = new double[64];
    private double good;
    private double early;
    private double late;
    private double reported;
    private double quiet;

    HiddenLikelihood(HiddenTables tables) {
        this.tables = tables;
        this.cohorts = tables.cohorts;
        this.steps = new HiddenSteps(tables);
        this.share = tables.share;
        this.score = new double[tables.parameters.size()];
        this.coldRate = tables.season.turns() ? tables.parameters.coldRate() : -1;
    }

    /** Log-likelihood; minus infinity when the readings cannot happen. Leaves the chances of the last condition. */
    double value(HiddenReadings readings) {
        steps.layOut(readings);
        if (before.length < CONDITIONS * steps.count) {
            before = new double[2 * CONDITIONS * steps.count];
            scale = new double[2 * steps.count];
        }
        good = 1;
        early = 0;
        late = 0;
        reported = 0;
        quiet = 0;
        if (readings.entryDays() > 0) {
            double[] at = tables.conditionAt(steps.cohort, readings.fittedDay(), readings.entryDays());
            double alive = at[0] + at[1] + at[2];
            good = at[0] / alive;
            early = at[1] / alive;
            late = at[2] / alive;
        }
        double value = 0;
        // Logs are slow; a product of scales stays in range for many readings.
        double product = 1;
        for (int s = 0; s < steps.count; s++) {
            keep(CONDITIONS * s);
            move(s);
            int code = steps.code[s];
            int context = steps.context[s];
            if (code != NOTHING_SEEN || context > 1) {
                double ifWeak = ifWeak(code, context);
                good *= ifGood(code, context);
                early *= ifWeak;
                late *= ifWeak;
                reported *= ifReported(code, context);
                quiet *= ifQuiet(code, context);
            }
            double sum = good + early + late + reported + quiet;
            if (!(sum > 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            scale[s] = sum;
            good /= sum;
            early /= sum;
            late /= sum;
            reported /= sum;
            quiet /= sum;
            if (foundSilent(code)) {
                // The technician knows now: whether the driver would have come tells no more.
                quiet += reported;
                reported = 0;
            }
            product *= sum;
            if (product < 1e-200) {
                value += Math.log(product);
                product = 1;
            }
        }
        return value + Math.log(product);
    }

    private void keep(int i) {
        before[i] = good;
        before[i + 1] = early;
        before[i + 2] = late;
        before[i + 3] = reported;
        before[i + 4] = quiet;
    }

    private double[] chances(int s) {
        return tables.chances[steps.cohort][steps.piece[s]][steps.season[s]];
    }

    private void move(int s) {
        double[] p = chances(s);
        int i = HiddenRows.ROW * steps.days[s];
        double g = good;
        double e = early;
        double l = late;
        double stays = p[i + HiddenRows.WW];
        double died = g * (1 - p[i + HiddenRows.GG] - p[i + HiddenRows.GE] - p[i + HiddenRows.GL])
                + e * (1 - stays - p[i + HiddenRows.EL])
                + l * (1 - stays);
        good = g * p[i + HiddenRows.GG];
        early = g * p[i + HiddenRows.GE] + e * stays;
        late = g * p[i + HiddenRows.GL] + e * p[i + HiddenRows.EL] + l * stays;
        reported = HiddenReadings.isMonitored(steps.context[s])
                ? reported * tables.unreported[steps.days[s]]
                        + share * (g * p[i + HiddenRows.GU] + e * p[i + HiddenRows.EU] + l * p[i + HiddenRows.LU])
                : reported + share * died;
        quiet += (1 - share) * died;
    }

    /** Condition after the last reading, from the last call. */
    HiddenFilter.Condition now(HiddenReadings readings) {
        return new HiddenFilter.Condition(
                readings.cohort(),
                readings.fittedDay(),
                readings.lastAge(),
                good,
                early,
                late,
                Math.max(0, 1 - good - early - late));
    }

    /** Conditions after each read of the sensor whose value was asked for last. */
    List<HiddenFilter.Condition> afterReads(HiddenReadings readings) {
        List<HiddenFilter.Condition> all = new ArrayList<>();
        int age = readings.entryDays();
        for (int s = 0; s < steps.count; s++) {
            age += steps.days[s];
            if (steps.code[s] >= 0) {
                int next = CONDITIONS * (s + 1);
                boolean last = s + 1 == steps.count;
                double g = last ? good : before[next];
                double e = last ? early : before[next + 1];
                double l = last ? late : before[next + 2];
                all.add(new HiddenFilter.Condition(
                        steps.cohort, readings.fittedDay(), age, g, e, l, Math.max(0, 1 - g - e - l)));
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
        double afterEarly = 1;
        double afterLate = 1;
        double afterReported = 1;
        double afterQuiet = 1;
        int shareAt = tables.parameters.reported();
        int reportingAt = tables.parameters.reporting();
        int bands = tables.bands;
        for (int s = steps.count - 1; s >= 0; s--) {
            double[] p = chances(s);
            int i = HiddenRows.ROW * steps.days[s];
            int band = cohorts.band(steps.piece[s]);
            int from = CONDITIONS * s;
            double g = before[from];
            double e = before[from + 1];
            double l = before[from + 2];
            double r = before[from + 3];
            int code = steps.code[s];
            int context = steps.context[s];
            boolean monitored = HiddenReadings.isMonitored(context);
            double goodStays = p[i + HiddenRows.GG];
            double goodToEarly = p[i + HiddenRows.GE];
            double goodToLate = p[i + HiddenRows.GL];
            double earlyToLate = p[i + HiddenRows.EL];
            double weakStays = p[i + HiddenRows.WW];
            double goodDies = 1 - goodStays - goodToEarly - goodToLate;
            double earlyDies = 1 - weakStays - earlyToLate;
            double lateDies = 1 - weakStays;
            double stays = monitored ? tables.unreported[steps.days[s]] : 1;
            double goodUnreported = monitored ? p[i + HiddenRows.GU] : goodDies;
            double earlyUnreported = monitored ? p[i + HiddenRows.EU] : earlyDies;
            double lateUnreported = monitored ? p[i + HiddenRows.LU] : lateDies;
            double died = g * goodDies + e * earlyDies + l * lateDies;
            double unreported = g * goodUnreported + e * earlyUnreported + l * lateUnreported;
            if (foundSilent(code)) {
                afterReported = afterQuiet;
            }
            if (code != NOTHING_SEEN || context > 1) {
                double ifWeak = ifWeak(code, context);
                afterGood *= ifGood(code, context);
                afterEarly *= ifWeak;
                afterLate *= ifWeak;
                afterReported *= ifReported(code, context);
                afterQuiet *= ifQuiet(code, context);
                countSeen(
                        code,
                        context,
                        g * goodStays * afterGood / scale[s],
                        ((g * goodToEarly + e * weakStays) * afterEarly
                                        + (g * goodToLate + e * earlyToLate + l * weakStays) * afterLate)
                                / scale[s],
                        (r * stays + share * unreported) * afterReported / scale[s],
                        (before[from + 4] + (1 - share) * died) * afterQuiet / scale[s]);
            }
            afterGood /= scale[s];
            afterEarly /= scale[s];
            afterLate /= scale[s];
            afterReported /= scale[s];
            afterQuiet /= scale[s];
            double overDead = (1 - share) * afterQuiet + (monitored ? 0 : share * afterReported);
            double overUnreported = monitored ? share * afterReported : 0;
            double goodLess = afterGood - overDead;
            double earlyLess = afterEarly - overDead;
            double lateLess = afterLate - overDead;
            double weakening = g
                    * (goodLess * p[i + HiddenRows.GG_WEAKENING]
                            + earlyLess * p[i + HiddenRows.GE_WEAKENING]
                            + lateLess * p[i + HiddenRows.GL_WEAKENING]
                            + overUnreported * p[i + HiddenRows.GU_WEAKENING]);
            double weakStay = p[i + HiddenRows.WW_DYING];
            double dying = g
                            * (earlyLess * p[i + HiddenRows.GE_DYING]
                                    + lateLess * p[i + HiddenRows.GL_DYING]
                                    + overUnreported * p[i + HiddenRows.GU_DYING])
                    + e
                            * (earlyLess * weakStay
                                    + lateLess * p[i + HiddenRows.EL_DYING]
                                    + overUnreported * p[i + HiddenRows.EU_DYING])
                    + l * (lateLess * weakStay + overUnreported * p[i + HiddenRows.LU_DYING]);
            double sudden = g
                    * (goodLess * p[i + HiddenRows.GG_SUDDEN]
                            + earlyLess * p[i + HiddenRows.GE_SUDDEN]
                            + lateLess * p[i + HiddenRows.GL_SUDDEN]
                            + overUnreported * p[i + HiddenRows.GU_SUDDEN]);
            score[band] += weakening;
            score[bands + band] += dying;
            score[2 * bands] += sudden;
            if (coldRate >= 0) {
                score[coldRate] += tables.pull[steps.season[s]] * (weakening + dying + sudden);
            }
            score[shareAt] += share * (1 - share) * (afterReported * unreported - afterQuiet * died);
            if (monitored) {
                score[reportingAt] += afterReported
                        * (share
                                        * (g * p[i + HiddenRows.GU_REPORTING]
                                                + e * p[i + HiddenRows.EU_REPORTING]
                                                + l * p[i + HiddenRows.LU_REPORTING])
                                - r * tables.reporting * steps.days[s] * stays);
            }
            double ofReported = share * afterReported;
            double ofQuiet = (1 - share) * afterQuiet;
            afterGood = afterGood * goodStays
                    + afterEarly * goodToEarly
                    + afterLate * goodToLate
                    + ofReported * goodUnreported
                    + ofQuiet * goodDies;
            afterEarly = afterEarly * weakStays
                    + afterLate * earlyToLate
                    + ofReported * earlyUnreported
                    + ofQuiet * earlyDies;
            afterLate = afterLate * weakStays + ofReported * lateUnreported + ofQuiet * lateDies;
            afterReported *= stays;
        }
        if (readings.entryDays() > 0) {
            addEntry(readings, afterGood, afterEarly, afterLate);
        }
        return value;
    }

    double[] score() {
        return score;
    }

    /** How the condition at entry, given not dead, moves with the rates. */
    private void addEntry(HiddenReadings readings, double afterGood, double afterEarly, double afterLate) {
        double[] at = tables.conditionAt(steps.cohort, readings.fittedDay(), readings.entryDays());
        double total = at[0] + at[1] + at[2];
        double mean = (at[0] * afterGood + at[1] * afterEarly + at[2] * afterLate) / total;
        int rates = tables.rates();
        for (int k = 1; k <= rates; k++) {
            int i = HiddenTables.ALIVE * k;
            int parameter = k == rates && coldRate >= 0 ? coldRate : k - 1;
            score[parameter] +=
                    (at[i] * (afterGood - mean) + at[i + 1] * (afterEarly - mean) + at[i + 2] * (afterLate - mean))
                            / total;
        }
    }

    private void countSeen(int code, int context, double isGood, double isWeak, double isReported, double isQuiet) {
        HiddenParameters at = tables.parameters;
        if (code >= 0) {
            int wakeIndex = code / HiddenReadings.BATTERIES;
            int battery = code - HiddenReadings.BATTERIES * wakeIndex;
            int w = HiddenTables.WAKE_ROW * wakeIndex;
            double waking = isWeak * tables.wakes[w + 2];
            score[at.wake()] += waking;
            int cell = HiddenReadings.cell(wakeIndex);
            score[at.wakeSlope()] += waking * tables.wakeOffset(cell);
            if (WakeChances.isCold(cell)) {
                score[at.wakeCold()] += waking;
            }
            score[at.missed()] += isGood * tables.wakes[w + 3] + isWeak * tables.wakes[w + 4];
            if (battery > 0) {
                boolean cold = HiddenReadings.isCold(battery);
                score[at.report(false, cold)] += isGood * tables.batteries[4 * battery + 2];
                score[at.report(true, cold)] += isWeak * tables.batteries[4 * battery + 3];
            }
        }
        Sign sign = HiddenReadings.sign(context);
        if (sign == Sign.CALLED) {
            score[at.reporting()] += isReported * (tables.called - 1) / tables.called;
        } else if (sign != Sign.NONE) {
            int i = 4 * sign.ordinal() + 2;
            score[at.warning(false)] += (isGood + isWeak) * tables.signs[i];
            score[at.warning(true)] += (isReported + isQuiet) * tables.signs[i + 1];
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
}
