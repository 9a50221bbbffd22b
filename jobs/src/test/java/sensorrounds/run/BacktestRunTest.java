package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.backtest.BacktestSettings;
import sensorrounds.backtest.Horizon;
import sensorrounds.ingest.RefusedInput;
import sensorrounds.simulate.SimulateTask;
import sensorrounds.simulate.SimulationSettings;
import sensorrounds.simulate.SimulationSettings.Output;

/**
 * A backtest of a simulated fleet whose logs hold traps from the future: corrections written later to visits before the cut,
 * booked stops, days of leaving to come. What it says as of the cut must be what a run says on logs that end there.
 */
class BacktestRunTest {
    private static final BacktestSettings ONE = new BacktestSettings(1, 180, Horizon.YEAR, 365, 180);

    private static final BacktestSettings LONG = new BacktestSettings(1, 180, Horizon.YEAR, 1000, 180);

    @TempDir
    static Path temp;

    private static Path backtest;
    private static Path run;
    private static LocalDate cut;

    @BeforeAll
    static void askTheSameTwice() throws IOException {
        Path fleet = temp.resolve("fleet");
        new SimulateTask().run(SimulationSettings.large(5, 150, Output.LARGE_CSV), fleet);
        Path full = temp.resolve("full");
        Path then = temp.resolve("then");
        for (Path folder : List.of(full, then)) {
            Files.createDirectories(folder.resolve("visit-logs"));
            Files.copy(fleet.resolve("parts.csv"), folder.resolve("parts.csv"));
            Files.writeString(folder.resolve("stock.csv"), "partId,depot,pieces\n");
        }
        List<String> lines = new ArrayList<>();
        try (Stream<Path> logs = Files.list(fleet.resolve("visit-logs"))) {
            for (Path log :
                    logs.filter(f -> f.toString().endsWith(".csv")).sorted().toList()) {
                List<String> of = Files.readAllLines(log);
                lines.addAll(lines.isEmpty() ? of : of.subList(1, of.size()));
            }
        }
        List<String> head = List.of(lines.get(0).split(","));
        int visitedAt = head.indexOf("visitedAt");
        LocalDate last = lines.stream()
                .skip(1)
                .map(l -> day(l, visitedAt))
                .max(LocalDate::compareTo)
                .orElseThrow();
        cut = last.minusDays(545);
        List<String> corrected = new ArrayList<>(lines);
        int revision = head.indexOf("revision");
        lines.stream()
                .skip(1)
                .filter(l -> !day(l, visitedAt).isAfter(cut) && l.contains(",ok,"))
                .filter(l -> l.hashCode() % 7 == 0)
                .forEach(l -> {
                    String[] cells = l.split(",", -1);
                    cells[revision] = "1";
                    corrected.add(String.join(",", cells).replace(",ok,", ",no answer,"));
                });
        assertThat(corrected).as("corrections planted").hasSizeGreaterThan(lines.size() + 50);
        Files.write(full.resolve("visit-logs/log.csv"), corrected);
        Files.write(
                then.resolve("visit-logs/log.csv"),
                Stream.concat(
                                lines.stream().limit(1),
                                lines.stream()
                                        .skip(1)
                                        .filter(l -> !day(l, visitedAt).isAfter(cut)))
                        .toList());
        registers(fleet.resolve("fleet.csv"), full.resolve("fleet.csv"), then.resolve("fleet.csv"));

        backtest = Path.of(new BacktestRun(
                        new RunOptions(
                                full.toString(), null, null, temp.resolve("out").toString(), null),
                        ONE,
                        Progress.SILENT)
                .run()
                .folder());
        run = Path.of(new Pipeline(
                        new RunOptions(
                                then.toString(), null, null, temp.resolve("out").toString(), cut),
                        Progress.SILENT)
                .run()
                .folder());
    }

    private static LocalDate day(String line, int column) {
        return LocalDate.parse(line.split(",", -1)[column].substring(0, 10));
    }

