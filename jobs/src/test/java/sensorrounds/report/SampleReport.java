package sensorrounds.report;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sensorrounds.condition.ReaderQuality;
import sensorrounds.condition.WatchEntry;
import sensorrounds.fleet.Part;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.intake.FileDoubt;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.recurrence.Suspect;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.report.ReportData.FindingGroup;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.report.ReportData.ReportRatio;
import sensorrounds.report.RunFacts.FileRows;
import sensorrounds.report.RunFacts.Labelled;
import sensorrounds.report.RunFacts.QuarantineGroup;
import sensorrounds.report.RunFacts.RowCounts;
import sensorrounds.review.WarningCounts;
import sensorrounds.stock.StockOutlook;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.NpmleCheck;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/** An invented fleet with three depots, for looking at the report and for its tests. */
final class SampleReport {
    static final LocalDate AS_OF = LocalDate.of(2026, 3, 31);

    static final List<String> DEPOTS = List.of("Hillfoot", "Quayside", "Mill Lane");
    private static final Costs COSTS = new Costs("EUR", LocalDate.of(2026, 1, 1), 60, 12, 22, 38, 140, 180);
    private static final Listed<Object> NONE = Listed.whole(List.of());

    private SampleReport() {}

    static ReportData realistic() {
        List<RankedReplacement> ranked = SampleLists.ranked(64);
        return new ReportData(
                facts(),
                SampleCurves.fits(),
                SampleCurves.curves(),
                new Listed<>(ranked, 1412),
                Listed.whole(SampleLists.unmonitored()),
                Listed.whole(SampleLists.recurring()),
                new Listed<>(SampleLists.watch(), 23),
                Listed.whole(SampleLists.followUps()),
                stock(),
                parts(),
                Listed.whole(readers()),
                findings(),
                causes(),
                plannedVisits(),
                depots(),
                List.of(
                        new ReportRatio(LastReport.SOUND, 0.8, 96, 121.3),
                        new ReportRatio(LastReport.SLOW_TO_WAKE, 2.4, 31, 12.8),
                        new ReportRatio(LastReport.LOW_BATTERY, 6.7, 44, 6.6),
                        new ReportRatio(LastReport.SILENT_ONCE, 4.1, 18, 4.4)),
                SampleTotals.of(ranked, SampleLists.recurring(), SampleLists.unmonitored(), SampleLists.followUps()),
                SampleWarnings.realistic(),
                SampleCauses.facts(),
                DecisionFacts.none(),
                Map.of());
    }

    /** A run that read nothing. */
    static ReportData empty() {
        RunFacts run = new RunFacts(
                "empty",
                AS_OF,
                180,
                COSTS,
                0,
                0,
                null,
                null,
                new RowCounts(0, 0, 0, 0),
                none(),
                List.of(),
                none(),
                List.of(),
                List.of());
        return new ReportData(
                run,
                List.of(),
                List.of(),
                none(),
                none(),
                none(),
                none(),
                none(),
                List.of(),
                List.of(),
                none(),
                List.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                List.of(),
                SampleTotals.of(List.of(), List.of(), List.of(), List.of()),
                WarningCounts.Summary.empty(),
                new SurvivalFacts(List.of(), List.of(), 0.20, List.of(), List.of(), Optional.empty()),
                DecisionFacts.none(),
                Map.of());
    }

