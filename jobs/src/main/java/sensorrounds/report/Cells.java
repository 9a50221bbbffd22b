package sensorrounds.report;

import java.time.LocalDate;
import sensorrounds.report.ReportData.Listed;

/** What several sections put into cells, and the sentences around lists. */
final class Cells {
    private Cells() {}

    /** A vehicle with its depot beneath. */
    static void vehicle(Html h, String vehicleId, String depot) {
        h.open("span", "class", "key").data(vehicleId).close();
        h.open("span", "class", "under");
        if (depot == null) {
            h.text("no depot on record");
        } else {
            h.data(depot);
        }
        h.close();
    }

    /** A sensor ID in fixed pitch, so that hand and eye can compare it with a reader. */
    static void sensorOr(Html h, String sensorId, String otherwise) {
        if (sensorId == null) {
            h.text(otherwise);
        } else {
            h.open("code").data(sensorId).close();
        }
    }

    static void sensorAndPart(Html h, String sensorId, String part) {
        sensorOr(h, sensorId, "no ID on record");
        h.open("span", "class", "under");
        if (part == null) {
            h.text("part not known");
        } else {
            h.text("part ").data(part);
        }
        h.close();
    }

    static void day(Html h, LocalDate day) {
        dayOr(h, day, "not known");
    }

    static void dayOr(Html h, LocalDate day, String otherwise) {
        if (day == null) {
            h.element("span", otherwise, "class", "quiet");
        } else {
            h.element("time", day.toString(), "datetime", day.toString());
        }
    }

    /** Sort key of a day; days not known sort last. */
    static String key(LocalDate day) {
        return day == null ? "9999" : day.toString();
    }

    static String[] depotMark(String depot) {
        return new String[] {"data-depot", depot == null ? "no depot on record" : depot};
    }

    /** What an empty section says. */
    static void nothing(Html h, String sentence) {
        h.element("p", sentence, "class", "nothing").line();
    }

    /** Says so when a list was cut. */
    static void cut(Html h, Listed<?> list, String what) {
        if (list.cut()) {
            h.element(
                            "p",
                            "The first " + Format.whole(list.rows().size()) + " of " + Format.whole(list.total()) + " "
                                    + what + " stand here; the tables of the run hold them all.",
                            "class",
                            "cut")
                    .line();
        }
    }

    /** A chance as figure, with its limits beneath. */
    static void chance(Html h, double p, double lower, double upper) {
        h.element("span", Format.chance(p), "class", "key");
        if (Double.isFinite(lower) && Double.isFinite(upper)) {
            h.element("span", Format.chances(lower, upper), "class", "under");
        }
    }
}
