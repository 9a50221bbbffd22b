package sensorrounds.backtest;

import java.time.LocalDate;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.accuracy.ClusteredRatio;
import sensorrounds.accuracy.Concordance;
import sensorrounds.accuracy.ObservedExpected;
import sensorrounds.survival.Estimate;

/** Scores of the forecasts of a cut, or of several together. */
final class Scores {
    /** Failures under which the limits of a ratio are those of a Poisson count. */
    private static final double FEW = 10;

    private static final double Z95 = 1.959963984540054;

    private Scores() {}

    /** @param cut null when {@code cuts} are several */
    static ScoreRow row(LocalDate cut, List<KnownBy> cuts, Horizon horizon) {
        ToDoubleFunction<Forecast> engine = f -> f.chances().within(horizon);
        ToDoubleFunction<Forecast> age = f -> f.byAge().within(horizon);
        long forecasts = 0;
        double known = 0;
        double failures = 0;
        double expected = 0;
        ClusteredRatio.Sum ratio = new ClusteredRatio.Sum();
        ClusteredRatio.Sum brier = new ClusteredRatio.Sum();
        ClusteredRatio.Sum brierByAge = new ClusteredRatio.Sum();
        ClusteredRatio.Sum gain = new ClusteredRatio.Sum();
        double expectedOfKnown = 0;
        for (KnownBy one : cuts) {
            forecasts += one.all().size();
            failures += one.failures();
            for (Judged j : one.all()) {
                expected += engine.applyAsDouble(j.forecast());
            }
            for (KnownBy.Entry e : one.entries()) {
                String vehicle = e.forecast().vehicleId();
                double chance = engine.applyAsDouble(e.forecast());
                double error = square(chance - e.outcome());
                double errorByAge = square(age.applyAsDouble(e.forecast()) - e.outcome());
                known += e.part();
                expectedOfKnown += e.part() * chance;
                ratio.add(vehicle, e.weight(), e.outcome(), chance);
                brier.add(vehicle, e.weight(), error, 1);
                brierByAge.add(vehicle, e.weight(), errorByAge, 1);
                gain.add(vehicle, e.weight(), errorByAge - error, 1);
            }
        }
        Concordance order = cuts.size() == 1 ? concordance(cuts.get(0), horizon, engine) : null;
        return new ScoreRow(
                cut,
                horizon,
                forecasts,
                Math.round(known),
                failures,
                expected,
                new Estimate(expected, expectedAt(cuts, engine, -Z95), expectedAt(cuts, engine, Z95)),
                ratio(ratio.ratio(), failures, expectedOfKnown),
                brier.ratio().value(),
                brierByAge.ratio().value(),
                gain.ratio().plain(),
                order != null ? order.value() : together(cuts, horizon, engine),
                order != null ? order.standardError() : Double.NaN,
                order != null ? concordance(cuts.get(0), horizon, age).value() : together(cuts, horizon, age));
    }

    /**
     * Failures expected if the hazards of all sensors were off by so many standard deviations together. A sensor of unknown age is
     * taken to be as unsure as the median of its cut.
     */
    private static double expectedAt(List<KnownBy> cuts, ToDoubleFunction<Forecast> chance, double z) {
        double sum = 0;
        for (KnownBy cut : cuts) {
            double[] errors = cut.all().stream()
                    .mapToDouble(j -> j.forecast().fitError())
                    .filter(e -> !Double.isNaN(e))
                    .sorted()
                    .toArray();
            double median = errors.length == 0 ? 0 : errors[errors.length / 2];
            for (Judged j : cut.all()) {
                double error = j.forecast().fitError();
                double hazard = -Math.log1p(-chance.applyAsDouble(j.forecast()));
                sum -= Math.expm1(-hazard * Math.exp(z * (Double.isNaN(error) ? median : error)));
            }
        }
        return sum;
    }

    /** With few failures their own number is what is least sure. */
    private static Estimate ratio(ClusteredRatio robust, double failures, double expectedOfKnown) {
        if (failures >= FEW) {
            return robust.positive();
        }
        Estimate poisson = ObservedExpected.of(failures, expectedOfKnown).ratio();
        double scale = failures > 0 ? robust.value() / poisson.value() : 1;
        return new Estimate(robust.value(), poisson.lower() * scale, poisson.upper() * scale);
    }

    private static Concordance concordance(KnownBy cut, Horizon horizon, ToDoubleFunction<Forecast> chance) {
        double[] risk = cut.all().stream()
                .mapToDouble(j -> chance.applyAsDouble(j.forecast()))
                .toArray();
        // Failures stand on half days at most: a quarter past the horizon is past its last failure.
        return Concordance.uno(cut.inOrder(), risk, horizon.days() + 0.25);
    }

    /** Pairs within each cut, added up: chances given on different days are not compared. */
    private static double together(List<KnownBy> cuts, Horizon horizon, ToDoubleFunction<Forecast> chance) {
        double right = 0;
        double pairs = 0;
        for (KnownBy cut : cuts) {
            Concordance c = concordance(cut, horizon, chance);
            right += c.concordant() + c.tiedRisk() / 2;
            pairs += c.concordant() + c.discordant() + c.tiedRisk();
        }
        return right / pairs;
    }

    private static double square(double x) {
        return x * x;
    }
}
