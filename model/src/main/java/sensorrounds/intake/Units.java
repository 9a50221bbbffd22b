package sensorrounds.intake;

/**
 * Units a log may use. Factors: NIST Special Publication 811 (2008), appendix B.8: 1 psi = 4.448 221 615 260 5 N / (0.0254
 * m)², 1 bar = 100 kPa, 1 mile = 1.609 344 km, °C = (°F − 32) / 1.8.
 */
final class Units {
    private static final double KPA_PER_PSI = 4.4482216152605 / (0.0254 * 0.0254) / 1000;
    private static final double KPA_PER_BAR = 100;
    private static final double KM_PER_MILE = 1.609344;

    private Units() {}

    /** Units of pressure. */
    enum Pressure {
        KPA,
        BAR,
        PSI;

        double toKpa(double v) {
            return switch (this) {
                case KPA -> v;
                case BAR -> v * KPA_PER_BAR;
                case PSI -> v * KPA_PER_PSI;
            };
        }

        long note() {
            return switch (this) {
                case KPA -> 0;
                case BAR -> Note.PRESSURE_BAR.bit();
                case PSI -> Note.PRESSURE_PSI.bit();
            };
        }

        /** The plausible range in this unit, for messages. */
        String range(double maxKpa) {
            return switch (this) {
                case KPA -> "0 to " + (int) maxKpa + " kPa";
                case BAR -> "0 to " + (int) (maxKpa / KPA_PER_BAR) + " bar";
                case PSI -> "0 to " + (int) (maxKpa / KPA_PER_PSI) + " psi";
            };
        }
    }

    /** Units of temperature. */
    enum Temperature {
        C,
        F;

        double toCelsius(double v) {
            return this == C ? v : (v - 32) / 1.8;
        }

        long note() {
            return this == C ? 0 : Note.TEMPERATURE_FAHRENHEIT.bit();
        }
    }

    /** Units of distance. */
    enum Distance {
        KM,
        MI;

        double toKm(double v) {
            return this == KM ? v : v * KM_PER_MILE;
        }

        long note() {
            return this == KM ? 0 : Note.DISTANCE_MILES.bit();
        }
    }
}
