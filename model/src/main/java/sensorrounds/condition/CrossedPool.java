package sensorrounds.condition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.condition.CrossedTries.Pair;
import sensorrounds.condition.TechnicianEffects.Effect;
import sensorrounds.numeric.PositiveDefinite;

/**
 * Readers and technicians that hang together by shared readers. The logit of one try is the reader's, normal with the
 * mean and variance that the beta law of readers gives it, plus the technician's, normal around 0, plus a known shift. Mode
 * by Newton's method on a concave function, covariance from the curvature there. A level that all technicians share cannot be
 * told from the readers' and is given to them: effects are from the mean of the pool's technicians. Not thread safe.
 */
final class CrossedPool implements Serializable {
    private static final int STEPS = 100;
    private static final double SMALL = 1e-10;

    private record Cell(int reader, int technician, double shift, WakeCells.Tries tries) implements Serializable {}

    private final double mean;
    private final double variance;
    private final Map<String, Integer> readers = new HashMap<>();
    private final SortedMap<String, Integer> technicians = new TreeMap<>();
    private final List<Cell> cells = new ArrayList<>();
    /** Readers' logits first, then technicians' effects. */
    private double[] at = {};

    private double[][] covariance;

    CrossedPool(BetaDistribution readerLaw) {
        mean = Polygamma.digamma(readerLaw.alpha()) - Polygamma.digamma(readerLaw.beta());
        variance = Polygamma.trigamma(readerLaw.alpha()) + Polygamma.trigamma(readerLaw.beta());
    }

    void add(Pair pair, double shift, WakeCells.Tries tries) {
        cells.add(new Cell(
                readers.computeIfAbsent(pair.readerId(), k -> readers.size()),
                technicians.computeIfAbsent(pair.technicianId(), k -> technicians.size()),
                shift,
                tries));
    }

    int size() {
        return readers.size() + technicians.size();
    }

    Set<String> technicians() {
        return technicians.keySet();
    }

    /** Mode and curvature with this variance of technicians, from the last mode on. */
    void fit(double technicianVariance) {
        int n = size();
        if (at.length != n) {
            at = new double[n];
            Arrays.fill(at, 0, readers.size(), mean);
        }
        double value = value(at, technicianVariance);
        for (int step = 0; step < STEPS; step++) {
            double[] slope = new double[n];
            PositiveDefinite curvature = PositiveDefinite.of(curvature(technicianVariance, slope))
                    .orElseThrow(() -> new IllegalStateException("priors make the curvature positive"));
            double[] move = curvature.solve(slope);
            double decrement = 0;
            for (int i = 0; i < n; i++) {
                decrement += move[i] * slope[i];
            }
            if (decrement < SMALL) {
                covariance = curvature.inverse();
                return;
            }
            double length = 1;
            double[] next = moved(move, length);
            double there = value(next, technicianVariance);
            while (!(there >= value) && length > SMALL) {
                length /= 2;
                next = moved(move, length);
                there = value(next, technicianVariance);
            }
            at = next;
            value = there;
        }
        throw new IllegalStateException("Newton's method on a concave function did not end in " + STEPS + " steps");
    }

    private double[] moved(double[] move, double length) {
        double[] next = at.clone();
        for (int i = 0; i < next.length; i++) {
            next[i] += length * move[i];
        }
        return next;
    }

    private double logit(Cell c, double[] point) {
        return point[c.reader()] + point[readers.size() + c.technician()] + c.shift();
    }

    private double value(double[] point, double technicianVariance) {
        double sum = 0;
        for (Cell c : cells) {
            double logit = logit(c, point);
            sum += c.tries().successes() * Odds.logChance(logit) + c.tries().failures() * Odds.logChance(-logit);
        }
        for (int i = 0; i < point.length; i++) {
            boolean reader = i < readers.size();
            double off = point[i] - (reader ? mean : 0);
            sum -= off * off / (2 * (reader ? variance : technicianVariance));
        }
        return sum;
    }

    private double[][] curvature(double technicianVariance, double[] slope) {
        int n = size();
        double[][] curvature = new double[n][n];
        for (int i = 0; i < n; i++) {
            boolean reader = i < readers.size();
            double precision = 1 / (reader ? variance : technicianVariance);
            slope[i] = -precision * (at[i] - (reader ? mean : 0));
            curvature[i][i] = precision;
        }
        for (Cell c : cells) {
            double p = Odds.chance(logit(c, at));
            double information = c.tries().total() * p * (1 - p);
            double off = c.tries().successes() - c.tries().total() * p;
            int r = c.reader();
            int t = readers.size() + c.technician();
            slope[r] += off;
            slope[t] += off;
            curvature[r][r] += information;
            curvature[t][t] += information;
            curvature[r][t] += information;
            curvature[t][r] += information;
        }
        return curvature;
    }

    /** Sum over technicians of the expected square of the effect, the E step for its variance. */
    double expectedSquares() {
        double sum = 0;
        for (int t = readers.size(); t < size(); t++) {
            sum += at[t] * at[t] + covariance[t][t];
        }
        return sum;
    }

    /** Variance of the mean effect of technicians with these shares; those not in this pool are left out. */
    double varianceOfMean(Map<String, Double> shares) {
        double[] mean = new double[size()];
        for (Map.Entry<String, Double> share : shares.entrySet()) {
            Integer technician = technicians.get(share.getKey());
            if (technician != null) {
                double[] own = fromMean(technician);
                for (int i = 0; i < mean.length; i++) {
                    mean[i] += share.getValue() * own[i];
                }
            }
        }
        return product(mean, mean);
    }

    Effect effect(String technician) {
        double[] own = fromMean(technicians.get(technician));
        double[] behind = contrast(technicians.get(technician));
        return new Effect(
                at(own), Math.sqrt(product(own, own)), at(behind), Math.sqrt(Math.max(0, product(behind, behind))));
    }

    private double at(double[] contrast) {
        double sum = 0;
        for (int i = 0; i < contrast.length; i++) {
            sum += contrast[i] * at[i];
        }
        return sum;
    }

    private double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = readers.size(); i < a.length; i++) {
            for (int j = readers.size(); a[i] != 0 && j < b.length; j++) {
                sum += a[i] * b[j] * covariance[i][j];
            }
        }
        return sum;
    }

    private double[] fromMean(int technician) {
        double[] contrast = new double[size()];
        Arrays.fill(contrast, readers.size(), size(), -1.0 / technicians.size());
        contrast[readers.size() + technician] += 1;
        return contrast;
    }

    /** The technician against the colleagues on the same readers, readers weighted by the technician's tries with them. */
    private double[] contrast(int technician) {
        double[][] tries = new double[readers.size()][technicians.size()];
        cells.forEach(c -> tries[c.reader()][c.technician()] += c.tries().total());
        double[] contrast = new double[size()];
        double all = 0;
        for (double[] users : tries) {
            double others = -users[technician];
            for (double u : users) {
                others += u;
            }
            if (users[technician] > 0 && others > 0) {
                all += users[technician];
                for (int t = 0; t < users.length; t++) {
                    if (t != technician) {
                        contrast[readers.size() + t] -= users[technician] * users[t] / others;
                    }
                }
            }
        }
        for (int i = 0; i < contrast.length; i++) {
            contrast[i] /= all;
        }
        contrast[readers.size() + technician] += 1;
        return contrast;
    }
}
