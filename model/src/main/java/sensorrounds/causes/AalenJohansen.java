package sensorrounds.causes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.RiskSet;

/**
 * Share of lives ended by each cause up to an age, with delayed entry: a life counts at ages in (entry, exit]. Weights are
 * counts. With S the share not ended by any cause, the incidence of cause k grows by S(t-) d_k / Y at each age with ends;
 * S and all incidences add to 1. Errors are of Greenwood's type, from the multinomial covariance of the d_k given Y,
 * carried forward age by age. Sources: Aalen and Johansen (1978), Scand. J. Stat. 5:141-150; covariance: Andersen, Borgan,
 * Gill and Keiding (1993), Statistical Models Based on Counting Processes, 4.4.1. (Another error in use, after Aalen 1978,
 * comes out larger, by 0.1 to 2 % as a rule and more in the tail.)
 */
public final class AalenJohansen {
    private final double level;

    private AalenJohansen(double level) {
        this.level = level;
    }

    /** Limits at 95 %, symmetric on log(-log F). */
    public static AalenJohansen withDefaults() {
        return new AalenJohansen(0.95);
    }

    /** Coverage of the pointwise limits, in (0, 1). */
    public AalenJohansen withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new AalenJohansen(newLevel);
    }

    /** The estimate; without lives curves whose domain is age 0 alone. */
    public <C> Incidence<C> fit(CauseSample<C> sample) {
        int causes = sample.causes().size();
        RiskSet riskSet = RiskSet.of(sample.failing(cause -> true));
        Shares shares = new Shares(causes);
        List<Incidence.Step> steps = new ArrayList<>();
        List<EndedLife<C>> lives = sample.lives();
        double[] hazard = new double[causes];
        double[] hazardVariance = new double[causes];
        double end = 0;
        for (int i = 0; i < lives.size(); ) {
            double age = lives.get(i).exit();
            end = age;
            double[] ends = new double[causes];
            double all = 0;
            for (; i < lives.size() && lives.get(i).exit() == age; i++) {
                EndedLife<C> life = lives.get(i);
                if (life.cause() != null) {
                    ends[sample.causes().indexOf(life.cause())] += life.weight();
                    all += life.weight();
                }
            }
            if (all == 0) {
                continue;
            }
            double atRisk = riskSet.at(age);
            shares.advance(ends, all, atRisk);
            for (int k = 0; k < causes; k++) {
                hazard[k] += ends[k] / atRisk;
                hazardVariance[k] += ends[k] / (atRisk * atRisk);
            }
            steps.add(new Incidence.Step(
                    age,
                    atRisk,
                    ends,
                    shares.share(0),
                    shares.error(0),
                    shares.incidences(),
                    shares.errors(),
                    hazard.clone(),
                    Arrays.stream(hazardVariance).map(Math::sqrt).toArray()));
        }
        return new Incidence<>(sample.causes(), steps, end, StandardNormal.quantile((1 + level) / 2), riskSet);
    }

    /** Shares (event-free first, then the causes) and their covariance, from age to age. */
    private static final class Shares {
        private final double[] share;
        private final double[][] covariance;

        Shares(int causes) {
            share = new double[causes + 1];
            share[0] = 1;
            covariance = new double[causes + 1][causes + 1];
        }

        void advance(double[] ends, double all, double atRisk) {
            int causes = ends.length;
            // a[0] stays, a[k] ends by cause k: multinomial shares with covariance (diag a - a a') / Y.
            double[] a = new double[causes + 1];
            a[0] = atRisk - all > 1e-12 * atRisk ? (atRisk - all) / atRisk : 0;
            for (int k = 1; k <= causes; k++) {
                a[k] = ends[k - 1] / atRisk;
            }
            double free = share[0];
            double[] ofFree = covariance[0].clone();
            for (int k = 0; k <= causes; k++) {
                for (int l = 0; l <= k; l++) {
                    // Old parts: the event-free share moves by a, an incidence stays and takes a[k] of the event-free.
                    double carried = a[k] * a[l] * ofFree[0]
                            + (k > 0 ? a[l] * ofFree[k] : 0)
                            + (l > 0 ? a[k] * ofFree[l] : 0)
                            + (k > 0 && l > 0 ? covariance[k][l] : 0);
                    double drawn = free * free * ((k == l ? a[k] : 0) - a[k] * a[l]) / atRisk;
                    covariance[k][l] = carried + drawn;
                }
            }
            for (int k = 0; k <= causes; k++) {
                for (int l = 0; l < k; l++) {
                    covariance[l][k] = covariance[k][l];
                }
            }
            share[0] = free * a[0];
            for (int k = 1; k <= causes; k++) {
                share[k] += free * a[k];
            }
        }

        double share(int k) {
            return share[k];
        }

        double error(int k) {
            return Math.sqrt(Math.max(0, covariance[k][k]));
        }

        double[] incidences() {
            return Arrays.copyOfRange(share, 1, share.length);
        }

        double[] errors() {
            double[] errors = new double[share.length - 1];
            Arrays.setAll(errors, k -> error(k + 1));
            return errors;
        }
    }
}
