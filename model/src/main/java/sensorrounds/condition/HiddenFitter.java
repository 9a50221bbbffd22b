package sensorrounds.condition;

import java.util.Locale;
import java.util.Optional;
import sensorrounds.condition.HiddenFit.Status;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.QuasiNewtonMaximizer;
import sensorrounds.numeric.SlopeObjective;

/**
 * Maximum likelihood fit of the hidden condition over all sensors, penalised by the priors of the settings. It asks for
 * nothing but sums over the fleet, one per step, so the sensors may lie in any number of parts. A quasi-Newton search
 * that starts from the outer products of the scores as curvature (Berndt, Hall, Hall and Hausman 1974, Ann. Econ. Soc.
 * Meas. 3:653); covariance from their inverse at the maximum.
 */
public final class HiddenFitter {
    /** Within 1e-3 standard errors of the maximum: far below what the data can tell, and a few passes cheaper. */
    private static final double DECREMENT = 1e-6;

    private static final double LEAST_INFORMATION = 1e-3;
    /** Standard errors by which weak sensors must differ from good ones in waking or in battery reports. */
    private static final double TELLABLE = 4;
    /** Share of sensors with contradictory readings up to which they are left out of the fit. */
    private static final double MOST_IMPOSSIBLE = 0.05;

    private final HiddenSettings settings;
    private final HiddenModel model;
    private final HiddenParameters start;
    private final QuasiNewtonMaximizer search;

    private HiddenFitter(HiddenModel model, HiddenParameters start, QuasiNewtonMaximizer search) {
        this.settings = model.settings();
        this.model = model;
        this.start = start;
        this.search = search;
    }

    /** Starts at the centre of the priors. */
    public static HiddenFitter of(HiddenModel model) {
        return new HiddenFitter(
                model,
                centre(model),
                QuasiNewtonMaximizer.withDefaults().withMaxIterations(200).withDecrement(DECREMENT));
    }

    static HiddenParameters centre(HiddenModel model) {
        HiddenParameters centre = HiddenParameters.centre(model.settings());
        return model.season().turns() ? centre.withColdRateFactor(1) : centre;
    }

    /** Starts elsewhere, say at the fit of a sample of the fleet: saves passes, does not move the maximum. */
    public HiddenFitter withStart(HiddenParameters newStart) {
        return new HiddenFitter(model, newStart, search);
    }

    public HiddenFitter withMaxIterations(int iterations) {
        return new HiddenFitter(model, start, search.withMaxIterations(iterations));
    }

    /** The fit; ask {@link HiddenFit#converged} before its values. */
    public HiddenFit fit(HiddenPass pass) {
        HiddenSum first = pass.over(start, HiddenSum.Detail.SLOPE_AND_CURVATURE);
        if (first.sensors() < settings.leastSensors() || first.failures() < settings.leastFailures()) {
            return failed(
                    Status.TOO_FEW,
                    first,
                    0,
                    first.sensors() + " sensors with " + first.failures() + " failures; at least "
                            + settings.leastSensors() + " and " + settings.leastFailures() + " are asked for");
        }
        if (first.impossible() > MOST_IMPOSSIBLE * (first.sensors() + first.impossible())) {
            return failed(
                    Status.IMPOSSIBLE_DATA,
                    first,
                    0,
                    first.impossible() + " of " + (first.sensors() + first.impossible())
                            + " sensors have readings that cannot happen, e.g. dead on the day of entry; more than "
                            + "one in " + Math.round(1 / MOST_IMPOSSIBLE) + " is no slip");
        }
        Penalty penalty = new Penalty(model);
        boolean[] begun = {false};
        QuasiNewtonMaximizer.Ascent ascent = search.maximize(
                point -> {
                    HiddenSum sum = begun[0] ? at(pass, point, HiddenSum.Detail.SLOPE) : first;
                    begun[0] = true;
                    return penalised(sum, first.impossible(), point, penalty);
                },
                start.point());
        HiddenSum last = pass.over(new HiddenParameters(ascent.point()), HiddenSum.Detail.SLOPE_AND_CURVATURE);
        return judged(ascent, last, penalised(last, first.impossible(), ascent.point(), penalty));
    }

    private static HiddenSum at(HiddenPass pass, double[] point, HiddenSum.Detail detail) {
        for (double x : point) {
            if (!(Math.abs(x) <= HiddenParameters.LARGEST)) {
                return null;
            }
        }
        return pass.over(new HiddenParameters(point), detail);
    }

    /** @param impossible sensors left out, whose readings cannot happen anywhere; a point that loses more is no candidate */
    private static SlopeObjective.Evaluation penalised(
            HiddenSum sum, long impossible, double[] point, Penalty penalty) {
        if (sum == null || sum.impossible() > impossible) {
            return new SlopeObjective.Evaluation(Double.NEGATIVE_INFINITY, new double[point.length], null);
        }
        double[] gradient = sum.gradient();
        double[][] curvature = sum.curvature();
        double value = sum.value() + penalty.add(point, gradient, curvature);
        return new SlopeObjective.Evaluation(value, gradient, curvature);
    }

