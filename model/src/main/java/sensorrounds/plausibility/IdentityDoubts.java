package sensorrounds.plausibility;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;

/** Number plates change, are moved and used again, so a change is told and nothing more; the VIN is the anchor. */
final class IdentityDoubts {
    private IdentityDoubts() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        changes(Doubt.Kind.PLATE_CHANGED, "number plate", visits, v -> plain(v.registration()), doubts);
        changes(Doubt.Kind.VIN_CHANGED, "vehicle identification number", visits, VisitHeader::vin, doubts);
    }

    private static void changes(
            Doubt.Kind kind, String name, List<Visit> visits, Function<VisitHeader, String> value, List<Doubt> doubts) {
        List<Visit> given =
                visits.stream().filter(v -> value.apply(v.header()) != null).toList();
        for (int i = 1; i < given.size(); i++) {
            Visit before = given.get(i - 1);
            Visit visit = given.get(i);
            if (value.apply(before.header()).equals(value.apply(visit.header()))) {
                continue;
            }
            boolean backAgain = i + 1 < given.size()
                    && value.apply(given.get(i + 1).header()).equals(value.apply(before.header()));
            List<Source> sources = new ArrayList<>(Entry.sources(before));
            sources.addAll(Entry.sources(visit));
            String vin = kind == Doubt.Kind.PLATE_CHANGED ? vin(before, visit) : "";
            doubts.add(Entry.ofVisit(
                    kind,
                    visit,
                    "the " + name + " is another one than on " + before.day() + vin
                            + (backAgain ? ", and the former one again at the next visit: a slip at this one" : ""),
                    sources));
            if (backAgain) {
                i++;
            }
        }
    }

    private static String vin(Visit before, Visit visit) {
        String a = before.header().vin();
        String b = visit.header().vin();
        return a == null || b == null ? "" : a.equals(b) ? "; the VIN stays the same" : "; the VIN changes too";
    }

    /** Spaces, hyphens and capitals make no other plate. */
    private static String plain(String registration) {
        return registration == null
                ? null
                : registration.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
    }
}
