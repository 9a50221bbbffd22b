package sensorrounds.plausibility;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Pattern;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;

/** Number plates change, are moved and used again, so a change is told and nothing more; the VIN is the anchor. */
final class IdentityDoubts {
    private static final Pattern FILLING = Pattern.compile("[\\s-]");

    private IdentityDoubts() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        changes(Doubt.Kind.PLATE_CHANGED, "number plate", visits, v -> plain(v.registration()), doubts);
        changes(Doubt.Kind.VIN_CHANGED, "vehicle identification number", visits, VisitHeader::vin, doubts);
    }

    private static void changes(
            Doubt.Kind kind, String name, List<Visit> visits, Function<VisitHeader, String> value, List<Doubt> doubts) {
        List<Visit> given = new ArrayList<>(visits.size());
        List<String> values = new ArrayList<>(visits.size());
        for (Visit visit : visits) {
            String text = value.apply(visit.header());
            if (text != null) {
                given.add(visit);
                values.add(text);
            }
        }
        for (int i = 1; i < given.size(); i++) {
            if (values.get(i - 1).equals(values.get(i))) {
                continue;
            }
            Visit before = given.get(i - 1);
            Visit visit = given.get(i);
            boolean backAgain = i + 1 < given.size() && values.get(i + 1).equals(values.get(i - 1));
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
                : FILLING.matcher(registration).replaceAll("").toUpperCase(Locale.ROOT);
    }
}
