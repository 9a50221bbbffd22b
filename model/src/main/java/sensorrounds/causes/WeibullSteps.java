package sensorrounds.causes;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.survival.Family;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.ParametricFit;
import sensorrounds.survival.ParametricFitter;

/**
 * Rounds of the EM algorithm for a Weibull law per cause: each masked failure is shared out by the hazards of its possible
 * causes, then each law is fitted to its failures, the others censored. Exact for exact ages; for intervals the others are
 * censored where the interval begins, which is near enough for a start.
 */
final class WeibullSteps {
    static final int ROUNDS = 8;

    private static final double NEXT_TO_NONE = 1e-9;

    private final CauseModel model;
    private final CauseLikelihood likelihood;
    private final List<? extends MaskedLife<?>> lives;
    private final double centre;

    WeibullSteps(CauseModel model, CauseLikelihood likelihood, MaskedSample<?> sample, double centre) {
        this.model = model;
        this.likelihood = likelihood;
        this.lives = sample.lives();
        this.centre = centre;
    }

    /** Begins with equal constant hazards. */
    double[] start(int rounds) {
        double[] point = new double[model.parameters()];
        double failures = 0;
        double time = 0;
        for (MaskedLife<?> life : lives) {
            failures += life.failed() ? life.weight() : 0;
            time += life.weight() * (life.lower() - life.entry());
        }
        double scale = Math.log(Math.max(time, Math.exp(centre)) * model.parameters() / 2 / failures) - centre;
        for (int k = 0; k < model.causes(); k++) {
            if (model.parametersOf(k) > 0) {
                point[model.offset(k)] = Math.max(-10, Math.min(10, scale));
            }
        }
        for (int round = 0; round < rounds; round++) {
            step(point);
        }
        return point;
    }

    private void step(double[] point) {
        double[][] share = new double[lives.size()][model.causes()];
        likelihood.expected(point, (life, age, cause, weight) -> share[life][cause] += weight);
        for (int k = 0; k < model.causes(); k++) {
            if (model.parametersOf(k) == 0) {
                continue;
            }
            ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(sample(share, k));
            if (fit.converged()) {
                point[model.offset(k)] = Math.log(fit.scale().value()) - centre;
                point[model.offset(k) + 1] = Math.log(fit.shape().value());
            }
        }
    }

    private LifetimeSample sample(double[][] share, int cause) {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < share.length; i++) {
            MaskedLife<?> life = lives.get(i);
            double rest = life.weight() - share[i][cause];
            if (share[i][cause] > NEXT_TO_NONE) {
                rows.add(new double[] {life.entry(), life.lower(), life.upper(), share[i][cause]});
            }
            if (rest > NEXT_TO_NONE) {
                rows.add(new double[] {life.entry(), life.lower(), Double.POSITIVE_INFINITY, rest});
            }
        }
        double[][] columns = new double[4][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            for (int j = 0; j < columns.length; j++) {
                columns[j][i] = rows.get(i)[j];
            }
        }
        return LifetimeSample.of(columns[0], columns[1], columns[2], columns[3]);
    }
}
