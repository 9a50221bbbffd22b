package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.ReportRatios.Ratio;
import sensorrounds.survival.WeibullLife;

class OutlooksTest {
    private static final WeibullLife LAW = new WeibullLife(2.5, 2500, 0.01, 0.004, 0.001);
    private static final LifeLaws LAWS =
            (vehicleClass, part) -> Optional.of(new LifeLaws.Law(vehicleClass + "/" + part, "own fit", LAW));
    private static final OutlookSettings SETTINGS = OutlookSettings.defaults();
    private static final ReportRatios PRIOR = ReportRatios.fit(new ReportCells(), SETTINGS);
    private static final BiFunction<SensorLife, LocalDate, LastReport> SOUND = (life, day) -> LastReport.SOUND;

    private static SensorOutlook only(VehicleHistory history, LastReport report, LocalDate asOf) {
        List<SensorOutlook> all = Outlooks.of(history, LAWS, PRIOR, (life, day) -> report, SETTINGS, asOf);
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    @Test
    void ratioOneSeenTodayIsThePlainWeibull() {
        SensorOutlook o = only(Lives.history(null, new Lives("A1").ok(400, 1000)), LastReport.SOUND, Lives.day(1000));
        assertThat(o.chances().p30()).isEqualTo(1 - LAW.survival(1030) / LAW.survival(1000), within(1e-14));
        assertThat(o.chances().p90()).isEqualTo(1 - LAW.survival(1090) / LAW.survival(1000), within(1e-14));
        assertThat(o.chances().p180()).isEqualTo(1 - LAW.survival(1180) / LAW.survival(1000), within(1e-14));
        assertThat(o.chances().p365()).isEqualTo(1 - LAW.survival(1365) / LAW.survival(1000), within(1e-14));
        assertThat(o.chances().pHorizon()).isEqualTo(o.chances().p90());
        assertThat(o.chances().pHorizonLower())
                .isPositive()
                .isLessThan(o.chances().pHorizon());
        assertThat(o.chances().pHorizonUpper()).isGreaterThan(o.chances().pHorizon());
        assertThat(o.sensor().ageDays()).isEqualTo(1000);
        assertThat(o.grounds().cohort()).isEqualTo("van/P1");
        assertThat(o.sensor().lastReadOn()).isEqualTo(Lives.day(1000));
    }

    @Test
    void whatWasLastSeenLongAgoMayHaveDiedSince() {
        SensorOutlook o = only(Lives.history(null, new Lives("A1").ok(1000)), LastReport.SOUND, Lives.day(1200));
        assertThat(o.chances().p90()).isEqualTo(1 - LAW.survival(1290) / LAW.survival(1000), within(1e-14));
        // Taking it as alive on the as-of day would be a third of it.
        assertThat(o.chances().p90()).isGreaterThan(3 * LAW.failureWithin(1200, 90, 1) - 0.02);
        assertThat(o.sensor().ageDays()).isEqualTo(1200);
    }

    @Test
    void theLastReportMultipliesTheHazardFromTheLastAnswerUntilAboutTheNextVisit() {
        SensorOutlook o = only(
                Lives.history(null, new Lives("A1").ok(1000).silent(1100)), LastReport.SILENT_ONCE, Lives.day(1110));
        // Without visits to tell, a window is half a year, and what speaks against a sensor holds for two.
        assertThat(1 - o.chances().p90())
                .isEqualTo(Math.pow(LAW.survival(1200) / LAW.survival(1000), 8), within(1e-14));
        assertThat(1 - o.chances().p365())
                .isEqualTo(
                        Math.pow(LAW.survival(1364) / LAW.survival(1000), 8) * LAW.survival(1475) / LAW.survival(1364),
                        within(1e-14));
        assertThat(o.chances().failureRatio()).isEqualTo(8);
        assertThat(o.sensor().lastReadOn()).isEqualTo(Lives.day(1100));
    }

    @Test
    void aSensorNeverReadWorkedWhenItWasFitted() {
        SensorOutlook o = only(Lives.history(null, new Lives("A1")), null, Lives.day(100));
        assertThat(o.chances().p90()).isEqualTo(1 - LAW.survival(190), within(1e-14));
        assertThat(o.sensor().lastReport()).isEqualTo(LastReport.SOUND);
        assertThat(o.sensor().lastReadOn()).isEqualTo(Lives.FITTED);
    }

    /**
     * Cox (1962), Renewal Theory, ch. 5: the residual life of a unit met at random has distribution function integral of S
     * over 0..d by the mean. For a Weibull law of shape 1 that is again exponential; for shape 2 it is erf(d/scale).
     */
    @Test
    void unknownAgeIsTheAgeOfASensorMetAtRandom() {
        Ratio one = PRIOR.of(LastReport.SOUND);
        UnknownAge level = new UnknownAge(fitted(new WeibullLife(1, 1000, 0, 0, 0)), 0, Double.POSITIVE_INFINITY);
        assertThat(level.failureWithin(90, one)).isCloseTo(-Math.expm1(-0.09), within(1e-12));
        UnknownAge rayleigh = new UnknownAge(fitted(new WeibullLife(2, 1000, 0, 0, 0)), 0, Double.POSITIVE_INFINITY);
        // erf(0.2) = 0.2227025892 (Abramowitz and Stegun, table 7.1); erf(1) = 0.8427007929.
        assertThat(rayleigh.failureWithin(200, one)).isCloseTo(0.2227025892, within(1e-4));
        assertThat(rayleigh.failureWithin(1000, one)).isCloseTo(0.8427007929, within(1e-4));
    }

    /** On a vehicle many lives old the finite renewal law has reached its limit, the erf above; a young one has its first. */
    @Test
    void onAVehicleOfKnownAgeMostSensorsAreStillItsFirst() {
        Ratio one = PRIOR.of(LastReport.SOUND);
        LifeLaws.Law law = fitted(new WeibullLife(2, 1000, 0, 0, 0));
        assertThat(new UnknownAge(law, 0, 12_000).failureWithin(1000, one)).isCloseTo(0.8427007929, within(2e-3));
        assertThat(new UnknownAge(law, 0, 100).failureWithin(50, one))
                .isCloseTo(law.life().failureWithin(100, 50, 1), within(2e-4));
        // No ageing, no difference: an exponential life has no memory, whatever the vehicle's age.
        assertThat(new UnknownAge(fitted(new WeibullLife(1, 1000, 0, 0, 0)), 0, 1500).failureWithin(90, one))
                .isCloseTo(-Math.expm1(-0.09), within(1e-12));
        // Steep wear-out at half its typical age: nearly all are originals, and young ones are no likelier.
        LifeLaws.Law steep = fitted(new WeibullLife(6, 3000, 0, 0, 0));
        assertThat(new UnknownAge(steep, 0, 1500).failureWithin(365, one))
                .isCloseTo(steep.life().failureWithin(1500, 365, 1), withinPercentage(3));
    }

    /** Where the original and a later sensor are equally likely, a factor of 3 makes it three to one. */
    @Test
    void aPartThatSpeaksForTheFirstSensorMovesTheAge() {
        LifeLaws.Law law = fitted(new WeibullLife(2, 1000, 0, 0, 0));
        double plain = original(new UnknownAge(law, 0, 900, Double.POSITIVE_INFINITY, 1));
        double spoken = original(new UnknownAge(law, 0, 900, Double.POSITIVE_INFINITY, 3));
        assertThat(plain).isBetween(0.3, 0.7);
        assertThat(spoken / (1 - spoken)).isCloseTo(3 * plain / (1 - plain), within(1e-9));
        assertThat(original(new UnknownAge(law, 0, 900, Double.POSITIVE_INFINITY, 0)))
                .isZero();
    }

    private static double original(UnknownAge age) {
        return age.shares(4).stream()
                .filter(s -> s.ageDays() == 900)
                .mapToDouble(UnknownAge.Share::weight)
                .sum();
    }

    private static LifeLaws.Law fitted(WeibullLife law) {
        return new LifeLaws.Law("van", "own fit", law);
    }

    @Test
    void unknownAgeStaysWithinWhatTheRecordAllowsAndIsWide() {
        Lives seen = new Lives("A1").unknownOrigin().ok(1000, 1500);
        SensorOutlook o = only(Lives.history(Lives.day(-500), seen), LastReport.SOUND, Lives.day(1500));
        // Seen working for 500 days, on a vehicle 2,000 days old.
        assertThat(o.sensor().ageDays()).isNull();
        assertThat(o.chances().pHorizon()).isBetween(LAW.failureWithin(500, 90, 1), LAW.failureWithin(2000, 90, 1));
        SensorOutlook known = only(Lives.history(null, new Lives("A2").ok(1000)), LastReport.SOUND, Lives.day(1000));
        assertThat(o.chances().pHorizonUpper() / o.chances().pHorizonLower())
                .isGreaterThan(
                        2 * known.chances().pHorizonUpper() / known.chances().pHorizonLower());
        SensorOutlook exact = only(Lives.history(Lives.day(1000), seen), LastReport.SOUND, Lives.day(1500));
        assertThat(exact.chances().pHorizon()).isCloseTo(LAW.failureWithin(500, 90, 1), within(1e-12));
    }

    @Test
    void withoutALawASensorIsListedWithoutFigures() {
        SensorOutlook o = Outlooks.of(
                        Lives.history(null, new Lives("A1").ok(1000)),
                        (vehicleClass, part) -> Optional.empty(),
                        PRIOR,
                        SOUND,
                        SETTINGS,
                        Lives.day(1000))
                .get(0);
        assertThat(o.chances().pHorizon()).isNaN();
        assertThat(o.chances().pHorizonUpper()).isNaN();
        assertThat(o.grounds().cohort()).isNull();
        assertThatThrownBy(() -> new SurvivalAhead(o, LAW, 90)).hasMessageContaining("V1/A1/1 has no probability");
    }

    @Test
    void deadSensorsHaveNoOutlookAndTheFutureIsRefused() {
        VehicleHistory failed = Lives.history(null, new Lives("A1").ok(100).failed(200));
        assertThat(Outlooks.of(failed, LAWS, PRIOR, SOUND, SETTINGS, Lives.day(300)))
                .isEmpty();
        VehicleHistory ahead = Lives.history(null, new Lives("A1").ok(100));
        assertThatThrownBy(() -> Outlooks.of(ahead, LAWS, PRIOR, SOUND, SETTINGS, Lives.day(99)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("after the as-of day 2020-04-09");
    }

    @Test
    void survivalAheadGivesTheOutlooksOwnFiguresBack() {
        for (LastReport report : LastReport.values()) {
            Lives known = new Lives("A1").ok(1000).silent(1100);
            Lives unknown = new Lives("A2").unknownOrigin().ok(1000);
            for (Lives life : new Lives[] {known, unknown}) {
                SensorOutlook o = only(Lives.history(null, life), report, Lives.day(1110));
                SurvivalAhead ahead = new SurvivalAhead(o, LAW, 90);
                assertThat(ahead.failureBy(30)).isCloseTo(o.chances().p30(), within(1e-12));
                assertThat(ahead.failureBy(90)).isCloseTo(o.chances().p90(), within(1e-12));
                assertThat(ahead.failureBy(180)).isCloseTo(o.chances().p180(), within(1e-12));
                assertThat(ahead.failureBy(365)).isCloseTo(o.chances().p365(), within(1e-12));
                assertThat(ahead.failureBy(0)).isBetween(0.0, o.chances().p30());
                assertThat(ahead.failureBy(60))
                        .isBetween(o.chances().p30(), o.chances().p90());
                assertThat(ahead.failureBy(500)).isBetween(o.chances().p365(), 1.0);
            }
        }
    }

    @Test
    void theSharedUncertaintyIsTheOneBehindTheLimits() {
        WeibullLife scaleOnly = new WeibullLife(2, 2500, 0, 0.01, 0);
        LifeLaws laws = (vehicleClass, part) -> Optional.of(new LifeLaws.Law("van", "own fit", scaleOnly));
        VehicleHistory history = Lives.history(
                null, new Lives("A1").ok(1000), new Lives("A2").unknownOrigin().ok(1000));
        List<SensorOutlook> both = Outlooks.of(history, laws, PRIOR, SOUND, SETTINGS, Lives.day(1000));
        // d log H / d log scale = -shape: sd = 2 x .1, and the ratio's own variance beside it for the known age.
        double ratio = PRIOR.of(LastReport.SOUND).varLogRatio();
        assertThat(new SurvivalAhead(both.get(0), scaleOnly, 90).sdLogHazard())
                .isCloseTo(Math.sqrt(0.04 + ratio), within(1e-9));
        assertThat(new SurvivalAhead(both.get(1), scaleOnly, 90).sdLogHazard()).isCloseTo(0.2, within(1e-9));
    }
}
