package sensorrounds.recurrent;

import sensorrounds.numeric.StandardNormal;

/** A fitted power-law process, or why there is none. Figures of a failed fit throw. */
public final class PowerLawFit {
    private final RateStatus status;
    private final String cause;
    private final long events;
    private final double shape;
    private final double logScale;
    private final double shapeError;
    private final double logScaleError;
    private final double logLikelihood;
    private final EventHistory single;
    private final Truncation truncation;

    private PowerLawFit(
            RateStatus status,
            String cause,
            long events,
            double shape,
            double logScale,
            double shapeError,
            double logScaleError,
            double logLikelihood,
            EventHistory single,
            Truncation truncation) {
        this.status = status;
        this.cause = cause;
        this.events = events;
        this.shape = shape;
        this.logScale = logScale;
        this.shapeError = shapeError;
        this.logScaleError = logScaleError;
        this.logLikelihood = logLikelihood;
        this.single = single;
        this.truncation = truncation;
    }

    static PowerLawFit failed(RateStatus status, String cause, long events) {
        double none = Double.NaN;
        return new PowerLawFit(status, cause, events, none, none, none, none, none, null, null);
    }

    /** @param single the unit when there was but one, else null */
    static PowerLawFit converged(
            long events,
            double shape,
            double logScale,
            double shapeError,
            double logScaleError,
            double logLikelihood,
            EventHistory single,
            Truncation truncation) {
        return new PowerLawFit(
                RateStatus.CONVERGED,
                "",
                events,
                shape,
                logScale,
                shapeError,
                logScaleError,
                logLikelihood,
                single,
                truncation);
    }

    public RateStatus status() {
        return status;
    }

    public boolean converged() {
        return status == RateStatus.CONVERGED;
    }

    /** Why there is no fit, in words; empty when there is one. */
    public String cause() {
        return cause;
    }

    public long events() {
        return events;
    }

    public double shape() {
        requireConverged();
        return shape;
    }

    public double shapeError() {
        requireConverged();
        return shapeError;
    }

    /** Limit of the shape on its log, z standard errors up, down when negative; {@code level} in (0, 1). */
    public double shapeLower(double level) {
        return shapeLimit(level, -1);
    }

    public double shapeUpper(double level) {
        return shapeLimit(level, 1);
    }

    private double shapeLimit(double level, int side) {
        requireConverged();
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + level);
        }
        return shape * Math.exp(side * StandardNormal.quantile((1 + level) / 2) * shapeError / shape);
    }

    /** Mean number of events of a unit by time 1. */
    public double scale() {
        requireConverged();
        return Math.exp(logScale);
    }

    /** Standard error of the log of {@link #scale}. */
    public double logScaleError() {
        requireConverged();
        return logScaleError;
    }

    /** Age by which one event is expected. */
    public double characteristicAge() {
        requireConverged();
        return Math.exp(-logScale / shape);
    }

    public double logLikelihood() {
        requireConverged();
        return logLikelihood;
    }

    /** Mean number of events of a unit by an age. */
    public double meanNumber(double age) {
        requireConverged();
        return Math.exp(logScale + shape * Math.log(age));
    }

    /** Events per unit of time at an age above 0. */
    public double rate(double age) {
        requireConverged();
        return Math.exp(logScale + Math.log(shape) + (shape - 1) * Math.log(age));
    }

    /**
     * The shape without its bias, for one unit watched from 0: (n - 1) / sum log(T / t) where time ended the observation,
     * (n - 2) where the last event did (MIL-HDBK-189; NIST/SEMATECH e-Handbook, 8.4.5.2).
     *
     * @throws IllegalStateException for several units, or one that was not watched from 0 on without a gap
     */
    public double unbiasedShape() {
        requireSingle("a shape without bias");
        return shape * (events - (truncation == Truncation.TIME ? 1 : 2)) / events;
    }

    /** The scale that goes with {@link #unbiasedShape}: n events by the end of the observation. */
    public double unbiasedScale() {
        return events / Math.pow(end(), unbiasedShape());
    }

    /** Rate at the end of the observation by {@link #unbiasedShape}; its inverse is the mean time between events there. */
    public double unbiasedRateAtEnd() {
        return events * unbiasedShape() / end();
    }

    /**
     * Cramer-von Mises distance of one unit's events from the law, with the unbiased shape: MIL-HDBK-189 (1981), app. C, which
     * holds the critical values.
     *
     * @throws IllegalStateException as {@link #unbiasedShape}
     */
    public double cramerVonMises() {
        double power = unbiasedShape();
        double[] times = truncation.free(single).events();
        double sum = 1.0 / (12 * times.length);
        for (int i = 0; i < times.length; i++) {
            double away = Math.pow(times[i] / end(), power) - (2 * i + 1.0) / (2 * times.length);
            sum += away * away;
        }
        return sum;
    }

    private double end() {
        return single.windows().get(0).to();
    }

    private void requireSingle(String what) {
        requireConverged();
        if (single == null
                || single.windows().size() != 1
                || single.windows().get(0).from() != 0) {
            throw new IllegalStateException(what + " is known for one unit watched from 0 on without a gap only");
        }
    }

    private void requireConverged() {
        if (!converged()) {
            throw new IllegalStateException(
                    "there is no power law: " + status + ", " + cause + "; ask converged() first");
        }
    }
}
