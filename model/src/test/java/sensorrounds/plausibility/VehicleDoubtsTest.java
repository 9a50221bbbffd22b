package sensorrounds.plausibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelWork;

/** Each doubt with a log that raises it and one that must not. The bounds are common practice, no source. */
class VehicleDoubtsTest {
    private static Log.Draft draft() {
        return new Log().visit("V1", "2025-03-04T09:05");
    }

    private static void assertOne(List<Doubt> doubts, Doubt.Kind kind, String what) {
        assertThat(doubts).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(kind);
            assertThat(d.what()).contains(what);
        });
    }

    @Test
    void anOrdinaryLogRaisesNoDoubt() {
        assertThat(new Log()
                        .ordinary("V1", "2025-03-04T09:05", 50_000)
                        .ordinary("V2", "2025-09-04T09:05", 61_000)
                        .ordinary("V3", "2026-03-04T09:05", 72_000)
                        .doubts())
                .isEmpty();
    }

    /** 35 psi is 241 kPa (NIST SP 811, appendix B.8), 2.4 bar is 240 kPa; 240 + 101 = 341 kPa absolute. */
    @ParameterizedTest
    @CsvSource({
        "35, PRESSURE_UNIT, psi",
        "33, PRESSURE_UNIT, psi",
        "2.4, PRESSURE_UNIT, bar",
        "341, PRESSURE_ABSOLUTE, air",
        "330, PRESSURE_ABSOLUTE, air",
        "420, PRESSURE_UNLIKELY, 240",
    })
    void pressuresAreHeldAgainstThePlacard(double kpa, Doubt.Kind kind, String what) {
        assertOne(draft().wheel("1L", "0A1B2C01", kpa, 20.0).close().doubts(), kind, what);
    }

    /** 240 kPa filled at 20 °C read 298 kPa at 70 °C and 189 kPa at −25 °C (gas law): weather, no slip. */
    @ParameterizedTest
    @CsvSource({"298, 70", "189, -25", "175, 20", "60, 20", "265, 20"})
    void warmthColdAndLossAreNoSlips(double kpa, double celsius) {
        Log.Draft draft = draft();
        draft.air = Math.min(45, celsius - 10);
        assertThat(draft.wheel("1L", "0A1B2C01", kpa, celsius).close().doubts()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "860, 850, ",
        "920, 850, ",
        "951, 850, PRESSURE_ABSOLUTE",
        "123.3, 850, PRESSURE_UNIT",
        "500, 850, PRESSURE_UNLIKELY"
    })
    void aTruckNeedsTheHandGaugeToTellAbsolutePressure(double kpa, double gauge, Doubt.Kind kind) {
        Log.Draft draft = draft();
        draft.placard = new TreeMap<>(java.util.Map.of(1, 850.0));
        List<Doubt> doubts = draft.wheel("1L", "0A1B2C01", ReadOutcome.OK, kpa, gauge, 20.0, null, null, null)
                .close()
                .doubts();

        assertThat(doubts).extracting(Doubt::kind).isEqualTo(kind == null ? List.of() : List.of(kind));
    }

    @Test
    void aPlacardIsInItsRangeAndDoesNotChange() {
        Log.Draft psi = draft();
        psi.placard = new TreeMap<>(java.util.Map.of(1, 35.0));
        assertOne(psi.wheel("1L", "0A1B2C01", 34, 20.0).close().doubts(), Doubt.Kind.PLACARD_UNLIKELY, "35.00 kPa");

        Log log = new Log();
        for (String day : List.of("2025-01-10", "2025-02-10", "2025-03-10")) {
            log.ordinary("V" + day, day + "T08:00", 50_000);
        }
        Log.Draft odd = log.visit("V9", "2025-04-10T08:00");
        odd.placard = new TreeMap<>(java.util.Map.of(1, 420.0));
        assertOne(
                odd.wheel("1L", "0A1B2C01", 410, 20.0).close().doubts(),
                Doubt.Kind.PLACARD_UNLIKELY,
                "420 kPa on axle 1, 240 kPa at most other visits");
    }

    private static Log.Draft fourWheels(double first, double air) {
        Log.Draft draft = draft();
        draft.air = air;
        return draft.wheel("1L", "0A1B2C01", 232, first)
                .wheel("1R", "7F3D9922", 235, 19.0)
                .wheel("2L", "5534AE17", 251, 18.0)
                .wheel("2R", "C09B1D5E", 249, 20.0);
    }

    /** −40 is the same in both units and a common code for no value; 66 °F are 19 °C. */
    @ParameterizedTest
    @CsvSource({"-40, 1", "0, 1", "66, 1", "30, 0", "8, 0"})
    void aTemperatureIsHeldAgainstTheOtherWheels(double celsius, int doubts) {
        assertThat(fourWheels(celsius, 15).close().doubts())
                .hasSize(doubts)
                .allSatisfy(d -> assertThat(d.kind()).isEqualTo(Doubt.Kind.TEMPERATURE_UNLIKELY));
    }

    @Test
    void airHotterThanAnyEverMeasuredIsDoubted() {
        assertOne(fourWheels(19, 66).close().doubts(), Doubt.Kind.TEMPERATURE_UNLIKELY, "66 °C");
    }

    @Test
    void aTemperatureAloneIsHeldAgainstTheAir() {
        assertOne(
                draft().wheel("1L", "0A1B2C01", 232, -40.0).close().doubts(),
                Doubt.Kind.TEMPERATURE_UNLIKELY,
                "-40 °C in air of 15 °C");
    }

    private static List<Doubt> odometers(double... km) {
        Log log = new Log();
        for (int i = 0; i < km.length; i++) {
            log.ordinary("V" + i, LocalDate.of(2024, 1, 10).plusMonths(4L * i) + "T08:00", km[i]);
        }
        return log.doubts();
    }

    @Test
    void anOdometerGoesForward() {
        assertThat(odometers(50_000, 57_000, 64_000)).isEmpty();
        assertOne(
                odometers(50_000, 35_400, 64_000),
                Doubt.Kind.ODOMETER_BACK,
                "35400 km after 50000 km on 2024-01-10: miles taken for kilometres would explain it");
        assertThat(odometers(50_000, 570_000, 64_000))
                .extracting(Doubt::kind)
                .containsExactly(Doubt.Kind.ODOMETER_JUMP, Doubt.Kind.ODOMETER_BACK);
        assertThat(odometers(50_000, 570_000, 64_000).get(0).what()).endsWith("a digit too many would explain it");
        assertOne(odometers(50_000, 57_000, 640_000), Doubt.Kind.ODOMETER_JUMP, "583000 km more");
    }

    @Test
    void oneVisitUnderTwoKeysIsSeenByItsMinuteOrItsFigures() {
        assertOne(
                new Log()
                        .ordinary("V1", "2025-03-04T09:05", 50_000)
                        .ordinary("V2", "2025-03-04T09:05", 50_000)
                        .doubts(),
                Doubt.Kind.VISIT_TWICE,
                "V1 and V2 have the same minute");
        assertOne(
                new Log()
                        .ordinary("V1", "2025-03-04T00:00", 50_000)
                        .ordinary("V2", "2025-03-04T00:00", 50_000)
                        .doubts(),
                Doubt.Kind.VISIT_TWICE,
                "wheels in every figure");
        // A second visit of the day with a date only, and other figures.
        assertThat(new Log()
                        .ordinary("V1", "2025-03-04T00:00", 50_000)
                        .visit("V2", "2025-03-04T00:00")
                        .wheel("1L", "0A1B2C01", 241, 20.0)
                        .wheel("1R", "7F3D9922", 240, 20.0)
                        .close()
                        .doubts())
                .isEmpty();
    }

    @Test
    void rowsOfOneVisitMustAgreeAboutIt() {
        Log.Draft draft = draft();
        draft.km = 50_000.0;
        assertOne(
                draft.wheel("1L", "0A1B2C01", 232, 18.0)
                        .wheel("1R", "7F3D9922", 235, 19.0)
                        .closeWithOtherFirstRow(51_000)
                        .doubts(),
                Doubt.Kind.VISIT_FIELDS_DIFFER,
                "1 of 2 rows");
    }

    @Test
    void nothingIsOlderThanItself() {
        Log.Draft draft = draft();
        draft.warningSince = LocalDate.of(2025, 3, 5);
        assertOne(draft.wheel("1L", "0A1B2C01", 232, 18.0).close().doubts(), Doubt.Kind.DATE_AFTER_VISIT, "2025-03-05");
        assertOne(
                draft().wheel("1L", "0A1B2C01", ReadOutcome.OK, null, null, null, null, null, LocalDate.of(2091, 1, 1))
                        .close()
                        .doubts(),
                Doubt.Kind.DATE_AFTER_VISIT,
                "2091-01-01");
    }

    @Test
    void anAnswerAndItsValuesGoTogether() {
        assertOne(
                draft().wheel("1L", "0A1B2C01", ReadOutcome.NO_ANSWER, 232.0, null, null, null, null, null)
                        .close()
                        .doubts(),
                Doubt.Kind.READ_CONTRADICTED,
                "pressure");
        assertOne(
                draft().wheel("1L", "0A1B2C01", ReadOutcome.OK, 232.0, null, null, WheelWork.NONE, "0A1B2C09", null)
                        .close()
                        .doubts(),
                Doubt.Kind.WORK_CONTRADICTED,
                "new sensor");
    }

    @Test
    void aPlateMayChangeWhileTheVinStaysAndIsNeverShown() {
        Log log = new Log();
        for (int i = 0; i < 3; i++) {
            Log.Draft draft = log.visit("V" + i, "2025-0" + (i + 1) + "-04T09:05");
            draft.vin = "1M8GDM9AXKP042788";
            draft.plate = i == 0 ? "ZZ 17 ABC" : i == 1 ? "zz17-abc" : "YY99 QQQ";
            draft.wheel("1L", "0A1B2C01", 232, 18.0).close();
        }

        assertOne(log.doubts(), Doubt.Kind.PLATE_CHANGED, "the VIN stays the same");
        assertThat(log.doubts().get(0).toString()).doesNotContain("QQQ", "ABC", "1M8G");
    }

    @Test
    void aVinThatIsAnotherOneAtOneVisitIsASlip() {
        Log log = new Log();
        for (int i = 0; i < 3; i++) {
            Log.Draft draft = log.visit("V" + i, "2025-0" + (i + 1) + "-04T09:05");
            draft.vin = i == 1 ? "1M8GDM9AXKP042789" : "1M8GDM9AXKP042788";
            draft.wheel("1L", "0A1B2C01", 232, 18.0).close();
        }

        assertOne(log.doubts(), Doubt.Kind.VIN_CHANGED, "a slip at this one");
    }

    private static List<Doubt> ids(String... atOnePlace) {
        Log log = new Log();
        for (int i = 0; i < atOnePlace.length; i++) {
            log.visit("V" + i, LocalDate.of(2024, 1, 10).plusMonths(4L * i) + "T08:00")
                    .wheel("1L", atOnePlace[i], 232, 18.0)
                    .close();
        }
        return log.doubts();
    }

    @ParameterizedTest
    @CsvSource({
        "0A1B2C08, 0A182C08, 'B for 8|8 written for B, which look alike'",
        "0A1B2C08, 0A1B2C03, 'one digit differs|3 written for 8, which look alike'",
        "0A1B2C08, 0A1B2A08, 'one digit differs, A for C'",
        "0A1B2C08, 0AB12C08, 'two digits exchanged'",
        "01234567, 1234567, 'leading zeros lost, as in a spreadsheet'",
        "7A1B2C08, A1B2C08, 'the first digit left out'",
        "7A1B2C08, 7A12C08, 'a digit left out'",
    })
    void anIdOneSlipAwayIsReportedWithTheIdItStandsFor(String right, String wrong, String slips) {
        List<Doubt> doubts = ids(right, wrong, right);

        assertThat(doubts).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(Doubt.Kind.SENSOR_ID_NEAR);
            assertThat(d.sensorId()).isEqualTo(wrong);
            assertThat(d.what()).contains(right + " at 2 others").containsPattern(slips.replace(", ", ",? "));
        });
    }

    @Test
    void theLastOfTwoIsSuspectedWhenEachIsSeenOnce() {
        assertOne(ids("0A1B2C08", "0A1B2C0B"), Doubt.Kind.SENSOR_ID_NEAR, "sensor 0A1B2C0B is seen at this visit only");
    }

    @Test
    void neighbouringIdsOfOneBoxAreNoSlips() {
        // Replaced by the next one of the box, which is read ever after.
        assertThat(ids("0A1B2C08", "0A1B2C08", "0A1B2C09", "0A1B2C09")).isEmpty();
        // Side by side at one visit.
        assertThat(new Log()
                        .visit("V1", "2025-01-04T09:05")
                        .wheel("1L", "0A1B2C08", 232, 18.0)
                        .wheel("1R", "0A1B2C09", 232, 18.0)
                        .close()
                        .visit("V2", "2025-05-04T09:05")
                        .wheel("1L", "0A1B2C09", 232, 18.0)
                        .wheel("1R", "0A1B2C08", 232, 18.0)
                        .close()
                        .doubts())
                .isEmpty();
        assertThat(ids("0A1B2C08", "55555555")).isEmpty();
    }

    @Test
    void oneIdAtTwoPlacesOfAVisit() {
        assertOne(
                draft().wheel("1L", "0A1B2C01", 232, 18.0)
                        .wheel("1R", "0A1B2C01", 232, 18.0)
                        .close()
                        .doubts(),
                Doubt.Kind.SENSOR_AT_TWO_PLACES,
                "at 1L and at 1R");
    }

    @Test
    void aDoubtNamesARow() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Doubt(
                        Doubt.Kind.VISIT_TWICE, "K7", null, null, null, LocalDate.of(2025, 3, 4), "twice", List.of()));
    }
}
