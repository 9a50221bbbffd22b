package sensorrounds.simulate;

/**
 * Units of an export and how many decimals it shows. Factors: 1 psi = 6.894757 kPa and 1 mile = 1.609344 km (NIST SP
 * 811, appendix B).
 */
enum Units {
    KPA_KM_C("kPa", 1, 1, "km", 1, "C"),
    BAR_KM_C("bar", 0.01, 2, "km", 1, "C"),
    PSI_MILES_F("psi", 1 / 6.894757, 1, "mi", 1 / 1.609344, "F");

    final String pressureUnit;
    final String odometerUnit;
    final String temperatureUnit;
    private final double perKpa;
    private final int pressurePlaces;
    private final double perKm;

    Units(String pressureUnit, double perKpa, int places, String odometerUnit, double perKm, String temperatureUnit) {
        this.pressureUnit = pressureUnit;
        this.perKpa = perKpa;
        this.pressurePlaces = places;
        this.odometerUnit = odometerUnit;
        this.perKm = perKm;
        this.temperatureUnit = temperatureUnit;
    }

    String pressure(double kpa) {
        return Decimals.text(kpa * perKpa, pressurePlaces);
    }

    String distance(double km) {
        return Decimals.text(km * perKm, 0);
    }

    String temperature(double celsius) {
        return temperatureUnit.equals("F") ? Decimals.text(celsius * 1.8 + 32, 0) : Decimals.text(celsius, 1);
    }
}
