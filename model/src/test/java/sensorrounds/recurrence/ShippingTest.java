package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.Histories;
import sensorrounds.condition.WakeCells;
import sensorrounds.condition.WakeModel;
import sensorrounds.visit.Mount;

/** Cells, models and settings travel between the machines of a cluster; they must arrive as they left. */
class ShippingTest {
    @Test
    void cellsAndModelsSurviveTheJourney() throws IOException, ClassNotFoundException {
        WakeModel model = Histories.ordinaryModel();
        WakeModel arrived = travel(model);
        assertThat(arrived.chance("reader-slow", Mount.INNER, true))
                .isEqualTo(model.chance("reader-slow", Mount.INNER, true));
        assertThat(arrived.qualities()).isEqualTo(model.qualities());
        WakeCells cells =
                new WakeCells(0).add(Histories.history(Histories.life("1L", Histories.answer("2026-01-02", "1L", 2))));
        assertThat(travel(cells)).isEqualTo(cells);
        PeerCells peers = new PeerCells().count("van", 2, 12, 30).count("van", 0, 12, 30);
        assertThat(travel(peers)).isEqualTo(peers);
        RecurrenceSettings settings = RecurrenceSettings.defaults();
        assertThat(travel(settings)).isEqualTo(settings);
        PeerRates rates = PeerRates.fit(peers, settings);
        assertThat(travel(rates).shrunk("van", 3, 1)).isEqualTo(rates.shrunk("van", 3, 1));
    }

    @Test
    void settingsOutOfRangeAreRefusedWithTheirName() {
        assertThatThrownBy(() -> new RecurrenceSettings(
                        0, 365, 20, 10, 1, 50, 20, SuspectWeights.defaults(), ConditionSettings.defaults()))
                .hasMessage("minimumReturns is 0.0, expected 1 or more; correct it in the settings");
        assertThatThrownBy(() ->
                        new ConditionSettings(0.05, 1.5, 6, 0.7, 0, 10, 2, 1, 0.4, 0.85, 20, 10, 20, 0.02, 0.98, null))
                .hasMessageContaining("slowOddsFactor is 1.5");
    }

    @SuppressWarnings("unchecked")
    private static <T> T travel(T object) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (T) in.readObject();
        }
    }
}
