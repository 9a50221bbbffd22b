package sensorrounds.simulate;

/**
 * What ends a sensor besides its battery, how a battery dies, and what makes a sensor hard to wake.
 *
 * @param stem law of a snapped or corroded stem
 * @param ingress law of water or sealant getting in
 * @param tyreChangeDamage chance that a sensor is broken when its tyre comes off
 * @param vehicleSpread standard deviation of the logarithm of the factor that all batteries of one vehicle share
 * @param weakMedianDays median length of the weak phase before a battery dies, days
 * @param weakSpread standard deviation of its logarithm
 * @param weakEase factor on the chance to wake of a weak sensor
 * @param innerEase factor on the chance to wake at the inner wheel of a pair
 * @param coldEase loss of that chance for each °C below 5 °C
 */
public record Hazards(
        LifeLaw stem,
        LifeLaw ingress,
        double tyreChangeDamage,
        double vehicleSpread,
        double weakMedianDays,
        double weakSpread,
        double weakEase,
        double innerEase,
        double coldEase) {
    public static Hazards standard() {
        return new Hazards(
                new LifeLaw(1.8, 16_000), new LifeLaw(1.2, 90_000), 0.015, 0.08, 100, 0.6, 0.45, 0.72, 0.006);
    }
}
