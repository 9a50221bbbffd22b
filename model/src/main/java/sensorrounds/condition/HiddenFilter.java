package sensorrounds.condition;

import java.util.List;
import sensorrounds.numeric.StandardNormal;

/**
 * What the readings of one sensor say of its condition on a day, and of its failing after it, under a fitted model: the
 * forward probabilities, carried on by the rates (Rabiner 1989, Proc. IEEE 77:257). Holds work space: one per thread.
 */
public final class HiddenFilter {
    private final HiddenTables tables;
    private final HiddenLikelihood likelihood;
    private final double[][] covariance;
    private double logLikelihood;
    private final double z = StandardNormal.quantile(0.975);

    HiddenFilter(HiddenTables tables, double[][] covariance) {
        this.tables = tables;
        this.likelihood = new HiddenLikelihood(tables);
        this.covariance = covariance;
    }

    /**
     * Probabilities of one sensor's condition at an age, and of not working by later ones.
     *
     * @param cohort number of its cohort
     * @param fittedDay day of its fitting, counted from 1970-01-01
     * @param good still good on that day
     * @param early weak on that day in the first of two stages, still answering; 0 in a model of one stage
     * @param late weak in the last stage
     * @param dead dead on that day already
     */
    public record Condition(
            int cohort, int fittedDay, int ageDays, double good, double early, double late, double dead) {
        /** Weak on that day, still answering. */
        public double weak() {
            return early + late;
        }

        private Condition with(double newGood, double newEarly, double newLate, double newDead) {
            return new Condition(cohort, fittedDay, ageDays, newGood, newEarly, newLate, newDead);
        }
    }

    /**
     * The condition at an age not before the last reading.
     *
     * @throws IllegalArgumentException for an earlier age or one past {@link HiddenSettings#MAX_AGE_DAYS}
     */
    public Condition at(HiddenReadings readings, int ageDays) {
        if (ageDays < readings.lastAge() || ageDays > HiddenSettings.MAX_AGE_DAYS) {
            throw new IllegalArgumentException("condition asked for at an age of " + ageDays
                    + " days; expected one from the last reading, " + readings.lastAge() + ", to "
                    + HiddenSettings.MAX_AGE_DAYS);
        }
        logLikelihood = likelihood.value(readings);
        return ahead(likelihood.now(readings), ageDays - readings.lastAge());
    }

    /**
     * The same of a vehicle whose sensors weaken and die so many times as fast as others: to first order, the odds of not
     * being good any more grow by that ratio.
     */
    static Condition faster(Condition c, double ratio) {
        double total = c.good() + ratio * (c.weak() + c.dead());
        return c.with(c.good() / total, ratio * c.early() / total, ratio * c.late() / total, ratio * c.dead() / total);
    }

    /** As {@link #failureWithin(Condition, int)}, with the rates of leaving good multiplied by a ratio. */
    double failureWithin(Condition condition, int days, double ratio) {
        if (ratio == 1) {
            return failureWithin(condition, days);
        }
        double ifGood = ahead(condition.with(1, 0, 0, 0), days).dead();
        double others = ahead(condition.with(0, condition.early(), condition.late(), 0), days)
                .weak();
        return condition.dead()
                + condition.weak()
                - others
                - condition.good() * Math.expm1(ratio * Math.log1p(-ifGood));
    }

    /** Conditions after each read of a sensor, each from that read and those before it. */
    List<Condition> afterReads(HiddenReadings readings) {
        logLikelihood = likelihood.value(readings);
        return likelihood.afterReads(readings);
    }

    /** Log-likelihood of the readings last asked about. */
    double logLikelihood() {
        return logLikelihood;
    }

    /** Probability of not working by so many days after the condition's day: dead then, or dead by then. */
    public double failureWithin(Condition condition, int days) {
        return ahead(condition, days).dead();
    }

    /**
     * Limits at 95 % of {@link #failureWithin}, from the uncertainty of the parameters alone, by the delta method on the
     * log of the cumulative hazard -ln(1 - p), which keeps them in (0, 1). The derivative of ln(1 - p) is the difference
     * of two scores: that of the readings and of being alive then, and that of the readings.
     *
     * @return lower, upper
     */
    public double[] limits(HiddenReadings readings, int ageDays, int days) {
        int then = Math.min(ageDays + days, HiddenSettings.MAX_AGE_DAYS);
        double[] slope = new double[tables.parameters.size()];
        double logAlive = likelihood.valueAndScore(readings.and(HiddenReadings.KNOWN_ALIVE, then));
        System.arraycopy(likelihood.score(), 0, slope, 0, slope.length);
        logAlive -= likelihood.valueAndScore(readings);
        double hazard = -logAlive;
        if (!(hazard > 0) || hazard == Double.POSITIVE_INFINITY) {
            double p = hazard > 0 ? 1 : 0;
            return new double[] {p, p};
        }
        double variance = 0;
        double[] score = likelihood.score();
        for (int i = 0; i < slope.length; i++) {
            slope[i] -= score[i];
        }
        for (int i = 0; i < slope.length; i++) {
            for (int j = 0; j < slope.length; j++) {
                variance += slope[i] * slope[j] * covariance[i][j];
            }
        }
        double factor = Math.exp(z * Math.sqrt(Math.max(0, variance)) / hazard);
        return new double[] {-Math.expm1(-hazard / factor), -Math.expm1(-hazard * factor)};
    }

    private Condition ahead(Condition from, int days) {
        double good = from.good();
        double early = from.early();
        double late = from.late();
        int age = from.ageDays();
        int end = Math.min(age + days, HiddenSettings.MAX_AGE_DAYS);
        HiddenCohorts cohorts = tables.cohorts;
        ColdSeason season = tables.season;
        int piece = cohorts.pieceAt(age);
        int turns = season.turnsUpTo(from.fittedDay() + age);
        while (age < end) {
            int cut = cohorts.from(piece + 1);
            int turn = season.turn(turns) - from.fittedDay();
            int to = Math.min(end, Math.min(cut, turn));
            double[] p = tables.chances[from.cohort()][piece][ColdSeason.season(turns)];
            int i = HiddenRows.ROW * (to - age);
            late = good * p[i + HiddenRows.GL] + early * p[i + HiddenRows.EL] + late * p[i + HiddenRows.WW];
            early = good * p[i + HiddenRows.GE] + early * p[i + HiddenRows.WW];
            good *= p[i + HiddenRows.GG];
            age = to;
            piece += to == cut ? 1 : 0;
            turns += to == turn ? 1 : 0;
        }
        return new Condition(
                from.cohort(),
                from.fittedDay(),
                from.ageDays() + days,
                good,
                early,
                late,
                Math.max(0, 1 - good - early - late));
    }
}
