package sensorrounds.recurrence;

import java.util.List;
import java.util.Optional;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.WheelPosition;

/**
 * What fault codes say. A code speaks of the sensor that sat at its place that day; the strongest code counts once, since one
 * cause sets it again and again. Cleared codes and codes that name no wheel speak of nobody.
 */
final class CodeEvidence {
    private final List<VisitSummary> visits;
    private final SuspectWeights weights;

    /** @param visits of the window of recurrence, in time order */
    CodeEvidence(List<VisitSummary> visits, SuspectWeights weights) {
        this.visits = visits;
        this.weights = weights;
    }

    private enum Named {
        NOBODY,
        ELSEWHERE,
        STORED,
        CURRENT
    }

    /** The strongest code so far. */
    private final class Strongest {
        private Named named = Named.NOBODY;
        private String words = "";

        /** @param place where the candidate was at that visit; null for no place */
        void hear(VisitSummary v, FaultCode c, WheelPosition place) {
            if (c.position() == null || c.state() == FaultCode.State.CLEARED) {
                return;
            }
            boolean current = c.state() == FaultCode.State.CURRENT;
            Named heard = !c.position().equals(place) ? Named.ELSEWHERE : current ? Named.CURRENT : Named.STORED;
            if (heard.compareTo(named) > 0) {
                named = heard;
                String what = heard != Named.ELSEWHERE
                        ? "its place"
                        : (place == null ? "a wheel, " : "another place, ")
                                + c.position().words();
                words = (current ? "current" : "stored") + " code " + c.code() + " on " + v.day() + " names " + what;
            }
        }

        Optional<Evidence> evidence() {
            double weight = switch (named) {
                case NOBODY -> 1;
                case ELSEWHERE -> weights.codeElsewhere();
                case STORED -> weights.codeStored();
                case CURRENT -> weights.codeCurrent();
            };
            return named == Named.NOBODY
                    ? Optional.empty()
                    : Optional.of(Evidence.of(Evidence.Sign.FAULT_CODE, words, weight));
        }
    }

    Optional<Evidence> of(SensorLife life) {
        Strongest strongest = new Strongest();
        for (VisitSummary v : visits) {
            boolean before = life.fittedOn() != null
                    && life.basis() == OriginBasis.RECORDED_FITTING
                    && v.day().isBefore(life.fittedOn());
            if (!before) {
                v.codes().forEach(c -> strongest.hear(v, c, placeAt(life, v)));
            }
        }
        return strongest.evidence();
    }

    /**
     * Of a cause outside the sensors: a code that names a wheel speaks against it, as it speaks against every other wheel's
     * sensor, unless that very place is meant.
     *
     * @param place the place suspected; null for none
     */
    Optional<Evidence> ofNoSensor(WheelPosition place) {
        Strongest strongest = new Strongest();
        visits.forEach(v -> v.codes().forEach(c -> strongest.hear(v, c, place)));
        return strongest.evidence();
    }

    private static WheelPosition placeAt(SensorLife life, VisitSummary visit) {
        return life.readings().stream()
                .filter(r -> visit.visitId().equals(r.visitId()) && r.position() != null)
                .map(LifeReading::position)
                .findFirst()
                .orElse(life.position());
    }
}
