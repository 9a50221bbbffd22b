package sensorrounds.survival;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * The time for many cohorts at once, lives grouped beforehand: a Weibull law, a hazard by bands and a Kaplan-Meier curve for each,
 * all with limits; and what a run does with
 * them: the ladder of laws, which also tries two hazards, and the law's curve with limits. Arguments: cohorts, lives of each, repetitions. Run by survival.sh in model/src/test/benchmarks.
 */
public final class CohortBenchmark {
    /** Processor time of all threads, those of the compiler and the collector among them: other programs do not slow it. */
    private static final OperatingSystemMXBean PROCESS =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private CohortBenchmark() {}

    public static void main(String[] arguments) {
        int cohorts = Integer.parseInt(arguments[0]);
        int lives = Integer.parseInt(arguments[1]);
        Map<String, LifetimeSample> samples = new TreeMap<>();
        int cells = 0;
        for (int i = 0; i < cohorts; i++) {
            LifetimeSample sample = grouped(WeakPriorFitterTest.fleet(new Random(i), lives, 6, 3));
            samples.put(String.format(Locale.ROOT, "cohort %03d", i), sample);
            cells += sample.size();
        }
        double[][] seconds = new double[4][Integer.parseInt(arguments[2])];
        double check = 0;
        for (int i = 0; i < seconds[0].length; i++) {
            long start = PROCESS.getProcessCpuTime();
            for (LifetimeSample sample : samples.values()) {
                check += ParametricFitter.of(Family.WEIBULL)
                        .fit(sample)
                        .survival(1000)
                        .lower();
            }
            long laws = PROCESS.getProcessCpuTime();
            for (LifetimeSample sample : samples.values()) {
                check += PiecewiseExponentialFitter.withBands(730, 1461, 2192)
                        .fit(sample)
                        .survival(1000)
                        .lower();
            }
            long bands = PROCESS.getProcessCpuTime();
            for (LifetimeSample sample : samples.values()) {
                check += Curves.kaplanMeier("cohort", sample).size();
            }
            long curves = PROCESS.getProcessCpuTime();
            for (CohortLife cohort : CohortLadder.withDefaults().fit(samples).values()) {
                LifetimeSample sample = samples.get(cohort.fit().cohort());
                if (sample != null) {
                    check += Curves.law(
                                    cohort.fit().cohort(),
                                    CurvePoint.Method.FITTED_LAW,
                                    cohort.life().orElseThrow(),
                                    sample)
                            .size();
                }
            }
            long ladder = PROCESS.getProcessCpuTime();
            seconds[0][i] = (laws - start) / 1e9;
            seconds[1][i] = (bands - laws) / 1e9;
            seconds[2][i] = (curves - bands) / 1e9;
            seconds[3][i] = (ladder - curves) / 1e9;
        }
        System.out.printf(Locale.ROOT, "%d cohorts, %d distinct lives in all (%.0f)%n", cohorts, cells, check);
        String[] what = {
            "Weibull with limits",
            "hazard by bands with limits",
            "Kaplan-Meier with limits",
            "ladder of laws with two hazards tried, curves with limits"
        };
        for (int part = 0; part < what.length; part++) {
            double first = seconds[part][0];
            Arrays.sort(seconds[part]);
            System.out.printf(
                    Locale.ROOT,
                    "ours, %s: processor time median %.2f s, first call %.2f s%n",
                    what[part],
                    seconds[part][seconds[part].length / 2],
                    first);
        }
    }

    /** On a grid of 30 days, outwards, as the run groups lives before it fits. */
    private static LifetimeSample grouped(LifetimeSample sample) {
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < sample.size(); i++) {
            int entry = 30 * (int) (sample.entry(i) / 30);
            int lower = 30 * (int) (sample.lower(i) / 30);
            int upper = sample.failed(i) ? 30 * (int) Math.ceil(sample.upper(i) / 30) : Lifetime.NEVER;
            lives.add(new Lifetime(entry, lower, upper, sample.weight(i)));
        }
        return LifetimeSample.of(lives);
    }
}
