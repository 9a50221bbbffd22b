package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.Repair;
import sensorrounds.recurrence.ComebackRate;
import sensorrounds.recurrence.NoFaultShare;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.recurrence.WarningCurvePoint;
import sensorrounds.recurrence.WarningCurvePoint.Clock;
import sensorrounds.recurrence.WarningTrend;
import sensorrounds.review.WarningCounts;

/** Section 6: how often the warning comes back after each kind of repair, and how warnings add up on a vehicle. */
final class HeldSection implements Section {
    /** All vehicles stand last. */
    private static final Comparator<String> COHORTS =
            Comparator.comparing((String c) -> c.equals(PeerRates.ALL)).thenComparing(Comparator.naturalOrder());

    @Override
    public String id() {
        return "did-it-hold";
    }

    @Override
    public String title() {
        return "Did it hold?";
    }

    @Override
    public String question() {
        return "Is a relearn alone a cure, and how often does the system warning come back after each kind of repair?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "A repair is followed until the warning is seen again, until other work is done on the system, or to the day of "
                + "this report; one followed for less than the days asked about counts for as long as it was followed. Where no "
                + "visit saw the outcome the repair counts as held in the share, and not at all in “of those seen”: the truth "
                + "is likely to lie between the two. Kinds of repair are not dealt out by lot: sets are replaced on old "
                + "vehicles, relearns tried on easy cases, and a warning may come back for another cause. The “adjusted” column of "
                + "the counts puts all kinds on the same mix of first and repeated work, and adjusts for nothing else.";
    }

    @Override
    public void body(Html h, ReportData data) {
        WarningCounts.Summary w = data.warnings();
        if (w.comebacks().isEmpty()) {
            Cells.nothing(
                    h,
                    "No repair of a system warning is on record: a visit with the warning on arrival at which a sensor was "
                            + "replaced, a relearn done or codes cleared.");
        } else {
            comebacks(h, w.comebacks());
        }
        noFaults(h, w.noFaults());
        warnings(h, w);
    }

    private static void comebacks(Html h, List<ComebackRate> rates) {
        List<ComebackRate> rows = rates.stream()
                .sorted(Comparator.comparing(
                                ComebackRate::repair, Comparator.nullsLast(Comparator.<Repair>naturalOrder()))
                        .thenComparingInt(ComebackRate::windowDays))
                .toList();
        List<Integer> windows =
                rows.stream().map(ComebackRate::windowDays).distinct().sorted().toList();
        Grid<List<ComebackRate>> grid = new Grid<List<ComebackRate>>(
                        Grid.Shape.CARDS, "Share of repairs after which the warning was back, by what was done")
                .column(
                        "Work",
                        (h1, kind) -> h1.element("span", work(kind.get(0).repair()), "class", "key"))
                .count("Repairs", kind -> kind.get(0).repairs());
        for (int window : windows) {
            grid.number(
                    "Back within " + Format.count(window, "day"),
                    kind -> within(kind, window).map(ComebackRate::share).orElse(Double.NaN),
                    (h1, kind) -> within(kind, window)
                            .ifPresentOrElse(
                                    r -> share(h1, r.share(), r.lower(), r.upper()), () -> h1.text(Format.NONE)));
        }
        grid.write(
                h,
                rows.stream()
                        .map(ComebackRate::repair)
                        .distinct()
                        .map(kind ->
                                rows.stream().filter(r -> r.repair() == kind).toList())
                        .toList());
        counts(h, rows);
    }

    private static Optional<ComebackRate> within(List<ComebackRate> kind, int window) {
        return kind.stream().filter(r -> r.windowDays() == window).findFirst();
    }

    private static void counts(Html h, List<ComebackRate> rows) {
        h.open("details").element("summary", "The counts behind the shares");
        new Grid<ComebackRate>(Grid.Shape.SCROLLS, "Repairs by outcome; each is counted once in a row")
                .column("Work", (h1, r) -> h1.text(work(r.repair())))
                .number("Within", ComebackRate::windowDays, (h1, r) -> h1.text(Format.count(r.windowDays(), "day")))
                .count("Repairs", ComebackRate::repairs)
                .count("Back", ComebackRate::back)
                .count("Seen to hold", ComebackRate::held)
                .count("Outcome not seen", ComebackRate::notLooked)
                .count("Cut short", ComebackRate::cutShort)
                .number("Share back", ComebackRate::share, (h1, r) -> share(h1, r.share(), r.lower(), r.upper()))
                .number("Of those seen", ComebackRate::shareOfSeen, (h1, r) -> h1.text(Format.share(r.shareOfSeen())))
                .number("Adjusted", ComebackRate::adjustedShare, (h1, r) -> h1.text(Format.share(r.adjustedShare())))
                .write(h, rows);
        h.close("details").line();
    }

