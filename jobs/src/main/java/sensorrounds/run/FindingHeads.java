package sensorrounds.run;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.Finding;
import sensorrounds.report.ReportData.FindingGroup;

/** Counts findings by kind and keeps the first of each kind: a mergeable state, the same for any split of the fleet. */
final class FindingHeads implements Serializable {
    private static final long serialVersionUID = 1;

    private final int keep;
    private final TableWriter.Order<Finding> order;
    private final Map<Finding.Kind, Long> counts = new EnumMap<>(Finding.Kind.class);
    private final Map<Finding.Kind, ArrayList<Finding>> first = new EnumMap<>(Finding.Kind.class);

    FindingHeads(int keep, TableWriter.Order<Finding> order) {
        this.keep = keep;
        this.order = order;
    }

    FindingHeads add(Finding finding) {
        counts.merge(finding.kind(), 1L, Long::sum);
        keep(finding);
        return this;
    }

    FindingHeads merge(FindingHeads other) {
        other.counts.forEach((kind, n) -> counts.merge(kind, n, Long::sum));
        other.first.values().forEach(kept -> kept.forEach(this::keep));
        return this;
    }

    private void keep(Finding finding) {
        ArrayList<Finding> kept = first.computeIfAbsent(finding.kind(), k -> new ArrayList<>());
        int at = kept.size();
        while (at > 0 && order.compare(finding, kept.get(at - 1)) < 0) {
            at--;
        }
        if (at < keep) {
            kept.add(at, finding);
            if (kept.size() > keep) {
                kept.remove(keep);
            }
        }
    }

    List<FindingGroup> groups() {
        List<FindingGroup> groups = new ArrayList<>();
        counts.forEach((kind, n) -> groups.add(new FindingGroup(kind, n, List.copyOf(first.get(kind)))));
        return groups;
    }
}
