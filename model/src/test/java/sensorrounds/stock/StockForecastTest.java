package sensorrounds.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.Part;
import sensorrounds.history.OriginBasis;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorInService;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.WheelPosition;

class StockForecastTest {
    private static final LocalDate AS_OF = LocalDate.of(2026, 3, 10);
    private static final WeibullLife LAW = new WeibullLife(2.5, 2500, 0.01, 0.004, 0.001);
    private static final Part PART = new Part("P1", "", Part.Kind.SENSOR, 40, 14, 4, 433.92, List.of());
    private static final StockForecast FORECAST =
            new StockForecast(Map.of("P1", PART), new StockSettings(3, 0.95, 30, 7, 1), 90, AS_OF);

    /** Last answered {@code gap} days before the as-of day. */
    private static SensorOutlook outlook(String part, int age, int gap) {
        double[] limits = LAW.failureWithinLimits(age - gap, gap + 90, 1, 0);
        return new SensorOutlook(
                new SensorInService(
                        "V1",
                        "North",
                        "van",
                        WheelPosition.SPARE,
                        null,
                        "A1",
                        "V1/A1/1",
                        part,
                        age,
                        OriginBasis.RECORDED_FITTING,
                        LastReport.SOUND,
                        AS_OF.minusDays(gap)),
                new SensorOutlook.Chances(
                        1,
                        LAW.failureWithin(age - gap, gap, 1),
                        LAW.failureWithin(age - gap, gap + 30, 1),
                        LAW.failureWithin(age - gap, gap + 90, 1),
                        LAW.failureWithin(age - gap, gap + 180, 1),
                        LAW.failureWithin(age - gap, gap + 365, 1),
                        LAW.failureWithin(age - gap, gap + 90, 1),
                        limits[0],
                        limits[1]),
                SensorOutlook.Grounds.ofLaw("van", "own fit"));
    }

    @Test
    void monthsShareOutTheChanceOfFailure() {
        List<DemandUnit> units = FORECAST.demandOf(outlook("P1", 2000, 100), LAW, null);
        assertThat(units)
                .extracting(u -> u.key().month())
                .containsExactly(null, null, YearMonth.of(2026, 3), YearMonth.of(2026, 4), YearMonth.of(2026, 5));
        double alive = LAW.survival(1900);
        // Between the days that an outlook reports its hazard counts as level: hence the tolerance.
        // Cover: 14 days' lead time and 30 to the next ordering. Then what died since the answer, then March from the
        // 11th.
        assertThat(units.get(0).probability()).isCloseTo(1 - LAW.survival(2044) / alive, within(5e-4));
        assertThat(units.get(1).probability()).isCloseTo(1 - LAW.survival(2000) / alive, within(1e-12));
        assertThat(units.get(2).probability())
                .isCloseTo((LAW.survival(2000) - LAW.survival(2021)) / alive, within(5e-4));
        assertThat(units.get(3).probability())
                .isCloseTo((LAW.survival(2021) - LAW.survival(2051)) / alive, within(5e-4));
        assertThat(units.get(4).probability())
                .isCloseTo((LAW.survival(2051) - LAW.survival(2082)) / alive, within(5e-4));
        assertThat(units.get(1).sdLogHazard()).isPositive();
    }

    @Test
    void thePartToFitIsItsOwnElseTheVehiclesElseShownAsUnknown() {
        assertThat(part("P1", "P0")).isEqualTo("P1");
        assertThat(part(null, "P0")).isEqualTo("P0");
        assertThat(part(null, null)).isEqualTo(StockForecast.UNKNOWN_PART);
    }

    private static String part(String own, String original) {
        return FORECAST.demandOf(outlook(own, 2000, 0), LAW, original)
                .get(0)
                .key()
                .partId();
    }

    @Test
    void aSensorWithoutALawHasNoDemand() {
        assertThat(FORECAST.demandOf(outlook("P1", 2000, 0), null, null)).isEmpty();
    }

