package sensorrounds.recurrence;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import sensorrounds.numeric.GammaFunction;
import sensorrounds.recurrence.GammaPoissonFit.Cell;

/**
 * Counts over exposures, each unit with its own Poisson rate, the rates in groups: within a group they follow a gamma law of a
 * common shape around the group's mean, so counts are a mixture of negative binomials. One group is the gamma law ({@link
 * GammaPoissonFit}); with an infinite shape the groups are points, and enough of them reach the maximum over all laws of rates
 * whatever (Simar 1976, Ann. Statist. 4:1200; Laird 1978, J. Am. Stat. Assoc. 73:805). Groups are added one by one where the
 * gradient function D(m) = sum over units of f(y | m) / f(y) less their number is largest, and all means and shares are then
 * moved by EM; D nowhere above 0 certifies the maximum for that shape (Lindsay 1983, Ann. Statist. 11:86). The shape maximises the
 * profile. Each number of groups on the way is kept, since the data may prefer fewer.
 */
final class GroupedRatesFit {
    /** A group's mean rate and the share of units in it. */
    record Group(double mean, double share) {}

    /**
     * @param shape of the gamma law within groups; infinite for points
     * @param groups rising means, shares that add up to 1
     * @param gradient largest D per unit: how much the log-likelihood of a unit can still gain with this shape, at most
     */
    record Fit(double shape, List<Group> groups, double logLikelihood, double gradient) {
        Fit {
            groups = List.copyOf(groups);
        }

        /** Parameters: the means, all shares but one, and the shape where it is not given. */
        int size() {
            return 2 * groups.size();
        }

        double mean() {
            return groups.stream().mapToDouble(g -> g.mean() * g.share()).sum();
        }
    }

    /** Units gain less than this by any further point. */
    private static final double CERTIFIED = 1e-6;

    private static final int STEPS = 20_000;
    private static final int GRID = 200;
    private static final int GRID_STEPS = 30;
    private static final double LEAST_SHARE = 1e-9;
    private static final double ENTERS_WITH = 0.02;
    /** Of the mean over all. */
    private static final double LEAST_MEAN = 1e-6;

    private static final double LEAST_SHAPE = 0.2;
    /** Steps of the search for the shape: to within a few per cent, finer than the data can tell. */
    private static final int SHAPE_STEPS = 10;

    private final List<Cell> cells;
    private final double[] logConstant;
    private final double units;
    private final double largest;
    private final double still;
    /** A group without an event has a mean of nearly 0: its own law then is as good as a point there. */
    private final double leastMean;

    private double shape;
    /** By count: log of gamma(shape + count) / gamma(shape) / shape^count. */
    private double[] logRising = {};

    private double[] means;
    private double[] shares;
    private double logLikelihood;

    private GroupedRatesFit(List<Cell> cells, double still) {
        this.cells = cells;
        this.still = still;
        logConstant = new double[cells.size()];
        double all = 0;
        double most = 0;
        double events = 0;
        double exposure = 0;
        int count = 0;
        for (int i = 0; i < logConstant.length; i++) {
            Cell c = cells.get(i);
            logConstant[i] = c.count() * Math.log(c.exposure()) - GammaFunction.logGamma(c.count() + 1.0);
            all += c.units();
            events += (double) c.units() * c.count();
            exposure += c.units() * c.exposure();
            most = Math.max(most, c.count() / c.exposure());
            count = Math.max(count, c.count());
        }
        if (!(events > 0 && exposure > 0)) {
            throw new IllegalArgumentException(
                    "a law of rates needs an event and exposure, not " + events + " and " + exposure);
        }
        units = all;
        largest = most;
        logRising = new double[count + 1];
        leastMean = LEAST_MEAN * events / exposure;
        means = new double[] {events / exposure};
        shares = new double[] {1};
    }

    /**
     * Points: fits with one, two, and so on, the last with the most asked for or certified as the maximum over all laws.
     *
     * @param cells some event among them
     */
    static List<Fit> points(List<Cell> cells, int most) {
        GroupedRatesFit search = new GroupedRatesFit(cells, 1e-12);
        search.setShape(Double.POSITIVE_INFINITY);
        List<Fit> fits = new ArrayList<>();
        while (true) {
            search.settle();
            double next = search.steepest();
            double gradient = Math.max(0, search.gradient(next));
            fits.add(search.fit(gradient));
            if (gradient < CERTIFIED || search.means.length >= most) {
                return fits;
            }
            search.enter(next);
        }
    }

    /**
     * The fit with one group more than a given one, the shape fitted with it.
     *
     * @param mostShape largest shape reckoned with
     */
    static Fit withOneMore(List<Cell> cells, Fit fewer, double mostShape) {
        GroupedRatesFit search = new GroupedRatesFit(cells, 1e-9);
        search.means = fewer.groups().stream().mapToDouble(Group::mean).toArray();
        search.shares = fewer.groups().stream().mapToDouble(Group::share).toArray();
        // A narrower law within groups leaves room for another group.
        search.setShape(Math.min(mostShape, 2 * fewer.shape()));
        search.settle();
        search.enter(search.steepest());
        Fit[] best = {null};
        golden(
                logShape -> {
                    search.setShape(Math.exp(logShape));
                    search.settle();
                    if (best[0] == null || search.logLikelihood > best[0].logLikelihood()) {
                        best[0] = search.fit(Double.NaN);
                    }
                    return search.logLikelihood;
                },
                Math.log(LEAST_SHAPE),
                Math.log(mostShape),
                SHAPE_STEPS);
        return best[0];
    }

