package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.report.Headline.VehicleSaving;
import sensorrounds.report.RunFacts.QuarantineGroup;
import sensorrounds.report.RunFacts.RowCounts;

/** Section 1: what to do first, for everyone. */
final class SummarySection implements Section {
    @Override
    public String id() {
        return "start";
    }

    @Override
    public String title() {
        return "Start here";
    }

    @Override
    public String question() {
        return "What should be done first, and can these figures be trusted?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "The steps stand in the order in which they matter. Each leads to the section that holds the list behind it. "
                + "Figures hold for the as-of date at the top; chances look "
                + Format.count(data.run().horizonDays(), "day") + " ahead.";
    }

    @Override
    public void body(Html h, ReportData data) {
        Headline head = Headline.of(data);
        figures(h, data, head);
        h.open("ol", "class", "steps");
        unmonitored(h, head);
        replace(h, data, head);
        recurring(h, head);
        followUps(h, data, head);
        stock(h, data, head);
        model(h, data, head);
        rows(h, data);
        h.close("ol");
    }

    private static void figures(Html h, ReportData data, Headline head) {
        h.open("dl", "class", "figures");
        figure(h, Format.whole(head.unmonitoredWheels()), "wheels known to be without low-pressure warning");
        figure(h, Format.whole(head.now()), "sensors to replace now");
        figure(h, Format.whole(head.recurringCount()), "vehicles whose warning comes back");
        figure(h, Format.whole(head.owedCount()), "repairs still to be proven");
        figure(h, Format.whole(head.piecesToOrder()), "pieces to order");
        figure(h, Format.whole(data.run().sensorsInService()), "sensors in service");
        h.close("dl").line();
    }

    private static void figure(Html h, String figure, String of) {
        h.open("div").element("dt", of).element("dd", figure).close();
    }

    private static void step(Html h, String title, String anchor) {
        h.open("li")
                .open("a", "href", "#" + anchor)
                .element("strong", title)
                .close()
                .text(" ");
    }

    private static void unmonitored(Html h, Headline head) {
        step(h, "Tell the drivers.", "unmonitored");
        if (head.unmonitoredWheels() == 0) {
            h.text("No wheel is known to be without its low-pressure warning; a sensor can die between two visits.");
        } else {
            h.text(Format.count(head.unmonitoredWheels(), "wheel") + " on "
                    + Format.count(head.unmonitoredVehicles(), "vehicle")
                    + (head.unmonitoredWheels() == 1 ? " is" : " are")
                    + " known to give no warning of low pressure: the sensor is dead or a plain valve is fitted. Check "
                    + "those tyres by hand until they are put right.");
        }
        if (head.silentWheels() > 0) {
            h.text(" " + Format.count(head.silentWheels(), "more wheel", "more wheels")
                    + (head.silentWheels() == 1 ? " gives" : " give")
                    + " probably none: silent when tried last.");
        }
        if (head.systemWarnings() > 0) {
            h.text(" On " + Format.count(head.systemWarnings(), "vehicle")
                    + " the system’s own warning was on when last seen, so that no wheel there may be watched.");
        }
        h.close("li").line();
    }

    private static void replace(Html h, ReportData data, Headline head) {
        step(h, "Bring in, and replace.", "replace");
        String currency = data.run().costs().currency();
        if (head.now() == 0) {
            h.text("No vehicle is worth a stop of its own over the next "
                    + Format.count(data.run().horizonDays(), "day") + ".");
        } else {
            h.text(Format.count(head.now(), "sensor") + " on " + Format.count(head.vehiclesNow(), "vehicle") + ": "
                    + Format.money(currency, head.outlayNow()) + " now, expected to save "
                    + Format.money(currency, head.savingNow()) + " against waiting. Begin with ");
            names(h, head.firstVehicles());
            h.text(".");
        }
        if (head.readFirst() > 0) {
            h.text(" Go and read " + Format.count(head.readFirst(), "more vehicle", "more vehicles")
                    + " before anything is fitted there.");
        }
        if (head.atNextStop() > 0) {
            h.text(" " + Format.whole(head.atNextStop())
                    + " more are worth doing when the vehicle stands in the workshop anyway.");
        }
        if (head.placeFirst() > 0) {
            h.text(" At " + Format.count(head.placeFirst(), "place")
                    + " sensors keep failing: look at receiver and wiring there before fitting another.");
        }
        h.close("li").line();
    }

    private static void names(Html h, List<VehicleSaving> vehicles) {
        for (int i = 0; i < vehicles.size(); i++) {
            h.text(i == 0 ? "" : i == vehicles.size() - 1 ? " and " : ", ");
            h.data(vehicles.get(i).vehicleId());
            h.text(" (" + Format.count(vehicles.get(i).sensors(), "sensor") + ")");
        }
    }