    static String work(Repair repair) {
        if (repair == null) {
            return "any of these";
        }
        return switch (repair) {
            case RELEARN -> "relearn alone";
            case CODES_CLEARED -> "codes cleared alone";
            case OTHER_WHEEL_WORK, SET_REPLACED, SENSOR_REPLACED, PRESSURES_CORRECTED, NONE -> Words.of(repair);
        };
    }

    private static void share(Html h, double share, double lower, double upper) {
        h.element("span", Format.share(share), "class", "key");
        if (Double.isFinite(share)) {
            h.element("span", Format.chances(lower, upper), "class", "under");
        }
    }

    private static void noFaults(Html h, List<NoFaultShare> shares) {
        Optional<NoFaultShare> all =
                shares.stream().filter(s -> s.cohort().equals(PeerRates.ALL)).findFirst();
        if (all.isEmpty()) {
            return;
        }
        h.element("h3", "No fault found");
        NoFaultShare s = all.get();
        long looked = s.visits() - s.notLooked();
        h.element(
                        "p",
                        "At " + Format.whole(s.nothingFound()) + " of " + Format.count(looked, "visit")
                                + " with a system warning and at least one wheel tried, every sensor answered, no code named "
                                + "a wheel and nothing was done at one"
                                + (looked == 0
                                        ? "."
                                        : ": " + Format.share(s.share()) + " (" + Format.chances(s.lower(), s.upper())
                                                + ").")
                                + " Reviews of no-fault-found across trades give 20 to 50 %.")
                .line();
        List<NoFaultShare> rows = shares.stream()
                .sorted(Comparator.comparing(NoFaultShare::cohort, COHORTS))
                .toList();
        h.open("details").element("summary", "What was found, by class");
        new Grid<NoFaultShare>(Grid.Shape.CARDS, "What was found at visits with a system warning")
                .column("Class", (h1, r) -> h1.data(r.cohort()))
                .count("Visits", NoFaultShare::visits)
                .count("Not looked", NoFaultShare::notLooked)
                .count("Sensor silent", NoFaultShare::sensorSilent)
                .count("Code names a wheel", NoFaultShare::codeNamesWheel)
                .count("Work on a wheel", NoFaultShare::workOnWheel)
                .count("Nothing found", NoFaultShare::nothingFound)
                .number("Share", NoFaultShare::share, (h1, r) -> share(h1, r.share(), r.lower(), r.upper()))
                .write(h, rows);
        h.close("details").line();
    }

    private static void warnings(Html h, WarningCounts.Summary w) {
        if (w.trends().isEmpty()) {
            return;
        }
        h.element("h3", "How warnings add up");
        h.element(
                        "p",
                        "Mean number of system warnings of a vehicle, returns after repair among them, since its first visit. "
                                + "The warning that led to that visit is not counted. Limits allow for vehicles that differ. The "
                                + "trend asks whether warnings come more often as time goes on.",
                        "class",
                        "how")
                .line();
        h.open("div", "class", "charts");
        new WarningChart(w.curve()).write(h);
        h.close("div").line();
        List<WarningTrend> rows = w.trends().stream()
                .sorted(Comparator.comparing(WarningTrend::cohort, COHORTS))
                .toList();
        new Grid<WarningTrend>(Grid.Shape.CARDS, "System warnings by class")
                .column("Class", (h1, t) -> h1.data(t.cohort()))
                .count("Vehicles", WarningTrend::vehicles)
                .count("Warned", WarningTrend::warned)
                .count("Warnings", WarningTrend::events)
                .number("A year", WarningTrend::perYear, (h1, t) -> h1.text(Format.figure(t.perYear())))
                .number(
                        "By one year",
                        t -> byOneYear(w, t).map(WarningCurvePoint::mean).orElse(Double.NaN),
                        (h1, t) -> h1.text(
                                byOneYear(w, t).map(WarningChart::number).orElse(Format.NONE)))
                .column("Trend", (h1, t) -> h1.text(trend(t)))
                .write(h, rows);
    }

    private static Optional<WarningCurvePoint> byOneYear(WarningCounts.Summary w, WarningTrend t) {
        List<WarningCurvePoint> curve = w.curve().stream()
                .filter(p -> p.clock() == Clock.SINCE_FIRST_VISIT && p.cohort().equals(t.cohort()))
                .sorted(Comparator.comparingInt(WarningCurvePoint::days))
                .toList();
        boolean reaches = !curve.isEmpty() && curve.get(curve.size() - 1).days() >= Format.days(1);
        return reaches ? curve.stream().filter(p -> p.days() <= Format.days(1)).reduce((a, b) -> b) : Optional.empty();
    }

    private static String trend(WarningTrend t) {
        return switch (t.direction()) {
            case MORE_OFTEN -> "more often with time (p " + Format.figure(t.pValue()) + ")";
            case LESS_OFTEN -> "less often with time (p " + Format.figure(t.pValue()) + ")";
            case NO_TREND_SHOWN -> "none shown (p " + Format.figure(t.pValue()) + ")";
            case TOO_FEW -> "too few vehicles warned to tell";
        };
    }
}
