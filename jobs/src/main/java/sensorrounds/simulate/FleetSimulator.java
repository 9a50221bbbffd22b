package sensorrounds.simulate;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Simulates a fleet of known truth, one vehicle at a time. Vehicle number n comes out the same whichever others are
 * simulated, in whatever order and on however many threads.
 */
final class FleetSimulator {
    private static final double MAX_AGE_DAYS = 7 * 365.25;
    /** Share of vehicles that join while the logs run. */
    private static final double JOINING = 0.14;

    private final SimulationSettings settings;
    private final Weather weather;
    private final double allWeights;

    FleetSimulator(SimulationSettings settings) {
        this.settings = settings;
        this.weather = new Weather(settings);
        this.allWeights =
                settings.kinds().stream().mapToDouble(VehicleKind::weight).sum();
    }

    SimulatedVehicle vehicle(int index) {
        Dice dice = Dice.of(settings.seed(), index, 'F');
        Optional<Story> story = Story.of(settings, index);
        VehicleKind kind = story.map(s -> kindOf(s.modelGroup)).orElseGet(() -> drawKind(dice));
        int depot = story.map(s -> s.depot)
                .orElseGet(() -> dice.between(0, settings.crew().depots().size() - 1));
        int firstUsed = story.map(s -> s.firstUsedDay(settings)).orElseGet(() -> drawFirstUsed(dice));
        boolean twoSets = story.isEmpty() && dice.chance(kind.secondSetShare());
        Bench bench = new Bench(settings, weather, index, kind, depot, firstUsed, twoSets, story.orElse(null));
        return story.map(s -> StoryTeller.tell(bench, s)).orElseGet(() -> new VehicleWorld(bench).live());
    }

    /** Small fleets only: all vehicles at once. */
    List<SimulatedVehicle> all() {
        return IntStream.range(0, settings.vehicles()).mapToObj(this::vehicle).toList();
    }

    private int drawFirstUsed(Dice dice) {
        int start = settings.startDay();
        if (dice.chance(JOINING)) {
            return start + dice.between(5, Math.max(30, (settings.endDay() - start) * 3 / 4));
        }
        return start - 1 - (int) (MAX_AGE_DAYS * StrictMath.pow(dice.uniform(), 1.3));
    }

    private VehicleKind drawKind(Dice dice) {
        double at = dice.uniform() * allWeights;
        for (VehicleKind k : settings.kinds()) {
            at -= k.weight();
            if (at < 0) {
                return k;
            }
        }
        return settings.kinds().get(settings.kinds().size() - 1);
    }

    private VehicleKind kindOf(String modelGroup) {
        return settings.kinds().stream()
                .filter(k -> k.modelGroup().equals(modelGroup))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the stories need the model group " + modelGroup
                        + ", which these settings lack: leave the stories out or add it"));
    }
}