    /** The realistic report with {@code text} wherever a log or register can put text of its own. */
    static ReportData withText(String text) {
        ReportData d = realistic();
        WheelPosition place = WheelPosition.parse("1L").orElseThrow();
        SensorOutlook o = SampleLists.outlook(text, text, place, text, text, text, 2000, LastReport.SOUND, 0.4);
        RankedReplacement line =
                new RankedReplacement(1, o, 120, 190, 70, 70, 0.2, null, Advice.REPLACE_NOW, text, null);
        RunFacts r = d.run();
        RunFacts run = new RunFacts(
                text,
                AS_OF,
                180,
                COSTS,
                r.vehicles(),
                r.sensorsInService(),
                r.firstVisit(),
                r.lastVisit(),
                r.rows(),
                Listed.whole(List.of(new FileRows(text, new RowCounts(3, 2, 1, 0)))),
                List.of(new QuarantineGroup(text, 1, new Source(text, 7), text, text)),
                Listed.whole(List.of(new FileDoubt(text, FileDoubt.Kind.LAST_LINE_OPEN, text, text))),
                List.of(new Labelled(text, text)),
                List.of(new Labelled(text, text)));
        Suspect suspect = new Suspect(1, place, text, 0.7, List.of(text), text);
        RecurringVehicle vehicle = new RecurringVehicle(
                text,
                text,
                text,
                3,
                2,
                2,
                null,
                1.5,
                1.1,
                0.97,
                Pattern.RECURRING_INTERMITTENT,
                AS_OF,
                true,
                null,
                List.of(suspect),
                text);
        CohortFit f = d.fits().get(0);
        CohortFit fit = new CohortFit(
                text,
                text,
                text,
                9,
                3,
                12,
                2,
                1,
                3,
                2000,
                1500,
                2500,
                1800,
                -12,
                9,
                1e-7,
                0.3,
                text,
                new NpmleCheck(text, 9, text, text),
                CohortFit.LawInUse.weibull(2));
        return new ReportData(
                run,
                List.of(f, fit),
                List.of(
                        new CurvePoint(text, CurvePoint.Method.FITTED_LAW, 0, 1, 1, 1, 9, 0),
                        new CurvePoint(text, CurvePoint.Method.FITTED_LAW, 2000, 0.4, 0.2, 0.6, 3, 3)),
                Listed.whole(List.of(line)),
                Listed.whole(List.of(new UnmonitoredWheel(
                        text, text, place, text, text, AS_OF, text, UnmonitoredWheel.Certainty.KNOWN))),
                Listed.whole(List.of(vehicle)),
                Listed.whole(List.of(new WatchEntry(
                        text, text, place, text, text, text, WatchEntry.Sign.SLOW_TO_WAKE, AS_OF, 0.9, text, text))),
                Listed.whole(List.of(
                        new FollowUp(text, text, text, AS_OF, Repair.RELEARN, 5, 20, FollowUp.State.OPEN, null, null))),
                List.of(new StockOutlook(
                        text,
                        text,
                        YearMonth.of(2026, 4),
                        AS_OF.plusDays(1),
                        AS_OF.plusDays(30),
                        1,
                        3,
                        1,
                        6,
                        2,
                        0,
                        6,
                        4,
                        90)),
                List.of(new Part(text, text, Part.Kind.SENSOR, 38, 5, 4, 433.92, List.of(text))),
                Listed.whole(
                        List.of(new ReaderQuality(ReaderQuality.Of.READER, text, null, 40, 1.2, 0.8, 0.7, 0.9, false))),
                List.of(new FindingGroup(
                        Finding.Kind.MOVED,
                        1,
                        List.of(new Finding(
                                Finding.Kind.MOVED,
                                text,
                                text,
                                place,
                                text,
                                AS_OF,
                                text,
                                text,
                                List.of(new Source(text, 1)))))),
                causes(),
                Map.of(text, AS_OF),
                Map.of(text, text),
                List.of(),
                SampleTotals.of(d),
                SampleWarnings.withText(text),
                SampleCauses.facts(text),
                DecisionFacts.none(),
                Map.of());
    }

    private static RunFacts facts() {
        return new RunFacts(
                "2026-03-31-a1",
                AS_OF,
                180,
                COSTS,
                362,
                1486,
                LocalDate.of(2021, 2, 3),
                AS_OF,
                new RowCounts(48_216, 46_902, 1_066, 248),
                Listed.whole(List.of(
                        new FileRows("hillfoot/2021-2024.jsonl", new RowCounts(20_544, 20_410, 96, 38)),
                        new FileRows("mill-lane/visits.csv.gz", new RowCounts(9_412, 8_440, 902, 70)),
                        new FileRows("quayside/2025/visits.jsonl", new RowCounts(18_260, 18_052, 68, 140)))),
                List.of(
                        new QuarantineGroup(
                                "date can be read day first or month first",
                                812,
                                new Source("mill-lane/visits.csv.gz", 214),
                                "04/05/2024",
                                "State the order of the date in the mapping file of this folder."),
                        new QuarantineGroup(
                                "two wheels of a visit at one place",
                                170,
                                new Source("mill-lane/visits.csv.gz", 1_022),
                                "OSR",
                                "Look at the visit on paper; the place of one of the two wheels is wrong."),
                        new QuarantineGroup(
                                "no vehicle",
                                84,
                                new Source("hillfoot/2021-2024.jsonl", 3_119),
                                null,
                                "Fill in vehicleId, or VIN if the register holds it.")),
                Listed.whole(List.of(new FileDoubt(
                        "mill-lane/visits.csv.gz",
                        FileDoubt.Kind.LAST_LINE_OPEN,
                        "line 9413, the last, has no line end: the file may have been cut inside it",
                        "read it again when it is whole"))),
                List.of(
                        new Labelled("Planning horizon", "180 days"),
                        new Labelled("Silent visits until a sensor counts as failed", "2"),
                        new Labelled("Drive that proves a repair", "20 minutes"),
                        new Labelled("Service level", "95 %")),
                List.of(new Labelled("Sensor Rounds", "0.1.0"), new Labelled("Java", "17")));
    }

