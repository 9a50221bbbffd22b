package sensorrounds.simulate;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The five vehicles with a known story. Their data look like all the others'; only the truth folder says which they
 * are.
 */
enum Story {
    INTERMITTENT(
            23,
            "C-2",
            0,
            "2020-11-16",
            "The system warning comes and goes. One code without a place, right pressures, every battery ok, every wheel"
                    + " answers; 2R alone needs three or four tries. Relearned and cleared each time, the last time"
                    + " without a drive that would prove it."),
    SILENT_PLACE(
            48,
            "N-1",
            0,
            "2020-09-07",
            "Sensors at 2R fall silent one after the other, each less than a year old. The sensors are sound: the place"
                    + " is a blind spot."),
    AGEING_SET(
            77,
            "N-2",
            1,
            "2019-02-11",
            "The original set dies of age together: 1R and 2L within four months, 1L reports a low battery, 2R follows"
                    + " after the logs end."),
    COLD_MORNINGS(
            102,
            "C-1",
            1,
            "2021-05-25",
            "Steady low-pressure warnings on cold mornings of two winters. Referred to 20 °C the pressures are right;"
                    + " the sensors are sound."),
    SLOW_READER(
            131,
            "N-2",
            1,
            "2021-03-08",
            "A sound vehicle that was only ever read with the slow reader " + InventedOperator.SLOW_READER
                    + ". Its two warnings were a nail and wheels not learned after a rotation.");

    /** The end of the logs the dates of the stories are written for. */
    private static final LocalDate WRITTEN_FOR = SimulationSettings.SAMPLE_END;

    final int vehicle;
    final String modelGroup;
    final int depot;
    final String role;
    private final String firstUsed;

    Story(int vehicle, String modelGroup, int depot, String firstUsed, String role) {
        this.vehicle = vehicle;
        this.modelGroup = modelGroup;
        this.depot = depot;
        this.firstUsed = firstUsed;
        this.role = role;
    }

    static Optional<Story> of(SimulationSettings settings, int vehicle) {
        if (settings.stories() == SimulationSettings.Stories.FIVE) {
            for (Story s : values()) {
                if (s.vehicle == vehicle) {
                    return Optional.of(s);
                }
            }
        }
        return Optional.empty();
    }

    static int vehiclesNeeded() {
        int needed = 0;
        for (Story s : values()) {
            needed = Math.max(needed, s.vehicle + 1);
        }
        return needed;
    }

    int firstUsedDay(SimulationSettings settings) {
        return day(settings, firstUsed);
    }

    /** The day of a story's date, moved along with the end of the logs. */
    static int day(SimulationSettings settings, String isoDate) {
        long shift = settings.endDate().toEpochDay() - WRITTEN_FOR.toEpochDay();
        return (int) (LocalDate.parse(isoDate).toEpochDay() + shift);
    }
}
