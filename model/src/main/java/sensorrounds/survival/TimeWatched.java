package sensorrounds.survival;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * Time under observation by age, from an age on: what an event that was not seen would have weighed. An event at an age at which Y are
 * watched adds 1 / Y to the cumulative hazard; met at random in the time watched it adds, over ages a with Y > 0 in (from, to], ∫ da / ∫ Y da in
 * the mean and ∫ (1 / Y) da / ∫ Y da in the mean square (Tiwari, Clegg and Zou 2006, Stat. Methods Med. Res. 15:547-569, with cells of
 * equal time watched). Ages at which nobody is watched add nothing: as for the curve, which is flat there, it is as if none had failed.
 */
final class TimeWatched {
    private final double from;
    private final double[] ends;
    private final double[] watched;
    private final double[] ages;
    private final double[] exposure;
    private final double[] inverse;

    private TimeWatched(double from, double[] ends, double[] watched) {
        this.from = from;
        this.ends = ends;
        this.watched = watched;
        ages = new double[ends.length + 1];
        exposure = new double[ends.length + 1];
        inverse = new double[ends.length + 1];
        for (int i = 0; i < ends.length; i++) {
            double length = ends[i] - start(i);
            ages[i + 1] = ages[i] + (watched[i] > 0 ? length : 0);
            exposure[i + 1] = exposure[i] + watched[i] * length;
            inverse[i + 1] = inverse[i] + (watched[i] > 0 ? length / watched[i] : 0);
        }
    }

    /** Of a risk set, over ages above one and up to another. */
    static TimeWatched of(RiskSet riskSet, double from, double to) {
        double[] ends = DoubleStream.concat(riskSet.changes(), DoubleStream.of(to))
                .filter(age -> age > from && age <= to)
                .sorted()
                .distinct()
                .toArray();
        double[] watched = Arrays.stream(ends).map(riskSet::at).toArray();
        return new TimeWatched(from, ends, Arrays.stream(ends).map(riskSet::at).toArray());
    }

    /** Unit-time watched up to an age. */
    double exposure(double age) {
        int i = stretchAt(age);
        return exposure[i] + (i == ends.length ? 0 : watched[i] * (age - start(i)));
    }

    /** Mean weight in the cumulative hazard at an age of an event met at random up to it; NaN where nothing was watched. */
    double meanWeight(double age) {
        int i = stretchAt(age);
        return (ages[i] + (i == ends.length || watched[i] == 0 ? 0 : age - start(i))) / exposure(age);
    }

    /** Mean square of that weight. */
    double meanSquare(double age) {
        int i = stretchAt(age);
        return (inverse[i] + (i == ends.length || watched[i] == 0 ? 0 : (age - start(i)) / watched[i])) / exposure(age);
    }

    /** Number of stretches of age in each of which as many are watched throughout. */
    int stretches() {
        return ends.length;
    }

    Span stretch(int i) {
        return new Span(start(i), ends[i]);
    }

    double watched(int stretch) {
        return watched[stretch];
    }

    private double start(int stretch) {
        return stretch == 0 ? from : ends[stretch - 1];
    }

    /** The stretch that holds an age or ends there; their number when it lies beyond the last. */
    private int stretchAt(double age) {
        int index = Arrays.binarySearch(ends, age);
        return index >= 0 ? index : -index - 1;
    }
}
