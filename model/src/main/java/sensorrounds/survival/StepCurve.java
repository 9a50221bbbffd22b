package sensorrounds.survival;

import java.io.Serializable;
import java.util.Arrays;

/**
 * A right-continuous step function on the closed stretch [from, to] of ages it was learnt on. It does not answer beyond
 * that: what lies there is unknown, not flat.
 */
public final class StepCurve implements Serializable {
    private final double from;
    private final double to;
    private final double start;
    private final double[] ages;
    private final double[] values;

    /**
     * @param start value before the first step
     * @param ages ages of the steps, increasing, within (from, to] or at from
     * @param values value from each step on; NaN where it is undefined
     */
    public StepCurve(double from, double to, double start, double[] ages, double[] values) {
        this.from = from;
        this.to = to;
        this.start = start;
        this.ages = ages.clone();
        this.values = values.clone();
    }

    public double from() {
        return from;
    }

    public double to() {
        return to;
    }

    public boolean covers(double age) {
        return age >= from && age <= to;
    }

    /**
     * Value at an age.
     *
     * @throws IllegalArgumentException beyond the curve's domain; ask {@link #covers} first
     */
    public double at(double age) {
        if (!covers(age)) {
            throw new IllegalArgumentException("the curve is known from age " + from + " to " + to + ", not at " + age
                    + "; use a fitted law of life to go beyond the data");
        }
        int index = Arrays.binarySearch(ages, age);
        int step = index >= 0 ? index : -index - 2;
        return step < 0 ? start : values[step];
    }

    /**
     * First age at which a falling curve is at or below the level; the midpoint of the stretch where it equals the level
     * (to a relative 1e-9, since products of fractions round); NaN when it never gets there, or when the curve ends on
     * the level. This is R's convention for quantiles of survival curves.
     */
    double firstAtOrBelow(double level) {
        double slack = 1e-9 * Math.max(level, 1e-3);
        for (int i = 0; i < ages.length; i++) {
            if (values[i] <= level + slack) {
                if (values[i] < level - slack) {
                    return ages[i];
                }
                for (int j = i + 1; j < ages.length; j++) {
                    if (values[j] < level - slack) {
                        return ages[i] + (ages[j] - ages[i]) / 2;
                    }
                }
                return Double.NaN;
            }
        }
        return Double.NaN;
    }

    /** Area under the curve from its domain's start to the age, values undefined or not asked of it beyond. */
    public double areaTo(double age) {
        at(age);
        double area = 0;
        double position = from;
        double value = start;
        for (int i = 0; i < ages.length && ages[i] < age; i++) {
            area += value * (ages[i] - position);
            position = ages[i];
            value = values[i];
        }
        return area + value * (age - position);
    }
}
