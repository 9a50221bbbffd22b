package sensorrounds.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FittedPartsTest {
    /** By hand: share over all (9 + 1) / (12 + 2), of "A" alone (1 + 2 x 10/14) / (4 + 2). */
    @Test
    void theFactorIsThatOfBayes() {
        FittedParts parts =
                new FittedParts().count("A", "A", 1).count("A", "P", 3).count("B", "B", 8);
        double same = (1 + 20.0 / 14) / 6;
        assertThat(parts.firstSensorFactor("A", "A")).isCloseTo(0.99 / same, within(1e-12));
        assertThat(parts.firstSensorFactor("A", "P")).isCloseTo(0.01 / (1 - same), within(1e-12));
        assertThat(parts.firstSensorFactor("B", "B"))
                .as("crews fit the same part again, which tells little")
                .isBetween(1.0, 1.1);
    }

    @Test
    void whereAPartIsNotKnownNothingTells() {
        FittedParts parts = new FittedParts().count("A", "P", 30);
        assertThat(parts.firstSensorFactor(null, "P")).isEqualTo(1);
        assertThat(parts.firstSensorFactor("A", null)).isEqualTo(1);
    }

    @Test
    void beforeAnyFittingAnotherPartSpeaksAgainstTheFirstSensorAlready() {
        assertThat(new FittedParts().firstSensorFactor("A", "A")).isCloseTo(1.98, within(1e-12));
        assertThat(new FittedParts().firstSensorFactor("A", "P")).isCloseTo(0.02, within(1e-12));
    }

    @Test
    void partsOfTheFleetAddUp() {
        FittedParts left = new FittedParts().count("A", "A", 2).count("B", "P", 1);
        FittedParts right = new FittedParts().count("A", "P", 5);
        FittedParts all =
                new FittedParts().count("A", "A", 2).count("B", "P", 1).count("A", "P", 5);
        assertThat(right.merge(left).firstSensorFactor("A", "A")).isEqualTo(all.firstSensorFactor("A", "A"));
    }
}
