package sensorrounds.causes;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sensorrounds.causes.CauseHazardFit.Status;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.Counted;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.PiecewiseExponentialFit;
import sensorrounds.survival.PiecewiseExponentialFitter;

/**
 * A hazard for each cause of failure, from lives whose causes may be unknown, under any mix of exact ages, intervals, right
 * censoring and delayed entry: a Weibull for each cause, or hazards constant within bands of age. Steps of the EM algorithm
 * (each unknown failure shared out by the hazards of its possible causes) come near the maximum, Newton's method on the
 * likelihood of what was seen ends at it, and its second derivatives give the errors, so that not knowing is in them. Sources as
 * for {@link CauseLikelihood}; the EM steps: Craiu and Duchesne (2004).
 *
 * <p>Causes must go unknown by chance: whether a cause was written down may depend on the age, not on which it was. Where that is
 * in doubt, fit {@link MaskedSample#givingMaskedTo} as well.
 */
public final class CauseHazardFitter {
    private static final double LEAST_INFORMATION = 1e-6;
    private static final double MAX_LOG_SHAPE = Math.log(100);
    private static final double MAX_LOG_SCALE = 40;
    /** Failures known by a cause below which a Weibull has no scale and shape. */
    private static final double LEAST_KNOWN = 2;

    private final Optional<double[]> between;
    private final double level;

    private CauseHazardFitter(Optional<double[]> between, double level) {
        this.between = between;
        this.level = level;
    }

    /** A Weibull law for each cause, limits at 95 %. */
    public static CauseHazardFitter weibulls() {
        return new CauseHazardFitter(Optional.empty(), 0.95);
    }

    /**
     * A constant hazard within each band of age for each cause, limits at 95 %. Last bands that only failures reach are merged
     * into the one before.
     *
     * @param between ages between the bands, ascending, above 0
     */
    public static CauseHazardFitter withBands(double... between) {
        PiecewiseExponentialFitter.withBands(between);
        return new CauseHazardFitter(Optional.of(between.clone()), 0.95);
    }

