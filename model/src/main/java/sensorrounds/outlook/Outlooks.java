package sensorrounds.outlook;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/**
 * The outlook of every sensor in service on a vehicle.
 *
 * <p>What is certain of a sensor is that it worked at its last answer; it may have died since. So every probability is
 * P(not working by the as-of day + h | worked at the last answer) = 1 - exp(-r (H(c) - H(a)) - (H(b) - H(c))), a its age at
 * the last answer, b its age at the as-of day + h, c the lesser of b and a plus the ratio's reach, H the cumulative hazard
 * of its cohort's law and r the failure ratio of its last report. A sensor not seen for long is thus rightly a greater risk than one seen yesterday. The same window, from the
 * last answer, is the one the ratios are counted over ({@link ReportCells}). A sensor that never answered counts as
 * working on the day of its fitting.
 *
 * <p>Without a known origin the age is a distribution ({@link UnknownAge}) between the time it was seen working and, when
 * known, the vehicle's own age or the time since the last sign of the sensor before it; the limits span its middle 95 %.
 *
 * <p>A sensor for which no law of life could be fitted is listed with NaN probabilities, cohort and rung null: nothing
 * drops out of sight.
 */
public final class Outlooks {
    private Outlooks() {}

    /**
     * @param lastReport report of a life as of a day; null counts as SOUND
     * @throws IllegalArgumentException when the history goes beyond {@code asOf}
     */
    public static List<SensorOutlook> of(
            VehicleHistory history,
            LifeLaws laws,
            ReportRatios ratios,
            BiFunction<SensorLife, LocalDate, LastReport> lastReport,
            OutlookSettings settings,
            LocalDate asOf) {
        List<SensorOutlook> all = new ArrayList<>();
        for (SensorLife life : history.lives()) {
            if (life.inService()) {
                LastReport report = lastReport.apply(life, asOf);
                LastReport known = report == null ? LastReport.SOUND : report;
                all.add(of(history.vehicle(), life, laws, ratios.of(known), settings, asOf));
            }
        }
        return all;
    }

    private static SensorOutlook of(
            Vehicle vehicle,
            SensorLife life,
            LifeLaws laws,
            ReportRatios.Ratio ratio,
            OutlookSettings settings,
            LocalDate asOf) {
        String part = part(vehicle, life);
        Optional<LifeLaws.Law> law = laws.of(vehicle.vehicleClass(), part);
        LocalDate worked = lastKnownWorking(life, asOf);
        if (worked.isAfter(asOf)) {
            throw new IllegalArgumentException("sensor " + life.lifeId() + " worked on " + worked
                    + ", after the as-of day " + asOf + "; build the histories up to the as-of day first");
        }
        boolean ageKnown = life.basis() != OriginBasis.UNKNOWN && life.fittedOn() != null;
        Failure failure = law.isEmpty()
                ? Failure.NOT_KNOWN
                : ageKnown
                        ? knownAge(law.get(), life, worked, asOf, ratio)
                        : unknownAge(
                                law.get(),
                                vehicle,
                                life,
                                laws.firstSensorFactor(vehicle.originalPart(), life.part()),
                                worked,
                                asOf,
                                ratio);
        double[] limits = failure.limits(settings.horizonDays());
        return new SensorOutlook(
                new SensorInService(
                        vehicle.vehicleId(),
                        vehicle.depot(),
                        vehicle.vehicleClass(),
                        life.position(),
                        life.wheelSet(),
                        life.sensorId(),
                        life.lifeId(),
                        part,
                        ageKnown ? (Integer) Math.toIntExact(days(life.fittedOn(), asOf)) : null,
                        life.basis(),
                        ratio.report(),
                        life.lastReading().map(r -> r.day()).orElse(life.fittedOn())),
                new SensorOutlook.Chances(
                        ratio.ratio(),
                        failure.by(0),
                        failure.by(30),
                        failure.by(90),
                        failure.by(180),
                        failure.by(365),
                        failure.by(settings.horizonDays()),
                        limits[0],
                        limits[1]),
                SensorOutlook.Grounds.ofLaw(
                        law.map(LifeLaws.Law::cohort).orElse(null),
                        law.map(LifeLaws.Law::rung).orElse(null)));
    }

    /** Probability of not working by a day after the as-of day. */
    private interface Failure {
        Failure NOT_KNOWN = new Failure() {
            @Override
            public double by(double days) {
                return Double.NaN;
            }

            @Override
            public double[] limits(double days) {
                return new double[] {Double.NaN, Double.NaN};
            }
        };

        double by(double days);

        double[] limits(double days);
    }

    private static Failure knownAge(
            LifeLaws.Law law, SensorLife life, LocalDate worked, LocalDate asOf, ReportRatios.Ratio ratio) {
        double age = Math.max(0, days(life.fittedOn(), worked));
        double since = days(worked, asOf);
        return new Failure() {
            @Override
            public double by(double days) {
                return ratio.failure(law.life(), age, since + days);
            }

            @Override
            public double[] limits(double days) {
                return ratio.hazard(law.life(), age, since + days).failureLimits();
            }
        };
    }

    private static Failure unknownAge(
            LifeLaws.Law law,
            Vehicle vehicle,
            SensorLife life,
            double firstSensorFactor,
            LocalDate worked,
            LocalDate asOf,
            ReportRatios.Ratio ratio) {
        double least = life.firstAnswered() == null ? 0 : days(life.firstAnswered(), worked);
        double most = vehicle.firstUsed() == null ? Double.POSITIVE_INFINITY : days(vehicle.firstUsed(), worked);
        double cap = life.fittedNotBefore() == null
                ? Double.POSITIVE_INFINITY
                : Math.max(least, days(life.fittedNotBefore(), worked));
        UnknownAge age = new UnknownAge(law, least, most, cap, firstSensorFactor);
        double since = days(worked, asOf);
        return new Failure() {
            @Override
            public double by(double days) {
                return age.failureWithin(since + days, ratio);
            }

            @Override
            public double[] limits(double days) {
                return age.limits(since + days, ratio);
            }
        };
    }

    private static LocalDate lastKnownWorking(SensorLife life, LocalDate asOf) {
        if (life.lastAnswered() != null) {
            return life.lastAnswered();
        }
        if (life.fittedOn() != null) {
            return life.fittedOn();
        }
        return life.readings().isEmpty() ? asOf : life.readings().get(0).day();
    }

    /** A vehicle's first sensors are the ones its register entry names. */
    private static String part(Vehicle vehicle, SensorLife life) {
        boolean original = life.basis().isOriginal();
        return life.part() == null && original ? vehicle.originalPart() : life.part();
    }

    private static long days(LocalDate from, LocalDate to) {
        return ChronoUnit.DAYS.between(from, to);
    }
}
