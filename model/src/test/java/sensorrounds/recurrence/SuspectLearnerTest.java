package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.WakeCells;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.VehicleHistory;

/** A search that is ended before it came to rest says so where a reader of the suspects meets it. */
class SuspectLearnerTest {
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final List<VehicleHistory> VEHICLES = new PlantedFleet(PlantedFleet.World.ordinary())
            .vehicles(120, 77).stream().map(PlantedFleet.Planted::history).toList();

    private static WakeModel wake() {
        WakeCells cells = new WakeCells(ConditionSettings.defaults().coldCelsius());
        VEHICLES.forEach(cells::add);
        return WakeModel.fit(cells, SETTINGS.condition());
    }

    private static SuspectFigures learned(WakeModel wake, int steps) {
        List<SuspectCase> cases = VEHICLES.stream()
                .map(h -> Recurrence.toLearnFrom(h, wake, SETTINGS, PlantedFleet.AS_OF))
                .flatMap(Optional::stream)
                .toList();
        assertThat(cases).hasSizeGreaterThanOrEqualTo(SETTINGS.weights().leastVehicles());
        return SuspectLearner.learn(cases, SuspectFigures.declared(SETTINGS), SETTINGS, steps);
    }

    private static String outside(WakeModel wake, SuspectFigures figures) {
        Suspect outside = Suspects.judge(VEHICLES.get(0), wake, figures, Optional.empty(), SETTINGS, PlantedFleet.AS_OF)
                .suspects()
                .stream()
                .filter(s -> !s.isSensor())
                .findFirst()
                .orElseThrow();
        return String.join("; ", outside.reasons());
    }

    @Test
    void aSearchEndedByItsCapSaysSoAmongTheReasonsOfNotASensor() {
        WakeModel wake = wake();
        assertThat(outside(wake, learned(wake, 2)))
                .contains("weights learned from")
                .contains("whose warning recurs, by a search ended after 2 steps while still moving");
    }

    @Test
    void aSearchThatComesToRestSaysNothingOfIt() {
        WakeModel wake = wake();
        assertThat(outside(wake, learned(wake, SuspectLearner.STEPS)))
                .contains("weights learned from")
                .doesNotContain("still moving");
    }
}
