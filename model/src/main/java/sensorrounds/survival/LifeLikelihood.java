package sensorrounds.survival;

import java.util.Arrays;
import sensorrounds.numeric.LogSpace;

/**
 * Log-likelihood of a sample under a log-location-scale law, given alive at entry, with first and second derivatives in
 * (log scale, log shape). A life in (lower, upper] entered at e adds w (log(S(lower) - S(upper)) - log S(e)); an exact
 * one w (log f(t) - log S(e)), with f the density of T (not of log T).
 *
 * <p>Sources: Klein and Moeschberger (2003), Survival Analysis, eqs. 3.5.1-3.5.5; Meeker and Escobar (1998), 8.1 and
 * 11.6 (truncation). With z = shape (log t - log scale), every derivative follows from dz = (-shape, z) and
 * d2z = (0, -shape, z) by the chain rule.
 */
final class LifeLikelihood {
    private final StandardLaw law;
    private final double[] logEntry;
    private final double[] entryWeight;
    private final double[] logLower;
    private final double[] logUpper;
    private final double[] weight;

    /** Log times are centred, which is what scaling time does; log scales come out relative to the centre. */
    LifeLikelihood(StandardLaw law, LifetimeSample sample, double centre) {
        this.law = law;
        LifeTerms terms = sample.terms();
        logEntry = centredLogs(terms.entry, centre);
        entryWeight = terms.entryWeight;
        logLower = centredLogs(terms.lower, centre);
        logUpper = centredLogs(terms.upper, centre);
        weight = terms.weight;
    }

    private static double[] centredLogs(double[] ages, double centre) {
        return Arrays.stream(ages).map(age -> Math.log(age) - centre).toArray();
    }

    /** Value and derivatives; s for log scale, k for log shape. */
    static final class Derivatives {
        double value;
        double s;
        double k;
        double ss;
        double sk;
        double kk;

        /** Adds factor times a function of z with these derivatives. */
        private void addChained(double factor, double z, double shape, double first, double second) {
            s += factor * first * -shape;
            k += factor * first * z;
            ss += factor * second * shape * shape;
            sk += factor * (second * -shape * z - first * shape);
            kk += factor * (second * z * z + first * z);
        }
    }

    /** The whole log-likelihood; time measured in units of exp(centre). */
    Derivatives at(double logScale, double logShape) {
        Derivatives total = new Derivatives();
        double shape = Math.exp(logShape);
        for (int i = 0; i < weight.length; i++) {
            if (logLower[i] == logUpper[i]) {
                addExact(total, weight[i], logLower[i], logScale, logShape, shape);
            } else {
                addInterval(total, weight[i], logLower[i], logUpper[i], logScale, shape);
            }
        }
        for (int i = 0; i < entryWeight.length; i++) {
            addInterval(total, -entryWeight[i], logEntry[i], Double.POSITIVE_INFINITY, logScale, shape);
        }
        return total;
    }

    private void addExact(Derivatives total, double w, double logTime, double logScale, double logShape, double shape) {
        double z = shape * (logTime - logScale);
        total.value += w * (law.logDensity(z) + logShape - logTime);
        total.k += w;
        total.addChained(w, z, shape, law.logDensitySlope(z), law.logDensityCurvature(z));
    }

    /** P = S(a) - S(b), a >= -infinity, b <= infinity; ratios to P are taken in logarithms. */
    private void addInterval(Derivatives total, double w, double from, double to, double logScale, double shape) {
        double a = shape * (from - logScale);
        double b = shape * (to - logScale);
        double logP = LogSpace.logDifference(
                a == Double.NEGATIVE_INFINITY ? 0 : law.logSurvival(a),
                b == Double.POSITIVE_INFINITY ? Double.NEGATIVE_INFINITY : law.logSurvival(b));
        total.value += w * logP;
        double s = 0;
        double k = 0;
        double atLower = a > Double.NEGATIVE_INFINITY ? Math.exp(law.logDensity(a) - logP) : 0;
        double atUpper = b < Double.POSITIVE_INFINITY ? Math.exp(law.logDensity(b) - logP) : 0;
        // A density that underflowed adds nothing, while its slope may have overflowed.
        if (atLower > 0) {
            total.addChained(w, a, shape, -atLower, -atLower * law.logDensitySlope(a));
            s += atLower * shape;
            k -= atLower * a;
        }
        if (atUpper > 0) {
            total.addChained(w, b, shape, atUpper, atUpper * law.logDensitySlope(b));
            s -= atUpper * shape;
            k += atUpper * b;
        }
        // d2 log P = d2P / P - (dP / P)(dP / P)'
        total.ss -= w * s * s;
        total.sk -= w * s * k;
        total.kk -= w * k * k;
    }
}
