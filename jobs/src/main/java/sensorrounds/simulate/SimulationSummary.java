package sensorrounds.simulate;

/**
 * What a simulation wrote.
 *
 * @param visits visits that truly took place
 * @param rows rows in the logs, mishaps included: a row is one wheel of one visit
 * @param files files written, registers and truth included
 * @param bytes bytes written, before packing
 */
public record SimulationSummary(int vehicles, long visits, long rows, int files, long bytes) {
    /** One line for people. */
    public String words() {
        return "simulated " + vehicles + " vehicles, " + visits + " visits, " + rows + " rows in " + files + " files, "
                + Math.round(bytes / 1e5) / 10.0 + " MB";
    }
}
