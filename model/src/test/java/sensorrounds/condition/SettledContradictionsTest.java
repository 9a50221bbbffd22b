package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.Histories.answer;
import static sensorrounds.condition.Histories.day;

import java.time.LocalDate;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.RandomLogs;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.survival.LifeLaw;
import sensorrounds.survival.WeibullLife;

/**
 * Whatever a log holds, the history settles what contradicts itself and names it as a finding, so that no sensor comes to
 * the hidden condition with readings that cannot happen under it: such a sensor would be counted and not named.
 */
class SettledContradictionsTest {
    private static final LocalDate AS_OF = day("2040-01-01");

    /** @param shape of the law of life; a steep one leaves hardly anybody alive at high ages */
    private static HiddenModel model(double shape) {
        HiddenSettings settings = HiddenSettings.defaults();
        WakeChances wake = new WakeChances(Histories.ordinaryModel(), ConditionSettings.defaults());
        HiddenModel plain = HiddenModel.of(settings, wake);
        SortedMap<String, LifeLaw> laws = new TreeMap<>();
        laws.put("van", new WeibullLife(shape, 2900, 0.01, 0.004, 0.001));
        return new HiddenModel(
                settings, wake, HiddenCohorts.of(laws, settings), plain.warnings(), plain.stages(), plain.season());
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2.5, 8})
    void noLogHoldsReadingsThatCannotHappen(double shape) {
        HiddenModel model = model(shape);
        HiddenLikelihood likelihood = new HiddenLikelihood(new HiddenPoint(HiddenFleet.TRUTH, model).tables());
        Random random = new Random(2718);
        int findings = 0;
        int lives = 0;
        for (int i = 0; i < 400; i++) {
            VehicleHistory history = RandomLogs.nextHistory(random);
            findings += history.findings().size();
            UnheardVisits unheard = UnheardVisits.of(history);
            for (SensorLife life : history.lives()) {
                lives += HiddenReadings.of(life, RoadVisits.of(history, true), unheard.days(life), model, "van", AS_OF)
                        .map(r -> {
                            assertThat(likelihood.value(r)).as("%s", life).isFinite();
                            return 1;
                        })
                        .orElse(0);
            }
        }
        assertThat(findings).as("these logs are full of contradictions").isGreaterThan(2000);
        assertThat(lives).isGreaterThan(2000);
    }

    /** As from a year typed wrong; 65 536 days would be past what an age is packed into. */
    @ParameterizedTest
    @ValueSource(strings = {"1966-07-01", "1901-01-01", "1830-01-01", "1623-01-01"})
    void anAgePastReckoningHasNoReadings(String fitted) {
        SensorLife life = Histories.life(
                "1L", fitted, OriginBasis.VEHICLE_FIRST_USE, LifeEnd.IN_SERVICE, null, answer("2026-06-02", "1L", 1));
        VehicleHistory history = Histories.history(life);
        assertThat(HiddenReadings.of(
                        life, RoadVisits.of(history, true), Set.of(), model(2.5), "van", day("2026-08-01")))
                .isEmpty();
    }
}
