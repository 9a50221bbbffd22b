package sensorrounds.report;

import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.CalendarRow.Period;
import sensorrounds.analyst.CovariateEffect;
import sensorrounds.analyst.CovariateEffects;
import sensorrounds.analyst.Factor;
import sensorrounds.analyst.FamilyFit;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.analyst.SetLikeness;
import sensorrounds.analyst.VehicleFits;
import sensorrounds.frailty.FrailtyStatus;
import sensorrounds.landmark.FirstLow;
import sensorrounds.outlook.LastReport;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.RegressionStatus;
import sensorrounds.season.ClimateMonth;
import sensorrounds.season.ClimateMonth.Basis;
import sensorrounds.season.SeasonFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

/** Invented lives ahead and covariate effects. */
final class SampleLives {
    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    private SampleLives() {}

    static List<LifeAheadRow> ahead() {
        return List.of(
                row(1461, LastReport.SOUND, null, 412, 61, 1500),
                row(1461, LastReport.LOW_BATTERY, null, 38, 29, 220),
                new LifeAheadRow(
                        1461,
                        LastReport.SILENT_ONCE,
                        null,
                        3,
                        1,
                        null,
                        300,
                        FitStatus.ONE_FAILURE,
                        "a single failure cannot tell both a scale and a shape",
                        NONE,
                        NONE,
                        List.of()),
                row(null, null, null, 71, 48, 260),
                row(null, null, FirstLow.IN_WARMTH, 44, 37, 160),
                row(null, null, FirstLow.IN_THE_COLD, 27, 11, 900));
    }

    private static LifeAheadRow row(
            Integer age, LastReport report, FirstLow low, double lives, double failures, double median) {
        String known = report != null ? report.name() : low != null ? low.name() : "ANY_FIRST_LOW";
        List<CurvePoint> curve = new ArrayList<>();
        for (int day = 0; day <= 1092; day += 91) {
            double s = Math.pow(0.5, day / median);
            curve.add(new CurvePoint(
                    known, Method.WEIBULL, day, s, s * 0.9, Math.min(1, s * 1.1), lives * s, lives - lives * s));
        }
        double year = Math.pow(0.5, 365 / median);
        return new LifeAheadRow(
                age,
                report,
                low,
                lives,
                failures,
                age == null ? 5L : null,
                1100,
                FitStatus.CONVERGED,
                "",
                new Estimate(median, median * 0.8, median * 1.25),
                new Estimate(year, year * 0.9, Math.min(1, year * 1.1)),
                curve);
    }

    /** @param vehicleClass name of a class */
    static VehicleFits vehicles(String vehicleClass) {
        CovariateEffects effects = new CovariateEffects(
                List.of(
                        effect(Factor.VEHICLE_CLASS, vehicleClass, true, 1),
                        effect(Factor.VEHICLE_CLASS, "truck " + vehicleClass, false, 0.71),
                        effect(Factor.PLACE, "FRONT_AXLE", true, 1),
                        effect(Factor.PLACE, "DUAL_INNER, SPARE", false, 0.83),
                        effect(Factor.ANNUAL_DISTANCE, "twice the distance", false, 0.97)),
                List.of(
                        new FamilyFit(LifeFamily.WEIBULL, RegressionStatus.CONVERGED, 6, -812.4, 1636.8, 0, ""),
                        new FamilyFit(LifeFamily.LOGNORMAL, RegressionStatus.CONVERGED, 6, -820.1, 1652.2, 15.4, ""),
                        new FamilyFit(
                                LifeFamily.GENERALISED_GAMMA,
                                RegressionStatus.FLAT_LIKELIHOOD,
                                0,
                                Double.NaN,
                                Double.NaN,
                                Double.NaN,
                                "no finite maximum")),
                1410,
                183,
                1410,
                1502,
                new TreeMap<>(),
                List.of("12 lives of " + vehicleClass + " are left out: 1 failed there, and it takes 5"));
        return new VehicleFits(
                effects,
                new SeasonFit(
                        FitReport.of(1410, 183, 1_902_000, 6, 1e-12, 40),
                        new Estimate(1.31, 1.02, 1.68),
                        0.034,
                        -812,
                        6,
                        4,
                        12,
                        71.4,
                        111.6,
                        1704,
                        3503),
                List.of(
                        new ClimateMonth(null, Month.JANUARY, 4012, 1, true, Basis.FLEET),
                        new ClimateMonth(vehicleClass, Month.JANUARY, 12, 3, true, Basis.FLEET)),
                new SetLikeness(
                        FrailtyStatus.CONVERGED,
                        "",
                        301,
                        1410,
                        new Estimate(0.6, 0.2, 1.3),
                        new Estimate(1.6, 1.2, 2.3),
                        0.23,
                        0.0004,
                        FitReport.of(1410, 183, 1_902_000, 9, 1e-11, 55),
                        null),
                null);
    }

    private static CovariateEffect effect(Factor factor, String level, boolean reference, double life) {
        double hazard = Math.pow(life, -2.5);
        return new CovariateEffect(
                factor,
                level,
                reference,
                400,
                61,
                new Estimate(life, life * 0.85, life * 1.18),
                Double.NaN,
                new Estimate(hazard, hazard * 0.7, hazard * 1.4),
                reference ? Double.NaN : 0.004);
    }

    static List<CalendarRow> calendar() {
        List<CalendarRow> rows = new ArrayList<>();
        for (int year = 2022; year <= 2026; year++) {
            rows.add(CalendarRow.of(
                    Period.YEAR, year, year == 2022 ? 3 : 12, 12.5 + year % 3, 210_000, 11 + year % 3, 12.25));
        }
        for (int month = 1; month <= 12; month++) {
            rows.add(CalendarRow.of(Period.MONTH_OF_YEAR, month, 4, 5.5 + month % 5, 87_000, 5, 5.5));
        }
        return rows;
    }
}
