package sensorrounds.report;

import java.util.Comparator;
import java.util.List;

/** Shares of all sensors ended by each cause by age: a line for each cause with its name at its end, and a table beneath. */
final class CausesChart {
    private static final double HEIGHT = 262;

    private final List<CauseLine> lines;
    private final SurvivalFrame frame;

    /** @param lines never empty */
    CausesChart(List<CauseLine> lines) {
        this.lines = lines;
        int lastAge = lines.stream().mapToInt(l -> l.last().ageDays()).max().orElse(0);
        double most = lines.stream()
                .flatMap(l -> l.rows().stream())
                .mapToDouble(r -> r.incidence())
                .max()
                .orElse(1);
        frame = new SurvivalFrame(lastAge, EndLabels.RIGHT, most);
    }

    void write(Html h) {
        h.open("figure", "class", "chart");
        h.element("figcaption", "Ended by each cause, all sensors");
        Svg svg = Svg.open(
                h,
                SurvivalFrame.WIDTH,
                HEIGHT,
                "Share of sensors ended by each cause by age, one line for each; the figures are in the table below",
                "plot");
        frame.axes(svg);
        for (CauseLine line : lines) {
            Svg.Path path = new Svg.Path();
            line.rows().forEach(r -> path.to(frame.x(r.ageDays()), frame.y(r.incidence())));
            svg.path(path, "cohort style-" + style(line));
        }
        EndLabels.write(
                svg,
                lines.stream()
                        .map(l -> new EndLabels.End(
                                Words.brief(l.cause()),
                                style(l),
                                frame.x(l.last().ageDays()),
                                frame.y(l.last().incidence())))
                        .toList());
        svg.close();
        table(h);
        h.close("figure").line();
    }

    /** Each cause keeps its stroke, whichever others there are. */
    private static int style(CauseLine line) {
        return line.cause().ordinal() + 1;
    }

    private void table(Html h) {
        h.open("details").element("summary", "The figures behind the chart");
        Grid<Integer> grid = new Grid<Integer>(Grid.Shape.SCROLLS, "Share ended by each cause by age, all sensors")
                .number("Age, years", t -> t, (h1, t) -> h1.text(Integer.toString(t)));
        lines.stream()
                .sorted(Comparator.comparing(CauseLine::cause))
                .forEach(l -> grid.number(Words.of(l.cause()), t -> t, (h1, t) -> share(h1, l, t)));
        grid.write(h, frame.ticks());
        h.close("details").line();
    }

    static void share(Html h, CauseLine line, int years) {
        h.text(line.at(Format.days(years))
                .map(r -> Format.withLimits(r.incidence(), r.lower(), r.upper()))
                .orElse(Format.NONE));
    }
}
