package sensorrounds.analyst;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.analyst.SampledVehicle.SampledLife;
import sensorrounds.frailty.FrailtyStatus;
import sensorrounds.season.ClimateMonth;
import sensorrounds.season.Climates;
import sensorrounds.season.MonthTemperatures;
import sensorrounds.season.SeasonSettings;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.Lifetime;

class VehicleFitsTest {
    /** Four Weibull lives of shape 3 to a vehicle, seen at visits about every 200 days for ten years at most. */
    private static SampledVehicle vehicle(
            Random random, int number, String vehicleClass, double scale, double variance) {
        // Exponential frailty has mean 1 and variance 1.
        double frailty = variance == 0 ? 1 : -Math.log(1 - random.nextDouble());
        List<SampledLife> lives = new ArrayList<>();
        for (int wheel = 0; wheel < 4; wheel++) {
            double life = scale * Math.pow(-Math.log(1 - random.nextDouble()) / frailty, 1 / 3.0);
            int last = 0;
            int next = 100 + random.nextInt(200);
            while (next < life && next < 3650) {
                last = next;
                next += 100 + random.nextInt(200);
            }
            Lifetime seen = next < 3650 ? Lifetime.interval(0, last, next) : Lifetime.censored(0, last);
            lives.add(new SampledLife(
                    seen, "P-1", wheel < 2 ? WheelPlace.FRONT_AXLE : WheelPlace.OTHER_AXLE, null, null));
        }
        return new SampledVehicle("V" + number, vehicleClass, "North", 20_000.0, lives);
    }

    private static List<SampledVehicle> fleet(long seed, int vehicles, double variance) {
        Random random = new Random(seed);
        List<SampledVehicle> fleet = new ArrayList<>();
        for (int i = 0; i < vehicles; i++) {
            boolean truck = i % 3 == 0;
            fleet.add(vehicle(random, i, truck ? "truck" : "van", truck ? 1800 : 3000, variance));
        }
        return fleet;
    }

    private static VehicleSample sample(List<SampledVehicle> vehicles) {
        VehicleSample sample = new VehicleSample(20_000);
        vehicles.forEach(sample::add);
        return sample;
    }

    /** Of a fleet without a temperature: the northern winter. */
    private static VehicleFits fits(VehicleSample sample) {
        return VehicleFits.of(sample, Climates.of(new MonthTemperatures(), SeasonSettings.defaults()));
    }

