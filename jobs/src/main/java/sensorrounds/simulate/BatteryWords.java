package sensorrounds.simulate;

import sensorrounds.simulate.Crew.Reader;
import sensorrounds.visit.BatteryReport;

/** What a reader shows of a battery: right on the whole, noisy, and lower in the cold. */
final class BatteryWords {
    private BatteryWords() {}

    /** @return null when the sensor tells nothing of its battery */
    static BatteryReport report(
            SimulatedSensor s, int day, double celsius, Reader reader, VehicleKind kind, Dice dice) {
        // Chance is used up in the same measure whatever is reported, to keep the rest of the story in place.
        double noise = dice.normal();
        boolean noticed = dice.chance(celsius < 3 ? 0.75 : 0.55);
        boolean falseAlarm = dice.chance(celsius < 0 ? 0.01 : 0.002);
        boolean tells = !s.part.equals("S433-M") || Character.digit(s.id.charAt(7), 16) % 3 != 0;
        if (!tells && s.part.equals(kind.originalPart())) {
            return null;
        }
        boolean low = s.weakOn(day) && noticed || falseAlarm;
        double spent = Math.min(1, (double) (day - s.bornDay) / Math.max(1, s.batteryDay - s.bornDay));
        return switch (reader.batteryForm()) {
            case FLAG -> low ? BatteryReport.LOW : BatteryReport.OK;
            case PERCENT ->
                new BatteryReport(
                        BatteryReport.Kind.PERCENT,
                        low ? clamp(10 + 4 * noise, 2, 19) : clamp(98 - 60 * spent * spent + 5 * noise, 24, 100));
            case VOLTS ->
                new BatteryReport(
                        BatteryReport.Kind.VOLTS,
                        (low
                                        ? clamp(23.2 + 0.8 * noise, 20, 24)
                                        : clamp(30.2 - 1.5 * spent + 0.05 * celsius / 5 + 0.4 * noise, 26, 32))
                                / 10);
        };
    }

    private static double clamp(double v, double low, double high) {
        return Math.rint(Math.max(low, Math.min(high, v)));
    }
}
