package sensorrounds.analyst;

import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.survival.FitReport;

/**
 * What makes sensors last longer or shorter, one factor beside all others, and what that rests on.
 *
 * @param effects one row for each level; empty where nothing could be compared
 * @param families the families of laws, the best first; the gamma family up to 5,000 lives
 * @param lives lives that took part
 * @param failures those that failed
 * @param drawnFrom lives of the fleet, of which those that took part are a draw by vehicle
 * @param reports what each fit says of itself, by its name
 * @param notes what was left out and why, and what failed; empty when nothing
 */
public record CovariateEffects(
        List<CovariateEffect> effects,
        List<FamilyFit> families,
        long lives,
        long failures,
        long drawnFrom,
        SortedMap<String, FitReport> reports,
        List<String> notes)
        implements Serializable {
    public CovariateEffects {
        effects = List.copyOf(effects);
        families = List.copyOf(families);
        reports = Collections.unmodifiableSortedMap(new TreeMap<>(reports));
        notes = List.copyOf(notes);
    }

    CovariateEffects with(List<CovariateEffect> newEffects, List<String> newNotes) {
        return new CovariateEffects(newEffects, families, lives, failures, drawnFrom, reports, newNotes);
    }
}
