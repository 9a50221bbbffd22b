package sensorrounds.outlook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.FailureCause;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelPosition;

/** Sensor lives written as days after fitting: {@code new Lives("A1").ok(100).silent(200).failed(200)}. */
final class Lives {
    static final LocalDate FITTED = LocalDate.of(2020, 1, 1);

    private final String sensorId;
    private final List<LifeReading> readings = new ArrayList<>();
    private WheelPosition position = WheelPosition.parse("1L").orElseThrow();
    private OriginBasis basis = OriginBasis.RECORDED_FITTING;
    private LifeEnd end = LifeEnd.IN_SERVICE;
    private LocalDate failed;
    private LocalDate ended;

    Lives(String sensorId) {
        this.sensorId = sensorId;
    }

    static LocalDate day(int age) {
        return FITTED.plusDays(age);
    }

    Lives at(String place) {
        position = WheelPosition.parse(place).orElseThrow();
        return this;
    }

    Lives unknownOrigin() {
        basis = OriginBasis.UNKNOWN;
        return this;
    }

    Lives ok(int... ages) {
        return read(ReadOutcome.OK, ages);
    }

    Lives silent(int... ages) {
        return read(ReadOutcome.NO_ANSWER, ages);
    }

    Lives notTried(int... ages) {
        return read(ReadOutcome.NOT_TRIED, ages);
    }

    Lives failed(int age) {
        end = LifeEnd.FAILED;
        failed = day(age);
        return this;
    }

    Lives ended(LifeEnd how, int age) {
        end = end == LifeEnd.FAILED ? end : how;
        ended = day(age);
        return this;
    }

    Lives placeSuspected() {
        end = LifeEnd.PLACE_SUSPECTED;
        return this;
    }

    SensorLife life() {
        List<LocalDate> answers = readings.stream()
                .filter(LifeReading::answered)
                .map(LifeReading::day)
                .toList();
        boolean known = basis != OriginBasis.UNKNOWN;
        return new SensorLife(
                "V1",
                sensorId,
                1,
                "P1",
                position,
                null,
                known ? FITTED : null,
                basis,
                answers.isEmpty() ? null : answers.get(0),
                answers.isEmpty() ? null : answers.get(answers.size() - 1),
                failed,
                ended,
                end,
                end == LifeEnd.FAILED ? FailureCause.BATTERY : null,
                null,
                known ? Lifetime.censored(0, 1) : null,
                known ? null : "origin not known",
                readings);
    }

    static VehicleHistory history(LocalDate firstUsed, Lives... lives) {
        return history(firstUsed, MonitoringSystem.DIRECT, lives);
    }

    static VehicleHistory history(LocalDate firstUsed, MonitoringSystem system, Lives... lives) {
        Vehicle vehicle =
                new Vehicle("V1", "van", null, firstUsed, "North", null, system, null, "P0", null, null, null);
        List<SensorLife> all = new ArrayList<>();
        for (Lives each : lives) {
            all.add(each.life());
        }
        return new VehicleHistory(vehicle, List.of(), all, List.of(), List.of(), List.of());
    }

    private Lives read(ReadOutcome outcome, int... ages) {
        for (int age : ages) {
            readings.add(new LifeReading(
                    day(age), "visit-" + age, position, "R1", "T1", outcome, 1, null, null, null, null, null));
        }
        return this;
    }
}
