package sensorrounds.accuracy;

/**
 * Chance that, of a unit that failed by an age and one that lived past it, the failed one had been given the higher risk,
 * equal risks counting one half: the area under the curve of hits against false alarms at that age. Units lost before count
 * through those kept, weighted as for {@link BrierScore}. O(n log n).
 *
 * <p>Sources: Hung and Chiang (2010), Can. J. Stat. 38:8-26; error by the influence of each unit, the estimated chance of
 * being kept included: Blanche, Dartigues and Jacqmin-Gadda (2013), Stat. Med. 32:5381-5397.
 *
 * @param age the age in question
 * @param value 0.5 is chance; NaN when nobody failed by the age or nobody lived past it
 * @param standardError NaN likewise
 */
public record AreaUnderCurve(double age, double value, double standardError) {
    /**
     * The area at one age.
     *
     * @param risk one per unit, higher for sooner
     * @throws IllegalArgumentException if everybody in sight was lost before the age
     */
    public static AreaUnderCurve at(double age, FollowUp units, double[] risk) {
        units.requirePredictions("risks", risk);
        CensoringCurve curve = CensoringCurve.of(units);
        double[] weights = curve.weightsTo(age);
        RankSums failed = new RankSums(risk);
        RankSums alive = new RankSums(risk);
        double lives = 0;
        double allFailed = 0;
        double allAlive = 0;
        for (int i = 0; i < weights.length; i++) {
            lives += units.entry(i) < age ? units.weight(i) : 0;
            double weight = units.weight(i) * weights[i];
            if (weight > 0 && units.exit(i) <= age) {
                failed.add(failed.rank(risk[i]), weight);
                allFailed += weight;
            } else if (weight > 0) {
                alive.add(alive.rank(risk[i]), weight);
                allAlive += weight;
            }
        }
        if (!(allFailed > 0 && allAlive > 0)) {
            return new AreaUnderCurve(age, Double.NaN, Double.NaN);
        }
        // Weight of pairs in the right order, seen from each unit.
        double[] right = new double[weights.length];
        double pairs = 0;
        for (int i = 0; i < weights.length; i++) {
            int rank = alive.rank(risk[i]);
            if (weights[i] > 0 && units.exit(i) <= age) {
                right[i] = alive.below(rank) + alive.at(rank) / 2;
                pairs += units.weight(i) * weights[i] * right[i];
            } else if (weights[i] > 0) {
                right[i] = failed.above(rank) + failed.at(rank) / 2;
            }
        }
        double value = pairs / (allFailed * allAlive);
        double[] moved = new double[weights.length];
        for (int i = 0; i < weights.length; i++) {
            double expected = value * (units.exit(i) <= age ? allAlive : allFailed);
            moved[i] = lives * weights[i] * (right[i] - expected) / (allFailed * allAlive);
        }
        double[] throughCurve = curve.influence(moved, age, lives);
        double square = 0;
        for (int i = 0; i < moved.length; i++) {
            double influence = moved[i] + throughCurve[i];
            square += units.weight(i) * influence * influence;
        }
        return new AreaUnderCurve(age, value, Math.sqrt(square / (lives * (lives - 1))));
    }
}
