package sensorrounds.regression;

import java.util.Arrays;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.RatioPath;
import sensorrounds.survival.Estimate;

/**
 * Likelihood-ratio limits: all values of a quantity that lose no more than half the chi-square quantile of one degree
 * against the maximum, the other parameters being maximised out. Better than Wald limits where failures are few. Source:
 * Meeker and Escobar (1998), Statistical Methods for Reliability Data, 8.3 and 8.4; Venzon and Moolgavkar (1988), Applied
 * Statistics 37:87-94.
 */
public final class ProfileLimits {
    private static final double TOLERANCE = 1e-10;
    private static final double FURTHEST_IN_ERRORS = 1e4;

    private final LifeSource lives;
    private final RegressionFit.Solution solution;
    private final Design design;

    private ProfileLimits(LifeSource lives, RegressionFit fit) {
        this.lives = lives;
        this.solution = fit.solution();
        this.design = solution.design();
    }

    /** Limits at the level of the fit, which must be of these lives. */
    public static ProfileLimits of(LifeSource lives, RegressionFit fit) {
        return new ProfileLimits(lives, fit);
    }

    /**
     * Of the coefficient of a covariate. A limit is infinite where the likelihood never falls low enough.
     *
     * @throws IllegalArgumentException for a constant, whose meaning depends on where the covariates are 0: ask for scale
     *     or shape at a point
     */
    public Estimate coefficient(Coefficient.Part part, String name) {
        for (int i = 0; i < design.parameters(); i++) {
            if (design.part(i) == part
                    && design.name(i).equals(name)
                    && (design.column(i) >= 0 || part == Coefficient.Part.LAW)) {
                double unit = design.unit(i);
                double error = Math.sqrt(solution.covariance()[i][i]) / unit;
                Estimate standardised = limits(LinearElimination.fixed(i), solution.point()[i], error);
                return new Estimate(
                        standardised.value() * unit, standardised.lower() * unit, standardised.upper() * unit);
            }
        }
        throw new IllegalArgumentException("no covariate '" + name + "' acts on " + part
                + "; for a constant ask for the scale or shape at a point");
    }

    /** Of the scale for these covariates. */
    public Estimate scale(double... x) {
        return exponential(LinearElimination.scale(design, x, 0), x, 0);
    }

    /** Of the age by which the share p has failed, for these covariates; families whose law has no own parameter. */
    public Estimate quantile(double p, double... x) {
        if (design.family().hasOwnParameter()) {
            throw new IllegalArgumentException("profile limits of a quantile are not available for " + design.family()
                    + "; take FittedLaw.quantile");
        }
        double w = design.family().law(Double.NaN).quantile(p);
        return exponential(LinearElimination.scale(design, x, w), x, w);
    }

    /** Of the shape for these covariates; families that have one. */
    public Estimate shape(double... x) {
        if (design.shapes() == 0) {
            throw new IllegalArgumentException(design.family() + " has no shape");
        }
        double[][] rows = design.rowsAt(x);
        double logShape = Design.times(rows, design.inOwnUnits(solution.point()))[1];
        double error = Math.sqrt(Design.sandwich(rows, solution.covariance())[1][1]);
        return exponentiated(limits(LinearElimination.shape(design, x), logShape, error), 0);
    }

    /** Of S(age) for these covariates; Weibull and exponential laws. */
    public Estimate survival(double age, double... x) {
        Estimate failed = failureWithin(0, age, x);
        return new Estimate(1 - failed.value(), 1 - failed.upper(), 1 - failed.lower());
    }

