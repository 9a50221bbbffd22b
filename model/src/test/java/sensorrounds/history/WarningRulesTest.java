package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.visit.Warning.LOW_PRESSURE;
import static sensorrounds.visit.Warning.SYSTEM_FAULT;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Times and thresholds of the regulations, with their sources, are in {@code reference/history/warning-rules.json}. */
class WarningRulesTest {
    private static final double PLACARD_KPA = 250;

    private final Logbook log = new Logbook();

    private static JsonNode check(String id) throws IOException {
        try (InputStream in = WarningRulesTest.class.getResourceAsStream("/reference/history/warning-rules.json")) {
            for (JsonNode check : new ObjectMapper().readTree(in).get("checks")) {
                if (check.get("id").asText().equals(id)) {
                    return check;
                }
            }
        }
        throw new IllegalStateException("no check " + id);
    }

    private static HistorySettings settings(double proofMinutes, double lowShare) {
        HistorySettings d = HistorySettings.defaults();
        return new HistorySettings(
                d.silentVisitsForFailure(),
                d.originalIfFirstSeenWithinDays(),
                d.youngFailureDays(),
                proofMinutes,
                d.drivingKmh(),
                lowShare,
                d.referenceCelsius(),
                d.battery());
    }

    private VehicleHistory history(HistorySettings settings) {
        return HistoryBuilder.build(log.vehicle(), log.visits(), settings, Logbook.FAR_AHEAD);
    }

    /** A cure is taken as proven only after the longer of the two times, a tyre as short at the smaller of the two losses. */
    @Test
    void theDefaultsAreTheStricterOfTheTwoRegulations() throws IOException {
        HistorySettings defaults = HistorySettings.defaults();

        assertThat(defaults.proofDriveMinutes())
                .isEqualTo(Math.max(
                        check("fmvss138-malfunction").get("withinMinutes").asDouble(),
                        check("r141-malfunction").get("withinMinutes").asDouble()));
        assertThat(defaults.lowPressureShare())
                .isEqualTo(Math.min(
                        check("fmvss138-low-pressure").get("shareLost").asDouble(),
                        check("r141-low-pressure").get("shareLost").asDouble()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fmvss138-malfunction", "r141-malfunction"})
    void aDriveOfTheRegulationsTimeProvesTheCureAndAShorterOneDoesNot(String id) throws IOException {
        double minutes = check(id).get("withinMinutes").asDouble();
        log.on("2020-01-01").warning(SYSTEM_FAULT).codesCleared().drive(minutes - 1, false);
        assertThat(history(settings(minutes, 0.2)).followUps())
                .singleElement()
                .satisfies(f -> assertThat(f.state()).isEqualTo(FollowUp.State.OPEN));

        log.on("2020-02-01").warning(SYSTEM_FAULT).codesCleared().drive(minutes, false);
        assertThat(history(settings(minutes, 0.2)).followUps().get(1).state()).isEqualTo(FollowUp.State.PROVEN);
    }

    /** At 20 °C: a kilopascal beyond the loss is short of air, whatever the weather; in the cold above it is not. */
    @ParameterizedTest
    @ValueSource(strings = {"fmvss138-low-pressure", "r141-low-pressure"})
    void aTyreIsShortOfAirBeyondTheRegulationsLoss(String id) throws IOException {
        double share = check(id).get("shareLost").asDouble();
        double limit = PLACARD_KPA * (1 - share);
        log.on("2020-01-01")
                .warning(LOW_PRESSURE)
                .ambient(20)
                .placard(PLACARD_KPA)
                .wheels(heard("1L", "A1").gauge(limit - 1));
        log.on("2020-02-01")
                .warning(LOW_PRESSURE)
                .ambient(0)
                .placard(PLACARD_KPA)
                .wheels(heard("1L", "A1").gauge(limit + 1));

        assertThat(history(settings(20, share)).visits())
                .extracting(VisitSummary::pressuresExplainedByCold)
                .containsExactly(false, true);
    }

    /** Flashing, then steady, is a fault of the system; steady from the start is a tyre: only the first wants a proof. */
    @Test
    void onlyAFaultOfTheSystemAsksForAProof() throws IOException {
        assertThat(check("fmvss138-malfunction").get("what").asText()).contains("flashing, then steady");
        log.on("2020-01-01").warning(LOW_PRESSURE).codesCleared();
        assertThat(history(HistorySettings.defaults()).followUps()).isEmpty();

        log.on("2020-02-01").warning(SYSTEM_FAULT).codesCleared();
        assertThat(history(HistorySettings.defaults()).followUps()).hasSize(1);
    }
}
