package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sensorrounds.report.RunFacts.RowCounts;

class RunSummaryTest {
    @Test
    void saysWhatWasReadRefusedFoundAndToDo() {
        assertThat(RunSummary.text(SampleReport.realistic(), "runs/a1"))
                .contains("48 216 rows in 3 files: 46 902 accepted, 1 066 refused, 248 duplicates")
                .contains("812 × date can be read day first or month first", "State the order of the date")
                .contains("Doubted  1 file, read as written; first mill-lane/visits.csv.gz: line 9413")
                .contains("no low-pressure warning on 4 wheels known, 1")
                .contains(
                        "2. Replace 17 sensors on 17 vehicles now for EUR 1 680, saving EUR 1 369; begin with V-101 (1)")
                .contains("4. Prove 3 repairs by a drive; oldest: V-118, 76 days; 1 by asking the driver alone")
                .contains("5. Order 32 pieces, about EUR 1 156")
                .endsWith("Lists:  runs/a1/lists.xlsx\nReport: runs/a1/report.html\n");
    }

    @Test
    void staysWithinTwentyFiveLines() {
        ReportData long1 = SectionsTest.withRows(SampleReport.withText("word ".repeat(400)), new RowCounts(9, 1, 1, 1));
        for (ReportData d : new ReportData[] {SampleReport.realistic(), SampleReport.empty(), long1}) {
            String text = RunSummary.text(d, "out");
            assertThat(text.lines().count()).isLessThanOrEqualTo(RunSummary.MOST_LINES);
            assertThat(text.lines()).allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(RunSummary.WIDTH));
        }
    }

    @Test
    void printsALongPathWhole() {
        String path = "deep/".repeat(60) + "out";
        assertThat(RunSummary.text(SampleReport.empty(), path)).endsWith("Report: " + path + "/report.html\n");
    }

    /** ECMA-48 control sequences begin with ESC or one of U+0080 to U+009F; none may reach the terminal. */
    @Test
    void noValueCanSteerTheTerminal() {
        String text = RunSummary.text(SampleReport.withText("\u001b[2Jgone\r\u009b31m\u202e\u2028"), "r\u001b[0m");
        assertThat(text).doesNotContain("\u001b", "\r", "\u009b", "\u202e");
    }

    @Test
    void aRunThatLostRowsIsNotToBeActedOn() {
        assertThat(RunSummary.text(SectionsTest.withRows(SampleReport.realistic(), new RowCounts(10, 5, 3, 1)), "r"))
                .contains("DOES NOT ADD UP: 1 rows unaccounted for");
    }

    @Test
    void anEmptyRunIsNotGoodNews() {
        assertThat(RunSummary.text(SampleReport.empty(), "r"))
                .contains("No row was read: check the path")
                .doesNotContain("Nothing needs doing");
    }
}
