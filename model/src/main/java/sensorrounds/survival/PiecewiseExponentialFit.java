package sensorrounds.survival;

import java.io.Serializable;
import java.util.List;

/**
 * What came of a {@link PiecewiseExponentialFitter}: a hazard for each band of ages with the covariance of their logs, or
 * the reason why there is none. It answers only for ages something was under observation at.
 */
public final class PiecewiseExponentialFit implements Serializable {
    private final FitReport report;
    private final List<HazardBand> bands;
    private final double[][] covariance;
    private final double logLikelihood;
    private final double lastAge;
    private final double z;

    PiecewiseExponentialFit(
            FitReport report,
            List<HazardBand> bands,
            double[][] covariance,
            double logLikelihood,
            double lastAge,
            double z) {
        this.report = report;
        this.bands = bands;
        this.covariance = covariance;
        this.logLikelihood = logLikelihood;
        this.lastAge = lastAge;
        this.z = z;
    }

    static PiecewiseExponentialFit failed(FitReport report) {
        return new PiecewiseExponentialFit(report, List.of(), new double[0][0], Double.NaN, Double.NaN, Double.NaN);
    }

    /** What it says of itself, as every fit does. */
    public FitReport report() {
        return report;
    }

    public FitStatus status() {
        return report.status();
    }

    public boolean converged() {
        return report.converged();
    }

    /** Why there is no hazard, in words; empty when there is one. */
    public String cause() {
        return report.cause();
    }

    /** Newton steps; 0 when the rates have a closed form. */
    public int iterations() {
        return report.iterations();
    }

    /** Of T, so exact failures count by their density per unit of time. */
    public double logLikelihood() {
        requireConverged();
        return logLikelihood;
    }

    /** Bands in order of age. */
    public List<HazardBand> bands() {
        requireConverged();
        return bands;
    }

    /** Bands that had failures, hence parameters; for AIC. */
    public int parameters() {
        requireConverged();
        return (int) bands.stream().filter(b -> b.rate().value() > 0).count();
    }

    /** Whether all ages in (from, to] had something under observation, in the sense of their band. */
    public boolean covers(double from, double to) {
        requireConverged();
        return to <= lastAge
                && bands.stream()
                        .noneMatch(b -> overlap(b, from, to) > 0
                                && Double.isNaN(b.rate().value()));
    }

    /** S(age) with limits; needs {@link #covers} from 0 on. */
    public Estimate survival(double age) {
        return survival(0, age);
    }

    /**
     * P(alive at {@code to} | alive at {@code from}), limits by the delta method on the log of the cumulative hazard; where
     * that is 0, 1 with a lower limit from the upper limits of the rates.
     *
     * @throws IllegalArgumentException for ages nothing was under observation at
     */
    public Estimate survival(double from, double to) {
        if (!covers(from, to)) {
            throw new IllegalArgumentException("nothing was under observation at some ages from " + from + " to " + to
                    + "; the last age is " + lastAge + ", the bands are " + bands);
        }
        double hazard = 0;
        double most = 0;
        double[] gradient = new double[bands.size()];
        for (int j = 0; j < gradient.length; j++) {
            double time = overlap(bands.get(j), from, to);
            gradient[j] = time > 0 ? bands.get(j).rate().value() * time : 0;
            most += time > 0 ? bands.get(j).rate().upper() * time : 0;
            hazard += gradient[j];
        }
        if (!(hazard > 0)) {
            return new Estimate(1, Math.exp(-most), 1);
        }
        double variance = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                variance += gradient[i] * covariance[i][j] * gradient[j];
            }
        }
        double factor = Math.exp(z * Math.sqrt(variance) / hazard);
        return new Estimate(Math.exp(-hazard), Math.exp(-hazard * factor), Math.exp(-hazard / factor));
    }

    private static double overlap(HazardBand band, double from, double to) {
        return Math.max(0, Math.min(band.to(), to) - Math.max(band.from(), from));
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "there is no hazard by bands: " + status() + ", " + cause() + "; ask converged() first");
        }
    }
}
