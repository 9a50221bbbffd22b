package sensorrounds.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.numeric.Objective;
import sensorrounds.survival.Lifetime;

/**
 * Log-likelihood, given alive at entry, of the hazard h(age, day) = exp(a_band(age) + g_stratum + b cold(day)). A stretch of
 * days has the cumulative hazard sum over bands of exp(a + g) (other days + exp(b) cold days): the covariate is a change of
 * clock, so a life adds w (-H(entry, lower) + log(1 - exp(-H(lower, upper)))), or w (-H(entry, lower) + log h) at an exact age.
 * Sources: Friedman (1982), Ann. Statist. 10:101-113, for the bands; Lindsey and Ryan (1998), Statist. Med. 17:219-238, for
 * intervals; Kalbfleisch and Prentice (2002), 6.3.1, for an external covariate.
 *
 * <p>The point holds the levels of the bands, of the strata but the first, and the log factor of cold last.
 */
final class SeasonLikelihood {
    private final double[] edges;
    private final int strata;
    /** Days lived by stratum, band, other or cold. */
    private final double[][][] survived;
    /** Weight of exact failures, likewise. */
    private final double[][][] exact;

    private final List<Within> within = new ArrayList<>();

    /** A failure between two ages: days by band from its first one on, other and cold. */
    private record Within(int stratum, int first, double[][] days, double weight) {}

    /** @param edges between bands: 0 first, infinity last */
    SeasonLikelihood(double[] edges, List<SeasonLife> lives, List<String> strata) {
        this.edges = edges;
        this.strata = strata.size();
        survived = new double[this.strata][bands()][2];
        exact = new double[this.strata][bands()][2];
        for (SeasonLife life : lives) {
            add(life, strata.indexOf(life.stratum()));
        }
    }

    private void add(SeasonLife season, int stratum) {
        Lifetime life = season.life();
        for (int j = bandOf(life.entry()); j < bands() && edges[j] < life.lower(); j++) {
            double[] days = days(season, j, life.entry(), life.lower());
            survived[stratum][j][0] += life.weight() * days[0];
            survived[stratum][j][1] += life.weight() * days[1];
        }
        if (life.failed() && life.lower() == life.upper()) {
            boolean cold = season.cold().contains(season.fittedOn().plusDays(life.upper()));
            exact[stratum][bandEndingAt(life.upper())][cold ? 1 : 0] += life.weight();
        } else if (life.failed()) {
            int first = bandOf(life.lower());
            int last = bandEndingAt(life.upper());
            double[][] days = new double[last - first + 1][];
            for (int j = first; j <= last; j++) {
                days[j - first] = days(season, j, life.lower(), life.upper());
            }
            within.add(new Within(stratum, first, days, life.weight()));
        }
    }

    /** Other and cold days of a band between two ages. */
    private double[] days(SeasonLife life, int band, int from, int to) {
        long after = Math.max((long) edges[band], from);
        long by = (long) Math.min(edges[band + 1], to);
        if (by <= after) {
            return new double[2];
        }
        LocalDate start = life.fittedOn().plusDays(after);
        LocalDate end = life.fittedOn().plusDays(by);
        double cold = life.cold().daysBetween(start, end);
        return new double[] {by - after - cold, cold};
    }

    /** Band in which what comes after an age begins. */
    private int bandOf(int age) {
        int band = 0;
        while (age >= edges[band + 1]) {
            band++;
        }
        return band;
    }

    /** Band an age falls into: open below and closed above. */
    private int bandEndingAt(int age) {
        int band = 0;
        while (age > edges[band + 1]) {
            band++;
        }
        return band;
    }

    int bands() {
        return edges.length - 1;
    }

    int parameters() {
        return bands() + strata;
    }

    /** Days under observation, other and cold; failures to the middle of their interval. */
    double[] exposure() {
        double[] days = new double[2];
        for (double[][] stratum : survived) {
            for (double[] band : stratum) {
                days[0] += band[0];
                days[1] += band[1];
            }
        }
        for (Within f : within) {
            for (double[] band : f.days) {
                days[0] += f.weight * band[0] / 2;
                days[1] += f.weight * band[1] / 2;
            }
        }
        return days;
    }

    /** Failures, other and cold, each interval shared out by the hazard of its days. */
    double[] failures(double[] point) {
        double factor = Math.exp(point[parameters() - 1]);
        double[] failures = new double[2];
        for (double[][] stratum : exact) {
            for (double[] band : stratum) {
                failures[0] += band[0];
                failures[1] += band[1];
            }
        }
        for (Within f : within) {
            double cold = 0;
            double all = 0;
            for (int i = 0; i < f.days.length; i++) {
                double rate = Math.exp(point[f.first + i]);
                cold += rate * factor * f.days[i][1];
                all += rate * (f.days[i][0] + factor * f.days[i][1]);
            }
            failures[1] += f.weight * cold / all;
            failures[0] += f.weight * (1 - cold / all);
        }
        return failures;
    }

