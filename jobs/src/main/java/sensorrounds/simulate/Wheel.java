package sensorrounds.simulate;

import sensorrounds.visit.WheelPosition;

/** A wheel of a vehicle: its place, its set, its sensor, its tyre and the air in it. */
final class Wheel {
    private static final double ATMOSPHERE_KPA = 101.325;
    private static final double REFERENCE_KELVIN = 293.15;
    private static final double DAYS_PER_MONTH = 30.44;

    final WheelPosition position;
    final int set;
    final double placardKpa;
    /** Loss at 20 °C, kPa a day. */
    final double lossPerDay;

    private SimulatedSensor sensor;
    private int tyreMadeDay;
    private int airDay;
    private double airKpaAt20;
    private boolean silentLastTime;

    Wheel(WheelPosition position, int set, double placardKpa, double lossPerMonth, int tyreMadeDay) {
        this.position = position;
        this.set = set;
        this.placardKpa = placardKpa;
        this.lossPerDay = lossPerMonth / DAYS_PER_MONTH;
        this.tyreMadeDay = tyreMadeDay;
        this.airKpaAt20 = placardKpa;
    }

    /** Null for a plain valve or an indirect system. */
    SimulatedSensor sensor() {
        return sensor;
    }

    void fit(SimulatedSensor s) {
        sensor = s;
        silentLastTime = false;
    }

    int tyreMadeDay() {
        return tyreMadeDay;
    }

    void newTyre(int madeDay) {
        tyreMadeDay = madeDay;
    }

    boolean silentLastTime() {
        return silentLastTime;
    }

    void silentLastTime(boolean silent) {
        silentLastTime = silent;
    }

    /** Sets the gauge pressure at this temperature. */
    void inflate(int day, double kpa, double celsius) {
        airDay = day;
        airKpaAt20 = (kpa + ATMOSPHERE_KPA) * REFERENCE_KELVIN / kelvin(celsius) - ATMOSPHERE_KPA;
    }

    /** Gauge pressure at this temperature: the gas law holds for the absolute pressure. */
    double kpa(int day, double celsius) {
        double at20 = Math.max(0, airKpaAt20 - lossPerDay * (day - airDay));
        return (at20 + ATMOSPHERE_KPA) * kelvin(celsius) / REFERENCE_KELVIN - ATMOSPHERE_KPA;
    }

    /** Two wheels change places: what belongs to the wheel moves, the places stay. */
    static void swap(Wheel a, Wheel b) {
        SimulatedSensor s = a.sensor;
        a.sensor = b.sensor;
        b.sensor = s;
        int made = a.tyreMadeDay;
        a.tyreMadeDay = b.tyreMadeDay;
        b.tyreMadeDay = made;
        boolean silent = a.silentLastTime;
        a.silentLastTime = b.silentLastTime;
        b.silentLastTime = silent;
    }

    private static double kelvin(double celsius) {
        return celsius + 273.15;
    }
}
