package sensorrounds.visit;

/**
 * Tyre pressure at another temperature: at constant volume the absolute pressure is proportional to the absolute
 * temperature, {@code p2 = p1 * T2 / T1} (Gay-Lussac; OpenStax College Physics, ideal gas law). A gauge shows the pressure
 * above the air's, so the air's pressure is added before and taken off after; leaving that out gets a car's pressure
 * wrong by about a third of the change.
 */
public final class GasLaw {
    /** Standard atmosphere (ISO 2533, sea level), kPa. */
    public static final double ATMOSPHERE_KPA = 101.325;
    /** 0 °C in kelvin. */
    public static final double ZERO_CELSIUS_KELVIN = 273.15;

    private GasLaw() {}

    /**
     * @param gaugeKpa gauge pressure, kPa, at sea level
     * @param fromCelsius temperature of the enclosed air when it was read, °C
     * @param toCelsius temperature to refer it to, °C
     * @return gauge pressure at {@code toCelsius}, kPa
     * @throws IllegalArgumentException when a temperature is not above absolute zero or the pressure is under a vacuum's
     */
    public static double gaugeAt(double gaugeKpa, double fromCelsius, double toCelsius) {
        if (!isPossible(gaugeKpa, fromCelsius) || !isPossible(gaugeKpa, toCelsius)) {
            throw new IllegalArgumentException("no such state of air: " + gaugeKpa + " kPa gauge, " + fromCelsius
                    + " °C to " + toCelsius + " °C; needs a pressure of at least -" + ATMOSPHERE_KPA
                    + " kPa and temperatures above -" + ZERO_CELSIUS_KELVIN + " °C");
        }
        double ratio = (toCelsius + ZERO_CELSIUS_KELVIN) / (fromCelsius + ZERO_CELSIUS_KELVIN);
        return (gaugeKpa + ATMOSPHERE_KPA) * ratio - ATMOSPHERE_KPA;
    }

    /** @return whether air can be in this state; false for NaN */
    public static boolean isPossible(double gaugeKpa, double celsius) {
        return gaugeKpa >= -ATMOSPHERE_KPA && celsius > -ZERO_CELSIUS_KELVIN && Double.isFinite(gaugeKpa + celsius);
    }
}
