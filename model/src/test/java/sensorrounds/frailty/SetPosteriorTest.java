package sensorrounds.frailty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SetPosteriorTest {
    private static final double NEVER = Double.POSITIVE_INFINITY;
    private static final FrailtyLaw LAW = FrailtyLaw.of(2, 1000, 0.5);

    /**
     * On paper: shape 2, scale 1000, variance 1/2, so a = 2. One sensor died at exactly 1000 days, three are alive then:
     * d = 1, A = 4, the posterior is gamma with shape 3 and rate 6. P(fail within 414.2136 days) has H = 2 - 1 = 1 ahead:
     * 1 - (6 / 7)^3.
     */
    @Test
    void onePairOfNumbersOnPaper() {
        List<SetMember> set = List.of(
                SetMember.of(0, 1000, 1000),
                SetMember.of(0, 1000, NEVER),
                SetMember.of(0, 1000, NEVER),
                SetMember.of(0, 1000, NEVER));

        SetPosterior posterior = LAW.posterior(set);

        assertThat(posterior.mean()).isCloseTo(0.5, within(1e-12));
        assertThat(posterior.variance()).isCloseTo(3.0 / 36, within(1e-12));
        assertThat(posterior.failureWithin(1, 1000 * (Math.sqrt(2) - 1)))
                .isCloseTo(1 - Math.pow(6.0 / 7, 3), within(1e-12));
        // Without the death: shape 2, rate 6.
        SetPosterior sound = LAW.posterior(set.subList(1, 4));
        assertThat(sound.mean()).isCloseTo(2.0 / 5, within(1e-12));
        assertThat(LAW.survival(1000, List.of())).isCloseTo(4.0 / 9, within(1e-12));
    }

    /** Right after a death, hazard over hazard before it is 1 + variance: Clayton (1978)'s constant cross ratio. */
    @Test
    void aDeathMultipliesTheRiskOfItsSetMateByOnePlusVariance() {
        for (double variance : new double[] {0.1, 0.5, 3}) {
            FrailtyLaw law = FrailtyLaw.of(2.5, 2500, variance);
            SetMember alive = SetMember.of(0, 1800, NEVER);

            double after =
                    law.posterior(List.of(SetMember.of(0, 1800, 1800), alive)).mean();
            double before = law.posterior(List.of(alive, alive)).mean();

            assertThat(after / before).isCloseTo(1 + variance, within(1e-12));
        }
    }

    @Test
    void narrowIntervalsAreExactAges() {
        SetMember mate = SetMember.of(0, 1500, NEVER);
        double exact = LAW.posterior(List.of(SetMember.of(0, 700, 700), mate)).failureWithin(1, 90);
        double narrow =
                LAW.posterior(List.of(SetMember.of(0, 699.999, 700.001), mate)).failureWithin(1, 90);

        assertThat(narrow).isCloseTo(exact, within(1e-9));
    }

    @Test
    void livesThatSurvivedMakeASetStronger() {
        SetMember young = SetMember.of(0, 500, NEVER);
        SetMember old = SetMember.of(0, 2000, NEVER);

        assertThat(LAW.posterior(List.of(young, old)).mean())
                .isLessThan(LAW.posterior(List.of(young)).mean());
        assertThat(LAW.posterior(List.of()).mean()).isCloseTo(1, within(1e-12));
    }

    /** Alive at a later age is one thing more that is known. */
    @Test
    void forecastFromALaterAgeKnowsItLivedTillThen() {
        List<SetMember> then = List.of(SetMember.of(0, 600, 900), SetMember.of(0, 900, NEVER));
        List<SetMember> later = List.of(SetMember.of(0, 600, 900), SetMember.of(0, 1200, NEVER));

        assertThat(LAW.posterior(then).failureWithin(1, 1200, 90))
                .isCloseTo(LAW.posterior(later).failureWithin(1, 90), within(1e-12));
        double twoSteps = (1 - LAW.posterior(then).failureWithin(1, 300))
                * (1 - LAW.posterior(later).failureWithin(1, 90));
        assertThat(1 - LAW.posterior(then).failureWithin(1, 390)).isCloseTo(twoSteps, within(1e-12));
    }

    /** Of simulated pairs of which one died in a visit's interval, the share whose mate died within the year. */
    @Test
    void forecastsComeTrue() {
        Random random = new Random(99);
        FrailtyLaw law = FrailtyLaw.of(2.5, 2500, 1);
        double forecast = law.posterior(List.of(SetMember.of(0, 1400, 1600), SetMember.of(0, 1600, NEVER)))
                .failureWithin(1, 365);
        List<Boolean> died = new ArrayList<>();
        while (died.size() < 8000) {
            double frailty = SimulatedSets.gamma(random, 1);
            double one = life(random, frailty);
            double other = life(random, frailty);
            if (one > 1400 && one <= 1600 && other > 1600) {
                died.add(other <= 1965);
            }
        }
        double share = died.stream().filter(d -> d).count() / 8000.0;

        // Five standard errors of a share of 8,000.
        assertThat(share).isCloseTo(forecast, within(5 * Math.sqrt(forecast * (1 - forecast) / 8000)));
        double unaware = 1 - law.survival(1965, List.of()) / law.survival(1600, List.of());
        assertThat(forecast).isGreaterThan(1.4 * unaware);
    }

    private static double life(Random random, double frailty) {
        return 2500 * Math.pow(-Math.log(1 - random.nextDouble()) / frailty, 1 / 2.5);
    }

    @Test
    void refusesTheDeadAndThePast() {
        SetPosterior posterior = LAW.posterior(List.of(SetMember.of(0, 600, 900), SetMember.of(0, 900, NEVER)));

        assertThatThrownBy(() -> posterior.failureWithin(0, 90)).hasMessageContaining("sensor 0 of the set has failed");
        assertThatThrownBy(() -> posterior.failureWithin(1, 800, 90)).hasMessageContaining("last known alive");
        assertThatThrownBy(() -> FrailtyLaw.of(2, -1, 0)).hasMessageContaining("positive shape and scale");
    }
}
