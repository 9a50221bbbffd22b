package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.report.RoundSheet.Task;
import sensorrounds.report.RoundSheet.VehicleTasks;
import sensorrounds.report.RunFacts.RowCounts;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.CohortLife;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.WeakPrior;

/** What each list says; the figures are those of {@link SampleReport}. */
class SectionsTest {
    private final ReportData data = SampleReport.realistic();
    private final Page page = Page.of(data);

    private static List<String> firstCells(Page page, String section) {
        return page.all("//section[@id='" + section + "']//table[1]/tbody/tr/th").stream()
                .map(Element::getTextContent)
                .toList();
    }

    @Test
    void wheelsWithoutWarningStandApartFromTheRanking() {
        assertThat(page.words("unmonitored"))
                .contains("1A2B77F0")
                .contains("plain valve")
                .doesNotContain("EUR");
        assertThat(page.words("replace")).doesNotContain("1A2B77F0");
        assertThat(firstCells(page, "unmonitored"))
                .extracting(s -> s.substring(0, 5))
                .as("known first, then by depot")
                .containsExactly("V-140", "V-112", "V-112", "T-007", "V-105", "V-127");
        assertThat(page.words("unmonitored")).contains("never heard", "Whole vehicle");
        assertThat(page.words("start"))
                .contains("4 wheels on 3 vehicles are known to give no warning")
                .contains("1 more wheel gives probably none")
                .contains("On 1 vehicle the system’s own warning was on");
    }

    @Test
    void aDeclaredPriorIsNamedWithItsShare() {
        assertThat(SurvivalSection.priorPart(SampleCurves.fits())).isEmpty();
        LifetimeSample few = LifetimeSample.of(List.of(
                Lifetime.interval(0, 900, 1000),
                Lifetime.interval(0, 1500, 1700),
                new Lifetime(0, 1200, Lifetime.NEVER, 40)));
        List<CohortFit> fits =
                CohortLadder.withDefaults().with(WeakPrior.declared()).fit(Map.of("van", few)).values().stream()
                        .map(CohortLife::fit)
                        .toList();
        CohortFit.Shares shares = fits.get(0).law().shares();
        assertThat(Page.plain(SurvivalSection.priorPart(fits).orElseThrow()))
                .startsWith("This fleet has 2 failures of sensors of known age")
                .contains(Page.plain(Format.chance(shares.prior()))
                        + " of what is known of the median life comes from the prior")
                .contains(Page.plain(Format.chance(shares.own())) + " from the fleet");
    }

