package sensorrounds.analyst;

import java.io.Serializable;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.season.ClimateMonth;
import sensorrounds.season.Climates;
import sensorrounds.season.SeasonFit;
import sensorrounds.survival.FitReport;

/**
 * What needs to know which sensors share a vehicle, fitted to a draw of vehicles; the law of record of who lives longer to all
 * of them ({@link #over}).
 *
 * @param effects who lives longer
 * @param season what the cold does to them
 * @param climate which months those are, of the fleet and of each depot
 * @param likeness how alike the sensors of one vehicle are
 * @param code how lives become the columns of the regression, where the fleet is larger than the draw; else null, and where
 *     nothing is compared
 */
public record VehicleFits(
        CovariateEffects effects,
        SeasonFit season,
        List<ClimateMonth> climate,
        SetLikeness likeness,
        CovariateCode code)
        implements Serializable {
    public VehicleFits {
        climate = List.copyOf(climate);
    }

    /** @param climates which months are cold at each depot */
    public static VehicleFits of(VehicleSample sample, Climates climates) {
        CovariateRegression regression = new CovariateRegression(CovariateDesign.of(sample.vehicles()));
        CovariateEffects effects = regression.fit(sample.lives());
        SeasonEffect season = new SeasonEffect(sample, climates);
        boolean draw = sample.held() < sample.lives() && !effects.effects().isEmpty();
        return new VehicleFits(
                season.beside(effects),
                season.fit(),
                climates.months(),
                SetLikeness.fit(regression.design()),
                draw ? regression.design().code() : null);
    }

    /** The same with the law of record fitted to all lives, one likelihood wherever they are; as it is where all were drawn. */
    public VehicleFits over(WholeFleet fleet) {
        return code == null ? this : new VehicleFits(effects.over(fleet, code), season, climate, likeness, null);
    }

    /** What each fit says of itself, by its name. */
    public SortedMap<String, FitReport> reports() {
        SortedMap<String, FitReport> reports = new TreeMap<>(effects.reports());
        reports.put("factor of cold months", season.report());
        reports.put("shared frailty of a vehicle", likeness.report());
        return reports;
    }
}