    @Test
    void rowsAddUpAndTheOrderComesInWholePacks() {
        Map<DemandKey, DemandState> demand = new HashMap<>();
        double march = 0;
        for (int i = 0; i < 300; i++) {
            for (DemandUnit unit : FORECAST.demandOf(outlook("P1", 1000 + 5 * i, 60), LAW, null)) {
                demand.computeIfAbsent(unit.key(), k -> new DemandState()).add(unit.probability(), 0);
                march += YearMonth.of(2026, 3).equals(unit.key().month()) ? unit.probability() : 0;
            }
        }
        List<StockOutlook> rows =
                FORECAST.outlook("P1", "North", demand, 5, FORECAST.coverPieces("P1", "North", demand), 0);
        assertThat(rows)
                .extracting(StockOutlook::month)
                .containsExactly(null, YearMonth.of(2026, 3), YearMonth.of(2026, 4), YearMonth.of(2026, 5));
        assertThat(rows).extracting(StockOutlook::from).startsWith(null, LocalDate.of(2026, 3, 11));
        StockOutlook first = rows.get(0);
        StockOutlook second = rows.get(1);
        assertThat(first.alreadyFailed()).isTrue();
        assertThat(second.expected()).isCloseTo(march, within(0.001 * march));
        assertThat(second.sensors()).isEqualTo(300);
        assertThat(second.planned()).isZero();
        assertThat(second.lower()).isLessThan((int) march);
        assertThat(second.serviceLevelPieces()).isEqualTo(second.upper()).isGreaterThan((int) march);
        assertThat(first.onHand()).isEqualTo(5);
        int need = demand.get(DemandKey.of("P1", "North", DemandKey.Stretch.COVER))
                .finish()
                .quantile(0.95);
        assertThat(first.proposedOrder() % 4).isZero();
        assertThat(first.proposedOrder() + 5).isBetween(need, need + 3);
        assertThat(rows.get(1).proposedOrder()).isNull();
        assertThat(rows.get(1).onHand()).isNull();
        assertThat(FORECAST.outlook("P1", "North", demand, 10_000, FORECAST.coverPieces("P1", "North", demand), 0)
                        .get(0)
                        .proposedOrder())
                .isZero();
        assertThat(FORECAST.outlook("P1", "North", demand, null, FORECAST.coverPieces("P1", "North", demand), 0)
                        .get(0)
                        .proposedOrder())
                .isNull();
    }

    /** Cover: 14 days' lead time and 30 to the next ordering, so up to 2026-04-23. */
    @Test
    void aPlannedSensorIsOnePieceOnItsDay() {
        Map<DemandKey, DemandState> demand = new HashMap<>();
        for (LocalDate day : List.of(AS_OF, AS_OF.plusDays(44), AS_OF.plusDays(45), LocalDate.of(2026, 6, 1))) {
            for (DemandUnit unit : FORECAST.plannedPiece("P1", null, "North", day)) {
                demand.computeIfAbsent(unit.key(), k -> new DemandState()).add(unit);
            }
        }
        List<StockOutlook> rows =
                FORECAST.outlook("P1", "North", demand, 0, FORECAST.coverPieces("P1", "North", demand), 0);
        assertThat(rows).extracting(StockOutlook::planned).containsExactly(0, 1, 2, 0);
        assertThat(rows).extracting(StockOutlook::lower).containsExactly(0, 1, 2, 0);
        assertThat(rows).extracting(StockOutlook::upper).containsExactly(0, 1, 2, 0);
        assertThat(rows.get(0).proposedOrder())
                .as("two pieces in packs of four")
                .isEqualTo(4);
        assertThat(FORECAST.outlook("P1", "North", demand, 2, FORECAST.coverPieces("P1", "North", demand), 0)
                        .get(0)
                        .proposedOrder())
                .isZero();
    }

    @Test
    void onTheLastDayOfAMonthTheNextOneIsTheFirst() {
        StockForecast atMonthsEnd =
                new StockForecast(Map.of(), new StockSettings(2, 0.95, 30, 7, 1), 90, LocalDate.of(2026, 3, 31));
        assertThat(atMonthsEnd.outlook("P1", null, Map.of(), 0, 0, 0))
                .extracting(StockOutlook::month)
                .containsExactly(null, YearMonth.of(2026, 4), YearMonth.of(2026, 5));
    }

    @Test
    void noSensorsNoDemand() {
        StockOutlook row = FORECAST.outlook("P9", null, Map.of(), 0, 0, 0).get(0);
        assertThat(row.expected()).isZero();
        assertThat(row.upper()).isZero();
        assertThat(row.proposedOrder()).isZero();
        assertThat(row.sensors()).isZero();
    }

    @Test
    void refusesSettingsThatMakeNoSense() {
        assertThatThrownBy(() -> new StockSettings(6, 95, 30, 7, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("service level 95.0")
                .hasMessageContaining("such as 0.95");
    }
}
