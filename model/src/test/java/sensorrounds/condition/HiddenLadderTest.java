package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.HiddenFleet.NO_PRIORS;
import static sensorrounds.condition.HiddenFleet.SETTINGS;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.HiddenFleet.Weak;
import sensorrounds.condition.HiddenFleet.World;

/** How many stages of weakness, and whether the rates know the season: told by simulated fleets of known truth. */
class HiddenLadderTest {
    private static HiddenFit ladder(List<HiddenReadings> readings, ColdSeason season) {
        HiddenModel model = HiddenFleet.model(SETTINGS).with(season);
        return HiddenLadder.of(model).fit(m -> HiddenPass.over(readings, m));
    }

    private static HiddenFit fit(List<HiddenReadings> readings, HiddenModel model) {
        return HiddenFitter.of(model).fit(HiddenPass.over(readings, model));
    }

    private static void assertRecovered(HiddenFit fit, HiddenParameters truth, double chiSquared) {
        assertThat(fit.status()).as(fit.cause()).isEqualTo(HiddenFit.Status.CONVERGED);
        double squares = 0;
        for (int i = 0; i < truth.size(); i++) {
            double errors = (fit.parameters().at(i) - truth.at(i)) / Math.sqrt(fit.covariance()[i][i]);
            assertThat(errors).as("parameter " + i + " in standard errors").isBetween(-4.0, 4.0);
            squares += errors * errors;
        }
        assertThat(squares).isLessThan(chiSquared);
    }

    /** Two stages and a season that raises all rates by half: all 20 parameters. */
    @Test
    void twoStagesAndSeasonAreRecovered() {
        World world = World.PLAIN.with(Weak.TWO_STAGES).withWinter(1.5);
        List<HiddenReadings> fleet = HiddenFleet.readings(HiddenFleet.sensors(20_000, 10, world, 21));
        HiddenModel model = HiddenFleet.model(NO_PRIORS).with(WeakStages.TWO).with(HiddenFleet.WINTER);
        HiddenFit fit = fit(fleet, model);
        // 0.9999 quantile of the chi-squared law with 20 degrees of freedom is 52.4 (from memory, tables).
        assertRecovered(fit, world.truth(), 52.4);
        int i = fit.parameters().coldRate();
        assertThat(fit.covariance()[i][i]).as("the data tell the season").isLessThan(0.05 * 0.05);

        HiddenFit chosen = ladder(fleet.subList(0, 5000), HiddenFleet.WINTER);
        assertThat(chosen.model().stages()).as(chosen.decision().stages()).isEqualTo(WeakStages.TWO);
        assertThat(chosen.parameters().knowsSeason())
                .as(chosen.decision().season())
                .isTrue();
        assertThat(ConditionFigure.of(chosen, SetLikeness.none("one sensor each")))
                .filteredOn(f -> f.name().equals("cold_rate_factor"))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.value()).isBetween(f.lower(), f.upper());
                    assertThat(1.5).isBetween(f.lower(), f.upper());
                    assertThat(f.meaning()).contains("it adds");
                });
    }
}
