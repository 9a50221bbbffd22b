package sensorrounds.analyst;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.landmark.FirstLow;
import sensorrounds.landmark.FirstLowCells;
import sensorrounds.landmark.LandmarkCells;
import sensorrounds.landmark.LandmarkSettings;
import sensorrounds.outlook.LastReport;

/**
 * Lives still ahead of sensors at a few ages, by last report, and after a first low battery report: a mergeable state of
 * whole numbers. Not thread safe.
 */
public final class LifeAheadCounts implements Serializable {
    private static final long serialVersionUID = 1;

    /** Landmark ages in days: 2, 4, 6 and 8 years. */
    private static final int[] AGES = {731, 1461, 2192, 2922};

    private final List<LandmarkCells> byAge = new ArrayList<>();
    private final FirstLowCells afterLow;

    public LifeAheadCounts(LandmarkSettings settings) {
        for (int age : AGES) {
            byAge.add(LandmarkCells.at(age, settings));
        }
        afterLow = FirstLowCells.with(settings);
    }

    /** @param lastReport report of a life of this vehicle as of a day, from nothing later */
    public LifeAheadCounts add(VehicleHistory history, BiFunction<SensorLife, LocalDate, LastReport> lastReport) {
        for (SensorLife life : history.lives()) {
            byAge.forEach(cells -> cells.add(life, lastReport));
            afterLow.add(life);
        }
        return this;
    }

    /** Adds all of another state, which must be of the same settings. */
    public LifeAheadCounts merge(LifeAheadCounts other) {
        for (int i = 0; i < byAge.size(); i++) {
            byAge.get(i).merge(other.byAge.get(i));
        }
        afterLow.merge(other.afterLow);
        return this;
    }

    /** A row for each group that has lives: by age and last report, then after a first low report by how it came about. */
    public List<LifeAheadRow> rows() {
        List<LifeAheadRow> rows = new ArrayList<>();
        for (LandmarkCells cells : byAge) {
            for (LastReport report : LastReport.values()) {
                rows.add(LifeAheadRow.atAge(cells.ageDays(), report, cells.lives(report)));
            }
        }
        rows.add(LifeAheadRow.afterAnyLow(afterLow.lives(), afterLow.recovered()));
        for (FirstLow how : FirstLow.values()) {
            rows.add(LifeAheadRow.afterLow(how, afterLow.lives(how), afterLow.recovered(how)));
        }
        rows.removeIf(r -> r.lives() == 0);
        return List.copyOf(rows);
    }
}
