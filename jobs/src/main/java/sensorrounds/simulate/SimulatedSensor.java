package sensorrounds.simulate;

/** A sensor with its true fate. Days are days since 1970-01-01. */
final class SimulatedSensor {
    /** A day that never comes. */
    static final int NEVER = Integer.MAX_VALUE;

    /** How a sensor left its wheel. */
    enum Removal {
        IN_SERVICE,
        FAILED,
        PREVENTIVE,
        /** Taken for dead, though it was not. */
        TAKEN_FOR_DEAD,
        LEFT_FLEET
    }

    /** True cause of a failure. */
    enum Cause {
        BATTERY,
        STEM,
        CORROSION,
        INGRESS,
        TYRE_CHANGE_DAMAGE
    }

    /** How its fitting is known. */
    enum Origin {
        ORIGINAL,
        /** Fitted later, before the logs begin: nobody wrote it down. */
        BEFORE_LOGS,
        LOGGED
    }

    final int ordinal;
    final String id;
    final String part;
    final Origin origin;
    final int bornDay;
    /** Day the battery gives out, if nothing else comes first. */
    final int batteryDay;

    final int weakDay;
    /** True when a sensor with a broken stem still sends. */
    final boolean sendsWithBrokenStem;

    private int failDay;
    private Cause cause;
    private int removedDay = NEVER;
    private Removal removal = Removal.IN_SERVICE;

    private SimulatedSensor(
            int ordinal,
            String id,
            String part,
            Origin origin,
            int bornDay,
            int batteryDay,
            int weakDay,
            int failDay,
            Cause cause,
            boolean sendsWithBrokenStem) {
        this.ordinal = ordinal;
        this.id = id;
        this.part = part;
        this.origin = origin;
        this.bornDay = bornDay;
        this.batteryDay = batteryDay;
        this.weakDay = weakDay;
        this.failDay = failDay;
        this.cause = cause;
        this.sendsWithBrokenStem = sendsWithBrokenStem;
    }

    /** Draws the fate of a sensor: battery, stem and ingress compete, the first one wins. */
    static SimulatedSensor draw(
            Dice dice, int ordinal, String id, String part, Origin origin, int born, LifeLaw law, double f, Hazards h) {
        int battery = born + days(f * law.age(dice.uniform()));
        int stem = born + days(h.stem().age(dice.uniform()));
        int ingress = born + days(h.ingress().age(dice.uniform()));
        double weakFor = h.weakMedianDays() * StrictMath.exp(h.weakSpread() * dice.normal());
        boolean corroded = dice.chance(0.6);
        boolean sends = dice.chance(0.6);
        int fail = Math.min(battery, Math.min(stem, ingress));
        Cause cause = fail == battery
                ? Cause.BATTERY
                : fail == stem ? (corroded ? Cause.CORROSION : Cause.STEM) : Cause.INGRESS;
        int weak = Math.max(born, battery - days(weakFor));
        return new SimulatedSensor(ordinal, id, part, origin, born, battery, weak, fail, cause, sends);
    }

    /** A sensor whose battery lasts until the given day; nothing else befalls it. */
    static SimulatedSensor destined(
            int ordinal, String id, String part, Origin origin, int born, int weakDay, int batteryDay) {
        return new SimulatedSensor(
                ordinal, id, part, origin, born, batteryDay, weakDay, batteryDay, Cause.BATTERY, false);
    }

    private static int days(double d) {
        return (int) Math.max(1, Math.min(100_000, Math.ceil(d)));
    }

    int failDay() {
        return failDay;
    }

    /** Null while it has not failed before it was taken out. */
    Cause cause() {
        return failDay <= removedDay && failDay != NEVER ? cause : null;
    }

    int removedDay() {
        return removedDay;
    }

    Removal removal() {
        return removal;
    }

    boolean failedBy(int day) {
        return failDay <= day;
    }

    boolean brokenStemBy(int day) {
        return failedBy(day) && (cause == Cause.STEM || cause == Cause.CORROSION);
    }

    boolean sendsOn(int day) {
        return batteryDay > day && (!failedBy(day) || brokenStemBy(day) && sendsWithBrokenStem);
    }

    boolean weakOn(int day) {
        return weakDay <= day;
    }

    void damage(int day) {
        failDay = day;
        cause = Cause.TYRE_CHANGE_DAMAGE;
    }

    void remove(int day, Removal how) {
        removedDay = day;
        removal = how;
    }
}
