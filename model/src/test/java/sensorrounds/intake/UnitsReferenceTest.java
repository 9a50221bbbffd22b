package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** NIST SP 811 (2008), appendix B.8: cases units-pressure and units-temperature-length of {@code reference/intake/units.json}. */
class UnitsReferenceTest {
    private static JsonNode expected(String id) throws IOException {
        try (InputStream in = UnitsReferenceTest.class.getResourceAsStream("/reference/intake/units.json")) {
            for (JsonNode check : new ObjectMapper().readTree(in).get("checks")) {
                if (check.get("id").asText().equals(id)) {
                    return check.get("expected");
                }
            }
        }
        throw new IllegalStateException("no check " + id);
    }

    private static double kpa(String unit, String figure) {
        return FlatRecord.good()
                .with(Field.PRESSURE_UNIT, unit)
                .with(Field.PRESSURE, figure)
                .accepted()
                .wheel()
                .pressureKpa();
    }

    @Test
    void pressuresBecomeKilopascals() throws IOException {
        JsonNode pascal = expected("units-pressure").get("to_pascal");

        for (String unit : new String[] {"psi", "bar", "kPa"}) {
            assertThat(kpa(unit, "1")).isCloseTo(pascal.get(unit).asDouble() / 1000, within(1e-12));
        }
        assertThat(kpa("psi", "32"))
                .isCloseTo(
                        expected("units-pressure")
                                .get("examples")
                                .get(0)
                                .get("kPa")
                                .asDouble(),
                        within(1e-11));
    }

    @Test
    void temperaturesBecomeDegreesCelsiusAndDistancesKilometres() throws IOException {
        JsonNode cases = expected("units-temperature-length");
        JsonNode degrees = cases.get("F_to_C");
        for (int i = 0; i < degrees.get("F").size(); i++) {
            assertThat(FlatRecord.good()
                            .with(Field.TEMPERATURE_UNIT, "F")
                            .with(Field.TEMPERATURE, degrees.get("F").get(i).asText())
                            .accepted()
                            .wheel()
                            .temperatureCelsius())
                    .isCloseTo(degrees.get("C").get(i).asDouble(), within(1e-10));
        }
        assertThat(FlatRecord.good()
                        .with(Field.ODOMETER_UNIT, "mi")
                        .with(Field.ODOMETER, "100000")
                        .accepted()
                        .visit()
                        .odometerKm())
                .isCloseTo(cases.get("mile_km_100000").asDouble(), within(1e-9));
    }
}
