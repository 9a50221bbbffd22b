package sensorrounds.replacement;

import sensorrounds.numeric.Quadrature;

/**
 * A law of life as age replacement needs it. The hazard must rise, fall or stay level all along, or fall first and rise
 * after (a bathtub): the optimality condition then still changes sign once at most, from below.
 */
public interface AgeingLaw {
    /** S(age), 1 at age 0. */
    double survival(double age);

    /** Hazard rate at an age, per unit of age; may be infinite at the end of a bounded life. */
    double hazard(double age);

    /** Age beyond which survival is nothing to double precision (under 1e-17), or at which life is bounded. */
    double lastAge();

    /** Mean life up to an age: the integral of S from 0. */
    default double meanUpTo(double age) {
        return Quadrature.integral(this::survival, 0, age);
    }

    default double mean() {
        return meanUpTo(lastAge());
    }
}
