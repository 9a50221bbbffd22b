package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.WheelPosition;

/**
 * The fault codes of one vehicle as evidence. A code seen at a visit names the place of the sensor behind the warnings with
 * some chance, and any place falsely with another; both are levels of the vehicle's own. Half of the vehicles that name
 * falsely name one and the same place each time. A stored code may be left from another fault: it is false twice as often,
 * and the same one counts once. Codes that name no wheel count in how often codes name one, and speak of nobody. Immutable.
 */
final class CodeSigns implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double STORED_FALSE = 2;
    private static final double MOST_FALSE = 0.9;
    private static final double ALWAYS_THE_SAME = 0.5;

    /** A wheel named at a visit. */
    record Naming(VisitSummary visit, FaultCode code) implements Serializable {
        boolean stored() {
            return code.state() == FaultCode.State.STORED;
        }
    }

    private final List<Naming> namings;
    private final int nameless;
    private final int places;

    private CodeSigns(List<Naming> namings, int nameless, int places) {
        this.namings = namings;
        this.nameless = nameless;
        this.places = places;
    }

    /**
     * @param visits of the window of recurrence, in time order
     * @param places wheels a code could name
     */
    static CodeSigns of(List<VisitSummary> visits, int places) {
        List<Naming> all = new ArrayList<>();
        Set<FaultCode> stored = new HashSet<>();
        int nameless = 0;
        for (VisitSummary v : visits) {
            Set<WheelPosition> named = new HashSet<>();
            boolean coded = false;
            boolean anyNamed = false;
            for (FaultCode.State state : List.of(FaultCode.State.CURRENT, FaultCode.State.STORED)) {
                for (FaultCode c : v.codes()) {
                    if (c.state() != state) {
                        continue;
                    }
                    coded = true;
                    anyNamed |= c.position() != null;
                    boolean news = state == FaultCode.State.CURRENT || stored.add(c);
                    if (c.position() != null && news && named.add(c.position())) {
                        all.add(new Naming(v, c));
                    }
                }
            }
            nameless += coded && !anyNamed ? 1 : 0;
        }
        return new CodeSigns(List.copyOf(all), nameless, Math.max(1, places));
    }

    List<Naming> namings() {
        return namings;
    }

    int nameless() {
        return nameless;
    }

    /**
     * What the codes tell for a candidate against one outside the sensors without a place. Under figures of the fleet's own that
     * codes named no wheel counts too: it speaks against every sensor alike, the more the oftener such codes do name one.
     * Declared figures know nothing of the systems a fleet drives: under them it counts for nothing, and a wheel named again
     * and again counts once.
     *
     * @param own whether each naming meant this candidate
     */
    double ratio(SuspectFigures f, boolean[] own) {
        if (f.basis() == SuspectFigures.Basis.FLAGGED_VEHICLES) {
            return fullRatio(f, own);
        }
        List<Naming> once = new ArrayList<>();
        boolean[] ownOnce = new boolean[own.length];
        Set<WheelPosition> named = new HashSet<>();
        for (int i = 0; i < own.length; i++) {
            if (named.add(namings.get(i).code().position())) {
                ownOnce[once.size()] = own[i];
                once.add(namings.get(i));
            }
        }
        CodeSigns signs = new CodeSigns(once, 0, places);
        return signs.fullRatio(f, Arrays.copyOf(ownOnce, once.size()));
    }

    /** The same with the codes that name no wheel counted under any figures. */
    double fullRatio(SuspectFigures f, boolean[] own) {
        return total(f, own, true) / total(f, new boolean[namings.size()], false);
    }

    /** Logarithm of the likelihood of all codes where no sensor is the cause. */
    double logOutside(SuspectFigures f) {
        return Math.log(total(f, new boolean[namings.size()], false));
    }

    private double total(SuspectFigures f, boolean[] own, boolean isCause) {
        return Arrays.stream(joint(f, own, isCause)).sum();
    }

    private double none(int v, int m, boolean isCause) {
        double not = (1 - SuspectFigures.MISNAMING[m]) * (isCause ? 1 - SuspectFigures.NAMING[v] : 1);
        return Math.pow(not, nameless);
    }

    /** By level of naming, then of naming falsely. */
    private double[] joint(SuspectFigures f, boolean[] own, boolean isCause) {
        double[] all = new double[f.naming().length * f.misnaming().length];
        for (int v = 0; v < f.naming().length; v++) {
            for (int m = 0; m < f.misnaming().length; m++) {
                double seen = none(v, m, isCause)
                        * named(own, isCause ? SuspectFigures.NAMING[v] : 0, SuspectFigures.MISNAMING[m]);
                all[v * f.misnaming().length + m] = f.naming()[v] * f.misnaming()[m] * seen;
            }
        }
        return all;
    }

    private double named(boolean[] own, double naming, double misnaming) {
        double all = 1;
        int wrong = 0;
        Set<WheelPosition> wrongPlaces = new HashSet<>();
        for (int i = 0; i < own.length; i++) {
            Naming n = namings.get(i);
            double wrongly = (1 - naming) * Math.min(MOST_FALSE, misnaming * (n.stored() ? STORED_FALSE : 1));
            if (own[i]) {
                all *= naming + wrongly / places;
            } else {
                all *= wrongly;
                wrong++;
                wrongPlaces.add(n.code().position());
            }
        }
        if (wrong > 0) {
            all *= (wrongPlaces.size() == 1 ? ALWAYS_THE_SAME / places : 0)
                    + (1 - ALWAYS_THE_SAME) * Math.pow(places, -wrong);
        }
        return all;
    }

    /** Adds the levels this vehicle is expected to have, the candidate being the cause with a probability. */
    void count(SuspectFigures f, boolean[] own, boolean isCause, double p, SuspectCounts counts) {
        if (nameless + namings.size() == 0) {
            return;
        }
        double[] joint = joint(f, own, isCause);
        double total = Arrays.stream(joint).sum();
        for (int i = 0; i < joint.length; i++) {
            double share = p * joint[i] / total;
            if (isCause) {
                counts.naming[i / f.misnaming().length] += share;
            }
            counts.misnaming[i % f.misnaming().length] += share;
        }
    }
}
