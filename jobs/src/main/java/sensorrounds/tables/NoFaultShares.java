package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.recurrence.NoFaultShare;

/** Stored table of warning visits with no fault found. */
public final class NoFaultShares {
    public static final Table<NoFaultShare> TABLE = new Table<>(
            "no_fault_found",
            "What was found at visits with a system warning on arrival, each counted under the first that holds: visits ="
                    + " not_looked + sensor_silent + code_names_wheel + work_on_wheel + nothing_found.",
            List.of(
                    text("cohort", "Vehicle class, or 'all vehicles'.", NoFaultShare::cohort),
                    count("visits", "Visits with a system warning on arrival.", NoFaultShare::visits),
                    count(
                            "not_looked",
                            "No wheel was tried, the reader heard nothing, or those tried answered and others were left out.",
                            NoFaultShare::notLooked),
                    count("sensor_silent", "A sensor gave no answer.", NoFaultShare::sensorSilent),
                    count("code_names_wheel", "A current or stored code names a wheel.", NoFaultShare::codeNamesWheel),
                    count(
                            "work_on_wheel",
                            "A sensor was replaced or a wheel worked on though every sensor answered.",
                            NoFaultShare::workOnWheel),
                    count("nothing_found", "None of these.", NoFaultShare::nothingFound),
                    number(
                            "share",
                            "nothing_found of the visits at which it was looked; null of none.",
                            NoFaultShare::share),
                    number("lower", "Lower 95 % limit.", NoFaultShare::lower),
                    number("upper", "Upper 95 % limit.", NoFaultShare::upper)));

    private NoFaultShares() {}
}
