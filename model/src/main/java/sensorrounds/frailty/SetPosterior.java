package sensorrounds.frailty;

import java.util.List;

/**
 * What the lives of one vehicle say about its frailty, and with it about the sensors still alive: the gamma law of
 * frailty times the likelihood of the set. After d exact failures and A, the sum of hazards gone through, it is a gamma
 * law with mean (a + d) / (a + A), a = 1 / variance: Klein and Moeschberger (2003), Survival Analysis, 13.3. The law of
 * life counts as known: its own uncertainty is not in these figures.
 */
public final class SetPosterior {
    private final FrailtyLaw law;
    private final List<SetMember> set;

    private SetPosterior(FrailtyLaw law, List<SetMember> set) {
        this.law = law;
        this.set = List.copyOf(set);
    }

    static SetPosterior of(FrailtyLaw law, List<SetMember> set) {
        return new SetPosterior(law, set);
    }

    /** Expected frailty: how many times the hazard of an average new vehicle. */
    public double mean() {
        SetIntegral integral = integral(0);
        double sum = 0;
        for (int q = 0; q < integral.size(); q++) {
            sum += integral.weight(q) * Math.exp(integral.y(q));
        }
        return sum;
    }

    /** Variance of frailty as it remains. */
    public double variance() {
        SetIntegral integral = integral(0);
        double mean = mean();
        double sum = 0;
        for (int q = 0; q < integral.size(); q++) {
            double off = Math.exp(integral.y(q)) - mean;
            sum += integral.weight(q) * off * off;
        }
        return sum;
    }

    /** P(fail within the next while) of a sensor last known alive at the end of its observation. */
    public double failureWithin(int member, double during) {
        return failureWithin(member, set.get(member).lower(), during);
    }

    /**
     * P(fail within the next while | alive at age), given also all that is known of the set.
     *
     * @param member its place in the set
     * @param age at least the age it was last known alive at
     * @throws IllegalArgumentException if it failed, or the age or time is out of range
     */
    public double failureWithin(int member, double age, double during) {
        SetMember life = set.get(member);
        if (life.failed()) {
            throw new IllegalArgumentException("sensor " + member + " of the set has failed: " + life);
        }
        if (!(age >= life.lower() && during >= 0 && age + during < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("age " + age + " and time " + during + " ahead: the age must not lie"
                    + " before " + life.lower() + ", when it was last known alive, and the time not be negative");
        }
        double now = law.cumulativeHazard(age, life.covariates());
        double ahead = law.cumulativeHazard(age + during, life.covariates()) - now;
        SetIntegral integral = integral(now - law.cumulativeHazard(life.lower(), life.covariates()));
        double sum = 0;
        for (int q = 0; q < integral.size(); q++) {
            sum -= integral.weight(q) * Math.expm1(-ahead * Math.exp(integral.y(q)));
        }
        return sum;
    }

    private SetIntegral integral(double more) {
        double survived = more;
        int exact = 0;
        int within = 0;
        double[] intervals = new double[set.size()];
        for (SetMember life : set) {
            double lower = law.cumulativeHazard(life.lower(), life.covariates());
            survived += lower;
            if (life.exact()) {
                exact++;
            } else if (life.failed()) {
                intervals[within++] = law.cumulativeHazard(life.upper(), life.covariates()) - lower;
            }
        }
        return new SetIntegral(1 / law.variance(), survived, exact, java.util.Arrays.copyOf(intervals, within));
    }
}
