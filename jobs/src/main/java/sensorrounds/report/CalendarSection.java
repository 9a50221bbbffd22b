package sensorrounds.report;

import java.util.List;
import java.util.Locale;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.CalendarRow.Period;

/** Failures by calendar year and by month of the year. */
final class CalendarSection implements Section {
    private static final double LEFT = 46;
    private static final double TOP = 12;
    private static final double FLOOR = 196;
    /** Months of a year under which it is marked as a part of one. */
    private static final int WHOLE = 12;

    private static final List<String> MONTHS =
            List.of("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");

    @Override
    public String id() {
        return "calendar";
    }

    @Override
    public String title() {
        return "When sensors fail";
    }

    @Override
    public String question() {
        return "Is it getting worse, and is there a season?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Failures per 1\u202f000 sensors watched for a year, with 95 % limits; a limit too high for its picture has no"
                + " end stroke and stands in the table. A failure lies between two visits and counts on each day"
                + " between in equal parts, which smooths the rates. A fleet that grows older fails more: “for"
                + " one expected” sets the failures against those that the age of the sensors explains, and is about 1 over"
                + " all years. The months before the last visit come out too high, since a failure brings a vehicle in and"
                + " a sound sensor does not.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<CalendarRow> years = rows(data, Period.YEAR);
        if (years.isEmpty()) {
            Cells.nothing(h, "No sensor was watched from one visit to another.");
        } else {
            calendar(h, data, years);
        }
        data.survival().vehicles().ifPresent(fits -> ColdPart.write(h, fits));
    }

    private static void calendar(Html h, ReportData data, List<CalendarRow> years) {
        List<CalendarRow> months = rows(data, Period.MONTH_OF_YEAR);
        h.open("div", "class", "charts");
        chart(h, "By year", years);
        if (!months.isEmpty()) {
            chart(h, "By month of the year", months);
        }
        h.close("div").line();
        if (months.isEmpty()) {
            Cells.nothing(
                    h,
                    "Months cannot be told one by one: most failures are known to no better than two months, as visits lie far apart.");
        }
        grid("Failures by year").write(h, years);
        if (!months.isEmpty()) {
            h.open("details").element("summary", "The figures by month of the year");
            grid("Failures by month of the year").write(h, months);
            h.close("details").line();
        }
    }

    private static List<CalendarRow> rows(ReportData data, Period period) {
        return data.survival().calendar().stream()
                .filter(r -> r.period() == period)
                .sorted((a, b) -> Integer.compare(a.number(), b.number()))
                .toList();
    }

    private static Grid<CalendarRow> grid(String caption) {
        return new Grid<CalendarRow>(Grid.Shape.SCROLLS, caption)
                .measured("Period", CalendarRow::number, (h, r) -> {
                    h.element("span", label(r), "class", "key");
                    if (r.period() == Period.YEAR && r.months() < WHOLE) {
                        h.element("span", Format.count(r.months(), "month"), "class", "under");
                    }
                })
                .number("Per 1\u202f000 a year", r -> r.rate().value(), (h, r) -> {
                    h.element("span", Format.whole(r.rate().value()), "class", "key");
                    h.element(
                            "span",
                            Format.whole(r.rate().lower()) + "–"
                                    + Format.whole(r.rate().upper()),
                            "class",
                            "under");
                })
                .number("For one expected by age", r -> r.ratio().value(), (h, r) -> {
                    h.element("span", Format.fixed(r.ratio().value(), 2), "class", "key");
                    h.element(
                            "span",
                            Format.fixed(r.ratio().lower(), 2) + "–"
                                    + Format.fixed(r.ratio().upper(), 2),
                            "class",
                            "under");
                })
                .number("Failures", CalendarRow::failures, (h, r) -> h.text(Format.fixed(r.failures(), 1)))
                .number("Sensor-years", CalendarRow::sensorYears, (h, r) -> h.text(Format.whole(r.sensorYears())));
    }

    private static void chart(Html h, String caption, List<CalendarRow> rows) {
        // Limits of a stretch with next to no time watched must not flatten all others.
        double highest = rows.stream()
                .mapToDouble(r -> r.rate().value())
                .filter(Double::isFinite)
                .max()
                .orElse(0);
        double most = Math.max(1, 1.6 * highest);
        SlotFrame frame = new SlotFrame(
                LEFT,
                TOP,
                FLOOR,
                most,
                rows.stream().map(CalendarSection::label).toList());
        frame.write(
                h,
                caption,
                "Failures per 1000 sensor-years, " + caption.toLowerCase(Locale.ROOT),
                "failures per 1\u202f000 sensor-years",
                svg -> {},
                (svg, i) -> {
                    CalendarRow r = rows.get(i);
                    if (Double.isFinite(r.rate().value())) {
                        frame.expected(
                                svg,
                                i,
                                r.rate().value(),
                                r.rate().lower(),
                                r.rate().upper());
                        frame.tip(svg, i, tip(r));
                    }
                });
    }

    private static String tip(CalendarRow r) {
        return label(r) + ": " + Format.whole(r.rate().value()) + " per 1\u202f000 sensor-years ("
                + Format.whole(r.rate().lower()) + " to "
                + Format.whole(r.rate().upper()) + "), "
                + Format.fixed(r.failures(), 1) + " failures, "
                + Format.fixed(r.ratio().value(), 2) + " for one expected by age";
    }

    private static String label(CalendarRow r) {
        return r.period() == Period.YEAR ? Integer.toString(r.number()) : MONTHS.get(r.number() - 1);
    }
}
