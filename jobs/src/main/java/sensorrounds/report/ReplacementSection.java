package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.RankedReplacement;

/** Section 3: the ranked replacement list. */
final class ReplacementSection implements Section {
    @Override
    public String id() {
        return "replace";
    }

    @Override
    public String title() {
        return "Replacement list";
    }

    @Override
    public String question() {
        return "Which sensors should be replaced before they fail, and what does it save?";
    }

    @Override
    public String howToRead(ReportData data) {
        Costs c = data.run().costs();
        return "First what to do now, vehicle by vehicle, the stop that saves most leading; then what can wait for a stop, "
                + "sensors to watch, sensors to keep. The sensors of a vehicle share one set-up. Now is what it costs to do as "
                + "advised; later is the expected cost of leaving it: to the next stop for what is to be done now, else from the next "
                + "stop to the one after, less the worth of the days it is still used. Without a booking, a vehicle’s stops are "
                + "expected in the rhythm of its visits. The lines of a vehicle add up to its stop. The chance is that the sensor does not work in "
                + Format.count(data.run().horizonDays(), "day")
                + ", also for having died unseen since its last answer; its 95 % limits stand in brackets. In the small picture "
                + "the dot is the chance, the bar its limits, and the upright stroke the chance from which replacing pays when "
                + "the vehicle stands anyway. Costs are those of "
                + c.asOf() + ": " + money(c, c.plannedVisit()) + " for a planned stop, " + money(c, c.reading())
                + " for going to read a vehicle, " + money(c, c.perWheel())
                + " for work on a wheel, " + money(c, c.breakdown())
                + " for a call-out with the vehicle standing still. A high place means “inspect or offer”, never “unsafe”; "
                + "a low place promises nothing.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<RankedReplacement> rows = data.ranked().rows().stream()
                .sorted(Comparator.comparingInt(RankedReplacement::rank))
                .toList();
        if (rows.isEmpty()) {
            Cells.nothing(
                    h,
                    "No sensor is ranked: either none is in service with an outlook, or no curve could be fitted. "
                            + "The section on sensor life says which.");
            return;
        }
        Cells.cut(h, data.ranked(), "ranked sensors");
        String currency = data.run().costs().currency();
        new Grid<RankedReplacement>(Grid.Shape.CARDS, "Sensors by what to do and what it is expected to save")
                .withTools()
                .marks(r -> new String[] {
                    "data-depot",
                    r.outlook().sensor().depot() == null
                            ? "no depot on record"
                            : r.outlook().sensor().depot(),
                    "data-advice",
                    Words.of(r.advice())
                })
                .number("Rank", RankedReplacement::rank, (h1, r) -> h1.text(Format.whole(r.rank())))
                .column(
                        "Vehicle",
                        r -> r.outlook().sensor().vehicleId(),
                        (h1, r) -> Cells.vehicle(
                                h1,
                                r.outlook().sensor().vehicleId(),
                                r.outlook().sensor().depot()))
                .column("Place and sensor", (h1, r) -> placeAndSensor(h1, r.outlook()))
                .measured(
                        "Age and last report", r -> sortableAge(r.outlook()), (h1, r) -> ageAndReport(h1, r.outlook()))
                .number("Chance of failing", r -> r.outlook().chances().pHorizon(), ReplacementSection::chance)
                .number("Cost now, later", RankedReplacement::costNow, (h1, r) -> costs(h1, r, currency))
                .number("Saving", RankedReplacement::saving, (h1, r) -> saving(h1, r, currency))
                .column("Advice", r -> Words.of(r.advice()), ReplacementSection::advice)
                .write(h, rows);
    }

    private static void placeAndSensor(Html h, SensorOutlook o) {
        h.open("span", "class", "place")
                .data(Words.place(o.sensor().position(), o.sensor().wheelSet()))
                .close();
        h.open("span", "class", "under");
        Cells.sensorOr(h, o.sensor().sensorId(), "no ID on record");
        h.close().open("span", "class", "under");
        if (o.sensor().part() == null) {
            h.text("part not known");
        } else {
            h.text("part ").data(o.sensor().part());
        }
        h.close();
    }

    private static void ageAndReport(Html h, SensorOutlook o) {
        h.text(
                o.sensor().ageDays() == null
                        ? "age not known"
                        : Format.age(o.sensor().ageDays()));
        h.open("span", "class", "under");
        h.text((o.sensor().ageDays() == null ? "" : Words.of(o.sensor().basis()) + "; ")
                + Words.of(o.sensor().lastReport()));
        if (o.sensor().lastReadOn() != null) {
            h.text(", ");
            Cells.day(h, o.sensor().lastReadOn());
        }
        h.close();
    }

    private static void chance(Html h, RankedReplacement r) {
        SensorOutlook o = r.outlook();
        if (Double.isNaN(o.chances().pHorizon())) {
            h.element("span", "none: no curve fits", "class", "quiet");
            return;
        }
        h.element("span", Format.chance(o.chances().pHorizon()), "class", "key");
        h.element(
                "span",
                " (" + Format.chances(o.chances().pHorizonLower(), o.chances().pHorizonUpper()) + ")",
                "class",
                "limits-text");
        ChanceBar.write(h, r);
        h.element("span", breakEven(r), "class", "under");
    }

    /** Where the chance stands against the one from which replacing pays at a stop that happens anyway. */
    static String breakEven(RankedReplacement r) {
        double p = r.breakEvenProbability();
        if (Double.isNaN(p) || p > 1) {
            return "none is high enough to pay";
        }
        return (r.outlook().chances().pHorizon() > p ? "over the " : "under the ") + Format.chance(p)
                + " from which it pays";
    }

    private static void costs(Html h, RankedReplacement r, String currency) {
        h.text("now " + Format.money(currency, r.costNow()));
        h.element("span", "later " + Format.money(currency, r.costLater()), "class", "under");
    }

    private static void saving(Html h, RankedReplacement r, String currency) {
        h.element("span", Format.money(currency, r.saving()), "class", "key");
        if (!Double.isNaN(r.stopSaving()) && r.stopSaving() > r.saving()) {
            h.element("span", "the stop " + Format.money(currency, r.stopSaving()), "class", "under");
        }
    }

    private static void advice(Html h, RankedReplacement r) {
        h.element(
                "span",
                Words.of(r.advice()),
                "class",
                "advice " + r.advice().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        // The figures stand in the row already; the sentence is for whoever asks, and for the place that must be seen.
        h.open("details", "class", "why", "open", r.advice() == Advice.CHECK_PLACE_FIRST ? "open" : null);
        h.element("summary", "Why").data(r.reason()).close();
    }

    /** Sensors of unknown age sort behind all others. */
    private static double sortableAge(SensorOutlook o) {
        return o.sensor().ageDays() == null ? Double.NaN : o.sensor().ageDays();
    }

    private static String money(Costs c, double amount) {
        return Format.money(c.currency(), amount);
    }
}
