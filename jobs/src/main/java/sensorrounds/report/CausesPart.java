package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.review.CauseIncidence;
import sensorrounds.survival.CohortLadder;

/** The part of the survival section that tells what ends sensors, and by which age. */
final class CausesPart {
    /** Ages at which the cohorts are set side by side. */
    private static final int AGES = 3;

    private record Row(String cohort, CauseLine line) {}

    private CausesPart() {}

    static void write(Html h, List<CauseIncidence> incidence) {
        List<CauseLine> all = CauseLine.of(incidence, CohortLadder.POOL);
        if (all.isEmpty()) {
            return;
        }
        h.element("h3", "What ends sensors, and by which age");
        h.element(
                "p",
                "Each line gives the share of all sensors that the cause has ended by an age, while the other causes are "
                        + "at work too: at any age the lines and the share still working add up to 100 %. A sensor "
                        + "replaced before it failed is an end of its own kind. Read it as what a fleet meets, not as how "
                        + "often a cause would strike if the others were gone.");
        h.open("div", "class", "charts");
        new CausesChart(all).write(h);
        h.close("div").line();
        cohorts(h, incidence, all);
    }

    private static void cohorts(Html h, List<CauseIncidence> incidence, List<CauseLine> all) {
        List<Row> rows = new ArrayList<>();
        incidence.stream()
                .map(CauseIncidence::cohort)
                .distinct()
                .filter(c -> !c.equals(CohortLadder.POOL))
                .sorted()
                .forEach(c -> CauseLine.of(incidence, c).forEach(l -> rows.add(new Row(c, l))));
        if (rows.isEmpty()) {
            return;
        }
        Grid<Row> grid = new Grid<Row>(Grid.Shape.SCROLLS, "Share ended by each cause, by cohort, with 95 % limits")
                .column("Cohort", (h1, r) -> h1.data(r.cohort()))
                .column("Cause", (h1, r) -> h1.text(Words.of(r.line().cause())))
                .number(
                        "Ends",
                        r -> r.line().last().ends(),
                        (h1, r) -> h1.text(Format.whole(r.line().last().ends())));
        for (int years : ages(all)) {
            grid.number(
                    "By " + Format.count(years, "year"),
                    r -> r.line()
                            .at(Format.days(years))
                            .map(CauseIncidence::incidence)
                            .orElse(Double.NaN),
                    (h1, r) -> CausesChart.share(h1, r.line(), years));
        }
        h.open("details").element("summary", "The causes cohort by cohort");
        grid.write(h, rows);
        h.close("details").line();
    }

    /** Whole years that divide the ages observed evenly, as far as they can. */
    private static List<Integer> ages(List<CauseLine> all) {
        int last = (int) Format.inYears(all.get(0).last().ageDays());
        List<Integer> ages = new ArrayList<>();
        for (int i = 1; i <= AGES; i++) {
            int years = Math.round(last * i / (float) AGES);
            if (years > 0 && !ages.contains(years)) {
                ages.add(years);
            }
        }
        return ages;
    }
}
