package sensorrounds.tables;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.Evidence;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Source;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** Log rows for tests, some with every field, some with none that may be missing. */
public final class SampleLogRows {
    private SampleLogRows() {}

    /** Rows with every column filled and with every column that can be null, for all four outcomes. */
    public static List<LogRow> all() {
        LoggedWheel full = new LoggedWheel(fullVisit(), fullWheel(), new Source("a/b.csv", 7));
        LoggedWheel bare = new LoggedWheel(bareVisit(), bareWheel(), new Source("c.jsonl", 1));
        LoggedWheel withoutWheel = new LoggedWheel(bareVisit(), null, new Source("c.jsonl", 2));
        return List.of(
                LogRow.of(full),
                LogRow.of(bare),
                LogRow.of(withoutWheel),
                LogRow.of(new Duplicate(full, Duplicate.Rule.SUPERSEDED, new Source("z.csv", 9))),
                LogRow.of(new Duplicate(withoutWheel, Duplicate.Rule.EXACT, new Source("z.csv", 9))),
                LogRow.of(new Rejection(
                        new Source("a", 3),
                        "V",
                        "K",
                        "NSF",
                        "read",
                        "dead",
                        RejectionRule.UNKNOWN_WORD,
                        "x",
                        "y",
                        "z")),
                LogRow.of(new Rejection(
                        new Source("a", 3), null, null, null, null, null, RejectionRule.NOT_JSON, "x", "y", "")),
                LogRow.of(new FileCount(
                        "a",
                        5,
                        6,
                        7,
                        "csv",
                        "yard",
                        Map.of(Note.PRESSURE_PSI, 4L, Note.DATE_FORMAT, 5L),
                        Map.of(Evidence.DATE_PROVES_ORDER, 3L))),
                LogRow.of(new FileCount("b", 0, 1, 2, "jsonl", null, Map.of(), Map.of())));
    }

    private static VisitHeader fullVisit() {
        return new VisitHeader(
                "V1",
                3,
                LocalDateTime.of(2025, 3, 4, 9, 5, 30, 123_456_000),
                "T1",
                "R1",
                "K1",
                "ZZZ00000000000017",
                "SR 1",
                1234.5,
                -7.25,
                new TreeMap<>(Map.of(1, 240.0, 9, 33.3)),
                "winter",
                VisitReason.SEASONAL_CHANGE,
                Warning.SYSTEM_FAULT,
                LocalDate.of(2025, 3, 1),
                11.0,
                List.of(
                        new FaultCode(
                                "C0750-11",
                                FaultCode.State.CURRENT,
                                WheelPosition.parse("2RI").orElseThrow()),
                        new FaultCode("U0100", null, null),
                        new FaultCode("B1A2F", null, WheelPosition.SPARE)),
                RelearnKind.DIAGNOSTIC_PORT,
                RelearnResult.ATTEMPTED,
                true,
                false,
                new TestDrive(null, 3.5, false),
                "two\nlines; \"quoted\", ü");
    }

    private static VisitHeader bareVisit() {
        return new VisitHeader(
                "V2",
                0,
                LocalDateTime.of(1990, 1, 1, 0, 0),
                null,
                null,
                "K2",
                null,
                null,
                null,
                null,
                new TreeMap<>(),
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null);
    }

    private static WheelReading fullWheel() {
        return new WheelReading(
                WheelPosition.parse("2RO").orElseThrow(),
                "hinten rechts außen",
                "0A1B2C3D",
                ReadOutcome.OK,
                2,
                240.1,
                241.0,
                false,
                -3.5,
                new BatteryReport(BatteryReport.Kind.VOLTS, 2.9),
                "P1",
                WheelWork.SENSOR_REPLACED,
                WorkReason.STEM_BROKEN,
                "0A1B2C3E",
                "P2",
                true,
                LocalDate.of(2019, 6, 3));
    }

    private static WheelReading bareWheel() {
        return new WheelReading(
                WheelPosition.SPARE,
                "spare",
                null,
                ReadOutcome.NOT_TRIED,
                null,
                null,
                null,
                null,
                null,
                BatteryReport.LOW,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
