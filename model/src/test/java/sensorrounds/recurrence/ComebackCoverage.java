package sensorrounds.recurrence;

import java.util.Locale;
import java.util.Random;
import sensorrounds.coverage.FleetSeed;
import sensorrounds.history.Repair;
import sensorrounds.numeric.WilsonInterval;

/**
 * How often 95 % limits of the share of repairs back within 90 days hold the truth, with repairs cut short: followed for a uniform
 * 0 to 240 days. Argument: fleets (default 1000). Results are in docs/coverage.md.
 */
public final class ComebackCoverage {
    private static final int WINDOW = 90;

    private ComebackCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        for (double truth : new double[] {0.05, 0.2, 0.5}) {
            for (int repairs : new int[] {10, 30, 100, 400}) {
                study(fleets, repairs, truth);
            }
        }
    }

    private static void study(int fleets, int repairs, double truth) {
        int held = 0;
        int tooLow = 0;
        int tooHigh = 0;
        int none = 0;
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = new Random(FleetSeed.of(51_000_000 + Math.round(1e6 * truth), fleet, repairs));
            ComebackCells cells = new ComebackCells(new int[] {WINDOW});
            for (int i = 0; i < repairs; i++) {
                // A constant daily chance to be back, worth the truth by the end of the window.
                double lasts = WINDOW * Math.log(1 - random.nextDouble()) / Math.log(1 - truth);
                int day = (int) Math.ceil(lasts);
                int followed = random.nextInt(241);
                boolean back = day <= followed;
                cells.add(new RepairOutcome(Repair.RELEARN, false, back ? day : null, 0, back ? day : followed));
            }
            WilsonInterval limits = cells.share(0);
            if (Double.isNaN(limits.share())) {
                none++;
            } else if (limits.upper() < truth) {
                tooLow++;
            } else if (limits.lower() > truth) {
                tooHigh++;
            } else {
                held++;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "| %.0f %% | %d | %.1f %% | %d | %d | %d |%n",
                100 * truth,
                repairs,
                100.0 * held / (held + tooLow + tooHigh),
                tooLow,
                tooHigh,
                none);
    }
}
