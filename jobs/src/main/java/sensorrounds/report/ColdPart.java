package sensorrounds.report;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.season.ClimateMonth;
import sensorrounds.season.ClimateMonth.Basis;
import sensorrounds.season.SeasonFit;

/** Whether sensors fail more often in the cold, and which months are cold where. */
final class ColdPart {
    /** The difference is called one below this chance of none. */
    private static final double CALLED = 0.05;
    /** Depots listed. */
    private static final int MOST = 50;

    private ColdPart() {}

    static void write(Html h, VehicleFits fits) {
        SeasonFit fit = fits.season();
        h.element("h3", "Do sensors fail more in the cold?");
        h.open("p");
        if (!fit.converged()) {
            h.text("Not known: ").data(fit.report().cause()).text(".");
        } else {
            answer(h, fit);
        }
        h.close("p").line();
        climate(h, fits.climate());
    }

    private static void answer(Html h, SeasonFit fit) {
        String limits = Format.fixed(fit.factor().lower(), 2) + "–"
                + Format.fixed(fit.factor().upper(), 2);
        if (fit.pValue() < CALLED) {
            h.text((fit.factor().value() > 1 ? "Yes" : "No, less often") + ": at the same age a sensor fails "
                    + Format.fixed(fit.factor().value(), 2)
                    + " times as often in a cold month as in another (95 % limits "
                    + limits + ").");
        } else {
            h.text("Not shown: at the same age the rate in cold months is "
                    + Format.fixed(fit.factor().value(), 2) + " times that in others, and anything from "
                    + Format.fixed(fit.factor().lower(), 2) + " to "
                    + Format.fixed(fit.factor().upper(), 2) + " times would agree with these visits (95 % limits).");
        }
        h.text(" About " + Format.whole(fit.failuresCold()) + " failures fell in the cold, "
                + rate(fit.failuresCold(), fit.yearsCold()) + " per 1\u202f000 sensor-years, and about "
                + Format.whole(fit.failuresOther()) + " in other months, "
                + rate(fit.failuresOther(), fit.yearsOther())
                + " per 1\u202f000. A failure between two visits is shared"
                + " out over the days between. Each vehicle class is compared within its depot, so that a cold place is not"
                + " blamed for what else it is.");
    }

    private static String rate(double failures, double years) {
        return Format.whole(1000 * failures / years);
    }

    /** A place with its cold months. */
    private record Place(String name, List<Month> cold, long visits, Basis weakest) {}

    private static void climate(Html h, List<ClimateMonth> months) {
        Map<String, List<ClimateMonth>> places = new LinkedHashMap<>();
        months.forEach(m -> places.computeIfAbsent(m.depot() == null ? "" : m.depot(), p -> new ArrayList<>())
                .add(m));
        List<Place> rows = places.entrySet().stream()
                .map(e -> new Place(
                        e.getKey(),
                        e.getValue().stream()
                                .filter(ClimateMonth::cold)
                                .map(ClimateMonth::month)
                                .toList(),
                        e.getValue().stream().mapToLong(ClimateMonth::visits).sum(),
                        e.getValue().stream()
                                .map(ClimateMonth::basis)
                                .max(Enum::compareTo)
                                .orElseThrow()))
                .limit(MOST)
                .toList();
        h.open("details").element("summary", "Which months are cold where");
        new Grid<Place>(Grid.Shape.CARDS, "Cold months by the air temperatures written down at visits")
                .column("Depot", (h1, p) -> name(h1, p.name()))
                .column("Cold months", (h1, p) -> h1.text(words(p.cold())))
                .count("Visits with a temperature", Place::visits)
                .column("Told by", (h1, p) -> h1.text(basis(p)))
                .write(h, rows);
        if (places.size() > MOST) {
            h.element("p", "The table climate holds all " + Format.whole(places.size() - 1) + " depots.")
                    .line();
        }
        h.close("details").line();
    }

    private static void name(Html h, String depot) {
        if (depot.isEmpty()) {
            h.text("The fleet as a whole");
        } else {
            h.data(depot);
        }
    }

    private static String words(List<Month> cold) {
        return cold.isEmpty()
                ? "none"
                : String.join(
                        ", ",
                        cold.stream()
                                .map(m -> m.getDisplayName(TextStyle.SHORT, Locale.ENGLISH))
                                .toList());
    }

    private static String basis(Place p) {
        return switch (p.weakest()) {
            case DEPOT -> "its own visits";
            case FLEET -> p.name().isEmpty() ? "all visits" : "some months by the whole fleet’s visits";
            case DECLARED -> "some months by the hemisphere set, for want of temperatures";
        };
    }
}
