package sensorrounds.simulate;

import java.io.IOException;
import java.nio.file.Path;

/** Writes an invented fleet of known truth: the sample data, or large logs for measuring. */
public final class SimulateTask {
    /** What to do with a folder that holds something already. */
    public enum Existing {
        REFUSE,
        /** Replace simulated data; any other content is still refused. */
        REPLACE_SIMULATED
    }

    private static final int PILOT_VEHICLES = 300;

    /**
     * Writes into a new or empty folder.
     *
     * @throws IllegalArgumentException when the folder is not empty
     * @throws IOException when writing fails; what was written until then stays
     */
    public SimulationSummary run(SimulationSettings settings, Path out) throws IOException {
        return run(settings, out, Existing.REFUSE);
    }

    /** As {@link #run(SimulationSettings, Path)}, saying what to do with a folder that is not empty. */
    public SimulationSummary run(SimulationSettings settings, Path out, Existing existing) throws IOException {
        OutputFolder folder = OutputFolder.open(out, existing);
        return settings.output() == SimulationSettings.Output.SAMPLE
                ? new SampleWriter(settings, folder).write()
                : new LargeWriter(settings, folder).write();
    }

    /**
     * The settings with as many vehicles as give about this many readings (rows), found on a pilot of 300 vehicles;
     * the count hits within a few per cent.
     */
    public static SimulationSettings forReadings(SimulationSettings settings, long readings) {
        if (readings < 1) {
            throw new IllegalArgumentException("cannot simulate " + readings + " readings: give 1 or more");
        }
        FleetSimulator simulator = new FleetSimulator(settings);
        long pilot = 0;
        for (int i = 0; i < PILOT_VEHICLES; i++) {
            pilot += simulator.vehicle(i).visits().stream()
                    .mapToInt(SimulatedVisit::rows)
                    .sum();
        }
        long vehicles = Math.max(1, Math.round((double) readings * PILOT_VEHICLES / pilot));
        if (vehicles > SimulationSettings.MAX_VEHICLES) {
            throw new IllegalArgumentException(readings + " readings would take " + vehicles + " vehicles; "
                    + SimulationSettings.MAX_VEHICLES + " are possible: give more years");
        }
        return settings.withVehicles((int) vehicles);
    }
}
