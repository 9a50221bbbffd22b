package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class CommonShapeFitterTest {
    private static final CommonShapeFitter FITTER = CommonShapeFitter.withDefaults();

    private static List<LifetimeSample> fleet(int cohorts, int units, double... scaleYears) {
        List<LifetimeSample> all = new ArrayList<>();
        for (int i = 0; i < cohorts; i++) {
            double scale = scaleYears[i % scaleYears.length];
            all.add(LifetimeSample.of(SimulatedRounds.simulate(100 + i, units, 2.5, scale, 0.7 * scale, 3)));
        }
        return all;
    }

    /** Truth: shape 2.5 in every cohort, scales from 3 to 14 years, entry and visits as in the acceptance case. */
    @Test
    void cohortsOfDifferentScaleMergedLookLessWornOutThanTheyAre() {
        List<LifetimeSample> fleet = fleet(4, 3000, 3, 5, 9, 14);
        double merged = ParametricFitter.of(Family.WEIBULL)
                .fit(LifetimeSample.pooled(fleet))
                .shape()
                .upper();
        assertThat(merged).isLessThan(1.2);
        CommonShapeFit common = FITTER.fit(fleet);
        assertThat(common.shape()).isCloseTo(2.5, within(0.1));
        double half = 1.96 * Math.sqrt(common.varLogShape());
        assertThat(common.shape() * Math.exp(-half)).isLessThan(2.5);
        assertThat(common.shape() * Math.exp(half)).isGreaterThan(2.5);
        assertThat(common.cohorts()).isEqualTo(4);
    }

    /** Eighty cohorts of some five failures each, where fitting each scale to so few might have pulled the shape up. */
    @Test
    void manySmallCohortsPullTheShapeUpByLittle() {
        List<LifetimeSample> fleet = fleet(80, 14, 3, 5, 9, 14);
        CommonShapeFit common = FITTER.fit(fleet);
        assertThat(common.report().failures() / common.cohorts()).isLessThan(6);
        assertThat(common.shape()).isCloseTo(2.5, within(0.25));
    }

    @Test
    void theLadderLendsTheCommonShapeAndKeepsTheMergedRow() {
        Map<String, LifetimeSample> cohorts = new TreeMap<>();
        List<LifetimeSample> fleet = fleet(4, 1000, 3, 5, 9, 14);
        for (int i = 0; i < fleet.size(); i++) {
            cohorts.put("part " + i, fleet.get(i));
        }
        cohorts.put("part few", LifetimeSample.of(SimulatedRounds.simulate(7, 20, 2.5, 7, 5, 3)));
        Map<String, CohortLife> fits = CohortLadder.withDefaults().fit(cohorts);
        assertThat(fits.get("part few").rung()).isEqualTo(CohortLadder.Rung.PARTLY_POOLED);
        assertThat(fits.get("part few").fit().shape()).isCloseTo(2.5, within(0.15));
        assertThat(fits.get("all").fit().shape()).isLessThan(1.2);
    }

    /**
     * By hand: two cohorts, exact failures at 1 and 4 in one, 100 and 400 in the other. Both have the same shape, y / log 2
     * with y tanh y = 1 (as in ParametricFitterTest), whatever their scales; the merged lives do not.
     */
    @Test
    void twoCohortsSolvedByHand() {
        LifetimeSample short1 = LifetimeSample.of(List.of(Lifetime.exact(0, 1), Lifetime.exact(0, 4)));
        LifetimeSample long1 = LifetimeSample.of(List.of(Lifetime.exact(0, 100), Lifetime.exact(0, 400)));
        CommonShapeFit fit = FITTER.fit(List.of(short1, long1));
        assertThat(fit.shape()).isCloseTo(1.199678640257734 / Math.log(2), within(1e-10));
        // Twice the information of one cohort.
        double alone = ParametricFitter.of(Family.WEIBULL).fit(short1).varLogShape();
        assertThat(fit.varLogShape()).isCloseTo(alone / 2, within(1e-10));
        assertThat(ParametricFitter.of(Family.WEIBULL)
                        .fit(LifetimeSample.pooled(List.of(short1, long1)))
                        .shape()
                        .value())
                .isLessThan(0.7);
    }

    /** One cohort alone: its own fit, shape and variance. */
    @Test
    void oneCohortKeepsItsOwnShape() {
        LifetimeSample sample = fleet(1, 300, 7).get(0);
        ParametricFit own = ParametricFitter.of(Family.WEIBULL).fit(sample);
        CommonShapeFit fit = FITTER.fit(List.of(sample));
        assertThat(fit.shape()).isCloseTo(own.shape().value(), within(1e-9));
        assertThat(fit.varLogShape()).isCloseTo(own.varLogShape(), within(1e-9));
    }

    @Test
    void theUnitOfTimeOfACohortAndTheOrderDoNotMatter() {
        List<LifetimeSample> fleet = fleet(3, 200, 3, 5, 9);
        CommonShapeFit fit = FITTER.fit(fleet);
        LifetimeSample first = fleet.get(0);
        double[][] c = new double[4][first.size()];
        for (int i = 0; i < first.size(); i++) {
            c[0][i] = first.entry(i) / 1000;
            c[1][i] = first.lower(i) / 1000;
            c[2][i] = first.upper(i) / 1000;
            c[3][i] = first.weight(i);
        }
        List<LifetimeSample> other = new ArrayList<>(fleet.subList(1, 3));
        other.add(LifetimeSample.of(c[0], c[1], c[2], c[3]));
        Collections.reverse(other);
        assertThat(FITTER.fit(other).shape()).isCloseTo(fit.shape(), within(1e-9));
        assertThat(FITTER.fit(other).varLogShape()).isCloseTo(fit.varLogShape(), within(1e-9));
    }

    @Test
    void cohortsThatTellNothingAreLeftOutAndDegenerateOnesNamed() {
        List<LifetimeSample> fleet = new ArrayList<>(fleet(2, 200, 3, 5));
        double shape = FITTER.fit(fleet).shape();
        fleet.add(LifetimeSample.of(List.of()));
        fleet.add(LifetimeSample.of(List.of(new Lifetime(0, 900, Lifetime.NEVER, 12))));
        // Failed before anybody saw it good: any short scale explains it.
        fleet.add(LifetimeSample.of(List.of(Lifetime.interval(300, 300, 600))));
        assertThat(FITTER.fit(fleet).shape()).isEqualTo(shape);

        CommonShapeFit none = FITTER.fit(fleet.subList(2, 5));
        assertThat(none.report().status()).isEqualTo(FitStatus.FLAT_LIKELIHOOD);
        assertThatThrownBy(none::shape).hasMessageContaining("FLAT_LIKELIHOOD");
        LifetimeSample one = LifetimeSample.of(List.of(Lifetime.exact(0, 400), Lifetime.censored(0, 500)));
        assertThat(FITTER.fit(List.of(one, one)).report().status()).isEqualTo(FitStatus.ONE_FAILURE);
        LifetimeSample coincident = LifetimeSample.of(List.of(new Lifetime(0, 400, 400, 5)));
        assertThat(FITTER.fit(List.of(coincident)).report().status()).isEqualTo(FitStatus.FLAT_LIKELIHOOD);
    }
}
