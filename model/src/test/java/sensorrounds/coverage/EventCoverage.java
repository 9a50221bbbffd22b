package sensorrounds.coverage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import sensorrounds.recurrent.EventHistory;
import sensorrounds.recurrent.MeanCumulative;
import sensorrounds.recurrent.MeanCumulativeFit;
import sensorrounds.recurrent.ObservationWindow;

/**
 * Limits of the mean number of events: vehicles have rates that differ by a gamma factor of variance 1, rising with time (mean
 * t + t^2 / 10 by year t); each is watched from some time in the first year, some with a gap, to a time between years 2 and 5.
 * Arguments: fleets (default 1000), most vehicles (default all), seed. Results are in docs/coverage.md.
 */
public final class EventCoverage {
    private static final double[] TIMES = {1, 2, 4};

    private EventCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 43_000_000;
        int[] sizes = {20, 50, 200, 800};
        for (int vehicles : sizes) {
            if (arguments.length > 1 && vehicles > Integer.parseInt(arguments[1])) {
                break;
            }
            study(fleets, vehicles, seed).print(fleets + " fleets of " + vehicles + " vehicles");
        }
    }

    static Tallies study(int fleets, int vehicles, long seed) {
        Tallies tallies = new Tallies();
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = Tallies.random(seed, fleet, vehicles);
            List<EventHistory> units = new ArrayList<>();
            for (int i = 0; i < vehicles; i++) {
                units.add(unit(random, i));
            }
            for (MeanCumulative.Band band : MeanCumulative.Band.values()) {
                MeanCumulativeFit fit = MeanCumulative.withDefaults().with(band).fit(units);
                for (double time : TIMES) {
                    boolean seen = fit.covers(time) && fit.from() == 0;
                    tallies.add(
                            "M(" + (int) time + ") | robust, " + band,
                            mean(time),
                            seen ? fit.at(time).lower() : Double.NaN,
                            seen ? fit.at(time).upper() : Double.NaN);
                    if (band == MeanCumulative.Band.LOG) {
                        MeanCumulativeFit few = MeanCumulative.withDefaults()
                                .with(MeanCumulative.Reference.FEW_UNITS)
                                .fit(units);
                        tallies.add(
                                "M(" + (int) time + ") | robust, LOG, few units",
                                mean(time),
                                seen ? few.at(time).lower() : Double.NaN,
                                seen ? few.at(time).upper() : Double.NaN);
                        double factor = seen
                                ? Math.exp(1.959963984540054
                                        * fit.at(time).poissonError()
                                        / fit.at(time).mean())
                                : Double.NaN;
                        tallies.add(
                                "M(" + (int) time + ") | as if Poisson, for contrast",
                                mean(time),
                                seen ? fit.at(time).mean() / factor : Double.NaN,
                                seen ? fit.at(time).mean() * factor : Double.NaN);
                    }
                }
            }
        }
        return tallies;
    }

    private static double mean(double time) {
        return time + time * time / 10;
    }

    /** The first vehicle is watched from 0, so that each curve begins there. */
    private static EventHistory unit(Random random, int number) {
        double rate = -Math.log(1 - random.nextDouble());
        double from = number % 2 == 0 ? 0 : random.nextDouble();
        double to = 2 + 3 * random.nextDouble();
        boolean gap = random.nextDouble() < 0.3;
        List<ObservationWindow> windows = gap
                ? List.of(new ObservationWindow(from, from + 0.5), new ObservationWindow(from + 0.9, to))
                : List.of(new ObservationWindow(from, to));
        double[] events = new double[0];
        double cumulative = 0;
        while (true) {
            cumulative += -Math.log(1 - random.nextDouble()) / rate;
            double time = -5 + Math.sqrt(25 + 10 * cumulative);
            if (time > to) {
                return EventHistory.of(windows, events);
            }
            if (windows.stream().anyMatch(w -> w.contains(time))) {
                events = Arrays.copyOf(events, events.length + 1);
                events[events.length - 1] = time;
            }
        }
    }
}
