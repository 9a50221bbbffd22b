package sensorrounds.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no workbook, or one made to do harm, is refused with its own way out. */
class DamagedWorkbookTest {
    private static WorkbookProblem problem(byte[] bytes) {
        WorkbookProblem problem = catchThrowableOfType(WorkbookProblem.class, () -> {
            try (Workbook book = Workbook.open(bytes)) {
                SheetRows rows = book.rows(book.sheets().get(0));
                while (rows.next() != null) {
                    // To the last row.
                }
            }
        });
        assertThat(problem).isNotNull();
        return problem;
    }

    @Test
    void aPasswordIsTold() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (POIFSFileSystem files = new POIFSFileSystem()) {
            EncryptionInfo info = new EncryptionInfo(EncryptionMode.standard);
            Encryptor encryptor = info.getEncryptor();
            encryptor.confirmPassword("foobaa");
            try (OutputStream out = encryptor.getDataStream(files)) {
                out.write(Parts.workbook(""));
            }
            files.writeFilesystem(bytes);
        }
        assertThat(problem(bytes.toByteArray()).what()).isEqualTo("a workbook with a password");
    }

    @Test
    void theOldBinaryFormIsTold() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (HSSFWorkbook book = new HSSFWorkbook()) {
            book.createSheet("A");
            book.write(bytes);
        }
        WorkbookProblem problem = problem(bytes.toByteArray());
        assertThat(problem.what()).contains(".xls");
        assertThat(problem.wayOut()).contains("save it as .xlsx").contains("CSV");
    }

    @Test
    void aTextThatOnlyHasTheNameIsTold() {
        assertThat(problem("visitId,visitedAt\n".getBytes(StandardCharsets.UTF_8))
                        .what())
                .isEqualTo("not a workbook");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 0.9, 0.999})
    void aWorkbookThatIsCutShortIsRefused(double share) {
        byte[] whole = Parts.workbook("<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>");
        assertThat(problem(Arrays.copyOf(whole, (int) (share * whole.length))).what())
                .isEqualTo("a workbook that is cut short or damaged");
    }

    @Test
    void oneWrongByteIsSeen() {
        byte[] bytes = storedWorkbook("<row r=\"1\"><c r=\"A1\"><v>240</v></c></row>");
        int at = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("<v>240");
        bytes[at + 3] = '3';
        assertThat(problem(bytes).found()).contains("checksum");
    }

    private static byte[] storedWorkbook(String rows) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.setLevel(0);
            for (Map.Entry<String, byte[]> part :
                    Parts.of("<sheetData>" + rows + "</sheetData>").entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return bytes.toByteArray();
    }

    /** Two hundred million characters in a file of two hundred kilobytes: it is left long before it is unpacked. */
    @Test
    void aSheetThatSwellsIsLeft() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] blanks = new byte[1 << 20];
        Arrays.fill(blanks, (byte) ' ');
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : Parts.of("").entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                if (part.getKey().contains("sheet1")) {
                    zip.write("<worksheet><sheetData>".getBytes(StandardCharsets.UTF_8));
                    for (int i = 0; i < 200; i++) {
                        zip.write(blanks);
                    }
                } else {
                    zip.write(part.getValue());
                }
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        assertThat(bytes.size()).isLessThan(300_000);
        assertThat(problem(bytes.toByteArray()).what()).contains("unpacks to more");
    }

    /** The entity would read a file of this machine, or grow to gigabytes ("billion laughs"). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<!DOCTYPE worksheet [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>",
                "<!DOCTYPE worksheet [<!ENTITY a \"aaaa\"><!ENTITY x \"&a;&a;&a;&a;\">]>",
                "<!DOCTYPE worksheet SYSTEM \"http://localhost/x.dtd\">",
            })
    void entitiesAreRefused(String docType) {
        Map<String, byte[]> parts = Parts.of("");
        Parts.put(
                parts,
                "xl/worksheets/sheet1.xml",
                "<?xml version=\"1.0\"?>" + docType
                        + "<worksheet><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&x;</t></is></c></row>"
                        + "</sheetData></worksheet>");
        assertThat(problem(Parts.zip(parts)).what()).isEqualTo("a workbook that is cut short or damaged");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<row r=\"1\"><c r=\"ZZZZ1\"><v>1</v></c></row>",
                "<row r=\"2000000\"><c r=\"A2000000\"><v>1</v></c></row>",
                "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>2000000000</v></c></row>",
                "<row r=\"1\"><c r=\"A1\"><v>one</v></c></row>",
                "<row r=\"x\"/>",
                "<row r=\"1\"><c r=\"A1\"><v>1</v></row>",
            })
    void placesTextsAndNumbersThatCannotBeAreRefused(String rows) {
        assertThat(problem(Parts.workbook(rows)).what()).isEqualTo("a workbook that is cut short or damaged");
    }
}
