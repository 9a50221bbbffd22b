package sensorrounds.simulate;

import java.time.LocalDate;
import java.util.List;

/**
 * Everything a simulation depends on. Equal settings give equal bytes.
 *
 * @param vehicles number of vehicles; vehicle number n is the same in a small fleet and in a large one
 * @param years length of the logs, years
 * @param endDate last day of the logs
 * @param stories whether the five vehicles with a known story are among them
 */
public record SimulationSettings(
        long seed,
        int vehicles,
        int years,
        LocalDate endDate,
        Crew crew,
        List<VehicleKind> kinds,
        Hazards hazards,
        MessRates mess,
        Stories stories,
        Output output) {
    /** Vehicles with a known story. */
    public enum Stories {
        NONE,
        FIVE
    }

    /** What is written. */
    public enum Output {
        /** A data folder with every layout, the mess and the truth, in small files. */
        SAMPLE,
        /** Canonical JSON lines in large files. */
        LARGE_JSON_LINES,
        /** Canonical CSV in large files. */
        LARGE_CSV
    }

    public static final long SAMPLE_SEED = 20_260_930L;
    public static final int SAMPLE_VEHICLES = 150;
    public static final LocalDate SAMPLE_END = LocalDate.of(2026, 9, 30);
    /** Vehicle numbers are seven digits of a permutation; past this they would repeat. */
    public static final int MAX_VEHICLES = VehicleIds.MODULUS;

    public SimulationSettings {
        kinds = List.copyOf(kinds);
        if (vehicles < 1 || vehicles > MAX_VEHICLES) {
            throw new IllegalArgumentException("cannot simulate " + vehicles + " vehicles: 1 to " + MAX_VEHICLES
                    + " are possible; for more readings give more years");
        }
        if (years < 1 || years > 30) {
            throw new IllegalArgumentException("cannot simulate " + years + " years of logs: 1 to 30 are possible");
        }
        if (stories == Stories.FIVE && (vehicles < Story.vehiclesNeeded() || years < 4)) {
            throw new IllegalArgumentException(
                    "the five stories need " + Story.vehiclesNeeded() + " vehicles and 4 years; given are " + vehicles
                            + " and " + years + ": leave them out or give more");
        }
    }

    /** The fleet of the sample data. */
    public static SimulationSettings sample() {
        return new SimulationSettings(
                SAMPLE_SEED,
                SAMPLE_VEHICLES,
                4,
                SAMPLE_END,
                InventedOperator.crew(),
                InventedOperator.kinds(),
                Hazards.standard(),
                MessRates.ordinary(),
                Stories.FIVE,
                Output.SAMPLE);
    }

    /** A clean fleet without stories and mess, as large as asked, to be written in large files. */
    public static SimulationSettings large(long seed, int vehicles, Output output) {
        return new SimulationSettings(
                seed,
                vehicles,
                4,
                SAMPLE_END,
                InventedOperator.crew(),
                InventedOperator.kinds(),
                Hazards.standard(),
                MessRates.none(),
                Stories.NONE,
                output);
    }

    public SimulationSettings withVehicles(int n) {
        return new SimulationSettings(seed, n, years, endDate, crew, kinds, hazards, mess, stories, output);
    }

    public SimulationSettings withSeed(long s) {
        return new SimulationSettings(s, vehicles, years, endDate, crew, kinds, hazards, mess, stories, output);
    }

    public SimulationSettings withYears(int y) {
        return new SimulationSettings(seed, vehicles, y, endDate, crew, kinds, hazards, mess, stories, output);
    }

    public SimulationSettings withEndDate(LocalDate end) {
        return new SimulationSettings(seed, vehicles, years, end, crew, kinds, hazards, mess, stories, output);
    }

    public SimulationSettings withHazards(Hazards h) {
        return new SimulationSettings(seed, vehicles, years, endDate, crew, kinds, h, mess, stories, output);
    }

    public SimulationSettings withMess(MessRates m) {
        return new SimulationSettings(seed, vehicles, years, endDate, crew, kinds, hazards, m, stories, output);
    }

    public SimulationSettings withStories(Stories s) {
        return new SimulationSettings(seed, vehicles, years, endDate, crew, kinds, hazards, mess, s, output);
    }

    public SimulationSettings withOutput(Output o) {
        return new SimulationSettings(seed, vehicles, years, endDate, crew, kinds, hazards, mess, stories, o);
    }

    /** First day of the logs. */
    public LocalDate startDate() {
        return endDate.minusYears(years).plusDays(1);
    }

    int startDay() {
        return (int) startDate().toEpochDay();
    }

    int endDay() {
        return (int) endDate.toEpochDay();
    }
}
