package sensorrounds.recurrence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.WheelPosition;

/**
 * What fault codes say. A code speaks of the sensor that sat at its place that day. Cleared codes and codes that name no wheel
 * speak of nobody.
 */
final class CodeEvidence {
    private final CodeSigns signs;

    CodeEvidence(CodeSigns signs) {
        this.signs = signs;
    }

    CodeSigns signs() {
        return signs;
    }

    /** Which of the wheels named were the sensor's; what was named before its fitting was not. */
    boolean[] own(SensorLife life) {
        List<CodeSigns.Naming> all = signs.namings();
        boolean[] own = new boolean[all.size()];
        for (int i = 0; i < own.length; i++) {
            VisitSummary v = all.get(i).visit();
            boolean before = life.fittedOn() != null
                    && life.basis() == OriginBasis.RECORDED_FITTING
                    && v.day().isBefore(life.fittedOn());
            own[i] = !before && all.get(i).code().position().equals(placeAt(life, v));
        }
        return own;
    }

    /** The same for a place suspected, whatever sensor sits there; of no place nothing is named. */
    boolean[] own(WheelPosition place) {
        List<CodeSigns.Naming> all = signs.namings();
        boolean[] own = new boolean[all.size()];
        for (int i = 0; i < own.length; i++) {
            own[i] = all.get(i).code().position().equals(place);
        }
        return own;
    }

    /** Of a sensor; nothing where no wheel was named. */
    Optional<Evidence> evidence(boolean[] own, SuspectFigures figures) {
        return evidence(own, "another place", figures);
    }

    /** Of a place. */
    Optional<Evidence> evidence(WheelPosition place, SuspectFigures figures) {
        return place == null ? Optional.empty() : evidence(own(place), "another place", figures);
    }

    private Optional<Evidence> evidence(boolean[] own, String otherwise, SuspectFigures figures) {
        List<CodeSigns.Naming> all = signs.namings();
        if (all.isEmpty()) {
            boolean counts = figures.basis() == SuspectFigures.Basis.FLAGGED_VEHICLES && signs.nameless() > 0;
            String words = signs.nameless() == 1
                    ? "the codes of a visit name no wheel"
                    : "the codes of " + signs.nameless() + " visits name no wheel";
            return counts
                    ? Optional.of(Evidence.of(Evidence.Sign.FAULT_CODE, words, signs.ratio(figures, own)))
                    : Optional.empty();
        }
        List<CodeSigns.Naming> mine = new ArrayList<>();
        for (int i = 0; i < own.length; i++) {
            if (own[i]) {
                mine.add(all.get(i));
            }
        }
        CodeSigns.Naming told = mine.isEmpty() ? all.get(all.size() - 1) : mine.get(mine.size() - 1);
        String words = (told.stored() ? "stored" : "current") + " code "
                + told.code().code() + " on " + told.visit().day() + " names "
                + (mine.isEmpty()
                        ? otherwise + ", " + told.code().position().words()
                        : "its place" + (mine.size() == 1 ? "" : ", one of " + mine.size() + " that do"));
        return Optional.of(Evidence.of(Evidence.Sign.FAULT_CODE, words, signs.ratio(figures, own)));
    }

    private static WheelPosition placeAt(SensorLife life, VisitSummary visit) {
        return life.readings().stream()
                .filter(r -> visit.visitId().equals(r.visitId()) && r.position() != null)
                .map(LifeReading::position)
                .findFirst()
                .orElse(life.position());
    }
}
