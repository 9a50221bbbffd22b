package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.Histories.day;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.history.Finding;
import sensorrounds.history.Repair;
import sensorrounds.history.VisitSummary;
import sensorrounds.numeric.WilsonInterval;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

class WarningVisitsTest {
    private static final LocalDate AS_OF = day("2026-01-01");
    private static final FaultCode NAMES = new FaultCode("C1A56", FaultCode.State.STORED, Histories.place("1R"));
    private static final FaultCode CLEARED = new FaultCode("C1A56", FaultCode.State.CLEARED, Histories.place("1R"));
    private static final FaultCode GENERIC = new FaultCode("C1A50", FaultCode.State.CURRENT, null);

    /** One visit of each sort, and visits that are none of them. */
    @Test
    void eachVisitCountsOnce() {
        Rounds r = Rounds.of("van")
                .visit("2025-01-01", Warning.SYSTEM_FAULT, null, Repair.SENSOR_REPLACED, null, List.of("1L"))
                .visit("2025-01-02", Warning.SYSTEM_FAULT, null, Repair.SENSOR_REPLACED, null, List.of())
                .coded("2025-01-03", NAMES)
                .coded("2025-01-04", GENERIC, CLEARED)
                .visit("2025-01-05", Warning.MESSAGE, null, Repair.RELEARN, null, List.of())
                .visit(notTried("2025-01-06"))
                .visit("2025-01-07", Warning.SYSTEM_FAULT, null, Repair.NONE, null, List.of("1L", "1R"))
                .finding(Finding.Kind.READER_HEARD_NOTHING, "2025-01-07")
                .visit("2025-01-08", Warning.LOW_PRESSURE, null, Repair.NONE, null, List.of())
                .clear("2025-01-09")
                .warned("2026-01-02");
        List<NoFaultShare> shares = new WarningVisits().add(r.history(), AS_OF).shares();
        WilsonInterval share = WilsonInterval.of(2, 5, 0.95);
        assertThat(shares)
                .containsExactly(
                        new NoFaultShare("van", 7, 2, 1, 1, 1, 2, 0.4, share.lower(), share.upper()),
                        new NoFaultShare(PeerRates.ALL, 7, 2, 1, 1, 1, 2, 0.4, share.lower(), share.upper()));
    }

    private static VisitSummary notTried(String day) {
        return new VisitSummary(
                LocalDate.parse(day),
                "visit-" + day,
                "tech-1",
                null,
                VisitReason.WARNING,
                Warning.SYSTEM_FAULT,
                null,
                List.of(),
                false,
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
                null);
    }

    @Test
    void partsAddUpAndVehiclesWithoutAClassCountAmongAll() {
        WarningVisits a =
                new WarningVisits().add(Rounds.of("van").warned("2025-01-01").history(), AS_OF);
        WarningVisits b =
                new WarningVisits().add(Rounds.of(null).warned("2025-01-01").history(), AS_OF);
        assertThat(new WarningVisits().merge(b).merge(a)).isEqualTo(a.merge(b));
        assertThat(a.shares()).extracting(NoFaultShare::cohort).containsExactly("van", PeerRates.ALL);
        assertThat(a.shares()).extracting(NoFaultShare::visits).containsExactly(1L, 2L);
        assertThat(new WarningVisits().shares()).isEmpty();
    }

    @Test
    void visitsAtWhichNobodyLookedGiveNoShare() {
        List<NoFaultShare> shares = new WarningVisits()
                .add(Rounds.of("van").visit(notTried("2025-01-06")).history(), AS_OF)
                .shares();
        assertThat(shares.get(0).share()).isNaN();
        assertThat(shares.get(0).notLooked()).isEqualTo(1);
    }
}
