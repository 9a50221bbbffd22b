package sensorrounds.ingest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The workbook that technicians fill in, made from the header of the CSV template and the words of the JSON Schema. */
final class TemplateSheet {
    static final String VISITS = "Visits";
    static final String WORDS = "Words";
    private static final int LAST_ROW = 5000;
    private static final Set<String> MUST = Set.of("visitId", "visitedAt", "vehicleId", "position", "read");
    private static final Set<String> NUMBERS = Set.of("number", "integer");

    private final XSSFWorkbook book = new XSSFWorkbook();
    private final JsonNode schema;

    private TemplateSheet(String schema) {
        try {
            this.schema = new ObjectMapper().readTree(schema);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] of(List<String> header, String schema) {
        TemplateSheet template = new TemplateSheet(schema);
        try (XSSFWorkbook book = template.book;
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            XSSFSheet visits = book.createSheet(VISITS);
            Map<String, int[]> words = template.words(book.createSheet(WORDS), header);
            template.visits(visits, header, words);
            template.properties();
            book.write(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void visits(XSSFSheet sheet, List<String> header, Map<String, int[]> words) {
        XSSFCellStyle must = header(true);
        XSSFCellStyle may = header(false);
        XSSFCellStyle text = style("@");
        XSSFCellStyle time = style("yyyy-mm-dd hh:mm");
        XSSFCellStyle day = style("yyyy-mm-dd");
        XSSFRow row = sheet.createRow(0);
        for (int i = 0; i < header.size(); i++) {
            String name = header.get(i);
            row.createCell(i).setCellValue(name);
            row.getCell(i).setCellStyle(MUST.contains(name) ? must : may);
            if (!isNumber(name)) {
                sheet.setDefaultColumnStyle(
                        i, name.equals("visitedAt") ? time : name.equals("warningSince") ? day : text);
            }
            sheet.setColumnWidth(i, 256 * Math.max(12, name.length() + 2));
            int[] rows = words.get(name);
            if (rows != null) {
                offer(sheet, i, WORDS + "!$B$" + rows[0] + ":$B$" + rows[1]);
            }
        }
        sheet.createFreezePane(0, 1);
    }

    private static void offer(XSSFSheet sheet, int column, String range) {
        DataValidationHelper helper = sheet.getDataValidationHelper();
        DataValidation offered = helper.createValidation(
                helper.createFormulaListConstraint(range), new CellRangeAddressList(1, LAST_ROW, column, column));
        offered.setShowErrorBox(true);
        offered.createErrorBox("Not a word of this field", "Choose one from the list, or leave the cell blank.");
        sheet.addValidationData(offered);
    }

    /** @return first and last row, from 1, of the words of each field */
    private Map<String, int[]> words(XSSFSheet sheet, List<String> header) {
        Map<String, int[]> rows = new LinkedHashMap<>();
        int next = 0;
        for (String name : header) {
            List<String> words = words(name);
            if (!words.isEmpty()) {
                rows.put(name, new int[] {next + 1, next + words.size()});
                for (String word : words) {
                    XSSFRow row = sheet.createRow(next++);
                    row.createCell(0).setCellValue(name);
                    row.createCell(1).setCellValue(word);
                }
            }
        }
        sheet.setColumnWidth(0, 256 * 28);
        sheet.setColumnWidth(1, 256 * 22);
        return rows;
    }

    private List<String> words(String name) {
        JsonNode field = field(name);
        List<String> words = new ArrayList<>();
        if (field.has("enum")) {
            field.get("enum").forEach(word -> {
                if (!word.isNull()) {
                    words.add(word.textValue());
                }
            });
        } else if (types(field).contains("boolean")) {
            words.addAll(List.of("true", "false"));
        }
        return words;
    }

    private boolean isNumber(String name) {
        return types(field(name)).stream().anyMatch(NUMBERS::contains);
    }

    private static List<String> types(JsonNode field) {
        List<String> types = new ArrayList<>();
        if (field.path("type").isArray()) {
            field.get("type").forEach(t -> types.add(t.textValue()));
        } else {
            types.add(field.path("type").asText());
        }
        return types;
    }

    /** The part of the schema that holds for a column of the flat form. */
    private JsonNode field(String name) {
        JsonNode field = schema.at("/properties/" + name);
        if (name.startsWith("placardPressure")) {
            field = schema.at("/$defs/pressure");
        } else if (name.startsWith("testDrive")) {
            String inner = name.substring("testDrive".length());
            field = schema.at(
                    "/properties/testDrive/properties/" + Character.toLowerCase(inner.charAt(0)) + inner.substring(1));
        } else if (field.isMissingNode()) {
            field = schema.at("/$defs/wheel/properties/" + name);
        }
        if (field.isMissingNode()) {
            throw new IllegalStateException("the schema has no field " + name);
        }
        return field.has("$ref") ? schema.at(field.get("$ref").textValue().substring(1)) : field;
    }

    private XSSFCellStyle header(boolean needed) {
        XSSFFont font = book.createFont();
        font.setBold(true);
        font.setItalic(!needed);
        XSSFCellStyle style = style("@");
        style.setFont(font);
        return style;
    }

    private XSSFCellStyle style(String format) {
        XSSFCellStyle style = book.createCellStyle();
        style.setDataFormat(book.createDataFormat().getFormat(format));
        return style;
    }

    /** Without the time of writing, so that the same template is written again. */
    private void properties() {
        book.getProperties().getCoreProperties().setCreator("Sensor Rounds");
        book.getProperties()
                .getCoreProperties()
                .setCreated(Optional.of(Date.from(Instant.parse("2026-01-01T00:00:00Z"))));
        book.getProperties().getExtendedProperties().getUnderlyingProperties().setApplication("Sensor Rounds");
    }
}
