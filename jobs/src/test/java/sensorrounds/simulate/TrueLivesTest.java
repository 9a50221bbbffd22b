package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sensorrounds.simulate.SimulatedSensor.Origin;
import sensorrounds.simulate.SimulationSettings.Output;

/** The lives that come out follow the laws that went in. */
class TrueLivesTest {
    /**
     * Kolmogorov's limit law: P(sqrt(n) D > 2.23) = 2 exp(-2 * 2.23^2) = 9.6e-5 (Kolmogorov 1933; the first term of the
     * series is enough so far out).
     */
    private static final double ONE_IN_TEN_THOUSAND = 2.23;

    private static final FleetSimulator FLEET =
            new FleetSimulator(SimulationSettings.large(11, 4000, Output.LARGE_JSON_LINES));
    private static final List<SimulatedVehicle> VEHICLES =
            IntStream.range(0, 4000).mapToObj(FLEET::vehicle).toList();

    @Test
    void batteryLivesFollowTheLawOfTheirKind() {
        LifeLaw van = kind("N-1").originalLaw();
        double[] lives = batteryLives("N-1");
        assertThat(lives).hasSizeGreaterThan(2500);
        assertThat(distance(lives, van) * Math.sqrt(lives.length)).isLessThan(ONE_IN_TEN_THOUSAND);
    }

    @Test
    void theCheckWouldSeeALawThatIsSomewhatOff() {
        LifeLaw van = kind("N-1").originalLaw();
        LifeLaw longer = new LifeLaw(van.shape(), van.scaleDays() * 1.05);
        double[] lives = batteryLives("N-1");
        assertThat(distance(lives, longer) * Math.sqrt(lives.length)).isGreaterThan(ONE_IN_TEN_THOUSAND);
    }

    @Test
    void theWeibullLawHasItsTextbookPoints() {
        // S(scale) = 1/e for every shape; shape 2.5 and scale 7 give .887, .650, .368 at 3, 5, 7 (closed form).
        LifeLaw law = new LifeLaw(2.5, 7);
        assertThat(law.survival(3)).isCloseTo(0.887, within(5e-4));
        assertThat(law.survival(5)).isCloseTo(0.650, within(5e-4));
        assertThat(law.survival(7)).isCloseTo(Math.exp(-1), within(1e-12));
        assertThat(law.age(law.survival(4.2))).isCloseTo(4.2, within(1e-12));
    }

    @Test
    void vehiclesShareAFactorOfTheStatedSpread() {
        double[] logs =
                VEHICLES.stream().mapToDouble(v -> Math.log(v.lifeFactor())).toArray();
        double mean = Arrays.stream(logs).average().orElseThrow();
        double variance = Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).sum() / (logs.length - 1);
        // Five standard errors of a mean and of a standard deviation of 4000 normal numbers.
        assertThat(mean).isCloseTo(0, within(5 * 0.08 / Math.sqrt(4000)));
        assertThat(Math.sqrt(variance)).isCloseTo(0.08, within(5 * 0.08 / Math.sqrt(8000)));
    }

    @Test
    void nothingIsTakenOutBeforeItIsFittedAndNoSensorIsInTwoPlaces() {
        for (SimulatedVehicle v : VEHICLES) {
            v.sensors().forEach(f -> assertThat(f.sensor().removedDay()).isGreaterThanOrEqualTo(f.sensor().bornDay));
        }
    }

    @Test
    void easeOfReadersIsTheShareOfFirstTries() {
        // Single wheels of sound sensors above 5 °C: the first try wakes with the ease of the reader.
        for (Crew.Reader r : InventedOperator.crew().readers()) {
            long[] firstAndAll = {0, 0};
            for (SimulatedVehicle v : VEHICLES) {
                v.visits().stream()
                        .filter(x -> x.header().readerId().equals(r.id())
                                && x.header().ambientCelsius() > 5
                                && v.register().axles().code().equals("SS"))
                        .flatMap(x -> x.wheels().stream().filter(w -> soundOn(v, w.sensorId(), x)))
                        .forEach(w -> {
                            firstAndAll[0] += w.wakeAttempts() == 1 ? 1 : 0;
                            firstAndAll[1]++;
                        });
            }
            double share = (double) firstAndAll[0] / firstAndAll[1];
            double fiveErrors = 5 * Math.sqrt(r.ease() * (1 - r.ease()) / firstAndAll[1]);
            assertThat(share).as(r.id()).isCloseTo(r.ease(), within(fiveErrors));
        }
    }

    private static boolean soundOn(SimulatedVehicle v, String id, SimulatedVisit visit) {
        int day = (int) visit.header().day().toEpochDay();
        return id != null
                && v.sensors().stream()
                        .map(SimulatedVehicle.FittedSensor::sensor)
                        .filter(s -> s.id.equals(id) && s.bornDay <= day && day <= s.removedDay())
                        .allMatch(s -> !s.weakOn(day) && s.sendsOn(day));
    }

    private static VehicleKind kind(String modelGroup) {
        return InventedOperator.kinds().stream()
                .filter(k -> k.modelGroup().equals(modelGroup))
                .findFirst()
                .orElseThrow();
    }

    private static double[] batteryLives(String modelGroup) {
        return VEHICLES.stream()
                .filter(v -> v.register().modelGroup().equals(modelGroup))
                .flatMapToDouble(v -> v.sensors().stream()
                        .map(SimulatedVehicle.FittedSensor::sensor)
                        .filter(s -> s.origin == Origin.ORIGINAL)
                        .mapToDouble(s -> (s.batteryDay - s.bornDay - 0.5) / v.lifeFactor()))
                .sorted()
                .toArray();
    }

    /** Largest gap between the share dead and the law. */
    private static double distance(double[] sorted, LifeLaw law) {
        double gap = 0;
        for (int i = 0; i < sorted.length; i++) {
            double dead = 1 - law.survival(sorted[i]);
            gap = Math.max(gap, Math.max(dead - (double) i / sorted.length, (i + 1.0) / sorted.length - dead));
        }
        return gap;
    }
}
