package sensorrounds.accuracy;

import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.StepCurve;

/**
 * Mean squared distance between predicted survival to an age and what happened. Units lost before it count through those
 * kept: each is weighted by the inverse chance of having been kept in sight, since its entry where entry was delayed.
 * Units that entered at or after the age are left out.
 *
 * <p>Source: Graf, Schmoor, Sauerbrei and Schumacher (1999), Stat. Med. 18:2529-2545; error by the influence of each unit,
 * the estimated chance of being kept included: Gerds and Schumacher (2006), Biom. J. 48:1029-1040. The weights hold where
 * loss has nothing to do with the prediction.
 *
 * @param age the age predicted to
 * @param lives weight of the units judged
 * @param leftOut weight of the units that entered too late
 * @param score 0 is perfect; the lower the better
 * @param standardError of the score
 * @param nullScore the score of giving every unit the Kaplan-Meier survival from its entry to the age
 * @param explained 1 - score / nullScore: how much better than knowing nothing about the units
 */
public record BrierScore(
        double age,
        double lives,
        double leftOut,
        double score,
        double standardError,
        double nullScore,
        double explained) {

    /**
     * The score at one age.
     *
     * @param survival predicted chance of being alive at the age, given alive at entry; from 0 to 1, one per unit
     * @throws IllegalArgumentException if no unit can be judged at the age, or a prediction is no probability
     */
    public static BrierScore at(double age, FollowUp units, double[] survival) {
        units.requirePredictions("survival chances", survival);
        for (int i = 0; i < survival.length; i++) {
            if (!(survival[i] >= 0 && survival[i] <= 1)) {
                throw new IllegalArgumentException(
                        "unit " + i + ": a chance of survival lies between 0 and 1, not " + survival[i]);
            }
        }
        double lives = 0;
        double leftOut = 0;
        double last = 0;
        for (int i = 0; i < units.size(); i++) {
            boolean late = units.entry(i) >= age;
            lives += late ? 0 : units.weight(i);
            leftOut += late ? units.weight(i) : 0;
            last = Math.max(last, units.exit(i));
        }
        if (!(lives > 0 && age <= last)) {
            throw new IllegalArgumentException("no unit can be judged at age " + age + ": " + lives
                    + " entered before it, and the last was seen at " + last);
        }
        CensoringCurve curve = CensoringCurve.of(units);
        double[] weights = curve.weightsTo(age);
        double[] parts = parts(age, units, weights, survival);
        double score = mean(units, parts, lives);
        double[] throughCurve = curve.influence(parts, age, lives);
        double square = 0;
        for (int i = 0; i < parts.length; i++) {
            if (units.entry(i) < age) {
                double influence = parts[i] - score + throughCurve[i];
                square += units.weight(i) * influence * influence;
            }
        }
        double nullScore = mean(units, parts(age, units, weights, withoutCovariates(age, units)), lives);
        return new BrierScore(
                age,
                lives,
                leftOut,
                score,
                Math.sqrt(square / (lives * (lives - 1))),
                nullScore,
                1 - score / nullScore);
    }

    private static double[] parts(double age, FollowUp units, double[] weights, double[] survival) {
        double[] parts = new double[weights.length];
        for (int i = 0; i < parts.length; i++) {
            double off = units.exit(i) <= age ? survival[i] : 1 - survival[i];
            parts[i] = weights[i] == 0 ? 0 : weights[i] * off * off;
        }
        return parts;
    }

    private static double mean(FollowUp units, double[] parts, double lives) {
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            sum += units.weight(i) * parts[i];
        }
        return sum / lives;
    }

    private static double[] withoutCovariates(double age, FollowUp units) {
        StepCurve survival = KaplanMeier.withDefaults().fit(units.sample()).survival();
        double[] chances = new double[units.size()];
        for (int i = 0; i < chances.length; i++) {
            chances[i] = units.entry(i) < age ? survival.at(age) / survival.at(units.entry(i)) : Double.NaN;
        }
        return chances;
    }
}
