package sensorrounds.history;

import java.util.List;
import sensorrounds.visit.GasLaw;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelReading;

/**
 * Whether the cold alone explains a low-pressure warning: a tyre set right at the reference temperature loses pressure
 * with the air's, by the gas law on absolute pressure, and can fall to the warning limit without losing air.
 */
final class ColdCheck {
    /** Error of sensor and gauge, kPa (common practice, no source: 7 to 10). */
    private static final double NEAR_KPA = 10;

    private enum Tyre {
        /** Short of air at any temperature. */
        SHORT,
        /** Enough air, and near the limit in this cold. */
        NEAR,
        /** Enough air and far from the limit even now. */
        FULL,
        /** Cannot be told. */
        UNTOLD
    }

    private final HistorySettings settings;

    ColdCheck(HistorySettings settings) {
        this.settings = settings;
    }

    /** @return null when it cannot be told, or the visit has no low-pressure warning */
    Boolean explains(Visit visit) {
        VisitHeader header = visit.header();
        if (header.warning() != Warning.LOW_PRESSURE) {
            return null;
        }
        List<Tyre> tyres = visit.wheels().stream()
                .filter(w -> !w.position().isSpare())
                .map(w -> tyre(header, w))
                .toList();
        if (tyres.contains(Tyre.SHORT)) {
            return false;
        }
        if (tyres.isEmpty() || tyres.contains(Tyre.UNTOLD) || header.ambientCelsius() == null) {
            return null;
        }
        return header.ambientCelsius() < settings.referenceCelsius() && tyres.contains(Tyre.NEAR);
    }

    private Tyre tyre(VisitHeader header, WheelReading wheel) {
        Double placard = header.placardKpa().get(wheel.position().axle());
        Double gauge = wheel.gaugePressureKpa() != null ? wheel.gaugePressureKpa() : wheel.pressureKpa();
        Double ambient = header.ambientCelsius();
        // The sensor measures the enclosed air itself, so its temperature holds for a warm tyre as well.
        Double inside = wheel.temperatureCelsius() != null ? wheel.temperatureCelsius() : ambient;
        if (placard == null || gauge == null || inside == null || !GasLaw.isPossible(gauge, inside)) {
            return Tyre.UNTOLD;
        }
        double limit = placard * (1 - settings.lowPressureShare());
        if (GasLaw.gaugeAt(gauge, inside, settings.referenceCelsius()) < limit) {
            return Tyre.SHORT;
        }
        boolean warm = Boolean.TRUE.equals(wheel.hot()) && wheel.temperatureCelsius() == null;
        if (warm || ambient == null || !GasLaw.isPossible(gauge, ambient)) {
            return Tyre.UNTOLD;
        }
        return GasLaw.gaugeAt(gauge, inside, ambient) <= limit + NEAR_KPA ? Tyre.NEAR : Tyre.FULL;
    }
}