    @Test
    void aCutListSaysHowLongItWas() {
        assertThat(page.words("replace")).contains("The first 64 of 1 412 ranked sensors stand here");
        assertThat(page.words("unmonitored")).doesNotContain("The first");
        assertThatThrownBy(() -> new Listed<>(List.of(1, 2), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 rows cannot be the top of 1");
    }

    @Test
    void aRankedLineShowsTheMoneyBehindIt() {
        String first = page.all("//section[@id='replace']//tbody/tr[1]").get(0).getTextContent();
        assertThat(Page.plain(first))
                .contains(
                        "95 % (67–100 %)",
                        "over the 29 % from which it pays", "now EUR 120", "later EUR 260", "EUR 140", "Replace now");
    }

    @Test
    void rankedRowsCarryWhatTheFiltersNeed() {
        assertThat(page.all("//section[@id='replace']//tbody/tr[@data-depot][@data-advice]"))
                .hasSize(64);
        assertThat(page.all("//section[@id='replace']//tbody/tr[@data-depot='no depot on record']"))
                .hasSize(1);
        assertThat(page.all("//section[@id='replace']//tbody/tr[1]/th[@data-sort='1']"))
                .hasSize(1);
    }

    @Test
    void slowTechniciansAreCountedAndNeverNamed() {
        assertThat(page.words("quality"))
                .contains("Of 2 technicians who share readers with colleagues")
                .contains("one needs more tries than the colleagues with the same readers")
                .contains("one technician alone uses it, so it may be the reader or the way it is held")
                .doesNotContain("technician-3")
                .doesNotContain("technician-7");
    }

    @Test
    void neverCallsARankAVerdictOnSafety() {
        assertThat(page.words("replace")).contains("never “unsafe”");
        assertThat(page.words("cautions")).contains("never a verdict on safety").contains("The placard");
        assertThat(RunSummary.text(data, "r")).contains("never a verdict on safety");
    }

    @Test
    void openFollowUpsComeFirstOldestFirst() {
        assertThat(firstCells(page, "follow-ups"))
                .extracting(s -> s.substring(0, 5))
                .containsExactly("V-118", "V-121", "V-127", "T-019", "V-109");
        // 2026-01-14 to 2026-03-31: 17 days of January, 28 of February, 31 of March.
        assertThat(page.words("follow-ups"))
                .contains("76")
                .contains("overdue")
                .contains("6 of 20")
                .contains("drive long enough, outcome not written down: ask the driver")
                .contains("stayed off on the drive; came back after 107 days");
        assertThat(page.words("start")).contains("For 1 of them the drive was long enough");
    }

    /** The story of V-127 is longer than the 300 characters at which values from logs are cut. */
    @Test
    void aStoryKeepsItsNextStep() {
        assertThat(page.words("recurring"))
                .contains("Next: wake it with another reader.")
                .doesNotContain("characters)");
    }

    @Test
    void theFirstStepsClaimNoMoreThanTheyKnow() {
        assertThat(page.words("start"))
                .contains("yet another relearn or part. Begin with V-127")
                .doesNotContain("Most certain")
                .contains("(812 rows). What to do: State the order of the date in the mapping file of this folder.")
                .doesNotContain("folder..");
    }

    @Test
    void suspectsComeWithTheirChanceReasonsAndNextStep() {
        assertThat(page.words("recurring"))
                .contains(
                        "Axle 2, right, sensor 1A2B88C1",
                        "62 %",
                        "Needed most tries",
                        "Not a sensor",
                        "Next: Read it cold");
        assertThat(page.all("//section[@id='recurring']//article")).hasSize(2);
    }

    @Test
    void comebacksStandByWorkAndWindowWithAllLast() {
        assertThat(firstCells(page, "did-it-hold").stream().limit(4))
                .containsExactly("whole set replaced", "sensor replaced", "relearn alone", "any of these");
        // 44 relearns: 19 back, 11 held, 12 of which the outcome was not seen, 2 cut short.
        assertThat(Page.plain(page.all("//section[@id='did-it-hold']//details[1]//tbody/tr[3]")
                        .get(0)
                        .getTextContent()))
                .startsWith("relearn alone30 days441911122");
        assertThat(page.words("did-it-hold"))
                .contains("44.1 %", "31–59 %", "63.3 %", "40.2 %", "not dealt out by lot")
                .contains("At 35 of 126 visits with a system warning", "27.8 % (21–36 %)")
                .contains("more often with time (p 0.0160)", "too few vehicles warned to tell")
                .doesNotContain("NaN");
    }

    @Test
    void warningsAddUpOnAChartWithItsFigures() {
        assertThat(page.all("//section[@id='did-it-hold']//figure")).hasSize(1);
        // By one year the step of week 52 is in force: .8 x 52 / 52.18.
        assertThat(page.words("did-it-hold")).contains("0.797 (0.654–0.973)");
        assertThat(page.all("//section[@id='did-it-hold']//figure//table/tbody/tr"))
                .hasSize(7);
    }

    @Test
    void rowsMustAddUp() {
        assertThat(page.words("quality"))
                .contains("48 216 rows read = 46 902 accepted + 1 066 refused + 248 duplicates");
        assertThat(new RowCounts(10, 5, 3, 1).unaccounted()).isEqualTo(1);
        assertThat(Page.of(withRows(new RowCounts(10, 5, 3, 1))).words("quality"))
                .contains("This does not add up: 1 row");
        assertThat(page.words("quality")).doesNotContain("does not add up");
    }

    @Test
    void aFailedFitIsShownAsFailed() {
        assertThat(page.words("survival")).contains("not converged", "4 failures, an own fit needs 5", "pooled shape");
        assertThat(page.words("survival")).contains("More than 20 % of the ends are preventive replacements in: truck");
    }

    @Test
    void theCohortsAreComparedInOneSentence() {
        assertThat(page.words("survival"))
                .contains("Do the vehicle classes differ? Yes, by more than chance (p < 0.001; chi-square 15.4 on"
                        + " 2 degrees of freedom); most above what was to be expected is truck, with 58 failures"
                        + " against 41.3.")
                .contains("Do the parts differ? Not tested: a comparison needs two cohorts or more.");
    }

    @Test
    void causesAreToldByAgeAndByCohort() {
        // The law of the sample is last share x (age / 3276)^2: (2192 / 3276)^2 = .448 at six years, of .55 .246.
        assertThat(page.words("survival"))
                .contains("What ends sensors, and by which age", "Replaced before it failed", "25 % (22–27 %)")
                .doesNotContain("Water or sealant got in");
        assertThat(page.all("//section[@id='survival']//table[caption[starts-with(., 'Share ended by each cause, by"
                        + " cohort')]]/tbody/tr"))
                .as("two cohorts, three causes that ended any")
                .hasSize(6);
    }

    @Test
    void ordersAddUpTheMonthsByPartAndDepot() {
        assertThat(StockOrders.of(data.stock(), data.parts()))
                .extracting(o -> o.partId() + " " + o.depot() + " " + o.pieces() + " " + o.cost())
                .containsExactly(
                        "S-433-40 Hillfoot 12 414.0", "S-433-40 Quayside 12 414.0",
                        "S-433-70 Hillfoot 4 164.0", "S-433-70 Quayside 4 164.0");
        assertThat(StockOrders.of(data.stock(), List.of()))
                .allSatisfy(o -> assertThat(o.cost()).isNaN());
    }

    @Test
    void aSheetGathersEveryListByVehicle() {
        List<RoundSheet> sheets = RoundSheet.of(data);
        assertThat(sheets).extracting(RoundSheet::depot).containsExactly("Hillfoot", "Mill Lane", "Quayside", null);
        VehicleTasks vehicle = sheets.get(0).vehicles().stream()
                .filter(v -> v.vehicleId().equals("V-127"))
                .findFirst()
                .orElseThrow();
        assertThat(vehicle.tasks()).extracting(Task::what).contains("Find the returning warning");
        assertThat(vehicle.tasks().get(0).what()).startsWith("Prove the repair of 2026-03-12: drive 20");
    }

    @Test
    void vehiclesWithAWheelWithoutWarningLeadTheSheet() {
        List<RoundSheet> sheets = RoundSheet.of(data);
        assertThat(sheets.get(0).vehicles().get(0).vehicleId()).isEqualTo("V-140");
        assertThat(sheets.get(2).vehicles().get(0).vehicleId()).isEqualTo("V-112");
        assertThat(sheets.get(2).vehicles().get(1).saving()).isPositive();
    }

    @Test
    void keptSensorsAreOnNoSheet() {
        String tasks = RoundSheet.of(data).stream()
                .flatMap(s -> s.vehicles().stream())
                .flatMap(v -> v.tasks().stream())
                .map(Task::what)
                .collect(Collectors.joining("\n"));
        assertThat(tasks).doesNotContain("Keep").contains("Replace the sensor if the vehicle is in anyway");
    }

    private ReportData withRows(RowCounts rows) {
        return withRows(data, rows);
    }

    static ReportData withRows(ReportData d, RowCounts rows) {
        RunFacts r = d.run();
        RunFacts run = new RunFacts(
                r.runId(),
                r.asOf(),
                r.horizonDays(),
                r.costs(),
                r.vehicles(),
                r.sensorsInService(),
                r.firstVisit(),
                r.lastVisit(),
                rows,
                r.files(),
                r.quarantine(),
                r.fileDoubts(),
                r.settings(),
                r.versions());
        return new ReportData(
                run,
                d.fits(),
                d.curves(),
                d.ranked(),
                d.unmonitored(),
                d.recurring(),
                d.watch(),
                d.followUps(),
                d.stock(),
                d.parts(),
                d.readers(),
                d.findings(),
                d.failureCauses(),
                d.nextPlannedVisits(),
                d.depots(),
                d.ratios(),
                d.totals(),
                d.warnings(),
                d.survival(),
                d.decisions(),
                Map.of());
    }
}