    private static List<StockOutlook> stock() {
        List<StockOutlook> rows = new ArrayList<>();
        for (int d = 0; d < 2; d++) {
            for (String part : List.of("S-433-40", "S-433-70")) {
                double level = (part.endsWith("40") ? 11 : 4.2) - d * 2;
                for (int m = 0; m < 6; m++) {
                    double e = level * (m > 3 ? 1.4 : 1);
                    rows.add(new StockOutlook(
                            part,
                            DEPOTS.get(d),
                            m == 0 ? null : YearMonth.of(2026, 3).plusMonths(m),
                            m == 0 ? null : LocalDate.of(2026, 3, 1).plusMonths(m),
                            m == 0 ? AS_OF : YearMonth.of(2026, 3).plusMonths(m).atEndOfMonth(),
                            m == 1 ? 3 : 0,
                            e,
                            (int) Math.max(0, Math.floor(e - 1.6 * Math.sqrt(e))),
                            (int) Math.ceil(e + 1.7 * Math.sqrt(e)),
                            m == 0 ? 6 + d : null,
                            0,
                            (int) Math.ceil(e + 1.7 * Math.sqrt(e)),
                            order(part, m),
                            210 - 40 * d));
                }
            }
        }
        return rows;
    }

    private static Integer order(String part, int month) {
        if (month > 1) {
            return null;
        }
        return month == 1 ? 0 : part.endsWith("40") ? 12 : 4;
    }

    private static List<Part> parts() {
        return List.of(
                new Part(
                        "S-433-40",
                        "Sensor 433 MHz, clamp-in, to 450 kPa",
                        Part.Kind.SENSOR,
                        34.5,
                        6,
                        4,
                        433.92,
                        List.of("S-433-70")),
                new Part(
                        "S-433-70",
                        "Sensor 433 MHz, snap-in, to 700 kPa",
                        Part.Kind.SENSOR,
                        41,
                        9,
                        2,
                        433.92,
                        List.of()));
    }

    private static List<ReaderQuality> readers() {
        return List.of(
                new ReaderQuality(ReaderQuality.Of.READER, "reader-1", null, 4_120, 1.21, 0.83, 0.82, 0.84, false),
                new ReaderQuality(ReaderQuality.Of.READER, "reader-2", null, 2_902, 1.27, 0.79, 0.77, 0.80, false),
                new ReaderQuality(ReaderQuality.Of.PAIR, "reader-3", "technician-3", 611, 1.92, 0.52, 0.48, 0.56, true),
                new ReaderQuality(ReaderQuality.Of.TECHNICIAN, null, "technician-7", 402, 1.88, 0.55, 0.49, 0.61, true),
                new ReaderQuality(
                        ReaderQuality.Of.TECHNICIAN, null, "technician-8", 958, 1.21, 0.83, 0.80, 0.86, false));
    }

    private static List<FindingGroup> findings() {
        return List.of(
                new FindingGroup(
                        Finding.Kind.UNRECORDED_CHANGE,
                        37,
                        List.of(new Finding(
                                Finding.Kind.UNRECORDED_CHANGE,
                                "V-133",
                                "1A2BA0E2",
                                WheelPosition.parse("2L").orElseThrow(),
                                null,
                                LocalDate.of(2024, 10, 28),
                                "The wheel answers with an ID that no visit recorded as fitted.",
                                "Taken as fitted between 2024-04-02 and 2024-10-28.",
                                List.of(new Source("mill-lane/visits.csv.gz", 4_410))))),
                new FindingGroup(
                        Finding.Kind.UNREGISTERED_VEHICLE,
                        2,
                        List.of(new Finding(
                                Finding.Kind.UNREGISTERED_VEHICLE,
                                "T-007",
                                null,
                                null,
                                null,
                                LocalDate.of(2025, 3, 3),
                                "The fleet register does not hold this vehicle.",
                                "Kept, without depot, class and first use.",
                                List.of(new Source("quayside/2025/visits.jsonl", 91))))));
    }

    private static Map<FailureCause, Long> causes() {
        Map<FailureCause, Long> causes = new LinkedHashMap<>();
        causes.put(FailureCause.BATTERY, 101L);
        causes.put(FailureCause.STEM_OR_CORROSION, 34L);
        causes.put(FailureCause.TYRE_CHANGE_DAMAGE, 15L);
        causes.put(FailureCause.UNKNOWN, 33L);
        return causes;
    }

    private static Map<String, LocalDate> plannedVisits() {
        return Map.of(
                "V-112", LocalDate.of(2026, 4, 9),
                "V-127", LocalDate.of(2026, 5, 4),
                "V-104", LocalDate.of(2026, 4, 20));
    }

    private static Map<String, String> depots() {
        return Map.of("V-127", "Hillfoot", "V-118", "Quayside", "T-019", "Quayside", "V-109", "Hillfoot");
    }

    @SuppressWarnings("unchecked")
    private static <T> Listed<T> none() {
        // An empty list is a list of anything.
        return (Listed<T>) NONE;
    }
}
