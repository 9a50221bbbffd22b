package sensorrounds.causes;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.WeibullLife;

/**
 * Hazards of the causes of failure, with everything that follows from them. The hazards of the causes add to that of all causes;
 * the incidences of the causes and survival add to 1. Limits by the delta method: on the log of a hazard, and on log(-log) of
 * survival and incidence. Figures beyond the last age that anything is known about are extrapolation; bands refuse none.
 *
 * @param <C> type of the causes
 */
public final class CauseHazardFit<C> {
    private final MaskedSample<C> sample;
    private final Status status;
    private final String reason;
    private final Search search;
    private final Solution solution;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        NO_LIVES,
        NO_FAILURES,
        /** No failure tells anything about its cause. */
        ALL_UNKNOWN,
        /** A cause has fewer failures known to be its own than its law has parameters. */
        TOO_FEW_KNOWN,
        /** The data do not tell the causes apart, or there is no finite maximum. */
        FLAT_LIKELIHOOD,
        NOT_CONVERGED
    }

    /** Where a search ended. */
    record Search(int iterations, double gradientNorm, double condition) {}

    /** The maximum and what it stands on. */
    record Solution(
            CauseModel model,
            double[] point,
            double[][] covariance,
            double[] failures,
            double logLikelihood,
            int parameters,
            double centre,
            double z) {}

    private CauseHazardFit(MaskedSample<C> sample, Status status, String reason, Search search, Solution solution) {
        this.sample = sample;
        this.status = status;
        this.reason = reason;
        this.search = search;
        this.solution = solution;
    }

    CauseHazardFit(MaskedSample<C> sample, Search search, Solution solution) {
        this(sample, Status.CONVERGED, "", search, solution);
    }

    static <C> CauseHazardFit<C> failed(MaskedSample<C> sample, Status status, String reason) {
        return failed(sample, status, new Search(0, Double.NaN, Double.NaN), reason);
    }

    static <C> CauseHazardFit<C> failed(MaskedSample<C> sample, Status status, Search search, String reason) {
        return new CauseHazardFit<>(sample, status, reason, search, null);
    }

    /** What it says of itself, as every fit does. */
    public FitReport report() {
        FitStatus code = switch (status) {
            case CONVERGED -> FitStatus.CONVERGED;
            case NO_LIVES -> FitStatus.NO_LIVES;
            case NO_FAILURES -> FitStatus.NO_FAILURES;
            case ALL_UNKNOWN -> FitStatus.ALL_CAUSES_UNKNOWN;
            case TOO_FEW_KNOWN -> FitStatus.TOO_FEW_KNOWN;
            case FLAT_LIKELIHOOD -> FitStatus.FLAT_LIKELIHOOD;
            case NOT_CONVERGED -> FitStatus.NOT_CONVERGED;
        };
        return new FitReport(
                code,
                reason,
                "",
                sample.total(),
                sample.failures(),
                sample.allCauses().exposure(),
                search.iterations(),
                search.gradientNorm(),
                search.condition());
    }

    public Status status() {
        return status;
    }

    public boolean converged() {
        return status == Status.CONVERGED;
    }

    /** Why there are no hazards, in words; empty when there are. */
    public String reason() {
        return reason;
    }

    /** In the declared order. */
    public List<C> causes() {
        return sample.causes();
    }

    /** Failures with more than one possible cause, as a share of all. */
    public double maskedShare() {
        return sample.masked() / sample.failures();
    }

    /** Log-likelihood of what was seen, densities per unit of time. */
    public double logLikelihood() {
        return solved().logLikelihood();
    }

    /** Parameters estimated; rates at 0 not among them. */
    public int parameters() {
        return solved().parameters();
    }

    public double aic() {
        return 2 * (parameters() - logLikelihood());
    }

    /** Newton steps after those of the EM algorithm. */
    public int iterations() {
        return search.iterations();
    }

    /** Largest derivative in standard units, per failure, at the maximum. */
    public double gradientNorm() {
        return search.gradientNorm();
    }

    /** Highest age anything is known about. */
    public double lastAge() {
        return sample.lastAge();
    }

    /** Failures by this cause: those known, and its part of those masked, as expected under the fit. */
    public double failures(C cause) {
        return solved().failures()[index(cause)];
    }

    /** Of one cause while the others are at work too, per unit of time; 0 with NaN limits where none was found. */
    public Estimate hazard(C cause, double age) {
        CauseModel.State state = state(age);
        CauseHazard.Jet jet = state.of(index(cause));
        double[] gradient = new double[solution.model().parameters()];
        System.arraycopy(jet.hazardSlope, 0, gradient, solution.model().offset(index(cause)), jet.hazardSlope.length);
        return onLog(jet.hazard, gradient);
    }

    /** Of all causes together. */
    public double hazard(double age) {
        CauseModel.State state = state(age);
        double sum = 0;
        for (int k = 0; k < causes().size(); k++) {
            sum += state.of(k).hazard;
        }
        return sum;
    }

    /** The integral of {@link #hazard} of one cause from age 0. */
    public double cumulativeHazard(C cause, double age) {
        return state(age).of(index(cause)).cumulative;
    }

    /** Share not failed by any cause. */
    public Estimate survival(double age) {
        CauseModel.State state = state(age);
        Estimate hazard = onLog(state.cumulative, state.slope);
        return new Estimate(Math.exp(-hazard.value()), Math.exp(-hazard.upper()), Math.exp(-hazard.lower()));
    }

    /** Share that has failed by this cause up to an age. */
    public Estimate incidence(C cause, double age) {
        return incidence(cause, 0, age);
    }

    /** Share of those alive at one age that fails by this cause up to another, while the other causes are at work too. */
    public Estimate incidence(C cause, double from, double to) {
        CauseWindow window = window(from, to, index(cause));
        double share = window.value();
        if (!(share > 0 && share < 1)) {
            return new Estimate(share, Double.NaN, Double.NaN);
        }
        double log = Math.log(share);
        double error = Math.sqrt(variance(window.gradient()));
        double spread = Math.exp(solution.z() * error / (share * Math.abs(log)));
        return new Estimate(share, Math.exp(log * spread), Math.exp(log / spread));
    }

    /** Chances of each cause for a failure between these ages of which only the possible causes are known; they add to 1. */
    public Map<C, Double> causeOf(double lower, double upper, Set<C> candidates) {
        Map<C, Double> chances = new LinkedHashMap<>();
        double all = 0;
        for (C cause : causes()) {
            if (candidates.contains(cause)) {
                double share = lower == upper
                        ? state(lower).of(index(cause)).hazard
                        : window(lower, upper, index(cause)).value();
                chances.put(cause, share);
                all += share;
            }
        }
        double sum = all;
        chances.replaceAll((cause, share) -> share / sum);
        return chances;
    }

    /**
     * The Weibull law of a cause.
     *
     * @throws IllegalStateException if the fit is by bands, or no failure could be of this cause
     */
    public WeibullLife weibull(C cause) {
        int k = index(cause);
        if (!solved().model().weibull(k)) {
            throw new IllegalStateException("there is no Weibull law of " + cause
                    + ": the fit is by bands, or no failure could be of this cause");
        }
        int at = solution.model().offset(k);
        double[][] v = solution.covariance();
        return new WeibullLife(
                Math.exp(solution.point()[at + 1]),
                Math.exp(solution.point()[at] + solution.centre()),
                v[at + 1][at + 1],
                v[at][at],
                v[at][at + 1]);
    }

    private CauseModel.State state(double age) {
        CauseModel.State state = solved().model().state();
        state.fill(age, solution.point());
        return state;
    }

    private CauseWindow window(double from, double to, int cause) {
        CauseModel.State start = state(from);
        CauseWindow window = new CauseWindow(solution.model());
        window.integrate(solution.model().nodes(from, to), start, new int[] {cause}, solution.point());
        return window;
    }

    private Estimate onLog(double value, double[] gradient) {
        if (!(value > 0)) {
            return new Estimate(value, Double.NaN, Double.NaN);
        }
        double factor = Math.exp(solution.z() * Math.sqrt(variance(gradient)) / value);
        return new Estimate(value, value / factor, value * factor);
    }

    private double variance(double[] gradient) {
        double sum = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                sum += gradient[i] * solution.covariance()[i][j] * gradient[j];
            }
        }
        return Math.max(0, sum);
    }

    private int index(C cause) {
        int k = causes().indexOf(cause);
        if (k < 0) {
            throw new IllegalArgumentException(cause + " is not among the causes " + causes());
        }
        return k;
    }

    private Solution solved() {
        if (solution == null) {
            throw new IllegalStateException(
                    "there are no hazards by cause: " + status + ", " + reason + "; ask converged() first");
        }
        return solution;
    }
}
