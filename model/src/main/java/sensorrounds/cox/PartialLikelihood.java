package sensorrounds.cox;

import sensorrounds.numeric.Objective;

/**
 * Log partial likelihood in coefficients per standard unit of the covariates, with its first and second derivatives: the
 * sum over failures of beta'z less the log of the total risk. Sources: Cox (1975), Biometrika 62:269; ties, weights and
 * (entry, exit]: Therneau and Grambsch (2000), Modeling Survival Data, 3.1-3.3.
 */
final class PartialLikelihood implements Objective {
    private final RiskSweep sweep;
    private final Ties ties;

    PartialLikelihood(RiskSweep sweep, Ties ties) {
        this.sweep = sweep;
        this.ties = ties;
    }

    @Override
    public Evaluation at(double[] beta) {
        int p = sweep.columns();
        // Value, gradient, lower triangle. With a million rows a plain sum is too coarse to tell the last steps apart.
        RunningSums sums = new RunningSums(TiedFailures.length(p));
        RiskSweep.Scores scores = sweep.scores(beta);
        sweep.forEach(scores, tied -> {
            for (int k = 0; k < tied.count(); k++) {
                int row = tied.row(k);
                double weight = sweep.sample().weight(row);
                tied.moveTo(ties.gone(k, tied.count()));
                double step = tied.stepWeight();
                sums.add(0, weight * scores.relative()[row]);
                sums.add(0, -step * Math.log(tied.total()));
                int next = 1 + p;
                for (int j = 0; j < p; j++) {
                    sums.add(1 + j, weight * sweep.standard(row, j));
                    sums.add(1 + j, -step * tied.mean(j));
                    for (int l = 0; l <= j; l++) {
                        sums.add(next++, -step * tied.covariance(j, l));
                    }
                }
            }
        });
        double[] gradient = new double[p];
        double[][] hessian = new double[p][p];
        int next = 1 + p;
        for (int j = 0; j < p; j++) {
            gradient[j] = sums.get(1 + j);
            for (int l = 0; l <= j; l++) {
                hessian[j][l] = sums.get(next++);
                hessian[l][j] = hessian[j][l];
            }
        }
        return new Evaluation(sums.get(0), gradient, hessian);
    }
}
