package sensorrounds.visit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** Values, their sources and the R version that made them are in {@code reference/gas-law.json}. */
class GasLawTest {
    private static JsonNode check(String id) throws IOException {
        try (InputStream in = GasLawTest.class.getResourceAsStream("/reference/gas-law.json")) {
            for (JsonNode check : new ObjectMapper().readTree(in).get("checks")) {
                if (check.get("id").asText().equals(id)) {
                    return check;
                }
            }
        }
        throw new IllegalStateException("no check " + id);
    }

    @Test
    void agreesWithTheTextbooksWarmedTyre() throws IOException {
        JsonNode check = check("gas-openstax");
        JsonNode in = check.get("data").get("inline");
        double gaugeKpa = in.get("p1").asDouble() / 1000 - GasLaw.ATMOSPHERE_KPA;

        double warm =
                GasLaw.gaugeAt(gaugeKpa, in.get("t1").asDouble(), in.get("t2").asDouble());

        double absolutePa = (warm + GasLaw.ATMOSPHERE_KPA) * 1000;
        assertThat(absolutePa).isCloseTo(check.get("expected").get("p2").asDouble(), within(1e-7));
        assertThat(absolutePa / 1e5)
                .as("OpenStax College Physics prints 7.41, from memory")
                .isCloseTo(7.41, within(0.005));
    }

    @Test
    void refersGaugeReadingsToTwentyDegreesAndNotByGaugePressureAlone() throws IOException {
        JsonNode check = check("gas-cold-grid");
        JsonNode in = check.get("data").get("inline");
        for (int i = 0; i < in.get("gauge_kpa").size(); i++) {
            double celsius = in.get("temp_c").get(i).asDouble();
            double cold = GasLaw.gaugeAt(in.get("gauge_kpa").get(i).asDouble(), celsius, 20);
            assertThat(cold)
                    .isCloseTo(
                            check.get("expected").get("cold_gauge_kpa").get(i).asDouble(), within(1e-10));
            if (celsius != 20) {
                double naive =
                        check.get("expected").get("wrong_if_gauge_used").get(i).asDouble();
                assertThat(Math.abs(cold - naive)).isGreaterThan(5);
            }
        }
    }

    /** Trade fact, worked out by hand: 10 degrees less cost 11.6 kPa at 240 kPa and 30.7 kPa at 800 kPa. */
    @Test
    void tenDegreesLessCostAVanMoreThanACar() {
        assertThat(GasLaw.gaugeAt(240, 20, 10) - 240).isCloseTo(-11.6, within(0.05));
        assertThat(GasLaw.gaugeAt(450, 20, 10) - 450).isCloseTo(-18.8, within(0.05));
        assertThat(GasLaw.gaugeAt(800, 20, 10) - 800).isCloseTo(-30.7, within(0.05));
    }

    @Test
    void refusesAirThatCannotBe() {
        assertThatThrownBy(() -> GasLaw.gaugeAt(220, -273.15, 20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no such state of air: 220.0 kPa gauge, -273.15 °C to 20.0 °C")
                .hasMessageContaining("temperatures above -273.15 °C");
        assertThatThrownBy(() -> GasLaw.gaugeAt(Double.NaN, 10, 20)).hasMessageContaining("NaN kPa");
        assertThat(GasLaw.isPossible(-102, 20)).isFalse();
        assertThat(GasLaw.isPossible(220, Double.NaN)).isFalse();
    }
}
