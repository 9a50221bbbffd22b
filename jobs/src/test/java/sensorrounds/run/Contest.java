package sensorrounds.run;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Measures contenders in turn, A B A B, so that what else the machine does meets all of them alike. Each runs once
 * beforehand unmeasured. Printed are medians of elapsed and processor time, the latter of the whole process with its
 * compiler and garbage collector, and their ratios to the first contender.
 */
final class Contest {
    private final Map<String, Contender> contenders = new LinkedHashMap<>();
    private final Map<String, List<Took>> took = new LinkedHashMap<>();

    /** What is measured. */
    interface Contender {
        /** @return a figure by which a reader sees that the work was done */
        long run() throws IOException;

        /** What must be done before each run and is not measured. */
        default void prepare() throws IOException {}
    }

    private record Took(double elapsed, double processor, long result) {}

    Contest add(String name, Contender contender) {
        contenders.put(name, contender);
        took.put(name, new ArrayList<>());
        return this;
    }

    void run(int passes) throws IOException {
        for (int pass = 0; pass <= passes; pass++) {
            for (Map.Entry<String, Contender> contender : contenders.entrySet()) {
                Took one = measure(contender.getValue());
                System.out.printf(
                        Locale.ROOT,
                        "%s %-14s %7.1f s elapsed %7.1f s processor  (%d)%n",
                        pass == 0 ? "warm-up" : "pass " + pass + " ",
                        contender.getKey(),
                        one.elapsed(),
                        one.processor(),
                        one.result());
                if (pass > 0) {
                    took.get(contender.getKey()).add(one);
                }
            }
        }
        print();
    }

    private static Took measure(Contender contender) throws IOException {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        contender.prepare();
        System.gc();
        long start = System.nanoTime();
        long processor = system.getProcessCpuTime();
        long result = contender.run();
        return new Took((System.nanoTime() - start) / 1e9, (system.getProcessCpuTime() - processor) / 1e9, result);
    }

    private void print() {
        System.out.println();
        System.out.println("| contender | elapsed | processor | cores in use | elapsed, ratio | processor, ratio |");
        System.out.println("|---|---|---|---|---|---|");
        List<Took> first = took.values().iterator().next();
        took.forEach((name, times) -> {
            double elapsed = median(times, Took::elapsed);
            double processor = median(times, Took::processor);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %.1f s | %.1f s | %.1f | %.2f | %.2f |%n",
                    name,
                    elapsed,
                    processor,
                    processor / elapsed,
                    elapsed / median(first, Took::elapsed),
                    processor / median(first, Took::processor));
        });
        System.out.println();
    }

    private static double median(List<Took> times, ToDoubleFunction<Took> part) {
        double[] sorted = times.stream().mapToDouble(part).sorted().toArray();
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
