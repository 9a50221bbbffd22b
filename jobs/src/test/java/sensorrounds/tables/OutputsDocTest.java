package sensorrounds.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** docs/outputs.md holds each table with every column; it is made from the tables and must not drift from them. */
class OutputsDocTest {
    private static final Path DOC = Path.of("../docs/outputs.md");
    private static final String MARK =
            "<!-- From here on made from the tables: mvn -pl model,jobs test -Dtest=OutputsDocTest"
                    + " -Dsurefire.failIfNoSpecifiedTests=false -Doutputs.write=true -->\n";

    @Test
    void theDocumentTellsTheTablesAsTheyAre() throws IOException {
        String doc = Files.readString(DOC);
        assertThat(doc).contains(MARK);
        String byHand = doc.substring(0, doc.indexOf(MARK));
        String expected = byHand + MARK + tables();
        if (Boolean.getBoolean("outputs.write")) {
            Files.writeString(DOC, expected);
        }
        assertThat(Files.readString(DOC)).isEqualTo(expected);
    }

    private static String tables() {
        StringBuilder s = new StringBuilder();
        Tables.RESULTS.forEach(t -> table(t, s));
        table(LogRows.TABLE, s);
        BacktestTables.ALL.forEach(t -> table(t, s));
        return s.toString();
    }

    private static void table(Table<?> table, StringBuilder s) {
        s.append("\n## ")
                .append(table.name())
                .append('\n')
                .append(table.purpose())
                .append("\n\n");
        s.append("| column | type | meaning |\n|---|---|---|\n");
        for (Column<?> c : table.columns()) {
            s.append("| ")
                    .append(c.name())
                    .append(" | ")
                    .append(c.type().simpleString())
                    .append(" | ")
                    .append(c.meaning().replace("|", "\\|"))
                    .append(" |\n");
        }
    }
}
