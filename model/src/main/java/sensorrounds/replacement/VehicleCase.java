package sensorrounds.replacement;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.LifeLaw;
import sensorrounds.visit.WheelPosition;

/**
 * A vehicle whose sensors are to be decided on together.
 *
 * @param stops when it stands in the workshop anyway
 * @param deadOnTheRoad places on the road whose sensor is known dead or missing: the vehicle has to come in for them
 */
public record VehicleCase(
        List<Sensor> sensors, LocalDate asOf, Stops stops, Sight sight, List<WheelPosition> deadOnTheRoad) {
    /** How well the vehicle is known. */
    public enum Sight {
        KNOWN,
        /** Not seen for longer than the settings allow. */
        OUT_OF_SIGHT,
        NOT_IN_REGISTER
    }

    /**
     * One sensor in service.
     *
     * @param law law of the outlook's cohort; null when none was fitted, and then nothing is reckoned
     * @param price price of the sensor to fit
     */
    public record Sensor(SensorOutlook outlook, LifeLaw law, double price, Mounting mounting, Place place) {
        boolean hasChances() {
            return law != null && !Double.isNaN(outlook.chances().pHorizon());
        }
    }

    /** What is known of the place. */
    public enum Place {
        ORDINARY,
        /** Sensors fall silent there one after the other. */
        KEEPS_FAILING
    }

    /**
     * Stops that a vehicle makes anyway.
     *
     * @param booked day of the next one booked, on or after the as-of day; null when none is
     * @param last day of the last one; null when none is known
     * @param gapDays usual days from one to the next, over 0
     */
    public record Stops(LocalDate booked, LocalDate last, int gapDays) {
        public Stops {
            if (!(gapDays > 0)) {
                throw new IllegalArgumentException("days between stops " + gapDays + "; must be over 0");
            }
        }

        /**
         * Days to the next stop: the one booked; else a gap after the last one, or half a gap from now when that is sooner,
         * the mean wait in a steady rhythm met anywhere.
         */
        public int daysToNext(LocalDate asOf) {
            if (booked != null) {
                return Math.toIntExact(ChronoUnit.DAYS.between(asOf, booked));
            }
            long due = last == null ? 0 : ChronoUnit.DAYS.between(asOf, last) + gapDays;
            return (int) Math.max(due, (gapDays + 1) / 2);
        }
    }

    LocalDate nextStop() {
        return stops.booked();
    }

    public VehicleCase {
        sensors = List.copyOf(sensors);
        deadOnTheRoad = List.copyOf(deadOnTheRoad);
    }
}