    private HiddenFit judged(QuasiNewtonMaximizer.Ascent ascent, HiddenSum last, SlopeObjective.Evaluation at) {
        double norm = 0;
        for (double g : at.gradient()) {
            norm = Math.max(norm, Math.abs(g) / last.sensors());
        }
        double[] point = ascent.point();
        for (int i = 0; i < point.length; i++) {
            if (!(at.information()[i][i] > LEAST_INFORMATION)) {
                return failed(
                        Status.FLAT_LIKELIHOOD,
                        last,
                        ascent.iterations(),
                        "the data say nothing of " + name(i) + "; keep the priors, or fewer age bands");
            }
        }
        Optional<PositiveDefinite> information = PositiveDefinite.of(at.information());
        if (information.isEmpty()) {
            return failed(
                    Status.FLAT_LIKELIHOOD,
                    last,
                    ascent.iterations(),
                    "some parameters can be traded for others without a loss of likelihood; keep the priors, or fewer age"
                            + " bands");
        }
        if (ascent.outcome() != Maximum.Outcome.CONVERGED) {
            return failed(
                    Status.NOT_CONVERGED,
                    last,
                    ascent.iterations(),
                    String.format(
                            Locale.ROOT,
                            "the search ended with %s after %d steps, largest derivative %.3g per sensor",
                            ascent.outcome(),
                            ascent.iterations(),
                            norm));
        }
        double[][] covariance = information.get().inverse();
        HiddenParameters fitted = new HiddenParameters(point);
        if (!toldApart(fitted, covariance)) {
            return failed(
                    Status.NOT_TOLD_APART,
                    last,
                    ascent.iterations(),
                    String.format(
                            Locale.ROOT,
                            "weak sensors neither wake worse than good ones (odds factor %.2f) nor report low more often"
                                    + " (%.2f against %.2f) by more than chance explains",
                            fitted.wakeOddsFactor(),
                            fitted.low(true, false),
                            fitted.low(false, false)));
        }
        double condition = PositiveDefinite.oneNorm(at.information()) * PositiveDefinite.oneNorm(covariance);
        return new HiddenFit(
                Status.CONVERGED,
                "",
                ascent.iterations(),
                norm,
                condition,
                last.value(),
                last.sensors(),
                last.impossible(),
                last.failures(),
                fitted,
                covariance,
                model);
    }

    private static boolean toldApart(HiddenParameters p, double[][] covariance) {
        double wake = -p.at(p.wake()) / Math.sqrt(covariance[p.wake()][p.wake()]);
        int good = p.report(false, false);
        int weak = p.report(true, false);
        double variance = covariance[good][good] + covariance[weak][weak] - 2 * covariance[good][weak];
        double report = (p.at(weak) - p.at(good)) / Math.sqrt(variance);
        return wake > TELLABLE || report > TELLABLE;
    }

    private String name(int i) {
        int bands = settings.bands();
        if (i < 2 * bands) {
            return (i < bands ? "the rate of weakening" : "the rate of dying when weak") + " in age band "
                    + (i % bands + 1);
        }
        return i == 2 * bands
                ? "the rate of sudden death"
                : switch (i - 2 * bands) {
                    case 1 -> "how weak sensors wake";
                    case 2, 3, 4, 5 -> "a chance of low battery reports";
                    case 6 -> "the chance that a read misses a working sensor";
                    case 7, 8 -> "a chance of the warning being on";
                    case 9 -> "the share of deaths that drivers report";
                    case 10 -> "how soon drivers report a death";
                    case 11 -> "how weak sensors wake in the cold";
                    case 12 -> "how weak sensors wake under poorer readers";
                    default -> "the rates in the cold of the year";
                };
    }

    private HiddenFit failed(Status status, HiddenSum sum, int iterations, String cause) {
        return new HiddenFit(
                status,
                cause,
                iterations,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                sum.sensors(),
                sum.impossible(),
                sum.failures(),
                null,
                null,
                model);
    }

    /** Log of the priors, up to a constant, with derivatives. */
    private static final class Penalty {
        private final HiddenSettings.Priors priors;
        private final HiddenParameters centre;

        Penalty(HiddenModel model) {
            priors = model.settings().priors();
            centre = centre(model);
        }

        /** Adds to gradient and curvature (which may be null), returns the value. */
        double add(double[] point, double[] gradient, double[][] curvature) {
            int bands = centre.bands();
            double value = 0;
            for (int i = 0; i < point.length; i++) {
                boolean step = i < 2 * bands && i % bands > 0;
                int before = step ? i - 1 : -1;
                double deviation = deviation(i, step);
                double precision = 1 / (deviation * deviation);
                double off = point[i] - (step ? point[before] : centre.at(i));
                value -= 0.5 * precision * off * off;
                gradient[i] -= precision * off;
                if (step) {
                    gradient[before] += precision * off;
                }
                if (curvature != null) {
                    curvature[i][i] += precision;
                    if (step) {
                        curvature[before][before] += precision;
                        curvature[i][before] -= precision;
                        curvature[before][i] -= precision;
                    }
                }
            }
            return value;
        }

        private double deviation(int i, boolean step) {
            if (step) {
                return priors.stepDeviation();
            }
            if (i == centre.wakeSlope()) {
                return priors.wakeSlopeDeviation();
            }
            if (centre.knowsSeason() && i == centre.coldRate()) {
                return priors.seasonDeviation();
            }
            return i <= 2 * centre.bands() ? priors.rateDeviation() : priors.reportDeviation();
        }
    }
}
