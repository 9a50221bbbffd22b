package sensorrounds.recurrence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Learns from vehicles whose warning recurs what the signs of their suspects weigh, though nobody knows their causes: the
 * cause of each is hidden, and so are the levels of its sensors' signs (EM: Dempster, Laird and Rubin 1977, J. R. Stat. Soc. B
 * 39:1, towards the posterior mode). The figures begun with are worth {@code declaredWorth} vehicles (Dirichlet priors for
 * shares); the weights of ages and their common level have gamma priors of their own, and their step is the minorisation of
 * Hunter 2004, Ann. Statist. 32:384. No step lowers the posterior density.
 */
final class SuspectLearner {
    static final int STEPS = 200;
    /** Gain in log-likelihood of one step, per vehicle, under which the search ends. */
    private static final double STILL = 3e-4;
    /** Causes that the declared weight of each class of age is worth, beside that of the others. */
    private static final double AGE_WORTH = 4;
    /** Causes that the declared level of all of them together is worth. */
    private static final double LEVEL_WORTH = 5;
    /** Of the logarithm of the level: how far it can go, and how closely it is found. */
    private static final double LEVEL_RANGE = 12;

    private static final double LEVEL_STILL = 1e-9;
    /** Reads that the chance of a drowned read is worth before any is seen. */
    private static final double MISSED_WORTH = 100;

    private final List<SuspectCase> cases;
    private final SuspectWeights weights;
    private final int steps;
    private final List<List<ReadLikelihood>> reads = new ArrayList<>();

    private SuspectLearner(List<SuspectCase> cases, SuspectWeights weights, int steps) {
        this.cases = cases;
        this.weights = weights;
        this.steps = steps;
    }

    /** @param cases in an order of their own, so that sums come out alike; too few of them leave the figures as they are */
    static SuspectFigures learn(List<SuspectCase> cases, SuspectFigures start, RecurrenceSettings settings) {
        return learn(cases, start, settings, STEPS);
    }

    /** @param steps after so many the search ends where it is, and the note of the figures says so */
    static SuspectFigures learn(List<SuspectCase> cases, SuspectFigures start, RecurrenceSettings settings, int steps) {
        SuspectWeights weights = settings.weights();
        if (cases.size() < weights.leastVehicles()) {
            return start;
        }
        return new SuspectLearner(cases, weights, steps)
                .learn(start, settings.condition().effectDeviation());
    }

    private SuspectFigures learn(SuspectFigures start, double effectDeviation) {
        double missed = missed(start.missed());
        double coldLow = ColdReports.of(cases, effectDeviation).orElse(start.coldLow());
        for (SuspectCase c : cases) {
            reads.add(c.sensors().stream()
                    .map(s -> new ReadLikelihood(s.reads(), SensorReads.Counted.ALL, missed, coldLow))
                    .toList());
        }
        SuspectFigures figures = start;
        double before = Double.NEGATIVE_INFINITY;
        int step = 0;
        boolean still = false;
        while (step < steps && !still) {
            SuspectCounts counts = counts(figures);
            still = counts.logLikelihood - before < STILL * cases.size();
            before = counts.logLikelihood;
            figures = next(start, figures, counts, missed, coldLow);
            step++;
        }
        return still ? figures : figures.noting(", by a search ended after " + steps + " steps while still moving");
    }

    /** Reads at visits without the warning, as if all sensors were sound. */
    private double missed(double declared) {
        double missed = declared;
        for (int i = 0; i < 20; i++) {
            double mute = MISSED_WORTH * declared;
            double all = MISSED_WORTH;
            for (SuspectCase c : cases) {
                for (SuspectCase.Sensor s : c.sensors()) {
                    SensorReads r = s.reads();
                    for (int k = 0; k < r.size(); k++) {
                        if (r.tried(k) && !r.warned(k)) {
                            all++;
                            mute += r.answered(k)
                                    ? 0
                                    : missed / (missed + (1 - missed) * Math.pow(1 - r.chance(k), r.tries(k)));
                        }
                    }
                }
            }
            missed = mute / all;
        }
        return missed;
    }

