package sensorrounds.causes;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.PositiveDefinite;

/**
 * Do groups differ in the incidence of one cause? Compares, group by group, the hazards of the incidence itself: units
 * ended by another cause stay in the risk set, thinned as censoring would have thinned them. Source: Gray (1988), Ann.
 * Stat. 16:1141-1154, with equal weight at all ages (rho = 0). With one cause it compares survival. Weights are counts;
 * delayed entry is not covered by the paper and is refused.
 */
public final class GrayTest {
    private final int groups;
    private final double[] free;
    private final double[] incidence;
    private final double[] score;
    /** Of each group's martingales, weighted: cumulated effects, and their variance in parts. */
    private final double[][] effect;

    private final double[][] variance;
    private final double[][] cross;
    private final double[] square;
    private double pooled;

    private GrayTest(int groups) {
        this.groups = groups;
        free = new double[groups];
        Arrays.fill(free, 1);
        incidence = new double[groups];
        score = new double[groups];
        effect = new double[groups][groups];
        variance = new double[groups][groups];
        cross = new double[groups][groups];
        square = new double[groups];
    }

    /**
     * The test over two or more groups; NaN where the groups never are at risk together.
     *
     * @throws IllegalArgumentException with fewer than two groups, or with delayed entry
     */
    public static <C> ChiSquareTest of(List<CauseSample<C>> samples, C cause) {
        if (samples.size() < 2) {
            throw new IllegalArgumentException("a comparison needs two groups, not " + samples.size());
        }
        TreeSet<Double> ages = new TreeSet<>();
        for (CauseSample<C> sample : samples) {
            if (sample.delayedEntry()) {
                throw new IllegalArgumentException("this test does not cover lives that entered observation later than"
                        + " at age 0; compare cause-specific hazards instead");
            }
            sample.lives().forEach(life -> ages.add(life.exit()));
        }
        GrayTest test = new GrayTest(samples.size());
        int[] next = new int[samples.size()];
        double[] atRisk = samples.stream()
                .mapToDouble(
                        s -> s.lives().stream().mapToDouble(EndedLife::weight).sum())
                .toArray();
        for (double age : ages) {
            double[] ofCause = new double[samples.size()];
            double[] ofOthers = new double[samples.size()];
            double[] leaving = new double[samples.size()];
            for (int g = 0; g < samples.size(); g++) {
                List<EndedLife<C>> lives = samples.get(g).lives();
                for (; next[g] < lives.size() && lives.get(next[g]).exit() == age; next[g]++) {
                    EndedLife<C> life = lives.get(next[g]);
                    leaving[g] += life.weight();
                    ofCause[g] += cause.equals(life.cause()) ? life.weight() : 0;
                    ofOthers[g] += life.cause() != null && !cause.equals(life.cause()) ? life.weight() : 0;
                }
            }
            if (Arrays.stream(ofCause).sum() + Arrays.stream(ofOthers).sum() > 0) {
                test.advance(atRisk, ofCause, ofOthers);
            }
            for (int g = 0; g < samples.size(); g++) {
                atRisk[g] -= leaving[g];
            }
        }
        return test.result();
    }

    private void advance(double[] atRisk, double[] ofCause, double[] ofOthers) {
        // Weight at risk blown up for what all ends took, and thinned by the incidence of the cause.
        double[] whole = new double[groups];
        double[] thinned = new double[groups];
        double[] freeAfter = free.clone();
        for (int g = 0; g < groups; g++) {
            if (atRisk[g] > 0) {
                whole[g] = atRisk[g] / free[g];
                thinned[g] = whole[g] * (1 - incidence[g]);
                double ends = ofCause[g] + ofOthers[g];
                freeAfter[g] = free[g] * (atRisk[g] - ends) / atRisk[g];
                incidence[g] += free[g] * ofCause[g] / atRisk[g];
            }
        }
        double ends = Arrays.stream(ofCause).sum();
        double all = Arrays.stream(whole).sum();
        double allThinned = Arrays.stream(thinned).sum();
        double pooledAfter = pooled + ends / all;
        double[][] now = new double[groups][groups];
        for (int g = 0; g < groups; g++) {
            score[g] += ofCause[g] - ends * thinned[g] / allThinned;
            for (int h = 0; h < groups; h++) {
                now[g][h] = (g == h ? whole[g] : 0) - whole[g] * whole[h] / all;
                effect[g][h] += now[g][h] * ends / (all * (1 - pooled));
            }
        }
        for (int h = 0; h < groups; h++) {
            // An end by the cause moves the score now and, by lowering the group's share, all later effects.
            double later = freeAfter[h] > 0 ? 1 - (1 - pooledAfter) / freeAfter[h] : 1;
            if (ends > 0 && atRisk[h] > 0) {
                double ties = ends > 1 ? 1 - (ends - 1) / (all * free[h] - 1) : 1;
                addVariance(h, now, later, ties * free[h] * ends / (all * atRisk[h]));
            }
            if (ofOthers[h] > 0 && freeAfter[h] > 0) {
                double ties = ofOthers[h] > 1 ? 1 - (ofOthers[h] - 1) / (atRisk[h] - 1) : 1;
                double share = free[h] / atRisk[h];
                double others = (1 - pooledAfter) / freeAfter[h];
                addVariance(h, new double[groups][groups], -others, ties * share * share * ofOthers[h]);
            }
        }
        System.arraycopy(freeAfter, 0, free, 0, groups);
        pooled = pooledAfter;
    }

    /** Adds the variance of now - later x (effect so far), and what ties it to the effects still to come. */
    private void addVariance(int h, double[][] now, double later, double spread) {
        square[h] += later * later * spread;
        for (int g = 0; g < groups; g++) {
            double part = now[g][h] - later * effect[g][h];
            cross[g][h] += part * later * spread;
            for (int l = 0; l < groups; l++) {
                variance[g][l] += part * (now[l][h] - later * effect[l][h]) * spread;
            }
        }
    }

    private ChiSquareTest result() {
        int k = groups - 1;
        double[][] total = new double[k][k];
        for (int g = 0; g < k; g++) {
            for (int l = 0; l < k; l++) {
                total[g][l] = variance[g][l];
                for (int h = 0; h < groups; h++) {
                    total[g][l] += effect[g][h] * effect[l][h] * square[h]
                            + effect[g][h] * cross[l][h]
                            + effect[l][h] * cross[g][h];
                }
            }
        }
        double[] scores = Arrays.copyOf(score, k);
        Optional<PositiveDefinite> factored = PositiveDefinite.of(total);
        if (factored.isEmpty()) {
            return new ChiSquareTest(Double.NaN, k);
        }
        double[] solved = factored.get().solve(scores);
        double statistic = 0;
        for (int g = 0; g < k; g++) {
            statistic += scores[g] * solved[g];
        }
        return new ChiSquareTest(statistic, k);
    }
}