    private void setShape(double newShape) {
        shape = newShape;
        for (int y = 1; y < logRising.length; y++) {
            logRising[y] = logRising[y - 1] + Math.log1p((y - 1) / shape);
        }
    }

    private Fit fit(double gradient) {
        List<Group> groups = new ArrayList<>();
        for (int k = 0; k < means.length; k++) {
            groups.add(new Group(means[k], shares[k]));
        }
        groups.sort((a, b) -> Double.compare(a.mean(), b.mean()));
        return new Fit(shape, groups, logLikelihood, gradient);
    }

    private void enter(double mean) {
        double[] longer = new double[means.length + 1];
        double[] with = new double[means.length + 1];
        for (int k = 0; k < means.length; k++) {
            longer[k] = means[k];
            with[k] = shares[k] * (1 - ENTERS_WITH);
        }
        longer[means.length] = mean;
        with[means.length] = ENTERS_WITH;
        means = longer;
        shares = with;
    }

    /** EM until the log-likelihood stands still. */
    private void settle() {
        logLikelihood = Double.NEGATIVE_INFINITY;
        for (int step = 0; step < STEPS; step++) {
            double before = logLikelihood;
            step();
            if (Math.abs(logLikelihood - before) < still * Math.abs(logLikelihood)) {
                break;
            }
        }
    }

    /** Shares by EM; each mean by one step of scoring on its own part, which for points is the step of EM. */
    private void step() {
        int groups = means.length;
        double[] weight = new double[groups];
        double[] events = new double[groups];
        double[] exposure = new double[groups];
        double[] joint = new double[groups];
        double sum = 0;
        for (int i = 0; i < cells.size(); i++) {
            Cell c = cells.get(i);
            double all = 0;
            for (int k = 0; k < groups; k++) {
                joint[k] = shares[k] * chance(i, means[k]);
                all += joint[k];
            }
            sum += c.units() * Math.log(all);
            for (int k = 0; k < groups; k++) {
                double part = c.units() * joint[k] / all;
                double precision = part / (1 + means[k] * c.exposure() / shape);
                weight[k] += part;
                events[k] += precision * c.count();
                exposure[k] += precision * c.exposure();
            }
        }
        logLikelihood = sum;
        for (int k = 0; k < groups; k++) {
            shares[k] = Math.max(LEAST_SHARE, weight[k] / units);
            means[k] = exposure[k] > 0 ? Math.max(leastMean, events[k] / exposure[k]) : means[k];
        }
    }

    private double chance(int cell, double mean) {
        Cell c = cells.get(cell);
        int y = c.count();
        double expected = mean * c.exposure();
        if (expected == 0) {
            return y == 0 ? 1 : 0;
        }
        double logAway = shape == Double.POSITIVE_INFINITY ? -expected : -shape * Math.log1p(expected / shape);
        double logCount = y == 0 ? 0 : y * Math.log(mean / (1 + expected / shape));
        return Math.exp(logConstant[cell] + logRising[y] + logAway + logCount);
    }

    /** D per unit. */
    private double gradient(double mean) {
        double sum = 0;
        for (int i = 0; i < cells.size(); i++) {
            double all = 0;
            for (int k = 0; k < means.length; k++) {
                all += shares[k] * chance(i, means[k]);
            }
            sum += cells.get(i).units() * chance(i, mean) / all;
        }
        return sum / units - 1;
    }

    /** Where D is largest: on a grid that is finer near 0, then between its neighbours by golden section. */
    private double steepest() {
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int g = 0; g <= GRID; g++) {
            double value = gradient(onGrid(g));
            if (value > most) {
                best = g;
                most = value;
            }
        }
        double at = golden(this::gradient, onGrid(Math.max(0, best - 1)), onGrid(Math.min(GRID, best + 1)), GRID_STEPS);
        return gradient(at) > most ? at : onGrid(best);
    }

    private double onGrid(int g) {
        double share = g / (double) GRID;
        return largest * share * share;
    }

    private static double golden(DoubleUnaryOperator f, double from, double to, int steps) {
        double ratio = (Math.sqrt(5) - 1) / 2;
        double low = from;
        double high = to;
        double a = high - ratio * (high - low);
        double b = low + ratio * (high - low);
        double atA = f.applyAsDouble(a);
        double atB = f.applyAsDouble(b);
        for (int i = 0; i < steps; i++) {
            if (atA < atB) {
                low = a;
                a = b;
                atA = atB;
                b = low + ratio * (high - low);
                atB = f.applyAsDouble(b);
            } else {
                high = b;
                b = a;
                atB = atA;
                a = high - ratio * (high - low);
                atA = f.applyAsDouble(a);
            }
        }
        return 0.5 * (low + high);
    }
}
