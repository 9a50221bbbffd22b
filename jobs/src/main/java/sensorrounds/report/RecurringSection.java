package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.recurrence.FalseFlags;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.recurrence.Suspect;

/** Section 4: vehicles whose system warning keeps coming back, one card for each. */
final class RecurringSection implements Section {
    @Override
    public String id() {
        return "recurring";
    }

    @Override
    public String title() {
        return "Warnings that come back";
    }

    @Override
    public String question() {
        return "On which vehicles does the system warning keep returning, and where should a technician look first?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Each card tells one vehicle’s story. The chance that its rate lies above its peers’ says how surely the "
                + "warning is more than bad luck; the rate is drawn towards the peers, so that a short history cannot shout. "
                + "The suspects’ chances add up to 100 %, and one of them may be “not a sensor”. They say where to look "
                + "first, not what to fit.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<RecurringVehicle> recurring = Headline.recurring(data);
        if (recurring.isEmpty()) {
            Cells.nothing(
                    h,
                    "No vehicle’s system warning keeps coming back. Vehicles with a warning that was seen and did not "
                            + "return are counted below, if there are any.");
        }
        Cells.cut(h, data.recurring(), "vehicles with system warnings");
        data.warnings().falseFlags().stream()
                .filter(f -> f.cohort().equals(PeerRates.ALL) && f.listed() > 0)
                .forEach(f -> expectedFalse(h, f));
        h.open("div", "class", "vehicle-cards");
        recurring.forEach(v -> card(h, v, data.vehiclePages().get(v.vehicleId())));
        h.close("div").line();
        notRecurring(h, data);
    }

    /** How many of the list chance alone is expected to have put there. */
    private static void expectedFalse(Html h, FalseFlags f) {
        boolean one = f.listed() == 1;
        h.element(
                        "p",
                        "Of " + (one ? "this" : "these") + " " + Format.count(f.listed(), "vehicle") + " about "
                                + Format.fixed(f.expected(), 1) + " (" + Format.share(f.share())
                                + ") can be expected to warn no more often in the long run than "
                                + (one ? "its" : "their")
                                + " peers do: chance put them here. With nine chances in ten they are "
                                + Format.whole(f.upperLimit()) + " at most (" + Format.share(f.upperShare())
                                + "). The others warn more often.",
                        "class",
                        "how")
                .line();
    }

    /** "not a sensor", or the place with the sensor. */
    static String suspectName(Suspect s) {
        if (s.isSensor()) {
            return Words.place(s.position(), null) + ", sensor " + s.sensorId();
        }
        return s.position() == null
                ? "Not a sensor: receiver, wiring or blind spot"
                : Words.place(s.position(), null) + ": the place rather than the sensor";
    }

    private static void card(Html h, RecurringVehicle v, String page) {
        h.open("article", "class", "vehicle-card");
        h.open("h3").data(v.vehicleId()).close();
        h.open("p", "class", "under");
        h.data(v.depot() == null ? "no depot on record" : v.depot());
        if (v.vehicleClass() != null) {
            h.text(", ").data(v.vehicleClass());
        }
        h.text("; " + Words.of(v.pattern()) + "; last seen ");
        Cells.day(h, v.lastSeen());
        h.close("p");
        h.open("p").story(v.story()).close();
        h.element(
                "p",
                Format.count(v.episodes(), "episode") + ", " + Format.count(v.returnsAfterRepair(), "return")
                        + " after work before they were seen off, in " + Format.fixed(v.exposureYears(), 1) + " years"
                        + (v.driven() == null
                                ? ""
                                : " and " + Format.whole(Math.round(v.driven().km())) + " km") + ": "
                        + Format.fixed(v.ratePerYear(), 1) + " a year as counted"
                        + (v.driven() == null
                                ? ""
                                : ", " + Format.fixed(v.driven().per10000Km(), 1) + " in 10 000 km")
                        + "; " + Format.fixed(v.shrunkRatePerYear(), 1)
                        + " a year drawn towards its peers. Chance that it lies above them: "
                        + Format.sure(v.probabilityAbovePeers()) + ".");
        if (v.followUpOpen()) {
            h.element("p", "The last work is not yet proven by a drive.", "class", "owed");
        }
        if (!v.suspects().isEmpty()) {
            h.open("ol", "class", "suspects");
            v.suspects().stream()
                    .sorted(Comparator.comparingInt(Suspect::order))
                    .forEach(s -> suspect(h, s));
            h.close("ol");
        }
        if (page != null) {
            h.open("p", "class", "screen-only")
                    .element("a", "Its whole story: every visit, wheel and repair", "href", page)
                    .close();
        }
        h.close("article").line();
    }

    private static void suspect(Html h, Suspect s) {
        h.open("li").open("p");
        h.open("strong").data(suspectName(s)).close();
        h.text(" ")
                .element("span", Format.sure(s.probability()), "class", "suspect-chance")
                .close();
        if (!s.reasons().isEmpty()) {
            h.open("ul");
            s.reasons().forEach(r -> h.open("li").data(r).close());
            h.close("ul");
        }
        if (s.nextStep() != null && !s.nextStep().isBlank()) {
            h.open("p").element("strong", "Next: ").data(s.nextStep()).close();
        }
        h.close("li");
    }

    private static void notRecurring(Html h, ReportData data) {
        List<RecurringVehicle> others = data.recurring().rows().stream()
                .filter(v -> v.pattern() == Pattern.NOT_RECURRING)
                .sorted(Comparator.comparing(RecurringVehicle::vehicleId))
                .toList();
        if (others.isEmpty()) {
            return;
        }
        h.open("details")
                .element("summary", Format.count(others.size(), "vehicle") + " with a warning that did not come back");
        new Grid<RecurringVehicle>(Grid.Shape.CARDS, "Warnings seen and not recurring")
                .column("Vehicle", (h1, v) -> Cells.vehicle(h1, v.vehicleId(), v.depot()))
                .count("Episodes", RecurringVehicle::episodes)
                .column("Last seen", (h1, v) -> Cells.day(h1, v.lastSeen()))
                .column("Proof", (h1, v) -> h1.text(v.followUpOpen() ? "still to be proven" : "nothing open"))
                .write(h, others);
        h.close("details").line();
    }
}
