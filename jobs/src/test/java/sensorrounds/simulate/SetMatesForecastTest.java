package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.simulate.ReviewedFleet.Forecast;
import sensorrounds.simulate.SimulationSettings.Output;

/** What set-mates' fate adds to the outlook: something where vehicles differ, nothing where they do not. */
class SetMatesForecastTest {
    @TempDir
    Path temp;

    @Test
    void wherePlantedLikenessIsStrongItIsFoundAndTheForecastIsBetter() throws IOException {
        ReviewedFleet fleet = fleet(0.3);
        assertThat(fleet.review().likeness().variance()).isBetween(0.2, 1.5);
        assertThat(brier(fleet, Forecast::outlook) / brier(fleet, Forecast::alone))
                .isLessThan(1);
        assertThat(fleet.forecasts().stream()
                        .mapToDouble(f -> f.outlook().chances().setRatio()))
                .as("some vehicles are worse than others")
                .anyMatch(r -> r > 1.5)
                .anyMatch(r -> r < 0.9);
    }

    @Test
    void whereThereIsNoneItDoesNoHarm() throws IOException {
        ReviewedFleet fleet = fleet(0);
        assertThat(brier(fleet, Forecast::outlook) / brier(fleet, Forecast::alone))
                .isLessThan(1.005);
    }

    private ReviewedFleet fleet(double spread) throws IOException {
        Hazards h = Hazards.standard();
        Hazards hazards = new Hazards(
                h.stem(),
                h.ingress(),
                h.tyreChangeDamage(),
                spread,
                h.weakMedianDays(),
                h.weakSpread(),
                h.weakEase(),
                h.innerEase(),
                h.coldEase());
        return ReviewedFleet.of(
                SimulationSettings.large(20_261_125, 600, Output.LARGE_CSV)
                        .withYears(5)
                        .withHazards(hazards),
                temp.resolve("fleet"));
    }

    private static double brier(ReviewedFleet fleet, Function<Forecast, SensorOutlook> outlook) {
        return fleet.forecasts().stream()
                .mapToDouble(f -> {
                    double off = outlook.apply(f).chances().p365() - (f.failsInDays() <= 365 ? 1 : 0);
                    return off * off;
                })
                .average()
                .orElseThrow();
    }
}