    /** Whether some failure may have fallen on other days, and on cold ones. */
    boolean[] possible() {
        boolean[] possible = new boolean[2];
        for (int season = 0; season < 2; season++) {
            int s = season;
            possible[s] = within.stream().anyMatch(f -> sum(f.days, s) > 0);
            for (double[][] stratum : exact) {
                possible[s] |= sum(stratum, s) > 0;
            }
        }
        return possible;
    }

    private static double sum(double[][] days, int season) {
        double sum = 0;
        for (double[] band : days) {
            sum += band[season];
        }
        return sum;
    }

    /** Value and derivatives at a point. */
    Objective.Evaluation at(double[] point) {
        int n = parameters();
        Sums sums = new Sums(n);
        double factor = Math.exp(point[n - 1]);
        for (int s = 0; s < strata; s++) {
            double level = s == 0 ? 0 : point[bands() + s - 1];
            for (int j = 0; j < bands(); j++) {
                double rate = Math.exp(point[j] + level);
                double cold = rate * factor * survived[s][j][1];
                double all = rate * survived[s][j][0] + cold;
                sums.value -= all;
                sums.hazard(-1, j, stratumAt(s), all, cold);
                double failures = exact[s][j][0] + exact[s][j][1];
                if (failures > 0) {
                    sums.value += failures * (point[j] + level) + exact[s][j][1] * point[n - 1];
                    sums.exact(j, stratumAt(s), failures, exact[s][j][1]);
                }
            }
        }
        for (Within f : within) {
            within(f, point, factor, sums);
        }
        return sums.evaluation();
    }

    /** Place of a stratum's level in the point; -1 for the first, which has none. */
    private int stratumAt(int stratum) {
        return stratum == 0 ? -1 : bands() + stratum - 1;
    }

    private void within(Within f, double[] point, double factor, Sums sums) {
        int n = parameters();
        int stratum = stratumAt(f.stratum);
        double level = stratum < 0 ? 0 : point[stratum];
        double[] slope = new double[n];
        double[] all = new double[f.days.length];
        double[] cold = new double[f.days.length];
        double total = 0;
        for (int i = 0; i < f.days.length; i++) {
            double rate = Math.exp(point[f.first + i] + level);
            cold[i] = rate * factor * f.days[i][1];
            all[i] = rate * f.days[i][0] + cold[i];
            total += all[i];
            slope[f.first + i] = all[i];
            slope[n - 1] += cold[i];
        }
        if (stratum >= 0) {
            slope[stratum] = total;
        }
        // log(1 - exp(-H)): first derivative 1 / (exp(H) - 1), second -first (1 + first).
        double first = 1 / Math.expm1(total);
        sums.value += f.weight * Math.log(-Math.expm1(-total));
        for (int i = 0; i < f.days.length; i++) {
            sums.hazard(f.weight * first, f.first + i, stratum, all[i], cold[i]);
        }
        sums.square(-f.weight * first * (1 + first), slope, f.first, f.first + f.days.length, stratum);
    }

    /** Value, gradient and Hessian while they are added up. */
    private static final class Sums {
        private final int n;
        private double value;
        private final double[] gradient;
        private final double[][] hessian;

        Sums(int n) {
            this.n = n;
            gradient = new double[n];
            hessian = new double[n][n];
        }

        /** Adds the derivatives of w times a cumulative hazard of one band. */
        void hazard(double w, int band, int stratum, double all, double cold) {
            int last = n - 1;
            gradient[band] += w * all;
            gradient[last] += w * cold;
            hessian[band][band] += w * all;
            hessian[last][last] += w * cold;
            both(band, last, w * cold);
            if (stratum >= 0) {
                gradient[stratum] += w * all;
                hessian[stratum][stratum] += w * all;
                both(band, stratum, w * all);
                both(stratum, last, w * cold);
            }
        }

        /** Adds those of the log hazard of exact failures, which is straight in all of them. */
        void exact(int band, int stratum, double all, double cold) {
            gradient[band] += all;
            gradient[n - 1] += cold;
            if (stratum >= 0) {
                gradient[stratum] += all;
            }
        }

        /** Adds w times a slope by itself, other than 0 in a range of bands, a stratum and the last place. */
        void square(double w, double[] slope, int from, int to, int stratum) {
            for (int a = from; a <= to; a++) {
                int i = a == to ? n - 1 : a;
                for (int b = from; b <= to; b++) {
                    int j = b == to ? n - 1 : b;
                    hessian[i][j] += w * slope[i] * slope[j];
                }
                if (stratum >= 0) {
                    both(i, stratum, w * slope[i] * slope[stratum]);
                }
            }
            if (stratum >= 0) {
                hessian[stratum][stratum] += w * slope[stratum] * slope[stratum];
            }
        }

        private void both(int i, int j, double add) {
            hessian[i][j] += add;
            hessian[j][i] += add;
        }

        Objective.Evaluation evaluation() {
            return new Objective.Evaluation(value, gradient, hessian);
        }
    }
}
