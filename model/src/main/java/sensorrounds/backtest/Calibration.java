package sensorrounds.backtest;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;
import sensorrounds.accuracy.ClusteredRatio;
import sensorrounds.backtest.Fate.Ending;
import sensorrounds.survival.Estimate;

/** Chances against what happened, over all cuts together. */
final class Calibration {
    private Calibration() {}

    /** @param cuts the forecasts of each cut, at one horizon */
    static List<CalibrationRow> rows(List<KnownBy> cuts, Horizon horizon) {
        List<CalibrationRow> rows = new ArrayList<>();
        rows.add(row(cuts, horizon, null, chance -> true));
        for (ChanceBand band : ChanceBand.all()) {
            CalibrationRow row = row(cuts, horizon, band, band::holds);
            if (row.forecasts() > 0) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static CalibrationRow row(List<KnownBy> cuts, Horizon horizon, ChanceBand band, DoublePredicate inBand) {
        long forecasts = 0;
        long replaced = 0;
        double expected = 0;
        double failures = 0;
        double known = 0;
        ClusteredRatio.Sum sum = new ClusteredRatio.Sum();
        for (KnownBy cut : cuts) {
            for (Judged j : cut.all()) {
                double chance = j.forecast().chances().within(horizon);
                if (inBand.test(chance)) {
                    forecasts++;
                    expected += chance;
                    boolean gone = j.fate().ending() == Ending.REPLACED_WORKING
                            && j.fate().workedOn() < horizon.days();
                    replaced += gone ? 1 : 0;
                }
            }
            for (KnownBy.Entry e : cut.entries()) {
                if (inBand.test(e.forecast().chances().within(horizon))) {
                    sum.add(e.forecast().vehicleId(), e.weight(), e.outcome(), 1);
                    known += e.part();
                    failures += e.failed() ? e.part() : 0;
                }
            }
        }
        Estimate observed = sum.ratio().share();
        return new CalibrationRow(
                horizon, band, forecasts, Math.round(known), failures, replaced, expected / forecasts, observed);
    }
}