    private SuspectCounts counts(SuspectFigures f) {
        SuspectCounts counts = new SuspectCounts();
        ReadLikelihood.Laws laws = new ReadLikelihood.Laws(f);
        for (int v = 0; v < cases.size(); v++) {
            SuspectCase c = cases.get(v);
            int n = c.sensors().size();
            double[] prior = new double[n];
            double[] weight = new double[n + 1];
            double open = 1;
            for (int j = 0; j < n; j++) {
                SuspectCase.Sensor s = c.sensors().get(j);
                prior[j] = f.age()[s.ageClass()] * Math.exp(s.prior());
                open += prior[j];
                counts.logLikelihood += Math.log(
                        reads.get(v).get(j).other(laws) * SignLaw.mean(f.apart().other(), s.apartLikelihood()));
                weight[j] = prior[j]
                        * Math.exp(s.declared())
                        * reads.get(v).get(j).ratio(laws)
                        * f.apart().ratio(s.apartLikelihood())
                        * c.codes().fullRatio(f, s.own());
            }
            weight[n] = Math.exp(c.outside());
            double total = 0;
            for (double w : weight) {
                total += w;
            }
            counts.logLikelihood += Math.log(total / open) + c.codes().logOutside(f);
            for (int j = 0; j < n; j++) {
                SuspectCase.Sensor s = c.sensors().get(j);
                double p = weight[j] / total;
                reads.get(v).get(j).count(laws, p, counts);
                ReadLikelihood.add(f.apart().cause(), s.apartLikelihood(), p, counts.apart.cause());
                ReadLikelihood.add(f.apart().other(), s.apartLikelihood(), 1 - p, counts.apart.other());
                c.codes().count(f, s.own(), true, p, counts);
                counts.causes[s.ageClass()] += p;
                counts.exposed[s.ageClass()] += prior[j] / open / f.age()[s.ageClass()];
            }
            c.codes().count(f, new boolean[c.codes().namings().size()], false, weight[n] / total, counts);
        }
        return counts;
    }

    /**
     * Weights of ages, as the level of all sensors against "not a sensor" times a shape over the classes. The level has a prior of
     * its own: priors on the classes alone would hold it with the worth of all of them together. The objective is concave
     * in the logarithms; with the shape at its best for a level, its slope in the level falls.
     */
    private static double[] ages(double[] start, SuspectCounts counts) {
        double low = -LEVEL_RANGE;
        double high = LEVEL_RANGE;
        while (high - low > LEVEL_STILL) {
            double level = Math.exp(0.5 * (low + high));
            double slope = LEVEL_WORTH * (1 - level);
            double[] shape = shape(start, counts, level);
            for (int i = 0; i < shape.length; i++) {
                slope += counts.causes[i] - level * shape[i] * counts.exposed[i];
            }
            if (slope > 0) {
                low = 0.5 * (low + high);
            } else {
                high = 0.5 * (low + high);
            }
        }
        double level = Math.exp(0.5 * (low + high));
        double[] age = shape(start, counts, level);
        for (int i = 0; i < age.length; i++) {
            age[i] *= level;
        }
        return age;
    }

    private static double[] shape(double[] start, SuspectCounts counts, double level) {
        double[] shape = new double[start.length];
        for (int i = 0; i < shape.length; i++) {
            shape[i] = (AGE_WORTH + counts.causes[i]) / (AGE_WORTH / start[i] + level * counts.exposed[i]);
        }
        return shape;
    }

    private SuspectFigures next(
            SuspectFigures start, SuspectFigures now, SuspectCounts counts, double missed, double coldLow) {
        double[] age = ages(start.age(), counts);
        return new SuspectFigures(
                SuspectFigures.Basis.FLAGGED_VEHICLES,
                cases.size(),
                String.format(Locale.ROOT, "weights learned from %d vehicles whose warning recurs", cases.size()),
                start.wake().next(now.wake(), counts.wake, weights.declaredWorth()),
                start.silence().next(now.silence(), counts.silence, weights.declaredWorth()),
                start.low().next(now.low(), counts.low, weights.declaredWorth()),
                start.apart().next(now.apart(), counts.apart, weights.declaredWorth()),
                SignLaw.shares(start.naming(), counts.naming, weights.declaredWorth()),
                SignLaw.shares(start.misnaming(), counts.misnaming, weights.declaredWorth()),
                SignLaw.shares(start.lead(), counts.lead, weights.declaredWorth()),
                age,
                missed,
                coldLow);
    }
}
