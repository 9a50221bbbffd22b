package sensorrounds.simulate;

/** Air temperature by depot, day and hour: a yearly wave, days that follow one another, and a daily wave. */
final class Weather {
    private static final double MEAN = 10.0;
    private static final double YEARLY_SWING = 9.5;
    private static final double DAY_SPREAD = 3.6;
    /** Coldest around the twentieth of January. */
    private static final int COLDEST_DAY_OF_YEAR = 20;

    private final int firstDay;
    private final double[][] meanOfDay;

    Weather(SimulationSettings settings) {
        firstDay = settings.startDay() - 1;
        int days = settings.endDay() - firstDay + 2;
        int depots = settings.crew().depots().size();
        meanOfDay = new double[depots][days];
        for (int d = 0; d < depots; d++) {
            double lasting = 0;
            double offset = settings.crew().depots().get(d).celsiusOffset();
            for (int i = 0; i < days; i++) {
                // Keyed by the date: a longer log has the same weather on the same day, but for the first few days.
                Dice dice = Dice.of(settings.seed(), 'W', firstDay + i, d);
                lasting = 0.7 * lasting + StrictMath.sqrt(1 - 0.49) * dice.normal();
                double year = 2 * StrictMath.PI * (firstDay + i - COLDEST_DAY_OF_YEAR) / 365.25;
                meanOfDay[d][i] = MEAN + offset - YEARLY_SWING * StrictMath.cos(year) + DAY_SPREAD * lasting;
            }
        }
    }

    /** °C at this hour of the day, 0 to 24. */
    double celsius(int depot, int day, double hour) {
        return meanOfDay[depot][day - firstDay] - 3.5 * StrictMath.cos(2 * StrictMath.PI * (hour - 4) / 24);
    }
}
