package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.BacktestSettings;
import sensorrounds.backtest.Horizon;
import sensorrounds.backtest.ListKind;
import sensorrounds.backtest.ListRow;
import sensorrounds.backtest.ListRule;

/**
 * Backtests of fleets of the kind of the sample data under other seeds: what is one fleet's luck, and what is a bias. The build
 * looks at a few; {@code -Dbacktest.fleets=30} at as many, and prints the tables of docs/validation-accuracy.md.
 */
class SmallFleetsBacktestTest {
    private static final long SEED = 77_000;

    @TempDir
    Path temp;

    /** Failures expected and true within a year, by cut, of each fleet. */
    private final List<TreeMap<LocalDate, double[]>> sums = new ArrayList<>();

    private final List<Backtest> backtests = new ArrayList<>();

    @Test
    void failuresComeAsExpectedAlsoAsTheFleetAges() throws IOException {
        int fleets = Integer.getInteger("backtest.fleets", 3);
        for (int f = 1; f <= fleets; f++) {
            BacktestedFleet fleet = BacktestedFleet.of(
                    SimulationSettings.sample().withSeed(SEED + f),
                    BacktestSettings.defaults(),
                    temp.resolve("fleet-" + f));
            TreeMap<LocalDate, double[]> byCut = new TreeMap<>();
            for (BacktestedFleet.Told t : fleet.told()) {
                double[] sum = byCut.computeIfAbsent(t.judged().forecast().cut(), c -> new double[2]);
                sum[0] += t.judged().forecast().chances().within365();
                sum[1] += t.failsInDays() <= 365 ? 1 : 0;
            }
            sums.add(byCut);
            backtests.add(fleet.backtest());
        }
        if (fleets > 3) {
            print();
        }
        for (int cut = 2; cut < 4; cut++) {
            int at = cut;
            double[] ratio = ratio(sum -> List.copyOf(sum.values()).get(at));
            // Two standard errors of a fleet's ratio, 0.24, and a tenth.
            assertThat(ratio[0])
                    .as("cut " + cut)
                    .isBetween(0.9 - 0.48 / Math.sqrt(fleets), 1.1 + 0.48 / Math.sqrt(fleets));
        }
        double engine = mean(b -> row(b, ListKind.REPLACE, ListRule.ENGINE).saved())[0];
        assertThat(engine)
                .isGreaterThan(mean(
                        b -> row(b, ListKind.REPLACE, ListRule.OLDEST_FIRST).saved())[0]);
        assertThat(engine)
                .isGreaterThan(mean(
                        b -> row(b, ListKind.REPLACE, ListRule.LAST_REPORT_WEAK).saved())[0]);
    }

    private static ListRow row(Backtest b, ListKind list, ListRule rule) {
        return b.list(list, rule, Horizon.YEAR);
    }

    private interface OfCuts {
        double[] of(TreeMap<LocalDate, double[]> cuts);
    }

    /** True failures for one expected, and its standard error from fleet to fleet. */
    private double[] ratio(OfCuts which) {
        double expected = 0;
        double observed = 0;
        for (TreeMap<LocalDate, double[]> fleet : sums) {
            expected += which.of(fleet)[0];
            observed += which.of(fleet)[1];
        }
        double value = observed / expected;
        double square = 0;
        for (TreeMap<LocalDate, double[]> fleet : sums) {
            double off = which.of(fleet)[1] - value * which.of(fleet)[0];
            square += off * off;
        }
        int n = sums.size();
        return new double[] {value, Math.sqrt(square * n / (n - 1.0)) / expected, expected, observed};
    }

    private double[] mean(ToDoubleFunction<Backtest> figure) {
        double[] values = backtests.stream().mapToDouble(figure).toArray();
        double sum = 0;
        double squares = 0;
        for (double v : values) {
            sum += v;
            squares += v * v;
        }
        double mean = sum / values.length;
        double variance = (squares - values.length * mean * mean) / (values.length - 1);
        return new double[] {mean, Math.sqrt(variance / values.length)};
    }

    private void print() {
        for (int cut = 0; cut < 4; cut++) {
            int at = cut;
            double[] r = ratio(sum -> List.copyOf(sum.values()).get(at));
            System.out.printf(Locale.ROOT, "| %d | %.0f | %.0f | %.2f ± %.2f |%n", cut + 1, r[2], r[3], r[0], r[1]);
        }
        double inside = mean(b -> b.score(Horizon.YEAR).ratio().lower() <= 1
                        && 1 <= b.score(Horizon.YEAR).ratio().upper()
                ? 1
                : 0)[0];
        double withinFit = mean(b -> b.score(Horizon.YEAR).withinFit() ? 1 : 0)[0];
        System.out.printf(
                Locale.ROOT, "limits of observed for expected hold 1: %.2f, with the fit %.2f%n", inside, withinFit);
        for (ListKind list : List.of(ListKind.REPLACE, ListKind.SEE_TO_NOW)) {
            for (ListRule rule : list.rules()) {
                line(list, rule);
            }
        }
        ListKind.parts().forEach(part -> line(part, ListRule.ENGINE));
    }

    private void line(ListKind list, ListRule rule) {
        double sensors = mean(b -> row(b, list, rule).sensors())[0];
        double failures = mean(b -> row(b, list, rule).failures())[0];
        double[] saved = mean(b -> row(b, list, rule).saved());
        double stops = mean(b -> row(b, list, rule).stops())[0];
        double[] less = mean(b -> row(b, list, rule).saved()
                - row(b, list == ListKind.SEE_TO_NOW ? list : ListKind.REPLACE, ListRule.ENGINE)
                        .saved());
        System.out.printf(
                Locale.ROOT,
                "| %s, %s | %.1f | %.1f %% | %.0f ± %.0f | %.0f | %.0f ± %.0f |%n",
                list,
                rule,
                sensors,
                100 * failures / sensors,
                saved[0],
                saved[1],
                stops,
                less[0],
                less[1]);
    }
}
