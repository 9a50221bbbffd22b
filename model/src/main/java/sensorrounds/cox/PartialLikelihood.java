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
        double[] value = new double[1];
        double[] gradient = new double[p];
        double[][] hessian = new double[p][p];
        RiskSweep.Scores scores = sweep.scores(beta);
        sweep.forEach(scores, tied -> {
            for (int k = 0; k < tied.count(); k++) {
                int row = tied.row(k);
                double weight = sweep.sample().weight(row);
                value[0] += weight * scores.relative()[row];
                for (int j = 0; j < p; j++) {
                    gradient[j] += weight * sweep.standard(row, j);
                }
                tied.moveTo(ties.gone(k, tied.count()));
                double step = tied.stepWeight();
                value[0] -= step * Math.log(tied.total());
                for (int j = 0; j < p; j++) {
                    gradient[j] -= step * tied.mean(j);
                    for (int l = 0; l <= j; l++) {
                        hessian[j][l] -= step * tied.covariance(j, l);
                    }
                }
            }
        });
        for (int j = 0; j < p; j++) {
            for (int l = 0; l < j; l++) {
                hessian[l][j] = hessian[j][l];
            }
        }
        return new Evaluation(value[0], gradient, hessian);
    }
}