    /** Of P(fail within the next while | alive at age) for these covariates; Weibull and exponential laws. */
    public Estimate failureWithin(double age, double during, double... x) {
        if (design.family() != LifeFamily.WEIBULL && design.family() != LifeFamily.EXPONENTIAL) {
            throw new IllegalArgumentException("profile limits of a probability are not available for "
                    + design.family() + "; take FittedLaw.failureWithin");
        }
        if (!(age >= 0 && during > 0 && age + during < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a window runs from an age of 0 or more for some time, not from " + age + " for " + during);
        }
        double[][] rows = design.rowsAt(x);
        double[] three = Design.times(rows, design.inOwnUnits(solution.point()));
        Estimate wald = new FittedLaw(
                        design.family(),
                        three[0],
                        three[1],
                        three[2],
                        Design.sandwich(rows, solution.covariance()),
                        solution.errorsToLimit())
                .failureWithin(age, during);
        double log = Math.log(-Math.log1p(-wald.value()));
        double error = (Math.log(-Math.log1p(-wald.upper())) - log) / solution.errorsToLimit();
        Estimate hazard = limits(new HazardElimination(design, x, age, age + during), log, error);
        return new Estimate(wald.value(), failed(hazard.lower()), failed(hazard.upper()));
    }

    private static double failed(double logHazard) {
        return -Math.expm1(-Math.exp(logHazard));
    }

    private Estimate exponential(Elimination elimination, double[] x, double w) {
        double[][] rows = design.rowsAt(x);
        double[] three = Design.times(rows, design.inOwnUnits(solution.point()));
        double[][] v = Design.sandwich(rows, solution.covariance());
        double s = -w * Math.exp(-three[1]);
        double variance = v[0][0] + 2 * s * v[0][1] + s * s * v[1][1];
        double estimate = three[0] + w * Math.exp(-three[1]) - design.centre();
        return exponentiated(limits(elimination, estimate, Math.sqrt(variance)), design.centre());
    }

    private static Estimate exponentiated(Estimate log, double centre) {
        return new Estimate(
                Math.exp(log.value() + centre), Math.exp(log.lower() + centre), Math.exp(log.upper() + centre));
    }

    private Estimate limits(Elimination elimination, double estimate, double error) {
        return new Estimate(estimate, limit(elimination, estimate, error, -1), limit(elimination, estimate, error, 1));
    }

    private double limit(Elimination elimination, double estimate, double error, int side) {
        RatioPath path = new RatioPath(
                (offset, others) -> gap(elimination, estimate + offset * error, others),
                solution.rootOfRatio(),
                TOLERANCE);
        double[] others = without(solution.point(), elimination.place());
        return estimate + error * path.limit(others, side * solution.rootOfRatio() / 2, FURTHEST_IN_ERRORS);
    }

    /** sqrt of twice the loss at this value; NaN when the other parameters find no maximum. */
    private double gap(Elimination elimination, double target, double[] others) {
        double value;
        if (others.length == 0) {
            value = full(elimination, target, others).value();
        } else {
            Maximum maximum =
                    NewtonMaximizer.withDefaults().maximize(free -> reduced(elimination, target, free), others);
            if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
                return Double.NaN;
            }
            value = maximum.at().value();
            System.arraycopy(maximum.point(), 0, others, 0, others.length);
        }
        return Math.sqrt(Math.max(0, 2 * (solution.logLikelihood() - value)));
    }

    private Objective.Evaluation full(Elimination elimination, double target, double[] free) {
        return LifeRegression.objective(lives, design).at(elimination.complete(target, free));
    }

    /** Chain rule through the eliminated parameter. */
    private Objective.Evaluation reduced(Elimination elimination, double target, double[] free) {
        Objective.Evaluation at = full(elimination, target, free);
        int e = elimination.place();
        double[] slope = elimination.slope(target, free);
        double[][] curvature = elimination.curvature(target, free);
        int n = free.length;
        double[] gradient = without(at.gradient(), e);
        double[] cross = without(at.hessian()[e], e);
        double[][] hessian = new double[n][];
        for (int i = 0; i < n; i++) {
            gradient[i] += at.gradient()[e] * slope[i];
            hessian[i] = without(at.hessian()[i < e ? i : i + 1], e);
            for (int j = 0; j < n; j++) {
                hessian[i][j] += cross[i] * slope[j]
                        + slope[i] * cross[j]
                        + at.hessian()[e][e] * slope[i] * slope[j]
                        + at.gradient()[e] * curvature[i][j];
            }
        }
        return new Objective.Evaluation(at.value(), gradient, hessian);
    }

    private static double[] without(double[] all, int place) {
        double[] rest = Arrays.copyOf(all, all.length - 1);
        System.arraycopy(all, place + 1, rest, place, rest.length - place);
        return rest;
    }
}
