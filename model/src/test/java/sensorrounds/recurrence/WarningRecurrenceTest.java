package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.recurrence.WarningCurvePoint.Clock;
import sensorrounds.recurrence.WarningTrend.Direction;
import sensorrounds.visit.Warning;

class WarningRecurrenceTest {
    private static final LocalDate AS_OF = day("2026-01-01");

    private static WarningRecurrence of(Rounds... vehicles) {
        WarningRecurrence counts = new WarningRecurrence();
        for (Rounds r : vehicles) {
            counts.add(r.history(), AS_OF);
        }
        return counts;
    }

    private static List<WarningCurvePoint> curve(WarningRecurrence counts, Clock clock, String cohort) {
        return counts.curve().stream()
                .filter(p -> p.clock() == clock && p.cohort().equals(cohort))
                .toList();
    }

    /** One van warned on its 10th day, that is in week 2, another not; both watched for a year. */
    @Test
    void byHand() {
        WarningRecurrence counts = of(
                Rounds.of("van")
                        .clear("2025-01-01")
                        .warned("2025-01-11")
                        .episode(Warning.SYSTEM_FAULT, "2025-01-11", "2025-01-11"),
                Rounds.of("van").clear("2025-01-01"));
        List<WarningCurvePoint> van = curve(counts, Clock.SINCE_FIRST_VISIT, "van");
        assertThat(van).extracting(WarningCurvePoint::days).containsExactly(0, 14, 371);
        assertThat(van).extracting(WarningCurvePoint::mean).containsExactly(0.0, 0.5, 0.5);
        assertThat(van).extracting(WarningCurvePoint::atRisk).containsExactly(2L, 2L, 2L);
        assertThat(van.get(0).upper()).isNaN();
        // As of a mean of two, 0 and 1: their standard deviation, the root of 1/2, over the root of 2.
        assertThat(van.get(1).standardError()).isCloseTo(0.5, within(1e-15));
        assertThat(curve(counts, Clock.SINCE_FIRST_VISIT, PeerRates.ALL))
                .extracting(WarningCurvePoint::mean)
                .containsExactly(0.0, 0.5, 0.5);
        // First used on 2019-03-01, 2133 days before: week 304 to week 307 holds the warning at age 2143.
        List<WarningCurvePoint> aged = curve(counts, Clock.IN_SERVICE, "van");
        assertThat(aged).extracting(WarningCurvePoint::days).containsExactly(2128, 2149, 2499);
        WarningTrend trend = counts.trends().get(0);
        assertThat(trend.cohort()).isEqualTo("van");
        assertThat(trend.vehicles()).isEqualTo(2);
        assertThat(trend.warned()).isEqualTo(1);
        assertThat(trend.exposureYears()).isCloseTo(730 / 365.25, within(1e-12));
        assertThat(trend.perYear()).isCloseTo(365.25 / 730, within(1e-12));
        assertThat(trend.direction()).isEqualTo(Direction.TOO_FEW);
        assertThat(trend.pValue()).isNaN();
    }

    @Test
    void theWarningThatBroughtTheVehicleInDoesNotCount() {
        WarningRecurrence counts = of(Rounds.of("van")
                .warned("2025-01-01")
                .clear("2025-06-01")
                .episode(Warning.SYSTEM_FAULT, "2024-12-20", "2025-01-01"));
        assertThat(counts.trends().get(0).events()).isZero();
    }

    @Test
    void returnsAfterRepairCountOnceHoweverManyRepairsWentBefore() {
        WarningRecurrence counts = of(Rounds.of("van")
                .clear("2025-01-01")
                .repaired("2025-02-01", Repair.RELEARN, FollowUp.State.RETURNED, "2025-03-01", null)
                .repaired("2025-02-10", Repair.CODES_CLEARED, FollowUp.State.RETURNED, "2025-03-01", null)
                .warned("2025-03-01")
                .episode(Warning.SYSTEM_FAULT, "2025-02-01", "2025-03-01")
                .episode(Warning.LOW_PRESSURE, "2025-04-01", "2025-04-01"));
        assertThat(counts.trends().get(0).events()).isEqualTo(2);
    }

    @Test
    void vehiclesThatLeftOrWereSeenOnceOnTheLastDay() {
        WarningRecurrence counts = of(
                Rounds.of("van", null, "2025-04-11").clear("2025-01-01"),
                Rounds.of("van").clear("2026-01-01"),
                Rounds.of(null).clear("2025-12-02"));
        WarningTrend van = counts.trends().get(0);
        assertThat(van.vehicles()).isEqualTo(1);
        assertThat(van.exposureYears()).isCloseTo(100 / 365.25, within(1e-12));
        WarningTrend all = counts.trends().get(1);
        assertThat(all.cohort()).isEqualTo(PeerRates.ALL);
        assertThat(all.vehicles()).isEqualTo(2);
        // The first use of the van is not known: time in service is known of the other vehicle only, which has no
        // class.
        assertThat(counts.curve().stream().filter(p -> p.clock() == Clock.IN_SERVICE))
                .extracting(WarningCurvePoint::cohort)
                .containsOnly(PeerRates.ALL);
    }

    @Test
    void nothingSeenGivesNothing() {
        assertThat(new WarningRecurrence().curve()).isEmpty();
        assertThat(new WarningRecurrence().trends()).isEmpty();
    }

    @Test
    void aClassCalledLikeAllVehiclesStandsApart() {
        assertThat(of(Rounds.of(PeerRates.ALL).clear("2025-01-01")).trends())
                .extracting(WarningTrend::cohort)
                .containsExactly("all vehicles (class)", "all vehicles");
    }

    @Test
    void warningsThatCrowdAtTheEndAreATrend() {
        List<VehicleHistory> late = new ArrayList<>();
        List<VehicleHistory> even = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            String lateDay = day("2025-11-01").plusDays(i).toString();
            String evenDay = day("2025-01-08").plusDays(15L * i).toString();
            late.add(Rounds.of("van")
                    .clear("2025-01-01")
                    .warned(lateDay)
                    .episode(Warning.SYSTEM_FAULT, lateDay, lateDay)
                    .history());
            even.add(Rounds.of("van")
                    .clear("2025-01-01")
                    .warned(evenDay)
                    .episode(Warning.SYSTEM_FAULT, evenDay, evenDay)
                    .history());
        }
        WarningRecurrence one = new WarningRecurrence();
        late.forEach(h -> one.add(h, AS_OF));
        assertThat(one.trends().get(0).direction()).isEqualTo(Direction.MORE_OFTEN);
        WarningRecurrence other = new WarningRecurrence();
        even.forEach(h -> other.add(h, AS_OF));
        assertThat(other.trends().get(0).direction()).isEqualTo(Direction.NO_TREND_SHOWN);
        assertThat(other.trends().get(0).pValue()).isGreaterThan(0.5);
    }

    @Test
    void partsAddUp() {
        Rounds a = Rounds.of("van")
                .clear("2025-01-01")
                .warned("2025-01-11")
                .episode(Warning.SYSTEM_FAULT, "2025-01-11", "2025-01-11");
        Rounds b = Rounds.of("truck").clear("2024-01-01");
        Rounds c = Rounds.of("van").clear("2025-03-01");
        assertThat(of(c).merge(of(b)).merge(of(a)).merge(of())).isEqualTo(of(a, b, c));
        assertThat(of(c).merge(of(b)).merge(of(a)).curve())
                .isEqualTo(of(a, b, c).curve());
    }
}
