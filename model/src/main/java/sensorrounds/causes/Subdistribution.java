package sensorrounds.causes;

import java.util.Arrays;
import sensorrounds.numeric.Objective;

/**
 * Weighted log partial likelihood of the incidence of one cause, coefficients per standard unit of the covariates; and the
 * covariance of its score, the estimated censoring law included. All sums run once over the ages: O(n p^2).
 */
final class Subdistribution implements Objective {
    /** How a life ended. */
    enum End {
        CAUSE,
        OTHER,
        CENSORED
    }

    private final int p;
    private final double[] scale;
    /** Lives by rising age. */
    private final double[] age;

    private final double[] weight;
    private final End[] end;
    private final double[][] z;
    /** First life of each distinct age, and one past the last. */
    private final int[] first;
    /** Chance of not being censored before each distinct age. */
    private final double[] uncensored;

    Subdistribution(double[] age, double[] weight, End[] end, double[][] x, int p) {
        this.age = age;
        this.weight = weight;
        this.end = end;
        this.p = p;
        scale = new double[p];
        z = new double[age.length][p];
        double lives = Arrays.stream(weight).sum();
        for (int j = 0; j < p; j++) {
            double mean = 0;
            for (int i = 0; i < age.length; i++) {
                mean += weight[i] * x[i][j] / lives;
            }
            double square = 0;
            for (int i = 0; i < age.length; i++) {
                square += weight[i] * (x[i][j] - mean) * (x[i][j] - mean) / lives;
            }
            scale[j] = Math.sqrt(square) > 1e-12 * Math.abs(mean) ? Math.sqrt(square) : 1;
            for (int i = 0; i < age.length; i++) {
                z[i][j] = (x[i][j] - mean) / scale[j];
            }
        }
        int[] starts = new int[age.length + 1];
        int distinct = 0;
        for (int i = 0; i < age.length; i++) {
            if (i == 0 || age[i] > age[i - 1]) {
                starts[distinct++] = i;
            }
        }
        starts[distinct] = age.length;
        first = Arrays.copyOf(starts, distinct + 1);
        uncensored = new double[distinct];
        double atRisk = lives;
        double chance = 1;
        for (int a = 0; a < distinct; a++) {
            uncensored[a] = chance;
            double censored = 0;
            double leaving = 0;
            for (int i = first[a]; i < first[a + 1]; i++) {
                leaving += weight[i];
                censored += end[i] == End.CENSORED ? weight[i] : 0;
            }
            chance *= Math.max(0, 1 - censored / atRisk);
            atRisk -= leaving;
        }
    }

    double scale(int column) {
        return scale[column];
    }

    double failures() {
        double sum = 0;
        for (int i = 0; i < age.length; i++) {
            sum += end[i] == End.CAUSE ? weight[i] : 0;
        }
        return sum;
    }

    /** Risk scores, their sums over the risk set at each distinct age (total, first, second moments), by beta. */
    private final class Sums {
        private final double[] risk = new double[age.length];
        private final double[] eta = new double[age.length];
        private final double[][] at = new double[uncensored.length][1 + p + p * p];

        Sums(double[] beta) {
            double largest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < age.length; i++) {
                for (int j = 0; j < p; j++) {
                    eta[i] += beta[j] * z[i][j];
                }
                largest = Math.max(largest, eta[i]);
            }
            double[] sum = new double[1 + p + p * p];
            for (int i = 0; i < age.length; i++) {
                eta[i] -= largest;
                risk[i] = Math.exp(eta[i]);
            }
            for (int a = uncensored.length - 1; a >= 0; a--) {
                for (int i = first[a]; i < first[a + 1]; i++) {
                    add(sum, i, weight[i] * risk[i]);
                }
                at[a] = sum.clone();
            }
            double[] others = new double[1 + p + p * p];
            for (int a = 0; a < uncensored.length; a++) {
                for (int m = 0; m < others.length; m++) {
                    at[a][m] += uncensored[a] * others[m];
                }
                for (int i = first[a]; i < first[a + 1]; i++) {
                    if (end[i] == End.OTHER) {
                        add(others, i, weight[i] * risk[i] / uncensored[a]);
                    }
                }
            }
        }

        private void add(double[] sum, int i, double r) {
            sum[0] += r;
            for (int j = 0; j < p; j++) {
                sum[1 + j] += r * z[i][j];
                for (int k = 0; k < p; k++) {
                    sum[1 + p + j * p + k] += r * z[i][j] * z[i][k];
                }
            }
        }

