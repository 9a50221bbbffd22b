package sensorrounds.simulate;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.simulate.SimulatedVehicle.FittedSensor;

/** What really happened, in CSV. Nothing but tests and people may read it. */
final class Truth {
    static final String SENSORS_HEAD = "vehicleId,sensor,sensorId,part,vehicleClass,wheelSet,position,fittedOn,origin,"
            + "weakFrom,batteryEmptyOn,failedOn,cause,removedOn,removal,vehicleFactor,story\n";

    private Truth() {}

    /** One line for each sensor that was ever on the vehicle, in the order of fitting. */
    static void appendSensors(StringBuilder out, SimulatedVehicle v) {
        for (FittedSensor f : v.sensors()) {
            SimulatedSensor s = f.sensor();
            boolean failed = s.cause() != null;
            out.append(v.register().vehicleId())
                    .append(',')
                    .append(s.ordinal + 1)
                    .append(',');
            out.append(s.id).append(',').append(s.part).append(',');
            out.append(v.register().vehicleClass()).append(',');
            out.append(f.wheelSet() == null ? "" : f.wheelSet()).append(',').append(f.position());
            out.append(',').append(date(s.bornDay)).append(',').append(CanonicalWords.word(s.origin));
            out.append(',')
                    .append(date(s.weakDay))
                    .append(',')
                    .append(date(s.batteryDay))
                    .append(',');
            out.append(failed ? date(s.failDay()) : "").append(',');
            out.append(failed ? CanonicalWords.word(s.cause()) : "").append(',');
            out.append(s.removedDay() == SimulatedSensor.NEVER ? "" : date(s.removedDay()));
            out.append(',').append(CanonicalWords.word(s.removal())).append(',');
            out.append(Decimals.text(v.lifeFactor(), 3)).append(',');
            out.append(v.story() == null ? "" : CanonicalWords.word(v.story())).append('\n');
        }
    }

    static String stories(List<SimulatedVehicle> vehicles) {
        StringBuilder s = new StringBuilder("vehicleId,story,what\n");
        vehicles.stream()
                .filter(v -> v.story() != null)
                .forEach(v -> s.append(v.register().vehicleId())
                        .append(',')
                        .append(CanonicalWords.word(v.story()))
                        .append(",\"")
                        .append(v.story().role)
                        .append("\"\n"));
        return s.toString();
    }

    static String laws(List<VehicleKind> kinds) {
        StringBuilder s = new StringBuilder("vehicleClass,modelGroup,part,shape,scaleDays\n");
        for (VehicleKind k : kinds) {
            if (k.originalPart() != null) {
                law(s, k, k.originalPart(), k.originalLaw());
                if (!k.replacementPart().equals(k.originalPart())) {
                    law(s, k, k.replacementPart(), k.replacementLaw());
                }
            }
        }
        return s.toString();
    }

    static String readMe(SimulationSettings s) {
        return """
                # The truth behind simulated data
                Everything beside this folder is invented: the operator, the vehicles, the people, the numbers. This
                folder says what really happened in that invented world. The engine must never read it; tests and
                people may.

                - sensors.csv: every sensor that was ever on a vehicle, when it was fitted, from when it was weak, when
                  its battery gives out if nothing else comes first, and how it left. Dates after the end of the logs
                  are the future, known to the simulation alone. failedOn is blank when a sensor was taken out first.
                - laws.csv: the Weibull laws the batteries follow, before the factor that each vehicle's batteries share
                  (vehicleFactor in sensors.csv).
                - patterns.csv: the vehicles with a known story. mess.csv: each mishap of the logs with its line.
                  files.csv: rows of each file and what should become of them.

                Seed %d, %d vehicles, logs from %s to %s.
                """.formatted(s.seed(), s.vehicles(), s.startDate(), s.endDate());
    }

    private static void law(StringBuilder s, VehicleKind k, String part, LifeLaw law) {
        s.append(k.vehicleClass())
                .append(',')
                .append(k.modelGroup())
                .append(',')
                .append(part);
        s.append(',').append(Decimals.text(law.shape(), 2));
        s.append(',').append(Decimals.text(law.scaleDays(), 0)).append('\n');
    }

    private static LocalDate date(int day) {
        return LocalDate.ofEpochDay(day);
    }
}
