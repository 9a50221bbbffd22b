package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.intake.Layout;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/** The same visits as JSON lines, CSV, a workbook and both shapes of Parquet are the same readings, in the same order. */
class FormsAgreeTest {
    private static final Path LOGS = Fixtures.EXAMPLES.resolve("visit-logs");

    @TempDir
    private Path dir;

    private static List<LoggedWheel> readings(Path folder) {
        return Fixtures.accepted(Fixtures.read(folder.getParent(), folder)).stream()
                .map(r -> new LoggedWheel(r.visit(), r.wheel(), new Source("", 1)))
                .toList();
    }

    @Test
    void theExamplesAreTheSameReadingsInEveryForm() {
        OtherForms csv = OtherForms.of(LOGS.resolve("visits.csv"), Layout.CANONICAL);
        csv.workbook(dir.resolve("xlsx/visits.xlsx"));
        csv.parquet(SparkTest.spark(), dir.resolve("flat/visits.parquet"));
        SparkTest.spark()
                .read()
                .json(LOGS.resolve("visits.jsonl").toString())
                .coalesce(1)
                .write()
                .parquet(dir.resolve("nested/visits.parquet").toString());

        List<LoggedWheel> expected = readings(LOGS.resolve("visits.jsonl"));
        assertThat(expected).hasSize(9);
        assertThat(readings(LOGS.resolve("visits.csv"))).isEqualTo(expected);
        for (String form : List.of("xlsx", "flat", "nested")) {
            assertThat(readings(dir.resolve(form))).as(form).isEqualTo(expected);
        }
    }
}
