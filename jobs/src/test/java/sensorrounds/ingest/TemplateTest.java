package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.intake.FileCount;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/**
 * docs/visit-log-template.xlsx. Written anew by {@code -Dtemplate.write=true}; held against what would be written part by
 * part, since another Java packs the same bytes differently.
 */
class TemplateTest {
    private static final Path DOCS = Fixtures.repositoryRoot().resolve("docs");
    private static final Path TEMPLATE = DOCS.resolve("visit-log-template.xlsx");

    @TempDir
    private Path dir;

    private static List<String> header() {
        return Arrays.asList(
                Fixtures.text(DOCS.resolve("visit-log-template.csv")).strip().split(","));
    }

    private static Map<String, String> parts(byte[] workbook) throws IOException {
        Map<String, String> parts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return parts;
    }

    private static byte[] packed(Map<String, String> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                ZipEntry entry = new ZipEntry(part.getKey());
                entry.setTime(1_767_225_600_000L);
                zip.putNextEntry(entry);
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void theTemplateIsMadeOfTheHeaderAndTheSchema() throws IOException {
        Map<String, String> parts =
                parts(TemplateSheet.of(header(), Fixtures.text(DOCS.resolve("visit-log.schema.json"))));
        if (Boolean.getBoolean("template.write")) {
            Files.write(TEMPLATE, packed(parts));
        }
        assertThat(parts(Files.readAllBytes(TEMPLATE))).isEqualTo(parts);
    }

    @Test
    void theEmptyTemplateIsALogWithoutRowsAsInCsv() throws IOException {
        for (String ending : List.of("csv", "xlsx")) {
            Path file = Files.copy(
                    DOCS.resolve("visit-log-template." + ending),
                    Files.createDirectories(dir.resolve(ending)).resolve("t." + ending));
            List<LogRow> rows = Fixtures.read(file);
            assertThat(rows).extracting(LogRow::file).doesNotContainNull();
            assertThat(rows)
                    .extracting(LogRow::file)
                    .extracting(FileCount::rows)
                    .containsOnly(0L);
        }
    }

    /** Each text is typed into its cell as a technician would; the cell's own format keeps the zeros of IDs. */
    @Test
    void filledInItGivesTheSameRowsAsTheCsvTemplate() throws IOException {
        List<CsvRecord> lines = lines(Fixtures.EXAMPLES.resolve("visit-logs/visits.csv"));
        List<String> names = lines.get(0).getFields();
        Path filled = dir.resolve("t.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(TEMPLATE));
                OutputStream out = Files.newOutputStream(filled)) {
            XSSFSheet sheet = book.getSheet(TemplateSheet.VISITS);
            for (int i = 1; i < lines.size(); i++) {
                XSSFRow row = sheet.createRow(i);
                for (int j = 0; j < names.size(); j++) {
                    type(lines.get(i).getField(j), row.createCell(header().indexOf(names.get(j))), sheet);
                }
            }
            book.write(out);
        }
        List<LoggedWheel> expected = readings(Fixtures.EXAMPLES.resolve("visit-logs/visits.csv"));
        assertThat(expected).hasSize(9);
        assertThat(readings(filled)).isEqualTo(expected);
    }

    private static void type(String text, XSSFCell cell, XSSFSheet sheet) {
        cell.setCellStyle(sheet.getColumnStyle(cell.getColumnIndex()));
        boolean asText = cell.getCellStyle().getDataFormatString().equals("@");
        if (!asText && text.matches("-?[0-9]+(\\.[0-9]+)?")) {
            cell.setCellValue(Double.parseDouble(text));
        } else if (!text.isEmpty()) {
            cell.setCellValue(text);
        }
    }

    private static List<CsvRecord> lines(Path csv) throws IOException {
        List<CsvRecord> lines = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            reader.forEach(lines::add);
        }
        return lines;
    }

    private static List<LoggedWheel> readings(Path file) {
        return Fixtures.accepted(Fixtures.read(file)).stream()
                .map(r -> new LoggedWheel(r.visit(), r.wheel(), new Source("", 1)))
                .toList();
    }
}
