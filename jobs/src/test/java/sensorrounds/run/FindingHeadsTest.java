package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.history.Finding;
import sensorrounds.report.ReportData.FindingGroup;

class FindingHeadsTest {
    private static final TableWriter.Order<Finding> BY_DAY = (a, b) -> a.day().compareTo(b.day());

    private static Finding finding(Finding.Kind kind, int day) {
        return new Finding(kind, "V1", null, null, null, LocalDate.ofEpochDay(day), "found", "done", List.of());
    }

    /** A rare kind shows its own first lines, however many of another kind stand before it. */
    @Test
    void everyKindShowsItsFirstForAnySplit() {
        List<Finding> all = new ArrayList<>();
        for (int day = 0; day < 100; day++) {
            all.add(finding(Finding.Kind.MOVED, day));
        }
        all.add(finding(Finding.Kind.CLONED_ID, 500));
        for (int split = 0; split <= all.size(); split += 7) {
            Collections.shuffle(all, new Random(split));
            FindingHeads left = new FindingHeads(3, BY_DAY);
            FindingHeads right = new FindingHeads(3, BY_DAY);
            all.subList(0, split).forEach(left::add);
            all.subList(split, all.size()).forEach(right::add);

            assertThat(left.merge(right).groups())
                    .containsExactly(
                            new FindingGroup(Finding.Kind.CLONED_ID, 1, List.of(finding(Finding.Kind.CLONED_ID, 500))),
                            new FindingGroup(
                                    Finding.Kind.MOVED,
                                    100,
                                    List.of(
                                            finding(Finding.Kind.MOVED, 0),
                                            finding(Finding.Kind.MOVED, 1),
                                            finding(Finding.Kind.MOVED, 2))));
        }
    }
}
