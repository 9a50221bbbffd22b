package sensorrounds.frailty;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.regression.CovariateLives;

/** The lives of a fleet, vehicle by vehicle; immutable. A vehicle's set is every sensor known to have been on it. */
public final class LifeSets implements Serializable {
    private final List<String> names;
    private final List<List<SetMember>> vehicles;

    private LifeSets(List<String> names, List<List<SetMember>> vehicles) {
        this.names = names;
        this.vehicles = vehicles;
    }

    /** Without covariates. */
    public static LifeSets of(Collection<? extends Collection<SetMember>> vehicles) {
        return of(List.of(), vehicles);
    }

    /**
     * With covariates that act on log scale.
     *
     * @throws IllegalArgumentException if a life has not as many covariates as there are names; the message names the
     *     place of its vehicle
     */
    public static LifeSets of(List<String> names, Collection<? extends Collection<SetMember>> vehicles) {
        List<List<SetMember>> all = new ArrayList<>();
        for (Collection<SetMember> set : vehicles) {
            for (SetMember member : set) {
                if (member.covariates().size() != names.size()) {
                    throw new IllegalArgumentException("vehicle at index " + all.size() + ": a life has covariates "
                            + member.covariates() + " where each of " + names + " needs one value");
                }
            }
            all.add(List.copyOf(set));
        }
        return new LifeSets(List.copyOf(names), List.copyOf(all));
    }

    public List<String> names() {
        return names;
    }

    /** The lives of each vehicle. */
    public List<List<SetMember>> vehicles() {
        return vehicles;
    }

    /** Vehicles with two lives or more, which alone can tell likeness from the form of the law. */
    public int shared() {
        return (int) vehicles.stream().filter(set -> set.size() > 1).count();
    }

    /** The same lives as if no two had a vehicle in common. */
    CovariateLives apart() {
        double[] weight = column(m -> 1);
        CovariateLives lives =
                CovariateLives.of(column(SetMember::entry), column(SetMember::lower), column(SetMember::upper), weight);
        for (int j = 0; j < names.size(); j++) {
            int place = j;
            lives = lives.withColumn(names.get(j), column(m -> m.covariates().get(place)));
        }
        return lives;
    }

    private double[] column(ToDoubleFunction<SetMember> value) {
        return vehicles.stream().flatMap(List::stream).mapToDouble(value).toArray();
    }
}