        double mean(int a, int j) {
            return at[a][1 + j] / at[a][0];
        }
    }

    private double ends(int a) {
        double sum = 0;
        for (int i = first[a]; i < first[a + 1]; i++) {
            sum += end[i] == End.CAUSE ? weight[i] : 0;
        }
        return sum;
    }

    @Override
    public Evaluation at(double[] beta) {
        Sums sums = new Sums(beta);
        double value = 0;
        double[] gradient = new double[p];
        double[][] hessian = new double[p][p];
        for (int a = 0; a < uncensored.length; a++) {
            double ends = ends(a);
            if (ends == 0) {
                continue;
            }
            for (int i = first[a]; i < first[a + 1]; i++) {
                if (end[i] == End.CAUSE) {
                    value += weight[i] * sums.eta[i];
                    for (int j = 0; j < p; j++) {
                        gradient[j] += weight[i] * (z[i][j] - sums.mean(a, j));
                    }
                }
            }
            value -= ends * Math.log(sums.at[a][0]);
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    hessian[j][k] -=
                            ends * (sums.at[a][1 + p + j * p + k] / sums.at[a][0] - sums.mean(a, j) * sums.mean(a, k));
                }
            }
        }
        return new Evaluation(value, gradient, hessian);
    }

    /** Sum over lives of the outer product of their part in the score and in the estimate of censoring. */
    double[][] scoreCovariance(double[] beta) {
        Sums sums = new Sums(beta);
        int m = uncensored.length;
        // Hazard jumps and jumps times means: cumulated to each age, and still to come, thinned by censoring.
        double[][] to = new double[m + 1][1 + p];
        double[][] beyond = new double[m + 1][1 + p];
        for (int a = 0; a < m; a++) {
            double jump = ends(a) / sums.at[a][0];
            to[a + 1][0] = to[a][0] + jump;
            for (int j = 0; j < p; j++) {
                to[a + 1][1 + j] = to[a][1 + j] + jump * sums.mean(a, j);
            }
        }
        for (int a = m - 1; a >= 0; a--) {
            double jump = uncensored[a] * ends(a) / sums.at[a][0];
            beyond[a][0] = beyond[a + 1][0] + jump;
            for (int j = 0; j < p; j++) {
                beyond[a][1 + j] = beyond[a + 1][1 + j] + jump * sums.mean(a, j);
            }
        }
        double[][] result = new double[p][p];
        double[] others = new double[1 + p];
        double[] compensator = new double[p];
        double atRisk = Arrays.stream(weight).sum();
        for (int a = 0; a < m; a++) {
            double censored = 0;
            double leaving = 0;
            for (int i = first[a]; i < first[a + 1]; i++) {
                leaving += weight[i];
                censored += end[i] == End.CENSORED ? weight[i] : 0;
            }
            // What a censoring here takes from the score of lives ended by another cause before.
            double[] taken = new double[p];
            for (int j = 0; j < p; j++) {
                taken[j] = (others[1 + j] * beyond[a][0] - others[0] * beyond[a][1 + j]) / atRisk;
                compensator[j] += taken[j] * censored / atRisk;
            }
            for (int i = first[a]; i < first[a + 1]; i++) {
                double[] part = new double[p];
                for (int j = 0; j < p; j++) {
                    part[j] = -sums.risk[i] * (z[i][j] * to[a + 1][0] - to[a + 1][1 + j]) - compensator[j];
                    if (end[i] == End.CAUSE) {
                        part[j] += z[i][j] - sums.mean(a, j);
                    } else if (end[i] == End.CENSORED) {
                        part[j] += taken[j];
                    } else {
                        part[j] -= sums.risk[i] / uncensored[a] * (z[i][j] * beyond[a + 1][0] - beyond[a + 1][1 + j]);
                    }
                }
                for (int j = 0; j < p; j++) {
                    for (int k = 0; k < p; k++) {
                        result[j][k] += weight[i] * part[j] * part[k];
                    }
                }
            }
            for (int i = first[a]; i < first[a + 1]; i++) {
                if (end[i] == End.OTHER) {
                    double r = weight[i] * sums.risk[i] / uncensored[a];
                    others[0] += r;
                    for (int j = 0; j < p; j++) {
                        others[1 + j] += r * z[i][j];
                    }
                }
            }
            atRisk -= leaving;
        }
        return result;
    }
}
