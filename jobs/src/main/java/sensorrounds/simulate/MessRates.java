package sensorrounds.simulate;

/**
 * How often a log goes wrong on its way. Shares of visits or, where said, of wheels.
 *
 * @param duplicate visit synced twice
 * @param revised visit edited later
 * @param badDate date that is none
 * @param missingVehicle no vehicle given
 * @param sharedPlace two wheels on one place
 * @param truncated JSON line cut off, and sent again
 * @param blankBattery battery left blank, of wheels
 * @param impossiblePressure pressure no tyre has, of wheels
 * @param unknownPosition place that no layout knows, of wheels
 * @param idNotHex letter O in an ID, of wheels
 * @param idMistyped one digit of an ID wrong, of wheels
 */
public record MessRates(
        double duplicate,
        double revised,
        double badDate,
        double missingVehicle,
        double sharedPlace,
        double truncated,
        double blankBattery,
        double impossiblePressure,
        double unknownPosition,
        double idNotHex,
        double idMistyped) {
    public static MessRates ordinary() {
        return new MessRates(0.012, 0.012, 0.003, 0.003, 0.004, 0.012, 0.03, 0.001, 0.001, 0.001, 0.0005);
    }

    public static MessRates none() {
        return new MessRates(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
    }
}