    /** Every vehicle is booked, and every fifth leaves, after the cut; the register of that day knew neither. */
    private static void registers(Path from, Path full, Path then) throws IOException {
        List<String> lines = Files.readAllLines(from);
        List<String> head = List.of(lines.get(0).split(","));
        int planned = head.indexOf("nextPlannedVisit");
        int left = head.indexOf("leftFleet");
        List<String> today = new ArrayList<>(lines.subList(0, 1));
        List<String> thatDay = new ArrayList<>(lines.subList(0, 1));
        for (int i = 1; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",", -1);
            cells[planned] = "";
            boolean ahead =
                    cells[left].isEmpty() || LocalDate.parse(cells[left]).isAfter(cut);
            cells[left] = ahead ? "" : cells[left];
            thatDay.add(String.join(",", cells));
            cells[planned] = cut.plusDays(40).toString();
            cells[left] = ahead && i % 5 == 0 ? cut.plusDays(200).toString() : cells[left];
            today.add(String.join(",", cells));
        }
        Files.write(full, today);
        Files.write(then, thatDay);
    }

    @Test
    void whatItSaysAsOfTheCutIsWhatARunSaysOnLogsThatEndThere() {
        Map<String, Map<String, String>> ran = new TreeMap<>();
        for (Map<String, String> line : SampleRun.csv(run.resolve("csv/ranked-replacements.csv"))) {
            ran.put(line.get("life_id"), line);
        }
        List<Map<String, String>> asked = SampleRun.csv(backtest.resolve("csv/backtest-forecasts.csv"));
        assertThat(asked).hasSize(ran.size()).hasSizeGreaterThan(200);
        assertThat(asked).allSatisfy(f -> {
            assertThat(f).containsEntry("cut_on", cut.toString());
            for (String column : List.of(
                    "vehicle_id",
                    "advice",
                    "age_days",
                    "last_report",
                    "p_failed_already",
                    "p_fail_30d",
                    "p_fail_90d",
                    "p_fail_180d",
                    "p_fail_365d")) {
                assertThat(f.get(column))
                        .as(column)
                        .isEqualTo(ran.get(f.get("life_id")).get(column));
            }
        });
    }

    @Test
    void theDemandItForecastIsThatOfTheRun() {
        Map<String, Map<String, String>> ran = new HashMap<>();
        for (Map<String, String> row : SampleRun.csv(run.resolve("csv/stock-outlook.csv"))) {
            ran.put(row.get("part") + row.get("depot") + row.get("month"), row);
        }
        List<Map<String, String>> asked = SampleRun.csv(backtest.resolve("csv/backtest-stock.csv"));
        assertThat(asked).isNotEmpty().allSatisfy(r -> {
            Map<String, String> row = ran.get(r.get("part") + r.get("depot") + r.get("month"));
            assertThat(r.get("expected")).isEqualTo(row.get("expected"));
            assertThat(r.get("upper")).isEqualTo(row.get("upper"));
        });
    }

    @Test
    void everyForecastIsJudgedAndTheFiguresAddUp() throws IOException {
        List<Map<String, String>> forecasts = SampleRun.csv(backtest.resolve("csv/backtest-forecasts.csv"));
        assertThat(forecasts).extracting(f -> f.get("ending")).contains("FAILED", "IN_SERVICE");
        for (Map<String, String> score : SampleRun.csv(backtest.resolve("csv/backtest-scores.csv"))) {
            assertThat(Integer.parseInt(score.get("forecasts"))).isEqualTo(forecasts.size());
            double expected = forecasts.stream()
                    .mapToDouble(f -> Double.parseDouble(f.get("p_fail_" + score.get("horizon_days") + "d")))
                    .sum();
            assertThat(Double.parseDouble(score.get("expected"))).isCloseTo(expected, within(1e-5));
        }
        long banded = SampleRun.csv(backtest.resolve("csv/backtest-calibration.csv")).stream()
                .filter(r -> r.get("horizon_days").equals("365")
                        && !r.get("chance_from").isEmpty())
                .mapToLong(r -> Long.parseLong(r.get("forecasts")))
                .sum();
        assertThat(banded).isEqualTo(forecasts.size());
        JsonNode manifest =
                new JsonMapper().readTree(backtest.resolve("backtest.json").toFile());
        assertThat(manifest.at("/cuts/0").asText()).isEqualTo(cut.toString());
        assertThat(manifest.get("forecasts").asInt()).isEqualTo(forecasts.size());
    }

    /** A run and a backtest share the folder, each with its own numbers and pointer. */
    @Test
    void itStandsBesideTheRuns() throws IOException {
        JsonMapper json = new JsonMapper();
        Path out = temp.resolve("out");
        assertThat(json.readTree(out.resolve("latest-backtest.json").toFile())
                        .get("backtest")
                        .asText())
                .isEqualTo("backtests/000001");
        assertThat(json.readTree(out.resolve("latest.json").toFile()).get("run").asText())
                .isEqualTo("runs/000001");
        assertThat(json.readTree(backtest.resolve("run-status.json").toFile())
                        .get("state")
                        .asText())
                .isEqualTo("DONE");
        assertThat(Files.readString(backtest.resolve("report.html")))
                .contains("How good would it have been?", "The list against simple rules", "Asked on " + cut);
    }

    @Test
    void logsThatAreTooShortAreRefusedWithTheWayOut() {
        RunOptions options = new RunOptions(
                temp.resolve("then").toString(),
                null,
                null,
                temp.resolve("short").toString(),
                null);
        assertThatThrownBy(() -> new BacktestRun(options, LONG, Progress.SILENT).run())
                .isInstanceOf(RefusedInput.class)
                .hasMessageContaining("too short for a backtest")
                .hasMessageContaining("visits over 1545 days or more")
                .hasMessageContaining("--horizon 90");
        assertThat(temp.resolve("short/latest-backtest.json")).doesNotExist();
    }
}
