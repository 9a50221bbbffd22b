package sensorrounds.ranktest;

import java.util.List;
import sensorrounds.survival.LifetimeSample;

/**
 * One of the groups to be compared, its lives split into the strata within which they are compared. Every group of a
 * test has the same strata in the same order; a stratum may be empty.
 */
public record Group(String name, List<LifetimeSample> strata) {
    public Group {
        strata = List.copyOf(strata);
    }

    /** A group without strata. */
    public static Group of(String name, LifetimeSample sample) {
        return new Group(name, List.of(sample));
    }

    /** Sum of weights over all strata. */
    public double lives() {
        return strata.stream().mapToDouble(LifetimeSample::lives).sum();
    }

    /** Sum of weights of lives that failed, over all strata. */
    public double failures() {
        return strata.stream().mapToDouble(LifetimeSample::failures).sum();
    }

    /** The number of strata, the same for all. */
    static int strataOf(List<Group> groups) {
        if (groups.size() < 2) {
            throw new IllegalArgumentException("a comparison needs two groups or more, not " + groups.size());
        }
        int strata = groups.get(0).strata().size();
        for (Group group : groups) {
            if (group.strata().size() != strata) {
                throw new IllegalArgumentException("every group needs a sample for each stratum: group "
                        + groups.get(0).name() + " has " + strata + ", group " + group.name() + " has "
                        + group.strata().size() + "; pass an empty sample where a group has no lives in a stratum");
            }
        }
        return strata;
    }
}
