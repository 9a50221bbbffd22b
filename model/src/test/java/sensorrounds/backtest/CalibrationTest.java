package sensorrounds.backtest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.backtest.Plant.NEVER;
import static sensorrounds.backtest.Plant.judged;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static List<CalibrationRow> rows(double times) {
        Random dice = new Random(11);
        List<Judged> judged = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            double chance = Math.pow(dice.nextDouble(), 3) * 0.7;
            boolean fails = dice.nextDouble() < times * chance;
            judged.add(judged(i, chance, 0.1, fails ? 100 : 400, fails ? 120 : NEVER));
        }
        return Calibration.rows(List.of(KnownBy.of(judged, Horizon.YEAR)), Horizon.YEAR);
    }

    @Test
    void trueChancesAreBorneOutInEveryBand() {
        List<CalibrationRow> rows = rows(1);
        assertThat(rows).hasSize(8);
        assertThat(rows.get(0).band()).isNull();
        assertThat(rows.stream().skip(1).mapToLong(CalibrationRow::forecasts).sum())
                .isEqualTo(20_000);
        assertThat(rows)
                .allMatch(r -> r.observed().lower() <= r.expected()
                        && r.expected() <= r.observed().upper());
    }

    @Test
    void chancesTooHighByHalfShowInEveryBandWithFailuresEnough() {
        assertThat(rows(1 / 1.5))
                .filteredOn(r -> r.failures() > 60)
                .hasSizeGreaterThan(4)
                .allSatisfy(r -> {
                    assertThat(r.observed().upper()).isLessThan(r.expected());
                    assertThat(r.observed().value() / r.expected()).isCloseTo(1 / 1.5, within(0.13));
                });
    }

    @Test
    void everyChanceLiesInOneBand() {
        for (double chance : new double[] {0, 0.005, 0.01, 0.0199999, 0.4, 0.9999, 1}) {
            assertThat(ChanceBand.all()).filteredOn(b -> b.holds(chance)).hasSize(1);
        }
    }
}