    private static void recurring(Html h, Headline head) {
        step(h, "Look closer.", "recurring");
        if (head.recurring().isEmpty()) {
            h.text("No vehicle’s system warning keeps coming back.");
        } else {
            h.text(
                    "On " + Format.count(head.recurringCount(), "vehicle")
                            + " the system warning comes back. Look at the suspects before yet another relearn or part. Begin with ");
            h.data(head.recurring().get(0).vehicleId());
            head.worstRecurring().stream()
                    .flatMap(v -> v.suspects().stream().limit(1))
                    .forEach(s -> {
                        h.text(", first suspect ");
                        h.data(RecurringSection.suspectName(s)).text(" (" + Format.sure(s.probability()) + ")");
                    });
            h.text(".");
        }
        h.close("li").line();
    }

    private static void followUps(Html h, ReportData data, Headline head) {
        step(h, "Prove the cure.", "follow-ups");
        if (head.owed().isEmpty()) {
            h.text("No repair waits for its proof by a drive.");
        } else {
            h.text(Format.count(head.owedCount(), "repair") + " of a system warning still "
                    + (head.owedCount() == 1 ? "waits" : "wait")
                    + " for a drive long enough to prove it; the oldest, on ");
            h.data(head.owed().get(0).vehicleId());
            h.text(", for "
                    + Format.count(
                            FollowUpSection.daysOpen(
                                    head.owed().get(0), data.run().asOf()),
                            "day") + ".");
            if (head.outcomesMissing() > 0) {
                h.text(" " + driversWord(head.outcomesMissing()) + ".");
            }
        }
        if (head.returned() > 0) {
            h.text(" After " + Format.count(head.returned(), "repair") + " the warning came back.");
        }
        h.close("li").line();
    }

    static String driversWord(long missing) {
        return "For " + Format.whole(missing)
                + " of them the drive was long enough and only its outcome was not written " + "down: ask the driver";
    }

    private static void stock(Html h, ReportData data, Headline head) {
        step(h, "Order.", "stock");
        if (head.orders().isEmpty()) {
            h.text("Nothing needs to be ordered now to meet the service level.");
        } else {
            long parts = head.orders().stream()
                    .map(StockOrders.Order::partId)
                    .distinct()
                    .count();
            h.text(Format.count(head.piecesToOrder(), "piece") + " of " + Format.count(parts, "part") + ", about "
                    + Format.money(data.run().costs().currency(), head.orderCost())
                    + " at list prices, to meet the service level until the next delivery.");
        }
        h.close("li").line();
    }

    private static void model(Html h, ReportData data, Headline head) {
        step(h, "Know how far to trust it.", "survival");
        if (data.fits().isEmpty()) {
            h.text(
                    "No survival curve could be fitted, so no chance in this report rests on this fleet’s own failures.");
        } else {
            long failures =
                    data.fits().stream().mapToLong(f -> f.failures()).max().orElse(0);
            h.text("The curves rest on " + Format.count(data.fits().size(), "cohort") + ", the largest with "
                    + Format.count(failures, "failure") + ". ");
            h.text(
                    head.weakFits().isEmpty()
                            ? "None of the fits carries a caution."
                            : Format.count(head.weakFits().size(), "fit carries", "fits carry")
                                    + " a caution that the section spells out.");
            SurvivalSection.priorPart(data.fits()).ifPresent(words -> h.text(" " + words));
            h.text(" For one sensor the limits are wide: the order of the list is surer than any one date.");
        }
        h.close("li").line();
    }

    private static void rows(Html h, ReportData data) {
        RowCounts rows = data.run().rows();
        step(h, "Mend the logs.", "quality");
        if (rows.read() == 0) {
            h.text(
                    "No row was read, so nothing above says anything about the fleet. Check the path given for the logs.");
        } else if (rows.quarantined() == 0) {
            h.text("All " + Format.count(rows.read(), "row") + " read were taken up or set aside as duplicates.");
        } else {
            h.text(Format.whole(rows.quarantined()) + " of " + Format.count(rows.read(), "row") + " ("
                    + Format.share(rows.quarantined(), rows.read()) + ") were refused.");
            data.run().quarantine().stream()
                    .max(Comparator.comparingLong(QuarantineGroup::count)
                            .thenComparing(
                                    Comparator.comparing(QuarantineGroup::rule).reversed()))
                    .ifPresent(g -> {
                        h.text(" Most often: ");
                        h.data(g.rule());
                        h.text(" (" + Format.count(g.count(), "row") + "). What to do: ");
                        h.data(g.remedy()).text(g.remedy().endsWith(".") ? "" : ".");
                    });
        }
        h.close("li").line();
    }
}
