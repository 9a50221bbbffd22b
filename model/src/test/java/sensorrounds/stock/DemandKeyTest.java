package sensorrounds.stock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.YearMonth;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class DemandKeyTest {
    /** On a cluster keys are sent by their hash: executors must agree on it, and an enum's own differs between JVMs. */
    @Test
    void hashIsThatOfTheWordsAndSoTheSameInEveryJvm() {
        DemandKey key = DemandKey.of("P433", "Harbour", YearMonth.of(2026, 10));
        assertThat(key.hashCode())
                .isEqualTo(Arrays.hashCode(new Object[] {"P433", "Harbour", "MONTH", YearMonth.of(2026, 10)}))
                .isEqualTo(
                        DemandKey.of("P433", "Harbour", YearMonth.of(2026, 10)).hashCode());
        assertThat(DemandKey.of("P433", null, DemandKey.Stretch.COVER).hashCode())
                .isEqualTo(Arrays.hashCode(new Object[] {"P433", null, "COVER", null}));
    }
}
