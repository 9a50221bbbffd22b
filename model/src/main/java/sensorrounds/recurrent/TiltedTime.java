package sensorrounds.recurrent;

import java.util.List;

/**
 * Times with density proportional to exp(tilt x) on windows of x: what the times of events follow under a log-linear rate,
 * and, with x the logarithm of time, under a power law. Being an exponential family, its likelihood has one maximum, where
 * the mean of the law is the mean of the data, and its information is the variance: Lehmann and Casella (1998), Theory of
 * Point Estimation, 1.5.
 */
final class TiltedTime {
    /** Below this the closed forms cancel and their series are exact to the last digits. */
    private static final double SMALL = 0.1;

    private static final int MAX_STEPS = 200;

    /** A stretch of x; {@code from} may be minus infinity. */
    record Stretch(double from, double to) {}

    /**
     * @param logMass log of the integral of exp(tilt x) over all stretches
     * @param mean mean of x
     * @param variance variance of x
     */
    record Moments(double logMass, double mean, double variance) {}

    private final List<Stretch> stretches;
    private final double lowest;
    private final double highest;

    TiltedTime(List<Stretch> stretches) {
        this.stretches = List.copyOf(stretches);
        this.lowest = stretches.stream().mapToDouble(Stretch::from).min().orElse(Double.NaN);
        this.highest = stretches.stream().mapToDouble(Stretch::to).max().orElse(Double.NaN);
    }

    /** @param tilt above 0 where a stretch has no beginning */
    Moments at(double tilt) {
        Moments[] parts = new Moments[stretches.size()];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < parts.length; i++) {
            parts[i] = at(stretches.get(i), tilt);
            most = Math.max(most, parts[i].logMass());
        }
        double mass = 0;
        double mean = 0;
        for (Moments p : parts) {
            double weight = Math.exp(p.logMass() - most);
            mass += weight;
            mean += weight * p.mean();
        }
        mean /= mass;
        double variance = 0;
        for (Moments p : parts) {
            double away = p.mean() - mean;
            variance += Math.exp(p.logMass() - most) / mass * (p.variance() + away * away);
        }
        return new Moments(most + Math.log(mass), mean, variance);
    }

    private static Moments at(Stretch s, double tilt) {
        if (s.from() == Double.NEGATIVE_INFINITY) {
            return new Moments(tilt * s.to() - Math.log(tilt), s.to() - 1 / tilt, 1 / (tilt * tilt));
        }
        double half = (s.to() - s.from()) / 2;
        double middle = s.from() + half;
        double y = tilt * half;
        return new Moments(
                tilt * middle + Math.log(2 * half) + logSinhRatio(Math.abs(y)),
                middle + half * langevin(y),
                half * half * langevinSlope(y));
    }

    /** log(sinh y / y) for y >= 0. */
    private static double logSinhRatio(double y) {
        if (y < SMALL) {
            double s = y * y;
            return s * (1.0 / 6 + s * (-1.0 / 180 + s * (1.0 / 2835 - s / 37800)));
        }
        return y + Math.log1p(-Math.exp(-2 * y)) - Math.log(2 * y);
    }

    /** coth y - 1/y. */
    private static double langevin(double y) {
        if (Math.abs(y) < SMALL) {
            double s = y * y;
            return y * (1.0 / 3 + s * (-1.0 / 45 + s * (2.0 / 945 + s * (-1.0 / 4725 + s * 2.0 / 93555))));
        }
        return 1 / Math.tanh(y) - 1 / y;
    }

    /** 1/y^2 - 1/sinh^2 y. */
    private static double langevinSlope(double y) {
        if (Math.abs(y) < SMALL) {
            double s = y * y;
            return 1.0 / 3 + s * (-1.0 / 15 + s * (2.0 / 189 + s * (-1.0 / 675 + s * 2.0 / 10395)));
        }
        double sinh = Math.sinh(y);
        return 1 / (y * y) - 1 / sinh / sinh;
    }

    /**
     * The tilt under which the mean of x is this one; NaN when there is none.
     *
     * @param positive whether only a tilt above 0 will do
     */
    double tiltOfMean(double mean, boolean positive) {
        if (!(mean > lowest && mean < highest)) {
            return Double.NaN;
        }
        double scale = 1 / (highest - (positive ? mean : lowest));
        double low = positive ? scale : -scale;
        double high = scale;
        for (int i = 0; at(low).mean() > mean; i++) {
            low = positive ? low / 2 : low * 2;
            if (i == MAX_STEPS) {
                return Double.NaN;
            }
        }
        for (int i = 0; at(high).mean() < mean; i++) {
            high *= 2;
            if (i == MAX_STEPS) {
                return Double.NaN;
            }
        }
        double tilt = 0.5 * (low + high);
        for (int i = 0; i < MAX_STEPS; i++) {
            Moments here = at(tilt);
            if (here.mean() > mean) {
                high = tilt;
            } else {
                low = tilt;
            }
            double next = tilt - (here.mean() - mean) / here.variance();
            // Newton's step, or half of the bracket where it would leave it.
            next = next > low && next < high ? next : 0.5 * (low + high);
            if (Math.abs(next - tilt) <= 1e-15 * Math.abs(next)) {
                return next;
            }
            tilt = next;
        }
        return tilt;
    }
}
