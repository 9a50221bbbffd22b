package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.history.Finding;

/** A fleet that shows every kind of finding, each in a small log named after it, through a whole run. */
class EveryFindingRunTest {
    private static final Path DATA = Path.of("src/test/resources/fixtures/every-finding");

    @TempDir
    private static Path out;

    private static Path run;
    private static List<Map<String, String>> findings;

    @BeforeAll
    static void runOnce() {
        RunOptions options = new RunOptions(DATA.toString(), null, null, out.toString(), null);
        run = Path.of(new Pipeline(options, Progress.SILENT).run().folder());
        findings = SampleRun.csv(run.resolve("csv/findings.csv"));
    }

    private static String log(Finding.Kind kind) {
        return "visit-logs/" + kind.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".csv";
    }

    private static List<Map<String, String>> of(String vehicle) {
        return findings.stream()
                .filter(f -> f.get("vehicle_id").equals(vehicle))
                .toList();
    }

    private static List<Map<String, String>> lives(String vehicle) {
        return SampleRun.csv(run.resolve("csv/sensor-lives.csv")).stream()
                .filter(l -> l.get("vehicle_id").equals(vehicle))
                .toList();
    }

    @TestFactory
    Stream<DynamicTest> everyKindIsFoundAndSaysWhereItStandsAndWhatWasMadeOfIt() throws IOException {
        String report = Files.readString(run.resolve("report.html"));
        return Arrays.stream(Finding.Kind.values())
                .map(kind -> DynamicTest.dynamicTest(kind.name(), () -> {
                    List<Map<String, String>> shown = findings.stream()
                            .filter(f -> f.get("kind").equals(kind.name())
                                    && f.get("sources").contains(log(kind) + ":"))
                            .toList();
                    assertThat(shown).isNotEmpty().allSatisfy(f -> {
                        assertThat(f.get("what")).hasSizeGreaterThan(20);
                        assertThat(f.get("done")).hasSizeGreaterThan(14);
                        assertThat(f.get("settle")).hasSizeGreaterThan(20);
                        assertThat(report).contains(log(kind) + ":");
                    });
                }));
    }

    /** A log may show more than its own kind, but nothing that is not in it. */
    @Test
    void nothingElseIsFound() {
        assertThat(findings).hasSize(29);
    }

    /** Taken out with a broken stem, and heard again where the new sensor sits: named with what to do, wherever one looks. */
    @Test
    void aSensorThatAnswersAfterItsDeathIsNamedWithBothReadings() throws IOException {
        Map<String, String> found = of("REVIVED").stream()
                .filter(f -> f.get("kind").equals("ALIVE_AGAIN"))
                .findFirst()
                .orElseThrow();
        assertThat(found.get("what"))
                .isEqualTo("sensor 1C000010 was taken off on 2020-06-01 as failed and answers again at axle 1, left");
        assertThat(found.get("day") + " " + found.get("sensor_id") + " " + found.get("position"))
                .isEqualTo("2021-01-01 1C000010 1L");
        assertThat(found.get("done")).contains("a new life of unknown age", "the old life stays as recorded");
        assertThat(found.get("settle")).contains("read its ID again at the next stop");
        assertThat(found.get("sources").split(" "))
                .hasSize(2)
                .allMatch(s -> s.startsWith(log(Finding.Kind.ALIVE_AGAIN)));
        assertThat(lives("REVIVED"))
                .filteredOn(l -> l.get("sensor_id").equals("1C000010"))
                .extracting(l -> l.get("generation") + " " + l.get("life_end") + " " + l.get("basis"))
                .containsExactlyInAnyOrder("1 FAILED VEHICLE_FIRST_USE", "2 IN_SERVICE UNKNOWN");
        String page = Explain.of(out.toString(), "REVIVED").text(120).replaceAll("\\s+", " ");
        assertThat(page)
                .contains(
                        "Settle what the logs contradict at 1L: sensor 1C000010 was taken off on 2020-06-01 as failed")
                .contains(found.get("settle"));
        assertThat(Files.readString(run.resolve("report.html"))).contains(found.get("what"), found.get("settle"));
        assertThat(Explain.of(out.toString(), "ALIVE").text(120))
                .contains("silent at 2 visits in a row, the last on 2021-01-01");
    }

