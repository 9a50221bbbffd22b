package sensorrounds.analyst;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sensorrounds.analyst.CovariateDesign.Row;
import sensorrounds.frailty.FrailtyFit;
import sensorrounds.frailty.FrailtyFitter;
import sensorrounds.frailty.FrailtyLaw;
import sensorrounds.frailty.FrailtyStatus;
import sensorrounds.frailty.LifeSets;
import sensorrounds.frailty.SetMember;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;

/**
 * How alike the sensors of one vehicle are, beyond what their class, place and part explain: a frailty that multiplies the
 * hazard of all of them, gamma distributed over vehicles ({@link FrailtyFitter}).
 *
 * @param note why there is no figure; empty when there is one
 * @param vehicles vehicles that took part
 * @param lives their lives
 * @param variance of frailty over vehicles, with likelihood-ratio limits; NaN where there is no fit
 * @param afterOneDeath how many times as likely a sensor is to fail at any age when a set-mate has failed at it than when
 *     that mate lives: 1 + variance (Oakes 1989, J. Am. Statist. Assoc. 84:487), limits as of the variance
 * @param kendallTau rank correlation of two lives of one vehicle
 * @param pValue chance of as much likeness if there were none
 * @param report what the fit says of itself
 * @param frailty the law, for what a vehicle's dead say about its living; null where there is no fit
 */
public record SetLikeness(
        FrailtyStatus status,
        String note,
        int vehicles,
        long lives,
        Estimate variance,
        Estimate afterOneDeath,
        double kendallTau,
        double pValue,
        FitReport report,
        FrailtyLaw frailty)
        implements Serializable {
    /** Lives of the vehicles that take part, about; more would sharpen limits that are narrow by then. */
    static final int LIVES = 10_000;

    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    /** The law, where there is one; also where no likeness was found, and its variance is 0. */
    public Optional<FrailtyLaw> law() {
        return Optional.ofNullable(frailty);
    }

    /** @param design covariates that the likeness has to go beyond */
    static SetLikeness fit(CovariateDesign design) {
        List<double[]> columns = design.columns().stream().map(design::values).toList();
        Map<Integer, List<SetMember>> sets = new TreeMap<>();
        long lives = 0;
        for (int i = 0; i < design.rows().size(); i++) {
            Row row = design.rows().get(i);
            if (lives >= LIVES && !sets.containsKey(row.vehicle())) {
                break;
            }
            lives++;
            List<Double> x = new ArrayList<>();
            for (double[] column : columns) {
                x.add(column[i]);
            }
            sets.computeIfAbsent(row.vehicle(), v -> new ArrayList<>())
                    .add(new SetMember(
                            row.life().entry(),
                            row.life().lower(),
                            row.failed() ? row.life().upper() : Double.POSITIVE_INFINITY,
                            x));
        }
        List<String> names = design.columns().stream().map(FactorLevel::column).toList();
        FrailtyFit fit = FrailtyFitter.withDefaults().fit(LifeSets.of(names, sets.values()));
        if (!fit.converged()) {
            return new SetLikeness(
                    fit.status(),
                    fit.cause(),
                    sets.size(),
                    lives,
                    NONE,
                    NONE,
                    Double.NaN,
                    Double.NaN,
                    fit.report(),
                    null);
        }
        Estimate v = fit.variance();
        return new SetLikeness(
                fit.status(),
                "",
                sets.size(),
                lives,
                v,
                new Estimate(1 + v.value(), 1 + v.lower(), 1 + v.upper()),
                fit.kendallTau(),
                fit.pValue(),
                fit.report(),
                fit.law());
    }
}
