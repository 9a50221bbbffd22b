package sensorrounds.simulate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;

/**
 * The best forecast anybody could make of a simulated sensor from its tries, answers and low reports: Bayes' rule with the
 * laws the simulation draws from, over the day the battery dies and how long it is weak before. It knows the laws, the
 * readers, the day of fitting and the vehicle's factor; it does not know the fate. What it cannot forecast, nobody can.
 */
final class TrueLawFilter {
    /** The rate of damage at tyre work, per year: 1.5 % each time, every second year or so, half of the wheels. */
    private static final double DAMAGE_PER_YEAR = 0.004;

    /** Chances of having failed by so many days after the as-of day; of being weak then and alive. */
    record Chances(double[] failed, double weak) {}

    private static final BatteryReport.LowLimits LIMITS = new BatteryReport.LowLimits(20, 2.5, 6);
    private static final int WEAK_LENGTHS = 60;
    private static final double REPORTED = 0.75;
    private static final double DAYS_UNTIL_REPORTED = 24;

    private final Hazards hazards;
    private final Map<String, Crew.Reader> readers = new HashMap<>();
    private final int asOf;
    private final int[] weakFor = new int[WEAK_LENGTHS];

    private record Read(int day, double ifGood, double ifWeak, boolean answered) {}

    TrueLawFilter(SimulationSettings settings, LocalDate asOf) {
        this.hazards = settings.hazards();
        settings.crew().readers().forEach(r -> readers.put(r.id(), r));
        this.asOf = (int) asOf.toEpochDay();
        for (int i = 0; i < WEAK_LENGTHS; i++) {
            double z = StandardNormal.quantile((i + 0.5) / WEAK_LENGTHS);
            weakFor[i] = (int) Math.max(1, Math.ceil(hazards.weakMedianDays() * Math.exp(hazards.weakSpread() * z)));
        }
    }

    /**
     * @param heard whether a driver would have come for its death since it was last read
     * @param horizons days after the as-of day
     */
    Chances of(
            SensorLife life, SimulatedSensor truth, VehicleKind kind, double factor, boolean heard, int... horizons) {
        List<Read> reads = reads(life, truth, kind);
        int lastAnswer = truth.bornDay;
        for (Read r : reads) {
            lastAnswer = r.answered() ? r.day() : lastAnswer;
        }
        double[] good = new double[reads.size() + 1];
        double[] weak = new double[reads.size() + 1];
        good[0] = 1;
        for (int i = 0; i < reads.size(); i++) {
            good[i + 1] = good[i] * reads.get(i).ifGood();
        }
        weak[reads.size()] = 1;
        for (int i = reads.size() - 1; i >= 0; i--) {
            weak[i] = weak[i + 1] * reads.get(i).ifWeak();
        }
        LifeLaw law = kind.lawOf(truth.part);
        double total = 0;
        double isWeak = 0;
        double[] failed = new double[horizons.length];
        int last = asOf + 365 + 900;
        int step = 1;
        for (int dies = lastAnswer + 1; ; dies += step) {
            boolean beyond = dies > last;
            double prior = law.survival((dies - step - truth.bornDay) / factor)
                    - (beyond ? 0 : law.survival((dies - truth.bornDay) / factor));
            int died = dies;
            // Silent reads after the death are certain.
            int alive = 0;
            while (alive < reads.size() && reads.get(alive).day() < died) {
                alive++;
            }
            double quiet = 1;
            if (heard && died <= asOf && alive == reads.size()) {
                quiet = 1 - REPORTED * -Math.expm1(-Math.max(0, asOf - 1 - died) / DAYS_UNTIL_REPORTED);
            }
            for (int w : weakFor) {
                int from = Math.max(truth.bornDay, died - w);
                int k = 0;
                while (k < alive && reads.get(k).day() < from) {
                    k++;
                }
                double p = prior / WEAK_LENGTHS * quiet * good[k] * weak[k] / weak[alive];
                total += p;
                if (died > asOf && from <= asOf) {
                    isWeak += p;
                }
                for (int h = 0; h < horizons.length; h++) {
                    failed[h] += died <= asOf + horizons[h] ? p : 0;
                }
            }
            if (beyond) {
                break;
            }
        }
        for (int h = 0; h < horizons.length; h++) {
            double others = law(hazards.stem(), truth, horizons[h])
                    + law(hazards.ingress(), truth, horizons[h])
                    + DAMAGE_PER_YEAR * horizons[h] / 365;
            failed[h] = 1 - (1 - failed[h] / total) * Math.exp(-others);
        }
        return new Chances(failed, isWeak / total);
    }

    private double law(LifeLaw l, SimulatedSensor s, int days) {
        return Math.log(l.survival(asOf - s.bornDay) / l.survival(asOf + days - s.bornDay));
    }

    private List<Read> reads(SensorLife life, SimulatedSensor truth, VehicleKind kind) {
        List<Read> reads = new ArrayList<>();
        boolean tells = !truth.part.equals("S433-M") || Character.digit(truth.id.charAt(7), 16) % 3 != 0;
        for (LifeReading r : life.readings()) {
            int day = (int) r.day().toEpochDay();
            if (r.outcome() != ReadOutcome.OK && r.outcome() != ReadOutcome.NO_ANSWER || day > asOf) {
                continue;
            }
            Crew.Reader reader = readers.get(r.readerId());
            double cold = Math.max(0, 5 - r.ambientCelsius());
            double ease = reader.ease() * (1 - hazards.coldEase() * cold);
            if (r.position().mount() == Mount.INNER) {
                ease *= hazards.innerEase();
            }
            double weak = ease * hazards.weakEase() * (r.ambientCelsius() < 3 ? 0.6 : 1);
            if (!r.answered()) {
                reads.add(new Read(
                        day, Math.pow(1 - ease, reader.patience()), Math.pow(1 - weak, reader.patience()), false));
                continue;
            }
            double ifGood = Math.pow(1 - ease, r.attempts() - 1) * ease;
            double ifWeak = Math.pow(1 - weak, r.attempts() - 1) * weak;
            if (r.battery() != null) {
                double falseAlarm = r.ambientCelsius() < 0 ? 0.01 : 0.002;
                double noticed = r.ambientCelsius() < 3 ? 0.75 : 0.55;
                double lowWeak = noticed + (1 - noticed) * falseAlarm;
                boolean low = r.battery().isLow(LIMITS);
                ifGood *= low ? falseAlarm : 1 - falseAlarm;
                ifWeak *= low ? lowWeak : 1 - lowWeak;
            }
            reads.add(new Read(day, ifGood, ifWeak, true));
        }
        return reads;
    }
}