    /** A trailer's wheels under its tractor, by axle and by ID: told, and no sensor of the tractor. */
    @Test
    void aTrailersWheelsAreNoneOfItsTractors() {
        assertThat(of("TRACTOR"))
                .extracting(f -> f.get("what"))
                .containsExactly(
                        "visit 2 has 2 wheels at 3L, 3R, and by the fleet register the vehicle has 2 axles",
                        "at visit 3 sensor 4A000001 answered at 1L and sits on vehicle TRAILER, which hears it before and"
                                + " after");
        assertThat(of("TRACTOR")).allSatisfy(f -> assertThat(f.get("done")).contains("not counted as this vehicle's"));
        assertThat(lives("TRACTOR"))
                .extracting(l -> l.get("sensor_id") + " " + l.get("life_end"))
                .containsExactly("5A000001 IN_SERVICE", "5A0000F2 IN_SERVICE");
        assertThat(lives("TRAILER"))
                .extracting(l -> l.get("sensor_id") + " " + l.get("life_end"))
                .containsExactly("4A000001 IN_SERVICE", "4A0000F3 IN_SERVICE");
    }

    @Test
    void twoVehiclesWithOneVinAreToldWithoutIt() throws IOException {
        assertThat(of("VIN-1"))
                .singleElement()
                .satisfies(f -> assertThat(f.get("what"))
                        .isEqualTo("one VIN is on vehicle VIN-1 from 2020-01-01 to 2022-01-01 and on vehicle VIN-2 on"
                                + " 2021-01-01"));
        assertThat(of("VIN-2")).hasSize(1);
        assertThat(Files.readString(run.resolve("report.html"))).doesNotContain("1M8GDM9AXKP042788");
    }

    @Test
    void aPlateThatChangesWhileTheVinStaysIsToldWithoutIt() throws IOException {
        assertThat(of("PLATE"))
                .singleElement()
                .satisfies(f -> assertThat(f.get("what")).contains("the VIN stays the same"));
        assertThat(Files.readString(run.resolve("csv/findings.csv"))).doesNotContain("AAA", "BBB");
    }

    /** It left by the register and was visited later: its sensor is watched until then, and how to put it right is told. */
    @Test
    void aVehicleThatLeftAndCameBackIsWatchedUntilItsLastVisit() {
        assertThat(of("BACK")).singleElement().satisfies(f -> {
            assertThat(f.get("what")).contains("visit 2 on 2023-06-01 lies after the vehicle left on 2022-01-01");
            assertThat(f.get("done"))
                    .contains("on the day of its last visit, 2023-06-01")
                    .contains("if it came back");
        });
        assertThat(lives("BACK")).singleElement().satisfies(l -> {
            assertThat(l.get("life_end")).isEqualTo("LEFT_FLEET");
            assertThat(l.get("ended_on")).isEqualTo("2023-06-01");
        });
    }

    @Test
    void explainTellsAVehicleOfTheRegisterWithoutVisitsFromOneThatNobodyKnows() {
        assertThatThrownBy(() -> Explain.of(out.toString(), "NEVER-SEEN"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("in the fleet register, and no log mentions it");
        assertThatThrownBy(() -> Explain.of(out.toString(), "never-seem"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("knows no such vehicle")
                .hasMessageContaining("one like NEVER-SEEN");
    }

    /** As some log wrote it, and as a person may type it; what was asked for is not repeated. */
    @ParameterizedTest
    @ValueSource(strings = {"1G4AH59H55G118341", "1g4ah59h55g118341", "ZZ 2 BBB", "zz1aaa", "ZZ-1-AAA"})
    void aPlateOrVinLeadsToItsVehicle(String asked) {
        Explain found = Explain.of(out.toString(), asked);

        assertThat(found.isByIdentity()).isTrue();
        assertThat(found.text(100)).contains("PLATE").doesNotContain("1G4AH59H55G118341", "AAA", "BBB");
        assertThat(Explain.of(out.toString(), "PLATE").isByIdentity()).isFalse();
    }

    @Test
    void aVinOfTwoVehiclesNamesThemAndIsNotRepeated() {
        assertThatThrownBy(() -> Explain.of(out.toString(), "1M8GDM9AXKP042788"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("more than one vehicle has had that number plate or VIN")
                .hasMessageContaining("give one of VIN-1, VIN-2")
                .hasMessageNotContaining("1M8GDM9AXKP042788");
    }
}