    private static CovariateEffect effect(VehicleFits fits, String level) {
        return fits.effects().effects().stream()
                .filter(e -> e.level().equals(level))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void trucksThatLastSixTenthsAsLongAreFoundTo() {
        double factor = 0;
        double ratio = 0;
        int covered = 0;
        for (int seed = 10; seed < 20; seed++) {
            CovariateEffect truck = effect(fits(sample(fleet(seed, 300, 0))), "truck");
            factor += truck.lifeFactor().value() / 10;
            ratio += Math.log(truck.hazardRatio().value()) / 10;
            covered +=
                    truck.lifeFactor().lower() < 0.6 && 0.6 < truck.lifeFactor().upper() ? 1 : 0;
        }
        // One standard error of the mean of ten is 0.004.
        assertThat(factor).isCloseTo(0.6, within(0.012));
        assertThat(covered).isGreaterThanOrEqualTo(8);
        // Of a Weibull of shape 3 the hazard ratio is the factor to the power of -3.
        assertThat(ratio).isCloseTo(-3 * Math.log(0.6), within(0.08));
        VehicleFits fits = fits(sample(fleet(10, 300, 0)));
        assertThat(effect(fits, "van").reference()).isTrue();
        CovariateEffect place = effect(fits, "OTHER_AXLE");
        assertThat(place.lifeFactor().lower()).isLessThan(1);
        assertThat(place.lifeFactor().upper()).isGreaterThan(1);
        assertThat(fits.effects().families().get(0).family().name()).isEqualTo("WEIBULL");
        // One part, one depot, one distance: nothing to compare.
        assertThat(fits.effects().effects())
                .extracting(CovariateEffect::factor)
                .doesNotContain(Factor.PART, Factor.DEPOT);
    }

    @Test
    void likenessWithinVehiclesIsFoundAndOnlyWhereThereIsSome() {
        SetLikeness alike = fits(sample(fleet(2, 300, 1))).likeness();
        assertThat(alike.status()).isEqualTo(FrailtyStatus.CONVERGED);
        assertThat(alike.variance().lower()).isLessThan(1).isGreaterThan(0.3);
        assertThat(alike.variance().upper()).isGreaterThan(1);
        assertThat(alike.afterOneDeath().value()).isEqualTo(1 + alike.variance().value());
        SetLikeness apart = fits(sample(fleet(3, 300, 0))).likeness();
        assertThat(apart.variance().lower()).isZero();
        assertThat(apart.variance().upper()).isLessThan(0.3);
    }

    @Test
    void sparseLevelsAreMergedOrLeftOutByName() {
        List<SampledVehicle> fleet = fleet(4, 120, 0);
        Random random = new Random(5);
        // All of these live to the end, but for three vehicles of a kind that do not.
        fleet.add(vehicle(random, 900, "bus", 1e6, 0));
        VehicleFits leftOut = fits(sample(fleet));
        assertThat(leftOut.effects().notes()).anyMatch(n -> n.startsWith("left out: bus, of whose 4 lives 0 failed"));
        fleet.add(vehicle(random, 901, "crane", 900, 0));
        fleet.add(vehicle(random, 902, "crane lorry", 900, 0));
        VehicleFits merged = fits(sample(fleet));
        assertThat(effect(merged, "bus, crane, crane lorry").failures()).isEqualTo(8);
    }

    /** Lives of every second vehicle, fitted in the dark half of the year, end at 0.7 of their age: the factor that is found. */
    @Test
    void theHalfYearOfFittingIsCompared() {
        List<SampledVehicle> fleet = new ArrayList<>();
        for (SampledVehicle v : fleet(9, 400, 0)) {
            boolean dark = Integer.parseInt(v.vehicleId().substring(1)) % 2 == 0;
            fleet.add(new SampledVehicle(
                    v.vehicleId(),
                    v.vehicleClass(),
                    v.depot(),
                    v.annualKm(),
                    v.lives().stream()
                            .map(l -> new SampledLife(
                                    dark ? shortened(l.life()) : l.life(),
                                    l.part(),
                                    l.place(),
                                    l.fittedOn(),
                                    FittingSeason.of(LocalDate.of(2020, dark ? 10 : 9, dark ? 1 : 30))))
                            .toList()));
        }
        VehicleFits fits = fits(sample(fleet));
        assertThat(effect(fits, "October to March").factor()).isEqualTo(Factor.FITTED);
        double found = effect(fits, "October to March").reference()
                ? 1 / effect(fits, "April to September").lifeFactor().value()
                : effect(fits, "October to March").lifeFactor().value();
        assertThat(found).isBetween(0.65, 0.75);
    }

    private static Lifetime shortened(Lifetime life) {
        int lower = (int) (0.7 * life.lower());
        return life.failed()
                ? Lifetime.interval(0, lower, (int) Math.ceil(0.7 * life.upper()))
                : Lifetime.censored(0, lower);
    }

    @Test
    void aPartThatAlwaysComesWithAClassGoesAloneByName() {
        List<SampledVehicle> fleet = new ArrayList<>();
        for (SampledVehicle v : fleet(8, 300, 0)) {
            int number = Integer.parseInt(v.vehicleId().substring(1));
            String part = v.vehicleClass().equals("truck") ? "P-truck" : number % 4 == 1 ? "P-2" : "P-1";
            fleet.add(new SampledVehicle(
                    v.vehicleId(),
                    v.vehicleClass(),
                    v.depot(),
                    v.annualKm(),
                    v.lives().stream()
                            .map(l -> new SampledLife(l.life(), part, l.place(), l.fittedOn(), l.fitted()))
                            .toList()));
        }
        VehicleFits fits = fits(sample(fleet));
        assertThat(fits.effects().notes()).anyMatch(n -> n.startsWith("part P-truck cannot be told apart"));
        assertThat(fits.effects().effects()).extracting(CovariateEffect::level).doesNotContain("P-truck");
        CovariateEffect other = fits.effects().effects().stream()
                .filter(e -> e.factor() == Factor.PART && !e.reference())
                .findFirst()
                .orElseThrow();
        assertThat(other.lifeFactor().value()).isBetween(0.93, 1.07);
        assertThat(effect(fits, "truck").lifeFactor().value()).isBetween(0.54, 0.66);
    }

    @Test
    void theSeasonStandsBesideTheOtherFactors() {
        Random random = new Random(12);
        List<SampledVehicle> fleet = new ArrayList<>();
        for (SampledVehicle v : fleet(12, 300, 0)) {
            LocalDate fitted = LocalDate.of(2015, 1, 1).plusDays(random.nextInt(365));
            fleet.add(new SampledVehicle(
                    v.vehicleId(),
                    v.vehicleClass(),
                    v.depot(),
                    v.annualKm(),
                    v.lives().stream()
                            .map(l -> new SampledLife(l.life(), l.part(), l.place(), fitted, l.fitted()))
                            .toList()));
        }
        VehicleFits fits = fits(sample(fleet));
        assertThat(fits.season().converged()).as(fits.season().report().cause()).isTrue();
        assertThat(fits.season().factor().lower()).isLessThan(1);
        assertThat(fits.season().factor().upper()).isGreaterThan(1);
        assertThat(fits.season().strata()).as("two classes at one depot").isEqualTo(2);
        CovariateEffect cold = effect(fits, "cold months");
        assertThat(cold.factor()).isEqualTo(Factor.SEASON);
        assertThat(cold.hazardRatio()).isEqualTo(fits.season().factor());
        assertThat(cold.lifeFactor().value()).isNaN();
        assertThat(effect(fits, "other months").reference()).isTrue();
        assertThat(cold.failures() + effect(fits, "other months").failures())
                .isBetween(fits.effects().failures() - 1, fits.effects().failures() + 1);
        assertThat(fits.climate()).hasSize(12).allMatch(m -> m.basis() == ClimateMonth.Basis.DECLARED);
    }

    @Test
    void withoutDaysOfFittingTheSeasonIsLeftOutByName() {
        VehicleFits fits = fits(sample(fleet(10, 300, 0)));
        assertThat(fits.season().report().status()).isEqualTo(FitStatus.NO_LIVES);
        assertThat(fits.effects().notes()).contains("the season is left out: there are no lives");
    }

    @Test
    void withFewFailuresNothingIsComparedAndItSaysSo() {
        VehicleFits fits = fits(sample(fleet(6, 2, 0)));
        assertThat(fits.effects().effects()).isEmpty();
        assertThat(fits.effects().notes()).anyMatch(n -> n.startsWith("nothing to compare"));
        VehicleFits none = fits(new VehicleSample(10));
        assertThat(none.effects().effects()).isEmpty();
        assertThat(none.likeness().status()).isEqualTo(FrailtyStatus.NO_LAW_WITHOUT_FRAILTY);
    }

    @Test
    void theDrawDependsOnNeitherOrderNorParts() {
        List<SampledVehicle> fleet = fleet(7, 200, 0);
        VehicleSample whole = new VehicleSample(101);
        fleet.forEach(whole::add);
        assertThat(whole.held()).isLessThanOrEqualTo(101).isGreaterThan(96);
        assertThat(whole.lives()).isEqualTo(800);
        List<SampledVehicle> mixed = new ArrayList<>(fleet);
        Collections.shuffle(mixed, new Random(1));
        VehicleSample parts = new VehicleSample(101);
        for (int from = 0; from < 200; from += 50) {
            VehicleSample part = new VehicleSample(101);
            mixed.subList(from, from + 50).forEach(part::add);
            parts.merge(part);
        }
        assertThat(parts.vehicles()).isEqualTo(whole.vehicles());
        assertThat(parts.lives()).isEqualTo(800);
        // Neighbours by number do not stand together in the draw.
        assertThat(whole.vehicles().stream().map(SampledVehicle::vehicleClass).distinct())
                .hasSize(2);
    }

    /** A draw decides the columns; the law of record is then fitted to all lives, and is what it would be without a draw. */
    @Test
    void theLawOfRecordIsThatOfAllLivesAlsoWhereADrawDecidesTheColumns() {
        List<SampledVehicle> fleet = fleet(21, 400, 0);
        VehicleSample draw = new VehicleSample(400);
        fleet.forEach(draw::add);
        VehicleFits drawn = fits(draw);
        VehicleFits all = drawn.over(WholeFleet.of(fleet::stream));
        VehicleFits undrawn = fits(sample(fleet));

        for (String level : List.of("truck", "OTHER_AXLE")) {
            CovariateEffect ours = effect(all, level);
            CovariateEffect theirs = effect(undrawn, level);
            assertThat(ours.lives()).isEqualTo(theirs.lives());
            assertThat(ours.failures()).isEqualTo(theirs.failures());
            // Nine digits are kept.
            assertThat(ours.lifeFactor().value()).isCloseTo(theirs.lifeFactor().value(), withinPercentage(1e-6));
            assertThat(ours.lifeFactor().lower()).isCloseTo(theirs.lifeFactor().lower(), withinPercentage(1e-6));
            assertThat(effect(drawn, level).lifeFactor().value())
                    .as("the draw itself says something else, so the test can tell")
                    .isNotCloseTo(theirs.lifeFactor().value(), withinPercentage(0.1));
            assertThat(ours.hazardRatio()).isEqualTo(effect(drawn, level).hazardRatio());
        }
        assertThat(all.effects().lives()).isEqualTo(1600);
        assertThat(all.effects().failures()).isEqualTo(undrawn.effects().failures());
        assertThat(all.effects().drawn()).isBetween(390L, 400L);
        assertThat(all.reports().get("weibull regression on covariates").lives())
                .isEqualTo(1600);
        assertThat(undrawn.over(WholeFleet.of(() -> {
                    throw new AssertionError("nothing was drawn, so nothing need be asked");
                })))
                .isSameAs(undrawn);
    }

    /** Levels merged or left out among the drawn are so among all; what the draw never saw is left out. */
    @Test
    void levelsAreMergedAmongAllAsAmongTheDrawn() {
        List<SampledVehicle> drawn = fleet(4, 120, 0);
        Random random = new Random(5);
        drawn.add(vehicle(random, 900, "bus", 1e6, 0));
        drawn.add(vehicle(random, 901, "crane", 900, 0));
        drawn.add(vehicle(random, 902, "crane lorry", 900, 0));
        CovariateCode code = CovariateDesign.of(drawn).code();
        List<SampledVehicle> all = new ArrayList<>(drawn);
        all.add(vehicle(random, 903, "crane", 900, 0));
        all.add(vehicle(random, 904, "hearse", 900, 0));
        LevelCounts counts = new LevelCounts(code);
        all.forEach(counts::add);

        assertThat(counts.lives()).isEqualTo(4 * 124);
        assertThat(counts.livesAt(Factor.VEHICLE_CLASS, "bus, crane, crane lorry"))
                .isEqualTo(16);
        assertThat(code.names()).contains("VEHICLE_CLASS=truck", "PLACE=OTHER_AXLE");
        assertThat(code.of(all.get(123)).get(0).covariates())
                .hasSize(code.names().size());
        assertThat(code.of(all.get(124))).isEmpty();
        // A level that takes no part among the drawn: one lone bus that never fails.
        List<SampledVehicle> lone = fleet(4, 120, 0);
        lone.add(vehicle(random, 900, "bus", 1e6, 0));
        assertThat(CovariateDesign.of(lone).code().of(lone.get(120))).isEmpty();
    }
}
