package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.visit.GasLaw;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** Pressures of a visit against the placard, and the sensor's figure against the hand gauge's. */
final class Pressures {
    /** A sensor and a gauge this far apart disagree: kPa, and share of the gauge (common practice, no source). */
    private static final double APART_KPA = 15;

    private static final double APART_SHARE = 0.05;

    private final RunContext run;

    Pressures(RunContext run) {
        this.run = run;
    }

    String words(Visit visit) {
        Map<String, Double> shares = new TreeMap<>();
        List<String> apart = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (WheelReading w : visit.wheels()) {
            Double kpa = w.gaugePressureKpa() != null ? w.gaugePressureKpa() : w.pressureKpa();
            if (kpa != null) {
                least = Math.min(least, kpa);
                most = Math.max(most, kpa);
                double share = share(visit.header(), w, kpa);
                if (!Double.isNaN(share)) {
                    shares.put(w.position().code(), share);
                }
            }
            if (disagree(w)) {
                apart.add(w.position().code() + " (" + Say.figure(w.pressureKpa(), 0) + " against "
                        + Say.figure(w.gaugePressureKpa(), 0) + " kPa)");
            }
        }
        if (least > most) {
            return "";
        }
        String raw = least == most
                ? Say.figure(least, 0) + " kPa"
                : Say.figure(least, 0) + " to " + Say.figure(most, 0) + " kPa";
        return "Pressures " + raw + against(shares) + "."
                + (apart.isEmpty() ? "" : " Sensor and gauge disagree at " + Say.and(apart) + ".");
    }

    private String against(Map<String, Double> shares) {
        if (shares.isEmpty()) {
            return "";
        }
        double least = shares.values().stream().mapToDouble(x -> x).min().orElseThrow();
        double most = shares.values().stream().mapToDouble(x -> x).max().orElseThrow();
        List<String> low = shares.entrySet().stream()
                .filter(e -> e.getValue() < 1 - run.lowPressureShare())
                .map(Map.Entry::getKey)
                .toList();
        return ", at " + Say.plain(run.referenceCelsius()) + " °C " + percent(least)
                + (percent(least).equals(percent(most)) ? "" : " to " + percent(most)) + " % of the placard"
                + (low.isEmpty() ? "" : "; under the warning share: " + Say.and(low));
    }

    private static String percent(double share) {
        return Say.figure(100 * share, 0);
    }

    /** Share of the placard once referred to the reference temperature; NaN when it cannot be told. */
    private double share(VisitHeader h, WheelReading w, double kpa) {
        Double placard = h.placardKpa().get(w.position().axle());
        Double inside = w.temperatureCelsius() != null ? w.temperatureCelsius() : h.ambientCelsius();
        boolean warm = Boolean.TRUE.equals(w.hot()) && w.temperatureCelsius() == null;
        if (placard == null || inside == null || warm || !GasLaw.isPossible(kpa, inside)) {
            return Double.NaN;
        }
        return GasLaw.gaugeAt(kpa, inside, run.referenceCelsius()) / placard;
    }

    private static boolean disagree(WheelReading w) {
        return w.pressureKpa() != null
                && w.gaugePressureKpa() != null
                && Math.abs(w.pressureKpa() - w.gaugePressureKpa())
                        > Math.max(APART_KPA, APART_SHARE * w.gaugePressureKpa());
    }
}
