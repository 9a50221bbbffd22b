package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.proposal.LayoutProposal;
import sensorrounds.proposal.LayoutProposer;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.BatteryReport.Kind;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.VisitHeader;

/** Traps of the trade, one small file each; docs/traps.md lists all of them with their fixture and test. */
class TradeTrapsTest {
    private static final Path ROOT = Fixtures.repositoryRoot();
    private static final Path PROPOSALS = ROOT.resolve("jobs/src/test/resources/fixtures/proposals");

    private static List<LogRow> read(String file) {
        return Fixtures.read(Fixtures.TRAPS.resolve(file));
    }

    private static FileCount count(List<LogRow> rows) {
        return rows.get(rows.size() - 1).file();
    }

    private static LayoutProposal propose(String file) {
        SampleReader.Cut cut = new SampleReader(Fixtures.HADOOP)
                .read(List.of(PROPOSALS.resolve(file).toString()));
        return LayoutProposer.propose(cut.sample(), null);
    }

    /** Common practice, no source: the nearside is the kerb's side. */
    @Test
    void nearsideAndOffsideDependOnTheSideOfTheRoad() {
        Path folder = Fixtures.TRAPS.resolve("sides");
        List<LogRow> rows = Fixtures.read(folder, folder.resolve("visit-logs"));

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().position().code())
                .containsExactly("1L", "2RI", "1R", "2LI");
        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().positionRaw())
                .containsExactly("NSF", "OSRI", "NSF", "OSRI");
    }

    /** Common practice, no source: AD is anteriore destro, avant droit or arrière droit. */
    @Test
    void aWordThatTwoLanguagesClaimIsLeftToTheUser() {
        assertThat(propose("two-languages.csv").words().get("position")).containsEntry("AD", LayoutProposal.GAP);
    }

    @Test
    void anOrderOfDayAndMonthThatNoDateProvesIsLeftToTheUser() {
        assertThat(propose("day-or-month.csv").entries()).containsEntry("dateFormat", LayoutProposal.GAP);
    }

    /** Common practice, no source: RL is rear left, or right-hand rear as LR is left-hand rear. */
    @Test
    void wordsThatClaimOnePlaceInOneVisitAreLeftToTheUser() {
        assertThat(propose("colliding-words.csv").words().get("position"))
                .containsEntry("LR", LayoutProposal.GAP)
                .containsEntry("RL", LayoutProposal.GAP)
                .containsEntry("LF", "1L");
    }

    /** Common practice, no source: 1 to 4 go clockwise in one shop and axle by axle in the next. */
    @Test
    void figuresForPlacesAreLeftToTheUser() {
        assertThat(propose("figures-for-places.csv").words().get("position").values())
                .hasSize(4)
                .containsOnly(LayoutProposal.GAP);
    }

    @Test
    void fiftyDegreesAreLegalInBothUnitsAndLeftToTheUser() {
        assertThat(propose("fifty-degrees.csv").constants()).containsEntry("temperatureUnit", LayoutProposal.GAP);
    }

    @Test
    void theDayOfTheJobIsNotTheDayOfTheUpload() {
        LayoutProposal proposal = propose("uploaded-later.csv");

        assertThat(proposal.columns().get("Job date")).isEqualTo("visitedAt");
        assertThat(proposal.columns().get("Uploaded")).isNotEqualTo("visitedAt");
    }

    /** NIST SP 811 (2008), appendix B.8: 1 psi = 6.894757 kPa, 1 mile = 1.609344 km; 50 °F = 10 °C. */
    @Test
    void oneValueInThreeUnitsIsOneValue() {
        List<LogRow> rows = read("units.csv");
        List<LoggedWheel> wheels = Fixtures.accepted(rows);

        assertThat(wheels).hasSize(3).allSatisfy(w -> {
            assertThat(w.wheel().pressureKpa()).isCloseTo(35 * 6.894757, within(1e-3));
            assertThat(w.visit().odometerKm()).isCloseTo(1609.344, within(1e-9));
        });
        assertThat(wheels.get(0).wheel().temperatureCelsius()).isEqualTo(50);
        assertThat(wheels.get(1).wheel().temperatureCelsius()).isCloseTo(10, within(1e-9));
        assertThat(count(rows).notes())
                .containsEntry(Note.PRESSURE_PSI, 1L)
                .containsEntry(Note.PRESSURE_BAR, 1L)
                .containsEntry(Note.TEMPERATURE_FAHRENHEIT, 1L)
                .containsEntry(Note.DISTANCE_MILES, 1L);
    }

    @Test
    void theSensorsPressureAndTheHandGaugesAreKeptApartWithWarmth() {
        List<LoggedWheel> wheels = Fixtures.accepted(read("tool-and-gauge.csv"));

        assertThat(wheels.get(0).wheel().pressureKpa()).isEqualTo(268);
        assertThat(wheels.get(0).wheel().gaugePressureKpa()).isEqualTo(260);
        assertThat(wheels.get(0).wheel().hot()).isTrue();
        assertThat(wheels.get(1).wheel().pressureKpa()).isNull();
        assertThat(wheels.get(1).wheel().gaugePressureKpa()).isEqualTo(238);
        assertThat(wheels.get(1).wheel().hot()).isNull();
    }

    @Test
    void aBatteryReportKeepsItsKindAndABareFigureIsRefused() {
        List<LogRow> rows = read("battery-kinds.csv");

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().battery())
                .containsExactly(
                        BatteryReport.LOW,
                        new BatteryReport(Kind.PERCENT, 35),
                        new BatteryReport(Kind.VOLTS, 2.9),
                        new BatteryReport(Kind.MONTHS, 14));
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rule).containsExactly(RejectionRule.BAD_BATTERY);
    }

    @Test
    void replacedNeedsToSayWhatAndAnAttemptIsNoSuccess() {
        List<LogRow> rows = read("replaced-of-what.csv");

        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rawValue).containsExactly("replaced");
        assertThat(Fixtures.rejected(rows).get(0).expected())
                .contains("sensor-replaced")
                .contains("kit-renewed");
        assertThat(Fixtures.accepted(rows))
                .allSatisfy(r -> assertThat(r.visit().relearnResult()).isEqualTo(RelearnResult.ATTEMPTED));
        assertThat(count(rows).notes()).containsEntry(Note.REPLACED_WITHOUT_NEW_ID, 1L);
    }

    /** Code as in SAE J2012 / ISO 15031-6; SPN and FMI of SAE J1939-73 are another form, which is refused. */
    @Test
    void clearedCodesAreKeptBesideTheTestDriveThatMustProveTheCure() {
        List<LogRow> rows = read("codes-cleared.csv");

        VisitHeader visit = Fixtures.accepted(rows).get(0).visit();
        assertThat(visit.codesCleared()).isTrue();
        assertThat(visit.testDrive().minutes()).isEqualTo(4);
        assertThat(visit.testDrive().warningReturned()).isFalse();
        assertThat(visit.faultCodes()).singleElement().satisfies(c -> {
            assertThat(c.code()).isEqualTo("C0750-11");
            assertThat(c.state()).isEqualTo(FaultCode.State.STORED);
            assertThat(c.position().code()).isEqualTo("1L");
        });
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rule).containsExactly(RejectionRule.BAD_FAULT_CODE);
    }

    /** The key of the vehicle and not the plate tells a trailer from what pulls it. */
    @Test
    void aTrailerUnderItsTractorsPlateStaysATrailer() {
        assertThat(Fixtures.accepted(read("trailer.csv")))
                .extracting(r -> r.visit().vehicleId())
                .containsExactly("TRACTOR-1", "TRAILER-9", "TRAILER-9");
    }

    /** The list of the traps may not promise what is not there. */
    @Test
    void everyFixtureAndTestNamedInTheListExists() throws IOException {
        String list = Fixtures.text(ROOT.resolve("docs/traps.md"));
        List<String> missing = new ArrayList<>();
        // A row of the list without a file of its own is as bad as one whose file is gone.
        assertThat(list.lines().filter(l -> l.startsWith("| ")).skip(1))
                .allMatch(l -> l.contains("`traps/") || l.contains("`proposals/") || l.contains("`every-finding/"));
        Matcher fixture =
                Pattern.compile("`((?:traps|proposals|every-finding)/[^`]+)`").matcher(list);
        int fixtures = 0;
        while (fixture.find()) {
            fixtures++;
            if (!Files.exists(ROOT.resolve("jobs/src/test/resources/fixtures").resolve(fixture.group(1)))) {
                missing.add(fixture.group(1));
            }
        }
        Matcher test = Pattern.compile("`(\\w+Test)\\.(\\w+)`").matcher(list);
        int tests = 0;
        while (test.find()) {
            tests++;
            if (!isTest(test.group(1), test.group(2))) {
                missing.add(test.group());
            }
        }
        assertThat(missing).isEmpty();
        assertThat(fixtures).isGreaterThan(40);
        assertThat(tests).isGreaterThan(60);
    }

    private static boolean isTest(String type, String method) throws IOException {
        for (String module : List.of("model", "jobs")) {
            try (Stream<Path> sources = Files.walk(ROOT.resolve(module + "/src/test/java"))) {
                Path source = sources.filter(p -> p.endsWith(type + ".java"))
                        .findFirst()
                        .orElse(null);
                if (source != null && Fixtures.text(source).contains("void " + method + "(")) {
                    return true;
                }
            }
        }
        return false;
    }
}
