package sensorrounds.report;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import sensorrounds.condition.ReaderQuality;
import sensorrounds.condition.WatchEntry;
import sensorrounds.fleet.Part;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.Repair;
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
import sensorrounds.stock.StockOutlook;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/** An invented fleet with three depots, for looking at the report and for its tests. */
final class SampleReport {
    static final LocalDate AS_OF = LocalDate.of(2026, 3, 31);

    private static final List<String> DEPOTS = List.of("Hillfoot", "Quayside", "Mill Lane");
    private static final Costs COSTS = new Costs("EUR", LocalDate.of(2026, 1, 1), 60, 22, 38, 140, 180);
    private static final Listed<Object> NONE = Listed.whole(List.of());

    private SampleReport() {}

    static ReportData realistic() {
        List<RankedReplacement> ranked = ranked(64);
        return new ReportData(
                facts(),
                fits(),
                curves(),
                new Listed<>(ranked, 1412),
                Listed.whole(unmonitored()),
                Listed.whole(recurring()),
                new Listed<>(watch(), 23),
                Listed.whole(followUps()),
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
                        new ReportRatio(LastReport.SILENT_ONCE, 4.1, 18, 4.4)));
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
                List.of(),
                List.of());
        return new ReportData(
                run, List.of(), List.of(), none(), none(), none(), none(), none(), List.of(), List.of(), none(),
                List.of(), Map.of(), Map.of(), Map.of(), List.of());
    }

    /** The realistic report with {@code text} wherever a log or register can put text of its own. */
    static ReportData withText(String text) {
        ReportData d = realistic();
        WheelPosition place = WheelPosition.parse("1L").orElseThrow();
        SensorOutlook o = outlook(text, text, place, text, text, text, 2000, LastReport.SOUND, 0.4);
        RankedReplacement line = new RankedReplacement(1, o, 120, 190, 70, 0.2, Advice.REPLACE_NOW, text);
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
                1.5,
                1.1,
                0.97,
                Pattern.RECURRING_INTERMITTENT,
                AS_OF,
                true,
                List.of(suspect),
                text);
        CohortFit f = d.fits().get(0);
        CohortFit fit =
                new CohortFit(text, text, text, 9, 3, 12, 2, 1, 3, 2000, 1500, 2500, 1800, -12, 9, 1e-7, 0.3, text);
        return new ReportData(
                run,
                List.of(f, fit),
                List.of(
                        new CurvePoint(text, CurvePoint.Method.WEIBULL, 0, 1, 1, 1, 9, 0),
                        new CurvePoint(text, CurvePoint.Method.WEIBULL, 2000, 0.4, 0.2, 0.6, 3, 3)),
                Listed.whole(List.of(line)),
                Listed.whole(List.of(new UnmonitoredWheel(text, text, place, text, text, AS_OF, text))),
                Listed.whole(List.of(vehicle)),
                Listed.whole(List.of(new WatchEntry(
                        text, text, place, text, text, text, WatchEntry.Sign.SLOW_TO_WAKE, AS_OF, 0.9, text, text))),
                Listed.whole(List.of(
                        new FollowUp(text, text, text, AS_OF, Repair.RELEARN, 5, 20, FollowUp.State.OPEN, null))),
                List.of(new StockOutlook(text, text, YearMonth.of(2026, 4), 3, 1, 6, 2, 6, 4, 90)),
                List.of(new Part(text, text, Part.Kind.SENSOR, 38, 5, 4, 433.92, List.of(text))),
                Listed.whole(List.of(new ReaderQuality(text, 40, 1.2, 0.8, 0.7, 0.9, false))),
                List.of(new FindingGroup(
                        Finding.Kind.MOVED,
                        1,
                        List.of(new Finding(
                                Finding.Kind.MOVED,
                                text,
                                text,
                                place,
                                AS_OF,
                                text,
                                text,
                                List.of(new Source(text, 1)))))),
                causes(),
                Map.of(text, AS_OF),
                Map.of(text, text),
                List.of());
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
                List.of(
                        new Labelled("Planning horizon", "180 days"),
                        new Labelled("Silent visits until a sensor counts as failed", "2"),
                        new Labelled("Drive that proves a repair", "20 minutes"),
                        new Labelled("Service level", "95 %")),
                List.of(new Labelled("Sensor Rounds", "0.1.0"), new Labelled("Java", "17")));
    }

    private static List<CohortFit> fits() {
        return List.of(
                new CohortFit(
                        "van",
                        "own fit",
                        "converged",
                        812,
                        121,
                        2410.5,
                        2.61,
                        2.2,
                        3.1,
                        2711,
                        2590,
                        2838,
                        2355,
                        -412.83,
                        14,
                        3.2e-9,
                        0.11,
                        ""),
                new CohortFit(
                        "truck",
                        "own fit",
                        "converged",
                        402,
                        58,
                        1020,
                        1.94,
                        1.5,
                        2.51,
                        2301,
                        2010,
                        2634,
                        1905,
                        -233.1,
                        17,
                        8.8e-9,
                        0.28,
                        "Few sensors are at risk before the age of one year."),
                new CohortFit(
                        "car",
                        "pooled shape",
                        "its own fit did not converge: 4 failures are too few for two figures",
                        196,
                        4,
                        310,
                        2.4,
                        2.05,
                        2.81,
                        3105,
                        2250,
                        4285,
                        2664,
                        Double.NaN,
                        60,
                        0.4,
                        0.02,
                        "Borrows its shape from all cohorts; only the scale is its own."));
    }

    private static List<CurvePoint> curves() {
        List<CurvePoint> points = new ArrayList<>();
        curve(points, "van", new WeibullLife(2.61, 2711, 0, 0, 0), 3300, 1);
        curve(points, "truck", new WeibullLife(1.94, 2301, 0, 0, 0), 2900, 2);
        smooth(points, "car", new WeibullLife(2.4, 3105, 0, 0, 0), 2600, 0.08);
        return points;
    }

    private static void curve(List<CurvePoint> points, String cohort, WeibullLife law, int last, long seed) {
        smooth(points, cohort, law, last, 0.035);
        Random random = new Random(seed);
        double s = 1;
        double failures = 0;
        points.add(new CurvePoint(cohort, CurvePoint.Method.KAPLAN_MEIER, 0, 1, 1, 1, 90, 0));
        for (int age = 120; age <= last - 200; age += 30 + random.nextInt(70)) {
            double truth = law.survival(age);
            s = Math.min(s, truth + 0.03 * random.nextGaussian() * Math.sqrt(truth * (1 - truth)));
            failures += 1 + random.nextInt(4);
            double half = 0.02 + 0.08 * age / last;
            double atRisk = 90 + 400 * Math.exp(-Math.pow((age - 1500) / 900.0, 2));
            points.add(new CurvePoint(
                    cohort,
                    CurvePoint.Method.KAPLAN_MEIER,
                    age,
                    s,
                    Math.max(0, s - half),
                    Math.min(1, s + half),
                    atRisk,
                    failures));
        }
    }

    private static void smooth(List<CurvePoint> points, String cohort, WeibullLife law, int last, double width) {
        for (int age = 0; age <= last; age += 20) {
            double s = law.survival(age);
            double half = width * (0.2 + age / (double) last) * Math.min(1, 4 * s * (1 - s) + 0.05);
            points.add(new CurvePoint(
                    cohort, CurvePoint.Method.WEIBULL, age, s, Math.max(0, s - half), Math.min(1, s + half), 100, 0));
        }
    }

    private static List<RankedReplacement> ranked(int n) {
        Random random = new Random(7);
        List<String> places = List.of("1L", "1R", "2L", "2R", "2LO", "2RI", "spare");
        List<RankedReplacement> rows = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double p = Math.max(0.012, 0.93 * Math.exp(-i / 22.0) + 0.03 * random.nextDouble());
            Advice advice = i < 18 ? Advice.REPLACE_NOW : i < 44 ? Advice.AT_NEXT_STOP : Advice.KEEP;
            if (i == 9) {
                advice = Advice.CHECK_PLACE_FIRST;
            }
            LastReport report =
                    i % 5 == 0 ? LastReport.LOW_BATTERY : i % 7 == 3 ? LastReport.SILENT_ONCE : LastReport.SOUND;
            SensorOutlook o = outlook(
                    "V-" + (101 + (i * 37) % 53),
                    i == 30 ? null : DEPOTS.get(i % 3),
                    WheelPosition.parse(places.get(i % 7)).orElseThrow(),
                    i % 11 == 5 ? "B" : null,
                    String.format("%08X", 0x1A2B3C4DL + i * 0x10F0F1L),
                    i % 13 == 4 ? null : i % 3 == 0 ? "S-433-40" : "S-433-70",
                    i == 12 ? null : 1500 + random.nextInt(1800),
                    report,
                    p);
            double now = 120 - (i % 3) * 20;
            rows.add(new RankedReplacement(
                    i + 1,
                    o,
                    now,
                    now + 210 * p - 60,
                    210 * p - 60,
                    0.29,
                    advice,
                    advice == Advice.CHECK_PLACE_FIRST
                            ? "Three sensors in a row fell silent at this place within a year each."
                            : "Last report: " + Words.of(report)
                                    + ". A call-out costs EUR 320 more than work at a planned stop."));
        }
        return rows;
    }

    private static SensorOutlook outlook(
            String vehicle,
            String depot,
            WheelPosition place,
            String set,
            String sensor,
            String part,
            Integer age,
            LastReport report,
            double p) {
        return new SensorOutlook(
                vehicle,
                depot,
                "van",
                place,
                set,
                sensor,
                vehicle + "/" + sensor + "/1",
                part,
                age,
                age == null ? OriginBasis.UNKNOWN : OriginBasis.VEHICLE_FIRST_USE,
                report,
                AS_OF.minusDays(40),
                1,
                p / 6,
                p / 2,
                p,
                Math.min(1, p * 1.7),
                p,
                Math.max(0, p * 0.7),
                Math.min(1, p * 1.3),
                "van",
                "own fit");
    }

    private static List<UnmonitoredWheel> unmonitored() {
        return List.of(
                new UnmonitoredWheel(
                        "V-112",
                        "Quayside",
                        WheelPosition.parse("2R").orElseThrow(),
                        null,
                        "1A2B77F0",
                        LocalDate.of(2026, 2, 17),
                        "Silent at the last three visits, the first on 2025-11-20."),
                new UnmonitoredWheel(
                        "V-112",
                        "Quayside",
                        WheelPosition.parse("2L").orElseThrow(),
                        null,
                        null,
                        LocalDate.of(2026, 2, 17),
                        "A plain valve was fitted."),
                new UnmonitoredWheel(
                        "V-140",
                        "Hillfoot",
                        WheelPosition.parse("1L").orElseThrow(),
                        "A",
                        "0F3355AA",
                        LocalDate.of(2026, 3, 3),
                        "Written down as failed, battery; not replaced."),
                new UnmonitoredWheel(
                        "T-007",
                        null,
                        WheelPosition.parse("2RI").orElseThrow(),
                        null,
                        "77C01234",
                        LocalDate.of(2026, 1, 9),
                        "Silent at the last two visits."));
    }

    private static List<RecurringVehicle> recurring() {
        Suspect sensor = new Suspect(
                1,
                WheelPosition.parse("2R").orElseThrow(),
                "1A2B88C1",
                0.62,
                List.of(
                        "Needed most tries at 4 of 5 visits with the warning (× 3.1).",
                        "At 6.4 years the oldest of the set (× 1.4)."),
                "Read it cold before touching the wheel; if it takes more than three tries, replace it.");
        Suspect place = new Suspect(
                2,
                null,
                null,
                0.27,
                List.of("Every sensor answered at each visit (× 1.8)."),
                "Drive 20 minutes on a clear road, then through the yard, and note where the lamp comes on.");
        Suspect other = new Suspect(
                3,
                WheelPosition.parse("1L").orElseThrow(),
                "1A2B88C4",
                0.11,
                List.of("Once slow to wake (× 1.1)."),
                "");
        return List.of(
                new RecurringVehicle(
                        "V-127",
                        "Hillfoot",
                        "van",
                        5,
                        3,
                        2.8,
                        2.9,
                        2.1,
                        0.985,
                        Pattern.RECURRING_INTERMITTENT,
                        LocalDate.of(2026, 3, 12),
                        true,
                        List.of(sensor, place, other),
                        "The system warning was there at five visits since May 2024, mostly on cold mornings. It was "
                                + "relearned three times and came back each time. Every sensor answered every time."),
                new RecurringVehicle(
                        "T-019",
                        "Quayside",
                        "truck",
                        4,
                        2,
                        1.6,
                        3.8,
                        1.9,
                        0.93,
                        Pattern.RECURRING_AT_ONE_PLACE,
                        LocalDate.of(2026, 2, 2),
                        false,
                        List.of(new Suspect(
                                1,
                                WheelPosition.parse("2LI").orElseThrow(),
                                null,
                                0.81,
                                List.of("Three sensors fell silent here, each within a year (× 7.9)."),
                                "Look at the receiver and its wiring on the left of axle 2 before fitting a fourth.")),
                        "Three sensors at one place in 16 months, each silent within a year of fitting."),
                new RecurringVehicle(
                        "V-151",
                        "Mill Lane",
                        "van",
                        1,
                        0,
                        3.1,
                        0.3,
                        0.5,
                        0.31,
                        Pattern.NOT_RECURRING,
                        LocalDate.of(2025, 11, 20),
                        false,
                        List.of(),
                        ""));
    }

    private static List<WatchEntry> watch() {
        return List.of(
                new WatchEntry(
                        "V-104",
                        "Hillfoot",
                        WheelPosition.parse("1R").orElseThrow(),
                        null,
                        "1A2B91D0",
                        "S-433-40",
                        WatchEntry.Sign.SLOW_TO_WAKE,
                        LocalDate.of(2025, 12, 1),
                        0.91,
                        "5 tries at the last visit where a sound sensor under that reader needs 1.3.",
                        "An answer at the first try, warm and cold, at two visits."),
                new WatchEntry(
                        "V-133",
                        "Mill Lane",
                        WheelPosition.parse("2L").orElseThrow(),
                        "B",
                        "1A2BA0E2",
                        null,
                        WatchEntry.Sign.LOW_BATTERY,
                        LocalDate.of(2026, 1, 22),
                        Double.NaN,
                        "Reported 14 % at −6 °C.",
                        "A report of at least 20 % above 10 °C."),
                new WatchEntry(
                        "T-007",
                        null,
                        WheelPosition.parse("1L").orElseThrow(),
                        null,
                        "77C01290",
                        "S-433-90",
                        WatchEntry.Sign.SILENT_ONCE,
                        LocalDate.of(2026, 3, 20),
                        Double.NaN,
                        "No answer at one visit; answered at eleven before.",
                        "An answer at the next visit."));
    }

    private static List<FollowUp> followUps() {
        return List.of(
                new FollowUp(
                        "V-127",
                        "H-2026-0312",
                        "tech-04",
                        LocalDate.of(2026, 3, 12),
                        Repair.RELEARN,
                        6,
                        20,
                        FollowUp.State.OPEN,
                        null),
                new FollowUp(
                        "V-118",
                        "Q-2026-0011",
                        "tech-02",
                        LocalDate.of(2026, 1, 14),
                        Repair.SENSOR_REPLACED,
                        0,
                        20,
                        FollowUp.State.OPEN,
                        null),
                new FollowUp(
                        "T-019",
                        "Q-2025-0871",
                        "tech-02",
                        LocalDate.of(2025, 12, 2),
                        Repair.SENSOR_REPLACED,
                        12,
                        20,
                        FollowUp.State.RETURNED,
                        LocalDate.of(2026, 2, 2)),
                new FollowUp(
                        "V-109",
                        "H-2025-0944",
                        "tech-04",
                        LocalDate.of(2025, 11, 5),
                        Repair.SET_REPLACED,
                        25,
                        20,
                        FollowUp.State.PROVEN,
                        LocalDate.of(2025, 11, 5)));
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
                            YearMonth.of(2026, 4).plusMonths(m),
                            e,
                            (int) Math.max(0, Math.floor(e - 1.6 * Math.sqrt(e))),
                            (int) Math.ceil(e + 1.7 * Math.sqrt(e)),
                            m == 0 ? 6 + d : null,
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
                new ReaderQuality("reader-1", 4_120, 1.21, 0.83, 0.82, 0.84, false),
                new ReaderQuality("reader-2", 2_902, 1.27, 0.79, 0.77, 0.80, false),
                new ReaderQuality("reader-3", 611, 1.92, 0.52, 0.48, 0.56, true));
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
