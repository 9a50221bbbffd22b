package sensorrounds.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Workbooks written by hand, part by part, for what no program writes. */
public final class Parts {
    private Parts() {}

    /** A workbook of one sheet "Visits" with the rows given as XML. */
    public static byte[] workbook(String sheetData) {
        return zip(of("<sheetData>" + sheetData + "</sheetData>"));
    }

    static Map<String, byte[]> of(String inWorksheet) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        put(
                parts,
                "_rels/.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\""
                        + " Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument\""
                        + " Target=\"xl/workbook.xml\"/></Relationships>");
        put(
                parts,
                "xl/_rels/workbook.xml.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\""
                        + " Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\""
                        + " Target=\"worksheets/sheet1.xml\"/></Relationships>");
        put(
                parts,
                "xl/workbook.xml",
                "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\""
                        + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets><sheet"
                        + " name=\"Visits\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>");
        put(
                parts,
                "xl/worksheets/sheet1.xml",
                "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">" + inWorksheet
                        + "</worksheet>");
        return parts;
    }

    static void put(Map<String, byte[]> parts, String name, String text) {
        parts.put(name, text.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] zip(Map<String, byte[]> parts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    static Map<String, byte[]> unzip(byte[] workbook) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), zip.readAllBytes());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return parts;
    }
}
