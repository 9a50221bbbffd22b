package sensorrounds.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.condition.WatchEntry;
import sensorrounds.history.FollowUp;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.Repair;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorInService;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.Driven;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.recurrence.Suspect;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.visit.WheelPosition;

/** The lists by vehicle of the invented fleet. */
final class SampleLists {
    private SampleLists() {}

    static List<RankedReplacement> ranked(int n) {
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
                    i == 30 ? null : SampleReport.DEPOTS.get(i % 3),
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
                    advice.urgency() == Advice.Urgency.NOW ? 210 * p - 60 : Double.NaN,
                    0.29,
                    i % 4 == 0 ? SampleReport.AS_OF.plusDays(30) : null,
                    advice,
                    advice == Advice.CHECK_PLACE_FIRST
                            ? "Three sensors in a row fell silent at this place within a year each."
                            : "6.2 years old, " + Words.of(report)
                                    + " on 2026-02-19; chance of not working within 180 days "
                                    + Format.chance(p) + ". Replacing now is expected to save against keeping it; it "
                                    + "pays from a chance of 29 %. Worth a stop of its own.",
                    null));
        }
        return rows;
    }

    static SensorOutlook outlook(
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
                new SensorInService(
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
                        SampleReport.AS_OF.minusDays(40)),
                new SensorOutlook.Chances(
                        1, p / 9, p / 6, p / 2, p, Math.min(1, p * 1.7), p, Math.max(0, p * 0.7), Math.min(1, p * 1.3)),
                SensorOutlook.Grounds.ofLaw("van", "own fit"));
    }

    static List<UnmonitoredWheel> unmonitored() {
        return List.of(
                new UnmonitoredWheel(
                        "V-112",
                        "Quayside",
                        WheelPosition.parse("2R").orElseThrow(),
                        null,
                        "1A2B77F0",
                        LocalDate.of(2026, 2, 17),
                        "Silent at the last three visits, the first on 2025-11-20.",
                        UnmonitoredWheel.Certainty.KNOWN),
                new UnmonitoredWheel(
                        "V-112",
                        "Quayside",
                        WheelPosition.parse("2L").orElseThrow(),
                        null,
                        null,
                        LocalDate.of(2026, 2, 17),
                        "A plain valve was fitted.",
                        UnmonitoredWheel.Certainty.KNOWN),
                new UnmonitoredWheel(
                        "V-140",
                        "Hillfoot",
                        WheelPosition.parse("1L").orElseThrow(),
                        "A",
                        "0F3355AA",
                        LocalDate.of(2026, 3, 3),
                        "Written down as failed, battery; not replaced.",
                        UnmonitoredWheel.Certainty.KNOWN),
                new UnmonitoredWheel(
                        "T-007",
                        null,
                        WheelPosition.parse("2RI").orElseThrow(),
                        null,
                        "77C01234",
                        LocalDate.of(2026, 1, 9),
                        "Silent at the last two visits.",
                        UnmonitoredWheel.Certainty.KNOWN),
                new UnmonitoredWheel(
                        "V-105",
                        "Hillfoot",
                        WheelPosition.SPARE,
                        null,
                        null,
                        LocalDate.of(2025, 10, 9),
                        "Never heard.",
                        UnmonitoredWheel.Certainty.PROBABLE),
                new UnmonitoredWheel(
                        "V-127",
                        "Hillfoot",
                        null,
                        null,
                        null,
                        LocalDate.of(2026, 3, 12),
                        "System warning on at the visit of 2026-03-12 and not seen off since.",
                        UnmonitoredWheel.Certainty.SYSTEM));
    }

    static List<RecurringVehicle> recurring() {
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
                        new Driven(84_000, 7),
                        2.9,
                        2.1,
                        0.985,
                        Pattern.RECURRING_INTERMITTENT,
                        LocalDate.of(2026, 3, 12),
                        true,
                        null,
                        List.of(sensor, place, other),
                        "The system warning was there at five visits since May 2024, mostly on cold mornings. It was "
                                + "relearned three times and came back each time. Every sensor answered every time. "
                                + "The code C1B30 names no wheel. First suspect: axle 2, right at 62 % (needed 3, 4, 3, 3, "
                                + "4, 4 tries at its last 6 reads). Next: wake it with another reader."),
                new RecurringVehicle(
                        "T-019",
                        "Quayside",
                        "truck",
                        4,
                        2,
                        1.6,
                        null,
                        3.8,
                        1.9,
                        0.93,
                        Pattern.RECURRING_AT_ONE_PLACE,
                        LocalDate.of(2026, 2, 2),
                        false,
                        null,
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
                        null,
                        0.3,
                        0.5,
                        0.31,
                        Pattern.NOT_RECURRING,
                        LocalDate.of(2025, 11, 20),
                        false,
                        null,
                        List.of(),
                        ""));
    }

    static List<WatchEntry> watch() {
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

    static List<FollowUp> followUps() {
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
                        null,
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
                        null,
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
                        LocalDate.of(2026, 2, 2),
                        null),
                new FollowUp(
                        "V-109",
                        "H-2025-0944",
                        "tech-04",
                        LocalDate.of(2025, 11, 5),
                        Repair.SET_REPLACED,
                        25,
                        20,
                        FollowUp.State.PROVEN,
                        LocalDate.of(2025, 11, 5),
                        LocalDate.of(2026, 2, 20)),
                new FollowUp(
                        "V-121",
                        "H-2026-0101",
                        "tech-04",
                        LocalDate.of(2026, 2, 1),
                        Repair.CODES_CLEARED,
                        25,
                        20,
                        FollowUp.State.OPEN,
                        null,
                        null));
    }
}
