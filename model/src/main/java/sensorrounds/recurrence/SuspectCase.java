package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.List;

/**
 * One vehicle whose warning recurs, as far as its suspects are weighed: what was seen of each of its sensors, in figures.
 *
 * @param outside log weight of the signs with declared weights for "not a sensor"
 */
record SuspectCase(String vehicleId, List<Sensor> sensors, CodeSigns codes, double outside) implements Serializable {
    /**
     * One sensor.
     *
     * @param ageClass class of age; see {@link SuspectFigures#ageClass}
     * @param prior log of a declared factor on its weight before other signs
     * @param declared log weight of the signs with declared weights
     * @param compared times its pressure was held against the hand gauge's, and {@code apart} how often they disagreed
     * @param own whether each naming of a wheel meant this sensor
     */
    record Sensor(
            int ageClass, double prior, double declared, SensorReads reads, int compared, int apart, boolean[] own)
            implements Serializable {
        /** Likelihood of the disagreements by level. */
        double[] apartLikelihood() {
            return apartLikelihood(compared, apart);
        }

        static double[] apartLikelihood(int compared, int apart) {
            double[] all = new double[SuspectFigures.APART.length];
            for (int i = 0; i < all.length; i++) {
                double p = SuspectFigures.APART[i];
                all[i] = Math.pow(p, apart) * Math.pow(1 - p, compared - apart);
            }
            return all;
        }
    }

    SuspectCase {
        sensors = List.copyOf(sensors);
    }
}
