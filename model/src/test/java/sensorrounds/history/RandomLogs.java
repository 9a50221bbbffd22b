package sensorrounds.history;

import java.time.LocalDate;
import java.util.Random;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WorkReason;

/** Logs of one vehicle as no technician would write them: most contradict themselves. */
public final class RandomLogs {
    private static final String[] PLACES = {"1L", "1R", "2L", "2R"};

    static Logbook next(Random random) {
        Logbook log = new Logbook();
        if (random.nextInt(5) == 0) {
            log.leftFleet("2021-01-01");
        }
        boolean twoSets = random.nextInt(3) == 0;
        LocalDate day = Logbook.FIRST_USED.plusDays(random.nextInt(1800) - 30);
        int visits = 1 + random.nextInt(12);
        for (int v = 0; v < visits; v++) {
            day = day.plusDays(random.nextInt(4) == 0 ? 0 : random.nextInt(300));
            Logbook.Entry entry = log.on(day.toString());
            if (twoSets && random.nextInt(4) != 0) {
                entry.set(random.nextBoolean() ? "summer" : "winter");
            }
            if (random.nextBoolean()) {
                entry.warning(Warning.values()[random.nextInt(4)]);
                entry.since(day.minusDays(random.nextInt(200) - 20).toString());
            }
            if (random.nextInt(3) == 0) {
                entry.drive(random.nextInt(40) * 1.0, random.nextBoolean());
            }
            for (String place : PLACES) {
                if (random.nextInt(6) != 0) {
                    entry.wheels(randomWheel(random, place));
                }
            }
            if (random.nextInt(6) == 0) {
                entry.wheels(randomWheel(random, "spare"));
            }
        }
        return log;
    }

    private static Wheel randomWheel(Random random, String place) {
        String usual = "A" + place;
        String id = random.nextInt(4) == 0 ? "X" + random.nextInt(8) : usual;
        Wheel wheel = switch (random.nextInt(8)) {
            case 0 -> Wheel.silent(place);
            case 1 -> Wheel.silent(place, id);
            case 2 -> Wheel.untried(place);
            case 3 -> random.nextBoolean() ? Wheel.heard(place, null) : Wheel.notPresent(place);
            default -> Wheel.heard(place, id);
        };
        WorkReason reason = random.nextInt(5) == 0 ? null : WorkReason.values()[random.nextInt(12)];
        String newId = random.nextInt(4) == 0 ? null : "X" + random.nextInt(8);
        if (random.nextInt(3) == 0) {
            wheel.tyre(
                    Logbook.FIRST_USED.plusDays(7L * (random.nextInt(200) - 40)).toString());
        }
        switch (random.nextInt(8)) {
            case 0, 1 -> wheel.replaced(reason, newId);
            case 2 -> wheel.replaced(reason, id).cloned();
            case 3 -> wheel.plainValve(reason);
            default -> wheel.battery(random.nextInt(3) == 0 ? BatteryReport.LOW : BatteryReport.OK);
        }
        return wheel;
    }

    /** What is made of the next of them. */
    public static VehicleHistory nextHistory(Random random) {
        return next(random).history();
    }

    private RandomLogs() {}
}
