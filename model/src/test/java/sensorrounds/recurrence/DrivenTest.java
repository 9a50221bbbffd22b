package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.day;
import static sensorrounds.condition.Histories.episode;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

class DrivenTest {
    private static VisitSummary visit(String on, Double km) {
        return new VisitSummary(
                day(on),
                "visit-" + on,
                null,
                null,
                VisitReason.SERVICE,
                Warning.NONE,
                null,
                List.of(),
                true,
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                null,
                Repair.NONE,
                false,
                false,
                null,
                null,
                null,
                km);
    }

    private static VehicleHistory history(Double... km) {
        List<VisitSummary> visits = new ArrayList<>();
        for (int i = 0; i < km.length; i++) {
            visits.add(visit("202" + i + "-06-01", km[i]));
        }
        return Histories.history(
                List.of(),
                visits,
                List.of(
                        episode(Warning.SYSTEM_FAULT, "2020-03-01", "2020-04-01", 0, true, false),
                        episode(Warning.LOW_PRESSURE, "2020-09-01", "2020-09-01", 0, true, false),
                        episode(Warning.SYSTEM_FAULT, "2020-10-01", "2020-11-01", 1, true, false),
                        episode(Warning.SYSTEM_FAULT, "2022-10-01", "2022-10-01", 0, true, false)),
                List.of());
    }

    /** 10,000 to 50,000 km from June 2020 to June 2022: one episode with one return between, so 2 in 40,000 km. */
    @Test
    void warningsBetweenTheFirstAndTheLastReading() {
        Driven d =
                Driven.of(history(10_000.0, null, 50_000.0), day("2026-01-01")).orElseThrow();
        assertThat(d).isEqualTo(new Driven(40_000, 2));
        assertThat(d.per10000Km()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void anOdometerThatDoesNotTellIsNotGuessed() {
        assertThat(Driven.of(history(10_000.0, null), day("2026-01-01"))).isEmpty();
        assertThat(Driven.of(history(10_000.0, 10_000.0), day("2026-01-01"))).isEmpty();
        assertThat(Driven.of(history(10_000.0, 9_000.0, 50_000.0), day("2026-01-01")))
                .isEmpty();
        // What comes later is not known yet.
        assertThat(Driven.of(history(10_000.0, 20_000.0), day("2021-05-31"))).isEmpty();
    }
}
