package sensorrounds.cox;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import sensorrounds.survival.Estimate;

/**
 * Cumulative hazard and survival of a unit with given covariates, fixed over its life, by a fitted regression. Steps at
 * the failures of its stratum: Breslow or Efron increments as in the fit; survival is exp(-H). The error has two parts,
 * one of the baseline and one of the coefficients: Therneau and Grambsch (2000), Modeling Survival Data, 10.2, after
 * Tsiatis (1981), Ann. Stat. 9:93-108. A unit's future covariates are not known, so no path of them is taken here.
 */
public final class PredictedHazard {
    private final List<Step> steps;
    private final double to;
    private final double z;

    private PredictedHazard(List<Step> steps, double to, double z) {
        this.steps = steps;
        this.to = to;
        this.z = z;
    }

    /**
     * The hazard at an age with failures.
     *
     * @param cumulativeHazard up to and with this age
     * @param standardError of it
     */
    public record Step(double age, double cumulativeHazard, double standardError) {
        private static final Step START = new Step(0, 0, 0);
    }

    private record Jump(double age, double hazard, double variance, double[] drift) {}

    static PredictedHazard of(CoxFit fit, double[] covariates, int stratum, double z) {
        RiskSweep sweep = fit.sweep();
        CoxSample sample = sweep.sample();
        CoxFit.Solution solution = fit.solution();
        int p = sweep.columns();
        double[] at = new double[p];
        double eta = 0;
        for (int j = 0; j < p; j++) {
            at[j] = (covariates[j] - sweep.centre(j)) / sweep.scale(j);
            eta += solution.beta()[j] * at[j];
        }
        RiskSweep.Scores scores = sweep.scores(solution.beta());
        double risk = Math.exp(eta - scores.largest());
        List<Jump> jumps = new ArrayList<>();
        sweep.forEach(scores, tied -> {
            if (tied.stratum() != stratum) {
                return;
            }
            double hazard = 0;
            double variance = 0;
            double[] drift = new double[p];
            for (int k = 0; k < tied.count(); k++) {
                tied.moveTo(fit.ties().gone(k, tied.count()));
                double step = tied.stepWeight() / tied.total();
                hazard += step;
                variance += step / tied.total();
                for (int j = 0; j < p; j++) {
                    drift[j] += step * (at[j] - tied.mean(j));
                }
            }
            jumps.add(new Jump(tied.age(), hazard, variance, drift));
        });
        if (jumps.isEmpty()) {
            throw new IllegalArgumentException("the sample has no failure in stratum " + stratum);
        }
        Collections.reverse(jumps);
        double to = 0;
        for (int i = 0; i < sample.size(); i++) {
            to = sample.stratum(i) == stratum ? Math.max(to, sample.exit(i)) : to;
        }
        return new PredictedHazard(cumulated(jumps, risk, solution.covariance()), to, z);
    }

    private static List<Step> cumulated(List<Jump> jumps, double risk, double[][] covariance) {
        int p = covariance.length;
        List<Step> steps = new ArrayList<>();
        double hazard = 0;
        double variance = 0;
        double[] drift = new double[p];
        for (Jump jump : jumps) {
            hazard += jump.hazard();
            variance += jump.variance();
            double ofCoefficients = 0;
            for (int j = 0; j < p; j++) {
                drift[j] += jump.drift()[j];
            }
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    ofCoefficients += drift[j] * covariance[j][k] * drift[k];
                }
            }
            steps.add(new Step(jump.age(), risk * hazard, risk * Math.sqrt(variance + ofCoefficients)));
        }
        return List.copyOf(steps);
    }

    /** One per age with failures, by rising age. */
    public List<Step> steps() {
        return steps;
    }

    /** Last age under observation in the stratum; nothing is known beyond. */
    public double to() {
        return to;
    }

    /**
     * The hazard cumulated to an age.
     *
     * @throws IllegalArgumentException beyond {@link #to()} or below 0
     */
    public Step at(double age) {
        if (!(age >= 0 && age <= to)) {
            throw new IllegalArgumentException("the hazard is known from age 0 to " + to + ", not at " + age
                    + "; use a fitted law of life beyond");
        }
        int low = 0;
        int high = steps.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (steps.get(middle).age() <= age) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? Step.START : steps.get(low - 1);
    }

    /** S(age) with limits on the log of the cumulative hazard, which keeps them in (0, 1). */
    public Estimate survival(double age) {
        Step step = at(age);
        double hazard = step.cumulativeHazard();
        if (hazard == 0) {
            return new Estimate(1, 1, 1);
        }
        double spread = Math.exp(z * step.standardError() / hazard);
        return new Estimate(Math.exp(-hazard), Math.exp(-hazard * spread), Math.exp(-hazard / spread));
    }

    /** Standard error of S(age) by the delta method: S times the error of the cumulative hazard. */
    public double survivalError(double age) {
        Step step = at(age);
        return Math.exp(-step.cumulativeHazard()) * step.standardError();
    }
}
