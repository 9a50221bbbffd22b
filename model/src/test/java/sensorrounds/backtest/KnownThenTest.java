package sensorrounds.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;

class KnownThenTest {
    private static final LocalDate DAY = LocalDate.of(2025, 6, 30);

    private static LoggedWheel row(
            String visit, int revision, String day, String position, String sensor, Source source) {
        VisitHeader header = new VisitHeader(
                visit,
                revision,
                LocalDate.parse(day).atTime(10, 0),
                "T1",
                "R1",
                "V1",
                null,
                null,
                null,
                null,
                new TreeMap<>(),
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null);
        WheelReading wheel = new WheelReading(
                WheelPosition.parse(position).orElseThrow(),
                position,
                sensor,
                ReadOutcome.OK,
                1,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        return new LoggedWheel(header, wheel, source);
    }

    private static Source at(String file, long line) {
        return new Source(file, line);
    }

    @Test
    void laterVisitsAreNotKnown() {
        LoggedWheel that = row("a", 0, "2025-06-30", "1L", "0A", at("f", 1));
        LoggedWheel later = row("b", 0, "2025-07-01", "1L", "0A", at("f", 2));
        assertThat(KnownThen.rows(List.of(that, later), DAY)).containsExactly(that);
    }

    @Test
    void aCorrectionMayHaveComeLaterSoTheFirstFormCounts() {
        LoggedWheel first = row("a", 0, "2025-06-01", "1L", "0A", at("f", 1));
        LoggedWheel corrected = row("a", 1, "2025-06-01", "1L", "0B", at("f", 9));
        assertThat(KnownThen.rows(List.of(corrected, first), DAY)).containsExactly(first);
    }

    @Test
    void aVisitDatedAnewBeforeTheDayIsNotKnownByItsNewDate() {
        LoggedWheel first = row("a", 0, "2025-07-02", "1L", "0A", at("f", 1));
        LoggedWheel corrected = row("a", 1, "2025-06-29", "1L", "0A", at("f", 9));
        assertThat(KnownThen.rows(List.of(corrected, first), DAY)).isEmpty();
    }

    @Test
    void whatALaterFileSaysOfAPlaceIsNotKnown() {
        LoggedWheel first = row("a", 0, "2025-06-01", "1L", "0A", at("2025-q2", 1));
        LoggedWheel again = row("a", 0, "2025-06-01", "1L", "0B", at("2025-q3", 1));
        LoggedWheel other = row("a", 0, "2025-06-01", "1R", "0C", at("2025-q3", 2));
        assertThat(KnownThen.rows(List.of(first, again, other), DAY)).containsExactly(first, other);
    }

    @Test
    void datesOfTheRegisterThatLayAheadAreNotKnown() {
        Vehicle today = vehicle(LocalDate.of(2020, 1, 1), LocalDate.of(2025, 6, 1), LocalDate.of(2025, 9, 1));
        Vehicle then = KnownThen.vehicle(today, DAY);
        assertThat(then).isEqualTo(vehicle(LocalDate.of(2020, 1, 1), null, null));
        Vehicle gone = vehicle(LocalDate.of(2025, 7, 1), null, LocalDate.of(2025, 6, 30));
        assertThat(KnownThen.vehicle(gone, DAY)).isEqualTo(vehicle(null, null, LocalDate.of(2025, 6, 30)));
    }

    private static Vehicle vehicle(LocalDate firstUsed, LocalDate planned, LocalDate left) {
        return new Vehicle(
                "V1",
                "van",
                "N-1",
                firstUsed,
                "North",
                "left",
                MonitoringSystem.DIRECT,
                null,
                "S1",
                9000.0,
                planned,
                left);
    }
}
