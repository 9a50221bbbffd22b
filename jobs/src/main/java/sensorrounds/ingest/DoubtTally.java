package sensorrounds.ingest;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.VehicleDoubts;

/** Counts of doubts by kind with the first examples of each, which can be put together in any order. */
final class DoubtTally implements Serializable {
    private static final long serialVersionUID = 1L;
    private static final int MOST_EXAMPLES = 3;

    private final Map<Doubt.Kind, Group> groups = new EnumMap<>(Doubt.Kind.class);

    /**
     * Doubts of one kind.
     *
     * @param examples the first ones by file and line
     */
    record Group(Doubt.Kind kind, long count, List<Doubt> examples) implements Serializable {
        private Group plus(Group other) {
            List<Doubt> all = new ArrayList<>(examples);
            all.addAll(other.examples);
            all.sort(VehicleDoubts.ORDER);
            return new Group(
                    kind, count + other.count, List.copyOf(all.subList(0, Math.min(all.size(), MOST_EXAMPLES))));
        }
    }

    void add(Doubt doubt) {
        groups.merge(doubt.kind(), new Group(doubt.kind(), 1, List.of(doubt)), Group::plus);
    }

    DoubtTally add(DoubtTally other) {
        other.groups.forEach((kind, group) -> groups.merge(kind, group, Group::plus));
        return this;
    }

    /** In the order of the kinds. */
    List<Group> groups() {
        return List.copyOf(groups.values());
    }
}
