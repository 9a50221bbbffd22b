package sensorrounds.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Cost per sensor of fitting and filtering the hidden condition. After {@code mvn -pl model test-compile}:
 *
 * <pre>java -cp model/target/classes:model/target/test-classes sensorrounds.condition.HiddenBenchmark 20000 2</pre>
 *
 * <p>First argument: sensors, of ten visits each; second: threads. A sample of a tenth is fitted first and gives the
 * start of the whole.
 */
final class HiddenBenchmark {
    private HiddenBenchmark() {}

    public static void main(String[] args) {
        int n = args.length > 0 ? Integer.parseInt(args[0]) : 20_000;
        int threads = args.length > 1 ? Integer.parseInt(args[1]) : 2;
        List<HiddenReadings> sensors = HiddenFleet.readings(HiddenFleet.sensors(n, 10, HiddenFleet.TRUTH, 1));
        long readings = sensors.stream().mapToLong(HiddenReadings::size).sum();
        System.out.printf(Locale.ROOT, "%d sensors, %d readings, %d threads%n", n, readings, threads);
        for (int round = 0; round < 3; round++) {
            measure(sensors, threads);
        }
    }

    private static void measure(List<HiddenReadings> sensors, int threads) {
        int[] passes = {0};
        long begun = System.nanoTime();
        List<HiddenReadings> sample = sensors.subList(0, Math.max(2000, sensors.size() / 10));
        HiddenFit rough = HiddenFitter.of(HiddenFleet.MODEL).fit((at, detail) -> sum(sample, at, threads, detail));
        long sampled = System.nanoTime();
        HiddenFit fit = HiddenFitter.of(HiddenFleet.MODEL)
                .withStart(rough.parameters())
                .fit((at, detail) -> {
                    passes[0]++;
                    return sum(sensors, at, threads, detail);
                });
        long fitted = System.nanoTime();
        List<List<HiddenReadings>> parts = parts(sensors, threads);
        double total =
                parts.parallelStream().mapToDouble(part -> filtered(part, fit)).sum();
        long filtered = System.nanoTime();
        double each = 1e-3 / sensors.size();
        System.out.printf(
                Locale.ROOT,
                "%s; sample %.2f s, fit %.2f s in %d passes, filter %.2f s;"
                        + " per sensor: sample %.2f us, fit %.2f us (%.2f per pass), filter %.2f us, all %.2f us; 2 million: %.0f s; mean chance %.4f%n",
                fit.status(),
                (sampled - begun) / 1e9,
                (fitted - sampled) / 1e9,
                passes[0],
                (filtered - fitted) / 1e9,
                (sampled - begun) * each,
                (fitted - sampled) * each,
                (fitted - sampled) * each / passes[0],
                (filtered - fitted) * each,
                (filtered - begun) * each,
                (filtered - begun) * each * 2,
                total / sensors.size());
    }

    private static HiddenSum sum(
            List<HiddenReadings> sensors, HiddenParameters at, int threads, HiddenSum.Detail detail) {
        HiddenPoint point = new HiddenPoint(at, HiddenFleet.MODEL);
        return parts(sensors, threads).parallelStream()
                .map(part -> HiddenSum.of(part, point, detail))
                .reduce(HiddenSum::merge)
                .orElseThrow();
    }

    private static double filtered(List<HiddenReadings> sensors, HiddenFit fit) {
        HiddenFilter filter = fit.filter();
        double sum = 0;
        for (HiddenReadings r : sensors) {
            int age = r.lastAge() + 30;
            HiddenFilter.Condition now = filter.at(r, age);
            for (int days : new int[] {30, 90, 180}) {
                filter.failureWithin(now, days);
            }
            filter.limits(r, age, 90);
            sum += filter.failureWithin(now, 365);
        }
        return sum;
    }

    private static List<List<HiddenReadings>> parts(List<HiddenReadings> sensors, int threads) {
        List<List<HiddenReadings>> parts = new ArrayList<>();
        IntStream.range(0, threads)
                .forEach(i -> parts.add(sensors.subList((int) ((long) sensors.size() * i / threads), (int)
                        ((long) sensors.size() * (i + 1) / threads))));
        return parts;
    }
}
