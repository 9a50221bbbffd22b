package sensorrounds.cox;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Residuals of a proportional hazards regression, row by row, in O((n + d) p). Under Efron's rule a tied failure stays at
 * risk for a part of the steps only. Source: Therneau and Grambsch (2000), Modeling Survival Data, 4.2-4.6 and app. E.
 */
public final class CoxResiduals {
    private final RiskSweep sweep;
    private final double[] martingale;
    /** Per standard unit, without the row's weight. */
    private final double[][] score;

    private CoxResiduals(RiskSweep sweep, double[] martingale, double[][] score) {
        this.sweep = sweep;
        this.martingale = martingale;
        this.score = score;
    }

    static CoxResiduals at(CoxFit fit) {
        return of(fit.sweep(), fit.ties(), fit.solution().beta());
    }

    /** Cumulated over one stratum, by rising age: hazard jumps, and the jumps times the mean covariates. */
    private static final class Cumulated {
        private final List<Double> ages = new ArrayList<>();
        private final List<double[]> sums = new ArrayList<>();

        /** Sums over ages at or below this one; null below the first. */
        double[] to(double age) {
            int low = 0;
            int high = ages.size();
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (ages.get(middle) <= age) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low == 0 ? null : sums.get(low - 1);
        }
    }

    /** Residuals at any coefficients, per standard unit of the covariates. */
    static CoxResiduals of(RiskSweep sweep, Ties ties, double[] beta) {
        CoxSample sample = sweep.sample();
        int n = sample.size();
        int p = sweep.columns();
        RiskSweep.Scores scores = sweep.scores(beta);
        double[] martingale = new double[n];
        double[][] score = new double[n][p];
        Map<Integer, List<double[]>> jumps = new TreeMap<>();
        sweep.forEach(scores, tied -> {
            int d = tied.count();
            // age, sum of hazard steps, sums of steps times means; the tied ones lack the share that has left.
            double[] jump = new double[2 + p];
            double[] lacking = new double[1 + p];
            double[] mean = new double[p];
            jump[0] = tied.age();
            for (int k = 0; k < d; k++) {
                double gone = ties.gone(k, d);
                tied.moveTo(gone);
                double hazard = tied.stepWeight() / tied.total();
                jump[1] += hazard;
                lacking[0] += gone * hazard;
                for (int j = 0; j < p; j++) {
                    jump[2 + j] += hazard * tied.mean(j);
                    lacking[1 + j] += gone * hazard * tied.mean(j);
                    mean[j] += tied.mean(j) / d;
                }
            }
            for (int k = 0; k < d; k++) {
                int row = tied.row(k);
                double risk = Math.exp(scores.relative()[row]);
                martingale[row] += 1 + risk * lacking[0];
                for (int j = 0; j < p; j++) {
                    double z = sweep.standard(row, j);
                    score[row][j] += z - mean[j] + risk * (z * lacking[0] - lacking[1 + j]);
                }
            }
            jumps.computeIfAbsent(tied.stratum(), s -> new ArrayList<>()).add(jump);
        });
        Map<Integer, Cumulated> byStratum = cumulated(jumps, p);
        Cumulated none = new Cumulated();
        for (int i = 0; i < n; i++) {
            Cumulated cumulated = byStratum.getOrDefault(sample.stratum(i), none);
            double[] to = cumulated.to(sample.exit(i));
            if (to == null) {
                continue;
            }
            double[] from = cumulated.to(sample.entry(i));
            double risk = Math.exp(scores.relative()[i]);
            double hazard = to[0] - (from == null ? 0 : from[0]);
            martingale[i] -= risk * hazard;
            for (int j = 0; j < p; j++) {
                double product = to[1 + j] - (from == null ? 0 : from[1 + j]);
                score[i][j] -= risk * (sweep.standard(i, j) * hazard - product);
            }
        }
        return new CoxResiduals(sweep, martingale, score);
    }

    private static Map<Integer, Cumulated> cumulated(Map<Integer, List<double[]>> jumps, int p) {
        Map<Integer, Cumulated> result = new TreeMap<>();
        jumps.forEach((stratum, falling) -> {
            Cumulated cumulated = new Cumulated();
            double[] sum = new double[1 + p];
            for (int i = falling.size() - 1; i >= 0; i--) {
                for (int j = 0; j <= p; j++) {
                    sum[j] += falling.get(i)[1 + j];
                }
                cumulated.ages.add(falling.get(i)[0]);
                cumulated.sums.add(sum.clone());
            }
            result.put(stratum, cumulated);
        });
        return result;
    }

    /** Failures seen less failures expected, by row. */
    public double[] martingale() {
        return martingale.clone();
    }

    /** The row's part in each derivative of the log-likelihood, before its weight; columns in the sample's order. */
    public double[][] score() {
        double[][] result = new double[score.length][];
        for (int i = 0; i < score.length; i++) {
            result[i] = score[i].clone();
            for (int j = 0; j < result[i].length; j++) {
                // Derivatives by a coefficient per unit: z goes with a factor 1/scale, its coefficient with scale.
                result[i][j] *= sweep.scale(j);
            }
        }
        return result;
    }

    /** Weighted scores summed within clusters, per standard unit, clusters by rising number. */
    double[][] clusterScores() {
        Map<Integer, double[]> sums = new TreeMap<>();
        for (int i = 0; i < score.length; i++) {
            double[] sum = sums.computeIfAbsent(sweep.sample().cluster(i), c -> new double[sweep.columns()]);
            for (int j = 0; j < sum.length; j++) {
                sum[j] += sweep.sample().weight(i) * score[i][j];
            }
        }
        return sums.values().toArray(double[][]::new);
    }
}
