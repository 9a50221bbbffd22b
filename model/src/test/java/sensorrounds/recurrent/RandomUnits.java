package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Units made by lot, in whole days. */
final class RandomUnits {
    private RandomUnits() {}

    /** Watched from one random day to another, with rates that differ between units and several events on some days. */
    static List<EventHistory> of(int n, long seed) {
        Random random = new Random(seed);
        List<EventHistory> units = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int from = random.nextInt(3) == 0 ? 0 : random.nextInt(60);
            int to = from + 1 + random.nextInt(80);
            int k = random.nextInt(2) == 0 ? 0 : random.nextInt(6);
            double[] events = new double[k];
            for (int j = 0; j < k; j++) {
                events[j] = j > 0 && random.nextInt(4) == 0 ? events[j - 1] : from + 1 + random.nextInt(to - from);
            }
            units.add(EventHistory.observed(from, to, events));
        }
        return units;
    }

    static void addTo(RecurrenceCells cells, EventHistory unit) {
        ObservationWindow w = unit.windows().get(0);
        cells.add(
                (int) w.from(),
                (int) w.to(),
                Arrays.stream(unit.events()).mapToInt(t -> (int) t).toArray());
    }

    static void same(MeanCumulativeFit a, MeanCumulativeFit b) {
        assertThat(a.units()).isEqualTo(b.units());
        assertThat(a.events()).isEqualTo(b.events());
        assertThat(a.unwatched()).isEqualTo(b.unwatched());
        assertThat(a.steps()).hasSameSizeAs(b.steps());
        for (int i = 0; i < a.steps().size(); i++) {
            MeanCumulativeFit.Step s = a.steps().get(i);
            MeanCumulativeFit.Step t = b.steps().get(i);
            assertThat(s.time()).isEqualTo(t.time());
            assertThat(s.atRisk()).isEqualTo(t.atRisk());
            assertThat(s.events()).isEqualTo(t.events());
            assertThat(s.mean()).isCloseTo(t.mean(), within(1e-12));
            // One unit alone at risk has no variance; rounding of a difference is all that is left.
            assertThat(s.variance()).isCloseTo(t.variance(), within(1e-13 + 1e-10 * t.variance()));
            assertThat(a.atRisk(s.time())).isEqualTo(b.atRisk(s.time()));
        }
    }

    /** The robust variance as its formula stands, unit by unit. */
    static double variance(List<EventHistory> units, double until) {
        double[] times = units.stream()
                .flatMapToDouble(u -> Arrays.stream(u.events()))
                .filter(t -> t <= until)
                .distinct()
                .sorted()
                .toArray();
        double variance = 0;
        for (EventHistory unit : units) {
            double inner = 0;
            for (double t : times) {
                if (unit.windows().stream().anyMatch(w -> w.contains(t))) {
                    double atRisk = units.stream()
                            .filter(u -> u.windows().stream().anyMatch(w -> w.contains(t)))
                            .count();
                    double events = units.stream()
                            .flatMapToDouble(u -> Arrays.stream(u.events()))
                            .filter(e -> e == t)
                            .count();
                    double own =
                            Arrays.stream(unit.events()).filter(e -> e == t).count();
                    inner += (own - events / atRisk) / atRisk;
                }
            }
            variance += inner * inner;
        }
        return variance;
    }
}