    /** Coverage of the limits, in (0, 1). */
    public CauseHazardFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new CauseHazardFitter(between, newLevel);
    }

    /** The fit; ask {@link CauseHazardFit#converged} before its hazards. */
    public <C> CauseHazardFit<C> fit(MaskedSample<C> sample) {
        if (!(sample.total() > 0)) {
            return CauseHazardFit.failed(sample, Status.NO_LIVES, "there are no lives");
        }
        if (!(sample.failures() > 0)) {
            return CauseHazardFit.failed(sample, Status.NO_FAILURES, Counted.noFailures(sample.total()));
        }
        int causes = sample.causes().size();
        if (causes > 1
                && sample.lives().stream()
                        .allMatch(life -> !life.failed() || life.candidates().size() == causes)) {
            return CauseHazardFit.failed(
                    sample,
                    Status.ALL_UNKNOWN,
                    "the cause of none of " + Counted.failures(sample.failures())
                            + " is known, nor any cause ruled out; only the"
                            + " hazard of all causes together can be told: fit it without causes");
        }
        return between.isPresent() ? bands(sample, between.get()) : weibulls(sample);
    }

    private static <C> boolean possible(MaskedSample<C> sample, C cause) {
        return sample.lives().stream().anyMatch(life -> life.candidates().contains(cause));
    }

    private <C> CauseHazardFit<C> bands(MaskedSample<C> sample, double[] ages) {
        PiecewiseExponentialFit all = PiecewiseExponentialFitter.withBands(ages).fit(sample.allCauses());
        if (!all.converged()) {
            return CauseHazardFit.failed(
                    sample, Status.FLAT_LIKELIHOOD, "the hazard of all causes together by these bands: " + all.cause());
        }
        double[] edges = new double[all.bands().size() + 1];
        for (int j = 0; j < edges.length - 1; j++) {
            edges[j + 1] = all.bands().get(j).to();
        }
        double[] inner = Arrays.copyOfRange(edges, 1, edges.length - 1);
        List<CauseHazard> hazards = sample.causes().stream()
                .<CauseHazard>map(
                        cause -> possible(sample, cause) ? new CauseHazard.Bands(edges) : new CauseHazard.None())
                .toList();
        CauseModel model = new CauseModel(hazards, inner);
        CauseLikelihood likelihood = new CauseLikelihood(model, sample);
        BandSteps steps = new BandSteps(model, likelihood, edges);
        double[] start = new double[model.parameters()];
        double[] rates = all.bands().stream().mapToDouble(b -> b.rate().value()).toArray();
        for (int p = 0; p < start.length; p++) {
            double rate = rates[p % rates.length];
            start[p] = rate > 0 ? Math.log(rate / causes(hazards)) : Double.NEGATIVE_INFINITY;
        }
        BandSteps.Answer answer = steps.maximum(start);
        return judged(sample, model, likelihood, answer.maximum(), answer.point(), answer.free(), 0);
    }

    private static long causes(List<CauseHazard> hazards) {
        return hazards.stream().filter(h -> h.parameters() > 0).count();
    }

    private <C> CauseHazardFit<C> weibulls(MaskedSample<C> sample) {
        for (C cause : sample.causes()) {
            if (possible(sample, cause) && sample.known(cause) < LEAST_KNOWN) {
                return CauseHazardFit.failed(
                        sample,
                        Status.TOO_FEW_KNOWN,
                        Counted.failures(sample.known(cause)) + (sample.known(cause) == 1 ? " is" : " are")
                                + " known to be by " + cause
                                + "; scale and shape of a cause need 2: take it together with another cause, or take"
                                + " bands of age");
            }
        }
        double centre = centre(sample.allCauses());
        List<CauseHazard> hazards = sample.causes().stream()
                .<CauseHazard>map(
                        cause -> possible(sample, cause) ? new CauseHazard.Weibull(centre) : new CauseHazard.None())
                .toList();
        CauseModel model = new CauseModel(hazards, new double[0]);
        CauseLikelihood likelihood = new CauseLikelihood(model, sample);
        WeibullSteps steps = new WeibullSteps(model, likelihood, sample, centre);
        int[] free = IntStream.range(0, model.parameters()).toArray();
        CauseHazardFit<C> best = null;
        for (double[] start : List.of(steps.start(WeibullSteps.ROUNDS), steps.start(0))) {
            Maximum maximum = NewtonMaximizer.withDefaults().maximize(inside(likelihood), start);
            best = judged(sample, model, likelihood, maximum, maximum.point(), free, centre);
            if (best.converged()) {
                break;
            }
        }
        return best;
    }

    /** NaN where a law runs away, so that the search turns back. */
    private static Objective inside(CauseLikelihood likelihood) {
        return point -> {
            for (int i = 0; i < point.length; i++) {
                if (!(Math.abs(point[i]) <= (i % 2 == 0 ? MAX_LOG_SCALE : MAX_LOG_SHAPE))) {
                    return new Objective.Evaluation(
                            Double.NaN, new double[point.length], new double[point.length][point.length]);
                }
            }
            return likelihood.at(point);
        };
    }

    private static double centre(LifetimeSample lives) {
        double sum = 0;
        double weight = 0;
        for (int i = 0; i < lives.size(); i++) {
            if (lives.failed(i) && lives.exit(i) > 0) {
                sum += lives.weight(i) * Math.log(lives.exit(i));
                weight += lives.weight(i);
            }
        }
        return sum / weight;
    }

    private <C> CauseHazardFit<C> judged(
            MaskedSample<C> sample,
            CauseModel model,
            CauseLikelihood likelihood,
            Maximum maximum,
            double[] point,
            int[] free,
            double centre) {
        Objective.Evaluation at = likelihood.at(point);
        double[] unit = new double[model.parameters()];
        Arrays.fill(unit, 1);
        for (int k = 0; between.isEmpty() && k < model.causes(); k++) {
            if (model.parametersOf(k) > 0) {
                // In units of z = k log(t / s) scale and shape are of one size.
                unit[model.offset(k)] = Math.exp(point[model.offset(k) + 1]);
            }
        }
        double[][] information = new double[free.length][free.length];
        double gradient = 0;
        for (int i = 0; i < free.length; i++) {
            gradient = Math.max(gradient, Math.abs(at.gradient()[free[i]]) / unit[free[i]] / sample.failures());
            for (int j = 0; j < free.length; j++) {
                information[i][j] = -at.hessian()[free[i]][free[j]] / (unit[free[i]] * unit[free[j]]);
            }
        }
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        boolean flat = inverse.map(
                        v -> 1 / PositiveDefinite.oneNorm(v) < LEAST_INFORMATION * Math.min(1, sample.failures()))
                .orElse(true);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(v) * PositiveDefinite.oneNorm(information))
                .orElse(Double.POSITIVE_INFINITY);
        CauseHazardFit.Search search = new CauseHazardFit.Search(maximum.iterations(), gradient, condition);
        if (flat) {
            return CauseHazardFit.failed(
                    sample,
                    Status.FLAT_LIKELIHOOD,
                    search,
                    "the likelihood of " + Counted.failures(sample.failures()) + ", " + sample.masked()
                            + " of them with more than one"
                            + " possible cause, does not tell the causes apart: two causes that only occur together, or"
                            + " failures that all fall into one interval, are the usual reason");
        }
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return CauseHazardFit.failed(
                    sample,
                    Status.NOT_CONVERGED,
                    search,
                    "the search ended with " + maximum.outcome() + " after " + maximum.iterations()
                            + " steps, scaled gradient " + gradient);
        }
        double[][] covariance = new double[model.parameters()][model.parameters()];
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                covariance[free[i]][free[j]] = inverse.get()[i][j] / (unit[free[i]] * unit[free[j]]);
            }
        }
        return new CauseHazardFit<>(
                sample,
                search,
                new CauseHazardFit.Solution(
                        model,
                        point,
                        covariance,
                        expected(model, likelihood, point),
                        at.value(),
                        free.length,
                        centre,
                        StandardNormal.quantile((1 + level) / 2)));
    }

    /** Failures by cause, the masked ones shared out. */
    private static double[] expected(CauseModel model, CauseLikelihood likelihood, double[] point) {
        double[] failures = new double[model.causes()];
        likelihood.expected(point, (life, age, cause, weight) -> failures[cause] += weight);
        return failures;
    }
}
